/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/mount-map/plate-sketch.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pixels at ordinary type size. */
#define MARGIN 56.0
#define DOT 4.0
#define CROSS 7.0
#define SLOT_WIDTH 13.0
#define TICK 6.0
#define LABEL_WAY 13.0
#define KEY_ROW 20.0
#define KEY_SIGN 22.0

#define ARC_STEPS 72
#define LEAST_SPAN 40.0 /* mm */
/* A drawing for eyes, not for plates of a mile. */
#define MOST_FAR 1000.0

typedef struct {
  cairo_t *cr;
  TextCache *texts;
  const Plate *plate;
  const Theme *theme;
  PlateSketchFit fit;
  double unit, width, height;
} Pen;

typedef struct {
  double left, top, right, bottom; /* mm, as drawn: outboard right, forward down */
} Bounds;

static double
unit_of (const Theme *theme)
{
  return theme->small_text / theme_light ().small_text;
}

/* Nothing is drawn of what is not there yet. */
static gboolean
has_reach (const Plate *plate)
{
  return plate_n_ways (plate) > 0 || plate_n_places (plate) > 0;
}

static void
extend (Bounds *bounds, MountOffset at)
{
  const double x = CLAMP (-at.inboard, -MOST_FAR, MOST_FAR),
               y = CLAMP (-at.rearward, -MOST_FAR, MOST_FAR);

  bounds->left = fmin (bounds->left, x);
  bounds->right = fmax (bounds->right, x);
  bounds->top = fmin (bounds->top, y);
  bounds->bottom = fmax (bounds->bottom, y);
}

static PlateSetting
part_way (const Plate *plate, double along, double across)
{
  const PlateScale a = plate_along_range (plate), b = plate_across_range (plate);

  return (PlateSetting){ .along = a.least + along * (a.most - a.least),
                         .across = b.least + across * (b.most - b.least) };
}

static void
extend_by_reach (const Plate *plate, gboolean is_swapped, Bounds *bounds)
{
  for (guint i = 0; i < plate_n_places (plate); i++)
    extend (bounds,
            plate_place (plate, (PlateSetting){ .place = i, .is_swapped = is_swapped }));
  for (int i = 0; plate_n_ways (plate) > 0 && i <= ARC_STEPS; i++)
    for (int across = 0; across <= 1; across++) {
      PlateSetting setting = part_way (plate, i / (double) ARC_STEPS, across);

      setting.is_swapped = is_swapped;
      extend (bounds, plate_place (plate, setting));
    }
}

/* 1, 2 or 5 times a power of ten. */
static double
round_step (double least)
{
  const double power = pow (10.0, floor (log10 (least)));
  const double lead = least / power;

  return power * (lead <= 1.0 ? 1.0 : lead <= 2.0 ? 2.0 : lead <= 5.0 ? 5.0 : 10.0);
}

/* In steps, so that the drawing does not breathe with every digit. */
static double
stepped_span (double span)
{
  const double step = round_step (fmax (span, LEAST_SPAN) / 10.0);

  return ceil (fmax (span, LEAST_SPAN) / step) * step;
}

PlateSketchFit
plate_sketch_fit (const PlateSketchView *view, double width, double height)
{
  const double unit = unit_of (&view->theme), key = KEY_ROW * unit;
  Bounds bounds = { 0 };

  extend_by_reach (view->plate, FALSE, &bounds);
  if (view->plate->can_swap)
    extend_by_reach (view->plate, TRUE, &bounds);

  const double room_x = fmax (width - 2.0 * MARGIN * unit, 1.0),
               room_y = fmax (height - 2.0 * MARGIN * unit - key, 1.0);
  const double span_x = stepped_span (bounds.right - bounds.left),
               span_y = stepped_span (bounds.bottom - bounds.top);
  const double scale = fmin (room_x / span_x, room_y / span_y);
  return (PlateSketchFit){
    .scale = scale,
    .x = width / 2.0 - scale * (bounds.left + bounds.right) / 2.0,
    .y = (height - key) / 2.0 - scale * (bounds.top + bounds.bottom) / 2.0,
    .grid = round_step (40.0 * unit / scale),
    .key_height = key,
  };
}

static double
x_of (const Pen *pen, MountOffset at)
{
  return pen->fit.x - pen->fit.scale * at.inboard;
}

static double
y_of (const Pen *pen, MountOffset at)
{
  return pen->fit.y - pen->fit.scale * at.rearward;
}

static TextStyle
small_style (const Pen *pen, TextWeight weight)
{
  return (TextStyle){ pen->theme->font, pen->theme->small_text, weight };
}

static void
draw_grid (const Pen *pen)
{
  const double step = pen->fit.grid * pen->fit.scale;
  const double bottom = pen->height - pen->fit.key_height;

  theme_use (pen->cr, pen->theme->faint);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  for (double x = fmod (pen->fit.x, step); x < pen->width; x += step) {
    cairo_move_to (pen->cr, round (x) + 0.5, 0.0);
    cairo_line_to (pen->cr, round (x) + 0.5, bottom);
  }
  for (double y = fmod (pen->fit.y, step); y < bottom; y += step) {
    cairo_move_to (pen->cr, 0.0, round (y) + 0.5);
    cairo_line_to (pen->cr, pen->width, round (y) + 0.5);
  }
  cairo_stroke (pen->cr);
}

/* The centre lines of the mount as measured. */
static void
draw_centre_lines (const Pen *pen)
{
  const double bottom = pen->height - pen->fit.key_height;

  theme_use (pen->cr, theme_quiet (pen->theme, pen->theme->soft_ink, 0.7));
  theme_line (pen->cr, LINE_CHAIN, pen->theme->thin);
  cairo_move_to (pen->cr, 0.0, round (pen->fit.y) + 0.5);
  cairo_line_to (pen->cr, pen->width, round (pen->fit.y) + 0.5);
  cairo_move_to (pen->cr, round (pen->fit.x) + 0.5, 0.0);
  cairo_line_to (pen->cr, round (pen->fit.x) + 0.5, bottom);
  cairo_stroke (pen->cr);
}

/* Keeps lines out of a text. */
static void
clear_behind (const Pen *pen, double x, double y, TextSize size, TextAnchor anchor)
{
  const double room = 2.0 * pen->unit;

  theme_use (pen->cr, colour_with_alpha (pen->theme->ground, 0.85));
  cairo_rectangle (pen->cr, x - anchor.x * size.width - room,
                   y - anchor.y * size.height - room / 2.0, size.width + 2.0 * room,
                   size.height + room);
  cairo_fill (pen->cr);
}

/* In the middle of each edge, where nothing is drawn. */
static void
write_directions (const Pen *pen)
{
  const double bottom = pen->height - pen->fit.key_height, gap = 6.0 * pen->unit;
  const TextStyle style = small_style (pen, TEXT_PLAIN);
  const struct {
    const char *word;
    double x, y;
    TextAnchor anchor;
  } words[] = {
    { C_ ("direction", "inboard"), gap, bottom / 2.0, { 0.0, 0.5 } },
    { C_ ("direction", "outboard"), pen->width - gap, bottom / 2.0, { 1.0, 0.5 } },
    { C_ ("direction", "rearward"), pen->width / 2.0, gap, { 0.5, 0.0 } },
    { C_ ("direction", "forward"), pen->width / 2.0, bottom - gap, { 0.5, 1.0 } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++) {
    clear_behind (pen, words[i].x, words[i].y,
                  text_measure (pen->texts, style, words[i].word), words[i].anchor);
    theme_use (pen->cr, pen->theme->soft_ink);
    text_draw (pen->texts, pen->cr, style, words[i].word, words[i].x, words[i].y,
               words[i].anchor);
  }
}

static void
draw_cross (const Pen *pen, double x, double y)
{
  const double r = CROSS * pen->unit;

  theme_use (pen->cr, pen->theme->reference);
  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  cairo_new_path (pen->cr);
  cairo_move_to (pen->cr, x - r, y);
  cairo_line_to (pen->cr, x + r, y);
  cairo_move_to (pen->cr, x, y - r);
  cairo_line_to (pen->cr, x, y + r);
  cairo_stroke (pen->cr);
}

/* A figure or a mark that leaves its place in the direction (dx, dy). */
static void
draw_label (
    const Pen *pen, MountOffset at, double dx, double dy, double way, const char *text)
{
  const double length = hypot (dx, dy);
  const double ux = length > 0.0 ? dx / length : 1.0,
               uy = length > 0.0 ? dy / length : 0.0;
  const double x = x_of (pen, at) + ux * way * pen->unit,
               y = y_of (pen, at) + uy * way * pen->unit;
  const TextStyle style = small_style (pen, TEXT_BOLD);
  const TextAnchor anchor = { 0.5 - 0.5 * ux, 0.5 - 0.5 * uy };

  if (text[0] == '\0')
    return;
  clear_behind (pen, x, y, text_measure (pen->texts, style, text), anchor);
  theme_use (pen->cr, pen->theme->ink);
  text_draw (pen->texts, pen->cr, style, text, x, y, anchor);
}

static void
label_number (
    const Pen *pen, MountOffset at, double dx, double dy, double way, double value)
{
  g_autofree char *text = plain_number_text (value);

  draw_label (pen, at, dx, dy, way, text);
}

/* The line, rectangle or arc that a bearing can be moved over without steps. */
static void
trace_way (const Pen *pen, gboolean is_swapped)
{
  static const double corners[][2] = { { 0, 0 }, { 1, 0 }, { 1, 1 }, { 0, 1 } };
  const gboolean is_arc = pen->plate->kind == PLATE_ECCENTRIC;
  const int n = is_arc ? ARC_STEPS + 1 : plate_n_ways (pen->plate) == 2 ? 4 : 2;

  cairo_new_path (pen->cr);
  for (int i = 0; i < n; i++) {
    PlateSetting setting = is_arc ? part_way (pen->plate, i / (double) ARC_STEPS, 0.0)
                                  : part_way (pen->plate, corners[i][0], corners[i][1]);

    setting.is_swapped = is_swapped;
    const MountOffset at = plate_place (pen->plate, setting);
    cairo_line_to (pen->cr, x_of (pen, at), y_of (pen, at));
  }
  if (plate_n_ways (pen->plate) == 2)
    cairo_close_path (pen->cr);
}

static void
draw_swapped (const Pen *pen)
{
  theme_use (pen->cr, pen->theme->accent);
  theme_line (pen->cr, LINE_DASHED, pen->theme->thin);
  if (plate_n_ways (pen->plate) > 0) {
    trace_way (pen, TRUE);
    cairo_stroke (pen->cr);
  }
  for (guint i = 0; i < plate_n_places (pen->plate); i++) {
    const MountOffset at =
        plate_place (pen->plate, (PlateSetting){ .place = i, .is_swapped = TRUE });

    cairo_new_sub_path (pen->cr);
    cairo_set_dash (pen->cr, (const double[]){ 3.0 * pen->unit, 2.0 * pen->unit }, 2,
                    0.0);
    cairo_arc (pen->cr, x_of (pen, at), y_of (pen, at), 1.3 * DOT * pen->unit, 0.0,
               2.0 * G_PI);
    cairo_stroke (pen->cr);
  }
}

/* The figure at one end of a scale: away from the other end. */
static void
draw_end (const Pen *pen, PlateSetting end, PlateSetting other, double value)
{
  const MountOffset at = plate_place (pen->plate, end),
                    from = plate_place (pen->plate, other);

  label_number (pen, at, from.inboard - at.inboard, from.rearward - at.rearward,
                LABEL_WAY, value);
}

static void
draw_scale_ends (const Pen *pen)
{
  const PlateScale along = plate_along_range (pen->plate),
                   across = plate_across_range (pen->plate);
  const PlateSetting least = { .along = along.least, .across = across.least },
                     most = { .along = along.most, .across = across.least },
                     far = { .along = along.least, .across = across.most };

  if (plate_n_ways (pen->plate) == 1) {
    draw_end (pen, least, most, along.least);
    draw_end (pen, most, least, along.most);
    return;
  }
  draw_end (pen, most, least, along.most);
  draw_end (pen, far, least, across.most);
  draw_end (pen, least, (PlateSetting){ .along = along.most, .across = across.most },
            along.least);
}

/* Where a scale reads zero, a stroke across it. */
static void
draw_zero (const Pen *pen)
{
  const PlateScale along = plate_along_range (pen->plate);
  const MountOffset a = plate_place (pen->plate, (PlateSetting){ .along = along.least }),
                    b = plate_place (pen->plate, (PlateSetting){ .along = along.most }),
                    zero = plate_place (pen->plate, (PlateSetting){ 0 });
  const double dx = x_of (pen, b) - x_of (pen, a), dy = y_of (pen, b) - y_of (pen, a);
  const double length = hypot (dx, dy), t = TICK * pen->unit;

  if (along.least >= 0.0 || along.most <= 0.0 || !(length > 0.0))
    return;
  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  cairo_move_to (pen->cr, x_of (pen, zero) - t * dy / length,
                 y_of (pen, zero) + t * dx / length);
  cairo_line_to (pen->cr, x_of (pen, zero) + t * dy / length,
                 y_of (pen, zero) - t * dx / length);
  cairo_stroke (pen->cr);
}

static void
draw_way (const Pen *pen)
{
  trace_way (pen, FALSE);
  theme_use (pen->cr, pen->theme->glow);
  if (plate_n_ways (pen->plate) == 2) {
    cairo_fill_preserve (pen->cr);
  } else {
    cairo_set_dash (pen->cr, NULL, 0, 0.0);
    cairo_set_line_width (pen->cr, SLOT_WIDTH * pen->unit);
    cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_ROUND);
    cairo_stroke_preserve (pen->cr);
  }
  theme_use (pen->cr, pen->theme->accent);
  theme_line (pen->cr, LINE_FULL, pen->theme->thick);
  cairo_stroke (pen->cr);
  if (pen->plate->kind == PLATE_SLOT)
    draw_zero (pen);
  if (pen->plate->kind != PLATE_ECCENTRIC)
    draw_scale_ends (pen);
}

static void
draw_circle (const Pen *pen)
{
  const MountOffset centre = { pen->plate->inboard_mm, pen->plate->rearward_mm, 0.0 };

  theme_use (pen->cr, pen->theme->soft_ink);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, x_of (pen, centre), y_of (pen, centre),
             fabs (pen->plate->radius_mm) * pen->fit.scale, 0.0, 2.0 * G_PI);
  cairo_stroke (pen->cr);
}

/* What the marks of a list lead away from. */
static MountOffset
middle (const Plate *plate)
{
  const guint n = plate_n_places (plate);
  MountOffset sum = { 0 };

  if (plate->kind == PLATE_ECCENTRIC)
    return (MountOffset){ plate->inboard_mm, plate->rearward_mm, 0.0 };
  if (plate->kind == PLATE_FIXED)
    return sum;
  for (guint i = 0; i < n; i++) {
    const MountOffset at = plate_place (plate, (PlateSetting){ .place = i });

    sum.inboard += at.inboard / n;
    sum.rearward += at.rearward / n;
  }
  return sum;
}

static char *
mark (const Plate *plate, guint place)
{
  if (plate->kind == PLATE_HOLES)
    return g_strdup (g_array_index (plate->holes, PlateHole, place).label);
  if (plate->kind == PLATE_ECCENTRIC) {
    g_autofree char *turn =
        plain_number_text (g_array_index (plate->turns_deg, double, place));

    return g_strconcat (turn, "°", NULL);
  }
  return g_strdup ("");
}

static void
draw_places (const Pen *pen)
{
  const MountOffset from = middle (pen->plate);

  for (guint i = 0; i < plate_n_places (pen->plate); i++) {
    const MountOffset at = plate_place (pen->plate, (PlateSetting){ .place = i });
    g_autofree char *text = mark (pen->plate, i);

    theme_use (pen->cr, pen->theme->accent);
    cairo_new_path (pen->cr);
    cairo_arc (pen->cr, x_of (pen, at), y_of (pen, at), DOT * pen->unit, 0.0, 2.0 * G_PI);
    cairo_fill (pen->cr);
    draw_label (pen, at, from.inboard - at.inboard, from.rearward - at.rearward,
                DOT + 5.0, text != NULL ? text : "");
  }
}

/* One sign and its words; returns where the next may begin. */
static double
draw_key_words (const Pen *pen, double x, double y, const char *words)
{
  theme_use (pen->cr, pen->theme->soft_ink);
  return x + 18.0 * pen->unit +
         text_draw (pen->texts, pen->cr, small_style (pen, TEXT_PLAIN), words, x, y,
                    (TextAnchor){ 0.0, 0.5 })
             .width;
}

static void
draw_key (const Pen *pen)
{
  const double y = pen->height - pen->fit.key_height / 2.0, sign = KEY_SIGN * pen->unit;
  double x = 10.0 * pen->unit;

  draw_cross (pen, x + CROSS * pen->unit, y);
  x = draw_key_words (pen, x + sign, y, _ ("as measured"));
  if (pen->plate->can_swap && has_reach (pen->plate)) {
    theme_use (pen->cr, pen->theme->accent);
    theme_line (pen->cr, LINE_DASHED, pen->theme->thin);
    cairo_move_to (pen->cr, x, y);
    cairo_line_to (pen->cr, x + sign - 4.0 * pen->unit, y);
    cairo_stroke (pen->cr);
    x = draw_key_words (pen, x + sign + 2.0 * pen->unit, y, _ ("sides swapped"));
  }

  g_autofree char *number = plain_number_text (pen->fit.grid);
  /* Translators: the distance between the lines of a grid. */
  g_autofree char *text = g_strdup_printf (_ ("grid %s mm"), number);
  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, small_style (pen, TEXT_PLAIN), text,
             pen->width - 10.0 * pen->unit, y, (TextAnchor){ 1.0, 0.5 });
}

void
plate_sketch_draw (TextCache *texts,
                   cairo_t *cr,
                   const PlateSketchView *view,
                   double width,
                   double height)
{
  const Pen pen = { cr,
                    texts,
                    view->plate,
                    &view->theme,
                    plate_sketch_fit (view, width, height),
                    unit_of (&view->theme),
                    width,
                    height };

  theme_use (cr, view->theme.ground);
  cairo_paint (cr);
  draw_grid (&pen);
  draw_centre_lines (&pen);
  write_directions (&pen);
  if (has_reach (view->plate)) {
    if (view->plate->kind == PLATE_ECCENTRIC)
      draw_circle (&pen);
    if (view->plate->can_swap)
      draw_swapped (&pen);
    if (plate_n_ways (view->plate) > 0)
      draw_way (&pen);
    draw_places (&pen);
  }
  draw_cross (&pen, pen.fit.x, pen.fit.y);
  draw_key (&pen);
}
