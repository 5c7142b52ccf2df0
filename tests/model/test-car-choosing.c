/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What choosing an upper mount asks of a car: tower, strut, limits, targets, right side.
 */

#include "car-fixture.h"

#include "model/car/aim.h"
#include "model/car/car-json.h"

#include <math.h>
#include <string.h>

#define DEGREE (G_PI / 180.0)

static const CarTarget *
target (const Car *car, guint i)
{
  return &g_array_index (car->targets, CarTarget, i);
}

static Car *
written_and_read (const Car *car)
{
  g_autoptr (GError) error = NULL;
  gsize length;
  g_autofree char *text = car_to_json (car, &length);
  Car *again = car_from_json (text, length, &error);

  g_assert_no_error (error);
  return again;
}

static void
test_sizes_are_read_to_their_places (void)
{
  g_autoptr (Car) car = fixture_car ("choosing");

  g_assert_cmpfloat (car->unloaded_radius_mm, ==, 276.5);
  g_assert_cmpfloat (car->rim_offset_mm, ==, -3.25);
  g_assert_cmpfloat (car->tower.opening_diameter_mm, ==, 92.0);
  g_assert_cmpfloat (car->tower.opening_inboard_mm, ==, 4.5);
  g_assert_cmpfloat (car->tower.opening_rearward_mm, ==, -2.0);
  g_assert_cmpfloat (car->strut.tube_diameter_mm, ==, 45.0);
  g_assert_cmpfloat (car->strut.tube_bottom_mm, ==, -12.0);
  g_assert_cmpfloat (car->strut.tube_top_mm, ==, 330.0);
  g_assert_cmpfloat (car->strut.seat_diameter_mm, ==, 150.0);
  g_assert_cmpfloat (car->strut.seat_height_mm, ==, 205.0);
  g_assert_cmpfloat (car->strut.spring_diameter_mm, ==, 130.0);
  g_assert_cmpfloat (car->thread_pitch_mm, ==, 1.25);
  g_assert_cmpfloat (car->limits.tyre_clearance_mm, ==, 4.0);
  g_assert_cmpfloat (car->limits.edge_margin_mm, ==, 1.5);
  g_assert_cmpfloat (car->limits.cross_camber_deg, ==, 0.4);
  g_assert_cmpfloat (car->limits.cross_caster_deg, ==, 0.6);
  g_assert_cmpfloat (car->limits.camber_bolt_deg, ==, 2.0);
  g_assert_cmpfloat (car->limits.travel_used_mm, ==, 35.0);
}

static void
test_targets_are_read_to_their_places (void)
{
  g_autoptr (Car) car = fixture_car ("choosing");

  g_assert_cmpuint (car->targets->len, ==, 3);
  g_assert_cmpuint (target (car, 0)->aim, ==, AIM_CAMBER);
  g_assert_cmpfloat (target (car, 0)->least, ==, -2.7);
  g_assert_cmpfloat (target (car, 0)->most, ==, -2.3);
  g_assert_cmpfloat (target (car, 0)->weight, ==, 1.0);
  g_assert_cmpuint (target (car, 1)->aim, ==, AIM_CASTER);
  g_assert_cmpfloat (target (car, 1)->least, ==, 5.0);
  g_assert_cmpfloat (target (car, 1)->most, ==, INFINITY);
  g_assert_cmpfloat (target (car, 1)->weight, ==, 0.5);
  g_assert_cmpuint (target (car, 2)->aim, ==, AIM_SCRUB_CHANGE);
  g_assert_cmpfloat (target (car, 2)->least, ==, -INFINITY);
  g_assert_cmpfloat (target (car, 2)->most, ==, 3.0);
}

static void
test_plates_are_read_to_their_places (void)
{
  g_autoptr (Car) car = fixture_car ("choosing");
  const CarSetup *slot = car_setup (car, 1), *holes = car_setup (car, 2);

  g_assert_null (car_setup (car, 0)->plate);
  g_assert_cmpstr (slot->plate, ==, "Slot 20 “long”");
  g_assert_true (slot->is_plate_swapped);
  g_assert_cmpfloat (slot->corrections.wheel_spacer_mm, ==, 5.5);
  g_assert_cmpstr (holes->plate, ==, "Holes");
  g_assert_false (holes->is_plate_swapped);
}

/* By hand: y changes its sign, everything else stays. */
static void
test_the_right_side_is_mirrored (void)
{
  g_autoptr (Car) car = fixture_car ("choosing");
  const MeasuredCorner left = car_measured_side (car, SIDE_LEFT);
  const MeasuredCorner right = car_measured_side (car, SIDE_RIGHT);
  const MeasuredCorner corner = car_measured_corner (car);

  g_assert_true (car_has_right (car));
  g_assert_cmpmem (&left, sizeof left, &corner, sizeof corner);
  g_assert_cmpfloat (right.at[POINT_WHEEL_CENTRE].x, ==, 1.0);
  g_assert_cmpfloat (right.at[POINT_WHEEL_CENTRE].y, ==, 695.5);
  g_assert_cmpfloat (right.at[POINT_WHEEL_CENTRE].z, ==, 268.25);
  for (PointName i = 0; i < POINT_WHEEL_CENTRE; i++)
    g_assert_cmpmem (&right.at[i], sizeof right.at[i], &left.at[i], sizeof left.at[i]);
  g_assert_cmpfloat (right.camber, ==, -0.55 * DEGREE);
  g_assert_cmpfloat (right.toe_in, ==, 0.1 * DEGREE);
  g_assert_cmpfloat (right.loaded_radius, ==, left.loaded_radius);
  g_assert_cmpfloat (right.dive_lever, ==, left.dive_lever);
}

static void
test_a_right_alignment_alone_keeps_the_left_points (void)
{
  g_autoptr (Car) car = fixture_car ("right-alignment");
  const MeasuredCorner left = car_measured_side (car, SIDE_LEFT);
  const MeasuredCorner right = car_measured_side (car, SIDE_RIGHT);

  g_assert_true (car_has_right (car));
  g_assert_false (car->right.has_points);
  g_assert_cmpmem (&right.at, sizeof right.at, &left.at, sizeof left.at);
  g_assert_cmpfloat (right.camber, ==, -0.9 * DEGREE);
  g_assert_cmpfloat (right.toe_in, ==, 0.0);
}

static void
test_without_a_right_side_both_are_alike (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  const MeasuredCorner left = car_measured_side (car, SIDE_LEFT);
  const MeasuredCorner right = car_measured_side (car, SIDE_RIGHT);

  g_assert_false (car_has_right (car));
  g_assert_cmpmem (&right, sizeof right, &left, sizeof left);
}

static void
test_the_right_side_of_a_setup (void)
{
  g_autoptr (Car) car = fixture_car ("choosing");
  const CarSetup *slot = car_setup (car, 1);
  const Adjustment left = car_side_adjustment (slot, SIDE_LEFT);
  const Adjustment right = car_side_adjustment (slot, SIDE_RIGHT);
  const Adjustment as_left = car_side_adjustment (car_setup (car, 0), SIDE_RIGHT);
  const Adjustment unmoved = car_side_adjustment (car_setup (car, 2), SIDE_RIGHT);

  g_assert_cmpfloat (left.mount.inboard, ==, 12.0);
  g_assert_cmpfloat (left.corrections.clamp_tilt, ==, 0.0);
  g_assert_cmpfloat (left.corrections.wheel_spacer, ==, 5.5);
  g_assert_cmpfloat (right.mount.inboard, ==, 10.0);
  g_assert_cmpfloat (right.mount.rearward, ==, 7.0);
  g_assert_cmpfloat (right.mount.up, ==, -1.0);
  g_assert_cmpfloat (right.corrections.clamp_tilt, ==, -0.75 * DEGREE);
  g_assert_cmpfloat (right.corrections.wheel_spacer, ==, 5.5);
  g_assert_false (car_setup (car, 0)->right.is_own);
  g_assert_cmpfloat (as_left.mount.inboard, ==, 0.0);
  /* an empty right side is one that stands as measured */
  g_assert_true (car_setup (car, 2)->right.is_own);
  g_assert_cmpfloat (unmoved.mount.inboard, ==, 0.0);
}

static void
test_shapes_for_the_kernel (void)
{
  g_autoptr (Car) car = fixture_car ("choosing");
  g_autoptr (Car) plain = fixture_car ("plain");
  const StrutShape strut = car_strut_shape (car), none = car_strut_shape (plain);

  g_assert_cmpfloat (car_tyre_shape (car).unloaded_radius, ==, 276.5);
  g_assert_cmpfloat (car_tyre_shape (car).section_width, ==, 165.0);
  /* 3 % of 268 */
  g_assert_cmpfloat_with_epsilon (car_tyre_shape (plain).unloaded_radius, 276.04, 1e-9);
  g_assert_true (car_has_strut_shape (car));
  g_assert_cmpfloat (strut.tube_radius, ==, 22.5);
  g_assert_cmpfloat (strut.tube_bottom, ==, -12.0);
  g_assert_cmpfloat (strut.tube_top, ==, 330.0);
  g_assert_cmpfloat (strut.seat_radius, ==, 75.0);
  g_assert_cmpfloat (strut.seat_height, ==, 205.0);
  g_assert_cmpfloat (strut.spring_radius, ==, 65.0);
  g_assert_false (car_has_strut_shape (plain));
  g_assert_cmpfloat (none.tube_radius, ==, 0.0);
  g_assert_cmpfloat (none.seat_radius, ==, 0.0);
  g_assert_cmpfloat (none.spring_radius, ==, 0.0);
}

/* A diameter without its heights, or heights without a diameter, say nothing of room. */
static void
test_half_a_part_is_none (void)
{
  static const struct {
    CarStrut strut;
    gboolean is_enough;
  } struts[] = {
    { { .tube_diameter_mm = 45 }, FALSE },
    { { .tube_diameter_mm = 45, .tube_bottom_mm = -20 }, FALSE },
    { { .tube_diameter_mm = 45, .tube_top_mm = 300 }, TRUE },
    { { .tube_bottom_mm = 10, .tube_top_mm = 300 }, FALSE },
    { { .seat_diameter_mm = 150 }, FALSE },
    { { .seat_height_mm = 200 }, FALSE },
    { { .seat_diameter_mm = 150, .seat_height_mm = 200 }, TRUE },
    { { .spring_diameter_mm = 130 }, FALSE },
    { { .spring_diameter_mm = 130, .seat_height_mm = 200 }, TRUE },
  };
  g_autoptr (Car) car = fixture_car ("plain");

  for (gsize i = 0; i < G_N_ELEMENTS (struts); i++) {
    car->strut = struts[i].strut;
    const StrutShape s = car_strut_shape (car);

    g_test_message ("%u", (guint) i);
    g_assert_cmpint (car_has_strut_shape (car), ==, struts[i].is_enough);
    g_assert_cmpint (s.tube_radius > 0 || s.seat_radius > 0 || s.spring_radius > 0, ==,
                     struts[i].is_enough);
  }
}

/* Every new object of "choosing" holds a member of a later version. */
static void
test_unknown_members_are_written_back (void)
{
  static const char *const members[] = {
    "\"valve\": \"rubber\"",  "\"edge\": \"rolled\"", "\"finish\": \"zinc\"",
    "\"hand\": \"left\"",     "\"noise_db\": 80",     "\"bracket\": [1, 2.5, -0.0]",
    "\"gauge\": \"strings\"", "\"when\": \"after\"",  "\"why\": \"feel\"",
    "\"stamp\": 7",           "\"turn\": 3"
  };
  g_autoptr (Car) car = fixture_car ("choosing");
  g_autoptr (Car) copy = car_copy (car);
  g_autofree char *text = car_to_json (copy, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (members); i++) {
    g_test_message ("%s", members[i]);
    g_assert_nonnull (strstr (text, members[i]));
  }
}

static void
test_defaults_are_not_written (void)
{
  static const char *const members[] = { "unloaded",    "rim_offset",  "tower",
                                         "\"strut\"",   "\"tie_rod\"", "limits",
                                         "\"right\"",   "targets",     "wheel_spacer",
                                         "corrections", "plate",       "hidden" };
  g_autoptr (Car) car = fixture_car ("defaults");
  g_autofree char *text = car_to_json (car, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (members); i++) {
    g_test_message ("%s", members[i]);
    g_assert_null (strstr (text, members[i]));
  }
}

static void
test_only_what_differs_is_written (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  const CarTarget open_above = { .aim = AIM_TRAIL, 12.0, INFINITY, 1.0, NULL };
  const CarTarget open_below = { .aim = AIM_SAI, -INFINITY, -0.0, 2.5, NULL };

  car->limits.tyre_clearance_mm = 6.0;
  car->thread_pitch_mm = 1.25;
  car->strut.tube_bottom_mm = -0.0;
  g_array_append_val (car->targets, open_above);
  g_array_append_val (car->targets, open_below);
  car_setup (car, 0)->corrections.wheel_spacer_mm = -0.0;

  g_autofree char *text = car_to_json (car, NULL);
  g_assert_nonnull (strstr (text, "\"limits\": { \"tyre_clearance_mm\": 6 }"));
  g_assert_nonnull (strstr (text, "\"tie_rod\": { \"thread_pitch_mm\": 1.25 }"));
  g_assert_nonnull (strstr (text, "\"strut\": { \"tube_bottom_mm\": -0.0 }"));
  g_assert_nonnull (strstr (text, "{ \"aim\": \"trail\", \"least\": 12 }"));
  g_assert_nonnull (
      strstr (text, "{ \"aim\": \"sai\", \"most\": -0.0, \"weight\": 2.5 }"));
  g_assert_nonnull (strstr (text, "\"wheel_spacer_mm\": -0.0"));
  g_autoptr (Car) again = written_and_read (car);
  g_assert_true (car_equal (car, again));
}

static void
fill_with_noise (GRand *rand, Car *car)
{
  double *sizes[] = { &car->tower.opening_diameter_mm, &car->strut.tube_diameter_mm,
                      &car->strut.seat_diameter_mm,    &car->strut.seat_height_mm,
                      &car->limits.tyre_clearance_mm,  &car->limits.edge_margin_mm,
                      &car->limits.travel_used_mm,     &car->strut.spring_diameter_mm };
  double *moves[] = { &car->tower.opening_inboard_mm, &car->tower.opening_rearward_mm,
                      &car->rim_offset_mm, &car_setup (car, 1)->right.mount.inboard,
                      &car_setup (car, 1)->corrections.wheel_spacer_mm };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    *sizes[i] = g_rand_double_range (rand, 0, 150);
  for (gsize i = 0; i < G_N_ELEMENTS (moves); i++)
    *moves[i] = g_rand_double_range (rand, -90, 90);
  car->thread_pitch_mm = g_rand_double_range (rand, 0.5, 3);
  car->unloaded_radius_mm = car->loaded_radius_mm * g_rand_double_range (rand, 1, 1.2);
  for (PointName p = 0; p < N_POINTS; p++) {
    car->right.points[p].x += g_rand_double_range (rand, -5, 5) / 3.0;
    car->right.points[p].y += g_rand_double_range (rand, -5, 5) / 7.0;
  }
  car->right.camber_deg = g_rand_double_range (rand, -3, 3);
  for (guint i = 0; i < car->targets->len; i++) {
    CarTarget *t = &g_array_index (car->targets, CarTarget, i);

    t->most = g_rand_double_range (rand, 10, 20);
    t->weight = g_rand_double_range (rand, 0.1, 9);
  }
}

static void
test_every_bit_is_kept (void)
{
  GRand *rand = g_rand_new_with_seed (20260404);
  g_autoptr (Car) first = fixture_car ("choosing");

  for (int i = 0; i < 200; i++) {
    g_autoptr (Car) car = car_copy (first);

    fill_with_noise (rand, car);
    g_autoptr (Car) again = written_and_read (car);
    g_assert_true (car_equal (car, again));
  }
  g_rand_free (rand);
}

typedef struct {
  const char *name;
  gsize offset; /* of a double in a Car */
} Number;

#define NUMBER(member)                                                                   \
  {                                                                                      \
#member, offsetof(Car, member)                                                       \
  }

/* Numbers of the car, each changed by its last bit. */
static void
test_equal_minds_every_number (void)
{
  static const Number numbers[] = {
    NUMBER (unloaded_radius_mm),        NUMBER (rim_offset_mm),
    NUMBER (tower.opening_diameter_mm), NUMBER (tower.opening_rearward_mm),
    NUMBER (strut.tube_diameter_mm),    NUMBER (strut.spring_diameter_mm),
    NUMBER (thread_pitch_mm),           NUMBER (limits.tyre_clearance_mm),
    NUMBER (limits.travel_used_mm),     NUMBER (right.points[7].z),
    NUMBER (right.camber_deg),          NUMBER (right.toe_in_deg)
  };
  g_autoptr (Car) car = fixture_car ("choosing");

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autoptr (Car) copy = car_copy (car);
    double *value = (double *) (gpointer) ((char *) copy + numbers[i].offset);

    g_test_message ("%s", numbers[i].name);
    g_assert_true (car_equal (car, copy));
    *value = nextafter (*value, INFINITY);
    g_assert_false (car_equal (car, copy));
  }
}

typedef void (*Change) (Car *car);

static void
forget_right_points (Car *car)
{
  car->right.has_points = FALSE;
}

static void
forget_right_alignment (Car *car)
{
  car->right.has_alignment = FALSE;
}

static void
forget_right_unknown (Car *car)
{
  g_clear_pointer (&car->right.unknown_alignment, json_object_unref);
}

static void
change_aim (Car *car)
{
  g_array_index (car->targets, CarTarget, 2).aim = AIM_TRAIL;
}

static void
change_weight (Car *car)
{
  g_array_index (car->targets, CarTarget, 1).weight += 1e-12;
}

static void
drop_target (Car *car)
{
  g_array_set_size (car->targets, 2);
}

static void
forget_target_unknown (Car *car)
{
  g_clear_pointer (&g_array_index (car->targets, CarTarget, 1).unknown,
                   json_object_unref);
}

static void
change_plate (Car *car)
{
  g_clear_pointer (&car_setup (car, 2)->plate, g_free);
}

static void
change_swap (Car *car)
{
  car_setup (car, 1)->is_plate_swapped = FALSE;
}

static void
change_right_mount (Car *car)
{
  car_setup (car, 1)->right.mount.up = 0.0;
}

static void
change_right_ownership (Car *car)
{
  car_setup (car, 2)->right.is_own = FALSE;
}

static void
change_wheel_spacer (Car *car)
{
  car_setup (car, 0)->corrections.wheel_spacer_mm = -0.0;
}

static void
test_equal_minds_the_rest (void)
{
  static const Change changes[] = { forget_right_points,
                                    forget_right_alignment,
                                    forget_right_unknown,
                                    change_aim,
                                    change_weight,
                                    drop_target,
                                    forget_target_unknown,
                                    change_plate,
                                    change_swap,
                                    change_right_mount,
                                    change_right_ownership,
                                    change_wheel_spacer };

  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++) {
    g_autoptr (Car) car = fixture_car ("choosing");
    g_autoptr (Car) copy = car_copy (car);

    g_test_message ("%u", (guint) i);
    changes[i](copy);
    g_assert_false (car_equal (car, copy));
  }
}

/* gbooleans of any kind of true, and numbers that no file keeps. */
static void
test_equal_minds_nothing_else (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  g_autoptr (Car) copy = car_copy (car);

  copy->right.points[0].x = 3.0;
  copy->right.camber_deg = 1.0;
  car_setup (copy, 0)->right.mount.inboard = 4.0;
  g_assert_true (car_equal (car, copy));

  copy->right = car->right = (CarMeasuredRight){ .has_alignment = TRUE };
  copy->right.has_alignment = 2;
  g_assert_true (car_equal (car, copy));
}

/* By hand, the tyre as a disc: from the inner side of the tyre's plane to the lower end
 * of the tube, which leans away from there up. */
static double
room_at_the_tube (const Car *car, CarSide side)
{
  const MeasuredCorner m = car_measured_side (car, side);
  const StrutShape strut = car_strut_shape (car);
  const Vec3 foot = m.at[POINT_STRUT_FOOT];
  const Vec3 u = vec3_unit (vec3_sub (m.at[POINT_UPPER_MOUNT], foot));
  const Vec3 n = { cos (m.camber) * sin (m.toe_in), cos (m.camber) * cos (m.toe_in),
                   -sin (m.camber) };
  const Vec3 end = vec3_along (foot, strut.tube_bottom, u);
  const double lean = vec3_dot (u, n);

  g_assert_cmpfloat (lean, <, 0.0);
  return vec3_dot (vec3_sub (m.at[POINT_WHEEL_CENTRE], end), n) -
         car_tyre_shape (car).section_width / 2.0 -
         strut.tube_radius * sqrt (1.0 - lean * lean);
}

static TyreClearance
clearance_of (const Car *car, CarSide side)
{
  const MeasuredCorner measured = car_measured_side (car, side);
  const Adjustment none = { 0 };
  const TyreShape tyre = car_tyre_shape (car);
  const StrutShape strut = car_strut_shape (car);
  Corner corner;

  g_assert_cmpint (corner_assemble (&measured, &none, &corner).status, ==, CORNER_OK);
  return tyre_clearance (&corner, &tyre, &strut, 400.0);
}

static void
test_demo_cars_have_room_and_aims (void)
{
  static const char *const names[] = { "wren", "fieldfare", "lapwing", "dunnock" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autoptr (Car) car = fixture_demo (names[i]);

    g_test_message ("%s", names[i]);
    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
      const double room = room_at_the_tube (car, side);
      const TyreClearance found = clearance_of (car, side);

      g_assert_cmpfloat (room, >, 6.0);
      g_assert_cmpfloat (room, <, 15.0);
      /* the plane goes on past the shoulder, so there may be a little more */
      g_assert_cmpfloat (found.room[STRUT_TUBE], >, room - 1e-9);
      g_assert_cmpfloat (found.room[STRUT_TUBE], <, room + 0.2);
      /* the spring seat may stand nearer above the tyre than the tube beside it */
      g_assert_cmpfloat (found.least, >, 6.0);
    }
    g_assert_cmpfloat (car_tyre_shape (car).unloaded_radius, >, car->loaded_radius_mm);
    g_assert_cmpfloat (car->tower.opening_diameter_mm, >, 0.0);
    g_assert_cmpuint (car->targets->len, >, 0);
    g_assert_cmpint (car_has_right (car), ==, g_str_equal (names[i], "fieldfare"));
  }
}

static void
check_refused (Car *car, FileRefusal code, const char *sentence)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (car_check (car, &error));
  g_assert_error (error, FILE_REFUSAL, (int) code);
  g_assert_cmpstr (error->message, ==, sentence);
}

static void
test_a_draft_is_checked_in_words (void)
{
  g_autoptr (Car) car = fixture_car ("choosing");
  g_autoptr (GError) error = NULL;

  g_assert_true (car_check (car, &error));
  g_assert_no_error (error);

  car->points[POINT_BALL_JOINT].y = NAN;
  check_refused (car, FILE_REFUSAL_TYPE, "corner.ball_joint[1] must be a number.");
  car->points[POINT_BALL_JOINT].y = 652.0;
  car->strut.tube_top_mm = INFINITY;
  check_refused (car, FILE_REFUSAL_TYPE, "strut.tube_top_mm must be a number.");
  car->strut.tube_top_mm = 330.0;
  car->right.points[POINT_UPPER_MOUNT].z = 100.0;
  check_refused (car, FILE_REFUSAL_GEOMETRY,
                 "right.corner.upper_mount must lie above right.corner.strut_foot and "
                 "right.corner.ball_joint.");
  car->right.has_points = FALSE;
  g_assert_true (car_check (car, &error));
  g_array_index (car->targets, CarTarget, 0).least = NAN;
  check_refused (car, FILE_REFUSAL_TYPE, "targets[0].least must be a number.");
}

static void
test_an_empty_car_is_no_car (void)
{
  g_autoptr (Car) car = car_new ();

  check_refused (car, FILE_REFUSAL_NUMBER,
                 "tyre.loaded_radius_mm is 0, but must be above 0 and not above 2000.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/car-choosing/sizes", test_sizes_are_read_to_their_places);
  g_test_add_func ("/car-choosing/targets", test_targets_are_read_to_their_places);
  g_test_add_func ("/car-choosing/plates", test_plates_are_read_to_their_places);
  g_test_add_func ("/car-choosing/mirrored", test_the_right_side_is_mirrored);
  g_test_add_func ("/car-choosing/right-alignment",
                   test_a_right_alignment_alone_keeps_the_left_points);
  g_test_add_func ("/car-choosing/no-right", test_without_a_right_side_both_are_alike);
  g_test_add_func ("/car-choosing/right-setup", test_the_right_side_of_a_setup);
  g_test_add_func ("/car-choosing/shapes", test_shapes_for_the_kernel);
  g_test_add_func ("/car-choosing/half-a-part", test_half_a_part_is_none);
  g_test_add_func ("/car-choosing/unknown", test_unknown_members_are_written_back);
  g_test_add_func ("/car-choosing/defaults", test_defaults_are_not_written);
  g_test_add_func ("/car-choosing/differs", test_only_what_differs_is_written);
  g_test_add_func ("/car-choosing/every-bit", test_every_bit_is_kept);
  g_test_add_func ("/car-choosing/equal-numbers", test_equal_minds_every_number);
  g_test_add_func ("/car-choosing/equal-rest", test_equal_minds_the_rest);
  g_test_add_func ("/car-choosing/equal-nothing-else", test_equal_minds_nothing_else);
  g_test_add_func ("/car-choosing/demo-cars", test_demo_cars_have_room_and_aims);
  g_test_add_func ("/car-choosing/draft", test_a_draft_is_checked_in_words);
  g_test_add_func ("/car-choosing/empty", test_an_empty_car_is_no_car);
  return g_test_run ();
}
