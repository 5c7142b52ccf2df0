/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers of a study, in as many blocks of rows as the width holds: at the travel in
 * hand (the reference, the setup in hand, the change), or the setups side by side, each
 * where it stands, with its difference to the baseline. */

#pragma once

#include "drawing/pen/text.h"
#include "model/study/study.h"

#define NUMBER_TABLE_MOST_ROWS N_QUANTITIES
#define NUMBER_TABLE_MOST_SETUPS 24

typedef struct {
  const Study *study;
  Theme theme;
  const Quantity *quantities;
  unsigned n_quantities;
  int lit;           /* the Quantity that is lit up, or -1 */
  bool side_by_side; /* a column for each setup shown */
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
double number_table_height (const NumberTableView *view, double width);

/* The setups that stand side by side at this width, in the car's order: where there is no
 * room for all, the one in hand and the baseline stay. Returns how many; @setups holds
 * NUMBER_TABLE_MOST_SETUPS. */
unsigned
number_table_setups (const NumberTableView *view, double width, unsigned *setups);

/* The quantity whose row lies there in the last drawing, or -1. */
int number_table_hit (const NumberTable *table, double x, double y);
