/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/mount-map/plate-sketch.h"

#include <glib.h>
#include <math.h>

#define WIDTH 420.0
#define HEIGHT 500.0

static Plate *
slot (double direction, double least, double most)
{
  Plate *plate = plate_new ();

  plate->kind = PLATE_SLOT;
  plate->direction_deg = direction;
  plate->along = (PlateScale){ least, most };
  return plate;
}

static PlateSketchFit
fit (const Plate *plate)
{
  const PlateSketchView view = { plate, theme_light () };

  return plate_sketch_fit (&view, WIDTH, HEIGHT);
}

static void
assert_on_canvas (const PlateSketchFit *f, MountOffset at)
{
  const double x = f->x - f->scale * at.inboard, y = f->y - f->scale * at.rearward;

  g_assert_cmpfloat (x, >, 20.0);
  g_assert_cmpfloat (x, <, WIDTH - 20.0);
  g_assert_cmpfloat (y, >, 20.0);
  g_assert_cmpfloat (y, <, HEIGHT - f->key_height - 20.0);
}

/* The reach, swapped or not, and the mount as measured. */
static void
test_all_of_it_is_on_the_canvas (void)
{
  for (int direction = -180; direction <= 180; direction += 15)
    for (int swapped = 0; swapped <= 1; swapped++) {
      g_autoptr (Plate) plate = slot (direction, -8.0, 70.0);

      plate->can_swap = swapped;
      plate->swap_turn_deg = -90.0;
      const PlateSketchFit f = fit (plate);
      assert_on_canvas (&f, (MountOffset){ 0 });
      for (double along = -8.0; along <= 70.0; along += 78.0)
        assert_on_canvas (&f,
                          plate_place (plate, (PlateSetting){ .along = along,
                                                              .is_swapped = swapped }));
    }
}

/* A circle's middle lies inside it, so its ends alone would not do. */
static void
test_a_whole_circle_is_on_the_canvas (void)
{
  g_autoptr (Plate) plate = plate_new ();

  plate->kind = PLATE_ECCENTRIC;
  plate->inboard_mm = 30.0;
  plate->radius_mm = 45.0;
  const PlateSketchFit f = fit (plate);
  for (int turn = 0; turn < 360; turn += 5)
    assert_on_canvas (&f, plate_place (plate, (PlateSetting){ .along = turn }));
}

/* While a number is typed the drawing keeps its scale, as long as it has room. */
static void
test_small_changes_keep_the_scale (void)
{
  g_autoptr (Plate) one = slot (0.0, 0.0, 12.0), other = slot (0.0, 0.0, 13.0);
  g_autoptr (Plate) far = slot (0.0, 0.0, 130.0);

  g_assert_cmpfloat (fit (one).scale, ==, fit (other).scale);
  g_assert_cmpfloat (fit (far).scale, <, fit (one).scale);
}

static void
draw (const Plate *plate, Theme theme)
{
  g_autoptr (TextCache) texts = text_cache_new ();
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) WIDTH, (int) HEIGHT);
  cairo_t *cr = cairo_create (surface);
  const PlateSketchView view = { plate, theme };

  plate_sketch_draw (texts, cr, &view, WIDTH, HEIGHT);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* Also what no plate can be: entries pass through all of it. */
static void
test_draws_every_kind (void)
{
  static const double ends[][2] = { { 0, 20 }, { 5, 5 }, { 20, 0 }, { -1e9, 1e9 } };

  for (PlateKind kind = 0; kind < N_PLATE_KINDS; kind++)
    for (gsize i = 0; i < G_N_ELEMENTS (ends); i++) {
      g_autoptr (Plate) plate = slot (30.0, ends[i][0], ends[i][1]);

      plate->kind = kind;
      plate->across = plate->along;
      plate->radius_mm = ends[i][1];
      plate->can_swap = TRUE;
      draw (plate, theme_light ());
      draw (plate, theme_scaled (theme_dark (), 2.0));
    }
}

static void
test_draws_lists (void)
{
  g_autoptr (Plate) plate = plate_new ();
  const double turns[] = { 0.0, 90.0, 225.5 };

  plate->kind = PLATE_ECCENTRIC;
  plate->radius_mm = 6.0;
  g_array_append_vals (plate->turns_deg, turns, 3);
  draw (plate, theme_light ());
  plate->kind = PLATE_HOLES;
  for (int i = 0; i < 3; i++) {
    const PlateHole hole = { g_strdup (i == 0 ? "" : "A"), 4.0 * i, 0.0, NULL };

    g_array_append_val (plate->holes, hole);
  }
  draw (plate, theme_light ());
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plate-sketch/all-of-it-is-on-the-canvas",
                   test_all_of_it_is_on_the_canvas);
  g_test_add_func ("/plate-sketch/a-whole-circle-is-on-the-canvas",
                   test_a_whole_circle_is_on_the_canvas);
  g_test_add_func ("/plate-sketch/small-changes-keep-the-scale",
                   test_small_changes_keep_the_scale);
  g_test_add_func ("/plate-sketch/draws-every-kind", test_draws_every_kind);
  g_test_add_func ("/plate-sketch/draws-lists", test_draws_lists);
  return g_test_run ();
}
