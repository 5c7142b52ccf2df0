/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands below the sheet: the numbers, or what the question in hand has of its own,
 * with a switch between the two. */

#include "window/question.h"
#include "window/window-private.h"

#include <glib/gi18n-lib.h>

#define NUMBERS "numbers"
#define MOST_HEIGHT 340

static const Question *
question_in_hand (SwWindow *self)
{
  return question_named (gtk_stack_get_visible_child_name (self->questions));
}

static GtkWidget *
new_numbers_place (GtkWidget *numbers)
{
  GtkWidget *place = gtk_scrolled_window_new ();
  GtkScrolledWindow *scrolled = GTK_SCROLLED_WINDOW (place);

  gtk_scrolled_window_set_policy (scrolled, GTK_POLICY_AUTOMATIC, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (scrolled, TRUE);
  gtk_widget_add_css_class (place, "numbers-place");
  gtk_scrolled_window_set_max_content_height (scrolled, MOST_HEIGHT);
  gtk_scrolled_window_set_child (scrolled, numbers);
  return place;
}

/* Hidden until the question is in hand. */
static void
add_strip (SwWindow *self, const Question *question)
{
  GtkWidget *strip = question_part (question, question->create_strip, self->bench);
  GtkStackPage *page = gtk_stack_add_titled (self->strips, strip, question->name,
                                             _ (question->strip_title));

  gtk_stack_page_set_visible (page, FALSE);
  gtk_stack_add_named (GTK_STACK (self->strip_tools),
                       question_part (question, question->create_strip_tools,
                                      self->bench),
                       question->name);
}

void
window_add_strips (SwWindow *self, GtkWidget *numbers)
{
  guint n;
  const Question *all = questions (&n);

  for (guint i = 0; i < n; i++)
    if (all[i].create_strip != NULL)
      add_strip (self, &all[i]);
  gtk_stack_add_titled (self->strips, new_numbers_place (numbers), NUMBERS,
                        _ ("Numbers"));
  gtk_stack_add_named (GTK_STACK (self->strip_tools), gtk_box_new (0, 0), NUMBERS);
  gtk_stack_set_visible_child_name (self->strips, NUMBERS);
}

static gboolean
has_strip (const Question *question)
{
  return question != NULL && question->create_strip != NULL;
}

static void
show_page (SwWindow *self, const Question *question, gboolean shown)
{
  GtkWidget *strip = gtk_stack_get_child_by_name (self->strips, question->name);

  if (strip != NULL)
    gtk_stack_page_set_visible (gtk_stack_get_page (self->strips, strip), shown);
}

/* A question comes with its own strip, and the numbers with the others. */
void
window_show_strip (SwWindow *self)
{
  const Question *now = question_in_hand (self);
  guint n;
  const Question *all = questions (&n);

  if (gtk_stack_get_child_by_name (self->strips, NUMBERS) == NULL)
    return; /* the window is still being filled */
  if (has_strip (now))
    show_page (self, now, TRUE);
  gtk_stack_set_visible_child_name (self->strips, has_strip (now) ? now->name : NUMBERS);
  for (guint i = 0; i < n; i++)
    if (&all[i] != now && has_strip (&all[i]))
      show_page (self, &all[i], FALSE);
  gtk_widget_set_visible (self->strip_bar, has_strip (now));
}

void
window_follow_strip (SwWindow *self)
{
  const char *name = gtk_stack_get_visible_child_name (self->strips);

  if (name != NULL &&
      gtk_stack_get_child_by_name (GTK_STACK (self->strip_tools), name) != NULL)
    gtk_stack_set_visible_child_name (GTK_STACK (self->strip_tools), name);
}
