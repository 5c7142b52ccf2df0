/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/rod-study.h"

#include <math.h>

RodStudy *
rod_study_new (void)
{
  return g_new0 (RodStudy, 1);
}

void
rod_study_free (RodStudy *self)
{
  if (self == NULL)
    return;
  g_free (self->setups);
  g_free (self);
}

double
rod_station_g (guint station)
{
  return ROD_MOST_G * (2.0 * station / (ROD_STATIONS - 1.0) - 1.0);
}

static RodStation
no_station (double lateral_g)
{
  const RodBending none = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };

  return (RodStation){ lateral_g, NAN, { NAN, NAN }, none, NAN, NAN, NAN };
}

/* By the springs where there are any, else as if a coil carried it. */
static SpringMode
mode_of (const SpringCorner *corner)
{
  return corner->stands == STANDS_NOT_GIVEN ? SPRING_COIL_ONLY : SPRING_AS_SET;
}

static RodStation
bend (const SpringStudy *springs, guint setup, const Rod *rod, const JointLoads *loads)
{
  const SpringCorner *corner = &springs->setups[setup];
  const Corner *linkage = &corner->corner->corner;
  RodStation station = no_station (NAN);
  SpringPaths paths;
  BentRod bent;

  station.side_force = vec3_length (loads->forces.side);
  station.reach =
      rod_reach (rod, vec3_distance (loads->pose.strut_foot, linkage->upper_mount));
  if (!bent_rod_solve (linkage, &loads->pose, rod, &loads->load, &loads->hold, &bent))
    return station;
  station.bending = bent.bending;
  station.camber_cost = bent.camber_change;
  station.toe_cost = bent.toe_change;
  const SpringPlaces places = car_spring_places (springs->car, corner->springs);
  if (spring_paths (linkage, &loads->pose, &places, &paths))
    station.breakaway = bent.bending.breakaway * paths.strut.ratio;
  return station;
}

RodStation
rod_station_of (const SpringStudy *springs, guint setup, const JointLoads *loads)
{
  const CarRod given = car_setup_rod (springs->car, setup);
  const Rod rod = car_rod (springs->car, &given);

  return given.diameter_mm > 0.0 && loads->is_solved ? bend (springs, setup, &rod, loads)
                                                     : no_station (NAN);
}

static RodStation
solve_station (const SpringStudy *springs, guint setup, const Rod *rod, double lateral_g)
{
  const CarLoadCase load_case = { .lateral_g = lateral_g, .vertical = 1.0 };
  RodStation station = no_station (lateral_g);
  JointLoads loads;

  joint_loads_of_case (springs, setup, &load_case, NAN, mode_of (&springs->setups[setup]),
                       &loads);
  if (loads.is_solved)
    station = bend (springs, setup, rod, &loads);
  station.lateral_g = lateral_g;
  return station;
}

static void
solve_corner (const SpringStudy *springs, guint setup, RodCorner *out)
{
  const CarRod rod = car_setup_rod (springs->car, setup);
  gboolean is_solved;

  out->rod = car_rod (springs->car, &rod);
  out->is_given = rod.diameter_mm > 0.0;
  is_solved = out->is_given && springs->study->setups[setup].is_shown;
  for (guint i = 0; i < ROD_STATIONS; i++)
    out->stations[i] = is_solved
                           ? solve_station (springs, setup, &out->rod, rod_station_g (i))
                           : no_station (rod_station_g (i));
  out->standing = out->stations[ROD_STATIONS / 2];
  out->fits = isfinite (out->standing.bending.guide);
}

void
rod_study_solve (RodStudy *self, const SpringStudy *springs)
{
  if (springs->n_setups > self->n_allocated) {
    self->setups = g_renew (RodCorner, self->setups, springs->n_setups);
    self->n_allocated = springs->n_setups;
  }
  self->n_setups = springs->n_setups;
  for (guint i = 0; i < springs->n_setups; i++)
    solve_corner (springs, i, &self->setups[i]);
}
