/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Five steps round the window, in a bar above it that stands in nobody's way: what a step
 * is about has an outline and stays in use meanwhile. */

#include "window/layout/scroll-to.h"
#include "window/settings/kept-settings.h"
#include "window/window-private.h"

#include <glib/gi18n-lib.h>

#define SEEN "tour-seen"
#define OUTLINE "tour-here"

typedef enum {
  PLACE_SHEET,
  PLACE_CURVES, /* and numbers */
  PLACE_QUESTION,
} Place;

typedef struct {
  const char *title, *text;
  const char *question; /* that it takes in hand */
  Place place;
} Step;

static const Step steps[] = {
  { N_ ("Move the upper mount"),
    N_ ("The blue rings on the sheet are handles. Drag the one at the strut's top inboard, "
        "or go there with Tab and press the arrow keys. The corner is solved anew at every "
        "step, and Undo brings everything back."),
    "travel", PLACE_SHEET },
  { N_ ("Curves and numbers follow"),
    N_ ("Each curve is a quantity through the wheel's travel, each setup in its own colour "
        "and pattern. Point at a curve or at a row of numbers and it is highlighted "
        "everywhere; Shift+F1 then says what it is."),
    "travel", PLACE_CURVES },
  { N_ ("Lower the car"),
    N_ ("“Height” shows what lowering does: the roll centre comes down two to three times "
        "as fast as the body. Drag the ring on the body up or down, or type how much "
        "lower the car stands."),
    "height", PLACE_QUESTION },
  { N_ ("Choose a plate"),
    N_ ("“Mount” is a map of where the bearing may go and what alignment it gives there. "
        "Say what you aim for, and the plates are ranked, each with the setting to dial in "
        "and what it costs."),
    "mount", PLACE_QUESTION },
  { N_ ("Put springs on it"),
    N_ ("“Springs” is about what carries the car: a coil, a torsion bar or both, where it "
        "then stands, and the load at every joint. This tour, all quantities and a guide "
        "to measuring your own car are in the menu."),
    "springs", PLACE_QUESTION },
};

#define N_STEPS ((int) G_N_ELEMENTS (steps))

typedef struct {
  SwWindow *window;
  GtkRevealer *revealer;
  GtkWidget *back, *next;
  GtkLabel *count, *title, *text;
  int step;
} Tour;

static void
outline (GtkWidget *widget, gboolean is_here)
{
  if (is_here)
    gtk_widget_add_css_class (widget, OUTLINE);
  else
    gtk_widget_remove_css_class (widget, OUTLINE);
}

static void
show_place (SwWindow *window, const Step *step)
{
  const gboolean beside = step != NULL && step->place != PLACE_SHEET;

  outline (window->sheet_place, step != NULL && step->place == PLACE_SHEET);
  outline (GTK_WIDGET (window->questions), beside);
  outline (GTK_WIDGET (window->strips), step != NULL && step->place == PLACE_CURVES);
}

/* With large text the window scrolls. */
static void
scroll_to_place (SwWindow *window, const Step *step)
{
  GtkWidget *place =
      step->place == PLACE_SHEET ? window->sheet_place : GTK_WIDGET (window->questions);

  scroll_to (place, place);
}

static void
end (Tour *self)
{
  show_place (self->window, NULL);
  gtk_revealer_set_reveal_child (self->revealer, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->revealer), FALSE);
}

/* A screen reader says the step with the button that leads on. */
static void
describe (Tour *self, const Step *step)
{
  g_autofree char *text = g_strdup_printf ("%s: %s", _ (step->title), _ (step->text));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->next),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
show_step (Tour *self)
{
  const Step *step = &steps[self->step];
  const gboolean is_last = self->step + 1 == N_STEPS;
  /* Translators: this step and how many there are. */
  g_autofree char *count = g_strdup_printf (_ ("Step %d of %d"), self->step + 1, N_STEPS);

  gtk_label_set_label (self->count, count);
  gtk_label_set_label (self->title, _ (step->title));
  gtk_label_set_label (self->text, _ (step->text));
  gtk_widget_set_sensitive (self->back, self->step > 0);
  gtk_button_set_label (GTK_BUTTON (self->next), is_last ? _ ("Done") : _ ("Next"));
  describe (self, step);
  g_action_group_change_action_state (G_ACTION_GROUP (self->window), "question",
                                      g_variant_new_string (step->question));
  show_place (self->window, step);
  scroll_to_place (self->window, step);
}

static void
on_next_clicked_cb (Tour *self)
{
  if (self->step + 1 == N_STEPS) {
    end (self);
    return;
  }
  self->step++;
  show_step (self);
}

static void
on_back_clicked_cb (Tour *self)
{
  self->step--;
  show_step (self);
  if (self->step == 0)
    gtk_widget_grab_focus (self->next);
}

static gboolean
on_key_pressed_cb (Tour *self, guint key)
{
  if (key != GDK_KEY_Escape)
    return FALSE;
  end (self);
  return TRUE;
}

static GtkWidget *
append_button (Tour *self, GtkWidget *bar, const char *label, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (bar), button);
  return button;
}

static GtkLabel *
append_label (GtkWidget *box, const char *class, GtkAccessibleRole role)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role", role, "wrap", TRUE,
                                   "xalign", 0.0f, NULL);

  if (class != NULL)
    gtk_widget_add_css_class (label, class);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
new_bar (Tour *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_add_css_class (bar, "tour");
  gtk_widget_set_hexpand (words, TRUE);
  self->title = append_label (head, "tour-title", GTK_ACCESSIBLE_ROLE_HEADING);
  self->count = append_label (head, "dim-label", GTK_ACCESSIBLE_ROLE_LABEL);
  gtk_box_append (GTK_BOX (words), head);
  self->text = append_label (words, NULL, GTK_ACCESSIBLE_ROLE_LABEL);
  gtk_box_append (GTK_BOX (bar), words);
  append_button (self, bar, _ ("Skip the Tour"), G_CALLBACK (end));
  self->back = append_button (self, bar, _ ("Back"), G_CALLBACK (on_back_clicked_cb));
  self->next = append_button (self, bar, _ ("Next"), G_CALLBACK (on_next_clicked_cb));
  gtk_widget_add_css_class (self->next, "suggested-action");
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  gtk_widget_add_controller (bar, keys);
  return bar;
}

static Tour *
tour_of (SwWindow *window)
{
  Tour *self = g_object_get_data (G_OBJECT (window), "tour");

  if (self != NULL)
    return self;
  self = g_new0 (Tour, 1);
  self->window = window;
  self->revealer = window->tour;
  gtk_revealer_set_child (self->revealer, new_bar (self));
  g_object_set_data_full (G_OBJECT (window), "tour", self, g_free);
  return self;
}

void
sw_window_start_tour (SwWindow *self)
{
  Tour *tour = tour_of (self);
  GSettings *settings = kept_settings ();

  tour->step = 0;
  show_step (tour);
  gtk_widget_set_visible (GTK_WIDGET (tour->revealer), TRUE);
  gtk_revealer_set_reveal_child (tour->revealer, TRUE);
  gtk_widget_grab_focus (tour->next);
  if (settings != NULL)
    g_settings_set_boolean (settings, SEEN, TRUE);
}

gboolean
sw_window_is_tour_due (void)
{
  GSettings *settings = kept_settings ();

  return settings != NULL && !g_settings_get_boolean (settings, SEEN) &&
         g_strcmp0 (g_getenv ("STRUTWRIGHT_TOUR"), "no") != 0;
}
