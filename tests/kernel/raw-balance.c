/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raw-balance.h"
#include "check-data.h"

#include <gsl/gsl_linalg.h>

/* Unknowns by column, equations by row: knuckle and tube in rows 0 to 5, arm in 6 to 11,
 * forces before moments. */
enum {
  BALL = 0,    /* x, y, z; on the knuckle */
  TIE_ROD = 3, /* on the knuckle */
  SIDE = 4,    /* two, square to the strut; on the tube */
  CARRIER = 6, /* coil, strut or torque */
  FRONT = 7,   /* two, square to the hinge; body on arm */
  REAR = 9,    /* likewise */
  ALONG = 11,  /* the hinge; body on arm */
  N_UNKNOWNS = 12
};
enum {
  ON_KNUCKLE = 0,
  ON_ARM = 6
};

typedef struct {
  gsl_matrix *m;
  gsl_vector *right;
} System;

static void
put_row (const System *s, int column, int row, Vec3 v)
{
  const double rows[3] = { v.x, v.y, v.z };

  for (int i = 0; i < 3; i++) {
    const size_t r = (size_t) (row + i), c = (size_t) column;

    if (column < 0)
      gsl_vector_set (s->right, r, gsl_vector_get (s->right, r) - rows[i]);
    else
      gsl_matrix_set (s->m, r, c, rows[i]);
  }
}

/* @column below 0: a known force, which goes to the right side. */
static void
put_force (const System *s, int column, int body, Vec3 force, Vec3 at)
{
  put_row (s, column, body, force);
  put_row (s, column, body + 3, vec3_cross (at, force));
}

static void
put_torque (const System *s, int column, Vec3 torque)
{
  put_row (s, column, ON_ARM + 3, torque);
}

static void
put_joints (const System *s, const Corner *corner, const Pose *p)
{
  const Vec3 unit[3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  const Vec3 side = vec3_any_normal (p->strut_direction);
  const Vec3 hinge = vec3_any_normal (corner->hinge_axis);
  const Vec3 U = corner->upper_mount;

  for (int i = 0; i < 3; i++) {
    put_force (s, BALL + i, ON_KNUCKLE, unit[i], p->ball_joint);
    put_force (s, BALL + i, ON_ARM, vec3_scale (unit[i], -1.0), p->ball_joint);
  }
  put_force (s, TIE_ROD, ON_KNUCKLE,
             vec3_unit (vec3_sub (p->tie_rod_outer, p->tie_rod_inner)), p->tie_rod_outer);
  put_force (s, SIDE, ON_KNUCKLE, side, U);
  put_force (s, SIDE + 1, ON_KNUCKLE, vec3_cross (p->strut_direction, side), U);
  for (int i = 0; i < 2; i++) {
    const Vec3 square = i == 0 ? hinge : vec3_cross (corner->hinge_axis, hinge);

    put_force (s, FRONT + i, ON_ARM, square, corner->arm_pivot);
    put_force (s, REAR + i, ON_ARM, square, corner->arm_rear_pivot);
  }
  put_force (s, ALONG, ON_ARM, corner->hinge_axis, corner->arm_pivot);
}

static void
put_springs (const System *s, const Corner *corner, const Pose *p, const SpringHold *h)
{
  const bool coil = h->found == CARRIED_BY_COIL, strut = h->found == CARRIED_BY_STRUT;
  const bool bar = h->found == CARRIED_BY_TORSION_BAR;

  put_force (s, coil ? CARRIER : -1, ON_KNUCKLE,
             vec3_scale (h->coil_direction, coil ? -1.0 : -h->coil), h->coil_top);
  put_force (s, strut ? CARRIER : -1, ON_KNUCKLE,
             vec3_scale (p->strut_direction, strut ? -1.0 : -h->strut),
             corner->upper_mount);
  put_torque (s, bar ? CARRIER : -1,
              vec3_scale (corner->hinge_axis, bar ? -1.0 : -h->torque));
}

static Vec3
two (const double *x, Vec3 axis)
{
  const Vec3 first = vec3_any_normal (axis);

  return vec3_along (vec3_scale (first, x[0]), x[1], vec3_cross (axis, first));
}

static JointForces
read_forces (const Corner *corner, const Pose *p, const SpringHold *h, const double *x)
{
  const Vec3 u = p->strut_direction, a = corner->hinge_axis;
  const Vec3 rod = vec3_unit (vec3_sub (p->tie_rod_outer, p->tie_rod_inner));
  JointForces f = {
    .ball_joint = { x[BALL], x[BALL + 1], x[BALL + 2] },
    .tie_rod = x[TIE_ROD],
    .tie_rod_on_rack = vec3_scale (rod, -x[TIE_ROD]),
    .side = two (x + SIDE, u),
    .coil = h->found == CARRIED_BY_COIL ? x[CARRIER] : h->coil,
    .strut = h->found == CARRIED_BY_STRUT ? x[CARRIER] : h->strut,
    .torque = h->found == CARRIED_BY_TORSION_BAR ? x[CARRIER] : h->torque,
    .front_pivot = vec3_scale (two (x + FRONT, a), -1.0),
    .rear_pivot = vec3_scale (two (x + REAR, a), -1.0),
    .along_hinge = vec3_scale (a, -x[ALONG]),
  };
  const Vec3 coil = vec3_scale (h->coil_direction, f.coil);

  f.axial = f.strut + vec3_dot (coil, u);
  f.tower = vec3_sub (vec3_add (coil, vec3_scale (u, f.strut)), f.side);
  f.tower_moment = vec3_cross (vec3_sub (h->coil_top, corner->upper_mount), coil);
  f.anchor_moment = vec3_scale (a, f.torque);
  return f;
}

JointForces
raw_balance (const Corner *corner,
             const Pose *p,
             const CornerLoad *load,
             const SpringHold *h)
{
  double cells[N_UNKNOWNS * N_UNKNOWNS] = { 0 }, right[N_UNKNOWNS] = { 0 };
  double unknowns[N_UNKNOWNS];
  gsl_matrix_view m = gsl_matrix_view_array (cells, N_UNKNOWNS, N_UNKNOWNS);
  gsl_vector_view b = gsl_vector_view_array (right, N_UNKNOWNS);
  gsl_vector_view x = gsl_vector_view_array (unknowns, N_UNKNOWNS);
  gsl_permutation *order = gsl_permutation_alloc (N_UNKNOWNS);
  const System s = { &m.matrix, &b.vector };
  int sign;

  put_joints (&s, corner, p);
  put_springs (&s, corner, p, h);
  put_force (&s, -1, ON_KNUCKLE, load->contact, pose_contact (corner, p));
  put_force (&s, -1, ON_KNUCKLE, load->wheel_centre, p->wheel_centre);
  put_force (&s, -1, ON_KNUCKLE, load->on_knuckle, load->on_knuckle_at);
  put_force (&s, -1, ON_ARM, load->on_arm, load->on_arm_at);
  gsl_linalg_LU_decomp (&m.matrix, order, &sign);
  gsl_linalg_LU_solve (&m.matrix, order, &b.vector, &x.vector);
  gsl_permutation_free (order);
  return read_forces (corner, p, h, unknowns);
}

LoadedCorner
dice_loaded_corner (Dice *dice)
{
  const RandomCase c = dice_case (dice);
  LoadedCorner l = { .corner = check_assemble (&c.measured, c.adjustment),
                     .load.contact = { dice_between (dice, -3000, 3000),
                                       dice_between (dice, -3000, 3000),
                                       dice_between (dice, 1000, 6000) } };

  g_assert_cmpint (station_solve (&l.corner, c.travel, c.rack, &l.station), ==, POSE_OK);
  return l;
}

JointForces
check_balance (const LoadedCorner *l, const SpringHold *hold)
{
  JointForces f;

  g_assert_true (joint_forces (&l->corner, &l->station.pose, &l->load, hold, &f));
  return f;
}

JointForces
check_balance_alone (const LoadedCorner *l, SpringCarrier carrier)
{
  const SpringHold hold = spring_hold_alone (&l->corner, &l->station.pose, carrier);

  return check_balance (l, &hold);
}

void
check_vector (const char *what, double place, Vec3 value, Vec3 expected, double tolerance)
{
  check_near (what, place, vec3_distance (value, expected), 0.0, tolerance);
}

void
check_same_forces (const JointForces *value,
                   const JointForces *expected,
                   double place,
                   double share,
                   double force)
{
  const JointForces *a = value, *b = expected;
  const double near = share * force, metre = 1000.0 * near;

  check_vector ("ball joint", place, a->ball_joint, b->ball_joint, near);
  check_near ("tie rod", place, a->tie_rod, b->tie_rod, near);
  check_vector ("rack", place, a->tie_rod_on_rack, b->tie_rod_on_rack, near);
  check_vector ("side", place, a->side, b->side, near);
  check_near ("axial", place, a->axial, b->axial, near);
  check_near ("coil", place, a->coil, b->coil, near);
  check_near ("strut", place, a->strut, b->strut, near);
  check_near ("torque", place, a->torque, b->torque, metre);
  check_vector ("tower", place, a->tower, b->tower, near);
  check_vector ("tower moment", place, a->tower_moment, b->tower_moment, metre);
  check_vector ("front pivot", place, a->front_pivot, b->front_pivot, near);
  check_vector ("rear pivot", place, a->rear_pivot, b->rear_pivot, near);
  check_vector ("along hinge", place, a->along_hinge, b->along_hinge, near);
  check_vector ("anchor", place, a->anchor_moment, b->anchor_moment, metre);
}
