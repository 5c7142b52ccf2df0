/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the measuring guide: guide.c (its pages), guide-setting.c (the first of them),
 * guide-point.c (the block of a point), guide-sketch.c (its drawings), guide-table.c
 * (what errors do), guide-record.c (the last page), guide-words.c (what it says of
 * points). */

#pragma once

#include "drawing/card/fitting-card-pen.h"
#include "drawing/guide/guide.h"
#include "drawing/sheet/sheet-layout.h"
#include "model/study/point-sensitivity.h"
#include "model/study/study.h"

struct MeasuringGuide {
  Car *car; /* without setups */
  Study *study;
  gboolean is_computed; /* or the car does not reach the bump that is asked about */
  PointSensitivity sensitivity;
};

/* A page that is being filled from its top. */
typedef struct {
  const MeasuringGuide *guide;
  FittingPen pen;
  double x, y, width; /* y: the top of the next block */
  double bottom;
  gboolean is_full; /* something reached below it */
} GuidePage;

#define GUIDE_GAP 7.0 /* points, between blocks */

void guide_line (GuidePage *page, FittingStyle style, const char *text);
void guide_paragraph (GuidePage *page, FittingStyle style, const char *text);

void guide_setting_page (GuidePage *page);
/* In the part of the page down to its bottom. */
void guide_point_block (GuidePage *page, PointName point);
void guide_record_page (GuidePage *page);

/* The corner from the front and from above to one scale, in @box. */
#define GUIDE_NO_POINT (-1)
void guide_sketch_draw (const GuidePage *page, int point, PixelBox box);

/* By coordinate: what an error does, and how closely it has to be measured. Returns its
 * height. */
double guide_error_table (
    const GuidePage *page, PointName point, double x, double y, double width);
/* "±1.8", in mm, or "–" where that is not computed. Free with g_free (). */
char *guide_tolerance (const MeasuringGuide *guide, PointName point, int axis);
/* What the results would allow beyond that is not given away: scrub radius and trail
 * follow some points millimetre for millimetre, and a slip of the tape is to be seen. */
#define GUIDE_LOOSEST 5.0

/* How it is taken, and what the angle gauge then reads. Free the second with g_free ().
 */
const char *guide_point_method (PointName point);
char *guide_point_check (const MeasuringGuide *guide, PointName point);

/* What can hurt while measuring. */
const char *guide_caution (void);
