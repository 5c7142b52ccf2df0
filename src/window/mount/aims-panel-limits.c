/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/aims-panel-limits.h"
#include "window/entry/unit-spin.h"

#include <glib/gi18n-lib.h>

/* A row of the panel: a member of CarLimits. */
typedef struct {
  gsize offset;
  const char *name, *meaning; /* to be translated */
  const char *unit;
  double least, most, step;
  int digits;
} Row;

static const Row rows[] = {
  { offsetof (CarLimits, tyre_clearance_mm), N_ ("Tyre to strut, at least"),
    N_ ("Between the tyre's inner shoulder and strut tube, spring seat or spring"), "mm",
    0.0, 100.0, 0.5, 1 },
  { offsetof (CarLimits, edge_margin_mm), N_ ("Bearing to edge, at least"),
    N_ ("Between the bearing and the edge of the opening in the strut tower"), "mm", 0.0,
    100.0, 0.5, 1 },
  { offsetof (CarLimits, cross_camber_deg), N_ ("Camber left to right, at most"),
    N_ ("Difference of camber between the two sides"), "°", 0.0, 5.0, 0.05, 2 },
  { offsetof (CarLimits, cross_caster_deg), N_ ("Caster left to right, at most"),
    N_ ("Difference of caster between the two sides: the car pulls to one side"), "°",
    0.0, 5.0, 0.05, 2 },
  { offsetof (CarLimits, camber_bolt_deg), N_ ("Camber bolt, at most"),
    N_ ("What the camber bolts that can be had change, either way"), "°", 0.0, 10.0, 0.25,
    2 },
  { offsetof (CarLimits, travel_used_mm), N_ ("Travel used, either way"),
    N_ ("Bump steer, room and tilt are looked at so far up and down from standing"), "mm",
    0.0, 200.0, 5.0, 0 },
};

typedef struct {
  SwChooser *chooser;
  GtkWidget *box, *side;
  GtkSpinButton *spins[G_N_ELEMENTS (rows)];
  GtkWidget *coil, *bar, *bolt, *swap;
  gboolean is_telling; /* while the entries are being told: they do not answer */
} Panel;

static SwDocument *
document_of (const Panel *self)
{
  return sw_bench_get_document (sw_chooser_get_bench (self->chooser));
}

static double *
member (CarLimits *limits, const Row *row)
{
  return (double *) (gpointer) ((char *) limits + row->offset);
}

static void
on_bench_solved_cb (GtkWidget *box)
{
  Panel *self = g_object_get_data (G_OBJECT (box), "panel");
  CarLimits now = sw_document_get_car (document_of (self))->limits;

  self->is_telling = TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (gtk_spin_button_get_value (self->spins[i]) != *member (&now, &rows[i]))
      gtk_spin_button_set_value (self->spins[i], *member (&now, &rows[i]));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (
                                   sw_chooser_get_question (self->chooser).carrier ==
                                           CARRIED_BY_COIL
                                       ? self->coil
                                       : self->bar),
                               TRUE);
  self->is_telling = FALSE;
}

static void
on_limit_changed_cb (Panel *self)
{
  if (self->is_telling)
    return;

  g_autoptr (Car) draft = car_copy (sw_document_get_car (document_of (self)));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    *member (&draft->limits, &rows[i]) = gtk_spin_button_get_value (self->spins[i]);
  sw_document_set_measured (document_of (self), draft, _ ("Change limits"), NULL);
}

static void
on_question_changed_cb (Panel *self)
{
  if (self->is_telling)
    return;

  const ChoiceQuestion question = {
    .carrier = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->bar))
                   ? CARRIED_BY_TORSION_BAR
                   : CARRIED_BY_COIL,
    .try_bolt = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->bolt)),
    .try_swap = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->swap)),
  };

  sw_chooser_set_question (self->chooser, &question);
}

static void
add_limit (Panel *self, GtkGrid *grid, int i)
{
  const Row *row = &rows[i];
  GtkWidget *name = gtk_label_new (_ (row->name)), *unit = gtk_label_new (NULL);
  GtkWidget *spin = gtk_spin_button_new_with_range (row->least, row->most, row->step);

  gtk_label_set_xalign (GTK_LABEL (name), 0.0f);
  gtk_label_set_mnemonic_widget (GTK_LABEL (name), spin);
  gtk_label_set_xalign (GTK_LABEL (unit), 0.0f);
  gtk_widget_add_css_class (unit, "dim-label");
  gtk_widget_set_tooltip_text (name, _ (row->meaning));
  gtk_widget_set_tooltip_text (spin, _ (row->meaning));
  unit_spin_begin (GTK_SPIN_BUTTON (spin), unit_kind_of (row->unit), row->digits,
                   GTK_LABEL (unit));
  g_signal_connect_swapped (spin, "value-changed", G_CALLBACK (on_limit_changed_cb),
                            self);
  gtk_grid_attach (grid, name, 0, i, 1, 1);
  gtk_grid_attach (grid, spin, 1, i, 1, 1);
  gtk_grid_attach (grid, unit, 2, i, 1, 1);
  self->spins[i] = GTK_SPIN_BUTTON (spin);
}

static GtkWidget *
add_check (Panel *self, const char *label, gboolean active)
{
  GtkWidget *check = gtk_check_button_new_with_label (label);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), active);
  gtk_box_append (GTK_BOX (self->side), check);
  return check;
}

static void
add_heading (Panel *self, const char *text)
{
  GtkWidget *heading = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_widget_add_css_class (heading, "heading");
  gtk_box_append (GTK_BOX (self->side), heading);
}

static void
add_question (Panel *self)
{
  const ChoiceQuestion now = sw_chooser_get_question (self->chooser);
  GtkWidget **checks[] = { &self->coil, &self->bar, &self->bolt, &self->swap };

  add_heading (self, _ ("The load stands on"));
  self->coil =
      add_check (self, _ ("a coil on the strut"), now.carrier == CARRIED_BY_COIL);
  self->bar = add_check (self, _ ("a torsion bar at the arm"),
                         now.carrier == CARRIED_BY_TORSION_BAR);
  gtk_check_button_set_group (GTK_CHECK_BUTTON (self->bar),
                              GTK_CHECK_BUTTON (self->coil));
  add_heading (self, _ ("May be fitted as well"));
  self->bolt =
      add_check (self, _ ("a camber bolt, where the mount alone misses"), now.try_bolt);
  self->swap = add_check (self, _ ("left and right plates swapped"), now.try_swap);
  for (gsize i = 0; i < G_N_ELEMENTS (checks); i++)
    g_signal_connect_swapped (*checks[i], "toggled", G_CALLBACK (on_question_changed_cb),
                              self);
}

GtkWidget *
limits_panel_new (SwChooser *chooser)
{
  Panel *self = g_new0 (Panel, 1);
  GtkWidget *grid = gtk_grid_new ();

  self->chooser = chooser;
  self->is_telling = TRUE;
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  self->side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  g_object_set_data_full (G_OBJECT (self->box), "panel", self, g_free);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  for (int i = 0; i < (int) G_N_ELEMENTS (rows); i++)
    add_limit (self, GTK_GRID (grid), i);
  gtk_box_append (GTK_BOX (self->box), grid);
  gtk_box_append (GTK_BOX (self->box), self->side);
  add_question (self);
  g_signal_connect_object (sw_chooser_get_bench (chooser), "solved",
                           G_CALLBACK (on_bench_solved_cb), self->box, G_CONNECT_SWAPPED);
  on_bench_solved_cb (self->box);
  return self->box;
}
