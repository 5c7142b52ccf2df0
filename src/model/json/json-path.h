/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The path of a member, as sentences name it: `corner.ball_joint[1]`. */

#pragma once

#include <glib.h>

/* @path with one more member name or list index behind it. Names that would spoil a
 * sentence are cut short. */
void json_path_append_member (GString *path, const char *name);
void json_path_append_index (GString *path, guint index);
