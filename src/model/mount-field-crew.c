/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/mount-field-crew.h"

#define MOST_HELPERS 3

struct FieldCrew {
  GThreadPool *pool;
  guint n_helpers;

  GMutex lock;
  GCond is_idle;
  guint n_at_work;  /* helpers inside the call in hand */
  gboolean is_open; /* whether a helper may still join it */

  FieldPart function;
  gpointer data;
  guint n_parts;
  gint next; /* atomic: the part that nobody has taken */
};

static void
take_parts (FieldCrew *crew)
{
  for (;;) {
    const gint part = g_atomic_int_add (&crew->next, 1);

    if (part >= (gint) crew->n_parts)
      return;
    crew->function (crew->data, (guint) part);
  }
}

/* A helper that comes when the call it was asked for has ended finds it closed, or works
 * on the next one. */
static void
help (gpointer task, gpointer user_data)
{
  FieldCrew *crew = user_data;

  (void) task;
  g_mutex_lock (&crew->lock);
  const gboolean joins = crew->is_open;
  if (joins)
    crew->n_at_work++;
  g_mutex_unlock (&crew->lock);
  if (!joins)
    return;

  take_parts (crew);
  g_mutex_lock (&crew->lock);
  if (--crew->n_at_work == 0)
    g_cond_signal (&crew->is_idle);
  g_mutex_unlock (&crew->lock);
}

FieldCrew *
field_crew_new (void)
{
  FieldCrew *crew = g_new0 (FieldCrew, 1);
  const guint n_cores = g_get_num_processors ();

  g_mutex_init (&crew->lock);
  g_cond_init (&crew->is_idle);
  crew->n_helpers = MIN (n_cores - 1, MOST_HELPERS);
  if (crew->n_helpers > 0)
    crew->pool = g_thread_pool_new (help, crew, (gint) crew->n_helpers, FALSE, NULL);
  return crew;
}

void
field_crew_free (FieldCrew *crew)
{
  if (crew == NULL)
    return;
  if (crew->pool != NULL)
    g_thread_pool_free (crew->pool, FALSE, TRUE);
  g_mutex_clear (&crew->lock);
  g_cond_clear (&crew->is_idle);
  g_free (crew);
}

static void
open_call (FieldCrew *crew, FieldPart function, gpointer data, guint n_parts)
{
  g_mutex_lock (&crew->lock);
  crew->function = function;
  crew->data = data;
  crew->n_parts = n_parts;
  g_atomic_int_set (&crew->next, 0);
  crew->is_open = TRUE;
  g_mutex_unlock (&crew->lock);
}

static void
close_call (FieldCrew *crew)
{
  g_mutex_lock (&crew->lock);
  crew->is_open = FALSE;
  while (crew->n_at_work > 0)
    g_cond_wait (&crew->is_idle, &crew->lock);
  g_mutex_unlock (&crew->lock);
}

void
field_crew_run (FieldCrew *crew, FieldPart function, gpointer data, guint n_parts)
{
  open_call (crew, function, data, n_parts);
  for (guint i = 0; i < MIN (crew->n_helpers, n_parts - 1); i++)
    g_thread_pool_push (crew->pool, crew, NULL);
  take_parts (crew);
  close_call (crew);
}
