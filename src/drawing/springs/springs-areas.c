/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What carries the wheel of the setup in hand, as areas: each with a quiet tint, hatching
 * of its own, and its name where there is room. */

#include "drawing/springs/springs-chart.h"

#include <math.h>

#define N STUDY_STATIONS

#define TINT 0.13
#define TINT_LIT 0.34
#define HATCH 0.42

/* Names stand in one column where they can: this far across the plot. */
#define NAME_ACROSS 0.74
#define NAME_ROOM 1.45 /* of the type's size, at least, from edge to edge */
#define NAME_PAD 4.0

typedef enum {
  HATCH_DOTTED, /* level lines of dots */
  HATCH_RISING,
  HATCH_FALLING,
  HATCH_CROSSED,
  HATCH_LEVEL,
  HATCH_UPRIGHT
} Hatch;

typedef struct {
  Colour on_light, on_dark;
  Hatch hatch;
  double pitch; /* pixels */
} AreaStyle;

#define PART(hex, shift) ((((hex) >> (shift)) % 256) / 255.0)
#define RGB(hex)                                                                         \
  {                                                                                      \
    PART (hex, 16), PART (hex, 8), PART (hex, 0), 1.0                                    \
  }

/* Hues of the setups' set; the hatching tells them apart alone. */
static const AreaStyle styles[N_SPRING_ELEMENTS] = {
  [SPRING_UNSPRUNG] = { RGB (0x6B6F76), RGB (0x9A9DA5), HATCH_DOTTED, 6.0 },
  [SPRING_BAR] = { RGB (0x9C6500), RGB (0xE69F00), HATCH_RISING, 8.0 },
  [SPRING_COIL] = { RGB (0x2B86B8), RGB (0x56B4E9), HATCH_FALLING, 8.0 },
  [SPRING_HELPER] = { RGB (0x008060), RGB (0x2DB88D), HATCH_CROSSED, 10.0 },
  [SPRING_BUMP_STOP] = { RGB (0xA94F86), RGB (0xD98AB8), HATCH_LEVEL, 4.0 },
  [SPRING_GAS] = { RGB (0x6B7800), RGB (0xF0E442), HATCH_UPRIGHT, 5.0 },
};

static Colour
colour_of (int element, const Theme *theme)
{
  return theme_legible (theme, theme->is_dark ? styles[element].on_dark
                                              : styles[element].on_light);
}

static double
x_of (const Chart *chart, int i)
{
  return chart->plot.x + chart->plot.width * i / (N - 1);
}

/* cairo counts in 24.8 fixed point: what lies far outside is brought nearer. */
static double
y_of (const Chart *chart, double value)
{
  return CLAMP (axis_to_pixel (chart->y, value), chart->plot.y - 1000.0,
                chart->plot.y + chart->plot.height + 1000.0);
}

/* Closes the band over the stations @first … @last. */
static void
trace_stretch (const Chart *chart,
               cairo_t *cr,
               const SpringStack *stack,
               int element,
               int first,
               int last)
{
  cairo_new_sub_path (cr);
  for (int i = first; i <= last; i++)
    cairo_line_to (cr, x_of (chart, i), y_of (chart, stack->high[element][i]));
  for (int i = last; i >= first; i--)
    cairo_line_to (cr, x_of (chart, i), y_of (chart, stack->low[element][i]));
  cairo_close_path (cr);
}

static void
trace_area (const Chart *chart, cairo_t *cr, const SpringStack *stack, int element)
{
  int first = -1;

  cairo_new_path (cr);
  for (int i = 0; i <= N; i++) {
    const bool is_there = i < N && !isnan (stack->high[element][i]);

    if (is_there && first < 0)
      first = i;
    if (!is_there && first >= 0) {
      trace_stretch (chart, cr, stack, element, first, i - 1);
      first = -1;
    }
  }
}

/* Lines x + slope · y = multiples of the pitch, over @box: tied to the drawing, so that
 * they stand still while an area grows. */
static void
add_slanted (cairo_t *cr, Frame box, double slope, double pitch)
{
  const double right = box.x + box.width, foot = box.y + box.height;
  const double a = box.x + slope * box.y, b = right + slope * foot;
  const double c = box.x + slope * foot, d = right + slope * box.y;
  const double least = fmin (fmin (a, b), fmin (c, d)),
               most = fmax (fmax (a, b), fmax (c, d));

  for (double at = pitch * ceil (least / pitch); at <= most; at += pitch) {
    cairo_move_to (cr, at - slope * box.y, box.y);
    cairo_line_to (cr, at - slope * foot, foot);
  }
}

static void
add_level (cairo_t *cr, Frame box, double pitch)
{
  for (double y = pitch * ceil (box.y / pitch) + 0.5; y < box.y + box.height;
       y += pitch) {
    cairo_move_to (cr, pitch * floor (box.x / pitch), y);
    cairo_line_to (cr, box.x + box.width, y);
  }
}

static void
add_hatch (cairo_t *cr, Frame box, const AreaStyle *style, double unit)
{
  const double pitch = round (style->pitch * unit);

  switch (style->hatch) {
  case HATCH_DOTTED:
  case HATCH_LEVEL:
    add_level (cr, box, pitch);
    break;
  case HATCH_CROSSED:
    add_slanted (cr, box, -1.0, pitch);
    add_slanted (cr, box, 1.0, pitch);
    break;
  case HATCH_UPRIGHT:
    add_slanted (cr, box, 0.0, pitch);
    break;
  default:
    add_slanted (cr, box, style->hatch == HATCH_RISING ? 1.0 : -1.0, pitch);
  }
}

/* What of the plot the area fills. */
static Frame
box_of (const Chart *chart, const SpringStack *stack, int element)
{
  const Frame plot = chart->plot;
  double top = plot.y + plot.height, bottom = plot.y, left = plot.x + plot.width,
         right = plot.x;

  for (int i = 0; i < N; i++)
    if (stack->high[element][i] > stack->low[element][i]) {
      top = fmin (top, y_of (chart, stack->high[element][i]));
      bottom = fmax (bottom, y_of (chart, stack->low[element][i]));
      left = fmin (left, x_of (chart, MAX (i - 1, 0)));
      right = fmax (right, x_of (chart, MIN (i + 1, N - 1)));
    }
  top = fmax (top, plot.y);
  bottom = fmin (bottom, plot.y + plot.height);
  return (Frame){ left, top, fmax (right - left, 0.0), fmax (bottom - top, 0.0) };
}

static void
draw_area (const SpringCharts *charts, const SpringsPen *pen, int element)
{
  const Chart *chart = &charts->charts[SPRINGS_LOAD];
  const Theme *theme = pen->chart.theme;
  const AreaStyle *style = &styles[element];
  const Colour colour = colour_of (element, theme);
  const Frame box = box_of (chart, &charts->stack, element);
  const double width = 0.8 * theme->thin;
  cairo_t *cr = pen->chart.cr;

  if (box.width <= 0.0 || box.height <= 0.0)
    return;
  cairo_save (cr);
  trace_area (chart, cr, &charts->stack, element);
  theme_use (cr, colour_with_alpha (colour, element == pen->lit ? TINT_LIT : TINT));
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  add_hatch (cr, box, style, theme->text / 12.0);
  theme_line (cr, LINE_FULL, style->hatch == HATCH_DOTTED ? 1.2 * width : width);
  if (style->hatch == HATCH_DOTTED) {
    const double dots[] = { 1.5 * theme->thin, round (style->pitch * theme->text / 12.0) -
                                                   1.5 * theme->thin };
    cairo_set_dash (cr, dots, 2, 0.0);
  }
  theme_use (cr, theme_quiet (theme, colour, HATCH));
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The lines between areas. */
static void
draw_edges (const SpringCharts *charts, const SpringsPen *pen, int element)
{
  const Chart *chart = &charts->charts[SPRINGS_LOAD];
  cairo_t *cr = pen->chart.cr;

  cairo_new_path (cr);
  trace_area (chart, cr, &charts->stack, element);
  theme_use (cr,
             theme_quiet (pen->chart.theme, colour_of (element, pen->chart.theme), 0.8));
  theme_line (cr, LINE_FULL, 0.7 * pen->chart.theme->thin);
  cairo_stroke (cr);
}

void
spring_areas_draw (const SpringCharts *charts, const SpringsPen *pen)
{
  const Frame plot = charts->charts[SPRINGS_LOAD].plot;
  cairo_t *cr = pen->chart.cr;

  cairo_save (cr);
  cairo_rectangle (cr, plot.x, plot.y, plot.width, plot.height);
  cairo_clip (cr);
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    if (charts->stack.is_there[e])
      draw_area (charts, pen, e);
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    if (charts->stack.is_there[e])
      draw_edges (charts, pen, e);
  cairo_restore (cr);
}

/* What of the band is free from edge to edge over @width about @middle; empty where there
 * is none. */
static Frame
clear_of_edges (const Chart *chart,
                const SpringStack *stack,
                int element,
                double middle,
                double width)
{
  const Frame plot = chart->plot;
  const double pitch = plot.width / (N - 1), x = middle - width / 2.0;
  const int first = (int) floor ((x - plot.x) / pitch),
            last = (int) ceil ((x + width - plot.x) / pitch);
  double top = plot.y, bottom = plot.y + plot.height;

  if (first < 0 || last >= N)
    return (Frame){ 0 };
  for (int i = first; i <= last; i++) {
    if (isnan (stack->high[element][i]))
      return (Frame){ 0 };
    top = fmax (top, axis_to_pixel (chart->y, stack->high[element][i]));
    bottom = fmin (bottom, axis_to_pixel (chart->y, stack->low[element][i]));
  }
  return (Frame){ x, top, width, fmax (bottom - top, 0.0) };
}

static bool
is_clear (const Chart *chart, const SpringsPen *pen, Frame box, bool minds_curves)
{
  const MapBox claim =
      map_box_upright ((PixelBox){ box.x, box.y, box.width, box.height });

  return map_is_free (pen->claims, &claim) &&
         (!minds_curves || chart_is_free (chart, box));
}

/* The place for a text of that size nearest to the column of names. */
static bool
find_room (const SpringCharts *charts,
           const SpringsPen *pen,
           int element,
           TextSize size,
           bool minds_curves,
           Frame *room)
{
  const Chart *chart = &charts->charts[SPRINGS_LOAD];
  const double wanted = chart->plot.x + NAME_ACROSS * chart->plot.width;
  const double need = NAME_ROOM * pen->chart.theme->small_text;
  double nearest = INFINITY;

  for (int i = 0; i < N; i++) {
    const double middle = x_of (chart, i), width = size.width + 2.0 * NAME_PAD;
    const Frame free = clear_of_edges (chart, &charts->stack, element, middle, width);
    const Frame box = { free.x, free.y + (free.height - need) / 2.0, width, need };

    if (free.height < need || fabs (middle - wanted) >= nearest ||
        !is_clear (chart, pen, box, minds_curves))
      continue;
    nearest = fabs (middle - wanted);
    *room = box;
  }
  return isfinite (nearest);
}

static bool
name_area (const SpringCharts *charts, const SpringsPen *pen, int element)
{
  const Theme *theme = pen->chart.theme;
  const TextStyle style = { theme->font, theme->small_text,
                            element == pen->lit ? TEXT_BOLD : TEXT_PLAIN };
  const char *name = spring_element_name ((SpringElement) element);
  const TextSize size = text_measure (pen->chart.texts, style, name);
  cairo_t *cr = pen->chart.cr;
  Frame box;

  if (!find_room (charts, pen, element, size, true, &box) &&
      !find_room (charts, pen, element, size, false, &box))
    return false;
  map_claim (pen->claims,
             map_box_upright ((PixelBox){ box.x, box.y, box.width, box.height }));
  theme_use (cr, colour_with_alpha (theme->ground, theme->ground.alpha > 0.0 ? 0.8 : 0));
  cairo_rectangle (cr, box.x, box.y + 1.0, box.width, box.height - 2.0);
  cairo_fill (cr);
  theme_use (cr, theme->ink);
  text_draw (pen->chart.texts, cr, style, name, box.x + box.width / 2.0,
             box.y + box.height / 2.0, (TextAnchor){ 0.5, 0.5 });
  return true;
}

void
spring_areas_name (const SpringCharts *charts, const SpringsPen *pen, SpringNamed *named)
{
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    named->elements[e] = charts->stack.is_there[e] && name_area (charts, pen, e);
}
