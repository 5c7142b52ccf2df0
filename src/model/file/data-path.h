/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What comes with the program: demo cars and plates. */

#pragma once

#include <glib.h>

/* @name in the data folder: the one that STRUTWRIGHT_DATADIR names, as a build that is
 * not installed needs it, or the installed one. Free with g_free (). */
char *data_path (const char *name);
