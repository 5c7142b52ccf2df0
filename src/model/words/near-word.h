/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was meant by a word that is not known. */

#pragma once

#include <glib.h>

/* The one of the NULL-terminated @words that takes the fewest letters changed, put in,
 * left out or swapped with their neighbour; NULL where even that is another word. */
const char *near_word (const char *word, const char *const *words);

/* The same of members of a file, which may lack their unit, too: "along" for "along_mm".
 */
const char *near_member (const char *word, const char *const *names);
