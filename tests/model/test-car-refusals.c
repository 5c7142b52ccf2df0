/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is wrong with each file of tests/data/cars/bad, in the words that people see. */

#include "car-fixture.h"

#include "model/car-json.h"

typedef struct {
  const char *file;
  CarError code;
  const char *sentence;
} Refusal;

static const Refusal refusals[] = {
  { "alignment-missing", CAR_ERROR_MISSING, "alignment is missing." },
  { "arm-cannot-lift", CAR_ERROR_GEOMETRY,
    "Turning the lower arm does not lift the wheel: check corner.arm_front_pivot, "
    "corner.arm_rear_pivot and corner.ball_joint." },
  { "assignment", CAR_ERROR_SYNTAX, "Line 1, column 1: A value is expected." },
  { "baseline-mistyped", CAR_ERROR_TYPE, "baseline must be a text." },
  { "baseline-unknown", CAR_ERROR_NAME, "baseline names none of the setups." },
  { "bad-escape", CAR_ERROR_SYNTAX,
    "Line 4, column 18: This is no escape that JSON knows." },
  { "ball-on-hinge", CAR_ERROR_GEOMETRY,
    "corner.ball_joint lies on the line through corner.arm_front_pivot and "
    "corner.arm_rear_pivot, so the arm cannot carry it." },
  { "bare-exponent", CAR_ERROR_SYNTAX,
    "Line 19, column 11: This is no number as JSON writes one." },
  { "bare-point", CAR_ERROR_SYNTAX,
    "Line 19, column 11: This is no number as JSON writes one." },
  { "brake-share-percent", CAR_ERROR_NUMBER,
    "body.front_brake_share is 68, but must lie between 0 and 1." },
  { "bump-negative", CAR_ERROR_NUMBER,
    "travel.bump_mm is -1, but must lie between 0 and 500." },
  { "byte-order-mark", CAR_ERROR_SYNTAX,
    "Line 1, column 1: JSON starts without a byte-order mark." },
  { "camber-bolt-far", CAR_ERROR_NUMBER,
    "setups[2].corrections.camber_bolt_deg is -10.5, but must lie between -10 and 10." },
  { "camber-missing", CAR_ERROR_MISSING, "alignment.camber_deg is missing." },
  { "camber-steep", CAR_ERROR_NUMBER,
    "alignment.camber_deg is -46, but must lie between -45 and 45." },
  { "cg-height-zero", CAR_ERROR_NUMBER,
    "body.cg_height_mm is 0, but must be above 0 and not above 5000." },
  { "comma-decimal", CAR_ERROR_SYNTAX,
    "Line 53, column 29: A member name in double quotes is expected." },
  { "comment-block", CAR_ERROR_SYNTAX,
    "Line 6, column 3: A member name in double quotes is expected." },
  { "comment", CAR_ERROR_SYNTAX,
    "Line 6, column 3: A member name in double quotes is expected." },
  { "control-character", CAR_ERROR_SYNTAX,
    "Line 4, column 16: A text cannot hold a bare control character or line end." },
  { "coordinate-far", CAR_ERROR_NUMBER,
    "corner.ball_joint[1] is 652000, but must lie between -10000 and 10000." },
  { "coordinate-null", CAR_ERROR_TYPE, "corner.ball_joint[2] must be a number." },
  { "coordinate-text", CAR_ERROR_TYPE, "corner.ball_joint[1] must be a number." },
  { "corner-is-list", CAR_ERROR_TYPE, "corner must be an object in braces." },
  { "corner-missing", CAR_ERROR_MISSING, "corner is missing." },
  { "correction-far", CAR_ERROR_NUMBER,
    "setups[1].corrections.rack_raise_mm is 201, but must lie between -200 and 200." },
  { "correction-text", CAR_ERROR_TYPE,
    "setups[1].corrections.ball_joint_spacer_mm must be a number." },
  { "corrections-mistyped", CAR_ERROR_TYPE,
    "setups[0].corrections must be an object in braces." },
  { "cut-short", CAR_ERROR_SYNTAX, "Line 14, column 2: A value is expected." },
  { "droop-huge", CAR_ERROR_NUMBER,
    "travel.droop_mm is 5000, but must lie between 0 and 500." },
  { "duplicate-key-escaped", CAR_ERROR_SYNTAX, "tyre appears twice." },
  { "duplicate-key-unknown", CAR_ERROR_SYNTAX, "x[0].y appears twice." },
  { "duplicate-key", CAR_ERROR_SYNTAX, "corner.ball_joint appears twice." },
  { "empty", CAR_ERROR_SYNTAX, "Line 1, column 1: A value is expected." },
  { "format-missing", CAR_ERROR_VERSION,
    "This is no car file: format is not \"strutwright-car\"." },
  { "format-mistyped", CAR_ERROR_VERSION,
    "This is no car file: format is not \"strutwright-car\"." },
  { "format-other", CAR_ERROR_VERSION,
    "This is no car file: format is not \"strutwright-car\"." },
  { "hexadecimal", CAR_ERROR_SYNTAX,
    "Line 19, column 8: This is no number as JSON writes one." },
  { "hidden-mistyped", CAR_ERROR_TYPE, "setups[2].hidden must be true or false." },
  { "infinity", CAR_ERROR_SYNTAX, "Line 19, column 7: A value is expected." },
  { "integer-past-64-bit-negative", CAR_ERROR_NUMBER,
    "serial[0] is an integer of more than 64 bits, which cannot be kept exactly." },
  { "integer-past-64-bit", CAR_ERROR_NUMBER,
    "serial is an integer of more than 64 bits, which cannot be kept exactly." },
  { "leading-zero", CAR_ERROR_SYNTAX,
    "Line 19, column 8: This is no number as JSON writes one." },
  { "lone-surrogate", CAR_ERROR_SYNTAX,
    "Line 4, column 23: Half a surrogate pair is no character." },
  { "lowering-mistyped", CAR_ERROR_TYPE, "setups[0].lowering_mm must be a number." },
  { "mass-negative", CAR_ERROR_NUMBER,
    "body.front_mass_kg is -1, but must lie between 0 and 50000." },
  { "mount-far", CAR_ERROR_NUMBER,
    "setups[2].mount.up_mm is 10000, but must lie between -1000 and 1000." },
  { "mount-mistyped", CAR_ERROR_TYPE, "setups[1].mount must be an object in braces." },
  { "mount-text", CAR_ERROR_TYPE, "setups[2].mount.rearward_mm must be a number." },
  { "name-mistyped", CAR_ERROR_TYPE, "name must be a text." },
  { "nested-too-deep", CAR_ERROR_TOO_LARGE, "x is nested more than 32 levels deep." },
  { "not-a-number", CAR_ERROR_SYNTAX, "Line 19, column 7: A value is expected." },
  { "not-utf-8", CAR_ERROR_SYNTAX, "Line 4, column 17: The file is not UTF-8 text." },
  { "notes-null", CAR_ERROR_TYPE, "notes must be a text." },
  { "nul-byte", CAR_ERROR_SYNTAX, "Line 4, column 16: The file is not UTF-8 text." },
  { "nul-escape", CAR_ERROR_SYNTAX,
    "Line 4, column 23: A text cannot hold the character zero." },
  { "open-text", CAR_ERROR_SYNTAX, "Line 1, column 9: A text is not closed." },
  { "overflow-unknown", CAR_ERROR_NUMBER, "x.y[1] is too large a number." },
  { "overflow", CAR_ERROR_NUMBER, "corner.ball_joint[1] is too large a number." },
  { "overlong-utf-8", CAR_ERROR_SYNTAX,
    "Line 4, column 17: The file is not UTF-8 text." },
  { "plus-sign", CAR_ERROR_SYNTAX, "Line 19, column 7: A value is expected." },
  { "point-first", CAR_ERROR_SYNTAX, "Line 19, column 7: A value is expected." },
  { "point-is-number", CAR_ERROR_TYPE,
    "corner.strut_foot must be a list of three numbers: forward, left and up." },
  { "point-long", CAR_ERROR_TYPE,
    "corner.ball_joint must be a list of three numbers: forward, left and up." },
  { "point-missing", CAR_ERROR_MISSING, "corner.strut_foot is missing." },
  { "point-short", CAR_ERROR_MISSING, "corner.ball_joint[2] is missing." },
  { "points-coincide", CAR_ERROR_GEOMETRY,
    "corner.ball_joint and corner.strut_foot are the same place." },
  { "radius-missing", CAR_ERROR_MISSING, "tyre.loaded_radius_mm is missing." },
  { "radius-zero", CAR_ERROR_NUMBER,
    "tyre.loaded_radius_mm is 0, but must be above 0 and not above 2000." },
  { "root-is-list", CAR_ERROR_TYPE,
    "This is no car file: it must be an object in braces." },
  { "root-is-number", CAR_ERROR_TYPE,
    "This is no car file: it must be an object in braces." },
  { "section-negative", CAR_ERROR_NUMBER,
    "tyre.section_width_mm is -165, but must be above 0 and not above 2000." },
  { "setup-mistyped", CAR_ERROR_TYPE, "setups[1] must be an object in braces." },
  { "setup-name-mistyped", CAR_ERROR_TYPE, "setups[1].name must be a text." },
  { "setups-mistyped", CAR_ERROR_TYPE, "setups must be a list in brackets." },
  { "single-quotes", CAR_ERROR_SYNTAX, "Line 4, column 11: A value is expected." },
  { "single-word", CAR_ERROR_SYNTAX, "Line 1, column 1: A value is expected." },
  { "strut-upside-down", CAR_ERROR_GEOMETRY,
    "corner.upper_mount must lie above corner.strut_foot and corner.ball_joint." },
  { "tie-rod-dead", CAR_ERROR_GEOMETRY,
    "The tie rod stands at its dead point and cannot steer: check corner.tie_rod_outer "
    "and corner.tie_rod_inner." },
  { "tie-rod-on-axis", CAR_ERROR_GEOMETRY,
    "corner.tie_rod_outer or corner.tie_rod_inner lies on the steering axis, the line "
    "from corner.ball_joint to corner.upper_mount." },
  { "toe-in-missing", CAR_ERROR_MISSING, "alignment.toe_in_deg is missing." },
  { "toe-in-true", CAR_ERROR_TYPE, "alignment.toe_in_deg must be a number." },
  { "toe-mistyped", CAR_ERROR_TYPE, "setups[0].toe must be a text." },
  { "toe-other", CAR_ERROR_TYPE, "setups[0].toe must be \"as-moved\" or \"reset\"." },
  { "trailing-comma-list", CAR_ERROR_SYNTAX, "Line 21, column 5: A value is expected." },
  { "trailing-comma-object", CAR_ERROR_SYNTAX,
    "Line 77, column 5: A member name in double quotes is expected." },
  { "travel-mistyped", CAR_ERROR_TYPE, "travel must be an object in braces." },
  { "travel-none", CAR_ERROR_NUMBER,
    "travel.bump_mm and travel.droop_mm cannot both be zero." },
  { "two-values", CAR_ERROR_SYNTAX,
    "Line 100, column 1: Nothing may follow the closing brace." },
  { "tyre-missing", CAR_ERROR_MISSING, "tyre is missing." },
  { "unsprung-negative", CAR_ERROR_NUMBER,
    "body.unsprung_corner_kg is -0.5, but must lie between 0 and 5000." },
  { "version-missing", CAR_ERROR_MISSING, "version is missing." },
  { "version-newer", CAR_ERROR_VERSION,
    "The file is from a newer Strutwright: its version is 2, and this program reads up "
    "to version 1." },
  { "version-text", CAR_ERROR_TYPE, "version must be a number." },
  { "version-zero", CAR_ERROR_VERSION, "version is 0, which no car file ever had." },
  { "wheelbase-zero", CAR_ERROR_NUMBER,
    "body.wheelbase_mm is 0, but must be above 0 and not above 20000." },
  /* Choosing an upper mount. */
  { "tower-mistyped", CAR_ERROR_TYPE, "tower must be an object in braces." },
  { "tower-opening-negative", CAR_ERROR_NUMBER,
    "tower.opening_diameter_mm is -1, but must lie between 0 and 1000." },
  { "tower-opening-far", CAR_ERROR_NUMBER,
    "tower.opening_inboard_mm is 1001, but must lie between -1000 and 1000." },
  { "strut-mistyped", CAR_ERROR_TYPE, "strut must be an object in braces." },
  { "strut-tube-negative", CAR_ERROR_NUMBER,
    "strut.tube_diameter_mm is -45, but must lie between 0 and 500." },
  { "strut-tube-upside-down", CAR_ERROR_NUMBER,
    "strut.tube_top_mm is 100, but must be above strut.tube_bottom_mm, "
    "which is 120." },
  { "strut-tube-flat", CAR_ERROR_NUMBER,
    "strut.tube_top_mm is 120, but must be above strut.tube_bottom_mm, "
    "which is 120." },
  { "strut-seat-text", CAR_ERROR_TYPE, "strut.seat_height_mm must be a number." },
  { "strut-spring-wide", CAR_ERROR_NUMBER,
    "strut.spring_diameter_mm is 501, but must lie between 0 and 500." },
  { "tie-rod-mistyped", CAR_ERROR_TYPE, "tie_rod must be an object in braces." },
  { "thread-pitch-zero", CAR_ERROR_NUMBER,
    "tie_rod.thread_pitch_mm is 0, but must be above 0 and not above 10." },
  { "limits-mistyped", CAR_ERROR_TYPE, "limits must be an object in braces." },
  { "limit-negative", CAR_ERROR_NUMBER,
    "limits.tyre_clearance_mm is -5, but must lie between 0 and 200." },
  { "limit-bolt-far", CAR_ERROR_NUMBER,
    "limits.camber_bolt_deg is 11, but must lie between 0 and 10." },
  { "limit-travel-null", CAR_ERROR_TYPE, "limits.travel_used_mm must be a number." },
  { "unloaded-radius-small", CAR_ERROR_NUMBER,
    "tyre.unloaded_radius_mm is 267.5, but cannot be below "
    "tyre.loaded_radius_mm, which is 268." },
  { "unloaded-radius-text", CAR_ERROR_TYPE, "tyre.unloaded_radius_mm must be a number." },
  { "rim-offset-far", CAR_ERROR_NUMBER,
    "tyre.rim_offset_mm is 350, but must lie between -200 and 200." },
  { "targets-mistyped", CAR_ERROR_TYPE, "targets must be a list in brackets." },
  { "target-mistyped", CAR_ERROR_TYPE, "targets[1] must be an object in braces." },
  { "target-aim-missing", CAR_ERROR_MISSING, "targets[0].aim is missing." },
  { "target-aim-mistyped", CAR_ERROR_TYPE, "targets[0].aim must be a text." },
  { "target-aim-unknown", CAR_ERROR_TYPE,
    "targets[1].aim must be one of camber, caster, sai, scrub_radius, "
    "trail, roll_centre_height, toe_change, scrub_change, bump_steer." },
  { "target-aim-twice", CAR_ERROR_NAME,
    "targets[2].aim is that of an earlier target, too." },
  { "target-open", CAR_ERROR_MISSING, "targets[0] gives neither least nor most." },
  { "target-crossed", CAR_ERROR_NUMBER,
    "targets[0].least is -2.3, but cannot be above most, which is -2.7." },
  { "target-least-text", CAR_ERROR_TYPE, "targets[0].least must be a number." },
  { "target-most-far", CAR_ERROR_NUMBER,
    "targets[0].most is 10001, but must lie between -10000 and 10000." },
  { "target-angle-far", CAR_ERROR_NUMBER,
    "targets[0].most is -500, but must lie between -90 and 90." },
  { "target-weight-zero", CAR_ERROR_NUMBER,
    "targets[1].weight is 0, but must be above 0 and not above 1000." },
  { "target-weight-text", CAR_ERROR_TYPE, "targets[0].weight must be a number." },
  { "right-mistyped", CAR_ERROR_TYPE, "right must be an object in braces." },
  { "right-corner-mistyped", CAR_ERROR_TYPE,
    "right.corner must be an object in braces." },
  { "right-point-missing", CAR_ERROR_MISSING, "right.corner.strut_foot is missing." },
  { "right-point-short", CAR_ERROR_MISSING, "right.corner.ball_joint[2] is missing." },
  { "right-point-long", CAR_ERROR_TYPE,
    "right.corner.ball_joint must be a list of three numbers: forward, "
    "left and up." },
  { "right-coordinate-text", CAR_ERROR_TYPE,
    "right.corner.wheel_centre[1] must be a number." },
  { "right-coordinate-far", CAR_ERROR_NUMBER,
    "right.corner.wheel_centre[1] is -69600, but must lie between -10000 "
    "and 10000." },
  { "right-on-the-left", CAR_ERROR_NUMBER,
    "right.corner.arm_front_pivot[1] is 338, but must be below zero on the "
    "right side." },
  { "right-points-coincide", CAR_ERROR_GEOMETRY,
    "right.corner.ball_joint and right.corner.strut_foot are the same "
    "place." },
  { "right-strut-upside-down", CAR_ERROR_GEOMETRY,
    "right.corner.upper_mount must lie above right.corner.strut_foot and "
    "right.corner.ball_joint." },
  { "right-ball-on-hinge", CAR_ERROR_GEOMETRY,
    "right.corner.ball_joint lies on the line through "
    "right.corner.arm_front_pivot and right.corner.arm_rear_pivot, so the "
    "arm cannot carry it." },
  { "right-alignment-mistyped", CAR_ERROR_TYPE,
    "right.alignment must be an object in braces." },
  { "right-toe-missing", CAR_ERROR_MISSING, "right.alignment.toe_in_deg is missing." },
  { "right-camber-steep", CAR_ERROR_NUMBER,
    "right.alignment.camber_deg is -46, but must lie between -45 and 45." },
  { "right-camber-text", CAR_ERROR_TYPE, "right.alignment.camber_deg must be a number." },
  { "wheel-spacer-far", CAR_ERROR_NUMBER,
    "setups[1].corrections.wheel_spacer_mm is 201, but must lie between "
    "-200 and 200." },
  { "plate-mistyped", CAR_ERROR_TYPE, "setups[1].plate must be an object in braces." },
  { "plate-name-missing", CAR_ERROR_MISSING, "setups[1].plate.name is missing." },
  { "plate-name-mistyped", CAR_ERROR_TYPE, "setups[1].plate.name must be a text." },
  { "plate-name-empty", CAR_ERROR_NAME, "setups[1].plate.name is empty." },
  { "plate-swapped-mistyped", CAR_ERROR_TYPE,
    "setups[1].plate.swapped must be true or false." },
  { "setup-right-mistyped", CAR_ERROR_TYPE,
    "setups[1].right must be an object in braces." },
  { "setup-right-far", CAR_ERROR_NUMBER,
    "setups[1].right.inboard_mm is 1001, but must lie between -1000 and "
    "1000." },
  { "setup-right-bolt-far", CAR_ERROR_NUMBER,
    "setups[1].right.camber_bolt_deg is -10.5, but must lie between -10 "
    "and 10." },
  { "setup-right-text", CAR_ERROR_TYPE, "setups[1].right.up_mm must be a number." },
};

static void
test_bad_files_are_refused_in_words (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++) {
    g_autofree char *base = g_strconcat (refusals[i].file, ".swcar", NULL);
    g_autofree char *path = fixture_path ("cars", "bad", base, NULL);
    g_autoptr (GFile) file = g_file_new_for_path (path);
    g_autoptr (GError) error = NULL;

    g_test_message ("%s", base);
    g_assert_null (car_load (file, &error));
    g_assert_error (error, CAR_ERROR, (int) refusals[i].code);
    g_assert_cmpstr (error->message, ==, refusals[i].sentence);
  }
}

static void
test_every_bad_file_has_its_row (void)
{
  g_autofree char *folder = fixture_path ("cars", "bad", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  gsize n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (refusals));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/car-refusals/sentences", test_bad_files_are_refused_in_words);
  g_test_add_func ("/car-refusals/complete", test_every_bad_file_has_its_row);
  return g_test_run ();
}
