/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/card/fitting-card-frame.h"

#include <math.h>

double
fitting_frame_outboard (const FittingFrame *frame)
{
  return frame->side == SIDE_LEFT ? 1.0 : -1.0;
}

FittingPoint
fitting_frame_point (const FittingFrame *frame, double inboard, double rearward)
{
  return (FittingPoint){ frame->origin_x -
                             fitting_frame_outboard (frame) * inboard * frame->per_mm,
                         frame->origin_y - rearward * frame->per_mm };
}

FittingPoint
fitting_frame_place (const FittingFrame *frame, PlateSetting setting)
{
  const MountOffset place = plate_place (frame->answer->plate, setting);

  return fitting_frame_point (frame, place.inboard, place.rearward);
}

void
fitting_frame_take (FittingFrame *frame, FittingBox room)
{
  if (frame->n_taken < FRAME_MOST_ROOMS)
    frame->taken[frame->n_taken++] = room;
}

void
fitting_frame_add_line (FittingFrame *frame, FittingPoint a, FittingPoint b)
{
  if (frame->n_lines >= FRAME_MOST_LINES)
    return;
  frame->lines[frame->n_lines][0] = a;
  frame->lines[frame->n_lines++][1] = b;
}

void
fitting_frame_add_circle (FittingFrame *frame, FittingPoint centre, double radius)
{
  if (frame->n_circles >= FRAME_MOST_LINES)
    return;
  frame->circles[frame->n_circles].centre = centre;
  frame->circles[frame->n_circles++].radius = radius;
}

void
fitting_frame_line (FittingFrame *frame, FittingPoint a, FittingPoint b)
{
  cairo_t *cr = frame->pen->cr;

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  cairo_stroke (cr);
  fitting_frame_add_line (frame, a, b);
}

static gboolean
do_meet (FittingBox a, FittingBox b)
{
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height &&
         b.y < a.y + a.height;
}

/* The part of a way from 0 to 1 on which start + t·step lies between low and high. */
static void
clip (double start, double step, double low, double high, double *from, double *to)
{
  if (step == 0.0) {
    if (start < low || start > high)
      *to = -1.0;
    return;
  }
  const double a = (low - start) / step, b = (high - start) / step;

  *from = fmax (*from, fmin (a, b));
  *to = fmin (*to, fmax (a, b));
}

static gboolean
does_line_cross (const FittingPoint line[2], FittingBox room)
{
  double from = 0.0, to = 1.0;

  clip (line[0].x, line[1].x - line[0].x, room.x, room.x + room.width, &from, &to);
  clip (line[0].y, line[1].y - line[0].y, room.y, room.y + room.height, &from, &to);
  return from <= to;
}

/* Whether the room's nearest point lies inside and its furthest outside. */
static gboolean
does_circle_cross (FittingPoint centre, double radius, FittingBox room)
{
  const double left = room.x - centre.x, right = left + room.width;
  const double top = room.y - centre.y, bottom = top + room.height;
  const double near_x = fmax (fmax (left, -right), 0.0);
  const double near_y = fmax (fmax (top, -bottom), 0.0);

  return hypot (near_x, near_y) < radius &&
         hypot (fmax (fabs (left), fabs (right)), fmax (fabs (top), fabs (bottom))) >
             radius;
}

static gboolean
is_inside (FittingBox room, FittingBox box)
{
  return room.x >= box.x && room.y >= box.y && room.x + room.width <= box.x + box.width &&
         room.y + room.height <= box.y + box.height;
}

static gboolean
is_free (const FittingFrame *frame, FittingBox room)
{
  if (frame->n_taken >= FRAME_MOST_ROOMS || !is_inside (room, frame->box))
    return FALSE;
  for (guint i = 0; i < frame->n_taken; i++)
    if (do_meet (frame->taken[i], room))
      return FALSE;
  return TRUE;
}

static gboolean
is_clear (const FittingFrame *frame, FittingBox room)
{
  for (guint i = 0; i < frame->n_lines; i++)
    if (does_line_cross (frame->lines[i], room))
      return FALSE;
  for (guint i = 0; i < frame->n_circles; i++)
    if (does_circle_cross (frame->circles[i].centre, frame->circles[i].radius, room))
      return FALSE;
  return is_free (frame, room);
}

static FittingBox
room_at (const FittingFrame *frame, const char *text, FittingPoint middle)
{
  const double width = fitting_text_width (frame->pen, FITTING_SMALL, text) + 2.0;
  /* what figures and capitals take, so that holes near each other can be named */
  const double height = 0.95 * fitting_style (frame->pen, FITTING_SMALL).size;

  return (FittingBox){ middle.x - width / 2.0, middle.y - height / 2.0, width, height };
}

/* On a patch of paper, so that a line below it does not strike it through. */
static void
write_label (FittingFrame *frame, const char *text, Colour colour, FittingBox room)
{
  const FittingPen *pen = frame->pen;

  fitting_frame_take (frame, room);
  theme_use (pen->cr, pen->theme.ground);
  cairo_rectangle (pen->cr, room.x, room.y, room.width, room.height);
  cairo_fill (pen->cr);
  theme_use (pen->cr, colour);
  fitting_write (pen, FITTING_SMALL, text, room.x,
                 room.y + room.height / 2.0 + 0.36 * pen->theme.small_text, room.width,
                 FITTING_CENTRE);
}

int
fitting_frame_label (FittingFrame *frame,
                     const char *text,
                     Colour colour,
                     const FittingPoint *places,
                     guint n_places)
{
  /* clear of lines if that can be had */
  gboolean (*const tests[]) (const FittingFrame *, FittingBox) = { is_clear, is_free };

  for (gsize t = 0; t < G_N_ELEMENTS (tests); t++)
    for (guint i = 0; i < n_places; i++) {
      const FittingBox room = room_at (frame, text, places[i]);

      if (tests[t](frame, room)) {
        write_label (frame, text, colour, room);
        return (int) i;
      }
    }
  return -1;
}

/* Beside a mark, @away from it in the direction of @way. */
static FittingPoint
beside_mark (const FittingFrame *frame,
             const FittingMark *mark,
             FittingPoint way,
             double away)
{
  const FittingBox room = room_at (frame, mark->name, mark->at);

  return (FittingPoint){ mark->at.x + way.x * (away + room.width / 2.0),
                         mark->at.y + way.y * (away + room.height / 2.0) };
}

/* How many names would meet a line, another text or each other. */
static guint
count_meetings (const FittingFrame *frame,
                const FittingMark *marks,
                guint n_marks,
                FittingPoint way,
                double away)
{
  guint n = 0;

  for (guint i = 0; i < n_marks; i++) {
    const FittingBox room =
        room_at (frame, marks[i].name, beside_mark (frame, &marks[i], way, away));

    n += is_clear (frame, room) ? 0 : 1;
    for (guint j = 0; j < i; j++)
      n += do_meet (room, room_at (frame, marks[j].name,
                                   beside_mark (frame, &marks[j], way, away)))
               ? 2
               : 0;
  }
  return n;
}

/* A thin line from a mark to its name, past the mark's own edge. */
static void
lead (FittingFrame *frame, FittingPoint mark, FittingPoint way, double away)
{
  const double edge = 3.0;

  if (away <= 2.0 * edge)
    return;
  theme_line (frame->pen->cr, LINE_FULL, 0.5 * frame->pen->theme.thin);
  fitting_frame_line (frame,
                      (FittingPoint){ mark.x + edge * way.x, mark.y + edge * way.y },
                      (FittingPoint){ mark.x + (away - 1.0) * way.x,
                                      mark.y + (away - 1.0) * way.y });
}

void
fitting_frame_label_marks (FittingFrame *frame,
                           const FittingMark *marks,
                           guint n_marks,
                           guint most_wanted)
{
  const double out = fitting_frame_outboard (frame);
  const FittingPoint ways[] = {
    { out, 0.0 }, { -out, 0.0 }, { 0.0, -1.0 }, { 0.0, 1.0 }
  };
  const double near = 4.0, step = 4.0;
  FittingPoint way = ways[0];
  double away = near;
  guint least = G_MAXUINT;

  for (int ring = 0; ring < 6; ring++)
    for (gsize i = 0; i < G_N_ELEMENTS (ways); i++) {
      const guint n = count_meetings (frame, marks, n_marks, ways[i], near + step * ring);

      if (n < least) {
        least = n;
        way = ways[i];
        away = near + step * ring;
      }
    }
  for (guint n = 0; n < n_marks; n++) {
    const guint i = n == 0 ? most_wanted : n <= most_wanted ? n - 1 : n;
    const FittingPoint place = beside_mark (frame, &marks[i], way, away);
    const Theme *theme = &frame->pen->theme;

    if (fitting_frame_label (frame, marks[i].name,
                             i == most_wanted ? theme->ink : theme->accent, &place,
                             1) == 0)
      lead (frame, marks[i].at, way, away);
  }
}

void
fitting_frame_label_away (FittingFrame *frame,
                          const char *text,
                          Colour colour,
                          FittingPoint mark,
                          FittingPoint from)
{
  enum {
    MOST = 16
  };
  const double dx = mark.x - from.x, dy = mark.y - from.y;
  const double length = fmax (hypot (dx, dy), 1e-9), x = dx / length, y = dy / length;
  const FittingBox room = room_at (frame, text, mark);
  FittingPoint places[MOST];

  for (int i = 0; i < MOST; i++) {
    const double away = 4.0 + 3.0 * i;

    places[i] = (FittingPoint){ mark.x + x * (away + room.width / 2.0),
                                mark.y + y * (away + room.height / 2.0) };
  }
  const int found = fitting_frame_label (frame, text, colour, places, MOST);
  if (found >= 0)
    lead (frame, mark, (FittingPoint){ x, y }, 4.0 + 3.0 * found);
}
