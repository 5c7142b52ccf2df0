/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet-panel.h"
#include "drawing/sheet-label.h"
#include "model/quantity-info.h"

#include <glib/gi18n-lib.h>

/* Pixels at ordinary type size. */
#define ROW 17.0
#define SAMPLE 34.0
#define BAR_MOST 120.0
#define WAY_ROOM 85.0
#define SYMBOL 9.0 /* smaller radius of the projection sign */
#define TITLE_ROW 19.0
#define TITLE_WORDS 92.0
#define TITLE_MOST 420.0

static Stroke
thin (const SheetPen *pen, LineKind kind, Colour colour)
{
  return (Stroke){ kind, pen->theme->thin, colour };
}

static TextSize
draw_text (const SheetPen *pen,
           const char *text,
           Pixel at,
           TextAnchor anchor,
           TextWeight weight,
           Colour colour)
{
  theme_use (pen->cr, colour);
  return text_draw (pen->texts, pen->cr, pen_style (pen, pen->theme->small_text, weight),
                    text, at.x, at.y, anchor);
}

static void
draw_way (const SheetPen *pen, Pixel from, Pixel way, const char *word)
{
  const Colour soft = pen->theme->soft_ink;
  const double long_side = 16.0 * pen->unit;
  const Pixel to = pixel_add (from, long_side * way.x, long_side * way.y);
  const double room = way.x > 0.0 ? to.x - from.x : 0.0;

  pen_line (pen, from, to, thin (pen, LINE_FULL, soft));
  pen_arrow_head (pen, to, way, soft);
  draw_text (pen, word, pixel_add (from, room + 6.0 * pen->unit, way.y * long_side / 2.0),
             (TextAnchor){ 0, 0.5 }, TEXT_PLAIN, soft);
}

/* Where the view is narrow only its name. */
static const char *
side_caption (const SheetPen *pen)
{
  const char *whole = _ ("Side view, from the centre plane");
  const TextStyle style = pen_style (pen, pen->theme->small_text, TEXT_BOLD);
  const double room = pen->layout->panel.width - WAY_ROOM * pen->unit;

  return text_measure (pen->texts, style, whole).width <= room ? whole : _ ("Side view");
}

/* At the foot of the front view, beside the centre plane's line. */
static void
draw_plane_name (const SheetPen *pen)
{
  const PixelBox box = pen->layout->box[SHEET_FRONT];
  const double u = pen->unit;

  draw_text (pen, _ ("centre plane"),
                     (Pixel){ pen->layout->origin[SHEET_FRONT].x + 6.0 * u,
                              box.y + box.height },
                     (TextAnchor){ 0, 1.0 }, TEXT_PLAIN, pen->theme->soft_ink);
}

void
panel_draw_captions (const SheetPen *pen)
{
  const struct {
    const char *name, *word;
    Pixel way;
  } captions[N_SHEET_VIEWS] = {
    [SHEET_FRONT] = {
        _ ("Front view"), C_ ("direction", "outboard"), { 1, 0 } },
        [SHEET_SIDE] = { side_caption (pen), C_ ("direction", "forward"), { 1, 0 } },
                         [SHEET_PLAN] = { _ ("Plan view"), C_ ("direction", "forward"),
                                                               { 0, 1 } } };

  for (SheetViewName i = 0; i < N_SHEET_VIEWS; i++) {
    const Pixel at = pen->layout->caption[i];
    const double u = pen->unit;
    const TextSize size = draw_text (pen, captions[i].name, at, (TextAnchor){ 0, 0 },
                                     TEXT_BOLD, pen->theme->soft_ink);
    const double rise = captions[i].way.y > 0.0 ? -8.0 * u : 0.0;

    draw_way (pen, pixel_add (at, size.width + 14.0 * u, size.height / 2.0 + rise),
              captions[i].way, captions[i].word);
  }
  draw_plane_name (pen);
}

static void
draw_key (const SheetPen *pen, Pixel at)
{
  const Theme *t = pen->theme;
  const struct {
    Stroke stroke;
    const char *word;
  } rows[] = {
    { { LINE_FULL, t->line, t->ink }, _ ("this setup") },
      { thin (pen, LINE_DASHED, t->reference), study_reference (pen->view->study)->name },
      { thin (pen, LINE_CHAIN, t->soft_ink), _ ("axes, centre plane") },
        { { LINE_CHAIN, t->thin * 1.3, t->accent }, _ ("steering axis") } };

  for (unsigned i = 0; i < G_N_ELEMENTS (rows); i++) {
    const double u = pen->unit;
    const Pixel middle = pixel_add (at, 0, (i + 0.5) * ROW * u);

    pen_line (pen, middle, pixel_add (middle, SAMPLE * u, 0), rows[i].stroke);
    draw_text (pen, rows[i].word, pixel_add (middle, (SAMPLE + 8.0) * u, 0),
               (TextAnchor){ 0, 0.5 }, TEXT_PLAIN, t->soft_ink);
  }
}

/* The most of 1, 2, 5 · 10ⁿ mm that finds room. */
static double
round_length (const SheetPen *pen)
{
  const double most = BAR_MOST * pen->unit / pen->layout->scale;
  const double power = pow (10.0, floor (log10 (most))), first = most / power;

  return power * (first >= 5.0 ? 5.0 : first >= 2.0 ? 2.0 : 1.0);
}

static void
draw_scale_bar (const SheetPen *pen, Pixel at)
{
  const double mm = round_length (pen), half = mm * pen->layout->scale / 2.0;
  const double high = 4.0 * pen->unit;
  const Theme *t = pen->theme;
  char text[32];

  theme_use (pen->cr, t->soft_ink);
  theme_line (pen->cr, LINE_FULL, t->thin);
  cairo_rectangle (pen->cr, at.x, at.y, half, high);
  cairo_fill (pen->cr);
  cairo_rectangle (pen->cr, at.x, at.y, 2.0 * half, high);
  theme_use (pen->cr, t->soft_ink);
  cairo_stroke (pen->cr);
  g_snprintf (text, sizeof text, _ ("%g mm"), mm);
  draw_text (pen, text, pixel_add (at, 2.0 * half + 7.0 * pen->unit, high / 2.0),
             (TextAnchor){ 0, 0.5 }, TEXT_PLAIN, t->soft_ink);
}

/* A cone's frustum and, to its right, the view from its left: ISO 5456-2. */
static void
draw_projection_sign (const SheetPen *pen, Pixel at)
{
  const double r = SYMBOL * 0.5 * pen->unit, big = 2.0 * r, long_side = 4.0 * r;
  const Pixel eye = pixel_add (at, long_side + 2.2 * big, big);
  const Colour soft = pen->theme->soft_ink;
  const Solid ring = { 0, { 0, 0, 0, 0 }, soft, pen->theme->thin };
  const double past = 3.0 * pen->unit;

  cairo_move_to (pen->cr, at.x, at.y + big - r);
  cairo_line_to (pen->cr, at.x + long_side, at.y);
  cairo_line_to (pen->cr, at.x + long_side, at.y + 2.0 * big);
  cairo_line_to (pen->cr, at.x, at.y + big + r);
  cairo_close_path (pen->cr);
  theme_use (pen->cr, soft);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  cairo_stroke (pen->cr);
  pen_circle (pen, eye, r, ring);
  pen_circle (pen, eye, big, ring);
  pen_line (pen, pixel_add (at, -past, big), pixel_add (at, long_side + past, big),
            thin (pen, LINE_CHAIN, soft));
  pen_line (pen, pixel_add (eye, -big - past, 0), pixel_add (eye, big + past, 0),
            thin (pen, LINE_CHAIN, soft));
  pen_line (pen, pixel_add (eye, 0, -big - past), pixel_add (eye, 0, big + past),
            thin (pen, LINE_CHAIN, soft));
}

typedef struct {
  const char *word;
  const char *text;
} TitleRow;

/* The rows' texts live in @mount and @lowering. */
static unsigned
title_rows (const TitleBlock *title,
            char mount[120],
            char lowering[120],
            TitleRow rows[6])
{
  char figure[24];
  unsigned n = 0;

  mount_text (title->mount, mount, 120);
  quantity_format (QUANTITY_STRUT_LENGTH, title->lowering, FALSE, figure, sizeof figure);
  g_snprintf (lowering, 120,
              title->toe == TOE_RESET ? _ ("%s mm lower, toe reset")
                                      : _ ("%s mm lower, toe as moved"), figure);
  rows[n++] = (TitleRow){ _ ("Car"), title->car };
  rows[n++] = (TitleRow){ _ ("Setup"), title->setup };
  rows[n++] = (TitleRow){ _ ("Upper mount"), mount };
  rows[n++] = (TitleRow){ _ ("Height"), lowering };
  if (title->date != NULL)
    rows[n++] = (TitleRow){ _ ("Date"), title->date };
  return n;
}

/* Returns the height that title block and caution take at the foot of the panel. */
static double
draw_title (const SheetPen *pen)
{
  const Theme *t = pen->theme;
  const PixelBox panel = pen->layout->panel;
  const double u = pen->unit, wide = fmin (panel.width, TITLE_MOST * u);
  const TextStyle small = pen_style (pen, t->small_text * 0.9, TEXT_PLAIN);
  const double caution =
      text_measure_wrapped (pen->texts, small, caution_text (), wide).height;
  const double bottom = panel.y + panel.height, x = panel.x + panel.width - wide;
  char mount[120], lowering[120];
  TitleRow rows[6];
  const unsigned n = title_rows (pen->view->title, mount, lowering, rows);
  const double high = n * TITLE_ROW * u, top = bottom - caution - 6.0 * u - high;
  const Stroke rule = thin (pen, LINE_FULL, t->faint);

  for (unsigned i = 0; i < n; i++) {
    const double middle = top + (i + 0.5) * TITLE_ROW * u;

    if (i > 0)
      pen_line (pen, (Pixel){ x, top + i * TITLE_ROW * u },
                (Pixel){ x + wide, top + i * TITLE_ROW * u }, rule);
    draw_text (pen, rows[i].word, (Pixel){ x + 7.0 * u, middle }, (TextAnchor){ 0, 0.5 },
               TEXT_PLAIN, t->soft_ink);
    cairo_save (pen->cr);
    cairo_rectangle (pen->cr, x, top, wide - 4.0 * u, high);
    cairo_clip (pen->cr);
    draw_text (pen, rows[i].text, (Pixel){ x + TITLE_WORDS * u, middle },
               (TextAnchor){ 0, 0.5 }, i == 0 ? TEXT_BOLD : TEXT_PLAIN, t->ink);
    cairo_restore (pen->cr);
  }
  theme_use (pen->cr, t->ink);
  theme_line (pen->cr, LINE_FULL, t->thin);
  cairo_rectangle (pen->cr, x, top, wide, high);
  cairo_stroke (pen->cr);
  theme_use (pen->cr, t->soft_ink);
  text_draw_wrapped (pen->texts, pen->cr, small, caution_text (), x, bottom - caution,
                     wide);
  return bottom - top + 14.0 * u;
}

void
panel_draw (const SheetPen *pen)
{
  const PixelBox panel = pen->layout->panel;
  const double title = pen->view->title != NULL ? draw_title (pen) : 0.0;
  const double left = panel.height - title, u = pen->unit;
  const double sign_high = 2.0 * SYMBOL * u, key_high = 4.0 * ROW * u;

  if (left < sign_high + 8.0 * u)
    return;

  const double foot = panel.y + left - 6.0 * u;
  draw_projection_sign (pen,
                        (Pixel){ panel.x + panel.width - 60.0 * u, foot - sign_high });
  draw_scale_bar (pen, (Pixel){ panel.x, foot - SYMBOL * u - 2.0 * u });
  if (left >= key_high + sign_high + 20.0 * u)
    draw_key (pen, (Pixel){ panel.x, foot - sign_high - 14.0 * u - key_high });
}
