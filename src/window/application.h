/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program on the desktop: opens windows on files, or on the demo car without any. */

#pragma once

#include "window/settings/application-id.h"

#include <gtk/gtk.h>

#define SW_TYPE_APPLICATION (sw_application_get_type ())
G_DECLARE_FINAL_TYPE (SwApplication, sw_application, SW, APPLICATION, GtkApplication)

GtkApplication *sw_application_new (GApplicationFlags flags);
