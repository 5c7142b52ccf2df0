/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs a fuzz target without a fuzzer: every file of the folders as it is, then changed
 * at random for a while, the same changes in every run.
 *
 *   fuzz-car SECONDS FOLDER…
 *
 * The work is done in a child. What makes it crash, or takes it longer than MOST_SECONDS,
 * is left in a file that is named on standard error. */
#include "fuzz-target.h"
#include "mutation.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#define SEED 20240902u
#define MOST_SECONDS 60 /* for one input, also under a sanitizer on a busy machine */
#define MOST_SHARED (8 * 1024 * 1024)

/* What is being run, where the parent can see it. */
typedef struct {
  guint64 n_run, n_loaded;
  gsize length;
  uint8_t bytes[MOST_SHARED];
} Shared;

static Shared *shared;

static void
run (const GString *text)
{
  /* exactly as long as the text, so that a sanitizer sees what reads past its end */
  g_autofree uint8_t *bytes = g_memdup2 (text->str, text->len);

  g_assert_cmpuint (text->len, <=, MOST_SHARED);
  shared->length = text->len;
  if (text->len > 0)
    memcpy (shared->bytes, text->str, text->len);
  alarm (MOST_SECONDS);
  LLVMFuzzerTestOneInput (bytes, text->len);
  alarm (0);
  shared->n_run++;
  shared->n_loaded = fuzz_n_loaded;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

/* In the order of their names, as folders keep none. */
static void
add_folder (GPtrArray *texts, const char *folder)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  g_assert_no_error (error);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (names, compare_names);
  for (guint i = 0; i < names->len; i++) {
    g_autofree char *bytes = NULL;
    gsize length;

    g_file_get_contents (names->pdata[i], &bytes, &length, &error);
    g_assert_no_error (error);
    g_ptr_array_add (texts, g_string_new_len (bytes, (gssize) length));
  }
}

static void
free_text (gpointer text)
{
  g_string_free (text, TRUE);
}

typedef struct {
  GPtrArray *all, *sound; /* of GString; the sound ones load, and belong to all */
} Corpus;

static const GString *
pick (const GPtrArray *texts, GRand *chance)
{
  return texts->pdata[g_rand_int_range (chance, 0, (gint32) texts->len)];
}

static void
run_as_they_are (Corpus *corpus)
{
  for (guint i = 0; i < corpus->all->len; i++) {
    const guint64 n_before = fuzz_n_loaded;

    run (corpus->all->pdata[i]);
    if (fuzz_n_loaded > n_before)
      g_ptr_array_add (corpus->sound, corpus->all->pdata[i]);
  }
  g_assert_cmpuint (corpus->sound->len, >, 0);
}

/* Mostly from sound ones: a change seldom makes a bad file good. */
static void
run_changed (const Corpus *corpus, double seconds)
{
  g_autoptr (GTimer) timer = g_timer_new ();
  g_autoptr (GRand) chance = g_rand_new_with_seed (SEED);

  while (g_timer_elapsed (timer, NULL) < seconds) {
    const gboolean is_sound = g_rand_int (chance) % 8 > 0;
    const GString *one = pick (is_sound ? corpus->sound : corpus->all, chance);
    g_autoptr (GString) text = g_string_new_len (one->str, (gssize) one->len);

    mutate (text, pick (corpus->all, chance), 1 + g_rand_int (chance) % 3, chance);
    run (text);
  }
}

static void
run_all (double seconds, char **folders)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (free_text);
  g_autoptr (GPtrArray) sound = g_ptr_array_new ();
  Corpus corpus = { all, sound };

  for (; *folders != NULL; folders++)
    add_folder (all, *folders);
  run_as_they_are (&corpus);
  run_changed (&corpus, seconds);
}

static int
report (int status, const char *program)
{
  g_autofree char *name = g_path_get_basename (program);
  g_autofree char *left = g_strconcat (name, "-failed", NULL);

  printf ("seed %u: %" G_GUINT64_FORMAT " inputs, %" G_GUINT64_FORMAT " of them loaded\n",
          SEED, shared->n_run, shared->n_loaded);
  if (WIFEXITED (status) && WEXITSTATUS (status) == 0) {
    if (shared->n_loaded > 0)
      return 0;
    fprintf (stderr, "No input loaded, so nothing was tested behind the parser.\n");
    return 1;
  }
  g_file_set_contents (left, (const char *) shared->bytes, (gssize) shared->length, NULL);
  fprintf (stderr, "%s after %" G_GUINT64_FORMAT " inputs; the last one is in %s\n",
           WIFSIGNALED (status) ? g_strsignal (WTERMSIG (status)) : "A sanitizer's end",
           shared->n_run, left);
  return 1;
}

int
main (int argc, char **argv)
{
  const double seconds = argc > 2 ? g_ascii_strtod (argv[1], NULL) : -1.0;
  int status;

  if (seconds < 0.0) {
    fprintf (stderr, "usage: %s SECONDS FOLDER…\n", argv[0]);
    return 2;
  }
  shared = mmap (NULL, sizeof *shared, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS,
                 -1, 0);
  g_assert_true (shared != MAP_FAILED);
  const pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0) {
    run_all (seconds, argv + 2);
    return 0; /* by way of the leak check */
  }
  while (waitpid (child, &status, 0) != child)
    g_assert_cmpint (errno, ==, EINTR);
  return report (status, argv[0]);
}
