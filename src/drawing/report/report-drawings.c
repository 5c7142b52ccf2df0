/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One page for each drawing: that of the window, made for paper. */

#include "drawing/card/fitting-card-plan.h"
#include "drawing/chart/title-block.h"
#include "drawing/report/report-parts.h"
#include "model/study/setup-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define EDGE 12.0 /* units of a drawing that it leaves free around itself */

/* Reductions of ISO 5455, from memory. */
static const int scales[] = { 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000 };

/* A drawing in its own units, which are REPORT_TYPE points; its ink reaches the margins
 * of the page. */
typedef struct {
  double width, height;
} Canvas;

static Canvas
open_canvas (ReportFlow *flow)
{
  const Frame rest = report_flow_rest (flow);
  cairo_t *cr = flow->pen.cr;

  if (cr != NULL) {
    cairo_save (cr);
    cairo_translate (cr, rest.x - EDGE * REPORT_TYPE, rest.y);
    cairo_scale (cr, REPORT_TYPE, REPORT_TYPE);
  }
  return (Canvas){ rest.width / REPORT_TYPE + 2.0 * EDGE, rest.height / REPORT_TYPE };
}

static void
close_canvas (ReportFlow *flow)
{
  if (flow->pen.cr != NULL)
    cairo_restore (flow->pen.cr);
  flow->y = flow->bottom;
}

static void
write_legend (ReportFlow *flow, bool omits_measured)
{
  const FittingPen *pen = &flow->pen;

  if (pen->cr != NULL)
    legend_draw (pen->texts, pen->cr, &pen->theme, flow->study, omits_measured, flow->x,
                 flow->y, flow->width);
  report_flow_skip (flow, legend_height (pen->texts, &pen->theme, flow->study,
                                         omits_measured, flow->width));
  report_flow_skip (flow, 0.5 * REPORT_GAP);
}

/* Of what follows, in words. */
static void
write_setup (ReportFlow *flow)
{
  const Car *car = flow->report->car;
  const CarSetup *setup = car_setup (car, flow->report->in_hand);
  const TitleBlock title = title_block_for (car, setup, NULL);
  g_autofree char *adjustment = title_block_adjustment (&title);

  report_flow_text (flow, FITTING_TEXT_BOLD, flow->pen.theme.ink, 0.0,
                    setup_title (setup));
  report_flow_text (flow, FITTING_SMALL, flow->pen.theme.soft_ink, 0.0, adjustment);
  report_flow_skip (flow, 0.5 * REPORT_GAP);
}

void
report_draw_curves (ReportFlow *flow, const ReportDrawings *drawings)
{
  write_legend (flow, false);
  const Canvas canvas = open_canvas (flow);
  const BoardView view = { .study = flow->study,
                           .choice = flow->report->choice,
                           .theme = theme_paper (),
                           .lit = -1 };

  if (flow->pen.cr != NULL)
    board_draw (drawings->board, flow->pen.cr, &view, canvas.width, canvas.height);
  close_canvas (flow);
}

/* Units of the drawing for a mm of the car. */
static double
units_per_mm (int scale)
{
  return fitting_plan_points_per_mm (scale) / REPORT_TYPE;
}

static int
largest_scale (Sheet *sheet, const SheetView *view, Canvas canvas)
{
  sheet_arrange (sheet, view, canvas.width, canvas.height);
  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    if (units_per_mm (scales[i]) <= sheet_scale (sheet))
      return scales[i];
  return scales[G_N_ELEMENTS (scales) - 1];
}

/* The scale in words, and the bar to check a printer by. @scale 0 for its room. */
static double
scale_height (const ReportFlow *flow)
{
  return 2.0 * report_flow_line (flow, FITTING_SMALL) + REPORT_GAP;
}

static void
write_scale (ReportFlow *flow, int scale)
{
  const FittingPen *pen = &flow->pen;
  const double line = report_flow_line (flow, FITTING_HEADING);
  g_autofree char *ratio = g_strdup_printf (_ ("Scale 1 : %d"), scale);
  const double name = 0.3 * flow->width, bar = flow->x + name;
  const double left = bar + fitting_check_bar_length () + 2.0 * REPORT_GAP;

  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_HEADING, ratio, flow->x, flow->y + 0.78 * line,
                 name - REPORT_GAP, FITTING_LEFT);
  fitting_check_bar (pen, bar, flow->y + line / 2.0);
  fitting_ink (pen, pen->theme.soft_ink);
  fitting_paragraph (pen, FITTING_SMALL,
                     _ ("This bar must measure 50 mm on paper: print at 100 %."), left,
                     flow->y, flow->x + flow->width - left);
  report_flow_skip (flow, scale_height (flow));
}

void
report_draw_sheet (ReportFlow *flow, const ReportDrawings *drawings)
{
  SheetView view = { .study = flow->study,
                     .section_width = flow->report->car->section_width_mm,
                     .theme = theme_paper (),
                     .zoom = 1.0,
                     .lit = -1 };

  write_setup (flow);
  const double below = scale_height (flow) / REPORT_TYPE;
  const Frame rest = report_flow_rest (flow);
  const Canvas room = { rest.width / REPORT_TYPE + 2.0 * EDGE,
                        rest.height / REPORT_TYPE - below };
  const int scale = largest_scale (drawings->sheet, &view, room);

  write_scale (flow, scale);
  view.scale = units_per_mm (scale);
  const Canvas canvas = open_canvas (flow);
  if (flow->pen.cr != NULL)
    sheet_draw (drawings->sheet, flow->pen.cr, &view, canvas.width, canvas.height);
  close_canvas (flow);
}

void
report_draw_height (ReportFlow *flow, const ReportDrawings *drawings)
{
  write_legend (flow, false);
  const Canvas canvas = open_canvas (flow);
  const LoweringView view = { .study = flow->study, .theme = theme_paper (), .lit = -1 };

  if (flow->pen.cr != NULL)
    lowering_draw (drawings->lowering, flow->pen.cr, &view, canvas.width, canvas.height);
  close_canvas (flow);
}

void
report_draw_springs (ReportFlow *flow, const ReportDrawings *drawings)
{
  write_legend (flow, true);
  const Canvas canvas = open_canvas (flow);
  const SpringsView view = { .springs = drawings->springs,
                             .theme = theme_paper (),
                             .lit = -1,
                             .verdicts = drawings->verdicts };

  if (flow->pen.cr != NULL)
    springs_draw (drawings->springs_board, flow->pen.cr, &view, canvas.width,
                  canvas.height);
  close_canvas (flow);
  report_write_springs (flow, drawings->springs);
}

void
report_draw_loads (ReportFlow *flow, const ReportDrawings *drawings)
{
  const Canvas canvas = open_canvas (flow);
  const LoadsView view = { .loads = drawings->loads, .theme = theme_paper () };

  if (flow->pen.cr != NULL)
    loads_board_draw (drawings->loads_board, flow->pen.cr, &view, canvas.width,
                      canvas.height);
  close_canvas (flow);
}
