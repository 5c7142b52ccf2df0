/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Why a file of a car or a plate is refused, and how large it may be. */

#pragma once

#include <glib.h>

#define FILE_MOST_BYTES (4 * 1024 * 1024)
#define FILE_DEEPEST 32
/* In one object: names made to collide would take a reader minutes. */
#define FILE_MOST_MEMBERS 1000

#define FILE_REFUSAL (file_refusal_quark ())
typedef enum {
  FILE_REFUSAL_TOO_LARGE, /* over 4 MiB, nested past 32 levels, too many of one */
  FILE_REFUSAL_SYNTAX,    /* not JSON as RFC 8259 has it */
  FILE_REFUSAL_VERSION,   /* no file of its kind, or a newer version */
  FILE_REFUSAL_MISSING,
  FILE_REFUSAL_TYPE,
  FILE_REFUSAL_NUMBER,   /* not finite, or outside what its member allows */
  FILE_REFUSAL_GEOMETRY, /* points that coincide or cannot be assembled */
  FILE_REFUSAL_NAME      /* of a setup that the file does not have; of an aim that it has
                         twice; of two cases of load; an empty one */
} FileRefusal;
GQuark file_refusal_quark (void);
