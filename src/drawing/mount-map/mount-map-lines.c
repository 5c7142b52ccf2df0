/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines of equal value, with gaps for their labels. */

#include "drawing/mount-map/mount-map-private.h"

#include "drawing/sheet/sheet-pen.h"

#include <math.h>

/* Teal and brown of C. Brewer's colour-blind-safe scheme BrBG (from memory): none of the
 * setups' hues, nor the accent. The dashes tell them apart alone. */
#define PART(hex, shift) ((((hex) >> (shift)) % 256) / 255.0)
#define RGB(hex)                                                                         \
  {                                                                                      \
    PART (hex, 16), PART (hex, 8), PART (hex, 0), 1.0                                    \
  }

static const Colour on_light[] = { RGB (0x01665E), RGB (0x8C510A) },
                    on_dark[] = { RGB (0x5AB4AC), RGB (0xD8B365) };

static const double dashes[] = { 6.0, 3.5 }; /* pixels at ordinary type size */

Colour
map_family_colour (const Theme *theme, int which)
{
  return theme_legible (theme, (theme->is_dark ? on_dark : on_light)[which]);
}

void
map_family_use (const MapPen *pen, const MapFamily *family, double width)
{
  double lengths[G_N_ELEMENTS (dashes)];

  for (guint i = 0; i < G_N_ELEMENTS (dashes); i++)
    lengths[i] = dashes[i] * pen->unit;
  theme_use (pen->cr, family->colour);
  theme_line (pen->cr, LINE_FULL, width * pen->theme->thin);
  if (family->is_dashed)
    cairo_set_dash (pen->cr, lengths, G_N_ELEMENTS (dashes), 0.0);
}

/* Zero and the ends of what is aimed for. */
static gboolean
is_strong (const MapFamily *family, double level)
{
  const double near = 1e-6 * family->lines->step;

  return fabs (level) < near ||
         (family->has_band &&
          (fabs (level - family->least) < near || fabs (level - family->most) < near));
}

static const MapLabel *
label_of (const GArray *labels, guint family, guint line)
{
  for (guint i = 0; i < labels->len; i++) {
    const MapLabel *label = &g_array_index (labels, MapLabel, i);

    if (label->family == family && label->line == line && !label->is_hidden)
      return label;
  }
  return NULL;
}

typedef struct {
  cairo_t *cr;
  const MapLabel *label; /* or NULL */
  double s;              /* so far, pixels */
  Pixel at;
} Nib;

/* On to @to, the pen lifted through the label's gap. */
static void
draw_on (Nib *nib, Pixel to)
{
  const double length = hypot (to.x - nib->at.x, to.y - nib->at.y);
  const double from = nib->label != NULL ? nib->label->from - nib->s : INFINITY,
               till = nib->label != NULL ? nib->label->to - nib->s : INFINITY;

  if (from >= 0.0 && from < length) {
    const Pixel p = pixel_between (nib->at, to, from / length);
    cairo_line_to (nib->cr, p.x, p.y);
  }
  if (till >= 0.0 && till < length) {
    const Pixel p = pixel_between (nib->at, to, till / length);
    cairo_move_to (nib->cr, p.x, p.y);
  }
  if (length <= from || length > till)
    cairo_line_to (nib->cr, to.x, to.y);
  nib->s += length;
  nib->at = to;
}

static void
draw_line (const MapPen *pen, const MapFamily *family, const FieldLine *line, Nib nib)
{
  const MountOffset *points =
      &g_array_index (family->lines->points, MountOffset, line->first);

  nib.at = map_pixel (pen->layout, points[0]);
  cairo_new_sub_path (pen->cr);
  if (nib.label == NULL || nib.label->from > 0.0)
    cairo_move_to (pen->cr, nib.at.x, nib.at.y);
  for (guint i = 1; i < line->n_points; i++)
    draw_on (&nib, map_pixel (pen->layout, points[i]));
  if (line->is_closed)
    draw_on (&nib, map_pixel (pen->layout, points[0]));
}

static void
draw_family (const MapPen *pen, guint f, const GArray *labels, gboolean strong)
{
  const MapFamily *family = &pen->families[f];

  map_family_use (pen, family, strong ? MAP_STRONG : MAP_ORDINARY);
  for (guint i = 0; i < family->lines->lines->len; i++) {
    const FieldLine *line = &g_array_index (family->lines->lines, FieldLine, i);

    if (is_strong (family, line->level) == strong)
      draw_line (pen, family, line,
                 (Nib){ .cr = pen->cr, .label = label_of (labels, f, i) });
  }
  cairo_stroke (pen->cr);
}

void
map_lines_draw (const MapPen *pen, const GArray *labels)
{
  for (guint f = pen->n_families; f-- > 0;)
    for (int strong = 0; strong <= 1; strong++)
      draw_family (pen, f, labels, strong);
}

void
map_labels_draw (const MapPen *pen, const GArray *labels)
{
  const TextStyle style = map_small (pen, TEXT_PLAIN);

  for (guint i = 0; i < labels->len; i++) {
    const MapLabel *label = &g_array_index (labels, MapLabel, i);

    if (label->is_hidden)
      continue;
    theme_use (pen->cr, pen->families[label->family].colour);
    cairo_save (pen->cr);
    cairo_translate (pen->cr, label->box.centre.x, label->box.centre.y);
    cairo_rotate (pen->cr, label->angle);
    text_draw (pen->texts, pen->cr, style, label->text, 0.0, 0.0,
               (TextAnchor){ 0.5, 0.5 });
    cairo_restore (pen->cr);
  }
}
