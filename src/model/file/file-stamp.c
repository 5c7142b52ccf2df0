/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/file/file-stamp.h"

#define ATTRIBUTES                                                                       \
  G_FILE_ATTRIBUTE_ETAG_VALUE "," G_FILE_ATTRIBUTE_TIME_MODIFIED                         \
                              "," G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC                    \
                              "," G_FILE_ATTRIBUTE_STANDARD_SIZE

char *
file_stamp (GFile *file)
{
  g_autoptr (GFileInfo) info =
                 g_file_query_info (file, ATTRIBUTES, G_FILE_QUERY_INFO_NONE, NULL, NULL);

  if (info == NULL)
    return NULL;

  const char *etag = g_file_info_get_etag (info);
  const guint64 seconds =
      g_file_info_get_attribute_uint64 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED);
  const guint32 microseconds =
      g_file_info_get_attribute_uint32 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC);

  return g_strdup_printf (
      "%" G_GUINT64_FORMAT ".%06u %" G_GUINT64_FORMAT " %s", seconds, microseconds,
      g_file_info_get_attribute_uint64 (info, G_FILE_ATTRIBUTE_STANDARD_SIZE),
      etag != NULL ? etag : "");
}
