/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A button for under a scrolled window, there while a part inside begins below what is
 * seen of it. Pressed, it scrolls there. */

#pragma once

#include <gtk/gtk.h>

/* Its label is the caller's. @part may hide: then there is nothing below. */
GtkWidget *below_button_new (GtkScrolledWindow *scrolled, GtkWidget *part);
