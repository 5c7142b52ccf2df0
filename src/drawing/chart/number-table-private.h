/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the two kinds of number table share. */

#pragma once

#include "drawing/chart/number-table.h"
#include "model/study/quantity-info.h"

#define NUMBER_TABLE_MARGIN 0.9 /* text sizes */

typedef struct {
  unsigned n_blocks, n_rows;     /* rows of each block, without the head */
  double left, width, head, row; /* of one block, pixels */
} TableLayout;

struct NumberTable {
  TextCache *texts;
  TableLayout layout;
  Quantity rows[NUMBER_TABLE_MOST_ROWS];
  unsigned n_rows;
};

void number_table_put (NumberTable *table,
                       cairo_t *cr,
                       TextStyle style,
                       Colour colour,
                       const char *text,
                       double x,
                       double y,
                       double anchor);

/* The whole name where it fits, else the short one; from @x, with its middle at @y. */
void number_table_put_name (NumberTable *table,
                            cairo_t *cr,
                            const Theme *theme,
                            const QuantityInfo *info,
                            double x,
                            double y,
                            double room);

/* The width that a block with all setups wants, text sizes. */
double side_by_side_least (const NumberTableView *view);
/* The setups that a block @width wide holds. */
unsigned
side_by_side_setups (const NumberTableView *view, double width, unsigned *setups);
/* Heads and figures, once the rows are ruled. */
void side_by_side_draw (NumberTable *table, cairo_t *cr, const NumberTableView *view);
