/* SPDX-License-Identifier: GPL-3.0-or-later */
/* By what a file is known to be the one that was read or written. */

#pragma once

#include <gio/gio.h>

/* A text that is another as soon as the file's time of change or its size is; NULL where
 * there is no file. Links are followed. */
char *file_stamp (GFile *file);
