/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Contrast by the formulas of WCAG 2.1, "relative luminance" and "contrast ratio"; 4.5:1
 * is its success criterion 1.4.3. */

#include "drawing/theme.h"

#include <glib.h>
#include <math.h>

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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/theme/letters-stand-out", test_letters_stand_out);
  g_test_add_func ("/theme/scaling-keeps-colours", test_scaling_keeps_colours);
  g_test_add_func ("/theme/dashes-grow-with-the-pen", test_dashes_grow_with_the_pen);
  return g_test_run ();
}
