/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/loads/loads-panel.h"
#include "window/bench/loader.h"
#include "window/loads/loads-table.h"

#include "model/load/spring-verdict.h"
#include "model/spring/spring-caution.h"

#include <glib/gi18n-lib.h>

#define MOST_HEIGHT 180
#define SIDE_CHARS 20

struct _SwLoadsPanel {
  GtkWidget parent_instance;

  SwLoader *loader;
  GtkWidget *box, *table, *words;
};

G_DEFINE_FINAL_TYPE (SwLoadsPanel, sw_loads_panel, GTK_TYPE_WIDGET)

static void
append_verdict (GString *markup, const SpringVerdict *verdict)
{
  g_autofree char *text =
      g_markup_printf_escaped ("%s\n<small><span alpha=\"65%%\">%s</span></small>",
                               verdict->marked, verdict->rule);

  if (markup->len > 0)
    g_string_append (markup, "\n\n");
  g_string_append (markup, text);
}

static void
show_words (SwLoadsPanel *self)
{
  const LoadStudy *study = sw_loader_get_study (self->loader);
  g_autoptr (GPtrArray) verdicts =
                 spring_verdicts (study->springs, study->springs->study->in_hand);
  g_autoptr (GString) markup = g_string_new (NULL);

  for (guint i = 0; i < verdicts->len; i++)
    append_verdict (markup, verdicts->pdata[i]);
  if (verdicts->len == 0)
    g_string_append (markup, _ ("Verdicts need springs: the question “Springs” takes "
                                "them."));
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (self->words)), markup->str) != 0)
    gtk_label_set_markup (GTK_LABEL (self->words), markup->str);
}

static void
show (SwLoadsPanel *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  sw_loads_table_show (SW_LOADS_TABLE (self->table));
  if (!sw_bench_is_dragging (sw_loader_get_bench (self->loader)))
    show_words (self);
}

static void
sw_loads_panel_map (GtkWidget *widget)
{
  SwLoadsPanel *self = SW_LOADS_PANEL (widget);

  GTK_WIDGET_CLASS (sw_loads_panel_parent_class)->map (widget);
  sw_loader_watch (self->loader);
  show (self);
}

static void
sw_loads_panel_unmap (GtkWidget *widget)
{
  sw_loader_unwatch (SW_LOADS_PANEL (widget)->loader);
  GTK_WIDGET_CLASS (sw_loads_panel_parent_class)->unmap (widget);
}

static void
sw_loads_panel_dispose (GObject *object)
{
  SwLoadsPanel *self = SW_LOADS_PANEL (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->loader);
  G_OBJECT_CLASS (sw_loads_panel_parent_class)->dispose (object);
}

static void
sw_loads_panel_class_init (SwLoadsPanelClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_loads_panel_dispose;
  widget_class->map = sw_loads_panel_map;
  widget_class->unmap = sw_loads_panel_unmap;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "joints");
}

static void
sw_loads_panel_init (SwLoadsPanel *self)
{
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

static GtkWidget *
in_scrolled (GtkWidget *child, GtkPolicyType across)
{
  GtkWidget *place = gtk_scrolled_window_new ();
  GtkScrolledWindow *scrolled = GTK_SCROLLED_WINDOW (place);

  gtk_scrolled_window_set_policy (scrolled, across, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (scrolled, TRUE);
  gtk_scrolled_window_set_max_content_height (scrolled, MOST_HEIGHT);
  gtk_scrolled_window_set_child (scrolled, child);
  return place;
}

static GtkWidget *
new_wrapped (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_width_chars (GTK_LABEL (label), SIDE_CHARS);
  return label;
}

static GtkWidget *
new_side (SwLoadsPanel *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *caution = new_wrapped (spring_caution ());

  self->words = new_wrapped ("");
  gtk_label_set_selectable (GTK_LABEL (self->words), TRUE);
  gtk_widget_add_css_class (caution, "refusal");
  gtk_widget_add_css_class (caution, "caption");
  gtk_box_append (GTK_BOX (side), self->words);
  gtk_box_append (GTK_BOX (side), caution);
  return side;
}

GtkWidget *
sw_loads_panel_new (SwBench *bench)
{
  SwLoadsPanel *self = g_object_new (SW_TYPE_LOADS_PANEL, NULL);
  GtkWidget *table, *side;

  self->loader = g_object_ref (sw_loader_of (bench));
  self->table = sw_loads_table_new (self->loader);
  table = in_scrolled (self->table, GTK_POLICY_AUTOMATIC);
  side = in_scrolled (new_side (self), GTK_POLICY_NEVER);
  gtk_widget_set_hexpand (side, TRUE);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (table), TRUE);
  gtk_box_append (GTK_BOX (self->box), table);
  gtk_box_append (GTK_BOX (self->box), side);
  g_signal_connect_object (self->loader, "changed", G_CALLBACK (show), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "solved", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
