/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-dimensions.h"
#include "drawing/sheet/sheet-label.h"
#include "kernel/construction.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

/* Of dimension lines, pixels at ordinary type size. */
#define TAIL 15.0
#define ROOM_FOR_ARROWS 22.0
#define BELOW_GROUND 22.0
#define FROM_CENTRE_PLANE 30.0
#define LINE 14.0
/* How far an angle's figure stays from the upright through the mount, mm. */
#define BESIDE_STRUT 60.0
/* Past this an instant centre is as good as at infinity, mm. */
#define FAR_AWAY 99999.0

static Stroke
thin (const SheetPen *pen)
{
  return (Stroke){ LINE_FULL, pen->theme->thin * 0.8, pen->theme->soft_ink };
}

/* Arrow heads between @a and @b where there is room, else from outside. */
static void
draw_arrows (const SheetPen *pen, Pixel a, Pixel b)
{
  const Pixel d = pixel_direction (a, b), back = { -d.x, -d.y };
  const double length = hypot (b.x - a.x, b.y - a.y), tail = TAIL * pen->unit;
  const Colour colour = pen->theme->soft_ink;

  if (length >= ROOM_FOR_ARROWS * pen->unit) {
    pen_line (pen, a, b, thin (pen));
    pen_arrow_head (pen, a, back, colour);
    pen_arrow_head (pen, b, d, colour);
    return;
  }
  pen_line (pen, pixel_add (a, -tail * d.x, -tail * d.y),
            pixel_add (b, tail * d.x, tail * d.y), thin (pen));
  pen_arrow_head (pen, a, d, colour);
  pen_arrow_head (pen, b, back, colour);
}

typedef struct {
  SheetViewName view;
  int quantity; /* or -1 */
  Pixel from, to;
  double place; /* y of a level dimension line, x of an upright one */
  double side;  /* of the text: −1 left, +1 right */
} Span;

static void
draw_extension (const SheetPen *pen, Pixel from, Pixel to)
{
  const Pixel d = pixel_direction (from, to);
  const double gap = 2.0 * pen->unit, past = 4.0 * pen->unit;

  pen_line (pen, pixel_add (from, gap * d.x, gap * d.y),
            pixel_add (to, past * d.x, past * d.y), thin (pen));
}

static void
draw_level_span (const SheetPen *pen, Span s, const Label *label)
{
  const Pixel left = { fmin (s.from.x, s.to.x), s.place };
  const Pixel right = { fmax (s.from.x, s.to.x), s.place };
  const double beside = (TAIL + 4.0) * pen->unit;
  const Pixel at =
      s.side < 0.0 ? pixel_add (left, -beside, 0) : pixel_add (right, beside, 0);

  const Pixel other =
      s.side < 0.0 ? pixel_add (right, beside, 0) : pixel_add (left, -beside, 0);
  const Pixel middle = pixel_between (left, right, 0.5);
  const double line = 0.9 * LINE * pen->unit;
  const LabelSpot spots[] = { { at, s.side < 0.0 ? 1.0 : 0.0 },
                              { other, s.side < 0.0 ? 0.0 : 1.0 },
                              { pixel_add (middle, 0, line), 0.5 },
                              { pixel_add (middle, 0, -line), 0.5 } };

  pen_shows (pen, s.view, s.quantity, left, right);
  if (!label_place (pen, s.view, s.quantity, label, spots, G_N_ELEMENTS (spots)))
    return;
  draw_extension (pen, s.from, (Pixel){ s.from.x, s.place });
  draw_extension (pen, s.to, (Pixel){ s.to.x, s.place });
  draw_arrows (pen, left, right);
}

static void
draw_upright_span (const SheetPen *pen, Span s, const Label *label)
{
  const Pixel top = { s.place, fmin (s.from.y, s.to.y) };
  const Pixel bottom = { s.place, fmax (s.from.y, s.to.y) };
  const Pixel middle = pixel_between (top, bottom, 0.5);

  const double beside = s.side * 7.0 * pen->unit, line = LINE * pen->unit;
  const double across = s.side < 0.0 ? 1.0 : 0.0;
  const LabelSpot spots[] = { { pixel_add (middle, beside, 0), across },
                              { pixel_add (middle, beside, line), across },
                              { pixel_add (middle, beside, -line), across },
                              { pixel_add (middle, -beside, 0), 1.0 - across },
                              { pixel_add (middle, beside, 2.0 * line), across },
                              { pixel_add (middle, beside, -2.0 * line), across } };

  pen_shows (pen, s.view, s.quantity, top, bottom);
  if (!label_place (pen, s.view, s.quantity, label, spots, G_N_ELEMENTS (spots)))
    return;
  draw_extension (pen, s.from, (Pixel){ s.place, s.from.y });
  draw_extension (pen, s.to, (Pixel){ s.place, s.to.y });
  draw_arrows (pen, top, bottom);
}

static void
draw_ground_span (const SheetPen *pen, SheetViewName view)
{
  const Measures *m = &study_in_hand (pen->view->study)->now.measures;
  const gboolean is_front = view == SHEET_FRONT;
  const Quantity quantity = is_front ? QUANTITY_SCRUB_RADIUS : QUANTITY_TRAIL;
  const char *word =
      is_front ? C_ ("dimension", "scrub radius") : C_ ("dimension", "trail");
  const Label label =
      label_for (quantity, label_word (pen, word), FALSE, pen->view->study);
  const Pixel from = pen_at (pen, view, m->axis_at_ground),
              to = pen_at (pen, view, m->contact);
  const Span span = {
    view, (int) quantity, from, to, to.y + BELOW_GROUND * pen->unit, is_front ? -1.0 : 1.0
  };

  draw_level_span (pen, span, &label);
}

/* Between the upright through @vertex and a line that leans by @angle from it; both run
 * from the vertex up or down. */
typedef struct {
  SheetViewName view;
  Quantity quantity;
  const char *word;
  Pixel vertex;
  double radius;
  double lean; /* to the right of the upright as drawn, rad */
} Arc;

static void
draw_arc_below (const SheetPen *pen, Arc a)
{
  const Label label =
      label_for (a.quantity, label_word (pen, a.word), FALSE, pen->view->study);
  const Pixel foot = pixel_add (a.vertex, 0, a.radius);
  const double from = G_PI_2 - fmax (a.lean, 0.0), to = G_PI_2 - fmin (a.lean, 0.0);
  const double side = a.lean < 0.0 ? 1.0 : -1.0, u = pen->unit;
  /* clear of the spring seat */
  const Pixel end =
      pixel_add (foot, side * (BESIDE_STRUT * pen->layout->scale + 4.0 * u), 0);

  const double across = side < 0.0 ? 1.0 : 0.0, line = LINE * u;
  const Pixel beside = pixel_add (end, side * 4.0 * u, 0);
  const LabelSpot spots[] = { { beside, across },
                              { pixel_add (beside, 0, line), across },
                              { pixel_add (beside, 0, -line), across },
                              { pixel_add (beside, 0, 2.0 * line), across } };

  pen_shows (pen, a.view, (int) a.quantity, a.vertex, foot);
  pen_line (pen, pixel_add (a.vertex, 0, 14.0 * u), pixel_add (foot, 0, 6.0 * u),
            thin (pen));
  if (label_place (pen, a.view, (int) a.quantity, &label, spots, G_N_ELEMENTS (spots)))
    pen_line (pen, foot, end, thin (pen));
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, a.vertex.x, a.vertex.y, a.radius, from, to);
  theme_use (pen->cr, pen->theme->accent);
  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  cairo_stroke (pen->cr);
}

static void
draw_axis_angle (const SheetPen *pen, SheetViewName view)
{
  const Study *study = pen->view->study;
  const gboolean is_front = view == SHEET_FRONT;
  const Quantity quantity = is_front ? QUANTITY_SAI : QUANTITY_CASTER;
  const Pixel vertex = pen_at (pen, view, study_in_hand (study)->corner.upper_mount);
  const Pixel ball = pen_at (pen, view, study_in_hand (study)->now.pose.ball_joint);

  draw_arc_below (pen, (Arc){ view, quantity,
                              is_front ? C_ ("dimension", "inclination")
                                       : C_ ("dimension", "caster"),
                              vertex, 0.25 * hypot (ball.x - vertex.x, ball.y - vertex.y),
                              study_in_hand (study)->now.measures.value[quantity] });
}

/* Where the wheel's own line leaves the tyre, against an upright. */
static void
draw_camber (const SheetPen *pen)
{
  const Study *study = pen->view->study;
  const Label label =
      label_for (QUANTITY_CAMBER, label_word (pen, C_ ("dimension", "camber")), TRUE,
                 study);
  const Pixel centre =
      pen_at (pen, SHEET_FRONT, study_in_hand (study)->now.pose.wheel_centre);
  const double free = study->points.loaded_radius * SHEET_TYRE_FREE * pen->layout->scale;
  const double reach = free + 14.0 * pen->unit;
  const double camber = study_in_hand (study)->now.measures.value[QUANTITY_CAMBER];

  pen_line (pen, pixel_add (centre, 0, -free),
            pixel_add (centre, 0, -reach - 3.0 * pen->unit), thin (pen));
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, centre.x, centre.y, reach - 3.0 * pen->unit,
             -G_PI_2 + fmin (camber, 0.0), -G_PI_2 + fmax (camber, 0.0));
  theme_use (pen->cr, pen->theme->accent);
  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  cairo_stroke (pen->cr);

  const double above = -reach - 11.0 * pen->unit, beside = 6.0 * pen->unit;
  const LabelSpot spots[] = {
    { pixel_add (centre, 0, above), 0.5 },
    { pixel_add (centre, beside, above + beside), 0.0 },
    { pixel_add (centre, 0, above - LINE * pen->unit), 0.5 },
    { pixel_add (centre, -beside, above + beside), 1.0 },
  };
  label_place (pen, SHEET_FRONT, QUANTITY_CAMBER, &label, spots, G_N_ELEMENTS (spots));
}

static void
draw_toe (const SheetPen *pen)
{
  const Study *study = pen->view->study;
  const Label label =
      label_for (QUANTITY_TOE_IN, C_ ("dimension", "toe-in"), TRUE, study);
  const double free = study->points.loaded_radius * SHEET_TYRE_FREE;
  const Vec3 w = study_in_hand (study)->now.pose.wheel_centre;
  const Vec3 corner = { w.x + free - 30.0, w.y - pen->view->section_width / 2.0, w.z };
  const Pixel at = pen_at (pen, SHEET_PLAN, corner);

  const double u = pen->unit;
  const double tyre = pen->view->section_width * pen->layout->scale;
  const Pixel left = pixel_add (at, -10.0 * u, 0);
  const Pixel right = pixel_add (at, tyre + 10.0 * u, 0);
  const LabelSpot spots[] = { { left, 1.0 },
                              { pixel_add (left, 0, LINE * u), 1.0 },
                              { right, 0.0 },
                              { pixel_add (left, 0, -LINE * u), 1.0 } };

  label_place (pen, SHEET_PLAN, QUANTITY_TOE_IN, &label, spots, G_N_ELEMENTS (spots));
}

static void
draw_mount_spans (const SheetPen *pen, SheetViewName view)
{
  const Study *study = pen->view->study;
  const MountOffset mount = mount_of_study (study);
  const Pixel was = pen_at (pen, view, study->measured.corner.upper_mount);
  const Pixel is = pen_at (pen, view, study_in_hand (study)->corner.upper_mount);
  const double k = pen->layout->scale, u = pen->unit;
  const double level = was.y - SHEET_MOUNT_ROOM * k - 14.0 * u;
  const gboolean is_front = view == SHEET_FRONT;
  Label label = { "", "" };

  if (is_front)
    inboard_text (mount.inboard, label.figure, sizeof label.figure);
  else
    rearward_text (mount.rearward, label.figure, sizeof label.figure);
  if (fabs (is_front ? mount.inboard : mount.rearward) >= 0.05)
    draw_level_span (pen, (Span){ view, -1, was, is, level, -1.0 }, &label);
  up_text (mount.up, label.figure, sizeof label.figure);
  if (is_front && fabs (mount.up) >= 0.05)
    draw_upright_span (pen, (Span){ view, -1, was, is, was.x + 116.0 * k + 8.0 * u, 1.0 },
                       &label);
}

static void
draw_roll_centre (const SheetPen *pen)
{
  const Study *study = pen->view->study;
  const Measures *m = &study_in_hand (study)->now.measures;
  const double height = m->value[QUANTITY_ROLL_CENTRE_HEIGHT];
  const Label label = label_for (QUANTITY_ROLL_CENTRE_HEIGHT,
                                 C_ ("dimension", "roll centre"), FALSE, study);
  const PixelBox box = pen->layout->box[SHEET_FRONT];
  const Pixel ground = pen_at (pen, SHEET_FRONT, (Vec3){ 0, 0, m->contact.z });
  const Pixel centre = { ground.x, ground.y - height * pen->layout->scale };
  const double u = pen->unit, place = ground.x + FROM_CENTRE_PLANE * u;
  const Theme *t = pen->theme;

  if (!isfinite (height))
    return;
  if (!pixel_box_has (box, centre)) {
    const double way = centre.y < box.y ? -1.0 : 1.0;
    const Pixel tip = { ground.x, way < 0.0 ? box.y : box.y + box.height };

    const Pixel beside = pixel_add (tip, 8.0 * u, -way * 8.0 * u);
    const LabelSpot spots[] = { { beside, 0.0 },
                                { pixel_add (beside, 0, -way * LINE * u), 0.0 },
                                { pixel_add (beside, 0, -2.0 * way * LINE * u), 0.0 } };

    pen_arrow_head (pen, tip, (Pixel){ 0, way }, t->accent);
    label_place (pen, SHEET_FRONT, QUANTITY_ROLL_CENTRE_HEIGHT, &label, spots,
                 G_N_ELEMENTS (spots));
    return;
  }
  draw_upright_span (pen,
                     (Span){ SHEET_FRONT, QUANTITY_ROLL_CENTRE_HEIGHT, ground, centre,
                             place, 1.0 },
                     &label);
  pen_shows (pen, SHEET_FRONT, QUANTITY_ROLL_CENTRE_HEIGHT,
             pixel_add (centre, -5.0 * u, 0), pixel_add (centre, 5.0 * u, 0));
  pen_circle (pen, centre, 4.5 * u, (Solid){ 0, t->ground, t->accent, t->line });
}

static Pixel
front_pixel (const SheetPen *pen, FrontPoint p)
{
  return pen_at (pen, SHEET_FRONT, (Vec3){ 0, p.y, p.z });
}

/* What the construction of the setup in hand comes to on the drawing. */
typedef struct {
  Construction lines;
  Pixel pole;
  gboolean is_inboard, is_seen;
  double sign;
} Drawn;

static Drawn
construct (const SheetPen *pen)
{
  const StudyCorner *setup = study_in_hand (pen->view->study);
  Drawn d = { .lines = construction_draw (&setup->corner, &setup->now.pose,
                                          setup->now.measures.contact) };

  d.is_inboard = !(d.lines.pole.y > d.lines.contact.y);
  d.sign = d.is_inboard ? 1.0 : -1.0;
  d.pole = front_pixel (pen, d.lines.pole);
  d.is_seen = isfinite (d.pole.x) && isfinite (d.pole.y) &&
              pixel_box_has (pen->layout->box[SHEET_FRONT], d.pole);
  return d;
}

typedef struct {
  Pixel from, to;
  gboolean is_there;
} Ray;

/* From @from towards the pole, to it or to the border. */
static Ray
ray_of (const SheetPen *pen,
        const Drawn *d,
        FrontPoint from,
        FrontPoint direction,
        double sign)
{
  const double far = 1e5 * sign;
  Ray ray = { front_pixel (pen, from),
              front_pixel (pen, (FrontPoint){ from.y + far * direction.y,
                                              from.z + far * direction.z }),
              TRUE };

  if (d->is_seen)
    ray.to = d->pole;
  else if (!pixel_box_clip (pen->layout->box[SHEET_FRONT], &ray.from, &ray.to))
    ray = (Ray){ ray.from, ray.from, FALSE };
  return ray;
}

static Stroke
ray_stroke (const SheetPen *pen)
{
  return (Stroke){ LINE_FULL, pen->theme->thin * 0.8,
                   theme_quiet (pen->theme, pen->theme->accent, 0.75) };
}

/* At the border an arrow says that it goes on. */
static void
draw_ray (const SheetPen *pen, const Drawn *d, Ray ray)
{
  if (!ray.is_there)
    return;
  pen_line (pen, ray.from, ray.to, ray_stroke (pen));
  if (!d->is_seen)
    pen_arrow_head (pen, ray.to, pixel_direction (ray.from, ray.to), pen->theme->accent);
}

void
dimensions_draw_construction (const SheetPen *pen)
{
  const Drawn d = construct (pen);
  const Construction *c = &d.lines;
  const double towards = c->pole_direction.y < 0.0 ? d.sign : -d.sign;

  draw_ray (pen, &d, ray_of (pen, &d, c->arm, c->arm_direction, d.sign));
  draw_ray (pen, &d, ray_of (pen, &d, c->mount, c->mount_direction, d.sign));
  draw_ray (pen, &d, ray_of (pen, &d, c->contact, c->pole_direction, towards));
  if (!d.is_inboard || d.is_seen)
    pen_line (pen, front_pixel (pen, c->contact),
              front_pixel (pen, (FrontPoint){ 0, c->contact.z + c->roll_centre_height }),
              ray_stroke (pen));
  if (d.is_seen)
    pen_circle (pen, d.pole, 3.5 * pen->unit,
                (Solid){ 0, pen->theme->ground, pen->theme->accent, pen->theme->thin });
}

static void
swing_arm_text (const Study *study, char *text, size_t size)
{
  const double length =
      study_in_hand (study)->now.measures.value[QUANTITY_SWING_ARM_LENGTH];
  char figure[24];

  quantity_format_whole (QUANTITY_SWING_ARM_LENGTH, fabs (length), FALSE, figure,
                         sizeof figure);
  if (!(fabs (length) < FAR_AWAY))
    g_strlcpy (text, _ ("at infinity"), size);
  else
    g_snprintf (text, size, length > 0.0 ? _ ("%s inboard") : _ ("%s outboard"), figure);
}

/* "instant centre, 3127 mm inboard" in two lines, at the end of the strut's normal. */
static void
draw_instant_centre_label (const SheetPen *pen)
{
  const Study *study = pen->view->study;
  const Drawn d = construct (pen);
  const Pixel end = ray_of (pen, &d, d.lines.mount, d.lines.mount_direction, d.sign).to;
  const Pixel mount =
      pen_at (pen, SHEET_FRONT, study_in_hand (study)->corner.upper_mount);
  const double u = pen->unit, line = LINE * u, room = FROM_CENTRE_PLANE * u;
  const double way = end.y > mount.y ? line : -line;
  /* outboard there is room between the views only */
  const Pixel first = d.is_inboard ? pixel_add (end, room, way > 0.0 ? way : 2.0 * way)
                                   : pixel_add (end, 6.0 * u, -line / 2.0);
  const double left = pen->layout->origin[SHEET_FRONT].x + 6.0 * u - first.x;
  const LabelSpot spots[] = { { first, 0.0 },
                              { pixel_add (first, 0, way), 0.0 },
                              { pixel_add (first, left, way), 0.0 },
                              { pixel_add (first, 0, 2.0 * way), 0.0 },
                              { pixel_add (first, left, 2.5 * way), 0.0 },
                              { pixel_add (first, left, 4.0 * way), 0.0 } };
  Label label = { C_ ("dimension", "instant centre"), "" };

  swing_arm_text (study, label.figure, sizeof label.figure);
  label_place_stacked (pen, SHEET_FRONT, QUANTITY_SWING_ARM_LENGTH, &label, spots,
                       d.is_inboard ? G_N_ELEMENTS (spots) : 2);
}

static gboolean
is_named_at_handle (const SheetPen *pen, SheetViewName view)
{
  return pen->view->held == SHEET_HANDLE_MOUNT && pen->view->handle_view == view;
}

void
dimensions_draw (const SheetPen *pen, SheetViewName view)
{
  if (view == SHEET_PLAN) {
    draw_toe (pen);
    return;
  }
  draw_ground_span (pen, view);
  draw_axis_angle (pen, view);
  if (view == SHEET_FRONT)
    draw_camber (pen);
  if (!is_named_at_handle (pen, view))
    draw_mount_spans (pen, view);
  if (view == SHEET_FRONT) {
    draw_roll_centre (pen);
    draw_instant_centre_label (pen);
  }
}
