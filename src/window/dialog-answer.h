/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The buttons of a question. */

#pragma once

#include <gtk/gtk.h>

/* One that answers @response. @label may have an underline, which GTK would read aloud.
 */
GtkWidget *dialog_add_answer (GtkWidget *dialog, const char *label, int response);
