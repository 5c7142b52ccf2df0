/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-table.h"

#include "model/study/quantity-info.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEGREES (180.0 / G_PI)

static const ChoiceNumberInfo rows[N_CHOICE_NUMBERS] = {
  [CHOICE_CAMBER_BOLT] = { "camber_bolt_deg", N_ ("Camber bolt"), "°", 2 },
  [CHOICE_INBOARD] = { "inboard_mm", N_ ("Inboard"), "mm", 1 },
  [CHOICE_REARWARD] = { "rearward_mm", N_ ("Rearward"), "mm", 1 },
  [CHOICE_UP] = { "up_mm", N_ ("Up"), "mm", 1 },
  [CHOICE_TOE_BEFORE_RESET] = { "toe_before_reset_deg", N_ ("Toe unreset"), "°", 2 },
  [CHOICE_TIE_ROD_CHANGE] = { "tie_rod_change_mm", N_ ("Tie rod"), "mm", 2 },
  [CHOICE_TIE_ROD_TURNS] = { "tie_rod_turns", N_ ("Turns"), "", 2 },
  [CHOICE_BUMP_STEER] = { "bump_steer_deg", N_ ("Bump steer"), "°", 2 },
  [CHOICE_TYRE_CLEARANCE] = { "tyre_clearance_mm", N_ ("Tyre room"), "mm", 1 },
  [CHOICE_ROD_SIDE_FORCE] = { "rod_side_force_n", N_ ("Side force"), "N", 0 },
  [CHOICE_BEARING_TILT] = { "bearing_tilt_deg", N_ ("Tilt"), "°", 1 },
  [CHOICE_EDGE_MARGIN] = { "edge_margin_mm", N_ ("Edge"), "mm", 1 },
  [CHOICE_COST] = { "cost", N_ ("Off aim"), "", 2 },
};

/* Of the numbers that are a quantity; false for the others. */
static gboolean
find_quantity (ChoiceNumber number, Quantity *quantity)
{
  static const struct {
    ChoiceNumber number;
    Quantity quantity;
  } pairs[] = { { CHOICE_CAMBER, QUANTITY_CAMBER },
                { CHOICE_CASTER, QUANTITY_CASTER },
                { CHOICE_SAI, QUANTITY_SAI },
                { CHOICE_SCRUB_RADIUS, QUANTITY_SCRUB_RADIUS },
                { CHOICE_TRAIL, QUANTITY_TRAIL },
                { CHOICE_ROLL_CENTRE_HEIGHT, QUANTITY_ROLL_CENTRE_HEIGHT },
                { CHOICE_TOE_IN, QUANTITY_TOE_IN } };

  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    if (pairs[i].number == number) {
      *quantity = pairs[i].quantity;
      return TRUE;
    }
  return FALSE;
}

ChoiceNumberInfo
choice_number_info (ChoiceNumber number)
{
  Quantity quantity;

  if (find_quantity (number, &quantity)) {
    const QuantityInfo info = quantity_info (quantity);
    return (ChoiceNumberInfo){ info.key, info.short_name, quantity_symbol (quantity),
                               info.decimals, quantity_unit_kind (quantity) };
  }
  ChoiceNumberInfo info = rows[number];
  info.head = _ (info.head);
  info.kind = unit_kind_of (info.unit);
  if (info.kind != UNIT_NONE)
    info.unit = unit_symbol (info.kind);
  return info;
}

static double
finite_or_none (double value)
{
  return isfinite (value) ? value : (double) NAN;
}

double
choice_number (const ChoicePlace *place, ChoiceNumber number)
{
  Quantity quantity;

  if (find_quantity (number, &quantity))
    return finite_or_none (quantity_edge_value (quantity, place->value[quantity]));
  switch (number) {
  case CHOICE_CAMBER_BOLT:
    return place->camber_bolt * DEGREES;
  case CHOICE_INBOARD:
    return place->mount.inboard;
  case CHOICE_REARWARD:
    return place->mount.rearward;
  case CHOICE_UP:
    return place->mount.up;
  case CHOICE_TOE_BEFORE_RESET:
    return finite_or_none (place->toe_before_reset * DEGREES);
  case CHOICE_TIE_ROD_CHANGE:
    return finite_or_none (place->tie_rod_change);
  case CHOICE_TIE_ROD_TURNS:
    return finite_or_none (place->tie_rod_turns);
  case CHOICE_BUMP_STEER:
    return finite_or_none (place->bump_steer * DEGREES);
  case CHOICE_TYRE_CLEARANCE:
    return finite_or_none (place->clearance.least);
  case CHOICE_ROD_SIDE_FORCE:
    return finite_or_none (place->side_force);
  case CHOICE_BEARING_TILT:
    return finite_or_none (place->bearing_tilt * DEGREES);
  case CHOICE_EDGE_MARGIN:
    return finite_or_none (place->edge_margin);
  case CHOICE_COST:
    return finite_or_none (place->cost);
  default:
    g_return_val_if_reached ((double) NAN);
  }
}

char *
choice_number_text (const ChoicePlace *place, ChoiceNumber number)
{
  const ChoiceNumberInfo info = choice_number_info (number);
  char text[64];

  unit_format (info.kind, choice_number (place, number), info.decimals, FALSE, text,
               sizeof text);
  return g_strdup (text);
}

/* In the digits that are written. */
static gboolean
shows (double miss, ChoiceNumber number)
{
  return fabs (miss) * pow (10.0, choice_number_info (number).decimals) >= 0.5;
}

gboolean
choice_number_answers_aim (ChoiceNumber number, Aim aim)
{
  static const struct {
    ChoiceNumber number;
    Aim aim;
  } pairs[] = { { CHOICE_CAMBER, AIM_CAMBER },
                { CHOICE_CASTER, AIM_CASTER },
                { CHOICE_SAI, AIM_SAI },
                { CHOICE_SCRUB_RADIUS, AIM_SCRUB_RADIUS },
                { CHOICE_SCRUB_RADIUS, AIM_SCRUB_CHANGE },
                { CHOICE_TRAIL, AIM_TRAIL },
                { CHOICE_ROLL_CENTRE_HEIGHT, AIM_ROLL_CENTRE_HEIGHT },
                { CHOICE_TOE_BEFORE_RESET, AIM_TOE_CHANGE },
                { CHOICE_BUMP_STEER, AIM_BUMP_STEER } };

  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    if (pairs[i].number == number && pairs[i].aim == aim)
      return TRUE;
  return FALSE;
}

gboolean
choice_number_misses_aim (const ChoicePlace *place, ChoiceNumber number)
{
  if ((place->faults & CHOICE_MISSES_AIM) == 0)
    return FALSE;
  for (Aim aim = 0; aim < N_AIMS; aim++)
    if (choice_number_answers_aim (number, aim) && shows (place->aim_miss[aim], number))
      return TRUE;
  return FALSE;
}

gboolean
choice_number_is_past_limit (const ChoicePlace *place, ChoiceNumber number)
{
  const guint fault = number == CHOICE_TYRE_CLEARANCE ? CHOICE_TYRE_TOO_NEAR
                      : number == CHOICE_BEARING_TILT ? CHOICE_BEARING_TILTS_TOO_FAR
                      : number == CHOICE_EDGE_MARGIN  ? CHOICE_EDGE_TOO_NEAR
                                                      : 0;

  return (place->faults & fault) != 0;
}

static gboolean
is_same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

gboolean
choice_is_alike (const ChoiceAnswer *answer)
{
  const ChoicePlace *left = &answer->side[SIDE_LEFT], *right = &answer->side[SIDE_RIGHT];

  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++)
    if (!is_same (choice_number (left, i), choice_number (right, i)))
      return FALSE;
  return left->setting.place == right->setting.place &&
         left->setting.along == right->setting.along &&
         left->setting.across == right->setting.across &&
         left->setting.is_swapped == right->setting.is_swapped;
}

char *
choice_target_text (const CarTarget *target)
{
  const AimInfo info = aim_info (target->aim);
  const UnitKind kind = unit_kind_of (info.unit);
  g_autofree char *least_unit = unit_text (kind, target->least, info.decimals);
  g_autofree char *most_unit = unit_text (kind, target->most, info.decimals);
  char least[64];

  if (isinf (target->most))
    return g_strdup_printf (_ ("%s or more"), least_unit);
  if (isinf (target->least))
    return g_strdup_printf (_ ("%s or less"), most_unit);
  if (target->least == target->most)
    return g_steal_pointer (&least_unit);
  unit_format (kind, target->least, info.decimals, FALSE, least, sizeof least);
  return g_strdup_printf (_ ("%s to %s"), least, most_unit);
}
