/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers inside sentences: the locale's decimal mark and a true minus sign. */

#pragma once

#include <glib.h>

/* Rounded; what rounds to zero has no sign. */
char *number_text (double value, int decimals);
/* With as many decimals as it needs, six digits at most. */
char *plain_number_text (double value);
