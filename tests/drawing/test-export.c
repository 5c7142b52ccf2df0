/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comma-locale.h"
#include "drawing/export/export-file.h"
#include "drawing/export/export-png.h"
#include "example-study.h"
#include "hard-places.h"
#include "written-file.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct {
  Car *car;
  Study *study;
  char *folder;
  TitleBlock title;
  BoardView view;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  const CarSetup setup = example_setup (15, 10, 0);

  f->car = example_car ();
  f->study = study_new ();
  f->folder = g_dir_make_tmp ("export-XXXXXX", NULL);
  car_setup (f->car, 0)->mount = setup.mount;
  study_solve (f->study, f->car, 0, 12.5);
  f->title = title_block_for (f->car, &setup, NULL);
  f->view = (BoardView){ .study = f->study,
                         .choice = board_choice_default (),
                         .lit = -1,
                         .show_cursor = true,
                         .title = &f->title };
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  GDir *folder = g_dir_open (f->folder, 0, NULL);

  for (const char *name; (name = g_dir_read_name (folder)) != NULL;) {
    g_autofree char *path = g_build_filename (f->folder, name, NULL);
    g_assert_no_errno (g_remove (path));
  }
  g_dir_close (folder);
  g_assert_no_errno (g_rmdir (f->folder));
  g_free (f->folder);
  study_free (f->study);
  car_free (f->car);
}

static char *
write_board (Fixture *f, const char *name, ExportOptions options)
{
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (f->folder, name, NULL);

  export_board (&f->view, &options, path, &error);
  g_assert_no_error (error);
  return path;
}

static void
test_png_has_the_asked_size (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *path = write_board (f, "a.PNG", (ExportOptions){ 641, 483, 0 });
  cairo_surface_t *image = cairo_image_surface_create_from_png (path);
  const unsigned char *pixels = cairo_image_surface_get_data (image);
  const gsize stride = (gsize) cairo_image_surface_get_stride (image);
  int n_white = 0, n_other = 0;

  g_assert_cmpint (cairo_image_surface_get_width (image), ==, 641);
  g_assert_cmpint (cairo_image_surface_get_height (image), ==, 483);
  for (gsize y = 0; y < 483; y++)
    for (gsize x = 0; x < 641; x++) {
      const unsigned char *p = pixels + y * stride + 4 * x;
      const gboolean is_white = p[0] == 255 && p[1] == 255 && p[2] == 255;
      n_white += is_white;
      n_other += !is_white;
    }
  /* a drawing: mostly paper, some ink */
  g_assert_cmpint (n_white, >, 5 * n_other);
  g_assert_cmpint (n_other, >, 641 * 483 / 100);
  cairo_surface_destroy (image);
}

static void
test_backgrounds (Fixture *f, gconstpointer data)
{
  (void) data;
  static const guint32 corners[] = { [EXPORT_BACKGROUND_WHITE] = 0xffffffff,
                                     [EXPORT_BACKGROUND_DARK] = 0xff1e1e22,
                                     [EXPORT_BACKGROUND_NONE] = 0x00000000 };

  for (guint i = 0; i < G_N_ELEMENTS (corners); i++) {
    g_autofree char *path =
        write_board (f, "b.png", (ExportOptions){ 300, 300, (ExportBackground) i });
    cairo_surface_t *image = cairo_image_surface_create_from_png (path);
    guint32 corner;
    memcpy (&corner, cairo_image_surface_get_data (image), sizeof corner);
    if (cairo_image_surface_get_format (image) == CAIRO_FORMAT_RGB24)
      corner |= 0xff000000;
    g_assert_cmphex (corner, ==, corners[i]);
    cairo_surface_destroy (image);
  }
}

/* Read back by another reader than wrote it: cairo's own. */
static void
test_png_keeps_every_pixel (Fixture *f, gconstpointer data)
{
  (void) data;
  const cairo_format_t formats[] = { CAIRO_FORMAT_RGB24, CAIRO_FORMAT_ARGB32 };
  g_autofree char *path = g_build_filename (f->folder, "c.png", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (formats); i++) {
    cairo_surface_t *image = export_png_surface (formats[i], 256, 100);
    cairo_t *cr = cairo_create (image);
    for (int x = 0; x < 256; x++) {
      cairo_set_source_rgba (cr, x / 255.0, 0.3, 1.0 - x / 255.0,
                             i == 0 ? 1.0 : x / 255.0);
      cairo_rectangle (cr, x, 0, 1, 100);
      cairo_fill (cr);
    }
    cairo_destroy (cr);
    g_autoptr (GByteArray) bytes = g_byte_array_new ();
    g_assert_cmpint (export_png (image, 96, bytes), ==, CAIRO_STATUS_SUCCESS);
    g_assert_true (
        g_file_set_contents (path, (const char *) bytes->data, bytes->len, NULL));

    cairo_surface_t *back = cairo_image_surface_create_from_png (path);
    const unsigned char *a = cairo_image_surface_get_data (image),
                        *b = cairo_image_surface_get_data (back);
    const gsize stride = (gsize) cairo_image_surface_get_stride (image);
    for (gsize y = 0; y < 100; y++)
      for (gsize x = 0; x < 256; x++)
        for (gsize c = 0; c < (i == 0 ? 3 : 4); c++)
          g_assert_cmpint (ABS (a[y * stride + 4 * x + c] - b[y * stride + 4 * x + c]),
                           <=, i == 0 ? 0 : 1);
    cairo_surface_destroy (image);
    cairo_surface_destroy (back);
  }
}

static void
test_same_drawing_same_bytes (Fixture *f, gconstpointer data)
{
  (void) data;
  static const char *const names[][2] = { { "1.png", "2.png" },
                                          { "1.svg", "2.svg" },
                                          { "1.pdf", "2.pdf" } };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *first = write_board (f, names[i][0], (ExportOptions){ 640, 480, 0 });
    g_autofree char *second =
        write_board (f, names[i][1], (ExportOptions){ 640, 480, 0 });
    g_autoptr (GBytes) a = written_bytes (first);
    g_autoptr (GBytes) b = written_bytes (second);
    g_assert_true (g_bytes_equal (a, b));
    g_assert_false (written_count (a, "CreationDate") > 0);
    g_assert_false (written_count (a, "tIME") > 0);
  }
}

static void
test_vectors_stay_vectors (Fixture *f, gconstpointer data)
{
  (void) data;
  /* even where the window's view is handed over */
  f->view.pixel_scale = 2.0;
  g_autofree char *svg = write_board (f, "v.svg", (ExportOptions){ 640, 480, 0 });
  g_autofree char *pdf = write_board (f, "v.pdf", (ExportOptions){ 640, 480, 0 });
  g_autoptr (GBytes) svg_bytes = written_bytes (svg);
  g_autoptr (GBytes) pdf_bytes = written_bytes (pdf);

  g_assert_true (written_count (svg_bytes, "<svg") > 0);
  g_assert_true (written_count (svg_bytes, "viewBox=\"0 0 640 480\"") > 0);
  g_assert_true (written_count (svg_bytes, "<path") > 0);
  g_assert_false (written_count (svg_bytes, "<image") > 0);
  /* 640 × 480 of 1/96 inch in points of 1/72 inch */
  g_assert_true (written_count (pdf_bytes, "480 360") > 0);
  g_assert_true (written_count (pdf_bytes, "/FontFile") > 0);
  g_assert_false (written_count (pdf_bytes, "/Image") > 0);
}

static void
assert_refused (Fixture *f, const char *name, ExportOptions options, ExportError code)
{
  g_autofree char *path = g_build_filename (f->folder, name, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (export_board (&f->view, &options, path, &error));
  g_assert_error (error, EXPORT_ERROR, (int) code);
  g_assert_true (g_str_has_suffix (error->message, "."));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
test_refusals (Fixture *f, gconstpointer data)
{
  (void) data;
  assert_refused (f, "a.jpg", (ExportOptions){ 640, 480, 0 }, EXPORT_ERROR_SUFFIX);
  assert_refused (f, "png", (ExportOptions){ 640, 480, 0 }, EXPORT_ERROR_SUFFIX);
  assert_refused (f, "a.png", (ExportOptions){ 199, 480, 0 }, EXPORT_ERROR_SIZE);
  assert_refused (f, "a.svg", (ExportOptions){ 640, 16385, 0 }, EXPORT_ERROR_SIZE);
  assert_refused (f, "a.pdf", (ExportOptions){ -5, 480, 0 }, EXPORT_ERROR_SIZE);
}

static void
break_off (cairo_t *cr, gconstpointer view, double width, double height)
{
  (void) view;
  (void) width;
  (void) height;
  cairo_restore (cr); /* without a save: cairo reports it */
}

static void
test_a_failure_leaves_the_old_file (Fixture *f, gconstpointer data)
{
  (void) data;
  static const char *const names[] = { "old.png", "old.svg", "old.pdf" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *path = write_board (f, names[i], (ExportOptions){ 640, 480, 0 });
    g_autoptr (GBytes) before = written_bytes (path);
    g_autoptr (GError) error = NULL;
    const ExportOptions options = { 300, 300, EXPORT_BACKGROUND_WHITE };

    g_assert_false (export_file_write (break_off, NULL, &options, path, &error));
    g_assert_error (error, EXPORT_ERROR, EXPORT_ERROR_DRAWING);
    g_autoptr (GBytes) after = written_bytes (path);
    g_assert_true (g_bytes_equal (before, after));
  }
}

static void
test_a_missing_folder_is_said (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *path = g_build_filename (f->folder, "none", "a.png", NULL);
  const ExportOptions options = { 300, 300, EXPORT_BACKGROUND_WHITE };
  g_autoptr (GError) error = NULL;

  g_assert_false (export_board (&f->view, &options, path, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
}

static const char *const suffixes[] = { ".png", ".svg", ".pdf" };
static const ExportOptions small = { 300, 300, EXPORT_BACKGROUND_WHITE };

static void
test_odd_names_of_files (Fixture *f, gconstpointer data)
{
  (void) data;

  for (guint i = 0; i < N_ODD_NAMES * G_N_ELEMENTS (suffixes); i++) {
    g_autofree char *name = odd_name (i % N_ODD_NAMES, suffixes[i / N_ODD_NAMES]);
    g_autofree char *path = write_board (f, name, small);
    g_autoptr (GBytes) bytes = written_bytes (path);

    g_assert_cmpuint (g_bytes_get_size (bytes), >, 1000);
  }
}

/* What is said of a file whose name is not UTF-8 can be shown. */
static void
test_refusals_of_odd_names_are_text (Fixture *f, gconstpointer data)
{
  (void) data;

  for (guint i = 0; i < N_ODD_NAMES; i++) {
    g_autofree char *name = odd_name (i, ".jpg");
    g_autofree char *missing = odd_name (i, "/a.png");
    g_autofree char *wrong = g_build_filename (f->folder, name, NULL);
    g_autofree char *nowhere = g_build_filename (f->folder, missing, NULL);
    g_autoptr (GError) suffix = NULL, folder = NULL;

    g_assert_false (export_board (&f->view, &small, wrong, &suffix));
    g_assert_true (g_utf8_validate (suffix->message, -1, NULL));
    g_assert_false (export_board (&f->view, &small, nowhere, &folder));
    g_assert_true (g_utf8_validate (folder->message, -1, NULL));
  }
}

typedef struct {
  Fixture *f;
  const char *path;
} Export;

static gboolean
is_refused (gpointer data)
{
  const Export *export = data;
  g_autoptr (GError) error = NULL;

  return !export_board (&export->f->view, &small, export->path, &error) &&
         error->domain == G_IO_ERROR;
}

static void
test_a_full_disk_or_no_rights_leave_the_old_file (Fixture *f, gconstpointer data)
{
  (void) data;

  for (guint i = 0; i < G_N_ELEMENTS (suffixes); i++) {
    g_autofree char *name = g_strconcat ("old", suffixes[i], NULL);
    g_autofree char *path = write_board (f, name, (ExportOptions){ 640, 480, 0 });
    g_autoptr (GBytes) before = written_bytes (path);
    Export export = { f, path };

    g_assert_cmpint (hard_place_little_room (is_refused, &export, FALSE), ==, 0);
    g_assert_cmpint (g_chmod (f->folder, 0755), ==, 0);
    g_assert_true (hard_place_no_rights (f->folder, is_refused, &export));
    g_assert_cmpint (g_chmod (f->folder, 0777), ==, 0);
    g_assert_true (hard_place_no_rights (path, is_refused, &export));
    g_autoptr (GBytes) after = written_bytes (path);
    g_assert_true (g_bytes_equal (before, after));
  }
}

/* Names as a car file may have them: far too long, from right to left and turned about,
 * with line feeds, with marks on marks. */
static void
test_odd_names_of_cars (Fixture *f, gconstpointer data)
{
  g_autofree char *many = g_strnfill (20000, 'n');
  const char *const names[] = { many,
                                "سيارة \u202e gnol\u202c רכב",
                                "two\nlines\ttab\r\x7f",
                                "e\u0301\u0301\u0301\u0301 🛞🚗",
                                "<b>&amp;%s%n</b>",
                                "" };
  g_autoptr (GTimer) timer = g_timer_new ();
  (void) data;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    const CarSetup setup = { .name = (char *) names[i], .mount = { 15, 10, 0 } };

    g_free (f->car->name);
    f->car->name = g_strdup (names[i]);
    g_free (car_setup (f->car, 0)->name);
    car_setup (f->car, 0)->name = g_strdup (names[i]);
    study_solve (f->study, f->car, 0, 12.5);
    f->title = title_block_for (f->car, &setup, NULL);
    for (guint k = 0; k < G_N_ELEMENTS (suffixes); k++) {
      g_autofree char *name = g_strdup_printf ("%u%s", i, suffixes[k]);
      g_autofree char *path = write_board (f, name, (ExportOptions){ 640, 480, 0 });
    }
  }
  g_assert_cmpfloat (g_timer_elapsed (timer, NULL), <, 120.0);
}

static void
draw_thirds (cairo_t *cr, gconstpointer view, double width, double height)
{
  (void) view;
  cairo_move_to (cr, 1.0 / 3.0, 0.1);
  cairo_curve_to (cr, width / 3.0, 0.5, 1.5, height / 7.0, width - 0.25, height - 0.25);
  cairo_set_source_rgba (cr, 0.1, 0.2, 0.3, 0.4);
  cairo_set_line_width (cr, 1.25);
  cairo_stroke (cr);
}

static void
test_a_decimal_comma_changes_no_file (Fixture *f, gconstpointer data)
{
  (void) data;

  for (guint i = 0; i < G_N_ELEMENTS (suffixes); i++) {
    g_autofree char *path = g_strconcat (f->folder, "/a", suffixes[i], NULL);
    g_autofree char *page = g_strconcat (f->folder, "/b", suffixes[i], NULL);

    g_assert_true (export_file_write (draw_thirds, NULL, &small, path, NULL));
    g_assert_true (export_file_write_page (draw_thirds, NULL, 210.5, 297.25, page, NULL));
    g_autoptr (GBytes) plain = written_bytes (path), plain_page = written_bytes (page);
    if (!comma_locale_enter ())
      return;
    g_assert_true (export_file_write (draw_thirds, NULL, &small, path, NULL));
    g_assert_true (export_file_write_page (draw_thirds, NULL, 210.5, 297.25, page, NULL));
    comma_locale_leave ();
    g_autoptr (GBytes) comma = written_bytes (path), comma_page = written_bytes (page);
    g_assert_true (g_bytes_equal (plain, comma));
    g_assert_true (g_bytes_equal (plain_page, comma_page));
  }
}

#define ADD(name, function)                                                              \
  g_test_add ("/export/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("png-has-the-asked-size", test_png_has_the_asked_size);
  ADD ("backgrounds", test_backgrounds);
  ADD ("png-keeps-every-pixel", test_png_keeps_every_pixel);
  ADD ("same-drawing-same-bytes", test_same_drawing_same_bytes);
  ADD ("vectors-stay-vectors", test_vectors_stay_vectors);
  ADD ("refusals", test_refusals);
  ADD ("a-failure-leaves-the-old-file", test_a_failure_leaves_the_old_file);
  ADD ("a-missing-folder-is-said", test_a_missing_folder_is_said);
  ADD ("odd-names-of-files", test_odd_names_of_files);
  ADD ("refusals-of-odd-names-are-text", test_refusals_of_odd_names_are_text);
  ADD ("full-disk-or-no-rights", test_a_full_disk_or_no_rights_leave_the_old_file);
  ADD ("odd-names-of-cars", test_odd_names_of_cars);
  ADD ("a-decimal-comma-changes-no-file", test_a_decimal_comma_changes_no_file);
  return g_test_run ();
}
