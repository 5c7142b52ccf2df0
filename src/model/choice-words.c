/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice.h"
#include "model/number-text.h"
#include "model/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEGREES(radians) (180.0 / G_PI * (radians))
#define MOST_DECIMALS 4
#define AT_END 1e-3 /* mm or degrees: nearer is there */

static void
add_sentence (GString *text, char *sentence)
{
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
  g_free (sentence);
}

/* As many decimals as it takes for the two to read differently. */
static int
decimals_apart (double a, double b, int decimals)
{
  while (decimals < MOST_DECIMALS) {
    const double unit = pow (10.0, decimals);

    if (round (a * unit) != round (b * unit))
      break;
    decimals++;
  }
  return decimals;
}

static char *
tyre_sentence (double room, double asked)
{
  const int decimals = decimals_apart (room, asked, 1);
  g_autofree char *has = number_text (fabs (room), decimals);
  g_autofree char *wants = number_text (asked, decimals);

  return g_strdup_printf (
      room < 0.0 ? _ ("Stands %s mm inside the tyre, %s mm of room are asked for.")
                 : _ ("Leaves %s mm to the tyre, %s mm are asked for."),
      has, wants);
}

static char *
edge_sentence (double margin, double asked)
{
  const int decimals = decimals_apart (margin, asked, 1);
  g_autofree char *has = number_text (fabs (margin), decimals);
  g_autofree char *wants = number_text (asked, decimals);

  return g_strdup_printf (
      margin < 0.0
          ? _ ("Stands %s mm past the tower's edge, %s mm of room are asked for.")
          : _ ("Leaves %s mm to the tower's edge, %s mm are asked for."),
      has, wants);
}

static char *
tilt_sentence (double tilt_deg, double allowed_deg)
{
  const int decimals = decimals_apart (tilt_deg, allowed_deg, 1);
  g_autofree char *has = number_text (tilt_deg, decimals);
  g_autofree char *allowed = number_text (allowed_deg, decimals);

  return g_strdup_printf (_ ("Tilts the bearing by %s°, it allows %s°."), has, allowed);
}

static void
tell_faults (const Car *car, const Plate *plate, const ChoicePlace *place, GString *text)
{
  if (place->faults & CHOICE_NOT_ASSEMBLED)
    add_sentence (text, g_strdup (_ ("The linkage cannot be assembled everywhere in the "
                                     "travel used.")));
  if (place->faults & CHOICE_TYRE_TOO_NEAR)
    add_sentence (text,
                  tyre_sentence (place->clearance.least, car->limits.tyre_clearance_mm));
  if (place->faults & CHOICE_EDGE_TOO_NEAR)
    add_sentence (text, edge_sentence (place->edge_margin, car->limits.edge_margin_mm));
  if (place->faults & CHOICE_BEARING_TILTS_TOO_FAR)
    add_sentence (text,
                  tilt_sentence (DEGREES (place->bearing_tilt), plate->bearing_tilt_deg));
}

static gboolean
is_at_end (PlateScale range, double value)
{
  return range.most - range.least > AT_END &&
         (value < range.least + AT_END || value > range.most - AT_END);
}

/* What keeps the place from going on. */
static const char *
bar_of_plate (const Plate *plate, const ChoicePlace *place)
{
  if (plate->kind == PLATE_FIXED)
    return _ ("this mount cannot be set");
  if (plate_n_ways (plate) == 0)
    return _ ("no other place comes nearer");
  if (plate->kind == PLATE_ECCENTRIC)
    return is_at_end (plate_along_range (plate), place->setting.along)
               ? _ ("it turns no further")
               : _ ("its circle comes no nearer");
  if (is_at_end (plate_along_range (plate), place->setting.along) ||
      is_at_end (plate_across_range (plate), place->setting.across))
    return _ ("the slot ends");
  return _ ("the other aims pull the other way");
}

static const char *
bar_of (const Car *car, const ChoiceAnswer *answer, const ChoicePlace *place)
{
  const CarLimits *limits = &car->limits;
  const Plate *plate = answer->plate;
  const double bolt = fabs (DEGREES (place->camber_bolt));

  if (plate_n_ways (plate) > 0 && place->edge_margin < limits->edge_margin_mm + AT_END)
    return _ ("the tower's edge is too near");
  if (plate_n_ways (plate) > 0 && plate->bearing_tilt_deg > 0.0 &&
      DEGREES (place->bearing_tilt) > plate->bearing_tilt_deg - AT_END)
    return _ ("the bearing tilts no further");
  if (answer->has_bolt && place->clearance.least < limits->tyre_clearance_mm + AT_END)
    return _ ("the tyre is too near");
  if (answer->has_bolt && bolt > limits->camber_bolt_deg - AT_END)
    return _ ("the camber bolt turns no further");
  return bar_of_plate (plate, place);
}

/* "0.40°", "1.5 mm" */
static char *
amount_text (Aim aim, double value)
{
  const AimInfo info = aim_info (aim);

  return unit_text (unit_kind_of (info.unit), value, info.decimals);
}

static char *
miss_sentence (const CarTarget *target, const ChoicePlace *place, const char *bar)
{
  const double miss = place->aim_miss[target->aim];
  const double value = place->aim_value[target->aim];
  const double bound = miss > 0.0 ? target->most : target->least;
  const char *name = aim_info (target->aim).name;
  g_autofree char *by = amount_text (target->aim, fabs (miss));
  g_autofree char *aimed_for = amount_text (target->aim, bound);

  if (isnan (value))
    return g_strdup_printf (_ ("%s cannot be told, as the baseline cannot be assembled."),
                            name);
  if (value * bound > 0.0 && fabs (value) > fabs (bound))
    /* Translators: what is aimed for, how far it is off, its bound, and a clause of its
     * own that says why: "Caster is 0.40° past 6.50°: the slot ends." */
    return g_strdup_printf (_ ("%s is %s past %s: %s."), name, by, aimed_for, bar);
  /* Translators: as above. "Camber stays 0.40° short of −2.50°: the slot ends." */
  return g_strdup_printf (_ ("%s stays %s short of %s: %s."), name, by, aimed_for, bar);
}

static double
cost_of (const CarTarget *target, const ChoicePlace *place)
{
  const double miss = place->aim_miss[target->aim] / aim_info (target->aim).unit_size;

  return isnan (miss) ? INFINITY : target->weight * miss * miss;
}

/* The aim that costs most, or NULL where all are met. */
static const CarTarget *
worst_miss (const Car *car, const ChoicePlace *place)
{
  const CarTarget *worst = NULL;

  for (guint i = 0; i < car->targets->len; i++) {
    const CarTarget *target = &g_array_index (car->targets, CarTarget, i);

    if (cost_of (target, place) > (worst != NULL ? cost_of (worst, place) : 0.0))
      worst = target;
  }
  return worst;
}

static char *
met_sentence (const Car *car, const ChoiceAnswer *answer, const ChoicePlace *place)
{
  g_autofree char *bolt = number_text (DEGREES (place->camber_bolt), 2);

  if (car->targets->len == 0)
    return g_strdup (_ ("Nothing is aimed for: this is the place nearest to the mount as "
                        "measured."));
  if (answer->has_bolt && place->camber_bolt != 0.0)
    return g_strdup_printf (_ ("Meets every aim with a camber bolt at %s°."), bolt);
  return g_strdup (_ ("Meets every aim."));
}

static char *
side_text (const Car *car, const ChoiceAnswer *answer, CarSide side)
{
  const ChoicePlace *place = &answer->side[side];
  const CarTarget *missed = worst_miss (car, place);
  GString *text = g_string_new ("");

  tell_faults (car, answer->plate, place, text);
  if (text->len == 0)
    add_sentence (text, missed != NULL
                            ? miss_sentence (missed, place, bar_of (car, answer, place))
                            : met_sentence (car, answer, place));
  return g_string_free (text, FALSE);
}

static gboolean
is_past (double radians, double limit_deg)
{
  return fabs (DEGREES (radians)) > limit_deg;
}

/* @format takes the difference and the limit. */
static char *
cross_sentence (const char *format, double radians, double limit_deg)
{
  const double cross = fabs (DEGREES (radians));
  const int decimals = decimals_apart (cross, limit_deg, 1);
  g_autofree char *has = number_text (cross, decimals);
  g_autofree char *allowed = number_text (limit_deg, decimals);

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (format, has, allowed);
#pragma GCC diagnostic pop
}

static void
tell_cross (const Car *car, const ChoiceAnswer *answer, GString *text)
{
  const CarLimits *limits = &car->limits;

  if (is_past (answer->cross_camber, limits->cross_camber_deg))
    add_sentence (text,
                  cross_sentence (_ ("Camber differs by %s° between the sides, %s° are "
                                     "allowed."),
                                  answer->cross_camber, limits->cross_camber_deg));
  if (is_past (answer->cross_caster, limits->cross_caster_deg))
    add_sentence (text,
                  cross_sentence (_ ("Caster differs by %s° between the sides, %s° are "
                                     "allowed."),
                                  answer->cross_caster, limits->cross_caster_deg));
}

char *
choice_sentence (const Car *car, const ChoiceAnswer *answer)
{
  GString *text = g_string_new ("");
  g_autofree char *left = side_text (car, answer, SIDE_LEFT);
  g_autofree char *right = side_text (car, answer, SIDE_RIGHT);

  if (g_str_equal (left, right))
    g_string_append (text, left);
  else
    add_sentence (text, g_strdup_printf (_ ("Left: %s Right: %s"), left, right));
  tell_cross (car, answer, text);
  return g_string_free (text, FALSE);
}
