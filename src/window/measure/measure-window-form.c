/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/measure/measure-window-form.h"
#include "window/entry/standing-text.h"
#include "window/entry/typed-entry.h"
#include "window/entry/typed-number.h"
#include "window/measure/measure-window-grid.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What folds together; a page may hold two groups of fields. */
typedef enum {
  PAGE_POINTS,
  PAGE_WHEEL,
  PAGE_BODY,
  PAGE_TOWER,
  PAGE_LIMITS,
  PAGE_RIGHT,
  N_PAGES
} Page;

struct _SwMeasureForm {
  GtkWidget parent_instance;

  GtkWidget *scroller, *box;
  GtkEntry **entries; /* by field */
  GtkWidget *expanders[N_PAGES], *missing[N_PAGES];
  GtkWidget *name, *notes, *mirror;
  GtkCheckButton *unlock, *has_right; /* the first for a car that is open */
  gboolean keeps_right;               /* its right points are locked with the left ones */
  gboolean is_filling;
  int field;
};

G_DEFINE_FINAL_TYPE (SwMeasureForm, sw_measure_form, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  FOCUSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static Page
page_of (MeasureGroup group)
{
  return group >= MEASURE_RIGHT_POINTS ? PAGE_RIGHT : (Page) group;
}

static const char *
page_title (Page page)
{
  const char *const titles[N_PAGES] = {
    [PAGE_POINTS] = _ ("Points"),         [PAGE_WHEEL] = _ ("Alignment and tyre"),
    [PAGE_BODY] = _ ("Travel and body"),  [PAGE_TOWER] = _ ("Tower and strut"),
    [PAGE_LIMITS] = C_ ("car", "Limits"), [PAGE_RIGHT] = _ ("Right side"),
  };

  return titles[page];
}

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static const char *
text_at (SwMeasureForm *self, guint field)
{
  return text_of (GTK_WIDGET (self->entries[field]));
}

static void
set_text_at (SwMeasureForm *self, guint field, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (self->entries[field]), text);
}

/* One by one: what a whole grid is, GTK 4.8 does not tell screen readers of its parts. */
static void
lock_group (SwMeasureForm *self, MeasureGroup group, gboolean is_open)
{
  guint first, n;

  measure_group_span (group, &first, &n);
  for (guint i = first; i < first + n; i++)
    gtk_widget_set_sensitive (GTK_WIDGET (self->entries[i]), is_open);
}

static void
show_locks (SwMeasureForm *self)
{
  const gboolean is_open =
      self->unlock == NULL || gtk_check_button_get_active (self->unlock);
  const gboolean has_right = gtk_check_button_get_active (self->has_right);
  const gboolean right_points = has_right && (is_open || !self->keeps_right);

  lock_group (self, MEASURE_POINTS, is_open);
  lock_group (self, MEASURE_RIGHT_POINTS, right_points);
  lock_group (self, MEASURE_RIGHT_WHEEL, has_right);
  gtk_widget_set_sensitive (self->mirror, right_points);
}

static void
on_changed_cb (SwMeasureForm *self)
{
  if (self->is_filling)
    return;
  show_locks (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
on_entry_focused_cb (GtkEventController *focus, SwMeasureForm *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (focus);

  for (guint i = 0; i < measure_n_fields (); i++)
    if (entry == GTK_WIDGET (self->entries[i]))
      self->field = (int) i;
  g_signal_emit (self, signals[FOCUSED], 0);
}

/* Several numbers at once, as from a spreadsheet, go to this entry and those behind it.
 */
static gboolean
fill_from (SwMeasureForm *self, guint field, const GArray *numbers)
{
  const guint first = field < N_COORDINATES ? 0 : measure_point_field (0, SIDE_RIGHT);

  if (numbers->len < 2 || field + numbers->len > first + N_COORDINATES)
    return FALSE;
  self->is_filling = TRUE;
  for (guint i = 0; i < numbers->len; i++) {
    g_autofree char *text = typed_number_text (g_array_index (numbers, double, i));

    set_text_at (self, field + i, text);
  }
  self->is_filling = FALSE;
  on_changed_cb (self);
  return TRUE;
}

static void
on_insert_text_cb (
    GtkEditable *text, const char *what, int length, int *position, SwMeasureForm *self)
{
  g_autofree char *piece = g_strndup (what, length < 0 ? strlen (what) : (gsize) length);
  g_autoptr (GArray) numbers = self->is_filling ? NULL : typed_numbers_read (piece);
  GtkWidget *entry = gtk_widget_get_ancestor (GTK_WIDGET (text), GTK_TYPE_ENTRY);
  guint field = 0;

  while (entry != GTK_WIDGET (self->entries[field]))
    field++;
  if (numbers == NULL || !fill_from (self, field, numbers))
    return;
  g_signal_stop_emission_by_name (text, "insert-text");
  *position = 0;
}

static void
watch (SwMeasureForm *self, guint field)
{
  GtkWidget *entry = GTK_WIDGET (self->entries[field]);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (focus, "enter", G_CALLBACK (on_entry_focused_cb), self);
  gtk_widget_add_controller (entry, focus);
  standing_text_keep (self->entries[field]);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (on_changed_cb), self);
  if (measure_field (field).point != N_POINTS)
    g_signal_connect (gtk_editable_get_delegate (GTK_EDITABLE (entry)), "insert-text",
                      G_CALLBACK (on_insert_text_cb), self);
}

/* What is as it would be without an entry shows as such. */
static void
fill (SwMeasureForm *self, const Car *car)
{
  for (guint i = 0; i < measure_n_fields (); i++) {
    const MeasureField field = measure_field (i);
    const double value = measure_field_value (&field, car);
    const gboolean is_there = field.group == MEASURE_RIGHT_POINTS ? car->right.has_points
                              : field.group == MEASURE_RIGHT_WHEEL
                                  ? car->right.has_alignment
                                  : value != field.absent;
    g_autofree char *text = is_there ? typed_number_text (value) : g_strdup ("");

    set_text_at (self, i, text);
  }
  gtk_editable_set_text (GTK_EDITABLE (self->name), car->name);
  gtk_editable_set_text (GTK_EDITABLE (self->notes), car->notes);
  gtk_check_button_set_active (self->has_right, car_has_right (car));
  self->keeps_right = car->right.has_points;
}

/* The same numbers; left and right are what y says. */
static void
on_mirror_clicked_cb (SwMeasureForm *self)
{
  guint wheel, right_wheel, n;

  self->is_filling = TRUE;
  for (guint i = 0; i < N_COORDINATES; i++) {
    const char *left = text_at (self, i);
    double value;
    g_autofree char *mirrored =
        i % 3 == 1 && typed_measure_read (left, UNIT_LENGTH, &value) == TYPED_NUMBER
            ? typed_number_text (-value)
            : g_strdup (left);

    set_text_at (self, measure_point_field (0, SIDE_RIGHT) + i, mirrored);
  }
  measure_group_span (MEASURE_WHEEL, &wheel, &n); /* which begins with the same two */
  measure_group_span (MEASURE_RIGHT_WHEEL, &right_wheel, &n);
  for (guint i = 0; i < n; i++)
    set_text_at (self, right_wheel + i, text_at (self, wheel + i));
  self->is_filling = FALSE;
  on_changed_cb (self);
}

static GtkWidget *
new_head (SwMeasureForm *self, Page page)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *title = gtk_label_new (page_title (page));

  gtk_widget_add_css_class (title, "fold-title");
  self->missing[page] = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->missing[page], "dim-label");
  gtk_widget_set_margin_start (title, 4);
  gtk_box_append (GTK_BOX (head), title);
  gtk_box_append (GTK_BOX (head), self->missing[page]);
  return head;
}

static void
add_page (SwMeasureForm *self, Page page, GtkWidget *content)
{
  GtkWidget *expander = gtk_expander_new (NULL);

  gtk_expander_set_label_widget (GTK_EXPANDER (expander), new_head (self, page));
  gtk_accessible_update_property (GTK_ACCESSIBLE (expander),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, page_title (page), -1);
  gtk_expander_set_expanded (GTK_EXPANDER (expander), page <= PAGE_WHEEL);
  gtk_expander_set_child (GTK_EXPANDER (expander), content);
  /* a folded child that counts as visible gets the focus outside of any window */
  g_object_bind_property (expander, "expanded", content, "visible",
                          G_BINDING_SYNC_CREATE);
  gtk_widget_add_css_class (content, "fold");
  gtk_box_append (GTK_BOX (self->box), expander);
  self->expanders[page] = expander;
}

static GtkWidget *
new_box (GtkWidget *first, GtkWidget *second, GtkWidget *third)
{
  GtkWidget *const parts[] = { first, second, third };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] != NULL)
      gtk_box_append (GTK_BOX (box), parts[i]);
  return box;
}

static GtkWidget *
new_check (SwMeasureForm *self, const char *label, GtkCheckButton **check)
{
  GtkWidget *button = gtk_check_button_new_with_label (label);

  *check = GTK_CHECK_BUTTON (button);
  g_signal_connect_swapped (button, "toggled", G_CALLBACK (on_changed_cb), self);
  return button;
}

static GtkWidget *
new_right_bar (SwMeasureForm *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *check =
      new_check (self, _ ("The right side was measured too"), &self->has_right);

  self->mirror = gtk_button_new_with_label (_ ("Mirror the Left Side"));
  gtk_widget_set_hexpand (check, TRUE);
  g_signal_connect_swapped (self->mirror, "clicked", G_CALLBACK (on_mirror_clicked_cb),
                            self);
  gtk_box_append (GTK_BOX (bar), check);
  gtk_box_append (GTK_BOX (bar), self->mirror);
  return bar;
}

static GtkWidget *
new_right_hint (void)
{
  GtkWidget *hint = gtk_label_new (_ ("On the right side y is below zero."));

  gtk_label_set_xalign (GTK_LABEL (hint), 0.0f);
  gtk_widget_add_css_class (hint, "dim-label");
  return hint;
}

static GtkWidget *
new_text_entry (SwMeasureForm *self, const char *name, const char *placeholder)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_widget_set_hexpand (entry, TRUE);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (on_changed_cb), self);
  return entry;
}

static void
add_identity (SwMeasureForm *self)
{
  GtkWidget *grid = gtk_grid_new ();
  const char *const names[] = { _ ("Name"), _ ("Notes") };
  GtkWidget *entries[] = { new_text_entry (self, names[0], _ ("Unnamed car")),
                           new_text_entry (self, names[1], NULL) };

  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  for (int i = 0; i < 2; i++) {
    GtkWidget *label = gtk_label_new (names[i]);

    gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
    gtk_grid_attach (GTK_GRID (grid), label, 0, i, 1, 1);
    gtk_grid_attach (GTK_GRID (grid), entries[i], 1, i, 1, 1);
  }
  self->name = entries[0];
  self->notes = entries[1];
  gtk_box_append (GTK_BOX (self->box), grid);
}

static void
build (SwMeasureForm *self, gboolean is_open_car)
{
  GtkWidget *unlock =
      is_open_car ? new_check (self, _ ("Unlock the measured points"), &self->unlock)
                  : NULL;
  GtkWidget *grids[N_MEASURE_GROUPS];

  for (MeasureGroup group = 0; group < N_MEASURE_GROUPS; group++)
    grids[group] = group == MEASURE_POINTS
                       ? measure_points_grid_new (SIDE_LEFT, self->entries)
                   : group == MEASURE_RIGHT_POINTS
                       ? measure_points_grid_new (SIDE_RIGHT, self->entries)
                       : measure_numbers_grid_new (group, self->entries);
  add_identity (self);
  add_page (self, PAGE_POINTS, new_box (unlock, grids[MEASURE_POINTS], NULL));
  for (Page page = PAGE_WHEEL; page < PAGE_RIGHT; page++)
    add_page (self, page, new_box (grids[page], NULL, NULL));
  add_page (self, PAGE_RIGHT,
            new_box (new_right_bar (self), new_right_hint (),
                     new_box (grids[MEASURE_RIGHT_POINTS], grids[MEASURE_RIGHT_WHEEL],
                              NULL)));
  for (guint i = 0; i < measure_n_fields (); i++)
    watch (self, i);
}

static void
sw_measure_form_dispose (GObject *object)
{
  SwMeasureForm *self = SW_MEASURE_FORM (object);

  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  g_clear_pointer (&self->entries, g_free);
  G_OBJECT_CLASS (sw_measure_form_parent_class)->dispose (object);
}

static void
sw_measure_form_class_init (SwMeasureFormClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_measure_form_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class),
                                            GTK_TYPE_BIN_LAYOUT);
  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_MEASURE_FORM, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[FOCUSED] = g_signal_new ("focused", SW_TYPE_MEASURE_FORM, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_measure_form_init (SwMeasureForm *self)
{
  self->field = -1;
  self->entries = g_new0 (GtkEntry *, measure_n_fields ());
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  gtk_widget_add_css_class (self->box, "panel");
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->box);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
}

GtkWidget *
sw_measure_form_new (const Car *car)
{
  SwMeasureForm *self = g_object_new (SW_TYPE_MEASURE_FORM, NULL);

  self->is_filling = TRUE;
  build (self, car != NULL);
  if (car != NULL)
    fill (self, car);
  show_locks (self);
  self->is_filling = FALSE;
  return GTK_WIDGET (self);
}

static void
show_marks (SwMeasureForm *self, const MeasureReading *reading)
{
  guint n_missing[N_PAGES] = { 0 };

  for (guint i = 0; i < measure_n_fields (); i++) {
    entry_mark (GTK_WIDGET (self->entries[i]), reading->is_at_fault[i]);
    if (reading->is_missing[i])
      n_missing[page_of (measure_field (i).group)]++;
  }
  for (Page page = 0; page < N_PAGES; page++) {
    /* Translators: so many entries of a group are empty that must not be. */
    g_autofree char *text = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u missing",
                                                          "%u missing", n_missing[page]),
                                             n_missing[page]);

    gtk_label_set_label (GTK_LABEL (self->missing[page]), text);
    gtk_widget_set_visible (self->missing[page], n_missing[page] > 0);
  }
}

MeasureReading
sw_measure_form_read (SwMeasureForm *self, Car *car)
{
  const guint n = measure_n_fields ();
  g_autofree const char **texts = g_new (const char *, n);
  MeasureEntries entries = { text_of (self->name), text_of (self->notes), texts,
                             gtk_check_button_get_active (self->has_right) };

  for (guint i = 0; i < n; i++)
    texts[i] = text_at (self, i);

  const MeasureReading reading = measure_read (&entries, car);
  show_marks (self, &reading);
  return reading;
}

int
sw_measure_form_get_field (SwMeasureForm *self)
{
  return self->field;
}

void
sw_measure_form_go_to (SwMeasureForm *self, guint field)
{
  const Page page = page_of (measure_field (field).group);

  gtk_expander_set_expanded (GTK_EXPANDER (self->expanders[page]), TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (self->entries[field]));
}
