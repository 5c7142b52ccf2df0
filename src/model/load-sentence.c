/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load-case.h"
#include "model/unit.h"

#include <glib/gi18n-lib.h>

static const CarLoadCase standing = { .vertical = 1.0 };

/* On the tower, with the corner standing; NULL where that is not solved. */
static char *
tower_text (const SpringStudy *study, guint setup, SpringMode mode)
{
  JointLoads loads;

  joint_loads_of_case (study, setup, &standing, NAN, mode, &loads);
  return loads.is_solved ? unit_text (UNIT_FORCE, loads.load_on_tower, 0) : NULL;
}

char *
joint_loads_sentence (const SpringStudy *study, guint setup)
{
  g_autofree char *coil = tower_text (study, setup, SPRING_COIL_ONLY);
  g_autofree char *bar = tower_text (study, setup, SPRING_BAR_ONLY);
  g_autofree char *as_set = tower_text (study, setup, SPRING_AS_SET);
  g_autofree char *weight = unit_text (UNIT_FORCE, study->corner_weight, 0);

  if (coil == NULL || bar == NULL)
    return g_strdup (_ (
        "What stands on the tower cannot be said: the corner cannot be assembled where it stands."));
  if (as_set == NULL)
    return g_strdup_printf (
        _ ("With the coil, %s of this corner's %s stand on the tower; with the bar, %s."),
        coil, weight, bar);
  return g_strdup_printf (
      _ ("With the coil, %s of this corner's %s stand on the tower; with the bar, %s; as set, %s."),
      coil, weight, bar, as_set);
}
