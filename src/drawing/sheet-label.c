/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet-label.h"
#include "model/quantity-info.h"

#include <glib/gi18n-lib.h>

/* Pixels at ordinary type size. */
#define WORD_GAP 4.0
#define SMALL_SHEET 210.0

Label
label_for (Quantity quantity, const char *word, gboolean with_sign, const Study *study)
{
  const QuantityInfo info = quantity_info (quantity);
  const char *gap = g_str_equal (info.unit, "°") ? "" : " ";
  Label label = { word, "" };
  char figure[24];

  quantity_format (quantity, study_in_hand (study)->now.measures.value[quantity],
                   with_sign, figure, sizeof figure);
  g_snprintf (label.figure, sizeof label.figure, "%s%s%s", figure, gap, info.unit);
  return label;
}

static double
label_width (const SheetPen *pen, const Label *label)
{
  const TextStyle style = pen_style (pen, pen->theme->small_text, TEXT_PLAIN);
  const double figure = text_measure (pen->texts, style, label->figure).width;

  if (label->word[0] == '\0')
    return figure;
  return figure + WORD_GAP * pen->unit +
         text_measure (pen->texts, style, label->word).width;
}

void
label_draw (const SheetPen *pen,
            SheetViewName view,
            int quantity,
            const Label *label,
            Pixel at,
            double across)
{
  const double width = label_width (pen, label);
  Pixel left = { at.x - across * width, at.y };

  pen_patch (pen, left, width);
  pen_shows (pen, view, quantity, left, pixel_add (left, width, 0));
  if (label->word[0] != '\0')
    left.x += pen_text (pen, label->word, left, pen->theme->soft_ink).width +
              WORD_GAP * pen->unit;
  pen_text (pen, label->figure, left, pen->theme->ink);
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
  quantity_format (QUANTITY_STRUT_LENGTH, fabs (mm), FALSE, text, size);
}

void
inboard_text (double mm, char *text, size_t size)
{
  char figure[24];

  format_length (mm, figure, sizeof figure);
  g_snprintf (text, size,
              mm > -0.05 ? C_ ("mount", "%s in") : C_ ("mount", "%s out"), figure);
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
  g_snprintf (text, size,
              mm > -0.05 ? C_ ("mount", "%s up") : C_ ("mount", "%s down"), figure);
}

void
lowering_text (double mm, char *text, size_t size)
{
  char figure[24];

  format_length (mm, figure, sizeof figure);
  g_snprintf (text, size,
              mm > -0.05
              ? C_ ("height", "lowered %s mm") : C_ ("height", "raised %s mm"), figure);
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
