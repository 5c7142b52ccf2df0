/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All that the still part of the map is drawn from, apart from the field, in one run of
 * bytes: two drawings with the same key look the same. */

#include "drawing/mount-map/mount-map-private.h"
#include "model/study/setup-title.h"

#include <string.h>

static void
add (GByteArray *key, double number)
{
  g_byte_array_append (key, (const guint8 *) &number, sizeof number);
}

static void
add_text (GByteArray *key, const char *text)
{
  g_byte_array_append (key, (const guint8 *) text, (guint) strlen (text) + 1);
}

static void
add_mount (GByteArray *key, MountOffset mount)
{
  add (key, mount.inboard);
  add (key, mount.rearward);
}

static void
add_theme (GByteArray *key, const Theme *theme)
{
  g_byte_array_append (key, (const guint8 *) theme, offsetof (Theme, font));
  add_text (key, theme->font);
  add (key, theme->is_dark);
}

static void
add_window (GByteArray *key, FieldWindow window)
{
  add (key, window.inboard_from);
  add (key, window.inboard_to);
  add (key, window.rearward_from);
  add (key, window.rearward_to);
}

static void
add_plate (GByteArray *key, const MountMapView *view)
{
  const Plate *plate = view->plate;

  add (key, plate != NULL);
  if (plate == NULL)
    return;
  add (key, plate->kind);
  add (key, plate->bearing_diameter_mm);
  add (key, view->is_swapped);
  for (guint i = 0; i < plate_n_places (plate); i++)
    add_mount (key, map_plate_place (view, i));
  for (int i = 0; plate_n_ways (plate) > 0 && i < 4; i++)
    add_mount (key, map_plate_at (view, i % 2, i / 2));
  if (plate->kind == PLATE_ECCENTRIC) {
    add (key, plate->turn_least_deg);
    add (key, plate->turn_most_deg);
  }
  for (guint i = 0; plate->kind == PLATE_HOLES && i < plate->holes->len; i++)
    add_text (key, g_array_index (plate->holes, PlateHole, i).label);
}

static void
add_setups (GByteArray *key, const MountMapView *view)
{
  add (key, view->setup);
  for (guint i = 0; i < view->car->setups->len; i++) {
    add (key, map_shows_setup (view, i));
    if (map_shows_setup (view, i)) {
      add_mount (key, map_mount (view, i));
      add_text (key, setup_title (car_setup (view->car, i)));
    }
  }
}

void
map_key_fill (const MapPen *pen, MountOffset placed_for, GByteArray *key)
{
  const MountMapView *view = pen->view;

  g_byte_array_set_size (key, 0);
  add (key, view->pixel_scale);
  add (key, view->side);
  add (key, car_sides_differ (view->car, view->setup));
  add_theme (key, pen->theme);
  add_window (key, pen->layout->window);
  add (key, pen->layout->canvas.width);
  add (key, pen->layout->canvas.height);
  add (key, map_opening_radius (view->car));
  add_mount (key, map_opening_centre (view->car));
  add (key, view->car->limits.edge_margin_mm);
  add_plate (key, view);
  add_setups (key, view);
  add (key, view->best != NULL);
  if (view->best != NULL)
    add_mount (key, view->best->mount);
  add_mount (key, placed_for);
}
