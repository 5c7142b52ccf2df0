/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/measure/measure-window.h"
#include "window/dialog/dialog-answer.h"
#include "window/measure/measure-window-form.h"
#include "window/measure/measure-window-sketch.h"

#include <glib/gi18n-lib.h>

#define SW_TYPE_MEASURE_WINDOW (sw_measure_window_get_type ())
G_DECLARE_FINAL_TYPE (SwMeasureWindow, sw_measure_window, SW, MEASURE_WINDOW, GtkWindow)

struct _SwMeasureWindow {
  GtkWindow parent_instance;

  SwBench *bench;   /* of the car that is changed, or NULL for a new one … */
  MeasureTake take; /* … which goes there */
  gpointer take_data;
  Car *car;  /* as the entries have it */
  int field; /* that the sentence is about, or -1 */
  gboolean is_touched;

  SwMeasureForm *form;
  SwMeasureSketch *sketch;
  GtkWidget *form_place, *sketch_place, *apply, *go_to;
  GtkLabel *point, *meaning, *sentence, *warning;
};

G_DEFINE_FINAL_TYPE (SwMeasureWindow, sw_measure_window, GTK_TYPE_WINDOW)

static void
show_reading (SwMeasureWindow *self, const MeasureReading *reading)
{
  const gboolean is_sound = reading->verdict == MEASURE_SOUND;

  gtk_label_set_label (self->sentence, reading->sentence);
  if (is_sound || reading->verdict == MEASURE_MISSING)
    gtk_widget_remove_css_class (GTK_WIDGET (self->sentence), "refusal");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->sentence), "refusal");
  gtk_label_set_label (self->warning, reading->warning != NULL ? reading->warning : "");
  gtk_widget_set_visible (GTK_WIDGET (self->warning), reading->warning != NULL);
  self->field = reading->field;
  gtk_widget_set_visible (self->go_to, reading->field >= 0);
  gtk_widget_set_sensitive (self->apply, is_sound);
}

static void
read_entries (SwMeasureWindow *self)
{
  MeasureReading reading = sw_measure_form_read (self->form, self->car);

  show_reading (self, &reading);
  sw_measure_sketch_show (self->sketch, self->car, &reading);
  measure_reading_clear (&reading);
}

static void
on_form_changed_cb (SwMeasureWindow *self)
{
  self->is_touched = TRUE;
  read_entries (self);
}

static void
on_form_focused_cb (SwMeasureWindow *self)
{
  const int field = sw_measure_form_get_field (self->form);

  sw_measure_sketch_set_field (self->sketch, field);
  if (field < 0)
    return;

  const MeasureField of = measure_field ((guint) field);
  g_autofree char *name = measure_field_name (&of);
  gtk_label_set_label (self->point, name);
  gtk_label_set_label (self->meaning, of.meaning);
}

static void
on_go_to_clicked_cb (SwMeasureWindow *self)
{
  if (self->field >= 0)
    sw_measure_form_go_to (self->form, (guint) self->field);
}

static gboolean
hand_over (SwMeasureWindow *self, GError **error)
{
  if (self->bench != NULL)
    return sw_document_set_measured (sw_bench_get_document (self->bench), self->car,
                                     _ ("Change the measured car"), error);
  self->take (g_steal_pointer (&self->car), self->take_data);
  return TRUE;
}

static void
on_apply_clicked_cb (SwMeasureWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (hand_over (self, &error))
    dialog_leave (GTK_WINDOW (self));
  else
    gtk_label_set_label (self->sentence, error->message);
}

static void
on_discard_response_cb (GtkDialog *dialog, int response, SwMeasureWindow *self)
{
  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response == GTK_RESPONSE_YES)
    dialog_leave (GTK_WINDOW (self));
}

static void
ask_discard (SwMeasureWindow *self)
{
  GtkWidget *dialog =
      gtk_message_dialog_new (GTK_WINDOW (self), GTK_DIALOG_MODAL, GTK_MESSAGE_QUESTION,
                              GTK_BUTTONS_NONE, "%s", _ ("Discard what was entered?"));

  dialog_add_answer (dialog, _ ("_Keep Editing"), GTK_RESPONSE_CANCEL);
  dialog_add_answer (dialog, _ ("_Discard"), GTK_RESPONSE_YES);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
  g_signal_connect (dialog, "response", G_CALLBACK (on_discard_response_cb), self);
  gtk_window_present (GTK_WINDOW (dialog));
}

static gboolean
sw_measure_window_close_request (GtkWindow *window)
{
  SwMeasureWindow *self = SW_MEASURE_WINDOW (window);

  if (self->is_touched) {
    ask_discard (self);
    return TRUE;
  }
  return GTK_WINDOW_CLASS (sw_measure_window_parent_class)->close_request (window);
}

static void
sw_measure_window_dispose (GObject *object)
{
  SwMeasureWindow *self = SW_MEASURE_WINDOW (object);

  g_clear_object (&self->bench);
  g_clear_pointer (&self->car, car_free);
  G_OBJECT_CLASS (sw_measure_window_parent_class)->dispose (object);
}

static void
sw_measure_window_class_init (SwMeasureWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_measure_window_dispose;
  GTK_WINDOW_CLASS (class)->close_request = sw_measure_window_close_request;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/org/strutwright/Strutwright/measure-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, form_place);
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, sketch_place);
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, apply);
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, go_to);
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, point);
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, meaning);
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, sentence);
  gtk_widget_class_bind_template_child (widget_class, SwMeasureWindow, warning);
  gtk_widget_class_bind_template_callback (widget_class, on_apply_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_go_to_clicked_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close",
                                       NULL);
}

static void
sw_measure_window_init (SwMeasureWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static SwMeasureWindow *
open_window (GtkWindow *parent, SwBench *bench)
{
  SwMeasureWindow *self =
      g_object_new (SW_TYPE_MEASURE_WINDOW, "transient-for", parent, NULL);
  const Car *car =
      bench != NULL ? sw_document_get_car (sw_bench_get_document (bench)) : NULL;

  self->bench = bench != NULL ? g_object_ref (bench) : NULL;
  self->car = car != NULL ? car_copy (car) : car_new ();
  self->form = SW_MEASURE_FORM (sw_measure_form_new (car));
  self->sketch = SW_MEASURE_SKETCH (sw_measure_sketch_new ());
  gtk_widget_set_vexpand (GTK_WIDGET (self->form), TRUE);
  gtk_box_append (GTK_BOX (self->form_place), GTK_WIDGET (self->form));
  gtk_box_append (GTK_BOX (self->sketch_place), GTK_WIDGET (self->sketch));
  gtk_window_set_title (GTK_WINDOW (self),
                        car != NULL ? _ ("Measured Car") : _ ("New Car"));
  gtk_button_set_label (GTK_BUTTON (self->apply),
                        car != NULL ? _ ("Apply") : _ ("Create"));
  g_signal_connect_swapped (self->form, "changed", G_CALLBACK (on_form_changed_cb), self);
  g_signal_connect_swapped (self->form, "focused", G_CALLBACK (on_form_focused_cb), self);
  read_entries (self);
  return self;
}

void
measure_window_open_new (GtkWindow *parent, MeasureTake take, gpointer data)
{
  SwMeasureWindow *self = open_window (parent, NULL);

  self->take = take;
  self->take_data = data;
  gtk_window_present (GTK_WINDOW (self));
}

void
measure_window_open_car (GtkWindow *parent, SwBench *bench)
{
  gtk_window_present (GTK_WINDOW (open_window (parent, bench)));
}
