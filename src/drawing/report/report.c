/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/report/report.h"

#include "drawing/export/export-file.h"
#include "drawing/report/report-parts.h"
#include "model/load/spring-verdict.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Of one travel in hand. */
typedef struct {
  Study *study;
  SpringStudy *springs;
} Solved;

struct ReportPress {
  Report report;
  TextCache *texts;
  Solved standing, loaded;
  LoadStudy *loads;
  GPtrArray *verdicts; /* of SpringVerdict, or NULL, and … */
  GPtrArray *words;    /* their sentences, closed by NULL */
  ReportDrawings drawings;
  GArray *parts; /* of ReportPart, for each page */
};

static const struct {
  const char *key, *name;
} parts[N_REPORT_PARTS] = {
  [REPORT_CAR] = { "car", N_ ("The car as measured") },
  [REPORT_SETUPS] = { "setups", N_ ("Setups side by side") },
  [REPORT_CURVES] = { "curves", N_ ("Curves against wheel travel") },
  [REPORT_SHEET] = { "sheet", N_ ("Sheet of the corner") },
  [REPORT_HEIGHT] = { "height", N_ ("Roll centre against lowering") },
  [REPORT_SPRINGS] = { "springs", N_ ("What it stands on") },
  [REPORT_LOADS] = { "loads", N_ ("Where the load goes") },
};

const char *
report_part_key (ReportPart part)
{
  return parts[part].key;
}

const char *
report_part_name (ReportPart part)
{
  return _ (parts[part].name);
}

static bool
is_shown (const Report *report, guint setup)
{
  return setup == report->in_hand || setup == report->car->baseline ||
         !car_setup (report->car, setup)->is_hidden;
}

bool
report_part_is_given (const Report *report, ReportPart part)
{
  const Car *car = report->car;

  if (part != REPORT_SPRINGS && part != REPORT_LOADS)
    return true;
  for (guint i = 0; i < car->setups->len; i++)
    if (is_shown (report, i) && !car_springs_is_none (car_setup_springs (car, i)))
      return true;
  return false;
}

static Solved
solve (const Report *report)
{
  const CarSetup *setup = car_setup (report->car, report->in_hand);
  Solved solved = { study_new (), spring_study_new () };

  study_solve (solved.study, report->car, report->in_hand, setup->lowering_mm);
  if (report->has[REPORT_SPRINGS] || report->has[REPORT_LOADS])
    spring_study_solve (solved.springs, solved.study, report->car);
  return solved;
}

static void
solve_springs (ReportPress *self)
{
  self->verdicts = spring_verdicts (self->standing.springs, self->report.in_hand);
  self->words = g_ptr_array_new ();
  for (guint i = 0; i < self->verdicts->len; i++)
    g_ptr_array_add (self->words, ((SpringVerdict *) self->verdicts->pdata[i])->marked);
  g_ptr_array_add (self->words, NULL);
}

/* Where the load puts the wheel. */
static void
solve_loads (ReportPress *self)
{
  const JointLoads *hand;

  self->loaded = solve (&self->report);
  self->loads = load_study_new ();
  load_study_solve (self->loads, self->loaded.springs, &self->report.load_case,
                    self->report.mode);
  hand = load_study_in_hand (self->loads);
  if (!hand->is_solved)
    return;
  study_set_travel (self->loaded.study, hand->travel);
  spring_study_set_travel (self->loaded.springs);
}

static ReportDrawings
drawings_of (const ReportPress *self)
{
  return (ReportDrawings){ .board = board_new (),
                           .sheet = sheet_new (),
                           .lowering = lowering_new (),
                           .springs_board = springs_board_new (),
                           .loads_board = loads_board_new (),
                           .springs = self->standing.springs,
                           .verdicts = self->words != NULL
                                           ? (const char *const *) self->words->pdata
                                           : NULL,
                           .loads = self->loads };
}

static void
write_parts (const ReportPress *self, ReportFlow *flow)
{
  static void (*const draw[N_REPORT_PARTS]) (ReportFlow *, const ReportDrawings *) = {
    [REPORT_CURVES] = report_draw_curves, [REPORT_SHEET] = report_draw_sheet,
    [REPORT_HEIGHT] = report_draw_height, [REPORT_SPRINGS] = report_draw_springs,
    [REPORT_LOADS] = report_draw_loads,
  };

  for (ReportPart part = 0; part < N_REPORT_PARTS; part++) {
    if (!self->report.has[part])
      continue;
    report_flow_begin (flow, part);
    if (part == REPORT_CAR)
      report_write_car (flow);
    else if (part == REPORT_SETUPS)
      report_write_setups (flow);
    else
      draw[part](flow, &self->drawings);
  }
}

static ReportFlow
flow_for (const ReportPress *self, cairo_t *cr, int wanted)
{
  return (ReportFlow){ .pen = { .texts = self->texts,
                                .theme = theme_scaled (theme_paper (), REPORT_TYPE) },
                       .report = &self->report,
                       .study = self->standing.study,
                       .cr = cr,
                       .page = REPORT_NO_PAGE,
                       .wanted = wanted,
                       .n_pages = self->parts->len,
                       .x = REPORT_MARGIN,
                       .width = self->report.paper.width - 2.0 * REPORT_MARGIN };
}

ReportPress *
report_press_new (const Report *report)
{
  ReportPress *self = g_new0 (ReportPress, 1);

  self->report = *report;
  for (ReportPart part = 0; part < N_REPORT_PARTS; part++)
    self->report.has[part] = report->has[part] && report_part_is_given (report, part);
  self->texts = text_cache_new ();
  self->parts = g_array_new (FALSE, FALSE, sizeof (ReportPart));
  self->standing = solve (&self->report);
  if (self->report.has[REPORT_SPRINGS])
    solve_springs (self);
  if (self->report.has[REPORT_LOADS])
    solve_loads (self);
  self->drawings = drawings_of (self);

  ReportFlow flow = flow_for (self, NULL, REPORT_NO_PAGE);
  flow.parts = self->parts;
  write_parts (self, &flow);
  return self;
}

static void
free_solved (Solved *solved)
{
  g_clear_pointer (&solved->springs, spring_study_free);
  g_clear_pointer (&solved->study, study_free);
}

void
report_press_free (ReportPress *self)
{
  if (self == NULL)
    return;
  board_free (self->drawings.board);
  sheet_free (self->drawings.sheet);
  lowering_free (self->drawings.lowering);
  springs_board_free (self->drawings.springs_board);
  loads_board_free (self->drawings.loads_board);
  g_clear_pointer (&self->loads, load_study_free);
  g_clear_pointer (&self->words, g_ptr_array_unref);
  g_clear_pointer (&self->verdicts, g_ptr_array_unref);
  free_solved (&self->loaded);
  free_solved (&self->standing);
  g_array_unref (self->parts);
  text_cache_free (self->texts);
  g_free (self);
}

guint
report_n_pages (const ReportPress *self)
{
  return self->parts->len;
}

ReportPart
report_page_part (const ReportPress *self, guint page)
{
  g_return_val_if_fail (page < self->parts->len, REPORT_CAR);

  return g_array_index (self->parts, ReportPart, page);
}

void
report_draw_page (ReportPress *self, cairo_t *cr, guint page)
{
  ReportFlow flow = flow_for (self, cr, (int) page);

  theme_paint_ground (cr, &flow.pen.theme, self->report.paper.width,
                      self->report.paper.height);
  write_parts (self, &flow);
}

static void
draw_page (cairo_t *cr, gpointer press, guint page)
{
  report_draw_page (press, cr, page);
}

/* Of a part's first page. */
static const char *
heading (gpointer press, guint page)
{
  const ReportPart part = report_page_part (press, page);

  return page > 0 && report_page_part (press, page - 1) == part ? NULL
                                                                : report_part_name (part);
}

gboolean
report_write (const Report *report, const char *path, GError **error)
{
  g_autoptr (ReportPress) press = report_press_new (report);
  const ExportPages pages = { report->paper.width, report->paper.height,
                              report->car->name, heading };

  return export_file_write_pages (draw_page, press, report_n_pages (press), pages, path,
                                  error);
}
