/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/construction-story.h"
#include "flat-cars.h"
#include "set-m.h"
#include "svg-numbers.h"

#include <string.h>

typedef struct {
  Car *car;
  Study *study;
  Story *story;
  StoryView view;
} Fixture;

static void
set_up (Fixture *f, gconstpointer set)
{
  f->car = g_str_equal (set, "P") ? set_p_car () : set_m_car ();
  f->study = study_new ();
  f->story = story_new ();
  f->view = (StoryView){ f->study, 175.0, theme_light (), STORY_ROLL_CENTRE };
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  car_free (f->car);
  study_free (f->study);
  story_free (f->story);
}

static double
draw (Fixture *f, double width, double height)
{
  g_autoptr (GString) svg = g_string_new (NULL);
  cairo_surface_t *surface =
      cairo_svg_surface_create_for_stream (svg_append, svg, width, height);
  cairo_t *cr = cairo_create (surface);

  story_draw (f->story, cr, &f->view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return svg_largest_number (svg);
}

static StoryNumbers
numbers (Fixture *f, double travel)
{
  study_solve (f->study, f->car, 0, travel);
  return story_numbers (study_in_hand (f->study));
}

static void
assert_handbook_case (const HandbookCase *h)
{
  g_autoptr (Car) car = handbook_car (h);
  g_autoptr (Study) study = study_new ();

  study_solve (study, car, 0, 0.0);
  const StoryNumbers n = story_numbers (study_in_hand (study));
  const double rad = G_PI / 180.0;

  g_assert_cmpint (n.status, ==, POSE_OK);
  g_assert_cmpfloat_with_epsilon (n.drawn.roll_centre_height, h->height, 5.1e-4);
  g_assert_cmpfloat_with_epsilon (n.exact_height, h->height, 5.1e-4);
  g_assert_cmpfloat_with_epsilon (n.drawn.pole.y, h->pole_y, 0.051);
  g_assert_cmpfloat_with_epsilon (n.drawn.pole.z, h->pole_z, 5.1e-3);
  g_assert_cmpfloat_with_epsilon (n.pole_inboard, h->track / 2.0 - h->pole_y, 0.051);
  g_assert_cmpfloat_with_epsilon (n.normal_fall, h->alpha * rad, 1e-9);
  g_assert_cmpfloat_with_epsilon (n.arm_fall, -h->beta * rad, 1e-9);
  g_assert_cmpfloat_with_epsilon (tan (n.contact_rise) * h->track / 2.0, h->height,
                                  5.1e-4);

  g_autofree char *end = story_sentence (&n, STORY_ROLL_CENTRE);
  g_autofree char *under = g_strdup_printf ("%.1f mm under the ground", -h->height);
  g_assert_nonnull (strstr (end, under));
  g_assert_nonnull (strstr (end, "it is the same"));
}

static void
test_handbook_cases_of_lowered_cars (void)
{
  assert_handbook_case (&case_rc_c);
  assert_handbook_case (&case_rc_e);
}

/* The pole of set P in closed form, worked out apart from the program. */
static void
test_set_p_pole (Fixture *f, gconstpointer data)
{
  (void) data;
  const StoryNumbers level = numbers (f, 0.0);
  g_autofree char *text = story_sentence (&level, STORY_INSTANT_CENTRE);

  g_assert_cmpfloat_with_epsilon (level.pole_inboard, 740.0 + 2118.09, 0.0051);
  g_assert_true (g_str_has_prefix (text, "They meet 2858 mm inboard of the contact, 317 "
                                         "mm above the ground."));

  const StoryNumbers low = numbers (f, 80.0);
  g_autofree char *far = story_pole_text (&low);
  g_assert_true (low.is_parallel);
  g_assert_cmpstr (far, ==, "at infinity");
}

static void
test_side_turns_at_infinity (Fixture *f, gconstpointer data)
{
  (void) data;
  const StoryNumbers before = numbers (f, 66.0), after = numbers (f, 75.0);
  g_autofree char *in = story_pole_text (&before), *out = story_pole_text (&after);

  g_assert_cmpfloat (before.pole_inboard, >, 10000.0);
  g_assert_cmpfloat (after.pole_inboard, <, -10000.0);
  g_assert_true (g_str_has_suffix (in, " m inboard"));
  g_assert_true (g_str_has_suffix (out, " m outboard"));
}

/* The ground rests and the picture does not jump while the body comes down, not even
 * where the instant centre passes through infinity and changes sides. */
static void
test_motion_is_continuous (Fixture *f, gconstpointer data)
{
  (void) data;
  StoryPlaces last = { 0 };

  for (double travel = -80.0; travel <= 80.0; travel += 0.5) {
    const StoryNumbers n = numbers (f, travel);

    g_assert_cmpfloat (draw (f, 1280, 720), <, 3000.0);
    const StoryPlaces p = story_places (f->story);
    if (travel > -80.0) {
      g_assert_cmpfloat (p.ground_y, ==, last.ground_y);
      g_assert_cmpfloat (p.scale, ==, last.scale);
      g_assert_cmpfloat (p.middle_x, ==, last.middle_x);
      g_assert_cmpfloat (fabs (p.roll_centre_y - last.roll_centre_y), <, 2.0 * p.scale);
    }
    g_assert_cmpfloat_with_epsilon ((p.ground_y - p.roll_centre_y) / p.scale,
                                    n.drawn.roll_centre_height, 1e-6);
    last = p;
  }
}

/* Where a pole is shown, in the picture or the inset, it is on the canvas, and it is
 * where the numbers say. */
static void
test_pole_is_shown_or_pointed_at (Fixture *f, gconstpointer data)
{
  (void) data;
  int n_insets = 0, n_pointed = 0, n_seen = 0;

  for (double travel = -80.0; travel <= 80.0; travel += 1.0) {
    const StoryNumbers n = numbers (f, travel);

    draw (f, 1280, 720);
    const StoryPlaces p = story_places (f->story);
    n_insets += p.has_inset;
    n_pointed += isnan (p.pole_x);
    n_seen += !p.has_inset && !isnan (p.pole_x);
    if (isnan (p.pole_x)) {
      g_assert_cmpfloat (fabs (n.pole_inboard), >, 5000.0);
      continue;
    }
    g_assert_true (p.pole_x > 0.0 && p.pole_x < 1280.0);
    g_assert_true (p.pole_y > 0.0 && p.pole_y < 720.0);
    if (!p.has_inset)
      g_assert_cmpfloat_with_epsilon ((p.pole_x - p.middle_x) / p.scale, n.drawn.pole.y,
                                      1e-6);
  }
  g_assert_cmpint (n_insets, >, 20);
  g_assert_cmpint (n_pointed, >, 3);
  g_assert_cmpint (n_seen, >, 3);
}

static void
test_type_is_large (Fixture *f, gconstpointer data)
{
  (void) data;
  numbers (f, 30.0);
  draw (f, 1280, 720);
  g_assert_cmpfloat (story_places (f->story).text, >=, 28.0);
  draw (f, 1920, 1080);
  g_assert_cmpfloat (story_places (f->story).text, >=, 42.0);
  draw (f, 300, 200);
  g_assert_cmpfloat (story_places (f->story).text, >=, f->view.theme.text);
}

static void
test_every_step_is_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  for (StoryStep step = 0; step < N_STORY_STEPS; step++) {
    const StoryNumbers n = numbers (f, 30.0);
    g_autofree char *text = story_sentence (&n, step);

    f->view.step = step;
    g_assert_cmpfloat (draw (f, 700, 640), <, 3000.0);
    g_assert_cmpstr (story_title (step), !=, "");
    g_assert_cmpuint (strlen (text), >, 20);
    g_assert_null (strstr (text, "nan"));
    g_assert_null (strstr (text, "%"));
  }
}

static void
test_what_cannot_stand_says_why (Fixture *f, gconstpointer data)
{
  (void) data;
  car_setup (f->car, 0)->mount.up = -600.0;
  const StoryNumbers n = numbers (f, 30.0);
  g_autofree char *text = story_sentence (&n, STORY_ROLL_CENTRE);

  g_assert_cmpint (n.status, !=, POSE_OK);
  g_assert_cmpstr (text, ==, pose_status_sentence (n.status));
  g_assert_cmpfloat (draw (f, 1280, 720), <, 3000.0);
  g_assert_true (isnan (story_places (f->story).roll_centre_y));
}

#define ADD(name, set, function)                                                         \
  g_test_add ("/construction-story/" name, Fixture, set, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/construction-story/handbook-cases-of-lowered-cars",
                   test_handbook_cases_of_lowered_cars);
  ADD ("set-p-pole", "P", test_set_p_pole);
  ADD ("side-turns-at-infinity", "M", test_side_turns_at_infinity);
  ADD ("motion-is-continuous", "M", test_motion_is_continuous);
  ADD ("pole-is-shown-or-pointed-at", "M", test_pole_is_shown_or_pointed_at);
  ADD ("type-is-large", "M", test_type_is_large);
  ADD ("every-step-is-drawn", "M", test_every_step_is_drawn);
  ADD ("what-cannot-stand-says-why", "M", test_what_cannot_stand_says_why);
  return g_test_run ();
}
