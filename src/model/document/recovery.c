/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json.h"
#include "model/document/document-private.h"
#include "model/document/recovery-private.h"
#include "model/file/file-replace.h"
#include "model/file/process-mark.h"

#include <glib/gstdio.h>
#include <string.h>

struct Recovery {
  SwDocument *document;
  guint delay_seconds;
  guint timer; /* 0 when no copy is due */
  char *copy;  /* its path, whether it is there or not */
};

char *
recovery_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "strutwright", "recovery", NULL);
}

char *
recovery_key_path (const char *copy)
{
  const gsize length = strlen (copy) - strlen (RECOVERY_SUFFIX);

  return g_strdup_printf ("%.*s" RECOVERY_KEY_SUFFIX, (int) length, copy);
}

static GKeyFile *
make_key (const Recovery *self)
{
  GKeyFile *key = g_key_file_new ();
  GFile *file = sw_document_get_file (self->document);
  const char *stamp = document_get_stamp (self->document);
  const ProcessMark mark = process_mark_own ();

  if (file != NULL) {
    g_autofree char *uri = g_file_get_uri (file);

    g_key_file_set_string (key, RECOVERY_GROUP, RECOVERY_FILE, uri);
  }
  if (stamp != NULL)
    g_key_file_set_string (key, RECOVERY_GROUP, RECOVERY_STAMP, stamp);
  g_key_file_set_int64 (key, RECOVERY_GROUP, RECOVERY_PROCESS, mark.id);
  g_key_file_set_string (key, RECOVERY_GROUP, RECOVERY_STARTED, mark.started);
  g_free (mark.started);
  return key;
}

static gboolean
write_key (const Recovery *self, GError **error)
{
  g_autoptr (GKeyFile) key = make_key (self);
  g_autofree char *path = recovery_key_path (self->copy);
  gsize length;
  g_autofree char *text = g_key_file_to_data (key, &length, NULL);

  return file_replace (path, text, length, error);
}

/* The key goes first: a copy is never without one. */
static gboolean
write_copy (const Recovery *self, GError **error)
{
  g_autofree char *folder = recovery_folder ();
  g_autoptr (GFile) file = g_file_new_for_path (self->copy);

  g_mkdir_with_parents (folder, 0700);
  return write_key (self, error) &&
         car_save (sw_document_get_car (self->document), file, error);
}

static void
remove_copy (const char *copy)
{
  g_autofree char *key = recovery_key_path (copy);

  g_unlink (copy);
  g_unlink (key);
}

static void
cancel_timer (Recovery *self)
{
  if (self->timer != 0)
    g_source_remove (self->timer);
  self->timer = 0;
}

void
recovery_keep_now (Recovery *self)
{
  g_autoptr (GError) error = NULL;

  cancel_timer (self);
  if (sw_document_is_modified (self->document) && !write_copy (self, &error))
    g_message ("%s", error->message);
}

static gboolean
on_timer_cb (gpointer data)
{
  Recovery *self = data;

  self->timer = 0;
  recovery_keep_now (self);
  return G_SOURCE_REMOVE;
}

static void
on_document_changed_cb (Recovery *self)
{
  if (!sw_document_is_modified (self->document)) {
    cancel_timer (self);
    remove_copy (self->copy);
  } else if (self->timer == 0) {
    self->timer = g_timeout_add (self->delay_seconds * 1000, on_timer_cb, self);
  }
}

Recovery *
recovery_watch (SwDocument *document, guint delay_seconds)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  Recovery *self = g_new0 (Recovery, 1);
  g_autofree char *folder = recovery_folder ();
  g_autofree char *id = g_uuid_string_random ();
  g_autofree char *base = g_strconcat (id, RECOVERY_SUFFIX, NULL);

  self->document = g_object_ref (document);
  self->delay_seconds = delay_seconds;
  self->copy = g_build_filename (folder, base, NULL);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (on_document_changed_cb),
                            self);
  g_signal_connect_swapped (document, "notify::modified",
                            G_CALLBACK (on_document_changed_cb), self);
  on_document_changed_cb (self);
  return self;
}

void
recovery_free (Recovery *self)
{
  if (self == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->document, self);
  cancel_timer (self);
  remove_copy (self->copy);
  g_object_unref (self->document);
  g_free (self->copy);
  g_free (self);
}

void
recovery_discard (const LeftOver *left_over)
{
  remove_copy (left_over->copy);
}
