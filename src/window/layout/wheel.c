/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/wheel.h"

#define PHASE "wheel-phase" /* that the controller had, and 1 */

static void
set_ignored (GtkEventController *controller, gboolean is_ignored)
{
  const guint kept = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (controller), PHASE));
  const GtkPropagationPhase phase =
      kept > 0 ? kept - 1 : gtk_event_controller_get_propagation_phase (controller);

  g_object_set_data (G_OBJECT (controller), PHASE, GUINT_TO_POINTER (phase + 1));
  gtk_event_controller_set_propagation_phase (controller,
                                              is_ignored ? GTK_PHASE_NONE : phase);
}

void
wheel_set_ignored (GtkWidget *widget, gboolean is_ignored)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++) {
    g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

    if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
      set_ignored (controller, is_ignored);
  }
}
