/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-label.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

/* Pixels at ordinary type size. */
#define WORD_GAP 4.0
#define SMALL_SHEET 210.0
#define STACKED_LINE 14.0

Label
label_for (Quantity quantity, const char *word, gboolean with_sign, const Study *study)
{
  Label label = { word, "" };

  quantity_format_whole (quantity, study_in_hand (study)->now.measures.value[quantity],
                         with_sign, label.figure, sizeof label.figure);
  return label;
}

static double
label_width (const SheetPen *pen, const Label *label)
{
  const double figure = writing_width (pen, label->figure, TEXT_PLAIN);

  if (label->word[0] == '\0')
    return figure;
  return figure + WORD_GAP * pen->unit + writing_width (pen, label->word, TEXT_PLAIN);
}

static void
write_label (const SheetPen *pen, const Label *label, Pixel left)
{
  if (label->word[0] != '\0') {
    writing_add (pen, label->word, left, pen->theme->soft_ink);
    left.x += writing_width (pen, label->word, TEXT_PLAIN) + WORD_GAP * pen->unit;
  }
  writing_add (pen, label->figure, left, pen->theme->ink);
}

static bool
place_one (const SheetPen *pen,
           SheetViewName view,
           int quantity,
           const Label *label,
           const LabelSpot *spots,
           unsigned n_spots)
{
  const double width = label_width (pen, label);

  for (unsigned i = 0; i < n_spots; i++) {
    const Pixel left = pixel_add (spots[i].at, -spots[i].across * width, 0);

    if (!writing_has_room (pen, writing_box (pen, left, width)))
      continue;
    pen_shows (pen, view, quantity, left, pixel_add (left, width, 0));
    write_label (pen, label, left);
    return true;
  }
  return false;
}

bool
label_place (const SheetPen *pen,
             SheetViewName view,
             int quantity,
             const Label *label,
             const LabelSpot *spots,
             unsigned n_spots)
{
  Label figure = *label;

  if (place_one (pen, view, quantity, label, spots, n_spots))
    return true;
  figure.word = "";
  return label->word[0] != '\0' &&
         place_one (pen, view, quantity, &figure, spots, n_spots);
}

bool
label_place_stacked (const SheetPen *pen,
                     SheetViewName view,
                     int quantity,
                     const Label *label,
                     const LabelSpot *spots,
                     unsigned n_spots)
{
  const double line = STACKED_LINE * pen->unit;
  const double width = fmax (writing_width (pen, label->word, TEXT_PLAIN),
                             writing_width (pen, label->figure, TEXT_PLAIN));
  Label figure = *label;

  for (unsigned i = 0; i < n_spots; i++) {
    const Pixel left = pixel_add (spots[i].at, -spots[i].across * width, 0);
    PixelBox box = writing_box (pen, left, width);

    box.height += line;
    if (!writing_has_room (pen, box))
      continue;
    pen_shows (pen, view, quantity, left, pixel_add (left, width, 0));
    pen_shows (pen, view, quantity, pixel_add (left, 0, line),
               pixel_add (left, width, line));
    writing_add (pen, label->word, left, pen->theme->soft_ink);
    writing_add (pen, label->figure, pixel_add (left, 0, line), pen->theme->ink);
    return true;
  }
  figure.word = "";
  return place_one (pen, view, quantity, &figure, spots, n_spots);
}

const char *
label_word (const SheetPen *pen, const char *word)
{
  const double mount = pen->view->study->points.at[POINT_UPPER_MOUNT].y;

  return mount * pen->layout->scale < SMALL_SHEET * pen->unit ? "" : word;
}

MountOffset
mount_of_study (const Study *study)
{
  const Vec3 way = vec3_sub (study_in_hand (study)->corner.upper_mount,
                             study->measured.corner.upper_mount);

  return (MountOffset){ -way.y, -way.x, way.z };
}

static void
format_length (double mm, char *text, size_t size)
{
  unit_format (UNIT_LENGTH, fabs (mm), 1, FALSE, text, size);
  /* "in" would read as inboard */
  if (unit_choice ()->length == LENGTH_INCH)
    g_strlcat (text, "″", size);
}

void
inboard_text (double mm, char *text, size_t size)
{
  char figure[24];

  format_length (mm, figure, sizeof figure);
  if (unit_choice ()->length == LENGTH_INCH)
    g_snprintf (text, size,
                mm > -0.05 ? C_ ("mount", "%s inboard") : C_ ("mount", "%s outboard"),
                figure);
  else
    g_snprintf (text, size, mm > -0.05 ? C_ ("mount", "%s in") : C_ ("mount", "%s out"),
                figure);
}

void
rearward_text (double mm, char *text, size_t size)
{
  char figure[24];

  format_length (mm, figure, sizeof figure);
  g_snprintf (text, size,
              mm > -0.05 ? C_ ("mount", "%s back") : C_ ("mount", "%s forward"), figure);
}

void
up_text (double mm, char *text, size_t size)
{
  char figure[24];

  format_length (mm, figure, sizeof figure);
  g_snprintf (text, size, mm > -0.05 ? C_ ("mount", "%s up") : C_ ("mount", "%s down"),
              figure);
}

void
lowering_text (double mm, char *text, size_t size)
{
  char figure[24];

  unit_format_whole (UNIT_LENGTH, fabs (mm), 1, FALSE, figure, sizeof figure);
  g_snprintf (text, size,
              mm > -0.05 ? C_ ("height", "lowered %s") : C_ ("height", "raised %s"),
              figure);
}

void
mount_text (MountOffset mount, char *text, size_t size)
{
  char in[40], back[40], up[40];

  inboard_text (mount.inboard, in, sizeof in);
  rearward_text (mount.rearward, back, sizeof back);
  up_text (mount.up, up, sizeof up);
  g_snprintf (text, size, "%s · %s · %s", in, back, up);
}
