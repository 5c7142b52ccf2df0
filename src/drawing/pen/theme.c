/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Accent and warning: blue, sky blue, vermillion and orange of M. Okabe and K. Ito, Color
 * Universal Design, 2008 (from memory). Soft ink and the reference keep at least 4.5:1
 * against the ground, which WCAG 2.1, 1.4.3 asks of small text; in high contrast all that
 * has letters keeps 7:1, 1.4.6, and the grid 3:1, 1.4.11. */

#include "drawing/pen/theme.h"

#include <math.h>
#include <stddef.h>

#define HIGH_CONTRAST 7.0 /* of letters, WCAG 2.1, 1.4.6 */
#define MIX_STEPS 32

#define PART(hex, shift) ((((hex) >> (shift)) % 256) / 255.0)
#define RGB(hex)                                                                         \
  {                                                                                      \
    PART (hex, 16), PART (hex, 8), PART (hex, 0), 1.0                                    \
  }

static const Colour okabe_ito_blue = RGB (0x0072B2), okabe_ito_sky_blue = RGB (0x56B4E9),
                    okabe_ito_vermillion = RGB (0xD55E00),
                    okabe_ito_orange = RGB (0xE69F00);

static Theme
with_sizes (Theme theme)
{
  theme.text = 12.0;
  theme.small_text = 10.5;
  theme.thin = 1.0;
  theme.line = 1.8;
  theme.thick = 2.6;
  theme.font = "Sans";
  return theme;
}

Theme
theme_light (void)
{
  return with_sizes ((Theme){
      .ground = RGB (0xFCFCFA),
      .ink = RGB (0x1B1B1F),
      .soft_ink = RGB (0x5C5F66),
      .faint = RGB (0xE2E3E2),
      .body = RGB (0x8A8D92),
      .fill = RGB (0xEEF1F3),
      .reference = RGB (0x6B6F76),
      .accent = okabe_ito_blue,
      .glow = colour_with_alpha (okabe_ito_blue, 0.10),
      .warning = okabe_ito_vermillion,
  });
}

Theme
theme_dark (void)
{
  return with_sizes ((Theme){
      .ground = RGB (0x1E1E22),
      .ink = RGB (0xECECEE),
      .soft_ink = RGB (0xA5A8B0),
      .faint = RGB (0x35363C),
      .body = RGB (0x84878F),
      .fill = RGB (0x2B2C32),
      .reference = RGB (0x9A9DA5),
      .accent = okabe_ito_sky_blue,
      .glow = colour_with_alpha (okabe_ito_sky_blue, 0.14),
      .warning = okabe_ito_orange,
      .is_dark = true,
  });
}

Theme
theme_paper (void)
{
  Theme theme = theme_light ();

  theme.ground = (Colour) RGB (0xFFFFFF);
  return theme;
}

static Theme
light_high_contrast (void)
{
  return (Theme){
    .ground = RGB (0xFFFFFF),
    .ink = RGB (0x000000),
    .soft_ink = RGB (0x2A2A2E),
    .faint = RGB (0x8C8C8C),
    .body = RGB (0x4A4B4F),
    .fill = RGB (0xF2F2F2),
    .reference = RGB (0x404348),
    .accent = RGB (0x0040A8),
    .glow = colour_with_alpha (okabe_ito_blue, 0.18),
    .warning = RGB (0x8A3700),
  };
}

static Theme
dark_high_contrast (void)
{
  return (Theme){
    .ground = RGB (0x000000),
    .ink = RGB (0xFFFFFF),
    .soft_ink = RGB (0xDCDCE0),
    .faint = RGB (0x6A6B70),
    .body = RGB (0xB4B6BC),
    .fill = RGB (0x1C1C20),
    .reference = RGB (0xC4C7CE),
    .accent = RGB (0x7CCBFF),
    .glow = colour_with_alpha (okabe_ito_sky_blue, 0.22),
    .warning = RGB (0xFFB52E),
    .is_dark = true,
  };
}

Theme
theme_high_contrast (Theme theme)
{
  Theme high = theme.is_dark ? dark_high_contrast () : light_high_contrast ();

  high.font = theme.font;
  high.text = theme.text;
  high.small_text = theme.small_text;
  high.thin = 1.5 * theme.thin;
  high.line = 1.3 * theme.line;
  high.thick = 1.3 * theme.thick;
  high.is_high_contrast = true;
  return high;
}

Theme
theme_scaled (Theme theme, double factor)
{
  theme.text *= factor;
  theme.small_text *= factor;
  theme.thin *= factor;
  theme.line *= factor;
  theme.thick *= factor;
  return theme;
}

void
theme_use (cairo_t *cr, Colour colour)
{
  cairo_set_source_rgba (cr, colour.red, colour.green, colour.blue, colour.alpha);
}

Colour
colour_with_alpha (Colour colour, double alpha)
{
  colour.alpha = alpha;
  return colour;
}

static double
linear (double part)
{
  return part <= 0.03928 ? part / 12.92 : pow ((part + 0.055) / 1.055, 2.4);
}

/* WCAG 2.1, "relative luminance". */
static double
luminance (Colour c)
{
  return 0.2126 * linear (c.red) + 0.7152 * linear (c.green) + 0.0722 * linear (c.blue);
}

double
colour_contrast (Colour a, Colour b)
{
  const double x = luminance (a), y = luminance (b);

  return (fmax (x, y) + 0.05) / (fmin (x, y) + 0.05);
}

static Colour
mix (Colour a, Colour b, double part_of_b)
{
  return (Colour){ a.red + part_of_b * (b.red - a.red),
                   a.green + part_of_b * (b.green - a.green),
                   a.blue + part_of_b * (b.blue - a.blue), a.alpha };
}

Colour
theme_legible (const Theme *theme, Colour colour)
{
  Colour legible = colour;

  if (!theme->is_high_contrast)
    return colour;
  for (int step = 1;
       step <= MIX_STEPS && colour_contrast (legible, theme->ground) < HIGH_CONTRAST;
       step++)
    legible = mix (colour, theme->ink, (double) step / MIX_STEPS);
  return legible;
}

Colour
theme_quiet (const Theme *theme, Colour colour, double alpha)
{
  return theme->is_high_contrast ? colour : colour_with_alpha (colour, alpha);
}

/* Lengths in line widths, after ISO 128-2 (from memory): dash 12, long dash 24, gap 3.
 * Its dots of half a width vanish between pixels; they are one width here. */
void
theme_line (cairo_t *cr, LineKind kind, double width)
{
  static const double dashed[] = { 12.0, 3.0 }, chain[] = { 24.0, 3.0, 1.0, 3.0 },
                      dotted[] = { 1.0, 3.0 };
  static const struct {
    const double *lengths;
    int n_lengths;
  } patterns[] = { [LINE_FULL] = { NULL, 0 },
                   [LINE_DASHED] = { dashed, 2 },
                   [LINE_CHAIN] = { chain, 4 },
                   [LINE_DOTTED] = { dotted, 2 } };
  double lengths[4];

  for (int i = 0; i < patterns[kind].n_lengths; i++)
    lengths[i] = patterns[kind].lengths[i] * width;
  cairo_set_dash (cr, lengths, patterns[kind].n_lengths, 0.0);
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
}

void
theme_paint_ground (cairo_t *cr, const Theme *theme, double width, double height)
{
  if (theme->ground.alpha <= 0.0)
    return;
  theme_use (cr, theme->ground);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_fill (cr);
}
