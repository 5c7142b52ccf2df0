/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Source of the fields: proc(5), /proc/PID/stat: state is the third, starttime, in clock
 * ticks since boot, the 22nd. The boot has an id of its own, as ticks begin anew. */

#include "model/file/process-mark.h"

#include <string.h>
#include <unistd.h>

#define STATE 0 /* of the fields behind the name in brackets */
#define START_TIME 19

/* The fields behind the name, which may itself hold spaces and brackets. */
static char **
read_fields (gint64 id)
{
  g_autofree char *path = g_strdup_printf ("/proc/%" G_GINT64_FORMAT "/stat", id);
  g_autofree char *text = NULL;

  if (!g_file_get_contents (path, &text, NULL, NULL))
    return NULL;

  const char *end_of_name = strrchr (text, ')');
  return end_of_name != NULL && end_of_name[1] == ' '
             ? g_strsplit (end_of_name + 2, " ", START_TIME + 2)
             : NULL;
}

/* NULL where no such process runs. */
static char *
started_at (gint64 id)
{
  g_auto (GStrv) fields = read_fields (id);
  g_autofree char *boot = NULL;

  if (fields == NULL || g_strv_length (fields) <= START_TIME ||
      strchr ("ZX", fields[STATE][0]) != NULL)
    return NULL;
  if (!g_file_get_contents ("/proc/sys/kernel/random/boot_id", &boot, NULL, NULL))
    boot = g_strdup ("");
  return g_strdup_printf ("%s %s", g_strstrip (boot), fields[START_TIME]);
}

ProcessMark
process_mark_own (void)
{
  const gint64 id = getpid ();
  char *started = started_at (id);

  return (ProcessMark){ id, started != NULL ? started : g_strdup ("") };
}

gboolean
process_mark_is_alive (const ProcessMark *mark)
{
  g_autofree char *started = started_at (mark->id);

  return started != NULL && g_str_equal (started, mark->started);
}
