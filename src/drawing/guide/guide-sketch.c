/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corner with the sheet's own parts, quietly, and on it one point: the string that
 * hangs from it, its mark on the floor, and the lengths to take. */

#include "drawing/guide/guide-private.h"
#include "drawing/guide/point-sketch.h"
#include "drawing/sheet/sheet-parts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Lengths on paper at ordinary type size. */
#define LEFT 16.0
#define CAPTION 15.0
#define BELOW_GROUND 30.0
#define BOB_LENGTH 11.0
#define BOB_HALF 3.2
/* A shorter dimension has no arrows, and its name beside the point's ring. */
#define ARROW_ROOM 22.0
#define NUMBER_RADIUS 8.0

#define PAST 70.0 /* mm, past the outermost point */

typedef struct {
  SheetView view;
  SheetLayout layout;
  SheetTargets targets;
  SheetPen pen;
} Sketch;

static double
most_outward (const MeasuringGuide *guide)
{
  const Vec3 wheel = guide->car->points[POINT_WHEEL_CENTRE];

  return wheel.y + guide->car->section_width_mm / 2.0 + PAST / 2.0;
}

static double
most_upward (const MeasuringGuide *guide)
{
  return fmax (guide->car->points[POINT_UPPER_MOUNT].z,
               2.0 * SHEET_TYRE_FREE * guide->car->loaded_radius_mm) +
         PAST / 2.0;
}

static double
most_lengthways (const MeasuringGuide *guide, double sign)
{
  double most = SHEET_TYRE_FREE * guide->car->loaded_radius_mm;

  for (PointName i = 0; i < N_POINTS; i++)
    most = fmax (most, sign * guide->car->points[i].x);
  return most + PAST / 2.0;
}

/* The front view over the plan view, centred in @box. */
static SheetLayout
lay_out (const MeasuringGuide *guide, PixelBox box, double unit)
{
  const double wide = most_outward (guide), high = most_upward (guide);
  const double back = most_lengthways (guide, -1.0), front = most_lengthways (guide, 1.0);
  const double paper = (2.0 * CAPTION + BELOW_GROUND) * unit;
  const double scale = fmin ((box.width - LEFT * unit) / wide,
                             (box.height - paper) / (high + back + front));
  const double left =
      box.x + LEFT * unit + fmax (box.width - LEFT * unit - wide * scale, 0.0) / 2.0;
  const double ground = box.y + CAPTION * unit + high * scale;
  const double plan = ground + (BELOW_GROUND + CAPTION) * unit;
  const double outward = LEFT * unit + wide * scale;

  return (SheetLayout){
    .unit = unit,
    .scale = scale,
    .origin = { [SHEET_FRONT] = { left, ground },
                [SHEET_SIDE] = { left, ground },
                [SHEET_PLAN] = { left, plan + back * scale } },
    .box = { [SHEET_FRONT] = { left - LEFT * unit, ground - high * scale, outward,
                               high * scale + 8.0 * unit },
             [SHEET_PLAN] = { left - LEFT * unit, plan, outward,
                              (back + front) * scale } },
    .canvas = { box.x, box.y, box.width, box.height },
  };
}

/* Parts step back so that the point comes forward. */
static Theme
quiet_theme (const GuidePage *page, int point)
{
  Theme theme = theme_scaled (page->pen.theme, 0.9);

  if (point == GUIDE_NO_POINT)
    return theme;
  theme.ink = theme.body;
  theme.line *= 0.7;
  return theme;
}

static void
draw_parts (const Sketch *sketch, SheetViewName view)
{
  const StudyCorner *corner = study_in_hand (sketch->view.study);
  const SheetPen *pen = &sketch->pen;

  if (view == SHEET_FRONT)
    parts_draw_ground (pen, view, corner->now.measures.contact);
  parts_draw_centre_plane (pen, view);
  parts_draw_wheel (pen, view, corner);
  parts_draw_body (pen, view);
  parts_draw_linkage (pen, view, corner);
  parts_draw_bushes (pen, view);
}

static void
draw_axle_line (const Sketch *sketch)
{
  const PixelBox box = sketch->layout.box[SHEET_PLAN];
  const double y = sketch->layout.origin[SHEET_PLAN].y;

  pen_line (&sketch->pen, (Pixel){ box.x, y }, (Pixel){ box.x + box.width, y },
            pen_thin (&sketch->pen, LINE_CHAIN, sketch->pen.theme->soft_ink));
}

static void
write_captions (const GuidePage *page, const Sketch *sketch)
{
  const char *const words[] = {
    [SHEET_FRONT] = _ ("Front view"), [SHEET_SIDE] = NULL, [SHEET_PLAN] = _ ("Plan view")
  };
  const double unit = sketch->pen.unit;

  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++) {
    const PixelBox box = sketch->layout.box[view];

    if (words[view] != NULL)
      fitting_write (&page->pen, FITTING_SMALL, words[view], box.x, box.y - 4.0 * unit,
                     box.width, FITTING_LEFT);
  }
}

/* Its name on a patch of paper in the middle of a dimension, or beside a short one. */
static void
name_dimension (const GuidePage *page, const Sketch *sketch, Pixel a, Pixel b, char name)
{
  const FittingPen *pen = &page->pen;
  const char text[] = { name, '\0' };
  const double wide = fitting_text_width (pen, FITTING_TEXT_BOLD, text);
  const double size = pen->theme.text, u = sketch->pen.unit;
  const gboolean is_upright = fabs (b.x - a.x) < fabs (b.y - a.y);
  Pixel middle = pixel_between (a, b, 0.5);

  if (hypot (b.x - a.x, b.y - a.y) < ARROW_ROOM * u)
    middle =
        is_upright ? pixel_add (middle, 9.0 * u, 0.0) : pixel_add (middle, 0.0, -9.0 * u);
  theme_use (pen->cr, pen->theme.ground);
  cairo_rectangle (pen->cr, middle.x - wide / 2.0 - 2.0 * u, middle.y - 0.55 * size,
                   wide + 4.0 * u, 1.1 * size);
  cairo_fill (pen->cr);
  fitting_ink (pen, pen->theme.accent);
  fitting_write (pen, FITTING_TEXT_BOLD, text, middle.x - wide / 2.0,
                 middle.y + 0.33 * size, wide + 1.0, FITTING_LEFT);
}

static void
draw_dimension (const GuidePage *page, const Sketch *sketch, Pixel a, Pixel b, char name)
{
  const Colour colour = page->pen.theme.accent;
  const Pixel way = pixel_direction (a, b);
  const double length = hypot (b.x - a.x, b.y - a.y);

  if (length < 0.5)
    return;
  pen_line (&sketch->pen, a, b,
            (Stroke){ LINE_FULL, page->pen.theme.line * 0.7, colour });
  if (length >= ARROW_ROOM * sketch->pen.unit) {
    pen_arrow_head (&sketch->pen, b, way, colour);
    pen_arrow_head (&sketch->pen, a, (Pixel){ -way.x, -way.y }, colour);
  }
  name_dimension (page, sketch, a, b, name);
}

/* Its tip on the floor. */
static void
draw_bob (const GuidePage *page, const Sketch *sketch, Pixel tip)
{
  cairo_t *cr = page->pen.cr;
  const double u = sketch->pen.unit;

  theme_use (cr, page->pen.theme.ink);
  cairo_new_path (cr);
  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, tip.x - BOB_HALF * u, tip.y - 0.55 * BOB_LENGTH * u);
  cairo_line_to (cr, tip.x - BOB_HALF * u, tip.y - BOB_LENGTH * u);
  cairo_line_to (cr, tip.x + BOB_HALF * u, tip.y - BOB_LENGTH * u);
  cairo_line_to (cr, tip.x + BOB_HALF * u, tip.y - 0.55 * BOB_LENGTH * u);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* The string down to the floor is z, on the floor y; seen from above x and y again. */
static void
draw_lengths (const GuidePage *page, const Sketch *sketch, Vec3 at)
{
  const SheetPen *pen = &sketch->pen;
  const double u = pen->unit;
  const Pixel front = pen_at (pen, SHEET_FRONT, at), plan = pen_at (pen, SHEET_PLAN, at);
  const Pixel floor = { front.x, sketch->layout.origin[SHEET_FRONT].y };
  const double low = floor.y + 0.62 * BELOW_GROUND * u;
  const Pixel plane = { sketch->layout.origin[SHEET_FRONT].x, low };
  const Stroke thin = pen_thin (pen, LINE_FULL, page->pen.theme.accent);

  draw_bob (page, sketch, floor);
  draw_dimension (page, sketch, (Pixel){ floor.x, floor.y - BOB_LENGTH * u }, front, 'z');
  pen_line (pen, floor, (Pixel){ floor.x, low + 3.0 * u }, thin);
  pen_line (pen, (Pixel){ plane.x, floor.y }, (Pixel){ plane.x, low + 3.0 * u }, thin);
  draw_dimension (page, sketch, plane, (Pixel){ floor.x, low }, 'y');
  draw_dimension (page, sketch, (Pixel){ plan.x, sketch->layout.origin[SHEET_PLAN].y },
                  plan, 'x');
  draw_dimension (page, sketch, (Pixel){ plane.x, plan.y }, plan, 'y');
  point_sketch_ring (pen->cr, &sketch->view.theme, front.x, front.y);
  point_sketch_ring (pen->cr, &sketch->view.theme, plan.x, plan.y);
}

/* What the lines are that everything is measured from. */
static void
name_planes (const GuidePage *page, const Sketch *sketch)
{
  const FittingPen *pen = &page->pen;
  const SheetLayout *layout = &sketch->layout;
  const PixelBox front = layout->box[SHEET_FRONT], plan = layout->box[SHEET_PLAN];
  const double u = sketch->pen.unit, left = layout->origin[SHEET_FRONT].x;
  const double size = pen->theme.small_text;

  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_SMALL, _ ("ground"), left + 8.0 * u,
                 layout->origin[SHEET_FRONT].y - 4.0 * u, front.width / 2.0,
                 FITTING_LEFT);
  fitting_write (pen, FITTING_SMALL, _ ("front axle"), left + 8.0 * u,
                 layout->origin[SHEET_PLAN].y - 4.0 * u, front.width / 2.0, FITTING_LEFT);
  cairo_save (pen->cr);
  cairo_translate (pen->cr, left - 0.35 * size, plan.y + plan.height - 4.0 * u);
  cairo_rotate (pen->cr, -G_PI / 2.0);
  fitting_write (pen, FITTING_SMALL, _ ("centre plane"), 0.0, 0.0, plan.height,
                 FITTING_LEFT);
  cairo_restore (pen->cr);
}

/* Each point's number in the view where there is room for it, as its page has it. */
static void
draw_numbers (const GuidePage *page, const Sketch *sketch)
{
  static const struct {
    SheetViewName view;
    double right, down; /* on paper at ordinary type size, from the point */
  } places[N_POINTS] = {
    [POINT_ARM_FRONT_PIVOT] = { SHEET_PLAN, -4.0, 24.0 },
    [POINT_ARM_REAR_PIVOT] = { SHEET_PLAN, 22.0, -2.0 },
    [POINT_BALL_JOINT] = { SHEET_FRONT, 0.0, 24.0 },
    [POINT_UPPER_MOUNT] = { SHEET_FRONT, 22.0, -6.0 },
    [POINT_STRUT_FOOT] = { SHEET_FRONT, -26.0, 0.0 },
    [POINT_TIE_ROD_OUTER] = { SHEET_PLAN, -6.0, -24.0 },
    [POINT_TIE_ROD_INNER] = { SHEET_PLAN, -34.0, 0.0 },
    [POINT_WHEEL_CENTRE] = { SHEET_FRONT, 24.0, 0.0 },
  };
  const FittingPen *pen = &page->pen;
  const double u = sketch->pen.unit, size = pen->theme.text;
  const Solid disc = { 0, pen->theme.ground, pen->theme.accent, pen->theme.thin };

  for (PointName i = 0; i < N_POINTS; i++) {
    const Pixel at = pen_at (&sketch->pen, places[i].view, page->guide->car->points[i]);
    const Pixel to = pixel_add (at, places[i].right * u, places[i].down * u);
    const char text[] = { (char) ('1' + i), '\0' };

    pen_line (&sketch->pen, at, to,
              pen_thin (&sketch->pen, LINE_FULL, pen->theme.accent));
    pen_circle (&sketch->pen, at, 2.0 * u,
                (Solid){ 0, pen->theme.accent, pen->theme.accent, 0.5 });
    pen_circle (&sketch->pen, to, NUMBER_RADIUS * u, disc);
    fitting_ink (pen, pen->theme.accent);
    fitting_write (pen, FITTING_TEXT_BOLD, text, to.x - NUMBER_RADIUS * u,
                   to.y + 0.36 * size, 2.0 * NUMBER_RADIUS * u, FITTING_CENTRE);
  }
}

void
guide_sketch_draw (const GuidePage *page, int point, PixelBox box)
{
  Sketch sketch = { .view = { .study = page->guide->study,
                              .section_width = page->guide->car->section_width_mm,
                              .theme = quiet_theme (page, point),
                              .zoom = 1.0,
                              .lit = -1 } };

  if (page->pen.cr == NULL)
    return;
  sketch.layout = lay_out (page->guide, box, sketch.view.theme.text / 12.0);
  sketch.pen = (SheetPen){ .cr = page->pen.cr,
                           .view = &sketch.view,
                           .theme = &sketch.view.theme,
                           .layout = &sketch.layout,
                           .texts = page->pen.texts,
                           .targets = &sketch.targets,
                           .unit = sketch.layout.unit };
  draw_parts (&sketch, SHEET_FRONT);
  draw_parts (&sketch, SHEET_PLAN);
  draw_axle_line (&sketch);
  write_captions (page, &sketch);
  if (point == GUIDE_NO_POINT) {
    name_planes (page, &sketch);
    draw_numbers (page, &sketch);
  } else {
    draw_lengths (page, &sketch, page->guide->car->points[point]);
  }
}
