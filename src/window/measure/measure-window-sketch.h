/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The drawing beside the entries: the points so far, and the sheet once they make a sound
 * corner. After that the sheet stays, faded while an entry keeps the car from being
 * sound. The point whose entry has the focus wears a ring. */

#pragma once

#include "window/canvas/canvas.h"
#include "window/measure/measure-window-reading.h"

#define SW_TYPE_MEASURE_SKETCH (sw_measure_sketch_get_type ())
G_DECLARE_FINAL_TYPE (SwMeasureSketch, sw_measure_sketch, SW, MEASURE_SKETCH, SwCanvas)

GtkWidget *sw_measure_sketch_new (void);
void sw_measure_sketch_show (SwMeasureSketch *self,
                             const Car *car,
                             const MeasureReading *reading);
/* -1 for none. */
void sw_measure_sketch_set_field (SwMeasureSketch *self, int field);
