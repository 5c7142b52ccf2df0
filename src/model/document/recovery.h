/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Work that is not saved yet, kept in a copy apart from the user's file: what a crash
 * leaves is offered again at the next start.
 *
 * Copies are car files in the user's state folder (`strutwright/recovery`), one a
 * document. A key file beside each has the place of the user's file and the process that
 * wrote it; a copy whose process is gone is left over from a crash. */

#pragma once

#include "model/document/document.h"

typedef struct Recovery Recovery;

/* Watches @document and keeps a copy of it, written at most @delay_seconds after a change
 * while it is modified, and none while it is not. Freeing it removes the copy. A copy
 * that cannot be written is told on standard error and tried again after the next change.
 */
Recovery *recovery_watch (SwDocument *document, guint delay_seconds);
void recovery_free (Recovery *recovery);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Recovery, recovery_free)
/* Writes the copy now, if there is something to keep. */
void recovery_keep_now (Recovery *recovery);

typedef struct {
  char *copy;     /* path of the copy */
  char *file;     /* path of the user's file, or NULL when it was never saved */
  char *name;     /* of the car */
  char *stamp;    /* of the user's file before the work; see file-stamp.h; or NULL */
  gint64 written; /* µs since 1970 */
} LeftOver;

/* Of LeftOver, owned by the array, newest first. Not among them: copies of living
 * processes, damaged ones, and those that say what the user's file says. */
GPtrArray *recovery_find_left_over (void);
/* The work in it as a document that is modified and saves to the user's file; whether
 * that was changed meanwhile, sw_document_file_was_changed () tells. The copy stays until
 * it is discarded: watch the document and keep a copy of it before. */
SwDocument *recovery_open (const LeftOver *left_over, GError **error);
void recovery_discard (const LeftOver *left_over);
