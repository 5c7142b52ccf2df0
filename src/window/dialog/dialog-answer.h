/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The buttons of a question, and the way back from it. */

#pragma once

#include <gtk/gtk.h>

/* One that answers @response. @label may have an underline, which GTK would read aloud.
 */
GtkWidget *dialog_add_answer (GtkWidget *dialog, const char *label, int response);

/* Destroys @dialog and gives its parent the keys. A window manager that is told of one
 * window's end while it hears of another's, as when a file was chosen from a dialog that
 * then closes, may give them to nobody. */
void dialog_leave (GtkWindow *dialog);
