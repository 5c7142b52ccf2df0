/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/guide/point-sketch.h"

#include <glib.h>
#include <math.h>

#define WIDTH 540.0
#define HEIGHT 460.0

static PointSketchView
empty_view (void)
{
  PointSketchView view = { .loaded_radius = (double) NAN,
                           .point = POINT_SKETCH_NONE,
                           .axis = POINT_SKETCH_NONE,
                           .theme = theme_light () };

  for (PointName i = 0; i < N_POINTS; i++)
    view.points[i] = (Vec3){ (double) NAN, (double) NAN, (double) NAN };
  return view;
}

static void
assert_on_canvas (double x, double y)
{
  g_assert_cmpfloat (x, >, 4.0);
  g_assert_cmpfloat (x, <, WIDTH - 4.0);
  g_assert_cmpfloat (y, >, 4.0);
  g_assert_cmpfloat (y, <, HEIGHT - 4.0);
}

static void
test_points_are_on_the_canvas_in_both_views (void)
{
  static const Vec3 places[] = {
    { 0, 700, 270 }, { -900, 800, 1200 }, { 600, 100, -50 }, { -20, 1400, 20 }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++) {
    PointSketchView view = empty_view ();

    view.points[POINT_UPPER_MOUNT] = places[i];
    const PointSketchFit fit = point_sketch_fit (&view, WIDTH, HEIGHT);
    const double x = fit.x + fit.scale * places[i].y;
    assert_on_canvas (x, fit.front - fit.scale * places[i].z);
    assert_on_canvas (x, fit.plan + fit.scale * places[i].x);
    assert_on_canvas (fit.x, fit.front);
    assert_on_canvas (fit.x, fit.plan);
  }
}

/* A point that is not whole yet stands where such points usually do. */
static void
test_half_a_point_changes_nothing (void)
{
  PointSketchView view = empty_view ();
  const PointSketchFit before = point_sketch_fit (&view, WIDTH, HEIGHT);

  view.points[POINT_UPPER_MOUNT].z = 2000.0;
  const PointSketchFit after = point_sketch_fit (&view, WIDTH, HEIGHT);
  g_assert_cmpfloat (after.scale, ==, before.scale);
  view.points[POINT_UPPER_MOUNT] = (Vec3){ 0.0, 500.0, 2000.0 };
  g_assert_cmpfloat (point_sketch_fit (&view, WIDTH, HEIGHT).scale, <, before.scale);
}

static void
test_a_slip_of_the_keyboard_leaves_it_readable (void)
{
  PointSketchView view = empty_view ();

  view.points[POINT_BALL_JOINT] = (Vec3){ 5.0, 655.0, 190000.0 };
  g_assert_cmpfloat (point_sketch_fit (&view, WIDTH, HEIGHT).scale, >, 0.08);
}

static void
draw (const PointSketchView *view)
{
  g_autoptr (TextCache) texts = text_cache_new ();
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) WIDTH, (int) HEIGHT);
  cairo_t *cr = cairo_create (surface);

  point_sketch_draw (texts, cr, view, WIDTH, HEIGHT);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_draws_every_point_in_hand (void)
{
  PointSketchView view = empty_view ();

  draw (&view);
  view.theme = theme_scaled (theme_dark (), 2.0);
  for (view.point = 0; view.point < (int) N_POINTS; view.point++)
    for (view.axis = 0; view.axis < 3; view.axis++) {
      draw (&view);
      view.points[view.point] = (Vec3){ 0.0, 0.0, 0.0 }; /* dimensions of no length */
      draw (&view);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/point-sketch/points-are-on-the-canvas-in-both-views",
                   test_points_are_on_the_canvas_in_both_views);
  g_test_add_func ("/point-sketch/half-a-point-changes-nothing",
                   test_half_a_point_changes_nothing);
  g_test_add_func ("/point-sketch/a-slip-of-the-keyboard-leaves-it-readable",
                   test_a_slip_of_the_keyboard_leaves_it_readable);
  g_test_add_func ("/point-sketch/draws-every-point-in-hand",
                   test_draws_every_point_in_hand);
  return g_test_run ();
}
