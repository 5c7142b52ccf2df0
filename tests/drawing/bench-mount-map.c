/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a frame of the map takes while the body comes down, where all is solved and
 * drawn anew, and while the mount is dragged. Six setups, a plate with marked places, two
 * aims. Prints, never fails on time.
 *
 * bench-mount-map [WIDTH HEIGHT] */

#include "frame-times.h"

#include "drawing/mount-map/mount-map.h"
#include "example-study.h"

#include <stdio.h>

#define FRAMES 300
#define SETUPS 6

static void
add_target (Car *car, Aim aim, double least, double most)
{
  const CarTarget target = { .aim = aim, .least = least, .most = most, .weight = 1.0 };

  g_array_append_val (car->targets, target);
}

static Car *
make_car (void)
{
  Car *car = example_car ();

  example_add_setups (car, SETUPS);
  car->tower = (CarTower){ 84.0, 3.0, 2.0 };
  add_target (car, AIM_CAMBER, -2.3, -1.7);
  add_target (car, AIM_CASTER, 4.5, INFINITY);
  return car;
}

static Plate *
make_plate (void)
{
  Plate *plate = plate_new ();

  plate->kind = PLATE_ECCENTRIC;
  plate->radius_mm = 14.0;
  plate->inboard_mm = 8.0;
  plate->bearing_diameter_mm = 44.0;
  for (double turn = 0.0; turn < 360.0; turn += 45.0)
    g_array_append_val (plate->turns_deg, turn);
  return plate;
}

typedef void (*Move) (CarSetup *setup, double part);

static void
lower (CarSetup *setup, double part)
{
  setup->lowering_mm = 80.0 * part;
}

static void
move_mount (CarSetup *setup, double part)
{
  setup->mount.inboard = -10.0 + 35.0 * part;
  setup->mount.rearward = 20.0 - 30.0 * part;
}

static void
measure (const char *what, Move move, cairo_t *cr, double width, double height)
{
  g_autoptr (Car) car = make_car ();
  g_autoptr (Plate) plate = make_plate ();
  g_autoptr (MountMap) map = mount_map_new ();
  MountMapView view = { .car = car,
                        .setup = 1,
                        .subjects = { FIELD_CAMBER, FIELD_CASTER },
                        .plate = plate,
                        .theme = theme_light (),
                        .pixel_scale = 1.0,
                        .lit_place = MOUNT_MAP_NONE,
                        .is_handle_lit = TRUE };
  gint64 times[FRAMES];

  mount_map_draw (map, cr, &view, width, height);
  view.hold_window = TRUE;
  for (int i = 0; i < FRAMES; i++) {
    move (car_setup (car, 1), (double) i / FRAMES);
    const gint64 start = g_get_monotonic_time ();
    mount_map_draw (map, cr, &view, width, height);
    cairo_surface_flush (cairo_get_target (cr));
    times[i] = g_get_monotonic_time () - start;
  }
  frame_times_print (what, times, FRAMES);
}

int
main (int argc, char **argv)
{
  const int width = argc > 2 ? atoi (argv[1]) : 700,
            height = argc > 2 ? atoi (argv[2]) : 650;
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);

  measure ("map, body coming down", lower, cr, width, height);
  measure ("map, mount dragged", move_mount, cr, width, height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return 0;
}
