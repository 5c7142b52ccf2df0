/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/card/fitting-card-facts.h"

#include "model/study/quantity-info.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEGREES (180.0 / G_PI)
#define NOTHING 0.05 /* mm: reads as nothing at a tenth */

/* The setup's places without the setup: the mount where it was, nothing corrected. */
static void
measure (const FittingCard *card, ChoicePlace measured[2])
{
  g_autoptr (Car) car = car_copy (card->car);
  g_autoptr (Plate) nothing = plate_new ();
  CarSetup *setup = car_setup (car, 0);
  const ChoiceQuestion question = { .setup = 0, .carrier = card->carrier };

  setup->mount = (MountOffset){ 0 };
  setup->lowering_mm = 0.0;
  setup->toe = TOE_AS_MOVED;
  setup->corrections = (CarCorrections){ 0 };
  setup->right = (CarRightSide){ 0 };
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    measured[side] =
        choice_place (car, &question, side, nothing, (PlateSetting){ 0 }, 0.0);
}

FittingFacts
fitting_facts (const FittingCard *card)
{
  FittingFacts facts = { .card = card, .is_alike = choice_is_alike (card->answer) };

  measure (card, facts.measured);
  return facts;
}

const ChoicePlace *
fitting_now (const FittingFacts *facts, CarSide side)
{
  return &facts->card->answer->side[side];
}

const char *
fitting_side_name (CarSide side)
{
  return side == SIDE_LEFT ? C_ ("side of the car", "Left")
                           : C_ ("side of the car", "Right");
}

static char *
height_words (double lowering)
{
  g_autofree char *length = unit_text (UNIT_LENGTH, fabs (lowering), 1);

  if (fabs (lowering) < NOTHING)
    return g_strdup (_ ("height as measured"));
  return g_strdup_printf (lowering < 0.0 ? _ ("raised %s") : _ ("lowered %s"), length);
}

/* All but the camber bolt. */
static const struct {
  gsize offset;
  const char *name;
  int decimals;
} corrections[] = {
  { offsetof (CarCorrections, ball_joint_spacer_mm), N_ ("Ball-joint spacer"), 1 },
  { offsetof (CarCorrections, tie_rod_end_spacer_mm), N_ ("Tie-rod-end spacer"), 1 },
  { offsetof (CarCorrections, front_pivot_raise_mm), N_ ("Front pivot up"), 1 },
  { offsetof (CarCorrections, rear_pivot_raise_mm), N_ ("Rear pivot up"), 1 },
  { offsetof (CarCorrections, pivot_outboard_mm), N_ ("Offset bushes out"), 1 },
  { offsetof (CarCorrections, rack_raise_mm), N_ ("Rack up"), 1 },
  { offsetof (CarCorrections, tie_rod_length_mm), N_ ("Tie rod longer"), 2 },
  { offsetof (CarCorrections, wheel_spacer_mm), N_ ("Wheel spacer"), 1 },
};

static void
append_corrections (GString *text, const CarSetup *setup)
{
  for (gsize i = 0; i < G_N_ELEMENTS (corrections); i++) {
    const gsize offset = corrections[i].offset;
    const double *value = G_STRUCT_MEMBER_P (&setup->corrections, offset);

    if (*value == 0.0 || (setup->toe == TOE_RESET &&
                          offset == offsetof (CarCorrections, tie_rod_length_mm)))
      continue;
    g_autofree char *length = unit_text (UNIT_LENGTH, *value, corrections[i].decimals);
    g_string_append_printf (text, "%s%s %s", text->len > 0 ? " · " : "",
                            _ (corrections[i].name), length);
  }
}

char *
fitting_corrections_words (const CarSetup *setup)
{
  g_autoptr (GString) text = g_string_new (NULL);

  append_corrections (text, setup);
  return g_strdup (text->str);
}

char *
fitting_setup_words (const CarSetup *setup)
{
  g_autofree char *height = height_words (setup->lowering_mm);
  g_autoptr (GString) text = g_string_new (height);

  g_string_append_printf (text, " · %s",
                          setup->toe == TOE_RESET ? _ ("toe reset by the tie rod")
                                                  : _ ("toe as moved"));
  append_corrections (text, setup);
  return g_strdup (text->str);
}

static gboolean
is_set_so (const CarSetup *setup, const ChoicePlace *place, CarSide side)
{
  const Adjustment has = car_side_adjustment (setup, side);

  return fabs (has.mount.inboard - place->mount.inboard) < NOTHING &&
         fabs (has.mount.rearward - place->mount.rearward) < NOTHING &&
         fabs (has.mount.up - place->mount.up) < NOTHING &&
         fabs (has.corrections.clamp_tilt - place->camber_bolt) * DEGREES < 0.005;
}

gboolean
fitting_is_setup_itself (const FittingCard *card)
{
  const ChoiceAnswer *answer = card->answer;

  return g_strcmp0 (card->setup->plate, answer->plate->name) == 0 &&
         !card->setup->is_plate_swapped == !answer->is_swapped &&
         is_set_so (card->setup, &answer->side[SIDE_LEFT], SIDE_LEFT) &&
         is_set_so (card->setup, &answer->side[SIDE_RIGHT], SIDE_RIGHT);
}

char *
fitting_plate_words (const Plate *plate)
{
  g_autoptr (GString) text = g_string_new (plate_kind_name (plate->kind));

  if (plate->thickness_mm > 0.0) {
    g_autofree char *length = unit_text (UNIT_LENGTH, plate->thickness_mm, 1);
    g_string_append (text, " · ");
    g_string_append_printf (text, _ ("%s thick"), length);
  }
  g_autofree char *raise = unit_text (UNIT_LENGTH, fabs (plate->raises_mm), 1);
  g_string_append (text, " · ");
  if (fabs (plate->raises_mm) < NOTHING)
    g_string_append (text, _ ("bearing as high as it was"));
  else
    g_string_append_printf (text,
                            plate->raises_mm > 0.0 ? _ ("bearing %s higher")
                                                   : _ ("bearing %s lower"),
                            raise);
  if (plate->bearing_diameter_mm > 0.0) {
    g_autofree char *length = unit_text (UNIT_LENGTH, plate->bearing_diameter_mm, 1);
    g_string_append (text, " · ");
    g_string_append_printf (text, _ ("bearing ⌀ %s"), length);
  }
  return g_strdup (text->str);
}

char *
fitting_setting_words (const FittingFacts *facts, CarSide side)
{
  return plate_describe_dials (facts->card->answer->plate,
                               fitting_now (facts, side)->setting);
}

static char *
directed (double value, const char *positive, const char *negative)
{
  g_autofree char *number = unit_text (UNIT_LENGTH, fabs (value), 1);

  return g_strdup_printf (value < 0.0 ? negative : positive, number);
}

char *
fitting_place_words (const ChoicePlace *place)
{
  g_autofree char *sideways = directed (place->mount.inboard, C_ ("mount", "%s inboard"),
                                        C_ ("mount", "%s outboard"));
  g_autofree char *lengthways =
      directed (place->mount.rearward, C_ ("mount", "%s rearward"),
                C_ ("mount", "%s forward"));

  return g_strdup_printf (_ ("bearing %s, %s"), sideways, lengthways);
}

char *
fitting_bolt_words (const ChoicePlace *place)
{
  return fitting_bolt_angle_words (place->camber_bolt);
}

char *
fitting_bolt_angle_words (double angle)
{
  g_autofree char *number = unit_text (UNIT_ANGLE, angle * DEGREES, 2);

  if (angle == 0.0)
    return g_strdup (_ ("no camber bolt"));
  return g_strdup_printf (_ ("camber bolt %s, %s"), number,
                          quantity_sign_words (QUANTITY_CAMBER, angle));
}

/* To turn the tie rod so that toe is as it was; or NULL where that takes nothing. */
static char *
turns_words (const ChoicePlace *place)
{
  g_autofree char *turns = number_text (fabs (place->tie_rod_turns), 2);
  g_autofree char *length = unit_text (UNIT_LENGTH, fabs (place->tie_rod_change), 2);

  if (!isfinite (place->tie_rod_change))
    return g_strdup ("–");
  if (fabs (place->tie_rod_turns) < 0.005)
    return NULL;
  return g_strdup_printf (place->tie_rod_change > 0.0 ? _ ("%s turns longer (%s)")
                                                      : _ ("%s turns shorter (%s)"),
                          turns, length);
}

static gboolean
resets_toe (const FittingFacts *facts)
{
  return facts->card->setup->toe == TOE_RESET;
}

char *
fitting_tie_rod_words (const FittingFacts *facts, CarSide side)
{
  char *turns = turns_words (fitting_now (facts, side));

  return turns != NULL ? turns : g_strdup (_ ("leave as it is"));
}

gboolean
fitting_toe_waits (const FittingFacts *facts, CarSide side)
{
  g_autofree char *turns = turns_words (fitting_now (facts, side));

  return !resets_toe (facts) && turns != NULL;
}

char *
fitting_tie_rod_remark (const FittingFacts *facts, CarSide side)
{
  const ChoicePlace *now = fitting_now (facts, side);
  g_autofree char *toe = fitting_number (now, CHOICE_TOE_BEFORE_RESET);
  g_autofree char *was =
      unit_text (UNIT_ANGLE, facts->measured[side].value[QUANTITY_TOE_IN] * DEGREES, 2);

  if (resets_toe (facts))
    return g_strdup_printf (_ ("before that toe is %s, %s"), toe,
                            quantity_sign_words (QUANTITY_TOE_IN, now->toe_before_reset));
  if (!fitting_toe_waits (facts, side))
    return g_strdup (_ ("toe is as it was"));
  /* Translators: of one wheel, when the tie rod has been turned. */
  return g_strdup_printf (_ ("then toe is %s, as measured"), was);
}

static char *
number_with_unit (double value, const ChoiceNumberInfo *info)
{
  if (!isfinite (value))
    return g_strdup ("– ");
  if (info->kind != UNIT_NONE)
    return unit_text (info->kind, value, info->decimals);

  g_autofree char *number = number_text (value, info->decimals);
  return g_strconcat (number, " ", info->unit, NULL);
}

char *
fitting_number (const ChoicePlace *place, ChoiceNumber number)
{
  const ChoiceNumberInfo info = choice_number_info (number);

  return number_with_unit (choice_number (place, number), &info);
}

static const char *
part_name (StrutPart part)
{
  static const char *const names[N_STRUT_PARTS] = {
    [STRUT_TUBE] = NC_ ("part of the strut", "tube"),
    [STRUT_SPRING_SEAT] = NC_ ("part of the strut", "spring seat"),
    [STRUT_SPRING] = NC_ ("part of the strut", "spring"),
  };

  return g_dpgettext2 (GETTEXT_PACKAGE, "part of the strut", names[part]);
}

static gboolean
is_change (Aim aim)
{
  return aim == AIM_SCRUB_CHANGE || aim == AIM_TOE_CHANGE;
}

static void
append_aim (GString *text, const CarTarget *target)
{
  g_autofree char *range = choice_target_text (target);

  if (text->len > 0)
    g_string_append (text, " · ");
  g_string_append_printf (text,
                          is_change (target->aim) ? _ ("aim: change %s") : _ ("aim %s"),
                          range);
}

char *
fitting_aim (const Car *car, ChoiceNumber number)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (Aim aim = 0; aim < N_AIMS; aim++)
    for (guint i = 0; i < car->targets->len; i++) {
      const CarTarget *target = &g_array_index (car->targets, CarTarget, i);

      if (target->aim == aim && choice_number_answers_aim (number, aim))
        append_aim (text, target);
    }
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

static char *
bound (const char *format, double value, ChoiceNumber number)
{
  const ChoiceNumberInfo info = choice_number_info (number);
  g_autofree char *text = number_with_unit (value, &info);

  return g_strdup_printf (format, text);
}

/* With the part that is nearest to the tyre. */
static char *
tyre_limit (const FittingFacts *facts)
{
  const TyreClearance *first = &fitting_now (facts, FITTING_FIRST)->clearance;
  const TyreClearance *second = &fitting_now (facts, FITTING_SECOND)->clearance;
  g_autofree char *least =
      bound (_ ("at least %s"), facts->card->car->limits.tyre_clearance_mm,
             CHOICE_TYRE_CLEARANCE);

  if (!isfinite (first->least) || !isfinite (second->least))
    return g_steal_pointer (&least);
  if (first->nearest == second->nearest)
    return g_strdup_printf ("%s · %s", least, part_name (first->nearest));
  return g_strdup_printf ("%s · %s / %s", least, part_name (first->nearest),
                          part_name (second->nearest));
}

char *
fitting_limit (const FittingFacts *facts, ChoiceNumber number)
{
  const CarLimits *limits = &facts->card->car->limits;
  const Plate *plate = facts->card->answer->plate;
  char *aim;

  switch (number) {
  case CHOICE_TYRE_CLEARANCE:
    return tyre_limit (facts);
  case CHOICE_EDGE_MARGIN:
    return bound (_ ("at least %s"), limits->edge_margin_mm, number);
  case CHOICE_BEARING_TILT:
    return plate->bearing_tilt_deg > 0.0
               ? bound (_ ("at most %s"), plate->bearing_tilt_deg, number)
               : g_strdup (_ ("not given by the plate"));
  case CHOICE_ROD_SIDE_FORCE:
    return g_strdup (facts->card->carrier == CARRIED_BY_COIL
                         ? _ ("estimate, with a coil on the strut")
                         : _ ("estimate, with a torsion bar"));
  default:
    aim = fitting_aim (facts->card->car, number);
    return aim != NULL ? aim : g_strdup ("");
  }
}

const char *
fitting_caution (void)
{
  return _ (
      "Tightening torques, safe lifting, the handling of springs, wheel alignment and what "
      "the law of the road asks for are left to the maker's documents, local codes and "
      "licensed practice. Load figures are estimates for comparison, not a proof of "
      "strength.");
}
