/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a frame of the lowering view and of the construction's story takes while six
 * setups are shown and the body comes down. Prints, never fails on time.
 *
 * bench-lowering [WIDTH HEIGHT] */

#include "frame-times.h"

#include "drawing/board/lowering.h"
#include "drawing/sheet/construction-story.h"
#include "example-study.h"

#include <stdio.h>

#define FRAMES 300
#define SETUPS 6

static void
add_setups (Car *car)
{
  for (int i = 1; i < SETUPS; i++) {
    CarSetup setup = example_setup (4.0 * i, 2.0 * i, 0.0);

    setup.name = g_strdup_printf ("Setup %d", i);
    setup.lowering_mm = 10.0 * i;
    g_array_append_val (car->setups, setup);
  }
}

static void
measure (Car *car, cairo_t *cr, double width, double height, bool is_story)
{
  g_autoptr (Lowering) lowering = lowering_new ();
  g_autoptr (Story) story = story_new ();
  g_autoptr (Study) study = study_new ();
  const LoweringView view = { .study = study,
                              .theme = theme_light (),
                              .lit = -1,
                              .show_cursor = true,
                              .hold_axes = true };
  const StoryView told = { study, 175.0, theme_light (), STORY_ROLL_CENTRE };
  gint64 times[FRAMES];

  for (int i = 0; i < FRAMES; i++) {
    car_setup (car, 1)->lowering_mm = 80.0 * i / FRAMES;
    study_solve (study, car, 1, 80.0 * i / FRAMES);
    const gint64 start = g_get_monotonic_time ();
    if (is_story)
      story_draw (story, cr, &told, width, height);
    else
      lowering_draw (lowering, cr, &view, width, height);
    cairo_surface_flush (cairo_get_target (cr));
    times[i] = g_get_monotonic_time () - start;
  }
  frame_times_print (is_story ? "story, body coming down" : "lowering, six setups", times,
                     FRAMES);
}

int
main (int argc, char **argv)
{
  const int width = argc > 2 ? atoi (argv[1]) : 760,
            height = argc > 2 ? atoi (argv[2]) : 760;
  g_autoptr (Car) car = example_car ();
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);

  add_setups (car);
  measure (car, cr, width, height, false);
  measure (car, cr, width, height, true);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return 0;
}
