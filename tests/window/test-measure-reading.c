/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/typed-number.h"
#include "window/measure/measure-window-reading.h"

#include "model/car/car-json.h"

#include <locale.h>
#include <string.h>

typedef struct {
  Car *car;   /* what the entries show */
  Car *draft; /* what they are read into */
  char **texts;
  gboolean has_right;
} Fixture;

/* A made-up corner. */
static const Vec3 points[N_POINTS] = {
  { 5, 345, 205 },  { -290, 365, 215 }, { -5, 655, 190 },   { -35, 535, 770 },
  { -8, 600, 330 }, { -130, 640, 225 }, { -140, 310, 240 }, { 0, 700, 270 },
};

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = car_new ();
  memcpy (f->car->points, points, sizeof points);
  f->car->camber_deg = -0.5;
  f->car->toe_in_deg = 0.05;
  f->car->loaded_radius_mm = 270.0;
  f->draft = car_new ();
  f->texts = g_new0 (char *, measure_n_fields () + 1);
  for (guint i = 0; i < measure_n_fields (); i++) {
    const MeasureField field = measure_field (i);

    f->texts[i] = field.group >= MEASURE_RIGHT_POINTS
                      ? g_strdup ("")
                      : typed_number_text (measure_field_value (&field, f->car));
  }
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  car_free (f->car);
  car_free (f->draft);
  g_strfreev (f->texts);
}

static MeasureReading
read_entries (Fixture *f)
{
  const MeasureEntries entries = { "Stonechat", "", (const char *const *) f->texts,
                                   f->has_right };

  return measure_read (&entries, f->draft);
}

static void
type (Fixture *f, guint field, const char *text)
{
  g_free (f->texts[field]);
  f->texts[field] = g_strdup (text);
}

static guint
field_at (const char *path)
{
  for (guint i = 0; i < measure_n_fields (); i++) {
    const MeasureField field = measure_field (i);

    if (measure_field_is_at (&field, path))
      return i;
  }
  g_assert_not_reached ();
}

static void
assert_says (Fixture *f, MeasureVerdict verdict, const char *sentence, const char *path)
{
  MeasureReading reading = read_entries (f);

  g_assert_cmpstr (reading.sentence, ==, sentence);
  g_assert_cmpint (reading.verdict, ==, verdict);
  g_assert_cmpint (reading.field, ==, (int) field_at (path));
  measure_reading_clear (&reading);
}

static void
test_every_field_comes_through (Fixture *f, gconstpointer data)
{
  (void) data;
  MeasureReading reading = read_entries (f);

  g_assert_cmpint (reading.verdict, ==, MEASURE_SOUND);
  g_assert_cmpint (reading.field, ==, -1);
  g_assert_cmpstr (f->draft->name, ==, "Stonechat");
  g_free (f->draft->name);
  f->draft->name = g_strdup (f->car->name);
  g_assert_true (car_equal (f->draft, f->car));
  measure_reading_clear (&reading);
}

/* Solved apart from the program, by a root finder on the raw constraints: caster 2.961°,
 * inclination 11.689°, scrub radius 8.05 mm, trail 4.82 mm. */
static void
test_a_sound_corner_tells_what_a_gauge_would (Fixture *f, gconstpointer data)
{
  (void) data;
  MeasureReading reading = read_entries (f);

  g_assert_nonnull (strstr (reading.sentence, "caster 2.96°"));
  g_assert_nonnull (strstr (reading.sentence, "inclination 11.69°"));
  g_assert_nonnull (strstr (reading.sentence, "trail 4.8 mm"));
  measure_reading_clear (&reading);
}

static void
test_nonsense_comes_before_what_is_missing (Fixture *f, gconstpointer data)
{
  (void) data;
  type (f, field_at ("alignment.camber_deg"), "");
  assert_says (f, MEASURE_MISSING, "1 entry is missing: “Camber”.",
               "alignment.camber_deg");
  type (f, 4, " ");
  assert_says (f, MEASURE_MISSING,
               "2 entries are missing; the next one is “Arm, rear pivot, y left”.",
               "corner.arm_rear_pivot[1]");
  type (f, field_at ("tyre.section_width_mm"), "wide");
  assert_says (f, MEASURE_NONSENSE, "“Section width” holds “wide”, which is no number.",
               "tyre.section_width_mm");
  type (f, field_at ("tyre.section_width_mm"), "185,5");
  assert_says (f, MEASURE_NONSENSE,
               "“Section width” holds “185,5”, which is no number here; write “185.5”.",
               "tyre.section_width_mm");
}

static void
test_refusals_name_entries (Fixture *f, gconstpointer data)
{
  (void) data;
  type (f, field_at ("travel.bump_mm"), "-1");
  assert_says (f, MEASURE_REFUSED,
               "“Travel in bump” is −1 mm, but must lie between 0 mm and 500 mm.",
               "travel.bump_mm");
  type (f, field_at ("travel.bump_mm"), "80");
  type (f, field_at ("alignment.camber_deg"), "-212");
  assert_says (f, MEASURE_REFUSED,
               "“Camber” is −212°, but must lie between −45° and 45°.",
               "alignment.camber_deg");
  type (f, field_at ("alignment.camber_deg"), "-0.5");
  for (guint axis = 0; axis < 3; axis++)
    type (f, measure_point_field (POINT_STRUT_FOOT, SIDE_LEFT) + axis,
          f->texts[measure_point_field (POINT_UPPER_MOUNT, SIDE_LEFT) + axis]);
  assert_says (f, MEASURE_REFUSED, "“Upper mount” and “Strut foot” are the same place.",
               "corner.upper_mount");
}

/* Whatever the model may refuse, people read it without a path of the file. */
static void
test_no_path_is_left_in_a_sentence (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint i = 0; i < measure_n_fields (); i++) {
    const MeasureField field = measure_field (i);
    g_autofree char *before = g_strdup (f->texts[i]);

    if (field.group >= MEASURE_RIGHT_POINTS)
      continue;
    type (f, i, "-1e6");
    MeasureReading reading = read_entries (f);
    g_test_message ("%s: %s", field.path, reading.sentence);
    g_assert_cmpint (reading.verdict, ==, MEASURE_REFUSED);
    g_assert_null (strchr (reading.sentence, '_'));
    g_assert_null (strchr (reading.sentence, '['));
    g_assert_true (reading.is_at_fault[i]);
    g_assert_cmpint (reading.field, ==, (int) i);
    measure_reading_clear (&reading);
    type (f, i, before);
  }
}

static void
test_warnings_name_entries (Fixture *f, gconstpointer data)
{
  (void) data;
  type (f, field_at ("corner.upper_mount[0]"), "-38"); /* with a trail that is usual */
  type (f, field_at ("corner.ball_joint[1]"), "-655");
  MeasureReading reading = read_entries (f);
  g_assert_cmpint (reading.verdict, ==, MEASURE_SOUND);
  g_assert_true (g_str_has_prefix (reading.warning, "“Lower ball joint, y left”"));
  g_assert_nonnull (strstr (reading.warning,
                            " If one figure was misread, measure “Lower ball joint, y "
                            "left” again: with 655 mm, its sign the other way, "
                            "in place of −655 mm"));
  g_assert_true (g_str_has_prefix (reading.sentence, "The corner can be solved. "));
  g_assert_false (reading.is_at_fault[field_at ("corner.ball_joint[1]")]);
  measure_reading_clear (&reading);
}

/* An upright axis above the contact has neither caster nor trail, and both are told. */
static void
test_every_warning_is_told (Fixture *f, gconstpointer data)
{
  (void) data;
  const char *contact = f->texts[field_at ("corner.wheel_centre[0]")];
  type (f, field_at ("corner.upper_mount[0]"), contact);
  type (f, field_at ("corner.ball_joint[0]"), contact);
  MeasureReading reading = read_entries (f);
  g_assert_cmpint (reading.verdict, ==, MEASURE_SOUND);
  g_assert_true (g_str_has_prefix (reading.warning, "Caster is 0.00°, "));
  g_test_message ("%s", reading.warning);
  g_assert_nonnull (strstr (reading.warning, "\nCaster trail is 0.0 mm, "));
  measure_reading_clear (&reading);
}

static void
test_what_is_empty_is_its_default (Fixture *f, gconstpointer data)
{
  (void) data;
  f->draft->body.wheelbase_mm = 2222.0;
  f->draft->tower.opening_diameter_mm = 90.0;
  type (f, field_at ("body.wheelbase_mm"), "");
  type (f, field_at ("tower.opening_diameter_mm"), "");
  MeasureReading reading = read_entries (f);
  g_assert_cmpint (reading.verdict, ==, MEASURE_SOUND);
  g_assert_cmpfloat (f->draft->body.wheelbase_mm, ==, CAR_DEFAULT_WHEELBASE);
  g_assert_cmpfloat (f->draft->tower.opening_diameter_mm, ==, 0.0);
  measure_reading_clear (&reading);
}

static void
fill_right (Fixture *f, MeasureGroup group, MeasureGroup like)
{
  guint first, n, left, n_left;

  measure_group_span (group, &first, &n);
  measure_group_span (like, &left, &n_left);
  for (guint i = 0; i < n; i++) {
    const gboolean is_y = group == MEASURE_RIGHT_POINTS && i % 3 == 1;
    g_autofree char *text = g_strconcat (is_y ? "-" : "", f->texts[left + i], NULL);

    type (f, first + i, text);
  }
}

static void
test_the_right_side_counts_where_it_is_entered (Fixture *f, gconstpointer data)
{
  (void) data;
  f->has_right = TRUE;
  assert_says (f, MEASURE_MISSING,
               "24 entries are missing; the next one is “Right side: Arm, front pivot, x "
               "forward”.",
               "right.corner.arm_front_pivot[0]");
  fill_right (f, MEASURE_RIGHT_WHEEL, MEASURE_WHEEL);
  MeasureReading reading = read_entries (f);
  g_assert_cmpint (reading.verdict, ==, MEASURE_SOUND);
  g_assert_true (f->draft->right.has_alignment && !f->draft->right.has_points);
  measure_reading_clear (&reading);

  fill_right (f, MEASURE_RIGHT_POINTS, MEASURE_POINTS);
  reading = read_entries (f);
  g_assert_cmpint (reading.verdict, ==, MEASURE_SOUND);
  g_assert_true (f->draft->right.has_points);
  g_assert_cmpfloat (f->draft->right.points[POINT_UPPER_MOUNT].y, ==, -535.0);
  measure_reading_clear (&reading);

  f->has_right = FALSE;
  reading = read_entries (f);
  g_assert_false (car_has_right (f->draft));
  measure_reading_clear (&reading);
}

static void
add (const char *path, void (*test) (Fixture *, gconstpointer))
{
  g_test_add (path, Fixture, NULL, set_up, test, tear_down);
}

int
main (int argc, char **argv)
{
  setlocale (LC_NUMERIC, "C");
  g_test_init (&argc, &argv, NULL);
  add ("/measure-reading/every-field-comes-through", test_every_field_comes_through);
  add ("/measure-reading/a-sound-corner-tells-what-a-gauge-would",
       test_a_sound_corner_tells_what_a_gauge_would);
  add ("/measure-reading/nonsense-comes-before-what-is-missing",
       test_nonsense_comes_before_what_is_missing);
  add ("/measure-reading/refusals-name-entries", test_refusals_name_entries);
  add ("/measure-reading/no-path-is-left-in-a-sentence",
       test_no_path_is_left_in_a_sentence);
  add ("/measure-reading/warnings-name-entries", test_warnings_name_entries);
  add ("/measure-reading/every-warning", test_every_warning_is_told);
  add ("/measure-reading/what-is-empty-is-its-default",
       test_what_is_empty_is_its_default);
  add ("/measure-reading/the-right-side-counts-where-it-is-entered",
       test_the_right_side_counts_where_it_is_entered);
  return g_test_run ();
}
