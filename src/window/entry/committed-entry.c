/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/committed-entry.h"
#include "window/entry/left-to-right.h"
#include "window/entry/typed-entry.h"

#define PAGE 10 /* steps */

struct _SwCommittedEntry {
  GtkEntry parent_instance;

  EntryTake take;
  EntryStep step;
  gpointer data;
  char *shown; /* the text of what is stored */
  char *refusal, *meaning;
  char *refused; /* the text that was refused last, or NULL */
};

G_DEFINE_FINAL_TYPE (SwCommittedEntry, sw_committed_entry, GTK_TYPE_ENTRY)

enum {
  CHECKED,
  CANCELLED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static const char *
text_of (SwCommittedEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self));
}

static gboolean
has_focus (SwCommittedEntry *self)
{
  return (gtk_widget_get_state_flags (GTK_WIDGET (self)) & GTK_STATE_FLAG_FOCUS_WITHIN) !=
         0;
}

/* A long one is read from its beginning. */
static void
set_text (SwCommittedEntry *self, const char *text)
{
  if (!g_str_equal (text_of (self), text)) {
    gtk_editable_set_text (GTK_EDITABLE (self), text);
    gtk_editable_set_position (GTK_EDITABLE (self), has_focus (self) ? -1 : 0);
  }
  entry_forget_undo (GTK_WIDGET (self));
}

/* Takes @refusal. */
static void
set_refusal (SwCommittedEntry *self, char *refusal)
{
  g_free (self->refusal);
  self->refusal = refusal;
  entry_mark (GTK_WIDGET (self), refusal != NULL);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self),
                               refusal != NULL ? refusal : self->meaning);
  g_signal_emit (self, signals[CHECKED], 0);
}

/* Whoever stores shows what is stored then, in its own digits. */
static gboolean
commit (SwCommittedEntry *self)
{
  if (g_str_equal (text_of (self), self->shown)) {
    if (self->refusal != NULL)
      set_refusal (self, NULL);
    entry_forget_undo (GTK_WIDGET (self));
    return TRUE;
  }

  g_autofree char *typed = g_strdup (text_of (self));
  set_refusal (self, self->take (typed, self->data));
  if (self->refusal != NULL) {
    g_free (self->refused);
    self->refused = g_steal_pointer (&typed);
    entry_forget_undo (GTK_WIDGET (self));
    return FALSE;
  }
  set_text (self, self->shown);
  return TRUE;
}

static void
step (SwCommittedEntry *self, int steps)
{
  if (self->step != NULL && commit (self))
    self->step (steps, self->data);
}

void
sw_committed_entry_restore (SwCommittedEntry *self)
{
  set_text (self, self->shown);
  if (self->refusal != NULL)
    set_refusal (self, NULL);
}

static void
escape (SwCommittedEntry *self)
{
  if (self->refusal == NULL && g_str_equal (text_of (self), self->shown))
    g_signal_emit (self, signals[CANCELLED], 0);
  else
    sw_committed_entry_restore (self);
}

static gboolean
step_by_key (SwCommittedEntry *self, int steps)
{
  if (self->step == NULL)
    return FALSE;
  step (self, steps);
  return TRUE;
}

/* Undo takes a refused text back, as it does what was typed into it since. */
static gboolean
take_back (SwCommittedEntry *self)
{
  if (self->refusal == NULL || g_strcmp0 (text_of (self), self->refused) != 0)
    return FALSE;
  sw_committed_entry_restore (self);
  return TRUE;
}

static gboolean
on_key_pressed_cb (SwCommittedEntry *self, guint key, guint code, GdkModifierType state)
{
  (void) code;
  if (is_undo_key (key, state))
    return take_back (self);
  switch (key) {
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    return step_by_key (self, 1);
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    return step_by_key (self, -1);
  case GDK_KEY_Page_Up:
  case GDK_KEY_KP_Page_Up:
    return step_by_key (self, PAGE);
  case GDK_KEY_Page_Down:
  case GDK_KEY_KP_Page_Down:
    return step_by_key (self, -PAGE);
  case GDK_KEY_Escape:
    escape (self);
    return TRUE;
  default:
    return FALSE;
  }
}

static gboolean
on_scroll_cb (SwCommittedEntry *self, double dx, double dy)
{
  (void) dx;
  if (self->step == NULL || !has_focus (self) || dy == 0.0)
    return FALSE;
  step (self, dy < 0.0 ? 1 : -1);
  return TRUE;
}

static void
on_leave_cb (SwCommittedEntry *self)
{
  commit (self);
  gtk_editable_select_region (GTK_EDITABLE (self), 0, 0);
}

static void
sw_committed_entry_finalize (GObject *object)
{
  SwCommittedEntry *self = SW_COMMITTED_ENTRY (object);

  g_free (self->shown);
  g_free (self->refusal);
  g_free (self->refused);
  g_free (self->meaning);
  G_OBJECT_CLASS (sw_committed_entry_parent_class)->finalize (object);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, SW_TYPE_COMMITTED_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                       NULL, G_TYPE_NONE, 0);
}

static void
sw_committed_entry_class_init (SwCommittedEntryClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_committed_entry_finalize;
  signals[CHECKED] = add_signal ("checked");
  signals[CANCELLED] = add_signal ("cancelled");
}

static void
add_controller (SwCommittedEntry *self,
                GtkEventController *controller,
                const char *signal,
                GCallback callback)
{
  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (controller, signal, callback, self);
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

static void
sw_committed_entry_init (SwCommittedEntry *self)
{
  self->shown = g_strdup ("");
  keep_left_to_right (GTK_WIDGET (self));
  add_controller (self, gtk_event_controller_key_new (), "key-pressed",
                  G_CALLBACK (on_key_pressed_cb));
  add_controller (self, gtk_event_controller_focus_new (), "leave",
                  G_CALLBACK (on_leave_cb));
  add_controller (self,
                  gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL |
                                                   GTK_EVENT_CONTROLLER_SCROLL_DISCRETE),
                  "scroll", G_CALLBACK (on_scroll_cb));
  g_signal_connect (self, "activate", G_CALLBACK (commit), NULL);
}

GtkWidget *
sw_committed_entry_new (const char *label, EntryTake take, EntryStep by, gpointer data)
{
  SwCommittedEntry *self = g_object_new (SW_TYPE_COMMITTED_ENTRY, NULL);

  self->take = take;
  self->step = by;
  self->data = data;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
  return GTK_WIDGET (self);
}

void
sw_committed_entry_show (SwCommittedEntry *self, const char *text)
{
  if (g_str_equal (self->shown, text))
    return;
  g_free (self->shown);
  self->shown = g_strdup (text);
  sw_committed_entry_restore (self);
}

const char *
sw_committed_entry_get_refusal (SwCommittedEntry *self)
{
  return self->refusal;
}

void
sw_committed_entry_set_meaning (SwCommittedEntry *self, const char *meaning)
{
  g_free (self->meaning);
  self->meaning = g_strdup (meaning);
  if (self->refusal == NULL)
    gtk_widget_set_tooltip_text (GTK_WIDGET (self), meaning);
}
