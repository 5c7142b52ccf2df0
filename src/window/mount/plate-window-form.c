/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/plate-window-form.h"
#include "window/entry/refusal-words.h"
#include "window/entry/typed-entry.h"
#include "window/entry/typed-number.h"
#include "window/mount/plate-window-holes.h"
#include "window/mount/plate-window-rows.h"

#include "model/plate/plate-json.h"

#include <glib/gi18n-lib.h>

struct _SwPlateForm {
  GtkWidget parent_instance;

  GtkWidget *box;
  Plate *plate;
  GtkWidget *name, *notes, *meaning, *place_head, *holes_head;
  GtkDropDown *kind;
  SwHoleList *holes;
  GtkSpinButton *spins[N_PLATE_ROWS], *most_spins[N_PLATE_ROWS];
  GtkWidget *parts[N_PLATE_ROWS][5]; /* what comes and goes with a row */
  GtkWidget *turns, *turns_parts[4];
  GtkCheckButton *is_indexed, *is_free, *can_swap;
  GtkSpinButton *swap_turn;
  gboolean is_filling;
  gboolean is_touched; /* what is still empty in a new form is no fault yet */
};

G_DEFINE_FINAL_TYPE (SwPlateForm, sw_plate_form, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static double *
member (Plate *plate, gsize offset)
{
  return (double *) (gpointer) ((char *) plate + offset);
}

static void
show_row (SwPlateForm *self, gsize row, gboolean is_there)
{
  for (gsize i = 0; i < G_N_ELEMENTS (self->parts[row]); i++)
    if (self->parts[row][i] != NULL)
      gtk_widget_set_visible (self->parts[row][i], is_there);
}

static const char *
place_heading (PlateKind kind)
{
  switch (kind) {
  case PLATE_FIXED:
    return _ ("Where it puts the bearing");
  case PLATE_ECCENTRIC:
    return _ ("The circle, and where its centre lies");
  default:
    return _ ("The scale, and where its zero lies");
  }
}

static void
show_kind (SwPlateForm *self)
{
  const PlateKind kind = gtk_drop_down_get_selected (self->kind);
  const gboolean is_eccentric = kind == PLATE_ECCENTRIC, has_holes = kind == PLATE_HOLES;

  gtk_label_set_label (GTK_LABEL (self->meaning), plate_kind_meaning (kind));
  for (gsize i = 0; i < N_PLATE_ROWS; i++)
    show_row (self, i, plate_row_is_of (&plate_rows[i], kind));
  gtk_label_set_label (GTK_LABEL (self->place_head),
                       has_holes ? _ ("Bolt positions") : place_heading (kind));
  gtk_widget_set_visible (GTK_WIDGET (self->holes), has_holes);
  for (gsize i = 0; i < G_N_ELEMENTS (self->turns_parts); i++)
    gtk_widget_set_visible (self->turns_parts[i], is_eccentric);
}

static void
show_choices (SwPlateForm *self)
{
  const gboolean indexed = gtk_check_button_get_active (self->is_indexed);

  gtk_widget_set_sensitive (self->turns, indexed);
  gtk_widget_set_sensitive (GTK_WIDGET (self->spins[PLATE_ROW_TURN]), !indexed);
  gtk_widget_set_sensitive (GTK_WIDGET (self->most_spins[PLATE_ROW_TURN]), !indexed);
  gtk_widget_set_sensitive (GTK_WIDGET (self->swap_turn),
                            gtk_check_button_get_active (self->can_swap));
}

static void
on_changed_cb (SwPlateForm *self)
{
  if (self->is_filling)
    return;
  self->is_touched = TRUE;
  show_kind (self);
  show_choices (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static GtkWidget *
new_label (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkGrid *
new_grid (SwPlateForm *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_box_append (GTK_BOX (self->box), grid);
  return GTK_GRID (grid);
}

static GtkSpinButton *
new_spin (SwPlateForm *self, const PlateRow *row, const char *label)
{
  GtkSpinButton *spin = typed_spin_new (row->least, row->most, row->step, label);

  typed_spin_set_kind (spin, unit_kind_of (row->unit));
  gtk_widget_set_tooltip_text (GTK_WIDGET (spin), _ (row->meaning));
  g_signal_connect_swapped (spin, "changed", G_CALLBACK (on_changed_cb), self);
  return spin;
}

/* Label, least, "to", most or the one number, unit. */
static void
add_row (SwPlateForm *self, GtkGrid *grid, gsize i)
{
  const PlateRow *row = &plate_rows[i];
  GtkWidget **parts = self->parts[i];
  const gboolean is_pair = row->most_offset != PLATE_ROW_SINGLE;
  g_autofree char *most_name = g_strdup_printf (_ ("%s, up to"), _ (row->name));

  parts[0] = new_label (_ (row->name), NULL);
  gtk_widget_set_hexpand (parts[0], TRUE);
  gtk_widget_set_tooltip_text (parts[0], _ (row->meaning));
  self->spins[i] = new_spin (self, row, _ (row->name));
  parts[is_pair ? 1 : 3] = GTK_WIDGET (self->spins[i]);
  if (is_pair) {
    parts[2] = new_label (C_ ("range", "to"), "dim-label");
    self->most_spins[i] = new_spin (self, row, most_name);
    parts[3] = GTK_WIDGET (self->most_spins[i]);
  }
  parts[4] = new_label (row->unit, "dim-label");
  for (int column = 0; column < 5; column++)
    if (parts[column] != NULL)
      gtk_grid_attach (grid, parts[column], column, (int) i, 1, 1);
}

static GtkWidget *
new_entry (SwPlateForm *self, const char *name, const char *text)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_editable_set_text (GTK_EDITABLE (entry), text != NULL ? text : "");
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (on_changed_cb), self);
  return entry;
}

static void
attach (GtkGrid *grid, int row, const char *name, GtkWidget *widget)
{
  GtkWidget *label = new_label (name, NULL);

  gtk_grid_attach (grid, label, 0, row, 1, 1);
  gtk_grid_attach (grid, widget, 1, row, 1, 1);
}

static GtkWidget *
new_kind (SwPlateForm *self)
{
  const char *names[N_PLATE_KINDS + 1] = { NULL };
  GtkWidget *kind;

  for (PlateKind i = 0; i < N_PLATE_KINDS; i++)
    names[i] = plate_kind_name (i);
  kind = gtk_drop_down_new_from_strings (names);
  self->kind = GTK_DROP_DOWN (kind);
  gtk_drop_down_set_selected (self->kind, self->plate->kind);
  gtk_accessible_update_property (GTK_ACCESSIBLE (kind), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Kind"), -1);
  /* its button is what has the focus */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (kind)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Kind"), -1);
  g_signal_connect_swapped (kind, "notify::selected", G_CALLBACK (on_changed_cb), self);
  return kind;
}

static void
add_identity (SwPlateForm *self)
{
  GtkGrid *grid = new_grid (self);

  self->name = new_entry (self, _ ("Name"), self->plate->name);
  self->notes = new_entry (self, _ ("Notes"), self->plate->notes);
  attach (grid, 0, _ ("Name"), self->name);
  attach (grid, 1, _ ("Notes"), self->notes);
  attach (grid, 2, _ ("Kind"), new_kind (self));
  self->meaning = new_label ("", "dim-label");
  gtk_label_set_wrap (GTK_LABEL (self->meaning), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->meaning), 34);
  gtk_grid_attach (grid, self->meaning, 1, 3, 1, 1);
}

static GtkCheckButton *
new_check (SwPlateForm *self, const char *label, gboolean is_active)
{
  GtkWidget *check = gtk_check_button_new_with_label (label);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), is_active);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (on_changed_cb), self);
  return GTK_CHECK_BUTTON (check);
}

/* Anywhere in the range of the row "Turn", or at the turns of a list below it. */
static void
add_turns (SwPlateForm *self, GtkGrid *grid)
{
  const GArray *turns = self->plate->turns_deg;
  g_autofree char *text =
      typed_numbers_text ((const double *) (gconstpointer) turns->data, turns->len);

  self->is_free = new_check (self, _ ("Any turn"), turns->len == 0);
  self->is_indexed = new_check (self, _ ("Only at"), turns->len > 0);
  gtk_check_button_set_group (self->is_indexed, self->is_free);
  self->turns = new_entry (self, _ ("Indexed turns in degrees"), text);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->turns), "0 45 90");
  gtk_editable_set_width_chars (GTK_EDITABLE (self->turns), 8);
  gtk_widget_set_tooltip_text (self->turns,
                               _ ("The turns at which it locks, in degrees"));
  self->turns_parts[0] = GTK_WIDGET (self->is_free);
  self->turns_parts[1] = GTK_WIDGET (self->is_indexed);
  self->turns_parts[2] = self->turns;
  self->turns_parts[3] = new_label ("°", "dim-label");

  gtk_grid_remove (grid, self->parts[PLATE_ROW_TURN][0]);
  self->parts[PLATE_ROW_TURN][0] = NULL;
  gtk_grid_attach (grid, self->turns_parts[0], 0, PLATE_ROW_TURN, 1, 1);
  gtk_grid_attach (grid, self->turns_parts[1], 0, PLATE_ROW_TURN + 1, 1, 1);
  gtk_grid_attach (grid, self->turns_parts[2], 1, PLATE_ROW_TURN + 1, 3, 1);
  gtk_grid_attach (grid, self->turns_parts[3], 4, PLATE_ROW_TURN + 1, 1, 1);
}

static void
add_swap (SwPlateForm *self)
{
  static const PlateRow swap = {
    .meaning =
        N_ ("How far the other side's plate is turned, in plan. −90° makes its two "
            "directions change places, 0° only inboard and outboard"),
    .least = -180.0,
    .most = 180.0,
    .step = 5.0,
    .unit = "°",
  };
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->can_swap =
      new_check (self, _ ("Sides may be swapped, turned by"), self->plate->can_swap);
  self->swap_turn = new_spin (self, &swap, _ ("Swapped plates are turned by"));
  gtk_widget_set_hexpand (GTK_WIDGET (self->can_swap), TRUE);
  gtk_widget_set_tooltip_text (
      GTK_WIDGET (self->can_swap),
      _ ("The left plate may be fitted on the right and the right one on the left"));
  gtk_spin_button_set_value (self->swap_turn,
                             self->plate->can_swap ? self->plate->swap_turn_deg : -90.0);
  gtk_box_append (GTK_BOX (line), GTK_WIDGET (self->can_swap));
  gtk_box_append (GTK_BOX (line), GTK_WIDGET (self->swap_turn));
  gtk_box_append (GTK_BOX (line), new_label ("°", "dim-label"));
  gtk_box_append (GTK_BOX (self->box), line);
}

static void
fill_spins (SwPlateForm *self)
{
  for (gsize i = 0; i < N_PLATE_ROWS; i++) {
    gtk_spin_button_set_value (self->spins[i],
                               *member (self->plate, plate_rows[i].offset));
    if (self->most_spins[i] != NULL)
      gtk_spin_button_set_value (self->most_spins[i],
                                 *member (self->plate, plate_rows[i].most_offset));
  }
}

static void
build (SwPlateForm *self)
{
  add_identity (self);
  self->place_head = new_label ("", "heading");
  gtk_box_append (GTK_BOX (self->box), self->place_head);
  GtkGrid *reach = new_grid (self);
  for (gsize i = 0; i < PLATE_ROW_ITSELF; i++)
    add_row (self, reach, i);
  add_turns (self, reach);
  self->holes = SW_HOLE_LIST (sw_hole_list_new (self->plate));
  g_signal_connect_swapped (self->holes, "changed", G_CALLBACK (on_changed_cb), self);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->holes));

  gtk_box_append (GTK_BOX (self->box), new_label (_ ("The plate itself"), "heading"));
  GtkGrid *itself = new_grid (self);
  for (gsize i = PLATE_ROW_ITSELF; i < N_PLATE_ROWS; i++)
    add_row (self, itself, i);
  add_swap (self);
  fill_spins (self);
}

static void
sw_plate_form_dispose (GObject *object)
{
  SwPlateForm *self = SW_PLATE_FORM (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->plate, plate_free);
  G_OBJECT_CLASS (sw_plate_form_parent_class)->dispose (object);
}

static void
sw_plate_form_class_init (SwPlateFormClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_plate_form_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class),
                                            GTK_TYPE_BIN_LAYOUT);
  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_PLATE_FORM, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_plate_form_init (SwPlateForm *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (self->box, "panel");
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
sw_plate_form_new (const Plate *plate)
{
  SwPlateForm *self = g_object_new (SW_TYPE_PLATE_FORM, NULL);

  self->plate = plate_copy (plate);
  self->is_filling = TRUE;
  build (self);
  show_kind (self);
  show_choices (self);
  self->is_filling = FALSE;
  return GTK_WIDGET (self);
}

static void
set_text (char **text, GtkWidget *entry)
{
  g_free (*text);
  *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
}

static int
compare_turns (gconstpointer a, gconstpointer b)
{
  const double left = *(const double *) a, right = *(const double *) b;

  return left < right ? -1 : left > right;
}

static GArray *
typed_turns (SwPlateForm *self)
{
  return typed_numbers_read (gtk_editable_get_text (GTK_EDITABLE (self->turns)));
}

static void
read_turns (SwPlateForm *self)
{
  g_autoptr (GArray) typed = typed_turns (self);

  g_array_set_size (self->plate->turns_deg, 0);
  if (!gtk_check_button_get_active (self->is_indexed) || typed == NULL)
    return;
  g_array_sort (typed, compare_turns);
  g_array_append_vals (self->plate->turns_deg, typed->data, typed->len);
}

const Plate *
sw_plate_form_read (SwPlateForm *self)
{
  set_text (&self->plate->name, self->name);
  set_text (&self->plate->notes, self->notes);
  self->plate->kind = gtk_drop_down_get_selected (self->kind);
  for (gsize i = 0; i < N_PLATE_ROWS; i++) {
    *member (self->plate, plate_rows[i].offset) = typed_spin_get (self->spins[i]);
    if (self->most_spins[i] != NULL)
      *member (self->plate, plate_rows[i].most_offset) =
          typed_spin_get (self->most_spins[i]);
  }
  read_turns (self);
  sw_hole_list_read (self->holes, self->plate);
  self->plate->can_swap = gtk_check_button_get_active (self->can_swap);
  self->plate->swap_turn_deg = typed_spin_get (self->swap_turn);
  return self->plate;
}

/* "along_mm[1]" is the row "along_mm"; the second of a pair has an entry of its own. */
static char *
mark_row (SwPlateForm *self, const char *path)
{
  for (gsize i = 0; i < N_PLATE_ROWS; i++) {
    if (!g_str_has_prefix (path, plate_rows[i].path))
      continue;
    entry_mark (GTK_WIDGET (self->spins[i]), !g_str_has_suffix (path, "[1]"));
    if (self->most_spins[i] == NULL || !g_str_has_suffix (path, "[1]"))
      return g_strdup (_ (plate_rows[i].name));
    entry_mark (GTK_WIDGET (self->most_spins[i]), TRUE);
    return g_strdup_printf (_ ("%s, up to"), _ (plate_rows[i].name));
  }
  return NULL;
}

static char *
mark_path (const char *path, gpointer data)
{
  SwPlateForm *self = data;

  if (g_str_equal (path, "name")) {
    entry_mark (self->name, TRUE);
    return g_strdup (_ ("Name"));
  }
  if (g_str_has_prefix (path, "turns_deg")) {
    entry_mark (self->turns, TRUE);
    return g_strdup (_ ("Indexed turns"));
  }
  if (g_str_has_prefix (path, "holes["))
    return sw_hole_list_mark (self->holes, path);
  return mark_row (self, path);
}

static void
take_marks_away (SwPlateForm *self)
{
  entry_mark (self->name, FALSE);
  entry_mark (self->turns, FALSE);
  for (gsize i = 0; i < N_PLATE_ROWS; i++) {
    entry_mark (GTK_WIDGET (self->spins[i]), FALSE);
    if (self->most_spins[i] != NULL)
      entry_mark (GTK_WIDGET (self->most_spins[i]), FALSE);
  }
  g_free (sw_hole_list_mark (self->holes, NULL));
}

/* A range the model sees by itself; what is no number it never sees. */
static char *
check_spins (SwPlateForm *self)
{
  char *sentence = NULL;

  for (gsize i = 0; i < N_PLATE_ROWS && sentence == NULL; i++) {
    if (!plate_row_is_of (&plate_rows[i], self->plate->kind))
      continue;
    sentence = typed_spin_refusal (self->spins[i], _ (plate_rows[i].name));
    if (sentence == NULL && self->most_spins[i] != NULL)
      sentence = typed_spin_refusal (self->most_spins[i], _ (plate_rows[i].name));
  }
  return sentence != NULL || self->plate->kind != PLATE_HOLES
             ? sentence
             : sw_hole_list_check (self->holes);
}

/* A list that the model never sees, as it is no list of numbers or holds none. */
static char *
check_turns (SwPlateForm *self)
{
  g_autoptr (GArray) typed = typed_turns (self);

  if (self->plate->kind != PLATE_ECCENTRIC ||
      !gtk_check_button_get_active (self->is_indexed) ||
      (typed != NULL && typed->len > 0))
    return NULL;
  entry_mark (self->turns, TRUE);
  return g_strdup (typed == NULL
                       ? _ ("The indexed turns must be numbers, as in 0 45 90.")
                       : _ ("Enter the turns at which it locks, or allow any turn."));
}

char *
sw_plate_form_check (SwPlateForm *self)
{
  g_autoptr (GError) error = NULL;
  const Plate *plate = sw_plate_form_read (self);

  take_marks_away (self);
  if (plate->name[0] == '\0') {
    entry_mark (self->name, self->is_touched);
    return g_strdup (_ ("Give the plate a name."));
  }

  char *sentence = check_spins (self);
  if (sentence == NULL)
    sentence = check_turns (self);
  if (sentence != NULL || plate_check (plate, &error))
    return sentence;
  return refusal_in_words (error->message, mark_path, self);
}

void
sw_plate_form_mark_name (SwPlateForm *self)
{
  entry_mark (self->name, TRUE);
}
