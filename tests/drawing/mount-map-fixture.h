/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Set M with a tower, two aims and two setups more, and a map of it. */

#pragma once

#include "drawn-texts.h"

#include "drawing/mount-map/mount-map.h"
#include "set-m.h"

typedef struct {
  Car *car;
  Plate *plate;
  MountMap *map;
  MountMapView view;
} Fixture;

static inline void
add_target (Car *car, Aim aim, double least, double most)
{
  const CarTarget target = { .aim = aim, .least = least, .most = most, .weight = 1.0 };

  g_array_append_val (car->targets, target);
}

static inline void
add_setup (Car *car, const char *name, double inboard, double rearward)
{
  const CarSetup setup = { .name = g_strdup (name), .mount = { inboard, rearward, 0.0 } };

  g_array_append_val (car->setups, setup);
}

static inline void
add_hole (Plate *plate, const char *label, double inboard, double rearward)
{
  const PlateHole hole = { .label = g_strdup (label),
                           .inboard_mm = inboard,
                           .rearward_mm = rearward };

  g_array_append_val (plate->holes, hole);
}

static inline Plate *
three_holes (void)
{
  Plate *plate = plate_new ();

  plate->kind = PLATE_HOLES;
  plate->bearing_diameter_mm = 46.0;
  add_hole (plate, "1", 0.0, 6.0);
  add_hole (plate, "2", 9.0, 6.0);
  add_hole (plate, "3", 18.0, 6.0);
  return plate;
}

static inline Plate *
plate_of (PlateKind kind)
{
  Plate *plate = kind == PLATE_HOLES ? three_holes () : plate_new ();

  plate->kind = kind;
  plate->direction_deg = 30.0;
  plate->along = (PlateScale){ -5.0, 20.0 };
  plate->across = (PlateScale){ -8.0, 12.0 };
  plate->radius_mm = 9.0;
  plate->bearing_diameter_mm = 44.0;
  return plate;
}

static inline void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = set_m_car ();
  f->car->tower = (CarTower){ 84.0, 4.0, -2.0 };
  add_target (f->car, AIM_CAMBER, -2.3, -1.7);
  add_target (f->car, AIM_CASTER, 4.5, INFINITY);
  add_setup (f->car, "15 in", 15.0, 0.0);
  add_setup (f->car, "8 out, 12 forward", -8.0, -12.0);
  f->plate = three_holes ();
  f->map = mount_map_new ();
  f->view = (MountMapView){ .car = f->car,
                            .setup = 1,
                            .subjects = { FIELD_CAMBER, FIELD_CASTER },
                            .plate = f->plate,
                            .theme = theme_light (),
                            .pixel_scale = 1.0,
                            .lit_place = MOUNT_MAP_NONE };
}

static inline void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  car_free (f->car);
  plate_free (f->plate);
  mount_map_free (f->map);
}

static inline cairo_surface_t *
draw_with (MountMap *map, const MountMapView *view, int width, int height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);

  mount_map_draw (map, cr, view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static inline void
draw (Fixture *f, int width, int height)
{
  cairo_surface_destroy (draw_with (f->map, &f->view, width, height));
}

static inline DrawnPoint
pixel_of (const Fixture *f, double inboard, double rearward)
{
  DrawnPoint p;

  mount_map_to_pixel (f->map, (MountOffset){ inboard, rearward, 0.0 }, &p.x, &p.y);
  return p;
}

static const int sizes[][2] = {
  { 380, 300 }, { 700, 650 }, { 1280, 720 }, { 520, 900 }, { 1801, 1203 }
};
