/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/load-case.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

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
as_set_sentence (const char *name, const JointLoads *as_set)
{
  const double wheel = as_set->load.contact.z;
  g_autofree char *tower = unit_text (UNIT_FORCE, fabs (as_set->load_on_tower), 0);
  g_autofree char *load = unit_text (UNIT_FORCE, wheel, 0);

  if (as_set->load_on_tower < 0.0)
    return g_strdup_printf (_ ("%s: the strut pulls the tower down with %s."), name,
                            tower);
  if (wheel <= 0.0)
    return g_strdup_printf (_ ("%s: the strut pushes the tower up with %s."), name,
                            tower);
  if (as_set->load_on_tower > wheel)
    return g_strdup_printf (_ ("%s: %s stand on the tower, more than this corner's %s."),
                            name, tower, load);
  return g_strdup_printf (_ ("%s: %s of this corner's %s stand on the tower."), name,
                          tower, load);
}

/* Of coil or bar by itself, which has neither the damper's gas nor a stop beside it. */
static char *
alone_sentence (const JointLoads *alone, SpringMode by)
{
  const gboolean pulls = alone->load_on_tower < 0.0;
  g_autofree char *tower = unit_text (UNIT_FORCE, fabs (alone->load_on_tower), 0);
  const char *coil =
      pulls
          ? _ ("By a coil on the strut alone, without gas force and stops, the tower would be pulled down with %s.")
          : _ ("By a coil on the strut alone, without gas force and stops, %s would stand on the tower.");
  const char *bar =
      pulls
          ? _ ("By a torsion bar alone, without gas force and stops, the tower would be pulled down with %s.")
          : _ ("By a torsion bar alone, without gas force and stops, %s would stand on the tower.");

  return g_strdup_printf (by == SPRING_COIL_ONLY ? coil : bar, tower);
}

static char *
compared_sentence (const char *name, const Asked *asked, const JointLoads *as_set)
{
  const JointLoads coil = loads_by (asked, SPRING_COIL_ONLY),
                   bar = loads_by (asked, SPRING_BAR_ONLY);
  g_autofree char *load = unit_text (UNIT_FORCE, coil.load.contact.z, 0);

  if (!coil.is_solved || !bar.is_solved)
    return g_strdup_printf (
        _ ("%s: what stands on the tower cannot be said: the corner cannot be assembled where it stands."),
        name);
  g_autofree char *now =
      as_set->is_solved ? as_set_sentence (name, as_set)
                        : g_strdup_printf (_ ("%s: this corner carries %s."), name, load);
  g_autofree char *with_coil = alone_sentence (&coil, SPRING_COIL_ONLY);
  g_autofree char *with_bar = alone_sentence (&bar, SPRING_BAR_ONLY);

  return g_strdup_printf ("%s %s %s", now, with_coil, with_bar);
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
  const SpringMode other = by == SPRING_COIL_ONLY ? SPRING_BAR_ONLY : SPRING_COIL_ONLY;
  const JointLoads alone = loads_by (asked, other);
  g_autofree char *now = as_set_sentence (name, as_set);

  if (!alone.is_solved)
    return g_steal_pointer (&now);
  g_autofree char *then = alone_sentence (&alone, other);
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
