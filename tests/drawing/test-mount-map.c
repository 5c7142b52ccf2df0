/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mount-map-fixture.h"
#include "svg-numbers.h"

#include <string.h>

static void
test_places_and_pixels_go_together (Fixture *f, gconstpointer data)
{
  (void) data;
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    draw (f, sizes[i][0], sizes[i][1]);
    const double scale = mount_map_pixels_per_mm (f->map);
    const DrawnPoint zero = pixel_of (f, 0, 0), in = pixel_of (f, 10, 0),
                     back = pixel_of (f, 0, 10);

    /* inboard to the left, rearward up, one scale */
    g_assert_cmpfloat_with_epsilon (zero.x - in.x, 10.0 * scale, 1e-9);
    g_assert_cmpfloat_with_epsilon (zero.y - back.y, 10.0 * scale, 1e-9);
    g_assert_cmpfloat_with_epsilon (in.y, zero.y, 1e-9);
    g_assert_cmpfloat_with_epsilon (back.x, zero.x, 1e-9);
    for (int n = 0; n < 20; n++) {
      const double inboard = g_test_rand_double_range (-20, 30),
                   rearward = g_test_rand_double_range (-30, 20);
      const DrawnPoint p = pixel_of (f, inboard, rearward);
      const MountMapHit hit = mount_map_hit (f->map, p.x, p.y);

      g_assert_true (hit.on_map);
      g_assert_cmpfloat_with_epsilon (hit.at.inboard, inboard, 1e-9);
      g_assert_cmpfloat_with_epsilon (hit.at.rearward, rearward, 1e-9);
    }
  }
}

static gboolean
is_seen (const Fixture *f, double inboard, double rearward)
{
  const DrawnPoint p = pixel_of (f, inboard, rearward);

  return mount_map_hit (f->map, p.x, p.y).on_map;
}

static void
test_what_matters_is_seen (Fixture *f, gconstpointer data)
{
  (void) data;
  f->plate->bearing_diameter_mm = 0.0;
  add_setup (f->car, "far", 70.0, 55.0);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    draw (f, sizes[i][0], sizes[i][1]);
    for (int angle = 0; angle < 360; angle += 15)
      g_assert_true (is_seen (f, 4.0 + 42.0 * cos (angle * G_PI / 180.0),
                              -2.0 + 42.0 * sin (angle * G_PI / 180.0)));
    for (guint s = 0; s < f->car->setups->len; s++)
      g_assert_true (is_seen (f, car_setup (f->car, s)->mount.inboard,
                              car_setup (f->car, s)->mount.rearward));
  }
  car_setup (f->car, 3)->is_hidden = TRUE;
  draw (f, 700, 650);
  g_assert_false (is_seen (f, 70.0, 55.0));
}

static void
test_hits (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, 700, 650);
  const DrawnPoint handle = pixel_of (f, 15, 0), other = pixel_of (f, -8, -12),
                   hole = pixel_of (f, 0, 6), empty = pixel_of (f, 30, -25);

  g_assert_true (mount_map_hit (f->map, handle.x + 10, handle.y - 6).on_handle);
  g_assert_cmpint (mount_map_hit (f->map, other.x + 8, other.y + 8).setup, ==, 2);
  g_assert_false (mount_map_hit (f->map, other.x, other.y).on_handle);
  /* 24 pixels across */
  for (int angle = 0; angle < 360; angle += 30) {
    const MountMapHit hit =
        mount_map_hit (f->map, hole.x + 11.9 * cos (angle * G_PI / 180.0),
                       hole.y + 11.9 * sin (angle * G_PI / 180.0));
    g_assert_cmpint (hit.place, ==, 0);
  }
  g_assert_cmpint (mount_map_hit (f->map, hole.x, hole.y).setup, ==, MOUNT_MAP_NONE);

  const MountMapHit nothing = mount_map_hit (f->map, empty.x, empty.y);
  g_assert_true (nothing.on_map);
  g_assert_false (nothing.on_handle);
  g_assert_cmpint (nothing.place, ==, MOUNT_MAP_NONE);
  g_assert_cmpint (nothing.setup, ==, MOUNT_MAP_NONE);
  g_assert_false (mount_map_hit (f->map, 2.0, 2.0).on_map);

  /* the setup in hand has no marker but the handle */
  g_assert_cmpint (mount_map_hit (f->map, handle.x, handle.y).setup, ==, MOUNT_MAP_NONE);
}

static void
test_every_place_of_a_plate_is_hit (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autoptr (Plate) bush = plate_new ();

  bush->kind = PLATE_ECCENTRIC;
  bush->radius_mm = 6.0;
  bush->inboard_mm = 3.0;
  for (double turn = 0.0; turn < 360.0; turn += 45.0)
    g_array_append_val (bush->turns_deg, turn);
  bush->can_swap = TRUE;
  f->view.plate = bush;
  for (f->view.is_swapped = 0; f->view.is_swapped <= 1; f->view.is_swapped++) {
    draw (f, 700, 650);
    for (guint i = 0; i < 8; i++) {
      const MountOffset at =
          plate_place (bush,
                       (PlateSetting){ .place = i, .is_swapped = f->view.is_swapped });
      const DrawnPoint p = pixel_of (f, at.inboard, at.rearward);

      g_assert_cmpint (mount_map_hit (f->map, p.x, p.y).place, ==, (int) i);
    }
  }
}

static void
test_nothing_is_hit_before_it_is_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  const MountMapHit hit = mount_map_hit (f->map, 100.0, 100.0);

  g_assert_false (hit.on_map);
  g_assert_cmpint (hit.place, ==, MOUNT_MAP_NONE);
  mount_map_arrange (f->map, &f->view, 700, 650);
  const DrawnPoint before = pixel_of (f, 15, 0);
  g_assert_true (mount_map_hit (f->map, before.x, before.y).on_handle);
  draw (f, 700, 650);
  const DrawnPoint after = pixel_of (f, 15, 0);
  g_assert_cmpmem (&before, sizeof before, &after, sizeof after);
}

static void
test_the_right_side_has_its_own_mount (Fixture *f, gconstpointer data)
{
  (void) data;
  car_setup (f->car, 1)->right =
      (CarRightSide){ .is_own = TRUE, .mount = { 5.0, 9.0, 0.0 } };
  f->view.side = SIDE_RIGHT;
  draw (f, 700, 650);
  const DrawnPoint left = pixel_of (f, 15, 0), right = pixel_of (f, 5, 9);

  g_assert_true (mount_map_hit (f->map, right.x, right.y).on_handle);
  g_assert_false (mount_map_hit (f->map, left.x, left.y).on_handle);
}

static void
test_the_window_holds (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, 700, 650);
  const DrawnPoint before = pixel_of (f, 0, 0);
  const double scale = mount_map_pixels_per_mm (f->map);

  f->view.hold_window = TRUE;
  car_setup (f->car, 1)->mount.inboard = 90.0;
  draw (f, 700, 650);
  g_assert_cmpfloat (mount_map_pixels_per_mm (f->map), ==, scale);
  g_assert_cmpfloat (pixel_of (f, 0, 0).x, ==, before.x);

  f->view.hold_window = FALSE;
  draw (f, 700, 650);
  g_assert_cmpfloat (mount_map_pixels_per_mm (f->map), <, scale);
  g_assert_true (is_seen (f, 90.0, 0.0));
}

/* The ends of what is aimed for have lines of their own, between the round ones. */
static void
test_ends_of_aims_are_lines (Fixture *f, gconstpointer data)
{
  (void) data;
  static const double ends[] = { -2.3, -1.7 };

  draw (f, 700, 650);
  const FieldLines *lines = mount_map_lines (f->map, 0);
  for (gsize e = 0; e < G_N_ELEMENTS (ends); e++) {
    guint n = 0;

    for (guint i = 0; i < lines->lines->len; i++)
      n += fabs (g_array_index (lines->lines, FieldLine, i).level * 180.0 / G_PI -
                 ends[e]) < 1e-9;
    g_assert_cmpuint (n, ==, 1);
  }
  f->view.subjects[1] = MOUNT_MAP_NONE;
  draw (f, 700, 650);
  g_assert_null (mount_map_lines (f->map, 1));
  f->view.subjects[1] = FIELD_CAMBER; /* once is enough */
  draw (f, 700, 650);
  g_assert_null (mount_map_lines (f->map, 1));
}

static void
test_dragging_the_mount_leaves_the_field (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, 700, 650);
  const MountField *field = mount_map_field (f->map);
  const gsize size = field->grid.n_inboard * field->grid.n_rearward * sizeof (MountPlace);

  f->view.hold_window = TRUE;
  memset (field->places, 0, size); /* nobody looks there again … */
  car_setup (f->car, 1)->mount = (MountOffset){ 3.0, 4.0, 0.0 };
  draw (f, 700, 650);
  for (gsize i = 0; i < size; i++)
    g_assert_cmpint (((const char *) field->places)[i], ==, 0);
  car_setup (f->car, 1)->lowering_mm = 10.0; /* … until the body comes down */
  draw (f, 700, 650);
  g_assert_cmpuint (field->n_assembled, >, 0);
  g_assert_cmpfloat (field->places[0].value[QUANTITY_SAI], >, 0.0);
}

/* What is kept between two drawings must not show: each has to look as one that was made
 * from nothing. */
static void
check_like_new (Fixture *f, const char *what, int width, int height)
{
  g_autoptr (MountMap) fresh = mount_map_new ();
  cairo_surface_t *kept = draw_with (f->map, &f->view, width, height);
  cairo_surface_t *made = draw_with (fresh, &f->view, width, height);

  if (memcmp (cairo_image_surface_get_data (kept), cairo_image_surface_get_data (made),
              (gsize) cairo_image_surface_get_stride (kept) * (gsize) height) != 0)
    g_error ("after a change of %s the map looks otherwise than a new one", what);
  cairo_surface_destroy (kept);
  cairo_surface_destroy (made);
}

static void
test_changes_show (Fixture *f, gconstpointer data)
{
  (void) data;
  CarSetup *setup = car_setup (f->car, 1), *other = car_setup (f->car, 2);
  ChoicePlace best = { .mount = { 17.0, 9.0, 0.0 } };

#define AFTER(change, what)                                                              \
  G_STMT_START                                                                           \
  {                                                                                      \
    change;                                                                              \
    check_like_new (f, what, 700, 650);                                                  \
  }                                                                                      \
  G_STMT_END
  AFTER ((void) 0, "nothing");
  AFTER (setup->mount.inboard = 11.0, "the mount");
  AFTER (setup->mount.up = 6.0, "its height");
  AFTER (setup->lowering_mm = 20.0, "lowering");
  AFTER (setup->toe = TOE_RESET, "toe mode");
  AFTER (other->mount.rearward = 4.0, "another mount");
  AFTER (strcpy (other->name, "9 out"), "a name");
  AFTER (other->is_hidden = TRUE, "what is hidden");
  AFTER (f->car->baseline = 2, "the baseline");
  AFTER (f->car->tower.opening_diameter_mm = 78.0, "the opening");
  AFTER (f->car->tower.opening_inboard_mm = -1.0, "the opening's place");
  AFTER (f->car->limits.edge_margin_mm = 4.0, "the margin");
  AFTER (f->plate->bearing_diameter_mm = 40.0, "the bearing");
  AFTER (g_array_index (f->plate->holes, PlateHole, 1).inboard_mm = 12.0, "a hole");
  AFTER (g_array_index (f->plate->holes, PlateHole, 1).label[0] = 'B', "a label");
  AFTER (f->view.best = &best, "the best");
  AFTER (best.mount.inboard = 14.0, "the best's place");
  AFTER (f->view.is_swapped = TRUE, "swapping");
  AFTER (f->plate->swap_turn_deg = -90.0, "the swap's turn");
  AFTER (f->view.lit_place = 1, "the lit place");
  AFTER (f->view.is_handle_lit = TRUE, "the lit handle");
  AFTER (f->view.show_cross = TRUE, "the cross");
  AFTER (f->view.cross.inboard = -9.0, "the cross's place");
  AFTER (g_array_index (f->car->targets, CarTarget, 0).most = -1.2, "an aim");
  AFTER (f->view.subjects[1] = FIELD_TRAIL, "the second subject");
  AFTER (f->view.subjects[0] = FIELD_SAI, "the first subject");
  AFTER (f->view.theme = theme_dark (), "the theme");
  AFTER (f->view.theme = theme_scaled (theme_dark (), 1.2), "the type size");
  AFTER (f->view.side = SIDE_RIGHT, "the side");
  AFTER (car_setup (f->car, 1)->right.is_own = TRUE, "a right side of its own");
  AFTER (f->car->right.has_alignment = TRUE, "a right side that was measured");
  AFTER (f->view.setup = 2, "the setup in hand");
  AFTER (f->car->points[POINT_BALL_JOINT].z += 2.0, "a point");
  AFTER (f->view.plate = NULL, "the plate");
  AFTER (f->view.pixel_scale = 0.0, "how it is drawn");
#undef AFTER
  f->view.pixel_scale = 1.0;
  check_like_new (f, "size", 640, 500);
}

static double
draw_svg (Fixture *f, double width, double height)
{
  g_autoptr (GString) svg = g_string_new (NULL);
  cairo_surface_t *surface =
      cairo_svg_surface_create_for_stream (svg_append, svg, width, height);
  cairo_t *cr = cairo_create (surface);

  mount_map_draw (f->map, cr, &f->view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return svg_largest_number (svg);
}

static void
test_every_plate_is_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  f->view.pixel_scale = 0.0;
  for (PlateKind kind = 0; kind < N_PLATE_KINDS; kind++)
    for (int swapped = 0; swapped <= 1; swapped++) {
      g_autoptr (Plate) plate = plate_of (kind);

      f->view.plate = plate;
      f->view.is_swapped = swapped;
      g_assert_cmpfloat (draw_svg (f, 700, 650), <, 3000.0);
    }
}

static void
test_odd_maps_are_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  const TitleBlock title = title_block_for (f->car, car_setup (f->car, 1), NULL);

  f->view.pixel_scale = 0.0;
  g_assert_cmpfloat (draw_svg (f, 60, 40), <, 3000.0);
  f->view.theme.ground.alpha = 0.0;
  g_assert_cmpfloat (draw_svg (f, 380, 300), <, 3000.0);
  f->view.title = &title;
  g_assert_cmpfloat (draw_svg (f, 900, 700), <, 3000.0);
  f->view.title = NULL;
  f->view.subjects[0] = MOUNT_MAP_NONE;
  g_assert_cmpfloat (draw_svg (f, 700, 650), <, 3000.0);

  f->view.subjects[0] = FIELD_CAMBER;
  f->plate->bearing_diameter_mm = 200.0; /* larger than the opening */
  g_assert_cmpfloat (draw_svg (f, 700, 650), <, 3000.0);
  f->view.plate = NULL;
  f->car->tower.opening_diameter_mm = 0.0;
  g_assert_cmpfloat (draw_svg (f, 700, 650), <, 3000.0);

  /* no place of it can be assembled */
  car_setup (f->car, 1)->corrections.tie_rod_length_mm = 900.0;
  f->view.show_cross = TRUE;
  g_assert_cmpfloat (draw_svg (f, 700, 650), <, 3000.0);
  g_assert_cmpuint (mount_map_n_labels (f->map), ==, 0);
  g_assert_cmpuint (mount_map_field (f->map)->n_assembled, ==, 0);
}

/* The lines that are drawn keep their values, between vertices too. */
static void
test_lines_are_exact (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, 700, 650);
  for (guint which = 0; which < 2; which++) {
    const FieldLines *lines = mount_map_lines (f->map, which);

    for (int n = 0; n < 100; n++) {
      const FieldLine *line =
          &g_array_index (lines->lines, FieldLine,
                          g_test_rand_int_range (0, (gint32) lines->lines->len));
      const guint i = (guint) g_test_rand_int_range (0, (gint32) line->n_points - 1);
      const MountOffset *at =
          &g_array_index (lines->points, MountOffset, line->first + i);
      const double part = g_test_rand_double ();
      const MountOffset p = { at[0].inboard + part * (at[1].inboard - at[0].inboard),
                              at[0].rearward + part * (at[1].rearward - at[0].rearward),
                              at[0].up };

      g_assert_cmpfloat_with_epsilon (mount_field_exact (mount_map_field (f->map),
                                                         (FieldSubject)
                                                             f->view.subjects[which],
                                                         p),
                                      line->level, 2.0 * FIELD_TOLERANCE * lines->step);
    }
  }
}

#define ADD(name, function)                                                              \
  g_test_add ("/mount-map/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("layout/scale", test_places_and_pixels_go_together);
  ADD ("layout/seen", test_what_matters_is_seen);
  ADD ("layout/holds", test_the_window_holds);
  ADD ("hits", test_hits);
  ADD ("hits/places", test_every_place_of_a_plate_is_hit);
  ADD ("hits/before", test_nothing_is_hit_before_it_is_drawn);
  ADD ("hits/right", test_the_right_side_has_its_own_mount);
  ADD ("lines/aims", test_ends_of_aims_are_lines);
  ADD ("lines/exact", test_lines_are_exact);
  ADD ("still/field", test_dragging_the_mount_leaves_the_field);
  ADD ("still/changes", test_changes_show);
  ADD ("plates", test_every_plate_is_drawn);
  ADD ("odd", test_odd_maps_are_drawn);
  return g_test_run ();
}
