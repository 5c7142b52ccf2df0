/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The editor of load cases, behind a button: a row for each with its name and its four
 * numbers. Every entry that is taken is an undo step; what cannot be taken stays, marked,
 * with a sentence. */

#pragma once

#include "window/bench/loader.h"

#include <gtk/gtk.h>

GtkWidget *load_cases_button_new (SwLoader *loader);
