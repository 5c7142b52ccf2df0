/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A fitting card on a printer: one page of A4, upright. */

#pragma once

#include "window/card-window-page.h"

/* Ready to be run; it holds a copy of @page. Free with g_object_unref (). */
GtkPrintOperation *card_print_operation_new (const CardPage *page);
