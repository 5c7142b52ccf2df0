/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/lecture-view.h"

#include <glib/gi18n-lib.h>

struct _SwLectureView {
  SwCanvas parent_instance;

  SwBench *bench;
  Story *story;
  int step;
};

G_DEFINE_FINAL_TYPE (SwLectureView, sw_lecture_view, SW_TYPE_CANVAS)

static void
sw_lecture_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwLectureView *self = SW_LECTURE_VIEW (canvas);
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));
  const StoryView view = { .study = sw_bench_get_study (self->bench),
                           .section_width = car->section_width_mm,
                           .theme = sw_canvas_get_theme (canvas),
                           .step = (StoryStep) self->step };

  story_draw (self->story, cr, &view, width, height);
}

/* What the class hears as well as sees. */
static void
describe (SwLectureView *self)
{
  const StoryNumbers numbers =
      story_numbers (study_in_hand (sw_bench_get_study (self->bench)));
  g_autofree char *sentence = story_sentence (&numbers, (StoryStep) self->step);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentence, -1);
}

static void
on_bench_solved_cb (SwLectureView *self)
{
  describe (self);
  sw_canvas_invalidate (SW_CANVAS (self));
}

static void
sw_lecture_view_dispose (GObject *object)
{
  g_clear_object (&SW_LECTURE_VIEW (object)->bench);
  G_OBJECT_CLASS (sw_lecture_view_parent_class)->dispose (object);
}

static void
sw_lecture_view_finalize (GObject *object)
{
  story_free (SW_LECTURE_VIEW (object)->story);
  G_OBJECT_CLASS (sw_lecture_view_parent_class)->finalize (object);
}

static void
sw_lecture_view_class_init (SwLectureViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_lecture_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_lecture_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_lecture_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_lecture_view_init (SwLectureView *self)
{
  self->story = story_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How the roll centre is constructed"), -1);
}

GtkWidget *
sw_lecture_view_new (SwBench *bench)
{
  SwLectureView *self = g_object_new (SW_TYPE_LECTURE_VIEW, NULL);

  self->bench = g_object_ref (bench);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  describe (self);
  return GTK_WIDGET (self);
}

void
sw_lecture_view_walk (SwLectureView *self, int by)
{
  self->step = CLAMP (self->step + by, 0, N_STORY_STEPS - 1);
  describe (self);
  sw_canvas_invalidate (SW_CANVAS (self));
}
