/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A dialog for what is measured on a car: the eight points, alignment, tyre, travel,
 * body, tower, strut, limits, and the right side where it differs. For a new car its
 * entries are empty; for the open one they show what it has, unlocked on purpose. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

/* Calls @take with the finished car, which it then owns; never when it is closed without.
 */
typedef void (*MeasureTake) (Car *car, gpointer data);
void measure_window_open_new (GtkWindow *parent, MeasureTake take, gpointer data);

/* Changes the document of @bench in one undo step. */
void measure_window_open_car (GtkWindow *parent, SwBench *bench);
