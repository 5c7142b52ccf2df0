/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the report: what is written runs from page to page. All of it is gone through
 * once to count the pages and once for each page that is drawn, and leaves ink on that
 * page only. */

#pragma once

#include "drawing/card/fitting-card-pen.h"
#include "drawing/chart/chart.h"
#include "drawing/report/report.h"
#include "model/load/load-study.h"

#define REPORT_MARGIN 36.0 /* points: more than printers leave white */
#define REPORT_GAP 8.0     /* points between blocks */
#define REPORT_TYPE 0.72   /* of the theme's, which is for windows */

#define REPORT_NO_PAGE (-1)

typedef struct {
  FittingPen pen; /* its context is NULL unless the page in hand is the wanted one */
  const Report *report;
  const Study *study;
  GArray *parts; /* of ReportPart, for each page; or NULL */
  cairo_t *cr;
  int page, wanted; /* from 0; REPORT_NO_PAGE before the first, and to count */
  guint n_pages;    /* 0 while they are counted */
  ReportPart part;
  double x, y, width, bottom; /* y: the top of the next block */
} ReportFlow;

/* A new page with its head and foot. The first one of a part has the part's heading. */
void report_flow_begin (ReportFlow *flow, ReportPart part);
void report_flow_continue (ReportFlow *flow);
bool report_flow_has_room (const ReportFlow *flow, double height);
/* Whether nothing stands on the page yet but its heading. */
bool report_flow_is_fresh (const ReportFlow *flow);

double report_flow_line (const ReportFlow *flow, FittingStyle style);
void report_flow_skip (ReportFlow *flow, double height);
/* A title within a part; it never stands alone at the foot of a page that has no room for
 * @below more. */
void report_flow_title (ReportFlow *flow, const char *title, double below);
/* Wrapped; goes on overleaf where it is longer than the page. */
void report_flow_text (
    ReportFlow *flow, FittingStyle style, Colour colour, double indent, const char *text);

/* As much of the text, in whole words where there are any, as @width by @height holds;
 * in bytes, at least one character. */
gsize report_flow_prefix (const ReportFlow *flow,
                          FittingStyle style,
                          const char *text,
                          double width,
                          double height);

/* What is left of the page, for a drawing. */
Frame report_flow_rest (const ReportFlow *flow);
