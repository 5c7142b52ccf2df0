/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Bar, coil and strut together, a coil that leans or stands beside the mount, weight and
 * a link's force: joint_forces () against twelve equations in GSL, against the balance of
 * what the body gets with what the corner is given, against the kernel's velocities, and
 * in the mirror. */

#include "check-data.h"
#include "raw-balance.h"

#define N_CASES 300

typedef struct {
  LoadedCorner at;
  SpringHold hold;
  double size; /* N, of all that acts */
} MixedCorner;

static Vec3
dice_vector (Dice *dice, double reach)
{
  const double x = dice_between (dice, -reach, reach);
  const double y = dice_between (dice, -reach, reach);
  const double z = dice_between (dice, -reach, reach);

  return (Vec3){ x, y, z };
}

static SpringHold
dice_hold (Dice *dice, const LoadedCorner *at, SpringCarrier found)
{
  const Pose *p = &at->station.pose;

  return (SpringHold){
    .found = found,
    .coil = dice_between (dice, -500, 3000),
    .strut = dice_between (dice, -1500, 1500),
    .torque = dice_between (dice, -2e5, 1e6),
    .coil_top = vec3_add (at->corner.upper_mount, dice_vector (dice, 40)),
    .coil_direction = vec3_unit (vec3_add (p->strut_direction, dice_vector (dice, 0.15))),
  };
}

/* The link beside the strut, or in the middle of the arm. */
static MixedCorner
dice_mixed (Dice *dice, SpringCarrier found)
{
  MixedCorner m = { .at = dice_loaded_corner (dice) };
  const Pose *p = &m.at.station.pose;
  CornerLoad *load = &m.at.load;
  const Vec3 middle =
      vec3_scale (vec3_add (p->ball_joint, m.at.corner.hinge_centre), 0.5);

  load->wheel_centre = dice_vector (dice, 600);
  load->on_knuckle = dice_vector (dice, 900);
  load->on_knuckle_at = vec3_add (p->strut_foot, dice_vector (dice, 60));
  load->on_arm = dice_vector (dice, 900);
  load->on_arm_at = vec3_add (middle, dice_vector (dice, 60));
  m.hold = dice_hold (dice, &m.at, found);
  m.size = vec3_length (load->contact) + 5000.0;
  return m;
}

typedef void (*MixedTest) (const MixedCorner *mixed, const JointForces *forces, int i);

/* Each of the three found in turn. */
static void
for_each_mix (uint64_t seed, MixedTest test)
{
  Dice dice = { seed };

  for (int i = 0; i < N_CASES; i++) {
    const MixedCorner m = dice_mixed (&dice, (SpringCarrier) (i % 3));
    const JointForces f = check_balance (&m.at, &m.hold);

    test (&m, &f, i);
  }
}

static void
check_second_way (const MixedCorner *m, const JointForces *f, int i)
{
  const JointForces raw =
      raw_balance (&m->at.corner, &m->at.station.pose, &m->at.load, &m->hold);

  check_same_forces (f, &raw, i, 1e-9, m->size);
}

static void
test_second_way (void)
{
  for_each_mix (310, check_second_way);
}

/* What is given stays as given, to the bit. */
static void
check_given (const MixedCorner *m, const JointForces *f, int i)
{
  (void) i;
  g_assert_true (m->hold.found == CARRIED_BY_COIL || f->coil == m->hold.coil);
  g_assert_true (m->hold.found == CARRIED_BY_STRUT || f->strut == m->hold.strut);
  g_assert_true (m->hold.found == CARRIED_BY_TORSION_BAR || f->torque == m->hold.torque);
}

static void
test_given (void)
{
  for_each_mix (311, check_given);
}

typedef struct {
  Vec3 force, moment; /* about the origin */
} Sum;

static void
add (Sum *sum, Vec3 force, Vec3 at)
{
  sum->force = vec3_add (sum->force, force);
  sum->moment = vec3_add (sum->moment, vec3_cross (at, force));
}

static Sum
given_loads (const LoadedCorner *at)
{
  const CornerLoad *load = &at->load;
  Sum sum = { 0 };

  add (&sum, load->contact, at->station.measures.contact);
  add (&sum, load->wheel_centre, at->station.pose.wheel_centre);
  add (&sum, load->on_knuckle, load->on_knuckle_at);
  add (&sum, load->on_arm, load->on_arm_at);
  return sum;
}

static Sum
received_by_body (const LoadedCorner *at, const JointForces *f)
{
  Sum sum = { .moment = vec3_add (f->tower_moment, f->anchor_moment) };

  add (&sum, f->tower, at->corner.upper_mount);
  add (&sum, f->front_pivot, at->corner.arm_pivot);
  add (&sum, f->rear_pivot, at->corner.arm_rear_pivot);
  add (&sum, f->along_hinge, at->corner.arm_pivot);
  add (&sum, f->tie_rod_on_rack, at->station.pose.tie_rod_inner);
  return sum;
}

static void
check_body (const MixedCorner *m, const JointForces *f, int i)
{
  const Sum given = given_loads (&m->at), body = received_by_body (&m->at, f);
  const Vec3 a = m->at.corner.hinge_axis;

  check_vector ("forces", i, body.force, given.force, 1e-6);
  check_vector ("moments", i, body.moment, given.moment, 1e-9 * m->size * 1000.0);
  check_near ("front along", i, vec3_dot (f->front_pivot, a), 0.0, 1e-9 * m->size);
  check_near ("rear along", i, vec3_dot (f->rear_pivot, a), 0.0, 1e-9 * m->size);
}

static void
test_body_gets_all (void)
{
  for_each_mix (312, check_body);
}

/* The same where the pivots are not where they were measured. */
static void
test_corrected_pivots (void)
{
  Dice dice = { 313 };

  for (int i = 0; i < N_CASES; i++) {
    MixedCorner m = { .size = 12000.0 };
    const Corrections moved = { .front_pivot_raise = dice_between (&dice, -10, 10),
                                .rear_pivot_raise = dice_between (&dice, -10, 10),
                                .pivot_outboard = dice_between (&dice, -5, 5) };

    m.at.corner = check_assemble (&set_m, (Adjustment){ .corrections = moved });
    g_assert_cmpint (station_solve (&m.at.corner, 0, 0, &m.at.station), ==, POSE_OK);
    m.at.load.contact = (Vec3){ -500, -2000, 4000 };
    m.hold = dice_hold (&dice, &m.at, (SpringCarrier) (i % 3));
    const JointForces f = check_balance (&m.at, &m.hold);

    check_near ("rear pivot", i, m.at.corner.arm_rear_pivot.z,
                210.0 + moved.rear_pivot_raise, 1e-12);
    check_body (&m, &f, i);
  }
}

static Vec3
knuckle_velocity (const Pose *p, Vec3 point)
{
  const Vec3 r = vec3_sub (point, p->ball_joint);

  return vec3_add (p->ball_velocity, vec3_cross (p->turn_rate, r));
}

/* For dθ/dt = 1 the loads put in what coil, strut and bar take up. The strut's speed is
 * that of its length, which the ratios are made of. */
static void
check_power (const MixedCorner *m, const JointForces *f, int i)
{
  const Station *s = &m->at.station;
  const Pose *p = &s->pose;
  const CornerLoad *load = &m->at.load;
  const Vec3 lever = vec3_sub (load->on_arm_at, m->at.corner.arm_pivot);
  const double in =
      vec3_dot (load->contact, knuckle_velocity (p, s->measures.contact)) +
      vec3_dot (load->wheel_centre, knuckle_velocity (p, p->wheel_centre)) +
      vec3_dot (load->on_knuckle, knuckle_velocity (p, load->on_knuckle_at)) +
      vec3_dot (load->on_arm, vec3_cross (m->at.corner.hinge_axis, lever));
  const double squeeze = s->measures.value[QUANTITY_STRUT_RATIO] * p->lift;
  const double coil_squeeze =
      vec3_dot (m->hold.coil_direction, knuckle_velocity (p, m->hold.coil_top));

  check_near ("power", i, f->coil * coil_squeeze + f->strut * squeeze + f->torque, in,
              1e-9 * m->size * vec3_length (p->ball_velocity));
}

static void
test_virtual_work (void)
{
  for_each_mix (314, check_power);
}

static Vec3
mirrored (Vec3 v)
{
  return (Vec3){ v.x, -v.y, v.z };
}

/* A turn or a moment, whose mirror image turns the other way. */
static Vec3
turn_mirrored (Vec3 v)
{
  return (Vec3){ -v.x, v.y, -v.z };
}

/* All of a corner that its balance reads. */
static LoadedCorner
mirror_corner (const LoadedCorner *left)
{
  LoadedCorner right = *left;
  Corner *c = &right.corner;
  Pose *p = &right.station.pose;
  CornerLoad *load = &right.load;
  Vec3 *const places[] = { &c->upper_mount,     &c->arm_pivot,     &c->arm_rear_pivot,
                           &p->ball_joint,      &p->strut_foot,    &p->tie_rod_outer,
                           &p->tie_rod_inner,   &p->wheel_centre,  &p->spin_axis,
                           &p->strut_direction, &p->ball_velocity, &load->contact,
                           &load->wheel_centre, &load->on_knuckle, &load->on_knuckle_at,
                           &load->on_arm,       &load->on_arm_at };

  for (size_t i = 0; i < G_N_ELEMENTS (places); i++)
    *places[i] = mirrored (*places[i]);
  c->hinge_axis = turn_mirrored (c->hinge_axis);
  p->turn_rate = turn_mirrored (p->turn_rate);
  return right;
}

static JointForces
mirror_forces (const JointForces *left)
{
  JointForces f = *left;
  Vec3 *const forces[] = { &f.ball_joint,  &f.tie_rod_on_rack, &f.side,       &f.tower,
                           &f.front_pivot, &f.rear_pivot,      &f.along_hinge };

  for (size_t i = 0; i < G_N_ELEMENTS (forces); i++)
    *forces[i] = mirrored (*forces[i]);
  f.tower_moment = turn_mirrored (f.tower_moment);
  f.anchor_moment = turn_mirrored (f.anchor_moment);
  return f;
}

static void
check_mirror (const MixedCorner *m, const JointForces *f, int i)
{
  const LoadedCorner right = mirror_corner (&m->at);
  SpringHold hold = m->hold;

  hold.coil_top = mirrored (hold.coil_top);
  hold.coil_direction = mirrored (hold.coil_direction);
  const JointForces there = check_balance (&right, &hold), expected = mirror_forces (f);

  check_same_forces (&there, &expected, i, 1e-11, m->size);
}

static void
test_mirror (void)
{
  for_each_mix (315, check_mirror);
}

/* A part without force changes nothing to the bit, wherever it stands. */
static void
check_absent (const MixedCorner *m, const JointForces *f, int i)
{
  LoadedCorner bare = m->at, with = m->at;
  SpringHold alone = spring_hold_alone (&bare.corner, &bare.station.pose, m->hold.found);
  SpringHold beside = alone;

  (void) f;
  (void) i;
  bare.load = (CornerLoad){ .contact = m->at.load.contact };
  with.load.wheel_centre = with.load.on_knuckle = with.load.on_arm = (Vec3){ 0 };
  if (alone.found != CARRIED_BY_COIL) {
    beside.coil_top = m->hold.coil_top;
    beside.coil_direction = m->hold.coil_direction;
  }
  const JointForces a = check_balance (&bare, &alone);
  const JointForces b = check_balance (&with, &beside);

  /* to the bit, but for the sign of a 0 */
  check_same_forces (&b, &a, i, 0.0, 1.0);
}

static void
test_absent_parts (void)
{
  for_each_mix (316, check_absent);
}

/* A coil along the free line takes the side force away, but nothing from the tower. */
static void
test_free_line (void)
{
  Dice dice = { 317 };

  for (int i = 0; i < N_CASES; i++) {
    const LoadedCorner l = dice_loaded_corner (&dice);
    const Pose *p = &l.station.pose;
    SpringHold hold = spring_hold_alone (&l.corner, p, CARRIED_BY_COIL);

    hold.torque = dice_between (&dice, -2e5, 2e5);
    const JointForces on_axis = check_balance (&l, &hold);
    const double size = vec3_length (l.load.contact);

    hold.coil_direction = joint_forces_free_line (&on_axis);
    check_near ("unit", i, vec3_length (hold.coil_direction), 1.0, 1e-14);
    g_assert_cmpfloat (hold.coil_direction.z, >, 0.0);
    const JointForces leaned = check_balance (&l, &hold);

    check_vector ("side", i, leaned.side, (Vec3){ 0 }, 1e-9 * size);
    check_vector ("tower", i, leaned.tower, on_axis.tower, 1e-9 * size);
  }
}

/* Set P: the line passes through G, where load line and arm line cross. Method: Barton &
 * Fieldhouse, Automotive Chassis Engineering, 3.10.2.2, p. 185; the angle was computed
 * independently. Under a bar that carries all, the line is upward too. */
static void
test_set_p_free_line (void)
{
  LoadedCorner l = { .load.contact = { 0, 0, 3500 } };
  const Vec3 G = { 0, 740, 183.125 };

  l.corner = check_assemble (&set_p, (Adjustment){ 0 });
  g_assert_cmpint (station_solve (&l.corner, 0.0, 0.0, &l.station), ==, POSE_OK);
  const JointForces f = check_balance_alone (&l, CARRIED_BY_COIL);
  const Vec3 line = joint_forces_free_line (&f);
  const Vec3 from_G = vec3_sub (l.corner.upper_mount, G);
  const double cosine = vec3_dot (line, l.station.pose.strut_direction);

  check_vector ("through G", 0, vec3_cross (from_G, line), (Vec3){ 0 }, 1e-9);
  check_near ("angle", 0, DEGREES (acos (cosine)), 3.31863, 5e-6);

  const JointForces bar = check_balance_alone (&l, CARRIED_BY_TORSION_BAR);
  g_assert_cmpfloat (bar.tower.z, <, 0.0);
  g_assert_cmpfloat (joint_forces_free_line (&bar).z, >, 0.0);
}

static void
test_no_free_line (void)
{
  const JointForces none = { 0 };

  g_assert_true (isnan (joint_forces_free_line (&none).z));
}

/* By hand on set P: what pushes on the arm alone, the bar carries alone, and knuckle and
 * strut have no part in it. */
static void
test_arm_is_a_lever (void)
{
  LoadedCorner l = { .load = { .on_arm = { 0, 0, 800 }, .on_arm_at = { 50, 540, 190 } } };

  l.corner = check_assemble (&set_p, (Adjustment){ 0 });
  g_assert_cmpint (station_solve (&l.corner, 0.0, 0.0, &l.station), ==, POSE_OK);
  const JointForces f = check_balance_alone (&l, CARRIED_BY_TORSION_BAR);

  /* 800 N, 160 mm from the hinge; a sixth of the way from the front pivot to the rear */
  check_near ("torque", 0, f.torque, 128000, 1e-9);
  check_vector ("front", 0, f.front_pivot, (Vec3){ 0, 0, 800.0 * 5 / 6 }, 1e-9);
  check_vector ("rear", 0, f.rear_pivot, (Vec3){ 0, 0, 800.0 / 6 }, 1e-9);
  /* bump turns the arm so that its outer end rises: about x, forward */
  check_vector ("anchor", 0, f.anchor_moment, (Vec3){ 128000, 0, 0 }, 1e-9);
  check_vector ("tower", 0, f.tower, (Vec3){ 0 }, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/statics-holds/second-way", test_second_way);
  g_test_add_func ("/kernel/statics-holds/given", test_given);
  g_test_add_func ("/kernel/statics-holds/body-gets-all", test_body_gets_all);
  g_test_add_func ("/kernel/statics-holds/corrected-pivots", test_corrected_pivots);
  g_test_add_func ("/kernel/statics-holds/virtual-work", test_virtual_work);
  g_test_add_func ("/kernel/statics-holds/mirror", test_mirror);
  g_test_add_func ("/kernel/statics-holds/absent-parts", test_absent_parts);
  g_test_add_func ("/kernel/statics-holds/free-line", test_free_line);
  g_test_add_func ("/kernel/statics-holds/set-p-free-line", test_set_p_free_line);
  g_test_add_func ("/kernel/statics-holds/no-free-line", test_no_free_line);
  g_test_add_func ("/kernel/statics-holds/arm-is-a-lever", test_arm_is_a_lever);
  return g_test_run ();
}
