/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A short stretch of a setup's line with its marker. */

#pragma once

#include "window/canvas/canvas.h"

#define SW_TYPE_STYLE_SAMPLE (sw_style_sample_get_type ())
G_DECLARE_FINAL_TYPE (SwStyleSample, sw_style_sample, SW, STYLE_SAMPLE, SwCanvas)

GtkWidget *sw_style_sample_new (guint setup_index);
