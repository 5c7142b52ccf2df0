/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/load-case.h"
#include "model/load/axle-balance.h"
#include "model/load/load-case-private.h"
#include "model/spring/spring-study-private.h"

G_STATIC_ASSERT (sizeof (JointForces) % sizeof (double) == 0);

/* Where nothing is solved. */
static void
leave_gap (JointLoads *out)
{
  const Vec3 nowhere = { NAN, NAN, NAN };
  double *forces = (double *) &out->forces;

  *out = (JointLoads){ .travel = NAN,
                       .load.contact = nowhere,
                       .shares = { NAN, NAN, NAN, NAN },
                       .left_over = NAN,
                       .link_force = NAN,
                       .bar_on_body = nowhere,
                       .transfer = NAN,
                       .load_on_tower = NAN,
                       .load_on_floor = NAN };
  for (gsize i = 0; i < sizeof out->forces / sizeof (double); i++)
    forces[i] = NAN;
}

/* Forces on both wheels of the axle; y of the right one mirrored. */
typedef struct {
  Vec3 contact[2];
  gboolean is_lifted;
  double transfer;
} AxleLoad;

/* M a h/t from wheel to wheel, and of the whole car's M a h/L half to each front wheel.
 * Σ F_y = M a and the front brakes' part of M a, split as F_z is. */
static AxleLoad
axle_load (const Car *car, double half_track, const CarLoadCase *load_case)
{
  const CarBody *body = &car->body;
  const double weight = body->front_mass_kg / 2.0 * SPRING_GRAVITY;
  const double across = body->front_mass_kg * load_case->lateral_g * SPRING_GRAVITY;
  const double along =
      (body->front_mass_kg + car_rear_mass (car)) * load_case->braking_g * SPRING_GRAVITY;
  const double each = MAX (weight * load_case->vertical +
                               along * body->cg_height_mm / (2.0 * body->wheelbase_mm),
                           0.0);
  const double shift = across * body->cg_height_mm / (2.0 * half_track);
  const double left = CLAMP (each + shift, 0.0, 2.0 * each);
  const double share[2] = { each > 0.0 ? left / (2.0 * each) : 0.0,
                            each > 0.0 ? 1.0 - left / (2.0 * each) : 0.0 };
  AxleLoad load = { .is_lifted = each + shift < 0.0 || each <= 0.0,
                    .transfer = left - weight * load_case->vertical };

  for (int i = 0; i < 2; i++)
    load.contact[i] =
        (Vec3){ -along * body->front_brake_share * share[i],
                (i == 0 ? -across : across) * share[i], 2.0 * each * share[i] };
  if (!load.is_lifted)
    load.contact[0].x -= load_case->rearward * weight;
  return load;
}

/* Where the left wheel stands and how high the other side's link. */
typedef struct {
  double travel, other_rise;
  gboolean is_balanced;
  gboolean has_place;
} Place;

/* With springs and bar as set, at @travel or where they balance. */
static Place
place_as_set (const AxleBalance *balance, double travel)
{
  Place place = { .travel = travel, .other_rise = NAN, .has_place = TRUE };
  AxleWheel left, right;
  SpringStation s;
  Pose pose;

  if (isnan (travel)) {
    left = axle_balance_left (balance, &right);
    return (Place){ left.travel, right.link_rise, !left.is_at_end,
                    spring_law_holds (balance->corner->law) };
  }
  if (!spring_corner_carry (balance->corner, travel, NULL, &pose, &s) ||
      spring_law_blocks (balance->corner->law, travel, &s) != 0)
    place.has_place = FALSE;
  else if (balance->link_rate > 0.0 && spring_law_holds (balance->corner->law))
    place.other_rise =
        axle_balance_wheel (balance, balance->contact[1], s.link_rise).link_rise;
  return place;
}

static void
hang_on_link (JointLoads *out, LinkCarrier carrier, Vec3 at)
{
  const Vec3 force = { 0.0, 0.0, out->link_force };

  if (out->link_force == 0.0)
    return;
  if (carrier == LINK_ON_ARM) {
    out->load.on_arm = force;
    out->load.on_arm_at = at;
  } else {
    out->load.on_knuckle = force;
    out->load.on_knuckle_at = at;
  }
}

/* The coil's seat passes no moment to the body: its line goes through the mount. */
static SpringHold
hold_as_set (const SpringCorner *corner, const SpringStation *s)
{
  return (SpringHold){ .found = CARRIED_BY_STRUT,
                       .coil = s->coil_force,
                       .torque = s->bar_torque,
                       .coil_top = corner->corner->corner.upper_mount,
                       .coil_direction = s->paths.coil_direction };
}

static StrutShares
strut_shares (const SpringLaw *law,
              const SpringStation *s,
              SpringMode mode,
              const JointForces *forces)
{
  StrutShares shares = { .coil = forces->axial - forces->strut };

  if (mode != SPRING_AS_SET)
    return shares;
  shares.helper = law->has_parallel ? s->helper_force : 0.0;
  shares.bump_stop = s->stop_force;
  shares.gas = law->gas_force;
  return shares;
}

static void
find_forces (const AxleBalance *balance,
             const Place *place,
             SpringMode mode,
             JointLoads *out)
{
  const SpringCorner *corner = balance->corner;
  const Corner *linkage = &corner->corner->corner;
  SpringStation s;

  out->travel = place->travel;
  out->link_force = 0.0;
  if (!spring_corner_carry (corner, place->travel, NULL, &out->pose, &s))
    return;
  if (!isnan (place->other_rise))
    out->link_force = balance->link_rate * (place->other_rise - s.link_rise);
  hang_on_link (out, corner->law->places.link_carrier, s.paths.link_point);
  out->hold = mode == SPRING_AS_SET
                  ? hold_as_set (corner, &s)
                  : spring_hold_alone (linkage, &out->pose,
                                       mode == SPRING_COIL_ONLY ? CARRIED_BY_COIL
                                                                : CARRIED_BY_TORSION_BAR);
  out->is_solved =
      joint_forces (linkage, &out->pose, &out->load, &out->hold, &out->forces);
  out->shares = strut_shares (corner->law, &s, mode, &out->forces);
  out->left_over = mode == SPRING_AS_SET && !place->is_balanced
                       ? out->forces.strut - s.strut_force
                       : 0.0;
  out->bar_on_body = (Vec3){ 0.0, 0.0, -out->link_force };
  out->load_on_tower = out->forces.tower.z;
  out->load_on_floor = out->forces.front_pivot.z + out->forces.rear_pivot.z +
                       out->forces.along_hinge.z + out->forces.tie_rod_on_rack.z -
                       out->link_force;
}

/* @balance has the forces of both wheels; that of the left one is in @out already. */
static void
solve_loads (const AxleBalance *balance, double travel, SpringMode mode, JointLoads *out)
{
  const double height = balance->corner->corner->lowering;
  Place place = { isnan (travel) ? height : travel, NAN, FALSE, TRUE };

  if (mode == SPRING_AS_SET)
    place = place_as_set (balance, travel);
  if (place.has_place)
    find_forces (balance, &place, mode, out);
  if (!out->is_solved)
    leave_gap (out);
}

void
joint_loads_of_corner (const SpringStudy *study,
                       const SpringCorner *corner,
                       const CarLoadCase *load_case,
                       double travel,
                       SpringMode mode,
                       JointLoads *out)
{
  const Station *home = &corner->corner->at_height;
  AxleBalance balance;

  leave_gap (out);
  if (home->status != POSE_OK || !axle_balance_init (&balance, corner))
    return;
  const AxleLoad axle = axle_load (study->car, home->measures.contact.y, load_case);

  balance.contact[0] = axle.contact[0];
  balance.contact[1] = axle.contact[1];
  out->load = (CornerLoad){ .contact = axle.contact[0],
                            .wheel_centre = { 0.0, 0.0, -study->unsprung_weight } };
  out->is_lifted = axle.is_lifted;
  out->transfer = axle.transfer;
  solve_loads (&balance, travel, mode, out);
}

void
joint_loads_of_case (const SpringStudy *study,
                     guint setup,
                     const CarLoadCase *load_case,
                     double travel,
                     SpringMode mode,
                     JointLoads *out)
{
  joint_loads_of_corner (study, &study->setups[setup], load_case, travel, mode, out);
}

void
joint_loads_of_force (const SpringStudy *study,
                      guint setup,
                      Vec3 contact,
                      double travel,
                      SpringMode mode,
                      JointLoads *out)
{
  AxleBalance balance;

  leave_gap (out);
  if (!axle_balance_init (&balance, &study->setups[setup]))
    return;
  balance.link_rate = 0.0;
  balance.is_weighing = FALSE;
  balance.contact[0] = balance.contact[1] = contact;
  out->load = (CornerLoad){ .contact = contact };
  out->transfer = 0.0;
  solve_loads (&balance, travel, mode, out);
}
