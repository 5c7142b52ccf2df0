/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-cure.h"
#include "window/springs/springs-panel-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Less than a tenth of a millimetre of height. */
#define PERCH_UNIT 0.01 /* mm */
#define ANGLE_UNIT 0.01 /* ° */

typedef struct {
  SpringsEdit *edit;
  RaiseBy by;
  GtkWidget *button, *reason;
} Cure;

static double *
number_of (SpringSet *set, RaiseBy by)
{
  return by == RAISE_PERCH ? &set->springs.coil.perch_mm
                           : &set->springs.bar.clamp_angle_deg;
}

static gboolean
is_there (const SpringSet *set, RaiseBy by)
{
  return by == RAISE_PERCH ? set->springs.coil.is_there != 0
                           : set->springs.bar.is_there != 0;
}

gboolean
springs_cure_take (SpringsEdit *edit, RaiseBy by, SpringSet *set)
{
  SwBench *bench = springs_edit_bench (edit);
  const double unit = by == RAISE_PERCH ? PERCH_UNIT : ANGLE_UNIT;
  double value;

  if (!spring_study_height_cure (sw_bench_get_springs (bench),
                                 sw_bench_get_setup_index (bench),
                                 sw_bench_get_setup (bench)->lowering_mm, by, &value))
    return FALSE;
  *number_of (set, by) = round (value / unit) / round (1.0 / unit) + 0.0;
  return TRUE;
}

/* A button that gets a label loses the name that is its own. */
static void
set_label (Cure *self, const char *label)
{
  if (g_strcmp0 (gtk_button_get_label (GTK_BUTTON (self->button)), label) == 0)
    return;
  gtk_button_set_label (GTK_BUTTON (self->button), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->by == RAISE_PERCH
                                      ? _ ("Stand at this height by the perch")
                                      : _ ("Stand at this height by the clamp angle"),
                                  -1);
}

static void
set_reason (Cure *self, gboolean stands_there, const char *reason)
{
  gtk_widget_set_sensitive (self->button, !stands_there && reason == NULL);
  set_label (self,
             stands_there ? _ ("Stands at This Height") : _ ("Stand at This Height"));
  gtk_widget_set_visible (self->reason, reason != NULL);
  gtk_label_set_label (GTK_LABEL (self->reason), reason != NULL ? reason : "");
}

static void
describe (Cure *self)
{
  g_autofree char *height =
      unit_text (UNIT_LENGTH,
                 sw_bench_get_setup (springs_edit_bench (self->edit))->lowering_mm, 1);
  g_autofree char *tip = g_strdup_printf (
      self->by == RAISE_PERCH
          ? _ ("Puts the perch where the springs carry the car at this setup’s lowering, "
               "%s")
          : _ ("Winds the bar so that the springs carry the car at this setup’s lowering, "
               "%s"),
      height);

  gtk_widget_set_tooltip_text (self->button, tip);
}

/* Settles after a drag. */
static void
show (gpointer part)
{
  Cure *self = part;
  SpringSet set = *springs_edit_now (self->edit);
  const double now = *number_of (&set, self->by);

  gtk_widget_set_visible (self->button, is_there (&set, self->by));
  if (!is_there (&set, self->by)) {
    set_reason (self, FALSE, NULL);
    return;
  }
  if (sw_bench_is_dragging (springs_edit_bench (self->edit)))
    return;
  describe (self);
  if (springs_cure_take (self->edit, self->by, &set))
    set_reason (self, *number_of (&set, self->by) == now, NULL);
  else
    set_reason (self, FALSE,
                self->by == RAISE_PERCH
                    ? _ ("No perch does it: the coil would be slack or bound.")
                    : _ ("No clamp angle does it."));
}

static void
on_clicked_cb (Cure *self)
{
  SpringSet set = *springs_edit_now (self->edit);

  if (springs_cure_take (self->edit, self->by, &set))
    springs_edit_choose (self->edit, self->button, &set, _ ("Stand at this height"));
}

int
springs_cure_add (SpringsEdit *edit, RaiseBy by, GtkGrid *grid, int at)
{
  Cure *self = g_new0 (Cure, 1);

  self->edit = edit;
  self->by = by;
  self->button = gtk_button_new ();
  self->reason = springs_label_new ("", "dim-label");
  set_label (self, _ ("Stand at This Height"));
  gtk_widget_add_css_class (self->reason, "caption");
  gtk_label_set_wrap (GTK_LABEL (self->reason), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->reason), 28);
  g_signal_connect_swapped (self->button, "clicked", G_CALLBACK (on_clicked_cb), self);
  gtk_grid_attach (grid, self->button, 0, at, 3, 1);
  gtk_grid_attach (grid, self->reason, 0, at + 1, 3, 1);
  springs_edit_add_part (edit, show, self);
  return 2;
}
