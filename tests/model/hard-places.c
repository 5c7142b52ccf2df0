/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hard-places.h"

#include <glib/gstdio.h>
#include <grp.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#define NOBODY 65534

static int
wait_for (pid_t child)
{
  int status;

  g_assert_cmpint (child, >, 0);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  return status;
}

int
hard_place_little_room (Attempt attempt, gpointer data, gboolean dies)
{
  const pid_t child = fork ();

  if (child == 0) {
    const struct rlimit little = { 100, 100 }, no_core = { 0, 0 };

    signal (SIGXFSZ, dies ? SIG_DFL : SIG_IGN);
    setrlimit (RLIMIT_CORE, &no_core);
    setrlimit (RLIMIT_FSIZE, &little);
    _exit (attempt (data) ? 0 : 1);
  }
  return wait_for (child);
}

static gboolean
give_up_rights (void)
{
  return geteuid () != 0 ||
         (setgroups (0, NULL) == 0 && setgid (NOBODY) == 0 && setuid (NOBODY) == 0);
}

gboolean
hard_place_no_rights (const char *path, Attempt attempt, gpointer data)
{
  struct stat before;

  g_assert_cmpint (stat (path, &before), ==, 0);
  g_assert_cmpint (g_chmod (path, S_ISDIR (before.st_mode) ? 0555 : 0444), ==, 0);
  const pid_t child = fork ();
  if (child == 0)
    _exit (give_up_rights () && attempt (data) ? 0 : 1);
  const int status = wait_for (child);
  g_assert_cmpint (g_chmod (path, before.st_mode & 07777), ==, 0);
  return WIFEXITED (status) && WEXITSTATUS (status) == 0;
}

char *
odd_name (guint index, const char *suffix)
{
  static const char *const starts[N_ODD_NAMES] = {
    NULL,
    "wagen \xff\xfe gr\xfcn",
    "\xd8\xb3\xd9\x8a\xd8\xa7\xd8\xb1\xd8\xa9 \xd7\xa8\xd7\x9b\xd7\x91",
    "two\nlines",
    "-100% & <b>\"'$HOME`;*?",
    "a%20b#c?d",
  };

  g_assert_cmpuint (index, <, N_ODD_NAMES);
  if (starts[index] != NULL)
    return g_strconcat (starts[index], suffix, NULL);
  g_autofree char *start = g_strnfill (255 - strlen (suffix), 'n');
  return g_strconcat (start, suffix, NULL);
}
