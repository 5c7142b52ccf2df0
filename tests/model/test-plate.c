/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where plates put the bearing: by hand, by moving a plate's points through space, and by
 * trying every place. */
#include "plate-fixture.h"

#include "kernel/vec3.h"

#include <math.h>

#define TIGHT 1e-12
#define DEGREE (G_PI / 180.0)

static void
check_place (const Plate *plate, PlateSetting setting, double inboard, double rearward)
{
  const MountOffset place = plate_place (plate, setting);

  g_assert_cmpfloat_with_epsilon (place.inboard, inboard, TIGHT);
  g_assert_cmpfloat_with_epsilon (place.rearward, rearward, TIGHT);
  g_assert_cmpfloat (place.up, ==, plate->raises_mm);
}

static Plate *
new_plate (PlateKind kind, double inboard, double rearward)
{
  Plate *plate = plate_new ();

  plate->kind = kind;
  plate->inboard_mm = inboard;
  plate->rearward_mm = rearward;
  return plate;
}

/* 30° from inboard to rearward: cos 30° = 0.8660254037844386, sin 30° = 0.5. */
static Plate *
new_slot (void)
{
  Plate *plate = new_plate (PLATE_SLOT, 3.0, -2.0);

  plate->direction_deg = 30.0;
  plate->along = (PlateScale){ 0.0, 12.0 };
  return plate;
}

static Plate *
new_crossed (void)
{
  Plate *plate = new_slot ();

  plate->kind = PLATE_CROSSED_SLOTS;
  plate->across = (PlateScale){ -5.0, 5.0 };
  return plate;
}

static Plate *
new_circle (double least, double most)
{
  Plate *plate = new_plate (PLATE_ECCENTRIC, 1.0, 2.0);

  plate->radius_mm = 6.0;
  plate->turn_least_deg = least;
  plate->turn_most_deg = most;
  return plate;
}

static Plate *
new_indexed_circle (void)
{
  static const double turns[] = { 0.0, 90.0, 135.0, 270.0 };
  Plate *plate = new_circle (0.0, 360.0);

  g_array_append_vals (plate->turns_deg, turns, G_N_ELEMENTS (turns));
  return plate;
}

static Plate *
new_holes (void)
{
  Plate *plate = new_plate (PLATE_HOLES, 0.0, 0.0);

  fixture_add_hole (plate, "1", 0.0, 0.0);
  fixture_add_hole (plate, "2", 7.0, 1.0);
  fixture_add_hole (plate, "3", 14.0, -1.0);
  fixture_add_hole (plate, "3 again", 14.0, -1.0);
  return plate;
}

static void
test_a_new_plate_moves_nothing (void)
{
  g_autoptr (Plate) plate = plate_new ();

  check_place (plate, (PlateSetting){ 0 }, 0.0, 0.0);
  g_assert_cmpuint (plate_n_ways (plate), ==, 0);
  g_assert_cmpuint (plate_n_places (plate), ==, 1);
}

static void
test_a_fixed_plate_has_its_place (void)
{
  g_autoptr (Plate) plate = new_plate (PLATE_FIXED, 6.0, -1.5);

  plate->raises_mm = -4.0;
  check_place (plate, (PlateSetting){ .place = 9, .along = 9.0 }, 6.0, -1.5);
}

/* 10 mm along: (3 + 10·0.866025…, −2 + 10·0.5). */
static void
test_a_slot_runs_in_its_direction (void)
{
  g_autoptr (Plate) plate = new_slot ();

  check_place (plate, (PlateSetting){ .along = 10.0 }, 11.660254037844386, 3.0);
  check_place (plate, (PlateSetting){ .along = 0.0 }, 3.0, -2.0);
  g_assert_cmpuint (plate_n_ways (plate), ==, 1);
  g_assert_cmpuint (plate_n_places (plate), ==, 0);
  g_assert_cmpfloat (plate_along_range (plate).most, ==, 12.0);
  g_assert_cmpfloat (plate_across_range (plate).most, ==, 0.0);
}

/* The second scale runs 90° further, along (−0.5, 0.866025…): 4 mm on it add (−2,
 * 3.464101…). */
static void
test_crossed_slots_are_square_to_each_other (void)
{
  g_autoptr (Plate) plate = new_crossed ();

  check_place (plate, (PlateSetting){ .along = 10.0, .across = 4.0 }, 9.660254037844386,
               6.464101615137754);
  g_assert_cmpuint (plate_n_ways (plate), ==, 2);
  g_assert_cmpfloat (plate_across_range (plate).least, ==, -5.0);
}

/* 6·cos 135° = −4.242640687119285. */
static void
test_an_eccentric_turns_about_its_centre (void)
{
  g_autoptr (Plate) free = new_circle (0.0, 360.0), indexed = new_indexed_circle ();

  check_place (free, (PlateSetting){ .along = 135.0 }, -3.242640687119285,
               6.242640687119285);
  check_place (indexed, (PlateSetting){ .place = 2 }, -3.242640687119285,
               6.242640687119285);
  check_place (indexed, (PlateSetting){ .place = 0 }, 7.0, 2.0);
  check_place (indexed, (PlateSetting){ .place = 1 }, 1.0, 8.0);
  check_place (indexed, (PlateSetting){ .place = 3 }, 1.0, -4.0);
  g_assert_cmpuint (plate_n_ways (free), ==, 1);
  g_assert_cmpuint (plate_n_places (free), ==, 0);
  g_assert_cmpuint (plate_n_ways (indexed), ==, 0);
  g_assert_cmpuint (plate_n_places (indexed), ==, 4);
  g_assert_cmpfloat (plate_along_range (free).most, ==, 360.0);
  g_assert_cmpfloat (plate_along_range (indexed).most, ==, 0.0);
}

static void
test_holes_are_where_they_are (void)
{
  g_autoptr (Plate) plate = new_holes ();

  check_place (plate, (PlateSetting){ .place = 1 }, 7.0, 1.0);
  check_place (plate, (PlateSetting){ .place = 2 }, 14.0, -1.0);
  g_assert_cmpuint (plate_n_places (plate), ==, 4);
}

static void
test_a_setting_past_the_end_stands_at_the_end (void)
{
  g_autoptr (Plate) slot = new_slot (), holes = new_holes ();

  /* 12·0.866025… = 10.392304845413264 */
  check_place (slot, (PlateSetting){ .along = 50.0 }, 13.392304845413264, 4.0);
  check_place (slot, (PlateSetting){ .along = -50.0, .across = 50.0 }, 3.0, -2.0);
  check_place (holes, (PlateSetting){ .place = 40 }, 14.0, -1.0);
}

/* Quarter turns leave no rounding behind. */
static void
test_quarter_turns_are_exact (void)
{
  static const struct {
    double degrees, inboard, rearward;
  } turns[] = { { 0, 7, 0 },     { 90, 0, 7 },   { 180, -7, 0 },
                { 270, 0, -7 },  { 360, 7, 0 },  { -90, 0, -7 },
                { -180, -7, 0 }, { -270, 0, 7 }, { -360, 7, 0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (turns); i++) {
    g_autoptr (Plate) plate = new_plate (PLATE_SLOT, 0.0, 0.0);

    plate->direction_deg = turns[i].degrees;
    plate->along = (PlateScale){ 0.0, 7.0 };
    const MountOffset place = plate_place (plate, (PlateSetting){ .along = 7.0 });
    g_assert_cmpfloat (place.inboard, ==, turns[i].inboard);
    g_assert_cmpfloat (place.rearward, ==, turns[i].rearward);
  }
}

/* (10, 4) mirrored is (−10, 4); turned by −90° that is (4, 10). By 30°: (−10·0.866025… −
 * 4·0.5, −10·0.5 + 4·0.866025…). */
static void
test_swapping_mirrors_then_turns (void)
{
  g_autoptr (Plate) plate = new_plate (PLATE_FIXED, 10.0, 4.0);
  const PlateSetting swapped = { .is_swapped = TRUE };

  plate->raises_mm = 3.0;
  check_place (plate, swapped, -10.0, 4.0);
  plate->swap_turn_deg = -90.0;
  g_assert_cmpfloat (plate_place (plate, swapped).inboard, ==, 4.0);
  g_assert_cmpfloat (plate_place (plate, swapped).rearward, ==, 10.0);
  plate->swap_turn_deg = 30.0;
  check_place (plate, swapped, -10.660254037844386, -1.5358983848622456);
}

/* Along the car's middle line and fore and aft of its mount: the same plate either way.
 */
static void
test_a_symmetric_plate_swaps_onto_itself (void)
{
  g_autoptr (Plate) plate = new_plate (PLATE_CROSSED_SLOTS, 0.0, 0.0);
  const PlateSetting left = { .along = 3.0, .across = 5.0 };
  const PlateSetting right = { .along = -3.0, .across = 5.0, .is_swapped = TRUE };

  plate->along = (PlateScale){ -8.0, 8.0 };
  plate->across = (PlateScale){ 0.0, 6.0 };
  const MountOffset a = plate_place (plate, left), b = plate_place (plate, right);
  g_assert_cmpfloat (a.inboard, ==, b.inboard);
  g_assert_cmpfloat (a.rearward, ==, b.rearward);
}

/* A car for the hands: its left mount, axes of ISO 8855 (x forward, y left, z up). */
static const Vec3 left_mount = { -35.0, 535.0, 770.0 };

static Vec3
mirrored (Vec3 point)
{
  return (Vec3){ point.x, -point.y, point.z };
}

/* The place of a left plate's bearing in space, as the geometry page has it. */
static Vec3
in_space (MountOffset offset)
{
  return (Vec3){ left_mount.x - offset.rearward, left_mount.y - offset.inboard,
                 left_mount.z + offset.up };
}

static MountOffset
from_left_mount (Vec3 point)
{
  return (MountOffset){ .inboard = left_mount.y - point.y,
                        .rearward = left_mount.x - point.x,
                        .up = point.z - left_mount.z };
}

/* A point of the right plate is carried to the left tower, mount onto mount, and turned
 * there about the vertical. On the left side inboard is −y and rearward −x, so a turn
 * from inboard to rearward is clockwise from above: negative about z. */
static Vec3
carry_to_the_left (Vec3 point, double swap_turn_deg)
{
  const Vec3 right_mount = mirrored (left_mount);
  const double x = point.x - right_mount.x, y = point.y - right_mount.y;
  const double about_z = -swap_turn_deg * DEGREE;

  return (Vec3){ left_mount.x + x * cos (about_z) - y * sin (about_z),
                 left_mount.y + x * sin (about_z) + y * cos (about_z), point.z };
}

static void
test_swapping_is_what_hands_would_do (void)
{
  GRand *rand = g_rand_new_with_seed (11);

  for (int i = 0; i < 500; i++) {
    g_autoptr (Plate) plate = fixture_random_plate (rand, i % N_PLATE_KINDS);
    PlateSetting setting = fixture_random_setting (rand, plate);
    const Vec3 on_right_plate = mirrored (in_space (plate_place (plate, setting)));
    const Vec3 moved = carry_to_the_left (on_right_plate, plate->swap_turn_deg);
    const MountOffset expected = from_left_mount (moved);

    setting.is_swapped = TRUE;
    const MountOffset place = plate_place (plate, setting);
    g_assert_cmpfloat_with_epsilon (place.inboard, expected.inboard, 1e-11);
    g_assert_cmpfloat_with_epsilon (place.rearward, expected.rearward, 1e-11);
    g_assert_cmpfloat_with_epsilon (place.up, expected.up, 1e-11);
  }
  g_rand_free (rand);
}

/* Whether the plate's four bolts, in a square about the mount, meet the left tower's. */
static gboolean
bolts_meet (double swap_turn_deg)
{
  for (int i = 0; i < 4; i++) {
    const double angle = (45.0 + 90.0 * i) * DEGREE;
    const MountOffset bolt = { .inboard = 60.0 * cos (angle),
                               .rearward = 60.0 * sin (angle) };
    const MountOffset there =
        from_left_mount (carry_to_the_left (mirrored (in_space (bolt)), swap_turn_deg));

    if (fabs (fabs (there.inboard) - fabs (bolt.inboard)) > 1e-9 ||
        fabs (fabs (there.rearward) - fabs (bolt.rearward)) > 1e-9)
      return FALSE;
  }
  return TRUE;
}

/* Of four bolts in a square, −90° is a turn that fits, and it makes a slot for camber one
 * for caster. */
static void
test_a_square_plate_swapped_a_quarter_turn_sets_caster (void)
{
  g_autoptr (Plate) plate = new_plate (PLATE_SLOT, 0.0, 0.0);

  plate->along = (PlateScale){ 0.0, 25.0 };
  plate->swap_turn_deg = -90.0;
  g_assert_true (bolts_meet (-90.0));
  g_assert_true (bolts_meet (0.0));
  g_assert_false (bolts_meet (-60.0));
  check_place (plate, (PlateSetting){ .along = 20.0 }, 20.0, 0.0);
  check_place (plate, (PlateSetting){ .along = 20.0, .is_swapped = TRUE }, 0.0, 20.0);
}

static PlateSetting
nearest (const Plate *plate, double inboard, double rearward)
{
  return plate_nearest (plate,
                        (MountOffset){
                            .inboard = inboard, .rearward = rearward, .up = 99.0 },
                        FALSE);
}

/* From the zero (3, −2) the target (6, 4) is (3, 6): along 3·0.866025… + 6·0.5, across
 * 6·0.866025… − 3·0.5. (10, 10) is (7, 12): 12.06 along, past the end. */
static void
test_nearest_on_a_slot_is_square_to_it (void)
{
  g_autoptr (Plate) slot = new_slot (), crossed = new_crossed ();

  g_assert_cmpfloat_with_epsilon (nearest (slot, 6, 4).along, 5.598076211353316, TIGHT);
  g_assert_cmpfloat (nearest (slot, 6, 4).across, ==, 0.0);
  g_assert_cmpfloat (nearest (slot, 10, 10).along, ==, 12.0);
  g_assert_cmpfloat (nearest (slot, -10, -10).along, ==, 0.0);
  g_assert_cmpfloat_with_epsilon (nearest (crossed, 6, 4).along, 5.598076211353316,
                                  TIGHT);
  g_assert_cmpfloat_with_epsilon (nearest (crossed, 6, 4).across, 3.696152422706632,
                                  TIGHT);
  g_assert_cmpfloat (nearest (crossed, -30, -30).across, ==, -5.0);
}

static void
check_turn (double least, double most, double degrees, double expected)
{
  g_autoptr (Plate) plate = new_circle (least, most);
  const double x = 1.0 + 11.0 * cos (degrees * DEGREE),
               y = 2.0 + 11.0 * sin (degrees * DEGREE);

  g_assert_cmpfloat_with_epsilon (nearest (plate, x, y).along, expected, 1e-9);
}

static void
test_nearest_on_a_circle_heeds_its_range (void)
{
  check_turn (-30.0, 60.0, 10.0, 10.0);
  check_turn (-30.0, 60.0, 90.0, 60.0);   /* 30° past the most, 240° to the least */
  check_turn (-30.0, 60.0, 225.0, -30.0); /* 165° past the most, 105° to the least */
  check_turn (170.0, 200.0, -170.0, 190.0);
  check_turn (-190.0, -170.0, 175.0, -185.0);
  check_turn (300.0, 360.0, -20.0, 340.0);
  check_turn (0.0, 360.0, 0.0, 0.0);
  check_turn (0.0, 360.0, -1.0, 359.0);
  check_turn (-360.0, 0.0, 90.0, -270.0);
}

/* Where a full turn begins rounding may fall to either side: it is never its end. */
static void
test_a_full_turn_begins_where_it_ends (void)
{
  for (int i = 0; i < 500; i++) {
    const double least = -180.0 + 0.7 * i;
    g_autoptr (Plate) plate = new_circle (least, least + 360.0);

    plate->inboard_mm = 150.0; /* costs digits of a small circle */
    plate->radius_mm = 0.5;
    const MountOffset place = plate_place (plate, (PlateSetting){ .along = least });

    g_assert_cmpfloat_with_epsilon (plate_nearest (plate, place, FALSE).along, least,
                                    1e-9);
  }
}

static void
test_of_equally_near_the_first_is_taken (void)
{
  g_autoptr (Plate) circle = new_circle (-30.0, 60.0), holes = new_holes ();
  g_autoptr (Plate) half = new_circle (90.0, 270.0);

  g_assert_cmpfloat (nearest (circle, 1.0, 2.0).along, ==, -30.0);
  /* straight inboard: both ends are a quarter turn away */
  g_assert_cmpfloat (nearest (half, 9.0, 2.0).along, ==, 90.0);
  g_assert_cmpuint (nearest (holes, 15.0, -1.0).place, ==, 2);
  /* half way between the first and the second */
  g_assert_cmpuint (nearest (holes, 3.5, 0.5).place, ==, 0);
}

static double
distance_to (const Plate *plate, PlateSetting setting, MountOffset target)
{
  const MountOffset place = plate_place (plate, setting);

  return hypot (place.inboard - target.inboard, place.rearward - target.rearward);
}

/* The least distance over a list, 4001 places along one way, or 161 by 161. */
static double
least_by_trying (const Plate *plate, MountOffset target, gboolean is_swapped)
{
  static const guint n_by_ways[] = { 1, 4001, 161 };
  const guint ways = plate_n_ways (plate), n = n_by_ways[ways];
  const guint n_across = ways == 2 ? n : 1,
              n_places = ways == 0 ? plate_n_places (plate) : 1;
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);
  double least = INFINITY;

  for (guint place = 0; place < n_places; place++)
    for (guint i = 0; i < n; i++)
      for (guint j = 0; j < n_across; j++) {
        const PlateSetting setting = {
          .place = place,
          .along = along.least + (along.most - along.least) * i / MAX (n - 1, 1),
          .across =
              across.least + (across.most - across.least) * j / MAX (n_across - 1, 1),
          .is_swapped = is_swapped
        };

        least = MIN (least, distance_to (plate, setting, target));
      }
  return least;
}

static void
check_is_within (const Plate *plate, PlateSetting setting)
{
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);

  g_assert_cmpuint (setting.place, <, MAX (plate_n_places (plate), 1));
  g_assert_cmpfloat (setting.along, >=, along.least);
  g_assert_cmpfloat (setting.along, <=, along.most);
  g_assert_cmpfloat (setting.across, >=, across.least);
  g_assert_cmpfloat (setting.across, <=, across.most);
}

/* A slot of 30 mm in 4000 steps, a circle of 20 mm over 170° and a rectangle of 30 by 30
 * in 160 steps lie within 0.15 mm of the tried places: no nearer than that may the
 * nearest seem, or it would not be on the plate. */
static void
test_nearest_is_never_beaten_by_trying (void)
{
  GRand *rand = g_rand_new_with_seed (4);

  for (int i = 0; i < 600; i++) {
    g_autoptr (Plate) plate = fixture_random_plate (rand, i % N_PLATE_KINDS);
    const gboolean is_swapped = g_rand_boolean (rand);
    const MountOffset target = { .inboard = g_rand_double_range (rand, -50.0, 50.0),
                                 .rearward = g_rand_double_range (rand, -50.0, 50.0) };
    const PlateSetting found = plate_nearest (plate, target, is_swapped);
    const double tried = least_by_trying (plate, target, is_swapped);

    check_is_within (plate, found);
    g_assert_cmpint (found.is_swapped, ==, is_swapped);
    g_assert_cmpfloat (distance_to (plate, found, target), <=, tried + 1e-11);
    g_assert_cmpfloat (distance_to (plate, found, target), >=, tried - 0.15);
  }
  g_rand_free (rand);
}

static void
test_what_is_dialled_in_is_found_again (void)
{
  GRand *rand = g_rand_new_with_seed (5);

  for (int i = 0; i < 2000; i++) {
    g_autoptr (Plate) plate = fixture_random_plate (rand, i % N_PLATE_KINDS);
    PlateSetting setting = fixture_random_setting (rand, plate);

    setting.is_swapped = g_rand_boolean (rand);
    const MountOffset place = plate_place (plate, setting);
    const PlateSetting found = plate_nearest (plate, place, setting.is_swapped);
    g_assert_cmpfloat (distance_to (plate, found, place), <=, 1e-11);
    g_assert_cmpuint (found.place, ==, setting.place);
    g_assert_cmpfloat_with_epsilon (found.along, setting.along, 1e-9);
    g_assert_cmpfloat_with_epsilon (found.across, setting.across, 1e-9);
  }
  g_rand_free (rand);
}

typedef void (*Change) (Plate *plate);

static void
change_name (Plate *plate)
{
  g_free (plate->name);
  plate->name = g_strdup ("Another");
}

static void
change_notes (Plate *plate)
{
  g_free (plate->notes);
  plate->notes = g_strdup ("Another");
}

static void
change_zero (Plate *plate)
{
  plate->inboard_mm = -0.0;
}

static void
change_label (Plate *plate)
{
  PlateHole *hole = &g_array_index (plate->holes, PlateHole, 1);

  g_free (hole->label);
  hole->label = g_strdup ("B");
}

static void
change_hole (Plate *plate)
{
  g_array_index (plate->holes, PlateHole, 2).rearward_mm += 1e-12;
}

static void
change_turn (Plate *plate)
{
  g_array_index (plate->turns_deg, double, 3) = 271.0;
}

static void
change_range (Plate *plate)
{
  plate->turn_most_deg = 359.0;
}

static void
change_along (Plate *plate)
{
  plate->along.most += 1e-12;
}

static void
change_across (Plate *plate)
{
  plate->across.least += 1e-12;
}

static void
change_kind (Plate *plate)
{
  plate->kind = PLATE_FIXED;
}

static void
change_raise (Plate *plate)
{
  plate->raises_mm = 1e-12;
}

static void
change_tilt (Plate *plate)
{
  plate->bearing_tilt_deg = 12.0;
}

static void
change_can_swap (Plate *plate)
{
  plate->can_swap = TRUE;
}

static void
change_swap_turn_in_vain (Plate *plate)
{
  plate->swap_turn_deg = 90.0;
}

static void
change_unknown (Plate *plate)
{
  plate->unknown = json_object_new ();
}

static void
check_change (Plate *made, Change change, gboolean is_equal)
{
  g_autoptr (Plate) plate = made, copy = plate_copy (plate);

  g_assert_true (plate_equal (plate, copy));
  change (copy);
  g_assert_cmpint (plate_equal (plate, copy), ==, is_equal);
  g_assert_cmpint (plate_equal (copy, plate), ==, is_equal);
}

static void
test_equal_minds_what_the_kind_has (void)
{
  check_change (new_slot (), change_name, FALSE);
  check_change (new_slot (), change_notes, FALSE);
  check_change (plate_new (), change_zero, FALSE);
  check_change (new_holes (), change_zero, TRUE);
  check_change (new_holes (), change_label, FALSE);
  check_change (new_holes (), change_hole, FALSE);
  check_change (new_indexed_circle (), change_turn, FALSE);
  check_change (new_indexed_circle (), change_range, TRUE);
  check_change (new_circle (0.0, 360.0), change_range, FALSE);
  check_change (new_slot (), change_along, FALSE);
  check_change (new_slot (), change_across, TRUE);
  check_change (new_crossed (), change_across, FALSE);
  check_change (new_crossed (), change_kind, FALSE);
  check_change (new_crossed (), change_raise, FALSE);
  check_change (new_crossed (), change_tilt, FALSE);
  check_change (new_crossed (), change_can_swap, FALSE);
  check_change (new_crossed (), change_swap_turn_in_vain, TRUE);
  check_change (new_crossed (), change_unknown, FALSE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plate/new", test_a_new_plate_moves_nothing);
  g_test_add_func ("/plate/fixed", test_a_fixed_plate_has_its_place);
  g_test_add_func ("/plate/slot", test_a_slot_runs_in_its_direction);
  g_test_add_func ("/plate/crossed", test_crossed_slots_are_square_to_each_other);
  g_test_add_func ("/plate/eccentric", test_an_eccentric_turns_about_its_centre);
  g_test_add_func ("/plate/holes", test_holes_are_where_they_are);
  g_test_add_func ("/plate/past-the-end", test_a_setting_past_the_end_stands_at_the_end);
  g_test_add_func ("/plate/quarter-turns", test_quarter_turns_are_exact);
  g_test_add_func ("/plate/swap", test_swapping_mirrors_then_turns);
  g_test_add_func ("/plate/swap-symmetric", test_a_symmetric_plate_swaps_onto_itself);
  g_test_add_func ("/plate/swap-by-hand", test_swapping_is_what_hands_would_do);
  g_test_add_func ("/plate/swap-square",
                   test_a_square_plate_swapped_a_quarter_turn_sets_caster);
  g_test_add_func ("/plate/nearest-slot", test_nearest_on_a_slot_is_square_to_it);
  g_test_add_func ("/plate/nearest-circle", test_nearest_on_a_circle_heeds_its_range);
  g_test_add_func ("/plate/nearest-full-turn", test_a_full_turn_begins_where_it_ends);
  g_test_add_func ("/plate/nearest-first", test_of_equally_near_the_first_is_taken);
  g_test_add_func ("/plate/nearest-by-trying", test_nearest_is_never_beaten_by_trying);
  g_test_add_func ("/plate/found-again", test_what_is_dialled_in_is_found_again);
  g_test_add_func ("/plate/equal", test_equal_minds_what_the_kind_has);
  return g_test_run ();
}
