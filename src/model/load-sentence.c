/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load-case.h"
#include "model/unit.h"

#include <glib/gi18n-lib.h>

static const CarLoadCase standing = { .vertical = 1.0 };

typedef struct {
  const SpringStudy *study;
  guint setup;
  const CarLoadCase *load_case;
} Asked;

/* On the tower under the case; NULL where that is not solved. */
static char *
tower_text (const Asked *asked, SpringMode mode, double *on_wheel)
{
  JointLoads loads;

  joint_loads_of_case (asked->study, asked->setup, asked->load_case, NAN, mode, &loads);
  if (!loads.is_solved)
    return NULL;
  *on_wheel = loads.load.contact.z;
  return unit_text (UNIT_FORCE, loads.load_on_tower, 0);
}

char *
joint_loads_sentence (const SpringStudy *study, guint setup, const CarLoadCase *load_case)
{
  const Asked asked = { study, setup, load_case != NULL ? load_case : &standing };
  const char *name =
      load_case != NULL ? car_load_case_title (load_case->name) : _ ("Standing");
  double on_wheel = NAN;
  g_autofree char *coil = tower_text (&asked, SPRING_COIL_ONLY, &on_wheel);
  g_autofree char *bar = tower_text (&asked, SPRING_BAR_ONLY, &on_wheel);
  g_autofree char *as_set = tower_text (&asked, SPRING_AS_SET, &on_wheel);
  g_autofree char *load = unit_text (UNIT_FORCE, on_wheel, 0);

  /* Translators: the first %s of each of these is the name of a case of load. */
  if (coil == NULL || bar == NULL)
    return g_strdup_printf (
        _ ("%s: what stands on the tower cannot be said: the corner cannot be assembled where it stands."),
        name);
  if (as_set == NULL)
    return g_strdup_printf (
        _ ("%s: with the coil, %s of this corner's %s stand on the tower; with the bar, %s."),
        name, coil, load, bar);
  return g_strdup_printf (
      _ ("%s: with the coil, %s of this corner's %s stand on the tower; with the bar, %s; as set, %s."),
      name, coil, load, bar, as_set);
}
