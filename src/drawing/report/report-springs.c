/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What each setup stands on: its sizes part by part in two columns, and the verdicts on
 * it. */

#include "drawing/report/report-parts.h"
#include "model/load/spring-verdict.h"
#include "model/spring/spring-caution.h"
#include "model/spring/spring-size.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define PART_SHARE 0.21 /* of the width, for the parts' names */
#define COLUMN_GAP 18.0
#define NAME_GAP 6.0
#define LEAST_NAME 0.35 /* of a column, where the figure is long */
#define LAW_NAME 0.3    /* of the room, at most */
#define SAMPLE 26.0
#define ROW_AIR 2.0

static double
row_height (const ReportFlow *flow)
{
  return report_flow_line (flow, FITTING_TEXT) + ROW_AIR;
}

static double
baseline (const ReportFlow *flow)
{
  return flow->y + 0.8 * report_flow_line (flow, FITTING_TEXT) + 1.0;
}

static double
sizes_left (const ReportFlow *flow)
{
  return flow->x + PART_SHARE * flow->width;
}

static double
half_width (const ReportFlow *flow)
{
  return ((1.0 - PART_SHARE) * flow->width - COLUMN_GAP) / 2.0;
}

/* That has no room beside another in half the width. */
static bool
needs_row (const ReportFlow *flow, const SpringSize *size)
{
  const FittingPen *pen = &flow->pen;

  return fitting_text_width (pen, FITTING_TEXT, size->name) + NAME_GAP +
             fitting_text_width (pen, FITTING_TEXT, size->text) >
         half_width (flow);
}

/* Name at the left, figure at the right. */
static void
write_size (const ReportFlow *flow, const SpringSize *size, double x, double width)
{
  const FittingPen *pen = &flow->pen;
  const double figure = fitting_text_width (pen, FITTING_TEXT, size->text) + NAME_GAP;
  const double room = fmax (width - figure, LEAST_NAME * width);

  fitting_ink (pen, pen->theme.soft_ink);
  const double past = fitting_write (pen, FITTING_TEXT, size->name, x, baseline (flow),
                                     room, FITTING_LEFT) +
                      NAME_GAP;
  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_TEXT, size->text, x + past, baseline (flow), width - past,
                 FITTING_RIGHT);
}

/* Its name in the first column, the law over the rest. */
static double
write_law (const ReportFlow *flow, const SpringSize *size)
{
  const FittingPen *pen = &flow->pen;
  const double left = sizes_left (flow), width = flow->x + flow->width - left;

  fitting_ink (pen, pen->theme.soft_ink);
  const double past = fitting_write (pen, FITTING_TEXT, size->name, left, baseline (flow),
                                     LAW_NAME * width, FITTING_LEFT) +
                      NAME_GAP;
  fitting_ink (pen, pen->theme.ink);
  const double above =
      text_measure (pen->texts, fitting_style (pen, FITTING_TEXT), size->text).baseline;
  const double top = baseline (flow) - above;
  return top - flow->y +
         fitting_paragraph (pen, FITTING_TEXT, size->text, left + past, top,
                            width - past) +
         ROW_AIR / 2.0;
}

static double
law_height (const ReportFlow *flow, const SpringSize *size)
{
  ReportFlow measured = *flow;

  measured.pen.cr = NULL;
  return write_law (&measured, size);
}

static bool
is_pair (const ReportFlow *flow, const GPtrArray *sizes, guint i)
{
  const SpringSize *one = sizes->pdata[i];
  const SpringSize *next = i + 1 < sizes->len ? sizes->pdata[i + 1] : NULL;

  return next != NULL && !one->is_long && !next->is_long && next->part == one->part &&
         !needs_row (flow, one) && !needs_row (flow, next);
}

static void
make_room (ReportFlow *flow, double height)
{
  if (!report_flow_has_room (flow, height))
    report_flow_continue (flow);
}

/* One law, or two sizes beside each other; returns how many it took. */
static guint
write_row (ReportFlow *flow, const GPtrArray *sizes, guint i)
{
  const SpringSize *size = sizes->pdata[i];
  const double left = sizes_left (flow);
  const double half = half_width (flow);

  if (size->is_long) {
    report_flow_skip (flow, write_law (flow, size));
    return 1;
  }
  write_size (flow, size, left,
              needs_row (flow, size) ? flow->x + flow->width - left : half);
  if (is_pair (flow, sizes, i))
    write_size (flow, sizes->pdata[i + 1], left + half + COLUMN_GAP, half);
  report_flow_skip (flow, row_height (flow));
  return is_pair (flow, sizes, i) ? 2 : 1;
}

static void
write_rule (ReportFlow *flow)
{
  fitting_ink (&flow->pen, flow->pen.theme.faint);
  fitting_rule (&flow->pen, flow->x, flow->y, flow->width, 0.7 * flow->pen.theme.thin);
}

static void
write_part_name (ReportFlow *flow, const char *part)
{
  const FittingPen *pen = &flow->pen;

  write_rule (flow);
  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_TEXT_BOLD, part, flow->x, baseline (flow),
                 PART_SHARE * flow->width - NAME_GAP, FITTING_LEFT);
}

/* How many from @first on are of its part. */
static guint
part_length (const GPtrArray *sizes, guint first)
{
  const char *part = ((SpringSize *) sizes->pdata[first])->part;
  guint n = 1;

  while (first + n < sizes->len &&
         g_str_equal (((SpringSize *) sizes->pdata[first + n])->part, part))
    n++;
  return n;
}

static bool
is_same (const SpringSize *a, const SpringSize *b)
{
  return g_str_equal (a->part, b->part) && g_str_equal (a->name, b->name) &&
         g_str_equal (a->text, b->text);
}

/* Whether @others have the part of @first in all its sizes. */
static bool
is_part_alike (const GPtrArray *sizes, guint first, const GPtrArray *others)
{
  const guint n = part_length (sizes, first);
  guint at = 0;

  if (others == NULL)
    return false;
  while (at < others->len && !g_str_equal (((SpringSize *) others->pdata[at])->part,
                                           ((SpringSize *) sizes->pdata[first])->part))
    at++;
  if (at == others->len || part_length (others, at) != n)
    return false;
  for (guint i = 0; i < n; i++)
    if (!is_same (sizes->pdata[first + i], others->pdata[at + i]))
      return false;
  return true;
}

static void
write_part (ReportFlow *flow, const GPtrArray *sizes, guint first)
{
  const guint end = first + part_length (sizes, first);
  int page = REPORT_NO_PAGE;

  for (guint i = first; i < end;) {
    const SpringSize *size = sizes->pdata[i];

    make_room (flow, size->is_long ? law_height (flow, size) : row_height (flow));
    if (flow->page != page)
      write_part_name (flow, size->part);
    page = flow->page;
    i += write_row (flow, sizes, i);
  }
}

/* Parts that @others, of the setup called @name, have alike are named in a line. */
static void
write_sizes (ReportFlow *flow,
             const GPtrArray *sizes,
             const GPtrArray *others,
             const char *name)
{
  g_autoptr (GString) alike = g_string_new (NULL);

  for (guint i = 0; i < sizes->len; i += part_length (sizes, i)) {
    if (!is_part_alike (sizes, i, others)) {
      write_part (flow, sizes, i);
      continue;
    }
    g_string_append_printf (alike, "%s%s", alike->len > 0 ? " · " : "",
                            ((SpringSize *) sizes->pdata[i])->part);
  }
  if (alike->len == 0)
    return;
  g_autofree char *same = g_strdup_printf (_ ("As with “%s”: %s"), name, alike->str);
  make_room (flow, row_height (flow));
  write_rule (flow);
  report_flow_skip (flow, ROW_AIR / 2.0);
  report_flow_text (flow, FITTING_TEXT, flow->pen.theme.soft_ink, 0.0, same);
}

static void
write_verdicts (ReportFlow *flow, const SpringStudy *springs, guint setup)
{
  g_autoptr (GPtrArray) verdicts = spring_verdicts (springs, setup);

  report_flow_skip (flow, 0.5 * REPORT_GAP);
  for (guint i = 0; i < verdicts->len; i++) {
    const SpringVerdict *verdict = verdicts->pdata[i];

    report_flow_text (flow, verdict->is_warning ? FITTING_TEXT_BOLD : FITTING_TEXT,
                      flow->pen.theme.ink, 0.0, verdict->marked);
  }
}

static void
write_head (ReportFlow *flow, guint setup)
{
  const FittingPen *pen = &flow->pen;
  const double line = report_flow_line (flow, FITTING_TEXT);

  make_room (flow, line + 4.0 * row_height (flow));
  if (pen->cr != NULL)
    theme_draw_sample (pen->cr, &pen->theme, setup, setup == flow->study->in_hand,
                       flow->x, flow->y + 0.5 * line, SAMPLE);
  report_flow_text (flow, FITTING_TEXT_BOLD, pen->theme.ink, SAMPLE + 8.0,
                    flow->study->setups[setup].title);
  report_flow_skip (flow, 2.0);
}

static guint
first_shown (const Study *study)
{
  guint i = 0;

  while (!study->setups[i].is_shown)
    i++;
  return i;
}

static bool
stand_alike (const SpringStudy *springs, guint a, guint b)
{
  return memcmp (springs->setups[a].springs, springs->setups[b].springs,
                 sizeof (CarSprings)) == 0;
}

/* Whether the table of the drawing, of the setup in hand and the baseline, says nothing
 * of springs like these. */
static bool
is_beside_the_columns (const SpringStudy *springs, guint setup)
{
  return !stand_alike (springs, setup, springs->study->in_hand) &&
         !stand_alike (springs, setup, springs->study->baseline);
}

static void
write_what_it_has (ReportFlow *flow, const SpringStudy *springs, guint setup)
{
  const guint first = first_shown (flow->study);
  g_autoptr (GPtrArray) sizes = spring_sizes (springs, setup);
  g_autoptr (GPtrArray) others = setup != first ? spring_sizes (springs, first) : NULL;

  if (is_beside_the_columns (springs, setup))
    spring_sizes_add_figures (sizes, &springs->setups[setup]);
  if (car_springs_is_none (springs->setups[setup].springs))
    report_flow_text (flow, FITTING_TEXT, flow->pen.theme.soft_ink, 0.0,
                      _ ("No spring is given."));
  write_sizes (flow, sizes, others, flow->study->setups[first].title);
}

void
report_write_springs (ReportFlow *flow, const SpringStudy *springs)
{
  report_flow_continue (flow);
  report_flow_title (flow, _ ("Sizes of springs and rods, and what they come to"),
                     6.0 * row_height (flow));
  report_flow_text (flow, FITTING_SMALL, flow->pen.theme.soft_ink, 0.0,
                    spring_caution ());
  report_flow_skip (flow, REPORT_GAP);
  for (guint i = 0; i < springs->n_setups; i++) {
    if (!flow->study->setups[i].is_shown)
      continue;
    write_head (flow, i);
    write_what_it_has (flow, springs, i);
    write_verdicts (flow, springs, i);
    report_flow_skip (flow, 1.2 * REPORT_GAP);
  }
}
