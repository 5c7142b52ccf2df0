/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The last page, to be written on under the car: a box for each coordinate of each side
 * with the tolerance in its corner, and lines for what goes with them. */

#include "drawing/guide/guide-private.h"

#include "model/words/point-words.h"

#include <glib/gi18n-lib.h>

#define GAP 5.0         /* points between a text and the next */
#define NAME_SHARE 0.25 /* of the page's width */

static double
box_width (const GuidePage *page)
{
  return (1.0 - NAME_SHARE) * page->width / 6.0;
}

static double
box_left (const GuidePage *page, CarSide side, int axis)
{
  return page->x + NAME_SHARE * page->width + (3.0 * side + axis) * box_width (page);
}

/* The other side is measured outward too. */
static const char *
axis_name (CarSide side, int axis)
{
  return side == SIDE_RIGHT && axis == 1 ? _ ("y right") : point_axis_name ((guint) axis);
}

static void
draw_record_head (GuidePage *page)
{
  const FittingPen *pen = &page->pen;
  const double line = fitting_line_height (pen, FITTING_TEXT);
  const char *const sides[] = { _ ("Left side"), _ ("Right side") };

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    fitting_ink (pen, pen->theme.ink);
    fitting_write (pen, FITTING_TEXT_BOLD, sides[side], box_left (page, side, 0) + GAP,
                   page->y + 0.8 * line, 3.0 * box_width (page) - GAP, FITTING_LEFT);
    fitting_ink (pen, pen->theme.soft_ink);
    for (int axis = 0; axis < 3; axis++)
      fitting_write (pen, FITTING_SMALL, axis_name (side, axis),
                     box_left (page, side, axis) + GAP, page->y + 1.75 * line,
                     box_width (page) - GAP, FITTING_LEFT);
  }
  page->y += 2.1 * line;
}

static void
draw_box (const GuidePage *page, PointName point, CarSide side, int axis, double height)
{
  const FittingPen *pen = &page->pen;
  const double left = box_left (page, side, axis);
  g_autofree char *tolerance = guide_tolerance (page->guide, point, axis);

  if (pen->cr == NULL)
    return;
  theme_use (pen->cr, pen->theme.body);
  theme_line (pen->cr, LINE_FULL, 0.7 * pen->theme.thin);
  cairo_rectangle (pen->cr, left, page->y, box_width (page), height);
  cairo_stroke (pen->cr);
  fitting_ink (pen, pen->theme.soft_ink);
  fitting_write (pen, FITTING_SMALL, tolerance, left + 2.0, page->y + height - 3.5,
                 box_width (page) - 2.0 - GAP / 2.0, FITTING_RIGHT);
}

static void
draw_record (GuidePage *page)
{
  const FittingPen *pen = &page->pen;
  const double height = 2.9 * fitting_line_height (pen, FITTING_TEXT);

  draw_record_head (page);
  for (PointName point = 0; point < N_POINTS; point++) {
    g_autofree char *name = g_strdup_printf ("%u  %s", point + 1, point_title (point));

    fitting_ink (pen, pen->theme.ink);
    fitting_paragraph (pen, FITTING_TEXT_BOLD, name, page->x, page->y + 0.2 * height,
                       NAME_SHARE * page->width - GAP);
    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
      for (int axis = 0; axis < 3; axis++)
        draw_box (page, point, side, axis, height);
    page->y += height;
  }
}

/* A name and a line to write on, in one of @n columns. */
static void
draw_blank (const GuidePage *page, const char *name, int column, int n, double baseline)
{
  const FittingPen *pen = &page->pen;
  const double share = page->width / n, x = page->x + column * share;

  fitting_ink (pen, pen->theme.soft_ink);
  const double wide =
      fitting_write (pen, FITTING_SMALL, name, x, baseline, 0.7 * share, FITTING_LEFT);
  fitting_blank (pen, x + wide + GAP, baseline, share - wide - 3.0 * GAP);
}

static void
draw_blanks (GuidePage *page, const char *const *names, int n)
{
  const double line = 2.0 * fitting_line_height (&page->pen, FITTING_TEXT);

  for (int i = 0; i < n; i++)
    draw_blank (page, names[i], i, n, page->y + 0.75 * line);
  page->y += line;
}

void
guide_record_page (GuidePage *page)
{
  const char *const signature[] = { _ ("Car"), _ ("Measured by"), _ ("Date") };
  const char *const left[] = { _ ("Camber left"), _ ("Toe-in left"),
                               _ ("Loaded radius left") };
  const char *const right[] = { _ ("Camber right"), _ ("Toe-in right"),
                                _ ("Loaded radius right") };
  const char *const wings[] = { _ ("Wing, front left"), _ ("Wing, front right"),
                                _ ("Wing, rear left"), _ ("Wing, rear right") };

  fitting_ink (&page->pen, page->pen.theme.ink);
  guide_line (page, FITTING_HEADING, _ ("To write down"));
  draw_blanks (page, signature, G_N_ELEMENTS (signature));
  draw_blanks (page, wings, G_N_ELEMENTS (wings));
  draw_blanks (page, left, G_N_ELEMENTS (left));
  draw_blanks (page, right, G_N_ELEMENTS (right));
  page->y += GUIDE_GAP;
  draw_record (page);
  page->y += GUIDE_GAP;
  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  guide_paragraph (
      page, FITTING_SMALL,
      _ ("Millimetres and degrees. In the corner of each box: how closely it has "
         "to be measured, in millimetres. On the right side y counts to the "
         "right, or is written with a minus in the car’s file. Measure each "
         "length twice, the second time after the car has been rolled, and "
         "take anew what differs by more than its tolerance."));
  page->y += GUIDE_GAP;
  guide_paragraph (page, FITTING_SMALL, guide_caution ());
}
