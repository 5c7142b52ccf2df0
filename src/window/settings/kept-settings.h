/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is kept from one start of the program to the next: the keys in the schema that
 * lies in data/. */

#pragma once

#include <gio/gio.h>

/* NULL where the schema is not installed: all is then as at the first start, and nothing
 * is kept. Lives as long as the program. */
GSettings *kept_settings (void);
