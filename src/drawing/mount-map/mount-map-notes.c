/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/mount-map/mount-map-private.h"
#include "drawing/sheet/sheet-pen.h"

#include "model/study/quantity-info.h"

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

  quantity_format_whole (quantity, value, TRUE, text, n);
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
put_note (
    MapClaims *claims, MapNotes *notes, const char *text, PixelBox box, Colour colour)
{
  if (notes->n == MAP_MOST_NOTES)
    return FALSE;
  MapNote *note = &notes->notes[notes->n++];
  g_strlcpy (note->text, text, sizeof note->text);
  note->box = box;
  note->colour = colour;
  note->is_hidden = FALSE;
  map_claim (claims, map_box_upright (box));
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
  /* from @toward on, and how much further off; on outlines at last */
  static const double turns[] = { 0, 45, -45, 90, -90, 135, -135, 180 };
  static const struct {
    double further;
    gboolean spares_strokes;
  } rounds[] = { { 1.0, TRUE }, { 2.0, TRUE }, { 1.0, FALSE }, { 2.0, FALSE } };
  const guint n_turns = G_N_ELEMENTS (turns);

  for (guint i = 0; i < G_N_ELEMENTS (rounds) * n_turns; i++) {
    const double reach = away * rounds[i / n_turns].further;
    const double angle = atan2 (toward.y, toward.x) + turns[i % n_turns] * G_PI / 180.0;
    const Pixel d = { cos (angle), sin (angle) };
    const PixelBox box = text_box (pen, text, pixel_add (at, reach * d.x, reach * d.y),
                                   (1.0 - d.x) / 2.0, (1.0 - d.y) / 2.0);
    const MapBox claim = map_box_upright (box);

    if (is_inside (pen, box) && map_is_free (claims, &claim) &&
        (!rounds[i / n_turns].spares_strokes || map_is_free (pen->strokes, &claim)))
      return put_note (claims, notes, text, box, colour);
  }
  return FALSE;
}

/* So that what lies behind does not cross letters. */
static void
draw_patch (const MapPen *pen, PixelBox box)
{
  if (pen->theme->ground.alpha <= 0.0)
    return;
  theme_use (pen->cr, colour_with_alpha (pen->theme->ground, 0.8));
  cairo_rectangle (pen->cr, box.x - 1.0, box.y, box.width + 2.0, box.height);
  cairo_fill (pen->cr);
}

void
map_notes_draw (const MapPen *pen, const MapNotes *notes)
{
  for (guint i = 0; i < notes->n; i++) {
    const MapNote *note = &notes->notes[i];

    if (note->is_hidden)
      continue;
    draw_patch (pen, note->box);
    theme_use (pen->cr, note->colour);
    text_draw (pen->texts, pen->cr, map_small (pen, TEXT_PLAIN), note->text, note->box.x,
               note->box.y, (TextAnchor){ 0.0, 0.0 });
  }
}
