/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The springs of one set at work: each one's force and rate at its own place, and what
 * they carry at the wheel.
 *
 * Tables (bump stop, progressive coil, damper) become monotone splines by Steffen's
 * method in the GNU Scientific Library; past their ends they go on straight. */

#pragma once

#include "kernel/spring-path.h"
#include "model/car/car.h"

/* What carries the wheel, in the order of the stack. */
typedef enum {
  SPRING_UNSPRUNG, /* weight of the wheel and what moves with it: straight on the tyre */
  SPRING_BAR,
  SPRING_COIL,   /* with the helper where that stands on top of it */
  SPRING_HELPER, /* where it is in parallel */
  SPRING_BUMP_STOP,
  SPRING_GAS, /* the damper's */
  N_SPRING_ELEMENTS
} SpringElement;

const char *spring_element_name (SpringElement element); /* translated: "Torsion bar" */
const char *spring_element_key (SpringElement element);  /* "torsion_bar" */

/* At one wheel travel; N, N/mm at the contact unless it says otherwise. */
typedef struct {
  double load, rate; /* of all; NAN where the corner cannot be assembled */
  double element_load[N_SPRING_ELEMENTS], element_rate[N_SPRING_ELEMENTS];
  double geometric_rate; /* the part of rate that is force times change of ratio */
  double coil_length, coil_force; /* at the coil itself, mm and N */
  double helper_length, helper_force;
  double helper_rate_n_per_mm;              /* 0 once it is closed or slack */
  double bar_twist, bar_torque, bar_stress; /* rad, N·mm, N/mm² */
  double coil_stress;                       /* N/mm²; NAN without wire and coils */
  double stop_squash, stop_force;           /* mm, 0 clear of it; N along the strut */
  double strut_force; /* along the strut's axis besides the coil's: stop and gas, N */
  double link_ratio, link_rise; /* of the anti-roll bar's link: 1 and mm */
  SpringPaths paths;
} SpringStation;

typedef struct SpringLaw SpringLaw;
/* Never NULL: @springs is sound as a car file's are. */
SpringLaw *spring_law_new (const Car *car, const CarSprings *springs);
void spring_law_free (SpringLaw *law);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpringLaw, spring_law_free)

/* @pose NULL, or paths without an answer: all NAN. */
void spring_law_station (const SpringLaw *law,
                         const Corner *corner,
                         const Pose *pose,
                         SpringStation *station);

/* Rates at the spring itself; 0 where there is none. */
double spring_law_bar_rate (const SpringLaw *law);                 /* N·mm/rad */
double spring_law_coil_rate (const SpringLaw *law, double squash); /* N/mm */
double spring_law_coil_solid (const SpringLaw *law); /* mm; 0 when not known */
double spring_law_link_rate (const SpringLaw *law);  /* N/mm of one end, the other held */
/* N at the damper's own speed, m/s, bump positive. */
double spring_law_damping (const SpringLaw *law, double speed);
/* Slope there, N·s/m. */
double spring_law_damping_rate (const SpringLaw *law, double speed);
