/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a frame of the loads takes while six setups are shown and a perch or a rod's
 * diameter is dragged: solving what stands on springs, every setup's loads and bent rods,
 * the board and the sheet's arrows apart. Prints, never fails on time.
 *
 * bench-loads-board [WIDTH HEIGHT] */

#include "frame-times.h"

#include "drawing/loads/loads-board.h"
#include "drawing/sheet/sheet.h"
#include "loaded-car.h"

#include <stdio.h>
#include <stdlib.h>

#define FRAMES 200

typedef enum {
  PART_SPRINGS,
  PART_LOADS,
  PART_BOARD,
  PART_SHEET,
  N_PARTS
} Part;

static void
print_times (const char *what, gint64 times[N_PARTS][FRAMES])
{
  static const char *const names[N_PARTS] = { "springs solved", "loads and rods solved",
                                              "board drawn", "sheet drawn" };

  for (Part part = 0; part < N_PARTS; part++) {
    g_autofree char *name = g_strdup_printf ("%s, %s", what, names[part]);

    frame_times_print (name, times[part], FRAMES);
  }
}

static void
drag (LoadedCar *car, gboolean is_rod, int frame)
{
  CarSetup *setup = car_setup (car->car, SPRUNG_COIL);

  if (is_rod)
    setup->rod.diameter_mm = 16.0 + 14.0 * frame / FRAMES;
  else
    setup->springs.coil.perch_mm = 165.0 + 30.0 * frame / FRAMES;
}

static void
measure (LoadedCar *car, cairo_t *cr, double width, double height, gboolean is_rod)
{
  g_autoptr (LoadsBoard) board = loads_board_new ();
  g_autoptr (Sheet) sheet = sheet_new ();
  const CarLoadCase load_case = { .lateral_g = 0.6, .vertical = 1.0 };
  gint64 times[N_PARTS][FRAMES], at[N_PARTS + 1];

  for (int i = 0; i < FRAMES; i++) {
    drag (car, is_rod, i);
    at[PART_SPRINGS] = g_get_monotonic_time ();
    spring_study_solve (car->springs, car->study, car->car);
    at[PART_LOADS] = g_get_monotonic_time ();
    load_study_solve (car->loads, car->springs, &load_case, SPRING_AS_SET);
    at[PART_BOARD] = g_get_monotonic_time ();
    const LoadsView view = { .loads = car->loads,
                             .theme = theme_light (),
                             .hold_axes = true };
    loads_board_draw (board, cr, &view, width, height);
    cairo_surface_flush (cairo_get_target (cr));
    at[PART_SHEET] = g_get_monotonic_time ();
    const SheetView drawing = { .study = car->study,
                                .section_width = car->car->section_width_mm,
                                .theme = theme_light (),
                                .zoom = 1.0,
                                .lit = -1,
                                .loads = load_study_in_hand (car->loads) };
    sheet_draw (sheet, cr, &drawing, width, height);
    cairo_surface_flush (cairo_get_target (cr));
    at[N_PARTS] = g_get_monotonic_time ();
    for (Part part = 0; part < N_PARTS; part++)
      times[part][i] = at[part + 1] - at[part];
  }
  print_times (is_rod ? "rod" : "perch", times);
}

static void
add_sixth (Car *car)
{
  const CarSetup setup = { .name = g_strdup ("Coil, thick rod"),
                           .has_springs = TRUE,
                           .springs = sprung_set (SPRUNG_COIL),
                           .has_rod = TRUE,
                           .rod = car->strut.rod };

  g_array_append_val (car->setups, setup);
}

int
main (int argc, char **argv)
{
  const int width = argc > 2 ? atoi (argv[1]) : 760,
            height = argc > 2 ? atoi (argv[2]) : 760;
  g_auto (LoadedCar) car = loaded_car_new (TRUE);
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  add_sixth (car.car);
  loaded_car_solve (&car, SPRUNG_COIL, 0, SPRING_AS_SET);
  measure (&car, cr, width, height, FALSE);
  measure (&car, cr, width, height, TRUE);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return 0;
}
