/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/advice/quantity-help.h"

#include "model/advice/plausibility.h"
#include "model/study/quantity-info.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Numbers "on the reference corner" are computed: tests/model/test-quantity-help.c has
 * them from the corner in space and the flat one of tests/kernel/check-data.c. */
typedef struct {
  const char *what;
  const char *sign; /* or NULL: made of the quantity's sign words */
  const char *changes;
  const char *range; /* where no band is watched, else NULL */
  const char *folklore;
  Quantity related[QUANTITY_HELP_MOST_RELATED];
  guint n_related;
} Row;

static const Row rows[N_QUANTITIES] = {
  [QUANTITY_CAMBER] = {
    .what = N_ ("How far the wheel leans from upright, seen from the front: the angle "
                "between the wheel plane and the vertical, as a gauge on the rim reads "
                "it."),
    .changes = N_ ("The upper mount moved inboard makes it more negative: 0.86° for 10 "
                   "mm on the reference corner. A camber bolt tilts the knuckle on the "
                   "strut. Bump and lowering make it more negative until the arm stands "
                   "square to the strut."),
    .folklore = N_ ("It is often said that lowering always gives more negative camber. "
                    "It does so until the lower arm stands square to the strut; a car "
                    "lowered past that point loses camber again."),
    .related = { QUANTITY_CAMBER_GAIN, QUANTITY_SAI,
                 QUANTITY_INCLUDED_ANGLE, QUANTITY_CAMBER_ISO },
    .n_related = 4,
  },
  [QUANTITY_TOE_IN] = {
    .what = N_ ("The angle of one wheel to straight ahead, seen from above. Both wheels "
                "together make the total toe-in of an alignment sheet."),
    .changes = N_ ("The tie rod's length sets it. It moves with camber, caster and ride "
                   "height, because the knuckle moves and the rack does not, unless the "
                   "tie rod is reset."),
    .folklore = N_ ("It is often said that moving the upper mount leaves toe alone. On "
                    "the reference corner 10 mm inboard makes 0.36° more toe-in; how "
                    "much and which way depends on where the tie rod lies. And toe in "
                    "millimetres says nothing without the diameter at which it was "
                    "taken."),
    .related = { QUANTITY_BUMP_STEER, QUANTITY_CAMBER },
    .n_related = 2,
  },
  [QUANTITY_CASTER] = {
    .what = N_ ("How far the steering axis leans back, seen from the side. The axis "
                "runs from the ball joint to the upper mount."),
    .changes = N_ ("The upper mount moved rearward adds to it: 0.88° for 10 mm on the "
                   "reference corner. The ball joint moved forward does the same. "
                   "Raising or lowering one end of the car turns it with the body."),
    .folklore = N_ ("It is often said that more caster costs camber. Straight ahead, "
                    "the mount moved rearward leaves camber almost as it was: 0.01° for "
                    "10 mm on the reference corner. It is with the wheels turned that "
                    "caster speaks: the outer wheel leans in, the inner one out."),
    .related = { QUANTITY_TRAIL, QUANTITY_SAI, QUANTITY_TRAIL_AT_CENTRE },
    .n_related = 3,
  },
  [QUANTITY_SAI] = {
    .what = N_ ("How far the steering axis leans inward, seen from the front. The axis "
                "runs from the ball joint to the upper mount."),
    .changes = N_ ("The upper mount moved inboard adds to it, by about as much as "
                   "camber becomes more negative. A camber bolt hardly changes it. Bump "
                   "adds to it as long as camber grows more negative."),
    .folklore = N_ ("It is often taken for the lean of the strut. The strut's own axis "
                    "passes the ball joint at some distance, so that both angles "
                    "differ, and a camber bolt changes the one and not the other."),
    .related = { QUANTITY_INCLUDED_ANGLE, QUANTITY_CAMBER,
                 QUANTITY_SCRUB_RADIUS, QUANTITY_CASTER },
    .n_related = 4,
  },
  [QUANTITY_INCLUDED_ANGLE] = {
    .what = N_ ("Steering-axis inclination plus camber: the angle between steering axis "
                "and wheel, which are both fixed to the knuckle and strut."),
    .sign = N_ ("It is positive on any usual car; camber counts with its sign."),
    .changes = N_ ("A camber bolt changes it, and so does a bent knuckle or strut. The "
                   "upper mount, the ride height and the arm hardly do."),
    .range = N_ ("No band of its own is watched; it is the sum of steering-axis "
                 "inclination and camber, which have theirs. What tells is a difference "
                 "from left to right."),
    .folklore = N_ ("It is often said that every change of camber changes it. Camber "
                    "set at the upper mount leaves it within 0.03° for 10 mm on the "
                    "reference corner; that is why it finds bent parts."),
    .related = { QUANTITY_SAI, QUANTITY_CAMBER },
    .n_related = 2,
  },
  [QUANTITY_SCRUB_RADIUS] = {
    .what = N_ ("The sideways distance on the ground from the steering axis to the "
                "centre of the tyre's contact. It is the lever of a brake force about "
                "the steering axis."),
    .changes = N_ ("Wheel spacers and rim offset change it nearly millimetre for "
                   "millimetre. More steering-axis inclination takes the axis outboard "
                   "at the ground, and a larger tyre does so too."),
    .folklore = N_ ("The word has two meanings. ISO 23365 lists a scrub radius apart "
                    "from the steering-axis offset at the ground; the workshop means "
                    "that offset, and so does this program. And a spacer does not only "
                    "widen the track: it adds all of its thickness here."),
    .related = { QUANTITY_SCRUB_AT_CENTRE, QUANTITY_SCRUB_IN_TYRE,
                 QUANTITY_SAI, QUANTITY_TRAIL },
    .n_related = 4,
  },
  [QUANTITY_TRAIL] = {
    .what = N_ ("How far ahead of the contact's centre the steering axis meets the "
                "ground. It is the lever with which a side force centres the steering."),
    .changes = N_ ("Caster and the tyre's radius make it; the wheel centre standing "
                   "ahead of the axis takes from it, behind the axis adds to it."),
    .folklore = N_ ("Caster and trail are often named as if they were one. The same "
                    "caster gives more or less trail as the wheel centre stands behind "
                    "or ahead of the axis. The tyre adds a trail of its own, which no "
                    "geometry shows."),
    .related = { QUANTITY_CASTER, QUANTITY_TRAIL_AT_CENTRE, QUANTITY_TRAIL_IN_TYRE },
    .n_related = 3,
  },
  [QUANTITY_ROLL_CENTRE_HEIGHT] = {
    .what = N_ ("The height above the ground of the point in the centre plane through "
                "which a side force on the tyres goes into the body without rolling it."),
    .changes = N_ ("The slope of the lower arm and the lean of the strut make it. "
                   "Raising both inner arm pivots by 10 mm raises it by 29 mm on the "
                   "reference corner, a ball-joint spacer works likewise, and lowering "
                   "the car drops it."),
    .folklore = N_ ("It is often said that it comes down with the car. It comes down "
                    "two to three and a half times as fast, so that the body's lever "
                    "over it grows although the car is lower. And it is no hinge: it "
                    "moves as soon as the body rolls."),
    .related = { QUANTITY_HALF_TRACK_CHANGE, QUANTITY_SWING_ARM_LENGTH,
                 QUANTITY_CAMBER_GAIN },
    .n_related = 3,
  },
  [QUANTITY_HALF_TRACK_CHANGE] = {
    .what = N_ ("How far the centre of the tyre's contact has moved sideways from where "
                "it was measured."),
    .changes = N_ ("Wheel travel, in the measure of the roll centre's height: where the "
                   "roll centre lies on the ground the track stands still. Spacers and "
                   "the upper mount move it too."),
    .range = N_ ("No band is watched. On the reference corner it grows by 1.4 mm at "
                 "most in bump and shrinks by 20 mm at 80 mm of droop (computed)."),
    .folklore = N_ ("It is often said that only wheels and spacers change the track. "
                    "Every millimetre of travel does where the roll centre is off the "
                    "ground: a height of the roll centre and a scrub of the tyre across "
                    "the road are one and the same thing."),
    .related = { QUANTITY_ROLL_CENTRE_HEIGHT, QUANTITY_WHEELBASE_CHANGE },
    .n_related = 2,
  },
  [QUANTITY_WHEELBASE_CHANGE] = {
    .what = N_ ("How far the wheel centre has moved forward or rearward from where it "
                "was measured."),
    .changes = N_ ("Wheel travel, by the slope of the arm's hinge axis and the caster. "
                   "The ball joint moved forward or rearward moves it fully."),
    .range = N_ ("No band is watched. On the reference corner it stays within 2 mm over "
                 "80 mm of travel either way (computed)."),
    .folklore = N_ ("It is often said that more caster pulls the wheel forward. That "
                    "holds where the ball joint is moved forward. The mount moved "
                    "rearward tips the knuckle about the ball joint, and the wheel "
                    "centre above it goes back a little."),
    .related = { QUANTITY_SIDE_VIEW_SLOPE, QUANTITY_CASTER, QUANTITY_HALF_TRACK_CHANGE },
    .n_related = 3,
  },
  [QUANTITY_STRUT_LENGTH] = {
    .what = N_ ("The distance from the strut foot, as it was measured, to the upper "
                "mount."),
    .sign = N_ ("It is a distance, and always positive; bump makes it shorter."),
    .changes = N_ ("Wheel travel, by the strut ratio. The upper mount moved up makes it "
                   "longer at the same height of the car."),
    .range = N_ ("No band is watched: it depends on which point of the axis was taken "
                 "as the foot."),
    .folklore = N_ ("It is often read as the travel that is left. Only its change is "
                    "travel of the damper; how much is left follows from the damper's "
                    "own lengths and its bump stop."),
    .related = { QUANTITY_STRUT_RATIO },
    .n_related = 1,
  },
  [QUANTITY_STRUT_RATIO] = {
    .what = N_ ("How far the strut moves for each millimetre that the wheel moves. A "
                "coil on the strut feels it twice: once in its travel, once in its "
                "force."),
    .sign = N_ ("It is positive: bump shortens the strut. Below 1 the strut moves less "
                "than the wheel."),
    .changes = N_ ("The lean of the strut against the way of the wheel. It grows "
                   "through bump."),
    .folklore = N_ ("It is often said that the rate at the wheel is the spring's rate "
                    "times this ratio squared. That leaves out that the ratio changes "
                    "under load: on the flat reference corner, a spring of 25 N/mm "
                    "under 3500 N makes 25.2 N/mm at the wheel instead of 23.0 N/mm."),
    .related = { QUANTITY_STRUT_LENGTH, QUANTITY_ARM_RATIO },
    .n_related = 2,
  },
  [QUANTITY_ARM_RATIO] = {
    .what = N_ ("How far the lower arm turns for each millimetre that the wheel moves. "
                "A torsion bar on the arm's hinge feels it."),
    .sign = N_ ("It is positive: bump turns the arm up."),
    .changes = N_ ("A longer arm makes it smaller. It is least near the middle of the "
                   "travel and grows to both ends."),
    .range = N_ ("No band is watched; it is nearly one over the arm's reach across the "
                 "car: 0.0031 rad/mm on both reference corners, whose arms reach 320 mm "
                 "(computed)."),
    .folklore = N_ ("It is often said that a torsion bar's rate at the wheel is its own "
                    "rate over the arm's length squared. The wheel stands beyond the "
                    "ball joint, and the ratio changes under load; both count."),
    .related = { QUANTITY_STRUT_RATIO, QUANTITY_ARM_ANGLE },
    .n_related = 2,
  },
  [QUANTITY_CAMBER_GAIN] = {
    .what = N_ ("How much camber changes for each millimetre that the wheel moves up."),
    .changes = N_ ("The angle between lower arm and strut: the further it is from "
                   "square, the more gain. Lowering takes gain away: on the reference "
                   "corner 30 mm take it from −0.0175 to −0.0109°/mm."),
    .folklore = N_ ("It is often said that camber gain ends when the arm is level. It "
                    "ends when the arm stands square to the strut, which comes later: "
                    "on the flat reference corner the arm is level 15 mm into bump and "
                    "camber turns back at 81 mm."),
    .related = { QUANTITY_CAMBER, QUANTITY_SWING_ARM_LENGTH,
                 QUANTITY_ROLL_CENTRE_HEIGHT },
    .n_related = 3,
  },
  [QUANTITY_BUMP_STEER] = {
    .what = N_ ("How much toe changes for each millimetre that the wheel moves up, with "
                "the steering wheel held."),
    .changes = N_ ("The height of the tie rod's ends and its length. A spacer at the "
                   "tie rod's end, the rack moved up or down, and the upper mount, "
                   "which moves the knuckle, change it."),
    .folklore = N_ ("It is often said that a level tie rod has no bump steer. Level or "
                    "not does not matter; its line and length must suit the arm and the "
                    "strut. An end at the wrong height makes a slope, toe one way in "
                    "bump and the other in droop; a rod of the wrong length makes a "
                    "bow, the same way in both."),
    .related = { QUANTITY_TOE_IN, QUANTITY_ROLL_CENTRE_HEIGHT },
    .n_related = 2,
  },
  [QUANTITY_SIDE_VIEW_SLOPE] = {
    .what = N_ ("How far the tyre's contact moves forward for each millimetre of bump, "
                "with the brake locked to the knuckle. It says which share of a brake "
                "force lifts the body."),
    .changes = N_ ("The slope of the arm's hinge axis against the strut's lean, seen "
                   "from the side: the rear pivot raised or lowered, and caster."),
    .range = N_ ("No band of its own is watched; anti-dive, which is made from it, has "
                 "one."),
    .folklore = N_ ("It is often taken from the way of the wheel centre. With the brake "
                    "in the wheel the knuckle turns with the contact: on the reference "
                    "corner the slope is 0.059 locked and 0.019 rolling free."),
    .related = { QUANTITY_ANTI_DIVE, QUANTITY_WHEELBASE_CHANGE },
    .n_related = 2,
  },
  [QUANTITY_ANTI_DIVE] = {
    .what = N_ ("The share of the dive under braking that the geometry takes up instead "
                "of the springs."),
    .changes = N_ ("The side-view slope, the brake share of the front axle, the "
                   "wheelbase, and the height of the centre of gravity. The arm's rear "
                   "pivot raised or lowered against the front one turns it most."),
    .folklore = N_ ("It is often said to keep weight off the front wheels. The load "
                    "that braking moves forward stays the same; only the way it takes "
                    "changes, through the arms instead of the springs."),
    .related = { QUANTITY_SIDE_VIEW_SLOPE, QUANTITY_CASTER },
    .n_related = 2,
  },
  [QUANTITY_SWING_ARM_LENGTH] = {
    .what = N_ ("The distance from the contact's centre to the point about which the "
                "wheel turns at this moment, seen from the front."),
    .changes = N_ ("What changes camber gain: the angle between lower arm and strut. It "
                   "is one over the gain, in radians."),
    .folklore = N_ ("It is often drawn as if it were a part of the car. It belongs to "
                    "one position: where camber turns back it runs through infinity and "
                    "comes again from the other side. Its average over a travel means "
                    "nothing."),
    .related = { QUANTITY_SWING_ARM_CURVATURE, QUANTITY_CAMBER_GAIN,
                 QUANTITY_ROLL_CENTRE_HEIGHT },
    .n_related = 3,
  },
  [QUANTITY_SWING_ARM_CURVATURE] = {
    .what = N_ ("One over the swing-arm length. Where the length is infinite this "
                "passes through zero, so that its curve has no gap."),
    .changes = N_ ("What changes camber gain: the angle between lower arm and strut."),
    .folklore = N_ ("It is often said that a strut has a long swing arm and so no "
                    "camber gain. The gain is this number, small and seldom nothing: "
                    "the two are one thing in other units."),
    .related = { QUANTITY_SWING_ARM_LENGTH, QUANTITY_CAMBER_GAIN },
    .n_related = 2,
  },
  [QUANTITY_CAMBER_ISO] = {
    .what = N_ ("Camber as ISO 8855 takes it: the lean about the car's own lengthways "
                "axis instead of the wheel's."),
    .changes = N_ ("What changes camber. Steering parts the two."),
    .range = N_ ("Straight ahead it is camber, with the band that camber has."),
    .folklore = N_ ("It is often said that there is one camber. With the wheel steered "
                    "36° on the reference corner a gauge on the rim reads 3.7° and this "
                    "angle is 4.5°; a sheet must say which it means."),
    .related = { QUANTITY_CAMBER },
    .n_related = 1,
  },
  [QUANTITY_TRAIL_IN_TYRE] = {
    .what = N_ ("Caster trail taken along the tyre's own plane at the ground instead of "
                "along the car."),
    .changes = N_ ("What changes caster trail. Steering takes it up on the inner wheel "
                   "and down on the outer one."),
    .range = N_ ("Straight ahead it is caster trail, with the band that caster trail "
                 "has."),
    .folklore = N_ ("It is often said that trail stays as the wheel steers. On the "
                    "reference corner it grows from 16 to 47 mm on the inner wheel at "
                    "full lock and falls below zero on the outer one."),
    .related = { QUANTITY_TRAIL, QUANTITY_SCRUB_IN_TYRE },
    .n_related = 2,
  },
  [QUANTITY_SCRUB_IN_TYRE] = {
    .what = N_ ("Scrub radius taken across the tyre's own plane at the ground instead "
                "of across the car."),
    .changes = N_ ("What changes scrub radius. Steering hardly changes it, as the axis "
                   "and the wheel turn together."),
    .range = N_ ("Straight ahead it is scrub radius, with the band that scrub radius "
                 "has."),
    .folklore = N_ ("It is often said that the scrub radius grows with lock. Taken "
                    "across the tyre it stays within 0.8 mm from lock to lock on the "
                    "reference corner."),
    .related = { QUANTITY_SCRUB_RADIUS, QUANTITY_TRAIL_IN_TYRE },
    .n_related = 2,
  },
  [QUANTITY_TRAIL_AT_CENTRE] = {
    .what = N_ ("How far ahead of the wheel centre the steering axis passes at the "
                "wheel centre's height."),
    .changes = N_ ("Where the knuckle carries the wheel: it is built in. Caster moves "
                   "it a little, as the wheel centre stands above the ball joint."),
    .range = N_ ("No band is watched: a maker chooses it to have the trail that he "
                 "wants with the caster that he wants."),
    .folklore = N_ ("It is often left out, and trail worked out as radius times the "
                    "tangent of caster. That holds only where this distance is zero."),
    .related = { QUANTITY_TRAIL, QUANTITY_CASTER, QUANTITY_SCRUB_AT_CENTRE },
    .n_related = 3,
  },
  [QUANTITY_SCRUB_AT_CENTRE] = {
    .what = N_ ("The sideways distance from the steering axis to the wheel centre at "
                "the wheel centre's height. It is the lever of a drive force and of "
                "bumps about the steering axis."),
    .changes = N_ ("Wheel spacers and rim offset, nearly millimetre for millimetre, and "
                   "the steering-axis inclination."),
    .range = N_ ("No band is watched; it is larger than the scrub radius by about the "
                 "tyre's radius times the tangent of the steering-axis inclination: by "
                 "55 mm on the reference corner (computed)."),
    .folklore = N_ ("It is often said that the scrub radius is the lever of the drive "
                    "force. A drive shaft puts its force in at the wheel centre, so "
                    "this is its lever; the scrub radius is that of a brake in the "
                    "wheel."),
    .related = { QUANTITY_SCRUB_RADIUS, QUANTITY_SAI, QUANTITY_TRAIL_AT_CENTRE },
    .n_related = 3,
  },
  [QUANTITY_ARM_ANGLE] = {
    .what = N_ ("How far the lower arm has turned about its hinge from where it was "
                "measured."),
    .changes = N_ ("Wheel travel, by the arm ratio."),
    .range = N_ ("No band is watched: it counts from the height as measured and is zero "
                 "there."),
    .folklore = N_ ("It is often read as the arm's slope. Zero means as measured and "
                    "not level; the sheet shows how the arm slopes."),
    .related = { QUANTITY_ARM_RATIO, QUANTITY_CAMBER_GAIN },
    .n_related = 2,
  },
};

static char *
sign_sentences (Quantity quantity)
{
  const QuantityInfo info = quantity_info (quantity);

  if (rows[quantity].sign != NULL)
    return g_strdup (_ (rows[quantity].sign));
  /* Translators: "Positive: top leans out. Negative: top leans in." */
  return g_strdup_printf (_ ("Positive: %s. Negative: %s."), info.positive,
                          info.negative);
}

static void
append_band (GString *text, const PlausibilityBand *band)
{
  g_autofree char *least = unit_plain_number (band->kind, band->least, band->decimals);
  g_autofree char *most = unit_plain_number (band->kind, band->most, band->decimals);
  const char *unit = plausibility_band_unit (band->kind, band->unit);

  if (text->len > 0)
    g_string_append_c (text, ' ');
  /* Translators: "Caster: 1.5 to 7.5° is usual …", and after it where that is from. */
  g_string_append_printf (
      text, _ ("%s: %s to %s%s is usual for a road car with struts, as measured. %s"),
      band->name, least, most, unit, band->source);
}

/* The swing arm is one over camber gain: its band is that of camber gain. */
static char *
swing_arm_range (gboolean is_curvature)
{
  PlausibilityBand gain[PLAUSIBILITY_MOST_BANDS];
  const double millimetres = 25.0; /* of bump, over which that band is taken */
  const double degrees = 180.0 / G_PI;

  plausibility_bands (QUANTITY_CAMBER_GAIN, gain);
  const double strong = fabs (gain[0].least) / millimetres / degrees;
  const double weak = fabs (gain[0].most) / millimetres / degrees;
  const UnitKind kind = is_curvature ? UNIT_PER_LENGTH : UNIT_LENGTH;
  const int decimals = is_curvature ? 2 : 0;
  char least[32], most[32];

  unit_format (kind, is_curvature ? weak * 1000.0 : round (0.1 / strong) * 10.0, decimals,
               FALSE, least, sizeof least);
  unit_format (kind, is_curvature ? strong * 1000.0 : round (0.1 / weak) * 10.0, decimals,
               FALSE, most, sizeof most);
  return g_strdup_printf (_ ("%s to %s %s is what the band of camber gain comes to."),
                          least, most, unit_symbol (kind));
}

static char *
range_sentences (Quantity quantity)
{
  PlausibilityBand bands[PLAUSIBILITY_MOST_BANDS];
  const guint n = plausibility_bands (quantity, bands);
  GString *text;

  if (quantity == QUANTITY_SWING_ARM_LENGTH || quantity == QUANTITY_SWING_ARM_CURVATURE)
    return swing_arm_range (quantity == QUANTITY_SWING_ARM_CURVATURE);
  if (n == 0)
    return g_strdup (_ (rows[quantity].range));
  text = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    append_band (text, &bands[i]);
  return g_string_free (text, FALSE);
}

QuantityHelp
quantity_help (Quantity quantity)
{
  g_assert (quantity >= 0 && quantity < N_QUANTITIES);

  const Row *row = &rows[quantity];
  QuantityHelp help = { .what = _ (row->what),
                        .sign = sign_sentences (quantity),
                        .changes = _ (row->changes),
                        .range = range_sentences (quantity),
                        .folklore = _ (row->folklore),
                        .n_related = row->n_related };

  for (guint i = 0; i < row->n_related; i++)
    help.related[i] = row->related[i];
  return help;
}

void
quantity_help_clear (QuantityHelp *help)
{
  g_clear_pointer (&help->sign, g_free);
  g_clear_pointer (&help->range, g_free);
}

gboolean
quantity_help_mentions (Quantity quantity, const char *text)
{
  const QuantityInfo info = quantity_info (quantity);
  g_auto (QuantityHelp) help = quantity_help (quantity);
  g_autofree char *page =
      g_strjoin (" ", info.name, info.short_name, help.what, help.changes, NULL);
  g_autofree char *folded = g_utf8_casefold (page, -1);
  g_autofree char *wanted = g_utf8_casefold (text, -1);
  g_auto (GStrv) words = g_strsplit_set (wanted, " \t", -1);

  for (char **word = words; *word != NULL; word++)
    if (strstr (folded, *word) == NULL)
      return FALSE;
  return TRUE;
}
