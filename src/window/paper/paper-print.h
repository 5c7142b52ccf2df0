/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pages on a printer, upright, at their true size. */

#pragma once

#include "drawing/pen/paper.h"
#include "window/paper/paper-kind.h"

/* What the desktop's country prints on, and the toolkit's name of such a sheet. */
PaperSize paper_usual (void);
const char *paper_toolkit_name (PaperSize paper);

/* Ready to be run; it holds a copy of @pages. Free with g_object_unref (). */
GtkPrintOperation *paper_print_operation_new (const PaperKind *kind, gconstpointer pages);
