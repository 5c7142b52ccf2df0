/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/plate-window-holes.h"
#include "window/entry/typed-entry.h"

#include "model/plate/plate-json.h"

#include <glib/gi18n-lib.h>

#define FIRST_WAY 10.0 /* mm from the first hole to the second */

typedef struct {
  GtkWidget *label, *remove;
  GtkSpinButton *inboard, *rearward;
  JsonObject *unknown;
} HoleRow;

struct _SwHoleList {
  GtkWidget parent_instance;

  GtkWidget *box, *grid, *add;
  GPtrArray *rows; /* of HoleRow */
};

G_DEFINE_FINAL_TYPE (SwHoleList, sw_hole_list, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
free_row (gpointer data)
{
  HoleRow *row = data;

  g_clear_pointer (&row->unknown, json_object_unref);
  g_free (row);
}

static HoleRow *
row_at (SwHoleList *self, guint index)
{
  return self->rows->pdata[index];
}

/* Names count from 1, as people do. */
static void
name_rows (SwHoleList *self)
{
  for (guint i = 0; i < self->rows->len; i++) {
    const HoleRow *row = row_at (self, i);
    GtkWidget *const parts[] = { row->label, GTK_WIDGET (row->inboard),
                                 GTK_WIDGET (row->rearward), row->remove };
    const char *const names[] = { _ ("Mark of hole %u"), _ ("Hole %u, inboard"),
                                  _ ("Hole %u, rearward"), _ ("Remove hole %u") };

    for (gsize part = 0; part < G_N_ELEMENTS (parts); part++) {
      g_autofree char *name = g_strdup_printf (names[part], i + 1);

      gtk_accessible_update_property (GTK_ACCESSIBLE (parts[part]),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
    }
    gtk_widget_set_sensitive (row->remove, self->rows->len > 1);
  }
  gtk_widget_set_sensitive (self->add, self->rows->len < PLATE_MOST_PLACES);
}

static void
tell (SwHoleList *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
attach_row (SwHoleList *self, guint index)
{
  const HoleRow *row = row_at (self, index);
  GtkWidget *const parts[] = { row->label, GTK_WIDGET (row->inboard),
                               GTK_WIDGET (row->rearward), row->remove };

  for (int column = 0; column < (int) G_N_ELEMENTS (parts); column++)
    gtk_grid_attach (GTK_GRID (self->grid), parts[column], column, (int) index + 1, 1, 1);
}

static void
on_remove_clicked_cb (SwHoleList *self, GtkWidget *button)
{
  guint index = 0;

  while (index < self->rows->len && row_at (self, index)->remove != button)
    index++;
  g_return_if_fail (index < self->rows->len);
  g_ptr_array_remove_index (self->rows, index);
  gtk_grid_remove_row (GTK_GRID (self->grid), (int) index + 1);
  name_rows (self);
  gtk_widget_grab_focus (index < self->rows->len ? row_at (self, index)->label
                                                 : self->add);
  tell (self);
}

static void
add_row (SwHoleList *self, const PlateHole *hole)
{
  HoleRow *row = g_new0 (HoleRow, 1);

  row->label = gtk_entry_new ();
  row->inboard = typed_spin_new (-PLATE_FURTHEST, PLATE_FURTHEST, 0.5, "");
  row->rearward = typed_spin_new (-PLATE_FURTHEST, PLATE_FURTHEST, 0.5, "");
  typed_spin_set_kind (row->inboard, UNIT_LENGTH);
  typed_spin_set_kind (row->rearward, UNIT_LENGTH);
  row->remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  row->unknown = hole->unknown != NULL ? json_object_ref (hole->unknown) : NULL;
  gtk_editable_set_width_chars (GTK_EDITABLE (row->label), 4);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (row->label), 4);
  gtk_widget_set_hexpand (row->label, TRUE);
  gtk_entry_set_activates_default (GTK_ENTRY (row->label), TRUE);
  gtk_editable_set_text (GTK_EDITABLE (row->label), hole->label);
  gtk_spin_button_set_value (row->inboard, hole->inboard_mm);
  gtk_spin_button_set_value (row->rearward, hole->rearward_mm);
  gtk_widget_set_tooltip_text (row->remove, _ ("Remove this hole"));
  gtk_widget_add_css_class (row->remove, "flat");
  g_signal_connect_swapped (row->label, "changed", G_CALLBACK (tell), self);
  g_signal_connect_swapped (row->inboard, "changed", G_CALLBACK (tell), self);
  g_signal_connect_swapped (row->rearward, "changed", G_CALLBACK (tell), self);
  g_signal_connect_swapped (row->remove, "clicked", G_CALLBACK (on_remove_clicked_cb),
                            self);
  g_ptr_array_add (self->rows, row);
  attach_row (self, self->rows->len - 1);
}

/* Where the row of holes goes on. */
static double
next_value (SwHoleList *self, gsize spin, double first_way)
{
  const guint n = self->rows->len;
  double last = 0.0, before = 0.0;

  for (guint i = n > 1 ? n - 2 : 0; i < n; i++) {
    before = last;
    last = typed_spin_get (G_STRUCT_MEMBER (GtkSpinButton *, row_at (self, i), spin));
  }
  if (n == 0)
    return 0.0;
  return CLAMP (n == 1 ? last + first_way : last + (last - before), -PLATE_FURTHEST,
                PLATE_FURTHEST);
}

static void
on_add_clicked_cb (SwHoleList *self)
{
  g_autofree char *label = g_strdup_printf ("%u", self->rows->len + 1);
  const PlateHole hole = {
    .label = label,
    .inboard_mm = next_value (self, G_STRUCT_OFFSET (HoleRow, inboard), FIRST_WAY),
    .rearward_mm = next_value (self, G_STRUCT_OFFSET (HoleRow, rearward), 0.0),
  };

  add_row (self, &hole);
  name_rows (self);
  gtk_widget_grab_focus (row_at (self, self->rows->len - 1)->label);
  tell (self);
}

static void
add_heads (SwHoleList *self)
{
  const char *const heads[] = { _ ("Mark"), _ ("Inboard, mm"), _ ("Rearward, mm") };

  for (int column = 0; column < (int) G_N_ELEMENTS (heads); column++) {
    GtkWidget *head = gtk_label_new (heads[column]);

    gtk_label_set_xalign (GTK_LABEL (head), 0.0f);
    gtk_widget_add_css_class (head, "dim-label");
    gtk_widget_add_css_class (head, "caption");
    gtk_grid_attach (GTK_GRID (self->grid), head, column, 0, 1, 1);
  }
}

static void
sw_hole_list_dispose (GObject *object)
{
  SwHoleList *self = SW_HOLE_LIST (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (sw_hole_list_parent_class)->dispose (object);
}

static void
sw_hole_list_class_init (SwHoleListClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_hole_list_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class),
                                            GTK_TYPE_BIN_LAYOUT);
  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_HOLE_LIST, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_hole_list_init (SwHoleList *self)
{
  self->rows = g_ptr_array_new_with_free_func (free_row);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->grid = gtk_grid_new ();
  self->add = gtk_button_new_with_label (_ ("Add Hole"));
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  gtk_widget_set_halign (self->add, GTK_ALIGN_START);
  add_heads (self);
  gtk_box_append (GTK_BOX (self->box), self->grid);
  gtk_box_append (GTK_BOX (self->box), self->add);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (on_add_clicked_cb), self);
}

GtkWidget *
sw_hole_list_new (const Plate *plate)
{
  SwHoleList *self = g_object_new (SW_TYPE_HOLE_LIST, NULL);
  PlateHole first = { .label = (char *) "1" };

  for (guint i = 0; i < plate->holes->len; i++)
    add_row (self, &g_array_index (plate->holes, PlateHole, i));
  if (plate->holes->len == 0)
    add_row (self, &first);
  name_rows (self);
  return GTK_WIDGET (self);
}

void
sw_hole_list_read (SwHoleList *self, Plate *plate)
{
  g_array_set_size (plate->holes, 0);
  for (guint i = 0; i < self->rows->len; i++) {
    const HoleRow *row = row_at (self, i);
    const PlateHole hole = {
      .label = g_strdup (gtk_editable_get_text (GTK_EDITABLE (row->label))),
      .inboard_mm = typed_spin_get (row->inboard),
      .rearward_mm = typed_spin_get (row->rearward),
      .unknown = row->unknown != NULL ? json_object_ref (row->unknown) : NULL,
    };

    g_array_append_val (plate->holes, hole);
  }
}

char *
sw_hole_list_mark (SwHoleList *self, const char *path)
{
  char *name = NULL;

  for (guint i = 0; i < self->rows->len; i++) {
    const HoleRow *row = row_at (self, i);
    const struct {
      GtkWidget *part;
      const char *member, *name;
    } members[] = {
      { row->label, "label", _ ("Mark of hole %u") },
      { GTK_WIDGET (row->inboard), "inboard_mm", _ ("Hole %u, inboard") },
      { GTK_WIDGET (row->rearward), "rearward_mm", _ ("Hole %u, rearward") },
    };

    for (gsize m = 0; m < G_N_ELEMENTS (members); m++) {
      g_autofree char *own = g_strdup_printf ("holes[%u].%s", i, members[m].member);

      if (path == NULL)
        entry_mark (members[m].part, FALSE);
      if (path == NULL || !g_str_equal (own, path))
        continue;
      entry_mark (members[m].part, TRUE);
      name = g_strdup_printf (members[m].name, i + 1);
    }
  }
  return name;
}

char *
sw_hole_list_check (SwHoleList *self)
{
  char *sentence = NULL;

  for (guint i = 0; i < self->rows->len && sentence == NULL; i++) {
    const HoleRow *row = row_at (self, i);
    g_autofree char *inboard = g_strdup_printf (_ ("Hole %u, inboard"), i + 1);
    g_autofree char *rearward = g_strdup_printf (_ ("Hole %u, rearward"), i + 1);

    sentence = typed_spin_refusal (row->inboard, inboard);
    if (sentence == NULL)
      sentence = typed_spin_refusal (row->rearward, rearward);
  }
  return sentence;
}
