/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a step of a drag takes while the mount moves: all setups solved, the board
 * drawn. Prints, never fails on time.
 *
 * bench-board [WIDTH HEIGHT [PNG]] leaves its last frame in PNG. */

#include "frame-times.h"

#include "drawing/board/board.h"
#include "example-study.h"

#include <stdio.h>

#define FRAMES 400
#define MOST_SETUPS 6

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
  unsigned n_setups;
  bool hold_axes, is_recorded;
  double pixel_scale;
} Way;

/* Three large charts and seven small ones. */
static BoardChoice
ten_curves (void)
{
  BoardChoice choice = board_choice_default ();

  choice.small[choice.n_small++] = QUANTITY_CAMBER_GAIN;
  choice.small[choice.n_small++] = QUANTITY_BUMP_STEER;
  return choice;
}

static void
measure (cairo_surface_t *surface, double width, double height, Way way)
{
  g_autoptr (Car) car = example_car ();
  g_autoptr (Board) board = board_new ();
  g_autoptr (Study) study = study_new ();
  cairo_t *cr = cairo_create (surface);
  const guint in_hand = way.n_setups - 1;
  const BoardView view = { .study = study,
                           .choice = ten_curves (),
                           .theme = theme_light (),
                           .lit = QUANTITY_CAMBER,
                           .show_cursor = true,
                           .hold_axes = way.hold_axes,
                           .pixel_scale = way.pixel_scale };
  gint64 times[FRAMES];

  example_add_setups (car, way.n_setups);
  for (int i = 0; i < FRAMES; i++) {
    const CarSetup setup = example_setup (0.05 * i, 10.0 * sin (0.02 * i), 0.0);
    const gint64 start = g_get_monotonic_time ();

    car_setup (car, in_hand)->mount = setup.mount;
    study_solve (study, car, in_hand, 12.5);
    (way.is_recorded ? draw_recorded : board_draw) (board, cr, &view, width, height);
    cairo_surface_flush (surface);
    times[i] = g_get_monotonic_time () - start;
  }
  frame_times_print (way.name, times, FRAMES);
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  static const Way ways[] = {
    { "one setup, held axes", 1, true, false, 1.0 },
    { "six setups, held axes", MOST_SETUPS, true, false, 1.0 },
    { "six setups, fitted axes", MOST_SETUPS, false, false, 1.0 },
    { "six setups, recorded, held axes", MOST_SETUPS, true, true, 1.0 },
    { "six setups, recorded, nothing kept", MOST_SETUPS, true, true, 0.0 },
    { "six setups, everything drawn anew", MOST_SETUPS, false, false, 0.0 },
  };
  const int width = argc > 2 ? atoi (argv[1]) : 900,
            height = argc > 2 ? atoi (argv[2]) : 760;
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);

  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    measure (surface, width, height, ways[i]);
  if (argc > 3)
    cairo_surface_write_to_png (surface, argv[3]);
  cairo_surface_destroy (surface);
  return 0;
}
