/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/loads/loads-table.h"
#include "window/entry/left-to-right.h"
#include "window/layout/whole-text.h"

#include "model/load/joint-table.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define HEAD_CHARS 9
#define REFERENCE_CHARS 14

enum {
  COLUMN_NAME,
  COLUMN_UNIT,
  COLUMN_REFERENCE,
  COLUMN_SIZE,
  COLUMN_FORWARD,
  COLUMN_OUTBOARD,
  COLUMN_UP,
  N_COLUMNS
};

struct _SwLoadsTable {
  GtkWidget parent_instance;

  SwLoader *loader;
  GtkWidget *grid;
  GtkWidget *heads[N_COLUMNS];
  GtkWidget **cells; /* n_rows · N_COLUMNS of them */
  guint n_rows;
};

G_DEFINE_FINAL_TYPE (SwLoadsTable, sw_loads_table, GTK_TYPE_WIDGET)

/* Joints first, the rod behind them. */
static JointRow
row_of (const LoadStudy *study, guint setup, guint row)
{
  return row < joint_rows_count ()
             ? joint_row (&study->setups[setup], row)
             : rod_row (&study->bent[setup], row - joint_rows_count ());
}

/* The baseline's, unless that is in hand. */
static gboolean
has_reference (const LoadStudy *study)
{
  return study->springs->study->in_hand != study->springs->study->baseline;
}

static double
value_at (const JointRow *row, int column)
{
  switch (column) {
  case COLUMN_FORWARD:
    return row->parts.x;
  case COLUMN_OUTBOARD:
    return row->parts.y;
  case COLUMN_UP:
    return row->parts.z;
  default:
    return row->value;
  }
}

static gboolean
is_part (int column)
{
  return column >= COLUMN_FORWARD;
}

static void
set_text (GtkWidget *label, const char *text)
{
  if (strcmp (gtk_label_get_text (GTK_LABEL (label)), text) != 0)
    gtk_label_set_label (GTK_LABEL (label), text);
}

/* As shown; what is no unit of ours stays. */
static char *
figure_text (const JointRow *row, double value)
{
  char text[64];

  unit_format (unit_kind_of (row->unit), value, row->decimals, FALSE, text, sizeof text);
  return g_strdup (text);
}

static const char *
unit_of (const JointRow *row)
{
  const UnitKind kind = unit_kind_of (row->unit);

  return kind == UNIT_NONE ? row->unit : unit_symbol (kind);
}

static void
show_cell (GtkWidget *label, const JointRow *row, int column)
{
  const double value = value_at (row, column);
  g_autofree char *text = is_part (column) && !row->is_vector ? g_strdup ("")
                          : isfinite (value)                  ? figure_text (row, value)
                                                              : g_strdup ("–");

  set_text (label, text);
}

/* What is heard of a row in one go. */
static void
describe_row (GtkWidget *name, const JointRow *row)
{
  g_autofree char *size = figure_text (row, row->value);
  g_autofree char *text =
      g_strdup_printf ("%s %s. %s", isfinite (row->value) ? size : "–", unit_of (row),
                       row->meaning);

  gtk_accessible_update_property (GTK_ACCESSIBLE (name),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
show_heads (SwLoadsTable *self, const LoadStudy *study)
{
  const Study *corners = study->springs->study;

  set_text (self->heads[COLUMN_REFERENCE], corners->setups[corners->baseline].name);
  set_text (self->heads[COLUMN_SIZE], has_reference (study)
                                          ? _ ("This setup")
                                          : corners->setups[corners->in_hand].name);
  gtk_widget_set_visible (self->heads[COLUMN_REFERENCE], has_reference (study));
}

/* Of the rows of what the strut carries, those that carry something in either. */
static void
show_cells (GtkWidget **cells,
            const JointRow *was,
            const JointRow *row,
            gboolean has_reference)
{
  const gboolean is_idle =
      joint_row_is_idle (row) && (!has_reference || joint_row_is_idle (was));

  for (int column = 0; column < N_COLUMNS; column++)
    gtk_widget_set_visible (cells[column],
                            !is_idle && (column != COLUMN_REFERENCE || has_reference));
}

void
sw_loads_table_show (SwLoadsTable *self)
{
  const LoadStudy *study = sw_loader_get_study (self->loader);
  const Study *corners = study->springs->study;

  show_heads (self, study);
  for (guint i = 0; i < self->n_rows; i++) {
    GtkWidget **cells = &self->cells[i * N_COLUMNS];
    const JointRow was = row_of (study, corners->baseline, i);
    const JointRow row = row_of (study, corners->in_hand, i);

    show_cells (cells, &was, &row, has_reference (study));
    show_cell (cells[COLUMN_REFERENCE], &was, COLUMN_REFERENCE);
    for (int column = COLUMN_SIZE; column < N_COLUMNS; column++)
      show_cell (cells[column], &row, column);
    set_text (cells[COLUMN_UNIT], unit_of (&row));
    describe_row (cells[COLUMN_NAME], &row);
  }
}

static void
append_number (GString *text, const JointRow *row, double stored)
{
  const double value = unit_shown (unit_kind_of (row->unit), stored);
  char figure[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_c (text, '\t');
  if (isfinite (value))
    g_string_append (text, g_ascii_formatd (figure, sizeof figure, "%.10g", value));
}

char *
sw_loads_table_get_text (SwLoadsTable *self)
{
  const LoadStudy *study = sw_loader_get_study (self->loader);
  const Study *corners = study->springs->study;
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%s\t%s\t%s\t%s\t%s\t%s\t%s\n",
                          car_load_case_title (study->load_case.name), _ ("unit"),
                          corners->setups[corners->baseline].name,
                          corners->setups[corners->in_hand].name, _ ("Forward"),
                          _ ("Outboard"), _ ("Up"));
  for (guint i = 0; i < self->n_rows; i++) {
    const JointRow was = row_of (study, corners->baseline, i);
    const JointRow row = row_of (study, corners->in_hand, i);

    g_string_append_printf (text, "%s\t%s", row.name, unit_of (&row));
    append_number (text, &was, was.value);
    append_number (text, &row, row.value);
    for (int column = COLUMN_FORWARD; column < N_COLUMNS; column++)
      append_number (text, &row, row.is_vector ? value_at (&row, column) : (double) NAN);
    g_string_append_c (text, '\n');
  }
  return g_string_free (text, FALSE);
}

static gboolean
on_copy_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  g_autofree char *text = sw_loads_table_get_text (SW_LOADS_TABLE (widget));

  (void) args;
  (void) data;
  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
  return TRUE;
}

static void
on_pressed_cb (GtkWidget *widget)
{
  gtk_widget_grab_focus (widget);
}

static void
sw_loads_table_dispose (GObject *object)
{
  SwLoadsTable *self = SW_LOADS_TABLE (object);

  g_clear_pointer (&self->grid, gtk_widget_unparent);
  g_clear_pointer (&self->cells, g_free);
  g_clear_object (&self->loader);
  G_OBJECT_CLASS (sw_loads_table_parent_class)->dispose (object);
}

static void
sw_loads_table_class_init (SwLoadsTableClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_loads_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "loads");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_TABLE);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, on_copy_cb,
                                NULL);
}

static GtkWidget *
new_label (SwLoadsTable *self, int column, int row, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column <= COLUMN_UNIT ? 0.0f : 1.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f); /* by the first line of the name */
  gtk_label_set_wrap (GTK_LABEL (label), column == COLUMN_NAME);
  if (column > COLUMN_UNIT) {
    gtk_widget_add_css_class (label, "numeric");
    keep_left_to_right (label);
  }
  if (column == COLUMN_UNIT || column == COLUMN_REFERENCE || row == 0)
    gtk_widget_add_css_class (label, "dim-label");
  gtk_grid_attach (GTK_GRID (self->grid), label, column, row, 1, 1);
  return label;
}

static void
add_heads (SwLoadsTable *self)
{
  const char *const heads[N_COLUMNS] = {
    "", "", "", "", _ ("Forward"), _ ("Outboard"), _ ("Up")
  };

  for (int column = 0; column < N_COLUMNS; column++) {
    self->heads[column] = new_label (self, column, 0, heads[column]);
    if (column != COLUMN_REFERENCE && column != COLUMN_SIZE)
      continue;
    gtk_label_set_ellipsize (GTK_LABEL (self->heads[column]), PANGO_ELLIPSIZE_END);
    gtk_label_set_width_chars (GTK_LABEL (self->heads[column]), HEAD_CHARS);
    gtk_label_set_max_width_chars (GTK_LABEL (self->heads[column]), REFERENCE_CHARS);
    whole_text_tooltip_add (GTK_LABEL (self->heads[column]));
  }
}

static void
add_rows (SwLoadsTable *self)
{
  const LoadStudy *study = sw_loader_get_study (self->loader);

  self->n_rows = joint_rows_count () + rod_rows_count ();
  self->cells = g_new0 (GtkWidget *, self->n_rows * N_COLUMNS);
  for (guint i = 0; i < self->n_rows; i++) {
    const JointRow row = row_of (study, study->springs->study->in_hand, i);
    GtkWidget **cells = &self->cells[i * N_COLUMNS];

    for (int column = 0; column < N_COLUMNS; column++)
      cells[column] = new_label (self, column, (int) i + 1,
                                 column == COLUMN_NAME   ? row.name
                                 : column == COLUMN_UNIT ? unit_of (&row)
                                                         : "");
    gtk_widget_set_tooltip_text (cells[COLUMN_NAME],
                                 row.meaning[0] != '\0' ? row.meaning : NULL);
    if (i == joint_rows_count ())
      for (int column = 0; column < N_COLUMNS; column++)
        gtk_widget_set_margin_top (cells[column], 8);
  }
}

static void
sw_loads_table_init (SwLoadsTable *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 10);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 2);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Forces at the joints"), -1);
}

GtkWidget *
sw_loads_table_new (SwLoader *loader)
{
  SwLoadsTable *self = g_object_new (SW_TYPE_LOADS_TABLE, NULL);

  self->loader = g_object_ref (loader);
  add_heads (self);
  add_rows (self);
  return GTK_WIDGET (self);
}
