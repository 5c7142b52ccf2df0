/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/export/export.h"
#include "drawn-texts.h"
#include "sprung-car.h"

#include <glib/gstdio.h>
#include <string.h>

#define BORDER (-0.5) /* pixels that letters may lean over it */

static const char *const verdicts[] = {
  "The torsion bar carries 2213 N of this corner's 2400 N: it is the main spring here.",
  "The tower carries load that it did not carry as built: structure, mount and bearing "
  "must be rated for it; inspection and local rules decide.",
  NULL
};

typedef struct {
  Car *car;
  Study *study;
  SpringStudy *springs;
  SpringsBoard *board;
  SpringsView view;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = sprung_car ();
  f->study = study_new ();
  f->springs = spring_study_new ();
  f->board = springs_board_new ();
  f->view = (SpringsView){ .springs = f->springs, .theme = theme_light (), .lit = -1 };
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  springs_board_free (f->board);
  spring_study_free (f->springs);
  study_free (f->study);
  car_free (f->car);
  drawn_in_long_words = false;
}

static void
solve (Fixture *f, guint in_hand, double travel)
{
  study_solve (f->study, f->car, in_hand, travel);
  spring_study_solve (f->springs, f->study, f->car);
}

static void
hide_all_others (Fixture *f)
{
  for (guint i = 0; i < f->car->setups->len; i++)
    car_setup (f->car, i)->is_hidden = TRUE;
}

static void
draw (Fixture *f, int width, int height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  drawn_reset ();
  springs_draw (f->board, cr, &f->view, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

typedef struct {
  double x, y, width, height;
} Box;

static Box
frame (const Fixture *f, SpringsChart chart)
{
  Box b;

  g_assert_true (springs_frame (f->board, chart, &b.x, &b.y, &b.width, &b.height));
  return b;
}

/* Newtons to a pixel, from the height between zero and a setup's own weight line: read
 * off the areas of the wheel's own weight, which is known, and constant. */
static double
newtons_per_pixel (const Fixture *f, double x, const Box *b)
{
  const double step = 0.05;
  int n = 0;

  for (double y = b->y; y < b->y + b->height; y += step)
    n += springs_hit (f->board, x, y).element == SPRING_UNSPRUNG;
  g_assert_cmpint (n, >, 100);
  return f->springs->unsprung_weight / (n * step);
}

/* Each area is as high as its element's load, up for what pushes and down for what pulls:
 * together the total. The unsprung weight, 35 kg of 9.80665 N, gives the scale. */
static void
test_areas_add_up (Fixture *f, gconstpointer data)
{
  static const int stations[] = { 6, 40, 80, 110 };
  (void) data;

  hide_all_others (f);
  for (guint kind = 0; kind < N_SPRUNG; kind++) {
    solve (f, kind, 0.0);
    draw (f, 900, 2600);
    const Box b = frame (f, SPRINGS_LOAD);
    const SpringCorner *hand = spring_study_in_hand (f->springs);

    for (gsize s = 0; s < G_N_ELEMENTS (stations); s++) {
      const SpringStation *station = &hand->stations[stations[s]];
      const double x = b.x + b.width * stations[s] / (STUDY_STATIONS - 1);
      const double scale = newtons_per_pixel (f, x, &b), step = 0.05;
      double seen[N_SPRING_ELEMENTS] = { 0 }, sum = 0.0;

      for (double y = b.y; y < b.y + b.height; y += step) {
        const int e = springs_hit (f->board, x, y).element;
        if (e >= 0)
          seen[e] += step * scale;
      }
      for (int e = 0; e < N_SPRING_ELEMENTS; e++) {
        const double load = station->element_load[e];
        /* 1 % for the scale, a step of the scan at either end */
        g_assert_cmpfloat_with_epsilon (seen[e], fabs (load),
                                        0.01 * fabs (load) + 2.0 * step * scale);
        sum += load < 0.0 ? -seen[e] : seen[e];
      }
      g_assert_cmpfloat_with_epsilon (sum, station->load, 0.01 * 4000.0);
    }
  }
}

/* A coil that holds the car against the bar's twist: in droop the bar's area lies below
 * the wheel's own weight. */
static void
test_what_pulls_down_hangs_below (Fixture *f, gconstpointer data)
{
  (void) data;
  hide_all_others (f);
  solve (f, SPRUNG_UNWOUND, 0.0);
  g_assert_cmpfloat (spring_study_in_hand (f->springs)
                         ->stations[2]
                         .element_load[SPRING_BAR],
                     <, -100.0);
  draw (f, 720, 760);
  const Box b = frame (f, SPRINGS_LOAD);
  const double x = b.x + b.width * 2.0 / (STUDY_STATIONS - 1);
  double lowest_weight = 0.0, highest_bar = 1e9;

  for (double y = b.y; y < b.y + b.height; y += 0.25) {
    const int e = springs_hit (f->board, x, y).element;
    if (e == SPRING_UNSPRUNG)
      lowest_weight = fmax (lowest_weight, y);
    if (e == SPRING_BAR)
      highest_bar = fmin (highest_bar, y);
  }
  g_assert_cmpfloat (highest_bar, <, 1e8);
  g_assert_cmpfloat (lowest_weight, >, 0.0);
  g_assert_cmpfloat (highest_bar, >, lowest_weight);
}

static const int sizes[][2] = {
  { 360, 500 }, { 360, 640 },  { 480, 420 },  { 560, 700 },
  { 720, 760 }, { 1000, 420 }, { 1280, 560 }, { 1600, 900 }
};

static void
check_sizes (Fixture *f, const char *what)
{
  for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++) {
    const double width = sizes[s][0], height = sizes[s][1];

    draw (f, sizes[s][0], sizes[s][1]);
    drawn_assert_apart (width, height, BORDER, what);
    g_assert_nonnull (drawn_find ("Compressed springs"));
    for (guint i = 0; i < drawn_lines->len; i++) {
      const DrawnLine *line = &g_array_index (drawn_lines, DrawnLine, i);
      g_assert_cmpfloat (fabs (line->to_x), <, width + height + 2000.0);
      g_assert_cmpfloat (fabs (line->to_y), <, width + height + 2000.0);
    }
    const Box b = frame (f, SPRINGS_LOAD);
    g_assert_cmpfloat (b.x, >, 0.0);
    g_assert_cmpfloat (b.y, >, 0.0);
    g_assert_cmpfloat (b.x + b.width, <, width);
    g_assert_cmpfloat (b.y + b.height, <, height);
  }
}

/* Whatever the set, the others shown, the size, the letters' and the words' length. */
static void
test_nothing_covers_anything (Fixture *f, gconstpointer data)
{
  const bool is_long = GPOINTER_TO_INT (data);

  drawn_in_long_words = is_long;
  drawn_word_length = 9;
  for (guint kind = 0; kind < N_SPRUNG; kind++)
    for (int shown = 0; shown < 2; shown++) {
      for (guint i = 0; i < f->car->setups->len; i++)
        car_setup (f->car, i)->is_hidden = shown == 0;
      for (int theme = 0; theme < 2; theme++) {
        f->view.theme = theme == 0 ? theme_light () : theme_scaled (theme_dark (), 1.25);
        f->view.verdicts = shown ? verdicts : NULL;
        f->view.show_cursor = theme == 1;
        solve (f, kind, 22.0);
        check_sizes (f, "the springs");
      }
    }
  drawn_word_length = 0;
}

/* On a page that scrolls: all sentences, the rate, and the numbers to the last; however
 * narrow, and in long words. */
static void
test_all_finds_room_at_the_height_asked_for (Fixture *f, gconstpointer data)
{
  const bool is_long = GPOINTER_TO_INT (data);

  drawn_in_long_words = is_long;
  f->view.verdicts = verdicts;
  f->view.caution_stands_beside = true;
  for (guint kind = 0; kind < N_SPRUNG; kind++) {
    solve (f, kind, 22.0);
    for (int width = 340; width < 1500; width += 145) {
      const int height = (int) springs_height (f->board, &f->view, width);

      draw (f, width, height);
      drawn_assert_apart (width, height, BORDER, "springs at the height asked for");
      for (gsize i = 0; verdicts[i] != NULL; i++)
        g_assert_nonnull (drawn_find (verdicts[i]));
      g_assert_cmpfloat (frame (f, SPRINGS_RATE).height, >, 40.0);
      g_assert_cmpfloat (frame (f, SPRINGS_LOAD).height, >, 80.0);
      if (!is_long)
        g_assert_nonnull (drawn_find ("of it unsprung"));
      g_assert_null (drawn_find ("Compressed springs"));
    }
  }
}

static void
test_exports_have_room_for_their_title (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, SPRUNG_BOTH, 0.0);
  const TitleBlock title =
      title_block_for (f->car, car_setup (f->car, SPRUNG_BOTH), "2026-03-05");
  f->view.title = &title;
  f->view.verdicts = verdicts;
  draw (f, 900, 800);
  drawn_assert_apart (900, 800, BORDER, "the springs with a title");
  g_assert_nonnull (drawn_find ("Compressed springs"));
  g_assert_nonnull (drawn_find ("must be rated for it"));
  draw (f, 1200, 900);
  drawn_assert_apart (1200, 900, BORDER, "the springs with a title");
}

static void
test_tiny_pages_are_drawn (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, SPRUNG_BOTH, 0.0);
  f->view.verdicts = verdicts;
  for (int width = 20; width < 360; width += 41)
    for (int height = 20; height < 300; height += 37)
      draw (f, width, height);
}

/* The front axle's 560 kg: half of it times 9.80665 m/s² (ISO 80000-3) is 2745.9 N. */
static void
test_says_where_it_stands (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, SPRUNG_BAR, 0.0);
  const SpringCorner *hand = spring_study_in_hand (f->springs);
  char text[64];

  g_assert_cmpint (hand->stands, ==, STANDS_BY_SPRINGS);
  draw (f, 720, 760);
  g_assert_nonnull (drawn_find ("corner weight 2746 N"));
  g_snprintf (text, sizeof text, "stands at %s%.1f mm", hand->standing > 0.0 ? "+" : "−",
              fabs (hand->standing));
  g_assert_nonnull (drawn_find (text));
  g_assert_nonnull (drawn_find ("bump stop touches +"));
  g_assert_nonnull (drawn_find ("Torsion bar"));
  g_assert_nonnull (drawn_find ("Bump stop"));
  g_assert_nonnull (drawn_find ("geometric part"));
}

/* Every event on the axis has its words on a page of ordinary size. */
static void
test_events_are_named (Fixture *f, gconstpointer data)
{
  (void) data;
  guint n_events = 0;

  hide_all_others (f);
  for (guint kind = 0; kind < N_SPRUNG; kind++) {
    solve (f, kind, 0.0);
    draw (f, 900, 900);
    const SpringCorner *hand = spring_study_in_hand (f->springs);
    for (gsize i = 0; i < hand->n_events; i++, n_events++)
      if (hand->events[i].is_reached &&
          drawn_find (spring_event_name (hand->events[i].kind)) == NULL)
        g_error ("no “%s” of set %u", spring_event_name (hand->events[i].kind), kind);
  }
  g_assert_cmpuint (n_events, >=, 6);
}

static void
test_says_where_nothing_holds_it (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, SPRUNG_SOFT, 0.0);
  g_assert_cmpint (spring_study_in_hand (f->springs)->stands, ==,
                   STANDS_NOWHERE_TOO_SOFT);
  draw (f, 720, 760);
  g_assert_nonnull (drawn_find ("too soft"));
  g_assert_null (drawn_find ("stands at "));
}

/* The bump stop's place lies past the end of the curve: no mark floats there. */
static void
test_solid_coil_ends_the_curve (Fixture *f, gconstpointer data)
{
  (void) data;
  CarSprings *s = &car_setup (f->car, SPRUNG_COIL)->springs;

  hide_all_others (f);
  s->coil.solid_length_mm = 112.0;
  s->bump_stop.gap_mm = 55.0;
  solve (f, SPRUNG_COIL, 0.0);
  const SpringEvent *solid = spring_corner_solid (spring_study_in_hand (f->springs));
  g_assert_nonnull (solid);
  g_assert_cmpint (spring_study_in_hand (f->springs)->stands, ==, STANDS_BY_SPRINGS);
  g_assert_cmpfloat (solid->travel, <, 50.0);
  draw (f, 900, 900);
  g_assert_nonnull (drawn_find ("coil bound"));
  g_assert_null (drawn_find ("bump stop touches"));
  s->coil.solid_length_mm = 200.0;
  solve (f, SPRUNG_COIL, 0.0);
  draw (f, 720, 760);
  g_assert_nonnull (drawn_find ("the weight is not carried"));
  g_assert_null (drawn_find ("too soft"));
}

/* −80 … 80 mm: a quarter of the way is −40 mm. */
static void
test_hits_invert_the_drawing (Fixture *f, gconstpointer data)
{
  (void) data;
  solve (f, SPRUNG_BAR, 0.0);
  draw (f, 720, 760);
  for (SpringsChart c = 0; c < N_SPRINGS_CHARTS; c++) {
    const Box b = frame (f, c);
    SpringsHit hit = springs_hit (f->board, b.x + b.width / 4.0, b.y + b.height - 1.0);

    g_assert_true (hit.on_plot);
    g_assert_cmpfloat_with_epsilon (hit.travel, -40.0, 1e-9);
    hit = springs_hit (f->board, b.x - 30.0, b.y + 5.0);
    g_assert_false (hit.on_plot);
    g_assert_cmpfloat (hit.travel, ==, -80.0);
    g_assert_cmpint (hit.setup, ==, -1);
    g_assert_cmpint (hit.element, ==, -1);
  }
  const Box load = frame (f, SPRINGS_LOAD), rate = frame (f, SPRINGS_RATE);
  g_assert_cmpfloat (load.height, >, rate.height);
  g_assert_cmpfloat (load.x, ==, rate.x);
  g_assert_cmpfloat (load.width, ==, rate.width);
}

/* Down a column of pixels every curve shown is met, and none that is not. */
static void
test_curves_shown_are_hit (Fixture *f, gconstpointer data)
{
  (void) data;
  car_setup (f->car, SPRUNG_SOFT)->is_hidden = TRUE;
  car_setup (f->car, SPRUNG_BOTH)->is_hidden = TRUE;
  solve (f, SPRUNG_COIL, 0.0);
  draw (f, 900, 900);
  const Box b = frame (f, SPRINGS_LOAD);
  bool is_met[N_SPRUNG] = { false };

  for (double y = b.y; y < b.y + b.height; y += 1.0) {
    const int setup = springs_hit (f->board, b.x + 0.2 * b.width, y).setup;
    if (setup >= 0)
      is_met[setup] = true;
  }
  for (guint i = 0; i < N_SPRUNG; i++)
    g_assert_cmpint (is_met[i], ==, i != SPRUNG_SOFT && i != SPRUNG_BOTH);
}

/* The frame stays, and with it what a pixel means, when the load in hand shrinks. */
static void
test_axes_hold_in_a_drag (Fixture *f, gconstpointer data)
{
  (void) data;
  hide_all_others (f);
  f->view.hold_axes = true;
  solve (f, SPRUNG_BAR, 0.0);
  draw (f, 720, 760);
  const Box before = frame (f, SPRINGS_LOAD);
  const double x = before.x + before.width / 2.0;
  const double scale = newtons_per_pixel (f, x, &before);

  f->car->springs.bump_stop.is_there = FALSE;
  f->car->springs.bar.sections[0].outer_mm = 19.0;
  solve (f, SPRUNG_BAR, 0.0);
  draw (f, 720, 760);
  const Box held = frame (f, SPRINGS_LOAD);
  g_assert_cmpmem (&before, sizeof before, &held, sizeof held);
  g_assert_cmpfloat_with_epsilon (newtons_per_pixel (f, x, &held), scale, 1e-9);

  f->view.hold_axes = false;
  draw (f, 720, 760);
  const Box after = frame (f, SPRINGS_LOAD);
  g_assert_cmpfloat (newtons_per_pixel (f, x, &after), <, 0.9 * scale);
}

static void
test_without_springs_a_page_says_what_to_enter (Fixture *f, gconstpointer data)
{
  double x, y, width, height;
  (void) data;

  f->car->springs = car_springs_none ();
  for (guint i = 0; i < f->car->setups->len; i++)
    car_setup (f->car, i)->has_springs = FALSE;
  solve (f, 0, 0.0);
  for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++) {
    draw (f, sizes[s][0], sizes[s][1]);
    drawn_assert_apart (sizes[s][0], sizes[s][1], BORDER, "a page without springs");
    g_assert_nonnull (drawn_find ("No spring is entered"));
    g_assert_nonnull (drawn_find ("Compressed springs"));
    g_assert_null (drawn_find ("wheel travel, mm"));
    g_assert_cmpfloat (springs_height (f->board, &f->view, sizes[s][0]), <, 500.0);
    g_assert_false (springs_frame (f->board, SPRINGS_LOAD, &x, &y, &width, &height));
    g_assert_false (springs_hit (f->board, 100.0, 100.0).on_plot);
  }
}

/* A setup without springs beside others that have some: theirs are drawn, and it is said.
 */
static void
test_hand_without_springs_leaves_the_others (Fixture *f, gconstpointer data)
{
  (void) data;
  car_setup (f->car, SPRUNG_COIL)->springs = car_springs_none ();
  solve (f, SPRUNG_COIL, 0.0);
  draw (f, 720, 760);
  drawn_assert_apart (720, 760, BORDER, "a hand without springs");
  const Box b = frame (f, SPRINGS_LOAD);
  for (double y = b.y; y < b.y + b.height; y += 1.0) {
    const SpringsHit hit = springs_hit (f->board, b.x + 0.4 * b.width, y);
    g_assert_cmpint (hit.element, ==, -1);
    g_assert_cmpint (hit.setup, !=, SPRUNG_COIL);
  }
  g_assert_nonnull (drawn_find ("No spring is entered"));
}

/* The reference's figures stand beside those of the setup in hand. */
static void
test_numbers_stand_beside_the_reference (Fixture *f, gconstpointer data)
{
  char text[32];
  (void) data;

  solve (f, SPRUNG_COIL, 0.0);
  draw (f, 720, 760);
  for (guint i = 0; i < 2; i++) {
    const SpringCorner *corner = &f->springs->setups[i == 0 ? SPRUNG_BAR : SPRUNG_COIL];
    g_snprintf (text, sizeof text, "%.2f", corner->frequency);
    g_assert_nonnull (drawn_find (text));
    g_snprintf (text, sizeof text, "%.0f", corner->roll_stiffness_bar);
    g_assert_nonnull (drawn_find (text));
  }
  g_assert_cmpfloat (drawn_find ("Ride frequency, on the tyre")->right, <,
                     drawn_find (text)->left + 1000.0);

  f->car->springs.damper.table.n = 0;
  hide_all_others (f);
  solve (f, SPRUNG_BAR, 0.0);
  draw (f, 720, 760);
  g_assert_null (drawn_find ("Damping ratio"));

  /* a coil of a rate alone weighs one does not know what */
  f->car->baseline = SPRUNG_COIL;
  solve (f, SPRUNG_COIL, 0.0);
  draw (f, 720, 760);
  g_assert_nonnull (drawn_find ("Springs' own mass"));
  g_assert_null (drawn_find ("0.00"));
}

static void
test_exports_repeat_to_the_byte (Fixture *f, gconstpointer data)
{
  static const char *const suffixes[] = { "png", "svg", "pdf" };
  g_autofree char *folder = g_dir_make_tmp ("springs-XXXXXX", NULL);
  const ExportOptions options = { 900, 700, EXPORT_BACKGROUND_WHITE };
  (void) data;

  solve (f, SPRUNG_BOTH, 0.0);
  for (gsize i = 0; i < G_N_ELEMENTS (suffixes); i++) {
    g_autofree char *path = g_strdup_printf ("%s/a.%s", folder, suffixes[i]);
    g_autofree char *first = NULL, *second = NULL;
    gsize n_first, n_second;

    g_assert_true (export_springs (&f->view, &options, path, NULL));
    g_assert_true (g_file_get_contents (path, &first, &n_first, NULL));
    g_assert_true (export_springs (&f->view, &options, path, NULL));
    g_assert_true (g_file_get_contents (path, &second, &n_second, NULL));
    g_assert_cmpuint (n_first, >, 5000);
    g_assert_cmpmem (first, n_first, second, n_second);
    g_unlink (path);
  }
  g_rmdir (folder);
}

#define ADD_WITH(name, data, function)                                                   \
  g_test_add ("/springs-board/" name, Fixture, data, set_up, function, tear_down)
#define ADD(name, function) ADD_WITH (name, NULL, function)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("areas-add-up", test_areas_add_up);
  ADD ("what-pulls-down-hangs-below", test_what_pulls_down_hangs_below);
  ADD ("nothing-covers-anything", test_nothing_covers_anything);
  ADD_WITH ("nothing-covers-anything-in-long-words", GINT_TO_POINTER (TRUE),
            test_nothing_covers_anything);
  ADD ("all-finds-room-at-the-height-asked-for",
       test_all_finds_room_at_the_height_asked_for);
  ADD_WITH ("all-finds-room-at-the-height-asked-for-in-long-words",
            GINT_TO_POINTER (TRUE), test_all_finds_room_at_the_height_asked_for);
  ADD ("exports-have-room-for-their-title", test_exports_have_room_for_their_title);
  ADD ("tiny-pages-are-drawn", test_tiny_pages_are_drawn);
  ADD ("says-where-it-stands", test_says_where_it_stands);
  ADD ("events-are-named", test_events_are_named);
  ADD ("says-where-nothing-holds-it", test_says_where_nothing_holds_it);
  ADD ("solid-coil-ends-the-curve", test_solid_coil_ends_the_curve);
  ADD ("hits-invert-the-drawing", test_hits_invert_the_drawing);
  ADD ("curves-shown-are-hit", test_curves_shown_are_hit);
  ADD ("axes-hold-in-a-drag", test_axes_hold_in_a_drag);
  ADD ("without-springs-a-page-says-what-to-enter",
       test_without_springs_a_page_says_what_to_enter);
  ADD ("hand-without-springs-leaves-the-others",
       test_hand_without_springs_leaves_the_others);
  ADD ("numbers-stand-beside-the-reference", test_numbers_stand_beside_the_reference);
  ADD ("exports-repeat-to-the-byte", test_exports_repeat_to_the_byte);
  return g_test_run ();
}
