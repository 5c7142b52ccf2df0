/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Work in parts that do not depend on each other, on the caller's thread and on others
 * that stay ready. A thread that the machine does not run costs nothing: its parts are
 * taken by those that run. */

#pragma once

#include <glib.h>

typedef struct FieldCrew FieldCrew;

FieldCrew *field_crew_new (void);
void field_crew_free (FieldCrew *crew);

/* Calls @function for the parts 0 … @n_parts − 1, each once, in no order; returns when
 * all are done. One caller at a time. */
typedef void (*FieldPart) (gpointer data, guint part);
void field_crew_run (FieldCrew *crew, FieldPart function, gpointer data, guint n_parts);
