/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/bench/chooser.h"
#include "window/layout/whole-text.h"
#include "window/mount/mount-view-page.h"
#include "window/mount/plate-window.h"

#include "drawing/mount-map/mount-map.h"

#include <glib/gi18n-lib.h>

#define NO_PLATE "" /* as the action has it */

typedef struct {
  SwChooser *chooser;
  GtkWidget *box, *plate, *plate_label;
  GSimpleActionGroup *actions;
} Tools;

static Tools *
tools_of (GtkWidget *box)
{
  return g_object_get_data (G_OBJECT (box), "mount-tools");
}

static void
on_subject_selected_cb (GtkDropDown *drop_down, GParamSpec *pspec, SwChooser *chooser)
{
  const guint which =
      GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (drop_down), "which"));
  const guint selected = gtk_drop_down_get_selected (drop_down);

  (void) pspec;
  if (selected != GTK_INVALID_LIST_POSITION)
    sw_chooser_set_subject (chooser, which,
                            selected < N_FIELD_SUBJECTS ? (int) selected
                                                        : MOUNT_MAP_NONE);
}

static GtkWidget *
new_subjects (SwChooser *chooser, guint which, const char *name)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  const int now = sw_chooser_get_subject (chooser, which);
  GtkWidget *drop_down;

  for (FieldSubject subject = 0; subject < N_FIELD_SUBJECTS; subject++)
    gtk_string_list_append (list, field_subject_name (subject));
  if (which == 1)
    gtk_string_list_append (list, C_ ("lines", "None"));
  drop_down = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&list)), NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down),
                              now == MOUNT_MAP_NONE ? N_FIELD_SUBJECTS : (guint) now);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data (G_OBJECT (drop_down), "which", GUINT_TO_POINTER (which));
  g_signal_connect_object (drop_down, "notify::selected",
                           G_CALLBACK (on_subject_selected_cb), chooser, 0);
  return drop_down;
}

static void
add_subjects (GtkGrid *grid, SwChooser *chooser, guint which, const char *name)
{
  GtkWidget *label = gtk_label_new (name);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_grid_attach (grid, label, 0, (int) which, 1, 1);
  gtk_grid_attach (grid, new_subjects (chooser, which, name), 1, (int) which, 1, 1);
}

static void
create_lines_popover (GtkMenuButton *button, gpointer data)
{
  GtkWidget *grid = gtk_grid_new (), *popover;

  if (gtk_menu_button_get_popover (button) != NULL)
    return;
  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_widget_add_css_class (grid, "panel");
  add_subjects (GTK_GRID (grid), data, 0, _ ("Full lines"));
  add_subjects (GTK_GRID (grid), data, 1, _ ("Dashed lines"));
  popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (popover), grid);
  gtk_menu_button_set_popover (button, popover);
}

static GtkWidget *
new_lines (SwChooser *chooser)
{
  GtkWidget *button = gtk_menu_button_new ();

  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Lines"));
  gtk_widget_set_tooltip_text (button, _ ("What the lines of the map are equal in"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Lines"), -1);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), create_lines_popover,
                                         chooser, NULL);
  return button;
}

/* A name may hold an underline: a menu would take it for a key. */
static char *
menu_label (const char *name)
{
  g_auto (GStrv) parts = g_strsplit (name, "_", -1);

  return g_strjoinv ("__", parts);
}

static void
add_plate (GMenu *menu, const char *label, const char *name)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target (item, "mount.plate", "s", name);
  g_menu_append_item (menu, item);
}

static GMenu *
plates_section (SwChooser *chooser)
{
  const PlateLibrary *library = sw_chooser_get_library (chooser);
  GMenu *menu = g_menu_new ();

  add_plate (menu, _ ("No plate"), NO_PLATE);
  for (guint i = 0; i < library->plates->len; i++) {
    const ShelfPlate *shelf = library->plates->pdata[i];
    g_autofree char *label = menu_label (shelf->plate->name);

    add_plate (menu, label, shelf->plate->name);
  }
  return menu;
}

static GMenuModel *
plate_menu (SwChooser *chooser)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) plates = plates_section (chooser), ways = g_menu_new (),
                    files = g_menu_new ();

  g_menu_append (ways, _ ("_Keep to the plate"), "mount.keep");
  g_menu_append (ways, _ ("Left and right _swapped"), "mount.swap");
  g_menu_append (files, _ ("_New Plate…"), "mount.new-plate");
  g_menu_append (files, _ ("_Edit Plate…"), "mount.edit-plate");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (plates));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (ways));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (files));
  return G_MENU_MODEL (menu);
}

/* Anew each time: the shelf may be another. */
static void
create_plate_menu (GtkMenuButton *button, gpointer data)
{
  g_autoptr (GMenuModel) menu = plate_menu (data);

  gtk_menu_button_set_popover (button, gtk_popover_menu_new_from_model (menu));
}

static GtkWidget *
new_plate_button (Tools *self)
{
  GtkWidget *button = gtk_menu_button_new ();

  self->plate_label = gtk_label_new ("");
  gtk_label_set_ellipsize (GTK_LABEL (self->plate_label), PANGO_ELLIPSIZE_END);
  gtk_label_set_wrap (GTK_LABEL (self->plate_label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (self->plate_label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_lines (GTK_LABEL (self->plate_label), 2);
  gtk_label_set_xalign (GTK_LABEL (self->plate_label), 0.0f);
  gtk_label_set_width_chars (GTK_LABEL (self->plate_label), 8);
  gtk_label_set_max_width_chars (GTK_LABEL (self->plate_label), 22);
  gtk_widget_add_css_class (self->plate_label, "plate-name");
  whole_text_tooltip_add (GTK_LABEL (self->plate_label));
  gtk_menu_button_set_child (GTK_MENU_BUTTON (button), self->plate_label);
  gtk_menu_button_set_always_show_arrow (GTK_MENU_BUTTON (button), TRUE);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), create_plate_menu,
                                         self->chooser, NULL);
  return button;
}

static const ShelfPlate *
shelf_plate (SwChooser *chooser)
{
  const Plate *plate = sw_chooser_get_plate (chooser);

  return plate != NULL
             ? plate_library_find (sw_chooser_get_library (chooser), plate->name)
             : NULL;
}

static void
on_plate_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  Tools *self = data;
  const char *name = g_variant_get_string (state, NULL);

  (void) action;
  sw_chooser_set_plate (self->chooser, g_str_equal (name, NO_PLATE) ? NULL : name, FALSE);
}

static void
on_keep_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  (void) action;
  sw_chooser_set_keeps_to_plate (((Tools *) data)->chooser,
                                 g_variant_get_boolean (state));
}

static void
on_swap_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  SwChooser *chooser = ((Tools *) data)->chooser;
  const Plate *plate = sw_chooser_get_plate (chooser);

  (void) action;
  if (plate != NULL)
    sw_chooser_set_plate (chooser, plate->name, g_variant_get_boolean (state));
}

static void
on_edit_plate_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  Tools *self = data;
  const gboolean is_new =
      g_str_equal (g_action_get_name (G_ACTION (action)), "new-plate");

  (void) parameter;
  plate_window_open (GTK_WINDOW (gtk_widget_get_root (self->box)), self->chooser,
                     is_new ? NULL : shelf_plate (self->chooser));
}

static GSimpleAction *
action_of (Tools *self, const char *name)
{
  return G_SIMPLE_ACTION (
      g_action_map_lookup_action (G_ACTION_MAP (self->actions), name));
}

static void
set_state (Tools *self, const char *name, gboolean on, gboolean enabled)
{
  g_simple_action_set_state (action_of (self, name), g_variant_new_boolean (on));
  g_simple_action_set_enabled (action_of (self, name), enabled);
}

static void
show_plate (Tools *self, const Plate *plate)
{
  const char *name = plate != NULL ? plate->name : _ ("No plate");

  gtk_label_set_label (GTK_LABEL (self->plate_label), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->plate),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Plate"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, name, -1);
}

static void
on_changed_cb (GtkWidget *box)
{
  Tools *self = tools_of (box);
  const Plate *plate = sw_chooser_get_plate (self->chooser);

  show_plate (self, plate);
  g_simple_action_set_state (action_of (self, "plate"),
                             g_variant_new_string (plate != NULL ? plate->name
                                                                 : NO_PLATE));
  set_state (self, "keep", sw_chooser_keeps_to_plate (self->chooser), plate != NULL);
  set_state (self, "swap", sw_chooser_is_swapped (self->chooser),
             plate != NULL && plate->can_swap);
  g_simple_action_set_enabled (action_of (self, "edit-plate"), plate != NULL);
}

static void
add_actions (Tools *self)
{
  static const GActionEntry entries[] = {
    { .name = "plate",
      .parameter_type = "s",
      .state = "''",
      .change_state = on_plate_cb },
    { .name = "keep", .state = "true", .change_state = on_keep_cb },
    { .name = "swap", .state = "false", .change_state = on_swap_cb },
    { .name = "new-plate", .activate = on_edit_plate_cb },
    { .name = "edit-plate", .activate = on_edit_plate_cb },
  };

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (self->box, "mount", G_ACTION_GROUP (self->actions));
}

static void
free_tools (gpointer data)
{
  Tools *self = data;

  g_object_unref (self->actions);
  g_free (self);
}

GtkWidget *
mount_tools_new (SwBench *bench)
{
  Tools *self = g_new0 (Tools, 1);

  self->chooser = sw_chooser_of (bench);
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_object_set_data_full (G_OBJECT (self->box), "mount-tools", self, free_tools);
  add_actions (self);
  self->plate = new_plate_button (self);
  gtk_box_append (GTK_BOX (self->box), new_lines (self->chooser));
  gtk_box_append (GTK_BOX (self->box), self->plate);
  g_signal_connect_object (self->chooser, "changed", G_CALLBACK (on_changed_cb),
                           self->box, G_CONNECT_SWAPPED);
  on_changed_cb (self->box);
  return self->box;
}
