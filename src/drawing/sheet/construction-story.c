/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/construction-story.h"

#include "drawing/pen/axis.h"
#include "drawing/sheet/construction-inset.h"
#include "drawing/sheet/sheet-parts.h"

/* Type and margins in parts of the canvas: the height, or what a 16:9 canvas of that
 * width would have. */
#define TEXT_PART 0.04
#define MARGIN_PART 0.03
#define TITLE_SIZE 1.15 /* of the text */
#define LINES_KEPT 2    /* of a sentence */

/* Room about the corner, mm. */
#define ABOVE_MOUNT 40.0
#define BESIDE_TYRE 60.0
#define LEAST_BELOW_GROUND 120.0
#define MOST_BELOW_GROUND 320.0
#define BELOW_ROLL_CENTRE 70.0
#define INBOARD_OF_MIDDLE 150.0

#define INSET_WIDE 0.36 /* of the picture */
#define INSET_HIGH 0.29
#define INSET_FLAT 0.4 /* its height to its width, at most */

struct Story {
  TextCache *texts;
  StoryPlaces places;
};

/* One drawing. */
typedef struct {
  cairo_t *cr;
  const StoryView *view;
  const StudyCorner *corner;
  StoryNumbers n;
  Theme theme;
  TextCache *texts;
  double margin;
  PixelBox words, picture;
  double ground_y;
  SheetLayout layout;
  SheetView sheet;
  SheetTargets targets;
  SheetPen pen;
  StoryInset inset;
} Picture;

Story *
story_new (void)
{
  Story *story = g_new0 (Story, 1);

  story->texts = text_cache_new ();
  return story;
}

void
story_free (Story *story)
{
  if (story == NULL)
    return;
  text_cache_free (story->texts);
  g_free (story);
}

StoryPlaces
story_places (const Story *story)
{
  return story->places;
}

/* One size of type, large, and lines that go with it. */
static Theme
story_theme (const Theme *theme, double width, double height)
{
  const double text = fmax (theme->text, TEXT_PART * fmin (height, 9.0 / 16.0 * width));
  Theme scaled = theme_scaled (*theme, text / theme->text);

  scaled.small_text = scaled.text;
  return scaled;
}

static TextStyle
title_style (const Theme *t)
{
  return (TextStyle){ t->font, TITLE_SIZE * t->text, TEXT_BOLD };
}

static TextStyle
sentence_style (const Theme *t)
{
  return (TextStyle){ t->font, t->text, TEXT_PLAIN };
}

/* Enough for the longest sentence of all steps, so that the picture stays where it is. */
static double
words_height (const Picture *p, double width)
{
  const TextStyle style = sentence_style (&p->theme);
  double most =
      LINES_KEPT * text_measure (p->texts, style, story_title (STORY_CORNER)).height;

  for (StoryStep step = 0; step < N_STORY_STEPS; step++) {
    g_autofree char *sentence = story_sentence (&p->n, step);

    most = fmax (most, text_measure_wrapped (p->texts, style, sentence, width).height);
  }
  return most + 1.35 * TITLE_SIZE * p->theme.text;
}

/* What the picture holds about the ground and the centre plane, mm: of the car and its
 * travel, never of where it stands. */
typedef struct {
  double above, below, outboard;
} Extent;

static Extent
extent_of (const StoryView *view)
{
  const Study *study = view->study;
  const double mount = study->points.at[POINT_UPPER_MOUNT].z;
  const double tyre = view->section_width / 2.0 + BESIDE_TYRE;
  Extent e = { mount + ABOVE_MOUNT - fmin (study->range.from, 0.0), LEAST_BELOW_GROUND,
               study->points.at[POINT_WHEEL_CENTRE].y + tyre };

  for (int i = 0; i < STUDY_STATIONS; i++) {
    const Station *s = &study->measured.stations[i];

    if (s->status != POSE_OK)
      continue;
    e.below = fmax (e.below,
                    BELOW_ROLL_CENTRE - s->measures.value[QUANTITY_ROLL_CENTRE_HEIGHT]);
    e.outboard = fmax (e.outboard, s->measures.contact.y + tyre);
  }
  e.below = fmin (e.below, MOST_BELOW_GROUND);
  return e;
}

static void
place_view (Picture *p, double width, double height)
{
  const Extent e = extent_of (p->view);
  const PixelBox box = p->picture;
  const double k = fmax (fmin (box.height / (e.above + e.below),
                               box.width / (e.outboard + INBOARD_OF_MIDDLE)),
                         1e-3);
  const double travel =
      p->n.status == POSE_OK ? p->n.drawn.contact.z : p->view->study->travel;
  const double x = box.x + box.width - k * e.outboard;

  p->ground_y = box.y + k * e.above;
  p->layout = (SheetLayout){ .unit = p->theme.text / 12.0,
                             .scale = k,
                             .canvas = { 0.0, 0.0, width, height } };
  p->layout.box[SHEET_FRONT] = box;
  p->layout.origin[SHEET_FRONT] = (Pixel){ x, p->ground_y + k * travel };
}

static void
begin (Picture *p, double width, double height)
{
  const double m = MARGIN_PART * fmin (width, height), inner = width - 2.0 * m;
  const double words = words_height (p, inner);
  const double top = m + words + 0.5 * m;

  p->margin = m;
  p->words = (PixelBox){ m, m, inner, words };
  p->picture = (PixelBox){ m, top, inner, fmax (height - top - m, 10.0) };
  place_view (p, width, height);
  p->sheet = (SheetView){ .study = p->view->study,
                          .section_width = p->view->section_width,
                          .theme = p->theme,
                          .zoom = 1.0,
                          .lit = -1 };
  p->pen = (SheetPen){
    p->cr, &p->sheet, &p->theme, &p->layout, p->texts, &p->targets, 0.85 * p->layout.unit,
    NULL
  };
}

static Pixel
front (const Picture *p, FrontPoint f)
{
  return pen_at (&p->pen, SHEET_FRONT, (Vec3){ 0, f.y, f.z });
}

static gboolean
pole_is_seen (const Picture *p)
{
  const Pixel pole = front (p, p->n.drawn.pole);
  const PixelBox b = p->picture;
  const double room = p->theme.text;

  return !p->n.is_parallel &&
         pixel_box_has ((PixelBox){ b.x + room, b.y + room, b.width - 2.0 * room,
                                    b.height - 2.0 * room },
                        pole);
}

static void
draw_ground (const Picture *p)
{
  const PixelBox b = p->picture;
  const Theme *t = &p->theme;
  const Pixel left = { b.x, p->ground_y }, right = { b.x + b.width, p->ground_y };

  pen_hatched_edge (&p->pen, left, right, 0.5 * t->text,
                    (Stroke){ LINE_FULL, t->thin, t->faint });
  pen_line (&p->pen, left, right, (Stroke){ LINE_FULL, t->line * 0.7, t->ink });
}

static void
draw_corner (const Picture *p)
{
  const gboolean assembles = p->n.status == POSE_OK;

  draw_ground (p);
  parts_draw_centre_plane (&p->pen, SHEET_FRONT);
  if (assembles)
    parts_draw_wheel (&p->pen, SHEET_FRONT, p->corner);
  parts_draw_body (&p->pen, SHEET_FRONT);
  if (assembles)
    parts_draw_linkage (&p->pen, SHEET_FRONT, p->corner);
  parts_draw_bushes (&p->pen, SHEET_FRONT);
}

/* What a step adds is drawn strong while it is the step in hand, then steps back. */
static Stroke
stroke_of (const Picture *p, StoryStep step)
{
  const Theme *t = &p->theme;

  return p->view->step == step
             ? (Stroke){ LINE_FULL, 1.1 * t->thick, t->accent }
             : (Stroke){ LINE_FULL, 0.55 * t->line, theme_quiet (t, t->accent, 0.8) };
}

/* The whole line across the picture, thin: it runs on past every centre, and stays where
 * it is when that passes through infinity. */
static void
draw_through (const Picture *p, FrontPoint at, FrontPoint way, Stroke stroke)
{
  const double far = 1e5;
  Pixel a = front (p, (FrontPoint){ at.y - far * way.y, at.z - far * way.z });
  Pixel b = front (p, (FrontPoint){ at.y + far * way.y, at.z + far * way.z });

  if (!pixel_box_clip (p->picture, &a, &b))
    return;
  stroke.width = p->theme.thin * 0.6;
  stroke.colour.alpha *= 0.6;
  pen_line (&p->pen, a, b, stroke);
}

/* From @at to the pole, or on to the border with an arrow that says so. @way is unit and
 * points to the centre plane. */
static void
draw_towards_pole (const Picture *p, FrontPoint at, FrontPoint way, Stroke stroke)
{
  const double far = p->n.pole_inboard < 0.0 ? -1e5 : 1e5;
  const Pixel pole = front (p, p->n.drawn.pole);
  Pixel a = front (p, at);
  Pixel b = front (p, (FrontPoint){ at.y + far * way.y, at.z + far * way.z });

  if (pole_is_seen (p)) {
    pen_line (&p->pen, a, pole, stroke);
    return;
  }
  if (!pixel_box_clip (p->picture, &a, &b))
    return;

  /* a head that a strong line does not hide */
  const Pixel d = pixel_direction (a, b);
  SheetPen pen = p->pen;
  pen.unit = fmax (pen.unit, 0.5 * stroke.width);
  pen_line (&pen, a, pixel_add (b, -4.0 * pen.unit * d.x, -4.0 * pen.unit * d.y), stroke);
  pen_arrow_head (&pen, b, d, p->theme.accent);
}

static void
draw_line (const Picture *p, StoryStep step, FrontPoint at, FrontPoint way)
{
  const Stroke stroke = stroke_of (p, step);

  if (p->view->step < step)
    return;
  draw_through (p, at, way, stroke);
  draw_towards_pole (p, at, way, stroke);
}

/* The strut's axis, and the square corner between it and its normal. */
static void
draw_square_corner (const Picture *p)
{
  const Stroke stroke = stroke_of (p, STORY_STRUT_NORMAL);
  const Vec3 u = p->corner->now.pose.strut_direction;
  const double length = hypot (u.y, u.z), size = 0.8 * p->theme.text / p->layout.scale;
  const FrontPoint down = { -u.y / length, -u.z / length },
                   in = p->n.drawn.mount_direction, at = p->n.drawn.mount;
  const FrontPoint corners[] = {
    { at.y + size * in.y, at.z + size * in.z },
    { at.y + size * (in.y + down.y), at.z + size * (in.z + down.z) },
    { at.y + size * down.y, at.z + size * down.z },
  };
  const Vec3 foot = p->corner->now.pose.strut_foot;

  if (p->view->step < STORY_STRUT_NORMAL)
    return;
  pen_line (&p->pen,
            front (p, (FrontPoint){ at.y - 90.0 * down.y, at.z - 90.0 * down.z }),
            front (p, (FrontPoint){ foot.y + 60.0 * down.y, foot.z + 60.0 * down.z }),
            (Stroke){ LINE_CHAIN, 0.7 * p->theme.thin, p->theme.accent });
  for (int i = 0; i < 2; i++)
    pen_line (&p->pen, front (p, corners[i]), front (p, corners[i + 1]),
              (Stroke){ LINE_FULL, 0.5 * stroke.width + 0.5, stroke.colour });
}

static void
draw_dot (const Picture *p, Pixel at, double size, gboolean is_strong)
{
  const Theme *t = &p->theme;

  pen_circle (&p->pen, at, size * t->text,
              (Solid){ 0, is_strong ? t->accent : pen_hollow (&p->pen), t->accent,
                       is_strong ? t->line : 0.7 * t->line });
}

static void
draw_text (const Picture *p, const char *text, Pixel at, double across, Colour colour)
{
  const TextStyle style = { p->theme.font, p->theme.text, TEXT_BOLD };
  const double width = text_measure (p->texts, style, text).width;
  const Pixel left = { CLAMP (at.x - across * width, p->margin,
                              fmax (p->words.x + p->words.width - width, p->margin)),
                       at.y };

  pen_patch (&p->pen, left, width);
  theme_use (p->cr, colour);
  text_draw (p->texts, p->cr, style, text, left.x, left.y, (TextAnchor){ 0.0, 0.5 });
}

/* Height of a line of the construction over @x, as a pixel. */
static double
line_y (const Picture *p, FrontPoint at, FrontPoint way, double x)
{
  const Pixel a = front (p, at);

  return a.y - (x - a.x) * way.z / way.y;
}

/* Between the two lines: at the border inboard, or left of the centre plane and pointing
 * outboard. */
static void
draw_far_label (const Picture *p)
{
  const Construction *c = &p->n.drawn;
  const gboolean is_inboard = p->n.pole_inboard >= 0.0;
  const double text = p->theme.text, way = is_inboard ? -1.0 : 1.0;
  const double x =
      is_inboard ? p->picture.x : p->layout.origin[SHEET_FRONT].x - 0.5 * text;
  const double middle = p->layout.origin[SHEET_FRONT].x / 2.0;
  const double y = (line_y (p, c->arm, c->arm_direction, middle) +
                    line_y (p, c->mount, c->mount_direction, middle)) /
                   2.0;
  const Pixel tip = { x, y }, tail = { x - way * 2.0 * text, y };
  g_autofree char *where = story_pole_text (&p->n);

  pen_line (&p->pen, tail, pixel_add (tip, -way * 0.4 * text, 0.0),
            (Stroke){ LINE_FULL, p->theme.line, p->theme.accent });
  pen_arrow_head (&p->pen, tip, (Pixel){ way, 0.0 }, p->theme.accent);
  draw_text (p, where, pixel_add (tail, -way * 0.5 * text, 0.0), is_inboard ? 0.0 : 1.0,
             p->theme.accent);
}

static void
draw_pole (Picture *p)
{
  if (p->view->step < STORY_INSTANT_CENTRE)
    return;
  if (pole_is_seen (p)) {
    draw_dot (p, front (p, p->n.drawn.pole), 0.32, p->view->step == STORY_INSTANT_CENTRE);
    return;
  }

  const PixelBox b = p->picture;
  const double wide =
      fmin (INSET_WIDE * b.width, p->layout.origin[SHEET_FRONT].x - b.x - p->theme.text);
  const PixelBox box = { b.x, b.y, wide,
                         fmin (INSET_HIGH * b.height, INSET_FLAT * wide) };

  p->inset = inset_fit (box, p->theme.text, &p->n, extent_of (p->view).outboard);
  if (p->inset.scale > 0.0)
    inset_draw (&p->inset, &p->pen, p->corner, &p->n, p->view->step);
  else
    draw_far_label (p);
}

static Pixel
roll_centre (const Picture *p)
{
  return front (p, (FrontPoint){ 0.0,
                                 p->n.drawn.contact.z + p->n.drawn.roll_centre_height });
}

static void
draw_contact (const Picture *p)
{
  if (p->view->step >= STORY_CONTACT_LINE)
    draw_dot (p, front (p, p->n.drawn.contact), 0.26,
              p->view->step == STORY_CONTACT_LINE);
}

/* Height over the ground as a dimension inboard of the centre plane. The figure stands
 * beside it, or across the ground from a roll centre that is too near: the line from the
 * contact does not go there. */
static void
draw_height (const Picture *p, Pixel centre)
{
  const double text = p->theme.text, x = centre.x - 1.6 * text;
  const Pixel ground = { x, p->ground_y }, top = { x, centre.y };
  const double way = top.y < ground.y ? -1.0 : 1.0, tall = fabs (top.y - ground.y);
  const Stroke thin = { LINE_FULL, 0.5 * p->theme.line, p->theme.accent };
  char label[48];

  unit_format_whole (UNIT_LENGTH, p->n.drawn.roll_centre_height,
                     MAX (construction_decimals (p->n.drawn.roll_centre_height,
                                                 p->n.exact_height),
                          1),
                     FALSE, label, sizeof label);
  if (tall > 0.8 * text) {
    pen_line (&p->pen, pixel_add (top, -0.3 * text, 0.0), centre, thin);
    pen_line (&p->pen, ground, top, thin);
    pen_arrow_head (&p->pen, top, (Pixel){ 0.0, way }, p->theme.accent);
    pen_arrow_head (&p->pen, ground, (Pixel){ 0.0, -way }, p->theme.accent);
  }
  const Pixel beside = { x - 0.6 * text, (top.y + ground.y) / 2.0 },
              across = { centre.x - 0.8 * text, ground.y - way * 1.1 * text };
  draw_text (p, label, tall > 1.6 * text ? beside : across, 1.0, p->theme.accent);
}

static void
draw_roll_centre (const Picture *p)
{
  const Stroke stroke = stroke_of (p, STORY_ROLL_CENTRE);
  const PixelBox b = p->picture;
  const Pixel at = roll_centre (p);
  Pixel from = front (p, p->n.drawn.contact), to = at;

  if (p->view->step < STORY_ROLL_CENTRE)
    return;
  pen_line (&p->pen, (Pixel){ at.x, b.y }, (Pixel){ at.x, b.y + b.height },
            (Stroke){ LINE_FULL, 0.8 * p->theme.line, stroke.colour });
  if (pixel_box_clip (b, &from, &to))
    pen_line (&p->pen, from, to, stroke);
  if (!pixel_box_has (b, at)) {
    const double way = at.y < b.y ? -1.0 : 1.0;

    pen_arrow_head (&p->pen, (Pixel){ at.x, way < 0.0 ? b.y : b.y + b.height },
                    (Pixel){ 0.0, way }, p->theme.accent);
    return;
  }
  draw_height (p, at);
  draw_dot (p, at, 0.42, TRUE);
}

static void
draw_construction (Picture *p)
{
  const Construction *c = &p->n.drawn;
  /* the ray from the contact is given towards the pole: here all point inboard */
  const double sign = c->pole_direction.y > 0.0 ? -1.0 : 1.0;
  const FrontPoint contact_way = { sign * c->pole_direction.y,
                                   sign * c->pole_direction.z };

  draw_line (p, STORY_ARM_LINE, c->arm, c->arm_direction);
  draw_square_corner (p);
  draw_line (p, STORY_STRUT_NORMAL, c->mount, c->mount_direction);
  draw_line (p, STORY_CONTACT_LINE, c->contact, contact_way);
  draw_pole (p);
  draw_roll_centre (p);
  draw_contact (p);
}

static void
draw_words (const Picture *p)
{
  const TextStyle title = title_style (&p->theme);
  const gboolean assembles = p->n.status == POSE_OK;
  g_autofree char *sentence = story_sentence (&p->n, p->view->step);
  char place[32];

  theme_use (p->cr, p->theme.soft_ink);
  g_snprintf (place, sizeof place, "%d / %d", (int) p->view->step + 1, N_STORY_STEPS);
  text_draw (p->texts, p->cr, sentence_style (&p->theme), place,
             p->words.x + p->words.width, p->words.y, (TextAnchor){ 1.0, 0.0 });
  theme_use (p->cr, p->theme.accent);
  text_draw (p->texts, p->cr, title, story_title (p->view->step), p->words.x, p->words.y,
             (TextAnchor){ 0.0, 0.0 });
  theme_use (p->cr, assembles ? p->theme.ink : p->theme.warning);
  text_draw_wrapped (p->texts, p->cr, sentence_style (&p->theme), sentence, p->words.x,
                     p->words.y + 1.35 * title.size, p->words.width);
}

static StoryPlaces
note_places (const Picture *p)
{
  const gboolean assembles = p->n.status == POSE_OK;
  const gboolean is_seen = assembles && pole_is_seen (p);
  const Pixel none = { (double) NAN, (double) NAN };
  const Pixel pole = is_seen                ? front (p, p->n.drawn.pole)
                     : p->inset.scale > 0.0 ? inset_place (&p->inset, p->n.drawn.pole)
                                            : none;
  const Pixel centre = assembles ? roll_centre (p) : none;

  return (StoryPlaces){ .scale = p->layout.scale,
                        .ground_y = p->ground_y,
                        .middle_x = p->layout.origin[SHEET_FRONT].x,
                        .text = p->theme.text,
                        .has_inset = p->inset.scale > 0.0,
                        .inset_scale = p->inset.scale,
                        .pole_x = pole.x,
                        .pole_y = pole.y,
                        .roll_centre_x = centre.x,
                        .roll_centre_y = centre.y };
}

void
story_draw (Story *story, cairo_t *cr, const StoryView *view, double width, double height)
{
  const StudyCorner *corner = study_in_hand (view->study);
  Picture p = { .cr = cr,
                .view = view,
                .corner = corner,
                .n = story_numbers (corner),
                .theme = story_theme (&view->theme, width, height),
                .texts = story->texts };

  begin (&p, width, height);
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  if (p.theme.ground.alpha > 0.0) {
    theme_use (cr, p.theme.ground);
    cairo_paint (cr);
  }
  draw_corner (&p);
  if (p.n.status == POSE_OK)
    draw_construction (&p);
  draw_words (&p);
  cairo_restore (cr);
  story->places = note_places (&p);
}
