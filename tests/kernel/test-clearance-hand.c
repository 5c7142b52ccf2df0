/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Room between tyre and strut, by hand where a drawing gives it. */

#include "check-data.h"

#include "kernel/clearance.h"

#include <glib.h>
#include <math.h>

static const TyreShape wide = { .unloaded_radius = 310, .section_width = 200 };

/* Upright wheel at y = 740, z = 300; upright strut at @x, @y with its foot at z = 430. */
static Corner
upright_corner (double x, double y)
{
  MeasuredCorner m = set_p;

  m.at[POINT_STRUT_FOOT] = (Vec3){ x, y, 430 };
  m.at[POINT_UPPER_MOUNT] = (Vec3){ x, y, 835 };
  return check_assemble (&m, (Adjustment){ 0 });
}

static TyreClearance
room (const Corner *corner, StrutShape strut)
{
  return tyre_clearance (corner, &wide, &strut, 405.0);
}

/* The tyre reaches from y = 640 outboard and up to z = 610, its foot plate's height 180.
 */
static void
test_parallel_to_the_wheel (void)
{
  const Corner corner = upright_corner (0, 590), behind = upright_corner (-150, 590);
  const StrutShape strut = { .tube_radius = 25,
                             .tube_bottom = 0,
                             .tube_top = 300,
                             .seat_radius = 70,
                             .seat_height = 150,
                             .spring_radius = 45 };
  const TyreClearance c = room (&corner, strut), d = room (&behind, strut);

  check_near ("tube", 0, c.room[STRUT_TUBE], 25, 1e-12);
  check_near ("seat", 0, c.room[STRUT_SPRING_SEAT], -20, 1e-12);
  check_near ("spring", 0, c.room[STRUT_SPRING], 5, 1e-12);
  g_assert_cmpint (c.nearest, ==, STRUT_SPRING_SEAT);
  g_assert_true (c.least == c.room[STRUT_SPRING_SEAT]);
  /* the tyre is 271 mm high there, so the tube still passes its face */
  check_near ("tube", -150, d.room[STRUT_TUBE], 25, 1e-12);
}

/* A seat at z = 630 that reaches over the tyre stands 20 mm above its crown; a spring
 * 10 mm short of the shoulder stands 10 and 20 mm from it. */
static void
test_above_the_tyre (void)
{
  const Corner corner = upright_corner (0, 590);
  const TyreClearance c =
      room (&corner,
            (StrutShape){ .seat_radius = 70, .seat_height = 200, .spring_radius = 40 });

  check_near ("seat", 200, c.room[STRUT_SPRING_SEAT], 20, 1e-12);
  check_near ("spring", 200, c.room[STRUT_SPRING], sqrt (500), 1e-12);
  /* lower by 30 it cuts into the crown by 10 */
  const TyreClearance low =
      room (&corner, (StrutShape){ .seat_radius = 70, .seat_height = 170 });
  check_near ("seat", 170, low.room[STRUT_SPRING_SEAT], -10, 1e-12);
}

/* Behind the tyre, 350 mm from its centre, 50 mm inboard of its shoulder. */
static void
test_behind_the_tyre (void)
{
  const Corner corner = upright_corner (-350, 590);
  const TyreClearance c =
      room (&corner,
            (StrutShape){ .tube_radius = 25, .tube_bottom = -200, .tube_top = 300 });
  const TyreClearance up =
      room (&corner,
            (StrutShape){ .tube_radius = 25, .tube_bottom = 0, .tube_top = 300 });

  check_near ("tube", -350, c.room[STRUT_TUBE], hypot (350 - 310, 640 - 590) - 25, 1e-12);
  /* from z = 430 up the crown turns away */
  g_assert_cmpfloat (up.room[STRUT_TUBE], >, c.room[STRUT_TUBE] + 10.0);
}

/* A strut that leans in by @lean and a wheel of camber @camber, in the front view: the
 * tube's lowest outer corner is the nearest to the tyre's face. */
static void
check_leaning (double lean, double camber)
{
  MeasuredCorner m = set_p;
  const double y = 580, z = 430, r = 25, length = 400;

  m.camber = camber;
  m.at[POINT_STRUT_FOOT] = (Vec3){ 0, y, z };
  m.at[POINT_UPPER_MOUNT] = (Vec3){ 0, y - length * sin (lean), z + length * cos (lean) };
  const Corner corner = check_assemble (&m, (Adjustment){ 0 });
  const TyreClearance c =
      tyre_clearance (&corner, &wide,
                      &(StrutShape){
                          .tube_radius = r, .tube_bottom = 20, .tube_top = 300 },
                      400);
  const double corner_y = y - 20 * sin (lean) + r * cos (lean);
  const double corner_z = z + 20 * cos (lean) + r * sin (lean);
  const double inboard =
      (740 - corner_y) * cos (camber) + (corner_z - 300) * sin (camber);

  check_near ("tube", lean, c.room[STRUT_TUBE], inboard - 100, 1e-11);
}

static void
test_leaning (void)
{
  for (double lean = 4.0; lean <= 16.0; lean += 2.0)
    for (double camber = -3.0; camber <= 2.0; camber += 0.5)
      check_leaning (RADIANS (lean), RADIANS (camber));
}

/* Set M with a plate so large that the tyre's highest point along the strut lies under
 * it: the room is that point's depth below the plate's plane. */
static void
test_large_seat (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  const Vec3 n = corner.spin_axis, u = corner.strut_direction;
  const Vec3 off = vec3_unit (vec3_reject (u, n));
  const Vec3 inner = vec3_along (corner.wheel_centre, -100, n);
  const Vec3 crown = vec3_along (inner, 310, off);

  g_assert_cmpfloat (vec3_dot (n, u), <, 0.0);
  for (double height = 195.0; height <= 240.0; height += 5.0) {
    const TyreClearance c =
        room (&corner, (StrutShape){ .seat_radius = 150, .seat_height = height });

    check_near ("seat", height, c.least,
                height + vec3_dot (u, vec3_sub (corner.strut_foot, crown)), 1e-11);
  }
}

static void
test_what_is_not_there (void)
{
  const Corner corner = upright_corner (0, 590);
  const TyreClearance none = room (&corner, (StrutShape){ 0 });
  const TyreClearance spring =
      room (&corner, (StrutShape){ .spring_radius = 45, .seat_height = 150 });

  for (StrutPart part = 0; part < N_STRUT_PARTS; part++)
    g_assert_true (none.room[part] == INFINITY);
  g_assert_true (none.least == INFINITY);
  g_assert_cmpint (spring.nearest, ==, STRUT_SPRING);
  g_assert_true (spring.room[STRUT_TUBE] == INFINITY);
  check_near ("spring", 0, spring.least, 5, 1e-12);
}

/* Along the spin axis itself, 400 mm off it. */
static void
test_strut_along_the_axle (void)
{
  Corner corner = upright_corner (0, 590);

  corner.strut_direction = corner.spin_axis;
  corner.strut_foot = vec3_add (corner.wheel_centre, (Vec3){ 0, -80, 400 });
  const TyreClearance c = room (&corner, (StrutShape){ .tube_radius = 25,
                                                       .tube_top = 100,
                                                       .seat_radius = 60,
                                                       .seat_height = -60 });

  check_near ("tube", 0, c.room[STRUT_TUBE], 400 - 310 - 25, 1e-12);
  check_near ("seat", 0, c.room[STRUT_SPRING_SEAT], hypot (40, 400 - 310 - 60), 1e-12);
}

/* The tyre reaches from y = 640 to 840. A spring moved out by 10 as a whole stands 10
 * nearer; one that only leans out passes the tyre's upper corner, 50 off the strut's axis
 * and 160 above the seat, at a right angle. */
static void
test_spring_beside_the_strut (void)
{
  const Corner corner = upright_corner (0, 590);
  const double lean = atan (10.0 / (405 - 15 - 20)), r = 30;
  StrutShape strut = { .spring_radius = r,
                       .seat_height = 20,
                       .spring_drop = 15,
                       .lower_outboard = 10,
                       .upper_outboard = 10 };

  check_near ("moved", 10, room (&corner, strut).least, 640 - 600 - r, 1e-12);
  g_assert_false (strut_shape_leans (&strut));
  strut.lower_outboard = 0;
  check_near ("leaning", 10, room (&corner, strut).least,
              50 * cos (lean) - 160 * sin (lean) - r, 1e-11);
  g_assert_true (strut_shape_leans (&strut));
  /* slack, its end 60 above the seat at the most */
  strut.spring_free = 60;
  check_near ("slack", 60, room (&corner, strut).least,
              50 - 60 * sin (lean) - r * cos (lean), 1e-11);
  /* squashed to nothing: a plate */
  strut.spring_drop = 385;
  check_near ("flat", 0, room (&corner, strut).least, 50 - r, 1e-12);
}

/* Behind the middle of the tyre, 400 mm from its centre, upward from below: the end of
 * the spring is the nearest, 20 mm below the centre's height. */
static void
test_upper_end_of_the_spring (void)
{
  const Corner corner = upright_corner (-400, 740);
  const double seat = -250, r = 45, at_end = hypot (400 - r, 20) - 310;
  const StrutShape endless = { .seat_height = seat, .spring_radius = r };
  StrutShape drop = endless, slack = endless, never_slack = endless;

  drop.spring_drop = 405 + 150;
  slack.spring_free = 100;
  never_slack.spring_free = 1000;
  check_near ("endless", 0, room (&corner, endless).least, 400 - r - 310, 1e-11);
  check_near ("drop", 0, room (&corner, drop).least, at_end, 1e-11);
  check_near ("slack", 0, room (&corner, slack).least, at_end, 1e-11);
  g_assert_true (room (&corner, never_slack).least == room (&corner, endless).least);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/clearance-hand/parallel", test_parallel_to_the_wheel);
  g_test_add_func ("/kernel/clearance-hand/above", test_above_the_tyre);
  g_test_add_func ("/kernel/clearance-hand/behind", test_behind_the_tyre);
  g_test_add_func ("/kernel/clearance-hand/leaning", test_leaning);
  g_test_add_func ("/kernel/clearance-hand/large-seat", test_large_seat);
  g_test_add_func ("/kernel/clearance-hand/not-there", test_what_is_not_there);
  g_test_add_func ("/kernel/clearance-hand/along-the-axle", test_strut_along_the_axle);
  g_test_add_func ("/kernel/clearance-hand/beside-the-strut",
                   test_spring_beside_the_strut);
  g_test_add_func ("/kernel/clearance-hand/upper-end", test_upper_end_of_the_spring);
  return g_test_run ();
}
