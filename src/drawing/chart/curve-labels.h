/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A stack of labels beside the ends of curves: as near to its own curve as may be, none
 * on another. Plain numbers, pixels downward. */

#pragma once

#include <stdbool.h>

#define CURVE_LABELS_MOST 32

typedef struct {
  double wanted; /* where the curve ends; NAN for one without an end */
  double place;  /* middle of the label */
  bool is_kept;
} CurveLabel;

/* Places @n labels (at most CURVE_LABELS_MOST), each @pitch high, between @top and
 * @bottom. Where there is no room for all, those go first that want to be farthest from
 * labels[@kept]. */
void curve_labels_place (CurveLabel *labels,
                         unsigned n,
                         unsigned kept,
                         double pitch,
                         double top,
                         double bottom);
