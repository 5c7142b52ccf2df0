/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/loads-board-private.h"
#include "model/number-text.h"

#include <glib/gi18n-lib.h>

#define MOST_STEPS 5
#define BAR 0.85         /* of the text, one bar's height */
#define SAMPLE 2.6       /* of the text, the stroke before a name */
#define HATCH 6.0        /* pixels between lines */
#define LEAST_SPAN 100.0 /* N */
#define BESIDE 5.0       /* pixels, from a bar to its figure */
#define WORDS_MOST 0.4   /* of the frame: more, and figures stand alone */

typedef struct {
  double tower, floor; /* N upward on the body */
} Shares;

static Shares
shares_of (const LoadsView *view, unsigned setup)
{
  const JointLoads *loads = &view->loads->setups[setup];

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

  for (unsigned i = 0; i < view->loads->n_setups; i++)
    if (loads_shows (view, i)) {
      extend (shares_of (view, i).tower, &low, &high);
      extend (shares_of (view, i).floor, &low, &high);
    }
  if (hold && bars->range.step > 0.0) {
    low = fmin (low, bars->range.low);
    high = fmax (high, bars->range.high);
  }
  bars->range = axis_range_round_in (UNIT_FORCE, low, high, MOST_STEPS);
}

static const char *
tower_word (void)
{
  return _ ("on the tower");
}

static const char *
floor_word (void)
{
  return _ ("on the floor");
}

/* Free with g_free (). */
static char *
label_text (double value, const char *word)
{
  char *force = unit_text (UNIT_FORCE, value, 0);

  if (word == NULL)
    return force;

  /* Translators: a force, and what it stands on: “1200 N on the tower”. */
  char *text = g_strdup_printf (_ ("%s %s"), force, word);
  g_free (force);
  return text;
}

static double
label_width (const LoadsPen *pen, double value, const char *word)
{
  g_autofree char *text = label_text (value, word);

  return text_measure (pen->texts, chart_small_style (pen->theme), text).width;
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

/* "3925 N on the tower", "3925 N", of the bar that needs most. */
static double
words_width (const LoadsPen *pen, bool with_words)
{
  double most = 0.0;

  for (unsigned i = 0; i < pen->view->loads->n_setups; i++) {
    const Shares shares = shares_of (pen->view, i);

    if (!loads_shows (pen->view, i) || !isfinite (shares.tower))
      continue;
    most =
        fmax (most, label_width (pen, shares.tower, with_words ? tower_word () : NULL));
    most =
        fmax (most, label_width (pen, shares.floor, with_words ? floor_word () : NULL));
  }
  return most;
}

static bool
has_words (const LoadsBars *bars, const LoadsPen *pen)
{
  return words_width (pen, true) <= WORDS_MOST * bars->frame.width;
}

/* Figures stand past the longest bars. */
static Axis
axis_of (const LoadsBars *bars, const LoadsPen *pen)
{
  const double room = words_width (pen, has_words (bars, pen)) + 2.0 * BESIDE;

  return (Axis){ bars->range.low, bars->range.high, bars->frame.x,
                 bars->frame.x + fmax (bars->frame.width - room, 1.0) };
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
  SetupStyle style;
  bool is_solid;
  const char *word; /* or NULL */
} Bar;

/* The tower's bar is solid, the floor's hatched. */
static void
draw_bar (const LoadsPen *pen, Axis axis, const Bar *bar)
{
  const double height = round (BAR * pen->theme->text);
  const double zero = axis_to_pixel (axis, 0.0), end = axis_to_pixel (axis, bar->value);
  const Frame f = { fmin (zero, end), bar->y, fabs (end - zero), height };
  g_autofree char *text = label_text (bar->value, bar->word);

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
  text_draw (pen->texts, pen->cr, chart_small_style (pen->theme), text,
             fmax (zero, end) + BESIDE, bar->y + height / 2.0, (TextAnchor){ 0.0, 0.5 });
}

/* A stroke of the setup's own line with its marker, and its name. */
static void
draw_name (const LoadsBars *bars, const LoadsPen *pen, unsigned setup, double y)
{
  const Theme *theme = pen->theme;
  const SetupStyle style = loads_style (pen->view, setup);
  const Study *study = pen->view->loads->springs->study;
  const double middle = y + round (0.65 * theme->text), wide = SAMPLE * theme->text;

  theme_use_style (pen->cr, &style, theme->line);
  cairo_move_to (pen->cr, bars->frame.x, middle);
  cairo_rel_line_to (pen->cr, wide, 0.0);
  cairo_stroke (pen->cr);
  theme_marker (pen->cr, style.marker, bars->frame.x + wide / 2.0, middle,
                0.6 * theme->text);
  theme_use (pen->cr, theme->ink);
  text_draw_within (pen->texts, pen->cr,
                    setup == study->in_hand ? chart_title_style (theme)
                                            : chart_small_style (theme),
                    study->setups[setup].name, bars->frame.x + wide + 0.6 * theme->text,
                    y + theme->text, bars->frame.width - wide - 0.6 * theme->text);
}

static void
draw_row (const LoadsBars *bars, const LoadsPen *pen, unsigned setup, double y)
{
  const Theme *theme = pen->theme;
  const SetupStyle style = loads_style (pen->view, setup);
  const Shares shares = shares_of (pen->view, setup);
  const Axis axis = axis_of (bars, pen);
  const double bar = round (BAR * theme->text), top = y + round (1.5 * theme->text);
  const bool words = has_words (bars, pen);
  const Bar tower = { shares.tower, top, style, true, words ? tower_word () : NULL };
  const Bar on_floor = { shares.floor, top + bar + 2.0, style, false,
                         words ? floor_word () : NULL };

  draw_name (bars, pen, setup, y);
  if (isfinite (shares.tower)) {
    draw_bar (pen, axis, &tower);
    draw_bar (pen, axis, &on_floor);
    return;
  }
  theme_use (pen->cr, theme->soft_ink);
  text_draw_within (pen->texts, pen->cr, chart_small_style (theme),
                    _ ("This load cannot be carried here."), bars->frame.x,
                    top + theme->text, bars->frame.width);
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
    const double x = floor (axis_to_pixel (axis, axis_tick (bars->range, i))) + 0.5;

    theme_use (pen->cr, i == 0 ? pen->theme->body : pen->theme->faint);
    cairo_move_to (pen->cr, x, top);
    cairo_line_to (pen->cr, x, foot);
    cairo_stroke (pen->cr);
    axis_tick_text (bars->range, i, text, sizeof text);
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
  for (unsigned i = 0; i < pen->view->loads->n_setups; i++)
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
  for (unsigned i = 0; i < view->loads->n_setups; i++)
    if (loads_shows (view, i)) {
      if (y >= top && y < top + row)
        return (int) i;
      top += row;
    }
  return -1;
}
