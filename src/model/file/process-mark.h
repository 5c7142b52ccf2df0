/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which process it was: its id, and when it started, so that a later process of the same
 * id is not taken for it. */

#pragma once

#include <glib.h>

typedef struct {
  gint64 id;
  char *started; /* in a form of its own, never NULL; free with g_free () */
} ProcessMark;

ProcessMark process_mark_own (void);
/* A process that has ended but is not yet collected by its parent is not alive. */
gboolean process_mark_is_alive (const ProcessMark *mark);
