/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/guide/guide-private.h"

#include "model/study/quantity-info.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define GAP 3.0 /* points between two columns */

static const char *const axes[] = { "x", "y", "z" };

static double
coordinate (const MeasuringGuide *guide, PointName point, int axis)
{
  const Vec3 at = guide->car->points[point];

  return axis == 0 ? at.x : axis == 1 ? at.y : at.z;
}

/* The columns of what an error does: letter, as in the file, four effects, tolerance. */
enum {
  COLUMN_AXIS,
  COLUMN_FILE,
  COLUMN_EFFECT,
  COLUMN_TOLERANCE = COLUMN_EFFECT + N_SENSITIVE,
  N_COLUMNS
};

static const double shares[N_COLUMNS] = { 0.03, 0.15, 0.135, 0.13, 0.135, 0.19, 0.23 };

static double
column_left (double x, double width, int column)
{
  double left = x;

  for (int i = 0; i < column; i++)
    left += shares[i] * width;
  return left;
}

static void
write_cell (const GuidePage *page,
            FittingStyle style,
            const char *text,
            double x,
            double width,
            int column,
            double baseline)
{
  const double left = column_left (x, width, column);
  const double wide = shares[column] * width - GAP;

  if (column == COLUMN_AXIS)
    fitting_write (&page->pen, style, text, left, baseline, wide, FITTING_LEFT);
  else
    fitting_write (&page->pen, style, text, left + GAP, baseline, wide, FITTING_RIGHT);
}

static const char *
head_of (int column)
{
  switch (column) {
  case COLUMN_AXIS:
    return "";
  case COLUMN_FILE:
    return _ ("in file");
  case COLUMN_TOLERANCE:
    return _ ("keep within");
  default:
    return quantity_info (sensitive_quantity ((Sensitive) (column - COLUMN_EFFECT)))
        .short_name;
  }
}

static char *
unit_of (int column)
{
  if (column == COLUMN_AXIS)
    return g_strdup ("");
  if (column == COLUMN_FILE || column == COLUMN_TOLERANCE)
    return g_strdup ("mm");
  /* the effect of a millimetre: "°/mm" */
  return g_strconcat (quantity_info (
                          sensitive_quantity ((Sensitive) (column - COLUMN_EFFECT)))
                          .unit,
                      "/mm", NULL);
}

static char *
cell_of (const MeasuringGuide *guide, PointName point, int axis, int column)
{
  if (column == COLUMN_AXIS)
    return g_strdup (axes[axis]);
  if (column == COLUMN_FILE)
    return number_text (coordinate (guide, point, axis), 1);
  if (column == COLUMN_TOLERANCE)
    return guide_tolerance (guide, point, axis);
  if (!guide->is_computed)
    return g_strdup ("–");
  const Sensitive effect = (Sensitive) (column - COLUMN_EFFECT);
  const double per_mm = guide->sensitivity.points[point].per_mm[effect][axis];
  return number_text (per_mm, effect == SENSITIVE_ROLL_CENTRE ? 2 : 3);
}

static double
draw_head (const GuidePage *page, double x, double y, double width)
{
  const double line = fitting_line_height (&page->pen, FITTING_SMALL);

  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  for (int column = 0; column < N_COLUMNS; column++) {
    g_autofree char *unit = unit_of (column);

    write_cell (page, FITTING_SMALL, head_of (column), x, width, column, y + 0.8 * line);
    write_cell (page, FITTING_SMALL, unit, x, width, column, y + 1.8 * line);
  }
  fitting_ink (&page->pen, page->pen.theme.ink);
  fitting_rule (&page->pen, x, y + 2.2 * line, width, page->pen.theme.thin);
  return 2.2 * line;
}

double
guide_error_table (
    const GuidePage *page, PointName point, double x, double y, double width)
{
  const double line = fitting_line_height (&page->pen, FITTING_TEXT);
  double top = y + draw_head (page, x, y, width) + 1.0;

  for (int axis = 0; axis < 3; axis++) {
    for (int column = 0; column < N_COLUMNS; column++) {
      g_autofree char *text = cell_of (page->guide, point, axis, column);
      const gboolean is_strong = column == COLUMN_AXIS || column == COLUMN_TOLERANCE;

      write_cell (page, is_strong ? FITTING_TEXT_BOLD : FITTING_TEXT, text, x, width,
                  column, top + 0.8 * line);
    }
    top += line;
  }
  return top - y;
}
