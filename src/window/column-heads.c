/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/column-heads.h"
#include "window/left-to-right.h"

static GtkWidget *
find_label (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_label (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
align (GtkLabel *label)
{
  gtk_widget_set_hexpand (GTK_WIDGET (label), TRUE);
  gtk_label_set_xalign (label, 1.0f);
  gtk_label_set_justify (label, GTK_JUSTIFY_RIGHT);
  keep_left_to_right (GTK_WIDGET (label));
}

static void
name (GtkWidget *head, GtkLabel *label)
{
  g_autofree char *text = g_strdelimit (g_strdup (gtk_label_get_text (label)), "\n", ' ');

  gtk_accessible_update_property (GTK_ACCESSIBLE (head), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  g_strchomp (text), -1);
}

void
column_heads_arrange (GtkColumnView *table, guint n)
{
  GtkWidget *heads = gtk_widget_get_first_child (GTK_WIDGET (table));
  guint from_last = 0;

  for (GtkWidget *head = gtk_widget_get_last_child (heads); head != NULL;
       head = gtk_widget_get_prev_sibling (head), from_last++) {
    GtkWidget *label = find_label (head);

    if (label == NULL)
      return;
    name (head, GTK_LABEL (label));
    if (from_last < n)
      align (GTK_LABEL (label));
  }
}
