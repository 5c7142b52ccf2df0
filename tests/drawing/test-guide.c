/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/export/export.h"
#include "drawing/guide/guide.h"
#include "drawn-texts.h"
#include "model/car/car-json.h"
#include "model/study/point-sensitivity.h"
#include "model/words/point-words.h"
#include "written-file.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define MARGIN 36.0 /* points of white all round */

static const char *const names[] = { "wren", "fieldfare", "dunnock", "lapwing" };

static Car *
demo (const char *name)
{
  g_autofree char *file = g_strconcat (name, ".swcar", NULL);
  g_autofree char *path =
      g_build_filename (g_getenv ("G_TEST_SRCDIR"), "..", "..", "data", file, NULL);
  g_autoptr (GFile) source = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (source, &error);

  g_assert_no_error (error);
  return car;
}

static void
draw (const MeasuringGuide *guide, guint page, PaperSize paper)
{
  g_autoptr (TextCache) texts = text_cache_new ();
  const double width = paper.width, height = paper.height;

  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (width),
                                  (int) ceil (height));
  cairo_t *cr = cairo_create (surface);
  drawn_reset ();
  measuring_guide_draw (guide, texts, cr, page, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
check_pages (const MeasuringGuide *guide, PaperSize paper, const char *name)
{
  const double width = paper.width, height = paper.height;

  for (guint page = 0; page < measuring_guide_n_pages (); page++) {
    g_autofree char *what = g_strdup_printf ("page %u of %s", page + 1, name);

    draw (guide, page, paper);
    drawn_assert_apart (width, height, MARGIN - 20.0, what);
    for (guint i = 0; i < drawn_texts->len; i++) {
      const DrawnText *text = drawn_text_at (i);

      if (text->is_cut)
        g_error ("“%s” is cut on %s", text->text, what);
      g_assert_cmpfloat (text->left, >=, MARGIN);
      g_assert_cmpfloat (text->right, <=, width - MARGIN);
    }
  }
}

/* In English, and in a language whose words are longer. */
static void
test_nothing_covers_anything (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autoptr (Car) car = demo (names[i]);

    for (int is_long = 0; is_long <= 1; is_long++) {
      g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);

      drawn_in_long_words = is_long == 1;
      drawn_word_length = is_long == 1 ? 8 : 0;
      check_pages (guide, paper_a4 (), names[i]);
      check_pages (guide, paper_letter (), names[i]);
      drawn_in_long_words = false;
    }
  }
}

static guint
page_of (PointName point)
{
  return 1 + (guint) point / 2;
}

/* Each point has its page, its lengths, and what the sensitivity says of it. */
static void
test_each_point_has_its_half_page (void)
{
  g_autoptr (Car) car = demo ("wren");
  g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);
  const MeasuredCorner measured = car_measured_corner (car);
  PointSensitivity sensitivity;

  g_assert_true (point_sensitivity_solve (&measured, &sensitivity));
  for (PointName point = 0; point < N_POINTS; point++) {
    g_autofree char *title = g_strdup_printf ("%u  %s", point + 1, point_title (point));

    draw (guide, page_of (point), paper_a4 ());
    g_assert_nonnull (drawn_find (title));
    g_assert_nonnull (drawn_find (point_meaning (point)));
    for (int axis = 0; axis < 3; axis++) {
      const double tolerance = fmin (sensitivity.points[point].tolerance[axis], 5.0);
      g_autofree char *text = g_strdup_printf ("±%.1f", tolerance);

      g_assert_nonnull (drawn_find (text));
    }
  }
}

static guint
count_names (const char *name)
{
  guint n = 0;

  for (guint i = 0; i < drawn_texts->len; i++)
    n += g_str_equal (drawn_text_at (i)->text, name) ? 1 : 0;
  return n;
}

/* Two points a page; each in the table once, in the drawing z once and y in both views. x
 * is drawn where the point is off the front axle: the wheel's centre is on it. */
static void
test_lengths_are_named (void)
{
  g_autoptr (Car) car = demo ("wren");
  g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);

  for (guint page = 1; page <= 4; page++) {
    draw (guide, page, paper_a4 ());
    g_assert_cmpuint (count_names ("z"), ==, 2 * 2);
    g_assert_cmpuint (count_names ("y"), ==, 2 * 3);
    g_assert_cmpuint (count_names ("x"), ==, page < 4 ? 2 * 2 : 2 + 1);
  }
}

/* The rings on the two points of the page: the front view's and the plan's of each. */
static void
find_rings (double radius, DrawnCircle rings[4])
{
  guint n = 0;

  for (guint i = 0; i < drawn_circles->len; i++) {
    const DrawnCircle circle = g_array_index (drawn_circles, DrawnCircle, i);

    if (fabs (circle.radius - radius) < 1e-6 && n < 4)
      rings[n++] = circle;
  }
  g_assert_cmpuint (n, ==, 4);
}

/* Rings lie to one scale k: across by y in both views; and from front to plan view lies a
 * paper distance that is the same for both points, plus k (x + z). */
static void
test_points_are_drawn_to_scale (void)
{
  g_autoptr (Car) car = demo ("wren");
  g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);
  /* ring of point-sketch, type of the guide, quiet parts */
  const double radius = 9.0 * 0.84 * 0.9;

  for (guint page = 1; page <= 4; page++) {
    const Vec3 a = car->points[2 * page - 2], b = car->points[2 * page - 1];
    DrawnCircle r[4];

    draw (guide, page, paper_a4 ());
    find_rings (radius, r);
    g_assert_cmpfloat_with_epsilon (r[0].x, r[1].x, 1e-6);
    g_assert_cmpfloat_with_epsilon (r[2].x, r[3].x, 1e-6);
    if (fabs (a.y - b.y) < 10.0)
      continue;
    const double k = (r[2].x - r[0].x) / (b.y - a.y);
    g_assert_cmpfloat (k, >, 0.15);
    g_assert_cmpfloat_with_epsilon ((r[3].y - r[2].y) - (r[1].y - r[0].y),
                                    k * (b.x + b.z - a.x - a.z), 1e-6);
  }
}

static void
test_dangers_come_first (void)
{
  g_autoptr (Car) car = demo ("wren");
  g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);

  draw (guide, 0, paper_a4 ());
  const DrawnText *caution = drawn_find ("a jack alone holds");
  g_assert_nonnull (caution);
  g_assert_cmpfloat (caution->bottom, <, drawn_find ("What you need")->top);
  g_assert_nonnull (drawn_find ("can kill"));
  g_assert_nonnull (drawn_find ("local rules and licensed practice"));
  draw (guide, measuring_guide_n_pages () - 1, paper_a4 ());
  g_assert_nonnull (drawn_find ("a jack alone holds"));
}

/* The tie rod is straight before 30 mm of bump. */
static void
test_what_cannot_be_computed_is_said (void)
{
  g_autoptr (Car) car = demo ("lapwing");

  car->points[POINT_TIE_ROD_INNER] =
      vec3_add (car->points[POINT_TIE_ROD_OUTER], (Vec3){ 0.0, -3.0, 3.0 });
  g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);
  draw (guide, 0, paper_a4 ());
  g_assert_nonnull (drawn_find ("could not be computed"));
  draw (guide, 1, paper_a4 ());
  g_assert_null (drawn_find ("±"));
}

static void
check_file (const MeasuringGuide *guide, PaperSize paper, const char *path)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (measuring_guide_write (guide, paper, path, &error));
  g_assert_no_error (error);
  g_autoptr (GBytes) first = written_bytes (path);
  g_assert_cmpmem (g_bytes_get_data (first, NULL), 5, "%PDF-", 5);
  g_assert_cmpuint (written_count (first, "/MediaBox"), ==, 6);
  g_assert_cmpuint (written_count (first, paper.width == paper_a4 ().width ? "595.276"
                                                                           : "612 792"),
                    >, 0);
  /* vectors and letters, no picture */
  g_assert_cmpuint (written_count (first, "/Subtype /Image"), ==, 0);
  g_assert_cmpuint (written_count (first, "/FontFile"), >, 0);
  /* no time of day in it */
  g_assert_true (measuring_guide_write (guide, paper, path, &error));
  g_autoptr (GBytes) second = written_bytes (path);
  g_assert_true (g_bytes_equal (first, second));
}

static void
test_files_have_all_pages (void)
{
  g_autoptr (Car) car = demo ("dunnock");
  g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);
  g_autofree char *folder = g_dir_make_tmp ("guide-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "guide.pdf", NULL);
  g_autofree char *picture = g_build_filename (folder, "guide.png", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "guide.pdf", NULL);
  g_autoptr (GError) suffix = NULL;
  g_autoptr (GError) place = NULL;

  check_file (guide, paper_a4 (), path);
  check_file (guide, paper_letter (), path);
  g_assert_false (measuring_guide_write (guide, paper_a4 (), picture, &suffix));
  g_assert_error (suffix, EXPORT_ERROR, EXPORT_ERROR_SUFFIX);
  g_assert_false (measuring_guide_write (guide, paper_a4 (), nowhere, &place));
  g_assert_error (place, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_remove (path);
  g_rmdir (folder);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/guide/apart", test_nothing_covers_anything);
  g_test_add_func ("/guide/points", test_each_point_has_its_half_page);
  g_test_add_func ("/guide/lengths", test_lengths_are_named);
  g_test_add_func ("/guide/scale", test_points_are_drawn_to_scale);
  g_test_add_func ("/guide/dangers", test_dangers_come_first);
  g_test_add_func ("/guide/not-computed", test_what_cannot_be_computed_is_said);
  g_test_add_func ("/guide/files", test_files_have_all_pages);
  return g_test_run ();
}
