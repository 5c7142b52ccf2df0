/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "does a thicker rod matter?": what each setup's damper rod does under side
 * force, against lateral acceleration with the wheel outside and inside. Straight from
 * the cases of load-case.h; a rod that is bent moves the mount, and camber and toe with
 * it. */

#pragma once

#include "model/load/load-case.h"

#define ROD_STATIONS 25 /* odd: one stands at 0 g */
#define ROD_MOST_G 1.2  /* either way: past what a road tyre holds */

typedef struct {
  double lateral_g;  /* this wheel outside positive */
  double side_force; /* N, on the rod at the mount */
  RodReach reach;    /* mm */
  RodBending bending;
  double camber_cost, toe_cost; /* rad, against a rod that does not bend */
  double
      breakaway; /* N of wheel load until the strut slides, by friction at its guides */
} RodStation;

typedef struct {
  gboolean is_given; /* the rod's diameter and what guides it */
  gboolean fits;     /* there is room between guide and piston at standing */
  Rod rod;
  RodStation stations[ROD_STATIONS]; /* from −ROD_MOST_G to ROD_MOST_G */
  RodStation standing;               /* at 0 g */
} RodCorner;

typedef struct {
  RodCorner *setups;
  guint n_setups, n_allocated;
} RodStudy;

RodStudy *rod_study_new (void);
void rod_study_free (RodStudy *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RodStudy, rod_study_free)

/* Of setups that are not shown nothing is solved. */
void rod_study_solve (RodStudy *self, const SpringStudy *springs);
/* The rod of @setup under loads that are solved; all NAN where it is not given. */
RodStation
rod_station_of (const SpringStudy *springs, guint setup, const JointLoads *loads);

double rod_station_g (guint station);
