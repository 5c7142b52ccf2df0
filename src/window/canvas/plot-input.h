/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pointer and keys of a drawing of plots against travel: pointing lights the quantity,
 * press and drag on a plot move the travel in hand, and so do the travel keys. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

typedef struct {
  int quantity;  /* of the chart under the pointer, or -1 */
  int setup;     /* whose marker is there, or -1: a press takes it in hand */
  double travel; /* under the pointer, mm */
  bool on_plot;
} PlotHit;

typedef PlotHit (*PlotHitFunc) (GtkWidget *widget, double x, double y);

/* @bench is kept alive as long as @widget. */
void plot_input_add (GtkWidget *widget, SwBench *bench, PlotHitFunc hit);
