/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The charts of the springs: their curves from a study, their axes, the stack of what
 * carries the setup in hand, and how a name finds its place. */

#pragma once

#include "drawing/chart/chart.h"
#include "drawing/mount-map/mount-map-claims.h"
#include "drawing/springs/springs-board.h"

/* Bands of load of the setup in hand: what pushes up is stacked from zero upward, what
 * pulls down from zero downward. N; NAN where the corner cannot be assembled. */
typedef struct {
  double low[N_SPRING_ELEMENTS][STUDY_STATIONS], high[N_SPRING_ELEMENTS][STUDY_STATIONS];
  bool is_there[N_SPRING_ELEMENTS]; /* carries anything anywhere */
} SpringStack;

typedef struct {
  Chart charts[N_SPRINGS_CHARTS];
  SpringStack stack;
  double geometric[STUDY_STATIONS]; /* part of the rate in hand, N/mm */
} SpringCharts;

/* What has its name where it is drawn; the rest has it at the right edge. */
typedef struct {
  bool elements[N_SPRING_ELEMENTS];
  bool weight;
} SpringNamed;

typedef struct {
  ChartPen chart;
  const SpringStudy *springs;
  int lit;
  MapClaims *claims;  /* what no name may cover */
  MapClaims *leaders; /* what it had better not */
} SpringsPen;

/* Whether a setup has a curve. */
bool springs_shows (const SpringStudy *springs, unsigned setup);

/* What the setup in hand is compared with, or NULL. */
const SpringCorner *springs_reference (const SpringStudy *springs);

/* Takes over the curves; allocates only for more setups than ever. */
void spring_charts_load (SpringCharts *charts, const SpringStudy *springs);
/* Sets both ranges for so many steps; with @hold they never shrink. */
void spring_charts_fit (SpringCharts *charts,
                        const SpringStudy *springs,
                        const int most_steps[N_SPRINGS_CHARTS],
                        bool hold);
void spring_charts_clear (SpringCharts *charts);

/* A curve at a travel; NAN outside or in a gap. */
double spring_curve_at (const double values[STUDY_STATIONS], SweepRange range, double at);

/* The areas, with hatching. Below the curves. */
void spring_areas_draw (const SpringCharts *charts, const SpringsPen *pen);

/* Writes the names that have room in their area, claims that room and sets @named. */
void
spring_areas_name (const SpringCharts *charts, const SpringsPen *pen, SpringNamed *named);

/* The names at the right edge: of the curves, and of the areas that have none yet. */
void spring_edge_names_draw (const SpringCharts *charts,
                             const SpringsPen *pen,
                             const SpringNamed *named);
/* How much room they want. */
double spring_edge_names_width (const SpringCharts *charts,
                                TextCache *texts,
                                const Theme *theme,
                                const Study *study);

/* The corner's weight as a line across, and down from where springs meet it; claims
 * both. Before areas are named. */
void spring_weight_draw (const SpringCharts *charts,
                         const SpringsPen *pen,
                         SpringNamed *named);
/* Where each setup meets it, and what happens to the one in hand on the way. */
void spring_marks_draw (const SpringCharts *charts, const SpringsPen *pen);

/* The travel in hand: a line through both charts, and the values there. */
void spring_cursor_draw (const SpringCharts *charts, const SpringsPen *pen);

/* Where setup @index stands on the line of the corner's weight; false where it does not.
 */
bool spring_standing_place (const SpringCharts *charts,
                            const SpringStudy *springs,
                            unsigned index,
                            double *x,
                            double *y);
