/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the map says to those who do not see it. */

#pragma once

#include "window/bench/chooser.h"

/* "Mount 12.0 mm inboard, 6.0 mm rearward: camber −1.93°, caster 4.40°", where the setup
 * in hand stands, on the side looked at. Free with g_free (). */
char *mount_view_words (SwChooser *chooser);
