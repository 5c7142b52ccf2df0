/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corner's parts in one view of the sheet. What a workshop would have to measure
 * (tube, bushes, rim) is only hinted at, from sizes usual in the trade. */

#pragma once

#include "drawing/sheet/sheet-pen.h"

/* The arm's front and rear pivot as the setup has them. */
typedef struct {
  Vec3 front, rear;
} ArmPivots;
ArmPivots parts_arm_pivots (const Study *study, const StudyCorner *corner);

void parts_draw_ground (const SheetPen *pen, SheetViewName view, Vec3 contact);
void parts_draw_centre_plane (const SheetPen *pen, SheetViewName view);
/* What is fixed to the body; the top mount's plate moves with the setup. */
void parts_draw_body (const SheetPen *pen, SheetViewName view);
/* The arm's pivots, to lie over the arm. */
void parts_draw_bushes (const SheetPen *pen, SheetViewName view);
/* These three take an assembled corner. */
void
parts_draw_wheel (const SheetPen *pen, SheetViewName view, const StudyCorner *corner);
void
parts_draw_linkage (const SheetPen *pen, SheetViewName view, const StudyCorner *corner);
void parts_draw_steering_axis (const SheetPen *pen,
                               SheetViewName view,
                               const StudyCorner *corner);
/* What the setup in hand is compared with, at the same travel. */
void parts_draw_ghost (const SheetPen *pen, SheetViewName view);
