/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the three views of the sheet and its panel lie, and the way between car and
 * pixels.
 *
 * The fit depends on the measured corner, the car's travel, the canvas and the type size,
 * never on the setup or the cursor: nothing shifts while something is dragged. */

#pragma once

#include "drawing/sheet/sheet.h"

/* Room that the layout keeps for a moved upper mount, mm each way. */
#define SHEET_MOUNT_ROOM 60.0

/* An unloaded tyre's radius to its loaded one: makes the flat where it stands. */
#define SHEET_TYRE_FREE 1.025

typedef struct {
  double x, y;
} Pixel;

typedef struct {
  double x, y, width, height;
} PixelBox;

typedef struct {
  double unit;                  /* 1 at ordinary type size: lengths on paper follow it */
  double scale;                 /* pixels per mm */
  Pixel origin[N_SHEET_VIEWS];  /* of the car's axes */
  PixelBox box[N_SHEET_VIEWS];  /* what a view fills, its caption apart */
  Pixel caption[N_SHEET_VIEWS]; /* top left of the caption */
  PixelBox panel;               /* bottom right */
  PixelBox canvas;
} SheetLayout;

SheetLayout sheet_layout_fit (const SheetView *view, double width, double height);

Pixel sheet_layout_place (const SheetLayout *layout, SheetViewName view, Vec3 point);

/* As sheet_move (). */
Vec3
sheet_layout_move (const SheetLayout *layout, SheetViewName view, double dx, double dy);

/* Shortens the line to what lies inside @box; false when nothing does. */
bool pixel_box_clip (PixelBox box, Pixel *a, Pixel *b);
bool pixel_box_has (PixelBox box, Pixel p);
