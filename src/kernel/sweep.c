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

/* Walks from station @from, the nearest to the start position, towards @step. The start
 * may lie between the first two, so each of them may be reached without the other; what
 * lies past a gap after that is out of reach. */
static size_t
walk (const Corner *corner, Station *stations, size_t from, int step, size_t n)
{
  size_t n_assembled = 0;

  for (size_t i = from; i < n; i += (size_t) step) {
    const Station *before = i == from ? NULL : &stations[i - (size_t) step];
    const bool is_second = i == from + (size_t) step;

    if (before != NULL && before->status == POSE_OK)
      solve_beside (corner, &before->pose, &stations[i]);
    else if (before == NULL || is_second)
      solve_beside (corner, NULL, &stations[i]);
    else
      leave_gap (before->status, &stations[i]);
    if (stations[i].status == POSE_OK)
      n_assembled++;
    if (step < 0 && i == 0)
      break;
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
