/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/spring/spring-size.h"
#include "model/spring/spring-figure.h"
#include "model/words/number-text.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Of what follows from sizes, and of sizes in other units than they were given in. */
#define DECIMALS 2
#define SQUASHED 1.0 /* mm: a straight coil has its rate anywhere but slack */

typedef struct {
  GPtrArray *sizes;
  const char *part;
} List;

static void
free_size (gpointer data)
{
  SpringSize *size = data;

  g_free (size->name);
  g_free (size->text);
  g_free (size);
}

/* Takes both texts. */
static void
add (const List *list, char *name, char *text, gboolean is_long)
{
  SpringSize *size = g_new (SpringSize, 1);

  *size = (SpringSize){ list->part, name, text, is_long };
  g_ptr_array_add (list->sizes, size);
}

/* As it was given, where that is the unit shown. */
static char *
given_text (UnitKind kind, double value)
{
  if (unit_shown (kind, value) != value)
    return unit_text (kind, value, DECIMALS);

  g_autofree char *number = plain_number_text (value);
  return g_strdup_printf (unit_is_close (kind) ? "%s%s" : "%s %s", number,
                          unit_symbol (kind));
}

static void
add_given (const List *list, const char *name, UnitKind kind, double value)
{
  add (list, g_strdup (name), given_text (kind, value), FALSE);
}

static void
add_if_given (const List *list, const char *name, UnitKind kind, double value)
{
  if (value != 0.0)
    add_given (list, name, kind, value);
}

static void
add_number (const List *list, const char *name, double value)
{
  add (list, g_strdup (name), plain_number_text (value), FALSE);
}

/* @given 0: what sizes make, rounded. */
static void
add_rate (const List *list, double given, double rate)
{
  if (given > 0.0)
    add_given (list, _ ("Rate"), UNIT_RATE, given);
  else if (rate > 0.0)
    add (list, g_strdup (_ ("Rate")), unit_text (UNIT_RATE, rate, DECIMALS), FALSE);
}

static void
add_modulus (const List *list, double modulus)
{
  if (modulus > 0.0)
    add_given (list, _ ("Shear modulus"), UNIT_MODULUS, modulus);
}

/* As given, or rounded where it is shown in another unit. */
static char *
law_number (UnitKind kind, double value)
{
  const double shown = unit_shown (kind, value);

  return shown == value ? plain_number_text (value)
                        : number_text (shown, unit_decimals (kind, DECIMALS));
}

/* "0 → 0; 8 → 190; …" of force over @kind. */
static void
add_law (const List *list, UnitKind kind, const SpringTable *table)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (table->n == 0)
    return;
  for (gsize i = 0; i < table->n; i++) {
    g_autofree char *x = law_number (kind, table->x[i]);
    g_autofree char *y = law_number (UNIT_FORCE, table->y[i]);

    g_string_append_printf (text, "%s%s\u00a0→\u00a0%s", i > 0 ? "; " : "", x, y);
  }
  add (list,
       g_strdup_printf (_ ("Law, %s → %s"), unit_symbol (kind), unit_symbol (UNIT_FORCE)),
       g_strdup (text->str), TRUE);
}

static void
add_bore (const List *list, double bore)
{
  if (bore > 0.0)
    add_given (list, _ ("Bore"), UNIT_LENGTH, bore);
  else
    add (list, g_strdup (_ ("Bore")), g_strdup (_ ("solid")), FALSE);
}

static void
add_section (const List *list, const CarTorsionBar *bar, gsize i)
{
  g_autofree char *outer = given_text (UNIT_LENGTH, bar->sections[i].outer_mm);
  g_autofree char *inner = given_text (UNIT_LENGTH, bar->sections[i].inner_mm);
  g_autofree char *length = given_text (UNIT_LENGTH, bar->sections[i].length_mm);
  char *text = bar->sections[i].inner_mm > 0.0
                   /* Translators: a length of a bar: its diameters and how long it is. */
                   ? g_strdup_printf (_ ("⌀ %s, bore %s, over %s"), outer, inner, length)
                   : g_strdup_printf (_ ("⌀ %s, solid, over %s"), outer, length);

  add (list, g_strdup_printf (_ ("Section %u"), (unsigned) i + 1), text, TRUE);
}

static void
add_bar (List *list, const CarTorsionBar *bar, const SpringLaw *law)
{
  double active = 0.0;

  list->part = _ ("Torsion bar");
  if (!bar->is_there)
    return;
  for (gsize i = 0; bar->rate_nm_per_deg == 0.0 && i < bar->n_sections; i++) {
    add_section (list, bar, i);
    active += bar->sections[i].length_mm;
  }
  add_if_given (list, _ ("Active length"), UNIT_LENGTH, active);
  if (active > 0.0)
    add_modulus (list, bar->shear_modulus_gpa);
  add (list, g_strdup (_ ("Rate")),
       unit_text (UNIT_TWIST_RATE, spring_law_bar_rate (law) * G_PI / 180.0 / 1000.0,
                  DECIMALS),
       FALSE);
  g_autofree char *clamp = given_text (UNIT_ANGLE, bar->clamp_angle_deg);
  add (list, g_strdup (_ ("Clamp angle")), g_strdup_printf (_ ("%s wound up"), clamp),
       FALSE);
  add_if_given (list, _ ("Adjuster lever"), UNIT_LENGTH, bar->lever_mm);
  if (bar->n_splines > 0)
    add_number (list, _ ("Splines"), (double) bar->n_splines);
}

static void
add_above_foot (const List *list, const char *name, double value)
{
  g_autofree char *length = given_text (UNIT_LENGTH, value);

  add (list, g_strdup (name), g_strdup_printf (_ ("%s above the strut foot"), length),
       FALSE);
}

static void
add_below_mount (const List *list, const char *name, double value)
{
  g_autofree char *length = given_text (UNIT_LENGTH, value);

  add (list, g_strdup (name), g_strdup_printf (_ ("%s below the mount"), length), FALSE);
}

static void
add_coil_makings (const List *list, const CarCoil *coil, const SpringLaw *law)
{
  if (coil->table.n > 0)
    add_law (list, UNIT_LENGTH, &coil->table);
  else
    add_rate (list, coil->rate_n_per_mm, spring_law_coil_rate (law, SQUASHED));
  add_if_given (list, _ ("Wire"), UNIT_LENGTH, coil->wire_mm);
  add_if_given (list, _ ("Mean diameter"), UNIT_LENGTH, coil->mean_diameter_mm);
  if (coil->active_coils > 0.0)
    add_number (list, _ ("Active coils"), coil->active_coils);
  if (coil->total_coils > 0.0)
    add_number (list, _ ("Total coils"), coil->total_coils);
  if (coil->rate_n_per_mm == 0.0 && coil->table.n == 0)
    add_modulus (list, coil->shear_modulus_gpa);
}

static void
add_coil (List *list, const CarCoil *coil, const SpringLaw *law)
{
  list->part = _ ("Coil");
  if (!coil->is_there)
    return;
  add_coil_makings (list, coil, law);
  add_given (list, _ ("Free length"), UNIT_LENGTH, coil->free_length_mm);
  add_if_given (list, _ ("Solid length"), UNIT_LENGTH, spring_law_coil_solid (law));
  add_above_foot (list, _ ("Perch"), coil->perch_mm);
  add_below_mount (list, _ ("Upper seat"), coil->upper_drop_mm);
  add_if_given (list, _ ("Lower seat out"), UNIT_LENGTH, coil->lower_outboard_mm);
  add_if_given (list, _ ("Lower seat ahead"), UNIT_LENGTH, coil->lower_forward_mm);
  add_if_given (list, _ ("Upper seat out"), UNIT_LENGTH, coil->upper_outboard_mm);
  add_if_given (list, _ ("Upper seat ahead"), UNIT_LENGTH, coil->upper_forward_mm);
}

static void
add_helper (List *list, const CarHelper *helper)
{
  list->part = _ ("Helper");
  if (!helper->is_there)
    return;
  add (list, g_strdup (_ ("Place")),
       g_strdup (helper->place == HELPER_IN_SERIES ? _ ("on top of the coil")
                                                   : _ ("on seats of its own")),
       FALSE);
  add_given (list, _ ("Rate"), UNIT_RATE, helper->rate_n_per_mm);
  add_given (list, _ ("Free length"), UNIT_LENGTH, helper->free_length_mm);
  add_if_given (list, _ ("Solid length"), UNIT_LENGTH, helper->solid_length_mm);
  if (helper->place == HELPER_IN_SERIES)
    return;
  add_above_foot (list, _ ("Perch"), helper->perch_mm);
  add_below_mount (list, _ ("Upper seat"), helper->upper_drop_mm);
}

static void
add_stops (List *list, const CarSprings *springs)
{
  list->part = _ ("Stops");
  if (springs->bump_stop.is_there)
    add_given (list, _ ("Bump stop’s gap"), UNIT_LENGTH, springs->bump_stop.gap_mm);
  if (springs->droop_stop_mm != 0.0) {
    g_autofree char *down = given_text (UNIT_LENGTH, springs->droop_stop_mm);

    add (list, g_strdup (_ ("Droop stop")), g_strdup_printf (_ ("%s down"), down), FALSE);
  }
  if (springs->bump_stop.is_there)
    add_law (list, UNIT_LENGTH, &springs->bump_stop.table);
}

static void
add_anti_roll (List *list, const CarAntiRollBar *bar, const SpringLaw *law)
{
  list->part = _ ("Anti-roll bar");
  if (!bar->is_there)
    return;
  if (bar->rate_n_per_mm == 0.0) {
    add_given (list, _ ("Diameter"), UNIT_LENGTH, bar->diameter_mm);
    add_bore (list, bar->bore_mm);
    add_given (list, _ ("Length"), UNIT_LENGTH, bar->length_mm);
    add_given (list, _ ("Arm"), UNIT_LENGTH, bar->arm_mm);
    add_modulus (list, bar->shear_modulus_gpa);
  }
  add_rate (list, bar->rate_n_per_mm, spring_law_link_rate (law));
  add (list, g_strdup (_ ("Link")),
       g_strdup (bar->link_carrier == LINK_ON_ARM ? _ ("on the arm")
                                                  : _ ("on the strut")),
       FALSE);
}

static void
add_damper (List *list, const CarSprings *springs)
{
  list->part = _ ("Damper and tyre");
  add_if_given (list, _ ("Gas force"), UNIT_FORCE, springs->damper.gas_force_n);
  add_given (list, _ ("Tyre rate"), UNIT_RATE, springs->tyre_rate_n_per_mm);
  add_law (list, UNIT_SPEED, &springs->damper.table);
}

/* @standing NULL where the corner cannot be assembled there. */
static void
add_reach (const List *list, const Rod *rod, const Corner *corner, const Pose *standing)
{
  if (standing == NULL)
    return;

  const RodReach reach =
      rod_reach (rod, vec3_distance (standing->strut_foot, corner->upper_mount));
  add (list, g_strdup (_ ("Overhang, standing")),
       unit_text (UNIT_LENGTH, reach.overhang, 1), FALSE);
  add (list, g_strdup (_ ("Guide to piston, standing")),
       unit_text (UNIT_LENGTH, reach.spacing, 1), FALSE);
}

static void
add_rod (List *list, const Car *car, const StudyCorner *corner, guint setup)
{
  const CarRod given = car_setup_rod (car, setup);
  const Rod rod = car_rod (car, &given);
  const Station *standing = &corner->at_height;

  list->part = _ ("Rod");
  if (!(given.diameter_mm > 0.0))
    return;
  add_given (list, _ ("Diameter"), UNIT_LENGTH, given.diameter_mm);
  add_bore (list, given.bore_mm);
  add_above_foot (list, _ ("Guide bush"), rod.guide_height);
  if (given.bush_spacing_mm > 0.0)
    add_given (list, _ ("Bushes apart"), UNIT_LENGTH, given.bush_spacing_mm);
  else
    add_below_mount (list, _ ("Piston"), given.piston_drop_mm);
  add_given (list, _ ("Modulus"), UNIT_MODULUS, given.modulus_gpa);
  add_reach (list, &rod, &corner->corner,
             standing->status == POSE_OK ? &standing->pose : NULL);
}

void
spring_sizes_add_figures (GPtrArray *sizes, const SpringCorner *corner)
{
  /* frequency, damping and height are told by verdicts */
  static const char *const keys[] = { "wheel_rate_n_per_mm", "roll_stiffness_nm_per_deg",
                                      NULL };
  const List list = { sizes, _ ("Where it stands") };

  for (guint i = 0; corner->stands == STANDS_BY_SPRINGS && i < spring_figures_count ();
       i++) {
    const SpringFigure figure = spring_figure (corner, i);

    if (!isfinite (figure.value) || !g_strv_contains (keys, figure.key))
      continue;
    add (&list, g_strdup (figure.name),
         unit_text (unit_kind_of (figure.unit), figure.value, figure.decimals), FALSE);
  }
}

const char *
spring_kind_words (const CarSprings *s)
{
  const gboolean has_bar = s->bar.is_there, has_coil = s->coil.is_there,
                 has_helper = s->helper.is_there;

  if (has_bar && has_coil)
    return has_helper ? _ ("torsion bar, coil and helper") : _ ("torsion bar and coil");
  if (has_bar)
    return has_helper ? _ ("torsion bar with helper coil") : _ ("torsion bar");
  if (has_coil)
    return has_helper ? _ ("coil with helper") : _ ("coil");
  return has_helper ? _ ("helper coil alone") : NULL;
}

GPtrArray *
spring_sizes (const SpringStudy *study, guint setup)
{
  const SpringCorner *corner = &study->setups[setup];
  List list = { g_ptr_array_new_with_free_func (free_size), NULL };

  if (!car_springs_is_none (corner->springs)) {
    add_bar (&list, &corner->springs->bar, corner->law);
    add_coil (&list, &corner->springs->coil, corner->law);
    add_helper (&list, &corner->springs->helper);
    add_stops (&list, corner->springs);
    add_anti_roll (&list, &corner->springs->anti_roll_bar, corner->law);
    add_damper (&list, corner->springs);
  }
  add_rod (&list, study->car, corner->corner, setup);
  return list.sizes;
}
