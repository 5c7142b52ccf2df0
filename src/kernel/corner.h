/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One front-left MacPherson corner: what is measured on the car, what a setup does to it,
 * and the linkage that both make.
 *
 * Vehicle axes and signs of ISO 8855. Lengths mm, angles rad. A Corner is a plain value:
 * it owns nothing, may be copied, and may be solved from several threads at once. */

#pragma once

#include "kernel/vec3.h"

typedef enum {
  POINT_ARM_FRONT_PIVOT, /* A1: on the lower arm's hinge axis */
  POINT_ARM_REAR_PIVOT,  /* A2: on the lower arm's hinge axis */
  POINT_BALL_JOINT,      /* B: carried by arm and knuckle */
  POINT_UPPER_MOUNT,     /* U: centre of the strut's top bearing, on the body */
  POINT_STRUT_FOOT,      /* S: any second point of the strut's axis, low down */
  POINT_TIE_ROD_OUTER,   /* T: on the knuckle */
  POINT_TIE_ROD_INNER,   /* R: on the rack, moves along y */
  POINT_WHEEL_CENTRE,    /* W: on the knuckle */
  N_POINTS
} PointName;

typedef struct {
  Vec3 at[N_POINTS];     /* at the reference height */
  double camber, toe_in; /* static, per wheel */
  double loaded_radius;  /* of the tyre */
  double dive_lever;     /* front brake share · wheelbase / centre-of-gravity height */
} MeasuredCorner;

typedef struct {
  double inboard, rearward, up;
} MountOffset;

typedef enum {
  TOE_AS_MOVED, /* the tie rod keeps its length */
  TOE_RESET     /* the tie rod is turned until static toe is back at the lowered height */
} ToeMode;

/* Hardware that puts a point elsewhere than it was measured. At 0 it changes nothing, to
 * the bit. "Down" and "outboard" on the knuckle are those of the reference position.
 *
 * Whatever is fitted, travel counts from the wheel centre's height as measured, and the
 * half-track change from the contact as measured. A wheel spacer on a wheel that leans in
 * at the top also lifts its centre, by a hundredth of its length or two: at travel 0 the
 * arm then stands lower by as much. */
typedef struct {
  double
      clamp_tilt; /* rad: camber bolt or slotted holes: the strut's axis turns about its
                     foot, the lower clamp bolt, in the knuckle; signed as camber is */
  double ball_joint_spacer;  /* mm: the ball joint down from the knuckle */
  double tie_rod_end_spacer; /* mm: the tie rod's outer end down from the knuckle */
  double front_pivot_raise; /* mm: the lower arm's inner pivots up in the body; the arm */
  double rear_pivot_raise;  /*     keeps its shape */
  double pivot_outboard;    /* mm: both of them outboard, by offset bushes */
  double rack_raise;        /* mm: the tie rod's inner end up in the body */
  double tie_rod_lengthening; /* mm; a toe reset overrides it */
  double wheel_spacer;        /* mm: the wheel's centre outboard along its spin axis */
} Corrections;

typedef struct {
  MountOffset mount; /* of the upper mount, in the body */
  double lowering;   /* of the body; the wheel then stands at this travel */
  ToeMode toe;
  Corrections corrections;
} Adjustment;

/* Whether the linkage becomes another than the one that was measured. Lowering alone
 * moves the wheel in the same linkage. */
bool adjustment_changes_linkage (const Adjustment *adjustment);

typedef enum {
  CORNER_OK,
  CORNER_NOT_FINITE,        /* .first is the point, or N_POINTS for alignment or radius */
  CORNER_BAD_RADIUS,        /* the loaded radius is not above zero */
  CORNER_BAD_ANGLE,         /* static camber or toe-in past 45 degrees */
  CORNER_COINCIDENT,        /* .first and .second are the same place */
  CORNER_BALL_ON_HINGE,     /* the ball joint lies on the arm's hinge axis */
  CORNER_ARM_CANNOT_LIFT,   /* turning the arm does not lift the wheel */
  CORNER_STRUT_UPSIDE_DOWN, /* the mount is not above the strut foot and the ball joint */
  CORNER_TIE_ROD_ON_AXIS,   /* an end of the tie rod lies on the steering axis */
  CORNER_TIE_ROD_DEAD       /* the tie rod stands at its dead point: it cannot steer */
} CornerStatus;

typedef struct {
  CornerStatus status;
  PointName first, second;
} CornerVerdict;

/* Whether a position can be assembled, and if not, why. */
typedef enum {
  POSE_OK,
  POSE_STRUT_TOO_SHORT, /* the mount is nearer to the ball joint than the strut allows */
  POSE_TIE_ROD_CANNOT_REACH, /* no turn about the steering axis closes the tie rod, or
                                only one at or past its dead point */
  POSE_OUT_OF_REACH,         /* the arm turns over before the wheel gets there */
  POSE_TOE_OUT_OF_REACH      /* no tie-rod length brings the static toe back */
} PoseStatus;

/* What is left of the corner once everything that does not move is worked out. Knuckle
 * vectors are taken at the ball joint, in the orientation of the reference position. */
typedef struct {
  /* body */
  Vec3 hinge_axis;   /* a, unit, so directed that a positive angle lifts the wheel */
  Vec3 hinge_centre; /* of the ball joint's circle */
  Vec3 radius_0,
      radius_90; /* of that circle: B = centre + cos θ·radius_0 + sin θ·radius_90 */
  Vec3 arm_pivot, arm_rear_pivot; /* A1, A2 */
  Vec3 upper_mount;               /* U as moved by the setup */
  Vec3 tie_rod_inner;             /* R at rack 0 */
  /* knuckle */
  Vec3 strut_direction;     /* u, unit, from the foot to the mount */
  Vec3 strut_perpendicular; /* from the ball joint to the nearest point of the strut axis
                             */
  Vec3 strut_foot, tie_rod_outer, wheel_centre, spin_axis;
  double
      strut_distance_2; /* d²: square of the ball joint's distance from the strut axis */
  double tie_rod_length;
  double tie_rod_side;  /* +1 or −1: the assembly that was measured */
  double tie_rod_reach; /* +1 or −1: its outer end is to the left or right of the inner;
                           0 when it lies more along the car than across */
  double toe_in;        /* static: what a reset brings back */
  /* reference */
  double loaded_radius;
  double reference_height;    /* W_z as measured */
  double reference_contact_y; /* C_y and W_x as measured: changes count from here */
  double reference_wheel_x;
  double reference_tie_rod_length;
  double dive_lever;
  /* Where parts of the lower arm and of the strut's tube were measured from, before they
   * were corrected with it. */
  Vec3 measured_hinge_axis, measured_hinge_centre, measured_radius_0, measured_foot;
  double clamp_tilt;
  double start_angle; /* an arm angle at which the corner assembles: the nearest to 0,
                         or where a toe reset leaves it standing */
  PoseStatus start_status; /* why nothing assembles, if nothing does */
} Corner;

/* Works out @corner for a measured corner and what a setup does to it. Every status but
 * CORNER_OK is a fault of @measured and leaves @corner undefined. A sound measured corner
 * that the adjustment has made impossible is CORNER_OK: solving it then says why it
 * fails. */
CornerVerdict corner_assemble (const MeasuredCorner *measured,
                               const Adjustment *adjustment,
                               Corner *corner);

/* How much longer the tie rod is than as measured, mm. */
double corner_tie_rod_change (const Corner *corner);
