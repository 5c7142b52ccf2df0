/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-panel.h"
#include "drawing/sheet/sheet-forces.h"
#include "drawing/sheet/sheet-label.h"
#include "model/spring/spring-caution.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

/* Pixels at ordinary type size. */
#define ROW 17.0
#define SAMPLE 34.0
#define SAMPLE_SHORT 20.0
#define KEY_GAP 8.0
#define KEY_LEAST 40.0 /* for its words */
#define NARROW_PANEL 150.0
#define BAR_MOST 120.0
#define BAR_LEAST 20.0
#define BAR_BESIDE 100.0 /* the bar with its text, beside the projection sign */
#define WAY_LONG 16.0
#define CAPTION_LINE 14.0
#define SYMBOL 9.0     /* smaller radius of the projection sign */
#define SIGN_WIDE 60.0 /* all of it */
#define TITLE_ROW 19.0
#define TITLE_WORDS 92.0
#define TITLE_MOST 420.0
#define TITLE_LEAST 130.0 /* for its texts */

static Stroke
thin (const SheetPen *pen, LineKind kind, Colour colour)
{
  return (Stroke){ kind, pen->theme->thin, colour };
}

/* A view's caption: its name, an arrow and the direction that it points in. */
typedef struct {
  const char *name, *short_name, *word;
  Pixel way;
} Caption;

static double
arrow_room (const SheetPen *pen, Pixel way)
{
  return way.x > 0.0 ? WAY_LONG * pen->unit : 0.0;
}

/* The arrow from @at, with @word beside it where there is room before @right; nothing
 * where there is not even room for the arrow. */
static void
place_way (const SheetPen *pen, Pixel at, const Caption *caption, double right)
{
  const Colour soft = pen->theme->soft_ink;
  const double u = pen->unit, room = arrow_room (pen, caption->way);
  const double rise = caption->way.y * WAY_LONG * u / 2.0;
  const Pixel from = pixel_add (at, 0, -rise);
  const Pixel to =
      pixel_add (from, WAY_LONG * u * caption->way.x, WAY_LONG * u * caption->way.y);
  const Pixel word = pixel_add (at, room + 6.0 * u, 0);
  const PixelBox box = { at.x - 3.0 * u, at.y - 3.0 * u - fabs (rise), room + 6.0 * u,
                         6.0 * u + 2.0 * fabs (rise) };

  if (box.x + box.width > right || !writing_has_room (pen, box))
    return;
  pen_line (pen, from, to, thin (pen, LINE_FULL, soft));
  pen_arrow_head (pen, to, caption->way, soft);
  writing_claim (pen, box);
  if (word.x + writing_width (pen, caption->word, TEXT_PLAIN) <= right)
    writing_try (pen, caption->word, word, TEXT_PLAIN, soft);
}

/* All of it before @right, or less of it. */
static void
place_caption (const SheetPen *pen, Pixel top, const Caption *caption, double right)
{
  const double u = pen->unit, way = 14.0 * u, high = 0.5 * CAPTION_LINE * u;
  const double whole = way + arrow_room (pen, caption->way) + 6.0 * u +
                       writing_width (pen, caption->word, TEXT_PLAIN);
  const double width = writing_width (pen, caption->name, TEXT_BOLD);
  const bool is_whole = top.x + width + whole <= right;
  const char *name = is_whole ? caption->name : caption->short_name;
  const Pixel at = pixel_add (top, 0, high);
  const double end = at.x + writing_width (pen, name, TEXT_BOLD);

  if (end > right || !writing_try (pen, name, at, TEXT_BOLD, pen->theme->soft_ink))
    return;
  place_way (pen, (Pixel){ end + way, at.y }, caption, right);
}

void
panel_place_captions (const SheetPen *pen)
{
  const SheetLayout *l = pen->layout;
  const double gap = 8.0 * pen->unit, border = l->canvas.width - 2.0;
  const double between = l->caption[SHEET_SIDE].x - gap;
  const char *front = _ ("Front view"), *plan = _ ("Plan view");
  const Caption captions[N_SHEET_VIEWS] = {
    [SHEET_FRONT] = { front, front, C_ ("direction", "outboard"), { 1, 0 } },
    [SHEET_SIDE] = { _ ("Side view, from the centre plane"),
                     _ ("Side view"),
                     C_ ("direction", "forward"),
                     { 1, 0 } },
    [SHEET_PLAN] = { plan, plan, C_ ("direction", "forward"), { 0, 1 } }
  };

  for (SheetViewName i = 0; i < N_SHEET_VIEWS; i++)
    place_caption (pen, l->caption[i], &captions[i],
                   i == SHEET_SIDE ? border : fmin (between, border));
}

/* At the foot of the front view, beside the centre plane's line. */
void
panel_place_plane_name (const SheetPen *pen)
{
  const PixelBox box = pen->layout->box[SHEET_FRONT];
  const double u = pen->unit, up = 0.5 * CAPTION_LINE * u;

  writing_try (pen, _ ("centre plane"),
               (Pixel){ pen->layout->origin[SHEET_FRONT].x + 6.0 * u,
                        box.y + box.height - up },
               TEXT_PLAIN, pen->theme->soft_ink);
}

typedef struct {
  Stroke stroke;
  const char *word, *short_word; /* NULL: the word may end in "…" */
} KeyRow;

/* The longest text of the row that @room holds, or NULL. */
static const char *
key_word (const SheetPen *pen, const KeyRow *row, double room)
{
  if (row->short_word == NULL || writing_width (pen, row->word, TEXT_PLAIN) <= room)
    return row->word;
  return writing_width (pen, row->short_word, TEXT_PLAIN) <= room ? row->short_word
                                                                  : NULL;
}

static void
draw_key_row (
    const SheetPen *pen, const KeyRow *row, Pixel at, double sample, double room)
{
  const TextStyle style = pen_style (pen, pen->theme->small_text, TEXT_PLAIN);
  const char *word = key_word (pen, row, room);
  const TextSize size = text_measure (pen->texts, style, word);
  const Pixel left = pixel_add (at, sample + KEY_GAP * pen->unit, 0);
  const PixelBox box = writing_box (pen, left, fmin (size.width, room));

  if (!writing_has_room (pen, box))
    return;
  writing_claim (pen, box);
  pen_line (pen, at, pixel_add (at, sample, 0), row->stroke);
  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw_within (pen->texts, pen->cr, style, word, left.x,
                    left.y - size.height / 2.0 + size.baseline, room);
}

static bool
shows_forces (const SheetPen *pen)
{
  return pen->view->loads != NULL && pen->view->loads->is_solved;
}

static unsigned
count_key_rows (const SheetPen *pen)
{
  return shows_forces (pen) ? 5 : 4;
}

/* Nothing where the panel is too narrow for its words. */
static void
draw_key (const SheetPen *pen, Pixel at)
{
  const Theme *t = pen->theme;
  const double u = pen->unit, wide = pen->layout->panel.width;
  const KeyRow rows[] = {
    { { LINE_FULL, t->line, t->ink }, _ ("this setup"), _ ("this setup") },
    { thin (pen, LINE_DASHED, t->reference), study_reference (pen->view->study)->title,
      NULL },
    { thin (pen, LINE_CHAIN, t->soft_ink), _ ("axes, centre plane"), C_ ("key", "axes") },
    { { LINE_CHAIN, t->thin * 1.3, t->accent },
      _ ("steering axis"),
      _ ("steering axis") },
    { { LINE_FULL, t->line * 1.8, t->accent },
      _ ("forces on the body"),
      C_ ("key", "forces") }
  };
  const unsigned n = count_key_rows (pen);
  const double sample = (wide < NARROW_PANEL * u ? SAMPLE_SHORT : SAMPLE) * u;
  const double room = wide - sample - KEY_GAP * u;

  for (unsigned i = 0; i < n; i++)
    if (room < KEY_LEAST * u || key_word (pen, &rows[i], room) == NULL)
      return;
  for (unsigned i = 0; i < n; i++)
    draw_key_row (pen, &rows[i], pixel_add (at, 0, (i + 0.5) * ROW * u), sample, room);
}

/* 1, 2, 5 · 10ⁿ of the unit shown, in mm, as many as @most pixels hold. */
static double
round_length (const SheetPen *pen, double most)
{
  const double length = unit_shown (UNIT_LENGTH, most / pen->layout->scale);
  const double power = pow (10.0, floor (log10 (length))), first = length / power;

  return unit_stored (UNIT_LENGTH, power * (first >= 5.0   ? 5.0
                                            : first >= 2.0 ? 2.0
                                                           : 1.0));
}

/* A bar of a round length and its text within @room; nothing where that is too little. */
static void
draw_scale_bar (const SheetPen *pen, Pixel at, double room)
{
  const Theme *t = pen->theme;
  const double high = 4.0 * pen->unit, gap = 7.0 * pen->unit;
  const double text_room = writing_width (pen, "1000 mm", TEXT_PLAIN);
  const double most = fmin (BAR_MOST * pen->unit, room - gap - text_room);
  char text[32];

  if (most < BAR_LEAST * pen->unit)
    return;

  const double mm = round_length (pen, most), half = mm * pen->layout->scale / 2.0;
  g_snprintf (text, sizeof text, "%g %s", unit_shown (UNIT_LENGTH, mm),
              unit_symbol (UNIT_LENGTH));
  if (!writing_try (pen, text, pixel_add (at, 2.0 * half + gap, high / 2.0), TEXT_PLAIN,
                    t->soft_ink))
    return;
  theme_use (pen->cr, t->soft_ink);
  theme_line (pen->cr, LINE_FULL, t->thin);
  cairo_rectangle (pen->cr, at.x, at.y, half, high);
  cairo_fill (pen->cr);
  cairo_rectangle (pen->cr, at.x, at.y, 2.0 * half, high);
  theme_use (pen->cr, t->soft_ink);
  cairo_stroke (pen->cr);
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

/* "10.0 mm higher, toe as moved"; where @room is too little, without the toe. */
static void
height_text (const SheetPen *pen, double room, char *text, size_t size)
{
  const TitleBlock *title = pen->view->title;
  const bool is_lower = title->lowering > -0.05;
  const bool is_reset = title->toe == TOE_RESET;
  char figure[24];

  unit_format_whole (UNIT_LENGTH, fabs (title->lowering), 1, FALSE, figure,
                     sizeof figure);
  if (is_lower)
    g_snprintf (text, size,
                is_reset ? _ ("%s lower, toe reset") : _ ("%s lower, toe as moved"),
                figure);
  else
    g_snprintf (text, size,
                is_reset ? _ ("%s higher, toe reset") : _ ("%s higher, toe as moved"),
                figure);
  if (writing_width (pen, text, TEXT_PLAIN) > room)
    g_snprintf (text, size, is_lower ? _ ("%s lower") : _ ("%s higher"), figure);
}

/* The rows' texts live in @mount and @lowering. */
static unsigned
title_rows (const SheetPen *pen,
            double room,
            char mount[120],
            char lowering[120],
            TitleRow rows[6])
{
  const TitleBlock *title = pen->view->title;
  unsigned n = 0;

  mount_text (title->mount, mount, 120);
  height_text (pen, room, lowering, 120);
  rows[n++] = (TitleRow){ _ ("Car"), title->car };
  rows[n++] = (TitleRow){ _ ("Setup"), title->setup };
  rows[n++] = (TitleRow){ _ ("Upper mount"), mount };
  rows[n++] = (TitleRow){ _ ("Height"), lowering };
  if (title->date != NULL)
    rows[n++] = (TitleRow){ _ ("Date"), title->date };
  return n;
}

/* What the words left of the title's texts take; nothing in a narrow block. */
static double
title_words (const SheetPen *pen, const TitleRow *rows, unsigned n, double wide)
{
  double most = TITLE_WORDS * pen->unit;

  for (unsigned i = 0; i < n; i++)
    most = fmax (most, writing_width (pen, rows[i].word, TEXT_PLAIN) + 15.0 * pen->unit);
  return wide >= most + TITLE_LEAST * pen->unit ? most : 7.0 * pen->unit;
}

static void
draw_in_row (const SheetPen *pen,
             const char *text,
             Pixel left,
             double room,
             TextWeight weight,
             Colour colour)
{
  const TextStyle style = pen_style (pen, pen->theme->small_text, weight);
  const TextSize size = text_measure (pen->texts, style, text);

  theme_use (pen->cr, colour);
  text_draw_within (pen->texts, pen->cr, style, text, left.x,
                    left.y - size.height / 2.0 + size.baseline, room);
}

static void
draw_title_rows (const SheetPen *pen, const TitleRow *rows, unsigned n, PixelBox box)
{
  const Theme *t = pen->theme;
  const double u = pen->unit, inset = 7.0 * u;
  const double words = title_words (pen, rows, n, box.width);
  const Stroke rule = thin (pen, LINE_FULL, t->faint);

  for (unsigned i = 0; i < n; i++) {
    const double top = box.y + i * TITLE_ROW * u, middle = top + TITLE_ROW * u / 2.0;

    if (i > 0)
      pen_line (pen, (Pixel){ box.x, top }, (Pixel){ box.x + box.width, top }, rule);
    if (words > inset)
      draw_in_row (pen, rows[i].word, (Pixel){ box.x + inset, middle }, words - inset,
                   TEXT_PLAIN, t->soft_ink);
    draw_in_row (pen, rows[i].text, (Pixel){ box.x + words, middle },
                 box.width - words - 4.0 * u, i == 0 ? TEXT_BOLD : TEXT_PLAIN, t->ink);
  }
  theme_use (pen->cr, t->ink);
  theme_line (pen->cr, LINE_FULL, t->thin);
  cairo_rectangle (pen->cr, box.x, box.y, box.width, box.height);
  cairo_stroke (pen->cr);
}

/* The caution before the rows, the upper rows before the others: in the panel's height.
 * Returns what they take at its foot. */
static double
draw_title (const SheetPen *pen)
{
  const Theme *t = pen->theme;
  const PixelBox panel = pen->layout->panel;
  const double u = pen->unit, wide = fmin (panel.width, TITLE_MOST * u);
  const TextStyle small = pen_style (pen, t->small_text * 0.9, TEXT_PLAIN);
  const char *words = shows_forces (pen) ? spring_caution () : caution_text ();
  const TextSize size = text_measure_wrapped (pen->texts, small, words, wide);
  const double caution =
      size.width <= wide && size.height <= panel.height ? size.height : 0.0;
  const double bottom = panel.y + panel.height, x = panel.x + panel.width - wide;
  const double left = panel.height - caution - 6.0 * u;
  char mount[120], lowering[120];
  TitleRow rows[6];
  unsigned n = title_rows (pen, wide - (TITLE_WORDS + 4.0) * u, mount, lowering, rows);

  while (n > 0 && n * TITLE_ROW * u > left)
    n--;
  if (wide < TITLE_LEAST * u)
    n = 0;

  const double high = n * TITLE_ROW * u, top = bottom - caution - 6.0 * u - high;
  if (n > 0)
    draw_title_rows (pen, rows, n, (PixelBox){ x, top, wide, high });
  theme_use (pen->cr, t->soft_ink);
  if (caution > 0.0)
    text_draw_wrapped (pen->texts, pen->cr, small, words, x, bottom - caution, wide);
  writing_claim (pen, (PixelBox){ x, top, wide, bottom - top });
  return bottom - top + 14.0 * u;
}

/* The scales and the projection sign, at @foot; returns the height that they take. */
static double
draw_scales (const SheetPen *pen, double foot)
{
  const PixelBox panel = pen->layout->panel;
  const double u = pen->unit, sign_high = 2.0 * SYMBOL * u;
  const double beside = panel.width - (SIGN_WIDE + 12.0) * u;
  /* where the panel is narrow the bar stands over the sign */
  const bool is_narrow = beside < BAR_BESIDE * u;
  const double low = sign_high + (is_narrow ? ROW * u : 0.0);
  const double sign_x = panel.x + (is_narrow ? 3.0 * u : panel.width - SIGN_WIDE * u);
  const double bar_y = is_narrow ? foot - low : foot - SYMBOL * u - 2.0 * u;

  if (panel.width >= SIGN_WIDE * u)
    draw_projection_sign (pen, (Pixel){ sign_x, foot - sign_high });
  if (!is_narrow || bar_y >= panel.y + 2.0 * u)
    draw_scale_bar (pen, (Pixel){ panel.x, bar_y }, is_narrow ? panel.width : beside);
  if (!shows_forces (pen) || bar_y - ROW * u < panel.y + 8.0 * u)
    return low;
  forces_draw_scale (pen, panel.x, bar_y + 2.0 * u - ROW * u,
                     is_narrow ? panel.width : beside);
  return low + ROW * u;
}

void
panel_draw (const SheetPen *pen)
{
  const PixelBox panel = pen->layout->panel;
  const double title = pen->view->title != NULL ? draw_title (pen) : 0.0;
  const double left = panel.height - title, u = pen->unit;
  const double key_high = count_key_rows (pen) * ROW * u;
  const double foot = panel.y + left - 6.0 * u;

  if (left < (2.0 * SYMBOL + 8.0) * u)
    return;
  const double low = draw_scales (pen, foot);
  if (left >= key_high + low + 20.0 * u)
    draw_key (pen, (Pixel){ panel.x, foot - low - 14.0 * u - key_high });
}
