/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers as text. Inside sentences: the locale's decimal mark and a true minus sign. */

#pragma once

#include <glib.h>

/* Rounded; what rounds to zero has no sign. */
char *number_text (double value, int decimals);
/* With as many decimals as it needs, six digits at most. */
char *plain_number_text (double value);

/* For files: twelve significant digits, `.` in every locale; below 1e-11 a number is what
 * rounding left of zero, and is 0. @value is finite. */
void append_exact_number (GString *text, double value);
