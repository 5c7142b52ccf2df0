/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheet: an engineering drawing of the corner to one scale, in first-angle projection
 * (ISO 5456-2): the front view with the wheel on its right, beside it the side view seen
 * from the centre plane outward, below it the plan view with the car's front downward.
 * Front and side view share heights, front and plan view share widths.
 *
 * Lines after ISO 128-2. What the setup in hand is compared with stays behind in thin
 * dashes. */

#pragma once

#include "drawing/chart/title-block.h"
#include "drawing/pen/theme.h"
#include "model/load/load-case.h"
#include "model/study/study.h"

typedef enum {
  SHEET_FRONT, /* right = y (outboard), up = z */
  SHEET_SIDE,  /* right = x (forward), up = z */
  SHEET_PLAN,  /* right = y (outboard), down = x (forward) */
  N_SHEET_VIEWS
} SheetViewName;

typedef enum {
  SHEET_HANDLE_NONE,
  SHEET_HANDLE_MOUNT,  /* the upper mount: in all three views */
  SHEET_HANDLE_WHEEL,  /* wheel travel: in the front and side view */
  SHEET_HANDLE_HEIGHT, /* lowering: on the body, in the front view */
  N_SHEET_HANDLES
} SheetHandle;

typedef struct {
  const Study *study;
  double section_width; /* of the tyre, mm */
  Theme theme;
  double scale;              /* pixels per mm at zoom 1; 0: as large as fits */
  double zoom;               /* 1: the whole sheet, at that scale */
  double pan_x, pan_y;       /* pixels, of the fitted sheet's middle */
  int lit;                   /* the Quantity that is lit up, or -1 */
  SheetHandle near;          /* the handle under the pointer or focused */
  SheetHandle held;          /* the handle being moved: names its value */
  SheetViewName handle_view; /* the view in which it is near or held */
  bool show_handles;         /* false in exports */
  bool ground_fixed; /* the ground keeps its place and the body moves; else the body does
                      */
  const TitleBlock *title;
  const JointLoads *loads; /* drawn as arrows in place of the dimensions; or NULL */
} SheetView;

typedef struct Sheet Sheet;
Sheet *sheet_new (void);
void sheet_free (Sheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Sheet, sheet_free)

/* Lays out without drawing, so that handles have their places; sheet_draw does it too. */
void sheet_arrange (Sheet *sheet, const SheetView *view, double width, double height);
void sheet_draw (
    Sheet *sheet, cairo_t *cr, const SheetView *view, double width, double height);

/* What lies under a pixel of the last drawing, and in which view: a handle (its target at
 * least 24 pixels across), else a part or dimension that shows a quantity. */
typedef struct {
  SheetViewName view;
  SheetHandle handle;
  int quantity; /* or -1 */
} SheetHit;
SheetHit sheet_hit (const Sheet *sheet, double x, double y);

/* Where a handle was drawn last; false where that view does not have it. */
bool sheet_handle_place (
    const Sheet *sheet, SheetHandle handle, SheetViewName view, double *x, double *y);

double sheet_scale (const Sheet *sheet); /* pixels per mm of the last drawing */

/* The change in the car's axes (mm) that a move of (dx, dy) pixels in a view means; the
 * axis that the view looks along stays 0. */
Vec3 sheet_move (const Sheet *sheet, SheetViewName view, double dx, double dy);
