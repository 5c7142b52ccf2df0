/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Dark or light, whichever theme the desktop asks for. */

#pragma once

#include <glib.h>

void dark_use (gboolean is_dark);
