/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-terms.h"
#include "model/choice/choice.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEGREES(radians) (180.0 / G_PI * (radians))
#define MOST_DECIMALS 4

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

/* @is_named: with what it is about; else behind a plate's name. */
static char *
tyre_sentence (double room, double asked, gboolean is_named)
{
  const int decimals = decimals_apart (room, asked, 1);
  g_autofree char *has = unit_text (UNIT_LENGTH, fabs (room), decimals);
  g_autofree char *wants = unit_text (UNIT_LENGTH, asked, decimals);

  if (is_named)
    return g_strdup_printf (
        room < 0.0 ? _ ("The strut stands %s inside the tyre, %s of room are asked for.")
                   : _ ("The strut leaves %s to the tyre, %s are asked for."),
        has, wants);
  return g_strdup_printf (room < 0.0
                              ? _ ("Stands %s inside the tyre, %s of room are asked for.")
                              : _ ("Leaves %s to the tyre, %s are asked for."),
                          has, wants);
}

static char *
edge_sentence (double margin, double asked, gboolean is_named)
{
  const int decimals = decimals_apart (margin, asked, 1);
  g_autofree char *has = unit_text (UNIT_LENGTH, fabs (margin), decimals);
  g_autofree char *wants = unit_text (UNIT_LENGTH, asked, decimals);

  if (is_named)
    return g_strdup_printf (margin < 0.0
                                ? _ ("The upper mount stands %s past the tower's edge, "
                                     "%s of room are asked for.")
                                : _ ("The upper mount leaves %s to the tower's edge, %s "
                                     "are asked for."),
                            has, wants);
  return g_strdup_printf (
      margin < 0.0 ? _ ("Stands %s past the tower's edge, %s of room are asked for.")
                   : _ ("Leaves %s to the tower's edge, %s are asked for."),
      has, wants);
}

static char *
tilt_sentence (double tilt_deg, double allowed_deg)
{
  const int decimals = decimals_apart (tilt_deg, allowed_deg, 1);
  g_autofree char *has = unit_text (UNIT_ANGLE, tilt_deg, decimals);
  g_autofree char *allowed = unit_text (UNIT_ANGLE, allowed_deg, decimals);

  return g_strdup_printf (_ ("Tilts the bearing by %s, it allows %s."), has, allowed);
}

char *
choice_room_sentence (const Car *car, const ChoicePlace *place, ChoiceFault fault)
{
  const CarLimits *limits = &car->limits;

  switch (fault) {
  case CHOICE_TYRE_TOO_NEAR:
    return tyre_sentence (place->clearance.least, limits->tyre_clearance_mm, TRUE);
  case CHOICE_EDGE_TOO_NEAR:
    return edge_sentence (place->edge_margin, limits->edge_margin_mm, TRUE);
  default:
    g_return_val_if_reached (NULL);
  }
}

static char *
fault_sentence (const Car *car,
                const Plate *plate,
                const ChoicePlace *place,
                ChoiceFault fault)
{
  switch (fault) {
  case CHOICE_NOT_ASSEMBLED:
    return g_strdup (
        _ ("The linkage cannot be assembled everywhere in the travel used."));
  case CHOICE_TYRE_TOO_NEAR:
    return tyre_sentence (place->clearance.least, car->limits.tyre_clearance_mm, FALSE);
  case CHOICE_EDGE_TOO_NEAR:
    return edge_sentence (place->edge_margin, car->limits.edge_margin_mm, FALSE);
  case CHOICE_BEARING_TILTS_TOO_FAR:
    return tilt_sentence (DEGREES (place->bearing_tilt), plate->bearing_tilt_deg);
  default:
    g_return_val_if_reached (NULL);
  }
}

static void
tell_faults (const Car *car, const Plate *plate, const ChoicePlace *place, GString *text)
{
  static const ChoiceFault faults[] = { CHOICE_NOT_ASSEMBLED, CHOICE_TYRE_TOO_NEAR,
                                        CHOICE_EDGE_TOO_NEAR,
                                        CHOICE_BEARING_TILTS_TOO_FAR };

  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    if (place->faults & faults[i])
      add_sentence (text, fault_sentence (car, plate, place, faults[i]));
}

/* What keeps the place from the aim: a clause of its own. */
static char *
bar_clause (ChoiceBar bar)
{
  static const char *const clauses[] = {
    [CHOICE_BAR_FIXED] = N_ ("this mount cannot be set"),
    [CHOICE_BAR_HARDLY_MOVES] = N_ ("this plate hardly moves it"),
    [CHOICE_BAR_SLOT_END] = N_ ("the slot ends"),
    [CHOICE_BAR_TURN_END] = N_ ("it turns no further"),
    [CHOICE_BAR_BOLT_END] = N_ ("the camber bolt turns no further"),
    [CHOICE_BAR_EDGE] = N_ ("the tower's edge is too near"),
    [CHOICE_BAR_TYRE] = N_ ("the tyre is too near"),
    [CHOICE_BAR_TILT] = N_ ("the bearing tilts no further"),
    [CHOICE_BAR_ASSEMBLY] = N_ ("the linkage cannot be assembled further on"),
    [CHOICE_BAR_CIRCLE] = N_ ("its circle comes no nearer"),
    [CHOICE_BAR_NO_NEARER] = N_ ("no other place comes nearer"),
    [CHOICE_BAR_NOT_SET_SO] = N_ ("the plate could be set nearer"),
  };

  /* Translators: an aim that cannot be met together with the one which the sentence is
   * about, as in "Camber stays 0.40° short of −2.50°: caster pulls against it". */
  if (bar.kind == CHOICE_BAR_OTHER_AIM)
    return g_strdup_printf (_ ("%s pulls against it"), aim_info (bar.against).noun);
  return g_strdup (_ (clauses[bar.kind]));
}

/* "0.40°", "1.5 mm" */
static char *
amount_text (Aim aim, double value, int decimals)
{
  const AimInfo info = aim_info (aim);

  return unit_text (unit_kind_of (info.unit), value, decimals);
}

/* "Camber stays 0.40° short of −2.50°", with the decimals that it takes to see the miss.
 */
static char *
miss_clause (const CarTarget *target, const ChoicePlace *place)
{
  const double miss = place->aim_miss[target->aim];
  const double value = place->aim_value[target->aim];
  const double bound = miss > 0.0 ? target->most : target->least;
  const AimInfo info = aim_info (target->aim);
  const int decimals = decimals_apart (miss, 0.0, info.decimals);
  g_autofree char *by = amount_text (target->aim, fabs (miss), decimals);
  g_autofree char *aimed_for = amount_text (target->aim, bound, decimals);

  /* Translators: what is aimed for, how far it is off, and its bound. */
  return g_strdup_printf (value * bound > 0.0 && fabs (value) > fabs (bound)
                              ? _ ("%s is %s past %s")
                              : _ ("%s stays %s short of %s"),
                          info.name, by, aimed_for);
}

static char *
miss_sentence (const CarTarget *target, const ChoicePlace *place)
{
  const ChoiceBar bar = place->bar[target->aim];

  if (isnan (place->aim_value[target->aim]))
    return g_strdup_printf (_ ("%s cannot be told, as the baseline cannot be assembled."),
                            aim_info (target->aim).name);

  g_autofree char *miss = miss_clause (target, place);
  if (bar.kind == CHOICE_BAR_NONE)
    return g_strconcat (miss, ".", NULL);

  g_autofree char *why = bar_clause (bar);
  /* Translators: what is missed and why, as "Caster is 0.40° past 6.50°" and "the slot
   * ends". */
  return g_strdup_printf (_ ("%s: %s."), miss, why);
}

static double
cost_of (const CarTarget *target, const ChoicePlace *place)
{
  const double miss = place->aim_miss[target->aim] / aim_info (target->aim).unit_size;

  return isnan (miss) ? INFINITY : target->weight * term_cost (fabs (miss));
}

/* The costliest that is not told yet. Or NULL. */
static const CarTarget *
next_miss (const Car *car, const ChoicePlace *place, guint told)
{
  const CarTarget *worst = NULL;

  for (guint i = 0; i < car->targets->len; i++) {
    const CarTarget *target = &g_array_index (car->targets, CarTarget, i);

    if ((told & 1u << target->aim) == 0 &&
        cost_of (target, place) > (worst != NULL ? cost_of (worst, place) : 0.0))
      worst = target;
  }
  return worst;
}

/* The costliest first. */
static void
tell_misses (const Car *car, const ChoicePlace *place, GString *text)
{
  guint told = 0; /* a bit for each aim */
  const CarTarget *missed;

  while ((missed = next_miss (car, place, told)) != NULL) {
    add_sentence (text, miss_sentence (missed, place));
    told |= 1u << missed->aim;
  }
}

static char *
met_sentence (const Car *car, const ChoiceAnswer *answer, const ChoicePlace *place)
{
  g_autofree char *bolt = unit_text (UNIT_ANGLE, DEGREES (place->camber_bolt), 2);

  if (car->targets->len == 0)
    return g_strdup (_ ("Nothing is aimed for: this is the place nearest to the mount as "
                        "measured."));
  if (answer->has_bolt && place->camber_bolt != 0.0)
    return g_strdup_printf (_ ("Meets every aim with a camber bolt at %s."), bolt);
  return g_strdup (_ ("Meets every aim."));
}

static char *
side_text (const Car *car, const ChoiceAnswer *answer, CarSide side)
{
  const ChoicePlace *place = &answer->side[side];
  GString *text = g_string_new ("");

  tell_faults (car, answer->plate, place, text);
  if (text->len == 0)
    tell_misses (car, place, text);
  if (text->len == 0)
    add_sentence (text, met_sentence (car, answer, place));
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
  g_autofree char *has = unit_text (UNIT_ANGLE, cross, decimals);
  g_autofree char *allowed = unit_text (UNIT_ANGLE, limit_deg, decimals);

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
                  cross_sentence (_ ("Camber differs by %s between the sides, %s are "
                                     "allowed."),
                                  answer->cross_camber, limits->cross_camber_deg));
  if (is_past (answer->cross_caster, limits->cross_caster_deg))
    add_sentence (text,
                  cross_sentence (_ ("Caster differs by %s between the sides, %s are "
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

ChoiceVerdict
choice_verdict (const ChoiceAnswer *answer)
{
  return answer->meets ? CHOICE_MEETS : answer->fits ? CHOICE_FITS : CHOICE_FAILS;
}

const char *
choice_verdict_sign (ChoiceVerdict verdict)
{
  static const char *const signs[N_CHOICE_VERDICTS] = {
    [CHOICE_FAILS] = "✗", [CHOICE_FITS] = "≈", [CHOICE_MEETS] = "✓"
  };

  g_return_val_if_fail (verdict < N_CHOICE_VERDICTS, "");
  return signs[verdict];
}

const char *
choice_verdict_words (const Car *car, ChoiceVerdict verdict)
{
  switch (verdict) {
  case CHOICE_MEETS:
    return car->targets->len > 0 ? _ ("meets every aim") : _ ("fits; no aims are set");
  case CHOICE_FITS:
    return car->targets->len > 0
               ? _ ("fits, but misses an aim, or the sides differ too much")
               : _ ("fits, but the sides differ too much");
  default:
    return _ ("does not fit");
  }
}

static guint
count (const GArray *answers, ChoiceVerdict least)
{
  guint n = 0;

  for (guint i = 0; i < answers->len; i++)
    if (choice_verdict (&g_array_index (answers, ChoiceAnswer, i)) >= least)
      n++;
  return n;
}

char *
choice_count_sentence (const Car *car, const GArray *answers)
{
  const guint n_fit = count (answers, CHOICE_FITS),
              n_meet = count (answers, CHOICE_MEETS);

  if (answers->len == 0)
    return g_strdup ("");
  if (car->targets->len == 0)
    return g_strdup_printf (
        g_dngettext (
            GETTEXT_PACKAGE,
            "No aims are set: %u of %u fits, and what changes the car least comes first.",
            "No aims are set: %u of %u fit, and what changes the car least comes first.",
            n_fit),
        n_fit, answers->len);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u of %u meets every aim.",
                                       "%u of %u meet every aim.", n_meet),
                          n_meet, answers->len);
}
