/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A locale with a decimal comma, built for the test where the system has none. */

#pragma once

#include <glib.h>

/* The folder for LOCPATH, or NULL where localedef cannot build the locale. Made once, and
 * removed when the program ends. */
const char *comma_locale_folder (void);
#define COMMA_LOCALE "de_DE.UTF-8"

/* Switches this process over, or skips the test with a word. */
gboolean comma_locale_enter (void);
void comma_locale_leave (void);
