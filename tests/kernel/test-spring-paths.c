/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What springs feel of the wheel: against figures computed independently, against
 * numerical derivatives by GSL, against the ratios that the sheet shows, and against
 * statics, which knows forces and no ratios. */

#include "check-data.h"
#include "random-corner.h"

#include "kernel/spring-path.h"
#include "kernel/statics.h"

#include <gsl/gsl_deriv.h>

#define N_CASES 200

static SpringPaths
find_paths (const Corner *corner, const Pose *pose, const SpringPlaces *places)
{
  SpringPaths paths;

  g_assert_true (spring_paths (corner, pose, places, &paths));
  return paths;
}

/* A spring's own part of the wheel rate. */
static double
wheel_rate (SpringPath path, double rate, double force)
{
  return rate * path.ratio * path.ratio + force * path.bend;
}

/* Set P: a coil of 25 N/mm on the strut, carrying 3500 N at the wheel as measured; then a
 * torsion bar of 2094.395 N·m/rad instead. Computed independently, to the last digit
 * shown. */
static void
test_set_p_rates (void)
{
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const Station home = check_solve_at_contact (&corner, 0.0);
  const SpringPlaces places = { .seats = { .perch = 60, .upper_drop = 45 } };
  const SpringPaths p = find_paths (&corner, &home.pose, &places);
  const double force = 3500 / p.coil.ratio, torque = 3500 / p.bar.ratio;

  check_near ("ratio", 0, p.coil.ratio, 0.95953458, 5e-9);
  check_near ("force", 0, force, 3647.602, 5e-4);
  check_near ("k i²", 0, wheel_rate (p.coil, 25, 0), 23.01767, 5e-6);
  check_near ("bend", 0, p.coil.bend, 6.06689e-4, 5e-10);
  check_near ("geometric", 0, wheel_rate (p.coil, 0, force), 2.21296, 5e-6);
  check_near ("coil", 0, wheel_rate (p.coil, 25, force), 25.23063, 5e-6);
  check_near ("arm ratio", 0, p.bar.ratio, 0.003081265, 5e-10);
  check_near ("torque", 0, torque, 1135897, 0.5);
  check_near ("K ratio²", 0, wheel_rate (p.bar, 2094395, 0), 19.88459, 5e-6);
  check_near ("bar", 0, wheel_rate (p.bar, 2094395, torque), 19.79020, 5e-6);
}

static void
test_set_p_loads (void)
{
  static const struct {
    double travel, load;
  } rows[] = { { -40, 2532.854 }, { 0, 3500 }, { 40, 4559.874 } };
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const SpringPlaces places = { .seats = { .perch = 60, .upper_drop = 45 } };
  const Station home = check_solve_at_contact (&corner, 0.0);
  const SpringPath standing = find_paths (&corner, &home.pose, &places).coil;
  const double force = 3500 / standing.ratio;

  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++) {
    const Station s = check_solve_at_contact (&corner, rows[i].travel);
    const SpringPath coil = find_paths (&corner, &s.pose, &places).coil;
    const double squeezed = coil.place - standing.place;

    check_near ("load", rows[i].travel, (force + 25 * squeezed) * coil.ratio,
                rows[i].load, 5e-4);
  }
}

/* The strut so high that the knuckle does not turn: the wheel goes up and down as the
 * arm's end, 320 mm off its hinge, does. */
static Corner
straight_lever (double length)
{
  const MeasuredCorner measured = {
    .at = { [POINT_ARM_FRONT_PIVOT] = { 100, 380, 200 },
            [POINT_ARM_REAR_PIVOT] = { -200, 380, 200 },
            [POINT_BALL_JOINT] = { 0, 380 + length, 200 },
            [POINT_UPPER_MOUNT] = { 0, 380 + length, 1e9 },
            [POINT_STRUT_FOOT] = { 0, 380 + length, 400 },
            [POINT_TIE_ROD_OUTER] = { -130, 380 + length, 200 },
            [POINT_TIE_ROD_INNER] = { -130, 380, 200 },
            [POINT_WHEEL_CENTRE] = { 0, 420 + length, 300 } },
    .loaded_radius = 300,
  };

  return check_assemble (&measured, (Adjustment){ 0 });
}

/* A torsion bar of 2094.395 N·m/rad wound up by 900 N·m, its lever of 320 mm level and
 * turned: force and rate at its end, computed independently by
 * K/(l cos φ)² + T sin φ/(l² cos³ φ). The mount a million metres up turns the knuckle by
 * no more than 1e-7. */
static void
test_lever_of_a_bar (void)
{
  static const struct {
    double angle_deg, force, rate;
  } rows[] = { { 0, 2812.5, 20.4530772 },
               { 10, 2855.88735, 22.6869204 },
               { -15, 2911.71426, 19.3974369 } };
  const Corner corner = straight_lever (320);
  const SpringPlaces places = { 0 };

  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++) {
    const double angle = RADIANS (rows[i].angle_deg);
    Pose pose;

    g_assert_cmpint (pose_at_arm_angle (&corner, angle, 0.0, &pose), ==, POSE_OK);
    const SpringPaths p = find_paths (&corner, &pose, &places);

    check_near ("force", rows[i].angle_deg, 9e5 * p.bar.ratio, rows[i].force, 5e-4);
    check_near ("rate", rows[i].angle_deg, wheel_rate (p.bar, 2094395.1, 9e5),
                rows[i].rate, 1e-6 * rows[i].rate);
  }
}

/* A spring of 25 N/mm at 300 mm of a lever of 350 mm: k (c/b)². Relation: Barton &
 * Fieldhouse, Automotive Chassis Engineering, eq. 3.33. */
static void
test_spring_along_a_lever (void)
{
  const Corner corner = straight_lever (350);
  const SpringPlaces places = { .link_carrier = LINK_ON_ARM,
                                .link_point = { 30, 680, 200 } };
  Pose pose;

  g_assert_cmpint (pose_at_arm_angle (&corner, 0.0, 0.0, &pose), ==, POSE_OK);
  const SpringPaths p = find_paths (&corner, &pose, &places);

  check_near ("rate", 0, wheel_rate (p.link, 25, 0), 18.36735, 5e-6);
}

/* Set P as measured: the strut leans in by atan (125/650), so along it, outboard of it
 * and forward of it are (0, −sin, cos), (0, cos, sin) and x. */
static void
test_set_p_seats (void)
{
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const Station home = check_solve_at_contact (&corner, 0.0);
  const double size = hypot (125, 650), s = 125 / size, c = 650 / size;
  const SpringPlaces places = { .seats = { 60, 45, 8, 3, -5, 11 },
                                .link_carrier = LINK_ON_STRUT,
                                .link_point = { -40, 640, 520 } };
  const Vec3 bottom = { 3, 656.25 - 60 * s + 8 * c, 412.5 + 60 * c + 8 * s };
  const Vec3 top = { 11, 575 + 45 * s - 5 * c, 835 - 45 * c - 5 * s };
  const SpringPaths p = find_paths (&corner, &home.pose, &places);

  check_near ("bottom", 0, vec3_distance (p.coil_bottom, bottom), 0, 1e-9);
  check_near ("top", 0, vec3_distance (p.coil_top, top), 0, 1e-9);
  check_near ("length", 0, p.coil.place, -vec3_distance (top, bottom), 1e-9);
  check_near ("link", 0, vec3_distance (p.link_point, places.link_point), 0, 1e-9);
  check_near ("rise of the link", 0, p.link.place, 0, 1e-9);
  check_near ("strut", 0, p.strut.place,
              -vec3_distance (set_p.at[POINT_UPPER_MOUNT], set_p.at[POINT_STRUT_FOOT]),
              1e-9);
}

/* A corner with springs anywhere, at a place of its own. */
typedef struct {
  RandomCase at;
  Corner corner;
  SpringPlaces places;
  Station station;
} SprungCorner;

static SpringPlaces
dice_places (Dice *dice, const MeasuredCorner *m)
{
  SpringPlaces p = { .seats = { .perch = dice_between (dice, 0, 100),
                                .upper_drop = dice_between (dice, 0, 60) } };
  const bool is_on_arm = dice_between (dice, 0, 1) < 0.5;
  const Vec3 near =
      is_on_arm
          ? vec3_scale (vec3_add (m->at[POINT_BALL_JOINT], m->at[POINT_ARM_FRONT_PIVOT]),
                        0.5)
          : m->at[POINT_STRUT_FOOT];

  p.seats.lower_outboard = dice_between (dice, -30, 30);
  p.seats.lower_forward = dice_between (dice, -30, 30);
  p.seats.upper_outboard = dice_between (dice, -30, 30);
  p.seats.upper_forward = dice_between (dice, -30, 30);
  p.link_carrier = is_on_arm ? LINK_ON_ARM : LINK_ON_STRUT;
  p.link_point =
      vec3_add (near, (Vec3){ dice_between (dice, -60, 60), dice_between (dice, -60, 60),
                              dice_between (dice, -20, 80) });
  return p;
}

static SprungCorner
dice_sprung_corner (Dice *dice)
{
  SprungCorner s = { .at = dice_case (dice) };

  s.at.adjustment.corrections =
      (Corrections){ .clamp_tilt = dice_between (dice, -0.03, 0.03),
                     .ball_joint_spacer = dice_between (dice, 0, 20),
                     .front_pivot_raise = dice_between (dice, -10, 10),
                     .rear_pivot_raise = dice_between (dice, -10, 10),
                     .pivot_outboard = dice_between (dice, -8, 8) };
  s.corner = check_assemble (&s.at.measured, s.at.adjustment);
  s.places = dice_places (dice, &s.at.measured);
  g_assert_cmpint (station_solve (&s.corner, s.at.travel, s.at.rack, &s.station), ==,
                   POSE_OK);
  return s;
}

enum {
  COIL,
  STRUT,
  BAR,
  LINK,
  WHEEL,
  N_PATHS
};
static const char *const names[N_PATHS] = { "coil", "strut", "bar", "link", "wheel" };

static SpringPath
path_of (const SpringPaths *p, int which)
{
  const SpringPath paths[N_PATHS] = { p->coil, p->strut, p->bar, p->link, p->wheel };

  return paths[which];
}

typedef struct {
  const SprungCorner *sprung;
  int which;
} Ask;

static SpringPaths
paths_at (const SprungCorner *s, double angle, double *contact)
{
  Pose pose;

  g_assert_cmpint (pose_at_arm_angle (&s->corner, angle, s->at.rack, &pose), ==, POSE_OK);
  *contact = pose_contact (&s->corner, &pose).z;
  return find_paths (&s->corner, &pose, &s->places);
}

static double
contact_at (double angle, void *data)
{
  const Ask *ask = data;
  double contact;

  paths_at (ask->sprung, angle, &contact);
  return contact;
}

static double
place_at (double angle, void *data)
{
  const Ask *ask = data;
  double contact;
  const SpringPaths p = paths_at (ask->sprung, angle, &contact);

  return path_of (&p, ask->which).place;
}

static double
ratio_at (double angle, void *data)
{
  const Ask *ask = data;
  double contact;
  const SpringPaths p = paths_at (ask->sprung, angle, &contact);

  return path_of (&p, ask->which).ratio;
}

static double
derivative (double (*function) (double, void *), const Ask *ask)
{
  const gsl_function f = { function, (void *) ask };
  double result, error;

  gsl_deriv_central (&f, ask->sprung->station.pose.arm_angle, 1e-3, &result, &error);
  return result;
}

/* Ratio and bend against derivatives of place and ratio by the arm angle. */
static void
test_derivatives (void)
{
  Dice dice = { 81 };

  for (int i = 0; i < N_CASES; i++) {
    const SprungCorner s = dice_sprung_corner (&dice);
    const SpringPaths p = find_paths (&s.corner, &s.station.pose, &s.places);
    const double rate = p.contact_rate;

    check_near ("contact", i, rate, derivative (contact_at, &(Ask){ &s, 0 }),
                1e-8 * rate);
    check_near ("contact by travel", i, p.contact_per_travel, rate / s.station.pose.lift,
                1e-12);
    for (int k = 0; k < N_PATHS; k++) {
      const SpringPath path = path_of (&p, k);
      const double unit = k == BAR ? 1 / rate : 1; /* the bar's angle is small */
      const Ask ask = { &s, k };

      check_near (names[k], i, path.ratio * rate, derivative (place_at, &ask),
                  1e-8 * rate * unit);
      check_near (names[k], i, path.bend * rate, derivative (ratio_at, &ask),
                  1e-8 * unit);
    }
  }
}

/* The length that the seats' places give is the length, and the direction theirs. */
static void
test_seats_are_the_coil (void)
{
  Dice dice = { 82 };

  for (int i = 0; i < N_CASES; i++) {
    const SprungCorner s = dice_sprung_corner (&dice);
    const SpringPaths p = find_paths (&s.corner, &s.station.pose, &s.places);
    const Vec3 run = vec3_sub (p.coil_top, p.coil_bottom);

    check_near ("length", i, p.coil.place, -vec3_length (run), 1e-9);
    check_near ("direction", i, vec3_distance (p.coil_direction, vec3_unit (run)), 0,
                1e-12);
    check_near ("bar", i, p.bar.place, s.station.pose.arm_angle, 0);
    check_near ("wheel", i, p.wheel.place, s.station.pose.travel, 1e-12);
    check_near ("link", i, p.link.place, p.link_point.z - s.places.link_point.z, 1e-12);
  }
}

static void
test_coil_on_the_axis (void)
{
  Dice dice = { 83 };

  for (int i = 0; i < N_CASES; i++) {
    SprungCorner s = dice_sprung_corner (&dice);
    const CoilSeats seats = { .perch = s.places.seats.perch,
                              .upper_drop = s.places.seats.upper_drop };

    s.places.seats = seats;
    const Vec3 foot = s.station.pose.strut_foot, u = s.station.pose.strut_direction;
    const SpringPaths p = find_paths (&s.corner, &s.station.pose, &s.places);
    const double length = s.station.measures.value[QUANTITY_STRUT_LENGTH];

    check_near ("length", i, p.coil.place, -(length - seats.perch - seats.upper_drop),
                1e-12);
    check_near ("ratio", i, p.coil.ratio, p.strut.ratio, 1e-14);
    check_near ("bend", i, p.coil.bend, p.strut.bend, 1e-14);
    check_near ("direction", i, vec3_distance (p.coil_direction, u), 0, 1e-12);
    check_near ("bottom", i, vec3_length (vec3_cross (u, vec3_sub (p.coil_bottom, foot))),
                0, 1e-9);
    check_near ("top", i, vec3_length (vec3_cross (u, vec3_sub (p.coil_top, foot))), 0,
                1e-9);
  }
}

/* What the sheet shows per wheel travel. */
static void
test_ratios_of_the_sheet (void)
{
  Dice dice = { 84 };

  for (int i = 0; i < N_CASES; i++) {
    const SprungCorner s = dice_sprung_corner (&dice);
    const SpringPaths p = find_paths (&s.corner, &s.station.pose, &s.places);
    const double *value = s.station.measures.value, per_travel = p.contact_per_travel;

    check_near ("strut", i, p.strut.ratio * per_travel, value[QUANTITY_STRUT_RATIO],
                1e-12);
    check_near ("arm", i, p.bar.ratio * per_travel, value[QUANTITY_ARM_RATIO], 1e-15);
    check_near ("wheel", i, p.wheel.ratio * per_travel, 1, 1e-12);
    check_near ("length", i, p.strut.place, -value[QUANTITY_STRUT_LENGTH], 0);
  }
}

static void
check_distance (const char *what, int i, Vec3 a, Vec3 b, Vec3 c, Vec3 d)
{
  check_near (what, i, vec3_distance (a, b), vec3_distance (c, d), 1e-9);
}

/* What a body carries keeps its distances from that body's points. */
static void
test_link_is_carried (void)
{
  Dice dice = { 85 };

  for (int i = 0; i < N_CASES; i++) {
    SprungCorner s = dice_sprung_corner (&dice);
    const Vec3 *at = s.at.measured.at, link = s.places.link_point;
    const Pose *pose = &s.station.pose;
    const Vec3 on_axis = vec3_along (pose->strut_foot, 200, pose->strut_direction);
    const Vec3 up = vec3_unit (vec3_sub (at[POINT_UPPER_MOUNT], at[POINT_STRUT_FOOT]));

    s.places.link_carrier = LINK_ON_ARM;
    const Vec3 on_arm = find_paths (&s.corner, pose, &s.places).link_point;
    s.places.link_carrier = LINK_ON_STRUT;
    const Vec3 on_tube = find_paths (&s.corner, pose, &s.places).link_point;

    check_distance ("ball joint", i, on_arm, pose->ball_joint, link,
                    at[POINT_BALL_JOINT]);
    check_distance ("front pivot", i, on_arm, s.corner.arm_pivot, link,
                    at[POINT_ARM_FRONT_PIVOT]);
    check_distance ("foot", i, on_tube, pose->strut_foot, link, at[POINT_STRUT_FOOT]);
    check_distance ("axis", i, on_tube, on_axis, link,
                    vec3_along (at[POINT_STRUT_FOOT], 200, up));
  }
}

/* On the knuckle, uncorrected, the link keeps its distance from all of it. */
static void
test_link_on_the_knuckle (void)
{
  static const struct {
    PointName name;
    size_t place;
  } points[] = { { POINT_BALL_JOINT, offsetof (Pose, ball_joint) },
                 { POINT_TIE_ROD_OUTER, offsetof (Pose, tie_rod_outer) },
                 { POINT_WHEEL_CENTRE, offsetof (Pose, wheel_centre) },
                 { POINT_STRUT_FOOT, offsetof (Pose, strut_foot) } };
  Dice dice = { 86 };

  for (int i = 0; i < N_CASES; i++) {
    const RandomCase c = dice_case (&dice);
    SpringPlaces places = dice_places (&dice, &c.measured);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    Station s;

    places.link_carrier = LINK_ON_STRUT;
    g_assert_cmpint (station_solve (&corner, c.travel, c.rack, &s), ==, POSE_OK);
    const SpringPaths p = find_paths (&corner, &s.pose, &places);

    for (size_t k = 0; k < G_N_ELEMENTS (points); k++) {
      const Vec3 *now = (const Vec3 *) ((const char *) &s.pose + points[k].place);

      check_distance ("point", i, p.link_point, *now, places.link_point,
                      c.measured.at[points[k].name]);
    }
  }
}

/* The mirror of the corner, seen after half a turn of the axes about z: x → −x. */
static void
test_mirror (void)
{
  Dice dice = { 87 };

  for (int i = 0; i < N_CASES; i++) {
    const RandomCase one = dice_case (&dice);
    const SpringPlaces places = dice_places (&dice, &one.measured);
    RandomCase other = one;
    SpringPlaces mirrored = places;
    Station a, b;

    for (int k = 0; k < N_POINTS; k++)
      other.measured.at[k].x *= -1.0;
    other.measured.toe_in *= -1.0;
    other.adjustment.mount.rearward *= -1.0;
    mirrored.seats.lower_forward *= -1.0;
    mirrored.seats.upper_forward *= -1.0;
    mirrored.link_point.x *= -1.0;
    const Corner left = check_assemble (&one.measured, one.adjustment);
    const Corner right = check_assemble (&other.measured, other.adjustment);
    g_assert_cmpint (station_solve (&left, one.travel, one.rack, &a), ==, POSE_OK);
    g_assert_cmpint (station_solve (&right, one.travel, one.rack, &b), ==, POSE_OK);
    const SpringPaths p = find_paths (&left, &a.pose, &places);
    const SpringPaths q = find_paths (&right, &b.pose, &mirrored);

    for (int k = 0; k < N_PATHS; k++) {
      check_near (names[k], i, path_of (&q, k).place, path_of (&p, k).place, 1e-9);
      check_near (names[k], i, path_of (&q, k).ratio, path_of (&p, k).ratio, 1e-11);
      check_near (names[k], i, path_of (&q, k).bend, path_of (&p, k).bend, 1e-11);
    }
    check_near ("top", i, q.coil_top.x, -p.coil_top.x, 1e-9);
    check_near ("direction", i, q.coil_direction.y, p.coil_direction.y, 1e-12);
  }
}

static JointForces
balance (const SprungCorner *s, const CornerLoad *load, SpringHold hold)
{
  JointForces f;

  g_assert_true (joint_forces (&s->corner, &s->station.pose, load, &hold, &f));
  return f;
}

/* Statics knows no ratio: what a wheel load of 3500 N and weights at wheel and link ask
 * of each spring in turn is what the ratios say, whatever way the coil leans. */
static void
test_virtual_work (void)
{
  Dice dice = { 88 };

  for (int i = 0; i < N_CASES; i++) {
    const SprungCorner s = dice_sprung_corner (&dice);
    const SpringPaths p = find_paths (&s.corner, &s.station.pose, &s.places);
    const Vec3 link = { 0, 0, -900 };
    CornerLoad load = { .contact = { 0, 0, 3500 }, .wheel_centre = { 0, 0, -300 } };
    const double sum = 3500 - 300 * p.wheel.ratio - 900 * p.link.ratio;
    const SpringHold coil = { CARRIED_BY_COIL, .coil_top = s.corner.upper_mount,
                              .coil_direction = p.coil_direction };

    if (s.places.link_carrier == LINK_ON_ARM) {
      load.on_arm = link;
      load.on_arm_at = p.link_point;
    } else {
      load.on_knuckle = link;
      load.on_knuckle_at = p.link_point;
    }
    const JointForces c = balance (&s, &load, coil);
    const JointForces strut =
        balance (&s, &load,
                 spring_hold_alone (&s.corner, &s.station.pose, CARRIED_BY_STRUT));
    const JointForces bar =
        balance (&s, &load,
                 spring_hold_alone (&s.corner, &s.station.pose, CARRIED_BY_TORSION_BAR));

    check_near ("coil", i, c.coil * p.coil.ratio, sum, 1e-8);
    check_near ("strut", i, strut.strut * p.strut.ratio, sum, 1e-8);
    check_near ("bar", i, bar.torque * p.bar.ratio, sum, 1e-8);
    check_near ("moment at the tower", i, vec3_length (c.tower_moment), 0, 1e-9);
  }
}

/* With the coil's line through its seats instead, the body must hold the seat against the
 * moment, and as the seat turns with the knuckle that takes its share of the work. */
static void
test_seat_turns_with_the_knuckle (void)
{
  Dice dice = { 89 };

  for (int i = 0; i < N_CASES; i++) {
    const SprungCorner s = dice_sprung_corner (&dice);
    const SpringPaths p = find_paths (&s.corner, &s.station.pose, &s.places);
    const CornerLoad load = { .contact = { 0, 0, 3500 } };
    const JointForces f = balance (&s, &load,
                                   (SpringHold){ CARRIED_BY_COIL, .coil_top = p.coil_top,
                                                 .coil_direction = p.coil_direction });
    const double turning = vec3_dot (f.tower_moment, s.station.pose.turn_rate);

    check_near ("work", i, f.coil * p.coil.ratio + turning / p.contact_rate, 3500, 1e-8);
  }
}

static void
test_contact_that_does_not_rise (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  Station s;
  SpringPaths p;

  g_assert_cmpint (station_solve (&corner, 0.0, 0.0, &s), ==, POSE_OK);
  s.pose.ball_velocity = vec3_scale (s.pose.ball_velocity, -1.0);
  s.pose.turn_rate = vec3_scale (s.pose.turn_rate, -1.0);
  g_assert_false (spring_paths (&corner, &s.pose, &(SpringPlaces){ 0 }, &p));
  for (size_t i = 0; i < sizeof p / sizeof (double); i++)
    g_assert_true (isnan (((const double *) &p)[i]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/spring-paths/set-p-rates", test_set_p_rates);
  g_test_add_func ("/kernel/spring-paths/set-p-loads", test_set_p_loads);
  g_test_add_func ("/kernel/spring-paths/set-p-seats", test_set_p_seats);
  g_test_add_func ("/kernel/spring-paths/lever-of-a-bar", test_lever_of_a_bar);
  g_test_add_func ("/kernel/spring-paths/spring-along-a-lever",
                   test_spring_along_a_lever);
  g_test_add_func ("/kernel/spring-paths/derivatives", test_derivatives);
  g_test_add_func ("/kernel/spring-paths/seats", test_seats_are_the_coil);
  g_test_add_func ("/kernel/spring-paths/coil-on-the-axis", test_coil_on_the_axis);
  g_test_add_func ("/kernel/spring-paths/ratios-of-the-sheet", test_ratios_of_the_sheet);
  g_test_add_func ("/kernel/spring-paths/link-is-carried", test_link_is_carried);
  g_test_add_func ("/kernel/spring-paths/link-on-the-knuckle", test_link_on_the_knuckle);
  g_test_add_func ("/kernel/spring-paths/mirror", test_mirror);
  g_test_add_func ("/kernel/spring-paths/virtual-work", test_virtual_work);
  g_test_add_func ("/kernel/spring-paths/seat-turns", test_seat_turns_with_the_knuckle);
  g_test_add_func ("/kernel/spring-paths/no-rise", test_contact_that_does_not_rise);
  return g_test_run ();
}
