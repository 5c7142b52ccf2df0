/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pages on a printer, upright, at their true size. */

#pragma once

#include "window/paper-kind.h"

/* Ready to be run; it holds a copy of @pages. Free with g_object_unref (). */
GtkPrintOperation *paper_print_operation_new (const PaperKind *kind, gconstpointer pages);
