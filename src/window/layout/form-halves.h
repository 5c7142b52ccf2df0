/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A form and the drawing of what it says. Beside each other the form scrolls, and the
 * drawing gets all the width that it leaves; where the text is too large for both the
 * drawing stands below the form, and they scroll together. */

#pragma once

#include <gtk/gtk.h>

/* @least_width is the form's, in pixels. */
GtkWidget *form_halves_new (GtkWidget *form, int least_width, GtkWidget *drawing);
