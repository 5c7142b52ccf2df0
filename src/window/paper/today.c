/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/today.h"

#include <glib.h>

char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}
