/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a frame of the springs takes while a perch is dragged and five setups are
 * shown: solving and drawing apart. Prints, never fails on time.
 *
 * bench-springs-board [WIDTH HEIGHT] */

#include "frame-times.h"

#include "drawing/springs/springs-board.h"
#include "sprung-car.h"

#include <stdio.h>

#define FRAMES 200

int
main (int argc, char **argv)
{
  const int width = argc > 2 ? atoi (argv[1]) : 760,
            height = argc > 2 ? atoi (argv[2]) : 760;
  g_autoptr (Car) car = sprung_car ();
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();
  g_autoptr (SpringsBoard) board = springs_board_new ();
  const SpringsView view = { .springs = springs,
                             .theme = theme_light (),
                             .lit = -1,
                             .show_cursor = true,
                             .hold_axes = true };
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  gint64 solved[FRAMES], drawn[FRAMES];

  study_solve (study, car, SPRUNG_COIL, 15.0);
  for (int i = 0; i < FRAMES; i++) {
    const gint64 start = g_get_monotonic_time ();
    car_setup (car, SPRUNG_COIL)->springs.coil.perch_mm = 165.0 + 30.0 * i / FRAMES;
    spring_study_solve (springs, study, car);
    const gint64 middle = g_get_monotonic_time ();
    springs_draw (board, cr, &view, width, height);
    cairo_surface_flush (surface);
    solved[i] = middle - start;
    drawn[i] = g_get_monotonic_time () - middle;
  }
  frame_times_print ("springs, five setups solved", solved, FRAMES);
  frame_times_print ("springs, a frame drawn", drawn, FRAMES);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return 0;
}
