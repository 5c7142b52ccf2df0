/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The board of loads: no text covers another or leaves the board, bars are as long as
 * their numbers, hits find their setups, and no figure stands without the caution. */

#include "drawing/loads/loads-board.h"
#include "drawn-texts.h"
#include "loaded-car.h"
#include "model/spring/spring-caution.h"
#include "model/words/number-text.h"

#include <stdlib.h>

#define BORDER (-0.5) /* pixels that letters may lean over it */

static void
draw (LoadsBoard *board, const LoadsView *view, int width, int height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  drawn_reset ();
  loads_board_draw (board, cr, view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static LoadsView
view_of (const LoadedCar *car)
{
  return (LoadsView){ .loads = car->loads, .theme = theme_light () };
}

static const int sizes[][2] = { { 200, 200 }, { 260, 500 }, { 320, 240 }, { 400, 420 },
                                { 480, 300 }, { 640, 480 }, { 760, 900 }, { 1400, 500 },
                                { 90, 300 },  { 300, 40 } };

static void
check_sizes (LoadedCar *car, const Theme *theme)
{
  g_autoptr (LoadsBoard) board = loads_board_new ();
  LoadsView view = view_of (car);

  view.theme = *theme;
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    draw (board, &view, sizes[i][0], sizes[i][1]);
    if (drawn_texts != NULL && drawn_texts->len > 0)
      drawn_assert_apart (sizes[i][0], sizes[i][1], BORDER, "a board of loads");
  }
}

static void
check_cases (LoadedCar *car, const Theme *theme)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n = car_load_cases (car->car, cases);

  for (guint i = 0; i < n; i++) {
    loaded_car_solve (car, i % N_SPRUNG, i, (SpringMode) (i % 3));
    check_sizes (car, theme);
  }
}

static void
test_nothing_overlaps_or_leaves (void)
{
  const Theme themes[] = { theme_light (), theme_scaled (theme_dark (), 1.6) };
  g_auto (LoadedCar) with_rod = loaded_car_new (TRUE), bare = loaded_car_new (FALSE);

  for (int words = 0; words < 2; words++) {
    drawn_in_long_words = words == 1;
    for (gsize i = 0; i < G_N_ELEMENTS (themes); i++) {
      check_cases (&with_rod, &themes[i]);
      check_sizes (&bare, &themes[i]);
    }
  }
  drawn_in_long_words = false;
}

static void
test_one_setup (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  const LoadsView view = view_of (&car);

  for (guint i = 1; i < car.car->setups->len; i++)
    car_setup (car.car, i)->is_hidden = TRUE;
  loaded_car_solve (&car, 0, 0, SPRING_AS_SET);
  draw (board, &view, 700, 800);
  g_assert_nonnull (drawn_find ("As built, bar"));
  g_assert_null (drawn_find ("Coil, tender"));
}

static void
test_cautions_before_figures (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  const LoadsView view = view_of (&car);

  for (int height = 20; height < 700; height += 20) {
    draw (board, &view, 420, height);
    if (drawn_find (spring_caution ()) == NULL)
      g_assert_cmpuint (drawn_texts->len, ==, 0);
  }
  g_assert_nonnull (drawn_find (spring_caution ()));
}

/* On a page that scrolls: a row for each setup, the sentence, every chart of the rod. */
static void
test_all_finds_room_at_the_height_asked_for (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  LoadsView view = view_of (&car);
  double x, y, chart_width, chart_height;

  view.caution_stands_beside = true;
  for (int words = 0; words < 2; words++) {
    drawn_in_long_words = words == 1;
    for (int width = 340; width < 1500; width += 145) {
      const int height = (int) loads_board_height (board, &view, width);
      bool is_met[N_SPRUNG] = { false };

      draw (board, &view, width, height);
      drawn_assert_apart (width, height, BORDER, "loads at the height asked for");
      g_assert_nonnull (drawn_find (car.loads->sentence));
      g_assert_null (drawn_find (spring_caution ()));
      for (RodChart i = 0; i < N_ROD_CHARTS; i++)
        g_assert_true (loads_board_frame (board, i, &x, &y, &chart_width, &chart_height));
      for (int at = 0; at < height; at++)
        if (loads_board_hit (board, width / 2.0, at) >= 0)
          is_met[loads_board_hit (board, width / 2.0, at)] = true;
      for (guint i = 0; i < N_SPRUNG; i++)
        g_assert_true (is_met[i]);
    }
  }
  drawn_in_long_words = false;
}

static void
test_without_rods_says_what_to_enter (void)
{
  g_auto (LoadedCar) bare = loaded_car_new (FALSE), with_rod = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  LoadsView view = view_of (&bare);
  double x, y, width, height;

  draw (board, &view, 700, 900);
  g_assert_nonnull (drawn_find ("Give the damper rod's diameter"));
  g_assert_false (loads_board_frame (board, ROD_CHART_CAMBER, &x, &y, &width, &height));
  view = view_of (&with_rod);
  draw (board, &view, 700, 900);
  g_assert_null (drawn_find ("Give the damper rod's diameter"));
  for (RodChart i = 0; i < N_ROD_CHARTS; i++) {
    g_assert_true (loads_board_frame (board, i, &x, &y, &width, &height));
    g_assert_cmpfloat (x + width, <=, 700.0);
    g_assert_cmpfloat (y + height, <=, 900.0);
  }
}

/* The figures stand 5 pixels past a bar that is positive: their places lie on one
 * straight line over their numbers. */
static double
end_of_bar (double newtons, const char *word)
{
  g_autofree char *number = number_text (newtons, 0);
  g_autofree char *text = g_strdup_printf ("%s N %s", number, word);
  const DrawnText *drawn = drawn_find (text);

  g_assert_nonnull (drawn);
  return drawn->left;
}

static void
test_bars_are_as_long_as_their_numbers (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  const LoadsView view = view_of (&car);
  const JointLoads *loads = car.loads->setups;
  const guint bar = SPRUNG_BAR, coil = SPRUNG_COIL;

  draw (board, &view, 1000, 900);
  g_assert_cmpfloat (loads[bar].load_on_floor, >, 500.0);
  g_assert_cmpfloat (loads[coil].load_on_tower, >, 500.0);
  g_assert_cmpfloat (loads[bar].load_on_tower, >, 0.0);
  const double small = end_of_bar (loads[bar].load_on_tower, "on the tower");
  const double large = end_of_bar (loads[coil].load_on_tower, "on the tower");
  const double other = end_of_bar (loads[bar].load_on_floor, "on the floor");
  const double scale =
      (large - small) / (loads[coil].load_on_tower - loads[bar].load_on_tower);

  /* a pixel for the ink of another first digit, and one for the number's rounding */
  g_assert_cmpfloat (scale, >, 0.0);
  g_assert_cmpfloat_with_epsilon (other - small,
                                  scale * (loads[bar].load_on_floor -
                                           loads[bar].load_on_tower),
                                  2.0);
}

/* In the window of 1280 by 800 the board is 490 wide. */
static void
test_names_are_whole_in_hand_too (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();

  for (guint in_hand = 0; in_hand < car.car->setups->len; in_hand++) {
    CarSetup *setup = car_setup (car.car, in_hand);

    g_free (setup->name);
    setup->name = g_strdup_printf ("Coil instead of bar %u", in_hand);
  }
  for (guint in_hand = 0; in_hand < car.car->setups->len; in_hand++) {
    loaded_car_solve (&car, in_hand, 0, SPRING_AS_SET);
    const LoadsView view = view_of (&car);

    draw (board, &view, 490, 900);
    for (guint i = 0; i < car.car->setups->len; i++) {
      const DrawnText *name = drawn_find (car_setup (car.car, i)->name);

      g_assert_nonnull (name);
      g_assert_false (name->is_cut);
    }
    g_assert_nonnull (drawn_find ("on the tower"));
  }
}

static void
test_hits_find_their_setups (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  const LoadsView view = view_of (&car);

  g_assert_cmpint (loads_board_hit (board, 100, 100), ==, -1);
  for (int width = 300; width <= 900; width += 600) {
    draw (board, &view, width, 900);
    for (guint i = 0; i < car.car->setups->len; i++) {
      const DrawnText *name = drawn_find (car_setup (car.car, i)->name);

      if (name == NULL && width < 400)
        continue;
      g_assert_nonnull (name);
      g_assert_cmpint (loads_board_hit (board, (name->left + name->right) / 2.0,
                                        (name->top + name->bottom) / 2.0),
                       ==, (int) i);
    }
    g_assert_cmpint (loads_board_hit (board, width / 2.0, 3.0), ==, -1);
    g_assert_cmpint (loads_board_hit (board, width / 2.0, 890.0), ==, -1);
  }
}

static gboolean
has_tick (const char *figure)
{
  for (guint i = 0; i < drawn_texts->len; i++)
    if (g_str_equal (drawn_text_at (i)->text, figure))
      return TRUE;
  return FALSE;
}

static void
test_held_axes_do_not_shrink (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  LoadsView view = view_of (&car);

  car.car->body.front_mass_kg = 1200.0;
  loaded_car_solve (&car, 0, 0, SPRING_COIL_ONLY);
  draw (board, &view, 900, 900);
  g_assert_true (has_tick ("6000"));
  car.car->body.front_mass_kg = 560.0;
  loaded_car_solve (&car, 0, 0, SPRING_COIL_ONLY);
  view.hold_axes = true;
  draw (board, &view, 900, 900);
  g_assert_true (has_tick ("6000"));
  view.hold_axes = false;
  draw (board, &view, 900, 900);
  g_assert_false (has_tick ("6000"));
}

/* In hand whatever does not find room. */
static void
test_setup_in_hand_has_a_row (void)
{
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  g_autoptr (LoadsBoard) board = loads_board_new ();
  const LoadsView view = view_of (&car);
  const guint last = car.car->setups->len - 1;

  loaded_car_solve (&car, last, 0, SPRING_AS_SET);
  draw (board, &view, 600, 150);
  g_assert_nonnull (drawn_find (car_setup (car.car, last)->name));
  g_assert_null (drawn_find (car_setup (car.car, last - 1)->name));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/loads-board/nothing-overlaps", test_nothing_overlaps_or_leaves);
  g_test_add_func ("/loads-board/one-setup", test_one_setup);
  g_test_add_func ("/loads-board/caution", test_cautions_before_figures);
  g_test_add_func ("/loads-board/height", test_all_finds_room_at_the_height_asked_for);
  g_test_add_func ("/loads-board/without-rods", test_without_rods_says_what_to_enter);
  g_test_add_func ("/loads-board/bars", test_bars_are_as_long_as_their_numbers);
  g_test_add_func ("/loads-board/hits", test_hits_find_their_setups);
  g_test_add_func ("/loads-board/names-are-whole", test_names_are_whole_in_hand_too);
  g_test_add_func ("/loads-board/held-axes", test_held_axes_do_not_shrink);
  g_test_add_func ("/loads-board/in-hand", test_setup_in_hand_has_a_row);
  return g_test_run ();
}
