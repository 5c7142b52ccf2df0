/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/board/lowering.h"

#include "drawing/board/lowering-chart.h"
#include "drawing/board/lowering-words.h"

#include <glib/gi18n-lib.h>

#define MARGIN 12.0
#define GAP 18.0

/* Wider than this to its height, the small charts stand beside the large one. */
#define WIDE 1.35
#define BESIDE_PART 0.34 /* of the width */
#define BELOW_PART 0.34  /* of the height */
#define NAMES_PART 0.27  /* of a chart's width, at most */
#define MARKER_REACH 12.0

enum {
  HEIGHTS,
  CAMBER_GAIN,
  BUMP_STEER,
  N_CHARTS
};

static const Quantity quantities[N_CHARTS] = { QUANTITY_ROLL_CENTRE_HEIGHT,
                                               QUANTITY_CAMBER_GAIN,
                                               QUANTITY_BUMP_STEER };

typedef struct {
  double x, y;
  bool is_there;
} Standing;

struct Lowering {
  TextCache *texts;
  LoweringChart charts[N_CHARTS];
  AxisRange range; /* of the lowering */
  LoweringBox slots[N_CHARTS];
  double words_height; /* of the sentences below */
  GArray *standing;    /* of Standing: each setup on the roll centre's curve */
};

Lowering *
lowering_new (void)
{
  Lowering *lowering = g_new0 (Lowering, 1);

  lowering->texts = text_cache_new ();
  lowering->standing = g_array_new (FALSE, TRUE, sizeof (Standing));
  for (int i = 0; i < N_CHARTS; i++)
    lowering->charts[i].quantity = quantities[i];
  return lowering;
}

void
lowering_free (Lowering *lowering)
{
  if (lowering == NULL)
    return;
  text_cache_free (lowering->texts);
  g_array_unref (lowering->standing);
  g_free (lowering);
}

/* Down to the raised body where that is asked for or a setup stands there; up to the end
 * of bump. */
static AxisRange
lowering_range (const LoweringView *view)
{
  const Study *study = view->study;
  double low = view->is_raised ? -LOWERING_RAISED : 0.0;

  for (int i = 0; i < (int) study->n_setups; i++)
    if (lowering_shows (study, i))
      low = fmin (low,
                  LOWERING_RAISED * floor (study->setups[i].lowering / LOWERING_RAISED));
  low = fmax (low, study->range.from);
  /* a car without bump travel */
  if (study->range.to - low < 1.0)
    low = study->range.from;
  return (AxisRange){ low, study->range.to, 0.0, UNIT_LENGTH };
}

typedef struct {
  char *effect, *difference;
} Sentences;

/* A figure and its unit stay on one line. */
static char *
tied (char *sentence)
{
  g_autoptr (GRegex) gap = g_regex_new ("(?<=[0-9]) (?=(mm|in)\\b)", 0, 0, NULL);
  char *text = g_regex_replace_literal (gap, sentence, -1, 0, "\u00a0", 0, NULL);

  g_free (sentence);
  return text;
}

static Sentences
make_sentences (const Study *study)
{
  const StudyCorner *hand = study_in_hand (study);
  const LoweringEffect effect = lowering_effect (hand, study->cg_height);

  return (Sentences){ tied (lowering_sentence (&effect)),
                      tied (lowering_difference_sentence (hand)) };
}

static void
clear_sentences (Sentences *sentences)
{
  g_free (sentences->effect);
  g_free (sentences->difference);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Sentences, clear_sentences)

/* Draws the sentences from @y on where @cr is given; returns their height. */
static double
lay_out_words (const Lowering *lowering,
               cairo_t *cr,
               const LoweringView *view,
               const Sentences *sentences,
               double y,
               double width)
{
  const Theme *t = &view->theme;
  const TextStyle bold = lowering_style (t, TEXT_BOLD, false),
                  plain = lowering_style (t, TEXT_PLAIN, true);
  const double room = width - 2.0 * MARGIN;
  const double first =
      text_measure_wrapped (lowering->texts, bold, sentences->effect, room).height;
  const double between = 0.35 * t->text;

  if (cr != NULL) {
    const bool is_good = study_in_hand (view->study)->at_height.status == POSE_OK;

    theme_use (cr, is_good ? t->ink : t->warning);
    text_draw_wrapped (lowering->texts, cr, bold, sentences->effect, MARGIN, y, room);
    theme_use (cr, t->soft_ink);
    text_draw_wrapped (lowering->texts, cr, plain, sentences->difference, MARGIN,
                       y + first + between, room);
  }
  return first + between +
         text_measure_wrapped (lowering->texts, plain, sentences->difference, room)
             .height;
}

static double
axis_height (const Theme *theme)
{
  return round (3.1 * theme->small_text);
}

/* The slots of the charts in what the sentences leave. */
static void
place_slots (Lowering *lowering, const Theme *theme, double width, double height)
{
  const double inner = width - 2.0 * MARGIN, high = height - 2.0 * MARGIN;
  LoweringBox *slots = lowering->slots;

  if (width > WIDE * height) {
    const double small = round (BESIDE_PART * inner), x = MARGIN + inner - small;
    const double half = round ((high - GAP) / 2.0);

    slots[HEIGHTS] = (LoweringBox){ MARGIN, MARGIN, inner - small - GAP, high };
    slots[CAMBER_GAIN] = (LoweringBox){ x, MARGIN, small, half };
    slots[BUMP_STEER] = (LoweringBox){ x, MARGIN + high - half, small, half };
  } else {
    const double small = round (BELOW_PART * high), y = MARGIN + high - small;
    const double half = round ((inner - GAP) / 2.0);

    slots[HEIGHTS] =
        (LoweringBox){ MARGIN, MARGIN, inner, high - small - 0.5 * theme->text };
    slots[CAMBER_GAIN] = (LoweringBox){ MARGIN, y, half, small };
    slots[BUMP_STEER] = (LoweringBox){ MARGIN + inner - half, y, half, small };
  }
}

/* Widths change in steps, lest the plots shiver in a drag. */
static double
stepped (double width, double step)
{
  return step * ceil (width / step);
}

static void
place_chart (Lowering *lowering, const LoweringView *view, int i, AxisRange range)
{
  LoweringChart *chart = &lowering->charts[i];
  const Theme *t = &view->theme;
  const LoweringBox slot = lowering->slots[i];
  const double title = lowering_title_height (t), foot = axis_height (t);
  const double high = fmax (slot.height - title - foot, 10.0);
  const int most = CLAMP ((int) (high / (2.4 * t->small_text)), 2, 8);

  lowering_chart_fit (chart, view->study, range, most, view->hold_axes);

  const double left =
      stepped (lowering_chart_label_width (chart, lowering->texts, t) + 13.0,
               t->small_text);
  const double names = lowering_name_width (chart, lowering->texts, t, view->study);
  const double right =
      names > 0.0 ? fmin (stepped (names + 10.0, t->small_text), NAMES_PART * slot.width)
                  : 0.5 * t->text;
  const double wide = fmax (slot.width - left - right, 10.0);

  lowering_chart_place (chart, slot,
                        (LoweringBox){ slot.x + left, slot.y + title, wide, high },
                        range);
}

static void
note_standing (Lowering *lowering, const Study *study)
{
  g_array_set_size (lowering->standing, study->n_setups);
  for (guint i = 0; i < study->n_setups; i++) {
    Standing *s = &g_array_index (lowering->standing, Standing, i);

    s->is_there = study->setups[i].is_shown &&
                  lowering_chart_standing (&lowering->charts[HEIGHTS], &study->setups[i],
                                           &s->x, &s->y);
  }
}

static void
draw_caption (const Lowering *lowering,
              cairo_t *cr,
              const LoweringView *view,
              const LoweringChart *chart)
{
  const Theme *t = &view->theme;
  const TextStyle style = lowering_style (t, TEXT_PLAIN, true);
  g_autofree char *whole =
      g_strdup_printf (_ ("lowering of the body from the measured height, %s"),
                       unit_symbol (UNIT_LENGTH));
  g_autofree char *less = g_strdup_printf (_ ("lowering, %s"), unit_symbol (UNIT_LENGTH));
  const LoweringBox plot = chart->plot;
  const bool is_long = text_measure (lowering->texts, style, whole).width <= plot.width;

  theme_use (cr, t->soft_ink);
  text_draw (lowering->texts, cr, style, is_long ? whole : less,
             plot.x + plot.width / 2.0, plot.y + plot.height + round (2.9 * style.size),
             (TextAnchor){ 0.5, TEXT_BASELINE });
}

static void
draw_charts (const Lowering *lowering, cairo_t *cr, const LoweringView *view)
{
  for (int i = 0; i < N_CHARTS; i++) {
    const LoweringChart *chart = &lowering->charts[i];
    const double pixels = chart->plot.width;
    const int most = CLAMP ((int) (pixels / (3.2 * view->theme.small_text)), 2, 10);
    const LoweringPen pen = {
      .cr = cr,
      .texts = lowering->texts,
      .theme = &view->theme,
      .study = view->study,
      .lowering = axis_range_exact_in (UNIT_LENGTH, lowering->range.low,
                                       lowering->range.high, most),
      .is_lit = (int) chart->quantity == view->lit,
      .show_cursor = view->show_cursor,
    };

    lowering_chart_draw (chart, &pen);
    draw_caption (lowering, cr, view, chart);
  }
}

static void
draw_ground (cairo_t *cr, const Theme *theme, double width, double height)
{
  if (theme->ground.alpha <= 0.0)
    return;
  theme_use (cr, theme->ground);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_fill (cr);
}

static double
title_height (const Lowering *lowering, const LoweringView *view, double width)
{
  return view->title == NULL
             ? 0.0
             : title_block_height (lowering->texts, &view->theme, view->title,
                                   view->study, width - 2.0 * MARGIN) +
                   2.0 * MARGIN;
}

void
lowering_draw (Lowering *lowering,
               cairo_t *cr,
               const LoweringView *view,
               double width,
               double height)
{
  g_return_if_fail (view->study != NULL && width > 0.0 && height > 0.0);

  g_auto (Sentences) sentences = make_sentences (view->study);
  const double foot = title_height (lowering, view, width);
  const double words =
      lay_out_words (lowering, NULL, view, &sentences, 0.0, width) + MARGIN;

  lowering->words_height = view->hold_axes ? fmax (words, lowering->words_height) : words;
  lowering->range = lowering_range (view);
  place_slots (lowering, &view->theme, width, height - foot - lowering->words_height);
  for (int i = 0; i < N_CHARTS; i++)
    place_chart (lowering, view, i, lowering->range);
  note_standing (lowering, view->study);

  cairo_save (cr);
  /* half the time of cairo's own choice, and no difference to the eye */
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  draw_ground (cr, &view->theme, width, height);
  draw_charts (lowering, cr, view);
  lay_out_words (lowering, cr, view, &sentences, height - foot - lowering->words_height,
                 width);
  if (view->title != NULL)
    title_block_draw (lowering->texts, cr, &view->theme, view->title, MARGIN,
                      height - foot + MARGIN, width - 2.0 * MARGIN, view->study);
  cairo_restore (cr);
}

static bool
is_inside (LoweringBox box, double x, double y)
{
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}

static int
setup_near (const Lowering *lowering, double x, double y)
{
  double nearest = MARKER_REACH;
  int setup = -1;

  for (guint i = 0; i < lowering->standing->len; i++) {
    const Standing *s = &g_array_index (lowering->standing, Standing, i);
    const double distance = hypot (x - s->x, y - s->y);

    if (s->is_there && distance <= nearest) {
      nearest = distance;
      setup = (int) i;
    }
  }
  return setup;
}

LoweringHit
lowering_hit (const Lowering *lowering, double x, double y)
{
  LoweringHit hit = { .quantity = -1, .setup = setup_near (lowering, x, y) };
  int under = HEIGHTS;

  for (int i = 0; i < N_CHARTS; i++)
    if (is_inside (lowering->charts[i].slot, x, y)) {
      under = i;
      hit.quantity = (int) lowering->charts[i].quantity;
      hit.on_plot = is_inside (lowering->charts[i].plot, x, y);
      break;
    }

  const LoweringChart *chart = &lowering->charts[under];
  if (chart->plot.width > 0.0)
    hit.lowering =
        CLAMP (axis_to_data (chart->x, x), lowering->range.low, lowering->range.high);
  return hit;
}

bool
lowering_frame (const Lowering *lowering,
                Quantity quantity,
                double *x,
                double *y,
                double *width,
                double *height)
{
  for (int i = 0; i < N_CHARTS; i++)
    if (lowering->charts[i].quantity == quantity) {
      const LoweringBox plot = lowering->charts[i].plot;

      *x = plot.x;
      *y = plot.y;
      *width = plot.width;
      *height = plot.height;
      return plot.width > 0.0;
    }
  return false;
}

bool
lowering_standing_place (const Lowering *lowering, unsigned setup, double *x, double *y)
{
  if (setup >= lowering->standing->len)
    return false;

  const Standing *s = &g_array_index (lowering->standing, Standing, setup);
  if (!s->is_there)
    return false;
  *x = s->x;
  *y = s->y;
  return true;
}
