/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/lowering-play.h"

#define WAY_DOWN 2.5 /* seconds */
#define REST 1.0
#define USUAL_LOWERING 40.0 /* mm, shown for a setup that is not lowered */

typedef struct {
  SwBench *bench;
  GtkWidget *widget;
  guint tick;
  gint64 start; /* µs */
  double from, down, back;
} Play;

static Play *
play_of (GtkWidget *widget)
{
  return g_object_get_data (G_OBJECT (widget), "lowering-play");
}

/* 0 to 1, starting and ending gently. */
static double
eased (double t)
{
  return t * t * (3.0 - 2.0 * t);
}

static double
travel_at (const Play *play, double seconds)
{
  if (seconds < WAY_DOWN)
    return play->from + (play->down - play->from) * eased (seconds / WAY_DOWN);
  if (seconds < WAY_DOWN + REST)
    return play->down;
  return play->down +
         (play->back - play->down) * eased ((seconds - WAY_DOWN - REST) / WAY_DOWN);
}

static gboolean
wants_motion (GtkWidget *widget)
{
  gboolean enabled;

  g_object_get (gtk_widget_get_settings (widget), "gtk-enable-animations", &enabled,
                NULL);
  return enabled;
}

static gboolean
on_tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Play *play = data;
  const gint64 now = gdk_frame_clock_get_frame_time (clock);

  if (play->start == 0)
    play->start = now;

  const double seconds = (double) (now - play->start) / G_USEC_PER_SEC;
  if (seconds >= 2.0 * WAY_DOWN + REST || !wants_motion (widget)) {
    sw_bench_set_travel (play->bench, play->back);
    play->tick = 0;
    g_object_set_data (G_OBJECT (widget), "lowering-play", NULL);
    return G_SOURCE_REMOVE;
  }
  sw_bench_set_travel (play->bench, travel_at (play, seconds));
  return G_SOURCE_CONTINUE;
}

static void
free_play (gpointer data)
{
  Play *play = data;

  if (play->tick != 0)
    gtk_widget_remove_tick_callback (play->widget, play->tick);
  g_object_unref (play->bench);
  g_free (play);
}

void
lowering_play (GtkWidget *widget, SwBench *bench)
{
  const Study *study = sw_bench_get_study (bench);
  const double lowering = study_in_hand (study)->lowering;
  const double down = lowering != 0.0 ? lowering : MIN (USUAL_LOWERING, study->range.to);
  Play *play = play_of (widget);

  if (play != NULL) {
    sw_bench_set_travel (bench, play->back);
    g_object_set_data (G_OBJECT (widget), "lowering-play", NULL);
    return;
  }
  if (!wants_motion (widget)) {
    sw_bench_set_travel (bench, study->travel == down ? 0.0 : down);
    return;
  }
  play = g_new0 (Play, 1);
  play->bench = g_object_ref (bench);
  play->widget = widget;
  play->down = down;
  play->back = study->travel;
  play->tick = gtk_widget_add_tick_callback (widget, on_tick_cb, play, NULL);
  g_object_set_data_full (G_OBJECT (widget), "lowering-play", play, free_play);
}
