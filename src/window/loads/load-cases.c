/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/loads/load-cases.h"
#include "window/entry/committed-entry.h"
#include "window/entry/refusal-words.h"
#include "window/entry/typed-number.h"

#include "model/car/car-json.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

#define NAME_CHARS 22
#define NUMBER_CHARS 7
#define MOST_HEIGHT 420

typedef struct {
  const char *member, *name, *meaning;
  gsize offset; /* in CarLoadCase */
} Column;

static const Column columns[] = {
  { "lateral_g", N_ ("Lateral, g"), N_ ("Cornering; with this wheel outside positive"),
    offsetof (CarLoadCase, lateral_g) },
  { "braking_g", N_ ("Braking, g"), N_ ("Slowing is positive"),
    offsetof (CarLoadCase, braking_g) },
  { "vertical", N_ ("Vertical"),
    N_ ("Times the standing load, before any transfer: 1 on a smooth road"),
    offsetof (CarLoadCase, vertical) },
  { "rearward", N_ ("Rearward"),
    N_ ("Times the standing load, at the contact, as by the edge of a pothole"),
    offsetof (CarLoadCase, rearward) },
};
#define N_COLUMNS G_N_ELEMENTS (columns)

typedef struct Editor Editor;

/* What an entry is about; @column −1: the name. */
typedef struct {
  Editor *editor;
  guint row;
  int column;
  GtkWidget *entry;
} Cell;

struct Editor {
  SwLoader *loader;
  GtkWidget *grid, *refusal, *add, *usual;
  guint n_rows;
  Cell cells[LOAD_CASES_MOST][N_COLUMNS + 1];
  GtkWidget *remove[LOAD_CASES_MOST];
};

typedef struct {
  CarLoadCase at[LOAD_CASES_MOST];
  guint n;
} Cases;

static SwDocument *
document_of (const Editor *self)
{
  return sw_bench_get_document (sw_loader_get_bench (self->loader));
}

static Cases
cases_now (const Editor *self)
{
  Cases cases;

  cases.n = (guint) car_load_cases (sw_document_get_car (document_of (self)), cases.at);
  return cases;
}

static double *
number_at (CarLoadCase *load_case, int column)
{
  return (double *) (gpointer) ((char *) load_case + columns[column].offset);
}

/* For the last part of "loads.cases[2].name". */
static char *
name_path (const char *path, gpointer data)
{
  const char *last = strrchr (path, '.');

  (void) data;
  if (last == NULL)
    return NULL;
  if (g_str_equal (last + 1, "name"))
    return g_strdup (_ ("Name"));
  for (gsize i = 0; i < N_COLUMNS; i++)
    if (g_str_equal (last + 1, columns[i].member))
      return g_strdup (_ (columns[i].name));
  return NULL;
}

/* NULL when it is done; free with g_free (). */
static char *
store (Editor *self, const Cases *cases, const char *label)
{
  g_autoptr (GError) error = NULL;

  if (!car_check_load_cases (cases->at, cases->n, &error))
    return refusal_in_words (error->message, name_path, NULL);
  sw_document_set_load_cases (document_of (self), cases->at, cases->n, label);
  return NULL;
}

static char *
take_name (Cell *cell, const char *text)
{
  Cases cases = cases_now (cell->editor);
  g_autofree char *typed = g_strstrip (g_strdup (text));
  const char *name = car_load_case_name (typed);

  if (strlen (name) >= LOAD_CASE_NAME)
    return g_strdup_printf (_ ("A name has room for %d bytes."), LOAD_CASE_NAME - 1);
  memset (cases.at[cell->row].name, 0, LOAD_CASE_NAME);
  g_strlcpy (cases.at[cell->row].name, name, LOAD_CASE_NAME);
  return store (cell->editor, &cases, _ ("Rename load case"));
}

static char *
take (const char *text, gpointer data)
{
  Cell *cell = data;
  Cases cases = cases_now (cell->editor);
  double value;

  if (cell->column < 0)
    return take_name (cell, text);
  switch (typed_number_read (text, &value)) {
  case TYPED_NUMBER:
    *number_at (&cases.at[cell->row], cell->column) = value;
    return store (cell->editor, &cases, _ ("Change load case"));
  case TYPED_NOTHING:
    return g_strdup_printf (_ ("“%s” needs a number."), _ (columns[cell->column].name));
  default:
    return g_strdup_printf (_ ("“%s” holds “%s”, which is no number."),
                            _ (columns[cell->column].name), text);
  }
}

static void
show_refusal (Editor *self)
{
  const char *refusal = NULL;

  for (guint i = 0; i < self->n_rows && refusal == NULL; i++)
    for (guint j = 0; j <= N_COLUMNS && refusal == NULL; j++)
      refusal =
          sw_committed_entry_get_refusal (SW_COMMITTED_ENTRY (self->cells[i][j].entry));
  gtk_label_set_label (GTK_LABEL (self->refusal), refusal != NULL ? refusal : "");
}

static void
show_row (Editor *self, guint row, CarLoadCase *load_case)
{
  sw_committed_entry_show (SW_COMMITTED_ENTRY (self->cells[row][0].entry),
                           car_load_case_title (load_case->name));
  for (guint i = 0; i < N_COLUMNS; i++) {
    g_autofree char *text = typed_number_text (*number_at (load_case, (int) i));

    sw_committed_entry_show (SW_COMMITTED_ENTRY (self->cells[row][i + 1].entry), text);
  }
}

/* Other cases take the place of those that were there: what was typed is given up. */
static void
show_n_rows (Editor *self, guint n)
{
  if (n == self->n_rows)
    return;
  for (guint i = 0; i < LOAD_CASES_MOST; i++) {
    for (guint j = 0; j <= N_COLUMNS; j++) {
      sw_committed_entry_restore (SW_COMMITTED_ENTRY (self->cells[i][j].entry));
      gtk_widget_set_visible (self->cells[i][j].entry, i < n);
    }
    gtk_widget_set_visible (self->remove[i], i < n);
  }
  self->n_rows = n;
}

static void
show (Editor *self)
{
  Cases cases = cases_now (self);

  show_n_rows (self, cases.n);
  for (guint i = 0; i < cases.n; i++) {
    show_row (self, i, &cases.at[i]);
    gtk_widget_set_sensitive (self->remove[i], cases.n > 1);
  }
  gtk_widget_set_sensitive (self->add, cases.n < LOAD_CASES_MOST);
  gtk_widget_set_sensitive (self->usual,
                            sw_document_get_car (document_of (self))->n_load_cases > 0);
  show_refusal (self);
}

static gboolean
has_name (const Cases *cases, const char *name)
{
  for (guint i = 0; i < cases->n; i++)
    if (g_str_equal (cases->at[i].name, name))
      return TRUE;
  return FALSE;
}

/* A new one begins as standing, under a name that none has. */
static void
on_add_clicked_cb (Editor *self)
{
  Cases cases = cases_now (self);
  CarLoadCase new_case = { .vertical = 1.0 };
  guint number = cases.n;

  if (cases.n >= LOAD_CASES_MOST)
    return;
  do
    g_snprintf (new_case.name, LOAD_CASE_NAME, _ ("Case %u"), ++number);
  while (has_name (&cases, new_case.name));
  cases.at[cases.n++] = new_case;
  g_free (store (self, &cases, _ ("Add load case")));
  sw_loader_set_case (self->loader, cases.n - 1);
  gtk_widget_grab_focus (self->cells[cases.n - 1][0].entry);
}

static void
on_usual_clicked_cb (Editor *self)
{
  sw_document_set_load_cases (document_of (self), NULL, 0, _ ("Usual load cases"));
}

static void
on_remove_clicked_cb (GtkWidget *button, Editor *self)
{
  Cases cases = cases_now (self);
  guint row = 0;

  while (row < cases.n && self->remove[row] != button)
    row++;
  if (cases.n < 2 || row >= cases.n)
    return;
  for (guint i = row + 1; i < cases.n; i++)
    cases.at[i - 1] = cases.at[i];
  cases.n--;
  g_free (store (self, &cases, _ ("Remove load case")));
}

/* Escape with nothing to put back. */
static void
on_cancelled_cb (GtkWidget *entry)
{
  GtkWidget *popover = gtk_widget_get_ancestor (entry, GTK_TYPE_POPOVER);

  gtk_popover_popdown (GTK_POPOVER (popover));
}

static void
add_cell (Editor *self, guint row, int column)
{
  Cell *cell = &self->cells[row][column + 1];
  const char *head = column < 0 ? _ ("Name") : _ (columns[column].name);
  /* Translators: which number of which case: “Case 3, lateral”. */
  g_autofree char *label = g_strdup_printf (_ ("Case %u, %s"), row + 1, head);
  const int chars = column < 0 ? NAME_CHARS : NUMBER_CHARS;

  *cell = (Cell){ self, row, column, sw_committed_entry_new (label, take, NULL, cell) };
  gtk_editable_set_width_chars (GTK_EDITABLE (cell->entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (cell->entry), chars);
  gtk_entry_set_alignment (GTK_ENTRY (cell->entry), column < 0 ? 0.0f : 1.0f);
  if (column >= 0)
    sw_committed_entry_set_meaning (SW_COMMITTED_ENTRY (cell->entry),
                                    _ (columns[column].meaning));
  g_signal_connect_swapped (cell->entry, "checked", G_CALLBACK (show_refusal), self);
  g_signal_connect (cell->entry, "cancelled", G_CALLBACK (on_cancelled_cb), NULL);
  gtk_grid_attach (GTK_GRID (self->grid), cell->entry, column + 1, (int) row + 1, 1, 1);
}

static void
add_row (Editor *self, guint row)
{
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *label = g_strdup_printf (_ ("Remove case %u"), row + 1);

  for (int i = -1; i < (int) N_COLUMNS; i++)
    add_cell (self, row, i);
  gtk_widget_add_css_class (remove, "flat");
  gtk_widget_set_tooltip_text (remove, _ ("Remove this case"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove_clicked_cb), self);
  gtk_grid_attach (GTK_GRID (self->grid), remove, N_COLUMNS + 1, (int) row + 1, 1, 1);
  self->remove[row] = remove;
}

static void
add_heads (Editor *self)
{
  for (int i = -1; i < (int) N_COLUMNS; i++) {
    GtkWidget *head = gtk_label_new (i < 0 ? _ ("Name") : _ (columns[i].name));

    gtk_label_set_xalign (GTK_LABEL (head), i < 0 ? 0.0f : 1.0f);
    gtk_widget_add_css_class (head, "dim-label");
    if (i >= 0)
      gtk_widget_set_tooltip_text (head, _ (columns[i].meaning));
    gtk_grid_attach (GTK_GRID (self->grid), head, i + 1, 0, 1, 1);
  }
}

static GtkWidget *
new_foot (Editor *self)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->add = gtk_button_new_with_label (_ ("Add case"));
  self->usual = gtk_button_new_with_label (_ ("Usual cases"));
  self->refusal = gtk_label_new ("");
  gtk_widget_set_tooltip_text (self->usual,
                               _ ("Invented, plausible on a road; yours are replaced"));
  gtk_widget_add_css_class (self->refusal, "refusal");
  gtk_label_set_wrap (GTK_LABEL (self->refusal), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->refusal), 44);
  gtk_label_set_xalign (GTK_LABEL (self->refusal), 0.0f);
  gtk_widget_set_hexpand (self->refusal, TRUE);
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (on_add_clicked_cb), self);
  g_signal_connect_swapped (self->usual, "clicked", G_CALLBACK (on_usual_clicked_cb),
                            self);
  gtk_box_append (GTK_BOX (foot), self->refusal);
  gtk_box_append (GTK_BOX (foot), self->usual);
  gtk_box_append (GTK_BOX (foot), self->add);
  return foot;
}

static GtkWidget *
new_page (Editor *self)
{
  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkScrolledWindow *window = GTK_SCROLLED_WINDOW (scrolled);

  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 4);
  add_heads (self);
  for (guint i = 0; i < LOAD_CASES_MOST; i++)
    add_row (self, i);
  gtk_scrolled_window_set_policy (window, GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (window, TRUE);
  gtk_scrolled_window_set_max_content_height (window, MOST_HEIGHT);
  gtk_scrolled_window_set_child (window, self->grid);
  gtk_widget_add_css_class (page, "load-cases");
  gtk_box_append (GTK_BOX (page), scrolled);
  gtk_box_append (GTK_BOX (page), new_foot (self));
  return page;
}

static void
on_changed_cb (GtkWidget *popover)
{
  show (g_object_get_data (G_OBJECT (popover), "load-cases"));
}

/* Made when first opened. */
static void
create_popover (GtkMenuButton *button, gpointer data)
{
  Editor *self;
  GtkWidget *popover;

  if (gtk_menu_button_get_popover (button) != NULL)
    return;
  self = g_new0 (Editor, 1);
  self->loader = data;
  self->n_rows = LOAD_CASES_MOST;
  popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (popover), new_page (self));
  g_object_set_data_full (G_OBJECT (popover), "load-cases", self, g_free);
  g_signal_connect_object (self->loader, "changed", G_CALLBACK (on_changed_cb), popover,
                           G_CONNECT_SWAPPED);
  show (self);
  gtk_menu_button_set_popover (button, popover);
}

GtkWidget *
load_cases_button_new (SwLoader *loader)
{
  GtkWidget *button = gtk_menu_button_new ();

  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Cases…"));
  gtk_widget_set_tooltip_text (button, _ ("Change the load cases of this car"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Cases…"), -1);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), create_popover, loader,
                                         NULL);
  return button;
}
