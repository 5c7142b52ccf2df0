/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/quantity-window.h"
#include "window/dialog/escape-key.h"

#include "model/advice/quantity-help.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

#define KEY "quantity-window"
#define LIST_WIDTH 230

typedef struct {
  GtkWindow *window;
  GtkListBox *list;
  GtkEditable *search;
  GtkBox *page;
  GtkScrolledWindow *page_place;
} QuantityWindow;

static Quantity
quantity_of (GtkListBoxRow *row)
{
  return (Quantity) gtk_list_box_row_get_index (row);
}

static GtkWidget *
new_label (const char *text, const char *class, GtkAccessibleRole role)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role", role, "label", text,
                                   "wrap", TRUE, "xalign", 0.0f, NULL);

  if (class != NULL)
    gtk_widget_add_css_class (label, class);
  return label;
}

static void
append_part (QuantityWindow *self, const char *heading, const char *text)
{
  GtkWidget *label = new_label (text, NULL, GTK_ACCESSIBLE_ROLE_LABEL);

  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 64);
  gtk_box_append (self->page,
                  new_label (heading, "heading", GTK_ACCESSIBLE_ROLE_HEADING));
  gtk_box_append (self->page, label);
}

static void on_search_changed_cb (QuantityWindow *self);

/* Shows its row, which shows its page. */
static void
choose (QuantityWindow *self, Quantity quantity)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) quantity);

  if (!gtk_widget_get_visible (GTK_WIDGET (row))) {
    gtk_editable_set_text (self->search, "");
    on_search_changed_cb (self);
  }
  gtk_list_box_select_row (self->list, row);
  gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
on_related_clicked_cb (QuantityWindow *self, GtkButton *button)
{
  choose (self, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "quantity")));
}

static void
append_related (QuantityWindow *self, const QuantityHelp *help)
{
  gtk_box_append (self->page,
                  new_label (_ ("See also"), "heading", GTK_ACCESSIBLE_ROLE_HEADING));
  for (guint i = 0; i < help->n_related; i++) {
    GtkWidget *button = gtk_button_new_with_label (quantity_info (help->related[i]).name);

    gtk_widget_set_halign (button, GTK_ALIGN_START);
    g_object_set_data (G_OBJECT (button), "quantity",
                       GUINT_TO_POINTER (help->related[i]));
    g_signal_connect_swapped (button, "clicked", G_CALLBACK (on_related_clicked_cb),
                              self);
    gtk_box_append (self->page, button);
  }
}

static void
show_page (QuantityWindow *self, Quantity quantity)
{
  const QuantityInfo info = quantity_info (quantity);
  g_auto (QuantityHelp) help = quantity_help (quantity);
  const char *unit = quantity_caption (quantity);
  g_autofree char *title = unit[0] != '\0' ? g_strdup_printf ("%s, %s", info.name, unit)
                                           : g_strdup (info.name);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->page))) != NULL)
    gtk_box_remove (self->page, child);
  gtk_box_append (self->page,
                  new_label (title, "quantity-title", GTK_ACCESSIBLE_ROLE_HEADING));
  append_part (self, _ ("What it is"), help.what);
  append_part (self, _ ("Its sign"), help.sign);
  append_part (self, _ ("What changes it"), help.changes);
  append_part (self, _ ("What is usual"), help.range);
  append_part (self, _ ("What is often said"), help.folklore);
  append_related (self, &help);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->page_place), 0.0);
}

static void
on_row_selected_cb (QuantityWindow *self, GtkListBoxRow *row)
{
  if (row != NULL)
    show_page (self, quantity_of (row));
}

/* Rows that are not wanted are hidden instead of filtered, which a screen reader would
 * not be told of. Where the one that is shown goes, the first that stays is chosen. */
static void
on_search_changed_cb (QuantityWindow *self)
{
  const GtkListBoxRow *chosen = gtk_list_box_get_selected_row (self->list);
  GtkListBoxRow *row, *first = NULL;
  gboolean stays = FALSE;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++) {
    const gboolean is_wanted =
        quantity_help_mentions (quantity_of (row), gtk_editable_get_text (self->search));

    gtk_widget_set_visible (GTK_WIDGET (row), is_wanted);
    if (is_wanted && first == NULL)
      first = row;
    stays |= is_wanted && row == chosen;
  }
  if (!stays && first != NULL)
    gtk_list_box_select_row (self->list, first);
}

static GtkWidget *
new_row (Quantity quantity)
{
  const char *name = quantity_info (quantity).name;
  GtkWidget *row = gtk_list_box_row_new ();

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row),
                              new_label (name, NULL, GTK_ACCESSIBLE_ROLE_LABEL));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  return row;
}

static void
fill_list (QuantityWindow *self)
{
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_BROWSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Quantities"), -1);
  for (Quantity q = 0; q < N_QUANTITIES; q++)
    gtk_list_box_append (self->list, new_row (q));
  gtk_list_box_set_placeholder (self->list,
                                new_label (_ ("No page has all these words."),
                                           "quantity-none", GTK_ACCESSIBLE_ROLE_LABEL));
  g_signal_connect_swapped (self->list, "row-selected", G_CALLBACK (on_row_selected_cb),
                            self);
}

/* The entry keeps Escape to itself. */
static void
on_stop_search_cb (QuantityWindow *self)
{
  if (gtk_editable_get_text (self->search)[0] == '\0')
    gtk_window_close (self->window);
  else
    gtk_editable_set_text (self->search, "");
}

static GtkWidget *
new_scrolled (GtkWidget *child)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), child);
  gtk_widget_set_vexpand (scrolled, TRUE);
  return scrolled;
}

static GtkWidget *
new_list_side (QuantityWindow *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *search = gtk_search_entry_new ();

  self->search = GTK_EDITABLE (search);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_accessible_update_property (GTK_ACCESSIBLE (search), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Search the quantities"), -1);
  g_signal_connect_swapped (search, "search-changed", G_CALLBACK (on_search_changed_cb),
                            self);
  g_signal_connect_swapped (search, "stop-search", G_CALLBACK (on_stop_search_cb), self);
  gtk_widget_add_css_class (side, "quantity-list");
  gtk_widget_set_size_request (side, LIST_WIDTH, -1);
  gtk_box_append (GTK_BOX (side), search);
  gtk_box_append (GTK_BOX (side), new_scrolled (GTK_WIDGET (self->list)));
  return side;
}

static GtkWidget *
new_content (QuantityWindow *self)
{
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *place = new_scrolled (page);

  self->page = GTK_BOX (page);
  self->page_place = GTK_SCROLLED_WINDOW (place);
  gtk_widget_add_css_class (page, "quantity-page");
  gtk_widget_set_hexpand (place, TRUE);
  gtk_box_append (GTK_BOX (content), new_list_side (self));
  gtk_box_append (GTK_BOX (content), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (content), place);
  return content;
}

static void
on_destroy_cb (GtkWindow *parent)
{
  g_object_set_data (G_OBJECT (parent), KEY, NULL);
}

static QuantityWindow *
new_window (GtkWindow *parent)
{
  QuantityWindow *self = g_new0 (QuantityWindow, 1);

  self->window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent,
                               "destroy-with-parent", TRUE, "title", _ ("Quantities"),
                               "default-width", 760, "default-height", 620, NULL);
  gtk_window_set_child (self->window, new_content (self));
  fill_list (self);
  escape_key_closes (GTK_WIDGET (self->window));
  g_object_set_data_full (G_OBJECT (self->window), KEY, self, g_free);
  g_object_set_data (G_OBJECT (parent), KEY, self);
  g_signal_connect_object (self->window, "destroy", G_CALLBACK (on_destroy_cb), parent,
                           G_CONNECT_SWAPPED);
  return self;
}

void
quantity_window_present (GtkWindow *parent, int quantity)
{
  QuantityWindow *self = g_object_get_data (G_OBJECT (parent), KEY);
  const gboolean is_new = self == NULL;

  if (is_new)
    self = new_window (parent);
  gtk_window_present (self->window);
  if (quantity >= 0)
    choose (self, (Quantity) quantity);
  else if (is_new) {
    choose (self, QUANTITY_CAMBER);
    gtk_widget_grab_focus (GTK_WIDGET (self->search));
  }
}
