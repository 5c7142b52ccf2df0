/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"

#include "model/car/car-json.h"

#include <glib/gstdio.h>

char *
fixture_path (const char *first, ...)
{
  g_autofree char *data = g_test_build_filename (G_TEST_DIST, "data", NULL);
  va_list rest;

  va_start (rest, first);
  g_autofree char *inside = g_build_filename_valist (first, &rest);
  va_end (rest);
  return g_build_filename (data, inside, NULL);
}

static Car *
load (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  g_assert_no_error (error);
  return car;
}

Car *
fixture_car (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swcar", NULL);
  g_autofree char *path = fixture_path ("cars", "good", base, NULL);

  return load (path);
}

Car *
fixture_demo (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swcar", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", base, NULL);

  return load (path);
}

void
fixture_check_saves (const Car *car)
{
  g_autoptr (GError) error = NULL;
  gsize length;
  g_autofree char *text = car_to_json (car, &length);
  g_autoptr (Car) again = car_from_json (text, length, &error);

  g_assert_no_error (error);
  g_assert_true (car_equal (again, car));
}

char *
fixture_folder_new (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("strutwright-test-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

void
fixture_folder_remove (char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);

    g_assert_cmpint (g_unlink (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_free (folder);
}
