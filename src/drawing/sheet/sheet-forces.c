/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-forces.h"
#include "drawing/pen/axis.h"
#include "drawing/sheet/sheet-label.h"
#include "drawing/sheet/sheet-parts.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>

/* Pixels at ordinary type size. */
#define BAR 100.0         /* of the scale */
#define SMALL_SHEET 130.0 /* from centre plane to mount */
#define LINE 14.0         /* of small text */
#define BESIDE 8.0        /* text from an arrow's tip */
#define LEAST 6.0         /* an arrow that is shorter says nothing and is left out */
#define SHARE 0.34        /* of the front view's height that the longest arrow may take */
#define ROOM 36.0 /* for the longest arrow even where the canvas ends before that */
#define EDGE 4.0  /* kept free of arrows, along the canvas */
#define HEAD 10.0 /* of an arrow */
#define HEAD_HALF 3.6
#define REACH 2.2       /* of the free line, in lengths from mount to ball joint */
#define BY_STRUT 0.25   /* of the road's load: with less on the strut, no line */
#define LEAST_FORCE 0.5 /* N: what rounds to nothing is not drawn */

typedef struct {
  Vec3 at, force;
  const char *word;    /* translated */
  gboolean ends_there; /* its tip is at the joint, as the road pushes the tyre */
  gboolean is_on_body;
} Arrow;

#define MOST_ARROWS 8

static unsigned
list_arrows (const SheetPen *pen, SheetViewName view, Arrow *arrows)
{
  const JointLoads *loads = pen->view->loads;
  const JointForces *f = &loads->forces;
  const StudyCorner *corner = study_in_hand (pen->view->study);
  const ArmPivots pivots = parts_arm_pivots (pen->view->study, corner);
  const Vec3 middle = vec3_scale (vec3_add (pivots.front, pivots.rear), 0.5);
  const Vec3 both = vec3_add (f->along_hinge, vec3_add (f->front_pivot, f->rear_pivot));
  const Arrow whole[] = {
    { pose_contact (&corner->corner, &loads->pose), loads->load.contact, _ ("road"), TRUE,
      FALSE },
    { loads->pose.wheel_centre, loads->load.wheel_centre, _ ("wheel's weight"), FALSE,
      FALSE },
    { corner->corner.upper_mount, f->tower, _ ("on the tower"), FALSE, TRUE },
    { loads->pose.tie_rod_inner, f->tie_rod_on_rack, _ ("on the rack"), FALSE, TRUE },
  };
  unsigned n = 0;

  for (unsigned i = 0; i < G_N_ELEMENTS (whole); i++)
    arrows[n++] = whole[i];
  if (view == SHEET_FRONT) {
    arrows[n++] = (Arrow){ middle, both, _ ("on the arm's pivots"), FALSE, TRUE };
    return n;
  }
  arrows[n++] = (Arrow){ pivots.front, f->front_pivot, _ ("front pivot"), FALSE, TRUE };
  arrows[n++] = (Arrow){ pivots.rear, f->rear_pivot, _ ("rear pivot"), FALSE, TRUE };
  return n;
}

/* In the plane of the view: right and down, N. */
static Pixel
force_in_view (SheetViewName view, Vec3 force)
{
  return view == SHEET_FRONT  ? (Pixel){ force.y, -force.z }
         : view == SHEET_SIDE ? (Pixel){ force.x, -force.z }
                              : (Pixel){ force.y, force.x };
}

/* Where arrows of a view may end. */
static PixelBox
room_for_arrows (const SheetPen *pen, SheetViewName view)
{
  const SheetLayout *l = pen->layout;
  const double edge = EDGE * pen->unit, line = LINE * pen->unit;
  const double top = l->caption[view].y + line + edge;
  const double bottom =
      view == SHEET_PLAN ? l->canvas.height - edge : l->caption[SHEET_PLAN].y - edge;

  return (PixelBox){ edge, top, l->canvas.width - 2.0 * edge, bottom - top };
}

/* Pixels a newton along one axis, from @at, held inside @low to @high. */
static double
most_along (const SheetPen *pen, double at, double force, double low, double high)
{
  const double way = force > 0.0 ? high - at : at - low;

  return fabs (force) < LEAST_FORCE ? INFINITY
                                    : fmax (way, ROOM * pen->unit) / fabs (force);
}

static double
most_pixels (const SheetPen *pen, SheetViewName view)
{
  const PixelBox room = room_for_arrows (pen, view);
  Arrow arrows[MOST_ARROWS];
  const unsigned n = list_arrows (pen, view, arrows);
  double most = INFINITY;

  for (unsigned i = 0; i < n; i++) {
    const double away = arrows[i].ends_there ? -1.0 : 1.0;
    const Pixel at = pen_at (pen, view, arrows[i].at);
    const Pixel force = force_in_view (view, vec3_scale (arrows[i].force, away));
    const double share = SHARE * pen->layout->box[SHEET_FRONT].height;

    most = fmin (most, most_along (pen, at.x, force.x, room.x, room.x + room.width));
    most = fmin (most, most_along (pen, at.y, force.y, room.y, room.y + room.height));
    most = fmin (most, share / fmax (hypot (force.x, force.y), LEAST_FORCE));
  }
  return most;
}

/* Steps are small enough to use the room, and few enough to stay through most of a drag.
 */
double
forces_scale (const SheetPen *pen)
{
  static const double steps[] = { 1.0, 1.5, 2.0, 3.0, 5.0, 7.5, 10.0 };
  double most = INFINITY;

  for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++)
    most = fmin (most, most_pixels (pen, view));
  const double least = BAR * pen->unit / most;
  const double tens = pow (10.0, floor (log10 (fmax (least, 1.0))));

  for (unsigned i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * tens >= least)
      return steps[i] * tens;
  return 10.0 * tens;
}

/* 1, 2 or 5 times a power of ten as shown, not above @newtons. */
static double
round_force (double newtons)
{
  const double shown = unit_shown (UNIT_FORCE, newtons);
  const double tens = pow (10.0, floor (log10 (shown))), first = shown / tens;

  return unit_stored (UNIT_FORCE, tens * (first >= 5.0 ? 5.0 : first >= 2.0 ? 2.0 : 1.0));
}

/* On a very small sheet only figures find room. */
static bool
has_words (const SheetPen *pen)
{
  const double mount = pen->view->study->points.at[POINT_UPPER_MOUNT].y;

  return mount * pen->layout->scale >= SMALL_SHEET * pen->unit;
}

static void
write_force (
    const SheetPen *pen, SheetViewName view, const Arrow *arrow, Pixel tail, Pixel tip)
{
  const Pixel d = pixel_direction (tail, tip);
  const double u = pen->unit, beside = BESIDE * u, line = LINE * u;
  const Pixel end = arrow->ends_there ? tail : tip;
  const double away = arrow->ends_there ? -1.0 : 1.0;
  const double across = d.x * away < -0.3 ? 1.0 : d.x * away > 0.3 ? 0.0 : 0.5;
  const Pixel past =
      pixel_add (end, away * beside * d.x, away * (beside + line / 2) * d.y);
  const LabelSpot spots[] = {
    { past, across },
    { pixel_add (end, beside, 0), 0.0 },
    { pixel_add (end, -beside, 0), 1.0 },
    { pixel_add (past, beside, line), 0.0 },
    { pixel_add (past, -beside, line), 1.0 },
    { pixel_add (past, beside, -line), 0.0 },
    { pixel_add (past, -beside, -line), 1.0 },
    { pixel_add (pixel_between (tail, tip, 0.5), beside, 0), 0.0 },
    { pixel_add (pixel_between (tail, tip, 0.5), -beside, 0), 1.0 },
  };
  const Pixel force = force_in_view (view, arrow->force);
  Label label = { has_words (pen) ? arrow->word : "", "" };

  unit_format_whole (UNIT_FORCE, hypot (force.x, force.y), 0, FALSE, label.figure,
                     sizeof label.figure);
  label_place (pen, view, -1, &label, spots, G_N_ELEMENTS (spots));
}

/* Pointed, with its stroke ending inside the head. */
static void
draw_shaft (const SheetPen *pen, Pixel tail, Pixel tip, double width, Colour colour)
{
  const Pixel d = pixel_direction (tail, tip);
  const double long_way = hypot (tip.x - tail.x, tip.y - tail.y);
  const double head = fmin (HEAD * pen->unit, long_way);
  const double half = HEAD_HALF * head / HEAD;
  const Pixel neck = pixel_add (tip, -head * d.x, -head * d.y);

  if (long_way > head)
    pen_line (pen, tail, pixel_add (neck, 0.5 * head * d.x, 0.5 * head * d.y),
              (Stroke){ LINE_FULL, width, colour });
  cairo_move_to (pen->cr, tip.x, tip.y);
  cairo_line_to (pen->cr, neck.x - half * d.y, neck.y + half * d.x);
  cairo_line_to (pen->cr, neck.x + half * d.y, neck.y - half * d.x);
  cairo_close_path (pen->cr);
  theme_use (pen->cr, colour);
  cairo_fill (pen->cr);
}

static void
draw_arrow (const SheetPen *pen, SheetViewName view, const Arrow *arrow, double mm_per_n)
{
  const Theme *t = pen->theme;
  const Pixel at = pen_at (pen, view, arrow->at);
  const Vec3 reach = vec3_scale (arrow->force, mm_per_n);
  const Pixel tail =
      arrow->ends_there ? pen_at (pen, view, vec3_sub (arrow->at, reach)) : at;
  const Pixel tip =
      arrow->ends_there ? at : pen_at (pen, view, vec3_add (arrow->at, reach));

  if (hypot (tip.x - tail.x, tip.y - tail.y) < LEAST * pen->unit)
    return;
  draw_shaft (pen, tail, tip, (arrow->is_on_body ? 1.8 : 1.4) * t->line,
              arrow->is_on_body ? t->accent : t->ink);
  write_force (pen, view, arrow, tail, tip);
}

/* From above the mount down past the ball joint's height: a construction, so thin. */
static void
draw_free_line (const SheetPen *pen)
{
  const JointLoads *loads = pen->view->loads;
  const Vec3 along = joint_forces_free_line (&loads->forces);
  const Vec3 mount = study_in_hand (pen->view->study)->corner.upper_mount;
  const double strut = vec3_distance (mount, loads->pose.ball_joint);
  const Vec3 top = vec3_along (mount, 0.15 * strut, along);
  const Vec3 bottom = vec3_along (mount, -REACH / 2.0 * strut, along);
  Label label = { has_words (pen) ? _ ("coil leaned so: no side force on the rod") : "",
                  "" };

  Pixel a = pen_at (pen, SHEET_FRONT, top), b = pen_at (pen, SHEET_FRONT, bottom);

  if (!vec3_is_finite (along) || loads->forces.axial < BY_STRUT * loads->load.contact.z ||
      !pixel_box_clip (pen->layout->box[SHEET_FRONT], &a, &b))
    return;
  const LabelSpot spots[] = { { pixel_add (b, BESIDE * pen->unit, 0), 0.0 },
                              { pixel_add (b, -BESIDE * pen->unit, 0), 1.0 },
                              { pixel_add (a, BESIDE * pen->unit, 0), 0.0 } };
  g_autofree char *side = unit_text (UNIT_FORCE, vec3_length (loads->forces.side), 0);

  g_snprintf (label.figure, sizeof label.figure, _ ("side force %s"), side);
  pen_line (pen, a, b, pen_thin (pen, LINE_FULL, pen->theme->accent));
  label_place_stacked (pen, SHEET_FRONT, -1, &label, spots, G_N_ELEMENTS (spots));
}

void
forces_draw_scale (const SheetPen *pen, double x, double y, double room)
{
  const double newtons = forces_scale (pen), round = round_force (newtons);
  const double length = BAR * pen->unit * round / newtons, gap = 7.0 * pen->unit;
  const Pixel left = { x, y }, right = { x + length, y };
  g_autofree char *text = unit_text (UNIT_FORCE, round, 0);

  if (length + gap + writing_width (pen, text, TEXT_PLAIN) > room ||
      !writing_try (pen, text, pixel_add (right, gap, 0), TEXT_PLAIN,
                    pen->theme->soft_ink))
    return;
  draw_shaft (pen, left, right, pen->theme->line, pen->theme->soft_ink);
}

void
forces_draw (const SheetPen *pen, SheetViewName view)
{
  const double newtons = forces_scale (pen);
  const double mm_per_n = BAR * pen->unit / newtons / pen->layout->scale;
  Arrow arrows[MOST_ARROWS];
  const unsigned n = list_arrows (pen, view, arrows);

  if (view == SHEET_FRONT)
    draw_free_line (pen);
  for (unsigned i = 0; i < n; i++)
    draw_arrow (pen, view, &arrows[i], mm_per_n);
}
