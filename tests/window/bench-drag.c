/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What one step of a drag costs in a real window of 1600 by 1000: moving the mount
 * through the bench as the pointer does, until the frame is painted. Prints beside the
 * budget; never fails on time.
 *
 * bench-drag [STEPS] */

#include "window/application.h"
#include "window/window.h"

#include <malloc.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define MOST_STEPS 2000
#define WARM_UP 20
#define BETWEEN_MOVES 20 /* ms: time for a frame that the first one asks for */

typedef struct {
  SwWindow *window;
  int step, n_steps, n_frames;
  gboolean waits_for_frame; /* the first one after a move, or the first of all */
  gint64 frame_start;
  gint64 processor_start;
  gint64 solve[MOST_STEPS], frame[MOST_STEPS], processor[MOST_STEPS];
  size_t heap_before, heap_after;
} Bench;

static int
compare_times (const void *a, const void *b)
{
  const gint64 left = *(const gint64 *) a, right = *(const gint64 *) b;

  return (left > right) - (left < right);
}

static void
print_times (const char *what, gint64 *times, int n, const char *budget)
{
  qsort (times, (size_t) n, sizeof *times, compare_times);
  printf ("%-44s median %5.2f ms, p95 %5.2f ms%s\n", what, (double) times[n / 2] / 1000.0,
          (double) times[n * 95 / 100] / 1000.0, budget);
}

/* Of this thread, in microseconds: tells what other programs cannot lengthen. */
static gint64
processor_time (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (gint64) t.tv_sec * 1000000 + t.tv_nsec / 1000;
}

static gboolean
move_mount (gpointer data)
{
  Bench *b = data;
  SwBench *bench = sw_window_get_bench (b->window);
  const int place = ++b->step - WARM_UP;
  const double way = 0.05 * b->step;
  const gint64 start = g_get_monotonic_time ();

  if (place == 0) {
    b->heap_before = mallinfo2 ().uordblks;
    b->n_frames = 0;
  }
  if (place == b->n_steps) {
    b->heap_after = mallinfo2 ().uordblks;
    sw_document_cancel (sw_bench_get_document (bench));
    gtk_window_destroy (GTK_WINDOW (b->window));
    return G_SOURCE_REMOVE;
  }
  b->waits_for_frame = TRUE;
  sw_bench_set_mount (bench,
                      (MountOffset){ 15.0 + 10.0 * sin (way), 5.0 * cos (way), 0 });
  if (place >= 0)
    b->solve[place] = g_get_monotonic_time () - start;
  return G_SOURCE_REMOVE;
}

static void
on_before_paint_cb (Bench *b)
{
  b->frame_start = g_get_monotonic_time ();
  b->processor_start = processor_time ();
}

/* All frames until the next move are the work of the last one. */
static void
on_after_paint_cb (Bench *b)
{
  const int place = b->step - WARM_UP;

  b->n_frames++;
  if (place >= 0 && place < b->n_steps) {
    b->frame[place] += g_get_monotonic_time () - b->frame_start;
    b->processor[place] += processor_time () - b->processor_start;
  }
  if (b->waits_for_frame)
    g_timeout_add (BETWEEN_MOVES, move_mount, b);
  b->waits_for_frame = FALSE;
}

static void
on_realize_cb (GtkWidget *widget, Bench *b)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);

  if (sw_window_get_bench (b->window) == NULL)
    g_error ("no demo car: is STRUTWRIGHT_DATADIR set?");
  g_signal_connect_swapped (clock, "before-paint", G_CALLBACK (on_before_paint_cb), b);
  g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (on_after_paint_cb), b);
  sw_document_begin (sw_bench_get_document (sw_window_get_bench (b->window)),
                     "Move upper mount");
}

/* The window that the program opens for itself, on the demo car. */
static void
on_window_added_cb (Bench *b, GtkWindow *window)
{
  b->window = SW_WINDOW (window);
  gtk_window_set_default_size (window, 1600, 1000);
  g_signal_connect (window, "realize", G_CALLBACK (on_realize_cb), b);
}

int
main (int argc, char **argv)
{
  Bench *b = g_new0 (Bench, 1);
  g_autoptr (GtkApplication) application = sw_application_new (G_APPLICATION_NON_UNIQUE);
  gint64 whole[MOST_STEPS];

  b->waits_for_frame = TRUE;
  b->n_steps = CLAMP (argc > 1 ? atoi (argv[1]) : 300, 1, MOST_STEPS);
  g_signal_connect_swapped (application, "window-added", G_CALLBACK (on_window_added_cb),
                            b);
  g_application_run (G_APPLICATION (application), 1, argv);

  for (int i = 0; i < b->n_steps; i++)
    whole[i] = b->solve[i] + b->frame[i];
  print_times ("solve and tell everybody", b->solve, b->n_steps, "");
  print_times ("frame: layout, sheet, curves, table, painting", b->frame, b->n_steps, "");
  print_times ("a drag step", whole, b->n_steps, " (budget: median 8, p95 16)");
  print_times ("of it the frame on a processor", b->processor, b->n_steps, "");
  printf ("%-44s %.2f\n", "frames a step", (double) b->n_frames / b->n_steps);
  printf ("%-44s %+.1f bytes a step\n", "heap growth",
          ((double) b->heap_after - (double) b->heap_before) / b->n_steps);
  g_free (b);
  return 0;
}
