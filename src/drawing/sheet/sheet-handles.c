/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-handles.h"
#include "drawing/sheet/sheet-label.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

/* Pixels at ordinary type size. */
#define RING 8.0
#define RING_NEAR 9.5
#define ARROW_FROM 13.0
#define ARROW_HALF 4.5
#define LEAST_REACH 14.0
#define TAG_ROOM 6.0
#define TAG_CLEAR 24.0
/* How far the height handle stays from the centre plane, as a part of the mount's way. */
#define HEIGHT_PART 0.3

/* On the line from the tower to the centre plane, level with the mount as measured. */
static Vec3
grip_on_body (const Study *study)
{
  const Vec3 mount = study->points.at[POINT_UPPER_MOUNT];

  return (Vec3){ mount.x, HEIGHT_PART * mount.y, mount.z };
}

bool
handle_place (const SheetLayout *layout,
              const Study *study,
              SheetHandle handle,
              SheetViewName view,
              Pixel *place)
{
  const gboolean assembles = study_in_hand (study)->now.status == POSE_OK;
  const StudyCorner *standing = assembles ? study_in_hand (study) : &study->measured;

  switch (handle) {
  case SHEET_HANDLE_MOUNT:
    *place = sheet_layout_place (layout, view, study_in_hand (study)->corner.upper_mount);
    return true;
  case SHEET_HANDLE_WHEEL:
    if (view == SHEET_PLAN || standing->now.status != POSE_OK)
      return false;
    *place = sheet_layout_place (layout, view, standing->now.pose.wheel_centre);
    return true;
  case SHEET_HANDLE_HEIGHT:
    if (view != SHEET_FRONT)
      return false;
    *place = sheet_layout_place (layout, view, grip_on_body (study));
    return true;
  default:
    return false;
  }
}

double
handle_reach (const SheetLayout *layout)
{
  return fmax (LEAST_REACH, (ARROW_FROM + ARROW_HALF) * layout->unit);
}

double
handle_mark_reach (double unit)
{
  return (ARROW_FROM + 1.1 * ARROW_HALF) * unit;
}

static void
trace_direction (cairo_t *cr, double half, Pixel foot, Pixel d)
{
  cairo_move_to (cr, foot.x + half * d.x * 1.1, foot.y + half * d.y * 1.1);
  cairo_line_to (cr, foot.x - half * d.y, foot.y + half * d.x);
  cairo_line_to (cr, foot.x + half * d.y, foot.y - half * d.x);
  cairo_close_path (cr);
}

void
handle_mark_draw (
    cairo_t *cr, const Theme *theme, double unit, Pixel centre, HandleMark mark)
{
  const bool is_near = mark.is_near || mark.is_held;
  const double from = (is_near ? ARROW_FROM + 1.5 : ARROW_FROM) * unit;
  static const Pixel ways[] = { { 0, -1 }, { 0, 1 }, { -1, 0 }, { 1, 0 } };

  for (int i = 0; i < (mark.is_crosswise ? 4 : 2); i++)
    trace_direction (cr, ARROW_HALF * unit,
                     pixel_add (centre, from * ways[i].x, from * ways[i].y), ways[i]);
  theme_use (cr, theme_quiet (theme, theme->accent, is_near ? 1.0 : 0.65));
  cairo_fill (cr);
  cairo_new_sub_path (cr);
  cairo_arc (cr, centre.x, centre.y, (is_near ? RING_NEAR : RING) * unit, 0.0,
             2.0 * G_PI);
  theme_use (cr, colour_with_alpha (theme->accent, mark.is_held ? 0.55
                                                   : is_near    ? 0.28
                                                                : 0.12));
  cairo_fill_preserve (cr);
  theme_use (cr, theme->accent);
  theme_line (cr, LINE_FULL, is_near ? theme->thick : theme->line);
  cairo_stroke (cr);
}

static void
draw_handle (const SheetPen *pen, SheetHandle handle, SheetViewName view, Pixel centre)
{
  const bool here = pen->view->handle_view == view;

  handle_mark_draw (pen->cr, pen->theme, pen->unit, centre,
                    (HandleMark){ .is_crosswise = handle == SHEET_HANDLE_MOUNT,
                                  .is_near = here && pen->view->near == handle,
                                  .is_held = here && pen->view->held == handle });
}

static void
held_text (const Study *study, SheetHandle handle, char *text, size_t size)
{
  char figure[24];

  if (handle == SHEET_HANDLE_MOUNT) {
    mount_text (mount_of_study (study), text, size);
    return;
  }
  if (handle == SHEET_HANDLE_HEIGHT) {
    lowering_text (study_in_hand (study)->lowering, text, size);
    return;
  }
  unit_format_whole (UNIT_LENGTH, study->travel, 1, TRUE, figure, sizeof figure);
  g_snprintf (text, size,
              study->travel > -0.05 ? C_ ("travel", "bump %s")
                                    : C_ ("travel", "droop %s"),
              figure);
}

static PixelBox
held_inside (PixelBox canvas, double x, double y, double wide, double high)
{
  return (PixelBox){ CLAMP (x, 2.0, fmax (canvas.width - wide - 2.0, 2.0)),
                     CLAMP (y, 2.0, fmax (canvas.height - high - 2.0, 2.0)), wide, high };
}

/* Above what is on the body, beside the wheel: where the least is covered. */
#define TAG_PLACES 4
static void
tag_places (SheetHandle handle,
            Pixel centre,
            double clear,
            PixelBox size,
            Pixel places[TAG_PLACES])
{
  const double middle = centre.x - size.width / 2.0;
  const Pixel above = { middle, centre.y - clear - size.height };
  const Pixel right = { centre.x + clear, centre.y - size.height / 2.0 };
  const bool is_wheel = handle == SHEET_HANDLE_WHEEL;

  places[0] = is_wheel ? right : above;
  places[1] = is_wheel ? above : (Pixel){ middle, centre.y + clear };
  /* as far to the left as the handle lets it */
  places[2] = (Pixel){ centre.x + clear - size.width, centre.y + clear };
  places[3] = is_wheel ? (Pixel){ centre.x - clear - size.width, right.y } : right;
}

static HandleTag
tag_for (const SheetPen *pen, SheetHandle handle)
{
  const TextStyle style = pen_style (pen, pen->theme->text, TEXT_BOLD);
  const double room = TAG_ROOM * pen->unit;
  HandleTag tag;

  held_text (pen->view->study, handle, tag.text, sizeof tag.text);

  const TextSize size = text_measure (pen->texts, style, tag.text);
  tag.box =
      (PixelBox){ 0, 0, fmin (size.width + 2.0 * room, pen->layout->canvas.width - 4.0),
                  size.height + room };
  return tag;
}

/* Moves the tag to the first of @places that covers nothing claimed. */
static bool
move_tag (const SheetPen *pen, HandleTag *tag, Pixel centre, const Pixel *places, int n)
{
  for (int i = 0; i < n; i++) {
    const PixelBox box = held_inside (pen->layout->canvas, places[i].x, places[i].y,
                                      tag->box.width, tag->box.height);

    if (pixel_box_has (box, centre) || !writing_has_room (pen, box))
      continue;
    tag->box = box;
    return true;
  }
  return false;
}

static void
draw_tag (const SheetPen *pen, const HandleTag *tag)
{
  const Theme *t = pen->theme;
  const TextStyle style = pen_style (pen, t->text, TEXT_BOLD);
  const double room = TAG_ROOM * pen->unit;
  const PixelBox box = tag->box;
  const TextSize size = text_measure (pen->texts, style, tag->text);

  cairo_rectangle (pen->cr, box.x, box.y, box.width, box.height);
  theme_use (pen->cr, t->ground.alpha > 0.0 ? t->ground : t->fill);
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, t->accent);
  theme_line (pen->cr, LINE_FULL, t->thin);
  cairo_stroke (pen->cr);
  theme_use (pen->cr, t->ink);
  text_draw_within (pen->texts, pen->cr, style, tag->text, box.x + room,
                    box.y + (box.height - size.height) / 2.0 + size.baseline,
                    fmax (box.width - 2.0 * room, 1.0));
}

/* For small sheets: "↓ 20.0 mm". */
static void
short_lowering (double mm, char *text, size_t size)
{
  char figure[24];

  unit_format (UNIT_LENGTH, fabs (mm), 1, FALSE, figure, sizeof figure);
  g_snprintf (text, size, mm > 0.0 ? "↓ %s" : "↑ %s", figure);
}

/* With its middle at @at, but right of @left. */
static bool
write_about (const SheetPen *pen, const char *text, Pixel at, double left)
{
  const double wide = writing_width (pen, text, TEXT_PLAIN);

  return writing_try (pen, text, (Pixel){ fmax (at.x - wide / 2.0, left), at.y },
                      TEXT_PLAIN, pen->theme->ink);
}

/* Above its handle, while that is not held: then the tag says it. */
static void
place_lowering (const SheetPen *pen)
{
  const Study *study = pen->view->study;
  char text[64];
  Pixel place;

  if (pen->view->held == SHEET_HANDLE_HEIGHT ||
      fabs (study_in_hand (study)->lowering) < 0.05 ||
      !handle_place (pen->layout, study, SHEET_HANDLE_HEIGHT, SHEET_FRONT, &place))
    return;
  const Pixel above = pixel_add (place, 0, -28.0 * pen->unit);
  const Pixel below = pixel_add (place, 0, 28.0 * pen->unit);
  const double left = pen->layout->origin[SHEET_FRONT].x + 4.0 * pen->unit;

  lowering_text (study_in_hand (study)->lowering, text, sizeof text);
  if (label_word (pen, "…")[0] != '\0' &&
      (write_about (pen, text, above, left) || write_about (pen, text, below, left)))
    return;
  short_lowering (study_in_hand (study)->lowering, text, sizeof text);
  if (!write_about (pen, text, above, left))
    write_about (pen, text, below, left);
}

static void
claim_handles (const SheetPen *pen)
{
  const double half = (ARROW_FROM + 1.1 * ARROW_HALF) * pen->unit;
  Pixel place;

  for (SheetHandle handle = SHEET_HANDLE_MOUNT; handle < N_SHEET_HANDLES; handle++)
    for (SheetViewName i = 0; i < N_SHEET_VIEWS; i++)
      if (handle_place (pen->layout, pen->view->study, handle, i, &place)) {
        const double wide = handle == SHEET_HANDLE_MOUNT ? half : RING_NEAR * pen->unit;

        writing_claim (pen, (PixelBox){ place.x - wide, place.y - half, 2.0 * wide,
                                        2.0 * half });
      }
}

/* In its first place the tag may lie over another handle, which nobody needs now; where
 * it finds no place at all, the texts there give way. */
static HandleTag
claim_with_tag (const SheetPen *pen, Pixel centre)
{
  HandleTag tag = tag_for (pen, pen->view->held);
  Pixel places[TAG_PLACES];

  tag_places (pen->view->held, centre, TAG_CLEAR * pen->unit, tag.box, places);
  const bool is_first = move_tag (pen, &tag, centre, places, 1);
  claim_handles (pen);
  if (!is_first && !move_tag (pen, &tag, centre, places + 1, TAG_PLACES - 1))
    tag.box = held_inside (pen->layout->canvas, places[0].x, places[0].y, tag.box.width,
                           tag.box.height);
  writing_displace (pen, tag.box);
  return tag;
}

HandleTag
handles_claim (const SheetPen *pen)
{
  const SheetView *view = pen->view;
  HandleTag tag = { .text = "" };
  Pixel place;

  if (view->held != SHEET_HANDLE_NONE &&
      handle_place (pen->layout, view->study, view->held, view->handle_view, &place))
    tag = claim_with_tag (pen, place);
  else
    claim_handles (pen);
  place_lowering (pen);
  return tag;
}

void
handles_draw (const SheetPen *pen, const HandleTag *tag)
{
  for (SheetHandle handle = N_SHEET_HANDLES - 1; handle > SHEET_HANDLE_NONE; handle--)
    for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++) {
      Pixel place;

      if (handle_place (pen->layout, pen->view->study, handle, view, &place))
        draw_handle (pen, handle, view, place);
    }
  if (tag->text[0] != '\0')
    draw_tag (pen, tag);
}
