/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window that pages are looked at in before they are saved or printed: a bar with
 * these, and a sentence in place where that fails. */

#pragma once

#include "window/paper/paper-kind.h"

typedef struct PaperWindow PaperWindow;

/* Over @parent and modal, not yet shown; closing it frees both @pages and it. */
PaperWindow *paper_window_new (GtkWindow *parent,
                               const char *title,
                               const PaperKind *kind,
                               gpointer pages);
GtkWindow *paper_window_get_window (PaperWindow *self);
void paper_window_set_content (PaperWindow *self, GtkWidget *content);
/* Whether there is a page to save or print. */
void paper_window_set_ready (PaperWindow *self, gboolean is_ready);
