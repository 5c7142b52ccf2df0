/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-number.h"
#include "window/entry/refusal-words.h"
#include "window/entry/typed-number.h"
#include "window/layout/wheel.h"

#include "model/car/car-json.h"
#include "model/words/typed-expression.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define WIDTH_CHARS 7 /* "−13.386" */

typedef enum {
  DRAG_NONE,
  DRAG_ON,
  DRAG_CANCELLED /* the button is still down */
} Drag;

typedef struct {
  SpringsEdit *edit;
  const SpringsRow *row;
  GtkWidget *name, *entry, *unit; /* the latter NULL for a plain number */
  GtkRange *scale;                /* or NULL */
  Drag drag;
} Number;

GtkWidget *
springs_label_new (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

/* What is converted has no end: thousandths of an inch, hundredths of what is smaller. */
static double
shown_rounded (UnitKind kind, double shown)
{
  const double digits = kind == UNIT_LENGTH || kind == UNIT_MODULUS ? 1000.0 : 100.0;

  return round (shown * digits) / digits;
}

char *
springs_number_text (UnitKind kind, double value, gboolean may_be_empty)
{
  const double shown = unit_shown (kind, value);

  if (value == 0.0 && may_be_empty)
    return g_strdup ("");
  /* to the bit where it is shown as it is stored */
  return typed_number_text (shown == value ? value : shown_rounded (kind, shown));
}

char *
springs_read_number (const char *text,
                     const char *name,
                     UnitKind kind,
                     gboolean may_be_empty,
                     double *value)
{
  g_autofree char *refusal = NULL;

  switch (kind == UNIT_ANGLE ? typed_expression_read_stored (text, kind, value, &refusal)
                             : typed_expression_read (text, kind, value, &refusal)) {
  case EXPRESSION_VALUE:
    return NULL;
  case EXPRESSION_EMPTY:
    return may_be_empty ? NULL : g_strdup_printf (_ ("“%s” needs a number."), name);
  default:
    return refusal_of_piece (name, text, refusal);
  }
}

/* Of "mm up", that of "mm". */
static UnitKind
typed_kind (const SpringsRow *row)
{
  const char *unit = row->unit != NULL ? row->unit : "";
  g_autofree char *symbol = g_strndup (unit, strcspn (unit, " "));

  return unit_kind_of (symbol);
}

/* Angles stay decimal. */
static UnitKind
kind_of (const SpringsRow *row)
{
  const UnitKind kind = typed_kind (row);

  return kind == UNIT_ANGLE ? UNIT_NONE : kind;
}

static void
show_unit (Number *self)
{
  const SpringsRow *row = self->row;
  g_autofree char *symbol = g_strndup (row->unit, strcspn (row->unit, " "));
  g_autoptr (GString) text = g_string_new (_ (row->unit));

  if (kind_of (row) != UNIT_NONE)
    g_string_replace (text, symbol, unit_symbol (kind_of (row)), 1);
  if (!g_str_equal (gtk_label_get_label (GTK_LABEL (self->unit)), text->str))
    gtk_label_set_label (GTK_LABEL (self->unit), text->str);
}

static char *
store (Number *self, double value)
{
  SpringSet set = *springs_edit_now (self->edit);

  springs_row_set (self->row, &set, value);
  return springs_edit_store (self->edit, &set, springs_change_label (self->row->group));
}

/* In the unit that is shown. */
static char *
bound_text (const SpringsRow *row, double bound)
{
  const UnitKind kind = kind_of (row);
  const char *symbol =
      typed_kind (row) == UNIT_ANGLE ? unit_symbol (UNIT_NONE) : unit_symbol (kind);
  g_autofree char *number = springs_number_text (kind, bound, FALSE);

  if (typed_kind (row) == UNIT_ANGLE)
    return g_strconcat (number, "°", NULL);
  return symbol[0] == '\0' ? g_steal_pointer (&number)
                           : g_strconcat (number, " ", symbol, NULL);
}

/* What the file takes, where it says so. */
static char *
refuse_beyond (const SpringsRow *row, const char *name, const char *text, double value)
{
  double least = row->least, most = row->most;
  gboolean is_open = FALSE;

  car_spring_bounds (row->path, &least, &most, &is_open);
  if (value == 0.0 && row->may_be_empty)
    return NULL;
  /* 0 would make another alternative of it: a bar that has its sizes instead of a rate */
  if ((value == 0.0 && row->least > 0.0) || (is_open && value <= least && least == 0.0))
    return g_strdup_printf (_ ("“%s” must be above 0."), name);
  if (value >= least && value <= most)
    return NULL;

  g_autofree char *limit = bound_text (row, value > most ? most : least);
  return refusal_of_bound (name, text, value > most, limit);
}

static char *
take (const char *text, gpointer data)
{
  Number *self = data;
  const SpringsRow *row = self->row;
  g_autofree char *name = springs_row_full_name (row);
  double value;
  char *refusal =
      springs_read_number (text, name, typed_kind (row), row->may_be_empty, &value);

  if (refusal != NULL)
    return refusal;
  if (row->is_count && (value < 0.0 || value != floor (value)))
    return g_strdup_printf (_ ("“%s” takes a whole number."), name);
  refusal = refuse_beyond (row, name, text, value);
  return refusal != NULL ? refusal : store (self, value);
}

static double
on_step (const SpringsRow *row, double value)
{
  return CLAMP (round (value / row->step) * row->step, row->least, row->most);
}

static double
value_now (Number *self)
{
  return springs_row_get (self->row, springs_edit_now (self->edit));
}

/* Binary fractions of a step are no number that a person would have typed. */
static double
tidy (double value)
{
  return round (value * 1e6) / 1e6;
}

static void
step (int steps, gpointer data)
{
  Number *self = data;
  const double now = value_now (self);
  const double wanted =
      CLAMP (tidy (now + steps * unit_round_step (kind_of (self->row), self->row->step)),
             self->row->least, self->row->most);
  g_autofree char *refusal = store (self, wanted);

  springs_edit_refuse (self->edit, self->entry, refusal);
}

/* The scale keeps its ends while it is dragged, and while its number is inside. */
static void
show_scale (Number *self, double value)
{
  const SpringsRow *row = self->row;
  GtkAdjustment *adjustment = gtk_range_get_adjustment (self->scale);

  if (self->drag == DRAG_NONE && (value < gtk_adjustment_get_lower (adjustment) ||
                                  value > gtk_adjustment_get_upper (adjustment) ||
                                  gtk_adjustment_get_upper (adjustment) == 0.0))
    gtk_range_set_range (self->scale, MAX (value - row->reach, row->least),
                         MIN (value + row->reach, row->most));
  gtk_range_set_value (self->scale, value);
}

static void
show (gpointer part)
{
  Number *self = part;
  const SpringSet *set = springs_edit_now (self->edit);
  const gboolean is_asked = self->row->is_asked (set);
  const double value = springs_row_get (self->row, set);
  g_autofree char *text =
      springs_number_text (kind_of (self->row), value, self->row->may_be_empty);

  gtk_widget_set_visible (self->name, is_asked);
  if (self->unit != NULL) {
    gtk_widget_set_visible (self->unit, is_asked);
    show_unit (self);
  }
  springs_entry_show (self->entry, text, is_asked);
  if (self->scale == NULL)
    return;
  gtk_widget_set_visible (GTK_WIDGET (self->scale), is_asked);
  if (is_asked)
    show_scale (self, value);
}

static void
on_scale_changed_cb (Number *self)
{
  const double value = tidy (on_step (self->row, gtk_range_get_value (self->scale)));

  if (springs_edit_is_telling (self->edit) || self->drag == DRAG_CANCELLED)
    return;

  g_autofree char *refusal = store (self, value);
  springs_edit_refuse (self->edit, self->entry, refusal);
}

static void
begin_drag (Number *self)
{
  gtk_widget_grab_focus (self->entry); /* Escape goes there */
  sw_bench_begin_drag (springs_edit_bench (self->edit),
                       springs_change_label (self->row->group));
  self->drag = DRAG_ON;
}

static void
end_drag (Number *self)
{
  const Drag before = self->drag;

  self->drag = DRAG_NONE;
  if (before == DRAG_ON)
    sw_bench_end_drag (springs_edit_bench (self->edit));
  springs_edit_show (self->edit); /* the scale, where it was left in a cancelled drag */
}

static void
on_cancelled_cb (Number *self)
{
  if (self->drag != DRAG_ON)
    return;
  self->drag = DRAG_CANCELLED;
  sw_bench_cancel_drag (springs_edit_bench (self->edit));
}

/* Ahead of the scale's own gestures, which would deny it to another one. */
static gboolean
on_scale_event_cb (Number *self, GdkEvent *event)
{
  switch (gdk_event_get_event_type (event)) {
  case GDK_BUTTON_PRESS:
  case GDK_TOUCH_BEGIN:
    if (self->drag == DRAG_NONE)
      begin_drag (self);
    return GDK_EVENT_PROPAGATE;
  case GDK_BUTTON_RELEASE:
  case GDK_TOUCH_END:
  case GDK_TOUCH_CANCEL:
    if (self->drag != DRAG_NONE)
      end_drag (self);
    return GDK_EVENT_PROPAGATE;
  default:
    return GDK_EVENT_PROPAGATE;
  }
}

/* The desktop may take the pointer away, or the window go. */
static void
on_scale_unmap_cb (Number *self)
{
  if (self->drag != DRAG_NONE)
    end_drag (self);
}

static void
add_scale (Number *self, GtkGrid *grid, int at)
{
  const SpringsRow *row = self->row;
  GtkWidget *scale =
      gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0.0, 1.0, row->step);
  GtkEventController *events = gtk_event_controller_legacy_new ();
  g_autofree char *name = springs_row_full_name (row);

  self->scale = GTK_RANGE (scale);
  gtk_range_set_range (self->scale, -1.0, 0.0); /* until it is shown first */
  /* or scrolling the strip would move whatever comes under the pointer */
  wheel_set_ignored (scale, TRUE);
  gtk_widget_set_can_focus (scale, FALSE); /* the entry takes the keys */
  gtk_widget_set_tooltip_text (scale, _ (row->meaning));
  gtk_accessible_update_property (GTK_ACCESSIBLE (scale), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  gtk_event_controller_set_propagation_phase (events, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (events, "event", G_CALLBACK (on_scale_event_cb), self);
  gtk_widget_add_controller (scale, events);
  g_signal_connect_swapped (scale, "value-changed", G_CALLBACK (on_scale_changed_cb),
                            self);
  g_signal_connect_swapped (scale, "unmap", G_CALLBACK (on_scale_unmap_cb), self);
  gtk_grid_attach (grid, scale, 0, at, 3, 1);
}

static GtkWidget *
new_entry (Number *self)
{
  const SpringsRow *row = self->row;
  g_autofree char *name = springs_row_full_name (row);
  GtkWidget *entry = sw_committed_entry_new (name, take, step, self);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), WIDTH_CHARS);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), WIDTH_CHARS);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1.0f);
  if (row->empty_word != NULL)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ (row->empty_word));
  sw_committed_entry_set_meaning (SW_COMMITTED_ENTRY (entry), _ (row->meaning));
  g_signal_connect_swapped (entry, "cancelled", G_CALLBACK (on_cancelled_cb), self);
  springs_edit_watch (self->edit, row->group, SW_COMMITTED_ENTRY (entry));
  return entry;
}

int
springs_number_add (SpringsEdit *edit, SpringsRowName name, GtkGrid *grid, int at)
{
  const SpringsRow *row = &springs_rows[name];
  Number *self = g_new0 (Number, 1);

  self->edit = edit;
  self->row = row;
  self->name = springs_label_new (_ (row->name), NULL);
  if (row->unit != NULL)
    self->unit = springs_label_new ("", "dim-label");
  self->entry = new_entry (self);
  gtk_widget_set_tooltip_text (self->name, _ (row->meaning));
  gtk_widget_set_hexpand (self->name, TRUE);
  gtk_grid_attach (grid, self->name, 0, at, 1, 1);
  gtk_grid_attach (grid, self->entry, 1, at, 1, 1);
  if (self->unit != NULL)
    gtk_grid_attach (grid, self->unit, 2, at, 1, 1);
  if (row->reach > 0.0)
    add_scale (self, grid, at + 1);
  springs_edit_add_part (edit, show, self);
  return row->reach > 0.0 ? 2 : 1;
}
