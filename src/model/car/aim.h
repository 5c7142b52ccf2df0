/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an alignment can aim for: names, units, and how much of each counts as one. */

#pragma once

#include <glib.h>

/* What can be aimed for. A change counts from the baseline where it stands. */
typedef enum {
  AIM_CAMBER,
  AIM_CASTER,
  AIM_SAI,
  AIM_SCRUB_RADIUS,
  AIM_TRAIL,
  AIM_ROLL_CENTRE_HEIGHT,
  AIM_TOE_CHANGE, /* of CHOICE_TOE_BEFORE_RESET */
  AIM_SCRUB_CHANGE,
  AIM_BUMP_STEER, /* the most that toe leaves the standing toe over the travel used */
  N_AIMS
} Aim;

typedef struct {
  const char *key;  /* in files and on the command line: "camber", "toe_change" */
  const char *name; /* translated */
  const char *noun; /* the same within a sentence: "camber" */
  const char *unit; /* "°" or "mm" */
  double unit_size; /* what counts as one, in edge units */
  int decimals;
  double furthest; /* what can be aimed for, either way, edge units: beyond is no car */
} AimInfo;
AimInfo aim_info (Aim aim);
gboolean aim_from_key (const char *key, Aim *aim);
