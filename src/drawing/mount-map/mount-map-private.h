/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the map only: what its parts draw with. */

#pragma once

#include "drawing/mount-map/mount-map-claims.h"
#include "drawing/mount-map/mount-map-layout.h"
#include "drawing/pen/text.h"

/* The lines of one subject, how they look, and what is aimed for. */
typedef struct {
  FieldSubject subject;
  FieldLines *lines;
  Colour colour;
  gboolean is_dashed;
  gboolean has_band;
  double least, most; /* of the band, kernel units */
} MapFamily;

/* A value on its line, turned along it. */
typedef struct {
  char text[24];
  MapBox box;
  double angle; /* of the text, rad, clockwise from the right */
  guint family, line;
  double from, to;    /* pixels along the line: the gap that the text stands in */
  gboolean is_hidden; /* the handle lies on it */
} MapLabel;

typedef struct {
  cairo_t *cr;
  TextCache *texts;
  const Theme *theme;
  const MountMapView *view;
  const MapLayout *layout;
  const MountField *field;
  const MapFamily *families;
  guint n_families;
  const MapClaims *marks;   /* places of setups and of the plate, and what stands there */
  const MapClaims *strokes; /* outlines of plate and tower */
  double unit;              /* pixels at ordinary type size */
} MapPen;

/* "left side" where the sides differ, or NULL. */
const char *map_side_name (const MapPen *pen);
TextStyle map_small (const MapPen *pen, TextWeight weight);
/* "−2.5°", "12": for labels at lines that lie @step apart. */
void
map_value_text (FieldSubject subject, double value, double step, char *text, size_t n);
/* "−2.49°", "+12.3 mm" */
void map_figure_text (FieldSubject subject, double value, char *text, size_t n);

/* A text that has found its place. */
#define MAP_MOST_NOTES 96
typedef struct {
  char text[64];
  PixelBox box;
  Colour colour;
  gboolean is_hidden; /* the handle lies on it */
} MapNote;
typedef struct {
  MapNote notes[MAP_MOST_NOTES];
  guint n;
} MapNotes;
/* Puts @text at the first of the places about @at, @away from it or somewhat further,
 * that is free and inside the plot, and claims it; on no outline, if that can be. FALSE
 * where there is none. @toward is tried first. */
gboolean map_note_beside (const MapPen *pen,
                          MapClaims *claims,
                          MapNotes *notes,
                          const char *text,
                          Pixel at,
                          double away,
                          Pixel toward,
                          Colour colour);
void map_notes_draw (const MapPen *pen, const MapNotes *notes);

/* mount-map-bands.c */
void map_bands_draw (const MapPen *pen);
gboolean map_gaps_draw (const MapPen *pen); /* whether there are any */

/* mount-map-lines.c */
Colour map_family_colour (const Theme *theme, int which);
/* In theme pens. */
#define MAP_ORDINARY 1.15
#define MAP_STRONG 2.1
void map_family_use (const MapPen *pen, const MapFamily *family, double width);
void map_lines_draw (const MapPen *pen, const GArray *labels);
void map_labels_draw (const MapPen *pen, const GArray *labels);

/* mount-map-labels.c: fills @labels, of MapLabel, and claims their places. */
void map_labels_place (const MapPen *pen, MapClaims *claims, GArray *labels);

/* mount-map-tower.c */
void map_tower_claim_strokes (const MapPen *pen, MapClaims *strokes);
void map_tower_note (const MapPen *pen, MapClaims *claims, MapNotes *notes);
void map_tower_draw (const MapPen *pen);

/* mount-map-plate.c */
void map_plate_claim (const MapPen *pen, MapClaims *claims);
void map_plate_claim_strokes (const MapPen *pen, MapClaims *strokes);
void map_plate_note (const MapPen *pen, MapClaims *claims, MapNotes *notes);
void map_plate_draw (const MapPen *pen);
void map_plate_draw_lit (const MapPen *pen);
double map_dot_reach (const MapLayout *layout); /* of the target, pixels */

/* mount-map-marks.c */
void map_marks_claim (const MapPen *pen, MapClaims *claims);
void map_marks_note (const MapPen *pen, MapClaims *claims, MapNotes *notes);
void map_marks_draw (const MapPen *pen);

/* mount-map-handle.c */
void map_handle_claim (const MapPen *pen, MapClaims *claims);
void map_handle_draw (const MapPen *pen);

/* mount-map-frame.c */
void map_frame_draw (const MapPen *pen, gboolean has_gaps);
void map_frame_draw_mount (const MapPen *pen,
                           MountOffset mount); /* marks on the rulers */

/* mount-map-readout.c */
void map_readout_draw (const MapPen *pen);

/* mount-map-key.c: with the mount that texts are kept off. */
void map_key_fill (const MapPen *pen, MountOffset placed_for, GByteArray *key);
