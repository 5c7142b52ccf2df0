/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the window draws beside its labels and no file has: every word is a message. */

#include "drawing/chart/number-table.h"
#include "drawing/guide/point-sketch.h"
#include "drawing/mount-map/plate-sketch.h"
#include "drawing/sheet/construction-story.h"
#include "drawing/sheet/sheet.h"
#include "mount-map-fixture.h"

#include <string.h>

#define WIDTH 900
#define HEIGHT 700

static cairo_t *
begin (void)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  drawn_reset ();
  return cr;
}

/* Two plain letters, unless a symbol of a unit or a name of the car's file. */
static gboolean
is_unmarked (const char *text, const Car *car)
{
  static const char *const symbols[] = { "mm", "rad" };
  g_autoptr (GRegex) word = g_regex_new ("[A-Za-z]{2,}", 0, 0, NULL);
  g_autoptr (GString) rest = g_string_new (text);

  for (guint i = 0; i < car->setups->len; i++)
    g_string_replace (rest, car_setup (car, i)->name, "", 0);
  g_string_replace (rest, car->name, "", 0);
  for (gsize i = 0; i < G_N_ELEMENTS (symbols); i++)
    g_string_replace (rest, symbols[i], "", 0);
  return g_regex_match (word, rest->str, 0, NULL);
}

static void
end (cairo_t *cr, const Car *car, guint least)
{
  guint n_wide = 0;

  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  for (guint i = 0; i < drawn_texts->len; i++) {
    const char *text = drawn_text_at (i)->text;

    if (is_unmarked (text, car))
      g_error ("“%s” has words of no message", text);
    n_wide += strstr (text, "\uFF45") != NULL; /* a wide e */
  }
  g_assert_cmpuint (n_wide, >=, least);
}

static void
test_table (Fixture *f, gconstpointer data)
{
  static const Quantity rows[] = { QUANTITY_CAMBER, QUANTITY_SAI, QUANTITY_ARM_RATIO,
                                   QUANTITY_ROLL_CENTRE_HEIGHT };
  g_autoptr (NumberTable) table = number_table_new ();
  g_autoptr (Study) study = study_new ();
  NumberTableView view = { .study = study,
                           .theme = theme_light (),
                           .quantities = rows,
                           .n_quantities = G_N_ELEMENTS (rows),
                           .lit = 0 };

  (void) data;
  study_solve (study, f->car, 1, 20.0);
  for (int sides = 0; sides < 2; sides++) {
    cairo_t *cr = begin ();

    view.side_by_side = sides;
    number_table_draw (table, cr, &view, WIDTH, HEIGHT);
    end (cr, f->car, 3);
  }
}

static void
test_story (Fixture *f, gconstpointer data)
{
  g_autoptr (Story) story = story_new ();
  g_autoptr (Study) study = study_new ();

  (void) data;
  study_solve (study, f->car, 0, 0.0);
  for (StoryStep step = 0; step < N_STORY_STEPS; step++) {
    const StoryView view = { study, 175.0, theme_light (), step };
    cairo_t *cr = begin ();

    story_draw (story, cr, &view, WIDTH, HEIGHT);
    end (cr, f->car, 1);
  }
}

static void
test_sketches (Fixture *f, gconstpointer data)
{
  g_autoptr (TextCache) texts = text_cache_new ();
  PointSketchView points = { .loaded_radius = 280.0, .theme = theme_light () };

  (void) data;
  for (PlateKind kind = 0; kind < N_PLATE_KINDS; kind++) {
    g_autoptr (Plate) plate = plate_of (kind);
    const PlateSketchView view = { plate, theme_light () };
    cairo_t *cr = begin ();

    plate_sketch_draw (texts, cr, &view, WIDTH, HEIGHT);
    end (cr, f->car, 1);
  }
  memcpy (points.points, f->car->points, sizeof points.points);
  cairo_t *cr = begin ();
  point_sketch_draw (texts, cr, &points, WIDTH, HEIGHT);
  end (cr, f->car, 1);
}

static void
test_map (Fixture *f, gconstpointer data)
{
  (void) data;
  f->view.show_cross = TRUE;
  f->view.cross = (MountOffset){ 4.0, 3.0, 0.0 };
  f->view.is_handle_lit = TRUE;
  f->view.lit_place = 1;
  cairo_t *cr = begin ();
  mount_map_draw (f->map, cr, &f->view, WIDTH, HEIGHT);
  end (cr, f->car, 3);
}

/* With each handle held: it says where it is. */
static void
test_handles (Fixture *f, gconstpointer data)
{
  Sheet *sheet = sheet_new ();
  g_autoptr (Study) study = study_new ();
  SheetView view = { .study = study,
                     .section_width = 175.0,
                     .theme = theme_light (),
                     .zoom = 1.0,
                     .lit = -1,
                     .show_handles = true };

  (void) data;
  study_solve (study, f->car, 1, 12.0);
  for (view.held = SHEET_HANDLE_MOUNT; view.held < N_SHEET_HANDLES; view.held++) {
    cairo_t *cr = begin ();

    view.handle_view = SHEET_FRONT;
    sheet_draw (sheet, cr, &view, WIDTH, HEIGHT);
    end (cr, f->car, 5);
  }
  sheet_free (sheet);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  drawn_in_full_width = true;
  g_test_add ("/unmarked-words/table", Fixture, NULL, set_up, test_table, tear_down);
  g_test_add ("/unmarked-words/story", Fixture, NULL, set_up, test_story, tear_down);
  g_test_add ("/unmarked-words/sketches", Fixture, NULL, set_up, test_sketches,
              tear_down);
  g_test_add ("/unmarked-words/map", Fixture, NULL, set_up, test_map, tear_down);
  g_test_add ("/unmarked-words/handles", Fixture, NULL, set_up, test_handles, tear_down);
  return g_test_run ();
}
