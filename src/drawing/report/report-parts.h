/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the report: its parts, each on pages of its own. */

#pragma once

#include "drawing/board/lowering.h"
#include "drawing/loads/loads-board.h"
#include "drawing/report/report-flow.h"
#include "drawing/sheet/sheet.h"
#include "drawing/springs/springs-board.h"

void report_write_car (ReportFlow *flow);
/* Where the measured points lie, by their numbers, in what is left of the page; nothing
 * where that is too little. */
void report_draw_points (ReportFlow *flow);
void report_write_setups (ReportFlow *flow);

/* The drawings, kept from page to page. */
typedef struct {
  Board *board;
  Sheet *sheet;
  Lowering *lowering;
  SpringsBoard *springs_board;
  LoadsBoard *loads_board;
  const SpringStudy *springs; /* at the standing height */
  const char *const *verdicts;
  const LoadStudy *loads; /* where the load puts the wheel, or NULL */
} ReportDrawings;

void report_draw_curves (ReportFlow *flow, const ReportDrawings *drawings);
void report_draw_sheet (ReportFlow *flow, const ReportDrawings *drawings);
void report_draw_height (ReportFlow *flow, const ReportDrawings *drawings);
void report_draw_springs (ReportFlow *flow, const ReportDrawings *drawings);
/* Sizes of each setup and verdicts on it, on pages that follow. */
void report_write_springs (ReportFlow *flow, const SpringStudy *springs);
void report_draw_loads (ReportFlow *flow, const ReportDrawings *drawings);
