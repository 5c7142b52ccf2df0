/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/answers-view.h"
#include "window/bench/chooser.h"
#include "window/curves/column-heads.h"
#include "window/entry/left-to-right.h"
#include "window/layout/whole-text.h"
#include "window/mount/answers-view-row.h"
#include "window/settings/units.h"

#include <glib/gi18n-lib.h>

static const ChoiceNumber numbers[] = {
  CHOICE_CAMBER,           CHOICE_CASTER,         CHOICE_SAI,
  CHOICE_SCRUB_RADIUS,     CHOICE_TRAIL,          CHOICE_ROLL_CENTRE_HEIGHT,
  CHOICE_TOE_BEFORE_RESET, CHOICE_TIE_ROD_TURNS,  CHOICE_BUMP_STEER,
  CHOICE_TYRE_CLEARANCE,   CHOICE_ROD_SIDE_FORCE, CHOICE_BEARING_TILT,
  CHOICE_EDGE_MARGIN,
};

struct _SwAnswersView {
  GtkWidget parent_instance;

  SwBench *bench;
  SwChooser *chooser;
  GtkWidget *place, *table, *empty;
  GListStore *rows; /* of SwAnswerRow, as ranked */
  GtkSingleSelection *selection;
  GtkColumnViewColumn *side_column, *number_columns[G_N_ELEMENTS (numbers)];
  gboolean is_telling; /* while the table is being told: it does not answer */
  guint tick;          /* before which the rows are old, or 0 */
};

G_DEFINE_FINAL_TYPE (SwAnswersView, sw_answers_view, GTK_TYPE_WIDGET)

typedef void (*ShowCell) (GtkWidget *cell, SwAnswerRow *row, guint column);

static void
show_rank (GtkWidget *cell, SwAnswerRow *row, guint column)
{
  const ChoiceVerdict verdict = sw_answer_row_get_verdict (row);
  g_autofree char *text = g_strdup_printf ("%u %s", sw_answer_row_get_rank (row),
                                           choice_verdict_sign (verdict));

  (void) column;
  gtk_label_set_label (GTK_LABEL (cell), text);
  gtk_widget_set_tooltip_text (cell, sw_answer_row_get_verdict_words (row));
}

static void
show_plate (GtkWidget *cell, SwAnswerRow *row, guint column)
{
  /* Translators: behind the name of a plate: those of left and right are swapped. */
  const char *swapped = sw_answer_row_is_swapped (row) ? _ (", swapped") : "";
  g_autofree char *markup =
      g_markup_printf_escaped ("<b>%s</b>%s\n%s", sw_answer_row_get_plate (row), swapped,
                               sw_answer_row_get_setting (row));

  (void) column;
  gtk_label_set_markup (GTK_LABEL (cell), markup);
}

static void
show_verdict (GtkWidget *cell, SwAnswerRow *row, guint column)
{
  const gboolean two_sides = strchr (sw_answer_row_get_setting (row), '\n') != NULL;

  (void) column;
  gtk_label_set_lines (GTK_LABEL (cell), two_sides ? 3 : 2);
  gtk_label_set_label (GTK_LABEL (cell), sw_answer_row_get_sentence (row));
}

static void
show_side (GtkWidget *cell, SwAnswerRow *row, guint column)
{
  (void) column;
  gtk_label_set_label (GTK_LABEL (cell), sw_answer_row_get_side (row));
}

static void
set_class (GtkWidget *widget, const char *name, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

/* A label for each side, so that each has its own colour and tooltip. */
static void
show_number (GtkWidget *cell, SwAnswerRow *row, guint column)
{
  const ChoiceNumber number = numbers[column];
  GtkWidget *label = gtk_widget_get_first_child (cell);

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const char *text = sw_answer_row_get_number (row, number, side);

    gtk_widget_set_visible (label, text != NULL);
    gtk_label_set_label (GTK_LABEL (label), text != NULL ? text : "");
    set_class (label, "off-aim", sw_answer_row_is_marked (row, number, side));
    gtk_widget_set_tooltip_text (label, sw_answer_row_get_hint (row, number, side));
    label = gtk_widget_get_next_sibling (label);
  }
}

/* What a column is filled by, and which of the numbers it shows. */
typedef struct {
  ShowCell show;
  guint column;
  float xalign;
  GtkAlign valign; /* figures stand on the lines of the settings, names above */
  int most_chars;  /* 0: as wide as it comes */
} CellKind;

static GtkWidget *
label_new (const CellKind *kind)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_widget_set_valign (label, kind->valign);
  gtk_label_set_xalign (GTK_LABEL (label), kind->xalign);
  if (kind->most_chars > 0) {
    gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
    gtk_label_set_width_chars (GTK_LABEL (label), kind->most_chars);
    gtk_label_set_max_width_chars (GTK_LABEL (label), kind->most_chars);
    whole_text_tooltip_add (GTK_LABEL (label));
  }
  if (kind->show == show_verdict)
    gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}

static GtkWidget *
figures_new (const CellKind *kind)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_valign (box, kind->valign);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    GtkWidget *label = label_new (kind);

    gtk_widget_add_css_class (label, "numeric");
    keep_left_to_right (label);
    gtk_box_append (GTK_BOX (box), label);
  }
  return box;
}

static void
on_setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const CellKind *kind = data;

  (void) factory;
  gtk_list_item_set_child (item, kind->show == show_number ? figures_new (kind)
                                                           : label_new (kind));
}

/* With a line for each label that is seen. */
static char *
text_of (GtkWidget *widget)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (GTK_IS_LABEL (widget))
    return g_strdup (gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_get_visible (child))
      g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "",
                              gtk_label_get_text (GTK_LABEL (child)));
  return g_strdup (text->str);
}

/* GTK 4.8 calls rows and cells by the names of its classes. */
static void
name_cell (GtkWidget *content, SwAnswerRow *row)
{
  GtkWidget *cell = gtk_widget_get_parent (content);
  GtkWidget *line = cell != NULL ? gtk_widget_get_parent (cell) : NULL;

  if (line == NULL)
    return;
  g_autofree char *text = text_of (content);
  const char *hint = gtk_widget_get_tooltip_text (content);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  hint != NULL ? hint : "", -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (line), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  sw_answer_row_get_plate (row),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  sw_answer_row_get_sentence (row), -1);
}

static void
on_bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const CellKind *kind = data;
  SwAnswerRow *row = gtk_list_item_get_item (item);
  GtkWidget *content = gtk_list_item_get_child (item);

  (void) factory;
  kind->show (content, row, kind->column);
  set_class (content, "dim-label", sw_answer_row_get_verdict (row) == CHOICE_FAILS);
  name_cell (content, row);
}

static GtkColumnViewColumn *
add_column (SwAnswersView *self, const char *title, CellKind kind)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  CellKind *own = g_memdup2 (&kind, sizeof kind);
  g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (title, factory);

  g_signal_connect (factory, "setup", G_CALLBACK (on_setup_cb), own);
  g_signal_connect_data (factory, "bind", G_CALLBACK (on_bind_cb), own,
                         (GClosureNotify) (void (*) (void)) g_free, 0);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->table), column);
  return column;
}

static char *
number_title (guint i)
{
  const ChoiceNumberInfo info = choice_number_info (numbers[i]);
  const char *unit = info.kind != UNIT_NONE ? unit_caption (info.kind) : info.unit;

  return g_strdup_printf ("%s\n%s", info.head, unit);
}

static void
add_columns (SwAnswersView *self)
{
  add_column (self, C_ ("rank", "No."),
              (CellKind){ show_rank, 0, 0.0f, GTK_ALIGN_START, 0 });
  add_column (self, _ ("Plate and setting"),
              (CellKind){ show_plate, 0, 0.0f, GTK_ALIGN_START, 36 });
  self->side_column = add_column (self, C_ ("of the car", "Side"),
                                  (CellKind){ show_side, 0, 0.0f, GTK_ALIGN_END, 0 });
  add_column (self, _ ("What it comes to"),
              (CellKind){ show_verdict, 0, 0.0f, GTK_ALIGN_CENTER, 30 });
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autofree char *title = number_title (i);

    self->number_columns[i] =
        add_column (self, title, (CellKind){ show_number, i, 1.0f, GTK_ALIGN_END, 0 });
  }
}

static void
select_plate (SwAnswersView *self)
{
  const int found = sw_chooser_find_answer (self->chooser);

  self->is_telling = TRUE;
  gtk_single_selection_set_selected (self->selection,
                                     found >= 0 && (guint) found <
                                                       g_list_model_get_n_items (
                                                           G_LIST_MODEL (self->rows))
                                         ? (guint) found
                                         : GTK_INVALID_LIST_POSITION);
  self->is_telling = FALSE;
}

static void
show_empty (SwAnswersView *self, guint n_answers)
{
  const PlateLibrary *library = sw_chooser_get_library (self->chooser);

  gtk_widget_set_visible (self->empty, n_answers == 0 && library->plates->len == 0);
}

static void
fill_rows (SwAnswersView *self)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));
  const GArray *answers = sw_chooser_peek_answers (self->chooser);
  const gboolean both_sides =
      car_sides_differ (car, sw_bench_get_setup_index (self->bench));
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < answers->len; i++)
    g_ptr_array_add (rows,
                     sw_answer_row_new (car, &g_array_index (answers, ChoiceAnswer, i),
                                        i + 1, both_sides));
  self->is_telling = TRUE;
  g_list_store_splice (self->rows, 0,
                       g_list_model_get_n_items (G_LIST_MODEL (self->rows)), rows->pdata,
                       rows->len);
  self->is_telling = FALSE;
  gtk_column_view_column_set_visible (self->side_column, both_sides);
  show_empty (self, rows->len);
  select_plate (self);
}

static gboolean
on_tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SwAnswersView *self = SW_ANSWERS_VIEW (widget);
  (void) clock;
  (void) data;

  self->tick = 0;
  fill_rows (self);
  return G_SOURCE_REMOVE;
}

/* GTK 4.8 warns when the wheel turns over rows that are new and not laid out yet. They
 * are put there in the phase of a frame that the layout follows, and no event between. */
static void
on_answered_cb (SwAnswersView *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    fill_rows (self);
  else if (self->tick == 0)
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), on_tick_cb, NULL, NULL);
}

static void
on_selected_cb (SwAnswersView *self)
{
  const guint selected = gtk_single_selection_get_selected (self->selection);

  if (!self->is_telling && self->tick == 0 && selected != GTK_INVALID_LIST_POSITION)
    sw_chooser_take_answer (self->chooser, selected);
}

static void
on_activate_cb (SwAnswersView *self, guint position)
{
  if (self->tick == 0)
    sw_chooser_fit (self->chooser, position);
}

static void
sw_answers_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_answers_view_parent_class)->map (widget);
  sw_chooser_watch (SW_ANSWERS_VIEW (widget)->chooser);
}

static void
sw_answers_view_unmap (GtkWidget *widget)
{
  sw_chooser_unwatch (SW_ANSWERS_VIEW (widget)->chooser);
  GTK_WIDGET_CLASS (sw_answers_view_parent_class)->unmap (widget);
}

static void
sw_answers_view_dispose (GObject *object)
{
  SwAnswersView *self = SW_ANSWERS_VIEW (object);

  g_clear_pointer (&self->place, gtk_widget_unparent);
  g_clear_object (&self->rows);
  g_clear_object (&self->chooser);
  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_answers_view_parent_class)->dispose (object);
}

static void
sw_answers_view_class_init (SwAnswersViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_answers_view_dispose;
  widget_class->map = sw_answers_view_map;
  widget_class->unmap = sw_answers_view_unmap;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "answers");
}

static void
add_table (SwAnswersView *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->rows = g_list_store_new (SW_TYPE_ANSWER_ROW);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->rows)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  self->table = gtk_column_view_new (GTK_SELECTION_MODEL (self->selection));
  gtk_widget_add_css_class (self->table, "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->table),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Ranked plates"), -1);
  g_signal_connect_swapped (self->selection, "notify::selected",
                            G_CALLBACK (on_selected_cb), self);
  g_signal_connect_swapped (self->table, "activate", G_CALLBACK (on_activate_cb), self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->table);
  column_heads_begin_at_first (GTK_SCROLLED_WINDOW (scrolled));
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 260);
  gtk_box_append (GTK_BOX (self->place), scrolled);
}

static void
sw_answers_view_init (SwAnswersView *self)
{
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  self->place = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->empty = gtk_label_new (
      _ ("There are no plates yet: “New Plate…” above the map describes one."));
  gtk_widget_add_css_class (self->empty, "cautions");
  gtk_widget_set_visible (self->empty, FALSE);
  gtk_box_append (GTK_BOX (self->place), self->empty);
  add_table (self);
  add_columns (self);
  column_heads_arrange (GTK_COLUMN_VIEW (self->table), G_N_ELEMENTS (numbers));
  gtk_widget_set_parent (self->place, GTK_WIDGET (self));
}

static void
on_units_changed_cb (SwAnswersView *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autofree char *title = number_title (i);

    gtk_column_view_column_set_title (self->number_columns[i], title);
  }
  column_heads_arrange (GTK_COLUMN_VIEW (self->table), G_N_ELEMENTS (numbers));
  fill_rows (self);
}

GtkWidget *
sw_answers_view_new (SwBench *bench)
{
  SwAnswersView *self = g_object_new (SW_TYPE_ANSWERS_VIEW, NULL);

  self->bench = g_object_ref (bench);
  self->chooser = g_object_ref (sw_chooser_of (bench));
  g_signal_connect_object (self->chooser, "answered", G_CALLBACK (on_answered_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->chooser, "changed", G_CALLBACK (select_plate), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (sw_units_get (), "changed", G_CALLBACK (on_units_changed_cb),
                           self, G_CONNECT_SWAPPED);
  fill_rows (self);
  return GTK_WIDGET (self);
}
