/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Memory that gives out. This file is linked only into a test that asks for it, since it
 * stands in front of the C library's allocator. */
#include "hard-places.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#if defined(__SANITIZE_ADDRESS__) || !defined(__GLIBC__)
#define HAS_ALLOCATOR 0 /* the sanitizer's own is there, or another library */
#else
#define HAS_ALLOCATOR 1
#endif

static gboolean is_counting;
static guint left; /* pieces still given while counting */

#if HAS_ALLOCATOR
/* The same as without the underscores; the GNU C library keeps them for whoever takes its
 * names (info libc, "Replacing malloc"). */
void *__libc_malloc (size_t size);
void *__libc_calloc (size_t n, size_t size);
void *__libc_realloc (void *piece, size_t size);
void *__libc_memalign (size_t alignment, size_t size);

static gboolean
is_given (void)
{
  if (!is_counting)
    return TRUE;
  if (left == 0) {
    errno = ENOMEM;
    return FALSE;
  }
  left--;
  return TRUE;
}

void *
malloc (size_t size)
{
  return is_given () ? __libc_malloc (size) : NULL;
}

void *
calloc (size_t n, size_t size)
{
  return is_given () ? __libc_calloc (n, size) : NULL;
}

void *
realloc (void *piece, size_t size)
{
  return is_given () ? __libc_realloc (piece, size) : NULL;
}

int
posix_memalign (void **piece, size_t alignment, size_t size)
{
  *piece = is_given () ? __libc_memalign (alignment, size) : NULL;
  return *piece == NULL ? ENOMEM : 0;
}
#endif

gboolean
hard_place_has_memory_to_count (void)
{
  return HAS_ALLOCATOR;
}

int
hard_place_little_memory (Attempt attempt, gpointer data, guint pieces)
{
  const pid_t child = fork ();
  int status;

  if (child == 0) {
    const struct rlimit no_core = { 0, 0 };

    setrlimit (RLIMIT_CORE, &no_core);
    if (freopen ("/dev/null", "w", stderr) == NULL) /* GLib says what it could not get */
      _exit (1);
    left = pieces;
    is_counting = TRUE;
    const gboolean was_done = attempt (data);
    is_counting = FALSE;
    _exit (was_done ? 0 : 1);
  }
  g_assert_cmpint (child, >, 0);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  return status;
}
