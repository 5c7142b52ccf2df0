/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A made-up car with a MacPherson corner of general geometry, for the drawing tests. */

#pragma once

#include "model/study/study.h"

static inline Car *
example_car (void)
{
  static const Vec3 points[N_POINTS] = {
    [POINT_ARM_FRONT_PIVOT] = { 10, 380, 200 },
    [POINT_ARM_REAR_PIVOT] = { -300, 395, 210 },
    [POINT_BALL_JOINT] = { 5, 700, 185 },
    [POINT_UPPER_MOUNT] = { -35, 575, 835 },
    [POINT_STRUT_FOOT] = { -12, 640, 430 },
    [POINT_TIE_ROD_OUTER] = { -130, 690, 240 },
    [POINT_TIE_ROD_INNER] = { -145, 345, 251 },
    [POINT_WHEEL_CENTRE] = { 0, 740, 300 },
  };
  Car *car = car_new ();

  g_free (car->name);
  car->name = g_strdup ("Fieldfare 1.6 rally");
  for (int i = 0; i < N_POINTS; i++)
    car->points[i] = points[i];
  car->camber_deg = -0.5;
  car->toe_in_deg = 0.1;
  car->loaded_radius_mm = 300;
  return car;
}

static inline CarSetup
example_setup (double inboard, double rearward, double up)
{
  return (CarSetup){ .name = (char *) "15 in, 10 back",
                     .mount = { inboard, rearward, up } };
}

/* Setups 1 … @n − 1 beside the first: what a shop would try one after the other. */
static inline void
example_add_setups (Car *car, unsigned n)
{
  static const struct {
    const char *name;
    MountOffset mount;
    double lowering;
    ToeMode toe;
    double ball_joint_spacer, pivot_raise;
  } all[] = {
    { "As measured", { 0, 0, 0 }, 0, TOE_AS_MOVED, 0, 0 },
    { "15 in, 10 back", { 15, 10, 0 }, 0, TOE_AS_MOVED, 0, 0 },
    { "Lowered 25", { 0, 0, 0 }, 25, TOE_AS_MOVED, 0, 0 },
    { "Lowered 25, toe reset", { 15, 10, 0 }, 25, TOE_RESET, 0, 0 },
    { "Spacer 20", { 15, 10, 0 }, 25, TOE_RESET, 20, 0 },
    { "Arm raised 12", { 12, -6, 0 }, 35, TOE_RESET, 0, 12 },
    { "10 out", { -10, 0, 0 }, -10, TOE_AS_MOVED, 0, 0 },
    { "8 forward", { 0, -8, 0 }, 0, TOE_AS_MOVED, 0, 0 },
    { "20 in", { 20, 0, 0 }, 10, TOE_AS_MOVED, 0, 0 },
  };

  for (unsigned i = 1; i < MIN (n, G_N_ELEMENTS (all)); i++) {
    const CarSetup setup = {
      .name = g_strdup (all[i].name),
      .mount = all[i].mount,
      .lowering_mm = all[i].lowering,
      .toe = all[i].toe,
      .corrections = { .ball_joint_spacer_mm = all[i].ball_joint_spacer,
                       .front_pivot_raise_mm = all[i].pivot_raise,
                       .rear_pivot_raise_mm = all[i].pivot_raise },
    };
    g_array_append_val (car->setups, setup);
  }
}
