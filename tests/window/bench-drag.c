/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What one step of a drag costs in a real window of 1600 by 1000: moving the mount
 * through the bench as the pointer does, until the frame is painted. Prints beside the
 * budget; never fails on time. With SETUPS the car gets that many, all of them shown, and
 * the board ten curves. QUESTION is the page beside the sheet; HANDLE is "mount",
 * "height", which lowers the car, or "perch", which drags the perch of a coil that the
 * car gets; with "springs" it gets one as well.
 *
 * bench-drag [STEPS [SETUPS [QUESTION [HANDLE]]]] */

#include "window/application.h"
#include "window/window.h"

#include <malloc.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define MOST_STEPS 2000
#define WARM_UP 20
#define CURVES 10
#define BETWEEN_MOVES 20 /* ms: time for a frame that the first one asks for */

typedef struct {
  SwWindow *window;
  guint n_setups; /* 0: as the demo car comes */
  const char *question;
  const char *handle;
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

static void
set_perch (SwBench *bench, double perch)
{
  CarSprings springs = car_springs_none ();

  springs.coil = (CarCoil){ .is_there = TRUE,
                            .rate_n_per_mm = 25.0,
                            .shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS,
                            .free_length_mm = 340.0,
                            .perch_mm = perch,
                            .upper_drop_mm = 40.0 };
  sw_document_set_car_springs (sw_bench_get_document (bench), &springs, "Move perch");
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
  if (g_str_equal (b->handle, "height"))
    sw_bench_set_lowering (bench, 20.0 + 20.0 * sin (way));
  else if (g_str_equal (b->handle, "perch"))
    set_perch (bench, 140.0 + 20.0 * sin (way));
  else
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

/* Each a car that somebody might build: lower and further inboard than the one before. */
static void
add_setups (SwBench *bench, guint n)
{
  SwDocument *document = sw_bench_get_document (bench);

  while (sw_document_get_car (document)->setups->len < n)
    sw_document_add_setup (document, 0, NULL);
  for (guint i = 1; i < n; i++) {
    const Adjustment adjustment = { .mount = { 4.0 * i, 2.0 * i, 0.0 },
                                    .lowering = 6.0 * i,
                                    .toe = i % 2 != 0 ? TOE_RESET : TOE_AS_MOVED };

    sw_document_set_setup (document, i, &adjustment, "Set up");
  }
  sw_bench_set_setup_index (bench, n - 1);
}

static guint
n_curves (SwBench *bench)
{
  const BoardChoice choice = sw_bench_get_choice (bench);

  return choice.n_large + choice.n_small;
}

static void
choose_curves (SwBench *bench)
{
  for (Quantity q = 0; q < N_QUANTITIES && n_curves (bench) < CURVES; q++)
    sw_bench_choose (bench, q, TRUE);
}

static void
prepare (Bench *b)
{
  SwBench *bench = sw_window_get_bench (b->window);

  if (b->n_setups > 0) {
    add_setups (bench, b->n_setups);
    choose_curves (bench);
  }
  if (g_str_equal (b->question, "springs"))
    set_perch (bench, 140.0);
  printf ("1600 x 1000, %s, %u setups, %u curves each\n", b->question,
          sw_document_get_car (sw_bench_get_document (bench))->setups->len,
          n_curves (bench));
}

static void
on_realize_cb (GtkWidget *widget, Bench *b)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);

  if (sw_window_get_bench (b->window) == NULL)
    g_error ("no demo car: is STRUTWRIGHT_DATADIR set?");
  g_signal_connect_swapped (clock, "before-paint", G_CALLBACK (on_before_paint_cb), b);
  g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (on_after_paint_cb), b);
  prepare (b);
  gtk_widget_activate_action (widget, "win.question", "s", b->question);
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
  b->n_setups = (guint) CLAMP (argc > 2 ? atoi (argv[2]) : 0, 0, 24);
  b->question = argc > 3 ? argv[3] : "travel";
  b->handle = argc > 4 ? argv[4] : "mount";
  g_signal_connect_swapped (application, "window-added", G_CALLBACK (on_window_added_cb),
                            b);
  g_application_run (G_APPLICATION (application), 1, argv);

  for (int i = 0; i < b->n_steps; i++)
    whole[i] = b->solve[i] + b->frame[i];
  print_times ("solve and tell everybody", b->solve, b->n_steps, "");
  print_times ("frame: layout, sheet, page, table, painting", b->frame, b->n_steps, "");
  print_times ("a drag step", whole, b->n_steps, " (budget: median 8, p95 16)");
  print_times ("of it the frame on a processor", b->processor, b->n_steps, "");
  printf ("%-44s %.2f\n", "frames a step", (double) b->n_frames / b->n_steps);
  printf ("%-44s %+.1f bytes a step\n", "heap growth",
          ((double) b->heap_after - (double) b->heap_before) / b->n_steps);
  g_free (b);
  return 0;
}
