/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two parts on one line, the second at its end; under each other where the line is too
 * short for both. What is hidden or empty takes no line. */

#pragma once

#include <gtk/gtk.h>

#define SW_TYPE_WRAP_ROW (sw_wrap_row_get_type ())
G_DECLARE_FINAL_TYPE (SwWrapRow, sw_wrap_row, SW, WRAP_ROW, GtkWidget)
