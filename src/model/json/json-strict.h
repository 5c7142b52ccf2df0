/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON read to the letter of RFC 8259, into the nodes of json-glib.
 *
 * json-glib's own parser takes comments, a byte-order mark, hexadecimal and repeated
 * keys, turns 1e999 into infinity and an integer past 64 bits into -1, and follows any
 * nesting until the stack is gone. A car file is refused instead, so the bytes are read
 * here. */

#pragma once

#include <gio/gio.h>
#include <json-glib/json-glib.h>

/* The value that @text holds, or NULL with an error in the domain FILE_REFUSAL: one
 * sentence that names the place by line and column, or the member by its path. An integer
 * stays an integer node, everything with a fraction or an exponent a double. */
JsonNode *json_strict_parse (const char *text, gsize length, GError **error);

/* The bytes of @file for json_strict_parse (), of a file that is too large no more than
 * it takes to be refused. */
char *json_strict_read (GFile *file, gsize *length, GError **error);
