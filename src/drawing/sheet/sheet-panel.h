/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands on the sheet beside the views: their captions, the key of line kinds, the
 * scale, the sign of first-angle projection, the title block. */

#pragma once

#include "drawing/sheet/sheet-writing.h"

void panel_place_captions (const SheetPen *pen);
/* To be called last: it yields to all else. */
void panel_place_plane_name (const SheetPen *pen);
void panel_draw (const SheetPen *pen);
