/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rulers at two edges, counted from the mount as measured, and the line that says what is
 * what. */

#include "drawing/mount-map/mount-map-private.h"

#include "drawing/pen/axis.h"
#include "drawing/sheet/sheet-label.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pixels at ordinary type size. */
#define LEAST_STEP 40.0 /* between labels */
/* A ruler has its first word from the one length on, its second from the other. */
#define ROOM_FOR_ONE 80.0
#define ROOM_FOR_BOTH 230.0
#define TICK 4.0
#define LABEL_AWAY 7.0
#define WORD_GAP 8.0
#define SAMPLE 24.0
#define SAMPLE_GAP 6.0
#define ENTRY_GAP 20.0
#define BOX 9.0
#define POINTER 5.0

typedef struct {
  double from, to; /* pixels along a ruler */
} Taken;

static AxisRange
ruler_range (const MapLayout *layout, double from, double to)
{
  const double span = layout->plot.width / layout->scale;
  const int most = MAX (2, (int) (layout->plot.width / (LEAST_STEP * layout->unit)));

  return (AxisRange){ from, to, axis_range_exact_in (UNIT_LENGTH, 0.0, span, most).step,
                      UNIT_LENGTH };
}

static void
draw_border (const MapPen *pen)
{
  const PixelBox p = pen->layout->plot;

  theme_use (pen->cr, pen->theme->body);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  cairo_rectangle (pen->cr, floor (p.x) + 0.5, floor (p.y) + 0.5, round (p.width),
                   round (p.height));
  cairo_stroke (pen->cr);
}

/* @at along the ruler, from its left or its top. */
static void
draw_tick (const MapPen *pen, bool is_below, double at)
{
  const PixelBox p = pen->layout->plot;
  const double tick = TICK * pen->unit;

  if (is_below) {
    cairo_move_to (pen->cr, floor (at) + 0.5, p.y + p.height);
    cairo_rel_line_to (pen->cr, 0.0, tick);
  } else {
    cairo_move_to (pen->cr, p.x, floor (at) + 0.5);
    cairo_rel_line_to (pen->cr, -tick, 0.0);
  }
}

static void
draw_figure (const MapPen *pen, bool is_below, double at, const char *text)
{
  const PixelBox p = pen->layout->plot;
  const double away = LABEL_AWAY * pen->unit;
  const TextStyle style = map_small (pen, TEXT_PLAIN);

  if (is_below)
    text_draw (pen->texts, pen->cr, style, text, at,
               p.y + p.height + away - 2.0 * pen->unit, (TextAnchor){ 0.5, 0.0 });
  else
    text_draw (pen->texts, pen->cr, style, text, p.x - away, at,
               (TextAnchor){ 1.0, 0.5 });
}

/* Ticks with figures where no word stands. */
static void
draw_scale (const MapPen *pen, bool is_below, Taken first, Taken last)
{
  const MapLayout *l = pen->layout;
  const double from = is_below ? l->window.inboard_from : l->window.rearward_from,
               to = is_below ? l->window.inboard_to : l->window.rearward_to;
  const AxisRange range = ruler_range (l, from, to);
  int first_tick, n = axis_range_ticks (range, &first_tick);
  char text[24];

  for (int k = first_tick; k < first_tick + n; k++) {
    const double mm = axis_tick (range, k);
    const Pixel p = map_pixel (l, (MountOffset){ mm, mm, 0.0 });
    const double at = is_below ? p.x : p.y;

    axis_tick_text (range, ABS (k), text, sizeof text);
    const TextSize size = text_measure (pen->texts, map_small (pen, TEXT_PLAIN), text);
    const double half = (is_below ? size.width : size.height) / 2.0 + 3.0 * pen->unit;

    theme_use (pen->cr, pen->theme->body);
    theme_line (pen->cr, LINE_FULL, pen->theme->thin);
    draw_tick (pen, is_below, at);
    cairo_stroke (pen->cr);
    theme_use (pen->cr, pen->theme->soft_ink);
    if (at - half > first.to && at + half < last.from)
      draw_figure (pen, is_below, at, text);
  }
}

/* A word at an end of a ruler; returns what it takes. */
static Taken
draw_word (const MapPen *pen, bool is_below, bool is_first, const char *word)
{
  const PixelBox p = pen->layout->plot;
  const TextStyle style = map_small (pen, TEXT_PLAIN);
  const TextSize size = text_measure (pen->texts, style, word);
  const double gap = WORD_GAP * pen->unit, away = LABEL_AWAY * pen->unit;
  const double start = is_below ? p.x : p.y,
               end = is_below ? p.x + p.width : p.y + p.height;

  if (size.width + (is_first ? ROOM_FOR_ONE : ROOM_FOR_BOTH) * pen->unit > end - start)
    return is_first ? (Taken){ -INFINITY, -INFINITY } : (Taken){ INFINITY, INFINITY };
  theme_use (pen->cr, pen->theme->soft_ink);
  cairo_save (pen->cr);
  if (is_below)
    cairo_translate (pen->cr, is_first ? start : end,
                     p.y + p.height + away - 2.0 * pen->unit);
  else {
    cairo_translate (pen->cr, p.x - away, is_first ? start : end);
    cairo_rotate (pen->cr, -G_PI / 2.0);
  }
  text_draw (pen->texts, pen->cr, style, word, 0.0, 0.0,
             (TextAnchor){ is_first == is_below ? 0.0 : 1.0, is_below ? 0.0 : 1.0 });
  cairo_restore (pen->cr);
  return is_first ? (Taken){ start, start + size.width + gap }
                  : (Taken){ end - size.width - gap, end };
}

static void
draw_ruler (const MapPen *pen, bool is_below, const char *first, const char *last)
{
  g_autofree char *to_first = g_strdup_printf (is_below ? "← %s" : "%s →", first);
  g_autofree char *to_last = g_strdup_printf (is_below ? "%s →" : "← %s", last);

  draw_scale (pen, is_below, draw_word (pen, is_below, true, to_first),
              draw_word (pen, is_below, false, to_last));
}

static double
name_width (const MapPen *pen, const char *name)
{
  return text_measure (pen->texts, map_small (pen, TEXT_PLAIN), name).width;
}

/* One entry of the legend from @x on, if it ends before @right; returns where the next
 * begins. */
typedef void (*DrawSample) (const MapPen *pen, double x, double y, gconstpointer data);
static double
draw_entry (const MapPen *pen,
            double x,
            double right,
            double sample,
            const char *name,
            DrawSample draw,
            gconstpointer data)
{
  const double at = x + (sample + SAMPLE_GAP) * pen->unit, y = pen->layout->legend_y;

  if (at + name_width (pen, name) > right)
    return x;
  draw (pen, x, floor (y - 0.35 * pen->theme->small_text) + 0.5, data);
  theme_use (pen->cr, pen->theme->ink);
  text_draw (pen->texts, pen->cr, map_small (pen, TEXT_PLAIN), name, at, y,
             (TextAnchor){ 0.0, TEXT_BASELINE });
  return at + name_width (pen, name) + ENTRY_GAP * pen->unit;
}

static void
draw_line_sample (const MapPen *pen, double x, double y, gconstpointer data)
{
  const MapFamily *family = data;

  map_family_use (pen, family, MAP_STRONG);
  cairo_move_to (pen->cr, x, y);
  cairo_line_to (pen->cr, x + SAMPLE * pen->unit, y);
  cairo_stroke (pen->cr);
}

static void
sample_box (const MapPen *pen, double x, double y, Colour colour)
{
  const double half = BOX / 2.0 * pen->unit;

  cairo_rectangle (pen->cr, x, y - half, 2.0 * half, 2.0 * half);
  theme_use (pen->cr, colour);
  cairo_fill (pen->cr);
}

static void
draw_band_sample (const MapPen *pen, double x, double y, gconstpointer data)
{
  double at = x;

  (void) data;
  for (guint f = 0; f < pen->n_families; f++)
    if (pen->families[f].has_band) {
      sample_box (pen, at, y, colour_with_alpha (pen->families[f].colour, 0.3));
      at += BOX * pen->unit;
    }
}

static void
draw_gap_sample (const MapPen *pen, double x, double y, gconstpointer data)
{
  (void) data;
  sample_box (pen, x, y, pen->theme->faint);
}

const char *
map_side_name (const MapPen *pen)
{
  if (!car_sides_differ (pen->view->car, pen->view->setup))
    return NULL;
  return pen->view->side == SIDE_RIGHT ? _ ("right side") : _ ("left side");
}

/* Ends at @right; returns where it begins. */
static double
write_at_right (const MapPen *pen, Colour colour, const char *text, double right)
{
  theme_use (pen->cr, colour);
  text_draw (pen->texts, pen->cr, map_small (pen, TEXT_PLAIN), text, right,
             pen->layout->legend_y, (TextAnchor){ 1.0, TEXT_BASELINE });
  return right - name_width (pen, text);
}

/* "lowered 20.0 mm", where there is room. */
static void
draw_height (const MapPen *pen, double left, double right)
{
  char text[64];

  lowering_text (car_setup (pen->view->car, pen->view->setup)->lowering_mm, text,
                 sizeof text);
  if (right - name_width (pen, text) >= left)
    write_at_right (pen, pen->theme->soft_ink, text, right);
}

static void
draw_legend (const MapPen *pen, gboolean has_gaps)
{
  const char *side = map_side_name (pen); /* before all else, at the right */
  double right = pen->layout->plot.x + pen->layout->plot.width;
  double x = pen->layout->plot.x;
  int n_bands = 0;

  if (side != NULL)
    right = write_at_right (pen, pen->theme->ink, side, right) - ENTRY_GAP * pen->unit;
  for (guint f = 0; f < pen->n_families; f++) {
    x = draw_entry (pen, x, right, SAMPLE, field_subject_name (pen->families[f].subject),
                    draw_line_sample, &pen->families[f]);
    n_bands += pen->families[f].has_band ? 1 : 0;
  }
  if (n_bands > 0)
    x = draw_entry (pen, x, right, n_bands * BOX, _ ("aimed for"), draw_band_sample,
                    NULL);
  if (has_gaps)
    x = draw_entry (pen, x, right, BOX, _ ("cannot be assembled"), draw_gap_sample, NULL);
  draw_height (pen, x, right);
}

void
map_frame_draw (const MapPen *pen, gboolean has_gaps)
{
  const PixelBox p = pen->layout->plot;

  draw_border (pen);
  draw_ruler (pen, true, C_ ("direction", "inboard"), C_ ("direction", "outboard"));
  draw_ruler (pen, false, C_ ("direction", "rearward"), C_ ("direction", "forward"));
  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, map_small (pen, TEXT_PLAIN), unit_symbol (UNIT_LENGTH),
             p.x - LABEL_AWAY * pen->unit,
             p.y + p.height + (LABEL_AWAY - 2.0) * pen->unit, (TextAnchor){ 1.0, 0.0 });
  draw_legend (pen, has_gaps);
}

static void
draw_pointer (const MapPen *pen, Pixel tip, Pixel d)
{
  const double u = POINTER * pen->unit;

  cairo_move_to (pen->cr, tip.x, tip.y);
  cairo_line_to (pen->cr, tip.x - u * d.x - 0.7 * u * d.y,
                 tip.y - u * d.y + 0.7 * u * d.x);
  cairo_line_to (pen->cr, tip.x - u * d.x + 0.7 * u * d.y,
                 tip.y - u * d.y - 0.7 * u * d.x);
  cairo_close_path (pen->cr);
}

void
map_frame_draw_mount (const MapPen *pen, MountOffset mount)
{
  const PixelBox p = pen->layout->plot;
  const Pixel at = map_pixel (pen->layout, mount);

  if (!pixel_box_has (p, at))
    return;
  draw_pointer (pen, (Pixel){ at.x, p.y + p.height }, (Pixel){ 0.0, -1.0 });
  draw_pointer (pen, (Pixel){ p.x, at.y }, (Pixel){ 1.0, 0.0 });
  theme_use (pen->cr, pen->theme->accent);
  cairo_fill (pen->cr);
}
