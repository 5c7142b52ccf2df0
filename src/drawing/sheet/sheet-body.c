/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts that are fixed to the body: seats of the arm's pivots, rack, tower. */

#include "drawing/sheet/sheet-parts.h"

/* Sizes of what is only hinted at, mm: common practice, no published source. */
#define BUSH_RADIUS 16.0
#define BUSH_HALF_LENGTH 24.0
#define SEAT_DISTANCE 26.0
#define SEAT_HALF 26.0
#define RACK_WIDTH 26.0
#define RACK_LENGTH 75.0
#define TOWER_HOLE 40.0
#define TOWER_HALF 100.0
#define PLATE_HALF 58.0
#define PLATE_WIDTH 9.0

static const Vec3 along_x = { 1, 0, 0 }, along_y = { 0, 1, 0 }, along_z = { 0, 0, 1 };

/* Corrections raise the pivots and move both outboard alike: the way from one to the
 * other keeps its plan view, and lies along the hinge. */
ArmPivots
parts_arm_pivots (const Study *study, const StudyCorner *corner)
{
  const Vec3 *at = study->points.at;
  const Vec3 hinge = corner->corner.hinge_axis, front = corner->corner.arm_pivot;
  const Vec3 way = vec3_sub (at[POINT_ARM_REAR_PIVOT], at[POINT_ARM_FRONT_PIVOT]);
  const double plan = hinge.x * hinge.x + hinge.y * hinge.y;
  const double along =
      plan > 1e-6 ? (way.x * hinge.x + way.y * hinge.y) / plan : vec3_dot (way, hinge);

  return (ArmPivots){ front, vec3_along (front, along, hinge) };
}

static Solid
fixed (const SheetPen *pen, double mm, double least)
{
  const Theme *t = pen->theme;

  return (Solid){ pen_wide (pen, mm, least), t->body, t->body, t->thin };
}

/* An edge of @half length each way about @middle, hatched on the far side of @away. */
static void
draw_seat (const SheetPen *pen, SheetViewName view, Vec3 middle, Vec3 along, double half)
{
  pen_hatched_edge (pen, pen_at (pen, view, vec3_along (middle, -half, along)),
                    pen_at (pen, view, vec3_along (middle, half, along)), 6.0 * pen->unit,
                    pen_thin (pen, LINE_FULL, pen->theme->body));
}

static void
draw_pivot_seat (const SheetPen *pen, SheetViewName view, Vec3 pivot)
{
  const Vec3 down = vec3_scale (along_z, -1.0);

  if (view == SHEET_SIDE)
    draw_seat (pen, view, vec3_along (pivot, SEAT_DISTANCE, down), along_x, SEAT_HALF);
  else
    draw_seat (pen, view, vec3_along (pivot, -SEAT_DISTANCE, along_y),
               view == SHEET_FRONT ? down : along_x, SEAT_HALF);
}

static void
draw_bush (const SheetPen *pen, SheetViewName view, Vec3 pivot)
{
  const Vec3 hinge = study_in_hand (pen->view->study)->corner.hinge_axis;
  const Theme *t = pen->theme;
  const Pixel at = pen_at (pen, view, pivot);
  const Solid bush = { pen_wide (pen, 2.0 * BUSH_RADIUS, 6.0), pen_hollow (pen), t->body,
                       t->line * 0.8 };

  if (view == SHEET_PLAN)
    pen_bar (pen, pen_at (pen, view, vec3_along (pivot, -BUSH_HALF_LENGTH, hinge)),
             pen_at (pen, view, vec3_along (pivot, BUSH_HALF_LENGTH, hinge)), bush);
  else {
    pen_circle (pen, at, bush.width / 2.0, bush);
    pen_circle (pen, at, bush.width / 6.0, bush);
  }
}

static ArmPivots
pivots_in_hand (const SheetPen *pen)
{
  const Study *study = pen->view->study;

  return parts_arm_pivots (study, study_in_hand (study));
}

static void
draw_hinge_axis (const SheetPen *pen, SheetViewName view)
{
  const ArmPivots at = pivots_in_hand (pen);
  const Vec3 along = vec3_scale (vec3_unit (vec3_sub (at.rear, at.front)), 45.0);

  pen_line (pen, pen_at (pen, view, vec3_sub (at.front, along)),
            pen_at (pen, view, vec3_add (at.rear, along)),
            pen_thin (pen, LINE_CHAIN, pen->theme->soft_ink));
}

/* The body between tower and centre plane: what the height handle holds. */
static void
draw_cowl (const SheetPen *pen)
{
  const Vec3 place = pen->view->study->points.at[POINT_UPPER_MOUNT];
  const Vec3 seat = vec3_along (place, -TOWER_HALF, along_y);

  pen_line (pen, pen_at (pen, SHEET_FRONT, (Vec3){ seat.x, 0.0, seat.z }),
            pen_at (pen, SHEET_FRONT, seat), pen_thin (pen, LINE_FULL, pen->theme->body));
}

/* The tower belongs to the body and stays; the plate in its hole goes with the mount. */
static void
draw_tower (const SheetPen *pen, SheetViewName view)
{
  const Vec3 place = pen->view->study->points.at[POINT_UPPER_MOUNT];
  const Vec3 across = view == SHEET_SIDE ? along_x : along_y;
  const double middle = (TOWER_HALF + TOWER_HOLE) / 2.0,
               half = (TOWER_HALF - TOWER_HOLE) / 2.0;
  const Theme *t = pen->theme;

  if (view == SHEET_PLAN) {
    const Solid ring = { 0, { 0, 0, 0, 0 }, t->body, t->thin };

    pen_circle (pen, pen_at (pen, view, place), TOWER_HALF * pen->layout->scale, ring);
    return;
  }
  draw_seat (pen, view, vec3_along (place, -middle, across), vec3_scale (across, -1),
             half);
  draw_seat (pen, view, vec3_along (place, middle, across), vec3_scale (across, -1),
             half);
}

static void
draw_plate (const SheetPen *pen, SheetViewName view)
{
  const Vec3 mount = study_in_hand (pen->view->study)->corner.upper_mount;
  const Vec3 across = view == SHEET_SIDE ? along_x : along_y;
  const Theme *t = pen->theme;
  Solid plate = fixed (pen, view == SHEET_PLAN ? 2.0 * PLATE_HALF : PLATE_WIDTH, 3.0);

  if (view == SHEET_PLAN)
    plate.fill = colour_with_alpha (t->body, 0.25);
  pen_bar (pen, pen_at (pen, view, vec3_along (mount, -PLATE_HALF, across)),
           pen_at (pen, view, vec3_along (mount, PLATE_HALF, across)), plate);
}

static void
draw_rack (const SheetPen *pen, SheetViewName view)
{
  const Vec3 inner = study_in_hand (pen->view->study)->corner.tie_rod_inner;
  const Solid rack = fixed (pen, RACK_WIDTH, 5.0);
  const Pixel end = pen_at (pen, view, inner);

  if (view == SHEET_SIDE)
    pen_circle (pen, end, rack.width / 2.0, rack);
  else
    pen_bar (pen, pen_at (pen, view, vec3_along (inner, -RACK_LENGTH, along_y)), end,
             rack);
}

void
parts_draw_bushes (const SheetPen *pen, SheetViewName view)
{
  const ArmPivots at = pivots_in_hand (pen);

  draw_bush (pen, view, at.rear);
  draw_bush (pen, view, at.front);
  draw_hinge_axis (pen, view);
}

void
parts_draw_body (const SheetPen *pen, SheetViewName view)
{
  const ArmPivots at = pivots_in_hand (pen);

  draw_pivot_seat (pen, view, at.rear);
  draw_pivot_seat (pen, view, at.front);
  draw_rack (pen, view);
  draw_tower (pen, view);
  if (view == SHEET_FRONT)
    draw_cowl (pen);
  draw_plate (pen, view);
}
