/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/document/document.h"
#include "model/car/car-json.h"
#include "model/document/document-private.h"
#include "model/document/history.h"
#include "model/file/file-stamp.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef enum {
  PROP_MODIFIED = 1,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_TITLE,
  N_PROPS
} Prop;

struct _SwDocument {
  GObject parent_instance;
  GFile *file;
  Car *car;    /* in hand: inside a change it runs ahead of the history */
  Car *saved;  /* as it stands in the file, or NULL when no file has it */
  char *stamp; /* of the file when it was last read or written here */
  History *history;
  char *change_label; /* of the change in hand, or NULL */

  /* as last told to whoever is bound to them */
  gboolean told_modified, told_can_undo, told_can_redo;
  char *told_title;
};

G_DEFINE_FINAL_TYPE (SwDocument, sw_document, G_TYPE_OBJECT)

static GParamSpec *props[N_PROPS];
static guint changed_signal;

static gboolean
can_undo (SwDocument *self)
{
  return self->change_label == NULL && history_undo_label (self->history) != NULL;
}

static gboolean
can_redo (SwDocument *self)
{
  return self->change_label == NULL && history_redo_label (self->history) != NULL;
}

static char *
make_title (SwDocument *self)
{
  if (self->car->name[0] != '\0')
    return g_strdup (self->car->name);
  if (self->file == NULL)
    return g_strdup (_ ("Unnamed car"));

  g_autofree char *base = g_file_get_basename (self->file);
  return g_filename_display_name (base);
}

static void
tell_flag (SwDocument *self, Prop prop, gboolean *told, gboolean now)
{
  if (*told == now)
    return;
  *told = now;
  g_object_notify_by_pspec (G_OBJECT (self), props[prop]);
}

static void
tell_title (SwDocument *self)
{
  g_autofree char *title = make_title (self);

  if (g_strcmp0 (title, self->told_title) == 0)
    return;
  g_free (self->told_title);
  self->told_title = g_steal_pointer (&title);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TITLE]);
}

static void
tell_properties (SwDocument *self)
{
  tell_flag (self, PROP_MODIFIED, &self->told_modified, sw_document_is_modified (self));
  tell_flag (self, PROP_CAN_UNDO, &self->told_can_undo, can_undo (self));
  tell_flag (self, PROP_CAN_REDO, &self->told_can_redo, can_redo (self));
  tell_title (self);
}

static void
sw_document_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SwDocument *self = SW_DOCUMENT (object);

  switch ((Prop) id) {
  case PROP_MODIFIED:
    g_value_set_boolean (value, sw_document_is_modified (self));
    return;
  case PROP_CAN_UNDO:
    g_value_set_boolean (value, can_undo (self));
    return;
  case PROP_CAN_REDO:
    g_value_set_boolean (value, can_redo (self));
    return;
  case PROP_TITLE:
    g_value_take_string (value, make_title (self));
    return;
  case N_PROPS:
    break;
  }
  G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
sw_document_finalize (GObject *object)
{
  SwDocument *self = SW_DOCUMENT (object);

  g_clear_object (&self->file);
  car_free (self->car);
  car_free (self->saved);
  g_free (self->stamp);
  history_free (self->history);
  g_free (self->change_label);
  g_free (self->told_title);
  G_OBJECT_CLASS (sw_document_parent_class)->finalize (object);
}

static GParamSpec *
flag (const char *name)
{
  return g_param_spec_boolean (name, NULL, NULL, FALSE,
                               G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY |
                                   G_PARAM_STATIC_STRINGS);
}

static void
sw_document_class_init (SwDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_document_get_property;
  object_class->finalize = sw_document_finalize;

  props[PROP_MODIFIED] = flag ("modified");
  props[PROP_CAN_UNDO] = flag ("can-undo");
  props[PROP_CAN_REDO] = flag ("can-redo");
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL,
                                           G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY |
                                               G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  changed_signal = g_signal_new ("changed", SW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_document_init (SwDocument *self)
{
  (void) self;
}

/* Takes @car, @saved and @stamp. */
static SwDocument *
document_new (Car *car, Car *saved, GFile *file, char *stamp)
{
  SwDocument *self = g_object_new (SW_TYPE_DOCUMENT, NULL);

  self->car = car;
  self->saved = saved;
  self->history = history_new (car);
  self->file = file != NULL ? g_object_ref (file) : NULL;
  self->stamp = stamp;
  self->told_modified = saved == NULL;
  self->told_title = make_title (self);
  return self;
}

/* The stamp is taken first: a change during the reading is noticed rather than missed. */
SwDocument *
sw_document_load (GFile *file, GError **error)
{
  g_autofree char *stamp = file_stamp (file);
  Car *car = car_load (file, error);

  return car != NULL ? document_new (car, car_copy (car), file, g_steal_pointer (&stamp))
                     : NULL;
}

SwDocument *
sw_document_new_for_car (Car *car)
{
  g_return_val_if_fail (car != NULL, NULL);

  return document_new (car, car_copy (car), NULL, NULL);
}

SwDocument *
sw_document_new_unsaved (Car *car)
{
  g_return_val_if_fail (car != NULL, NULL);

  return document_new (car, NULL, NULL, NULL);
}

SwDocument *
document_new_unsaved (Car *car, GFile *file, const char *stamp)
{
  return document_new (car, NULL, file, g_strdup (stamp));
}

gboolean
sw_document_save (SwDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (G_IS_FILE (file), FALSE);

  if (!car_save (self->car, file, error))
    return FALSE;
  g_set_object (&self->file, file);
  car_free (self->saved);
  self->saved = car_copy (self->car);
  g_free (self->stamp);
  self->stamp = file_stamp (file);
  tell_properties (self);
  return TRUE;
}

gboolean
sw_document_file_was_changed (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);

  if (self->file == NULL)
    return FALSE;

  g_autofree char *now = file_stamp (self->file);
  return now == NULL || g_strcmp0 (now, self->stamp) != 0;
}

const char *
document_get_stamp (SwDocument *self)
{
  return self->stamp;
}

Car *
document_car (SwDocument *self)
{
  return self->car;
}

const Car *
sw_document_get_car (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);

  return self->car;
}

GFile *
sw_document_get_file (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);

  return self->file;
}

gboolean
sw_document_is_modified (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);

  return self->saved == NULL || !car_equal (self->car, self->saved);
}

/* After every edit of the car in hand. */
void
document_finish_edit (SwDocument *self, const char *label)
{
  if (self->change_label == NULL)
    history_push (self->history, self->car, label);
  tell_properties (self);
  g_signal_emit (self, changed_signal, 0);
}

static gboolean
is_within_reach (double move)
{
  return fabs (move) <= CAR_FURTHEST_MOVE;
}

static gboolean
is_sound_adjustment (const Adjustment *a)
{
  return is_within_reach (a->mount.inboard) && is_within_reach (a->mount.rearward) &&
         is_within_reach (a->mount.up) && is_within_reach (a->lowering);
}

static gboolean
is_there_already (const CarSetup *setup, const Adjustment *a)
{
  return setup->mount.inboard == a->mount.inboard &&
         setup->mount.rearward == a->mount.rearward && setup->mount.up == a->mount.up &&
         setup->lowering_mm == a->lowering && setup->toe == a->toe;
}

void
sw_document_set_setup (SwDocument *self,
                       guint index,
                       const Adjustment *adjustment,
                       const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (index < self->car->setups->len);
  g_return_if_fail (is_sound_adjustment (adjustment));

  CarSetup *setup = car_setup (self->car, index);

  if (is_there_already (setup, adjustment))
    return;
  setup->mount = adjustment->mount;
  setup->lowering_mm = adjustment->lowering;
  setup->toe = adjustment->toe;
  document_finish_edit (self, label);
}

static void
set_text (SwDocument *self, char **text, const char *now, const char *label)
{
  if (g_str_equal (*text, now))
    return;
  g_free (*text);
  *text = g_strdup (now);
  document_finish_edit (self, label);
}

void
sw_document_set_name (SwDocument *self, const char *name, const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  set_text (self, &self->car->name, name, label);
}

void
sw_document_set_notes (SwDocument *self, const char *notes, const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  set_text (self, &self->car->notes, notes, label);
}

void
sw_document_begin (SwDocument *self, const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (label != NULL);

  if (self->change_label != NULL)
    sw_document_end (self);
  self->change_label = g_strdup (label);
  tell_properties (self);
}

void
sw_document_end (SwDocument *self)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  g_autofree char *label = g_steal_pointer (&self->change_label);
  if (label == NULL)
    return;
  if (!car_equal (self->car, history_current (self->history)))
    history_push (self->history, self->car, label);
  tell_properties (self);
}

/* The car in hand becomes the one of the history. */
static void
take_from_history (SwDocument *self)
{
  const Car *there = history_current (self->history);
  const gboolean is_another = !car_equal (self->car, there);

  if (is_another) {
    car_free (self->car);
    self->car = car_copy (there);
  }
  tell_properties (self);
  if (is_another)
    g_signal_emit (self, changed_signal, 0);
}

void
sw_document_cancel (SwDocument *self)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  if (self->change_label == NULL)
    return;
  g_clear_pointer (&self->change_label, g_free);
  take_from_history (self);
}

gboolean
sw_document_is_changing (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);

  return self->change_label != NULL;
}

void
sw_document_undo (SwDocument *self)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  if (self->change_label == NULL && history_undo (self->history))
    take_from_history (self);
}

void
sw_document_redo (SwDocument *self)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  if (self->change_label == NULL && history_redo (self->history))
    take_from_history (self);
}

const char *
sw_document_get_undo_label (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);

  return can_undo (self) ? history_undo_label (self->history) : NULL;
}

const char *
sw_document_get_redo_label (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);

  return can_redo (self) ? history_redo_label (self->history) : NULL;
}
