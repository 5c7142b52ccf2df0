/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/report/report-flow.h"

#include "drawing/chart/title-block.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define HEAD_SHARE 0.62 /* of the width, for the car's name */

double
report_flow_line (const ReportFlow *flow, FittingStyle style)
{
  return fitting_line_height (&flow->pen, style);
}

void
report_flow_skip (ReportFlow *flow, double height)
{
  flow->y += height;
}

bool
report_flow_has_room (const ReportFlow *flow, double height)
{
  return flow->y + height <= flow->bottom + 0.01;
}

static double
head_height (const ReportFlow *flow)
{
  return report_flow_line (flow, FITTING_SMALL) + 3.0;
}

static double
top_of_page (const ReportFlow *flow)
{
  return REPORT_MARGIN + head_height (flow) + REPORT_GAP;
}

static double
heading_height (const ReportFlow *flow)
{
  return report_flow_line (flow, FITTING_LARGE) + 2.0;
}

bool
report_flow_is_fresh (const ReportFlow *flow)
{
  return flow->y <= top_of_page (flow) + heading_height (flow) + 0.01;
}

/* The car on every page, so that a sheet that was taken out can be put back. */
static void
draw_head (const ReportFlow *flow)
{
  const FittingPen *pen = &flow->pen;
  const double line = report_flow_line (flow, FITTING_SMALL);
  const double baseline = REPORT_MARGIN + 0.75 * line, name = HEAD_SHARE * flow->width;
  const double date = flow->width - name - REPORT_GAP;

  fitting_ink (pen, pen->theme.soft_ink);
  if (flow->page > 0 || flow->part != REPORT_CAR)
    fitting_write (pen, FITTING_SMALL, flow->report->car->name, flow->x, baseline, name,
                   FITTING_LEFT);
  if (flow->report->date != NULL)
    fitting_write (pen, FITTING_SMALL, flow->report->date, flow->x + flow->width - date,
                   baseline, date, FITTING_RIGHT);
  if (flow->page == 0 && flow->part == REPORT_CAR && flow->report->date == NULL)
    return;
  fitting_ink (pen, pen->theme.faint);
  fitting_rule (pen, flow->x, REPORT_MARGIN + line + 2.0, flow->width, pen->theme.thin);
}

static char *
page_number (const ReportFlow *flow)
{
  /* Translators: page 2 of 5 */
  return g_strdup_printf (C_ ("page", "%d / %u"), flow->page + 1, flow->n_pages);
}

/* Draws from @y where the pen has a context; returns the height. */
static double
foot (const ReportFlow *flow, double y)
{
  const FittingPen *pen = &flow->pen;
  const double line = report_flow_line (flow, FITTING_SMALL);
  g_autofree char *number = page_number (flow);

  fitting_ink (pen, pen->theme.body);
  fitting_rule (pen, flow->x, y, flow->width, pen->theme.thin);
  fitting_ink (pen, pen->theme.ink);
  const double caution = fitting_paragraph (pen, FITTING_SMALL, caution_text (), flow->x,
                                            y + 3.0, flow->width);
  const double baseline = y + 5.0 + caution + 0.75 * line;

  fitting_ink (pen, pen->theme.soft_ink);
  fitting_write (pen, FITTING_SMALL, "Strutwright", flow->x, baseline, flow->width / 2.0,
                 FITTING_LEFT);
  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_TEXT_BOLD, number, flow->x + flow->width / 2.0, baseline,
                 flow->width / 2.0, FITTING_RIGHT);
  return 5.0 + caution + line;
}

void
report_flow_continue (ReportFlow *flow)
{
  const double edge = flow->report->paper.height - REPORT_MARGIN;

  flow->page++;
  if (flow->parts != NULL)
    g_array_append_val (flow->parts, flow->part);
  flow->pen.cr = NULL;
  flow->y = top_of_page (flow);
  flow->bottom = edge - foot (flow, 0.0) - REPORT_GAP;
  if (flow->page != flow->wanted)
    return;
  flow->pen.cr = flow->cr;
  draw_head (flow);
  foot (flow, flow->bottom + REPORT_GAP);
}

void
report_flow_begin (ReportFlow *flow, ReportPart part)
{
  const double line = report_flow_line (flow, FITTING_LARGE);

  flow->part = part;
  report_flow_continue (flow);
  if (part == REPORT_CAR) /* headed by its name */
    return;
  fitting_ink (&flow->pen, flow->pen.theme.ink);
  fitting_write (&flow->pen, FITTING_LARGE, report_part_name (part), flow->x,
                 flow->y + 0.72 * line, flow->width, FITTING_LEFT);
  report_flow_skip (flow, heading_height (flow));
}

void
report_flow_title (ReportFlow *flow, const char *title, double below)
{
  const double line = report_flow_line (flow, FITTING_HEADING);

  if (!report_flow_has_room (flow, line + below))
    report_flow_continue (flow);
  fitting_ink (&flow->pen, flow->pen.theme.ink);
  fitting_write (&flow->pen, FITTING_HEADING, title, flow->x, flow->y + 0.78 * line,
                 flow->width, FITTING_LEFT);
  report_flow_skip (flow, line + 1.0);
}

static double
wrapped_height (
    const ReportFlow *flow, FittingStyle style, const char *text, gsize n, double width)
{
  g_autofree char *part = g_strndup (text, n);

  return text_measure_wrapped (flow->pen.texts, fitting_style (&flow->pen, style), part,
                               width)
      .height;
}

/* The ends of words, or of characters where it has none, in bytes. */
static GArray *
list_ends (const char *text, bool between_words)
{
  GArray *ends = g_array_new (FALSE, FALSE, sizeof (gsize));

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at)) {
    const gsize end = (gsize) (g_utf8_next_char (at) - text);

    if (!between_words || text[end] == '\0' || g_ascii_isspace (text[end]))
      g_array_append_val (ends, end);
  }
  return ends;
}

/* The last end up to which the text is not too high; 0 where there is none. */
static gsize
last_end (const ReportFlow *flow,
          FittingStyle style,
          const char *text,
          double width,
          double height,
          const GArray *ends)
{
  guint low = 0, high = ends->len;

  while (low < high) {
    const guint middle = (low + high) / 2;

    if (wrapped_height (flow, style, text, g_array_index (ends, gsize, middle), width) <=
        height)
      low = middle + 1;
    else
      high = middle;
  }
  return low > 0 ? g_array_index (ends, gsize, low - 1) : 0;
}

gsize
report_flow_prefix (const ReportFlow *flow,
                    FittingStyle style,
                    const char *text,
                    double width,
                    double height)
{
  gsize n = strlen (text);

  if (n == 0 || wrapped_height (flow, style, text, n, width) <= height)
    return n;
  for (int words = 1; words >= 0; words--) {
    g_autoptr (GArray) ends = list_ends (text, words == 1);

    n = last_end (flow, style, text, width, height, ends);
    if (n > 0)
      return n;
  }
  return (gsize) (g_utf8_next_char (text) - text);
}

void
report_flow_text (
    ReportFlow *flow, FittingStyle style, Colour colour, double indent, const char *text)
{
  const double width = flow->width - indent;

  while (*text != '\0') {
    if (!report_flow_has_room (flow, report_flow_line (flow, style)))
      report_flow_continue (flow);
    const gsize n = report_flow_prefix (flow, style, text, width, flow->bottom - flow->y);
    g_autofree char *part = g_strndup (text, n);

    fitting_ink (&flow->pen, colour);
    report_flow_skip (flow, fitting_paragraph (&flow->pen, style, part, flow->x + indent,
                                               flow->y, width));
    for (text += n; g_ascii_isspace (*text);)
      text++;
    if (*text != '\0')
      report_flow_continue (flow);
  }
}

Frame
report_flow_rest (const ReportFlow *flow)
{
  return (Frame){ flow->x, flow->y, flow->width, flow->bottom - flow->y };
}
