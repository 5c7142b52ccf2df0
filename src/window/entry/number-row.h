/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A row of a panel's grid: a name, an entry for a number, its unit. */

#pragma once

#include "model/words/unit.h"

#include <gtk/gtk.h>

typedef struct {
  const char *name, *meaning; /* translated */
  UnitKind unit;
  double most, step; /* both ways, in the stored unit, as are the … */
  int digits;
} NumberRow;

/* Returns the entry. @name takes its label, or is NULL. */
GtkSpinButton *
number_row_attach (GtkGrid *grid, int place, const NumberRow *row, GtkLabel **name);
