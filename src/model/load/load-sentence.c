/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/load-case.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>

static const CarLoadCase standing = { .vertical = 1.0 };

typedef struct {
  const SpringStudy *study;
  guint setup;
  const CarLoadCase *load_case;
} Asked;

/* Where springs by themselves are compared: nothing moves the corner from where it
 * stands, so that stops and anti-roll bar have no part in it. */
static gboolean
is_standing (const CarLoadCase *c)
{
  return c->vertical == 1.0 && c->lateral_g == 0.0 && c->braking_g == 0.0 &&
         c->rearward == 0.0;
}

static JointLoads
loads_by (const Asked *asked, SpringMode mode)
{
  JointLoads loads;

  joint_loads_of_case (asked->study, asked->setup, asked->load_case, NAN, mode, &loads);
  return loads;
}

static char *
tower_text (const JointLoads *loads)
{
  return unit_text (UNIT_FORCE, loads->load_on_tower, 0);
}

static char *
as_set_sentence (const char *name, const JointLoads *as_set)
{
  const double wheel = as_set->load.contact.z;
  g_autofree char *tower = tower_text (as_set);
  g_autofree char *pull = unit_text (UNIT_FORCE, -as_set->load_on_tower, 0);
  g_autofree char *load = unit_text (UNIT_FORCE, wheel, 0);

  if (as_set->load_on_tower < 0.0)
    return g_strdup_printf (_ ("%s: the strut pulls the tower down with %s."), name,
                            pull);
  if (wheel <= 0.0)
    return g_strdup_printf (_ ("%s: the strut pushes the tower up with %s."), name,
                            tower);
  return g_strdup_printf (_ ("%s: %s of this corner's %s stand on the tower."), name,
                          tower, load);
}

static char *
compared_sentence (const char *name, const Asked *asked, const JointLoads *as_set)
{
  const JointLoads coil = loads_by (asked, SPRING_COIL_ONLY),
                   bar = loads_by (asked, SPRING_BAR_ONLY);
  g_autofree char *with_coil = tower_text (&coil), *with_bar = tower_text (&bar);
  g_autofree char *load = unit_text (UNIT_FORCE, coil.load.contact.z, 0);

  if (!coil.is_solved || !bar.is_solved)
    return g_strdup_printf (
        _ ("%s: what stands on the tower cannot be said: the corner cannot be assembled where it stands."),
        name);
  if (!as_set->is_solved)
    return g_strdup_printf (
        _ ("%s: with the coil, %s of this corner's %s stand on the tower; with the bar, %s."),
        name, with_coil, load, with_bar);

  g_autofree char *with_both = tower_text (as_set);
  return g_strdup_printf (
      _ ("%s: with the coil, %s of this corner's %s stand on the tower; with the bar, %s; as set, %s."),
      name, with_coil, load, with_bar, with_both);
}

/* What carries the corner by itself, with no helper beside it: SPRING_AS_SET where more
 * than one spring does, or none. */
static SpringMode
carried_by (const Asked *asked)
{
  const CarSprings *s = asked->study->setups[asked->setup].springs;

  if (s->bar.is_there == s->coil.is_there)
    return SPRING_AS_SET;
  if (s->coil.is_there)
    return SPRING_COIL_ONLY;
  return s->helper.is_there ? SPRING_AS_SET : SPRING_BAR_ONLY;
}

/* What stands, and what would with the other spring instead of the one that is there. */
static char *
other_spring_sentence (const char *name,
                       const Asked *asked,
                       const JointLoads *as_set,
                       SpringMode by)
{
  const JointLoads other =
      loads_by (asked, by == SPRING_COIL_ONLY ? SPRING_BAR_ONLY : SPRING_COIL_ONLY);
  g_autofree char *now = as_set_sentence (name, as_set);
  g_autofree char *tower = tower_text (&other);
  const char *would =
      by == SPRING_COIL_ONLY
          ? _ ("Were the corner carried by a torsion bar alone, %s would stand on it.")
          : _ ("Were the corner carried by a coil on the strut alone, %s would stand on "
               "it.");

  if (!other.is_solved)
    return g_steal_pointer (&now);
  g_autofree char *then = g_strdup_printf (would, tower);
  return g_strdup_printf ("%s %s", now, then);
}

/* Translators: the first %s of each of these is the name of a case of load. */
char *
joint_loads_sentence (const SpringStudy *study, guint setup, const CarLoadCase *load_case)
{
  const Asked asked = { study, setup, load_case != NULL ? load_case : &standing };
  const char *name =
      load_case != NULL ? car_load_case_title (load_case->name) : _ ("Standing");
  const JointLoads as_set = loads_by (&asked, SPRING_AS_SET);

  const SpringMode by = carried_by (&asked);

  if (as_set.is_solved && !is_standing (asked.load_case))
    return as_set_sentence (name, &as_set);
  return as_set.is_solved && by != SPRING_AS_SET
             ? other_spring_sentence (name, &asked, &as_set, by)
             : compared_sentence (name, &asked, &as_set);
}
