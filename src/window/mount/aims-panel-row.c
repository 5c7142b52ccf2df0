/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/aims-panel-row.h"
#include "window/entry/unit-spin.h"
#include "window/mount/aims-panel-bound.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What the three steps of weight stand for. */
static const double weights[] = { 0.1, 1.0, 10.0 };

struct AimRow {
  SwChooser *chooser;
  Aim aim;
  GtkWidget *is_aim, *least, *most, *weight;
  gboolean is_telling; /* while the widgets are being told: they do not answer */
};

static SwDocument *
document_of (const AimRow *self)
{
  return sw_bench_get_document (sw_chooser_get_bench (self->chooser));
}

static const GArray *
targets_of (const AimRow *self)
{
  return sw_document_get_car (document_of (self))->targets;
}

static const CarTarget *
find (const AimRow *self)
{
  const GArray *targets = targets_of (self);

  for (guint i = 0; i < targets->len; i++)
    if (g_array_index (targets, CarTarget, i).aim == (guint) self->aim)
      return &g_array_index (targets, CarTarget, i);
  return NULL;
}

static guint
step_of (double weight)
{
  guint nearest = 0;

  for (guint i = 1; i < G_N_ELEMENTS (weights); i++)
    if (fabs (log (weight / weights[i])) < fabs (log (weight / weights[nearest])))
      nearest = i;
  return nearest;
}

void
aim_row_show (AimRow *self)
{
  const CarTarget *target = find (self);

  self->is_telling = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->is_aim), target != NULL);
  range_bound_set (self->least, target != NULL ? target->least : -INFINITY);
  range_bound_set (self->most, target != NULL ? target->most : INFINITY);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->weight),
                              step_of (target != NULL ? target->weight : 1.0));
  gtk_widget_set_sensitive (self->weight, target != NULL);
  self->is_telling = FALSE;
}

/* The list with this aim put in, in the order of aims, or taken out for NULL. */
static void
store (AimRow *self, const CarTarget *now)
{
  const GArray *targets = targets_of (self);
  g_autoptr (GArray) next = g_array_new (FALSE, FALSE, sizeof (CarTarget));
  gboolean is_in = now == NULL;

  for (guint i = 0; i < targets->len; i++) {
    const CarTarget *target = &g_array_index (targets, CarTarget, i);

    if (!is_in && target->aim >= (guint) self->aim) {
      g_array_append_val (next, *now);
      is_in = TRUE;
    }
    if (target->aim != (guint) self->aim)
      g_array_append_val (next, *target);
  }
  if (!is_in)
    g_array_append_val (next, *now);
  sw_document_set_targets (document_of (self), (const CarTarget *) next->data, next->len,
                           _ ("Change aims"));
}

/* What the setup in hand has of it now, on the left side. */
static double
value_now (const AimRow *self)
{
  SwBench *bench = sw_chooser_get_bench (self->chooser);
  const ChoiceQuestion question = sw_chooser_get_question (self->chooser);
  const MountOffset mount = sw_bench_get_setup (bench)->mount;
  g_autoptr (Plate) there = plate_new ();

  there->inboard_mm = mount.inboard;
  there->rearward_mm = mount.rearward;
  there->raises_mm = mount.up;

  const ChoicePlace place =
      choice_place (sw_document_get_car (document_of (self)), &question, SIDE_LEFT, there,
                    (PlateSetting){ 0 }, 0.0);
  const double value = place.aim_value[self->aim];
  const double digits = pow (10.0, aim_info (self->aim).decimals);

  return isfinite (value) ? round (value * digits) / digits : 0.0;
}

static gboolean
is_change (Aim aim)
{
  return aim == AIM_TOE_CHANGE || aim == AIM_SCRUB_CHANGE || aim == AIM_BUMP_STEER;
}

/* As it is now, give or take what a bench can tell apart; of changes, none. */
static CarTarget
usual_target (const AimRow *self)
{
  const double unit = aim_info (self->aim).unit_size;
  const double middle = is_change (self->aim) ? 0.0 : value_now (self);

  return (CarTarget){
    .aim = self->aim, .least = middle - unit, .most = middle + unit, .weight = 1.0
  };
}

static void
on_is_aim_toggled_cb (AimRow *self)
{
  const gboolean wanted = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->is_aim));
  const CarTarget usual = wanted ? usual_target (self) : (CarTarget){ 0 };

  if (!self->is_telling)
    store (self, wanted ? &usual : NULL);
}

/* An end that passes the other one takes it along; open at both ends is no aim. */
static void
set_range (AimRow *self, gboolean is_least)
{
  const CarTarget *before = find (self);
  CarTarget now = { .aim = self->aim,
                    .least = range_bound_get (self->least),
                    .most = range_bound_get (self->most),
                    .weight = before != NULL ? before->weight : 1.0 };

  if (self->is_telling)
    return;
  if (now.least > now.most && is_least)
    now.most = now.least;
  else if (now.least > now.most)
    now.least = now.most;
  store (self, isfinite (now.least) || isfinite (now.most) ? &now : NULL);
}

static void
on_least_changed_cb (AimRow *self)
{
  set_range (self, TRUE);
}

static void
on_most_changed_cb (AimRow *self)
{
  set_range (self, FALSE);
}

static void
on_weight_changed_cb (AimRow *self)
{
  const CarTarget *before = find (self);
  const guint step = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->weight));

  if (self->is_telling || before == NULL || step >= G_N_ELEMENTS (weights))
    return;

  CarTarget now = *before;
  now.weight = weights[step];
  store (self, &now);
}

static void
set_starts (AimRow *self)
{
  const double start = is_change (self->aim) ? 0.0 : value_now (self);

  range_bound_set_start (self->least, start);
  range_bound_set_start (self->most, start);
}

static GtkWidget *
new_bound (AimRow *self, gboolean is_lower, const char *name)
{
  const AimInfo info = aim_info (self->aim);
  /* Translators: the quantity, and the end of its range: “Camber, at least”. */
  g_autofree char *whole = g_strdup_printf ("%s, %s", info.name, name);
  GtkWidget *bound = range_bound_new (is_lower, &info, whole);

  g_signal_connect_swapped (bound, "value-changed",
                            is_lower ? G_CALLBACK (on_least_changed_cb)
                                     : G_CALLBACK (on_most_changed_cb),
                            self);
  return bound;
}

static GtkWidget *
new_weight (AimRow *self)
{
  const char *const steps[] = { C_ ("weight", "a little"), C_ ("weight", "normal"),
                                C_ ("weight", "much"), NULL };
  g_autofree char *name =
      /* Translators: how much the aim %s counts. */
      g_strdup_printf (_ ("%s, weight"), aim_info (self->aim).name);
  GtkWidget *weight = gtk_drop_down_new_from_strings (steps);

  gtk_accessible_update_property (GTK_ACCESSIBLE (weight), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_signal_connect_swapped (weight, "notify::selected", G_CALLBACK (on_weight_changed_cb),
                            self);
  return weight;
}

AimRow *
aim_row_new (SwChooser *chooser, Aim aim, GtkGrid *grid, int row)
{
  const AimInfo info = aim_info (aim);
  AimRow *self = g_new0 (AimRow, 1);
  GtkWidget *unit = unit_label_new (unit_kind_of (info.unit));

  self->chooser = chooser;
  self->aim = aim;
  self->is_telling = TRUE;
  self->is_aim = gtk_check_button_new_with_label (info.name);
  self->least = new_bound (self, TRUE, _ ("at least"));
  self->most = new_bound (self, FALSE, _ ("at most"));
  self->weight = new_weight (self);
  set_starts (self);
  g_signal_connect_swapped (self->is_aim, "toggled", G_CALLBACK (on_is_aim_toggled_cb),
                            self);
  gtk_label_set_xalign (GTK_LABEL (unit), 0.0f);
  gtk_widget_add_css_class (unit, "dim-label");
  gtk_grid_attach (grid, self->is_aim, 0, row, 1, 1);
  gtk_grid_attach (grid, self->least, 1, row, 1, 1);
  gtk_grid_attach (grid, self->most, 2, row, 1, 1);
  gtk_grid_attach (grid, unit, 3, row, 1, 1);
  gtk_grid_attach (grid, self->weight, 4, row, 1, 1);
  g_object_set_data_full (G_OBJECT (self->is_aim), "aim-row", self, g_free);
  return self;
}
