/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/card/fitting-card-frame.h"
#include "drawing/pen/axis.h"
#include "model/words/number-text.h"

#include <math.h>

#define LEAST_TICK_GAP 5.0 /* points between two marks of a scale */
#define MARK 4.0           /* points: a place that is indexed */
#define ARC_STEP 3.0       /* degrees */

static PlateSetting
on_scales (const FittingFrame *frame, double along, double across)
{
  return (PlateSetting){ .along = along,
                         .across = across,
                         .is_swapped = frame->answer->is_swapped };
}

static FittingPoint
at_scales (const FittingFrame *frame, double along, double across)
{
  return fitting_frame_place (frame, on_scales (frame, along, across));
}

/* A point @distance to the side of the way from @a to @b; positive to its left. */
static FittingPoint
beside (FittingPoint a, FittingPoint b, FittingPoint at, double distance)
{
  const double dx = b.x - a.x, dy = b.y - a.y, length = fmax (hypot (dx, dy), 1e-9);

  return (FittingPoint){ at.x + dy / length * distance, at.y - dx / length * distance };
}

/* The engraved scale from @a (@scale.least) to @b (@scale.most): marks at round values,
 * away from the plate's middle by @side. */
static void
draw_scale (
    FittingFrame *frame, PlateScale scale, FittingPoint a, FittingPoint b, double side)
{
  const FittingPen *pen = frame->pen;
  const double length = hypot (b.x - a.x, b.y - a.y), wide = scale.most - scale.least;
  int first;

  if (!(wide > 0.0))
    return;
  const AxisRange range =
      axis_range_exact (scale.least, scale.most, (int) fmax (length / LEAST_TICK_GAP, 1));
  const int n = axis_range_ticks (range, &first);

  theme_use (pen->cr, pen->theme.accent);
  theme_line (pen->cr, LINE_FULL, 0.7 * pen->theme.thin);
  for (int i = 0; i < n; i++) {
    const double t = ((first + i) * range.step - scale.least) / wide;
    const FittingPoint at = { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
    const FittingPoint end = beside (a, b, at, side * 3.0);

    cairo_move_to (pen->cr, at.x, at.y);
    cairo_line_to (pen->cr, end.x, end.y);
  }
  cairo_stroke (pen->cr);
}

/* An end of a scale that runs from @a to @b, on its own side; of a scale that stands
 * alone also past its end or on the other side. */
static void
label_end (FittingFrame *frame,
           double value,
           const FittingPoint way[2],
           FittingPoint end,
           double side,
           gboolean is_alone)
{
  const FittingPoint a = way[0], b = way[1];
  const double line = fitting_line_height (frame->pen, FITTING_SMALL);
  const double length = fmax (hypot (b.x - a.x, b.y - a.y), 1e-9);
  const double on = (end.x == b.x && end.y == b.y ? line : -line) / length;
  const double near = side * (4.0 + 0.5 * line);
  const FittingPoint past = { end.x + on * (b.x - a.x), end.y + on * (b.y - a.y) };
  const FittingPoint places[] = { past,
                                  beside (a, b, end, -near),
                                  beside (a, b, end, near),
                                  beside (a, b, past, near),
                                  beside (a, b, end, near + side * line),
                                  beside (a, b, past, near + side * line) };
  const guint n = G_N_ELEMENTS (places), first = is_alone ? 0 : 2;
  g_autofree char *text = plain_number_text (value);

  fitting_frame_label (frame, text, frame->pen->theme.accent, places + first, n - first);
}

static void
label_scale (FittingFrame *frame,
             PlateScale scale,
             FittingPoint a,
             FittingPoint b,
             double side,
             gboolean is_alone)
{
  const FittingPoint way[] = { a, b };

  if (!(scale.most > scale.least))
    return;
  label_end (frame, scale.least, way, a, side, is_alone);
  label_end (frame, scale.most, way, b, side, is_alone);
}

/* The side of a slot on which its scale stands. */
static double
slot_side (const FittingFrame *frame)
{
  return frame->side == SIDE_LEFT ? 1.0 : -1.0;
}

static void
draw_slot (FittingFrame *frame)
{
  const Plate *plate = frame->answer->plate;
  const FittingPen *pen = frame->pen;
  const FittingPoint a = at_scales (frame, plate->along.least, 0.0);
  const FittingPoint b = at_scales (frame, plate->along.most, 0.0);

  theme_use (pen->cr, colour_with_alpha (pen->theme.accent, 0.25));
  theme_line (pen->cr, LINE_FULL, 3.5 * pen->theme.line);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_ROUND);
  fitting_frame_line (frame, a, b);
  draw_scale (frame, plate->along, a, b, slot_side (frame));
}

static void
label_slot (FittingFrame *frame)
{
  const Plate *plate = frame->answer->plate;

  label_scale (frame, plate->along, at_scales (frame, plate->along.least, 0.0),
               at_scales (frame, plate->along.most, 0.0), slot_side (frame), TRUE);
}

/* Along from the first corner to the second, across from the first to the fourth.
 * Returns the side of the way along that lies outside. */
static double
find_corners (const FittingFrame *frame, FittingPoint corner[4])
{
  const PlateScale s = frame->answer->plate->along, t = frame->answer->plate->across;

  corner[0] = at_scales (frame, s.least, t.least);
  corner[1] = at_scales (frame, s.most, t.least);
  corner[2] = at_scales (frame, s.most, t.most);
  corner[3] = at_scales (frame, s.least, t.most);
  return (corner[1].x - corner[0].x) * (corner[3].y - corner[0].y) >
                 (corner[1].y - corner[0].y) * (corner[3].x - corner[0].x)
             ? 1.0
             : -1.0;
}

static void
draw_rectangle (FittingFrame *frame)
{
  const FittingPen *pen = frame->pen;
  FittingPoint corner[4];
  const double outside = find_corners (frame, corner);

  for (int i = 0; i < 4; i++)
    cairo_line_to (pen->cr, corner[i].x, corner[i].y);
  theme_use (pen->cr, colour_with_alpha (pen->theme.accent, 0.14));
  cairo_fill (pen->cr);
  theme_use (pen->cr, pen->theme.accent);
  theme_line (pen->cr, LINE_FULL, pen->theme.thin);
  for (int i = 0; i < 4; i++)
    fitting_frame_line (frame, corner[i], corner[(i + 1) % 4]);
  draw_scale (frame, frame->answer->plate->along, corner[0], corner[1], outside);
  draw_scale (frame, frame->answer->plate->across, corner[0], corner[3], -outside);
}

static void
label_rectangle (FittingFrame *frame)
{
  FittingPoint corner[4];
  const double outside = find_corners (frame, corner);

  label_scale (frame, frame->answer->plate->along, corner[0], corner[1], outside, FALSE);
  label_scale (frame, frame->answer->plate->across, corner[0], corner[3], -outside,
               FALSE);
}

static void
draw_mark (const FittingFrame *frame, FittingPoint at, gboolean is_set)
{
  const FittingPen *pen = frame->pen;

  theme_use (pen->cr, is_set ? pen->theme.accent : pen->theme.ground);
  cairo_arc (pen->cr, at.x, at.y, MARK / 2.0, 0.0, 2.0 * G_PI);
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, pen->theme.accent);
  theme_line (pen->cr, LINE_FULL, pen->theme.thin);
  cairo_stroke (pen->cr);
}

static FittingPoint
at_index (const FittingFrame *frame, guint place)
{
  return fitting_frame_place (frame,
                              (PlateSetting){ .place = place,
                                              .is_swapped = frame->answer->is_swapped });
}

static void
draw_indexed (FittingFrame *frame)
{
  const guint chosen = frame->answer->side[frame->side].setting.place;

  for (guint i = 0; i < plate_n_places (frame->answer->plate); i++) {
    draw_mark (frame, at_index (frame, i), i == chosen);
    fitting_frame_add_circle (frame, at_index (frame, i), MARK / 2.0);
  }
}

static void
label_holes (FittingFrame *frame)
{
  const Plate *plate = frame->answer->plate;
  g_autofree FittingMark *marks = g_new (FittingMark, plate->holes->len);

  for (guint i = 0; i < plate->holes->len; i++)
    marks[i] = (FittingMark){ at_index (frame, i),
                              g_array_index (plate->holes, PlateHole, i).label };
  fitting_frame_label_marks (frame, marks, plate->holes->len,
                             frame->answer->side[frame->side].setting.place);
}

/* Where the same plate would hold a bearing that is not off centre. */
static FittingPoint
circle_centre (const FittingFrame *frame)
{
  Plate centred = *frame->answer->plate;

  centred.kind = PLATE_FIXED;
  const MountOffset place =
      plate_place (&centred, (PlateSetting){ .is_swapped = frame->answer->is_swapped });
  return fitting_frame_point (frame, place.inboard, place.rearward);
}

static void
label_turn (FittingFrame *frame, double turn, FittingPoint at, Colour colour)
{
  g_autofree char *number = plain_number_text (turn);
  g_autofree char *text = g_strconcat (number, "°", NULL);

  fitting_frame_label_away (frame, text, colour, at, circle_centre (frame));
}

/* The one that is set comes first, so that it is named if any is. */
static void
label_turns (FittingFrame *frame)
{
  const GArray *turns = frame->answer->plate->turns_deg;
  const guint chosen = frame->answer->side[frame->side].setting.place;
  const Theme *theme = &frame->pen->theme;

  for (guint n = 0; n < turns->len; n++) {
    const guint i = n == 0 ? chosen : n <= chosen ? n - 1 : n;

    label_turn (frame, g_array_index (turns, double, i), at_index (frame, i),
                i == chosen ? theme->ink : theme->accent);
  }
}

/* Through the places themselves, so that a swapped plate's circle is drawn as it lies. */
static void
draw_arc (FittingFrame *frame)
{
  const FittingPen *pen = frame->pen;
  const Plate *plate = frame->answer->plate;
  const PlateScale turns = plate_along_range (plate);
  const int n = (int) ceil (fmax ((turns.most - turns.least) / ARC_STEP, 1.0));

  cairo_new_path (pen->cr);
  for (int i = 0; i <= n; i++) {
    const FittingPoint at =
        at_scales (frame, turns.least + (turns.most - turns.least) * i / n, 0.0);
    cairo_line_to (pen->cr, at.x, at.y);
  }
  theme_use (pen->cr, colour_with_alpha (pen->theme.accent, 0.25));
  theme_line (pen->cr, LINE_FULL, 2.0 * pen->theme.line);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_ROUND);
  cairo_stroke (pen->cr);
}

/* The ends of the range, or of a whole circle its zero. */
static void
label_arc (FittingFrame *frame)
{
  const PlateScale turns = plate_along_range (frame->answer->plate);
  const gboolean is_whole = turns.most - turns.least >= 360.0 - ARC_STEP;

  for (int end = 0; end < (is_whole ? 1 : 2); end++) {
    const double turn = end == 0 ? turns.least : turns.most;

    label_turn (frame, turn, at_scales (frame, turn, 0.0), frame->pen->theme.accent);
  }
}

void
fitting_reach_draw (FittingFrame *frame)
{
  const Plate *plate = frame->answer->plate;

  cairo_new_path (frame->pen->cr);
  if (plate->kind == PLATE_SLOT)
    draw_slot (frame);
  else if (plate->kind == PLATE_CROSSED_SLOTS)
    draw_rectangle (frame);
  else if (plate_n_ways (plate) == 1)
    draw_arc (frame);
  else if (plate->kind != PLATE_FIXED)
    draw_indexed (frame);
}

void
fitting_reach_label (FittingFrame *frame)
{
  const Plate *plate = frame->answer->plate;

  if (plate->kind == PLATE_SLOT)
    label_slot (frame);
  else if (plate->kind == PLATE_CROSSED_SLOTS)
    label_rectangle (frame);
  else if (plate->kind == PLATE_HOLES)
    label_holes (frame);
  else if (plate->turns_deg->len > 0)
    label_turns (frame);
  else if (plate->kind == PLATE_ECCENTRIC)
    label_arc (frame);
}
