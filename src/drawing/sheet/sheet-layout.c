/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-layout.h"

#include <glib.h>

/* Lengths on paper, in pixels at ordinary type size: they do not scale with the car. */
#define MARGIN 10.0
#define CAPTION 20.0
#define GAP 14.0
#define FRONT_LEFT 26.0
#define UPPER_TOP 34.0
#define UPPER_BOTTOM 42.0
#define PLAN_TOP 8.0
#define PLAN_BOTTOM 12.0
#define SIDE 12.0

typedef struct {
  Vec3 least, most;
} Extent;

static void
include (Extent *extent, Vec3 p, Vec3 room)
{
  extent->least.x = fmin (extent->least.x, p.x - room.x);
  extent->least.y = fmin (extent->least.y, p.y - room.y);
  extent->least.z = fmin (extent->least.z, p.z - room.z);
  extent->most.x = fmax (extent->most.x, p.x + room.x);
  extent->most.y = fmax (extent->most.y, p.y + room.y);
  extent->most.z = fmax (extent->most.z, p.z + room.z);
}

/* What the measured corner sweeps through its whole travel, with room for a moved mount
 * and the camber that it brings. */
static Extent
extent_of (const SheetView *view)
{
  const Study *study = view->study;
  const MeasuredCorner *m = &study->points;
  const double free = m->loaded_radius * SHEET_TYRE_FREE;
  const Vec3 joint = { 30.0, 30.0, 0.0 };
  const Vec3 mount = { SHEET_MOUNT_ROOM + 30.0, SHEET_MOUNT_ROOM + 30.0,
                       SHEET_MOUNT_ROOM };
  const Vec3 wheel = { free, view->section_width / 2.0 + 0.1 * free, free };
  Extent extent = { .least = { 0 } };

  for (PointName i = 0; i < N_POINTS; i++)
    include (&extent, m->at[i], joint);
  include (&extent, m->at[POINT_UPPER_MOUNT], mount);
  include (&extent, m->at[POINT_WHEEL_CENTRE], wheel);
  for (size_t i = 0; i < STUDY_STATIONS; i++) {
    const Station *station = &study->measured.stations[i];

    if (station->status != POSE_OK)
      continue;
    include (&extent, station->pose.wheel_centre, (Vec3){ wheel.x, wheel.y, 0.0 });
    include (&extent, station->measures.contact, (Vec3){ 0 });
    extent.most.z = fmax (extent.most.z, station->pose.wheel_centre.z + free);
  }
  /* the axis is produced past the mount; below the ground there is room on the paper */
  extent.least.z = fmin (extent.least.z, study->range.from);
  return extent;
}

/* What the fit comes from: extents in mm, room on paper and what is left over in pixels.
 */
typedef struct {
  Extent extent;
  double x, y, z; /* the extent's lengths */
  double unit, scale;
  double over_x, over_y;
} Measure;

static Measure
take_measure (const SheetView *view, double width, double height)
{
  const double text = view->theme.text / 12.0;
  const Extent e = extent_of (view);
  Measure m = { .extent = e,
                .x = e.most.x - e.least.x,
                .y = e.most.y - e.least.y,
                .z = e.most.z - e.least.z };

  m.unit = text * CLAMP (fmin (width, height) / (700.0 * text), 0.7, 1.0);

  const double free_x = width - (2.0 * MARGIN + FRONT_LEFT + 3.0 * SIDE + GAP) * m.unit;
  const double free_y = height - (2.0 * MARGIN + 2.0 * CAPTION + UPPER_TOP +
                                  UPPER_BOTTOM + PLAN_TOP + PLAN_BOTTOM + GAP) *
                                     m.unit;

  m.scale = view->scale > 0.0
                ? view->scale
                : fmax (fmin (free_x / (m.y + m.x), free_y / (m.z + m.x)), 1e-3);
  m.over_x = fmax (free_x - m.scale * (m.y + m.x), 0.0);
  m.over_y = fmax (free_y - m.scale * (m.z + m.x), 0.0);
  return m;
}

/* The sheet at zoom 1, its middle in the canvas's middle. What the tighter direction
 * leaves over goes between the views and around them. */
static SheetLayout
fit (const SheetView *view, double width, double height)
{
  const Measure m = take_measure (view, width, height);
  const Extent e = m.extent;
  const double u = m.unit, k = m.scale;
  const double front_wide = (FRONT_LEFT + SIDE) * u + k * m.y;
  const double front_x = MARGIN * u + m.over_x / 4.0;
  const double side_x = front_x + front_wide + GAP * u + m.over_x / 2.0;
  const double upper_y = (MARGIN + CAPTION) * u + m.over_y / 4.0;
  const double upper_high = (UPPER_TOP + UPPER_BOTTOM) * u + k * m.z;
  const double plan_y = upper_y + upper_high + (GAP + CAPTION) * u + m.over_y / 2.0;
  const double plan_high = (PLAN_TOP + PLAN_BOTTOM) * u + k * m.x;
  const double y_origin = front_x + FRONT_LEFT * u - k * e.least.y;
  const double z_origin = upper_y + UPPER_TOP * u + k * e.most.z;
  const double caption = CAPTION * u, margin = MARGIN * u;

  return (SheetLayout){
    .unit = view->theme.text / 12.0,
    .scale = k,
    .origin = { { y_origin, z_origin },
                { side_x + SIDE * u - k * e.least.x, z_origin },
                { y_origin, plan_y + PLAN_TOP * u - k * e.least.x } },
    .box = { { front_x, upper_y, front_wide, upper_high },
             { side_x, upper_y, 2.0 * SIDE * u + k * m.x, upper_high },
             { front_x, plan_y, front_wide, plan_high } },
    .caption = { { front_x, upper_y - caption },
                 { side_x, upper_y - caption },
                 { front_x, plan_y - caption } },
    .panel = { side_x, plan_y - caption, width - margin - side_x,
               height - margin - (plan_y - caption) },
    .canvas = { 0.0, 0.0, width, height },
  };
}

static Pixel
zoomed (const SheetView *view, PixelBox canvas, Pixel p)
{
  const double x = canvas.width / 2.0, y = canvas.height / 2.0;

  return (Pixel){ x + view->pan_x + view->zoom * (p.x - x),
                  y + view->pan_y + view->zoom * (p.y - y) };
}

static PixelBox
zoomed_box (const SheetView *view, PixelBox canvas, PixelBox box)
{
  const Pixel corner = zoomed (view, canvas, (Pixel){ box.x, box.y });

  return (PixelBox){ corner.x, corner.y, box.width * view->zoom,
                     box.height * view->zoom };
}

SheetLayout
sheet_layout_fit (const SheetView *view, double width, double height)
{
  SheetLayout layout = fit (view, width, height);

  layout.scale *= view->zoom;
  for (SheetViewName i = 0; i < N_SHEET_VIEWS; i++) {
    layout.origin[i] = zoomed (view, layout.canvas, layout.origin[i]);
    layout.box[i] = zoomed_box (view, layout.canvas, layout.box[i]);
    layout.caption[i] = zoomed (view, layout.canvas, layout.caption[i]);
  }
  layout.panel = zoomed_box (view, layout.canvas, layout.panel);
  return layout;
}

Pixel
sheet_layout_place (const SheetLayout *layout, SheetViewName view, Vec3 p)
{
  const Pixel o = layout->origin[view];
  const double k = layout->scale;

  switch (view) {
  case SHEET_FRONT:
    return (Pixel){ o.x + k * p.y, o.y - k * p.z };
  case SHEET_SIDE:
    return (Pixel){ o.x + k * p.x, o.y - k * p.z };
  default:
    return (Pixel){ o.x + k * p.y, o.y + k * p.x };
  }
}

Vec3
sheet_layout_move (const SheetLayout *layout, SheetViewName view, double dx, double dy)
{
  const double right = dx / layout->scale, down = dy / layout->scale;

  switch (view) {
  case SHEET_FRONT:
    return (Vec3){ 0.0, right, -down };
  case SHEET_SIDE:
    return (Vec3){ right, 0.0, -down };
  default:
    return (Vec3){ down, right, 0.0 };
  }
}

bool
pixel_box_has (PixelBox box, Pixel p)
{
  return p.x >= box.x && p.x <= box.x + box.width && p.y >= box.y &&
         p.y <= box.y + box.height;
}

/* Liang–Barsky: the part t0 … t1 of a + t (b − a) on the inner side of one border. */
static bool
clip_border (double step, double distance, double *t0, double *t1)
{
  if (step == 0.0)
    return distance >= 0.0;
  if (step < 0.0)
    *t0 = fmax (*t0, distance / step);
  else
    *t1 = fmin (*t1, distance / step);
  return *t0 <= *t1;
}

bool
pixel_box_clip (PixelBox box, Pixel *a, Pixel *b)
{
  const double dx = b->x - a->x, dy = b->y - a->y;
  const Pixel from = *a;
  double t0 = 0.0, t1 = 1.0;

  if (!isfinite (dx) || !isfinite (dy) || !clip_border (-dx, from.x - box.x, &t0, &t1) ||
      !clip_border (dx, box.x + box.width - from.x, &t0, &t1) ||
      !clip_border (-dy, from.y - box.y, &t0, &t1) ||
      !clip_border (dy, box.y + box.height - from.y, &t0, &t1))
    return false;
  *a = (Pixel){ from.x + t0 * dx, from.y + t0 * dy };
  *b = (Pixel){ from.x + t1 * dx, from.y + t1 * dy };
  return true;
}
