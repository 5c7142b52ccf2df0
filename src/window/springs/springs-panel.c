/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel.h"
#include "window/layout/wrap-lines.h"
#include "window/springs/springs-panel-edit.h"
#include "window/springs/springs-panel-group.h"
#include "window/springs/springs-panel-owner.h"

#include <string.h>

#define MOST_HEIGHT 260
#define GROUP_GAP 24
#define LINE_GAP 12
#define OWNER_GAP 4

/* What the editor was told last: motion of the wheel alone is none of its business. */
typedef struct {
  const Car *car; /* only compared, as the setup is */
  const CarSetup *setup;
  double travel, lowering;
  SpringSet set;
} Told;

struct _SwSpringsPanel {
  GtkWidget parent_instance;

  SwBench *bench;
  SpringsEdit *edit;
  GtkWidget *scrolled;
  Told told;
};

G_DEFINE_FINAL_TYPE (SwSpringsPanel, sw_springs_panel, GTK_TYPE_WIDGET)

static gboolean
is_only_travel (const Told *before, const Told *now)
{
  return before->travel != now->travel && before->car == now->car &&
         before->setup == now->setup && before->lowering == now->lowering &&
         memcmp (&before->set, &now->set, sizeof now->set) == 0;
}

static void
show_now (SwSpringsPanel *self)
{
  Told now = { sw_document_get_car (sw_bench_get_document (self->bench)),
               sw_bench_get_setup (self->bench), sw_bench_get_study (self->bench)->travel,
               sw_bench_get_setup (self->bench)->lowering_mm,
               *springs_edit_now (self->edit) };
  const gboolean is_same = is_only_travel (&self->told, &now);

  self->told = now;
  if (!is_same)
    springs_edit_show (self->edit);
}

static void
on_bench_solved_cb (SwSpringsPanel *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_now (self);
}

static void
sw_springs_panel_map (GtkWidget *widget)
{
  SwSpringsPanel *self = SW_SPRINGS_PANEL (widget);

  self->told.setup = NULL;
  show_now (self);
  GTK_WIDGET_CLASS (sw_springs_panel_parent_class)->map (widget);
}

static void
sw_springs_panel_dispose (GObject *object)
{
  SwSpringsPanel *self = SW_SPRINGS_PANEL (object);

  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_springs_panel_parent_class)->dispose (object);
}

static void
sw_springs_panel_finalize (GObject *object)
{
  springs_edit_free (SW_SPRINGS_PANEL (object)->edit);
  G_OBJECT_CLASS (sw_springs_panel_parent_class)->finalize (object);
}

static void
sw_springs_panel_class_init (SwSpringsPanelClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_springs_panel_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_springs_panel_finalize;
  widget_class->map = sw_springs_panel_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "springs");
}

static void
sw_springs_panel_init (SwSpringsPanel *self)
{
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
}

/* Under whose it is, which can be changed while the part is only looked at. */
static GtkWidget *
new_rod (SwSpringsPanel *self)
{
  GtkWidget *rod = gtk_box_new (GTK_ORIENTATION_VERTICAL, OWNER_GAP);

  gtk_box_append (GTK_BOX (rod), springs_owner_new (self->edit, SPRINGS_ROD));
  gtk_box_append (GTK_BOX (rod), springs_group_new (self->edit, SPRINGS_ROD));
  return rod;
}

static GtkWidget *
new_groups (SwSpringsPanel *self)
{
  GtkWidget *groups = sw_wrap_lines_new (GROUP_GAP, LINE_GAP);

  for (SpringsGroup group = 0; group < N_SPRINGS_GROUPS; group++)
    sw_wrap_lines_append (SW_WRAP_LINES (groups),
                          group == SPRINGS_ROD ? new_rod (self)
                                               : springs_group_new (self->edit, group));
  return groups;
}

/* Sideways only where one part by itself is wider. */
static GtkWidget *
in_scrolled (GtkWidget *child)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled),
                                              MOST_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), child);
  gtk_widget_add_css_class (child, "panel");
  return scrolled;
}

GtkWidget *
sw_springs_panel_new (SwBench *bench)
{
  SwSpringsPanel *self = g_object_new (SW_TYPE_SPRINGS_PANEL, NULL);
  GtkWidget *content;

  self->bench = g_object_ref (bench);
  self->edit = springs_edit_new (bench);
  content = gtk_box_new (GTK_ORIENTATION_VERTICAL, LINE_GAP);
  gtk_box_append (GTK_BOX (content), springs_owner_new (self->edit, SPRINGS_COIL));
  gtk_box_append (GTK_BOX (content), new_groups (self));
  self->scrolled = in_scrolled (content);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
