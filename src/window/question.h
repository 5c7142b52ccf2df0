/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The questions that can stand beside the sheet. A question brings its own charts; it
 * never hides the sheet. A new one is a row in question.c. */

#pragma once

#include "window/bench.h"

#include <gtk/gtk.h>

typedef struct {
  const char *name;  /* of its stack page and action target; for good */
  const char *title; /* to be translated */
  GtkWidget *(*create) (SwBench *bench);
  GtkWidget *(*create_tools) (SwBench *bench); /* beside the switcher; or NULL */
  gboolean ground_fixed; /* the sheet moves the body, not the ground */
} Question;

/* @n gets their number. */
const Question *questions (guint *n);
