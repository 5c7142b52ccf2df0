/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a report is made of, held by itself: the window behind may change while it is
 * looked at. */

#pragma once

#include "drawing/report/report.h"
#include "window/bench/bench.h"
#include "window/canvas/canvas.h"
#include "window/paper/paper-kind.h"

typedef struct {
  Car *car;
  char *today;
  Report report; /* of that car; to be changed, then laid out anew */
  ReportPress *press;
} ReportPages;

/* Of all that the car gives, its setup in hand in hand, on the paper that is usual
 * here. */
ReportPages *report_pages_new (SwBench *bench);
void report_pages_lay_out (ReportPages *pages);

extern const PaperKind report_paper;

#define SW_TYPE_REPORT_PREVIEW (sw_report_preview_get_type ())
G_DECLARE_FINAL_TYPE (SwReportPreview, sw_report_preview, SW, REPORT_PREVIEW, SwCanvas)

/* Shows one of @pages, which must outlive it, as large as there is room. */
GtkWidget *sw_report_preview_new (const ReportPages *pages);
/* @page may be past the end: then nothing is shown. */
void sw_report_preview_set_page (SwReportPreview *self, guint page);
