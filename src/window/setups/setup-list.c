/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/setups/setup-list.h"
#include "window/dialog/menus.h"
#include "window/setups/setup-row.h"

#include "model/car/car-json.h"

#include <glib/gi18n-lib.h>

struct _SwSetupList {
  GtkWidget parent_instance;

  SwBench *bench;
  GtkWidget *list;
  GtkMenuButton *more;
  GSimpleActionGroup *actions;
  gboolean is_telling; /* while the list is being told: it does not answer */
};

G_DEFINE_FINAL_TYPE (SwSetupList, sw_setup_list, GTK_TYPE_WIDGET)

static SwDocument *
document (SwSetupList *self)
{
  return sw_bench_get_document (self->bench);
}

static SwSetupRow *
row_at (SwSetupList *self, guint index)
{
  return SW_SETUP_ROW (
      gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) index));
}

static guint
row_index (SwSetupRow *row)
{
  return (guint) gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row));
}

static void
on_row_renamed_cb (SwSetupList *self, const char *name, SwSetupRow *row)
{
  sw_document_rename_setup (document (self), row_index (row), name);
}

static void
on_row_shown_cb (SwSetupList *self, gboolean shown, SwSetupRow *row)
{
  sw_document_show_setup (document (self), row_index (row), shown);
}

static void
match_rows (SwSetupList *self, guint n)
{
  guint there = 0;

  while (row_at (self, there) != NULL)
    there++;
  for (; there < n; there++) {
    GtkWidget *row = sw_setup_row_new (there);

    g_signal_connect_object (row, "renamed", G_CALLBACK (on_row_renamed_cb), self,
                             G_CONNECT_SWAPPED);
    g_signal_connect_object (row, "shown", G_CALLBACK (on_row_shown_cb), self,
                             G_CONNECT_SWAPPED);
    gtk_list_box_append (GTK_LIST_BOX (self->list), row);
  }
  for (; there > n; there--)
    gtk_list_box_remove (GTK_LIST_BOX (self->list),
                         GTK_WIDGET (row_at (self, there - 1)));
}

static void
enable (SwSetupList *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

static void
on_bench_solved_cb (SwSetupList *self)
{
  const Car *car = sw_document_get_car (document (self));
  const guint in_hand = sw_bench_get_setup_index (self->bench);

  if (sw_bench_is_dragging (self->bench))
    return;
  self->is_telling = TRUE;
  match_rows (self, car->setups->len);
  for (guint i = 0; i < car->setups->len; i++)
    sw_setup_row_show (row_at (self, i), car_setup (car, i), i == car->baseline);
  gtk_list_box_select_row (GTK_LIST_BOX (self->list),
                           GTK_LIST_BOX_ROW (row_at (self, in_hand)));
  self->is_telling = FALSE;

  enable (self, "remove", car->setups->len > 1);
  enable (self, "up", in_hand > 0);
  enable (self, "down", in_hand + 1 < car->setups->len);
  enable (self, "baseline", in_hand != car->baseline);
}

static void
on_row_selected_cb (SwSetupList *self, GtkListBoxRow *row)
{
  if (!self->is_telling && row != NULL)
    sw_bench_set_setup_index (self->bench, (guint) gtk_list_box_row_get_index (row));
}

/* A double click, or Return. */
static void
on_row_activated_cb (SwSetupList *self, GtkListBoxRow *row)
{
  (void) self;
  sw_setup_row_rename (SW_SETUP_ROW (row));
}

static void
on_add_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwSetupList *self = SW_SETUP_LIST (data);

  (void) action;
  (void) parameter;
  sw_document_add_setup (document (self), sw_bench_get_setup_index (self->bench),
                         sw_bench_get_setup (self->bench)->name);
  sw_bench_set_setup_index (self->bench,
                            sw_document_get_car (document (self))->setups->len - 1);
}

static void
on_remove_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwSetupList *self = SW_SETUP_LIST (data);

  (void) action;
  (void) parameter;
  sw_document_remove_setup (document (self), sw_bench_get_setup_index (self->bench));
}

static void
on_rename_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwSetupList *self = SW_SETUP_LIST (data);

  (void) action;
  (void) parameter;
  sw_setup_row_rename (row_at (self, sw_bench_get_setup_index (self->bench)));
}

static void
on_move_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwSetupList *self = SW_SETUP_LIST (data);
  const guint from = sw_bench_get_setup_index (self->bench);
  const guint to =
      g_str_equal (g_action_get_name (G_ACTION (action)), "up") ? from - 1 : from + 1;

  (void) parameter;
  sw_document_move_setup (document (self), from, to);
  sw_bench_set_setup_index (self->bench, to);
}

static void
on_baseline_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwSetupList *self = SW_SETUP_LIST (data);

  (void) action;
  (void) parameter;
  sw_document_set_baseline (document (self), sw_bench_get_setup_index (self->bench));
}

static void
take_from (SwSetupList *self, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Car) car = car_load (file, &error);

  if (car == NULL) {
    gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", error->message);
    return;
  }

  g_autofree guint *indices = g_new (guint, car->setups->len);
  for (guint i = 0; i < car->setups->len; i++)
    indices[i] = i;
  sw_document_take_setups (document (self), car, indices, car->setups->len);
}

static void
on_take_response_cb (GtkNativeDialog *native, int response, SwSetupList *self)
{
  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (native));

    take_from (self, file);
  }
  g_object_unref (native);
}

static void
on_take_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkWidget *self = GTK_WIDGET (data);
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (_ ("Take the setups of another car"),
                                   GTK_WINDOW (gtk_widget_get_root (self)),
                                   GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Take"), NULL);

  (void) action;
  (void) parameter;
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  g_signal_connect (native, "response", G_CALLBACK (on_take_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}

static void
install_actions (SwSetupList *self)
{
  static const GActionEntry entries[] = {
    { .name = "add", .activate = on_add_cb },
    { .name = "remove", .activate = on_remove_cb },
    { .name = "rename", .activate = on_rename_cb },
    { .name = "up", .activate = on_move_cb },
    { .name = "down", .activate = on_move_cb },
    { .name = "baseline", .activate = on_baseline_cb },
    { .name = "take", .activate = on_take_cb },
  };

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "setups",
                                  G_ACTION_GROUP (self->actions));
}

/* Tab goes from a row to its button and then out of the list. GTK would go through all
 * rows, and take each setup in hand on the way. */
static gboolean
sw_setup_list_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SwSetupList *self = SW_SETUP_LIST (widget);
  GtkWidget *row = gtk_widget_get_focus_child (self->list);

  if (row == NULL ||
      (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD))
    return GTK_WIDGET_CLASS (sw_setup_list_parent_class)->focus (widget, direction);
  if (gtk_widget_child_focus (row, direction))
    return TRUE;
  return direction == GTK_DIR_TAB_BACKWARD &&
         gtk_widget_child_focus (gtk_widget_get_prev_sibling (self->list), direction);
}

static void
sw_setup_list_dispose (GObject *object)
{
  SwSetupList *self = SW_SETUP_LIST (object);

  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));

  if (child != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->actions);
  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_setup_list_parent_class)->dispose (object);
}

static void
add_key (GtkWidgetClass *class, guint key, GdkModifierType modifiers, const char *action)
{
  gtk_widget_class_add_binding_action (class, key, modifiers, action, NULL);
}

static void
sw_setup_list_class_init (SwSetupListClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_setup_list_dispose;
  widget_class->focus = sw_setup_list_focus;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/strutwright/"
                                                             "Strutwright/setup-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSetupList, list);
  gtk_widget_class_bind_template_child (widget_class, SwSetupList, more);
  gtk_widget_class_bind_template_callback (widget_class, on_row_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated_cb);
  add_key (widget_class, GDK_KEY_F2, 0, "setups.rename");
  add_key (widget_class, GDK_KEY_Delete, 0, "setups.remove");
  add_key (widget_class, GDK_KEY_Up, GDK_ALT_MASK, "setups.up");
  add_key (widget_class, GDK_KEY_Down, GDK_ALT_MASK, "setups.down");
}

static void
sw_setup_list_init (SwSetupList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  menus_put (self->more, "setups_menu");
  install_actions (self);
}

GtkWidget *
sw_setup_list_new (SwBench *bench)
{
  SwSetupList *self = g_object_new (SW_TYPE_SETUP_LIST, NULL);

  self->bench = g_object_ref (bench);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  on_bench_solved_cb (self);
  return GTK_WIDGET (self);
}
