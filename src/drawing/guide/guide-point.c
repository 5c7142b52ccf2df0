/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Half a page about one point: its drawing on the left, how to take it on the right. */

#include "drawing/guide/guide-private.h"

#include "model/words/point-words.h"

#include <glib/gi18n-lib.h>

#define SKETCH_SHARE 0.345
#define COLUMN_GAP 14.0

static void
draw_title (GuidePage *page, PointName point)
{
  const FittingPen *pen = &page->pen;
  g_autofree char *title = g_strdup_printf ("%u  %s", point + 1, point_title (point));

  fitting_ink (pen, pen->theme.ink);
  fitting_rule (pen, page->x, page->y, page->width, pen->theme.line);
  page->y += 3.0;
  guide_line (page, FITTING_HEADING, title);
}

/* A heading and its paragraph. */
static void
draw_part (GuidePage *page, const char *heading, const char *text)
{
  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  guide_line (page, FITTING_SMALL, heading);
  fitting_ink (&page->pen, page->pen.theme.ink);
  guide_paragraph (page, FITTING_TEXT, text);
  page->y += GUIDE_GAP;
}

static void
draw_words (GuidePage *page, PointName point)
{
  g_autofree char *check = guide_point_check (page->guide, point);

  draw_part (page, _ ("Where it is"), point_meaning (point));
  draw_part (page, _ ("How to take it"), guide_point_method (point));
  draw_part (page, _ ("To check the figures of this car’s file"), check);
  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  guide_paragraph (page, FITTING_SMALL, _ ("What 1 mm of error does at 30 mm of bump"));
  fitting_ink (&page->pen, page->pen.theme.ink);
  page->y += guide_error_table (page, point, page->x, page->y, page->width);
}

void
guide_point_block (GuidePage *page, PointName point)
{
  GuidePage words;

  draw_title (page, point);
  words = *page;
  words.x = page->x + SKETCH_SHARE * page->width + COLUMN_GAP;
  words.width = page->x + page->width - words.x;
  guide_sketch_draw (page, (int) point,
                     (PixelBox){ page->x, page->y + 4.0, SKETCH_SHARE * page->width,
                                 page->bottom - page->y - 4.0 });
  words.y += 4.0;
  draw_words (&words, point);
  page->y = words.y;
  page->is_full |= page->y > page->bottom;
}
