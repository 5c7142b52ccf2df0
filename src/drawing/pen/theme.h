/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Colours, pens and type sizes, the same for window, file and paper. Sizes in points of
 * the drawing (1 = one pixel of a window at scale 1). */

#pragma once

#include <cairo.h>
#include <stdbool.h>

typedef struct {
  double red, green, blue, alpha;
} Colour;

typedef struct {
  Colour ground;    /* behind everything; alpha 0 leaves what is there */
  Colour ink;       /* outlines, figures */
  Colour soft_ink;  /* captions, units, ticks */
  Colour faint;     /* grid, hatching */
  Colour body;      /* what is fixed to the body */
  Colour fill;      /* inside of moving parts */
  Colour reference; /* the corner as measured */
  Colour accent;    /* the setup in hand, handles */
  Colour glow;      /* behind what is lit */
  Colour warning;
  double text;              /* size of ordinary text */
  double small_text;        /* captions, tick labels */
  double thin, line, thick; /* pen widths */
  const char *font;         /* Pango family */
  bool is_dark;
  bool is_high_contrast;
} Theme;

/* For windows; paper is the light one with a white ground. */
Theme theme_light (void);
Theme theme_dark (void);
Theme theme_paper (void);
Theme theme_scaled (Theme theme, double factor); /* text and pens larger or smaller */
/* The same, dark or light, for eyes that need more: nothing pale, no thin pens. */
Theme theme_high_contrast (Theme theme);
/* @colour as it is; in high contrast drawn towards the ink until letters can be read in
 * it. */
Colour theme_legible (const Theme *theme, Colour colour);
/* For a stroke that holds back: @colour at @alpha; in high contrast whole. */
Colour theme_quiet (const Theme *theme, Colour colour, double alpha);

void theme_use (cairo_t *cr, Colour colour);
/* The ground, if it has one, from the origin. */
void theme_paint_ground (cairo_t *cr, const Theme *theme, double width, double height);
Colour colour_with_alpha (Colour colour, double alpha);
/* 1 to 21, by WCAG 2.1, "contrast ratio"; of opaque colours. */
double colour_contrast (Colour a, Colour b);

/* Line kinds after ISO 128-2: what a line means, told by its pattern as well. */
typedef enum {
  LINE_FULL,   /* outlines of moving parts; the setup in hand */
  LINE_DASHED, /* where a thing was: as measured */
  LINE_CHAIN,  /* long dash, dot: axes and centre planes */
  LINE_DOTTED
} LineKind;

void theme_line (cairo_t *cr, LineKind kind, double width);

typedef enum {
  MARKER_DOT,
  MARKER_SQUARE,
  MARKER_TRIANGLE,
  MARKER_DIAMOND,
  MARKER_CROSS,
  MARKER_RING,
  N_MARKERS
} Marker;

#define SETUP_STYLES 8 /* then they come again, with other markers */

/* How a setup looks everywhere: list, sheet, curves, table, exports. Colours of a
 * published colour-blind-safe set, and a pattern and marker of its own as well. */
typedef struct {
  Colour colour;
  double dashes[6]; /* in pen widths; n_dashes of them, 0 for a full line */
  int n_dashes;
  Marker marker;
} SetupStyle;

/* Of the setup at place @index in its car; the first is the quiet one. */
SetupStyle theme_setup_style (const Theme *theme, unsigned index);
/* While it is in hand: the quiet one speaks up, in ink. */
SetupStyle theme_hand_style (const Theme *theme, unsigned index);
/* Of the corner as measured. */
SetupStyle theme_measured_style (const Theme *theme);
void theme_use_style (cairo_t *cr, const SetupStyle *style, double width);
/* A short line with the setup's marker on it, from (x, y), as a key has it; @is_hand: of
 * the setup in hand. */
void theme_draw_sample (cairo_t *cr,
                        const Theme *theme,
                        unsigned index,
                        bool is_hand,
                        double x,
                        double y,
                        double width);
/* Filled, in the current source, @size across. */
void theme_marker (cairo_t *cr, Marker marker, double x, double y, double size);
