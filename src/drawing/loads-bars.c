/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/loads-board-private.h"
#include "model/number-text.h"

#include <glib/gi18n-lib.h>

#define MOST_STEPS 5
#define BAR 0.85         /* of the text, one bar's height */
#define HATCH 6.0        /* pixels between lines */
#define LEAST_SPAN 100.0 /* N */

typedef struct {
  double tower, floor; /* N upward on the body */
} Shares;

static Shares
shares_of (const LoadsView *view, unsigned setup)
{
  const JointLoads *loads = &view->loads[setup];

  return loads->is_solved ? (Shares){ loads->load_on_tower, loads->load_on_floor }
                          : (Shares){ NAN, NAN };
}

static void
extend (double value, double *low, double *high)
{
  if (!isfinite (value))
    return;
  *low = fmin (*low, value);
  *high = fmax (*high, value);
}

void
loads_bars_fit (LoadsBars *bars, const LoadsView *view, bool hold)
{
  double low = 0.0, high = LEAST_SPAN;

  for (unsigned i = 0; i < view->springs->n_setups; i++)
    if (loads_shows (view, i)) {
      extend (shares_of (view, i).tower, &low, &high);
      extend (shares_of (view, i).floor, &low, &high);
    }
  if (hold && bars->range.step > 0.0) {
    low = fmin (low, bars->range.low);
    high = fmax (high, bars->range.high);
  }
  bars->range = axis_range_round (low, high, MOST_STEPS);
}

static double
row_height (const Theme *theme)
{
  return round (3.9 * theme->text);
}

double
loads_bars_height (const LoadsView *view)
{
  return row_height (&view->theme) * loads_count_shown (view) +
         round (2.2 * view->theme.small_text);
}

static Axis
axis_of (const LoadsBars *bars, const LoadsPen *pen)
{
  const TextStyle style = chart_small_style (pen->theme);
  /* figures stand past the longest bars */
  const double room = text_measure (pen->texts, style, "−00000 N").width + 6.0;
  const double left = bars->range.low < 0.0 ? room : 0.0;

  return (Axis){ bars->range.low, bars->range.high, bars->frame.x + left,
                 bars->frame.x + bars->frame.width - room };
}

static void
hatch (const LoadsPen *pen, Frame f)
{
  cairo_t *cr = pen->cr;

  cairo_save (cr);
  cairo_rectangle (cr, f.x, f.y, f.width, f.height);
  cairo_clip (cr);
  for (double x = f.x - f.height; x < f.x + f.width; x += HATCH) {
    cairo_move_to (cr, x, f.y + f.height);
    cairo_rel_line_to (cr, f.height, -f.height);
  }
  cairo_stroke (cr);
  cairo_restore (cr);
}

typedef struct {
  double value, y;
  double right; /* where its words must end */
  SetupStyle style;
  bool is_solid;
  const char *word;
} Bar;

/* The tower's bar is solid, the floor's hatched; the name is written in the row's head.
 */
static void
draw_bar (const LoadsPen *pen, Axis axis, const Bar *bar)
{
  const double height = round (BAR * pen->theme->text);
  const double zero = axis_to_pixel (axis, 0.0), end = axis_to_pixel (axis, bar->value);
  const Frame f = { fmin (zero, end), bar->y, fabs (end - zero), height };
  const TextStyle small = chart_small_style (pen->theme);
  g_autofree char *newtons = number_text (bar->value, 0);
  g_autofree char *text = g_strdup_printf (_ ("%s N %s"), newtons, bar->word);
  const double wide = text_measure (pen->texts, small, text).width;
  const double right = fmax (zero, end) + 5.0;
  const bool has_room = right + wide <= bar->right;
  g_autofree char *figure = g_strdup_printf (_ ("%s N"), newtons);

  theme_use (pen->cr, colour_with_alpha (bar->style.colour, bar->is_solid ? 0.8 : 0.18));
  cairo_rectangle (pen->cr, f.x, f.y, f.width, f.height);
  cairo_fill (pen->cr);
  theme_use (pen->cr, bar->style.colour);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  if (!bar->is_solid)
    hatch (pen, f);
  cairo_rectangle (pen->cr, f.x + 0.5, f.y + 0.5, fmax (f.width - 1.0, 0.0),
                   height - 1.0);
  cairo_stroke (pen->cr);
  theme_use (pen->cr, pen->theme->ink);
  text_draw (pen->texts, pen->cr, small, has_room ? text : figure, right,
             bar->y + height / 2.0, (TextAnchor){ 0.0, 0.5 });
}

static void
draw_row (const LoadsBars *bars, const LoadsPen *pen, unsigned setup, double y)
{
  const LoadsView *view = pen->view;
  const Theme *theme = pen->theme;
  const SetupStyle style = loads_style (view, setup);
  const bool is_in_hand = setup == view->springs->study->in_hand;
  const TextStyle name =
      is_in_hand ? chart_title_style (theme) : chart_small_style (theme);
  const Shares shares = shares_of (view, setup);
  const Axis axis = axis_of (bars, pen);
  const double bar = round (BAR * theme->text), top = y + round (1.35 * theme->text);
  const double size = 0.7 * theme->text;

  theme_use (pen->cr, style.colour);
  theme_marker (pen->cr, style.marker, bars->frame.x + size, y + 0.7 * theme->text, size);
  theme_use (pen->cr, theme->ink);
  text_draw_within (pen->texts, pen->cr, name, view->springs->study->setups[setup].name,
                    bars->frame.x + 2.2 * size, y + theme->text,
                    bars->frame.width - 2.2 * size);
  if (!isfinite (shares.tower)) {
    theme_use (pen->cr, theme->soft_ink);
    text_draw_within (pen->texts, pen->cr, chart_small_style (theme),
                      _ ("This load cannot be carried here."), bars->frame.x + 2.2 * size,
                      top + theme->text, bars->frame.width - 2.2 * size);
    return;
  }
  const double right = bars->frame.x + bars->frame.width;
  const Bar tower = { shares.tower, top, right, style, true, _ ("on the tower") };
  const Bar on_floor = { shares.floor, top + bar + 2.0, right,
                         style,        false,           _ ("on the floor") };

  draw_bar (pen, axis, &tower);
  draw_bar (pen, axis, &on_floor);
}

static void
draw_axis (const LoadsBars *bars, const LoadsPen *pen, double top, double foot)
{
  const TextStyle small = chart_small_style (pen->theme);
  const Axis axis = axis_of (bars, pen);
  int first, n = axis_range_ticks (bars->range, &first);
  char text[32];

  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  for (int i = first; i < first + n; i++) {
    const double x = floor (axis_to_pixel (axis, i * bars->range.step)) + 0.5;

    theme_use (pen->cr, i == 0 ? pen->theme->body : pen->theme->faint);
    cairo_move_to (pen->cr, x, top);
    cairo_line_to (pen->cr, x, foot);
    cairo_stroke (pen->cr);
    axis_format (i * bars->range.step, axis_step_decimals (bars->range.step), text,
                 sizeof text);
    theme_use (pen->cr, pen->theme->soft_ink);
    text_draw (pen->texts, pen->cr, small, text, x, foot + 1.4 * small.size,
               (TextAnchor){ 0.5, TEXT_BASELINE });
  }
}

void
loads_bars_draw (const LoadsBars *bars, const LoadsPen *pen)
{
  const double row = row_height (pen->theme);
  const unsigned n = loads_count_shown (pen->view);
  double y = bars->frame.y;

  draw_axis (bars, pen, y, y + n * row);
  for (unsigned i = 0; i < pen->view->springs->n_setups; i++)
    if (loads_shows (pen->view, i)) {
      draw_row (bars, pen, i, y);
      y += row;
    }
}

int
loads_bars_hit (const LoadsBars *bars, const LoadsView *view, double x, double y)
{
  const double row = row_height (&view->theme);
  double top = bars->frame.y;

  if (x < bars->frame.x || x > bars->frame.x + bars->frame.width)
    return -1;
  for (unsigned i = 0; i < view->springs->n_setups; i++)
    if (loads_shows (view, i)) {
      if (y >= top && y < top + row)
        return (int) i;
      top += row;
    }
  return -1;
}
