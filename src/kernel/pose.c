/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/pose.h"
#include "kernel/axis-frame.h"
#include "kernel/pose-closure.h"

#include <assert.h>

/* Newton stops here, mm: a hundred times the rounding of a height, and far below any
 * need. Next to the tie rod's dead point the wheel moves so far for so little of the arm
 * that the rounding of the arm's angle, rad, is what counts. */
#define TRAVEL_TOLERANCE 1e-11
#define ANGLE_TOLERANCE 2e-15
/* A longer step, rad, could pass over the place where the arm turns over. */
#define LONGEST_STEP 0.1
/* A step cut to this share of Newton's has met a bar, not a rough patch. */
#define SHORTEST_SHARE 1e-8
#define MOST_STEPS 100

/* The knuckle before its turn about the steering axis is known. */
typedef struct {
  AxisFrame knuckle;     /* e and r (towards T) in knuckle coordinates */
  AxisFrame body;        /* e and r (towards R) in the body */
  double t_along, t_out; /* T in the knuckle frame: along the axis, and off it */
  double r_along, r_out; /* R in the body frame likewise */
} OpenKnuckle;

static bool
open_knuckle (const Corner *corner, const Pose *pose, OpenKnuckle *open)
{
  const Vec3 axis = vec3_sub (corner->upper_mount, pose->ball_joint);
  const double length_2 = vec3_dot (axis, axis);
  const double s_2 = length_2 - corner->strut_distance_2;

  if (!(s_2 > 0.0))
    return false;

  const double inverse = 1.0 / sqrt (length_2);
  const Vec3 mount =
      vec3_along (corner->strut_perpendicular, sqrt (s_2), corner->strut_direction);
  const Vec3 rack = vec3_sub (pose->tie_rod_inner, pose->ball_joint);

  open->knuckle = frame_towards (vec3_scale (mount, inverse), corner->tie_rod_outer,
                                 &open->t_along, &open->t_out);
  open->body =
      frame_towards (vec3_scale (axis, inverse), rack, &open->r_along, &open->r_out);
  return true;
}

/* |T − R|² = (t_along − r_along)² + t_out² + r_out² − 2 t_out r_out cos φ */
static bool
turn_by_tie_rod (const Corner *corner,
                 const OpenKnuckle *open,
                 double *cosine,
                 double *sine)
{
  const double gap = open->t_along - open->r_along;
  const double length = corner->tie_rod_length;

  *cosine = (gap * gap + open->t_out * open->t_out + open->r_out * open->r_out -
             length * length) /
            (2.0 * open->t_out * open->r_out);
  const double sine_2 = 1.0 - *cosine * *cosine;

  if (!(sine_2 >= LEAST_STEER_SINE * LEAST_STEER_SINE))
    return false;

  *sine = corner->tie_rod_side * sqrt (sine_2);
  return true;
}

/* The direction in plan that n is square to when toe-in is δ: h = (cos δ, −sin δ, 0). */
static Vec3
toe_normal (const Corner *corner)
{
  return (Vec3){ cos (corner->toe_in), -sin (corner->toe_in), 0.0 };
}

/* h·n(φ) = A cos φ + B sin φ + C = 0, with the spin axis pointing outboard. */
static bool
turn_by_toe (const Corner *corner, const OpenKnuckle *open, double *cosine, double *sine)
{
  const Vec3 h = toe_normal (corner), n = corner->spin_axis;
  const AxisFrame *k = &open->knuckle, *b = &open->body;
  const double n_out = vec3_dot (n, k->r), n_across = vec3_dot (n, k->c);
  const double h_out = vec3_dot (h, b->r), h_across = vec3_dot (h, b->c);
  const double A = h_out * n_out + h_across * n_across;
  const double B = h_across * n_out - h_out * n_across;
  const double C = vec3_dot (h, b->e) * vec3_dot (n, k->e);
  const double reach = hypot (A, B);

  if (!(fabs (C) <= reach))
    return false;

  const double middle = atan2 (B, A), half = acos (-C / reach);

  for (int side = -1; side <= 1; side += 2) {
    const double turn = middle + side * half;

    *cosine = cos (turn);
    *sine = sin (turn);
    const double n_y = b->e.y * vec3_dot (n, k->e) +
                       n_out * (*cosine * b->r.y + *sine * b->c.y) +
                       n_across * (*cosine * b->c.y - *sine * b->r.y);
    if (n_y > 0.0)
      return *sine * corner->tie_rod_side > 0.0;
  }
  return false;
}

/* Beyond the dead points of the rack the tie rod closes again, turned over: its inner end
 * outboard of the outer one. No rack gets there without taking the linkage apart. */
static bool
tie_rod_is_turned_over (const Corner *corner, const Pose *pose)
{
  return (pose->tie_rod_outer.y - pose->tie_rod_inner.y) * corner->tie_rod_reach < 0.0;
}

static void
place_knuckle (
    const Corner *corner, const OpenKnuckle *open, double cosine, double sine, Pose *pose)
{
  const AxisFrame *b = &open->body;
  const Vec3 r = vec3_along (vec3_scale (b->r, cosine), sine, b->c);
  const AxisFrame placed = { b->e, r, vec3_cross (b->e, r) };
  const Vec3 B = pose->ball_joint;
  const AxisFrame *k = &open->knuckle;

  pose->strut_foot = vec3_add (B, frame_map (&placed, k, corner->strut_foot));
  pose->tie_rod_outer = vec3_add (B, frame_map (&placed, k, corner->tie_rod_outer));
  pose->wheel_centre = vec3_add (B, frame_map (&placed, k, corner->wheel_centre));
  pose->spin_axis = frame_map (&placed, k, corner->spin_axis);
  pose->strut_direction = frame_map (&placed, k, corner->strut_direction);
}

/* The three scalar equations row·ω = right side that both the velocity and the
 * acceleration of the knuckle obey: row 1, 2   the knuckle's point at U moves only along
 * the strut: p, q square to u; row 3      T keeps its distance from R, or the wheel keeps
 * its toe. */
typedef struct {
  Vec3 p, q, row[3];
} KnuckleEquations;

static KnuckleEquations
knuckle_equations (const Corner *corner, const Pose *pose, Closure closure)
{
  const Vec3 axis = vec3_sub (corner->upper_mount, pose->ball_joint);
  const Vec3 arm = vec3_sub (pose->tie_rod_outer, pose->ball_joint);
  const Vec3 rod = vec3_sub (pose->tie_rod_outer, pose->tie_rod_inner);
  const Vec3 p = vec3_any_normal (pose->strut_direction);
  const Vec3 q = vec3_cross (pose->strut_direction, p);

  return (KnuckleEquations){
    p,
    q,
    { vec3_cross (axis, p), vec3_cross (axis, q),
      closure == CLOSE_TIE_ROD ? vec3_cross (arm, rod)
                               : vec3_cross (pose->spin_axis, toe_normal (corner)) }
  };
}

/* Cramer's rule in vector form. */
static Vec3
solve_rows (const Vec3 row[3], double b0, double b1, double b2)
{
  const Vec3 r12 = vec3_cross (row[1], row[2]);
  const Vec3 r20 = vec3_cross (row[2], row[0]);
  const Vec3 r01 = vec3_cross (row[0], row[1]);
  const Vec3 sum = vec3_along (vec3_along (vec3_scale (r12, b0), b1, r20), b2, r01);

  return vec3_scale (sum, 1.0 / vec3_dot (row[0], r12));
}

static void
solve_velocity (const Corner *corner, Closure closure, Pose *pose)
{
  const KnuckleEquations k = knuckle_equations (corner, pose, closure);
  const Vec3 v = pose->ball_velocity;
  const Vec3 rod = vec3_sub (pose->tie_rod_outer, pose->tie_rod_inner);
  const double b2 = closure == CLOSE_TIE_ROD ? -vec3_dot (rod, v) : 0.0;

  pose->turn_rate = solve_rows (k.row, -vec3_dot (k.p, v), -vec3_dot (k.q, v), b2);
  const Vec3 to_wheel = vec3_sub (pose->wheel_centre, pose->ball_joint);
  pose->lift = v.z + vec3_cross (pose->turn_rate, to_wheel).z;
}

PoseStatus
pose_at_arm_angle_closed (
    const Corner *corner, double arm_angle, double rack, Closure closure, Pose *pose)
{
  const double cos_arm = cos (arm_angle), sin_arm = sin (arm_angle);
  const Vec3 r0 = corner->radius_0, r90 = corner->radius_90;
  OpenKnuckle open;
  double cosine = 1.0, sine = 0.0;

  pose->arm_angle = arm_angle;
  pose->rack = rack;
  pose->ball_joint =
      vec3_along (vec3_along (corner->hinge_centre, cos_arm, r0), sin_arm, r90);
  pose->ball_velocity = vec3_along (vec3_scale (r90, cos_arm), -sin_arm, r0);
  pose->tie_rod_inner = corner->tie_rod_inner;
  pose->tie_rod_inner.y += rack;

  if (!open_knuckle (corner, pose, &open))
    return POSE_STRUT_TOO_SHORT;
  if (closure == CLOSE_TIE_ROD && !turn_by_tie_rod (corner, &open, &cosine, &sine))
    return POSE_TIE_ROD_CANNOT_REACH;
  if (closure == CLOSE_TOE && !turn_by_toe (corner, &open, &cosine, &sine))
    return POSE_TOE_OUT_OF_REACH;

  place_knuckle (corner, &open, cosine, sine, pose);
  if (closure == CLOSE_TIE_ROD && tie_rod_is_turned_over (corner, pose))
    return POSE_TIE_ROD_CANNOT_REACH;
  pose->travel = pose->wheel_centre.z - corner->reference_height;
  solve_velocity (corner, closure, pose);
  return POSE_OK;
}

PoseStatus
pose_at_arm_angle (const Corner *corner, double arm_angle, double rack, Pose *pose)
{
  return pose_at_arm_angle_closed (corner, arm_angle, rack, CLOSE_TIE_ROD, pose);
}

static bool
has_arrived (const Pose *pose, double travel)
{
  return fabs (travel - pose->travel) <=
         fmax (TRAVEL_TOLERANCE, ANGLE_TOLERANCE * pose->lift);
}

/* One Newton step towards @travel, halved until it is assembled, still lifts the wheel
 * and comes nearer. False when the way there is barred; @bar says by what. */
static bool
step_towards (
    const Corner *corner, double travel, Closure closure, Pose *pose, PoseStatus *bar)
{
  const double error = travel - pose->travel;
  const double newton = error / pose->lift;
  const double longest = fmin (fabs (newton), LONGEST_STEP);

  for (double size = longest; size > longest * SHORTEST_SHARE; size /= 2.0) {
    const double angle = pose->arm_angle + copysign (size, newton);
    Pose trial;
    const PoseStatus status =
        pose_at_arm_angle_closed (corner, angle, pose->rack, closure, &trial);

    if (status != POSE_OK) {
      *bar = status;
    } else if (trial.lift > 0.0 && fabs (travel - trial.travel) < fabs (error)) {
      *pose = trial;
      return true;
    }
  }
  return false;
}

PoseStatus
pose_at_travel_closed (const Corner *corner,
                       double travel,
                       double rack,
                       Closure closure,
                       const Pose *neighbour,
                       Pose *pose)
{
  PoseStatus status = corner->start_status, bar = POSE_OUT_OF_REACH;

  assert (neighbour == NULL || neighbour->rack == rack);
  if (neighbour != NULL)
    *pose = *neighbour;
  else if (status == POSE_OK)
    status = pose_at_arm_angle_closed (corner, corner->start_angle, rack, closure, pose);
  if (status != POSE_OK)
    return status;

  for (int i = 0; !has_arrived (pose, travel); i++)
    if (i == MOST_STEPS || !step_towards (corner, travel, closure, pose, &bar))
      return bar;
  return POSE_OK;
}

PoseStatus
pose_at_travel (
    const Corner *corner, double travel, double rack, const Pose *neighbour, Pose *pose)
{
  return pose_at_travel_closed (corner, travel, rack, CLOSE_TIE_ROD, neighbour, pose);
}

/* The time derivative of the equations of solve_velocity, with v_U = v_B + ω × (U − B):
 *   p·(α × (U − B)) = −p·(a_B − ω × v_B) − (ω × p)·v_U, likewise q;
 *   (T − R)·(α × (T − B)) = −(T − R)·(a_B + ω × (ω × (T − B))) − |v_T|². */
Acceleration
pose_acceleration (const Corner *corner, const Pose *pose)
{
  const KnuckleEquations k = knuckle_equations (corner, pose, CLOSE_TIE_ROD);
  const Vec3 w = pose->turn_rate, v_ball = pose->ball_velocity;
  const Vec3 axis = vec3_sub (corner->upper_mount, pose->ball_joint);
  const Vec3 arm = vec3_sub (pose->tie_rod_outer, pose->ball_joint);
  const Vec3 rod = vec3_sub (pose->tie_rod_outer, pose->tie_rod_inner);
  const Vec3 a_ball = vec3_sub (corner->hinge_centre, pose->ball_joint);
  const Vec3 v_mount = vec3_add (v_ball, vec3_cross (w, axis));
  const Vec3 v_outer = vec3_add (v_ball, vec3_cross (w, arm));
  const Vec3 slip = vec3_sub (a_ball, vec3_cross (w, v_ball));
  const Vec3 a_outer = vec3_add (a_ball, vec3_cross (w, vec3_cross (w, arm)));

  return (Acceleration){
    a_ball,
    solve_rows (k.row, -vec3_dot (k.p, slip) - vec3_dot (vec3_cross (w, k.p), v_mount),
                -vec3_dot (k.q, slip) - vec3_dot (vec3_cross (w, k.q), v_mount),
                -vec3_dot (rod, a_outer) - vec3_dot (v_outer, v_outer))
  };
}

Vec3
pose_contact (const Corner *corner, const Pose *pose)
{
  const Vec3 n = pose->spin_axis;
  const double c = sqrt (1.0 - n.z * n.z);
  const Vec3 down = { n.z * n.x / c, n.z * n.y / c, -c };

  return vec3_along (pose->wheel_centre, corner->loaded_radius, down);
}
