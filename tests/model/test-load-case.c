/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cases of load: against forces computed independently and by hand, against the sums of
 * forces, and each wheel of the axle against the other. */

#include "check-data.h"
#include "spring-fixture.h"

#include "model/load/load-case.h"
#include "model/words/number-text.h"

#define N_CASES 60
#define SEED 31337u

/* On an invented car of 600 and 400 kg, 500 mm high, 2500 mm long. */
static Car *
car_of (const MeasuredCorner *measured)
{
  Car *car = fixture_car_of (measured);

  car->body = (CarBody){ .wheelbase_mm = 2500.0,
                         .cg_height_mm = 500.0,
                         .front_mass_kg = 600.0,
                         .rear_mass_kg = 400.0,
                         .front_brake_share = 0.7 };
  return car;
}

static void
check_vector (const char *what, double place, Vec3 value, Vec3 expected, double tolerance)
{
  check_near (what, place, value.x, expected.x, tolerance);
  check_near (what, place, value.y, expected.y, tolerance);
  check_near (what, place, value.z, expected.z, tolerance);
}

/* The worked set's loads, solved independently by general-purpose methods. */
static void
test_worked_set (void)
{
  static const struct {
    Vec3 contact;
    SpringMode mode;
    double carries, side, tie_rod;
    Vec3 tower;
  } rows[] = {
    { { 0, 0, 2600 }, SPRING_COIL_ONLY, 2731, 366.6, -30.2, { -158.9, -761.0, 2643.5 } },
    { { 0, 0, 2600 }, SPRING_BAR_ONLY, 815139, 210.9, -30.2, { -20.5, -207.5, -31.9 } },
    { { 0, -2000, 3800 },
      SPRING_COIL_ONLY,
      3759.3,
      124.9,
      35.1,
      { -226.0, -424.9, 3730.5 } },
    { { 0, -2000, 3800 }, SPRING_BAR_ONLY, 1122093, 342.3, 35.1, { -35.5, 337.1, 47.6 } },
  };
  g_auto (StandingCar) standing = standing_car_new (car_of (&worked_set));

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    JointLoads loads;

    joint_loads_of_force (standing.springs, 0, rows[i].contact, 0.0, rows[i].mode,
                          &loads);
    g_assert_true (loads.is_solved);
    check_near ("carries", i,
                rows[i].mode == SPRING_COIL_ONLY ? loads.forces.axial
                                                 : loads.forces.torque,
                rows[i].carries, 0.5);
    check_near ("side", i, vec3_length (loads.forces.side), rows[i].side, 0.051);
    check_near ("tie rod", i, loads.forces.tie_rod, rows[i].tie_rod, 0.051);
    check_vector ("tower", i, loads.forces.tower, rows[i].tower, 0.051);
    g_assert_cmpfloat (loads.load_on_tower, ==, loads.forces.tower.z);
  }
}

/* By hand, set P's track 1480 mm, g 9.80665, at 0.8 g across and 0.3 g of braking:
 *   standing 600/2 g = 2941.995;  across 600 · 0.8 g · 500/1480 = 1590.2676;
 *   braking 1000 · 0.3 g · 500/(2 · 2500) = 294.1995;
 *   left 4826.4621, right 1645.9269, of both 0.7456825 and 0.2543175;
 *   F_x = −0.7 · 1000 · 0.3 g · 0.7456825,  F_y = −600 · 0.8 g · 0.7456825. */
static void
test_axle_by_hand (void)
{
  g_auto (StandingCar) standing = standing_car_new (car_of (&set_p));
  CarLoadCase c = { .lateral_g = 0.8, .braking_g = 0.3, .vertical = 1.0 };
  JointLoads loads;

  joint_loads_of_case (standing.springs, 0, &c, 0.0, SPRING_COIL_ONLY, &loads);
  check_vector ("outside", 0, loads.load.contact,
                (Vec3){ -1535.6925, -3510.1542, 4826.4621 }, 1e-4);
  check_near ("transfer", 0, loads.transfer, 1590.2676 + 294.1995, 1e-4);
  g_assert_false (loads.is_lifted);
  c.lateral_g = -0.8;
  joint_loads_of_case (standing.springs, 0, &c, 0.0, SPRING_COIL_ONLY, &loads);
  check_vector ("inside", 0, loads.load.contact,
                (Vec3){ -2059.3965 + 1535.6925, 4707.192 - 3510.1542, 1645.9269 }, 1e-4);
  c = (CarLoadCase){ .vertical = 2.0, .rearward = 1.5 };
  joint_loads_of_case (standing.springs, 0, &c, 0.0, SPRING_COIL_ONLY, &loads);
  check_vector ("pothole", 0, loads.load.contact, (Vec3){ -4412.9925, 0, 5883.99 }, 1e-4);
}

/* 2941.995 N move across at 1.48 g: from there the inner wheel hangs, and the outer one
 * carries the axle. */
static void
test_lifted_wheel (void)
{
  g_auto (StandingCar) standing = standing_car_new (car_of (&set_p));
  CarLoadCase c = { .lateral_g = -1.49, .vertical = 1.0 };
  JointLoads loads;

  joint_loads_of_case (standing.springs, 0, &c, 0.0, SPRING_COIL_ONLY, &loads);
  g_assert_true (loads.is_lifted);
  g_assert_cmpfloat (vec3_length (loads.load.contact), ==, 0.0);
  c.lateral_g = 1.49;
  joint_loads_of_case (standing.springs, 0, &c, 0.0, SPRING_COIL_ONLY, &loads);
  g_assert_false (loads.is_lifted);
  check_vector ("outside", 0, loads.load.contact,
                (Vec3){ 0, -600.0 * 1.49 * SPRING_GRAVITY, 5883.99 }, 1e-9);
  c.lateral_g = 1.47;
  joint_loads_of_case (standing.springs, 0, &c, 0.0, SPRING_COIL_ONLY, &loads);
  g_assert_cmpfloat (loads.load.contact.z, <, 5883.99);
}

/* With springs and an anti-roll bar, standing near its reference height. */
static StandingCar
dice_axle (Dice *dice)
{
  const MeasuredCorner measured = dice_corner (dice);
  Car *car = car_of (&measured);
  CarAntiRollBar *bar = &car->springs.anti_roll_bar;

  car->body.unsprung_corner_kg = dice_between (dice, 10.0, 40.0);
  car->springs = dice_springs (dice, car);
  *bar = (CarAntiRollBar){ .is_there = TRUE,
                           .rate_n_per_mm = dice_between (dice, 5.0, 50.0) };
  bar->link_carrier = dice_between (dice, 0.0, 1.0) < 0.5 ? LINK_ON_ARM : LINK_ON_STRUT;
  StandingCar standing = standing_car_new (car);

  standing_car_raise (&standing, RAISE_CLAMP_ANGLE, 0.0);
  return standing;
}

static CarLoadCase
dice_load (Dice *dice)
{
  return (CarLoadCase){ .lateral_g = dice_between (dice, -1.0, 1.0),
                        .braking_g = dice_between (dice, 0.0, 0.6),
                        .vertical = dice_between (dice, 0.7, 1.3) };
}

static double
link_force_on (const JointLoads *loads)
{
  return loads->load.on_arm.z + loads->load.on_knuckle.z;
}

/* The body receives what road and weight put in, at its rows of the table. */
static void
check_sums (int i, const JointLoads *l)
{
  const Vec3 in = vec3_add (l->load.contact, l->load.wheel_centre);
  const JointForces *f = &l->forces;
  const Vec3 arm = vec3_add (f->along_hinge, vec3_add (f->front_pivot, f->rear_pivot));
  const Vec3 out =
      vec3_add (vec3_add (f->tower, f->tie_rod_on_rack), vec3_add (arm, l->bar_on_body));

  check_near ("bar", i, l->bar_on_body.z, -link_force_on (l), 1e-9);
  check_vector ("sum", i, out, in, 1e-6);
  check_near ("shares", i, l->load_on_tower + l->load_on_floor,
              l->load.contact.z + l->load.wheel_centre.z, 1e-6);
}

/* What balances by ratios does so by statics: nothing is left for the strut. */
static void
check_balance (int i, const StandingCar *standing, const JointLoads *l)
{
  const SpringCorner *corner = standing_corner (standing);
  SpringStation s;

  spring_law_station (corner->law, &corner->corner->corner, &l->pose, &s);
  check_near ("strut", i, l->forces.strut, s.strut_force, 1e-6);
  check_near ("coil", i, l->forces.coil, s.coil_force, 0.0);
  check_near ("bar", i, l->forces.torque, s.bar_torque, 0.0);
  check_near ("left over", i, l->left_over, 0.0, 0.0);
}

static double
spring_link_rise (const SpringCorner *corner, double travel)
{
  SpringStation s;
  Pose pose;

  pose_at_travel (&corner->corner->corner, travel, 0.0, NULL, &pose);
  spring_law_station (corner->law, &corner->corner->corner, &pose, &s);
  return s.link_rise;
}

/* Where springs and bar balance, or the strut ends; the other wheel is this one in the
 * case mirrored, and the bar pushes both alike, one up and one down. */
static void
test_axle_on_springs (void)
{
  Dice dice = { SEED };
  int n_checked = 0, n_at_end = 0;

  for (int i = 0; i < N_CASES; i++) {
    g_auto (StandingCar) standing = dice_axle (&dice);
    const SpringCorner *corner = standing_corner (&standing);
    CarLoadCase c = dice_load (&dice);
    JointLoads left, right;

    if (i % 2 == 1) {
      standing.car->springs.droop_stop_mm = 12.0;
      standing_car_solve (&standing);
    }
    joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &left);
    c.lateral_g = -c.lateral_g;
    joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &right);
    g_assert_true (left.is_solved && right.is_solved);
    check_sums (i, &left);
    if (left.left_over == 0.0) {
      check_balance (i, &standing, &left);
      n_checked++;
    } else
      n_at_end++;
    check_near ("link", i, left.link_force, -right.link_force, 1e-7);
    check_near ("link by heights", i, left.link_force,
                spring_law_link_rate (corner->law) *
                    (spring_link_rise (corner, right.travel) -
                     spring_link_rise (corner, left.travel)),
                1e-7);
  }
  g_assert_cmpint (n_at_end, >, 2);
  g_assert_cmpint (n_checked, >, N_CASES / 2);
}

/* At a given travel the rest is said, and at the balance's own travel there is none. */
static void
test_left_over (void)
{
  Dice dice = { SEED + 1 };

  for (int i = 0; i < N_CASES / 4; i++) {
    g_auto (StandingCar) standing = dice_axle (&dice);
    const CarLoadCase c = dice_load (&dice);
    JointLoads there, off;

    joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &there);
    if (there.left_over != 0.0)
      continue;
    joint_loads_of_case (standing.springs, 0, &c, there.travel, SPRING_AS_SET, &off);
    check_near ("none", i, off.left_over, 0.0, 1e-6);
    joint_loads_of_case (standing.springs, 0, &c, there.travel - 5.0, SPRING_AS_SET,
                         &off);
    check_sums (i, &off);
    g_assert_cmpfloat (off.left_over, >, 10.0);
    joint_loads_of_case (standing.springs, 0, &c, there.travel - 5.0, SPRING_COIL_ONLY,
                         &off);
    check_sums (i, &off);
    g_assert_cmpfloat (off.left_over, ==, 0.0);
    g_assert_cmpfloat (off.forces.strut, ==, 0.0);
  }
}

/* Standing by its springs is standing under the weight. */
static void
test_standing_case (void)
{
  const CarLoadCase c = { .vertical = 1.0 };
  Dice dice = { SEED + 2 };

  for (int i = 0; i < N_CASES / 4; i++) {
    g_auto (StandingCar) standing = dice_axle (&dice);
    const SpringCorner *corner = standing_corner (&standing);
    JointLoads loads;

    joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &loads);
    check_near ("travel", i, loads.travel, corner->standing, 1e-9);
    check_near ("link", i, loads.link_force, 0.0, 1e-9);
  }
}

/* A stroke that ends before the springs carry the wheel leaves the rest to its end. */
static void
test_stroke_ends (void)
{
  Dice dice = { SEED + 3 };
  g_auto (StandingCar) standing = dice_axle (&dice);
  const CarLoadCase c = { .vertical = 1.0 };
  CarSprings *s = &standing.car->springs;
  JointLoads loads;

  *s = car_springs_none ();
  joint_loads_of_case (standing.springs, 0, &c, 0.0, SPRING_AS_SET, &loads);
  g_assert_true (loads.is_solved);
  standing_car_solve (&standing);
  joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &loads);
  g_assert_false (loads.is_solved);
  s->bar = (CarTorsionBar){ .is_there = TRUE, .rate_nm_per_deg = 1.0 };
  standing_car_solve (&standing);
  joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &loads);
  check_near ("end of bump", 0, loads.travel, standing.car->bump_mm, 1e-9);
  g_assert_cmpfloat (loads.left_over, >, 500.0);
  s->bar.rate_nm_per_deg = 20.0;
  s->bar.clamp_angle_deg = 300.0;
  s->droop_stop_mm = 42.0;
  standing_car_solve (&standing);
  joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &loads);
  check_near ("droop stop", 0, loads.travel, -42.0, 1e-9);
  g_assert_cmpfloat (loads.left_over, <, -500.0);
  joint_loads_of_case (standing.springs, 0, &c, -43.0, SPRING_AS_SET, &loads);
  g_assert_false (loads.is_solved);
}

/* 2643.5 and −31.9 N of 2600 N on the worked set: half of that for 1300 N. */
static void
test_sentence (void)
{
  g_auto (StandingCar) standing = standing_car_new (car_of (&worked_set));

  standing.car->body.front_mass_kg = 2600.0 / SPRING_GRAVITY;
  standing_car_solve (&standing);
  g_autofree char *sentence = joint_loads_sentence (standing.springs, 0, NULL);

  g_assert_cmpstr (sentence, ==,
                   "Standing: this corner carries 1300 N. By a coil on the strut alone, "
                   "without gas force and stops, 1322 N would stand on the tower. By a "
                   "torsion bar alone, without gas force and stops, the tower would be "
                   "pulled down with 16 N.");

  /* all of it in proportion to the load: twice 2643.5 and twice −31.9 of 5200 N */
  const CarLoadCase bump = { .name = "Bump", .vertical = 4.0 };
  g_autofree char *bumped = joint_loads_sentence (standing.springs, 0, &bump);
  g_assert_cmpstr (bumped, ==,
                   "Bump: this corner carries 5200 N. By a coil on the strut alone, "
                   "without gas force and stops, 5287 N would stand on the tower. By a "
                   "torsion bar alone, without gas force and stops, the tower would be "
                   "pulled down with 64 N.");
}

/* Springs that are set take stops and anti-roll bar with them in a case that moves the
 * corner; a coil or bar by itself would not. */
static void
check_case_sentence (StandingCar *standing, const CarLoadCase *c, const char *format)
{
  JointLoads loads;
  joint_loads_of_case (standing->springs, 0, c, NAN, SPRING_AS_SET, &loads);
  g_assert_true (loads.is_solved);

  g_autofree char *tower = number_text (fabs (loads.load_on_tower), 0);
  g_autofree char *wheel = number_text (loads.load.contact.z, 0);
  g_autofree char *wanted = g_strdup_printf (format, tower, wheel);
  g_autofree char *sentence = joint_loads_sentence (standing->springs, 0, c);

  g_assert_cmpstr (sentence, ==, wanted);
}

static void
test_sentence_of_a_case (void)
{
  const CarLoadCase landing = { .name = "Landing", .vertical = 3.0 },
                    lifted = { .name = "Lifted", .vertical = 1.0, .lateral_g = -1.8 };
  g_auto (StandingCar) standing = standing_car_new (car_of (&worked_set));
  CarSprings *s = &standing.car->springs;

  s->coil = (CarCoil){ .is_there = TRUE, .rate_n_per_mm = 30.0, .free_length_mm = 560.0 };
  s->droop_stop_mm = 60.0;
  standing.car->body.unsprung_corner_kg = 35.0;
  standing_car_solve (&standing);
  check_case_sentence (&standing, &landing,
                       "Landing: %s N of this corner's %s N stand on the tower.");
  /* the strut hangs on its droop stop, and the wheel on the strut */
  check_case_sentence (&standing, &lifted,
                       "Lifted: the strut pulls the tower down with %s N.");
}

/* Clear of stops and gas, the coil alone and the bar alone are what is compared. */
static void
check_alone (StandingCar *standing, SpringMode by, SpringMode other, const char *format)
{
  const CarLoadCase c = { .vertical = 1.0 };
  JointLoads now, then;

  standing_car_solve (standing);
  joint_loads_of_case (standing->springs, 0, &c, NAN, SPRING_AS_SET, &now);
  joint_loads_of_case (standing->springs, 0, &c, now.travel, by, &then);
  check_near ("alone as set", 0, now.load_on_tower, then.load_on_tower, 1e-6);
  joint_loads_of_case (standing->springs, 0, &c, NAN, other, &then);

  g_autofree char *is = number_text (fabs (now.load_on_tower), 0);
  g_autofree char *wheel = number_text (now.load.contact.z, 0);
  g_autofree char *would = number_text (fabs (then.load_on_tower), 0);
  g_autofree char *sentence = joint_loads_sentence (standing->springs, 0, NULL);
  g_autofree char *wanted = by == SPRING_COIL_ONLY
                                ? g_strdup_printf (format, is, wheel, would)
                                : g_strdup_printf (format, is, would);
  g_assert_cmpstr (sentence, ==, wanted);
}

static void
test_sentence_of_one_spring (void)
{
  const CarCoil coil = { .is_there = TRUE, .rate_n_per_mm = 30.0, .free_length_mm = 560 };
  const CarTorsionBar bar = { .is_there = TRUE, .rate_nm_per_deg = 20.0 };
  g_auto (StandingCar) standing = standing_car_new (car_of (&worked_set));
  CarSprings *s = &standing.car->springs;

  s->coil = coil;
  standing_car_solve (&standing);
  standing_car_raise (&standing, RAISE_PERCH, 0.0);
  check_alone (
      &standing, SPRING_COIL_ONLY, SPRING_BAR_ONLY,
      "Standing: %s N stand on the tower, more than this corner's %s N. By a "
      "torsion bar alone, without gas force and stops, the tower would be pulled "
      "down with %s N.");
  *s = car_springs_none ();
  s->bar = bar;
  standing_car_solve (&standing);
  standing_car_raise (&standing, RAISE_CLAMP_ANGLE, 0.0);
  check_alone (
      &standing, SPRING_BAR_ONLY, SPRING_COIL_ONLY,
      "Standing: the strut pulls the tower down with %s N. By a coil on the "
      "strut alone, without gas force and stops, %s N would stand on the tower.");
  /* with both, both are compared */
  s->coil = coil;
  standing_car_solve (&standing);
  g_autofree char *both = joint_loads_sentence (standing.springs, 0, NULL);
  g_assert_nonnull (strstr (both, "By a coil on the strut alone"));
  g_assert_nonnull (strstr (both, "By a torsion bar alone"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/load-case/worked-set", test_worked_set);
  g_test_add_func ("/load-case/axle-by-hand", test_axle_by_hand);
  g_test_add_func ("/load-case/sentence-of-a-case", test_sentence_of_a_case);
  g_test_add_func ("/load-case/lifted-wheel", test_lifted_wheel);
  g_test_add_func ("/load-case/axle-on-springs", test_axle_on_springs);
  g_test_add_func ("/load-case/left-over", test_left_over);
  g_test_add_func ("/load-case/standing-case", test_standing_case);
  g_test_add_func ("/load-case/stroke-ends", test_stroke_ends);
  g_test_add_func ("/load-case/sentence", test_sentence);
  g_test_add_func ("/load-case/sentence-of-one-spring", test_sentence_of_one_spring);
  return g_test_run ();
}
