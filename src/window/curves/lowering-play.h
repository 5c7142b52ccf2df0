/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lowering as motion: the car comes down from the height at which it was measured to
 * where the setup in hand stands (or a good way down, when it is not lowered), rests, and
 * goes back to where it was. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

/* Plays on the frame clock of @widget; a second call while it plays stops it. Where the
 * desktop asks for less motion, it jumps there and back. */
void lowering_play (GtkWidget *widget, SwBench *bench);
