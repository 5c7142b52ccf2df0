/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Places where saving goes wrong, and names of files that are seldom met. */

#pragma once

#include <glib.h>

/* What is tried in a child process, so that the test goes on as it was; whether it was
 * as it should be. */
typedef gboolean (*Attempt) (gpointer data);

/* With 100 bytes of room in each file, as on a disk that fills up. Gives the wait status:
 * with @dies the child is killed where the room ends. */
int hard_place_little_room (Attempt attempt, gpointer data, gboolean dies);

/* With that many pieces of memory and no more: GLib ends the program where the next one is
 * asked for. Gives the wait status. Where the allocator is not ours to stand in front of,
 * as under a sanitizer, there is no such place. */
int hard_place_little_memory (Attempt attempt, gpointer data, guint pieces);
gboolean hard_place_has_memory_to_count (void);

/* Without the right to write @path, a file or a folder; the superuser gives up their
 * rights for it. Folders above it must let everyone through. */
gboolean hard_place_no_rights (const char *path, Attempt attempt, gpointer data);

/* Base names that end in @suffix: of 255 bytes, as long as they may be; not UTF-8; from
 * right to left; with a line feed; with what shells, formats and addresses take for
 * their own. Free with g_free (). */
#define N_ODD_NAMES 6
char *odd_name (guint index, const char *suffix);
