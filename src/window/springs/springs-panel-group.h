/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A part of the spring set as columns of its editor, under a head that adds the part or
 * takes it away. */

#pragma once

#include "window/springs/springs-panel-edit.h"

GtkWidget *springs_group_new (SpringsEdit *edit, SpringsGroup group);
