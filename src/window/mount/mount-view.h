/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The map over the strut tower in a window. The mount's handle is dragged, and with
 * "keep to plate" it slides along what the plate can reach; a press on an indexed place
 * puts the mount there, on another setup's marker takes that setup in hand; elsewhere the
 * pointer only reads values. Arrow keys move the handle when it has the focus. */

#pragma once

#include "window/bench/chooser.h"
#include "window/canvas/canvas.h"

#define SW_TYPE_MOUNT_VIEW (sw_mount_view_get_type ())
G_DECLARE_FINAL_TYPE (SwMountView, sw_mount_view, SW, MOUNT_VIEW, SwCanvas)

GtkWidget *sw_mount_view_new (SwChooser *chooser);
