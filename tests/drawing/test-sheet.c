/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-layout.h"
#include "drawing/sheet/sheet-parts.h"
#include "drawing/sheet/sheet.h"
#include "set-m.h"

#include <string.h>

#define WIDE 800
#define HIGH 900

static Study study;

typedef struct {
  Car *car;
  Sheet *sheet;
  cairo_surface_t *surface;
  cairo_t *cr;
  SheetView view;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = set_m_car ();
  f->sheet = sheet_new ();
  f->surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDE, HIGH);
  f->cr = cairo_create (f->surface);
  f->view = (SheetView){ .study = &study,
                         .section_width = f->car->section_width_mm,
                         .theme = theme_light (),
                         .zoom = 1.0,
                         .lit = -1,
                         .show_handles = true };
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  cairo_destroy (f->cr);
  cairo_surface_destroy (f->surface);
  sheet_free (f->sheet);
  car_free (f->car);
}

static void
draw (Fixture *f, MountOffset mount, double travel)
{
  CarSetup *setup = car_setup (f->car, 0);

  setup->mount = mount;
  study_solve (&study, f->car, 0, travel);
  sheet_draw (f->sheet, f->cr, &f->view, WIDE, HIGH);
  g_assert_cmpint (cairo_status (f->cr), ==, CAIRO_STATUS_SUCCESS);
}

static Pixel
handle_at (Fixture *f, SheetHandle handle, SheetViewName view)
{
  Pixel p;

  g_assert_true (sheet_handle_place (f->sheet, handle, view, &p.x, &p.y));
  return p;
}

static const MountOffset none = { 0 }, moved = { 15.0, 10.0, 5.0 };

static void
test_views_share_their_axes (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, moved, 37.0);

  const Pixel front = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_FRONT);
  const Pixel side = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_SIDE);
  const Pixel plan = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_PLAN);
  const Pixel hub = handle_at (f, SHEET_HANDLE_WHEEL, SHEET_FRONT);
  const Pixel hub_side = handle_at (f, SHEET_HANDLE_WHEEL, SHEET_SIDE);

  g_assert_cmpfloat_with_epsilon (front.y, side.y, 1e-9);
  g_assert_cmpfloat_with_epsilon (front.x, plan.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (hub.y, hub_side.y, 1e-9);
  /* first angle: the side view stands to the right, the plan view below */
  g_assert_cmpfloat (side.x, >, hub.x);
  g_assert_cmpfloat (plan.y, >, hub.y);
}

/* The mount of the set lies 35 mm behind and 165 mm inboard of the wheel centre, 535 mm
 * above it. */
static void
test_one_scale_everywhere (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, none, 0.0);

  const double k = sheet_scale (f->sheet);
  const Pixel front = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_FRONT);
  const Pixel side = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_SIDE);
  const Pixel hub = handle_at (f, SHEET_HANDLE_WHEEL, SHEET_FRONT);
  const Pixel hub_side = handle_at (f, SHEET_HANDLE_WHEEL, SHEET_SIDE);
  const Pixel plan = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_PLAN);

  g_assert_cmpfloat_with_epsilon ((hub.x - front.x) / k, 165.0, 1e-6);
  g_assert_cmpfloat_with_epsilon ((hub.y - front.y) / k, 535.0, 1e-6);
  g_assert_cmpfloat_with_epsilon ((hub_side.x - side.x) / k, 35.0, 1e-6);

  draw (f, (MountOffset){ 0.0, 20.0, 0.0 }, 0.0);
  g_assert_cmpfloat_with_epsilon ((plan.y -
                                   handle_at (f, SHEET_HANDLE_MOUNT, SHEET_PLAN).y) /
                                      k,
                                  20.0, 1e-6);
}

static void
test_layout_is_steady (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, none, 0.0);

  const double k = sheet_scale (f->sheet);
  const Pixel before = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_FRONT);

  draw (f, (MountOffset){ 60.0, -60.0, 20.0 }, 70.0);

  const Pixel after = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_FRONT);
  g_assert_cmpfloat (sheet_scale (f->sheet), ==, k);
  g_assert_cmpfloat_with_epsilon (before.x - after.x, 60.0 * k, 1e-9);
  g_assert_cmpfloat_with_epsilon (before.y - after.y, 20.0 * k, 1e-9);
}

static void
test_move_inverts_the_projection (Fixture *f, gconstpointer data)
{
  (void) data;
  f->view.zoom = 2.5;
  f->view.pan_x = 40.0;
  for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++) {
    draw (f, none, 0.0);
    const Pixel from = handle_at (f, SHEET_HANDLE_MOUNT, view);
    draw (f, moved, 0.0);
    const Pixel to = handle_at (f, SHEET_HANDLE_MOUNT, view);
    const Vec3 way = sheet_move (f->sheet, view, to.x - from.x, to.y - from.y);

    g_assert_cmpfloat_with_epsilon (way.x, view == SHEET_FRONT ? 0.0 : -10.0, 1e-9);
    g_assert_cmpfloat_with_epsilon (way.y, view == SHEET_SIDE ? 0.0 : -15.0, 1e-9);
    g_assert_cmpfloat_with_epsilon (way.z, view == SHEET_PLAN ? 0.0 : 5.0, 1e-9);
  }
}

static void
test_zoom_keeps_the_middle (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, none, 0.0);
  const Pixel fit = handle_at (f, SHEET_HANDLE_WHEEL, SHEET_SIDE);
  f->view.zoom = 3.0;
  f->view.pan_y = -25.0;
  draw (f, none, 0.0);
  const Pixel zoomed = handle_at (f, SHEET_HANDLE_WHEEL, SHEET_SIDE);

  g_assert_cmpfloat_with_epsilon (zoomed.x - WIDE / 2.0, 3.0 * (fit.x - WIDE / 2.0),
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (zoomed.y - HIGH / 2.0,
                                  3.0 * (fit.y - HIGH / 2.0) - 25.0, 1e-9);
}

static SheetHit
hit_world (Fixture *f, SheetViewName view, Vec3 point)
{
  const SheetLayout layout = sheet_layout_fit (&f->view, WIDE, HIGH);
  const Pixel p = sheet_layout_place (&layout, view, point);

  return sheet_hit (f->sheet, p.x, p.y);
}

static void
test_hits (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, none, 0.0);

  const Pose *pose = &study_in_hand (&study)->now.pose;
  const Vec3 mount = study_in_hand (&study)->corner.upper_mount;
  /* of the steering axis, between mount and ball joint */
  const Vec3 on_axis =
      vec3_along (pose->ball_joint, 0.6, vec3_sub (mount, pose->ball_joint));
  const Vec3 inner =
      vec3_along (study.points.at[POINT_ARM_FRONT_PIVOT], 0.2,
                  vec3_sub (pose->ball_joint, study.points.at[POINT_ARM_FRONT_PIVOT]));
  const Vec3 tread = { 200.0, 740.0 + f->view.section_width / 2.0, 500.0 };
  const Vec3 roll_centre = { 0.0, 0.0, 76.66 };

  g_assert_cmpint (hit_world (f, SHEET_FRONT, mount).handle, ==, SHEET_HANDLE_MOUNT);
  g_assert_cmpint (hit_world (f, SHEET_PLAN, mount).view, ==, SHEET_PLAN);
  g_assert_cmpint (hit_world (f, SHEET_SIDE, pose->wheel_centre).handle, ==,
                   SHEET_HANDLE_WHEEL);
  g_assert_cmpint (hit_world (f, SHEET_FRONT, on_axis).quantity, ==, QUANTITY_SAI);
  g_assert_cmpint (hit_world (f, SHEET_SIDE, on_axis).quantity, ==, QUANTITY_CASTER);
  g_assert_cmpint (hit_world (f, SHEET_FRONT, tread).quantity, ==, QUANTITY_CAMBER);
  g_assert_cmpint (hit_world (f, SHEET_PLAN, tread).quantity, ==, QUANTITY_TOE_IN);
  g_assert_cmpint (hit_world (f, SHEET_PLAN, inner).quantity, ==, QUANTITY_ARM_RATIO);
  g_assert_cmpint (hit_world (f, SHEET_FRONT, roll_centre).quantity, ==,
                   QUANTITY_ROLL_CENTRE_HEIGHT);
  g_assert_cmpint (sheet_hit (f->sheet, WIDE - 3.0, 3.0).quantity, ==, -1);
}

/* Grabbed 12 pixels off its middle a handle is still under the finger. */
static void
test_handles_are_large_enough (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, none, 0.0);
  for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++) {
    const Pixel p = handle_at (f, SHEET_HANDLE_MOUNT, view);

    g_assert_cmpint (sheet_hit (f->sheet, p.x + 12.0, p.y).handle, ==,
                     SHEET_HANDLE_MOUNT);
    g_assert_cmpint (sheet_hit (f->sheet, p.x, p.y - 12.0).handle, ==,
                     SHEET_HANDLE_MOUNT);
  }
}

/* A recorded drawing knows what it covers: a coordinate that is not a number would spoil
 * it. */
static void
assert_ink_inside (Fixture *f, double travel, MountOffset mount)
{
  cairo_surface_t *record =
      cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (record);
  CarSetup *setup = car_setup (f->car, 0);
  double x, y, width, height;

  setup->mount = mount;
  study_solve (&study, f->car, 0, travel);
  sheet_draw (f->sheet, cr, &f->view, WIDE, HIGH);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (record, &x, &y, &width, &height);
  g_assert_true (isfinite (x + y + width + height));
  cairo_destroy (cr);
  cairo_surface_destroy (record);
}

static void
test_stays_finite_when_it_cannot_assemble (Fixture *f, gconstpointer data)
{
  const MountOffset too_low = { 60.0, 0.0, -600.0 };
  double x, y;

  (void) data;
  draw (f, too_low, 0.0);
  g_assert_cmpint (study_in_hand (&study)->now.status, !=, POSE_OK);
  assert_ink_inside (f, 0.0, too_low);
  for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++)
    for (SheetHandle handle = 0; handle < N_SHEET_HANDLES; handle++)
      if (sheet_handle_place (f->sheet, handle, view, &x, &y))
        g_assert_true (isfinite (x) && isfinite (y));
  /* the mount can still be dragged back */
  g_assert_true (sheet_handle_place (f->sheet, SHEET_HANDLE_MOUNT, SHEET_FRONT, &x, &y));
}

static void
assert_inside (const SheetLayout *layout, SheetViewName view, Vec3 point)
{
  g_assert_true (
      pixel_box_has (layout->box[view], sheet_layout_place (layout, view, point)));
}

/* Every joint, and the tyre's outline, through the whole travel and with the mount moved
 * as far as the sheet keeps room for. */
static void
test_all_parts_fit (Fixture *f, gconstpointer data)
{
  static const MountOffset corners[] = {
    { 0 }, { 60, 60, 0 }, { -60, -60, 0 }, { 60, -60, 30 }
  };
  const double half = f->view.section_width / 2.0;

  (void) data;
  for (gsize i = 0; i < G_N_ELEMENTS (corners); i++)
    for (double travel = -80.0; travel <= 80.0; travel += 20.0) {
      draw (f, corners[i], travel);
      if (study_in_hand (&study)->now.status != POSE_OK)
        continue;
      const SheetLayout layout = sheet_layout_fit (&f->view, WIDE, HIGH);
      const Pose *p = &study_in_hand (&study)->now.pose;
      const double free = study.points.loaded_radius * SHEET_TYRE_FREE;
      const Vec3 w = p->wheel_centre;

      for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++) {
        g_assert_true (pixel_box_has (layout.canvas,
                                      (Pixel){ layout.box[view].x, layout.box[view].y }));
        g_assert_true (
            pixel_box_has (layout.canvas,
                           (Pixel){ layout.box[view].x + layout.box[view].width,
                                    layout.box[view].y + layout.box[view].height }));
        assert_inside (&layout, view, study_in_hand (&study)->corner.upper_mount);
        assert_inside (&layout, view, p->ball_joint);
        assert_inside (&layout, view, p->tie_rod_inner);
        assert_inside (&layout, view, p->tie_rod_outer);
        assert_inside (&layout, view, study_in_hand (&study)->now.measures.contact);
        assert_inside (&layout, view, vec3_add (w, (Vec3){ free, half, 0.0 }));
        assert_inside (&layout, view, vec3_add (w, (Vec3){ -free, half, 0.0 }));
        assert_inside (&layout, view, vec3_add (w, (Vec3){ 0.0, half, free }));
      }
    }
}

/* Grip and ground in the front view's pixels. */
static double
ground_y (Fixture *f)
{
  const SheetLayout layout = sheet_layout_fit (&f->view, WIDE, HIGH);
  const double rest = layout.origin[SHEET_FRONT].y;
  double x, wheel;

  /* of the drawing, from the wheel that stands on it */
  g_assert_true (
      sheet_handle_place (f->sheet, SHEET_HANDLE_WHEEL, SHEET_FRONT, &x, &wheel));
  return wheel - rest +
         sheet_scale (f->sheet) * (study_in_hand (&study)->now.pose.wheel_centre.z -
                                   study_in_hand (&study)->now.measures.contact.z);
}

/* The ground stays where it was and the body comes down as far as the wheel has come up;
 * otherwise the body stays and the ground comes up. */
static void
test_ground_can_be_held (Fixture *f, gconstpointer data)
{
  (void) data;
  f->view.ground_fixed = true;
  draw (f, none, 0.0);
  const double k = sheet_scale (f->sheet);
  const Pixel before = handle_at (f, SHEET_HANDLE_HEIGHT, SHEET_FRONT);
  const Pixel plan = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_PLAN);
  g_assert_cmpfloat_with_epsilon (ground_y (f), 0.0, 1e-6);
  const double rest = study_in_hand (&study)->now.measures.contact.z;
  draw (f, none, 30.0);
  const double rise = study_in_hand (&study)->now.measures.contact.z;
  g_assert_cmpfloat_with_epsilon (rise, 30.0, 1.0);
  g_assert_cmpfloat_with_epsilon (ground_y (f), 0.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (handle_at (f, SHEET_HANDLE_HEIGHT, SHEET_FRONT).y,
                                  before.y + k * (rise - rest), 1e-6);
  g_assert_cmpfloat (handle_at (f, SHEET_HANDLE_MOUNT, SHEET_PLAN).y, ==, plan.y);

  f->view.ground_fixed = false;
  draw (f, none, 30.0);
  g_assert_cmpfloat_with_epsilon (handle_at (f, SHEET_HANDLE_HEIGHT, SHEET_FRONT).y,
                                  before.y - k * rest, 1e-6);
  g_assert_cmpfloat_with_epsilon (ground_y (f), -k * rise, 1e-6);
}

/* In the front view alone, under a finger, clear of the others. */
static void
test_height_has_a_handle (Fixture *f, gconstpointer data)
{
  (void) data;
  double x, y;

  draw (f, moved, 10.0);
  const Pixel p = handle_at (f, SHEET_HANDLE_HEIGHT, SHEET_FRONT);
  const Pixel mount = handle_at (f, SHEET_HANDLE_MOUNT, SHEET_FRONT);
  g_assert_cmpint (sheet_hit (f->sheet, p.x - 9.0, p.y + 9.0).handle, ==,
                   SHEET_HANDLE_HEIGHT);
  g_assert_cmpfloat (hypot (p.x - mount.x, p.y - mount.y), >, 48.0);
  g_assert_false (sheet_handle_place (f->sheet, SHEET_HANDLE_HEIGHT, SHEET_SIDE, &x, &y));
  g_assert_false (sheet_handle_place (f->sheet, SHEET_HANDLE_HEIGHT, SHEET_PLAN, &x, &y));
}

/* Raised and shifted pivots are where the corrections put them. */
static void
test_pivots_follow_the_corrections (Fixture *f, gconstpointer data)
{
  (void) data;
  const Vec3 *at = study.points.at;
  CarSetup *setup = car_setup (f->car, 0);

  setup->corrections.front_pivot_raise_mm = 12.0;
  setup->corrections.rear_pivot_raise_mm = 5.0;
  setup->corrections.pivot_outboard_mm = 3.0;
  draw (f, none, 0.0);
  const ArmPivots is = parts_arm_pivots (&study, study_in_hand (&study));
  const ArmPivots was = parts_arm_pivots (&study, study_reference (&study));
  const Vec3 front = { 0.0, 3.0, 12.0 }, rear = { 0.0, 3.0, 5.0 };
  g_assert_cmpfloat (vec3_distance (is.front,
                                    vec3_add (at[POINT_ARM_FRONT_PIVOT], front)),
                     <, 1e-9);
  g_assert_cmpfloat (vec3_distance (is.rear, vec3_add (at[POINT_ARM_REAR_PIVOT], rear)),
                     <, 1e-9);
  g_assert_cmpfloat (vec3_distance (was.rear, at[POINT_ARM_REAR_PIVOT]), <, 1e-9);
}

/* What is lit changes its own pixels and nothing far away. */
static void
test_lit_part_glows (Fixture *f, gconstpointer data)
{
  cairo_surface_t *plain = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDE, HIGH);
  const SheetLayout layout =
      (draw (f, none, 0.0), sheet_layout_fit (&f->view, WIDE, HIGH));
  const double edge = layout.box[SHEET_SIDE].x;
  cairo_t *cr = cairo_create (plain);
  const int stride = cairo_image_surface_get_stride (f->surface);
  guint in_side = 0, elsewhere = 0;

  (void) data;
  sheet_draw (f->sheet, cr, &f->view, WIDE, HIGH);
  f->view.lit = QUANTITY_CASTER;
  draw (f, none, 0.0);
  cairo_surface_flush (plain);
  cairo_surface_flush (f->surface);
  const guchar *a = cairo_image_surface_get_data (plain);
  const guchar *b = cairo_image_surface_get_data (f->surface);
  for (int y = 0; y < HIGH; y++)
    for (int x = 0; x < WIDE; x++)
      if (memcmp (a + y * stride + 4 * x, b + y * stride + 4 * x, 4) != 0)
        *(x >= edge ? &in_side : &elsewhere) += 1;
  g_assert_cmpuint (in_side, >, 500);
  g_assert_cmpuint (elsewhere, ==, 0);
  cairo_destroy (cr);
  cairo_surface_destroy (plain);
}

int
main (int argc, char **argv)
{
  static const struct {
    const char *path;
    void (*test) (Fixture *, gconstpointer);
  } tests[] = {
    { "/sheet/views-share-their-axes", test_views_share_their_axes },
    { "/sheet/one-scale", test_one_scale_everywhere },
    { "/sheet/layout-is-steady", test_layout_is_steady },
    { "/sheet/move-inverts-the-projection", test_move_inverts_the_projection },
    { "/sheet/zoom-keeps-the-middle", test_zoom_keeps_the_middle },
    { "/sheet/hits", test_hits },
    { "/sheet/handles-are-large-enough", test_handles_are_large_enough },
    { "/sheet/finite-when-not-assembled", test_stays_finite_when_it_cannot_assemble },
    { "/sheet/all-parts-fit", test_all_parts_fit },
    { "/sheet/ground-can-be-held", test_ground_can_be_held },
    { "/sheet/height-has-a-handle", test_height_has_a_handle },
    { "/sheet/pivots-follow-the-corrections", test_pivots_follow_the_corrections },
    { "/sheet/lit-part-glows", test_lit_part_glows },
  };

  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Fixture, NULL, set_up, tests[i].test, tear_down);
  return g_test_run ();
}
