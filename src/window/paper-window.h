/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A window that shows what goes on paper, saves it as a PDF and prints it. */

#pragma once

#include <gtk/gtk.h>

typedef struct {
  const char *title;      /* of the window, translated */
  const char *save_title; /* of the dialog, translated */
  char *file_name;        /* proposed; owned */
  int width;              /* of the window, pixels */
  GtkWidget *preview;     /* as wide as there is room */
  gpointer paper;         /* handed to the functions, freed after the preview */
  gboolean (*write) (gpointer paper, const char *path, GError **error);
  GtkPrintOperation *(*print) (gpointer paper); /* a new operation, ready to be run */
  GDestroyNotify free_paper;
} Paper;

/* Takes what @paper owns. */
void paper_window_open (GtkWindow *parent, Paper paper);

/* Upright, with the printer's own margins. Free with g_object_unref (). */
GtkPageSetup *paper_page_setup (const char *size);
