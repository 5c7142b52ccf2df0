/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/refusal-line.h"
#include "window/layout/scroll-to.h"

#define LINE "refusal-line"
#define WIDTH_CHARS 24

static gboolean
takes_lines (GtkWidget *widget)
{
  return GTK_IS_GRID (widget) ||
         (GTK_IS_BOX (widget) && gtk_orientable_get_orientation (GTK_ORIENTABLE (
                                     widget)) == GTK_ORIENTATION_VERTICAL);
}

static int
count_columns (GtkGrid *grid)
{
  int n = 1;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (grid)); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    int column, width;

    gtk_grid_query_child (grid, child, &column, NULL, &width, NULL);
    n = MAX (n, column + width);
  }
  return n;
}

static void
insert (GtkWidget *place, GtkWidget *child, GtkWidget *line)
{
  int row;

  if (GTK_IS_BOX (place)) {
    gtk_box_insert_child_after (GTK_BOX (place), line, child);
    return;
  }
  gtk_grid_query_child (GTK_GRID (place), child, NULL, &row, NULL, NULL);
  gtk_grid_insert_row (GTK_GRID (place), row + 1);
  gtk_grid_attach (GTK_GRID (place), line, 0, row + 1, count_columns (GTK_GRID (place)),
                   1);
}

static GtkWidget *
add_line (GtkWidget *entry)
{
  GtkWidget *child = entry, *place = gtk_widget_get_parent (entry), *line;

  while (place != NULL && !takes_lines (place)) {
    child = place;
    place = gtk_widget_get_parent (place);
  }
  if (place == NULL)
    return NULL;
  line = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (line), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (line), WIDTH_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (line), WIDTH_CHARS);
  gtk_label_set_xalign (GTK_LABEL (line), 0.0f);
  gtk_widget_add_css_class (line, "refusal");
  insert (place, child, line);
  scroll_to (line, entry);
  /* a list, and one by itself */
  gtk_accessible_update_relation (GTK_ACCESSIBLE (entry),
                                  GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, line, NULL,
                                  GTK_ACCESSIBLE_RELATION_ERROR_MESSAGE, line, -1);
  return line;
}

static void
remove_line (GtkWidget *entry, GtkWidget *line)
{
  GtkWidget *place = gtk_widget_get_parent (line);
  int row;

  if (place == NULL) /* it went with the rest */
    return;
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (entry),
                                 GTK_ACCESSIBLE_RELATION_DESCRIBED_BY);
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (entry),
                                 GTK_ACCESSIBLE_RELATION_ERROR_MESSAGE);
  if (GTK_IS_BOX (place)) {
    gtk_box_remove (GTK_BOX (place), line);
    return;
  }
  gtk_grid_query_child (GTK_GRID (place), line, NULL, &row, NULL, NULL);
  gtk_grid_remove_row (GTK_GRID (place), row);
}

void
refusal_line_show (GtkWidget *entry, const char *sentence)
{
  GtkWidget *line = g_object_get_data (G_OBJECT (entry), LINE);

  if (sentence == NULL) {
    if (line != NULL)
      remove_line (entry, line);
    g_object_set_data (G_OBJECT (entry), LINE, NULL);
    return;
  }
  if (line == NULL) {
    line = add_line (entry);
    if (line == NULL)
      return;
    g_object_set_data_full (G_OBJECT (entry), LINE, g_object_ref (line), g_object_unref);
  }
  gtk_label_set_label (GTK_LABEL (line), sentence);
}
