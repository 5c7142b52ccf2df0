/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/sweep.h"

#include <assert.h>

double
sweep_place (SweepRange range, size_t i)
{
  assert (i < range.n_stations);
  if (i + 1 == range.n_stations)
    return range.to;
  return range.from +
         (range.to - range.from) * (double) i / (double) (range.n_stations - 1);
}

static void
leave_gap (PoseStatus status, Station *station)
{
  Measures *m = &station->measures;
  const Vec3 nowhere = { NAN, NAN, NAN };

  station->status = status;
  for (int i = 0; i < N_QUANTITIES; i++)
    m->value[i] = m->slope[i] = NAN;
  m->contact = m->axis_at_ground = nowhere;
  m->instant_centre_y = m->instant_centre_z = NAN;
  station->pose = (Pose){ .arm_angle = NAN,
                          .travel = NAN,
                          .rack = NAN,
                          .ball_joint = nowhere,
                          .strut_foot = nowhere,
                          .tie_rod_outer = nowhere,
                          .tie_rod_inner = nowhere,
                          .wheel_centre = nowhere,
                          .spin_axis = nowhere,
                          .strut_direction = nowhere,
                          .ball_velocity = nowhere,
                          .turn_rate = nowhere,
                          .lift = NAN };
}

static PoseStatus
settle (const Corner *corner, PoseStatus status, Station *station)
{
  if (status != POSE_OK)
    leave_gap (status, station);
  else
    pose_measure (corner, &station->pose, &station->measures);
  station->status = status;
  return status;
}

static PoseStatus
solve_beside (const Corner *corner, const Pose *neighbour, Station *station)
{
  return settle (corner,
                 pose_at_travel (corner, station->travel, station->rack, neighbour,
                                 &station->pose),
                 station);
}

PoseStatus
station_solve (const Corner *corner, double travel, double rack, Station *station)
{
  station->travel = travel;
  station->rack = rack;
  return solve_beside (corner, NULL, station);
}

/* The arm angle at exactly the asked travel: what is left of Newton's error goes too. */
static double
exact_arm_angle (const Station *s)
{
  return s->pose.arm_angle +
         (s->travel - s->pose.travel) * s->measures.value[QUANTITY_ARM_RATIO];
}

/* The arm angle that the stations walked through lead to. With one behind, Taylor's
 * series to the second order; with two, the polynomial of degree five that has both their
 * angles, slopes and curvatures, one step h further on:
 *   θ₂ = θ₁ + 31 (θ₁ − θ₀) − h (14 θ₀' + 16 θ₁') + h² (4 θ₁'' − 2 θ₀'') */
static double
predict_arm_angle (const Station *one, const Station *zero, double travel)
{
  const double h = travel - one->travel, angle = exact_arm_angle (one);
  const double slope = one->measures.value[QUANTITY_ARM_RATIO];
  const double bend = one->measures.slope[QUANTITY_ARM_RATIO];

  if (zero == NULL || zero->status != POSE_OK)
    return angle + h * slope + h * h * bend / 2.0;
  return angle + 31.0 * (angle - exact_arm_angle (zero)) -
         h * (14.0 * zero->measures.value[QUANTITY_ARM_RATIO] + 16.0 * slope) +
         h * h * (4.0 * bend - 2.0 * zero->measures.slope[QUANTITY_ARM_RATIO]);
}

/* From the position before, or from a better one that the last two stations foretell. */
static void
solve_onward (const Corner *corner,
              const Station *before,
              const Station *earlier,
              Station *station)
{
  const double travel = station->travel;
  const Pose *nearest = &before->pose;
  Pose guess;

  if (pose_at_arm_angle (corner, predict_arm_angle (before, earlier, travel),
                         station->rack, &guess) == POSE_OK &&
      guess.lift > 0.0 && fabs (travel - guess.travel) < fabs (travel - nearest->travel))
    nearest = &guess;
  solve_beside (corner, nearest, station);
}

/* Walks from station @from, the nearest to the start position, towards @step. The start
 * may lie between the first two, so each of them may be reached without the other; what
 * lies past a gap after that is out of reach. */
static size_t
walk (const Corner *corner, Station *stations, size_t from, int step, size_t n)
{
  const Station *before = NULL, *earlier = NULL;
  size_t n_assembled = 0;

  for (size_t i = from; i < n; i += (size_t) step) {
    Station *here = &stations[i];

    if (before != NULL && before->status == POSE_OK)
      solve_onward (corner, before, earlier, here);
    else if (earlier == NULL)
      solve_beside (corner, NULL, here);
    else
      leave_gap (before->status, here);
    if (here->status == POSE_OK)
      n_assembled++;
    if (step < 0 && i == 0)
      break;
    earlier = before;
    before = here;
  }
  return n_assembled;
}

/* The station whose travel is nearest to that of the start position. */
static size_t
nearest_station (const Corner *corner, SweepRange range, double rack)
{
  Pose start;
  size_t nearest = 0;

  if (corner->start_status != POSE_OK ||
      pose_at_arm_angle (corner, corner->start_angle, rack, &start) != POSE_OK)
    return 0;
  for (size_t i = 1; i < range.n_stations; i++)
    if (fabs (sweep_place (range, i) - start.travel) <
        fabs (sweep_place (range, nearest) - start.travel))
      nearest = i;
  return nearest;
}

size_t
sweep_travel (const Corner *corner, SweepRange range, double rack, Station *stations)
{
  const size_t middle = nearest_station (corner, range, rack);

  for (size_t i = 0; i < range.n_stations; i++) {
    stations[i].travel = sweep_place (range, i);
    stations[i].rack = rack;
  }

  size_t n = walk (corner, stations, middle, 1, range.n_stations);
  if (middle > 0) {
    if (stations[middle].status == POSE_OK)
      n--;
    n += walk (corner, stations, middle, -1, range.n_stations);
  }
  return n;
}

size_t
sweep_rack (const Corner *corner, double travel, SweepRange racks, Station *stations)
{
  Pose held;
  const PoseStatus start = pose_at_travel (corner, travel, 0.0, NULL, &held);
  size_t n = 0;

  for (size_t i = 0; i < racks.n_stations; i++) {
    Station *station = &stations[i];

    station->travel = travel;
    station->rack = sweep_place (racks, i);
    const PoseStatus status =
        start != POSE_OK
            ? start
            : pose_at_arm_angle (corner, held.arm_angle, station->rack, &station->pose);
    if (settle (corner, status, station) == POSE_OK)
      n++;
  }
  return n;
}
