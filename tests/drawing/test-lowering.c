/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/board/lowering-words.h"
#include "drawing/export/export.h"
#include "flat-cars.h"
#include "set-m.h"
#include "svg-numbers.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct {
  Car *car;
  Study *study;
  Lowering *lowering;
  LoweringView view;
} Fixture;

static void
set_up (Fixture *f, gconstpointer set)
{
  f->car = g_str_equal (set, "P") ? set_p_car () : set_m_car ();
  f->study = study_new ();
  f->lowering = lowering_new ();
  f->view = (LoweringView){ .study = f->study, .theme = theme_light (), .lit = -1 };
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  car_free (f->car);
  study_free (f->study);
  lowering_free (f->lowering);
}

static void
solve (Fixture *f, double lowering)
{
  car_setup (f->car, 0)->lowering_mm = lowering;
  study_solve (f->study, f->car, 0, lowering);
}

static void
add_setup (Fixture *f, const char *name, double lowering, double inboard)
{
  const CarSetup setup = { .name = g_strdup (name),
                           .mount = { .inboard = inboard },
                           .lowering_mm = lowering };

  g_array_append_val (f->car->setups, setup);
}

static double
draw (Fixture *f, double width, double height)
{
  g_autoptr (GString) svg = g_string_new (NULL);
  cairo_surface_t *surface =
      cairo_svg_surface_create_for_stream (svg_append, svg, width, height);
  cairo_t *cr = cairo_create (surface);

  lowering_draw (f->lowering, cr, &f->view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return svg_largest_number (svg);
}

typedef struct {
  double x, y, width, height;
} Box;

static Box
frame (const Fixture *f, Quantity quantity)
{
  Box b;

  g_assert_true (lowering_frame (f->lowering, quantity, &b.x, &b.y, &b.width, &b.height));
  return b;
}

static char *
sentence (const Fixture *f)
{
  const LoweringEffect e =
      lowering_effect (study_in_hand (f->study), f->study->cg_height);

  return lowering_sentence (&e);
}

/* 82.1011 → −0.9039 mm; the centre of gravity is 530 mm up as measured. */
static void
test_set_p_lowered_by_30 (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, 30.0);
  const LoweringEffect e = lowering_effect (study_in_hand (f->study), 530.0);

  g_assert_cmpint (e.status, ==, POSE_OK);
  g_assert_cmpfloat_with_epsilon (e.from, 82.1011, 5.1e-5);
  g_assert_cmpfloat_with_epsilon (e.to, -0.9039, 5.1e-5);
  g_assert_cmpfloat_with_epsilon (e.drop_per_mm, 2.77, 5.1e-3);
  g_assert_cmpfloat_with_epsilon (e.lever, 500.0 + 0.9039, 5.1e-5);
  g_assert_cmpfloat_with_epsilon (e.lever_growth, 82.1011 + 0.9039 - 30.0, 1.1e-4);

  g_autofree char *text = sentence (f);
  g_assert_cmpstr (text, ==,
                   "Lowering 30 mm drops the roll centre 83 mm: 2.8 mm for each mm. The "
                   "lever arm grows by 53 mm.");
  g_autofree char *difference = lowering_difference_sentence (study_in_hand (f->study));
  g_assert_true (
      g_str_has_prefix (difference,
                        "Exact value and flat construction agree here: −0.9 mm."));
}

/* The rate at rest is the limit of what a small lowering does. */
static void
test_rate_at_rest (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, 0.0);
  const LoweringEffect rest = lowering_effect (study_in_hand (f->study), 530.0);
  g_autofree char *text = sentence (f);
  solve (f, 0.2);
  const LoweringEffect little = lowering_effect (study_in_hand (f->study), 530.0);

  g_assert_cmpfloat_with_epsilon (rest.drop_per_mm, little.drop_per_mm, 1e-3);
  g_assert_cmpfloat (rest.lever_growth, ==, 0.0);
  g_assert_cmpstr (text, ==,
                   "Not lowered. The first 1 mm would drop the roll centre by 2.7 mm and "
                   "lengthen the lever arm by 1.7 mm.");
}

static void
test_signs_have_their_sentence (Fixture *f, gconstpointer data)
{
  (void) f;
  (void) data;
  static const struct {
    double lowering, drop;
    const char *text;
  } cases[] = {
    { 20, 10,
      "Lowering 20 mm drops the roll centre 10 mm: 0.5 mm for each mm. The lever "
      "arm shrinks by 10 mm." },
    { 20, -10,
      "Lowering 20 mm lifts the roll centre 10 mm: 0.5 mm for each mm. The lever "
      "arm shrinks by 30 mm." },
    { -20, -50,
      "Raising 20 mm lifts the roll centre 50 mm: 2.5 mm for each mm. The lever "
      "arm shrinks by 30 mm." },
    { -20, -10,
      "Raising 20 mm lifts the roll centre 10 mm: 0.5 mm for each mm. The lever "
      "arm grows by 10 mm." },
    { -20, 10,
      "Raising 20 mm drops the roll centre 10 mm: 0.5 mm for each mm. The lever "
      "arm grows by 30 mm." },
    { 7.5, 15,
      "Lowering 7.5 mm drops the roll centre 15 mm: 2.0 mm for each mm. The "
      "lever arm grows by 8 mm." },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const LoweringEffect e = { .lowering = cases[i].lowering,
                               .drop = cases[i].drop,
                               .drop_per_mm = cases[i].drop / cases[i].lowering,
                               .lever_growth = cases[i].drop - cases[i].lowering };
    g_autofree char *text = lowering_sentence (&e);
    g_assert_cmpstr (text, ==, cases[i].text);
  }
}

/* Set M in space: 76.66 exactly and 76.75 by the construction (worked out apart from the
 * program), which one decimal might hide. */
static void
test_difference_is_stated (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, 0.0);
  g_autofree char *text = lowering_difference_sentence (study_in_hand (f->study));
  double exact, flat;

  g_assert_cmpint (
      sscanf (text, "Exact %lf mm, flat construction %lf mm: the construction leaves",
              &exact, &flat),
      ==, 2);
  g_assert_cmpfloat_with_epsilon (exact, 76.66, 0.051);
  g_assert_cmpfloat_with_epsilon (flat, 76.75, 0.051);
  g_assert_cmpfloat (flat, >, exact);
}

static void
test_what_cannot_stand_says_why (Fixture *f, gconstpointer data)
{
  (void) data;
  car_setup (f->car, 0)->mount.up = -600.0;
  solve (f, 30.0);
  g_assert_cmpint (study_in_hand (f->study)->at_height.status, !=, POSE_OK);
  g_autofree char *text = sentence (f);
  g_autofree char *difference = lowering_difference_sentence (study_in_hand (f->study));

  g_assert_true (
      g_str_has_prefix (text, "Lowered by 30 mm there is no roll centre to read. "));
  g_assert_nonnull (
      strstr (text, pose_status_sentence (study_in_hand (f->study)->at_height.status)));
  g_assert_cmpstr (difference, ==, "");
  g_assert_cmpfloat (draw (f, 700, 640), <, 3000.0);

  double x, y;
  g_assert_false (lowering_standing_place (f->lowering, 0, &x, &y));
}

static const int sizes[][2] = {
  { 420, 420 }, { 700, 640 }, { 1280, 720 }, { 1801, 1203 }
};

static void
test_layout_holds_at_every_size (Fixture *f, gconstpointer data)
{
  (void) data;
  add_setup (f, "Lowered, 10 in", 45.0, 10.0);
  f->view.show_cursor = true;
  solve (f, 30.0);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    const double width = sizes[i][0], height = sizes[i][1];

    g_assert_cmpfloat (draw (f, width, height), <, width + height + 2000.0);
    const Box large = frame (f, QUANTITY_ROLL_CENTRE_HEIGHT);
    const Box gain = frame (f, QUANTITY_CAMBER_GAIN),
              steer = frame (f, QUANTITY_BUMP_STEER);
    const Box *boxes[] = { &large, &gain, &steer };

    g_assert_cmpfloat (large.width * large.height, >, gain.width * gain.height);
    for (int b = 0; b < 3; b++) {
      g_assert_cmpfloat (boxes[b]->x, >, 0.0);
      g_assert_cmpfloat (boxes[b]->y, >, f->view.theme.text);
      g_assert_cmpfloat (boxes[b]->x + boxes[b]->width, <, width);
      g_assert_cmpfloat (boxes[b]->y + boxes[b]->height, <, height);
    }
    if (gain.y > large.y + large.height) /* below: side by side */
      g_assert_cmpfloat (gain.x + gain.width, <, steer.x);
    else { /* beside: one over the other, and their foot is the large one's */
      g_assert_cmpfloat (large.x + large.width, <, gain.x);
      g_assert_cmpfloat (gain.y + gain.height, <, steer.y);
      g_assert_cmpfloat_with_epsilon (large.y + large.height, steer.y + steer.height,
                                      1.0);
    }
  }
}

/* 0 … 80 mm of bump: a quarter of the way is 20 mm. */
static void
test_hits_invert_the_drawing (Fixture *f, gconstpointer data)
{
  (void) data;
  static const Quantity quantities[] = { QUANTITY_ROLL_CENTRE_HEIGHT,
                                         QUANTITY_CAMBER_GAIN, QUANTITY_BUMP_STEER };

  add_setup (f, "Lowered 60", 60.0, 0.0);
  solve (f, 30.0);
  draw (f, 700, 640);
  for (gsize i = 0; i < G_N_ELEMENTS (quantities); i++) {
    const Box b = frame (f, quantities[i]);
    const LoweringHit hit = lowering_hit (f->lowering, b.x + b.width / 4.0, b.y + 2.0);

    g_assert_cmpint (hit.quantity, ==, quantities[i]);
    g_assert_true (hit.on_plot);
    g_assert_cmpfloat_with_epsilon (hit.lowering, 20.0, 1e-9);
    g_assert_cmpfloat (lowering_hit (f->lowering, b.x - 20.0, b.y + 2.0).lowering, ==,
                       0.0);
  }

  for (unsigned setup = 0; setup < 2; setup++) {
    double x, y;
    g_assert_true (lowering_standing_place (f->lowering, setup, &x, &y));
    const LoweringHit hit = lowering_hit (f->lowering, x + 3.0, y - 3.0);
    const LoweringHit exact = lowering_hit (f->lowering, x, y);
    g_assert_cmpint (hit.setup, ==, (int) setup);
    g_assert_cmpfloat_with_epsilon (exact.lowering, setup == 0 ? 30.0 : 60.0, 1e-9);
  }
  g_assert_cmpint (lowering_hit (f->lowering, 5.0, 635.0).quantity, ==, -1);
}

/* The marker of set P lowered 30 mm: −0.9039 mm on an axis of which two places are known.
 */
static void
test_marker_stands_on_its_height (Fixture *f, gconstpointer data)
{
  (void) data;
  double x0, y0, x30, y30;

  f->view.hold_axes = true;
  solve (f, 0.0);
  draw (f, 1280, 720);
  g_assert_true (lowering_standing_place (f->lowering, 0, &x0, &y0));
  const Box b = frame (f, QUANTITY_ROLL_CENTRE_HEIGHT);
  g_assert_cmpfloat_with_epsilon (x0, b.x, 1e-9);

  solve (f, 30.0);
  draw (f, 1280, 720);
  g_assert_true (lowering_standing_place (f->lowering, 0, &x30, &y30));
  const Box held = frame (f, QUANTITY_ROLL_CENTRE_HEIGHT);
  g_assert_cmpmem (&b, sizeof b, &held, sizeof held);
  g_assert_cmpfloat_with_epsilon (x30 - x0, 30.0 / 80.0 * b.width, 1e-9);

  solve (f, 60.0); /* −88.4170 */
  draw (f, 1280, 720);
  double x60, y60;
  g_assert_true (lowering_standing_place (f->lowering, 0, &x60, &y60));
  g_assert_cmpfloat_with_epsilon ((y60 - y30) / (y30 - y0),
                                  (88.4170 - 0.9039) / (82.1011 + 0.9039), 1e-4);
}

static void
test_raised_axis (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, 0.0);
  f->view.is_raised = true;
  draw (f, 700, 640);
  Box b = frame (f, QUANTITY_ROLL_CENTRE_HEIGHT);
  g_assert_cmpfloat (lowering_hit (f->lowering, b.x, b.y).lowering, ==, -20.0);

  f->view.is_raised = false;
  solve (f, -25.0);
  draw (f, 700, 640);
  b = frame (f, QUANTITY_ROLL_CENTRE_HEIGHT);
  g_assert_cmpfloat (lowering_hit (f->lowering, b.x, b.y).lowering, ==, -40.0);
}

static void
test_cars_without_bump_are_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car->bump_mm = 0.0;
  solve (f, 0.0);
  g_assert_cmpfloat (draw (f, 700, 640), <, 3000.0);
  g_assert_cmpfloat (draw (f, 60, 40), <, 3000.0);
}

static void
test_exports_repeat_to_the_byte (Fixture *f, gconstpointer data)
{
  (void) data;
  static const char *const suffixes[] = { "png", "svg", "pdf" };
  g_autofree char *folder = g_dir_make_tmp ("lowering-XXXXXX", NULL);
  const ExportOptions options = { 900, 700, EXPORT_BACKGROUND_WHITE };

  solve (f, 30.0);
  for (gsize i = 0; i < G_N_ELEMENTS (suffixes); i++) {
    g_autofree char *path = g_strdup_printf ("%s/a.%s", folder, suffixes[i]);
    g_autofree char *first = NULL, *second = NULL;
    gsize n_first, n_second;

    g_assert_true (export_lowering (&f->view, &options, path, NULL));
    g_assert_true (g_file_get_contents (path, &first, &n_first, NULL));
    g_assert_true (export_lowering (&f->view, &options, path, NULL));
    g_assert_true (g_file_get_contents (path, &second, &n_second, NULL));
    g_assert_cmpuint (n_first, >, 5000);
    g_assert_cmpmem (first, n_first, second, n_second);
    g_unlink (path);
  }
  g_rmdir (folder);
}

#define ADD(name, set, function)                                                         \
  g_test_add ("/lowering/" name, Fixture, set, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("set-p-lowered-by-30", "P", test_set_p_lowered_by_30);
  ADD ("rate-at-rest", "P", test_rate_at_rest);
  ADD ("signs-have-their-sentence", "P", test_signs_have_their_sentence);
  ADD ("difference-is-stated", "M", test_difference_is_stated);
  ADD ("what-cannot-stand-says-why", "M", test_what_cannot_stand_says_why);
  ADD ("layout-holds-at-every-size", "M", test_layout_holds_at_every_size);
  ADD ("hits-invert-the-drawing", "M", test_hits_invert_the_drawing);
  ADD ("marker-stands-on-its-height", "P", test_marker_stands_on_its_height);
  ADD ("raised-axis", "M", test_raised_axis);
  ADD ("cars-without-bump-are-drawn", "M", test_cars_without_bump_are_drawn);
  ADD ("exports-repeat-to-the-byte", "M", test_exports_repeat_to_the_byte);
  return g_test_run ();
}
