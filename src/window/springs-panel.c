/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs-panel.h"
#include "window/springs-panel-edit.h"
#include "window/springs-panel-group.h"
#include "window/springs-panel-number.h"
#include "window/springs-panel-owner.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define SIDE_CHARS 24
#define SIDE_WIDTH 184
#define WHEEL_WAY 80.0 /* pixels a notch */
#define MOST_HEIGHT 260

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
  GtkWidget *box, *sentence;
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
say (const char *sentence, gboolean is_refusal, gpointer data)
{
  SwSpringsPanel *self = data;

  if (is_refusal)
    gtk_widget_add_css_class (self->sentence, "refusal");
  else
    gtk_widget_remove_css_class (self->sentence, "refusal");

  gtk_label_set_label (GTK_LABEL (self->sentence), sentence != NULL ? sentence : "");
  gtk_widget_set_visible (self->sentence, sentence != NULL);
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

  g_clear_pointer (&self->box, gtk_widget_unparent);
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
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

/* Whose it is, and what is to be said. */
static GtkWidget *
new_side (SwSpringsPanel *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->sentence = springs_label_new ("", NULL);
  gtk_label_set_wrap (GTK_LABEL (self->sentence), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (self->sentence), SIDE_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (self->sentence), SIDE_CHARS);
  gtk_widget_set_visible (self->sentence, FALSE);
  gtk_widget_set_size_request (side, SIDE_WIDTH, -1); /* whatever it says */
  gtk_box_append (GTK_BOX (side), springs_owner_new (self->edit, SPRINGS_COIL));
  gtk_box_append (GTK_BOX (side), springs_owner_new (self->edit, SPRINGS_ROD));
  gtk_box_append (GTK_BOX (side), self->sentence);
  return side;
}

/* A plain wheel scrolls along the strip where it has nothing to scroll up and down. */
static gboolean
on_scroll_cb (GtkWidget *groups, double dx, double dy)
{
  GtkWidget *scrolled = gtk_widget_get_ancestor (groups, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *down =
      gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scrolled));
  GtkAdjustment *along =
      gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (scrolled));

  if (dx != 0.0 || gtk_adjustment_get_upper (down) > gtk_adjustment_get_page_size (down))
    return FALSE;
  gtk_adjustment_set_value (along, gtk_adjustment_get_value (along) + dy * WHEEL_WAY);
  return TRUE;
}

static GtkWidget *
new_groups (SwSpringsPanel *self)
{
  GtkWidget *groups = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  GtkEventController *wheel =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);

  g_signal_connect_swapped (wheel, "scroll", G_CALLBACK (on_scroll_cb), groups);
  gtk_widget_add_controller (groups, wheel);

  for (SpringsGroup group = 0; group < N_SPRINGS_GROUPS; group++)
    gtk_box_append (GTK_BOX (groups), springs_group_new (self->edit, group));
  return groups;
}

static GtkWidget *
in_scrolled (GtkWidget *child, GtkPolicyType horizontal)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), horizontal,
                                  GTK_POLICY_AUTOMATIC);
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
  GtkWidget *groups;

  self->bench = g_object_ref (bench);
  self->edit = springs_edit_new (bench, say, self);
  gtk_box_append (GTK_BOX (self->box), in_scrolled (new_side (self), GTK_POLICY_NEVER));
  gtk_box_append (GTK_BOX (self->box), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  groups = in_scrolled (new_groups (self), GTK_POLICY_AUTOMATIC);
  gtk_widget_set_hexpand (groups, TRUE);
  gtk_box_append (GTK_BOX (self->box), groups);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
