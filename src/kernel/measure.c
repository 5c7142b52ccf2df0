/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/measure.h"
#include "kernel/motion.h"

/* What moves, and what of it the measures need besides. */
typedef struct {
  Motion of;
  Jet3 contact_moving; /* velocity of the knuckle's material point at the contact (first order) */
  Jet3 ground;         /* the steering axis at the ground */
} Moving;

/* The steering axis at @height: B + t (B − U), t = (B_z − height)/(U_z − B_z). */
static Jet3
axis_at_height (Jet3 ball, Jet3 mount, Jet height)
{
  const Jet3 down = jet3_sub (ball, mount);
  const Jet t = jet_div (jet_sub (height, ball.z), down.z);

  return (Jet3){ jet_add (ball.x, jet_mul (t, down.x)),
                 jet_add (ball.y, jet_mul (t, down.y)), height };
}

/* A velocity as a first-order jet: its value and its rate stand one order up in @p. */
static Jet3
velocity_of (Jet3 p)
{
  return (Jet3){ { p.x.d, p.x.dd, 0 }, { p.y.d, p.y.dd, 0 }, { p.z.d, p.z.dd, 0 } };
}

static Moving
moving_parts (const Corner *corner, const Pose *pose)
{
  const Motion of = motion_of (corner, pose);
  const Jet3 mount = jet3_constant (corner->upper_mount);
  const Jet3 arm = jet3_sub (of.contact, of.wheel);

  return (Moving){
    .of = of,
    .contact_moving = jet3_add (velocity_of (of.wheel), jet3_cross (of.turn, arm)),
    .ground = axis_at_height (of.ball, mount, of.contact.z),
  };
}

/* z as a first-order jet of its own rate, and dz/dθ itself. */
typedef struct {
  Jet lift;
  Measures *out;
} Record;

/* A quantity of position: d/dz = (d/dθ)/(dz/dθ). */
static void
record (const Record *r, Quantity quantity, Jet q)
{
  r->out->value[quantity] = q.v;
  r->out->slope[quantity] = q.d / r->lift.v;
}

/* d@q/dz as a first-order jet by the arm angle. */
static Jet
by_travel (const Record *r, Jet q)
{
  return jet_div ((Jet){ q.d, q.dd, 0 }, r->lift);
}

static void
measure_angles (const Corner *corner, const Moving *m, const Record *r)
{
  const Jet3 axis = jet3_sub (jet3_constant (corner->upper_mount), m->of.ball);
  const Jet leaning = jet_negative (m->of.spin.z);
  const Jet camber = jet_asin (leaning), toe_in = jet_atan2 (m->of.spin.x, m->of.spin.y);
  const Jet sai = jet_atan2 (jet_negative (axis.y), axis.z);

  record (r, QUANTITY_CAMBER, camber);
  record (r, QUANTITY_CAMBER_ISO, jet_atan2 (leaning, m->of.spin.y));
  record (r, QUANTITY_TOE_IN, toe_in);
  record (r, QUANTITY_CASTER, jet_atan2 (jet_negative (axis.x), axis.z));
  record (r, QUANTITY_SAI, sai);
  record (r, QUANTITY_INCLUDED_ANGLE, jet_add (sai, camber));
  record (r, QUANTITY_CAMBER_GAIN, by_travel (r, camber));
  record (r, QUANTITY_BUMP_STEER, by_travel (r, toe_in));
}

static void
measure_ground (const Corner *corner, const Moving *m, const Record *r)
{
  const Jet3 mount = jet3_constant (corner->upper_mount), n = m->of.spin;
  const Jet trail = jet_sub (m->ground.x, m->of.contact.x);
  const Jet scrub = jet_sub (m->of.contact.y, m->ground.y);
  const Jet flat = jet_sqrt (jet_sub (jet_constant (1.0), jet_mul (n.z, n.z)));
  const Jet3 centre = axis_at_height (m->of.ball, mount, m->of.wheel.z);

  record (r, QUANTITY_TRAIL, trail);
  record (r, QUANTITY_SCRUB_RADIUS, scrub);
  /* the tyre's own axes on the ground: ahead (n_y, −n_x), outboard (n_x, n_y) */
  record (r, QUANTITY_TRAIL_IN_TYRE,
          jet_div (jet_add (jet_mul (trail, n.y), jet_mul (scrub, n.x)), flat));
  record (r, QUANTITY_SCRUB_IN_TYRE,
          jet_div (jet_sub (jet_mul (scrub, n.y), jet_mul (trail, n.x)), flat));
  record (r, QUANTITY_TRAIL_AT_CENTRE, jet_sub (centre.x, m->of.wheel.x));
  record (r, QUANTITY_SCRUB_AT_CENTRE, jet_sub (m->of.wheel.y, centre.y));
  record (r, QUANTITY_HALF_TRACK_CHANGE,
          jet_sub (m->of.contact.y, jet_constant (corner->reference_contact_y)));
  record (r, QUANTITY_WHEELBASE_CHANGE,
          jet_sub (m->of.wheel.x, jet_constant (corner->reference_wheel_x)));
}

static void
measure_ratios (const Pose *pose, const Moving *m, const Record *r)
{
  const Jet length = m->of.strut_length, angle = { pose->arm_angle, 1.0, 0.0 };

  record (r, QUANTITY_STRUT_LENGTH, length);
  record (r, QUANTITY_STRUT_RATIO, jet_negative (by_travel (r, length)));
  record (r, QUANTITY_ARM_ANGLE, angle);
  record (r, QUANTITY_ARM_RATIO, by_travel (r, angle));
}

static void
measure_velocity (const Corner *corner, const Moving *m, const Record *r)
{
  const Jet3 v = m->contact_moving;
  const Jet slope = jet_div (v.x, v.z);
  const Jet speed = jet_sqrt (jet_add (jet_mul (v.y, v.y), jet_mul (v.z, v.z)));

  record (r, QUANTITY_ROLL_CENTRE_HEIGHT, jet_mul (m->of.contact.y, jet_div (v.y, v.z)));
  record (r, QUANTITY_SIDE_VIEW_SLOPE, slope);
  record (r, QUANTITY_ANTI_DIVE, jet_scale (slope, 100.0 * corner->dive_lever));
  record (r, QUANTITY_SWING_ARM_CURVATURE, jet_div (m->of.turn.x, speed));
  record (r, QUANTITY_SWING_ARM_LENGTH, jet_div (speed, m->of.turn.x));
}

void
pose_measure (const Corner *corner, const Pose *pose, Measures *measures)
{
  const Moving m = moving_parts (corner, pose);
  const Record r = { { m.of.wheel.z.d, m.of.wheel.z.dd, 0 }, measures };
  const Jet3 v = m.contact_moving;

  measure_angles (corner, &m, &r);
  measure_ground (corner, &m, &r);
  measure_ratios (pose, &m, &r);
  measure_velocity (corner, &m, &r);

  measures->contact = (Vec3){ m.of.contact.x.v, m.of.contact.y.v, m.of.contact.z.v };
  measures->axis_at_ground = (Vec3){ m.ground.x.v, m.ground.y.v, m.ground.z.v };
  measures->instant_centre_y = m.of.contact.y.v - v.z.v / m.of.turn.x.v;
  measures->instant_centre_z = m.of.contact.z.v + v.y.v / m.of.turn.x.v;
}

Dimension
quantity_dimension (Quantity quantity)
{
  switch (quantity) {
  case QUANTITY_CAMBER:
  case QUANTITY_TOE_IN:
  case QUANTITY_CASTER:
  case QUANTITY_SAI:
  case QUANTITY_INCLUDED_ANGLE:
  case QUANTITY_CAMBER_ISO:
  case QUANTITY_ARM_ANGLE:
    return DIMENSION_ANGLE;
  case QUANTITY_STRUT_RATIO:
  case QUANTITY_SIDE_VIEW_SLOPE:
    return DIMENSION_RATIO;
  case QUANTITY_ANTI_DIVE:
    return DIMENSION_PERCENT;
  case QUANTITY_ARM_RATIO:
  case QUANTITY_CAMBER_GAIN:
  case QUANTITY_BUMP_STEER:
    return DIMENSION_ANGLE_PER_LENGTH;
  case QUANTITY_SWING_ARM_CURVATURE:
    return DIMENSION_PER_LENGTH;
  default:
    return DIMENSION_LENGTH;
  }
}
