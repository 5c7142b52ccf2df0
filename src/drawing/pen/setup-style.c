/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Hues of M. Okabe and K. Ito, Color Universal Design, 2008 (from memory), darkened on a
 * light ground and lightened on a dark one until small letters can be read in them. Of
 * blue and sky blue, and of orange and vermillion, the one that the theme uses as its
 * accent or warning is left to that. Patterns and markers tell the setups apart alone. */

#include "drawing/pen/theme.h"

#include <glib.h>
#include <math.h>

#define PART(hex, shift) ((((hex) >> (shift)) % 256) / 255.0)
#define RGB(hex)                                                                         \
  {                                                                                      \
    PART (hex, 16), PART (hex, 8), PART (hex, 0), 1.0                                    \
  }

/* The first two places are the theme's reference and accent. */
static const Colour on_light[SETUP_STYLES] = {
  { 0, 0, 0, 0 }, { 0, 0, 0, 0 }, RGB (0x008060), RGB (0xA94F86),
  RGB (0x9C6500), RGB (0x2B86B8), RGB (0x6B7800), RGB (0xC05400),
};
static const Colour on_dark[SETUP_STYLES] = {
  { 0, 0, 0, 0 }, { 0, 0, 0, 0 }, RGB (0x2DB88D), RGB (0xD98AB8),
  RGB (0xEE7733), RGB (0x7F8CF5), RGB (0xF0E442), RGB (0xE69F00),
};
/* Darker still, with their hues further apart. */
static const Colour on_light_high[SETUP_STYLES] = {
  { 0, 0, 0, 0 }, { 0, 0, 0, 0 }, RGB (0x006048), RGB (0x8A2F68),
  RGB (0x7A4200), RGB (0x005C88), RGB (0x445A00), RGB (0xA82800),
};

static const Colour *
hues_of (const Theme *theme)
{
  if (theme->is_dark)
    return on_dark;
  return theme->is_high_contrast ? on_light_high : on_light;
}

static const SetupStyle patterns[SETUP_STYLES] = {
  { .dashes = { 7, 3.5 }, .n_dashes = 2, .marker = MARKER_RING },
  { .n_dashes = 0, .marker = MARKER_DOT },
  { .dashes = { 10, 3, 1.5, 3 }, .n_dashes = 4, .marker = MARKER_SQUARE },
  { .dashes = { 1.8, 2.4 }, .n_dashes = 2, .marker = MARKER_TRIANGLE },
  { .dashes = { 14, 4 }, .n_dashes = 2, .marker = MARKER_DIAMOND },
  { .dashes = { 9, 2.5, 1.5, 2.5, 1.5, 2.5 }, .n_dashes = 6, .marker = MARKER_CROSS },
  { .dashes = { 4, 2 }, .n_dashes = 2, .marker = MARKER_RING },
  { .dashes = { 13, 2.5, 4, 2.5 }, .n_dashes = 4, .marker = MARKER_DOT },
};

SetupStyle
theme_setup_style (const Theme *theme, unsigned index)
{
  const unsigned place = index % SETUP_STYLES, round = index / SETUP_STYLES;
  SetupStyle style = patterns[place];

  style.colour = place == 0   ? theme->reference
                 : place == 1 ? theme->accent
                              : theme_legible (theme, hues_of (theme)[place]);
  style.marker = (Marker) ((style.marker + round) % N_MARKERS);
  return style;
}

SetupStyle
theme_hand_style (const Theme *theme, unsigned index)
{
  SetupStyle style = theme_setup_style (theme, index);

  if (index % SETUP_STYLES == 0)
    style.colour = theme->ink;
  return style;
}

SetupStyle
theme_measured_style (const Theme *theme)
{
  return (SetupStyle){
    .colour = theme->reference, .dashes = { 12, 3 }, .n_dashes = 2, .marker = MARKER_CROSS
  };
}

void
theme_use_style (cairo_t *cr, const SetupStyle *style, double width)
{
  double lengths[G_N_ELEMENTS (style->dashes)];

  for (int i = 0; i < style->n_dashes; i++)
    lengths[i] = style->dashes[i] * width;
  theme_use (cr, style->colour);
  cairo_set_dash (cr, lengths, style->n_dashes, 0.0);
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
}

static void
trace_polygon (cairo_t *cr, const double (*corners)[2], int n, double half)
{
  for (int i = 0; i < n; i++)
    cairo_line_to (cr, corners[i][0] * half, corners[i][1] * half);
  cairo_close_path (cr);
}

/* Shapes of about equal weight, in halves of the size about the middle. */
static void
trace_marker (cairo_t *cr, Marker marker, double half)
{
  static const double square[][2] = {
    { -0.85, -0.85 }, { 0.85, -0.85 }, { 0.85, 0.85 }, { -0.85, 0.85 }
  };
  static const double triangle[][2] = { { 0, -1.1 }, { 1.05, 0.8 }, { -1.05, 0.8 } };
  static const double diamond[][2] = { { 0, -1.2 }, { 1.2, 0 }, { 0, 1.2 }, { -1.2, 0 } };
  static const double cross[][2] = { { 0, -0.4 }, { 0.7, -1.1 },  { 1.1, -0.7 },
                                     { 0.4, 0 },  { 1.1, 0.7 },   { 0.7, 1.1 },
                                     { 0, 0.4 },  { -0.7, 1.1 },  { -1.1, 0.7 },
                                     { -0.4, 0 }, { -1.1, -0.7 }, { -0.7, -1.1 } };

  switch (marker) {
  case MARKER_SQUARE:
    trace_polygon (cr, square, G_N_ELEMENTS (square), half);
    break;
  case MARKER_TRIANGLE:
    trace_polygon (cr, triangle, G_N_ELEMENTS (triangle), half);
    break;
  case MARKER_DIAMOND:
    trace_polygon (cr, diamond, G_N_ELEMENTS (diamond), half);
    break;
  case MARKER_CROSS:
    trace_polygon (cr, cross, G_N_ELEMENTS (cross), half);
    break;
  case MARKER_RING:
    cairo_arc (cr, 0.0, 0.0, 1.1 * half, 0.0, 2.0 * G_PI);
    cairo_new_sub_path (cr);
    cairo_arc_negative (cr, 0.0, 0.0, 0.55 * half, 2.0 * G_PI, 0.0);
    break;
  default:
    cairo_arc (cr, 0.0, 0.0, half, 0.0, 2.0 * G_PI);
  }
}

void
theme_marker (cairo_t *cr, Marker marker, double x, double y, double size)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_new_path (cr);
  trace_marker (cr, marker, size / 2.0);
  cairo_fill (cr);
  cairo_restore (cr);
}

void
theme_draw_sample (cairo_t *cr,
                   const Theme *theme,
                   unsigned index,
                   bool is_hand,
                   double x,
                   double y,
                   double width)
{
  const SetupStyle style =
      is_hand ? theme_hand_style (theme, index) : theme_setup_style (theme, index);
  const double middle = floor (y) + 0.5;

  theme_use_style (cr, &style, (is_hand ? 1.3 : 0.8) * theme->line);
  cairo_move_to (cr, x, middle);
  cairo_line_to (cr, x + width, middle);
  cairo_stroke (cr);
  theme_marker (cr, style.marker, x + width / 2.0, middle, 0.5 * theme->text);
}
