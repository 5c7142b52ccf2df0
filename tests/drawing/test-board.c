/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/board/board.h"
#include "example-study.h"

#include <string.h>

typedef struct {
  Car *car;
  Study *study;
  Board *board;
  BoardView view;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = example_car ();
  f->study = study_new ();
  f->board = board_new ();
  f->view = (BoardView){ .study = f->study,
                         .choice = board_choice_default (),
                         .theme = theme_light (),
                         .lit = -1,
                         .show_cursor = true,
                         .pixel_scale = 1.0 };
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  car_free (f->car);
  study_free (f->study);
  board_free (f->board);
}

static void
solve (Fixture *f, double inboard, double rearward, double up, double travel)
{
  const CarSetup setup = example_setup (inboard, rearward, up);

  car_setup (f->car, 0)->mount = setup.mount;
  study_solve (f->study, f->car, 0, travel);
}

static cairo_surface_t *
draw (Board *board, const BoardView *view, int width, int height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);

  board_draw (board, cr, view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static void
draw_only (Fixture *f, int width, int height)
{
  cairo_surface_destroy (draw (f->board, &f->view, width, height));
}

typedef struct {
  double x, y, width, height;
} Box;

static Box
frame (const Fixture *f, Quantity quantity)
{
  Box box;

  g_assert_true (
      board_frame (f->board, quantity, &box.x, &box.y, &box.width, &box.height));
  return box;
}

static void
assert_column_is_aligned (const Fixture *f, const Quantity *quantities, unsigned n)
{
  for (unsigned i = 1; i < n; i++) {
    const Box above = frame (f, quantities[i - 1]), box = frame (f, quantities[i]);
    g_assert_cmpfloat (box.x, ==, above.x);
    g_assert_cmpfloat (box.width, ==, above.width);
    g_assert_cmpfloat (box.height, ==, above.height);
    /* the title line stands between two plots */
    g_assert_cmpfloat (box.y, >, above.y + above.height + f->view.theme.text);
  }
}

static const int sizes[][2] = {
  { 420, 420 }, { 760, 760 }, { 1200, 900 }, { 1801, 1203 }
};

static void
test_plots_are_aligned (Fixture *f, gconstpointer data)
{
  (void) data;
  const BoardChoice *choice = &f->view.choice;

  solve (f, 15, 10, 0, 12.5);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    draw_only (f, sizes[i][0], sizes[i][1]);
    assert_column_is_aligned (f, choice->large, choice->n_large);
    assert_column_is_aligned (f, choice->small, choice->n_small);

    const Box first = frame (f, choice->large[0]), right = frame (f, choice->small[0]);
    const Box last = frame (f, choice->large[choice->n_large - 1]);
    const Box right_last = frame (f, choice->small[choice->n_small - 1]);
    g_assert_cmpfloat (first.y, ==, right.y);
    g_assert_cmpfloat (last.y + last.height, ==, right_last.y + right_last.height);
    g_assert_cmpfloat (first.x + first.width, <, right.x);
    g_assert_cmpfloat (first.width, >, right.width);
    g_assert_cmpfloat (right.x + right.width, <=, sizes[i][0]);
    g_assert_cmpfloat (last.y + last.height, <, sizes[i][1] - f->view.theme.text);
  }
}

/* The user's own text size may be twice the usual one. */
static void
test_large_text_stands_in_one_column (Fixture *f, gconstpointer data)
{
  const double width = 560.0;
  const BoardChoice *choice = &f->view.choice;
  const Theme usual = f->view.theme;
  const double usual_height = board_height (choice, &usual, width);
  (void) data;

  solve (f, 0.0, 0.0, 0.0, 0.0);
  draw_only (f, (int) width, (int) usual_height);
  g_assert_cmpfloat (frame (f, choice->small[0]).x, >, frame (f, choice->large[0]).x);

  f->view.theme = theme_scaled (usual, 2.0);
  const double height = board_height (choice, &f->view.theme, width);
  g_assert_cmpfloat (height, >, 2.0 * usual_height);
  draw_only (f, (int) width, (int) height);
  double foot = 0.0;
  for (unsigned i = 0; i < choice->n_large + choice->n_small; i++) {
    const Box box = frame (f, i < choice->n_large ? choice->large[i]
                                                  : choice->small[i - choice->n_large]);

    g_assert_cmpfloat (box.width, >, 0.6 * width);
    g_assert_cmpfloat (box.height, >=, 5.0 * f->view.theme.text - 1.0);
    g_assert_cmpfloat (box.y, >, foot);
    foot = box.y + box.height;
  }
  g_assert_cmpfloat (foot, <, height);
}

static void
test_many_small_charts_stand_in_two_columns (Fixture *f, gconstpointer data)
{
  (void) data;
  static const Quantity twelve[BOARD_MOST_SMALL] = {
    QUANTITY_TOE_IN,    QUANTITY_SAI,          QUANTITY_SCRUB_RADIUS,
    QUANTITY_TRAIL,     QUANTITY_STRUT_LENGTH, QUANTITY_STRUT_RATIO,
    QUANTITY_ARM_RATIO, QUANTITY_CAMBER_GAIN,  QUANTITY_BUMP_STEER,
    QUANTITY_ANTI_DIVE, QUANTITY_ARM_ANGLE,    QUANTITY_WHEELBASE_CHANGE
  };

  memcpy (f->view.choice.small, twelve, sizeof twelve);
  f->view.choice.n_small = BOARD_MOST_SMALL;
  solve (f, 15, 10, 0, 12.5);
  draw_only (f, 1400, 900);
  assert_column_is_aligned (f, twelve, 6);
  assert_column_is_aligned (f, twelve + 6, 6);
  g_assert_cmpfloat (frame (f, twelve[0]).y, ==, frame (f, twelve[6]).y);
  g_assert_cmpfloat (frame (f, twelve[6]).x, >,
                     frame (f, twelve[0]).x + frame (f, twelve[0]).width);

  draw_only (f, 500, 900);
  assert_column_is_aligned (f, twelve, 12);
}

static void
test_hits_invert_the_drawing (Fixture *f, gconstpointer data)
{
  (void) data;
  const BoardChoice *choice = &f->view.choice;

  solve (f, 15, 10, 0, 12.5);
  draw_only (f, 760, 760);
  for (unsigned i = 0; i < choice->n_large + choice->n_small; i++) {
    const Quantity quantity =
        i < choice->n_large ? choice->large[i] : choice->small[i - choice->n_large];
    const Box box = frame (f, quantity);
    /* travel runs from −80 to 80: a quarter of the way is −40 */
    const BoardHit hit =
        board_hit (f->board, box.x + box.width / 4.0, box.y + box.height / 2.0);
    g_assert_cmpint (hit.quantity, ==, quantity);
    g_assert_true (hit.on_plot);
    g_assert_cmpfloat_with_epsilon (hit.travel, -40.0, 1e-9);

    const BoardHit title = board_hit (f->board, box.x + 5.0, box.y - 6.0);
    g_assert_cmpint (title.quantity, ==, quantity);
    g_assert_false (title.on_plot);
  }

  const Box box = frame (f, QUANTITY_CAMBER);
  g_assert_cmpfloat (board_hit (f->board, box.x - 30.0, box.y).travel, ==, -80.0);
  g_assert_cmpint (board_hit (f->board, box.x, 755.0).quantity, ==, -1);
  double unused;
  g_assert_false (
      board_frame (f->board, QUANTITY_ANTI_DIVE, &unused, &unused, &unused, &unused));
}

static void
assert_same_pixels (cairo_surface_t *a, cairo_surface_t *b)
{
  const gsize size = (gsize) cairo_image_surface_get_stride (a) *
                     (gsize) cairo_image_surface_get_height (a);

  g_assert_cmpmem (cairo_image_surface_get_data (a), size,
                   cairo_image_surface_get_data (b), size);
}

/* What is kept between frames never shows: every frame is the one that a board without it
 * draws. */
static void
test_kept_parts_are_never_stale (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autoptr (Board) other = board_new ();

  for (int step = 0; step < 12; step++) {
    solve (f, step < 2 ? 0.0 : 6.0 * step, 10, step == 9 ? -250 : 0, 8.0 * step - 40.0);
    if (step == 4)
      f->view.lit = QUANTITY_CASTER;
    if (step == 5)
      f->view.theme = theme_dark ();
    if (step == 6)
      f->car->camber_deg = -1.0;
    if (step == 7)
      f->view.choice.small[0] = QUANTITY_ANTI_DIVE;
    if (step == 8)
      f->car->bump_mm = 60.0;
    const int width = step < 3 ? 700 : 640;

    f->view.pixel_scale = 1.0;
    cairo_surface_t *kept = draw (f->board, &f->view, width, 600);
    f->view.pixel_scale = 0.0;
    cairo_surface_t *direct = draw (other, &f->view, width, 600);
    assert_same_pixels (kept, direct);
    cairo_surface_destroy (kept);
    cairo_surface_destroy (direct);
  }
}

/* The same with six setups, while one of them moves and others come and go. */
static void
test_kept_setups_are_never_stale (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autoptr (Board) other = board_new ();

  example_add_setups (f->car, 6);
  for (int step = 0; step < 12; step++) {
    const guint in_hand = step < 4 ? 1 : 4;
    car_setup (f->car, in_hand)->mount.inboard = 2.0 * step;
    car_setup (f->car, in_hand)->lowering_mm = 3.0 * step;
    if (step == 6)
      f->car->baseline = 2;
    if (step == 7)
      car_setup (f->car, 3)->is_hidden = TRUE;
    if (step == 8)
      car_setup (f->car, 5)->lowering_mm = 12.0;
    if (step == 9)
      f->car->baseline = 4;
    if (step == 10) {
      g_free (car_setup (f->car, 4)->name);
      car_setup (f->car, 4)->name = g_strdup ("A much longer name than any");
    }
    study_solve (f->study, f->car, in_hand, 5.0 * step);
    f->view.hold_axes = step % 3 > 0;

    f->view.pixel_scale = 1.0;
    cairo_surface_t *kept = draw (f->board, &f->view, 900, 700);
    f->view.pixel_scale = 0.0;
    cairo_surface_t *direct = draw (other, &f->view, 900, 700);
    assert_same_pixels (kept, direct);
    cairo_surface_destroy (kept);
    cairo_surface_destroy (direct);
  }
}

static int
count_near (cairo_surface_t *surface, Colour colour)
{
  const int width = cairo_image_surface_get_width (surface);
  const int height = cairo_image_surface_get_height (surface);
  const int wanted[] = { (int) (255 * colour.blue), (int) (255 * colour.green),
                         (int) (255 * colour.red) };
  int n = 0;

  for (int y = 0; y < height; y++) {
    const unsigned char *row =
        cairo_image_surface_get_data (surface) +
        (gsize) y * (gsize) cairo_image_surface_get_stride (surface);
    for (int x = 0; x < width; x++)
      n += ABS (row[4 * x] - wanted[0]) < 8 && ABS (row[4 * x + 1] - wanted[1]) < 8 &&
           ABS (row[4 * x + 2] - wanted[2]) < 8;
  }
  return n;
}

/* Smoke: each setup that is shown leaves ink in its own colour, and none that is not; the
 * one in hand leaves more than it does behind another. */
static void
test_curves_have_their_colours (Fixture *f, gconstpointer data)
{
  (void) data;
  const Theme theme = f->view.theme;

  f->view.show_cursor = false;
  example_add_setups (f->car, 6);
  car_setup (f->car, 3)->is_hidden = TRUE;
  study_solve (f->study, f->car, 1, 0.0);
  cairo_surface_t *behind = draw (f->board, &f->view, 760, 760);
  study_solve (f->study, f->car, 5, 0.0);
  cairo_surface_t *in_hand = draw (f->board, &f->view, 760, 760);

  for (unsigned i = 0; i < 6; i++) {
    const Colour colour = theme_setup_style (&theme, i).colour;
    if (i == 3)
      g_assert_cmpint (count_near (behind, colour), <, 20);
    else
      g_assert_cmpint (count_near (behind, colour), >, 150);
  }
  const Colour last = theme_setup_style (&theme, 5).colour;
  g_assert_cmpint (count_near (in_hand, last), >, 2 * count_near (behind, last));
  cairo_surface_destroy (behind);
  cairo_surface_destroy (in_hand);
}

/* Names need room at the right of large charts; a drag does not change it. */
static void
test_names_keep_still (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, 0, 0, 0, 0);
  draw_only (f, 1000, 760);
  const Box alone = frame (f, QUANTITY_CAMBER), small = frame (f, QUANTITY_TOE_IN);

  example_add_setups (f->car, 6);
  f->view.hold_axes = true;
  for (int step = 0; step < 10; step++) {
    solve (f, 0.5 * step, 3.0 * step, 0, 4.0 * step);
    draw_only (f, 1000, 760);
    const Box named = frame (f, QUANTITY_CAMBER);
    g_assert_cmpfloat (named.width, <, alone.width - 50.0);
    g_assert_cmpfloat (named.width, >, 0.6 * alone.width);
    g_assert_cmpfloat (frame (f, QUANTITY_TOE_IN).width, >, small.width - 20.0);
  }
}

static void
test_corners_that_never_assemble_are_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, -400, -400, -600, 0);
  g_assert_cmpuint (study_in_hand (f->study)->n_assembled, ==, 0);
  draw_only (f, 760, 760);
  draw_only (f, 200, 200);
}

#define ADD(name, function)                                                              \
  g_test_add ("/board/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("plots-are-aligned", test_plots_are_aligned);
  ADD ("large-text-stands-in-one-column", test_large_text_stands_in_one_column);
  ADD ("many-small-charts-stand-in-two-columns",
       test_many_small_charts_stand_in_two_columns);
  ADD ("hits-invert-the-drawing", test_hits_invert_the_drawing);
  ADD ("kept-parts-are-never-stale", test_kept_parts_are_never_stale);
  ADD ("kept-setups-are-never-stale", test_kept_setups_are_never_stale);
  ADD ("names-keep-still", test_names_keep_still);
  ADD ("curves-have-their-colours", test_curves_have_their_colours);
  ADD ("corners-that-never-assemble-are-drawn",
       test_corners_that_never_assemble_are_drawn);
  return g_test_run ();
}
