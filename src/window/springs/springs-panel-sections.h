/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lengths of a torsion bar, each of one size, as a list in the spring editor. */

#pragma once

#include "window/springs/springs-panel-edit.h"

GtkWidget *springs_sections_new (SpringsEdit *edit);
