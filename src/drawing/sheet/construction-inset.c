/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/construction-inset.h"

/* Widths that the inset may show, mm; farther away nothing of the corner would be seen.
 */
static const double spans[] = {
  2500.0, 3500.0, 5000.0, 7000.0, 10000.0, 15000.0, 20000.0
};

/* About what has to be seen, in parts of the width. */
#define ROOM 0.06

Pixel
inset_place (const StoryInset *inset, FrontPoint p)
{
  return (Pixel){ inset->origin.x + inset->scale * p.y,
                  inset->origin.y - inset->scale * p.z };
}

/* Least and most of what has to be seen, mm. */
typedef struct {
  double y0, y1, z0, z1;
} Extent;

static Extent
extent_of (const StoryNumbers *n, double outboard)
{
  const FrontPoint pole = n->drawn.pole;
  const double ground = n->drawn.contact.z;

  return (Extent){ fmin (pole.y, -0.3 * outboard), fmax (pole.y, outboard),
                   fmin (pole.z, ground), fmax (pole.z, n->drawn.mount.z) };
}

StoryInset
inset_fit (PixelBox box, double text, const StoryNumbers *n, double outboard)
{
  const Extent e = extent_of (n, outboard);
  const double caption = 1.5 * text;
  const PixelBox plot = { box.x, box.y + caption, box.width, box.height - caption };
  StoryInset inset = { .box = box, .plot = plot };

  if (n->is_parallel || plot.width <= 0.0 || plot.height <= 0.0)
    return inset;
  for (unsigned i = 0; i < G_N_ELEMENTS (spans); i++) {
    const double scale = plot.width / spans[i], room = ROOM * plot.width;

    if ((e.y1 - e.y0) * scale + 2.0 * room > plot.width ||
        (e.z1 - e.z0) * scale + 2.0 * room > plot.height)
      continue;
    inset.scale = scale;
    /* the corner at the right when the pole is inboard, at the left when outboard */
    inset.origin.x = n->pole_inboard > 0.0 ? plot.x + plot.width - room - scale * e.y1
                                           : plot.x + room - scale * e.y0;
    inset.origin.y = plot.y + plot.height / 2.0 + scale * (e.z0 + e.z1) / 2.0;
    return inset;
  }
  return inset;
}

static Pixel
at (const StoryInset *inset, Vec3 p)
{
  return inset_place (inset, (FrontPoint){ p.y, p.z });
}

static void
draw_frame (const StoryInset *inset, const SheetPen *pen)
{
  const PixelBox b = inset->box;

  cairo_rectangle (pen->cr, b.x, b.y, b.width, b.height);
  theme_use (pen->cr, colour_with_alpha (pen->theme->ground, 1.0));
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, pen->theme->body);
  theme_line (pen->cr, LINE_FULL, 0.5 * pen->theme->thin);
  cairo_stroke (pen->cr);
}

static void
draw_corner (const StoryInset *inset,
             const SheetPen *pen,
             const StudyCorner *corner,
             const StoryNumbers *n)
{
  const Theme *t = pen->theme;
  const PixelBox b = inset->plot;
  const Pose *pose = &corner->now.pose;
  const Vec3 *points = pen->view->study->points.at;
  const double ground = inset_place (inset, n->drawn.contact).y;
  const Vec3 top =
      vec3_along (pose->wheel_centre, -1.0,
                  vec3_sub (corner->now.measures.contact, pose->wheel_centre));
  const Stroke part = { LINE_FULL, 0.6 * t->line, t->ink };
  const double wheel = fmax (pen->view->section_width * inset->scale, 2.0);

  pen_line (pen, (Pixel){ b.x, ground }, (Pixel){ b.x + b.width, ground },
            (Stroke){ LINE_FULL, 0.5 * t->thin, t->ink });
  pen_line (pen, (Pixel){ inset->origin.x, b.y },
            (Pixel){ inset->origin.x, b.y + b.height },
            (Stroke){ LINE_CHAIN, 0.4 * t->thin, t->soft_ink });
  pen_line (pen, at (inset, corner->now.measures.contact), at (inset, top),
            (Stroke){ LINE_FULL, wheel, t->body });
  pen_line (pen, at (inset, points[POINT_ARM_FRONT_PIVOT]), at (inset, pose->ball_joint),
            part);
  pen_line (pen, at (inset, pose->strut_foot), at (inset, corner->corner.upper_mount),
            part);
}

static void
draw_construction (const StoryInset *inset,
                   const SheetPen *pen,
                   const StoryNumbers *n,
                   StoryStep step)
{
  const Theme *t = pen->theme;
  const Pixel pole = inset_place (inset, n->drawn.pole);
  const FrontPoint centre = { 0.0, n->drawn.contact.z + n->drawn.roll_centre_height };
  const Stroke thin = { LINE_FULL, 0.5 * t->line, t->accent };

  pen_line (pen, inset_place (inset, n->drawn.arm), pole, thin);
  pen_line (pen, inset_place (inset, n->drawn.mount), pole, thin);
  if (step >= STORY_CONTACT_LINE) {
    pen_line (pen, inset_place (inset, n->drawn.contact), pole, thin);
    if (n->pole_inboard < 0.0)
      pen_line (pen, inset_place (inset, n->drawn.contact), inset_place (inset, centre),
                thin);
  }
  if (step >= STORY_ROLL_CENTRE)
    pen_circle (pen, inset_place (inset, centre), 0.16 * t->text,
                (Solid){ 0, t->accent, t->accent, 0.5 * t->thin });
  pen_circle (pen, pole, 0.24 * t->text,
              (Solid){ 0, step == STORY_INSTANT_CENTRE ? t->accent : pen_hollow (pen),
                       t->accent, 0.6 * t->line });
}

static void
draw_caption (const StoryInset *inset, const SheetPen *pen, const StoryNumbers *n)
{
  const PixelBox b = inset->box;
  const double text = pen->theme->text;
  const TextStyle style = pen_style (pen, text, TEXT_BOLD);
  g_autofree char *where = story_pole_text (n);

  theme_use (pen->cr, pen->theme->accent);
  text_draw_within (pen->texts, pen->cr, style, where, b.x + 0.4 * text,
                    b.y + 1.15 * text, b.width - 0.8 * text);
}

void
inset_draw (const StoryInset *inset,
            const SheetPen *pen,
            const StudyCorner *corner,
            const StoryNumbers *n,
            StoryStep step)
{
  draw_frame (inset, pen);
  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, inset->plot.x, inset->plot.y, inset->plot.width,
                   inset->plot.height);
  cairo_clip (pen->cr);
  draw_corner (inset, pen, corner, n);
  draw_construction (inset, pen, n, step);
  cairo_restore (pen->cr);
  draw_caption (inset, pen, n);
}
