/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/guide/point-sketch.h"
#include "model/words/number-text.h"

#include <glib.h>
#include <glib/gi18n-lib.h>
#include <math.h>

/* Pixels at ordinary type size. */
#define MARGIN 26.0
#define GAP 42.0
#define DOT 3.5
#define RING 9.0
#define ARROW 5.0
#define AXIS_WAY 40.0

#define MOST_FAR 3000.0 /* mm: a slip of the keyboard leaves the drawing readable */

/* Where the points of a small front-drive car usually lie. Invented. */
static const Vec3 usual[N_POINTS] = {
  [POINT_ARM_FRONT_PIVOT] = { 10.0, 340.0, 210.0 },
  [POINT_ARM_REAR_PIVOT] = { -280.0, 355.0, 220.0 },
  [POINT_BALL_JOINT] = { 0.0, 655.0, 190.0 },
  [POINT_UPPER_MOUNT] = { -40.0, 535.0, 770.0 },
  [POINT_STRUT_FOOT] = { -10.0, 600.0, 340.0 },
  [POINT_TIE_ROD_OUTER] = { -125.0, 640.0, 230.0 },
  [POINT_TIE_ROD_INNER] = { -135.0, 315.0, 245.0 },
  [POINT_WHEEL_CENTRE] = { 0.0, 700.0, 270.0 },
};
#define USUAL_RADIUS 270.0
#define HALF_WHEEL 80.0

typedef struct {
  double x, y;
} At;

typedef struct {
  cairo_t *cr;
  TextCache *texts;
  const PointSketchView *view;
  const Theme *theme;
  double unit, scale;
  At front, plan; /* of the origin */
  double width;
} Pen;

typedef struct {
  double most_y, least_z, most_z, least_x, most_x;
} Extent;

static bool
is_entered (const PointSketchView *view, PointName point)
{
  const Vec3 at = view->points[point];

  return isfinite (at.x) && isfinite (at.y) && isfinite (at.z);
}

static double
within (double value)
{
  return CLAMP (value, -MOST_FAR, MOST_FAR);
}

static Vec3
place_of (const PointSketchView *view, PointName point)
{
  const Vec3 at = view->points[point];

  if (!is_entered (view, point))
    return usual[point];
  return (Vec3){ within (at.x), within (at.y), within (at.z) };
}

static double
radius_of (const PointSketchView *view)
{
  return view->loaded_radius > 0.0 ? fmin (view->loaded_radius, MOST_FAR) : USUAL_RADIUS;
}

static Extent
extent_of (const PointSketchView *view)
{
  const Vec3 centre = place_of (view, POINT_WHEEL_CENTRE);
  const double r = radius_of (view);
  Extent e = { fmax (centre.y + 110.0, 300.0), fmin (0.0, centre.z - r), centre.z + r,
               fmin (centre.x - r, -200.0), fmax (centre.x + r, 200.0) };

  for (PointName i = 0; i < N_POINTS; i++) {
    const Vec3 at = place_of (view, i);

    e.most_y = fmax (e.most_y, at.y);
    e.least_z = fmin (e.least_z, at.z);
    e.most_z = fmax (e.most_z, at.z + 20.0);
    e.least_x = fmin (e.least_x, at.x);
    e.most_x = fmax (e.most_x, at.x);
  }
  return e;
}

static double
unit_of (const Theme *theme)
{
  return theme->small_text / theme_light ().small_text;
}

/* Both views over one another share the way outboard. */
PointSketchFit
point_sketch_fit (const PointSketchView *view, double width, double height)
{
  const Extent e = extent_of (view);
  const double margin = MARGIN * unit_of (&view->theme),
               gap = GAP * unit_of (&view->theme);
  const double wide = e.most_y, high = (e.most_z - e.least_z) + (e.most_x - e.least_x);
  const double scale = fmin (fmax (width - 2.0 * margin, 1.0) / wide,
                             fmax (height - 2.0 * margin - gap, 1.0) / high);
  const double top = (height - high * scale - gap) / 2.0;

  return (PointSketchFit){ .scale = scale,
                           .x = (width - wide * scale) / 2.0,
                           .front = top + e.most_z * scale,
                           .plan = top + (e.most_z - e.least_z) * scale + gap -
                                   e.least_x * scale };
}

static At
in_front (const Pen *pen, Vec3 at)
{
  return (At){ pen->front.x + at.y * pen->scale, pen->front.y - at.z * pen->scale };
}

static At
in_plan (const Pen *pen, Vec3 at)
{
  return (At){ pen->plan.x + at.y * pen->scale, pen->plan.y + at.x * pen->scale };
}

typedef At (*Project) (const Pen *pen, Vec3 at);

static TextStyle
small_style (const Pen *pen)
{
  return (TextStyle){ pen->theme->font, pen->theme->small_text, TEXT_PLAIN };
}

static void
stroke_line (const Pen *pen, At a, At b)
{
  cairo_new_path (pen->cr);
  cairo_move_to (pen->cr, a.x, a.y);
  cairo_line_to (pen->cr, b.x, b.y);
  cairo_stroke (pen->cr);
}

static void
draw_head (cairo_t *cr, At tip, double dx, double dy, double size)
{
  cairo_new_path (cr);
  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, tip.x - dx * 2.0 * size - dy * 0.7 * size,
                 tip.y - dy * 2.0 * size + dx * 0.7 * size);
  cairo_line_to (cr, tip.x - dx * 2.0 * size + dy * 0.7 * size,
                 tip.y - dy * 2.0 * size - dx * 0.7 * size);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* One arrow of the axes from the origin, and its letter. */
static void
draw_axis (const Pen *pen, At origin, double dx, double dy, const char *letter)
{
  const double way = AXIS_WAY * pen->unit;
  const At tip = { origin.x + dx * way, origin.y + dy * way };

  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  stroke_line (pen, origin, (At){ tip.x - dx * 4.0, tip.y - dy * 4.0 });
  draw_head (pen->cr, tip, dx, dy, ARROW * pen->unit);
  text_draw (pen->texts, pen->cr, small_style (pen), letter,
             tip.x + (dx != 0.0 ? 4.0 * dx : -7.0) * pen->unit,
             tip.y + (dy != 0.0 ? 2.0 * dy : 9.0) * pen->unit,
             (TextAnchor){ dx != 0.0 ? 0.0 : 1.0, dy < 0.0   ? 0.0
                                                  : dy > 0.0 ? 1.0
                                                             : 0.5 });
}

static void
draw_frame (const Pen *pen)
{
  const Extent e = extent_of (pen->view);
  const double right = fmin (pen->front.x + (e.most_y + 40.0) * pen->scale, pen->width);

  theme_use (pen->cr, pen->theme->soft_ink);
  theme_line (pen->cr, LINE_CHAIN, pen->theme->thin);
  stroke_line (pen, (At){ pen->front.x, pen->front.y - e.most_z * pen->scale },
               (At){ pen->front.x, pen->plan.y + e.most_x * pen->scale });
  stroke_line (pen, pen->plan, (At){ right, pen->plan.y });
  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  stroke_line (pen, pen->front, (At){ right, pen->front.y });

  theme_use (pen->cr, pen->theme->ink);
  draw_axis (pen, pen->front, 1.0, 0.0, "y");
  draw_axis (pen, pen->front, 0.0, -1.0, "z");
  draw_axis (pen, pen->plan, 1.0, 0.0, "y");
  draw_axis (pen, pen->plan, 0.0, 1.0, "x");
}

/* Between the letter of the axis and the wheel, where there is room. */
static void
write_axle (const Pen *pen, double gap)
{
  const char *text = _ ("front axle");
  const double right = in_plan (pen, place_of (pen->view, POINT_WHEEL_CENTRE)).x -
                       HALF_WHEEL * pen->scale - gap;
  const double left = right - text_measure (pen->texts, small_style (pen), text).width;

  if (left > pen->plan.x + (AXIS_WAY + 2.0 * ARROW) * pen->unit)
    text_draw (pen->texts, pen->cr, small_style (pen), text, right,
               pen->plan.y + gap / 2.0, (TextAnchor){ 1.0, 0.0 });
}

/* What the views are, and what their lines mean. */
static void
write_captions (const Pen *pen)
{
  const Extent e = extent_of (pen->view);
  const double top = pen->front.y - e.most_z * pen->scale, gap = 6.0 * pen->unit;
  const double right = pen->front.x + e.most_y * pen->scale;
  const TextStyle bold = { pen->theme->font, pen->theme->small_text, TEXT_BOLD };

  theme_use (pen->cr, pen->theme->ink);
  text_draw (pen->texts, pen->cr, bold, _ ("Front view"), pen->front.x + gap, top - gap,
             (TextAnchor){ 0.0, 1.0 });
  text_draw (pen->texts, pen->cr, bold, _ ("Plan view"), pen->plan.x + gap,
             pen->plan.y + e.least_x * pen->scale - gap, (TextAnchor){ 0.0, 1.0 });
  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, small_style (pen), _ ("ground"), right,
             pen->front.y + gap / 2.0, (TextAnchor){ 1.0, 0.0 });
  write_axle (pen, gap);
  cairo_save (pen->cr);
  cairo_translate (pen->cr, pen->front.x - gap / 2.0,
                   pen->front.y - 0.45 * e.most_z * pen->scale);
  cairo_rotate (pen->cr, -G_PI / 2.0);
  text_draw (pen->texts, pen->cr, small_style (pen), _ ("centre plane"), 0.0, 0.0,
             (TextAnchor){ 0.0, 1.0 });
  cairo_restore (pen->cr);
}

/* A line between two points; faint where one of them is only supposed. */
static void
draw_part (const Pen *pen, Project project, PointName a, PointName b)
{
  const bool is_sure = is_entered (pen->view, a) && is_entered (pen->view, b);

  theme_use (pen->cr, is_sure ? pen->theme->ink : pen->theme->body);
  theme_line (pen->cr, is_sure ? LINE_FULL : LINE_DOTTED,
              is_sure ? pen->theme->line : pen->theme->thin);
  stroke_line (pen, project (pen, place_of (pen->view, a)),
               project (pen, place_of (pen->view, b)));
}

/* Upright and straight ahead: what it does exactly the sheet shows later. */
static void
draw_wheel (const Pen *pen)
{
  const bool is_sure =
      is_entered (pen->view, POINT_WHEEL_CENTRE) && pen->view->loaded_radius > 0.0;
  const Vec3 centre = place_of (pen->view, POINT_WHEEL_CENTRE);
  const double r = radius_of (pen->view) * pen->scale, half = HALF_WHEEL * pen->scale;
  const At front = in_front (pen, centre), plan = in_plan (pen, centre);

  theme_use (pen->cr, is_sure ? pen->theme->soft_ink : pen->theme->body);
  theme_line (pen->cr, is_sure ? LINE_FULL : LINE_DOTTED, pen->theme->thin);
  cairo_new_path (pen->cr);
  cairo_rectangle (pen->cr, front.x - half, front.y - r, 2.0 * half, 2.0 * r);
  cairo_rectangle (pen->cr, plan.x - half, plan.y - r, 2.0 * half, 2.0 * r);
  cairo_stroke (pen->cr);
}

static void
draw_dot (const Pen *pen, At at, bool is_sure)
{
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, at.x, at.y, DOT * pen->unit, 0.0, 2.0 * G_PI);
  theme_use (pen->cr, is_sure ? pen->theme->ink : pen->theme->ground);
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, is_sure ? pen->theme->ink : pen->theme->body);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  cairo_stroke (pen->cr);
}

static void
draw_corner (const Pen *pen, Project project)
{
  static const PointName parts[][2] = {
    { POINT_ARM_FRONT_PIVOT, POINT_BALL_JOINT },
    { POINT_ARM_REAR_PIVOT, POINT_BALL_JOINT },
    { POINT_STRUT_FOOT, POINT_UPPER_MOUNT },
    { POINT_TIE_ROD_INNER, POINT_TIE_ROD_OUTER },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    draw_part (pen, project, parts[i][0], parts[i][1]);
  for (PointName i = 0; i < N_POINTS; i++)
    draw_dot (pen, project (pen, place_of (pen->view, i)), is_entered (pen->view, i));
}

static void
draw_dimension (const Pen *pen, At from, At to)
{
  const double length = hypot (to.x - from.x, to.y - from.y), size = ARROW * pen->unit;

  theme_use (pen->cr, pen->theme->accent);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  stroke_line (pen, from, to);
  if (length < 5.0 * size)
    return;
  const double dx = (to.x - from.x) / length, dy = (to.y - from.y) / length;
  draw_head (pen->cr, to, dx, dy, size);
  draw_head (pen->cr, from, -dx, -dy, size);
}

/* From the plane that the coordinate counts from to the point. */
static void
draw_coordinate (const Pen *pen)
{
  const Vec3 at = place_of (pen->view, (PointName) pen->view->point);
  const At front = in_front (pen, at), plan = in_plan (pen, at);

  if (pen->view->axis == 0)
    draw_dimension (pen, (At){ plan.x, pen->plan.y }, plan);
  if (pen->view->axis == 1) {
    draw_dimension (pen, (At){ pen->front.x, front.y }, front);
    draw_dimension (pen, (At){ pen->plan.x, plan.y }, plan);
  }
  if (pen->view->axis == 2)
    draw_dimension (pen, (At){ front.x, pen->front.y }, front);
}

void
point_sketch_ring (cairo_t *cr, const Theme *theme, double x, double y)
{
  cairo_new_path (cr);
  cairo_arc (cr, x, y, RING * unit_of (theme), 0.0, 2.0 * G_PI);
  theme_use (cr, theme->glow);
  cairo_fill_preserve (cr);
  theme_use (cr, theme->accent);
  theme_line (cr, LINE_FULL, theme->line);
  cairo_stroke (cr);
}

void
point_sketch_draw (TextCache *texts,
                   cairo_t *cr,
                   const PointSketchView *view,
                   double width,
                   double height)
{
  const PointSketchFit fit = point_sketch_fit (view, width, height);
  const Pen pen = { cr,
                    texts,
                    view,
                    &view->theme,
                    unit_of (&view->theme),
                    fit.scale,
                    { fit.x, fit.front },
                    { fit.x, fit.plan },
                    width };

  theme_use (cr, view->theme.ground);
  cairo_paint (cr);
  draw_frame (&pen);
  write_captions (&pen);
  draw_wheel (&pen);
  draw_corner (&pen, in_front);
  draw_corner (&pen, in_plan);
  if (view->point == POINT_SKETCH_NONE)
    return;

  const Vec3 at = place_of (view, (PointName) view->point);
  const At front = in_front (&pen, at), plan = in_plan (&pen, at);
  draw_coordinate (&pen);
  point_sketch_ring (cr, &view->theme, front.x, front.y);
  point_sketch_ring (cr, &view->theme, plan.x, plan.y);
}
