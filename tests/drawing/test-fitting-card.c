/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/card/fitting-card.h"

#include "drawing/export/export.h"
#include "drawn-texts.h"
#include "model/car/car-json.h"
#include "model/plate/plate-json.h"
#include "written-file.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define POINTS_PER_MM (72.0 / 25.4)
#define MARGIN 30.0 /* points: printers leave some 5 mm white; common practice */
#define DATE "2026-03-05"

static GFile *
data_file (const char *folder, const char *name)
{
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "..", "..", "data", folder, name, NULL);

  return g_file_new_for_path (path);
}

static Plate *
load_plate (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swplate", NULL);
  g_autoptr (GFile) file = data_file ("plates", base);
  g_autoptr (GError) error = NULL;
  Plate *plate = plate_load (file, &error);

  g_assert_no_error (error);
  return plate;
}

static void
replace (char **text, const char *with)
{
  g_free (*text);
  *text = g_strdup (with);
}

static void
add_target (Car *car, Aim aim, double least, double most)
{
  const CarTarget target = { .aim = aim, .least = least, .most = most, .weight = 1.0 };

  g_array_append_val (car->targets, target);
}

/* A demo car with everything that the card can speak of. */
static Car *
load_car (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swcar", NULL);
  g_autoptr (GFile) file = data_file (".", base);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  g_assert_no_error (error);
  car->tower = (CarTower){ .opening_diameter_mm = 96.0,
                           .opening_inboard_mm = 6.0,
                           .opening_rearward_mm = 2.0 };
  car->strut = (CarStrut){ .tube_diameter_mm = 51.0,
                           .tube_bottom_mm = -60.0,
                           .tube_top_mm = 250.0,
                           .seat_diameter_mm = 120.0,
                           .seat_height_mm = 320.0 };
  g_array_set_size (car->targets, 0);
  add_target (car, AIM_CAMBER, -2.2, -1.8);
  add_target (car, AIM_CASTER, 4.0, INFINITY);
  add_target (car, AIM_SCRUB_CHANGE, -2.0, 2.0);
  add_target (car, AIM_SCRUB_RADIUS, -INFINITY, 12.0);
  return car;
}

static void
measure_right (Car *car)
{
  car->right.has_points = car->right.has_alignment = TRUE;
  for (PointName i = 0; i < N_POINTS; i++) {
    car->right.points[i] = car->points[i];
    car->right.points[i].y *= -1.0;
  }
  car->right.points[POINT_UPPER_MOUNT].y += 3.0;
  car->right.points[POINT_UPPER_MOUNT].x += 4.0;
  car->right.camber_deg = -0.15;
  car->right.toe_in_deg = 0.1;
}

/* With the plate as near to @mount as it goes. */
static ChoiceAnswer
answer_at (
    const Car *car, const Plate *plate, MountOffset mount, gboolean swap, double bolt)
{
  const ChoiceQuestion question = { .carrier = CARRIED_BY_COIL };
  ChoiceAnswer answer = { .plate = plate, .is_swapped = swap, .has_bolt = bolt != 0.0 };
  guint faults = 0;

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    answer.side[side] = choice_place (car, &question, side, plate,
                                      plate_nearest (plate, mount, swap), bolt);
    faults |= answer.side[side].faults;
  }
  answer.cross_camber = answer.side[SIDE_LEFT].value[QUANTITY_CAMBER] -
                        answer.side[SIDE_RIGHT].value[QUANTITY_CAMBER];
  answer.cross_caster = answer.side[SIDE_LEFT].value[QUANTITY_CASTER] -
                        answer.side[SIDE_RIGHT].value[QUANTITY_CASTER];
  answer.is_within_cross = TRUE;
  answer.fits = (faults & ~(guint) CHOICE_MISSES_AIM) == 0;
  answer.meets = answer.fits && faults == 0;
  return answer;
}

static FittingCard
card_for (const Car *car, const ChoiceAnswer *answer)
{
  return (FittingCard){ .car = car,
                        .setup = car_setup (car, 0),
                        .answer = answer,
                        .carrier = CARRIED_BY_COIL,
                        .date = DATE };
}

/* Onto nothing: only what goes through the wraps counts. */
static void
draw (const FittingCard *card, double width, double height)
{
  g_autoptr (TextCache) texts = text_cache_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create (NULL, width, height);
  cairo_t *cr = cairo_create (surface);

  drawn_reset ();
  fitting_card_draw (texts, cr, card, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
draw_a4 (const Car *car, const ChoiceAnswer *answer)
{
  const FittingCard card = card_for (car, answer);

  draw (&card, PAPER_A4_WIDTH, PAPER_A4_HEIGHT);
}

static const double pages[][2] = { { PAPER_A4_WIDTH, PAPER_A4_HEIGHT },
                                   { 612.0, 792.0 }, /* Letter */
                                   { 500.0, 700.0 } };

static void
check_page (const Car *car, const ChoiceAnswer *answer, gsize page)
{
  const FittingCard card = card_for (car, answer);

  draw (&card, pages[page][0], pages[page][1]);
  drawn_assert_apart (pages[page][0], pages[page][1], MARGIN, answer->plate->name);
}

static const char *const cars[] = { "wren", "fieldfare", "lapwing" };
static const char *const plates[] = { "stock-mount",
                                      "offset-bush-6-mm-inboard",
                                      "offset-bush-turned-in-place",
                                      "sliding-camber-plate",
                                      "diagonal-slot-plate",
                                      "camber-and-caster-plate",
                                      "three-hole-camber-plate",
                                      "five-hole-caster-plate" };
static const MountOffset mounts[] = { { 0, 0, 0 }, { 14, 9, 0 }, { -20, -12, 0 } };

static void
check_plate (Car *car, const Plate *plate)
{
  for (gsize m = 0; m < G_N_ELEMENTS (mounts); m++)
    for (int swap = 0; swap <= (plate->can_swap ? 1 : 0); swap++) {
      const ChoiceAnswer answer =
          answer_at (car, plate, mounts[m], swap, m == 1 ? -0.02 : 0.0);

      for (gsize page = 0; page < (m == 1 ? G_N_ELEMENTS (pages) : 1); page++)
        check_page (car, &answer, page);
    }
}

static void
test_texts_keep_apart (gconstpointer long_words)
{
  drawn_in_long_words = GPOINTER_TO_INT (long_words);
  for (gsize c = 0; c < G_N_ELEMENTS (cars); c++)
    for (int sides = 1; sides <= 2; sides++) {
      g_autoptr (Car) car = load_car (cars[c]);

      car_setup (car, 0)->lowering_mm = 20.0 * sides;
      if (sides == 2)
        measure_right (car);
      for (gsize p = 0; p < G_N_ELEMENTS (plates); p++)
        if (drawn_in_turn (p, c, G_N_ELEMENTS (cars))) {
          g_autoptr (Plate) plate = load_plate (plates[p]);

          check_plate (car, plate);
        }
    }
  drawn_in_long_words = false;
}

/* On A4, whatever the language. */
static void
test_nothing_is_cut (gconstpointer long_words)
{
  drawn_in_long_words = GPOINTER_TO_INT (long_words);
  for (gsize c = 0; c < G_N_ELEMENTS (cars); c++) {
    g_autoptr (Car) car = load_car (cars[c]);

    measure_right (car);
    for (gsize p = 0; p < G_N_ELEMENTS (plates); p++) {
      g_autoptr (Plate) plate = load_plate (plates[p]);
      const ChoiceAnswer answer = answer_at (car, plate, mounts[1], FALSE, -0.02);

      draw_a4 (car, &answer);
      for (guint i = 0; i < drawn_texts->len; i++)
        if (g_array_index (drawn_texts, DrawnText, i).is_cut)
          g_error ("“%s” is cut short", g_array_index (drawn_texts, DrawnText, i).text);
    }
  }
  drawn_in_long_words = false;
}

static Plate *
circle_plate (void)
{
  Plate *plate = plate_new ();

  replace (&plate->name, "Turned to any degree");
  plate->kind = PLATE_ECCENTRIC;
  plate->radius_mm = 7.0;
  plate->turn_least_deg = -45.0;
  plate->turn_most_deg = 200.0;
  plate->bearing_diameter_mm = 50.0;
  return plate;
}

/* Sixty holes with long labels, far apart; names without a space to break at. */
static Plate *
monstrous_plate (const char *name)
{
  Plate *plate = plate_new ();

  replace (&plate->name, name);
  plate->kind = PLATE_HOLES;
  plate->thickness_mm = plate->raises_mm = -123.4;
  for (guint i = 0; i < 60; i++) {
    const PlateHole hole = { .label = g_strdup_printf ("hole number %u from the front, "
                                                       "painted red",
                                                       i),
                             .inboard_mm = 3.0 * i - 90.0,
                             .rearward_mm = i % 7 * 11.0 };

    g_array_append_val (plate->holes, hole);
  }
  return plate;
}

static void
test_long_names_stay_on_the_page (gconstpointer long_words)
{
  g_autofree char *unbroken = g_strnfill (240, 'W');
  g_autofree char *broken = g_strdup_printf ("%s and %s and %s", "Wren with a long name",
                                             unbroken, "more of the same");
  g_autoptr (Plate) monstrous = monstrous_plate (unbroken), circle = circle_plate ();

  drawn_in_long_words = GPOINTER_TO_INT (long_words);
  for (int sides = 1; sides <= 2; sides++) {
    g_autoptr (Car) car = load_car ("wren");

    if (sides == 2)
      measure_right (car);
    replace (&car->name, broken);
    replace (&car_setup (car, 0)->name, unbroken);
    car_setup (car, 0)->lowering_mm = -12.3;
    check_plate (car, monstrous);
    car->tower.opening_diameter_mm = 0.0;
    check_plate (car, monstrous);
    check_plate (car, circle);
    car->tower.opening_diameter_mm = 300.0;
    car->tower.opening_inboard_mm = -80.0;
    check_plate (car, circle);
  }
  drawn_in_long_words = false;
}

static void
assert_says (const char *const *parts)
{
  for (; *parts != NULL; parts++)
    if (drawn_find (*parts) == NULL)
      g_error ("no “%s” on the card", *parts);
}

static void
test_says_what_a_fitter_needs (void)
{
  static const char *const parts[] = { "Fitting card",
                                       DATE,
                                       "Wren 1.3 hill-climb hatch",
                                       "Set up: lowered 20.0 mm · toe as moved",
                                       "Plate: Camber and caster plate",
                                       "Crossed slots · 12.0 mm thick · bearing 4.0 mm "
                                       "lower",
                                       "Left",
                                       "Right",
                                       "14.0 inboard scale, 9.0 rearward scale",
                                       "bearing 14.0 mm inboard, 9.0 mm rearward",
                                       "camber bolt −1.15°, top leans in",
                                       "14.0 mm inboard",
                                       "outboard",
                                       "forward",
                                       "must measure 50 mm on paper",
                                       "1 : 2",
                                       "−0.40°",
                                       "aim −2.20 to −1.80°",
                                       "aim 4.00° or more",
                                       "measured after",
                                       "1.25 mm pitch",
                                       "tie rod first",
                                       "then toe is 0.05°, as measured",
                                       "Toe-in, both wheels",
                                       "Left less right: camber",
                                       "at most 0.50°",
                                       "at least 5.0 mm · ",
                                       "at most 15.0°",
                                       "at least 2.0 mm",
                                       "aim 12.0 mm or less · aim: change −2.0 to 2.0 mm",
                                       "estimate, with a coil on the strut",
                                       "Tightening torques, safe lifting",
                                       "licensed practice",
                                       NULL };
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) plate = load_plate ("camber-and-caster-plate");

  car_setup (car, 0)->lowering_mm = 20.0;
  measure_right (car);
  const ChoiceAnswer answer = answer_at (car, plate, mounts[1], FALSE, -0.02);
  draw_a4 (car, &answer);
  assert_says (parts);
  g_assert_null (drawn_find ("alike"));
  g_assert_null (drawn_find ("swapped"));
}

/* A setup's name may speak of the plate that it has. */
static void
test_head_bears_no_other_plates_name (void)
{
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) own = load_plate ("three-hole-camber-plate");
  g_autoptr (Plate) other = load_plate ("sliding-camber-plate");
  CarSetup *setup = car_setup (car, 0);

  replace (&setup->name, "Three holes, set by Ann");
  setup->plate = g_strdup (own->name);
  setup->lowering_mm = 15.0;
  setup->toe = TOE_RESET;
  setup->corrections.ball_joint_spacer_mm = 20.0;
  setup->corrections.rack_raise_mm = -3.5;
  setup->corrections.tie_rod_length_mm = 1.0; /* without effect while toe is reset */
  setup->mount = plate_place (own, (PlateSetting){ .place = 2 });
  ChoiceAnswer answer = answer_at (car, own, setup->mount, FALSE, 0.0);
  draw_a4 (car, &answer);
  g_assert_nonnull (drawn_find ("Three holes, set by Ann"));
  g_assert_nonnull (drawn_find ("Set up: lowered 15.0 mm · toe reset by the tie rod · "
                                "Ball-joint spacer 20.0 mm · Rack up −3.5 mm"));
  g_assert_null (drawn_find ("Tie rod longer"));

  answer = answer_at (car, own, plate_place (own, (PlateSetting){ 0 }), FALSE, 0.0);
  draw_a4 (car, &answer); /* its plate, set otherwise */
  g_assert_null (drawn_find ("set by Ann"));
  answer = answer_at (car, other, mounts[1], FALSE, 0.0);
  draw_a4 (car, &answer);
  g_assert_null (drawn_find ("set by Ann"));
  g_assert_null (drawn_find (own->name));
  g_assert_nonnull (drawn_find ("Plate: Sliding camber plate"));
  g_assert_nonnull (drawn_find ("Rack up −3.5 mm"));
}

/* The texts that read so, wherever they stand. */
static guint
find_all (const char *text, const DrawnText *found[], guint most)
{
  guint n = 0;

  for (guint i = 0; i < drawn_texts->len; i++)
    if (g_str_equal (drawn_text_at (i)->text, text)) {
      g_assert_cmpuint (n, <, most);
      found[n++] = drawn_text_at (i);
    }
  return n;
}

/* One instruction for each tie rod, in one form: turns, which way, mm; its length is
 * turns times pitch. */
static void
test_one_tie_rod_instruction (void)
{
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) plate = load_plate ("sliding-camber-plate");

  for (ToeMode toe = TOE_AS_MOVED; toe <= TOE_RESET; toe++) {
    car_setup (car, 0)->toe = toe;
    const ChoiceAnswer answer = answer_at (car, plate, mounts[1], FALSE, 0.0);
    const double turns = answer.side[SIDE_LEFT].tie_rod_turns;
    g_autofree char *words = g_strdup_printf ("%.2f turns %s (%.2f mm)", fabs (turns),
                                              turns > 0.0 ? "longer" : "shorter",
                                              fabs (turns) * car->thread_pitch_mm);
    const DrawnText *found[2];

    g_assert_cmpfloat (fabs (turns), >, 0.1);
    draw_a4 (car, &answer);
    g_assert_cmpuint (find_all (words, found, 2), ==, 2);
    g_assert_cmpuint (drawn_count (" turns "), ==, 2);
    g_assert_cmpuint (drawn_count ("tie rod first"), ==, toe == TOE_RESET ? 0 : 3);
    g_assert_cmpuint (drawn_count ("then toe is 0.05°, as measured"), ==,
                      toe == TOE_RESET ? 0 : 2);
    g_assert_cmpuint (drawn_count ("before that toe is"), ==, toe == TOE_RESET ? 2 : 0);
  }
}

/* The figures are those of the answer. */
static void
test_figures_are_the_answers (void)
{
  g_autoptr (Car) car = load_car ("fieldfare");
  g_autoptr (Plate) plate = load_plate ("sliding-camber-plate");

  measure_right (car);
  const ChoiceAnswer answer = answer_at (car, plate, mounts[1], FALSE, 0.0);
  draw_a4 (car, &answer);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const ChoicePlace *place = &answer.side[side];
    g_autofree char *camber =
        g_strdup_printf ("−%.2f°", fabs (place->value[QUANTITY_CAMBER] * 180.0 / G_PI));
    g_autofree char *scrub =
        g_strdup_printf ("%.1f mm", fabs (place->value[QUANTITY_SCRUB_RADIUS]));
    g_autofree char *force = g_strdup_printf ("%.0f N", place->side_force);
    g_autofree char *turns = g_strdup_printf ("%.2f turns", fabs (place->tie_rod_turns));
    const char *const parts[] = { camber, scrub, force, turns, NULL };

    g_assert_cmpfloat (place->value[QUANTITY_CAMBER], <, -0.01);
    assert_says (parts);
  }
}

static void
test_both_sides_alike (void)
{
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) plate = load_plate ("three-hole-camber-plate");
  const ChoiceAnswer answer = answer_at (car, plate, mounts[1], FALSE, 0.0);

  draw_a4 (car, &answer);
  g_assert_nonnull (drawn_find ("both sides alike"));
  g_assert_nonnull (drawn_find ("hole 3"));
  g_assert_null (drawn_find ("camber bolt"));
}

static void
test_swapped_plates_are_said (void)
{
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) plate = load_plate ("diagonal-slot-plate");
  const ChoiceAnswer answer = answer_at (car, plate, mounts[1], TRUE, 0.0);

  g_assert_true (plate->can_swap);
  draw_a4 (car, &answer);
  g_assert_nonnull (drawn_find ("Left and right plates swapped: "));
}

/* Whatever asked for the card: it must not send anyone to the spanners. */
static void
test_a_plate_past_a_limit_is_said (void)
{
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) plate = load_plate ("sliding-camber-plate");

  car->tower.opening_diameter_mm = 50.0;
  const ChoiceAnswer answer = answer_at (car, plate, mounts[1], FALSE, 0.0);
  g_assert_false (answer.fits);
  draw_a4 (car, &answer);
  g_assert_nonnull (drawn_find ("Do not fit"));
  g_assert_nonnull (drawn_find (" mm !"));
}

static gboolean
has_circle (double radius)
{
  for (guint i = 0; i < drawn_circles->len; i++)
    if (fabs (g_array_index (drawn_circles, DrawnCircle, i).radius - radius) < 1e-6)
      return TRUE;
  return FALSE;
}

/* From left to right or from top to bottom. cairo keeps points to 1/256. */
static guint
count_lines (double width, double height)
{
  guint n = 0;

  for (guint i = 0; i < drawn_lines->len; i++) {
    const DrawnLine *line = &g_array_index (drawn_lines, DrawnLine, i);

    n += fabs (fabs (line->to_x - line->from_x) - width) < 1.0 / 128.0 &&
         fabs (fabs (line->to_y - line->from_y) - height) < 1.0 / 128.0;
  }
  return n;
}

/* A dimension line is as long as its length, or its arrows stand 9 points outside of
 * either end. */
static guint
count_dimensions (double width, double height)
{
  const double tails = 2.0 * 9.0;

  return count_lines (width, height) + (width > 0.0 ? count_lines (width + tails, 0.0)
                                                    : count_lines (0.0, height + tails));
}

/* 25.4 mm to the inch, 72 points to the inch: exactly, by definition of both. */
static void
test_scale_is_true (void)
{
  static const struct {
    double opening, bearing;
    const char *scale;
    int one_to;
  } cases[] = { { 38.0, 22.0, "1 : 1", 1 },
                { 96.0, 42.0, "1 : 2", 2 },
                { 220.0, 60.0, "1 : 5", 5 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (Car) car = load_car ("wren");
    g_autoptr (Plate) plate = load_plate ("camber-and-caster-plate");
    const double per_mm = POINTS_PER_MM / cases[i].one_to;

    car->tower = (CarTower){ .opening_diameter_mm = cases[i].opening };
    plate->bearing_diameter_mm = cases[i].bearing;
    const ChoiceAnswer answer =
        answer_at (car, plate, (MountOffset){ 12.0, 7.0, 0.0 }, FALSE, 0.0);
    draw_a4 (car, &answer);
    g_assert_nonnull (drawn_find (cases[i].scale));
    g_assert_true (has_circle (cases[i].opening / 2.0 * per_mm));
    g_assert_true (has_circle (cases[i].bearing / 2.0 * per_mm));
    g_assert_cmpuint (count_lines (50.0 * POINTS_PER_MM, 0.0), ==, 1);
    /* a dimension on each side, and the plate's edges: 24 along, 20 across */
    g_assert_cmpuint (count_dimensions (12.0 * per_mm, 0.0), ==, 2);
    g_assert_cmpuint (count_dimensions (0.0, 7.0 * per_mm), ==, 2);
    g_assert_cmpuint (count_lines (24.0 * per_mm, 0.0), >=, 4);
    g_assert_cmpuint (count_lines (0.0, 20.0 * per_mm), >=, 4);
  }
}

/* The circles of both sides, the one on the left of the page first. */
static void
find_circles (DrawnCircle circles[2], double radius)
{
  guint n = 0;

  for (guint i = 0; i < drawn_circles->len; i++) {
    const DrawnCircle *circle = &g_array_index (drawn_circles, DrawnCircle, i);

    if (fabs (circle->radius - radius) < 1e-6) {
      g_assert_cmpuint (n, <, 2);
      circles[n++] = *circle;
    }
  }
  g_assert_cmpuint (n, ==, 2);
  if (circles[0].x > circles[1].x) {
    const DrawnCircle first = circles[0];

    circles[0] = circles[1];
    circles[1] = first;
  }
}

/* Who stands before a car and looks at it has its right side on his left hand: inboard of
 * the right side is then to the right, that of the left side to the left, and rearward is
 * away. */
static void
test_plans_are_seen_from_before (void)
{
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) plate = load_plate ("camber-and-caster-plate");
  DrawnCircle tower[2], bearing[2];

  car->tower = (CarTower){ .opening_diameter_mm = 96.0 };
  ChoiceAnswer answer =
      answer_at (car, plate, (MountOffset){ 12.0, 7.0, 0.0 }, FALSE, 0.0);
  answer.side[SIDE_RIGHT].mount.inboard = 9.0;
  draw_a4 (car, &answer);
  find_circles (tower, 48.0 * POINTS_PER_MM / 2.0);
  find_circles (bearing, 21.0 * POINTS_PER_MM / 2.0);
  g_assert_cmpfloat_with_epsilon (bearing[0].x - tower[0].x, 9.0 * POINTS_PER_MM / 2.0,
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (bearing[1].x - tower[1].x, -12.0 * POINTS_PER_MM / 2.0,
                                  1e-6);
  for (int i = 0; i < 2; i++)
    g_assert_cmpfloat_with_epsilon (bearing[i].y - tower[i].y, -7.0 * POINTS_PER_MM / 2.0,
                                    1e-6);
  g_assert_cmpfloat (bearing[0].x, <, PAPER_A4_WIDTH / 2.0);
  g_assert_cmpfloat (bearing[1].x, >, PAPER_A4_WIDTH / 2.0);
}

static void
assert_is_left_of (const char *right, const char *left, guint n)
{
  const DrawnText *first[4], *second[4];

  g_assert_cmpuint (find_all (right, first, G_N_ELEMENTS (first)), ==, n);
  g_assert_cmpuint (find_all (left, second, G_N_ELEMENTS (second)), ==, n);
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat (first[i]->right, <, second[i]->left);
}

/* Settings, alignment and costs: the right side first, as the drawings stand. */
static void
test_columns_are_seen_from_before (void)
{
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (Plate) plate = load_plate ("camber-and-caster-plate");
  ChoiceAnswer answer = answer_at (car, plate, mounts[1], FALSE, 0.0);

  measure_right (car);
  answer.side[SIDE_RIGHT].setting.along = 3.0;
  answer.side[SIDE_RIGHT].side_force = 777.0;
  answer.side[SIDE_RIGHT].value[QUANTITY_CAMBER] = -7.0 * G_PI / 180.0;
  g_autofree char *camber =
      g_strdup_printf ("−%.2f°", fabs (answer.side[SIDE_LEFT].value[QUANTITY_CAMBER] *
                                       180.0 / G_PI));
  g_autofree char *force = g_strdup_printf ("%.0f N", answer.side[SIDE_LEFT].side_force);
  draw_a4 (car, &answer);
  assert_is_left_of ("Right", "Left", 3);
  assert_is_left_of ("3.0 inboard scale, 9.0 rearward scale",
                     "14.0 inboard scale, 9.0 rearward scale", 1);
  assert_is_left_of ("−7.00°", camber, 1);
  assert_is_left_of ("777 N", force, 1);
  g_assert_nonnull (drawn_find ("its right side is on your left"));
}

static char *
write_card (const char *folder, const char *name, const FittingCard *card)
{
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (folder, name, NULL);

  fitting_card_write (card, path, &error);
  g_assert_no_error (error);
  return path;
}

typedef struct {
  Car *car;
  Plate *plate;
  ChoiceAnswer answer;
  FittingCard card;
  char *folder;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = load_car ("wren");
  f->plate = load_plate ("diagonal-slot-plate");
  f->answer = answer_at (f->car, f->plate, mounts[1], FALSE, 0.0);
  f->card = card_for (f->car, &f->answer);
  f->folder = g_dir_make_tmp ("card-XXXXXX", NULL);
  drawn_reset ();
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  GDir *folder = g_dir_open (f->folder, 0, NULL);

  for (const char *name; (name = g_dir_read_name (folder)) != NULL;) {
    g_autofree char *path = g_build_filename (f->folder, name, NULL);
    g_assert_no_errno (g_remove (path));
  }
  g_dir_close (folder);
  g_assert_no_errno (g_rmdir (f->folder));
  g_free (f->folder);
  plate_free (f->plate);
  car_free (f->car);
}

/* ISO 216: A4 is 210 mm by 297 mm. */
static void
test_pdf_is_one_page_of_a4 (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *path = write_card (f->folder, "a.pdf", &f->card);
  g_autoptr (GBytes) pdf = written_bytes (path);

  g_assert_cmpfloat_with_epsilon (PAPER_A4_WIDTH, 210.0 * POINTS_PER_MM, 1e-3);
  g_assert_cmpfloat_with_epsilon (PAPER_A4_HEIGHT, 297.0 * POINTS_PER_MM, 1e-3);
  g_assert_cmpuint (written_count (pdf, "/MediaBox [ 0 0 595.276 841.89 ]"), ==, 1);
  g_assert_cmpuint (written_count (pdf, "/Count 1"), ==, 1);
  g_assert_cmpuint (written_count (pdf, "/Subtype /Image"), ==, 0);
  g_assert_cmpuint (written_count (pdf, "/FontFile"), >=, 2);
}

static void
test_files_repeat_to_the_byte (Fixture *f, gconstpointer data)
{
  (void) data;
  static const char *const names[][2] = { { "a.pdf", "b.pdf" },
                                          { "a.svg", "b.svg" },
                                          { "a.png", "b.png" } };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *first = write_card (f->folder, names[i][0], &f->card);
    g_autofree char *second = write_card (f->folder, names[i][1], &f->card);
    g_autoptr (GBytes) a = written_bytes (first), b = written_bytes (second);

    g_assert_true (g_bytes_equal (a, b));
  }
}

static void
test_svg_is_vectors (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *path = write_card (f->folder, "a.svg", &f->card);
  g_autoptr (GBytes) svg = written_bytes (path);

  g_assert_cmpuint (written_count (svg, "width=\"595.276pt\" height=\"841.89pt\""), ==,
                    1);
  g_assert_cmpuint (written_count (svg, "<image"), ==, 0);
  g_assert_cmpuint (written_count (svg, "</svg>"), ==, 1);
}

static void
test_png_prints_at_its_size (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *path = write_card (f->folder, "a.png", &f->card);
  cairo_surface_t *image = cairo_image_surface_create_from_png (path);
  g_autoptr (GBytes) png = written_bytes (path);
  /* pHYs: 288 dots to the inch are 11339 to the metre, both ways (PNG, ISO/IEC 15948) */
  static const char dots[] = {
    'p', 'H', 'Y', 's', 0, 0, 0x2c, 0x4b, 0, 0, 0x2c, 0x4b, 1
  };
  gsize length;
  const char *bytes = g_bytes_get_data (png, &length);
  gboolean found = FALSE;

  g_assert_cmpint (cairo_image_surface_get_width (image), ==, 2382);
  g_assert_cmpint (cairo_image_surface_get_height (image), ==, 3368);
  for (gsize i = 0; i + sizeof dots <= length && !found; i++)
    found = memcmp (bytes + i, dots, sizeof dots) == 0;
  g_assert_true (found);
  cairo_surface_destroy (image);
}

static void
test_a_failure_leaves_the_old_file (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *path = g_build_filename (f->folder, "card.txt", NULL);
  g_autofree char *nowhere = g_build_filename (f->folder, "none", "card.pdf", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) suffix = NULL, folder = NULL;

  g_assert_true (g_file_set_contents (path, "old", -1, NULL));
  g_assert_false (fitting_card_write (&f->card, path, &suffix));
  g_assert_error (suffix, EXPORT_ERROR, EXPORT_ERROR_SUFFIX);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "old");
  g_assert_false (fitting_card_write (&f->card, nowhere, &folder));
  g_assert_error (folder, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
}

#define ADD_FILE(path, function)                                                         \
  g_test_add (path, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  drawn_word_length = 12;
  g_test_add_data_func ("/fitting-card/apart", GINT_TO_POINTER (FALSE),
                        test_texts_keep_apart);
  g_test_add_data_func ("/fitting-card/apart-in-long-words", GINT_TO_POINTER (TRUE),
                        test_texts_keep_apart);
  g_test_add_data_func ("/fitting-card/nothing-cut", GINT_TO_POINTER (FALSE),
                        test_nothing_is_cut);
  g_test_add_data_func ("/fitting-card/nothing-cut-in-long-words", GINT_TO_POINTER (TRUE),
                        test_nothing_is_cut);
  g_test_add_data_func ("/fitting-card/long-names", GINT_TO_POINTER (FALSE),
                        test_long_names_stay_on_the_page);
  g_test_add_data_func ("/fitting-card/long-names-in-long-words", GINT_TO_POINTER (TRUE),
                        test_long_names_stay_on_the_page);
  g_test_add_func ("/fitting-card/says", test_says_what_a_fitter_needs);
  g_test_add_func ("/fitting-card/head", test_head_bears_no_other_plates_name);
  g_test_add_func ("/fitting-card/tie-rod", test_one_tie_rod_instruction);
  g_test_add_func ("/fitting-card/figures", test_figures_are_the_answers);
  g_test_add_func ("/fitting-card/alike", test_both_sides_alike);
  g_test_add_func ("/fitting-card/swapped", test_swapped_plates_are_said);
  g_test_add_func ("/fitting-card/past-a-limit", test_a_plate_past_a_limit_is_said);
  g_test_add_func ("/fitting-card/scale", test_scale_is_true);
  g_test_add_func ("/fitting-card/plans", test_plans_are_seen_from_before);
  g_test_add_func ("/fitting-card/columns", test_columns_are_seen_from_before);
  ADD_FILE ("/fitting-card/pdf", test_pdf_is_one_page_of_a4);
  ADD_FILE ("/fitting-card/repeats", test_files_repeat_to_the_byte);
  ADD_FILE ("/fitting-card/svg", test_svg_is_vectors);
  ADD_FILE ("/fitting-card/png", test_png_prints_at_its_size);
  ADD_FILE ("/fitting-card/failure", test_a_failure_leaves_the_old_file);
  return g_test_run ();
}
