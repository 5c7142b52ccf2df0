/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-edit.h"
#include "window/entry/refusal-line.h"
#include "window/entry/refusal-units.h"
#include "window/entry/refusal-words.h"
#include "window/springs/springs-panel-rows.h"

#include "model/car/car-json.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct SpringsEdit {
  SwBench *bench;
  SpringSet now;
  const CarSetup *setup; /* whose texts the entries have; only compared */
  GArray *parts;         /* of Part */
  GPtrArray *entries;    /* of SwCommittedEntry */
  GtkWidget *refused, *told;
  gboolean is_telling;
};

typedef struct {
  SpringsShow show;
  gpointer part;
} Part;

static void
clear_part (gpointer part)
{
  g_free (((Part *) part)->part);
}

SpringsEdit *
springs_edit_new (SwBench *bench)
{
  SpringsEdit *self = g_new0 (SpringsEdit, 1);

  self->bench = g_object_ref (bench);
  self->parts = g_array_new (FALSE, FALSE, sizeof (Part));
  g_array_set_clear_func (self->parts, clear_part);
  self->entries = g_ptr_array_new ();
  return self;
}

SwBench *
springs_edit_bench (SpringsEdit *self)
{
  return self->bench;
}

const Car *
springs_edit_car (SpringsEdit *self)
{
  return sw_document_get_car (sw_bench_get_document (self->bench));
}

const SpringSet *
springs_edit_now (SpringsEdit *self)
{
  const guint index = sw_bench_get_setup_index (self->bench);

  memset (&self->now, 0, sizeof self->now);
  self->now.springs = *car_setup_springs (springs_edit_car (self), index);
  self->now.rod = car_setup_rod (springs_edit_car (self), index);
  return &self->now;
}

SetOwner
springs_edit_owner (SpringsEdit *self, SpringsGroup group)
{
  const CarSetup *setup = sw_bench_get_setup (self->bench);

  if (group == SPRINGS_ROD ? setup->has_rod : setup->has_springs)
    return SET_OWN;
  return sw_bench_get_setup_index (self->bench) == springs_edit_car (self)->baseline
             ? SET_OF_CAR
             : SET_INHERITED;
}

gboolean
springs_edit_is_telling (SpringsEdit *self)
{
  return self->is_telling;
}

void
springs_edit_add_part (SpringsEdit *self, SpringsShow show, gpointer part)
{
  const Part added = { show, part };

  g_array_append_val (self->parts, added);
}

/* What an entry itself refuses goes before what it was stepped to. */
static void
show_refusal (GtkWidget *at, const char *sentence)
{
  const char *own = SW_IS_COMMITTED_ENTRY (at)
                        ? sw_committed_entry_get_refusal (SW_COMMITTED_ENTRY (at))
                        : NULL;

  refusal_line_show (at, own != NULL ? own : sentence);
}

void
springs_edit_refuse (SpringsEdit *self, GtkWidget *at, const char *sentence)
{
  if (self->refused != NULL && self->refused != at)
    show_refusal (self->refused, NULL);
  self->refused = sentence != NULL ? at : NULL;
  if (at != NULL)
    show_refusal (at, sentence);
}

void
springs_edit_tell (SpringsEdit *self, GtkWidget *line, const char *sentence)
{
  if (self->told != NULL)
    gtk_widget_set_visible (self->told, FALSE);
  self->told = line;
  if (line == NULL)
    return;
  gtk_label_set_label (GTK_LABEL (line), sentence);
  gtk_widget_set_visible (line, TRUE);
}

static void
on_entry_checked_cb (SpringsEdit *self, GtkWidget *entry)
{
  springs_edit_refuse (self, entry, NULL);
  springs_edit_tell (self, NULL, NULL);
}

static void
on_entry_gone_cb (gpointer data, GObject *entry)
{
  g_ptr_array_remove (((SpringsEdit *) data)->entries, entry);
}

void
springs_edit_free (SpringsEdit *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->entries->len; i++) {
    g_signal_handlers_disconnect_by_data (self->entries->pdata[i], self);
    g_object_weak_unref (self->entries->pdata[i], on_entry_gone_cb, self);
  }
  g_array_unref (self->parts);
  g_ptr_array_unref (self->entries);
  g_object_unref (self->bench);
  g_free (self);
}

void
springs_edit_watch (SpringsEdit *self, SpringsGroup group, SwCommittedEntry *entry)
{
  g_object_set_data (G_OBJECT (entry), "group", GUINT_TO_POINTER (group));
  g_ptr_array_add (self->entries, entry);
  g_object_weak_ref (G_OBJECT (entry), on_entry_gone_cb, self);
  g_signal_connect_swapped (entry, "checked", G_CALLBACK (on_entry_checked_cb), self);
}

void
springs_entry_show (GtkWidget *entry, const char *text, gboolean is_asked)
{
  gtk_widget_set_visible (entry, is_asked);
  sw_committed_entry_show (SW_COMMITTED_ENTRY (entry), text);
  if (!is_asked)
    sw_committed_entry_restore (SW_COMMITTED_ENTRY (entry));
}

/* What was typed and refused in front of another setup says nothing of this one. */
static void
give_up_typing (SpringsEdit *self)
{
  const CarSetup *setup = sw_bench_get_setup (self->bench);

  if (setup == self->setup)
    return;
  self->setup = setup;
  for (guint i = 0; i < self->entries->len; i++)
    sw_committed_entry_restore (self->entries->pdata[i]);
}

/* That all around an entry is insensitive, GTK 4.8 tells no screen reader. */
static void
show_owner (SpringsEdit *self)
{
  for (guint i = 0; i < self->entries->len; i++) {
    const SpringsGroup group =
        GPOINTER_TO_UINT (g_object_get_data (self->entries->pdata[i], "group"));

    gtk_widget_set_sensitive (self->entries->pdata[i],
                              springs_edit_owner (self, group) != SET_INHERITED);
  }
}

void
springs_edit_show (SpringsEdit *self)
{
  const gboolean was_telling = self->is_telling;

  self->is_telling = TRUE;
  springs_edit_now (self);
  for (guint i = 0; i < self->parts->len; i++) {
    const Part *part = &g_array_index (self->parts, Part, i);

    part->show (part->part);
  }
  show_owner (self);
  give_up_typing (self);
  self->is_telling = was_telling;
}

static char *
name_path (const char *path, gpointer data)
{
  return springs_name_of_path (path, data);
}

static void
store (SpringsEdit *self, const SpringSet *set, const char *label)
{
  SwDocument *document = sw_bench_get_document (self->bench);
  const guint index = sw_bench_get_setup_index (self->bench);
  const SpringSet before = *springs_edit_now (self);

  if (memcmp (&before.springs, &set->springs, sizeof before.springs) != 0) {
    if (springs_edit_owner (self, SPRINGS_COIL) == SET_OWN)
      sw_document_set_springs (document, index, &set->springs, label);
    else
      sw_document_set_car_springs (document, &set->springs, label);
  }
  if (memcmp (&before.rod, &set->rod, sizeof before.rod) != 0) {
    if (springs_edit_owner (self, SPRINGS_ROD) == SET_OWN)
      sw_document_set_rod (document, index, &set->rod, label);
    else
      sw_document_set_car_rod (document, &set->rod, label);
  }
}

char *
springs_edit_store (SpringsEdit *self, const SpringSet *set, const char *label)
{
  g_autoptr (GError) error = NULL;
  const char *inside = NULL;
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));

  if (!car_check_springs (&set->springs, &error) ||
      !car_check_spring_seats (car, &set->springs, &error) ||
      !car_check_rod (&set->rod, &error)) {
    g_autofree char *refusal = refusal_in_units (error->message);

    return refusal_in_words (refusal, name_path, &inside);
  }
  store (self, set, label);
  return NULL;
}

void
springs_edit_choose (SpringsEdit *self,
                     GtkWidget *at,
                     const SpringSet *set,
                     const char *label)
{
  g_autofree char *refusal = springs_edit_store (self, set, label);

  if (refusal != NULL)
    springs_edit_show (self);
  springs_edit_refuse (self, at, refusal);
}

const char *
springs_change_label (SpringsGroup group)
{
  switch (group) {
  case SPRINGS_BAR:
    return _ ("Change the torsion bar");
  case SPRINGS_COIL:
    return _ ("Change the coil");
  case SPRINGS_HELPER:
    return _ ("Change the helper spring");
  case SPRINGS_STOPS:
    return _ ("Change the stops");
  case SPRINGS_ANTI_ROLL:
    return _ ("Change the anti-roll bar");
  case SPRINGS_DAMPER:
    return _ ("Change damper or tyre");
  default:
    return _ ("Change the rod");
  }
}

void
springs_edit_make_own (SpringsEdit *self, SpringsGroup group, gboolean is_own)
{
  SwDocument *document = sw_bench_get_document (self->bench);
  const guint index = sw_bench_get_setup_index (self->bench);
  const SpringSet now = *springs_edit_now (self);

  if (group == SPRINGS_ROD)
    sw_document_set_rod (document, index, is_own ? &now.rod : NULL,
                         is_own ? _ ("Give the setup its own rod")
                                : _ ("Take the car’s rod"));
  else
    sw_document_set_springs (document, index, is_own ? &now.springs : NULL,
                             is_own ? _ ("Give the setup its own springs")
                                    : _ ("Take the car’s springs"));
}
