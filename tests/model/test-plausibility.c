/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The bands' sources stand beside them in plausibility.c; here each is crossed once. */
#include "car-fixture.h"

#include "model/advice/plausibility.h"

#include <string.h>

static const PlausibilityWarning *
find (GPtrArray *warnings, const char *id, int setup)
{
  for (guint i = 0; i < warnings->len; i++) {
    const PlausibilityWarning *warning = g_ptr_array_index (warnings, i);

    if (g_str_equal (warning->id, id) && warning->setup == setup)
      return warning;
  }
  return NULL;
}

static guint
count_as_measured (GPtrArray *warnings)
{
  guint n = 0;

  for (guint i = 0; i < warnings->len; i++) {
    const PlausibilityWarning *warning = g_ptr_array_index (warnings, i);

    n += warning->setup == PLAUSIBILITY_AS_MEASURED ? 1 : 0;
  }
  return n;
}

static void
test_demo_cars_are_plausible (void)
{
  static const char *const names[] = { "wren", "fieldfare", "dunnock" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autoptr (Car) car = fixture_demo (names[i]);
    g_autoptr (GPtrArray) warnings = plausibility_check (car);

    g_assert_cmpuint (count_as_measured (warnings), ==, 0);
    g_assert_cmpuint (car->setups->len, ==, 3);
    g_assert_nonnull (strstr (car->notes, "invented"));
  }
}

/* No caster and no trail are the point of it, and its notes say so. */
static void
test_the_flat_corner_lacks_only_caster_and_trail (void)
{
  g_autoptr (Car) car = fixture_demo ("lapwing");
  g_autoptr (GPtrArray) warnings = plausibility_check (car);

  g_assert_cmpuint (count_as_measured (warnings), ==, 2);
  g_assert_nonnull (find (warnings, "caster", PLAUSIBILITY_AS_MEASURED));
  g_assert_nonnull (find (warnings, "trail", PLAUSIBILITY_AS_MEASURED));
  g_assert_nonnull (strstr (car->notes, "Caster and trail"));
}

static void
test_set_m_is_plausible (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  g_autoptr (GPtrArray) warnings = plausibility_check (car);

  g_assert_cmpuint (count_as_measured (warnings), ==, 0);
}

typedef struct {
  const char *id;
  PointName point;
  Vec3 move; /* of that point of the plain car, mm */
} Crossing;

static void
test_every_band_is_watched (void)
{
  static const Crossing crossings[] = {
    { "caster", POINT_UPPER_MOUNT, { -60, 0, 0 } },
    { "caster", POINT_UPPER_MOUNT, { 40, 0, 0 } },
    { "sai", POINT_UPPER_MOUNT, { 0, -60, 0 } },
    { "sai", POINT_UPPER_MOUNT, { 0, 60, 0 } },
    { "scrub-radius", POINT_WHEEL_CENTRE, { 0, 60, 0 } },
    { "scrub-radius", POINT_WHEEL_CENTRE, { 0, -40, 0 } },
    { "trail", POINT_WHEEL_CENTRE, { 20, 0, 0 } },
    { "trail", POINT_WHEEL_CENTRE, { -30, 0, 0 } },
    { "roll-centre-height", POINT_BALL_JOINT, { 0, 0, -40 } },
    { "roll-centre-height", POINT_BALL_JOINT, { 0, 0, 40 } },
    { "roll-centre-fall", POINT_ARM_FRONT_PIVOT, { 0, 160, 0 } },
    { "camber-gain", POINT_BALL_JOINT, { 0, 0, 60 } },
    { "strut-ratio", POINT_UPPER_MOUNT, { 0, -160, 0 } },
    { "bump-steer", POINT_TIE_ROD_INNER, { 0, 0, 20 } },
    { "bump-steer", POINT_TIE_ROD_INNER, { 0, 0, -20 } },
    { "anti-dive", POINT_ARM_REAR_PIVOT, { 0, 0, -40 } },
    { "anti-dive", POINT_ARM_REAR_PIVOT, { 0, 0, 60 } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (crossings); i++) {
    g_autoptr (Car) car = fixture_car ("plain");
    Vec3 *point = &car->points[crossings[i].point];

    g_test_message ("%s, row %u", crossings[i].id, (guint) i);
    *point = vec3_add (*point, crossings[i].move);
    g_autoptr (GPtrArray) warnings = plausibility_check (car);
    g_assert_nonnull (find (warnings, crossings[i].id, PLAUSIBILITY_AS_MEASURED));
  }
}

static void
test_alignment_is_watched (void)
{
  g_autoptr (Car) car = fixture_car ("plain");

  car->camber_deg = -1.51;
  car->toe_in_deg = 0.16; /* 0.32 for both wheels */
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  g_assert_cmpstr (find (warnings, "camber", PLAUSIBILITY_AS_MEASURED)->sentence, ==,
                   "Camber is −1.51°, outside the −1.5 to 0.5° usual for a road car with "
                   "struts.");
  g_assert_cmpstr (find (warnings, "total-toe", PLAUSIBILITY_AS_MEASURED)->sentence, ==,
                   "Total toe-in is 0.32°, outside the −0.2 to 0.3° usual for a road car "
                   "with struts.");

  car->camber_deg = -1.5;
  car->toe_in_deg = 0.15;
  g_autoptr (GPtrArray) none = plausibility_check (car);
  g_assert_null (find (none, "camber", PLAUSIBILITY_AS_MEASURED));
  g_assert_null (find (none, "total-toe", PLAUSIBILITY_AS_MEASURED));
}

static void
test_the_right_side_is_noticed (void)
{
  g_autoptr (Car) one = fixture_car ("plain"), all = fixture_car ("plain");

  one->points[POINT_TIE_ROD_INNER].y *= -1.0;
  g_autoptr (GPtrArray) of_one = plausibility_check (one);
  g_assert_true (
      g_str_has_prefix (find (of_one, "wrong-side", PLAUSIBILITY_AS_MEASURED)->sentence,
                        "corner.tie_rod_inner[1]: negative"));

  for (PointName i = 0; i < N_POINTS; i++)
    all->points[i].y *= -1.0;
  g_autoptr (GPtrArray) of_all = plausibility_check (all);
  g_assert_true (
      g_str_has_prefix (find (of_all, "wrong-side", PLAUSIBILITY_AS_MEASURED)->sentence,
                        "All points"));
}

/* 268 mm of tyre leaning 0.4° reach 268 · cos 0.4° = 267.99 mm down from its centre. */
static void
test_the_tyre_has_to_stand_on_the_ground (void)
{
  static const double near[] = { 258.0, 277.98 };

  for (gsize i = 0; i < G_N_ELEMENTS (near); i++) {
    g_autoptr (Car) car = fixture_car ("plain");

    car->points[POINT_WHEEL_CENTRE].z = near[i];
    g_autoptr (GPtrArray) warnings = plausibility_check (car);
    g_assert_null (find (warnings, "ground", PLAUSIBILITY_AS_MEASURED));
  }

  g_autoptr (Car) high = fixture_car ("plain"), low = fixture_car ("plain");
  high->points[POINT_WHEEL_CENTRE].z = 368.0;
  g_autoptr (GPtrArray) of_high = plausibility_check (high);
  g_assert_cmpstr (find (of_high, "ground", PLAUSIBILITY_AS_MEASURED)->sentence, ==,
                   "As measured, the tyre ends 100.0 mm above the ground that heights "
                   "are measured from: measure corner.wheel_centre[2] and "
                   "tyre.loaded_radius_mm again.");
  g_assert_true (
      plausibility_is_of_points (find (of_high, "ground", PLAUSIBILITY_AS_MEASURED)));
  const MeasuredCorner measured = car_measured_corner (high);
  g_assert_cmpfloat_with_epsilon (plausibility_excess (high, &measured), 90.0 / 20.0,
                                  1e-3);

  low->loaded_radius_mm = 279.0;
  g_autoptr (GPtrArray) of_low = plausibility_check (low);
  g_assert_cmpstr (find (of_low, "ground", PLAUSIBILITY_AS_MEASURED)->sentence, ==,
                   "As measured, the tyre reaches 11.0 mm below the ground that heights "
                   "are measured from: measure corner.wheel_centre[2] and "
                   "tyre.loaded_radius_mm again.");
}

static void
test_swapped_pivots_are_noticed (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  const Vec3 front = car->points[POINT_ARM_FRONT_PIVOT];

  car->points[POINT_ARM_FRONT_PIVOT] = car->points[POINT_ARM_REAR_PIVOT];
  car->points[POINT_ARM_REAR_PIVOT] = front;
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  const MeasuredCorner measured = car_measured_corner (car);
  g_assert_cmpstr (find (warnings, "arm-pivots", PLAUSIBILITY_AS_MEASURED)->sentence, ==,
                   "corner.arm_rear_pivot lies ahead of corner.arm_front_pivot.");
  g_assert_cmpfloat (plausibility_excess (car, &measured), >, 0.0);
}

static void
test_setups_are_named (void)
{
  g_autoptr (Car) car = fixture_car ("plain");

  car_setup (car, 2)->lowering_mm = 95.0;
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  g_assert_cmpstr (find (warnings, "lowering-outside-travel", 2)->sentence, ==,
                   "Setup “12 in, 6 back, toe reset”: Lowered by 95 mm, it stands "
                   "outside its "
                   "wheel travel of −80 to 80 mm.");
  g_assert_null (find (warnings, "lowering-outside-travel", 1));
}

static void
test_impossible_setups_are_told (void)
{
  g_autoptr (Car) car = fixture_car ("impossible-setup");
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  const PlausibilityWarning *warning = find (warnings, "cannot-assemble", 1);

  g_assert_nonnull (warning);
  g_assert_true (g_str_has_prefix (warning->sentence,
                                   "Setup “12 in, 6 back”: It cannot be "
                                   "assembled at any wheel travel. The "));
}

/* A travel that this arm cannot make. */
static void
test_stretches_out_of_reach_are_told (void)
{
  g_autoptr (Car) car = fixture_car ("plain");

  car->droop_mm = 450.0;
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  const PlausibilityWarning *warning =
      find (warnings, "travel-gap", PLAUSIBILITY_AS_MEASURED);
  g_assert_nonnull (warning);
  g_assert_true (g_str_has_prefix (warning->sentence, "From −450 to −"));
}

static void
test_a_setup_that_moves_nothing_says_nothing (void)
{
  g_autoptr (Car) car = fixture_car ("plain");

  car->camber_deg = -2.5;
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  g_assert_nonnull (find (warnings, "camber", PLAUSIBILITY_AS_MEASURED));
  g_assert_null (find (warnings, "camber", 0));
  g_assert_nonnull (find (warnings, "camber", 1));
}

/* Nothing but hardware: a bolt of −5° leans the wheel by that, so −0.4° becomes −5.4°. */
static void
test_hardware_alone_is_watched (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  CarCorrections *fitted = &car_setup (car, 0)->corrections;

  fitted->camber_bolt_deg = -5.0;
  g_autoptr (GPtrArray) bolted = plausibility_check (car);
  g_assert_nonnull (find (bolted, "camber", 0));

  *fitted = (CarCorrections){ .ball_joint_spacer_mm = 120.0 };
  g_autoptr (GPtrArray) spaced = plausibility_check (car);
  g_assert_nonnull (find (spaced, "camber", 0));
  g_assert_nonnull (find (spaced, "trail", 0));

  *fitted = (CarCorrections){ 0 };
  g_autoptr (GPtrArray) bare = plausibility_check (car);
  g_assert_null (find (bare, "camber", 0));
}

/* The opening is 82 mm wide, its centre 3 mm inboard and 2 mm back: a mount 50 mm in and
 * 2 mm back is 47 mm off it, 6 mm past the edge, whatever its bearing. */
static void
test_past_the_towers_edge_is_told (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");

  g_autoptr (GPtrArray) within = plausibility_check_fitted (car, NULL);
  g_assert_null (find (within, "edge-too-near", 1));
  car_setup (car, 1)->mount = (MountOffset){ 50.0, 2.0, 0.0 };
  g_autoptr (GPtrArray) past = plausibility_check_fitted (car, NULL);
  g_assert_cmpstr (
      find (past, "edge-too-near", 1)->sentence, ==,
      "Setup “12 in, 6 back”: The upper mount stands 6.0 mm past the tower's edge, 2.0 mm "
      "of room are asked for.");
  g_assert_null (find (past, "edge-too-near", 0));
  car->tower.opening_diameter_mm = 0.0;
  g_autoptr (GPtrArray) unknown = plausibility_check_fitted (car, NULL);
  g_assert_null (find (unknown, "edge-too-near", 1));
}

/* 17 mm off the opening's centre a bearing of 45 mm leaves (82 − 45) / 2 − 17 = 1.5 mm.
 */
static void
test_the_fitted_plates_bearing_counts (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");
  g_autoptr (PlateLibrary) library = plate_library_load (NULL);
  CarSetup *setup = car_setup (car, 1);

  g_assert_cmpfloat (plate_library_find (library, "Sliding camber plate")
                         ->plate->bearing_diameter_mm,
                     ==, 45.0);
  g_free (setup->plate);
  setup->plate = g_strdup ("Sliding camber plate");
  setup->mount = (MountOffset){ 20.0, 2.0, 0.0 };
  g_autoptr (GPtrArray) warnings = plausibility_check_fitted (car, library);
  g_assert_cmpstr (find (warnings, "edge-too-near", 1)->sentence, ==,
                   "Setup “12 in, 6 back”: The upper mount leaves 1.5 mm to the tower's "
                   "edge, 2.0 mm are asked for.");
  g_autoptr (GPtrArray) of_a_point = plausibility_check_fitted (car, NULL);
  g_assert_null (find (of_a_point, "edge-too-near", 1));
}

static void
test_the_right_mount_is_told_by_itself (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");
  CarSetup *setup = car_setup (car, 1);

  setup->right.is_own = TRUE;
  setup->right.mount = (MountOffset){ 50.0, 2.0, 0.0 };
  g_autoptr (GPtrArray) warnings = plausibility_check_fitted (car, NULL);
  g_assert_cmpstr (
      find (warnings, "edge-too-near", 1)->sentence, ==,
      "Setup “12 in, 6 back”: Right side: The upper mount stands 6.0 mm past "
      "the tower's edge, 2.0 mm of room are asked for.");
}

/* No mount moves the tube against the tyre: what was so as measured is told once. */
static void
test_room_to_the_tyre_is_watched (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");

  g_autoptr (GPtrArray) enough = plausibility_check_fitted (car, NULL);
  g_assert_null (find (enough, "tyre-too-near", PLAUSIBILITY_AS_MEASURED));
  car->limits.tyre_clearance_mm = 300.0;
  g_autoptr (GPtrArray) warnings = plausibility_check_fitted (car, NULL);
  const char *sentence =
      find (warnings, "tyre-too-near", PLAUSIBILITY_AS_MEASURED)->sentence;
  g_assert_true (g_str_has_prefix (sentence, "The strut leaves "));
  g_assert_true (g_str_has_suffix (sentence, " mm to the tyre, 300.0 mm are asked for."));
  g_assert_null (find (warnings, "tyre-too-near", 0));
  g_assert_null (find (warnings, "tyre-too-near", 1));
  car->strut.tube_diameter_mm += 200.0;
  g_autoptr (GPtrArray) inside = plausibility_check_fitted (car, NULL);
  g_assert_true (
      g_str_has_prefix (find (inside, "tyre-too-near", PLAUSIBILITY_AS_MEASURED)
                            ->sentence,
                        "The strut stands "));
  car->strut.tube_diameter_mm -= 200.0;
  car_setup (car, 1)->corrections.wheel_spacer_mm = 5.0;
  g_autoptr (GPtrArray) with_spacer = plausibility_check_fitted (car, NULL);
  g_assert_nonnull (find (with_spacer, "tyre-too-near", 1));
}

/* A setup's own coil comes too near where the measured strut does not. */
static void
test_own_coil_is_watched (void)
{
  g_autoptr (Car) car = fixture_demo ("dunnock");
  CarCoil *coil = &car_setup (car, 1)->springs.coil;

  g_autoptr (GPtrArray) enough = plausibility_check_fitted (car, NULL);
  g_assert_null (find (enough, "tyre-too-near", 1));
  coil->wire_mm = 13.0;
  coil->mean_diameter_mm = 140.0;
  coil->perch_mm = 150.0;
  g_autoptr (GPtrArray) warnings = plausibility_check_fitted (car, NULL);
  g_assert_null (find (warnings, "tyre-too-near", PLAUSIBILITY_AS_MEASURED));
  g_assert_null (find (warnings, "tyre-too-near", 0));
  g_assert_nonnull (find (warnings, "tyre-too-near", 1));
  g_assert_null (find (warnings, "tyre-too-near", 2));
  car->strut = (CarStrut){ 0 };
  g_autoptr (GPtrArray) of_coil = plausibility_check_fitted (car, NULL);
  g_assert_nonnull (find (of_coil, "tyre-too-near", 1));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_autofree char *data = g_test_build_filename (G_TEST_DIST, "..", "data", NULL);
  g_setenv ("STRUTWRIGHT_DATADIR", data, TRUE);
  g_test_add_func ("/plausibility/demo-cars", test_demo_cars_are_plausible);
  g_test_add_func ("/plausibility/flat-corner",
                   test_the_flat_corner_lacks_only_caster_and_trail);
  g_test_add_func ("/plausibility/set-m", test_set_m_is_plausible);
  g_test_add_func ("/plausibility/bands", test_every_band_is_watched);
  g_test_add_func ("/plausibility/alignment", test_alignment_is_watched);
  g_test_add_func ("/plausibility/side", test_the_right_side_is_noticed);
  g_test_add_func ("/plausibility/ground", test_the_tyre_has_to_stand_on_the_ground);
  g_test_add_func ("/plausibility/pivots", test_swapped_pivots_are_noticed);
  g_test_add_func ("/plausibility/setups", test_setups_are_named);
  g_test_add_func ("/plausibility/hardware", test_hardware_alone_is_watched);
  g_test_add_func ("/plausibility/impossible", test_impossible_setups_are_told);
  g_test_add_func ("/plausibility/gaps", test_stretches_out_of_reach_are_told);
  g_test_add_func ("/plausibility/unmoved", test_a_setup_that_moves_nothing_says_nothing);
  g_test_add_func ("/plausibility/tower", test_past_the_towers_edge_is_told);
  g_test_add_func ("/plausibility/bearing", test_the_fitted_plates_bearing_counts);
  g_test_add_func ("/plausibility/right-mount", test_the_right_mount_is_told_by_itself);
  g_test_add_func ("/plausibility/tyre", test_room_to_the_tyre_is_watched);
  g_test_add_func ("/plausibility/own-coil", test_own_coil_is_watched);
  return g_test_run ();
}
