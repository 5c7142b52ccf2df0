/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-dimensions.h"
#include "drawing/sheet/sheet-forces.h"
#include "drawing/sheet/sheet-handles.h"
#include "drawing/sheet/sheet-panel.h"
#include "drawing/sheet/sheet-parts.h"
#include "drawing/sheet/sheet-writing.h"

#include <glib.h>

/* How near to a stroke counts as on it, pixels. */
#define HIT_REACH 8.0

struct Sheet {
  TextCache *texts;
  SheetLayout layout;
  SheetTargets targets;
  SheetWriting writing;
  struct {
    Pixel at;
    bool is_there;
  } handles[N_SHEET_HANDLES][N_SHEET_VIEWS];
};

Sheet *
sheet_new (void)
{
  Sheet *sheet = g_new0 (Sheet, 1);

  sheet->texts = text_cache_new ();
  sheet->layout.scale = 1.0;
  return sheet;
}

void
sheet_free (Sheet *sheet)
{
  if (sheet == NULL)
    return;
  text_cache_free (sheet->texts);
  g_free (sheet);
}

/* Faint lines that carry mount and wheel centre from view to view. */
static void
draw_projectors (const SheetPen *pen, Vec3 point)
{
  const Stroke faint = { LINE_FULL, pen->theme->thin, pen->theme->faint };
  const Pixel front = pen_at (pen, SHEET_FRONT, point);

  pen_line (pen, front, pen_at (pen, SHEET_SIDE, point), faint);
  pen_line (pen, front, pen_at (pen, SHEET_PLAN, point), faint);
}

static void
draw_view (const SheetPen *pen, SheetViewName view, const StudyCorner *standing)
{
  const Study *study = pen->view->study;
  const bool assembles = study_in_hand (study)->now.status == POSE_OK;

  if (standing != NULL && view != SHEET_PLAN)
    parts_draw_ground (pen, view, standing->now.measures.contact);
  if (view != SHEET_SIDE)
    parts_draw_centre_plane (pen, view);
  if (assembles)
    parts_draw_wheel (pen, view, study_in_hand (study));
  const bool is_loaded = pen->view->loads != NULL && pen->view->loads->is_solved;

  if (assembles && view == SHEET_FRONT && !is_loaded)
    dimensions_draw_construction (pen);
  parts_draw_body (pen, view);
  if (assembles)
    parts_draw_linkage (pen, view, study_in_hand (study));
  parts_draw_bushes (pen, view);
  if (study_has_reference (study) || !assembles)
    parts_draw_ghost (pen, view);
  if (assembles) {
    parts_draw_steering_axis (pen, view, study_in_hand (study));
    if (is_loaded)
      forces_draw (pen, view);
    else
      dimensions_draw (pen, view);
  }
}

/* In the room that the missing strut leaves, or over the view where that is narrow. */
static void
draw_reason (const SheetPen *pen)
{
  const PixelBox view = pen->layout->box[SHEET_FRONT];
  const TextStyle style = pen_style (pen, pen->theme->text, TEXT_BOLD);
  const double u = pen->unit, left = pen->layout->origin[SHEET_FRONT].x + 12.0 * u;
  const double top = view.y + 0.3 * view.height;
  const double widths[] = { fmin (0.5 * view.width, 280.0 * u), view.width,
                            pen->layout->canvas.width - left - 4.0 * u };
  const char *text = pose_status_sentence (study_in_hand (pen->view->study)->now.status);

  for (unsigned i = 0; i < G_N_ELEMENTS (widths); i++) {
    const TextSize size =
        text_measure_wrapped (pen->texts, style, text, fmax (widths[i], 1.0));
    const PixelBox box = { left, top, size.width, size.height };

    if (size.width > widths[i] || !writing_has_room (pen, box))
      continue;
    writing_claim (pen, box);
    theme_use (pen->cr, pen->theme->warning);
    text_draw_wrapped (pen->texts, pen->cr, style, text, left, top, widths[i]);
    return;
  }
}

static void
draw_background (const SheetPen *pen)
{
  if (pen->theme->ground.alpha <= 0.0)
    return;
  theme_use (pen->cr, pen->theme->ground);
  cairo_rectangle (pen->cr, 0, 0, pen->layout->canvas.width, pen->layout->canvas.height);
  cairo_fill (pen->cr);
}

static void
note_handles (Sheet *sheet, const Study *study)
{
  for (SheetHandle handle = SHEET_HANDLE_MOUNT; handle < N_SHEET_HANDLES; handle++)
    for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++)
      sheet->handles[handle][view].is_there =
          handle_place (&sheet->layout, study, handle, view,
                        &sheet->handles[handle][view].at);
}

/* What stands on the ground: the setup, or else the corner as measured, or nothing. */
static const StudyCorner *
standing_corner (const Study *study)
{
  if (study_in_hand (study)->now.status == POSE_OK)
    return study_in_hand (study);
  return study->measured.now.status == POSE_OK ? &study->measured : NULL;
}

/* Moves front and side view so that the ground lies where it does as measured. */
static void
hold_ground (SheetLayout *layout, const Study *study, const StudyCorner *standing)
{
  const double up = standing != NULL ? standing->now.measures.contact.z : study->travel;

  layout->origin[SHEET_FRONT].y += up * layout->scale;
  layout->origin[SHEET_SIDE].y += up * layout->scale;
}

void
sheet_arrange (Sheet *sheet, const SheetView *view, double width, double height)
{
  sheet->layout = sheet_layout_fit (view, width, height);
  if (view->ground_fixed)
    hold_ground (&sheet->layout, view->study, standing_corner (view->study));
  note_handles (sheet, view->study);
}

void
sheet_draw (Sheet *sheet, cairo_t *cr, const SheetView *view, double width, double height)
{
  const Study *study = view->study;
  const StudyCorner *standing = standing_corner (study);
  const SheetPen pen = { cr,
                         view,
                         &view->theme,
                         &sheet->layout,
                         sheet->texts,
                         &sheet->targets,
                         view->theme.text / 12.0,
                         &sheet->writing };
  HandleTag tag = { .text = "" };

  sheet_arrange (sheet, view, width, height);
  sheet->targets.n_targets = 0;
  sheet->writing.n_claims = sheet->writing.n_lines = 0;
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  /* half the time of cairo's own choice, and no difference to the eye */
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  draw_background (&pen);
  draw_projectors (&pen, study_in_hand (study)->corner.upper_mount);
  if (standing != NULL)
    draw_projectors (&pen, standing->now.pose.wheel_centre);
  panel_place_captions (&pen);
  panel_draw (&pen);
  if (view->show_handles)
    tag = handles_claim (&pen);
  for (SheetViewName i = 0; i < N_SHEET_VIEWS; i++)
    draw_view (&pen, i, standing);
  if (study_in_hand (study)->now.status != POSE_OK)
    draw_reason (&pen);
  panel_place_plane_name (&pen);
  writing_draw (&pen);
  if (view->show_handles)
    handles_draw (&pen, &tag);
  cairo_restore (cr);
}

/* The handle under @p that comes first: mount over wheel over height. */
static bool
hit_handle (const Sheet *sheet, Pixel p, SheetHit *hit)
{
  for (SheetHandle handle = SHEET_HANDLE_MOUNT; handle < N_SHEET_HANDLES; handle++)
    for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++) {
      const Pixel at = sheet->handles[handle][view].at;

      if (sheet->handles[handle][view].is_there &&
          hypot (p.x - at.x, p.y - at.y) <= handle_reach (&sheet->layout)) {
        *hit = (SheetHit){ view, handle, -1 };
        return true;
      }
    }
  return false;
}

SheetHit
sheet_hit (const Sheet *sheet, double x, double y)
{
  const Pixel p = { x, y };
  SheetHit hit = { SHEET_FRONT, SHEET_HANDLE_NONE, -1 };
  double nearest = HIT_REACH;

  if (hit_handle (sheet, p, &hit))
    return hit;
  for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++)
    if (pixel_box_has (sheet->layout.box[view], p))
      hit.view = view;
  for (unsigned i = 0; i < sheet->targets.n_targets; i++) {
    const SheetTarget *target = &sheet->targets.at[i];
    const double distance = pixel_distance_to (p, target->a, target->b);

    if (target->quantity >= 0 && distance <= nearest) {
      nearest = distance;
      hit = (SheetHit){ target->view, SHEET_HANDLE_NONE, target->quantity };
    }
  }
  return hit;
}

bool
sheet_handle_place (
    const Sheet *sheet, SheetHandle handle, SheetViewName view, double *x, double *y)
{
  if (handle <= SHEET_HANDLE_NONE || handle >= N_SHEET_HANDLES || view >= N_SHEET_VIEWS ||
      !sheet->handles[handle][view].is_there)
    return false;
  *x = sheet->handles[handle][view].at.x;
  *y = sheet->handles[handle][view].at.y;
  return true;
}

double
sheet_scale (const Sheet *sheet)
{
  return sheet->layout.scale;
}

Vec3
sheet_move (const Sheet *sheet, SheetViewName view, double dx, double dy)
{
  return sheet_layout_move (&sheet->layout, view, dx, dy);
}
