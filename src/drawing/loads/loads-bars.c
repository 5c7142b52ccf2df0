/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/loads/loads-board-private.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>

#define MOST_STEPS 5
#define BAR 0.85         /* of the text, one bar's height */
#define SAMPLE 2.6       /* of the text, the stroke before a name */
#define HATCH 6.0        /* pixels between lines */
#define LEAST_SPAN 100.0 /* N */
#define BESIDE_FROM 32.0 /* texts of width: names stand beside bars */
#define NAMES_MOST 0.4   /* of the frame */
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

static void
fit (LoadsBars *bars, const LoadsView *view, int most_steps, bool hold)
{
  double low = 0.0, high = LEAST_SPAN;

  for (unsigned i = 0; i < bars->n_rows; i++) {
    extend (shares_of (view, bars->rows[i]).tower, &low, &high);
    extend (shares_of (view, bars->rows[i]).floor, &low, &high);
  }
  if (hold && bars->range.step > 0.0) {
    low = fmin (low, bars->range.low);
    high = fmax (high, bars->range.high);
  }
  bars->range = axis_range_round_in (UNIT_FORCE, low, high, most_steps);
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

/* "3925 N on the tower", "3925 N", of the bar that needs most. */
static double
words_width (const LoadsBars *bars, const LoadsPen *pen, bool with_words)
{
  double most = 0.0;

  for (unsigned i = 0; i < bars->n_rows; i++) {
    const Shares shares = shares_of (pen->view, bars->rows[i]);

    if (!isfinite (shares.tower))
      continue;
    most =
        fmax (most, label_width (pen, shares.tower, with_words ? tower_word () : NULL));
    most =
        fmax (most, label_width (pen, shares.floor, with_words ? floor_word () : NULL));
  }
  return most;
}

static double
before_name (const Theme *theme)
{
  return (SAMPLE + 0.6) * theme->text;
}

static TextStyle
name_style (const LoadsPen *pen, bool is_in_hand)
{
  TextStyle style = chart_small_style (pen->theme);

  style.weight = is_in_hand ? TEXT_BOLD : TEXT_PLAIN;
  return style;
}

/* Of all that are shown, each as if it were in hand, so that it depends neither on which
 * one is nor on how many rows there are. */
static double
names_width (const LoadsPen *pen)
{
  const Study *study = pen->view->loads->springs->study;
  double most = 0.0;

  for (unsigned i = 0; i < study->n_setups; i++)
    if (loads_shows (pen->view, i))
      most = fmax (most, text_measure (pen->texts, name_style (pen, true),
                                       study->setups[i].name)
                             .width);
  return before_name (pen->theme) + most + pen->theme->text;
}

static double
axis_height (const Theme *theme)
{
  return round (2.2 * theme->small_text);
}

static double
bar_height (const Theme *theme)
{
  return round (BAR * theme->text);
}

static void
choose_rows (LoadsBars *bars, const LoadsView *view, double height)
{
  const unsigned in_hand = view->loads->springs->study->in_hand;
  const unsigned most =
      (unsigned) CLAMP (floor (height / bars->row), 0.0, (double) LOADS_MOST_ROWS);

  bars->n_rows = 0;
  for (unsigned i = 0; i < view->loads->n_setups && bars->n_rows < most; i++) {
    const unsigned kept = i < in_hand ? 1 : 0;

    if (i == in_hand || (loads_shows (view, i) && bars->n_rows + kept < most))
      bars->rows[bars->n_rows++] = i;
  }
}

/* Figures stand past the longest bars, and a negative figure of the axis keeps inside. */
static void
place_axis (LoadsBars *bars, const LoadsPen *pen, bool hold)
{
  const Theme *theme = pen->theme;
  const double room =
      words_width (bars, pen, bars->has_words) + 2.0 * BESIDE + 0.5 * theme->text;
  const double wide = fmax (bars->frame.width - bars->names - room, 1.0);

  fit (bars, pen->view, (int) CLAMP (wide / (4.5 * theme->text), 1.0, MOST_STEPS), hold);
  const double inset =
      bars->names <= 0.0 && bars->range.low < 0.0 ? 1.5 * theme->text : 0.0;
  const double left = bars->frame.x + bars->names + inset;

  bars->axis =
      (Axis){ bars->range.low, bars->range.high, left, left + fmax (wide - inset, 1.0) };
}

double
loads_bars_place (LoadsBars *bars, const LoadsPen *pen, Frame area, bool hold)
{
  const Theme *theme = pen->theme;
  const bool is_wide = area.width >= BESIDE_FROM * theme->text;
  const double bars_high = 2.0 * bar_height (theme) + 1.0;

  bars->names = is_wide ? fmin (names_width (pen), NAMES_MOST * area.width) : 0.0;
  bars->row = round (bars_high + (is_wide ? 0.75 : 2.0) * theme->text);
  choose_rows (bars, pen->view, area.height - axis_height (theme));
  bars->frame = area;
  bars->frame.height = bars->n_rows * bars->row;
  bars->has_words =
      words_width (bars, pen, true) <= WORDS_MOST * (area.width - bars->names);
  place_axis (bars, pen, hold);
  return bars->n_rows > 0 ? bars->frame.height + axis_height (theme) : 0.0;
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
  const double height = bar_height (pen->theme);
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
  const Study *study = pen->view->loads->springs->study;
  const SetupStyle style = loads_style (pen->view, setup);
  const double wide = SAMPLE * theme->text, before = before_name (theme);
  const double room =
      (bars->names > 0.0 ? bars->names - theme->text : bars->frame.width) - before;

  theme_use_style (pen->cr, &style, theme->line);
  cairo_move_to (pen->cr, bars->frame.x, y);
  cairo_rel_line_to (pen->cr, wide, 0.0);
  cairo_stroke (pen->cr);
  theme_marker (pen->cr, style.marker, bars->frame.x + wide / 2.0, y, 0.6 * theme->text);
  theme_use (pen->cr, theme->ink);
  text_draw_within (pen->texts, pen->cr, name_style (pen, setup == study->in_hand),
                    study->setups[setup].name, bars->frame.x + before,
                    y + 0.36 * theme->text, room);
}

/* Where the bars of a row begin. */
static double
bars_top (const LoadsBars *bars, const LoadsPen *pen, double y)
{
  return y + round ((bars->names > 0.0 ? 0.3 : 1.5) * pen->theme->text);
}

static void
draw_row (const LoadsBars *bars, const LoadsPen *pen, unsigned setup, double y)
{
  const Theme *theme = pen->theme;
  const SetupStyle style = loads_style (pen->view, setup);
  const Shares shares = shares_of (pen->view, setup);
  const double high = bar_height (theme), top = bars_top (bars, pen, y);
  const Bar tower = { shares.tower, top, style, true,
                      bars->has_words ? tower_word () : NULL };
  const Bar on_floor = { shares.floor, top + high + 1.0, style, false,
                         bars->has_words ? floor_word () : NULL };

  draw_name (bars, pen, setup, bars->names > 0.0 ? top + high : y + 0.7 * theme->text);
  if (isfinite (shares.tower)) {
    draw_bar (pen, bars->axis, &tower);
    draw_bar (pen, bars->axis, &on_floor);
    return;
  }
  theme_use (pen->cr, theme->soft_ink);
  text_draw_within (pen->texts, pen->cr, chart_small_style (theme),
                    _ ("This load cannot be carried here."), bars->frame.x + bars->names,
                    top + high + 0.36 * theme->text, bars->frame.width - bars->names);
}

/* Lines stand behind the bars and not behind names. */
static void
draw_tick (const LoadsBars *bars, const LoadsPen *pen, int tick)
{
  const double x =
      floor (axis_to_pixel (bars->axis, axis_tick (bars->range, tick))) + 0.5;
  const double foot = bars->frame.y + bars->frame.height;
  const TextStyle small = chart_small_style (pen->theme);
  char text[32];

  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  theme_use (pen->cr, tick == 0 ? pen->theme->body : pen->theme->faint);
  for (unsigned i = 0; i < bars->n_rows; i++) {
    const double y = bars->frame.y + i * bars->row;

    cairo_move_to (pen->cr, x, bars->names > 0.0 ? y : bars_top (bars, pen, y));
    cairo_line_to (pen->cr, x, y + bars->row);
  }
  cairo_stroke (pen->cr);
  axis_tick_text (bars->range, tick, text, sizeof text);
  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, small, text, x, foot + 1.4 * small.size,
             (TextAnchor){ 0.5, TEXT_BASELINE });
}

void
loads_bars_draw (const LoadsBars *bars, const LoadsPen *pen)
{
  int first, n = axis_range_ticks (bars->range, &first);

  if (bars->n_rows == 0)
    return;
  for (int i = first; i < first + n; i++)
    draw_tick (bars, pen, i);
  for (unsigned i = 0; i < bars->n_rows; i++)
    draw_row (bars, pen, bars->rows[i], bars->frame.y + i * bars->row);
}

int
loads_bars_hit (const LoadsBars *bars, double x, double y)
{
  const double row = floor ((y - bars->frame.y) / bars->row);

  if (x < bars->frame.x || x > bars->frame.x + bars->frame.width || !(row >= 0.0) ||
      row >= bars->n_rows)
    return -1;
  return (int) bars->rows[(unsigned) row];
}
