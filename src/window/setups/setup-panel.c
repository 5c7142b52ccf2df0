/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/setups/setup-panel.h"
#include "window/bench/chooser.h"
#include "window/entry/number-row.h"
#include "window/entry/unit-spin.h"
#include "window/layout/below-button.h"
#include "window/measure/measure-window-reading.h"
#include "window/setups/corrections-panel.h"
#include "window/setups/setup-list.h"

#include "model/advice/misread-figure.h"
#include "model/advice/plausibility.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define BETWEEN_WARNINGS 150 /* ms, while something is dragged */

typedef enum {
  RIGHT_INBOARD,
  RIGHT_REARWARD,
  RIGHT_UP,
  RIGHT_BOLT,
  N_RIGHT_ROWS
} RightRow;

/* All that the search for a misread figure looks at, and what it found. */
typedef struct {
  MeasuredCorner measured;
  double bump, droop;
} MisreadSought;

struct _SwSetupPanel {
  GtkWidget parent_instance;

  SwBench *bench;
  gboolean is_showing; /* while the widgets are being told: they do not answer */

  GtkSpinButton *inboard, *rearward, *up, *lowering, *pitch;
  GtkLabel *inboard_unit, *rearward_unit, *up_unit, *lowering_unit, *pitch_unit;
  GtkWidget *home, *list_place, *corrections_place;
  GtkCheckButton *as_moved, *reset, *right_differs;
  GtkWidget *left_heading, *right_side;
  GtkGrid *right_grid;
  GtkSpinButton *right[N_RIGHT_ROWS];
  GtkLabel *tie_rod, *warnings;
  GtkScrolledWindow *scrolled;
  GtkButton *below; /* says so while the warnings are out of sight */
  guint later;      /* the source that shows the warnings during a drag, or 0 */

  MisreadSought sought;
  MisreadFigure misread[MISREAD_MOST];
  guint n_misread;
};

G_DEFINE_FINAL_TYPE (SwSetupPanel, sw_setup_panel, GTK_TYPE_WIDGET)

static void
show_tie_rod (SwSetupPanel *self)
{
  const Study *study = sw_bench_get_study (self->bench);
  const double change = corner_tie_rod_change (&study_in_hand (study)->corner);
  g_autofree char *text = NULL;

  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));
  const double turns = fabs (change) / car->thread_pitch_mm;

  g_autofree char *length = unit_text (UNIT_LENGTH, fabs (change), 2);

  if (study_in_hand (study)->corner.start_status != POSE_OK)
    text = g_strdup (pose_status_sentence (study_in_hand (study)->corner.start_status));
  else if (fabs (change) < 0.005)
    text = g_strdup (_ ("Tie rod as measured"));
  else if (change > 0.0)
    text = g_strdup_printf (_ ("Tie rod %s longer: %.2f turns"), length, turns);
  else
    text = g_strdup_printf (_ ("Tie rod %s shorter: %.2f turns"), length, turns);
  if (g_strcmp0 (gtk_label_get_label (self->tie_rod), text) != 0)
    gtk_label_set_label (self->tie_rod, text);
}

/* Nothing is read from disk for a setup that names no plate. */
static const PlateLibrary *
library_of (SwSetupPanel *self)
{
  return sw_bench_get_setup (self->bench)->plate != NULL
             ? sw_chooser_get_library (sw_chooser_of (self->bench))
             : NULL;
}

/* Sought only when what was measured has changed: setups come and go faster. */
static char *
misread_words (SwSetupPanel *self, const Car *car)
{
  const MisreadSought now = { car_measured_corner (car), car->bump_mm, car->droop_mm };

  if (memcmp (&now, &self->sought, sizeof now) != 0) {
    self->sought = now;
    self->n_misread = misread_figures (car, self->misread);
  }
  return misread_sentence (car, self->misread, self->n_misread);
}

static void
add_warning (GString *text, const char *sentence)
{
  g_autofree char *words = measure_in_words (sentence);

  g_string_append_printf (text, "%s%s", text->len > 0 ? "\n\n" : "", words);
}

static void
show_count (SwSetupPanel *self, guint n)
{
  g_autofree char *words =
      g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u warning below",
                                    "%u warnings below", n),
                       n);

  gtk_button_set_label (self->below, words);
}

/* Of the corner as measured and of the setup in hand. */
static void
show_warnings (SwSetupPanel *self)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));
  const int index = (int) sw_bench_get_setup_index (self->bench);
  g_autoptr (GPtrArray) warnings = plausibility_check_fitted (car, library_of (self));
  const guint n_measured = plausibility_n_measured (warnings);
  g_autofree char *misread = n_measured > 0 ? misread_words (self, car) : NULL;
  g_autoptr (GString) text = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < warnings->len; i++) {
    const PlausibilityWarning *warning = warnings->pdata[i];

    if (warning->setup == PLAUSIBILITY_AS_MEASURED || warning->setup == index) {
      add_warning (text, warning->sentence);
      n++;
    }
    if (i + 1 == n_measured && misread != NULL)
      add_warning (text, misread);
  }
  if (g_strcmp0 (gtk_label_get_label (self->warnings), text->str) != 0)
    gtk_label_set_label (self->warnings, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->warnings), n > 0);
  show_count (self, n);
}

static gboolean
on_later_cb (gpointer data)
{
  SwSetupPanel *self = data;

  self->later = 0;
  show_warnings (self);
  return G_SOURCE_REMOVE;
}

/* They follow a drag at a pace at which they can be read, and its end at once. */
static void
follow_with_warnings (SwSetupPanel *self)
{
  if (sw_bench_is_dragging (self->bench)) {
    if (self->later == 0)
      self->later = g_timeout_add (BETWEEN_WARNINGS, on_later_cb, self);
    return;
  }
  g_clear_handle_id (&self->later, g_source_remove);
  show_warnings (self);
}

static void
show_value (GtkSpinButton *spin, double value)
{
  if (gtk_spin_button_get_value (spin) != value)
    gtk_spin_button_set_value (spin, value);
}

static gboolean
is_moved (MountOffset mount)
{
  return mount.inboard != 0.0 || mount.rearward != 0.0 || mount.up != 0.0;
}

static void
show_right (SwSetupPanel *self)
{
  const CarRightSide *right = &sw_bench_get_setup (self->bench)->right;

  gtk_check_button_set_active (self->right_differs, right->is_own);
  gtk_widget_set_visible (self->left_heading, right->is_own);
  gtk_widget_set_visible (self->right_side, right->is_own);
  if (!right->is_own)
    return;
  show_value (self->right[RIGHT_INBOARD], right->mount.inboard);
  show_value (self->right[RIGHT_REARWARD], right->mount.rearward);
  show_value (self->right[RIGHT_UP], right->mount.up);
  show_value (self->right[RIGHT_BOLT], right->camber_bolt_deg);
}

static void
on_bench_solved_cb (SwSetupPanel *self)
{
  const Adjustment a = sw_bench_get_adjustment (self->bench);
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));

  self->is_showing = TRUE;
  show_value (self->inboard, a.mount.inboard);
  show_value (self->rearward, a.mount.rearward);
  show_value (self->up, a.mount.up);
  show_value (self->lowering, a.lowering);
  show_value (self->pitch, car->thread_pitch_mm);
  gtk_check_button_set_active (a.toe == TOE_RESET ? self->reset : self->as_moved, TRUE);
  show_right (self);
  gtk_widget_set_sensitive (self->home,
                            is_moved (a.mount) ||
                                is_moved (sw_bench_get_setup (self->bench)->right.mount));
  self->is_showing = FALSE;

  show_tie_rod (self);
  follow_with_warnings (self);
}

static void
on_pitch_changed_cb (SwSetupPanel *self)
{
  if (!self->is_showing && self->bench != NULL)
    sw_document_set_thread_pitch (sw_bench_get_document (self->bench),
                                  gtk_spin_button_get_value (self->pitch),
                                  _ ("Change thread pitch"));
}

static void
on_mount_changed_cb (SwSetupPanel *self)
{
  if (!self->is_showing && self->bench != NULL)
    sw_bench_set_mount (self->bench,
                        (MountOffset){ gtk_spin_button_get_value (self->inboard),
                                       gtk_spin_button_get_value (self->rearward),
                                       gtk_spin_button_get_value (self->up) });
}

static void
set_right (SwSetupPanel *self, const CarRightSide *right, const char *label)
{
  sw_document_set_right_side (sw_bench_get_document (self->bench),
                              sw_bench_get_setup_index (self->bench), right, label);
}

/* From the left side's values on. */
static void
on_right_toggled_cb (SwSetupPanel *self)
{
  if (self->is_showing || self->bench == NULL)
    return;
  if (!gtk_check_button_get_active (self->right_differs)) {
    set_right (self, &(CarRightSide){ 0 }, _ ("Set the right side as the left"));
    return;
  }
  const CarSetup *setup = sw_bench_get_setup (self->bench);
  const CarRightSide right = { TRUE, setup->mount, setup->corrections.camber_bolt_deg };

  set_right (self, &right, _ ("Set the right side by itself"));
}

static void
on_right_changed_cb (SwSetupPanel *self)
{
  if (self->is_showing)
    return;
  const CarRightSide right = {
    .is_own = TRUE,
    .mount = { gtk_spin_button_get_value (self->right[RIGHT_INBOARD]),
               gtk_spin_button_get_value (self->right[RIGHT_REARWARD]),
               gtk_spin_button_get_value (self->right[RIGHT_UP]) },
    .camber_bolt_deg = gtk_spin_button_get_value (self->right[RIGHT_BOLT]),
  };

  set_right (self, &right, _ ("Change right side"));
}

static void
on_lowering_changed_cb (SwSetupPanel *self)
{
  if (!self->is_showing && self->bench != NULL)
    sw_bench_set_lowering (self->bench, gtk_spin_button_get_value (self->lowering));
}

static void
on_toe_toggled_cb (SwSetupPanel *self)
{
  if (!self->is_showing && self->bench != NULL)
    sw_bench_set_toe (self->bench, gtk_check_button_get_active (self->as_moved)
                                       ? TOE_AS_MOVED
                                       : TOE_RESET);
}

/* Both sides, in one step. */
static void
on_home_clicked_cb (SwSetupPanel *self)
{
  CarRightSide right = sw_bench_get_setup (self->bench)->right;

  right.mount = (MountOffset){ 0 };
  sw_bench_begin_drag (self->bench, _ ("Move upper mount"));
  sw_bench_set_mount (self->bench, (MountOffset){ 0 });
  set_right (self, &right, _ ("Move upper mount"));
  sw_bench_end_drag (self->bench);
}

static void
sw_setup_panel_dispose (GObject *object)
{
  SwSetupPanel *self = SW_SETUP_PANEL (object);
  GtkWidget *child;

  g_clear_handle_id (&self->later, g_source_remove);
  g_clear_object (&self->bench);
  while ((child = gtk_widget_get_last_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (sw_setup_panel_parent_class)->dispose (object);
}

static void
sw_setup_panel_class_init (SwSetupPanelClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_setup_panel_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/org/strutwright/Strutwright/setup-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, list_place);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, corrections_place);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, pitch);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, inboard);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, rearward);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, up);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, lowering);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, inboard_unit);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, rearward_unit);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, up_unit);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, lowering_unit);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, pitch_unit);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, home);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, as_moved);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, reset);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, tie_rod);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, warnings);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, scrolled);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, left_heading);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, right_differs);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, right_side);
  gtk_widget_class_bind_template_child (widget_class, SwSetupPanel, right_grid);
  gtk_widget_class_bind_template_callback (widget_class, on_pitch_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_right_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_mount_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_lowering_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_toe_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_home_clicked_cb);
}

static void
add_right_rows (SwSetupPanel *self)
{
  const struct {
    NumberRow row;
    const char *spoken;
  } rows[N_RIGHT_ROWS] = {
    [RIGHT_INBOARD] = { { _ ("Inboard"),
                          _ ("Towards the centre of the car: more negative camber, more "
                             "steering-axis inclination"),
                          UNIT_LENGTH, 150.0, 1.0, 1 },
                        _ ("Inboard, right side") },
    [RIGHT_REARWARD] = { { _ ("Rearward"),
                           _ ("Towards the rear of the car: more caster, more trail"),
                           UNIT_LENGTH, 150.0, 1.0, 1 },
                         _ ("Rearward, right side") },
    [RIGHT_UP] = { { _ ("Up"), _ ("The plate raises the bearing in the body"),
                     UNIT_LENGTH, 150.0, 1.0, 1 },
                   _ ("Up, right side") },
    [RIGHT_BOLT] = { { _ ("Camber bolt"),
                       _ ("Camber bolt or slotted holes: turns the strut at the lower "
                          "clamp. Negative leans the top of the wheel in"),
                       UNIT_ANGLE, 10.0, 0.25, 2 },
                     _ ("Camber bolt, right side") },
  };

  for (int i = 0; i < N_RIGHT_ROWS; i++) {
    GtkLabel *name;

    self->right[i] = number_row_attach (self->right_grid, i, &rows[i].row, &name);
    gtk_label_set_mnemonic_widget (name, NULL);
    unit_spin_set_name (self->right[i], rows[i].spoken);
    g_signal_connect_swapped (self->right[i], "value-changed",
                              G_CALLBACK (on_right_changed_cb), self);
  }
}

static void
add_below (SwSetupPanel *self)
{
  GtkWidget *below = below_button_new (self->scrolled, GTK_WIDGET (self->warnings));

  gtk_widget_add_css_class (below, "flat");
  gtk_widget_add_css_class (below, "below");
  gtk_widget_set_parent (below, GTK_WIDGET (self));
  self->below = GTK_BUTTON (below);
}

static void
sw_setup_panel_init (SwSetupPanel *self)
{
  self->is_showing = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  unit_spin_begin (self->inboard, UNIT_LENGTH, 1, self->inboard_unit);
  unit_spin_begin (self->rearward, UNIT_LENGTH, 1, self->rearward_unit);
  unit_spin_begin (self->up, UNIT_LENGTH, 1, self->up_unit);
  unit_spin_begin (self->lowering, UNIT_LENGTH, 1, self->lowering_unit);
  unit_spin_begin (self->pitch, UNIT_PITCH, 2, self->pitch_unit);
  add_right_rows (self);
  add_below (self);
}

GtkWidget *
sw_setup_panel_new (SwBench *bench)
{
  SwSetupPanel *self = g_object_new (SW_TYPE_SETUP_PANEL, NULL);

  self->bench = g_object_ref (bench);
  gtk_box_append (GTK_BOX (self->list_place), sw_setup_list_new (bench));
  gtk_box_append (GTK_BOX (self->corrections_place), sw_corrections_panel_new (bench));
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  on_bench_solved_cb (self);
  return GTK_WIDGET (self);
}
