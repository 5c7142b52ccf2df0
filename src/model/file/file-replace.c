/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/file/file-replace.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#define MOST_LINKS 40 /* followed one after another, as the kernel of Linux does */

/* The file that @path stands for, which need not exist yet. */
static char *
follow_links (const char *path)
{
  char *target = g_strdup (path);

  for (int i = 0; i < MOST_LINKS; i++) {
    g_autofree char *link = g_file_read_link (target, NULL);

    if (link == NULL)
      break;
    g_autofree char *folder = g_path_get_dirname (target);
    g_free (target);
    target = g_path_is_absolute (link) ? g_strdup (link)
                                       : g_build_filename (folder, link, NULL);
  }
  return target;
}

static gboolean
write_all (int fd, const char *bytes, gsize length)
{
  while (length > 0) {
    const ssize_t n = write (fd, bytes, length);

    if (n < 0 && errno == EINTR)
      continue;
    if (n < 0)
      return FALSE;
    bytes += n;
    length -= (gsize) n;
  }
  return TRUE;
}

static gboolean
keep_permissions (int fd, const char *target)
{
  struct stat old;

  if (stat (target, &old) != 0)
    return errno == ENOENT;
  /* Owner first: changing it may clear bits of the mode. */
  if (fchown (fd, old.st_uid, old.st_gid) != 0)
    g_debug ("owner of %s not kept: %s", target, g_strerror (errno));
  return fchmod (fd, old.st_mode & 07777) == 0;
}

/* So that the new name survives a power cut too. Not every file system can. */
static void
sync_folder (const char *target)
{
  g_autofree char *folder = g_path_get_dirname (target);
  const int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (fd < 0)
    return;
  if (fsync (fd) != 0)
    g_debug ("folder %s not synchronised: %s", folder, g_strerror (errno));
  close (fd);
}

static gboolean
fill (int fd, const char *target, const char *bytes, gsize length)
{
  gboolean done =
      write_all (fd, bytes, length) && keep_permissions (fd, target) && fsync (fd) == 0;
  const int reason = errno;

  if (close (fd) != 0 && done)
    return FALSE;
  errno = reason;
  return done;
}

static gboolean
fail (const char *path, int reason, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);

  /* Translators: a file name and the system's reason. */
  g_set_error (error, G_IO_ERROR, g_io_error_from_errno (reason),
               _ ("%s could not be saved: %s."), shown, g_strerror (reason));
  return FALSE;
}

gboolean
file_replace (const char *path, const char *bytes, gsize length, GError **error)
{
  g_autofree char *target = follow_links (path);
  g_autofree char *folder = g_path_get_dirname (target);
  g_autofree char *beside = g_build_filename (folder, ".strutwright-XXXXXX", NULL);

  if (g_access (target, W_OK) != 0 && errno != ENOENT)
    return fail (path, errno, error);
  const int fd = g_mkstemp_full (beside, O_WRONLY | O_CLOEXEC, 0666);

  if (fd < 0)
    return fail (path, errno, error);
  if (!fill (fd, target, bytes, length) || g_rename (beside, target) != 0) {
    const int reason = errno;

    g_unlink (beside);
    return fail (path, reason, error);
  }
  sync_folder (target);
  return TRUE;
}

gboolean
file_replace_at (GFile *file, const char *bytes, gsize length, GError **error)
{
  g_autofree char *path = g_file_get_path (file);

  if (path != NULL)
    return file_replace (path, bytes, length, error);
  return g_file_replace_contents (file, bytes, length, NULL, FALSE, G_FILE_CREATE_NONE,
                                  NULL, NULL, error);
}
