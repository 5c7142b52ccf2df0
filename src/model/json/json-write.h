/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON text that people can read and compare, the same bytes in every locale.
 *
 * Two spaces a level. A list of plain values, and an object of plain values that fits,
 * stay on one line. A double has the fewest digits that read back as the same bits. */

#pragma once

#include <json-glib/json-glib.h>

/* Appends @node, without a line feed behind it. Numbers are finite. */
void json_write_node (GString *text, JsonNode *node);

/* @string in quotes, escaped. */
void json_write_string (GString *text, const char *string);

/* 0.68, 1e+22, 1.0: never the look of an integer. */
void json_write_double (GString *text, double value);

/* As append_exact_number () has it; null where it is not finite. */
void json_write_number (GString *text, double value);
