/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/title-block.h"
#include "example-study.h"

static void
assert_adjustment (CarSetup setup, const char *expected)
{
  g_autoptr (Car) car = example_car ();
  const TitleBlock title = title_block_for (car, &setup, NULL);
  g_autofree char *text = title_block_adjustment (&title);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_directions_are_words (void)
{
  CarSetup setup = example_setup (15, 10, 0);
  assert_adjustment (setup, "mount 15.0 mm inboard, 10.0 mm rearward, 0.0 mm up · "
                            "lowered 0.0 mm · toe as moved");

  setup = example_setup (-3.25, -0.04, -2);
  setup.lowering_mm = -12;
  setup.toe = TOE_RESET;
  assert_adjustment (setup,
                     "mount 3.3 mm outboard, 0.0 mm rearward, 2.0 mm down · raised "
                     "12.0 mm · toe reset by the tie rod");
}

static void
test_height_follows_the_width (void)
{
  g_autoptr (Car) car = example_car ();
  g_autoptr (TextCache) texts = text_cache_new ();
  g_autoptr (Study) study = study_new ();
  const CarSetup setup = example_setup (15, 10, 0);
  const TitleBlock title = title_block_for (car, &setup, "25 November");
  const Theme theme = theme_paper ();

  study_solve (study, car, 0, 0.0);
  const double alone = title_block_height (texts, &theme, &title, study, 1200.0);
  g_assert_cmpfloat (title_block_height (texts, &theme, &title, study, 400.0), >,
                     alone + theme.text);
  /* a legend, in more lines where it is narrow */
  example_add_setups (car, 6);
  study_solve (study, car, 1, 0.0);
  const double wide = title_block_height (texts, &theme, &title, study, 1200.0);
  g_assert_cmpfloat (wide, >=, alone + theme.text);
  g_assert_cmpfloat (title_block_height (texts, &theme, &title, study, 400.0), >,
                     wide + 2.0 * theme.text);
}

/* Nothing of the block stands outside the strip it asks for. */
static void
test_block_stays_in_its_strip (void)
{
  g_autoptr (Car) car = example_car ();
  g_autoptr (TextCache) texts = text_cache_new ();
  g_autoptr (Study) study = study_new ();
  const CarSetup setup = example_setup (15, 10, 0);
  const TitleBlock title = title_block_for (car, &setup, "25 November");
  const Theme theme = theme_paper ();

  example_add_setups (car, 6);
  study_solve (study, car, 0, 0.0);
  for (double width = 400.0; width < 1500.0; width += 300.0) {
    const double height = title_block_height (texts, &theme, &title, study, width);
    cairo_surface_t *surface =
        cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
    cairo_t *cr = cairo_create (surface);
    double x, y, ink_width, ink_height;

    title_block_draw (texts, cr, &theme, &title, 20.0, 100.0, width, study);
    cairo_recording_surface_ink_extents (surface, &x, &y, &ink_width, &ink_height);
    g_assert_cmpfloat (x, >=, 19.0);
    g_assert_cmpfloat (x + ink_width, <=, 21.0 + width);
    g_assert_cmpfloat (y, >=, 99.0);
    g_assert_cmpfloat (y + ink_height, <=, 100.0 + height);
    cairo_destroy (cr);
    cairo_surface_destroy (surface);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/title-block/directions-are-words", test_directions_are_words);
  g_test_add_func ("/title-block/height-follows-the-width",
                   test_height_follows_the_width);
  g_test_add_func ("/title-block/stays-in-its-strip", test_block_stays_in_its_strip);
  return g_test_run ();
}
