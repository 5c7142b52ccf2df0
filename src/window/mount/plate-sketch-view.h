/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The drawing of a plate beside its entries. */

#pragma once

#include "model/plate/plate.h"
#include "window/canvas/canvas.h"

#define SW_TYPE_PLATE_SKETCH_VIEW (sw_plate_sketch_view_get_type ())
G_DECLARE_FINAL_TYPE (
    SwPlateSketchView, sw_plate_sketch_view, SW, PLATE_SKETCH_VIEW, SwCanvas)

GtkWidget *sw_plate_sketch_view_new (void);
/* Keeps a copy. */
void sw_plate_sketch_view_show (SwPlateSketchView *self, const Plate *plate);
