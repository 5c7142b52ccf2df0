/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "Mount": the strut tower in plan, true to scale, turned as the plan view
 * of the sheet is (outboard to the right, forward down). Over it lines of equal camber
 * and caster, or two other subjects; the ranges aimed for shaded; where a plate can put
 * the bearing, every indexed place a dot; the tower's opening and the room to its edge;
 * the mount where it is as a handle, and the other setups'.
 *
 * The right side is drawn as the left one is: inboard and rearward are its own. */

#pragma once

#include "drawing/chart/title-block.h"
#include "model/choice/choice.h"
#include "model/mount-field/mount-field-lines.h"
#include "model/study/study.h"

#define MOUNT_MAP_NONE (-1)

typedef struct {
  const Car *car;
  guint setup; /* in hand */
  CarSide side;
  int subjects[2];    /* of FieldSubject, or MOUNT_MAP_NONE */
  const Plate *plate; /* or NULL */
  gboolean is_swapped;
  const ChoicePlace *best; /* of that plate, a flag on the map; or NULL */
  Theme theme;
  double pixel_scale; /* as in BoardView; 0 for files, which have a marker for a handle */
  int lit_place;      /* the indexed place under the pointer, or MOUNT_MAP_NONE */
  gboolean is_handle_lit;
  gboolean show_cross; /* at .cross: where the pointer is, with its values */
  MountOffset cross;
  gboolean hold_window;    /* while something is dragged the window stays, and texts keep
                              their places, but give way to the handle */
  const TitleBlock *title; /* for exports; NULL in a window */
} MountMapView;

typedef struct MountMap MountMap;
MountMap *mount_map_new (void);
void mount_map_free (MountMap *map);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (MountMap, mount_map_free)

void mount_map_draw (
    MountMap *map, cairo_t *cr, const MountMapView *view, double width, double height);

/* Lays out without drawing, so that the handle has its place; mount_map_draw () does it
 * too. Not for a view with a title. */
void
mount_map_arrange (MountMap *map, const MountMapView *view, double width, double height);

/* What lies under a pixel of the last drawing, and how pixels and places go together. */
typedef struct {
  gboolean on_map, on_handle;
  int place;      /* indexed place of the plate, or MOUNT_MAP_NONE */
  int setup;      /* marker of another setup, or MOUNT_MAP_NONE */
  MountOffset at; /* under the pixel, in plan */
} MountMapHit;
MountMapHit mount_map_hit (const MountMap *map, double x, double y);
void mount_map_to_pixel (const MountMap *map, MountOffset at, double *x, double *y);
double mount_map_pixels_per_mm (const MountMap *map);

/* The solved field, the lines and their labels of the last drawing, for tests. */
const MountField *mount_map_field (const MountMap *map);
const FieldLines *mount_map_lines (const MountMap *map, guint which); /* or NULL */
typedef struct {
  const char *text;
  guint which;  /* of the subjects */
  double level; /* kernel units */
  double x, y;  /* of its middle */
  double width, height;
  double angle;      /* rad, clockwise */
  gboolean is_shown; /* the handle does not lie on it */
} MountMapLabel;
guint mount_map_n_labels (const MountMap *map);
MountMapLabel mount_map_label (const MountMap *map, guint i);
