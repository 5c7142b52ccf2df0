/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The quick way through the travel against the stations of a toe curve. */
#include "check-data.h"
#include "random-corner.h"

#include "model/choice/choice-travel.h"

#include <math.h>

#define N_RANDOM 200
#define SAME 1e-9

static void
check_corner (const RandomCase *random, ToeCurveRange range, guint *n_assembled)
{
  Adjustment adjustment = random->adjustment;
  const Vec3 strut = vec3_unit (vec3_sub (random->measured.at[POINT_UPPER_MOUNT],
                                          random->measured.at[POINT_STRUT_FOOT]));
  ToeCurve curve;
  ChoiceTravel travel;
  Pose standing;

  adjustment.lowering = range.standing;
  const Corner corner = check_assemble (&random->measured, adjustment);
  if (pose_at_travel (&corner, range.standing, 0.0, NULL, &standing) != POSE_OK)
    return;
  const gboolean is_whole = toe_curve_solve (&corner, range, &curve);
  g_assert_cmpint (choice_travel_solve (&corner, &standing, range, strut, &travel), ==,
                   is_whole);
  if (!is_whole)
    return;
  double longest = vec3_distance (corner.upper_mount, standing.strut_foot);
  for (int i = 0; i < TOE_CURVE_STATIONS; i++) {
    const Vec3 chord = vec3_sub (curve.at[i].strut_direction, strut);

    g_assert_cmpfloat_with_epsilon (travel.toe[i], curve.toe[i], SAME);
    g_assert_cmpfloat_with_epsilon (travel.chord_2[i], vec3_dot (chord, chord), SAME);
    longest = fmax (longest, vec3_distance (corner.upper_mount, curve.at[i].strut_foot));
  }
  g_assert_cmpfloat_with_epsilon (travel.longest, longest, SAME);
  ++*n_assembled;
}

static void
test_stations (void)
{
  Dice dice = { 21 };
  guint n_assembled = 0;

  for (int i = 0; i < N_RANDOM; i++) {
    const RandomCase random = dice_case (&dice);
    const double standing = dice_between (&dice, -20.0, 50.0);
    const double down = dice_between (&dice, 0.0, 90.0);
    const double up = i % 7 == 0 ? 0.0 : dice_between (&dice, 0.0, 90.0);

    check_corner (&random, (ToeCurveRange){ standing, -down, up }, &n_assembled);
  }
  g_test_message ("%u of %d assembled", n_assembled, N_RANDOM);
  g_assert_cmpuint (n_assembled, >=, N_RANDOM / 2);
}

static void
test_no_travel (void)
{
  Dice dice = { 22 };
  guint n_assembled = 0;
  RandomCase random = dice_case (&dice);

  check_corner (&random, (ToeCurveRange){ 10.0, 0.0, 0.0 }, &n_assembled);
  g_assert_cmpuint (n_assembled, ==, 1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/travel/stations", test_stations);
  g_test_add_func ("/choice/travel/none", test_no_travel);
  return g_test_run ();
}
