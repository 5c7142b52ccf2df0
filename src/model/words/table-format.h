/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The three ways a table is written: for reading, in the user's language, aligned and
 * rounded; or exact, the same in every locale. */

#pragma once

typedef enum {
  TABLE_TEXT,
  TABLE_CSV, /* RFC 4180 */
  TABLE_JSON
} TableFormat;
