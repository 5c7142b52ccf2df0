/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/setups/corrections-panel.h"
#include "window/entry/number-row.h"

#include <glib/gi18n-lib.h>

/* A row of the panel: a member of CarCorrections. */
typedef struct {
  gsize offset;
  const char *name, *meaning; /* to be translated */
  UnitKind unit;
  double most, step; /* both ways */
  int digits;
} Row;

static const Row rows[] = {
  { offsetof (CarCorrections, camber_bolt_deg), N_ ("Camber bolt"),
    N_ ("Camber bolt or slotted holes: turns the strut at the lower clamp. Negative leans the "
        "top of the wheel in"),
    UNIT_ANGLE, 10.0, 0.25, 2 },
  { offsetof (CarCorrections, ball_joint_spacer_mm), N_ ("Ball-joint spacer"),
    N_ ("Puts the ball joint lower on the knuckle: raises the roll centre of a lowered car"),
    UNIT_LENGTH, 200.0, 1.0, 1 },
  { offsetof (CarCorrections, tie_rod_end_spacer_mm), N_ ("Tie-rod-end spacer"),
    N_ ("Puts the tie rod's outer end lower on the knuckle: changes bump steer"),
    UNIT_LENGTH, 200.0, 1.0, 1 },
  { offsetof (CarCorrections, front_pivot_raise_mm), N_ ("Front pivot up"),
    N_ ("Raises the lower arm's front inner pivot in the body"), UNIT_LENGTH, 200.0, 1.0,
    1 },
  { offsetof (CarCorrections, rear_pivot_raise_mm), N_ ("Rear pivot up"),
    N_ ("Raises the lower arm's rear inner pivot in the body"), UNIT_LENGTH, 200.0, 1.0,
    1 },
  { offsetof (CarCorrections, pivot_outboard_mm), N_ ("Offset bushes out"),
    N_ ("Offset inner bushes: both pivots of the arm outboard"), UNIT_LENGTH, 200.0, 1.0,
    1 },
  { offsetof (CarCorrections, rack_raise_mm), N_ ("Rack up"),
    N_ ("Raises the rack, and with it the tie rod's inner end"), UNIT_LENGTH, 200.0, 1.0,
    1 },
  { offsetof (CarCorrections, tie_rod_length_mm), N_ ("Tie rod longer"),
    N_ ("Turns the tie rod out; without effect while toe is reset"), UNIT_LENGTH, 200.0,
    0.5, 2 },
  { offsetof (CarCorrections, wheel_spacer_mm), N_ ("Wheel spacer"),
    N_ ("A spacer or a smaller rim offset: puts the wheel outboard, changes the scrub "
        "radius and takes the tyre away from the strut"),
    UNIT_LENGTH, 200.0, 1.0, 1 },
};

struct _SwCorrectionsPanel {
  GtkWidget parent_instance;

  SwBench *bench;
  GtkWidget *expander;
  GtkSpinButton *spins[G_N_ELEMENTS (rows)];
  GtkLabel *bolt;      /* the name of the first */
  gboolean is_telling; /* while the entries are being told: they do not answer */
};

G_DEFINE_FINAL_TYPE (SwCorrectionsPanel, sw_corrections_panel, GTK_TYPE_WIDGET)

static double *
member (CarCorrections *corrections, const Row *row)
{
  return (double *) (gpointer) ((char *) corrections + row->offset);
}

static void
on_bench_solved_cb (SwCorrectionsPanel *self)
{
  const CarSetup *setup = sw_bench_get_setup (self->bench);
  CarCorrections now = setup->corrections;

  self->is_telling = TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (gtk_spin_button_get_value (self->spins[i]) != *member (&now, &rows[i]))
      gtk_spin_button_set_value (self->spins[i], *member (&now, &rows[i]));
  gtk_label_set_label (self->bolt,
                       setup->right.is_own ? _ ("Camber bolt, left") : _ ("Camber bolt"));
  self->is_telling = FALSE;
}

static void
on_value_changed_cb (SwCorrectionsPanel *self)
{
  CarCorrections corrections = sw_bench_get_setup (self->bench)->corrections;

  if (self->is_telling)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    *member (&corrections, &rows[i]) = gtk_spin_button_get_value (self->spins[i]);
  sw_document_set_corrections (sw_bench_get_document (self->bench),
                               sw_bench_get_setup_index (self->bench), &corrections,
                               _ ("Change correction"));
}

static void
add_row (SwCorrectionsPanel *self, GtkGrid *grid, int i)
{
  const Row *row = &rows[i];
  const NumberRow number = { .name = _ (row->name),
                             .meaning = _ (row->meaning),
                             .unit = row->unit,
                             .most = row->most,
                             .step = row->step,
                             .digits = row->digits };

  self->spins[i] = number_row_attach (grid, i, &number, i == 0 ? &self->bolt : NULL);
  g_signal_connect_swapped (self->spins[i], "value-changed",
                            G_CALLBACK (on_value_changed_cb), self);
}

static void
sw_corrections_panel_dispose (GObject *object)
{
  SwCorrectionsPanel *self = SW_CORRECTIONS_PANEL (object);

  g_clear_pointer (&self->expander, gtk_widget_unparent);
  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_corrections_panel_parent_class)->dispose (object);
}

static void
sw_corrections_panel_class_init (SwCorrectionsPanelClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_corrections_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class),
                                            GTK_TYPE_BIN_LAYOUT);
}

static void
sw_corrections_panel_init (SwCorrectionsPanel *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_widget_set_margin_top (grid, 6);
  for (int i = 0; i < (int) G_N_ELEMENTS (rows); i++)
    add_row (self, GTK_GRID (grid), i);
  self->expander = gtk_expander_new (_ ("Corrections"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Corrections"), -1);
  gtk_expander_set_child (GTK_EXPANDER (self->expander), grid);
  /* a folded child that counts as visible gets the focus outside of any window */
  g_object_bind_property (self->expander, "expanded", grid, "visible",
                          G_BINDING_SYNC_CREATE);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
}

GtkWidget *
sw_corrections_panel_new (SwBench *bench)
{
  SwCorrectionsPanel *self = g_object_new (SW_TYPE_CORRECTIONS_PANEL, NULL);

  self->bench = g_object_ref (bench);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  on_bench_solved_cb (self);
  return GTK_WIDGET (self);
}
