/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/number-table.h"
#include "example-study.h"

static const Quantity rows[] = { QUANTITY_CAMBER, QUANTITY_TOE_IN, QUANTITY_CASTER,
                                 QUANTITY_SAI, QUANTITY_ROLL_CENTRE_HEIGHT };
#define N_ROWS G_N_ELEMENTS (rows)

typedef struct {
  Car *car;
  Study *study;
  NumberTable *table;
  NumberTableView view;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = example_car ();
  example_add_setups (f->car, 6);
  f->study = study_new ();
  f->table = number_table_new ();
  f->view = (NumberTableView){ .study = f->study,
                               .theme = theme_light (),
                               .quantities = rows,
                               .n_quantities = N_ROWS,
                               .lit = -1 };
  study_solve (f->study, f->car, 4, 0.0);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  number_table_free (f->table);
  study_free (f->study);
  car_free (f->car);
}

/* Returns the height that the table asks for. */
static double
draw (Fixture *f, double width)
{
  const double height = number_table_height (&f->view, width);
  cairo_surface_t *record =
      cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA,
                                      &(cairo_rectangle_t){ 0, 0, width, 2.0 * height });
  cairo_t *cr = cairo_create (record);

  number_table_draw (f->table, cr, &f->view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (record);
  return height;
}

/* Every row is hit at the place where it was drawn, in order, and nothing in the head. */
static void
assert_hits (Fixture *f, double width)
{
  const double height = draw (f, width);
  int last = -1;
  unsigned n_rows = 0;

  g_assert_cmpint (number_table_hit (f->table, 20.0, 5.0), ==, -1);
  for (double y = 0.0; y < height; y += 1.0) {
    const int hit = number_table_hit (f->table, 20.0, y);
    if (hit >= 0 && hit != last) {
      g_assert_cmpint (hit, ==, rows[n_rows]);
      n_rows++;
    }
    last = hit;
  }
  g_assert_cmpuint (n_rows, >, 0);
  g_assert_cmpint (number_table_hit (f->table, 20.0, height + 40.0), ==, -1);
}

static void
test_hits_find_the_rows (Fixture *f, gconstpointer data)
{
  (void) data;
  assert_hits (f, 420.0);
  assert_hits (f, 1200.0);
  f->view.side_by_side = true;
  assert_hits (f, 420.0);
  assert_hits (f, 1200.0);
}

static void
test_height_counts_heads_and_blocks (Fixture *f, gconstpointer data)
{
  (void) data;
  const double plain = number_table_height (&f->view, 400.0);
  f->view.side_by_side = true;
  const double sides = number_table_height (&f->view, 400.0);
  g_assert_cmpfloat (sides, ==, plain);
  /* six setups fill the width; two leave room for rows beside rows */
  g_assert_cmpfloat (number_table_height (&f->view, 900.0), ==, sides);
  for (guint i = 1; i < 4; i++)
    car_setup (f->car, i)->is_hidden = TRUE;
  car_setup (f->car, 5)->is_hidden = TRUE;
  study_solve (f->study, f->car, 4, 0.0);
  g_assert_cmpfloat (number_table_height (&f->view, 900.0), <, sides);

  /* short names need one line, long ones two */
  f->view.side_by_side = false;
  for (guint i = 0; i < f->car->setups->len; i++) {
    CarSetup *setup = car_setup (f->car, i);

    g_free (setup->name);
    setup->name = g_strdup ("One");
  }
  study_solve (f->study, f->car, 4, 0.0);
  g_assert_cmpfloat (number_table_height (&f->view, 400.0), <,
                     plain - 0.5 * f->view.theme.text);
}

static bool
has_setup (const unsigned *setups, unsigned n, unsigned setup)
{
  for (unsigned i = 0; i < n; i++)
    if (setups[i] == setup)
      return true;
  return false;
}

/* In the car's order, without hidden ones; baseline and the one in hand are never left
 * out. */
static void
test_columns_are_the_setups_shown (Fixture *f, gconstpointer data)
{
  (void) data;
  unsigned setups[NUMBER_TABLE_MOST_SETUPS];

  f->view.side_by_side = true;
  car_setup (f->car, 2)->is_hidden = TRUE;
  f->car->baseline = 1;
  study_solve (f->study, f->car, 5, 0.0);
  g_assert_cmpuint (number_table_setups (&f->view, 1200.0, setups), ==, 5);
  const unsigned expected[] = { 0, 1, 3, 4, 5 };
  g_assert_cmpmem (setups, sizeof expected, expected, sizeof expected);

  unsigned last = 5;
  for (double width = 1200.0; width > 200.0; width -= 25.0) {
    const unsigned n = number_table_setups (&f->view, width, setups);
    g_assert_cmpuint (n, <=, last);
    g_assert_cmpuint (n, >=, 2);
    g_assert_true (has_setup (setups, n, 1) && has_setup (setups, n, 5));
    draw (f, width);
    last = n;
  }
  g_assert_cmpuint (last, ==, 2);
}

/* Smoke: a setup that cannot stand at its height, and one alone, are drawn. */
static void
test_odd_setups_are_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  f->view.side_by_side = true;
  car_setup (f->car, 0)->mount = (MountOffset){ 60.0, 0.0, -600.0 };
  study_solve (f->study, f->car, 0, 0.0);
  g_assert_cmpint (f->study->setups[0].at_height.status, !=, POSE_OK);
  draw (f, 800.0);
  for (guint i = 0; i < 6; i++)
    car_setup (f->car, i)->is_hidden = TRUE;
  study_solve (f->study, f->car, 0, 0.0);
  draw (f, 800.0);
  draw (f, 90.0);
}

#define ADD(name, function)                                                              \
  g_test_add ("/number-table/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("hits-find-the-rows", test_hits_find_the_rows);
  ADD ("height-counts-heads-and-blocks", test_height_counts_heads_and_blocks);
  ADD ("columns-are-the-setups-shown", test_columns_are_the_setups_shown);
  ADD ("odd-setups-are-drawn", test_odd_setups_are_drawn);
  return g_test_run ();
}
