/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/mount-map-private.h"
#include "drawing/sheet-pen.h"

#include "model/quantity-info.h"

#include <math.h>

#define BORDER 2.0 /* pixels at ordinary type size */

TextStyle
map_small (const MapPen *pen, TextWeight weight)
{
  return (TextStyle){ pen->theme->font, pen->theme->small_text, weight };
}

void
map_figure_text (FieldSubject subject, double value, char *text, size_t n)
{
  const Quantity quantity = field_subject_quantity (subject);
  const char *unit = quantity_info (quantity).unit;
  char figure[24];

  quantity_format (quantity, value, TRUE, figure, sizeof figure);
  g_snprintf (text, n, "%s%s%s", figure, g_str_equal (unit, "°") ? "" : " ", unit);
}

/* The box of @text with that point of it, in parts of its size, at @at. */
static PixelBox
text_box (const MapPen *pen, const char *text, Pixel at, double across, double down)
{
  const TextSize size = text_measure (pen->texts, map_small (pen, TEXT_PLAIN), text);

  return (PixelBox){ at.x - across * size.width, at.y - down * size.height, size.width,
                     size.height };
}

static gboolean
is_inside (const MapPen *pen, PixelBox box)
{
  const PixelBox plot = pen->layout->plot;
  const double room = BORDER * pen->unit;

  return box.x >= plot.x + room && box.y >= plot.y + room &&
         box.x + box.width <= plot.x + plot.width - room &&
         box.y + box.height <= plot.y + plot.height - room;
}

static gboolean
put_note (const MapPen *pen,
          MapClaims *claims,
          MapNotes *notes,
          const char *text,
          PixelBox box,
          Colour colour)
{
  const MapBox claim = map_box_upright (box);

  if (notes->n == MAP_MOST_NOTES || !is_inside (pen, box) ||
      !map_is_free (claims, &claim))
    return FALSE;
  MapNote *note = &notes->notes[notes->n++];
  g_strlcpy (note->text, text, sizeof note->text);
  note->box = box;
  note->colour = colour;
  note->is_hidden = FALSE;
  map_claim (claims, claim);
  return TRUE;
}

gboolean
map_note_beside (const MapPen *pen,
                 MapClaims *claims,
                 MapNotes *notes,
                 const char *text,
                 Pixel at,
                 double away,
                 Pixel toward,
                 Colour colour)
{
  /* turns from @toward, in rising order */
  static const double turns[] = { 0, 45, -45, 90, -90, 135, -135, 180 };

  for (gsize i = 0; i < G_N_ELEMENTS (turns); i++) {
    const double angle = atan2 (toward.y, toward.x) + turns[i] * G_PI / 180.0;
    const Pixel d = { cos (angle), sin (angle) };
    const PixelBox box = text_box (pen, text, pixel_add (at, away * d.x, away * d.y),
                                   (1.0 - d.x) / 2.0, (1.0 - d.y) / 2.0);

    if (put_note (pen, claims, notes, text, box, colour))
      return TRUE;
  }
  return FALSE;
}

void
map_notes_draw (const MapPen *pen, const MapNotes *notes)
{
  for (guint i = 0; i < notes->n; i++) {
    const MapNote *note = &notes->notes[i];

    if (note->is_hidden)
      continue;
    theme_use (pen->cr, note->colour);
    text_draw (pen->texts, pen->cr, map_small (pen, TEXT_PLAIN), note->text, note->box.x,
               note->box.y, (TextAnchor){ 0.0, 0.0 });
  }
}
