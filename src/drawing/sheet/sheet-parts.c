/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-parts.h"

#include <glib/gi18n-lib.h>

/* Sizes of what is only hinted at, mm: common practice, no published source. */
#define ARM_WIDTH 30.0
#define KNUCKLE_WIDTH 40.0
#define HUB_INSET 62.0
#define HUB_RADIUS 62.0
#define ROD_WIDTH 15.0
#define TUBE_WIDTH 48.0
#define TUBE_PART 0.55 /* of the strut's measured length */
#define PISTON_ROD_WIDTH 20.0
#define SPRING_SEAT_HALF 68.0
#define BEARING_RADIUS 14.0
#define RIM_PART 0.66 /* of the tyre's loaded radius */
#define AXIS_PAST_MOUNT 0.07

static const Vec3 along_x = { 1, 0, 0 }, along_z = { 0, 0, 1 };

void
parts_draw_ground (const SheetPen *pen, SheetViewName view, Vec3 contact)
{
  const PixelBox box = pen->layout->box[view];
  const double y = pen_at (pen, view, contact).y, u = pen->unit;
  const double left = view == SHEET_FRONT ? pen->layout->origin[view].x : box.x;
  const Theme *t = pen->theme;

  cairo_save (pen->cr);
  pen_hatched_edge (pen, (Pixel){ left, y }, (Pixel){ box.x + box.width, y }, 6.0 * u,
                    (Stroke){ LINE_FULL, t->thin, t->body });
  cairo_restore (pen->cr);
  pen_line (pen, (Pixel){ left, y }, (Pixel){ box.x + box.width, y },
            (Stroke){ LINE_FULL, t->line * 0.8, t->ink });
}

void
parts_draw_centre_plane (const SheetPen *pen, SheetViewName view)
{
  const PixelBox box = pen->layout->box[view];
  const double x = pen->layout->origin[view].x;

  pen_line (pen, (Pixel){ x, box.y }, (Pixel){ x, box.y + box.height },
            pen_thin (pen, LINE_CHAIN, pen->theme->soft_ink));
}

/* Front and plan view of the tyre: a rounded rectangle turned by camber or toe, in pixels
 * about the wheel centre, `across` along the spin axis. */
typedef struct {
  Pixel centre;
  double turn;
  double half_width, above, below; /* above: away from the ground, or rearward */
} TyreFace;

static TyreFace
tyre_face (const SheetPen *pen, SheetViewName view, const StudyCorner *corner)
{
  const Pose *pose = &corner->now.pose;
  const Vec3 n = pose->spin_axis;
  const double k = pen->layout->scale, r = corner->corner.loaded_radius * k;
  const double free = r * SHEET_TYRE_FREE;

  return (TyreFace){ pen_at (pen, view, pose->wheel_centre),
                     view == SHEET_FRONT ? atan2 (-n.z, n.y) : atan2 (n.x, n.y),
                     pen->view->section_width / 2.0 * k, free,
                     view == SHEET_FRONT ? r : free };
}

static Pixel
on_face (TyreFace face, double across, double down)
{
  const double c = cos (face.turn), s = sin (face.turn);

  return (Pixel){ face.centre.x + across * c - down * s,
                  face.centre.y + across * s + down * c };
}

static void
trace_face (cairo_t *cr, TyreFace f)
{
  const double r = f.half_width * 0.45;

  cairo_save (cr);
  cairo_translate (cr, f.centre.x, f.centre.y);
  cairo_rotate (cr, f.turn);
  cairo_new_sub_path (cr);
  cairo_arc (cr, f.half_width - r, r - f.above, r, -G_PI_2, 0);
  cairo_arc (cr, f.half_width - r, f.below - r, r, 0, G_PI_2);
  cairo_arc (cr, r - f.half_width, f.below - r, r, G_PI_2, G_PI);
  cairo_arc (cr, r - f.half_width, r - f.above, r, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
  cairo_restore (cr);
}

/* A circle that stands on the ground with a flat. */
static void
trace_round (const SheetPen *pen, const StudyCorner *corner)
{
  const Pixel centre = pen_at (pen, SHEET_SIDE, corner->now.pose.wheel_centre);
  const double radius =
      corner->corner.loaded_radius * SHEET_TYRE_FREE * pen->layout->scale;
  const double down = pen_at (pen, SHEET_SIDE, corner->now.measures.contact).y - centre.y;
  const double a = asin (CLAMP (down / radius, -1.0, 1.0));

  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, centre.x, centre.y, radius, G_PI - a, 2.0 * G_PI + a);
  cairo_close_path (pen->cr);
}

static void
trace_tyre (const SheetPen *pen, SheetViewName view, const StudyCorner *corner)
{
  if (view == SHEET_SIDE)
    trace_round (pen, corner);
  else
    trace_face (pen->cr, tyre_face (pen, view, corner));
}

/* Rim edges, and the axes of the wheel. */
static void
draw_face_lines (const SheetPen *pen, TyreFace f, double rim)
{
  const Stroke edge = pen_thin (pen, LINE_FULL, pen->theme->body);
  const Stroke axis = pen_thin (pen, LINE_CHAIN, pen->theme->soft_ink);
  const double past = 14.0 * pen->unit;

  pen_line (pen, on_face (f, -f.half_width, -rim), on_face (f, f.half_width, -rim), edge);
  pen_line (pen, on_face (f, -f.half_width, rim), on_face (f, f.half_width, rim), edge);
  pen_line (pen, on_face (f, 0, -f.above - past), on_face (f, 0, f.below), axis);
  pen_line (pen, on_face (f, -f.half_width - past, 0),
            on_face (f, f.half_width + past, 0), axis);
}

static void
draw_round_lines (const SheetPen *pen, const StudyCorner *corner, double rim)
{
  const Pixel centre = pen_at (pen, SHEET_SIDE, corner->now.pose.wheel_centre);
  const Stroke axis = pen_thin (pen, LINE_CHAIN, pen->theme->soft_ink);
  const Theme *t = pen->theme;
  const Solid edge = { 0, { 0, 0, 0, 0 }, t->body, t->thin };

  pen_circle (pen, centre, rim, edge);
  pen_circle (pen, centre, rim * 0.93, edge);
  pen_line (pen, pixel_add (centre, -rim, 0), pixel_add (centre, rim, 0), axis);
  pen_line (pen, pixel_add (centre, 0, -rim), pixel_add (centre, 0, rim), axis);
}

static void
show_face (const SheetPen *pen, SheetViewName view, TyreFace f)
{
  const int quantity = view == SHEET_FRONT ? QUANTITY_CAMBER : QUANTITY_TOE_IN;

  pen_shows (pen, view, quantity, on_face (f, -f.half_width, -f.above),
             on_face (f, -f.half_width, f.below));
  pen_shows (pen, view, quantity, on_face (f, f.half_width, -f.above),
             on_face (f, f.half_width, f.below));
}

/* Between ground and fill; opaque where the ground is, which draws quicker. */
static Colour
tyre_fill (const Theme *t)
{
  const Colour a = t->ground, b = t->fill;

  if (a.alpha < 1.0)
    return colour_with_alpha (b, 0.6 * b.alpha);
  return (Colour){ 0.4 * a.red + 0.6 * b.red, 0.4 * a.green + 0.6 * b.green,
                   0.4 * a.blue + 0.6 * b.blue, 1.0 };
}

void
parts_draw_wheel (const SheetPen *pen, SheetViewName view, const StudyCorner *corner)
{
  const Theme *t = pen->theme;
  const double rim = RIM_PART * corner->corner.loaded_radius * pen->layout->scale;
  const TyreFace face = tyre_face (pen, view, corner);

  if (view != SHEET_SIDE)
    show_face (pen, view, face);
  trace_tyre (pen, view, corner);
  theme_use (pen->cr, tyre_fill (t));
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, t->ink);
  theme_line (pen->cr, LINE_FULL, t->line);
  cairo_stroke (pen->cr);
  if (view == SHEET_SIDE)
    draw_round_lines (pen, corner, rim);
  else
    draw_face_lines (pen, face, rim);
}

static void
draw_arm (const SheetPen *pen, SheetViewName view, const StudyCorner *corner)
{
  const ArmPivots pivots = parts_arm_pivots (pen->view->study, corner);
  const Pixel ball = pen_at (pen, view, corner->now.pose.ball_joint);
  const Pixel spokes[] = { ball, pen_at (pen, view, pivots.front),
                           pen_at (pen, view, pivots.rear) };

  pen_shows (pen, view, QUANTITY_ARM_RATIO, ball, spokes[1]);
  pen_shows (pen, view, QUANTITY_ARM_RATIO, ball, spokes[2]);
  pen_spokes (pen, spokes, G_N_ELEMENTS (spokes), pen_moving (pen, ARM_WIDTH, 5.0));
}

static void
draw_tie_rod (const SheetPen *pen, SheetViewName view, const Pose *pose)
{
  const Pixel ends[] = { pen_at (pen, view, pose->tie_rod_inner),
                         pen_at (pen, view, pose->tie_rod_outer) };
  const Solid rod = pen_moving (pen, ROD_WIDTH, 3.5);

  pen_spokes (pen, ends, 2, rod);
  pen_circle (pen, ends[0], rod.width * 0.75, rod);
  pen_circle (pen, ends[1], rod.width * 0.75, rod);
}

/* An upright from the stub axle's root to ball joint, strut and tie rod. */
static void
draw_knuckle (const SheetPen *pen, SheetViewName view, const Pose *pose)
{
  const Vec3 root = vec3_along (pose->wheel_centre, -HUB_INSET, pose->spin_axis);
  const Pixel spokes[] = { pen_at (pen, view, root),
                           pen_at (pen, view, pose->tie_rod_outer),
                           pen_at (pen, view, pose->ball_joint),
                           pen_at (pen, view, pose->strut_foot),
                           pen_at (pen, view, pose->wheel_centre) };

  pen_spokes (pen, spokes, G_N_ELEMENTS (spokes), pen_moving (pen, KNUCKLE_WIDTH, 6.0));
}

static void
draw_hub (const SheetPen *pen, SheetViewName view, const Pose *pose)
{
  const Vec3 n = pose->spin_axis, w = pose->wheel_centre;
  const Vec3 across =
      view == SHEET_FRONT ? vec3_cross (along_x, n) : vec3_cross (n, along_z);
  const Solid hub = pen_moving (pen, 20.0, 4.0);

  if (view == SHEET_SIDE)
    pen_circle (pen, pen_at (pen, view, w), HUB_RADIUS * pen->layout->scale, hub);
  else
    pen_bar (pen, pen_at (pen, view, vec3_along (w, -HUB_RADIUS, across)),
             pen_at (pen, view, vec3_along (w, HUB_RADIUS, across)), hub);
}

static void
draw_strut (const SheetPen *pen, SheetViewName view, const StudyCorner *corner)
{
  const Vec3 *at = pen->view->study->points.at;
  const Vec3 u = corner->now.pose.strut_direction, foot = corner->now.pose.strut_foot;
  const Vec3 mount = corner->corner.upper_mount;
  const double tube =
      TUBE_PART * vec3_distance (at[POINT_UPPER_MOUNT], at[POINT_STRUT_FOOT]);
  const Pixel from = pen_at (pen, view, vec3_along (foot, -0.35 * TUBE_WIDTH, u));
  const Pixel to = pen_at (pen, view, vec3_along (foot, tube, u));
  const Pixel top = pen_at (pen, view, mount);
  const Pixel seat = pen_at (pen, view, vec3_along (foot, 0.82 * tube, u));
  const Pixel d = pixel_direction (from, to);
  const double half = SPRING_SEAT_HALF * pen->layout->scale;

  pen_shows (pen, view, QUANTITY_STRUT_LENGTH, from, top);
  pen_bar (pen, to, top, pen_moving (pen, PISTON_ROD_WIDTH, 3.5));
  pen_bar (pen, from, to, pen_moving (pen, TUBE_WIDTH, 7.0));
  if (view == SHEET_PLAN)
    pen_circle (pen, seat, half,
                (Solid){ 0, { 0, 0, 0, 0 }, pen->theme->ink, pen->theme->thin });
  else
    pen_bar (pen, pixel_add (seat, -d.y * half, d.x * half),
             pixel_add (seat, d.y * half, -d.x * half), pen_moving (pen, 9.0, 3.0));
}

static void
draw_joints (const SheetPen *pen, SheetViewName view, const StudyCorner *corner)
{
  Solid joint = pen_moving (pen, 2.0 * BEARING_RADIUS, 6.0);

  joint.fill = pen_hollow (pen);
  pen_circle (pen, pen_at (pen, view, corner->now.pose.ball_joint), joint.width / 2.0,
              joint);
  pen_circle (pen, pen_at (pen, view, corner->corner.upper_mount), joint.width / 2.0,
              joint);
}

void
parts_draw_linkage (const SheetPen *pen, SheetViewName view, const StudyCorner *corner)
{
  const Pose *pose = &corner->now.pose;

  if (view != SHEET_SIDE) {
    draw_tie_rod (pen, view, pose);
    draw_arm (pen, view, corner);
    draw_hub (pen, view, pose);
    draw_knuckle (pen, view, pose);
    draw_strut (pen, view, corner);
  } else {
    draw_hub (pen, view, pose);
    draw_knuckle (pen, view, pose);
    draw_strut (pen, view, corner);
    draw_tie_rod (pen, view, pose);
    draw_arm (pen, view, corner);
  }
  draw_joints (pen, view, corner);
}

static Vec3
axis_top (const StudyCorner *corner)
{
  const Vec3 u = corner->corner.upper_mount;

  return vec3_along (u, AXIS_PAST_MOUNT, vec3_sub (u, corner->now.pose.ball_joint));
}

void
parts_draw_steering_axis (const SheetPen *pen,
                          SheetViewName view,
                          const StudyCorner *corner)
{
  const Pixel top = pen_at (pen, view, axis_top (corner));
  const Pixel ground = pen_at (pen, view, corner->now.measures.axis_at_ground);
  const Colour accent = pen->theme->accent;

  if (view != SHEET_PLAN)
    pen_shows (pen, view, view == SHEET_FRONT ? QUANTITY_SAI : QUANTITY_CASTER, top,
               ground);
  pen_line (pen, top, ground, (Stroke){ LINE_CHAIN, pen->theme->thin * 1.3, accent });
  pen_circle (pen, ground, 2.2 * pen->unit,
              (Solid){ 0, accent, accent, pen->theme->thin });
}

static void
draw_ghost_ring (const SheetPen *pen, Pixel centre, double radius)
{
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, centre.x, centre.y, radius, 0, 2 * G_PI);
  theme_use (pen->cr, pen->theme->reference);
  theme_line (pen->cr, LINE_DASHED, pen->theme->thin);
  cairo_stroke (pen->cr);
}

static bool
is_elsewhere (Vec3 a, Vec3 b)
{
  return vec3_distance (a, b) > 0.05;
}

/* Pivots and tie rod where a correction has moved them. */
static void
draw_ghost_corrections (const SheetPen *pen, SheetViewName view)
{
  const Study *study = pen->view->study;
  const StudyCorner *was = study_reference (study), *is = study_in_hand (study);
  const ArmPivots old = parts_arm_pivots (study, was), new = parts_arm_pivots (study, is);
  const double radius = pen_wide (pen, 2.0 * BEARING_RADIUS, 6.0) / 2.0;
  const Pose *pose = &was->now.pose;

  if (is_elsewhere (old.front, new.front))
    draw_ghost_ring (pen, pen_at (pen, view, old.front), radius);
  if (is_elsewhere (old.rear, new.rear))
    draw_ghost_ring (pen, pen_at (pen, view, old.rear), radius);
  if (is_elsewhere (was->corner.tie_rod_inner, is->corner.tie_rod_inner) ||
      fabs (was->corner.tie_rod_outer.z - was->corner.wheel_centre.z -
            (is->corner.tie_rod_outer.z - is->corner.wheel_centre.z)) > 0.05)
    pen_line (pen, pen_at (pen, view, pose->tie_rod_inner),
              pen_at (pen, view, pose->tie_rod_outer),
              pen_thin (pen, LINE_DASHED, pen->theme->reference));
}

void
parts_draw_ghost (const SheetPen *pen, SheetViewName view)
{
  const StudyCorner *corner = study_reference (pen->view->study);
  const Pose *pose = &corner->now.pose;
  const ArmPivots pivots = parts_arm_pivots (pen->view->study, corner);
  const Stroke dashed = pen_thin (pen, LINE_DASHED, pen->theme->reference);
  const Pixel ball = pen_at (pen, view, pose->ball_joint);
  const Pixel mount = pen_at (pen, view, corner->corner.upper_mount);

  if (corner->now.status != POSE_OK)
    return;
  pen_line (pen, pen_at (pen, view, pose->strut_foot), mount, dashed);
  pen_line (pen, ball, pen_at (pen, view, pivots.front), dashed);
  pen_line (pen, ball, pen_at (pen, view, pivots.rear), dashed);
  pen_line (pen, pen_at (pen, view, axis_top (corner)),
            pen_at (pen, view, corner->now.measures.axis_at_ground), dashed);
  trace_tyre (pen, view, corner);
  theme_use (pen->cr, dashed.colour);
  theme_line (pen->cr, LINE_DASHED, dashed.width);
  cairo_stroke (pen->cr);
  draw_ghost_ring (pen, mount, pen_wide (pen, 2.0 * BEARING_RADIUS, 6.0) / 2.0);
  draw_ghost_corrections (pen, view);
}
