/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers at the travel in hand: quantity, as measured, this setup, change, in as
 * many columns as the width holds. */

#pragma once

#include "drawing/text.h"
#include "model/study.h"

#define NUMBER_TABLE_MOST_ROWS N_QUANTITIES

typedef struct {
  const Study *study;
  Theme theme;
  const Quantity *quantities;
  unsigned n_quantities;
  int lit; /* the Quantity that is lit up, or -1 */
} NumberTableView;

typedef struct NumberTable NumberTable;
NumberTable *number_table_new (void);
void number_table_free (NumberTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (NumberTable, number_table_free)

void number_table_draw (NumberTable *table,
                        cairo_t *cr,
                        const NumberTableView *view,
                        double width,
                        double height);

/* The height that shows every row at this width. */
double number_table_height (const Theme *theme, unsigned n_quantities, double width);

/* The quantity whose row lies there in the last drawing, or -1. */
int number_table_hit (const NumberTable *table, double x, double y);
