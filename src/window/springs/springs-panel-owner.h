/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whose springs, or whose rod, the editor shows, and the button that changes it. */

#pragma once

#include "window/springs/springs-panel-edit.h"

/* Of the springs, or of SPRINGS_ROD. */
GtkWidget *springs_owner_new (SpringsEdit *edit, SpringsGroup group);
