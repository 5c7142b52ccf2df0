/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The instructor's mode: the construction of the roll centre step by step on one large
 * front view, full screen, without bars. Right and left walk through the steps, up and
 * down raise and lower the car, P plays it, Escape leaves. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_LECTURE_WINDOW (sw_lecture_window_get_type ())
G_DECLARE_FINAL_TYPE (SwLectureWindow, sw_lecture_window, SW, LECTURE_WINDOW, GtkWindow)

GtkWidget *sw_lecture_window_new (GtkWindow *parent, SwBench *bench);
