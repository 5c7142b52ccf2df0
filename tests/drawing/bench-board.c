/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a frame of the board takes while the mount moves. Prints, never fails on time.
 *
 * bench-board [WIDTH HEIGHT [PNG]] leaves its last frame in PNG. */

#include "drawing/board.h"
#include "example-study.h"

#include <stdio.h>

#define FRAMES 400

static int
compare_times (const void *a, const void *b)
{
  const gint64 left = *(const gint64 *) a, right = *(const gint64 *) b;

  return (left > right) - (left < right);
}

static void
print_times (const char *what, gint64 times[FRAMES])
{
  qsort (times, FRAMES, sizeof *times, compare_times);
  printf ("%-28s median %.2f ms, p95 %.2f ms\n", what,
          (double) times[FRAMES / 2] / 1000.0,
          (double) times[FRAMES * 95 / 100] / 1000.0);
}

/* As a GTK window draws: onto a recording, which is then played back. */
static void
draw_recorded (
    Board *board, cairo_t *cr, const BoardView *view, double width, double height)
{
  const cairo_rectangle_t extents = { 0.0, 0.0, width, height };
  cairo_surface_t *record =
      cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &extents);
  cairo_t *recorder = cairo_create (record);

  board_draw (board, recorder, view, width, height);
  cairo_destroy (recorder);
  cairo_set_source_surface (cr, record, 0.0, 0.0);
  cairo_paint (cr);
  cairo_surface_destroy (record);
}

typedef struct {
  const char *name;
  bool hold_axes, is_recorded;
  double pixel_scale;
} Way;

static void
measure (const Car *car, cairo_surface_t *surface, double width, double height, Way way)
{
  g_autoptr (Board) board = board_new ();
  Study *study = study_new ();
  cairo_t *cr = cairo_create (surface);
  const BoardView view = { .study = study,
                           .choice = board_choice_default (),
                           .theme = theme_light (),
                           .lit = QUANTITY_CAMBER,
                           .show_cursor = true,
                           .hold_axes = way.hold_axes,
                           .pixel_scale = way.pixel_scale };
  gint64 times[FRAMES];

  for (int i = 0; i < FRAMES; i++) {
    const CarSetup setup = example_setup (0.05 * i, 10.0 * sin (0.02 * i), 0.0);
    car_setup (car, 0)->mount = setup.mount;
    study_solve (study, car, 0, 12.5);
    const gint64 start = g_get_monotonic_time ();
    (way.is_recorded ? draw_recorded : board_draw) (board, cr, &view, width, height);
    cairo_surface_flush (surface);
    times[i] = g_get_monotonic_time () - start;
  }
  print_times (way.name, times);
  cairo_destroy (cr);
  g_free (study);
}

int
main (int argc, char **argv)
{
  static const Way ways[] = { { "moved mount, held axes", true, false, 1.0 },
                              { "moved mount, fitted axes", false, false, 1.0 },
                              { "recorded, held axes", true, true, 1.0 },
                              { "recorded, nothing kept", true, true, 0.0 },
                              { "everything drawn anew", false, false, 0.0 } };
  const int width = argc > 2 ? atoi (argv[1]) : 760,
            height = argc > 2 ? atoi (argv[2]) : 760;
  g_autoptr (Car) car = example_car ();
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);

  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    measure (car, surface, width, height, ways[i]);
  if (argc > 3)
    cairo_surface_write_to_png (surface, argv[3]);
  cairo_surface_destroy (surface);
  return 0;
}
