/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-group.h"
#include "window/layout/scroll-to.h"
#include "window/layout/wrap-lines.h"
#include "window/springs/springs-panel-choice.h"
#include "window/springs/springs-panel-cure.h"
#include "window/springs/springs-panel-number.h"
#include "window/springs/springs-panel-reading.h"
#include "window/springs/springs-panel-sections.h"
#include "window/springs/springs-panel-start.h"
#include "window/springs/springs-panel-table.h"

#include <glib/gi18n-lib.h>

#define COLUMN_GAP 16
#define ROW_GAP 4
#define TOLD_CHARS 40

typedef enum {
  ITEM_END,
  ITEM_COLUMN, /* the next ones stand beside */
  ITEM_CHOICE,
  ITEM_NUMBERS, /* from one to another */
  ITEM_TABLE,
  ITEM_SECTIONS,
  ITEM_READING,
  ITEM_CURE
} ItemKind;

typedef struct {
  ItemKind kind;
  guint what, last;
} Item;

#define MOST_ITEMS 12

static const Item items[N_SPRINGS_GROUPS][MOST_ITEMS] = {
  [SPRINGS_BAR] = { { ITEM_CHOICE, CHOICE_BAR, 0 },
                    { ITEM_SECTIONS, 0, 0 },
                    { ITEM_NUMBERS, ROW_BAR_RATE, ROW_BAR_RATE },
                    { ITEM_READING, READING_BAR, 0 },
                    { ITEM_NUMBERS, ROW_BAR_MODULUS, ROW_BAR_MODULUS },
                    { ITEM_COLUMN, 0, 0 },
                    { ITEM_NUMBERS, ROW_CLAMP_ANGLE, ROW_CLAMP_ANGLE },
                    { ITEM_CURE, RAISE_CLAMP_ANGLE, 0 },
                    { ITEM_NUMBERS, ROW_LEVER, ROW_SPLINES },
                    { ITEM_READING, READING_ADJUSTER, 0 } },
  [SPRINGS_COIL] = { { ITEM_CHOICE, CHOICE_COIL, 0 },
                     { ITEM_NUMBERS, ROW_COIL_RATE, ROW_TOTAL_COILS },
                     { ITEM_TABLE, TABLE_COIL, 0 },
                     { ITEM_READING, READING_COIL, 0 },
                     { ITEM_COLUMN, 0, 0 },
                     { ITEM_NUMBERS, ROW_PERCH, ROW_PERCH },
                     { ITEM_CURE, RAISE_PERCH, 0 },
                     { ITEM_NUMBERS, ROW_FREE_LENGTH, ROW_SOLID_LENGTH },
                     { ITEM_NUMBERS, ROW_COIL_MODULUS, ROW_COIL_MODULUS },
                     { ITEM_COLUMN, 0, 0 },
                     { ITEM_NUMBERS, ROW_UPPER_DROP, ROW_UPPER_FORWARD } },
  [SPRINGS_HELPER] = { { ITEM_CHOICE, CHOICE_HELPER, 0 },
                       { ITEM_NUMBERS, ROW_HELPER_RATE, ROW_HELPER_UPPER_DROP } },
  [SPRINGS_STOPS] = { { ITEM_NUMBERS, ROW_STOP_GAP, ROW_STOP_GAP },
                      { ITEM_TABLE, TABLE_BUMP_STOP, 0 },
                      { ITEM_NUMBERS, ROW_DROOP_STOP, ROW_DROOP_STOP } },
  [SPRINGS_ANTI_ROLL] = { { ITEM_CHOICE, CHOICE_ANTI_ROLL, 0 },
                          { ITEM_NUMBERS, ROW_ANTI_ROLL_RATE, ROW_ANTI_ROLL_ARM },
                          { ITEM_READING, READING_ANTI_ROLL, 0 },
                          { ITEM_COLUMN, 0, 0 },
                          { ITEM_CHOICE, CHOICE_LINK, 0 },
                          { ITEM_CHOICE, CHOICE_LINK_POINT, 0 },
                          { ITEM_NUMBERS, ROW_LINK_X, ROW_LINK_Z },
                          { ITEM_NUMBERS, ROW_ANTI_ROLL_MODULUS,
                            ROW_ANTI_ROLL_MODULUS } },
  [SPRINGS_DAMPER] = { { ITEM_NUMBERS, ROW_GAS, ROW_GAS },
                       { ITEM_TABLE, TABLE_DAMPER, 0 },
                       { ITEM_NUMBERS, ROW_TYRE, ROW_TYRE } },
  [SPRINGS_ROD] = { { ITEM_CHOICE, CHOICE_ROD, 0 },
                    { ITEM_NUMBERS, ROW_ROD_DIAMETER, ROW_ROD_BORE },
                    { ITEM_COLUMN, 0, 0 },
                    { ITEM_NUMBERS, ROW_GUIDE_HEIGHT, ROW_FRICTION } },
};

typedef struct {
  SpringsEdit *edit;
  SpringsGroup group;
  GtkWidget *box, *told, *columns;
  GtkWidget *check; /* NULL where it is always there */
} Group;

static const char *
add_label (SpringsGroup group)
{
  switch (group) {
  case SPRINGS_BAR:
    return _ ("Add a torsion bar");
  case SPRINGS_COIL:
    return _ ("Add a coil");
  case SPRINGS_HELPER:
    return _ ("Add a helper spring");
  case SPRINGS_STOPS:
    return _ ("Add a bump stop");
  case SPRINGS_ANTI_ROLL:
    return _ ("Add an anti-roll bar");
  default:
    return _ ("Add a rod");
  }
}

static const char *
remove_label (SpringsGroup group)
{
  switch (group) {
  case SPRINGS_BAR:
    return _ ("Remove the torsion bar");
  case SPRINGS_COIL:
    return _ ("Remove the coil");
  case SPRINGS_HELPER:
    return _ ("Remove the helper spring");
  case SPRINGS_STOPS:
    return _ ("Remove the bump stop");
  case SPRINGS_ANTI_ROLL:
    return _ ("Remove the anti-roll bar");
  default:
    return _ ("Remove the rod");
  }
}

/* So that the car stands where it stands, if this spring can do it. */
static void
carry_the_car (Group *self, SpringSet *set)
{
  const RaiseBy by = self->group == SPRINGS_COIL ? RAISE_PERCH : RAISE_CLAMP_ANGLE;

  if (self->group != SPRINGS_COIL && self->group != SPRINGS_BAR)
    return;
  if (springs_cure_take (self->edit, by, set))
    springs_edit_choose (self->edit, self->check, set, add_label (self->group));
}

/* One step, of all that it takes. */
static void
add_part (Group *self)
{
  SwBench *bench = springs_edit_bench (self->edit);
  SpringSet set = *springs_edit_now (self->edit);

  springs_start (&set, self->group);
  sw_bench_begin_drag (bench, add_label (self->group));
  springs_edit_choose (self->edit, self->check, &set, add_label (self->group));
  if (springs_has_group (springs_edit_now (self->edit), self->group))
    carry_the_car (self, &set);
  sw_bench_end_drag (bench);
  if (!springs_has_group (springs_edit_now (self->edit), self->group))
    return;

  g_autofree char *sentence = springs_start_sentence (&set, self->group);
  springs_edit_tell (self->edit, self->told, sentence);
}

static void
remove_part (Group *self)
{
  SpringSet set = *springs_edit_now (self->edit);

  springs_end (&set, self->group);
  springs_edit_choose (self->edit, self->check, &set, remove_label (self->group));
  springs_edit_tell (self->edit, NULL, NULL);
}

/* With its columns the part may go to another line, away from the pointer: its head is
 * seen, and as much of them as there is room for. */
static void
keep_in_sight (Group *self)
{
  scroll_to (gtk_widget_get_visible (self->columns) ? self->columns : self->check,
             self->check);
}

static void
on_toggled_cb (Group *self)
{
  const gboolean wanted = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check));

  if (springs_edit_is_telling (self->edit))
    return;
  if (wanted)
    add_part (self);
  else
    remove_part (self);
  keep_in_sight (self);
}

static void
show (gpointer part)
{
  Group *self = part;
  const SpringSet *set = springs_edit_now (self->edit);

  if (self->check != NULL)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->check),
                                 springs_has_group (set, self->group));
  gtk_widget_set_visible (self->columns, self->group == SPRINGS_STOPS ||
                                             springs_has_group (set, self->group));
  gtk_widget_set_sensitive (self->box, springs_edit_owner (self->edit, self->group) !=
                                           SET_INHERITED);
}

static GtkGrid *
new_column (GtkWidget *columns)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), ROW_GAP);
  sw_wrap_lines_append (SW_WRAP_LINES (columns), grid);
  return GTK_GRID (grid);
}

static int
add_numbers (SpringsEdit *edit, const Item *item, GtkGrid *grid, int at)
{
  int taken = 0;

  for (guint row = item->what; row <= item->last; row++)
    taken += springs_number_add (edit, row, grid, at + taken);
  return taken;
}

static int
add_item (SpringsEdit *edit, const Item *item, GtkGrid *grid, int at)
{
  switch (item->kind) {
  case ITEM_CHOICE:
    return springs_choice_add (edit, item->what, grid, at);
  case ITEM_NUMBERS:
    return add_numbers (edit, item, grid, at);
  case ITEM_TABLE:
    return springs_table_add (edit, item->what, grid, at);
  case ITEM_SECTIONS:
    gtk_grid_attach (grid, springs_sections_new (edit), 0, at, 3, 1);
    return 1;
  case ITEM_READING:
    return springs_reading_add (edit, item->what, grid, at);
  case ITEM_CURE:
    return springs_cure_add (edit, item->what, grid, at);
  default:
    return 0;
  }
}

static GtkWidget *
new_head (Group *self)
{
  const char *name = springs_group_name (self->group);

  if (self->group == SPRINGS_DAMPER)
    return springs_label_new (name, "heading");
  self->check = gtk_check_button_new_with_label (name);
  gtk_widget_add_css_class (self->check, "heading");
  gtk_widget_set_halign (self->check, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (self->check,
                               _ ("Adds this part with plausible numbers to be "
                                  "overwritten, or takes it away"));
  g_signal_connect_swapped (self->check, "toggled", G_CALLBACK (on_toggled_cb), self);
  return self->check;
}

static GtkWidget *
new_told (void)
{
  GtkWidget *told = springs_label_new ("", NULL);

  gtk_label_set_wrap (GTK_LABEL (told), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (told), TOLD_CHARS);
  gtk_widget_set_visible (told, FALSE);
  return told;
}

GtkWidget *
springs_group_new (SpringsEdit *edit, SpringsGroup group)
{
  Group *self = g_new0 (Group, 1);
  int at = 0;

  self->edit = edit;
  self->group = group;
  self->columns = sw_wrap_lines_new (COLUMN_GAP, ROW_GAP);
  self->told = new_told ();
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, ROW_GAP);
  gtk_box_append (GTK_BOX (self->box), new_head (self));
  gtk_box_append (GTK_BOX (self->box), self->told);
  gtk_box_append (GTK_BOX (self->box), self->columns);

  GtkGrid *grid = new_column (self->columns);
  for (const Item *item = items[group]; item->kind != ITEM_END; item++)
    if (item->kind == ITEM_COLUMN) {
      grid = new_column (self->columns);
      at = 0;
    } else {
      at += add_item (edit, item, grid, at);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->box),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  springs_group_name (group), -1);
  springs_edit_add_part (edit, show, self);
  return self->box;
}
