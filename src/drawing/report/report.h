/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A report on a car: pages of A4 or Letter with the car as it was measured, its setups
 * side by side, curves, the sheet to a scale that is stated, roll centre against height,
 * springs and loads; the cautions stand at the foot of every page. Window, printer and
 * command line draw the same pages. */

#pragma once

#include "drawing/board/board.h"
#include "drawing/pen/paper.h"
#include "model/load/load-case.h"

#include <gio/gio.h>

typedef enum {
  REPORT_CAR,
  REPORT_SETUPS,
  REPORT_CURVES,
  REPORT_SHEET,
  REPORT_HEIGHT,
  REPORT_SPRINGS,
  REPORT_LOADS,
  N_REPORT_PARTS
} ReportPart;

typedef struct {
  const Car *car; /* hidden setups are left out */
  guint in_hand;  /* the setup that sheet, springs and loads are about */
  bool has[N_REPORT_PARTS];
  BoardChoice choice; /* of curves */
  CarLoadCase load_case;
  SpringMode mode;  /* what carries that load */
  PaperSize paper;  /* at least 400 by 560 */
  const char *date; /* or NULL, for output that repeats to the byte */
} Report;

const char *report_part_key (ReportPart part);  /* "car", "setups" … */
const char *report_part_name (ReportPart part); /* translated: "Setups side by side" */
/* Whether there is what the part is about: springs and loads need a setup in the report
 * that has a spring. */
bool report_part_is_given (const Report *report, ReportPart part);

/* A report with all that its pages are drawn from, solved and laid out. */
typedef struct ReportPress ReportPress;
/* What @report points to stays alive and as it is. */
ReportPress *report_press_new (const Report *report);
void report_press_free (ReportPress *press);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (ReportPress, report_press_free)

guint report_n_pages (const ReportPress *press);
ReportPart report_page_part (const ReportPress *press, guint page);
/* From the origin, on white, in points. */
void report_draw_page (ReportPress *press, cairo_t *cr, guint page);

/* @path ends in .pdf; as export.h for errors and atomicity. */
gboolean report_write (const Report *report, const char *path, GError **error);
