/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The setups of the car: pick the one in hand, name, show, hide, order, duplicate, remove
 * them, choose the baseline, take some from another car.
 *
 * Installs the actions `setups.…` for its menu and keys. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_SETUP_LIST (sw_setup_list_get_type ())
G_DECLARE_FINAL_TYPE (SwSetupList, sw_setup_list, SW, SETUP_LIST, GtkWidget)

GtkWidget *sw_setup_list_new (SwBench *bench);
