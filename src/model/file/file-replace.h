/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Replacing a file whole or not at all. */

#pragma once

#include <gio/gio.h>

/* Writes beside @path, brings it to the disk and renames it over @path. Whatever happens
 * in between, @path is the old file or the new one. A file that may not be written is
 * left as it is, though its folder would let it be replaced. A symbolic link is followed;
 * permissions stay, and so do owner and group where the system allows it. Errors are
 * G_IO_ERROR. */
gboolean file_replace (const char *path, const char *bytes, gsize length, GError **error);

/* The same for any file; one without a path is left to its file system. */
gboolean file_replace_at (GFile *file, const char *bytes, gsize length, GError **error);
