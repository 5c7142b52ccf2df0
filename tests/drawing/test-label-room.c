/* SPDX-License-Identifier: GPL-3.0-or-later */
/* No text of a drawing covers another or runs past the border, whatever its size, the
 * car, the setup and the length of the language's words. */

#include "drawing/board/board.h"
#include "drawing/board/lowering.h"
#include "drawing/chart/number-table.h"
#include "drawing/sheet/sheet-layout.h"
#include "drawing/sheet/sheet.h"
#include "drawn-texts.h"
#include "model/car/car-json.h"

#include <string.h>

#define BORDER (-0.5) /* pixels that letters may lean over it */

static Study study;

static void
assert_apart (double width, double height, const char *what)
{
  drawn_assert_apart (width, height, BORDER, what);
}

static bool
is_written (const char *text)
{
  return drawn_find (text) != NULL;
}

static Car *
load (const char *name)
{
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "..", "..", "data", name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  g_assert_no_error (error);
  return car;
}

typedef struct {
  Sheet *sheet;
  SheetView view;
} Drawer;

static void
draw_sheet (Drawer *d, int width, int height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  drawn_reset ();
  sheet_draw (d->sheet, cr, &d->view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static const int sizes[][2] = { { 280, 220 },  { 360, 300 },  { 480, 450 }, { 560, 400 },
                                { 560, 520 },  { 640, 640 },  { 800, 600 }, { 400, 900 },
                                { 1300, 420 }, { 1000, 900 }, { 793, 1122 } };

/* Nothing held, then, where room is scarce, each handle in the front and the side view.
 */
static void
check_handles (Drawer *d, int width, int height)
{
  d->view.held = SHEET_HANDLE_NONE;
  draw_sheet (d, width, height);
  assert_apart (width, height, "a sheet");
  if (width > 600)
    return;
  for (SheetHandle held = SHEET_HANDLE_MOUNT; held < N_SHEET_HANDLES; held++)
    for (SheetViewName view = SHEET_FRONT; view <= SHEET_SIDE; view++) {
      d->view.held = held;
      d->view.handle_view = view;
      draw_sheet (d, width, height);
      assert_apart (width, height, "a sheet with a handle held");
    }
  d->view.held = SHEET_HANDLE_NONE;
}

static const MountOffset mounts[] = {
  { 0 }, { 15, 10, 5 }, { 60, 60, 0 }, { -60, -60, 50 }, { 60, -40, -50 }, { 2, 0, 0.5 }
};

/* The car that is @number of @n. */
static void
check_car (Car *car, gsize number, gsize n, const Theme *theme)
{
  Drawer d = { sheet_new (),
               { .study = &study,
                 .section_width = car->section_width_mm,
                 .theme = *theme,
                 .zoom = 1.0,
                 .lit = -1 } };

  for (gsize m = 0; m < G_N_ELEMENTS (mounts); m++)
    for (double travel = -60.0; travel <= 30.0; travel += 90.0) {
      if (!drawn_in_turn (m, number, n))
        continue;

      CarSetup *setup = car_setup (car, 0);

      setup->mount = mounts[m];
      setup->lowering_mm = travel / 3.0;
      study_solve (&study, car, 0, travel);
      const TitleBlock title = title_block_for (car, setup, "2026-03-05");
      for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++) {
        d.view.show_handles = true;
        d.view.title = NULL;
        check_handles (&d, sizes[s][0], sizes[s][1]);
        d.view.show_handles = false;
        d.view.title = &title;
        draw_sheet (&d, sizes[s][0], sizes[s][1]);
        assert_apart (sizes[s][0], sizes[s][1], "a sheet with its title");
      }
    }
  sheet_free (d.sheet);
}

static const char *const cars[] = { "wren.swcar", "fieldfare.swcar", "lapwing.swcar",
                                    "dunnock.swcar" };

static void
test_sheet (gconstpointer long_words)
{
  const Theme theme = theme_light ();

  drawn_in_long_words = GPOINTER_TO_INT (long_words);
  for (gsize i = 0; i < G_N_ELEMENTS (cars); i++) {
    g_autoptr (Car) car = load (cars[i]);

    check_car (car, i, G_N_ELEMENTS (cars), &theme);
  }
  drawn_in_long_words = false;
}

/* Nor when letters are large. */
static void
test_sheet_in_large_type (void)
{
  g_autoptr (Car) car = load (cars[0]);
  Theme theme = theme_light ();

  theme.text *= 1.5;
  theme.small_text *= 1.5;
  check_car (car, 0, 1, &theme);
}

/* The six setups of a busy study, in tables and in the lowering view. */
static void
add_setups (Car *car)
{
  static const char *const names[] = { "12 in, 6 back, toe reset", "Lowered 30", "18 in",
                                       "20 back", "Lowered 20 with a spacer" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    const CarSetup setup = { .name = g_strdup (names[i]),
                             .mount = { 3.0 * i, 2.0 * i, 0 },
                             .lowering_mm = 7.0 * i };

    g_array_append_val (car->setups, setup);
  }
}

static cairo_t *
begin (int width, int height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  drawn_reset ();
  return cr;
}

static void
test_tables (gconstpointer long_words)
{
  static const Quantity rows[] = { QUANTITY_CAMBER,
                                   QUANTITY_SAI,
                                   QUANTITY_ARM_RATIO,
                                   QUANTITY_ROLL_CENTRE_HEIGHT,
                                   QUANTITY_HALF_TRACK_CHANGE,
                                   QUANTITY_CAMBER_GAIN };
  g_autoptr (Car) car = load (cars[0]);
  g_autoptr (NumberTable) table = number_table_new ();
  NumberTableView view = { .study = &study,
                           .theme = theme_light (),
                           .quantities = rows,
                           .n_quantities = G_N_ELEMENTS (rows),
                           .lit = -1 };

  add_setups (car);
  drawn_in_long_words = GPOINTER_TO_INT (long_words);
  for (guint hand = 0; hand < car->setups->len; hand++)
    for (int width = 700; width <= 1500; width += 80)
      for (int sides = 0; sides < 2; sides++) {
        cairo_t *cr = begin (width, 400);

        study_solve (&study, car, hand, 20.0);
        view.side_by_side = sides;
        number_table_draw (table, cr, &view, width, 400.0);
        assert_apart (width, 400.0, sides ? "a table side by side" : "a table");
        cairo_destroy (cr);
      }
  drawn_in_long_words = false;
}

/* Only the large chart names its curves; in all three no tick runs into a title. */
static void
test_lowering_names_curves_once (void)
{
  g_autoptr (Car) car = load (cars[0]);
  g_autoptr (Lowering) lowering = lowering_new ();
  const LoweringView view = { .study = &study, .theme = theme_light (), .lit = -1 };
  guint n_named = 0;

  add_setups (car);
  study_solve (&study, car, 0, 0.0);
  for (int height = 380; height <= 700; height += 20) {
    cairo_t *cr = begin (700, height);

    lowering_draw (lowering, cr, &view, 700.0, height);
    n_named = 0;
    for (guint i = 0; i < drawn_texts->len; i++) {
      n_named += g_str_equal (drawn_text_at (i)->text, "20 back");
      for (guint j = 0; j < drawn_texts->len; j++)
        if (strcmp (drawn_text_at (i)->text, "Bump steer") == 0 && i != j &&
            drawn_overlap (drawn_text_at (i), drawn_text_at (j)))
          g_error ("“%s” runs into the title at %d", drawn_text_at (j)->text, height);
    }
    g_assert_cmpuint (n_named, ==, 1);
    cairo_destroy (cr);
  }
}

/* Of a ball joint whose sign was lost, at full bump and at full droop. */
static void
test_reasons_of_gaps_keep_apart (void)
{
  g_autoptr (Car) car = load ("wren.swcar");
  g_autoptr (Board) board = board_new ();
  const BoardView view = {
    .study = &study, .choice = board_choice_default (), .theme = theme_light (), .lit = -1
  };
  guint most = 0;

  car->points[POINT_BALL_JOINT].y *= -1.0;
  study_solve (&study, car, 0, 0.0);
  for (int width = 400; width <= 1600; width += 100) {
    cairo_t *cr = begin (width, 640);

    board_draw (board, cr, &view, width, 640.0);
    const guint n = drawn_count ("The tie rod cannot");
    g_assert_cmpuint (n, >=, 1);
    most = MAX (most, n);
    for (guint i = 0; i < drawn_texts->len; i++)
      for (guint j = 0; j < i; j++)
        if (g_str_has_prefix (drawn_text_at (i)->text, "The tie rod cannot") &&
            g_str_has_prefix (drawn_text_at (j)->text, "The tie rod cannot"))
          g_assert_false (drawn_overlap (drawn_text_at (i), drawn_text_at (j)));
    cairo_destroy (cr);
  }
  g_assert_cmpuint (most, ==, 2);
}

/* A sheet that leaves everything out would pass the above. */
static void
test_sheet_says_what_it_can (void)
{
  static const char *const small[] = { "Front view", "Side view", "Plan view", "mm" };
  static const char *const ordinary[] = {
    "camber",       "caster",         "inclination", "scrub radius",  "trail",
    "toe-in",       "instant centre", "roll centre", "steering axis", "this setup",
    "centre plane", "15.0 in",        "10.0 back",   "5.0 up",        "lowered"
  };
  g_autoptr (Car) car = load (cars[0]);
  CarSetup *setup = car_setup (car, 0);
  Drawer d = { sheet_new (),
               { .study = &study,
                 .section_width = car->section_width_mm,
                 .theme = theme_light (),
                 .zoom = 1.0,
                 .lit = -1,
                 .show_handles = true } };

  setup->mount = (MountOffset){ 15, 10, 5 };
  setup->lowering_mm = 12.0;
  study_solve (&study, car, 0, 0.0);
  draw_sheet (&d, 360, 300);
  for (gsize i = 0; i < G_N_ELEMENTS (small); i++)
    g_assert_true (is_written (small[i]));
  draw_sheet (&d, 800, 900);
  for (gsize i = 0; i < G_N_ELEMENTS (ordinary); i++) {
    if (!is_written (ordinary[i]))
      g_test_message ("no “%s”", ordinary[i]);
    g_assert_true (is_written (ordinary[i]));
  }
  sheet_free (d.sheet);
}

static gboolean
is_on (const DrawnText *box, double x, double y)
{
  const double room = 7.0;

  return x + room > box->left && x - room < box->right && y + room > box->top &&
         y - room < box->bottom;
}

/* With the mount where a workshop would put it. */
static void
test_sheet_keeps_off_the_handles (void)
{
  g_autoptr (Car) car = load (cars[0]);
  Drawer d = { sheet_new (),
               { .study = &study,
                 .section_width = car->section_width_mm,
                 .theme = theme_light (),
                 .zoom = 1.0,
                 .lit = -1,
                 .show_handles = true } };
  double x, y;

  for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++)
    for (double inboard = -30.0; inboard <= 30.0; inboard += 10.0) {
      car_setup (car, 0)->mount = (MountOffset){ inboard, inboard, inboard / 3.0 };
      study_solve (&study, car, 0, inboard);
      draw_sheet (&d, sizes[s][0], sizes[s][1]);
      for (SheetHandle h = SHEET_HANDLE_MOUNT; h < N_SHEET_HANDLES; h++)
        for (SheetViewName view = 0; view < N_SHEET_VIEWS; view++)
          for (guint i = 0; i < drawn_texts->len; i++)
            if (sheet_handle_place (d.sheet, h, view, &x, &y) &&
                is_on (drawn_text_at (i), x, y))
              g_error ("“%s” lies on a handle at %d × %d", drawn_text_at (i)->text,
                       sizes[s][0], sizes[s][1]);
    }
  sheet_free (d.sheet);
}

/* Of a raised car, in words. */
static void
test_title_says_higher (void)
{
  g_autoptr (Car) car = load (cars[0]);
  CarSetup *setup = car_setup (car, 0);
  Drawer d = { sheet_new (),
               { .study = &study,
                 .section_width = car->section_width_mm,
                 .theme = theme_light (),
                 .zoom = 1.0,
                 .lit = -1 } };

  setup->lowering_mm = -10.0;
  study_solve (&study, car, 0, 0.0);
  const TitleBlock title = title_block_for (car, setup, NULL);
  d.view.title = &title;
  draw_sheet (&d, 1000, 900);
  g_assert_true (is_written ("10.0 mm higher"));
  g_assert_false (is_written ("lower"));
  sheet_free (d.sheet);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/label-room/sheet", GINT_TO_POINTER (FALSE), test_sheet);
  g_test_add_data_func ("/label-room/sheet-in-long-words", GINT_TO_POINTER (TRUE),
                        test_sheet);
  g_test_add_func ("/label-room/sheet-in-large-type", test_sheet_in_large_type);
  g_test_add_data_func ("/label-room/tables", GINT_TO_POINTER (FALSE), test_tables);
  g_test_add_data_func ("/label-room/tables-in-long-words", GINT_TO_POINTER (TRUE),
                        test_tables);
  g_test_add_func ("/label-room/lowering-names-curves-once",
                   test_lowering_names_curves_once);
  g_test_add_func ("/label-room/reasons-of-gaps", test_reasons_of_gaps_keep_apart);
  g_test_add_func ("/label-room/sheet-says-what-it-can", test_sheet_says_what_it_can);
  g_test_add_func ("/label-room/sheet-keeps-off-the-handles",
                   test_sheet_keeps_off_the_handles);
  g_test_add_func ("/label-room/title-says-higher", test_title_says_higher);
  return g_test_run ();
}
