/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/point-drag.h"
#include "set-m.h"

#define SIZE 900.0

static const TravelLimits limits = { -80.0, 80.0 };
static const PointPlace start = { { 12.34, 5.0, 0.0 }, 10.0, 20.04 };
static Study study;

/* A sheet that has been drawn once, as a window has it. */
static Sheet *
drawn_sheet (double zoom)
{
  g_autoptr (Car) car = set_m_car ();
  Sheet *sheet = sheet_new ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, SIZE, SIZE);
  cairo_t *cr = cairo_create (surface);
  const SheetView view = { .study = &study,
                           .section_width = car->section_width_mm,
                           .theme = theme_light (),
                           .zoom = zoom,
                           .lit = -1 };

  study_solve (&study, car, 0, 0.0);
  sheet_draw (sheet, cr, &view, SIZE, SIZE);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return sheet;
}

static PointDrag
begin (SheetHandle handle, SheetViewName view)
{
  return point_drag_begin (handle, view, start, limits, 200.0, 100.0);
}

/* The handle moves as far as the pointer, from wherever in it that was grabbed; up on the
 * screen is up on the car, left in the front view is inboard. */
static void
test_drag_follows_the_pointer (void)
{
  g_autoptr (Sheet) sheet = drawn_sheet (1.0);
  const double k = sheet_scale (sheet);
  PointDrag drag = begin (SHEET_HANDLE_MOUNT, SHEET_FRONT);
  const PointPlace place =
      point_drag_to (&drag, sheet, 200.0 - 20.0 * k, 100.0 - 7.0 * k, false);

  g_assert_cmpfloat_with_epsilon (place.mount.inboard, 32.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (place.mount.up, 7.0, 1e-9);
  g_assert_cmpfloat (place.mount.rearward, ==, start.mount.rearward);
  g_assert_cmpfloat (place.travel, ==, start.travel);
}

static void
test_drag_in_plan_view (void)
{
  g_autoptr (Sheet) sheet = drawn_sheet (2.0);
  const double k = sheet_scale (sheet);
  PointDrag drag = begin (SHEET_HANDLE_MOUNT, SHEET_PLAN);
  /* the car's front points down the page */
  const PointPlace place =
      point_drag_to (&drag, sheet, 200.0 + 4.0 * k, 100.0 - 9.0 * k, false);

  g_assert_cmpfloat_with_epsilon (place.mount.inboard, 8.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (place.mount.rearward, 14.0, 1e-9);
  g_assert_cmpfloat (place.mount.up, ==, 0.0);
}

static void
test_grab_alone_keeps_every_bit (void)
{
  g_autoptr (Sheet) sheet = drawn_sheet (1.0);
  PointDrag drag = begin (SHEET_HANDLE_MOUNT, SHEET_FRONT);
  const PointPlace place = point_drag_to (&drag, sheet, 200.0, 130.0, false);

  g_assert_cmpfloat (place.mount.inboard, ==, 12.34);
}

static void
test_fine_does_not_jump (void)
{
  g_autoptr (Sheet) sheet = drawn_sheet (1.0);
  const double k = sheet_scale (sheet);
  PointDrag drag = begin (SHEET_HANDLE_WHEEL, SHEET_SIDE);
  const double plain =
      point_drag_to (&drag, sheet, 200.0, 100.0 - 20.0 * k, false).travel;
  const double switched =
      point_drag_to (&drag, sheet, 200.0, 100.0 - 20.0 * k, true).travel;
  const double fine = point_drag_to (&drag, sheet, 200.0, 100.0 - 30.0 * k, true).travel;

  g_assert_cmpfloat_with_epsilon (plain, 30.0, 1e-9);
  g_assert_cmpfloat (switched, ==, plain);
  g_assert_cmpfloat_with_epsilon (fine, 31.0, 1e-9);
}

/* The value waits at its limit until the pointer is back. */
static void
test_limits_hold (void)
{
  g_autoptr (Sheet) sheet = drawn_sheet (1.0);
  const double k = sheet_scale (sheet);
  PointDrag wheel = begin (SHEET_HANDLE_WHEEL, SHEET_FRONT);
  PointDrag mount = begin (SHEET_HANDLE_MOUNT, SHEET_FRONT);

  g_assert_cmpfloat (point_drag_to (&wheel, sheet, 200, 100 - 100.0 * k, false).travel,
                     ==, 80.0);
  g_assert_cmpfloat (point_drag_to (&wheel, sheet, 200, 100 - 75.0 * k, false).travel, ==,
                     80.0);
  g_assert_cmpfloat_with_epsilon (point_drag_to (&wheel, sheet, 200, 100 - 60.0 * k,
                                                 false)
                                      .travel,
                                  70.0, 1e-9);
  g_assert_cmpfloat (point_drag_to (&mount, sheet, 200 + 999.0 * k, 100, false)
                         .mount.inboard,
                     ==, -150.0);
}

static void
test_cancel_returns_to_the_bit (void)
{
  g_autoptr (Sheet) sheet = drawn_sheet (1.0);
  PointDrag drag = begin (SHEET_HANDLE_MOUNT, SHEET_SIDE);

  point_drag_to (&drag, sheet, 260.0, 40.0, false);
  g_assert_cmpfloat (drag.place.mount.rearward, !=, start.mount.rearward);
  point_drag_cancel (&drag);
  g_assert_cmpmem (&drag.place, sizeof drag.place, &start, sizeof start);
}

/* Down is lower, and nothing but the lowering moves. */
static void
test_height_follows_the_pointer (void)
{
  g_autoptr (Sheet) sheet = drawn_sheet (1.0);
  const double k = sheet_scale (sheet);
  PointDrag drag = begin (SHEET_HANDLE_HEIGHT, SHEET_FRONT);
  PointPlace place = point_drag_to (&drag, sheet, 200 + 30.0 * k, 100 + 12.0 * k, false);

  g_assert_cmpfloat_with_epsilon (place.lowering, 32.0, 1e-9);
  g_assert_cmpfloat (place.travel, ==, start.travel);
  g_assert_cmpmem (&place.mount, sizeof place.mount, &start.mount, sizeof start.mount);
  place = point_drag_to (&drag, sheet, 200.0, 100 + 200.0 * k, false);
  g_assert_cmpfloat (place.lowering, ==, limits.most);
  place = point_drag_to (&drag, sheet, 200.0, 100 - 150.0 * k, false);
  g_assert_cmpfloat (place.lowering, ==, limits.least);
  place = point_drag_cancel (&drag);
  g_assert_cmpfloat (place.lowering, ==, start.lowering);

  const PointPlace lower = point_nudge (start, SHEET_HANDLE_HEIGHT, SHEET_FRONT, limits,
                                        POINT_STEP_PLAIN, 0, -1);
  const PointPlace aside = point_nudge (start, SHEET_HANDLE_HEIGHT, SHEET_FRONT, limits,
                                        POINT_STEP_PLAIN, 1, 0);
  g_assert_cmpfloat_with_epsilon (lower.lowering, 21.0, 1e-9);
  g_assert_cmpfloat (aside.lowering, ==, start.lowering);
}

static void
test_arrow_keys (void)
{
  const PointPlace in = point_nudge (start, SHEET_HANDLE_MOUNT, SHEET_FRONT, limits,
                                     POINT_STEP_PLAIN, -1, 0);
  const PointPlace back = point_nudge (start, SHEET_HANDLE_MOUNT, SHEET_PLAN, limits,
                                       POINT_STEP_COARSE, 0, 1);
  const PointPlace forward =
      point_nudge (start, SHEET_HANDLE_MOUNT, SHEET_SIDE, limits, POINT_STEP_FINE, 1, 0);
  const PointPlace bump =
      point_nudge (start, SHEET_HANDLE_WHEEL, SHEET_SIDE, limits, POINT_STEP_PLAIN, 0, 1);
  const PointPlace aside = point_nudge (start, SHEET_HANDLE_WHEEL, SHEET_FRONT, limits,
                                        POINT_STEP_PLAIN, 1, 0);

  g_assert_cmpfloat_with_epsilon (in.mount.inboard, 13.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (back.mount.rearward, 10.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (forward.mount.rearward, 4.9, 1e-9);
  g_assert_cmpfloat_with_epsilon (bump.travel, 11.0, 1e-9);
  g_assert_cmpmem (&aside, sizeof aside, &start, sizeof start);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/point-drag/follows-the-pointer", test_drag_follows_the_pointer);
  g_test_add_func ("/point-drag/plan-view", test_drag_in_plan_view);
  g_test_add_func ("/point-drag/grab-alone", test_grab_alone_keeps_every_bit);
  g_test_add_func ("/point-drag/fine-does-not-jump", test_fine_does_not_jump);
  g_test_add_func ("/point-drag/limits", test_limits_hold);
  g_test_add_func ("/point-drag/cancel", test_cancel_returns_to_the_bit);
  g_test_add_func ("/point-drag/height", test_height_follows_the_pointer);
  g_test_add_func ("/point-drag/arrow-keys", test_arrow_keys);
  return g_test_run ();
}
