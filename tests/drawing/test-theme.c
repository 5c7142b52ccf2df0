/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Contrast by the formulas of WCAG 2.1, "relative luminance" and "contrast ratio"; 4.5:1
 * is its success criterion 1.4.3, 7:1 its 1.4.6, and 3:1, for lines, its 1.4.11. */

#include "drawing/pen/theme.h"

#include <glib.h>
#include <math.h>
#include <string.h>

static double
linear (double part)
{
  return part <= 0.03928 ? part / 12.92 : pow ((part + 0.055) / 1.055, 2.4);
}

static double
luminance (Colour c)
{
  return 0.2126 * linear (c.red) + 0.7152 * linear (c.green) + 0.0722 * linear (c.blue);
}

static double
contrast (Colour a, Colour b)
{
  const double x = luminance (a), y = luminance (b);

  return (fmax (x, y) + 0.05) / (fmin (x, y) + 0.05);
}

static Colour
over (Colour top, Colour ground)
{
  const double a = top.alpha;

  return (Colour){ a * top.red + (1.0 - a) * ground.red,
                   a * top.green + (1.0 - a) * ground.green,
                   a * top.blue + (1.0 - a) * ground.blue, 1.0 };
}

static void
test_letters_stand_out (void)
{
  const Theme themes[] = { theme_light (), theme_dark (), theme_paper () };

  for (gsize i = 0; i < G_N_ELEMENTS (themes); i++) {
    const Theme t = themes[i];
    const Colour letters[] = { t.ink, t.soft_ink, t.reference, t.accent };

    for (gsize j = 0; j < G_N_ELEMENTS (letters); j++)
      g_assert_cmpfloat (contrast (letters[j], t.ground), >=, 4.5);
    g_assert_cmpfloat (contrast (t.soft_ink, over (t.glow, t.ground)), >=, 4.5);
    /* 3:1 for lines that matter: WCAG 2.1, 1.4.11 */
    g_assert_cmpfloat (contrast (t.warning, t.ground), >=, 3.0);
  }
}

/* The more careful of two: letters, every setup and all that is drawn to be understood.
 */
static void
test_high_contrast_leaves_nothing_pale (void)
{
  const Theme themes[] = { theme_high_contrast (theme_light ()),
                           theme_high_contrast (theme_dark ()) };

  for (gsize i = 0; i < G_N_ELEMENTS (themes); i++) {
    const Theme t = themes[i];
    const Colour letters[] = {
      t.ink, t.soft_ink, t.reference, t.accent, t.warning, t.body
    };

    for (gsize j = 0; j < G_N_ELEMENTS (letters); j++)
      g_assert_cmpfloat (contrast (letters[j], t.ground), >=, 7.0);
    g_assert_cmpfloat (contrast (t.ink, t.ground), ==, 21.0);
    g_assert_cmpfloat (contrast (t.soft_ink, over (t.glow, t.ground)), >=, 7.0);
    g_assert_cmpfloat (contrast (t.soft_ink, t.fill), >=, 7.0);
    g_assert_cmpfloat (contrast (t.faint, t.ground), >=, 3.0);
    for (unsigned s = 0; s < SETUP_STYLES; s++)
      g_assert_cmpfloat (contrast (theme_setup_style (&t, s).colour, t.ground), >=, 7.0);
  }
}

/* What other parts draw in colours of their own, as near to the ground as they come. */
static void
test_any_colour_becomes_legible_in_high_contrast (void)
{
  const Theme plain = theme_dark (), high = theme_high_contrast (plain),
              light = theme_high_contrast (theme_light ());

  for (int i = 0; i < 64; i++) {
    const Colour c = { (i % 4) / 3.0, (i / 4 % 4) / 3.0, i / 16 / 3.0, 1.0 };
    const Colour kept = theme_legible (&plain, c);

    g_assert_cmpmem (&kept, sizeof kept, &c, sizeof c);
    g_assert_cmpfloat (contrast (theme_legible (&high, c), high.ground), >=, 7.0);
    g_assert_cmpfloat (contrast (theme_legible (&light, c), light.ground), >=, 7.0);
    g_assert_cmpfloat_with_epsilon (colour_contrast (c, plain.ground),
                                    contrast (c, plain.ground), 1e-12);
  }
}

static void
test_high_contrast_holds_nothing_back (void)
{
  const Theme plain = theme_light (),
              high = theme_high_contrast (theme_scaled (plain, 2));

  g_assert_cmpfloat (theme_quiet (&plain, plain.ink, 0.4).alpha, ==, 0.4);
  g_assert_cmpfloat (theme_quiet (&high, high.ink, 0.4).alpha, ==, 1.0);
  g_assert_cmpfloat (high.thin, >, 2.0 * plain.thin);
  g_assert_cmpfloat (high.line, >, 2.0 * plain.line);
  g_assert_cmpfloat (high.text, ==, 2.0 * plain.text);
}

static void
test_scaling_keeps_colours (void)
{
  const Theme plain = theme_light (), large = theme_scaled (plain, 2.0);

  g_assert_cmpfloat (large.text, ==, 2.0 * plain.text);
  g_assert_cmpfloat (large.line, ==, 2.0 * plain.line);
  g_assert_cmpmem (&large.ink, sizeof large.ink, &plain.ink, sizeof plain.ink);
}

static void
test_dashes_grow_with_the_pen (void)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 8, 8);
  cairo_t *cr = cairo_create (surface);
  double dashes[8];

  theme_line (cr, LINE_CHAIN, 2.0);
  g_assert_cmpint (cairo_get_dash_count (cr), ==, 4);
  cairo_get_dash (cr, dashes, NULL);
  g_assert_cmpfloat (dashes[0], ==, 48.0);
  g_assert_cmpfloat (cairo_get_line_width (cr), ==, 2.0);
  theme_line (cr, LINE_FULL, 1.0);
  g_assert_cmpint (cairo_get_dash_count (cr), ==, 0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* 3:1 for lines, WCAG 2.1, 1.4.11, on every ground. */
static void
test_setups_stand_out (void)
{
  const Theme themes[] = { theme_light (), theme_dark (), theme_paper () };

  for (gsize i = 0; i < G_N_ELEMENTS (themes); i++)
    for (unsigned s = 0; s < SETUP_STYLES; s++)
      g_assert_cmpfloat (contrast (theme_setup_style (&themes[i], s).colour,
                                   themes[i].ground),
                         >=, 3.0);
}

static bool
is_same_pattern (const SetupStyle *a, const SetupStyle *b)
{
  return a->n_dashes == b->n_dashes &&
         memcmp (a->dashes, b->dashes, sizeof a->dashes) == 0;
}

/* Without any colour: no two of eight share a pattern, and none of the eight after them
 * shares both pattern and marker with another. */
static void
test_setups_differ_without_colour (void)
{
  const Theme theme = theme_light ();

  for (unsigned i = 0; i < 2 * SETUP_STYLES; i++)
    for (unsigned j = 0; j < i; j++) {
      const SetupStyle a = theme_setup_style (&theme, i);
      const SetupStyle b = theme_setup_style (&theme, j);
      if (i < SETUP_STYLES)
        g_assert_false (is_same_pattern (&a, &b));
      g_assert_false (is_same_pattern (&a, &b) && a.marker == b.marker);
    }
  g_assert_cmpint (theme_setup_style (&theme, 0).n_dashes, >, 0);
  g_assert_cmpint (theme_setup_style (&theme, 1).n_dashes, ==, 0);
}

/* Two colours differ by hue or by lightness in each theme: no pair is the same. */
static void
test_setups_have_colours_of_their_own (void)
{
  const Theme themes[] = { theme_light (), theme_dark (),
                           theme_high_contrast (theme_light ()),
                           theme_high_contrast (theme_dark ()) };

  for (gsize t = 0; t < G_N_ELEMENTS (themes); t++)
    for (unsigned i = 0; i < SETUP_STYLES; i++)
      for (unsigned j = 0; j < i; j++) {
        const Colour a = theme_setup_style (&themes[t], i).colour;
        const Colour b = theme_setup_style (&themes[t], j).colour;
        g_assert_cmpfloat (fabs (a.red - b.red) + fabs (a.green - b.green) +
                               fabs (a.blue - b.blue),
                           >, 0.2);
      }
}

/* Each marker has about the size that was asked, and about the middle that was asked. */
static void
test_markers_stand_where_asked (void)
{
  for (Marker marker = 0; marker < N_MARKERS; marker++) {
    cairo_surface_t *record =
        cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
    cairo_t *cr = cairo_create (record);
    double x, y, width, height;

    theme_marker (cr, marker, 100.0, 50.0, 20.0);
    cairo_recording_surface_ink_extents (record, &x, &y, &width, &height);
    g_assert_cmpfloat_with_epsilon (x + width / 2.0, 100.0, 2.0);
    g_assert_cmpfloat_with_epsilon (y + height / 2.0, 50.0, 2.5);
    g_assert_cmpfloat (fmin (width, height), >, 15.0);
    g_assert_cmpfloat (fmax (width, height), <, 27.0);
    cairo_destroy (cr);
    cairo_surface_destroy (record);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/theme/letters-stand-out", test_letters_stand_out);
  g_test_add_func ("/theme/high-contrast-leaves-nothing-pale",
                   test_high_contrast_leaves_nothing_pale);
  g_test_add_func ("/theme/any-colour-becomes-legible-in-high-contrast",
                   test_any_colour_becomes_legible_in_high_contrast);
  g_test_add_func ("/theme/high-contrast-holds-nothing-back",
                   test_high_contrast_holds_nothing_back);
  g_test_add_func ("/theme/scaling-keeps-colours", test_scaling_keeps_colours);
  g_test_add_func ("/theme/dashes-grow-with-the-pen", test_dashes_grow_with_the_pen);
  g_test_add_func ("/theme/setups-stand-out", test_setups_stand_out);
  g_test_add_func ("/theme/setups-differ-without-colour",
                   test_setups_differ_without_colour);
  g_test_add_func ("/theme/setups-have-colours-of-their-own",
                   test_setups_have_colours_of_their_own);
  g_test_add_func ("/theme/markers-stand-where-asked", test_markers_stand_where_asked);
  return g_test_run ();
}
