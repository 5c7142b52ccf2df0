/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/advice/plausibility.h"
#include "kernel/sweep.h"
#include "model/car/car-json-members.h"
#include "model/choice/choice.h"
#include "model/study/quantity-info.h"
#include "model/study/setup-title.h"
#include "model/study/study.h"
#include "model/study/travel-gap.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What rounding may leave of a value that sits on its band's edge. */
#define EDGE 1e-9

/* mm between the tyre's contact and the ground that points are measured from: what a tape
 * and a soft tyre leave; common practice, no published source. */
#define GROUND_LIMIT 10.0

/* A band for a road car with struts, as measured at its reference height. */
typedef struct {
  const char *id;
  const char *name; /* translated where it is not the quantity's own, else NULL */
  Quantity quantity;
  gboolean is_slope; /* the quantity's change per mm of travel instead of its value */
  double factor;     /* of the edge value: both wheels, 25 mm of bump, a fall */
  UnitKind kind;
  const char *unit; /* as stored */
  int decimals;
  double least, most;
  gboolean holds_for_setups; /* whether it says something about a moved mount too */
  const char *source;        /* translated */
} Band;

static const Band bands[] = {
  { "caster", NULL, QUANTITY_CASTER, FALSE, 1, UNIT_ANGLE, "°", 2, 1.5, 7.5, TRUE,
    N_ ("Workshop manuals of cars with struts, 2003 to 2021, give 1°30′ to 5°21′; sporting "
        "versions have 7 to 8°.") },
  { "camber", NULL, QUANTITY_CAMBER, FALSE, 1, UNIT_ANGLE, "°", 2, -1.5, 0.5, TRUE,
    N_ ("Workshop manuals of cars with struts give −0°36′ ± 45′, −0°20′ ± 30′ and "
        "−0°30′ ± 45′.") },
  { "sai", NULL, QUANTITY_SAI, FALSE, 1, UNIT_ANGLE, "°", 2, 9, 16, TRUE,
    N_ ("A workshop manual of a car with struts gives 10°05′ ± 45′; handbooks give 10 to "
        "15½°, from memory.") },
  { "total-toe", N_ ("Total toe-in"), QUANTITY_TOE_IN, FALSE, 2, UNIT_ANGLE, "°", 2, -0.2,
    0.3, TRUE, N_ ("Workshop manuals of cars with struts give 0 ± 12′ and 0 ± 2 mm.") },
  { "scrub-radius", NULL, QUANTITY_SCRUB_RADIUS, FALSE, 1, UNIT_LENGTH, " mm", 1, -20, 50,
    TRUE,
    N_ ("From memory of a chassis handbook, not seen again; front-drive cars stand near "
        "−20 to +10 mm.") },
  { "trail", NULL, QUANTITY_TRAIL, FALSE, 1, UNIT_LENGTH, " mm", 1, 5, 40, TRUE,
    N_ ("From memory, no published source.") },
  { "roll-centre-height", NULL, QUANTITY_ROLL_CENTRE_HEIGHT, FALSE, 1, UNIT_LENGTH, " mm",
    1, 0, 120, FALSE,
    N_ ("A chassis handbook gives 30 to 100 mm for a front axle, from memory; the band here "
        "is wider.") },
  { "roll-centre-fall", N_ ("The roll centre's fall as a multiple of the lowering"),
    QUANTITY_ROLL_CENTRE_HEIGHT, TRUE, -1, UNIT_NONE, "", 2, 2, 3.5, FALSE,
    N_ ("Computed on two reference corners: 2.77 and 2.81.") },
  { "camber-gain", N_ ("Camber gain over 25 mm of bump"), QUANTITY_CAMBER_GAIN, FALSE, 25,
    UNIT_ANGLE, "°", 2, -0.9, -0.2, FALSE,
    N_ ("Computed on two reference corners: −0.44° and −0.50° at the height as "
        "measured.") },
  { "strut-ratio", NULL, QUANTITY_STRUT_RATIO, FALSE, 1, UNIT_NONE, "", 3, 0.9, 1.0,
    FALSE,
    N_ ("Computed on three reference corners: 0.95 to 0.96 at the height as measured.") },
  { "bump-steer", N_ ("Bump steer over 25 mm of bump"), QUANTITY_BUMP_STEER, FALSE, 25,
    UNIT_ANGLE, "°", 2, -0.1, 0.1, TRUE, N_ ("From memory, no published source.") },
  { "anti-dive", NULL, QUANTITY_ANTI_DIVE, FALSE, 1, UNIT_NONE, " %", 1, 0, 50, FALSE,
    N_ ("From memory of a handbook on vehicle dynamics, not seen again.") },
};

static void
warning_free (gpointer data)
{
  PlausibilityWarning *warning = data;

  g_free (warning->sentence);
  g_free (warning);
}

/* Takes @sentence, and puts the setup's name before it. */
static void
warn (GPtrArray *warnings, const Car *car, int setup, const char *id, char *sentence)
{
  PlausibilityWarning *warning = g_new (PlausibilityWarning, 1);

  warning->id = id;
  warning->setup = setup;
  warning->sentence = sentence;
  if (setup != PLAUSIBILITY_AS_MEASURED) {
    /* Translators: a setup's name and a whole sentence about it. */
    warning->sentence =
        g_strdup_printf (_ ("Setup “%s”: %s"),
                         setup_title (car_setup (car, (guint) setup)), sentence);
    g_free (sentence);
  }
  g_ptr_array_add (warnings, warning);
}

static double
band_value (const Band *band, const Measures *measures)
{
  const double *from = band->is_slope ? measures->slope : measures->value;

  return band->factor * quantity_edge_value (band->quantity, from[band->quantity]);
}

static const char *
band_name (const Band *band)
{
  return band->name != NULL ? _ (band->name) : quantity_info (band->quantity).name;
}

const char *
plausibility_band_unit (UnitKind kind, const char *stored)
{
  if (kind == UNIT_ANGLE)
    return unit_symbol (UNIT_ANGLE);
  return kind == UNIT_LENGTH && unit_choice ()->length == LENGTH_INCH ? " in" : stored;
}

static char *
band_sentence (const Band *band, double value)
{
  const char *name = band_name (band);
  const char *unit = plausibility_band_unit (band->kind, band->unit);
  g_autofree char *least = unit_plain_number (band->kind, band->least, band->decimals);
  g_autofree char *most = unit_plain_number (band->kind, band->most, band->decimals);
  char now[64];

  unit_format (band->kind, value, band->decimals, FALSE, now, sizeof now);

  /* Translators: "Caster is 9.10°, outside the 1.5 to 7.5° usual …" */
  return g_strdup_printf (
      _ ("%s is %s%s, outside the %s to %s%s usual for a road car with struts."), name,
      now, unit, least, most, unit);
}

static void
check_bands (GPtrArray *warnings, const Car *car, int setup, const Measures *measures)
{
  for (gsize i = 0; i < G_N_ELEMENTS (bands); i++) {
    const Band *band = &bands[i];
    const double value = band_value (band, measures);

    if (setup != PLAUSIBILITY_AS_MEASURED && !band->holds_for_setups)
      continue;
    if (value < band->least - EDGE || value > band->most + EDGE)
      warn (warnings, car, setup, band->id, band_sentence (band, value));
  }
}

static void
check_travel (GPtrArray *warnings, const Car *car, int setup, const Corner *corner)
{
  const SweepRange range = { -car->droop_mm, car->bump_mm, STUDY_STATIONS };
  g_autofree Station *stations = g_new (Station, STUDY_STATIONS);
  g_autoptr (GArray) gaps = travel_gaps_new ();
  gboolean was_gap = FALSE;

  if (sweep_travel (corner, range, 0.0, stations) == 0) {
    warn (warnings, car, setup, "cannot-assemble",
          g_strdup_printf (_ ("It cannot be assembled at any wheel travel. %s"),
                           pose_status_sentence (stations[0].status)));
    return;
  }
  for (gsize i = 0; i < STUDY_STATIONS; i++) {
    if (stations[i].status != POSE_OK)
      travel_gaps_add (gaps, stations[i].travel, stations[i].status, was_gap);
    was_gap = stations[i].status != POSE_OK;
  }
  for (guint i = 0; i < gaps->len; i++)
    warn (warnings, car, setup, "travel-gap",
          travel_gap_sentence (&g_array_index (gaps, TravelGap, i)));
}

static void
check_lowering (GPtrArray *warnings, const Car *car, guint setup)
{
  const double lowering = car_setup (car, setup)->lowering_mm;
  g_autofree char *now = unit_plain_number (UNIT_LENGTH, lowering, 1);
  g_autofree char *least = unit_plain_number (UNIT_LENGTH, -car->droop_mm, 1);
  g_autofree char *most = unit_plain_text (UNIT_LENGTH, car->bump_mm, 1);

  if (lowering >= -car->droop_mm && lowering <= car->bump_mm)
    return;
  warn (warnings, car, (int) setup, "lowering-outside-travel",
        g_strdup_printf (
            _ ("Lowered by %s %s, it stands outside its wheel travel of %s to %s."), now,
            unit_symbol (UNIT_LENGTH), least, most));
}

static void
check_sides (GPtrArray *warnings, const Car *car)
{
  g_autoptr (GString) names = g_string_new (NULL);
  int n_right = 0;

  for (PointName i = 0; i < N_POINTS; i++)
    if (car->points[i].y < 0.0)
      g_string_append_printf (names, "%scorner.%s[1]", n_right++ > 0 ? ", " : "",
                              car_point_names[i]);
  if (n_right == N_POINTS)
    warn (warnings, car, PLAUSIBILITY_AS_MEASURED, "wrong-side",
          g_strdup (_ ("All points have a negative y and so lie on the right: the left "
                       "corner is wanted, so turn the sign of every y.")));
  else if (n_right > 0)
    warn (
        warnings, car, PLAUSIBILITY_AS_MEASURED, "wrong-side",
        /* Translators: "corner.ball_joint[1]", one or more of them */
        g_strdup_printf (_ ("%s: negative, so right of the car's centre plane; the left "
                            "corner is wanted."),
                         names->str));
}

/* Points are measured from the ground, and there the tyre has to end. */
static void
check_ground (GPtrArray *warnings, const Car *car, double contact_z)
{
  g_autofree char *off = unit_text (UNIT_LENGTH, fabs (contact_z), 1);

  if (fabs (contact_z) <= GROUND_LIMIT + EDGE)
    return;
  warn (warnings, car, PLAUSIBILITY_AS_MEASURED, "ground",
        g_strdup_printf (
            contact_z > 0.0
                ? _ ("As measured, the tyre ends %s above the ground that heights are "
                     "measured from: measure corner.wheel_centre[2] and "
                     "tyre.loaded_radius_mm again.")
                : _ ("As measured, the tyre reaches %s below the ground that heights are "
                     "measured from: measure corner.wheel_centre[2] and "
                     "tyre.loaded_radius_mm again."),
            off));
}

static void
check_arm_pivots (GPtrArray *warnings, const Car *car)
{
  if (car->points[POINT_ARM_REAR_PIVOT].x > car->points[POINT_ARM_FRONT_PIVOT].x)
    warn (warnings, car, PLAUSIBILITY_AS_MEASURED, "arm-pivots",
          g_strdup (_ ("corner.arm_rear_pivot lies ahead of corner.arm_front_pivot.")));
}

static void
check_measured (GPtrArray *warnings, const Car *car, const MeasuredCorner *measured)
{
  const Adjustment none = { 0 };
  Corner corner;
  Station station;

  corner_assemble (measured, &none, &corner);
  check_sides (warnings, car);
  check_arm_pivots (warnings, car);
  if (station_solve (&corner, 0.0, 0.0, &station) == POSE_OK) {
    check_ground (warnings, car, station.measures.contact.z);
    check_bands (warnings, car, PLAUSIBILITY_AS_MEASURED, &station.measures);
  }
  check_travel (warnings, car, PLAUSIBILITY_AS_MEASURED, &corner);
}

/* Read off a gauge as measured, whatever the points are. */
static gboolean
is_of_gauge (const char *id)
{
  return g_str_equal (id, "camber") || g_str_equal (id, "total-toe");
}

static double
bands_excess (const Measures *measures)
{
  double excess = -INFINITY;

  for (gsize i = 0; i < G_N_ELEMENTS (bands); i++) {
    const Band *band = &bands[i];
    const double value = band_value (band, measures);

    if (is_of_gauge (band->id))
      continue;

    excess = fmax (excess, (fmax (band->least - value, value - band->most) - EDGE) /
                               (band->most - band->least));
  }
  return excess;
}

/* How far a point lies where it cannot, as bands_excess () counts: the limit's whole
 * width is 1. */
static double
places_excess (const MeasuredCorner *measured, const Measures *measures)
{
  const double ahead =
      measured->at[POINT_ARM_REAR_PIVOT].x - measured->at[POINT_ARM_FRONT_PIVOT].x;
  const double off_ground = fabs (measures->contact.z) - GROUND_LIMIT - EDGE;

  return fmax (ahead, off_ground) / (2.0 * GROUND_LIMIT);
}

double
plausibility_excess (const Car *car, const MeasuredCorner *measured)
{
  const Adjustment none = { 0 };
  Corner corner;
  Station standing, end;

  for (PointName i = 0; i < N_POINTS; i++)
    if (measured->at[i].y < 0.0)
      return INFINITY;
  if (corner_assemble (measured, &none, &corner).status != CORNER_OK ||
      station_solve (&corner, 0.0, 0.0, &standing) != POSE_OK)
    return INFINITY;

  const double excess = fmax (bands_excess (&standing.measures),
                              places_excess (measured, &standing.measures));
  if (excess <= 0.0 && (station_solve (&corner, car->bump_mm, 0.0, &end) != POSE_OK ||
                        station_solve (&corner, -car->droop_mm, 0.0, &end) != POSE_OK))
    return INFINITY;
  return excess;
}

static void
check_setup (GPtrArray *warnings,
             const Car *car,
             const MeasuredCorner *measured,
             guint setup)
{
  const Adjustment adjustment = car_adjustment (car_setup (car, setup));
  Corner corner;
  Station station;

  if (adjustment.lowering == 0.0 && !adjustment_changes_linkage (&adjustment))
    return;
  corner_assemble (measured, &adjustment, &corner);
  check_lowering (warnings, car, setup);
  if (station_solve (&corner, adjustment.lowering, 0.0, &station) == POSE_OK)
    check_bands (warnings, car, (int) setup, &station.measures);
  check_travel (warnings, car, (int) setup, &corner);
}

static const struct {
  ChoiceFault fault;
  const char *id;
} limits[] = { { CHOICE_TYRE_TOO_NEAR, "tyre-too-near" },
               { CHOICE_EDGE_TOO_NEAR, "edge-too-near" } };

#define N_LIMITS G_N_ELEMENTS (limits)

/* Of each side; NULL within the limit, and where the right side is as the left. */
typedef struct {
  char *of[2][N_LIMITS];
} LimitSentences;

static LimitSentences
limit_sentences (const Car *car, guint setup, const Plate *fitted)
{
  const ChoiceQuestion question = { .setup = setup,
                                    .carrier = choice_usual_carrier (car, setup) };
  const CarSide last = car_sides_differ (car, setup) ? SIDE_RIGHT : SIDE_LEFT;
  LimitSentences said = { 0 };

  for (CarSide side = SIDE_LEFT; side <= last; side++) {
    const ChoicePlace place = choice_place_of_mount (car, &question, side, fitted);

    for (gsize i = 0; i < N_LIMITS; i++)
      if (place.faults & limits[i].fault)
        said.of[side][i] = choice_room_sentence (car, &place, limits[i].fault);
  }
  for (gsize i = 0; i < N_LIMITS; i++)
    if (g_strcmp0 (said.of[SIDE_RIGHT][i], said.of[SIDE_LEFT][i]) == 0)
      g_clear_pointer (&said.of[SIDE_RIGHT][i], g_free);
  return said;
}

static void
limit_sentences_clear (LimitSentences *said)
{
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    for (gsize i = 0; i < N_LIMITS; i++)
      g_clear_pointer (&said->of[side][i], g_free);
}

/* What stood in @before is not said again. */
static void
tell_limits (GPtrArray *warnings,
             const Car *car,
             int setup,
             const LimitSentences *said,
             const LimitSentences *before)
{
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    for (gsize i = 0; i < N_LIMITS; i++) {
      const char *sentence = said->of[side][i];

      if (sentence != NULL && g_strcmp0 (sentence, before->of[side][i]) != 0)
        warn (warnings, car, setup, limits[i].id,
              side == SIDE_RIGHT ? g_strdup_printf (_ ("Right side: %s"), sentence)
                                 : g_strdup (sentence));
    }
}

static const Plate *
fitted_plate (const Car *car, guint setup, const PlateLibrary *library)
{
  const char *name = car_setup (car, setup)->plate;
  const ShelfPlate *shelf =
      name != NULL && library != NULL ? plate_library_find (library, name) : NULL;

  return shelf != NULL ? shelf->plate : NULL;
}

static GPtrArray *
check (const Car *car, const PlateLibrary *library, gboolean is_limited)
{
  GPtrArray *warnings = g_ptr_array_new_with_free_func (warning_free);
  const MeasuredCorner measured = car_measured_corner (car);
  g_autoptr (Car) unmoved = car_without_setups (car);
  const LimitSentences none = { 0 };
  LimitSentences before = is_limited ? limit_sentences (unmoved, 0, NULL) : none;

  check_measured (warnings, car, &measured);
  tell_limits (warnings, car, PLAUSIBILITY_AS_MEASURED, &before, &none);
  for (guint i = 0; i < car->setups->len; i++) {
    LimitSentences said =
        is_limited ? limit_sentences (car, i, fitted_plate (car, i, library)) : none;

    tell_limits (warnings, car, (int) i, &said, &before);
    check_setup (warnings, car, &measured, i);
    limit_sentences_clear (&said);
  }
  limit_sentences_clear (&before);
  return warnings;
}

GPtrArray *
plausibility_check (const Car *car)
{
  return check (car, NULL, FALSE);
}

/* A setup keeps the car's tube. */
static gboolean
has_limits (const Car *car)
{
  if (car->tower.opening_diameter_mm > 0.0 || car_has_strut_shape (car))
    return TRUE;
  for (guint i = 0; i < car->setups->len; i++)
    if (car_setup_has_strut_shape (car, i))
      return TRUE;
  return FALSE;
}

GPtrArray *
plausibility_check_fitted (const Car *car, const PlateLibrary *library)
{
  return check (car, library, has_limits (car));
}

static gboolean
is_of_limit (const char *id)
{
  for (gsize i = 0; i < N_LIMITS; i++)
    if (g_str_equal (limits[i].id, id))
      return TRUE;
  return FALSE;
}

guint
plausibility_n_measured (GPtrArray *warnings)
{
  guint n = 0;

  for (; n < warnings->len; n++) {
    const PlausibilityWarning *warning = warnings->pdata[n];

    if (warning->setup != PLAUSIBILITY_AS_MEASURED || is_of_limit (warning->id))
      break;
  }
  return n;
}

gboolean
plausibility_is_of_points (const PlausibilityWarning *warning)
{
  return warning->setup == PLAUSIBILITY_AS_MEASURED && !is_of_gauge (warning->id) &&
         !is_of_limit (warning->id);
}

guint
plausibility_bands (Quantity quantity, PlausibilityBand found[PLAUSIBILITY_MOST_BANDS])
{
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (bands); i++)
    if (bands[i].quantity == quantity && n < PLAUSIBILITY_MOST_BANDS)
      found[n++] =
          (PlausibilityBand){ bands[i].id,   band_name (&bands[i]), bands[i].unit,
                              bands[i].kind, bands[i].decimals,     bands[i].least,
                              bands[i].most, _ (bands[i].source) };
  return n;
}
