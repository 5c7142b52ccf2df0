/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pages of one kind, a fitting card's or a report's, as windows show, save and print
 * them. */

#pragma once

#include <gtk/gtk.h>

typedef struct {
  const char *(*size) (gconstpointer pages); /* GTK_PAPER_NAME_A4 … */
  /* For paper of so many points of 1/72 inch; gives how many pages it takes. */
  guint (*lay_out) (gpointer pages, double width, double height);
  void (*draw_page) (
      gpointer pages, cairo_t *cr, guint page, double width, double height);
  gboolean (*write) (gpointer pages, const char *path, GError **error); /* PDF */
  char *(*name) (gconstpointer pages); /* of a file, without its suffix */
  gpointer (*copy) (gconstpointer pages);
  void (*free) (gpointer pages);
} PaperKind;
