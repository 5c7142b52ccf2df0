/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-writing.h"

#include <glib.h>

/* Of a line's height to the size of its letters. */
#define LINE_PART 1.25
/* Kept free between texts and to the border, pixels. */
#define CLEAR 1.0

double
writing_width (const SheetPen *pen, const char *text, TextWeight weight)
{
  return text_measure (pen->texts, pen_style (pen, pen->theme->small_text, weight), text)
      .width;
}

PixelBox
writing_box (const SheetPen *pen, Pixel left, double width)
{
  const double high = LINE_PART * pen->theme->small_text;

  return (PixelBox){ left.x, left.y - high / 2.0, width, high };
}

static bool
do_overlap (PixelBox a, PixelBox b)
{
  return a.x < b.x + b.width + CLEAR && b.x < a.x + a.width + CLEAR &&
         a.y < b.y + b.height && b.y < a.y + a.height;
}

bool
writing_has_room (const SheetPen *pen, PixelBox box)
{
  const PixelBox canvas = pen->layout->canvas;
  const SheetWriting *writing = pen->writing;

  if (!(box.x >= CLEAR && box.y >= CLEAR && box.x + box.width <= canvas.width - CLEAR &&
        box.y + box.height <= canvas.height - CLEAR))
    return false;
  for (unsigned i = 0; i < writing->n_claims; i++)
    if (do_overlap (writing->claims[i], box))
      return false;
  return writing->n_claims < SHEET_MOST_CLAIMS;
}

void
writing_claim (const SheetPen *pen, PixelBox box)
{
  SheetWriting *writing = pen->writing;

  if (writing->n_claims < SHEET_MOST_CLAIMS)
    writing->claims[writing->n_claims++] = box;
}

void
writing_displace (const SheetPen *pen, PixelBox box)
{
  SheetWriting *writing = pen->writing;
  unsigned n = 0;

  for (unsigned i = 0; i < writing->n_lines; i++) {
    const WrittenLine line = writing->lines[i];

    if (!do_overlap (writing_box (pen, line.left, line.width), box))
      writing->lines[n++] = line;
  }
  writing->n_lines = n;
  writing_claim (pen, box);
}

static void
add_line (const SheetPen *pen, WrittenLine line, const char *text)
{
  SheetWriting *writing = pen->writing;

  if (writing->n_lines >= SHEET_MOST_LINES)
    return;
  g_strlcpy (line.text, text, sizeof line.text);
  writing_claim (pen, writing_box (pen, line.left, line.width));
  writing->lines[writing->n_lines++] = line;
}

void
writing_add (const SheetPen *pen, const char *text, Pixel left, Colour colour)
{
  add_line (pen,
            (WrittenLine){ .left = left,
                           .width = writing_width (pen, text, TEXT_PLAIN),
                           .weight = TEXT_PLAIN,
                           .colour = colour },
            text);
}

bool
writing_try (
    const SheetPen *pen, const char *text, Pixel left, TextWeight weight, Colour colour)
{
  const double width = writing_width (pen, text, weight);

  if (!writing_has_room (pen, writing_box (pen, left, width)))
    return false;
  add_line (pen,
            (WrittenLine){
                .left = left, .width = width, .weight = weight, .colour = colour },
            text);
  return true;
}

void
writing_draw (const SheetPen *pen)
{
  const SheetWriting *writing = pen->writing;

  for (unsigned i = 0; i < writing->n_lines; i++) {
    const WrittenLine *line = &writing->lines[i];

    pen_patch (pen, line->left, line->width);
    theme_use (pen->cr, line->colour);
    text_draw (pen->texts, pen->cr, pen_style (pen, pen->theme->small_text, line->weight),
               line->text, line->left.x, line->left.y, (TextAnchor){ 0, 0.5 });
  }
}
