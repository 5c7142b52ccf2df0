/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet-forces.h"
#include "drawing/axis.h"
#include "drawing/sheet-label.h"
#include "drawing/sheet-parts.h"
#include "model/number-text.h"

#include <glib/gi18n-lib.h>

/* Pixels at ordinary type size. */
#define BAR 100.0       /* of the scale */
#define LINE 14.0       /* of small text */
#define BESIDE 8.0      /* text from an arrow's tip */
#define LEAST 6.0       /* an arrow that is shorter is a dot with its figure */
#define SHARE 0.34      /* of the front view's height that the longest arrow may take */
#define REACH 2.2       /* of the free line, in lengths from mount to ball joint */
#define LEAST_FORCE 0.5 /* N: what rounds to nothing is not drawn */

typedef struct {
  Vec3 at, force;
  const char *word;    /* translated */
  gboolean ends_there; /* its tip is at the joint, as the road pushes the tyre */
  gboolean is_on_body;
} Arrow;

#define MOST_ARROWS 8

static double
longest (const JointLoads *loads)
{
  const JointForces *f = &loads->forces;

  return fmax (fmax (vec3_length (loads->load.contact), vec3_length (f->tower)),
               fmax (vec3_length (f->front_pivot), vec3_length (f->rear_pivot)));
}

double
forces_scale (const SheetPen *pen)
{
  const double room = SHARE * pen->layout->box[SHEET_FRONT].height;
  const double least = longest (pen->view->loads) * BAR * pen->unit / fmax (room, 1.0);
  const double tens = pow (10.0, floor (log10 (fmax (least, 1.0))));
  const double steps[] = { 1.0, 2.0, 5.0 };

  for (unsigned i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * tens >= least)
      return steps[i] * tens;
  return 10.0 * tens;
}

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

/* In the plane of the view. */
static double
force_in_view (SheetViewName view, Vec3 force)
{
  return view == SHEET_FRONT  ? hypot (force.y, force.z)
         : view == SHEET_SIDE ? hypot (force.x, force.z)
                              : hypot (force.x, force.y);
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
  Label label = { label_word (pen, arrow->word), "" };

  unit_format_whole (UNIT_FORCE, force_in_view (view, arrow->force), 0, FALSE,
                     label.figure, sizeof label.figure);
  label_place (pen, view, -1, &label, spots, G_N_ELEMENTS (spots));
}

static void
draw_arrow (const SheetPen *pen, SheetViewName view, const Arrow *arrow, double mm_per_n)
{
  const Theme *t = pen->theme;
  const Colour colour = arrow->is_on_body ? t->accent : t->ink;
  const Pixel at = pen_at (pen, view, arrow->at);
  const Vec3 reach = vec3_scale (arrow->force, mm_per_n);
  const Pixel tail =
      arrow->ends_there ? pen_at (pen, view, vec3_sub (arrow->at, reach)) : at;
  const Pixel tip =
      arrow->ends_there ? at : pen_at (pen, view, vec3_add (arrow->at, reach));
  const Stroke stroke = { LINE_FULL, (arrow->is_on_body ? 1.8 : 1.4) * t->line, colour };

  if (force_in_view (view, arrow->force) < LEAST_FORCE)
    return;
  if (hypot (tip.x - tail.x, tip.y - tail.y) < LEAST * pen->unit) {
    pen_circle (pen, at, 2.5 * pen->unit, (Solid){ 0.0, colour, colour, t->thin });
  } else {
    pen_line (pen, tail, tip, stroke);
    pen_arrow_head (pen, tip, pixel_direction (tail, tip), colour);
  }
  write_force (pen, view, arrow, tail, tip);
}

/* Chain line from above the mount down past the ball joint's height. */
static void
draw_free_line (const SheetPen *pen)
{
  const JointLoads *loads = pen->view->loads;
  const Vec3 along = joint_forces_free_line (&loads->forces);
  const Vec3 mount = study_in_hand (pen->view->study)->corner.upper_mount;
  const double strut = vec3_distance (mount, loads->pose.ball_joint);
  const Vec3 top = vec3_along (mount, 0.15 * strut, along);
  const Vec3 bottom = vec3_along (mount, -REACH / 2.0 * strut, along);
  Label label = { label_word (pen, _ ("no side force along this line")), "" };

  if (!vec3_is_finite (along) || loads->forces.coil + loads->forces.strut <= 0.0)
    return;

  const Pixel a = pen_at (pen, SHEET_FRONT, top), b = pen_at (pen, SHEET_FRONT, bottom);
  const LabelSpot spots[] = { { pixel_add (b, BESIDE * pen->unit, 0), 0.0 },
                              { pixel_add (b, -BESIDE * pen->unit, 0), 1.0 },
                              { pixel_add (a, BESIDE * pen->unit, 0), 0.0 } };
  g_autofree char *side = unit_text (UNIT_FORCE, vec3_length (loads->forces.side), 0);

  g_snprintf (label.figure, sizeof label.figure, _ ("side force %s"), side);
  pen_line (pen, a, b, pen_thin (pen, LINE_CHAIN, pen->theme->accent));
  label_place_stacked (pen, SHEET_FRONT, -1, &label, spots, G_N_ELEMENTS (spots));
}

/* Under the caption of the front view's top left: "1000 N" over its length. */
static void
draw_scale (const SheetPen *pen, double newtons)
{
  const PixelBox view = pen->layout->box[SHEET_FRONT];
  const double u = pen->unit, length = BAR * u;
  const Pixel places[] = { { view.x + view.width - length, view.y + 2.5 * LINE * u },
                           { view.x, view.y + 2.5 * LINE * u },
                           { view.x, view.y + view.height - LINE * u } };
  g_autofree char *text = unit_text (UNIT_FORCE, newtons, 0);

  for (unsigned i = 0; i < G_N_ELEMENTS (places); i++) {
    const Pixel left = places[i], right = pixel_add (left, length, 0);
    const PixelBox box = { left.x - 2.0 * u, left.y - LINE * u, length + 4.0 * u,
                           LINE * u + 4.0 * u };

    if (!writing_has_room (pen, box))
      continue;
    pen_line (pen, left, right, (Stroke){ LINE_FULL, pen->theme->line, pen->theme->ink });
    pen_arrow_head (pen, right, (Pixel){ 1.0, 0.0 }, pen->theme->ink);
    writing_add (pen, text, pixel_add (left, 0, -0.55 * LINE * u), pen->theme->soft_ink);
    writing_claim (pen, box);
    return;
  }
}

void
forces_draw (const SheetPen *pen, SheetViewName view)
{
  const double newtons = forces_scale (pen);
  const double mm_per_n = BAR * pen->unit / newtons / pen->layout->scale;
  Arrow arrows[MOST_ARROWS];
  const unsigned n = list_arrows (pen, view, arrows);

  if (view == SHEET_FRONT) {
    draw_scale (pen, newtons);
    draw_free_line (pen);
  }
  for (unsigned i = 0; i < n; i++)
    draw_arrow (pen, view, &arrows[i], mm_per_n);
}
