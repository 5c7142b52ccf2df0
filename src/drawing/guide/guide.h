/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The measuring guide: pages to take under the car that say how its eight points are
 * measured from the ground, the centre plane and the front axle with a tape, a plumb bob
 * and an angle gauge, and how closely, which is computed from this very car. Window,
 * printer and command line draw the same pages. */

#pragma once

#include "drawing/pen/paper.h"
#include "drawing/pen/text.h"
#include "model/car/car.h"

typedef struct MeasuringGuide MeasuringGuide;

/* Of @car as measured, which is copied and must be sound. */
MeasuringGuide *measuring_guide_new (const Car *car);
void measuring_guide_free (MeasuringGuide *guide);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (MeasuringGuide, measuring_guide_free)

guint measuring_guide_n_pages (void);

/* From the origin, on white; @page counts from 0, sizes in points. At least 500 by 700.
 */
void measuring_guide_draw (const MeasuringGuide *guide,
                           TextCache *texts,
                           cairo_t *cr,
                           guint page,
                           double width,
                           double height);

/* As a PDF of all pages; as export.h for errors and atomicity. */
gboolean measuring_guide_write (const MeasuringGuide *guide,
                                PaperSize paper,
                                const char *path,
                                GError **error);
