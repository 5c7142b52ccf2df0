/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the parts of the question "Loads" share in one window: the case of load in hand,
 * how the springs are taken to carry it, and every setup under it.
 *
 * While somebody looks the wheel goes where the case puts it, and stays there when the
 * car changes, until it is moved: then the loads are those at that travel. When nobody
 * looks any more it goes back to where it was, unless it was moved. Signal "changed",
 * once per change: the loads are others than before. */

#pragma once

#include "model/load/load-study.h"
#include "window/bench/bench.h"

#define SW_TYPE_LOADER (sw_loader_get_type ())
G_DECLARE_FINAL_TYPE (SwLoader, sw_loader, SW, LOADER, GObject)

/* The one of this bench, made at the first call; it lives as long as the bench. */
SwLoader *sw_loader_of (SwBench *bench);
SwBench *sw_loader_get_bench (SwLoader *self);

/* Solved when it is asked for; good until the next change. */
const LoadStudy *sw_loader_get_study (SwLoader *self);

/* Its place among car_load_cases (). Setting it lets the wheel settle. */
guint sw_loader_get_case (SwLoader *self);
void sw_loader_set_case (SwLoader *self, guint load_case);
SpringMode sw_loader_get_mode (SwLoader *self);
void sw_loader_set_mode (SwLoader *self, SpringMode mode);

/* Whether the wheel goes where the case puts it. */
gboolean sw_loader_is_settling (SwLoader *self);
void sw_loader_settle (SwLoader *self);

/* While somebody looks. */
void sw_loader_watch (SwLoader *self);
void sw_loader_unwatch (SwLoader *self);
gboolean sw_loader_is_watched (SwLoader *self);
