/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long the sheet takes to draw on a software surface while the upper mount moves.
 * Prints and never fails on time. */

#include "drawing/sheet/sheet.h"
#include "set-m.h"

#include <stdio.h>

#define FRAMES 600
#define PIXELS 800

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
report (const char *what, double *ms)
{
  qsort (ms, FRAMES, sizeof *ms, compare_doubles);
  printf ("%-28s median %.2f ms, 95th percentile %.2f ms\n", what, ms[FRAMES / 2],
          ms[FRAMES * 95 / 100]);
}

int
main (void)
{
  static double solve[FRAMES], draw[FRAMES];
  static Study study;
  g_autoptr (Car) car = set_m_car ();
  g_autoptr (Sheet) sheet = sheet_new ();
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, PIXELS, PIXELS);
  cairo_t *cr = cairo_create (surface);
  SheetView view = { .study = &study,
                     .section_width = car->section_width_mm,
                     .theme = theme_light (),
                     .zoom = 1.0,
                     .lit = QUANTITY_CASTER,
                     .held = SHEET_HANDLE_MOUNT,
                     .show_handles = true };

  for (int i = 0; i < FRAMES; i++) {
    CarSetup *setup = car_setup (car, 0);
    const gint64 start = g_get_monotonic_time ();

    setup->mount.inboard = 20.0 * sin (i * 0.05);
    setup->mount.rearward = 15.0 * cos (i * 0.03);
    study_solve (&study, car, 0, 0.0);

    const gint64 solved = g_get_monotonic_time ();
    sheet_draw (sheet, cr, &view, PIXELS, PIXELS);
    cairo_surface_flush (surface);
    draw[i] = (g_get_monotonic_time () - solved) / 1000.0;
    solve[i] = (solved - start) / 1000.0;
  }
  report ("solve both corners", solve);
  report ("draw the sheet, 800 × 800", draw);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return 0;
}
