/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The box is shared out: a strip below for the inboard dimension and the two arrows, a
 * strip on the inboard side for the rearward dimension, and the rest for what is drawn to
 * scale. Dimensions: ISO 129. */

#include "drawing/card/fitting-card-plan.h"

#include "drawing/card/fitting-card-frame.h"
#include "drawing/pen/axis.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define POINTS_PER_MM (72.0 / 25.4)
#define AROUND 6.0     /* points kept free around what is drawn to scale */
#define ARROW_HEAD 5.0 /* points */
#define AXES 20.0      /* points: how long the two arrows are */
#define NOTHING 0.05   /* mm: reads as nothing at a tenth */
#define CROSS 4.0      /* mm either way: the mount as measured */

double
fitting_plan_points_per_mm (int scale)
{
  return POINTS_PER_MM / scale;
}

/* mm, inboard and rearward from the mount as measured. */
typedef struct {
  double inboard_from, inboard_to, rearward_from, rearward_to;
} Extent;

static void
include_circle (Extent *e, double inboard, double rearward, double radius)
{
  e->inboard_from = fmin (e->inboard_from, inboard - radius);
  e->inboard_to = fmax (e->inboard_to, inboard + radius);
  e->rearward_from = fmin (e->rearward_from, rearward - radius);
  e->rearward_to = fmax (e->rearward_to, rearward + radius);
}

static void
include_place (Extent *e, const ChoiceAnswer *answer, PlateSetting setting)
{
  setting.is_swapped = answer->is_swapped;

  const MountOffset place = plate_place (answer->plate, setting);
  include_circle (e, place.inboard, place.rearward, 1.0);
}

static void
include_reach (Extent *e, const ChoiceAnswer *answer)
{
  const Plate *plate = answer->plate;
  const PlateScale along = plate_along_range (plate);
  const PlateScale across = plate_across_range (plate);
  const int n = 36; /* of a circle, a turn that is wide enough to miss nothing */

  for (guint i = 0; i < plate_n_places (plate); i++)
    include_place (e, answer, (PlateSetting){ .place = i });
  if (plate_n_ways (plate) == 0)
    return;
  for (int i = 0; i <= n; i++)
    for (int j = 0; j < 2; j++)
      include_place (e, answer,
                     (PlateSetting){ .along =
                                         along.least + (along.most - along.least) * i / n,
                                     .across = j == 0 ? across.least : across.most });
}

static Extent
extent_of (const Car *car, const ChoiceAnswer *answer, CarSide side)
{
  const CarTower *tower = &car->tower;
  const MountOffset *mount = &answer->side[side].mount;
  Extent e = { -CROSS, CROSS, -CROSS, CROSS };

  if (tower->opening_diameter_mm > 0.0)
    include_circle (&e, tower->opening_inboard_mm, tower->opening_rearward_mm,
                    tower->opening_diameter_mm / 2.0);
  include_reach (&e, answer);
  include_circle (&e, mount->inboard, mount->rearward,
                  fmax (answer->plate->bearing_diameter_mm / 2.0, CROSS));
  return e;
}

static char *
length_text (double mm)
{

  return unit_text (UNIT_LENGTH, fabs (mm), 1);
}

static const char *
lengthways_word (double rearward)
{
  return rearward < 0.0 ? C_ ("plan", "forward") : C_ ("plan", "rearward");
}

static double
side_strip (const FittingPen *pen, const ChoiceAnswer *answer)
{
  double width = 0.0;

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const double rearward = answer->side[side].mount.rearward;
    g_autofree char *length = length_text (rearward);

    width =
        fmax (width,
              fmax (fitting_text_width (pen, FITTING_SMALL, length),
                    fitting_text_width (pen, FITTING_SMALL, lengthways_word (rearward))));
  }
  return width + 2.0 * ARROW_HEAD + AROUND;
}

static double
bottom_strip (const FittingPen *pen)
{
  return fmax (AXES + 0.6 * fitting_line_height (pen, FITTING_SMALL),
               ARROW_HEAD + 2.0 + fitting_line_height (pen, FITTING_SMALL)) +
         2.0 * AROUND;
}

/* Where the drawing itself may stand, as on the left side. */
static FittingBox
room_of (const FittingPen *pen, const ChoiceAnswer *answer, FittingBox box)
{
  const double strip = side_strip (pen, answer);

  return (FittingBox){ box.x + strip, box.y + AROUND, box.width - strip - AROUND,
                       box.height - bottom_strip (pen) - 2.0 * AROUND };
}

int
fitting_plan_scale (const FittingPen *pen,
                    const Car *car,
                    const ChoiceAnswer *answer,
                    FittingBox box)
{
  static const int scales[] = { 1, 2, 5, 10, 20, 50 };
  const FittingBox room = room_of (pen, answer, box);

  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++) {
    const double per_mm = fitting_plan_points_per_mm (scales[i]);
    gboolean fits = TRUE;

    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
      const Extent e = extent_of (car, answer, side);
      fits = fits && (e.inboard_to - e.inboard_from) * per_mm <= room.width &&
             (e.rearward_to - e.rearward_from) * per_mm <= room.height;
    }
    if (fits)
      return scales[i];
  }
  return scales[G_N_ELEMENTS (scales) - 1];
}

/* The drawing in the middle of its room. */
static FittingFrame
frame_for (const FittingPen *pen,
           const Car *car,
           const ChoiceAnswer *answer,
           CarSide side,
           int scale,
           FittingBox box)
{
  const FittingBox room = room_of (pen, answer, box);
  const Extent e = extent_of (car, answer, side);
  FittingFrame frame = { .pen = pen,
                         .answer = answer,
                         .side = side,
                         .box = box,
                         .per_mm = fitting_plan_points_per_mm (scale) };
  const double out = fitting_frame_outboard (&frame);
  const double middle = room.x + room.width / 2.0;

  /* the right side's room is the left one's in a mirror */
  frame.origin_x = (out > 0.0 ? middle : 2.0 * box.x + box.width - middle) +
                   out * (e.inboard_from + e.inboard_to) / 2.0 * frame.per_mm;
  frame.origin_y =
      room.y + room.height / 2.0 + (e.rearward_from + e.rearward_to) / 2.0 * frame.per_mm;
  return frame;
}

static void
draw_circle (FittingFrame *frame, double inboard, double rearward, double radius)
{
  const FittingPoint at = fitting_frame_point (frame, inboard, rearward);

  fitting_frame_add_circle (frame, at, radius * frame->per_mm);
  cairo_new_path (frame->pen->cr);
  cairo_arc (frame->pen->cr, at.x, at.y, radius * frame->per_mm, 0.0, 2.0 * G_PI);
  cairo_stroke (frame->pen->cr);
}

static void
draw_tower (FittingFrame *frame, const Car *car)
{
  const CarTower *tower = &car->tower;
  const FittingPen *pen = frame->pen;

  if (!(tower->opening_diameter_mm > 0.0))
    return;
  theme_use (pen->cr, pen->theme.body);
  theme_line (pen->cr, LINE_FULL, pen->theme.thick);
  draw_circle (frame, tower->opening_inboard_mm, tower->opening_rearward_mm,
               tower->opening_diameter_mm / 2.0);
}

static void
draw_cross (FittingFrame *frame, FittingPoint at, double half)
{
  fitting_frame_line (frame, (FittingPoint){ at.x - half, at.y },
                      (FittingPoint){ at.x + half, at.y });
  fitting_frame_line (frame, (FittingPoint){ at.x, at.y - half },
                      (FittingPoint){ at.x, at.y + half });
}

static void
draw_measured (FittingFrame *frame)
{
  const FittingPen *pen = frame->pen;

  theme_use (pen->cr, pen->theme.reference);
  theme_line (pen->cr, LINE_DASHED, pen->theme.thin);
  cairo_set_dash (pen->cr, (double[]){ 3.0, 1.5 }, 2, 0.0);
  draw_cross (frame, fitting_frame_point (frame, 0.0, 0.0), CROSS * frame->per_mm + 3.0);
  cairo_set_dash (pen->cr, NULL, 0, 0.0);
}

static void
draw_bearing (FittingFrame *frame)
{
  const FittingPen *pen = frame->pen;
  const MountOffset *mount = &frame->answer->side[frame->side].mount;
  const FittingPoint at = fitting_frame_point (frame, mount->inboard, mount->rearward);

  theme_use (pen->cr, pen->theme.ink);
  theme_line (pen->cr, LINE_FULL, pen->theme.thin);
  if (frame->answer->plate->bearing_diameter_mm > 0.0)
    draw_circle (frame, mount->inboard, mount->rearward,
                 frame->answer->plate->bearing_diameter_mm / 2.0);
  draw_cross (frame, at, 7.0);
  theme_use (pen->cr, pen->theme.accent);
  cairo_arc (pen->cr, at.x, at.y, 2.4, 0.0, 2.0 * G_PI);
  cairo_fill (pen->cr);
}

/* Its point at @tip, coming from (@dx, @dy), a unit vector. */
static void
draw_head (cairo_t *cr, FittingPoint tip, double dx, double dy)
{
  const double slim = 0.18;

  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, tip.x - ARROW_HEAD * (dx - slim * dy),
                 tip.y - ARROW_HEAD * (dy + slim * dx));
  cairo_line_to (cr, tip.x - ARROW_HEAD * (dx + slim * dy),
                 tip.y - ARROW_HEAD * (dy - slim * dx));
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* The dimension line from @a to @b; where it is short its arrows stand outside. */
static void
draw_dimension (const FittingPen *pen, FittingPoint a, FittingPoint b)
{
  const double length = hypot (b.x - a.x, b.y - a.y);
  const double dx = (b.x - a.x) / length, dy = (b.y - a.y) / length;
  const gboolean is_short = length < 2.5 * ARROW_HEAD;
  const double tail = is_short ? 1.8 * ARROW_HEAD : 0.0, way = is_short ? -1.0 : 1.0;

  cairo_move_to (pen->cr, a.x - tail * dx, a.y - tail * dy);
  cairo_line_to (pen->cr, b.x + tail * dx, b.y + tail * dy);
  cairo_stroke (pen->cr);
  draw_head (pen->cr, a, -way * dx, -way * dy);
  draw_head (pen->cr, b, way * dx, way * dy);
}

static void
use_thin (const FittingPen *pen)
{
  theme_use (pen->cr, pen->theme.ink);
  theme_line (pen->cr, LINE_FULL, 0.6 * pen->theme.thin);
}

/* Below the drawing; its text between the box's edge and @limit, where the arrows are. */
static void
dimension_inboard (FittingFrame *frame, double bottom, double limit)
{
  const FittingPen *pen = frame->pen;
  const MountOffset *mount = &frame->answer->side[frame->side].mount;
  const double inboard = mount->inboard, out = fitting_frame_outboard (frame);
  const double y = bottom + ARROW_HEAD;
  const FittingPoint from = fitting_frame_point (frame, 0.0, 0.0);
  const FittingPoint to = fitting_frame_point (frame, inboard, mount->rearward);
  g_autofree char *length = length_text (inboard);
  g_autofree char *text =
      g_strdup_printf ("%s %s", length,
                       inboard < 0.0 ? C_ ("plan", "outboard") : C_ ("plan", "inboard"));

  if (fabs (inboard) < NOTHING)
    return;
  use_thin (pen);
  fitting_frame_line (frame, (FittingPoint){ from.x, from.y + 8.0 },
                      (FittingPoint){ from.x, y + 2.0 });
  fitting_frame_line (frame, (FittingPoint){ to.x, to.y + 8.0 },
                      (FittingPoint){ to.x, y + 2.0 });
  draw_dimension (pen, (FittingPoint){ from.x, y }, (FittingPoint){ to.x, y });

  const double width = fitting_text_width (pen, FITTING_SMALL, text);
  const double low = out > 0.0 ? frame->box.x : limit;
  const double high = out > 0.0 ? limit : frame->box.x + frame->box.width;
  const double x = fmax (low, fmin ((from.x + to.x - width) / 2.0, high - width));
  fitting_write (pen, FITTING_SMALL, text, x,
                 y + 2.0 + 0.9 * fitting_line_height (pen, FITTING_SMALL), high - x,
                 FITTING_LEFT);
}

/* On the inboard side of the drawing. */
static void
dimension_rearward (FittingFrame *frame, double strip)
{
  const FittingPen *pen = frame->pen;
  const MountOffset *mount = &frame->answer->side[frame->side].mount;
  const double out = fitting_frame_outboard (frame),
               line = fitting_line_height (pen, FITTING_SMALL);
  const double edge = out > 0.0 ? frame->box.x : frame->box.x + frame->box.width;
  const double x = edge + out * (strip - AROUND - ARROW_HEAD);
  const FittingPoint from = fitting_frame_point (frame, 0.0, 0.0);
  const FittingPoint to = fitting_frame_point (frame, mount->inboard, mount->rearward);
  g_autofree char *length = length_text (mount->rearward);

  if (fabs (mount->rearward) < NOTHING)
    return;
  use_thin (pen);
  fitting_frame_line (frame, (FittingPoint){ from.x - out * 8.0, from.y },
                      (FittingPoint){ x - out * 2.0, from.y });
  fitting_frame_line (frame, (FittingPoint){ to.x - out * 8.0, to.y },
                      (FittingPoint){ x - out * 2.0, to.y });
  draw_dimension (pen, (FittingPoint){ x, from.y }, (FittingPoint){ x, to.y });

  const double width = strip - AROUND - 2.0 * ARROW_HEAD;
  const double left = out > 0.0 ? edge : edge - width;
  const double middle = (from.y + to.y) / 2.0;
  const FittingAlign align = out > 0.0 ? FITTING_RIGHT : FITTING_LEFT;
  fitting_write (pen, FITTING_SMALL, length, left, middle - 0.15 * line, width, align);
  fitting_write (pen, FITTING_SMALL, lengthways_word (mount->rearward), left,
                 middle + 0.85 * line, width, align);
  fitting_frame_take (frame,
                      (FittingBox){ left, middle - 1.2 * line, width, 2.4 * line });
}

/* Which way is which, in the lower corner on the outboard side. Returns the edge of its
 * room. */
static double
draw_axes (const FittingFrame *frame, double top)
{
  const FittingPen *pen = frame->pen;
  const double out = fitting_frame_outboard (frame);
  const char *outboard = C_ ("plan", "outboard"), *forward = C_ ("plan", "forward");
  const double words = fmax (fitting_text_width (pen, FITTING_SMALL, outboard),
                             fitting_text_width (pen, FITTING_SMALL, forward));
  const double width = fmin (words + AXES + 3.0, 0.45 * frame->box.width);
  const double corner =
      (out > 0.0 ? frame->box.x + frame->box.width : frame->box.x) - out * width;
  const double middle = 0.36 * pen->theme.small_text;
  const FittingPoint o = { corner, top + middle + 1.0 };
  const FittingAlign align = out > 0.0 ? FITTING_LEFT : FITTING_RIGHT;
  const double room = width - AXES - 3.0;

  theme_use (pen->cr, pen->theme.soft_ink);
  theme_line (pen->cr, LINE_FULL, pen->theme.thin);
  cairo_move_to (pen->cr, o.x + out * AXES, o.y);
  cairo_line_to (pen->cr, o.x, o.y);
  cairo_line_to (pen->cr, o.x, o.y + AXES);
  cairo_stroke (pen->cr);
  draw_head (pen->cr, (FittingPoint){ o.x + out * (AXES + 2.0), o.y }, out, 0.0);
  draw_head (pen->cr, (FittingPoint){ o.x, o.y + AXES + 2.0 }, 0.0, 1.0);

  const double words_x = o.x + out * (AXES + 3.0);
  fitting_write (pen, FITTING_SMALL, outboard, out > 0.0 ? words_x : words_x - room,
                 o.y + middle, room, align);
  const double below = o.x + out * 4.0;
  fitting_write (pen, FITTING_SMALL, forward, out > 0.0 ? below : below - words,
                 o.y + AXES, width - 4.0 > words ? words * 1.01 : width - 4.0, align);
  return corner - out * AROUND;
}

/* Outside its edge, a quarter of the way round; or inside. */
static void
label_tower (FittingFrame *frame, const CarTower *tower)
{
  const double radius = tower->opening_diameter_mm / 2.0 * frame->per_mm;
  const FittingPoint centre =
      fitting_frame_point (frame, tower->opening_inboard_mm, tower->opening_rearward_mm);
  g_autofree char *number = unit_text (UNIT_LENGTH, tower->opening_diameter_mm, 0);
  g_autofree char *text = g_strdup_printf (C_ ("plan", "tower ⌀ %s"), number);
  const double line = fitting_line_height (frame->pen, FITTING_SMALL);
  const double out = fitting_frame_outboard (frame);
  const double diagonal = 0.72 * radius;
  const double aside =
      diagonal + 6.0 + fitting_text_width (frame->pen, FITTING_SMALL, text) / 2.0;
  const FittingPoint places[] = { { centre.x + out * aside, centre.y - diagonal },
                                  { centre.x + out * aside, centre.y + diagonal },
                                  { centre.x - out * aside, centre.y - diagonal },
                                  { centre.x - out * aside, centre.y + diagonal },
                                  { centre.x, centre.y - radius + line },
                                  { centre.x, centre.y + radius - line } };
  fitting_frame_label (frame, text, frame->pen->theme.soft_ink, places,
                       G_N_ELEMENTS (places));
}

void
fitting_plan_draw (const FittingPen *pen,
                   const Car *car,
                   const ChoiceAnswer *answer,
                   CarSide side,
                   int scale,
                   FittingBox box)
{
  FittingFrame frame = frame_for (pen, car, answer, side, scale, box);
  const double bottom = box.y + box.height - bottom_strip (pen);

  if (pen->cr == NULL)
    return;
  cairo_save (pen->cr);
  draw_tower (&frame, car);
  fitting_frame_take (&frame,
                      (FittingBox){ box.x, bottom, box.width, bottom_strip (pen) });
  fitting_reach_draw (&frame);
  draw_measured (&frame);
  draw_bearing (&frame);
  dimension_rearward (&frame, side_strip (pen, answer));
  dimension_inboard (&frame, bottom, draw_axes (&frame, bottom + AROUND));
  fitting_reach_label (&frame);
  if (car->tower.opening_diameter_mm > 0.0)
    label_tower (&frame, &car->tower);
  cairo_restore (pen->cr);
}
