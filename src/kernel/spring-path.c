/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/spring-path.h"
#include "kernel/correction.h"
#include "kernel/motion.h"

/* In the frame of the strut, (u, o, f) = along, outboard, forward, the mount stands at
 * L = |U − S| above the foot, and both seats are fixed to foot and mount. With
 *   h = L − perch − drop,   s = (upper − lower) offset,   constant,
 * the coil runs by h u + s from seat to seat: its length is √(h² + |s|²). */

typedef struct {
  Vec3 up, outboard, forward;
} StrutFrame;

static Vec3
outboard_as_measured (const Corner *corner)
{
  const Vec3 y = { 0, 1, 0 };

  return vec3_unit (vec3_reject (y, corner->strut_direction));
}

static StrutFrame
strut_frame (const Corner *corner, const Pose *pose, const KnuckleTurn *turn)
{
  const Vec3 outboard = knuckle_vector (turn, outboard_as_measured (corner));

  return (StrutFrame){ pose->strut_direction, outboard,
                       vec3_cross (outboard, pose->strut_direction) };
}

static Vec3
in_strut_frame (const StrutFrame *f, double up, double outboard, double forward)
{
  const Vec3 axial = vec3_scale (f->up, up);

  return vec3_along (vec3_along (axial, outboard, f->outboard), forward, f->forward);
}

void
coil_seats_place (const Corner *corner,
                  const CoilSeats *seats,
                  double strut_length,
                  Vec3 *lower,
                  Vec3 *upper)
{
  const Vec3 u = corner->strut_direction, outboard = outboard_as_measured (corner);
  const StrutFrame f = { u, outboard, vec3_cross (outboard, u) };

  *lower = vec3_add (corner->strut_foot,
                     in_strut_frame (&f, seats->perch, seats->lower_outboard,
                                     seats->lower_forward));
  *upper = vec3_add (corner->strut_foot,
                     in_strut_frame (&f, strut_length - seats->upper_drop,
                                     seats->upper_outboard, seats->upper_forward));
}

/* dq/dc = q'/c', d²q/dc² = (q″c' − q'c″)/c'³ */
static SpringPath
by_contact (Jet q, Jet c)
{
  return (SpringPath){ q.v, q.d / c.d, (q.dd * c.d - q.d * c.dd) / (c.d * c.d * c.d) };
}

static void
place_coil (const Corner *corner,
            const Pose *pose,
            const CoilSeats *seats,
            const KnuckleTurn *turn,
            SpringPaths *paths)
{
  const StrutFrame f = strut_frame (corner, pose, turn);
  const Vec3 lower =
      in_strut_frame (&f, seats->perch, seats->lower_outboard, seats->lower_forward);
  const Vec3 upper = in_strut_frame (&f, -seats->upper_drop, seats->upper_outboard,
                                     seats->upper_forward);

  paths->coil_bottom = vec3_add (pose->strut_foot, lower);
  paths->coil_top = vec3_add (corner->upper_mount, upper);
  paths->coil_direction = vec3_unit (vec3_sub (paths->coil_top, paths->coil_bottom));
}

static Jet
coil_length (const CoilSeats *seats, Jet strut_length)
{
  const double outboard = seats->upper_outboard - seats->lower_outboard;
  const double forward = seats->upper_forward - seats->lower_forward;
  const Jet across = jet_constant (outboard * outboard + forward * forward);
  const Jet up = jet_sub (strut_length, jet_constant (seats->perch + seats->upper_drop));

  return jet_sqrt (jet_add (jet_mul (up, up), across));
}

/* The arm's points turn about the hinge as its ball joint does. */
static Jet3
link_on_arm (const Corner *corner, const Pose *pose, Vec3 place)
{
  const Vec3 lever = vec3_sub (place, corner->hinge_centre);
  const Vec3 out = vec3_reject (lever, corner->hinge_axis);
  const Vec3 across = vec3_cross (corner->hinge_axis, out);
  const double c = cos (pose->arm_angle), s = sin (pose->arm_angle);
  const Vec3 turned = vec3_along (vec3_scale (out, c), s, across);
  const Vec3 moved = vec3_add (vec3_sub (place, out), turned);

  return jet3 (moved, vec3_cross (corner->hinge_axis, turned), vec3_scale (turned, -1.0));
}

static Jet3
link_jet (const Corner *corner,
          const Pose *pose,
          const SpringPlaces *places,
          const KnuckleTurn *turn,
          const Acceleration *a)
{
  const Vec3 point = places->link_point;

  if (places->link_carrier == LINK_ON_ARM)
    return link_on_arm (corner, pose, corrected_on_arm (corner, point));

  const Vec3 vector = knuckle_vector (turn, corrected_on_tube (corner, point));

  return motion_of_point (pose, a, vec3_add (pose->ball_joint, vector));
}

static void
leave_gap (SpringPaths *paths)
{
  const SpringPath none = { NAN, NAN, NAN };
  const Vec3 nowhere = { NAN, NAN, NAN };

  *paths = (SpringPaths){ none,    none,    none,    none, none, nowhere,
                          nowhere, nowhere, nowhere, NAN,  NAN };
}

bool
spring_paths (const Corner *corner,
              const Pose *pose,
              const SpringPlaces *places,
              SpringPaths *paths)
{
  const Motion m = motion_of (corner, pose);
  const KnuckleTurn turn = knuckle_turn (corner, pose);
  const Jet3 link = link_jet (corner, pose, places, &turn, &m.acceleration);
  const Jet c = m.contact.z, bar = { pose->arm_angle, 1.0, 0.0 };
  const Jet reference = jet_constant (corner->reference_height);

  leave_gap (paths);
  if (!(c.d > 0.0))
    return false;

  paths->coil =
      by_contact (jet_negative (coil_length (&places->seats, m.strut_length)), c);
  paths->strut = by_contact (jet_negative (m.strut_length), c);
  paths->bar = by_contact (bar, c);
  paths->link = by_contact (jet_sub (link.z, jet_constant (places->link_point.z)), c);
  paths->wheel = by_contact (jet_sub (m.wheel.z, reference), c);
  place_coil (corner, pose, &places->seats, &turn, paths);
  paths->link_point = (Vec3){ link.x.v, link.y.v, link.z.v };
  paths->contact_rate = c.d;
  paths->contact_per_travel = c.d / m.wheel.z.d;
  return true;
}
