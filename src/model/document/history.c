/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/document/history.h"

typedef struct {
  Car *car;
  char *label; /* of the change that led here */
} State;

struct History {
  GPtrArray *states; /* of State, at least one */
  guint place;
};

static State *
state_new (const Car *car, const char *label)
{
  State *state = g_new (State, 1);

  state->car = car_copy (car);
  state->label = g_strdup (label);
  return state;
}

static void
state_free (gpointer data)
{
  State *state = data;

  car_free (state->car);
  g_free (state->label);
  g_free (state);
}

static State *
state_at (const History *history, guint place)
{
  return g_ptr_array_index (history->states, place);
}

History *
history_new (const Car *first)
{
  History *history = g_new (History, 1);

  history->states = g_ptr_array_new_with_free_func (state_free);
  history->place = 0;
  g_ptr_array_add (history->states, state_new (first, NULL));
  return history;
}

void
history_free (History *history)
{
  if (history == NULL)
    return;
  g_ptr_array_unref (history->states);
  g_free (history);
}

void
history_push (History *history, const Car *car, const char *label)
{
  g_ptr_array_set_size (history->states, (int) history->place + 1);
  g_ptr_array_add (history->states, state_new (car, label));
  if (history->states->len > HISTORY_MOST_STEPS + 1)
    g_ptr_array_remove_index (history->states, 0);
  history->place = history->states->len - 1;
}

const Car *
history_current (const History *history)
{
  return state_at (history, history->place)->car;
}

gboolean
history_undo (History *history)
{
  if (history->place == 0)
    return FALSE;
  history->place--;
  return TRUE;
}

gboolean
history_redo (History *history)
{
  if (history->place + 1 == history->states->len)
    return FALSE;
  history->place++;
  return TRUE;
}

const char *
history_undo_label (const History *history)
{
  return history->place > 0 ? state_at (history, history->place)->label : NULL;
}

const char *
history_redo_label (const History *history)
{
  const guint next = history->place + 1;

  return next < history->states->len ? state_at (history, next)->label : NULL;
}
