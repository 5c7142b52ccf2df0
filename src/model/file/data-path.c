/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/file/data-path.h"

char *
data_path (const char *name)
{
  const char *folder = g_getenv ("STRUTWRIGHT_DATADIR");

  return g_build_filename (folder != NULL ? folder : PKGDATADIR, name, NULL);
}
