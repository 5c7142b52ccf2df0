/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/units-window.h"
#include "window/dialog/escape-key.h"
#include "window/entry/unit-spin.h"
#include "window/settings/units.h"

#include <glib/gi18n-lib.h>

#define MOST_CHOICES 4 /* with the NULL behind them */
#define LEAST_DIAMETER 50.0
#define MOST_DIAMETER 1000.0

typedef struct {
  const char *name;                  /* to be translated, as are … */
  const char *choices[MOST_CHOICES]; /* in the order of their enum */
  gsize offset;                      /* of that in UnitChoice */
} Row;

static const Row rows[] = {
  { N_ ("Lengths"),
    { N_ ("millimetres"), N_ ("inches") },
    offsetof (UnitChoice, length) },
  { N_ ("Angles"),
    { N_ ("decimal degrees"), N_ ("degrees and minutes") },
    offsetof (UnitChoice, angle) },
  { N_ ("Toe"),
    { N_ ("angle of one wheel"), N_ ("angle of both wheels"),
      N_ ("length of both at a diameter") },
    offsetof (UnitChoice, toe) },
  { N_ ("Spring rates"), { N_ ("N/mm"), N_ ("lbf/in") }, offsetof (UnitChoice, rate) },
  { N_ ("Forces"),
    { N_ ("newtons"), N_ ("pounds-force") },
    offsetof (UnitChoice, force) },
  { N_ ("Masses"), { N_ ("kilograms"), N_ ("pounds") }, offsetof (UnitChoice, mass) },
};

typedef struct {
  GtkDropDown *choices[G_N_ELEMENTS (rows)];
  GtkSpinButton *diameter;
} UnitsForm;

static int *
member (UnitChoice *choice, const Row *row)
{
  return (int *) (gpointer) ((char *) choice + row->offset);
}

static void
on_chosen_cb (UnitsForm *form)
{
  UnitChoice choice = *unit_choice ();

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    *member (&choice, &rows[i]) = (int) gtk_drop_down_get_selected (form->choices[i]);
  choice.toe_diameter_mm = gtk_spin_button_get_value (form->diameter);
  gtk_widget_set_sensitive (GTK_WIDGET (form->diameter), choice.toe == TOE_AT_DIAMETER);
  sw_units_choose (sw_units_get (), &choice);
}

static GtkDropDown *
new_choices (const Row *row)
{
  const char *words[MOST_CHOICES] = { NULL };
  UnitChoice choice = *unit_choice ();

  for (int i = 0; row->choices[i] != NULL; i++)
    words[i] = _ (row->choices[i]);

  GtkWidget *widget = gtk_drop_down_new_from_strings (words);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (widget), (guint) *member (&choice, row));
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (row->name), -1);
  return GTK_DROP_DOWN (widget);
}

static void
attach_name (GtkGrid *grid, int place, const char *name, GtkWidget *widget)
{
  GtkWidget *label = gtk_label_new (name);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), widget);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_grid_attach (grid, label, 0, place, 1, 1);
}

static void
attach_diameter (UnitsForm *form, GtkGrid *grid, int place)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (LEAST_DIAMETER, MOST_DIAMETER, 10.0);
  GtkWidget *unit = gtk_label_new (NULL);

  form->diameter = GTK_SPIN_BUTTON (spin);
  gtk_spin_button_set_value (form->diameter, unit_choice ()->toe_diameter_mm);
  unit_spin_begin (form->diameter, UNIT_LENGTH, 1, GTK_LABEL (unit));
  gtk_widget_set_tooltip_text (
      spin, _ ("Where the gauge touches the rims, in front of the hubs and behind them"));
  gtk_widget_set_sensitive (spin, unit_choice ()->toe == TOE_AT_DIAMETER);
  unit_spin_set_name (form->diameter, _ ("Diameter of the toe"));
  attach_name (grid, place, _ ("At a diameter of"), spin);
  gtk_grid_attach (grid, spin, 1, place, 1, 1);
  gtk_grid_attach (grid, unit, 2, place, 1, 1);
  g_signal_connect_swapped (spin, "value-changed", G_CALLBACK (on_chosen_cb), form);
}

static GtkWidget *
new_note (void)
{
  GtkWidget *note = gtk_label_new (
      _ ("Entries take sums, fractions and units, as 12.5 + 1/8 in or 1°30'. Files, "
         "tables for other programs and the command line stay in mm and degrees."));

  gtk_label_set_wrap (GTK_LABEL (note), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (note), 44);
  gtk_label_set_xalign (GTK_LABEL (note), 0.0f);
  gtk_widget_add_css_class (note, "dim-label");
  return note;
}

static GtkWidget *
new_form (void)
{
  UnitsForm *form = g_new0 (UnitsForm, 1);
  GtkWidget *grid = gtk_grid_new ();
  int place = 0;

  gtk_widget_add_css_class (grid, "panel");
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 8);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    form->choices[i] = new_choices (&rows[i]);
    attach_name (GTK_GRID (grid), place, _ (rows[i].name), GTK_WIDGET (form->choices[i]));
    gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (form->choices[i]), 1, place++, 2, 1);
    if (rows[i].offset == offsetof (UnitChoice, toe))
      attach_diameter (form, GTK_GRID (grid), place++);
  }
  gtk_grid_attach (GTK_GRID (grid), new_note (), 0, place, 3, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    g_signal_connect_swapped (form->choices[i], "notify::selected",
                              G_CALLBACK (on_chosen_cb), form);
  g_object_set_data_full (G_OBJECT (grid), "form", form, g_free);
  return grid;
}

void
units_window_present (GtkWindow *parent)
{
  GtkWidget *window =
      g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE, "title",
                    _ ("Units"), "resizable", FALSE, "child", new_form (), NULL);

  escape_key_closes (window);
  gtk_window_present (GTK_WINDOW (window));
}
