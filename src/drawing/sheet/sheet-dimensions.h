/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Dimensions after ISO 129 (thin lines, arrow heads, the figure beside or on the line),
 * and the construction of instant centre and roll centre. All take an assembled setup. */

#pragma once

#include "drawing/sheet/sheet-pen.h"

void dimensions_draw_construction (const SheetPen *pen);
void dimensions_draw (const SheetPen *pen, SheetViewName view);
