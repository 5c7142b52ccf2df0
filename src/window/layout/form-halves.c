/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/form-halves.h"
#include "window/layout/wheel.h"

#define LINE 1 /* pixels, between the two */

typedef struct {
  GtkWidget *form, *line, *drawing;
} Halves;

static Halves
halves_of (GtkWidget *halves)
{
  GtkWidget *form = gtk_widget_get_first_child (halves);

  return (Halves){ form, gtk_widget_get_next_sibling (form),
                   gtk_widget_get_last_child (halves) };
}

static int
least_of (GtkWidget *widget, GtkOrientation orientation, int for_size)
{
  int least;

  gtk_widget_measure (widget, orientation, for_size, &least, NULL, NULL, NULL);
  return least;
}

static int
width_beside (const Halves *parts)
{
  return least_of (parts->form, GTK_ORIENTATION_HORIZONTAL, -1) + LINE +
         least_of (parts->drawing, GTK_ORIENTATION_HORIZONTAL, -1);
}

static gboolean
are_stacked (const Halves *parts, int width)
{
  return width >= 0 && width < width_beside (parts);
}

static int
whole_height (GtkWidget *form, int width)
{
  int natural;

  gtk_widget_measure (form, GTK_ORIENTATION_VERTICAL, width, NULL, &natural, NULL, NULL);
  return natural;
}

static void
measure_halves (GtkWidget *halves,
                GtkOrientation orientation,
                int for_size,
                int *minimum,
                int *natural,
                int *minimum_baseline,
                int *natural_baseline)
{
  const Halves parts = halves_of (halves);
  const int form = least_of (parts.form, orientation, -1);
  const int drawing = least_of (parts.drawing, orientation, -1);

  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = MAX (form, drawing);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *natural = width_beside (&parts);
  else if (are_stacked (&parts, for_size))
    *minimum = *natural = whole_height (parts.form, for_size) + LINE + drawing;
}

static void
stack (const Halves *parts, int width, int height)
{
  const int form = whole_height (parts->form, width), rest = height - form - LINE;

  gtk_widget_size_allocate (parts->form, &(GtkAllocation){ 0, 0, width, form }, -1);
  gtk_widget_size_allocate (parts->line, &(GtkAllocation){ 0, form, width, LINE }, -1);
  gtk_widget_size_allocate (parts->drawing,
                            &(GtkAllocation){ 0, form + LINE, width, rest }, -1);
}

static void
allocate_halves (GtkWidget *halves, int width, int height, int baseline)
{
  const Halves parts = halves_of (halves);
  const int form = least_of (parts.form, GTK_ORIENTATION_HORIZONTAL, -1);
  const int rest = width - form - LINE;
  const gboolean is_backward = gtk_widget_get_direction (halves) == GTK_TEXT_DIR_RTL;

  (void) baseline;
  wheel_set_ignored (parts.form, are_stacked (&parts, width));
  if (are_stacked (&parts, width)) {
    stack (&parts, width, height);
    return;
  }
  gtk_widget_size_allocate (parts.form,
                            &(GtkAllocation){ is_backward ? rest + LINE : 0, 0, form,
                                              height },
                            -1);
  gtk_widget_size_allocate (parts.line,
                            &(GtkAllocation){ is_backward ? rest : form, 0, LINE,
                                              height },
                            -1);
  gtk_widget_size_allocate (parts.drawing,
                            &(GtkAllocation){ is_backward ? 0 : form + LINE, 0, rest,
                                              height },
                            -1);
}

static GtkSizeRequestMode
request_mode_of_halves (GtkWidget *halves)
{
  (void) halves;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static GtkWidget *
new_scrolled (GtkWidget *child)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), child);
  return scrolled;
}

GtkWidget *
form_halves_new (GtkWidget *form, int least_width, GtkWidget *drawing)
{
  GtkWidget *halves = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *scrolled = new_scrolled (form);

  gtk_widget_set_size_request (scrolled, least_width, -1);
  gtk_box_append (GTK_BOX (halves), scrolled);
  gtk_box_append (GTK_BOX (halves), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (halves), drawing);
  gtk_widget_set_layout_manager (halves,
                                 gtk_custom_layout_new (request_mode_of_halves,
                                                        measure_halves, allocate_halves));
  return new_scrolled (halves);
}
