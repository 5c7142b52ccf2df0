/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Undo in an entry of a form, which marks what is at fault at every key: it goes to the
 * text that stood there, as in entries that take or refuse, and never to a half-typed or
 * a marked one. */

#pragma once

#include <gtk/gtk.h>

/* What stands there is what @entry was entered or left with, unless it was marked. */
void standing_text_keep (GtkEntry *entry);
