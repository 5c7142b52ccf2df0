/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/chart.h"
#include "example-study.h"

static const Frame plot = { 50.0, 20.0, 320.0, 100.0 };

typedef struct {
  Car *car;
  Study *study;
  Chart chart;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = example_car ();
  f->study = study_new ();
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  chart_clear (&f->chart);
  car_free (f->car);
  study_free (f->study);
}

static void
load (Fixture *f, Quantity quantity, double inboard, double rearward, double up)
{
  const CarSetup setup = example_setup (inboard, rearward, up);

  car_setup (f->car, 0)->mount = setup.mount;
  study_solve (f->study, f->car, 0, 0.0);
  if (f->chart.quantity != quantity || f->chart.info.name == NULL) {
    chart_clear (&f->chart);
    chart_init (&f->chart, quantity);
  }
  chart_load (&f->chart, f->study);
}

static void
place (Fixture *f)
{
  chart_place (&f->chart, plot, plot, f->study->range);
}

/* What was drawn of a curve. */
typedef struct {
  int n_pieces, n_lines;
  gboolean is_passed[STUDY_STATIONS]; /* some line runs above, below or through it */
  double farthest;                    /* of those, upright from its line, pixels */
} Traced;

static void
pass_stations (Traced *traced,
               const Chart *chart,
               const double values[STUDY_STATIONS],
               cairo_path_data_t from,
               cairo_path_data_t to)
{
  for (int i = 0; i < STUDY_STATIONS; i++) {
    const double x = chart->plot.x + chart->plot.width * i / (STUDY_STATIONS - 1);
    const double part = (x - from.point.x) / (to.point.x - from.point.x);
    const double y = from.point.y + part * (to.point.y - from.point.y);

    if (x < from.point.x - 0.01 || x > to.point.x + 0.01)
      continue;
    traced->is_passed[i] = TRUE;
    traced->farthest =
        fmax (traced->farthest, fabs (axis_to_pixel (chart->y, values[i]) - y));
  }
}

static Traced
trace (const Chart *chart, const double values[STUDY_STATIONS])
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 8, 8);
  cairo_t *cr = cairo_create (surface);
  Traced traced = { 0 };

  const int said = chart_trace (chart, cr, values);
  cairo_path_t *path = cairo_copy_path (cr);
  for (int i = 0; i < path->num_data; i += path->data[i].header.length) {
    const gboolean is_line = path->data[i].header.type == CAIRO_PATH_LINE_TO;
    traced.n_pieces += path->data[i].header.type == CAIRO_PATH_MOVE_TO;
    traced.n_lines += is_line;
    if (is_line)
      pass_stations (&traced, chart, values, path->data[i - 1], path->data[i + 1]);
  }
  cairo_path_destroy (path);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);

  g_assert_cmpint (said, ==, traced.n_pieces);
  return traced;
}

static void
test_values_are_in_units_of_the_screen (Fixture *f, gconstpointer data)
{
  (void) data;
  load (f, QUANTITY_CAMBER, 0, 0, 0);
  /* the middle station is travel 0: the camber as measured */
  g_assert_cmpfloat_with_epsilon (f->chart.hand.values[STUDY_STATIONS / 2], -0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (f->chart.hand.at_standing, -0.5, 1e-9);
  g_assert_cmpuint (f->chart.n_others, ==, 0);
  g_assert_false (chart_load (&f->chart, f->study));
}

/* A drag of the setup in hand leaves what is drawn behind it alone. */
static void
test_only_the_curve_in_hand_moves (Fixture *f, gconstpointer data)
{
  (void) data;
  example_add_setups (f->car, 4);
  load (f, QUANTITY_CAMBER, 1, 0, 0);
  g_assert_cmpuint (f->chart.n_others, ==, 4); /* three setups, and as measured */
  g_assert_cmpint (f->chart.others[0].setup, ==, CHART_MEASURED);
  car_setup (f->car, 0)->mount.inboard = 7.0;
  study_solve (f->study, f->car, 0, 30.0);
  g_assert_false (chart_load (&f->chart, f->study));

  car_setup (f->car, 2)->lowering_mm = 26.0;
  study_solve (f->study, f->car, 0, 30.0);
  g_assert_true (chart_load (&f->chart, f->study));
  car_setup (f->car, 3)->is_hidden = TRUE;
  study_solve (f->study, f->car, 0, 30.0);
  g_assert_true (chart_load (&f->chart, f->study));
  g_assert_cmpuint (f->chart.n_others, ==, 3);
}

/* A baseline that was moved is compared with the corner as measured, which is drawn once
 * even where another setup is just that. */
static void
test_the_measured_corner_is_drawn_once (Fixture *f, gconstpointer data)
{
  (void) data;
  example_add_setups (f->car, 2);
  load (f, QUANTITY_CAMBER, 15, 0, 0);
  g_assert_true (chart_shows_measured (f->study));
  g_assert_cmpuint (f->chart.n_others, ==, 2);
  car_setup (f->car, 1)->mount = (MountOffset){ 0 };
  study_solve (f->study, f->car, 0, 0.0);
  chart_load (&f->chart, f->study);
  g_assert_false (chart_shows_measured (f->study));
  g_assert_cmpuint (f->chart.n_others, ==, 1);
  g_assert_cmpint (f->chart.others[0].setup, ==, 1);
}

static void
test_every_curve_knows_where_it_stands (Fixture *f, gconstpointer data)
{
  (void) data;
  example_add_setups (f->car, 6);
  load (f, QUANTITY_ROLL_CENTRE_HEIGHT, 0, 0, 0);
  for (unsigned i = 0; i < f->chart.n_others; i++) {
    const ChartCurve *curve = &f->chart.others[i];
    const double lowering = car_setup (f->car, (guint) curve->setup)->lowering_mm;
    /* stations are a millimetre apart */
    g_assert_cmpfloat (curve->standing, ==, lowering);
    g_assert_cmpfloat_with_epsilon (curve->at_standing,
                                    curve->values[80 + (int) lowering], 1e-6);
  }
}

static ChartPen
pen_for (Fixture *f, TextCache *texts, const Theme *theme)
{
  return (ChartPen){ .texts = texts,
                     .theme = theme,
                     .study = f->study,
                     .has_reference = true,
                     .label_room = 80.0 };
}

/* No label covers another; with little room the one in hand is the last to go. */
static void
test_names_at_the_ends_do_not_touch (Fixture *f, gconstpointer data)
{
  (void) data;
  static const double heights[] = { 200.0, 100.0, 40.0, 14.0 };
  const Theme theme = theme_light ();
  CurveLabel labels[CURVE_LABELS_MOST];

  example_add_setups (f->car, 9);
  load (f, QUANTITY_CAMBER, 3, 0, 0);
  chart_fit (&f->chart, 5, false);
  for (gsize h = 0; h < G_N_ELEMENTS (heights); h++) {
    const Frame frame = { 50.0, 20.0, 320.0, heights[h] };
    const ChartPen pen = pen_for (f, NULL, &theme);
    chart_place (&f->chart, frame, frame, f->study->range);
    const unsigned n = chart_place_labels (&f->chart, &pen, labels);

    g_assert_cmpuint (n, ==, 10);
    g_assert_true (labels[0].is_kept);
    for (unsigned i = 0; i < n; i++)
      for (unsigned j = 0; j < i; j++)
        if (labels[i].is_kept && labels[j].is_kept)
          g_assert_cmpfloat (fabs (labels[i].place - labels[j].place), >,
                             1.2 * theme.small_text);
  }
}

static void
test_hidden_setups_are_not_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  example_add_setups (f->car, 5);
  for (guint i = 0; i < 5; i++)
    car_setup (f->car, i)->is_hidden = TRUE;
  f->car->baseline = 3;
  load (f, QUANTITY_CAMBER, 3, 0, 0);
  g_assert_cmpint (f->chart.hand.setup, ==, 0);
  g_assert_cmpuint (f->chart.n_others, ==, 1);
  g_assert_cmpint (f->chart.others[0].setup, ==, 3);
}

/* 0.02 pixels, and what cairo's fixed point of 1/256 adds at both ends. */
static void
test_few_lines_pass_every_station (Fixture *f, gconstpointer data)
{
  (void) data;
  int n_lines = 0;

  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    load (f, q, 15, 10, 0);
    chart_fit (&f->chart, 5, false);
    place (f);
    const Traced traced = trace (&f->chart, f->chart.hand.values);
    if (f->chart.is_clipped)
      continue;
    n_lines += traced.n_lines;
    g_assert_cmpint (traced.n_pieces, ==, 1);
    g_assert_cmpfloat (traced.farthest, <, 0.02 + 2.0 / 256.0);
    for (int i = 0; i < STUDY_STATIONS; i++)
      g_assert_true (traced.is_passed[i]);
  }
  g_assert_cmpint (n_lines, <, N_QUANTITIES * STUDY_STATIONS / 4);
}

static void
test_no_corner_is_cut (Fixture *f, gconstpointer data)
{
  (void) data;
  double values[STUDY_STATIONS];

  load (f, QUANTITY_CAMBER, 0, 0, 0);
  chart_fit (&f->chart, 5, false);
  place (f);
  for (int i = 0; i < STUDY_STATIONS; i++)
    values[i] = f->chart.range.low + (i % 7 < 3 ? 0.1 : 0.3);
  const Traced traced = trace (&f->chart, values);
  g_assert_cmpint (traced.n_pieces, ==, 1);
  g_assert_cmpfloat (traced.farthest, <, 0.02 + 2.0 / 256.0);
}

static void
test_a_gap_breaks_the_line (Fixture *f, gconstpointer data)
{
  (void) data;
  double values[STUDY_STATIONS];

  load (f, QUANTITY_CAMBER, 0, 0, 0);
  chart_fit (&f->chart, 5, false);
  place (f);
  memcpy (values, f->chart.hand.values, sizeof values);
  g_assert_cmpint (trace (&f->chart, values).n_pieces, ==, 1);

  for (int i = 40; i < 50; i++)
    values[i] = NAN;
  const Traced traced = trace (&f->chart, values);
  g_assert_cmpint (traced.n_pieces, ==, 2);
  for (int i = 0; i < STUDY_STATIONS; i++)
    g_assert_true (traced.is_passed[i] == (i < 40 || i >= 50));
}

static void
test_a_jump_through_infinity_breaks_the_line (Fixture *f, gconstpointer data)
{
  (void) data;
  double values[STUDY_STATIONS];

  load (f, QUANTITY_CAMBER, 0, 0, 0);
  chart_fit (&f->chart, 5, false);
  place (f);
  for (int i = 0; i < STUDY_STATIONS; i++)
    values[i] = 30.0 / (80.5 - i);
  g_assert_cmpint (trace (&f->chart, values).n_pieces, ==, 2);
}

/* Its swing arm is infinite near 70 mm of bump; most of its length lies near 3 m. */
static void
test_infinity_does_not_flatten_the_rest (Fixture *f, gconstpointer data)
{
  (void) data;
  double largest = 0.0;
  int n_inside = 0;

  load (f, QUANTITY_SWING_ARM_LENGTH, 0, 0, 0);
  for (int i = 0; i < STUDY_STATIONS; i++)
    largest = fmax (largest, fabs (f->chart.hand.values[i]));
  chart_fit (&f->chart, 5, false);
  for (int i = 0; i < STUDY_STATIONS; i++)
    n_inside += f->chart.hand.values[i] >= f->chart.range.low &&
                f->chart.hand.values[i] <= f->chart.range.high;

  g_assert_true (f->chart.is_clipped);
  g_assert_cmpfloat (largest, >, 2.0 * f->chart.range.high);
  g_assert_cmpint (n_inside, >=, STUDY_STATIONS * 8 / 10);
  g_assert_cmpint (n_inside, <, STUDY_STATIONS);

  load (f, QUANTITY_CAMBER, 0, 0, 0);
  chart_fit (&f->chart, 5, false);
  g_assert_false (f->chart.is_clipped);
}

static void
test_gaps_are_found_with_their_reason (Fixture *f, gconstpointer data)
{
  (void) data;
  ChartGap gaps[CHART_MOST_GAPS];

  load (f, QUANTITY_CAMBER, 15, 10, 0);
  g_assert_cmpint (chart_find_gaps (study_in_hand (f->study), gaps), ==, 0);

  load (f, QUANTITY_CAMBER, -400, 0, -200);
  const int n_lost = STUDY_STATIONS - (int) study_in_hand (f->study)->n_assembled;
  int n_in_gaps = 0;
  const int n = chart_find_gaps (study_in_hand (f->study), gaps);
  g_assert_cmpint (n, >, 0);
  for (int i = 0; i < n; i++) {
    n_in_gaps += gaps[i].last - gaps[i].first + 1;
    for (int j = gaps[i].first; j <= gaps[i].last; j++) {
      g_assert_cmpint (study_in_hand (f->study)->stations[j].status, ==, gaps[i].status);
      g_assert_true (isnan (f->chart.hand.values[j]));
    }
  }
  g_assert_cmpint (n_in_gaps, ==, n_lost);
}

static void
test_held_axes_only_grow (Fixture *f, gconstpointer data)
{
  (void) data;
  AxisRange last = { 0 };

  for (int i = 0; i < 60; i++) {
    load (f, QUANTITY_CAMBER, 40.0 * sin (0.2 * i), 0, 0);
    chart_fit (&f->chart, 5, i > 0);
    const AxisRange range = f->chart.range;
    if (i > 0) {
      g_assert_cmpfloat (range.low, <=, last.low + 1e-9);
      g_assert_cmpfloat (range.high, >=, last.high - 1e-9);
    }
    last = range;
  }

  load (f, QUANTITY_CAMBER, 0, 0, 0);
  g_assert_false (chart_fit (&f->chart, 5, true));
  g_assert_true (chart_fit (&f->chart, 5, false));
  g_assert_cmpfloat (f->chart.range.high - f->chart.range.low, <, last.high - last.low);
}

static void
assert_covered (const Chart *chart, const ChartCurve *curve)
{
  for (int i = 0; i < STUDY_STATIONS; i++) {
    g_assert_cmpfloat (curve->values[i], >, chart->range.low);
    g_assert_cmpfloat (curve->values[i], <, chart->range.high);
  }
}

static void
test_axes_cover_all_curves (Fixture *f, gconstpointer data)
{
  (void) data;
  example_add_setups (f->car, 6);
  static const Quantity smooth[] = { QUANTITY_CAMBER, QUANTITY_TOE_IN, QUANTITY_TRAIL,
                                     QUANTITY_ROLL_CENTRE_HEIGHT, QUANTITY_ARM_RATIO };

  for (gsize q = 0; q < G_N_ELEMENTS (smooth); q++) {
    load (f, smooth[q], 15, 10, 0);
    chart_fit (&f->chart, 5, false);
    assert_covered (&f->chart, &f->chart.hand);
    for (unsigned i = 0; i < f->chart.n_others; i++)
      assert_covered (&f->chart, &f->chart.others[i]);
  }
}

static void
test_a_flat_curve_stays_flat (Fixture *f, gconstpointer data)
{
  (void) data;
  load (f, QUANTITY_TOE_IN, 0, 0, 0);
  for (int i = 0; i < STUDY_STATIONS; i++)
    f->chart.hand.values[i] = 0.05 + 0.01 * i / STUDY_STATIONS;
  chart_fit (&f->chart, 5, false);
  g_assert_cmpfloat (f->chart.range.high - f->chart.range.low, >=, 0.2);
}

static void
test_nothing_assembled_still_has_an_axis (Fixture *f, gconstpointer data)
{
  (void) data;
  load (f, QUANTITY_CAMBER, 0, 0, 0);
  for (int i = 0; i < STUDY_STATIONS; i++)
    f->chart.hand.values[i] = NAN;
  chart_fit (&f->chart, 5, false);
  g_assert_true (isfinite (f->chart.range.low));
  g_assert_cmpfloat (f->chart.range.high, >, f->chart.range.low);
}

static void
test_sign_words_keep_off_the_curves (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autoptr (TextCache) texts = text_cache_new ();
  const Theme theme = theme_light ();

  /* camber falls from droop to bump: the right top corner is free, the left is not */
  load (f, QUANTITY_CAMBER, 0, 0, 0);
  chart_fit (&f->chart, 5, false);
  place (f);
  chart_place_words (&f->chart, texts, &theme);
  g_assert_cmpint (f->chart.words_above, ==, WORDS_RIGHT);
  g_assert_false (chart_place_words (&f->chart, texts, &theme));

  for (int i = 0; i < STUDY_STATIONS; i++)
    f->chart.hand.values[i] = -f->chart.hand.values[i] + 0.5;
  chart_place_words (&f->chart, texts, &theme);
  g_assert_cmpint (f->chart.words_above, !=, WORDS_RIGHT);
}

#define ADD(name, function)                                                              \
  g_test_add ("/chart/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("values-are-in-units-of-the-screen", test_values_are_in_units_of_the_screen);
  ADD ("only-the-curve-in-hand-moves", test_only_the_curve_in_hand_moves);
  ADD ("the-measured-corner-is-drawn-once", test_the_measured_corner_is_drawn_once);
  ADD ("every-curve-knows-where-it-stands", test_every_curve_knows_where_it_stands);
  ADD ("names-at-the-ends-do-not-touch", test_names_at_the_ends_do_not_touch);
  ADD ("hidden-setups-are-not-drawn", test_hidden_setups_are_not_drawn);
  ADD ("few-lines-pass-every-station", test_few_lines_pass_every_station);
  ADD ("no-corner-is-cut", test_no_corner_is_cut);
  ADD ("a-gap-breaks-the-line", test_a_gap_breaks_the_line);
  ADD ("a-jump-through-infinity-breaks-the-line",
       test_a_jump_through_infinity_breaks_the_line);
  ADD ("infinity-does-not-flatten-the-rest", test_infinity_does_not_flatten_the_rest);
  ADD ("gaps-are-found-with-their-reason", test_gaps_are_found_with_their_reason);
  ADD ("held-axes-only-grow", test_held_axes_only_grow);
  ADD ("axes-cover-all-curves", test_axes_cover_all_curves);
  ADD ("a-flat-curve-stays-flat", test_a_flat_curve_stays_flat);
  ADD ("nothing-assembled-still-has-an-axis", test_nothing_assembled_still_has_an_axis);
  ADD ("sign-words-keep-off-the-curves", test_sign_words_keep_off_the_curves);
  return g_test_run ();
}
