/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The made-up car of example-study.h on springs: each setup another kind of set. */

#pragma once

#include "example-study.h"
#include "model/spring/spring-study.h"

/* The first, and the car's own: a torsion bar with stop, gas and anti-roll bar. */
enum {
  SPRUNG_BAR,
  SPRUNG_COIL,    /* a coil with a tender spring on top of it, no bar */
  SPRUNG_BOTH,    /* the bar, slackened, and a helper beside it */
  SPRUNG_SOFT,    /* a bar that cannot hold the car up */
  SPRUNG_UNWOUND, /* a coil does the work and pulls the bar the other way */
  N_SPRUNG
};

static inline SpringTable
sprung_table (gsize n, const double (*points)[2])
{
  SpringTable table = { .n = n };

  for (gsize i = 0; i < n; i++) {
    table.x[i] = points[i][0];
    table.y[i] = points[i][1];
  }
  return table;
}

static inline CarSprings
sprung_bar_set (double clamp_angle)
{
  static const double stop[][2] = { { 0, 0 }, { 10, 350 }, { 20, 1300 }, { 30, 3600 } };
  static const double damper[][2] = {
    { -0.5, -1100 }, { -0.1, -420 }, { 0, 0 }, { 0.1, 190 }, { 0.5, 520 }
  };
  CarSprings s = car_springs_none ();

  s.bar.is_there = TRUE;
  s.bar.n_sections = 1;
  s.bar.sections[0].outer_mm = 22.0;
  s.bar.sections[0].length_mm = 900.0;
  s.bar.clamp_angle_deg = clamp_angle;
  s.bump_stop.is_there = TRUE;
  s.bump_stop.gap_mm = 38.0;
  s.bump_stop.table = sprung_table (4, stop);
  s.anti_roll_bar.is_there = TRUE;
  s.anti_roll_bar.rate_n_per_mm = 18.0;
  s.damper.gas_force_n = 160.0;
  s.damper.table = sprung_table (5, damper);
  return s;
}

static inline CarSprings
sprung_coil_set (double perch)
{
  CarSprings s = sprung_bar_set (0.0);

  s.bar = car_springs_none ().bar;
  s.coil.is_there = TRUE;
  s.coil.rate_n_per_mm = 24.0;
  s.coil.free_length_mm = 230.0;
  s.coil.solid_length_mm = 98.0;
  s.coil.perch_mm = perch;
  s.coil.upper_drop_mm = 60.0;
  s.helper.is_there = TRUE;
  s.helper.place = HELPER_IN_SERIES;
  s.helper.rate_n_per_mm = 9.0;
  s.helper.free_length_mm = 60.0;
  s.helper.solid_length_mm = 18.0;
  return s;
}

static inline CarSprings
sprung_set (guint kind)
{
  CarSprings s = sprung_bar_set (kind == SPRUNG_SOFT ? -8.0 : 20.5);

  if (kind == SPRUNG_COIL)
    return sprung_coil_set (182.0);
  if (kind == SPRUNG_UNWOUND) {
    s = sprung_coil_set (181.0);
    s.bar = sprung_bar_set (-3.0).bar;
  }
  if (kind == SPRUNG_SOFT)
    s.bump_stop = car_springs_none ().bump_stop;
  if (kind == SPRUNG_BOTH) {
    s.bar.clamp_angle_deg = 16.0;
    s.helper.is_there = TRUE;
    s.helper.place = HELPER_IN_PARALLEL;
    s.helper.rate_n_per_mm = 10.0;
    s.helper.free_length_mm = 260.0;
    s.helper.solid_length_mm = 60.0;
    s.helper.perch_mm = 160.0;
    s.helper.upper_drop_mm = 60.0;
  }
  return s;
}

static inline Car *
sprung_car (void)
{
  static const char *const names[] = { "As built, bar", "Coil, tender", "Bar and helper",
                                       "Soft bar", "Coil against the bar" };
  Car *car = example_car ();

  g_free (car_setup (car, 0)->name);
  car_setup (car, 0)->name = g_strdup (names[0]);
  car->springs = sprung_set (SPRUNG_BAR);
  for (guint i = 1; i < N_SPRUNG; i++) {
    const CarSetup setup = { .name = g_strdup (names[i]),
                             .lowering_mm = i == SPRUNG_COIL ? 15.0 : 0.0,
                             .has_springs = TRUE,
                             .springs = sprung_set (i) };
    g_array_append_val (car->setups, setup);
  }
  return car;
}
