/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a spring law is made of, for the files that look for its corners and turn its
 * adjusters. Lengths mm, forces N. */

#pragma once

#include "kernel/spring.h"
#include "model/spring/spring-curve.h"
#include "model/spring/spring-law.h"

struct SpringLaw {
  SpringPlaces places;
  double unsprung_weight;

  double bar_rate, clamp_angle; /* N·mm/rad, rad */
  gsize n_sections;
  BarSection sections[BAR_SECTIONS_MOST];

  gboolean has_coil;
  double coil_rate; /* not read where there is a table */
  SpringCurve coil_table;
  CoilSize coil_size; /* wire 0: not given */
  double coil_solid;  /* length; 0: not known */
  /* A series helper squashed on top of the coil; "total" is of both. */
  gboolean has_series;
  double total_free;   /* length of both, unloaded */
  double close_squash; /* total, where the series helper has closed */
  double bound_squash; /* total, where the coils touch; INFINITY: not known */

  gboolean has_parallel;
  double helper_rate, helper_free;
  double helper_stroke; /* until it is closed; INFINITY: not known */
  double helper_seats;  /* what its seats take of the strut's length */

  gboolean has_stop;
  SpringCurve stop_table;
  double stop_length; /* of the strut, where it touches */

  double droop_stop; /* wheel travel, below 0; −INFINITY: none */
  double gas_force, link_rate;
  SpringCurve damper_table;
};

/* The coil by itself. */
double spring_law_coil_force (const SpringLaw *law, double squash, double *rate);

typedef struct {
  double force, rate; /* of coil and series helper together */
  double coil_squash, helper_squash;
} CoilShare;

CoilShare spring_law_share (const SpringLaw *law, double total_squash);
/* Fills in what follows from free and solid lengths. */
void spring_law_set_strokes (SpringLaw *law, double coil_free);

/* What holds the wheel without the damper's gas. */
gboolean spring_law_holds (const SpringLaw *law);

/* As spring_law_station (), but where the strut can go no further the springs go on by
 * their laws. */
void spring_law_carry (const SpringLaw *law,
                       const Corner *corner,
                       const Pose *pose,
                       SpringStation *station);
/* −1 past the droop stop, 1 past a closed spring, else 0. */
int spring_law_blocks (const SpringLaw *law, double travel, const SpringStation *station);
