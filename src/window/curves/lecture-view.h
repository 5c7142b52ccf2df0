/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The instructor's picture in a window. */

#pragma once

#include "drawing/sheet/construction-story.h"
#include "window/bench/bench.h"
#include "window/canvas/canvas.h"

#define SW_TYPE_LECTURE_VIEW (sw_lecture_view_get_type ())
G_DECLARE_FINAL_TYPE (SwLectureView, sw_lecture_view, SW, LECTURE_VIEW, SwCanvas)

GtkWidget *sw_lecture_view_new (SwBench *bench);
/* Goes @by steps, and stays inside the story. */
void sw_lecture_view_walk (SwLectureView *self, int by);
