/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/report/report.h"

#include "drawing/export/export.h"
#include "drawn-texts.h"
#include "model/car/car-json.h"
#include "model/load/spring-verdict.h"
#include "model/spring/spring-size.h"
#include "model/study/compare.h"
#include "model/study/measure-field.h"
#include "model/study/quantity-info.h"
#include "written-file.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define POINTS_PER_MM (72.0 / 25.4) /* both by definition of the inch */
#define MARGIN 30.0 /* points: printers leave some 5 mm white; common practice */
#define N_PAGES (N_REPORT_PARTS + 1) /* of the Wren: its springs have two */
#define DATE "2026-03-05"
#define GERMAN "Federbeinstützlagerverschiebungseinrichtung"

static void
replace (char **text, const char *with)
{
  g_free (*text);
  *text = g_strdup (with);
}

static Car *
load_car (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swcar", NULL);
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "..", "..", "data", base, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  g_assert_no_error (error);
  return car;
}

static void
add_setups (Car *car, guint n)
{
  for (guint i = 0; i < n; i++) {
    CarSetup setup = car_setup_copy (car_setup (car, 1));
    g_autofree char *name = g_strdup_printf (i % 3 == 0 ? "Try %u" : GERMAN " %u", i);

    replace (&setup.name, name);
    setup.lowering_mm = 3.0 * i;
    setup.corrections.rack_raise_mm = -3.5;
    setup.corrections.camber_bolt_deg = i % 2 == 0 ? -1.0 : 0.0;
    g_array_append_val (car->setups, setup);
  }
}

static void
measure_right (Car *car)
{
  car->right.has_points = car->right.has_alignment = TRUE;
  for (PointName i = 0; i < N_POINTS; i++) {
    car->right.points[i] = car->points[i];
    car->right.points[i].y *= -1.0;
  }
  car->right.points[POINT_UPPER_MOUNT].y += 3.25;
  car_setup (car, 1)->right =
      (CarRightSide){ .is_own = TRUE, .mount = { 9.0, 4.0, 0.0 } };
}

static Report
report_on (const Car *car)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  Report report = { .car = car,
                    .in_hand = car->setups->len - 1,
                    .choice = board_choice_default (),
                    .paper = paper_a4 (),
                    .date = DATE };

  car_load_cases (car, cases);
  report.load_case = cases[0];
  for (ReportPart part = 0; part < N_REPORT_PARTS; part++)
    report.has[part] = true;
  return report;
}

static Report
only (const Car *car, ReportPart wanted)
{
  Report report = report_on (car);

  for (ReportPart part = 0; part < N_REPORT_PARTS; part++)
    report.has[part] = part == wanted;
  return report;
}

/* Onto nothing: only what goes through the wraps counts. */
static void
draw_page (ReportPress *press, const Report *report, guint page)
{
  cairo_surface_t *surface =
      cairo_pdf_surface_create (NULL, report->paper.width, report->paper.height);
  cairo_t *cr = cairo_create (surface);

  drawn_reset ();
  report_draw_page (press, cr, page);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static bool
is_whole_elsewhere (const char *text)
{
  for (guint i = 0; i < drawn_texts->len; i++)
    if (!drawn_text_at (i)->is_cut && strstr (drawn_text_at (i)->text, text) != NULL)
      return true;
  return false;
}

/* But for names that stand in full on the same page, and the car's on the first. */
static void
assert_nothing_is_cut (const Report *report)
{
  for (guint i = 0; i < drawn_texts->len; i++) {
    const DrawnText *text = drawn_text_at (i);

    if (text->is_cut && !g_str_equal (text->text, report->car->name) &&
        !is_whole_elsewhere (text->text))
      g_error ("“%s” is cut short", text->text);
  }
}

static void
check_pages (const Report *report)
{
  g_autoptr (ReportPress) press = report_press_new (report);
  const guint n = report_n_pages (press);

  for (guint page = 0; page < n; page++) {
    g_autofree char *number = g_strdup_printf ("%u / %u", page + 1, n);
    const ReportPart part = report_page_part (press, page);

    draw_page (press, report, page);
    drawn_assert_apart (report->paper.width, report->paper.height, MARGIN,
                        report_part_key (part));
    assert_nothing_is_cut (report);
    g_assert_cmpuint (drawn_count (number), ==, 1);
    g_assert_cmpuint (drawn_count ("check on an alignment rack"), ==, 1);
    g_assert_cmpuint (drawn_count ("licensed practice come first"), ==, 1);
  }
}

static const char *const cars[] = { "wren", "fieldfare", "lapwing", "dunnock" };

static void
test_pages_are_tidy (gconstpointer long_words)
{
  drawn_in_long_words = GPOINTER_TO_INT (long_words);
  drawn_word_length = 12;
  for (gsize c = 0; c < G_N_ELEMENTS (cars); c++)
    for (int letter = 0; letter <= 1; letter++) {
      g_autoptr (Car) car = load_car (cars[c]);
      Report report = report_on (car);

      if (letter == 1) {
        report.paper = paper_letter ();
        measure_right (car);
      }
      check_pages (&report);
    }
  drawn_in_long_words = false;
}

static void
test_long_names_and_notes (gconstpointer long_words)
{
  g_autofree char *unbroken = g_strnfill (240, 'W');
  g_autofree char *broken = g_strdup_printf ("%s and %s and more", GERMAN, unbroken);
  g_autoptr (GString) notes = g_string_new (NULL);
  g_autoptr (Car) car = load_car ("wren");

  for (guint i = 0; i < 120; i++)
    g_string_append_printf (notes, "Note %u: %s, measured twice.\n", i, GERMAN);
  replace (&car->name, broken);
  replace (&car->notes, notes->str);
  measure_right (car);
  add_setups (car, 14);
  replace (&car_setup (car, 3)->name, unbroken);
  car_setup (car, 4)->plate = g_strdup (broken);
  drawn_in_long_words = GPOINTER_TO_INT (long_words);
  drawn_word_length = 12;
  Report report = only (car, REPORT_CAR);
  check_pages (&report);
  report = only (car, REPORT_SETUPS);
  check_pages (&report);
  drawn_in_long_words = false;
}

static void
test_parts_in_their_order (void)
{
  g_autoptr (Car) car = load_car ("wren");
  const Report report = report_on (car);
  g_autoptr (ReportPress) press = report_press_new (&report);

  /* drawings have a page each, springs one more for their sizes */
  g_assert_cmpuint (report_n_pages (press), ==, N_PAGES);
  for (guint page = 0; page < report_n_pages (press); page++) {
    const ReportPart part = page <= REPORT_SPRINGS ? page : page - 1;

    g_assert_cmpuint (report_page_part (press, page), ==, part);
    draw_page (press, &report, page);
    if (page != REPORT_SPRINGS + 1)
      g_assert_nonnull (drawn_find (report_part_name (part)));
    g_assert_cmpuint (drawn_count (car->name), ==, 1);
    g_assert_cmpuint (drawn_count (DATE), ==, 1);
  }
}

static void
test_only_what_is_asked_for_and_given (void)
{
  g_autoptr (Car) car = load_car ("wren");
  const CarSprings springs = car->springs;
  Report report = only (car, REPORT_HEIGHT);
  g_autoptr (ReportPress) one = report_press_new (&report);

  g_assert_cmpuint (report_n_pages (one), ==, 1);
  g_assert_cmpuint (report_page_part (one, 0), ==, REPORT_HEIGHT);

  /* nor is what only a hidden setup has */
  car->springs = car_springs_none ();
  for (guint i = 0; i < car->setups->len; i++)
    car_setup (car, i)->has_springs = FALSE;
  CarSetup hidden = car_setup_copy (car_setup (car, 1));
  hidden.is_hidden = hidden.has_springs = TRUE;
  hidden.springs = springs;
  g_array_append_val (car->setups, hidden);
  report = report_on (car);
  report.in_hand = 0;
  g_autoptr (ReportPress) rest = report_press_new (&report);
  g_assert_cmpuint (report_n_pages (rest), ==, REPORT_SPRINGS);
  for (guint page = 0; page < report_n_pages (rest); page++)
    g_assert_cmpuint (report_page_part (rest, page), <, REPORT_SPRINGS);
}

static bool
has_part (const GPtrArray *sizes, const char *part)
{
  for (guint i = 0; i < sizes->len; i++)
    if (g_str_equal (((SpringSize *) sizes->pdata[i])->part, part))
      return true;
  return false;
}

/* Each of the texts stands on one of the pages. */
static void
assert_written (const Report *report, const GPtrArray *texts)
{
  g_autoptr (ReportPress) press = report_press_new (report);
  g_autofree bool *is_met = g_new0 (bool, texts->len);

  for (guint page = 0; page < report_n_pages (press); page++) {
    draw_page (press, report, page);
    for (guint i = 0; i < texts->len; i++)
      is_met[i] = is_met[i] || drawn_find (texts->pdata[i]) != NULL;
  }
  for (guint i = 0; i < texts->len; i++)
    if (!is_met[i])
      g_error ("no “%s” on any page", (char *) texts->pdata[i]);
}

/* N·m/°, of the Dunnock's stepped bar: its lengths in series, each G π d⁴/(32 l)
 * (Shigley's Mechanical Engineering Design, torsion of round bars). */
static char *
bar_rate_text (const CarTorsionBar *bar)
{
  double give = 0.0;

  for (gsize i = 0; i < bar->n_sections; i++)
    give += 32.0 * bar->sections[i].length_mm /
            (1000.0 * bar->shear_modulus_gpa * G_PI * pow (bar->sections[i].outer_mm, 4));
  return g_strdup_printf ("%.2f N·m/°", G_PI / 180.0 / give / 1000.0);
}

/* What each setup has and nothing that it has not, with the verdicts on it. The overhang
 * by hand: the mount at (−40, 541, 778) over the strut's foot at (−10, 606, 336), less
 * 336 mm up to the guide; the piston 255 mm below the mount. */
static void
test_sizes_of_springs_and_rods (void)
{
  g_autoptr (Car) car = load_car ("dunnock");
  const Report report = only (car, REPORT_SPRINGS);
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (g_free);
  const double strut = sqrt (30.0 * 30.0 + 65.0 * 65.0 + 442.0 * 442.0);

  g_ptr_array_add (wanted, bar_rate_text (&car->springs.bar));
  g_ptr_array_add (wanted, g_strdup_printf ("%.1f mm", strut - 336.0));
  g_ptr_array_add (wanted, g_strdup_printf ("%.1f mm", 255.0 - (strut - 336.0)));
  g_ptr_array_add (wanted, g_strdup ("1095 mm"));
  g_ptr_array_add (wanted, g_strdup ("28 N/mm"));
  study_solve (study, car, report.in_hand, 0.0);
  spring_study_solve (springs, study, car);
  for (guint setup = 0; setup < car->setups->len; setup++) {
    const CarSprings *given = car_setup_springs (car, setup);
    g_autoptr (GPtrArray) sizes = spring_sizes (springs, setup);
    g_autoptr (GPtrArray) verdicts = spring_verdicts (springs, setup);

    g_assert_cmpuint (verdicts->len, >, 2);
    g_assert_cmpint (has_part (sizes, "Torsion bar"), ==, given->bar.is_there);
    g_assert_cmpint (has_part (sizes, "Coil"), ==, given->coil.is_there);
    g_assert_cmpint (has_part (sizes, "Helper"), ==, given->helper.is_there);
    g_assert_true (has_part (sizes, "Rod"));
    for (guint i = 0; i < sizes->len; i++)
      g_ptr_array_add (wanted, g_strdup (((SpringSize *) sizes->pdata[i])->text));
    for (guint i = 0; i < verdicts->len; i++)
      g_ptr_array_add (wanted,
                       g_strdup (((SpringVerdict *) verdicts->pdata[i])->sentence));
  }
  assert_written (&report, wanted);
}

/* Every number that was entered stands on the first page, with its unit. */
static void
test_measured_numbers_stand_with_their_units (void)
{
  g_autoptr (Car) car = load_car ("wren");
  const Report report = only (car, REPORT_CAR);
  g_autoptr (ReportPress) press = report_press_new (&report);

  draw_page (press, &report, 0);
  g_assert_nonnull (drawn_find (car->notes));
  for (PointName point = 0; point < N_POINTS; point++) {
    const MeasureField field = measure_field (measure_point_field (point, SIDE_LEFT));
    const DrawnText *name = drawn_find (field.name);
    g_autofree char *x = g_strdup_printf ("%.0f", fabs (car->points[point].x));
    const DrawnText *number = NULL;

    g_assert_nonnull (name);
    for (guint i = 0; i < drawn_texts->len && number == NULL; i++)
      if (fabs (drawn_text_at (i)->bottom - name->bottom) < 4.0 &&
          g_str_has_suffix (drawn_text_at (i)->text, x))
        number = drawn_text_at (i);
    g_assert_nonnull (number);
  }
  g_assert_cmpuint (drawn_count ("Measured points, mm"), ==, 1);
  g_assert_cmpuint (drawn_count ("2320"), ==, 1);
  g_assert_cmpuint (drawn_count ("kg"), ==, 2);
}

/* The text that reads so and lies in that column, on one page. */
static bool
stands_under (const DrawnText *head, const char *text)
{
  for (guint i = 0; i < drawn_texts->len; i++) {
    const DrawnText *t = drawn_text_at (i);

    if (g_str_equal (t->text, text) && t->top > head->top &&
        t->right > head->left - 4.0 && t->left < head->left + 132.0)
      return true;
  }
  return false;
}

/* Values and changes are those of the comparison that the command line prints. */
static void
test_figures_are_those_of_the_comparison (void)
{
  g_autoptr (Car) car = load_car ("wren");
  const Report report = only (car, REPORT_SETUPS);
  g_autoptr (ReportPress) press = report_press_new (&report);
  g_autoptr (Study) study = study_new ();
  guint n;
  const Quantity *rows = compare_rows (&n);

  study_solve (study, car, 0, 0.0);
  draw_page (press, &report, 0);
  for (guint s = 0; s < study->n_setups; s++)
    for (guint i = 0; i < n; i++) {
      const double scale = quantity_edge_value (rows[i], 1.0);
      char value[40], change[40];

      quantity_format (rows[i], compare_value (study, s, rows[i]) / scale, FALSE, value,
                       sizeof value);
      quantity_format (rows[i], compare_change (study, s, rows[i]) / scale, TRUE, change,
                       sizeof change);
      g_assert_true (stands_under (drawn_find (study->setups[s].name), value));
      if (s != study->baseline)
        g_assert_true (stands_under (drawn_find (study->setups[s].name), change));
    }
}

/* The car's setups differ in springs alone; one of two more is lowered. */
static void
test_what_has_one_geometry_has_one_column (void)
{
  g_autoptr (Car) car = load_car ("dunnock");
  CarSetup more[] = { car_setup_copy (car_setup (car, 0)),
                      car_setup_copy (car_setup (car, 1)) };

  replace (&more[0].name, "Lower");
  replace (&more[1].name, "Coil again");
  more[0].lowering_mm = 15.0;
  g_array_append_vals (car->setups, more, G_N_ELEMENTS (more));
  const Report report = only (car, REPORT_SETUPS);
  g_autoptr (ReportPress) press = report_press_new (&report);

  draw_page (press, &report, 0);
  const DrawnText *lower = drawn_find ("Lower"),
                  *first = drawn_find (car_setup (car, 0)->name);
  for (guint i = 1; i < car->setups->len; i++)
    if (i != 3)
      g_assert_cmpfloat_with_epsilon (drawn_find (car_setup (car, i)->name)->left,
                                      first->left,
                                      2.0); /* letters differ in their bearings */
  g_assert_cmpfloat (lower->left, >, first->right);
  g_autofree char *strut =
      g_strdup_printf ("%.1f", vec3_length (vec3_sub (car->points[POINT_UPPER_MOUNT],
                                                      car->points[POINT_STRUT_FOOT])));
  g_assert_true (stands_under (first, strut));
  g_assert_cmpuint (drawn_count (strut), ==, 1);
  g_assert_cmpuint (drawn_count ("all of the same geometry"), ==, 1);
  g_assert_true (stands_under (lower, "+15.0"));
}

/* Of one geometry, and each on other springs: its own line says on which, and all have
 * what they come to, not only the one in hand and the baseline. */
static void
test_setups_that_differ_in_springs_alone (void)
{
  g_autoptr (Car) car = load_car ("dunnock");
  Report report = only (car, REPORT_SETUPS);
  g_autoptr (ReportPress) press = report_press_new (&report);
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (g_free);

  draw_page (press, &report, 0);
  g_assert_cmpuint (drawn_count (" · torsion bar with helper coil"), ==, 1);
  g_assert_cmpuint (drawn_count (" · torsion bar"), ==, 2);
  g_assert_cmpuint (drawn_count (" · coil with helper"), ==, 1);

  report = only (car, REPORT_SPRINGS);
  study_solve (study, car, report.in_hand, 0.0);
  spring_study_solve (springs, study, car);
  /* neither in hand nor the baseline */
  g_ptr_array_add (wanted, g_strdup_printf ("%.2f N/mm", springs->setups[1].wheel_rate));
  g_ptr_array_add (wanted,
                   g_strdup_printf ("%.0f N·m/°", springs->setups[1].roll_stiffness));
  assert_written (&report, wanted);
}

/* More than fit across go on below and overleaf, each table with its own head. */
static void
test_many_setups_go_on_overleaf (void)
{
  g_autoptr (Car) car = load_car ("wren");
  guint n_heads = 0, n_rows = 0;

  add_setups (car, 13);
  car_setup (car, 2)->is_hidden = TRUE;
  const Report report = only (car, REPORT_SETUPS);
  g_autoptr (ReportPress) press = report_press_new (&report);

  g_assert_cmpuint (report_n_pages (press), >=, 3);
  g_autofree guint *seen = g_new0 (guint, car->setups->len);
  for (guint page = 0; page < report_n_pages (press); page++) {
    draw_page (press, &report, page);
    for (guint i = 0; i < drawn_texts->len; i++) {
      n_rows += g_str_equal (drawn_text_at (i)->text, "Roll-centre height");
      for (guint s = 0; s < car->setups->len; s++)
        seen[s] += g_str_equal (drawn_text_at (i)->text, car_setup (car, s)->name);
    }
    n_heads += drawn_count ("Each where it stands");
  }
  /* fourteen beside the baseline, three at most in a table; each again in the list */
  g_assert_cmpuint (n_rows, ==, 5);
  g_assert_cmpuint (n_heads, >=, 5);
  g_assert_cmpuint (seen[0], ==, n_heads + 1);
  g_assert_cmpuint (seen[2], ==, 0);
  for (guint s = 3; s < car->setups->len; s++)
    g_assert_cmpuint (seen[s], >=, 1);
}

/* Two circles of one size that lie so to each other, in points; cairo keeps points of a
 * path to 1/256, these are as they were given. */
static bool
has_circles_apart (double dx, double dy)
{
  for (guint i = 0; i < drawn_circles->len; i++)
    for (guint j = 0; j < drawn_circles->len; j++) {
      const DrawnCircle *a = &g_array_index (drawn_circles, DrawnCircle, i);
      const DrawnCircle *b = &g_array_index (drawn_circles, DrawnCircle, j);

      if (fabs (a->radius - b->radius) < 1e-6 && fabs (b->x - a->x - dx) < 1e-6 &&
          fabs (b->y - a->y - dy) < 1e-6)
        return true;
    }
  return false;
}

static bool
has_line_of (double length)
{
  for (guint i = 0; i < drawn_lines->len; i++) {
    const DrawnLine *line = &g_array_index (drawn_lines, DrawnLine, i);

    if (fabs (line->to_x - line->from_x - length) < 1.0 / 128.0 &&
        fabs (line->to_y - line->from_y) < 1.0 / 128.0)
      return true;
  }
  return false;
}

/* Measured between points on the paper: ball joint and upper mount, both ends of the tie
 * rod, in the front view and from the side. A car half as large comes out at 1 : 5, one
 * twice as large at 1 : 20: the reductions of ISO 5455, from memory. */
static void
test_sheet_is_true_to_its_scale (void)
{
  static const struct {
    double size;
    int scale;
    const char *words;
  } cases[] = { { 0.45, 5, "Scale 1 : 5" },
                { 1.0, 10, "Scale 1 : 10" },
                { 1.7, 20, "Scale 1 : 20" } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (Car) car = load_car ("wren");
    const double size = cases[i].size, per_mm = POINTS_PER_MM / cases[i].scale;

    for (PointName p = 0; p < N_POINTS; p++)
      car->points[p] = vec3_scale (car->points[p], size);
    car->loaded_radius_mm *= size;
    car->unloaded_radius_mm = 0.0;
    car->section_width_mm *= size;
    car->bump_mm *= size;
    car->droop_mm *= size;
    Report report = only (car, REPORT_SHEET);
    report.in_hand = 0; /* as measured: points stand where they were entered */
    g_autoptr (ReportPress) press = report_press_new (&report);
    const Vec3 strut =
        vec3_sub (car->points[POINT_UPPER_MOUNT], car->points[POINT_BALL_JOINT]);
    const Vec3 rod =
        vec3_sub (car->points[POINT_TIE_ROD_OUTER], car->points[POINT_TIE_ROD_INNER]);

    draw_page (press, &report, 0);
    g_assert_nonnull (drawn_find (cases[i].words));
    g_assert_true (has_line_of (50.0 * POINTS_PER_MM));
    g_assert_true (has_circles_apart (strut.y * per_mm, -strut.z * per_mm));
    g_assert_true (has_circles_apart (strut.x * per_mm, -strut.z * per_mm));
    g_assert_true (has_circles_apart (rod.y * per_mm, -rod.z * per_mm));
    g_assert_true (has_circles_apart (rod.y * per_mm, rod.x * per_mm));
    g_assert_false (has_circles_apart (strut.y * per_mm * 1.001, -strut.z * per_mm));
  }
}

typedef struct {
  Car *car;
  Report report;
  char *folder;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = load_car ("wren");
  f->report = report_on (f->car);
  f->report.date = NULL;
  f->folder = g_dir_make_tmp ("report-XXXXXX", NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  static const char *const names[] = { "a.pdf", "b.pdf", "a.png" };

  (void) data;
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *path = g_build_filename (f->folder, names[i], NULL);
    g_remove (path);
  }
  g_assert_no_errno (g_rmdir (f->folder));
  g_free (f->folder);
  car_free (f->car);
}

static GBytes *
write_report (const Fixture *f, const char *name)
{
  g_autofree char *path = g_build_filename (f->folder, name, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (report_write (&f->report, path, &error));
  g_assert_no_error (error);
  return written_bytes (path);
}

/* ISO 216: A4 is 210 mm by 297 mm; Letter is 8.5 by 11 inches. */
static void
test_pdf_has_its_pages_in_letters_and_lines (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autoptr (GBytes) a4 = write_report (f, "a.pdf");

  g_assert_cmpfloat_with_epsilon (f->report.paper.width, 210.0 * POINTS_PER_MM, 1e-3);
  g_assert_cmpfloat_with_epsilon (f->report.paper.height, 297.0 * POINTS_PER_MM, 1e-3);
  g_assert_cmpuint (written_count (a4, "/MediaBox [ 0 0 595.276 841.89 ]"), ==, N_PAGES);
  g_assert_cmpuint (written_count (a4, "/Count 8"), ==, 1);
  g_assert_cmpuint (written_count (a4, "/Subtype /Image"), ==, 0);
  g_assert_cmpuint (written_count (a4, "/FontFile"), >=, 2);
  g_assert_cmpuint (written_count (a4, "/CreationDate"), ==, 0);
  g_assert_cmpuint (written_count (a4, "/Outlines"), >=, 1);
  g_assert_cmpuint (written_count (a4, "(Sheet of the corner)"), ==, 1);

  f->report.paper = paper_letter ();
  g_autoptr (GBytes) letter = write_report (f, "b.pdf");
  g_assert_cmpuint (written_count (letter, "/MediaBox [ 0 0 612 792 ]"), ==,
                    N_PAGES + 1); /* shorter */
}

static void
test_repeats_to_the_byte (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autoptr (GBytes) a = write_report (f, "a.pdf"), b = write_report (f, "b.pdf");

  g_assert_true (g_bytes_equal (a, b));
  f->report.date = DATE;
  g_autoptr (GBytes) dated = write_report (f, "b.pdf");
  g_assert_false (g_bytes_equal (a, dated));
}

static void
test_a_failure_leaves_the_old_file (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *path = g_build_filename (f->folder, "a.png", NULL);
  g_autofree char *nowhere = g_build_filename (f->folder, "none", "a.pdf", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) suffix = NULL, folder = NULL;

  g_assert_true (g_file_set_contents (path, "old", -1, NULL));
  g_assert_false (report_write (&f->report, path, &suffix));
  g_assert_error (suffix, EXPORT_ERROR, EXPORT_ERROR_SUFFIX);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "old");
  g_assert_false (report_write (&f->report, nowhere, &folder));
  g_assert_error (folder, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
}

#define ADD_FILE(name, test) g_test_add (name, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/report/tidy", GINT_TO_POINTER (FALSE), test_pages_are_tidy);
  g_test_add_data_func ("/report/tidy-in-long-words", GINT_TO_POINTER (TRUE),
                        test_pages_are_tidy);
  g_test_add_data_func ("/report/long-names", GINT_TO_POINTER (FALSE),
                        test_long_names_and_notes);
  g_test_add_data_func ("/report/long-names-in-long-words", GINT_TO_POINTER (TRUE),
                        test_long_names_and_notes);
  g_test_add_func ("/report/order", test_parts_in_their_order);
  g_test_add_func ("/report/asked-for", test_only_what_is_asked_for_and_given);
  g_test_add_func ("/report/measured", test_measured_numbers_stand_with_their_units);
  g_test_add_func ("/report/springs", test_sizes_of_springs_and_rods);
  g_test_add_func ("/report/comparison", test_figures_are_those_of_the_comparison);
  g_test_add_func ("/report/one-geometry", test_what_has_one_geometry_has_one_column);
  g_test_add_func ("/report/springs-alone", test_setups_that_differ_in_springs_alone);
  g_test_add_func ("/report/many-setups", test_many_setups_go_on_overleaf);
  g_test_add_func ("/report/scale", test_sheet_is_true_to_its_scale);
  ADD_FILE ("/report/pdf", test_pdf_has_its_pages_in_letters_and_lines);
  ADD_FILE ("/report/repeats", test_repeats_to_the_byte);
  ADD_FILE ("/report/failure", test_a_failure_leaves_the_old_file);
  return g_test_run ();
}
