/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Demo cars in process, for tests without a person: a bench, or a whole window. */

#pragma once

#include "window/window.h"

#include "window/bench/bench.h"

/* Of a car in data/, which must load. */
GFile *demo_file (const char *name);
SwBench *demo_bench (const char *name);
/* The program's own, for a test that begins; g_object_unref () it. */
GtkApplication *demo_application (int *argc, char ***argv);
/* Shown and drawn once. */
SwWindow *demo_window_open (GtkApplication *application, const char *name);
SwWindow *demo_window_open_file (GtkApplication *application, GFile *file);
void demo_window_close (SwWindow *window);

void run_idle (void);
/* For g_signal_connect_swapped (). */
void add_one (int *count);
