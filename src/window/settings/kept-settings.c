/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/settings/kept-settings.h"
#include "window/settings/application-id.h"

static GSettings *
open_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema =
                 source != NULL
                     ? g_settings_schema_source_lookup (source, SW_APPLICATION_ID, TRUE)
                     : NULL;

  return schema != NULL ? g_settings_new_full (schema, NULL, NULL) : NULL;
}

GSettings *
kept_settings (void)
{
  static GSettings *settings;

  if (settings == NULL)
    settings = open_settings ();
  return settings;
}
