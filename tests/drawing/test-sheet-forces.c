/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Forces on the sheet: the arrow of the road is as long as its force by the scale that
 * stands beside it, points where the force does in each view, and its figure is the part
 * of the force that the view shows. No text covers another. */

#include "drawing/sheet/sheet.h"
#include "drawn-texts.h"
#include "loaded-car.h"
#include "model/spring/spring-caution.h"
#include "model/words/number-text.h"

#include <stdlib.h>

#define BORDER (-0.5)   /* pixels that letters may lean over it */
#define INSIDE_HEAD 5.0 /* pixels before its tip an arrow's stroke ends, in its head */
#define WIDTH 1100
#define HEIGHT 850

static SheetView
view_of (const LoadedCar *car)
{
  return (SheetView){ .study = car->study,
                      .section_width = car->car->section_width_mm,
                      .theme = theme_light (),
                      .zoom = 1.0,
                      .lit = -1,
                      .loads = load_study_in_hand (car->loads) };
}

static void
draw (Sheet *sheet, const SheetView *view, int width, int height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  drawn_reset ();
  sheet_draw (sheet, cr, view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* Right and down. */
static DrawnPoint
in_view (SheetViewName view, Vec3 v)
{
  return view == SHEET_FRONT  ? (DrawnPoint){ v.y, -v.z }
         : view == SHEET_SIDE ? (DrawnPoint){ v.x, -v.z }
                              : (DrawnPoint){ v.y, v.x };
}

/* The head of an arrow is two lines that follow each other: tip to one side, side to
 * side; its tip lies at (@x, @y). NULL where there is none. */
static const DrawnLine *
find_tip (double x, double y)
{
  for (guint i = 0; i < drawn_lines->len; i++) {
    const DrawnLine *line = &g_array_index (drawn_lines, DrawnLine, i);

    if (hypot (line->from_x - x, line->from_y - y) < 0.01)
      return line;
  }
  return NULL;
}

/* The stroke that ends inside that head: its other end is the arrow's tail. */
static bool
find_tail (DrawnPoint tip, DrawnPoint *tail)
{
  for (guint i = 0; i < drawn_lines->len; i++) {
    const DrawnLine *line = &g_array_index (drawn_lines, DrawnLine, i);
    const double to_tip = hypot (line->to_x - tip.x, line->to_y - tip.y);
    const double way = hypot (line->from_x - tip.x, line->from_y - tip.y);
    const double along = hypot (line->to_x - line->from_x, line->to_y - line->from_y);

    if (fabs (to_tip - INSIDE_HEAD) < 0.1 && fabs (way - to_tip - along) < 0.1) {
      *tail = (DrawnPoint){ line->from_x, line->from_y };
      return true;
    }
  }
  return false;
}

/* Pixels a newton, of the arrow beside "5000 N" in the panel. */
static double
scale_drawn (double newtons)
{
  g_autofree char *number = number_text (newtons, 0);
  g_autofree char *text = g_strdup_printf ("%s N", number);

  for (guint i = 0; i < drawn_texts->len; i++) {
    const DrawnText *drawn = drawn_text_at (i);
    const double y = (drawn->top + drawn->bottom) / 2.0;

    if (!g_str_equal (drawn->text, text))
      continue;
    for (guint j = 0; j < drawn_lines->len; j++) {
      const DrawnLine *line = &g_array_index (drawn_lines, DrawnLine, j);
      DrawnPoint tail;
      const DrawnPoint tip = { line->from_x, line->from_y };

      if (fabs (tip.y - y) < 4.0 && drawn->left - tip.x > 0.0 &&
          drawn->left - tip.x < 12.0 && find_tail (tip, &tail))
        return (tip.x - tail.x) / newtons;
    }
  }
  return NAN;
}

static double
any_scale_drawn (void)
{
  for (double tens = 100.0; tens <= 10000.0; tens *= 10.0)
    for (int i = 0; i < 3; i++) {
      static const double steps[] = { 1.0, 2.0, 5.0 };
      const double scale = scale_drawn (steps[i] * tens);

      if (!isnan (scale))
        return scale;
    }
  return NAN;
}

/* Where a point of the car lies on the sheet: the handle of the upper mount and a move.
 */
static DrawnPoint
place (const Sheet *sheet, const LoadedCar *car, SheetViewName view, Vec3 point)
{
  const Vec3 mount = study_in_hand (car->study)->corner.upper_mount;
  const DrawnPoint way = in_view (view, vec3_sub (point, mount));
  DrawnPoint at;

  g_assert_true (sheet_handle_place (sheet, SHEET_HANDLE_MOUNT, view, &at.x, &at.y));
  return (DrawnPoint){ at.x + way.x * sheet_scale (sheet),
                       at.y + way.y * sheet_scale (sheet) };
}

static void
check_road (const Sheet *sheet, const LoadedCar *car, SheetViewName view)
{
  const JointLoads *loads = load_study_in_hand (car->loads);
  const Vec3 contact = pose_contact (&study_in_hand (car->study)->corner, &loads->pose);
  const DrawnPoint tip = place (sheet, car, view, contact);
  const DrawnPoint force = in_view (view, loads->load.contact);
  const double scale = any_scale_drawn ();
  DrawnPoint tail;

  g_assert_cmpfloat (scale, >, 0.0);
  g_assert_nonnull (find_tip (tip.x, tip.y));
  g_assert_true (find_tail (tip, &tail));
  g_assert_cmpfloat_with_epsilon (tip.x - tail.x, force.x * scale, 0.01);
  g_assert_cmpfloat_with_epsilon (tip.y - tail.y, force.y * scale, 0.01);

  g_autofree char *size = number_text (hypot (force.x, force.y), 0);
  g_autofree char *figure = g_strdup_printf ("%s N", size);
  g_assert_nonnull (drawn_find (figure));
}

/* Braking into a bend has parts along all three axes. */
static void
test_road_arrow_is_its_force_to_scale (void)
{
  static const guint setups[] = { SPRUNG_BAR, SPRUNG_COIL };
  g_autoptr (Sheet) sheet = sheet_new ();
  g_auto (LoadedCar) car = loaded_car_new (FALSE);

  for (gsize s = 0; s < G_N_ELEMENTS (setups); s++) {
    loaded_car_solve (&car, setups[s], 6, SPRING_AS_SET);
    const SheetView view = view_of (&car);
    g_assert_true (view.loads->is_solved);
    draw (sheet, &view, WIDTH, HEIGHT);
    for (SheetViewName i = 0; i < N_SHEET_VIEWS; i++)
      check_road (sheet, &car, i);
  }
}

/* Standing on a coil the tower is pushed up by about what the road carries; on the bar
 * nothing worth an arrow stands there, and the arm's pivots carry it. */
static void
test_tower_arrow_goes_with_the_coil (void)
{
  g_autoptr (Sheet) sheet = sheet_new ();
  g_auto (LoadedCar) car = loaded_car_new (FALSE);
  DrawnPoint mount;

  loaded_car_solve (&car, 0, 0, SPRING_COIL_ONLY);
  SheetView view = view_of (&car);
  draw (sheet, &view, WIDTH, HEIGHT);
  g_assert_true (
      sheet_handle_place (sheet, SHEET_HANDLE_MOUNT, SHEET_FRONT, &mount.x, &mount.y));
  const double scale = any_scale_drawn ();
  const DrawnPoint tower = in_view (SHEET_FRONT, view.loads->forces.tower);
  g_assert_cmpfloat (tower.y, <, -2000.0);
  g_assert_nonnull (find_tip (mount.x + scale * tower.x, mount.y + scale * tower.y));
  g_assert_nonnull (drawn_find ("on the tower"));
  g_assert_nonnull (drawn_find ("no side force on the rod"));
  loaded_car_solve (&car, 0, 0, SPRING_BAR_ONLY);
  view = view_of (&car);
  draw (sheet, &view, WIDTH, HEIGHT);
  g_assert_nonnull (drawn_find ("on the arm's pivots"));
  g_assert_null (drawn_find ("no side force on the rod"));
}

static void
test_forces_take_the_place_of_dimensions (void)
{
  g_autoptr (Sheet) sheet = sheet_new ();
  g_auto (LoadedCar) car = loaded_car_new (FALSE);
  SheetView view = view_of (&car);
  const TitleBlock title =
      title_block_for (car.car, car_setup (car.car, 0), "2026-03-05");

  view.title = &title;
  draw (sheet, &view, WIDTH, HEIGHT);
  g_assert_nonnull (drawn_find ("road"));
  g_assert_null (drawn_find ("scrub radius"));
  g_assert_nonnull (drawn_find (spring_caution ()));
  view.loads = NULL;
  draw (sheet, &view, WIDTH, HEIGHT);
  g_assert_null (drawn_find ("road"));
  g_assert_null (drawn_find (spring_caution ()));
  g_assert_nonnull (drawn_find ("scrub"));
}

static const int sizes[][2] = { { 280, 220 },  { 360, 300 }, { 480, 450 }, { 560, 400 },
                                { 640, 640 },  { 800, 600 }, { 400, 900 }, { 1300, 420 },
                                { 1000, 900 }, { 793, 1122 } };

static void
test_nothing_overlaps_or_leaves (void)
{
  const Theme themes[] = { theme_light (), theme_scaled (theme_dark (), 1.6) };
  g_autoptr (Sheet) sheet = sheet_new ();
  g_auto (LoadedCar) car = loaded_car_new (FALSE);

  for (guint i = 0; i < 28; i++) {
    drawn_in_long_words = i >= 14;
    loaded_car_solve (&car, i % N_SPRUNG, i % 7, (SpringMode) (i % 3));
    SheetView view = view_of (&car);
    const TitleBlock title =
        title_block_for (car.car, car_setup (car.car, car.study->in_hand), "2026-03-05");
    view.theme = themes[i / 7 % 2];
    view.show_handles = i % 2 == 0;
    view.title = i % 2 == 0 ? NULL : &title;
    for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++) {
      draw (sheet, &view, sizes[s][0], sizes[s][1]);
      drawn_assert_apart (sizes[s][0], sizes[s][1], BORDER, "a sheet with forces");
    }
  }
  drawn_in_long_words = false;
}

/* Heads included; the hatching of the ground is drawn from outside. */
static void
test_arrows_keep_inside (void)
{
  g_autoptr (Sheet) sheet = sheet_new ();
  g_auto (LoadedCar) car = loaded_car_new (FALSE);

  for (guint i = 0; i < 21; i++) {
    loaded_car_solve (&car, i % N_SPRUNG, i % 7, (SpringMode) (i / 7));
    const SheetView view = view_of (&car);
    const Vec3 tower = view.loads->forces.tower;
    DrawnPoint mount;

    if (!view.loads->is_solved)
      continue;
    draw (sheet, &view, WIDTH, HEIGHT);
    g_assert_true (
        sheet_handle_place (sheet, SHEET_HANDLE_MOUNT, SHEET_FRONT, &mount.x, &mount.y));
    g_assert_cmpfloat (mount.y - tower.z * any_scale_drawn (), >, 10.0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet-forces/road", test_road_arrow_is_its_force_to_scale);
  g_test_add_func ("/sheet-forces/tower", test_tower_arrow_goes_with_the_coil);
  g_test_add_func ("/sheet-forces/dimensions", test_forces_take_the_place_of_dimensions);
  g_test_add_func ("/sheet-forces/nothing-overlaps", test_nothing_overlaps_or_leaves);
  g_test_add_func ("/sheet-forces/inside", test_arrows_keep_inside);
  return g_test_run ();
}
