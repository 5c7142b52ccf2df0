/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/title-block.h"

#include "drawing/chart/chart.h"
#include "drawing/pen/axis.h"
#include "model/study/setup-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

TitleBlock
title_block_for (const Car *car, const CarSetup *setup, const char *date)
{
  return (TitleBlock){ .car = car->name,
                       .setup = setup_title (setup),
                       .mount = setup->mount,
                       .lowering = setup->lowering_mm,
                       .toe = setup->toe,
                       .date = date };
}

const char *
caution_text (void)
{
  return _ (
      "Estimates from the points entered: check on an alignment rack. Support the car "
      "on stands; springs and torsion bars under preload store dangerous energy. Check "
      "tyre, brake and steering clearances on the car through full travel and lock. "
      "Changes to ride height, track and mounts may need approval: local rules and "
      "licensed practice come first.");
}

/* "15.0 mm inboard": @positive or @negative with the length in it. */
static char *
directed (double value, const char *positive, const char *negative)
{
  char number[32];

  unit_format_whole (UNIT_LENGTH, fabs (value), 1, FALSE, number, sizeof number);
  return g_strdup_printf (round (value * 10.0) < 0.0 ? negative : positive, number);
}

static char *
lowering_words (double lowering)
{
  char number[32];

  unit_format_whole (UNIT_LENGTH, fabs (lowering), 1, FALSE, number, sizeof number);
  return g_strdup_printf (round (lowering * 10.0) < 0.0 ? _ ("raised %s")
                                                        : _ ("lowered %s"),
                          number);
}

char *
title_block_adjustment (const TitleBlock *title)
{
  g_autofree char *sideways = directed (title->mount.inboard, C_ ("mount", "%s inboard"),
                                        C_ ("mount", "%s outboard"));
  g_autofree char *lengthways =
      directed (title->mount.rearward, C_ ("mount", "%s rearward"),
                C_ ("mount", "%s forward"));
  g_autofree char *upward =
      directed (title->mount.up, C_ ("mount", "%s up"), C_ ("mount", "%s down"));
  g_autofree char *height = lowering_words (title->lowering);
  const char *toe =
      title->toe == TOE_RESET ? _ ("toe reset by the tie rod") : _ ("toe as moved");

  return g_strdup_printf (_ ("mount %s, %s, %s · %s · %s"), sideways, lengthways, upward,
                          height, toe);
}

static TextStyle
style_of (const Theme *theme, TextWeight weight)
{
  return (TextStyle){ theme->font, weight == TEXT_BOLD ? theme->text : theme->small_text,
                      weight };
}

static double
line_height (const Theme *theme)
{
  return round (1.5 * theme->text);
}

typedef struct {
  TextCache *texts;
  cairo_t *cr;
  const Theme *theme;
  bool omits_measured;
} Pen;

/* One curve of a board. */
typedef struct {
  SetupStyle style;
  const char *name;
  bool is_hand;
} LegendEntry;

/* Entry @i of the legend, the corner as measured last; false past the end. */
static bool
legend_entry (const Pen *pen, const Study *study, unsigned i, LegendEntry *entry)
{
  for (unsigned s = 0; s < study->n_setups; s++)
    if (study->setups[s].is_shown && i-- == 0) {
      const bool is_hand = s == study->in_hand;
      *entry = (LegendEntry){ is_hand ? theme_hand_style (pen->theme, s)
                                      : theme_setup_style (pen->theme, s),
                              study->setups[s].title, is_hand };
      return true;
    }
  if (i > 0 || pen->omits_measured || !chart_shows_measured (study))
    return false;
  *entry =
      (LegendEntry){ theme_measured_style (pen->theme), study->measured.title, false };
  return true;
}

static double
sample_width (const Theme *theme)
{
  return round (3.2 * theme->text);
}

static double
entry_width (const Pen *pen, const LegendEntry *entry)
{
  return sample_width (pen->theme) + round (2.0 * pen->theme->text) +
         text_measure (pen->texts, style_of (pen->theme, TEXT_PLAIN), entry->name).width;
}

/* The entry's sample and name, cut where the strip ends. */
static void
draw_entry (const Pen *pen, const LegendEntry *entry, double x, double y, double width)
{
  const Theme *theme = pen->theme;
  const double sample = sample_width (theme), right = x + width;
  const double middle = floor (y - 0.35 * theme->small_text) + 0.5;

  theme_use_style (pen->cr, &entry->style, (entry->is_hand ? 1.3 : 0.8) * theme->line);
  cairo_move_to (pen->cr, x, middle);
  cairo_line_to (pen->cr, x + sample, middle);
  cairo_stroke (pen->cr);
  theme_marker (pen->cr, entry->style.marker, x + sample / 2.0, middle,
                0.5 * theme->text);
  x += sample + round (0.5 * theme->text);
  theme_use (pen->cr, theme->ink);
  text_draw_within (pen->texts, pen->cr, style_of (theme, TEXT_PLAIN), entry->name, x, y,
                    fmax (right - x, theme->text));
}

/* Entries one after the other, in as many lines as they need; draws them when the pen has
 * a context. Returns how many lines. */
static unsigned
flow_legend (const Pen *pen, const Study *study, double x, double y, double width)
{
  const double line = line_height (pen->theme);
  double at = 0.0;
  unsigned n_lines = 0;
  LegendEntry entry;

  for (unsigned i = 0; legend_entry (pen, study, i, &entry); i++) {
    const double wide = entry_width (pen, &entry);
    if (n_lines == 0 || at + wide > width) {
      n_lines++;
      at = 0.0;
    }
    if (pen->cr != NULL)
      draw_entry (pen, &entry, x + at, y + (n_lines - 1) * line, fmin (wide, width - at));
    at += wide;
  }
  return n_lines;
}

/* A single curve needs no legend. */
static bool
has_legend (const Pen *pen, const Study *study)
{
  LegendEntry second;

  return legend_entry (pen, study, 1, &second);
}

double
legend_height (TextCache *texts,
               const Theme *theme,
               const Study *study,
               bool omits_measured,
               double width)
{
  const Pen pen = { texts, NULL, theme, omits_measured };

  return has_legend (&pen, study)
             ? flow_legend (&pen, study, 0.0, 0.0, width) * line_height (theme)
             : 0.0;
}

void
legend_draw (TextCache *texts,
             cairo_t *cr,
             const Theme *theme,
             const Study *study,
             bool omits_measured,
             double x,
             double y,
             double width)
{
  const Pen pen = { texts, cr, theme, omits_measured };

  if (has_legend (&pen, study))
    flow_legend (&pen, study, x, y + line_height (theme), width);
}

double
title_block_height (TextCache *texts,
                    const Theme *theme,
                    const TitleBlock *title,
                    const Study *study,
                    double width)
{
  const TextStyle small = style_of (theme, TEXT_PLAIN);
  g_autofree char *adjustment = title_block_adjustment (title);

  return 2.0 * line_height (theme) +
         legend_height (texts, theme, study, title->omits_measured, width) +
         text_measure_wrapped (texts, small, adjustment, width).height +
         text_measure_wrapped (texts, small, caution_text (), width).height;
}

/* Draws a name that may take the line up to @right; returns where it ends. */
static double
draw_name (
    const Pen *pen, TextWeight weight, const char *name, double x, double y, double right)
{
  if (name[0] == '\0' || right - x < 2.0 * pen->theme->text)
    return x;
  theme_use (pen->cr, pen->theme->ink);
  return x + text_draw_within (pen->texts, pen->cr, style_of (pen->theme, weight), name,
                               x, y, right - x)
                 .width;
}

/* The car, its setup, and from the right where the drawing comes from. */
static void
draw_names (const Pen *pen, const TitleBlock *title, double x, double right, double y)
{
  const Theme *theme = pen->theme;
  const TextStyle small = style_of (theme, TEXT_PLAIN);
  const double gap = round (1.5 * theme->text);
  g_autofree char *source = title->date != NULL
                                ? g_strdup_printf ("%s · Strutwright", title->date)
                                : g_strdup ("Strutwright");

  theme_use (pen->cr, theme->soft_ink);
  right -= text_draw (pen->texts, pen->cr, small, source, right, y,
                      (TextAnchor){ 1.0, TEXT_BASELINE })
               .width +
           gap;
  x = draw_name (pen, TEXT_BOLD, title->car, x, y, x + 0.6 * (right - x)) + gap;
  draw_name (pen, TEXT_PLAIN, title->setup, x, y, right);
}

void
title_block_draw (TextCache *texts,
                  cairo_t *cr,
                  const Theme *theme,
                  const TitleBlock *title,
                  double x,
                  double y,
                  double width,
                  const Study *study)
{
  const Pen pen = { texts, cr, theme, title->omits_measured };
  const TextStyle small = style_of (theme, TEXT_PLAIN);
  const double line = line_height (theme);
  g_autofree char *adjustment = title_block_adjustment (title);

  theme_use (cr, theme->body);
  theme_line (cr, LINE_FULL, theme->thin);
  cairo_move_to (cr, x, floor (y) + 0.5);
  cairo_line_to (cr, x + width, floor (y) + 0.5);
  cairo_stroke (cr);

  draw_names (&pen, title, x, x + width, y + line);
  legend_draw (texts, cr, theme, study, title->omits_measured, x, y + line, width);
  const double below =
      y + 1.4 * line + legend_height (texts, theme, study, title->omits_measured, width);
  theme_use (cr, theme->ink);
  const TextSize size = text_draw_wrapped (texts, cr, small, adjustment, x, below, width);
  theme_use (cr, theme->soft_ink);
  text_draw_wrapped (texts, cr, small, caution_text (), x,
                     below + size.height + 0.2 * line, width);
}
