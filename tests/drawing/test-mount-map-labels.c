/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawn-texts.h"
#include "model/study/quantity-info.h"
#include "mount-map-fixture.h"

#include <pango/pangocairo.h>
#include <string.h>

#define STEEPEST (97.0 * G_PI / 180.0) /* what leans further stands on its head */

static void
corners_of (const MountMapLabel *label, double room, DrawnPoint corners[4])
{
  static const double signs[4][2] = { { -1, -1 }, { 1, -1 }, { 1, 1 }, { -1, 1 } };
  const double c = cos (label->angle), s = sin (label->angle);

  for (int i = 0; i < 4; i++) {
    const double u = signs[i][0] * (label->width / 2.0 + room),
                 v = signs[i][1] * (label->height / 2.0 + room);
    corners[i] = (DrawnPoint){ label->x + c * u - s * v, label->y + s * u + c * v };
  }
}

/* By the separating axes of both, on their corners. */
static gboolean
do_overlap (const DrawnPoint a[4], const DrawnPoint b[4])
{
  const DrawnPoint *both[] = { a, b };

  for (int k = 0; k < 4; k++) {
    const DrawnPoint p = both[k / 2][k % 2], q = both[k / 2][k % 2 + 1];
    double low[2] = { INFINITY, INFINITY }, high[2] = { -INFINITY, -INFINITY };

    for (int box = 0; box < 2; box++)
      for (int i = 0; i < 4; i++) {
        const double along = both[box][i].x * (q.x - p.x) + both[box][i].y * (q.y - p.y);
        low[box] = fmin (low[box], along);
        high[box] = fmax (high[box], along);
      }
    if (low[0] >= high[1] || low[1] >= high[0])
      return FALSE;
  }
  return TRUE;
}

static gboolean
is_between (double value, double a, double b)
{
  return value >= fmin (a, b) && value <= fmax (a, b);
}

/* "−2.5°" in its own units. */
static double
number_of (const char *text)
{
  const gboolean is_negative = g_str_has_prefix (text, "−");

  return (is_negative ? -1.0 : 1.0) *
         g_ascii_strtod (text + (is_negative ? strlen ("−") : 0), NULL);
}

/* Whether another line than the label's own runs through it, by twentieths of pieces. */
static gboolean
is_struck_through (const Fixture *f, const MountMapLabel *label)
{
  const double c = cos (label->angle), s = sin (label->angle);

  for (guint which = 0; which < 2; which++) {
    const FieldLines *lines = mount_map_lines (f->map, which);

    for (guint n = 0; lines != NULL && n < lines->lines->len; n++) {
      const FieldLine *line = &g_array_index (lines->lines, FieldLine, n);

      if (which == label->which && line->level == label->level)
        continue;
      for (guint i = 0; i + 1 < line->n_points; i++) {
        const MountOffset *at =
            &g_array_index (lines->points, MountOffset, line->first + i);
        const DrawnPoint a = pixel_of (f, at[0].inboard, at[0].rearward),
                         b = pixel_of (f, at[1].inboard, at[1].rearward);

        for (int k = 0; k <= 20; k++) {
          const double x = a.x + k / 20.0 * (b.x - a.x) - label->x,
                       y = a.y + k / 20.0 * (b.y - a.y) - label->y;

          if (fabs (c * x + s * y) < label->width / 2.0 &&
              fabs (c * y - s * x) < label->height / 2.0)
            return TRUE;
        }
      }
    }
  }
  return FALSE;
}

static void
check_label (const Fixture *f, const MountMapLabel *label, int width, int height)
{
  const FieldSubject subject = (FieldSubject) f->view.subjects[label->which];
  const Quantity quantity = field_subject_quantity (subject);
  const FieldLines *lines = mount_map_lines (f->map, label->which);
  const MountOffset at = mount_map_hit (f->map, label->x, label->y).at;
  DrawnPoint corners[4];

  corners_of (label, 0.0, corners);
  for (int i = 0; i < 4; i++) {
    g_assert_true (is_between (corners[i].x, 0.0, width));
    g_assert_true (is_between (corners[i].y, 0.0, height));
    g_assert_true (mount_map_hit (f->map, corners[i].x, corners[i].y).on_map);
  }
  g_assert_cmpfloat (cos (label->angle), >=, cos (STEEPEST));
  /* says its line's value, and stands on its line: lines are 40 pixels apart, and texts
   * 2.5 off at most */
  g_assert_cmpfloat_with_epsilon (number_of (label->text),
                                  quantity_edge_value (quantity, label->level), 1e-6);
  g_assert_cmpfloat_with_epsilon (mount_field_exact (mount_map_field (f->map), subject,
                                                     at),
                                  label->level, 0.12 * lines->step);
  g_assert_false (is_struck_through (f, label));
}

static void
check_labels (const Fixture *f, int width, int height)
{
  const guint n = mount_map_n_labels (f->map);
  const DrawnPoint handle = pixel_of (f, car_setup (f->car, 1)->mount.inboard,
                                      car_setup (f->car, 1)->mount.rearward);
  const MountMapLabel mount = { .x = handle.x, .y = handle.y, .width = 34, .height = 34 };
  DrawnPoint of_handle[4];

  corners_of (&mount, 0.0, of_handle);
  for (guint i = 0; i < n; i++) {
    const MountMapLabel label = mount_map_label (f->map, i);
    DrawnPoint corners[4];

    if (!label.is_shown)
      continue;
    check_label (f, &label, width, height);
    corners_of (&label, 0.0, corners);
    g_assert_false (do_overlap (corners, of_handle));
    for (guint other = 0; other < i; other++) {
      const MountMapLabel second = mount_map_label (f->map, other);
      DrawnPoint others[4];

      corners_of (&second, 0.0, others);
      g_assert_false (second.is_shown && do_overlap (corners, others));
    }
  }
}

static void
test_labels_have_their_places (Fixture *f, gconstpointer data)
{
  (void) data;
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int first = 0; first < N_FIELD_SUBJECTS; first++) {
      const int width = sizes[i][0], height = sizes[i][1];

      f->view.subjects[0] = first;
      f->view.subjects[1] = (first + 1 + (int) i) % N_FIELD_SUBJECTS;
      f->view.theme = i % 2 == 0 ? theme_light () : theme_scaled (theme_dark (), 1.3);
      draw (f, width, height);
      g_assert_cmpuint (mount_map_n_labels (f->map), >=, 3);
      check_labels (f, width, height);
    }
}

/* Nearly every line of the usual two says its value. */
static void
test_most_lines_are_labelled (Fixture *f, gconstpointer data)
{
  (void) data;
  draw (f, 700, 650);
  const guint n_lines =
      mount_map_lines (f->map, 0)->lines->len + mount_map_lines (f->map, 1)->lines->len;

  g_assert_cmpuint (mount_map_n_labels (f->map), >=, n_lines - 3);
}

static void
test_labels_give_way_to_the_handle (Fixture *f, gconstpointer data)
{
  (void) data;
  int n_hidden = 0;

  draw (f, 700, 650);
  f->view.hold_window = TRUE;
  const MountMapLabel first = mount_map_label (f->map, 2);
  for (int i = 0; i < 40; i++) {
    MountOffset *mount = &car_setup (f->car, 1)->mount;

    mount->inboard = -25.0 + 1.7 * i;
    mount->rearward = 30.0 - 1.6 * i;
    draw (f, 700, 650);
    check_labels (f, 700, 650);
    for (guint k = 0; k < mount_map_n_labels (f->map); k++)
      n_hidden += !mount_map_label (f->map, k).is_shown;
    /* the others stay where they are */
    g_assert_cmpfloat (mount_map_label (f->map, 2).x, ==, first.x);
    g_assert_cmpfloat (mount_map_label (f->map, 2).y, ==, first.y);
  }
  g_assert_cmpint (n_hidden, >, 0);
}

static void
check_texts (int width, int height)
{
  g_assert_cmpuint (drawn_texts->len, >, 10);
  for (guint i = 0; i < drawn_texts->len; i++) {
    for (int c = 0; c < 4; c++)
      if (!is_between (drawn_text_at (i)->corners[c].x, -0.5, width + 0.5) ||
          !is_between (drawn_text_at (i)->corners[c].y, -0.5, height + 0.5))
        g_error ("“%s” runs past %d × %d", drawn_text_at (i)->text, width, height);
    for (guint other = 0; other < i; other++)
      if (do_overlap (drawn_text_at (i)->corners, drawn_text_at (other)->corners))
        g_error ("“%s” covers “%s” at %.0f, %.0f of %d × %d%s", drawn_text_at (i)->text,
                 drawn_text_at (other)->text, drawn_text_at (i)->corners[0].x,
                 drawn_text_at (i)->corners[0].y, width, height,
                 drawn_in_long_words ? ", long words" : "");
  }
}

/* Rulers, legend, names, marks and lines: no text lies on another. */
static void
test_no_text_covers_another (Fixture *f, gconstpointer data)
{
  (void) data;
  static const ChoicePlace best = { .mount = { 17.0, 9.0, 0.0 } };

  f->view.pixel_scale = 0.0;
  f->view.best = &best;
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (PlateKind kind = 0; kind < N_PLATE_KINDS; kind++)
      for (int words = 0; words < 2; words++) {
        g_autoptr (Plate) plate = plate_of (kind);

        f->view.plate = plate;
        f->view.theme =
            kind % 2 == 0 ? theme_paper () : theme_scaled (theme_dark (), 1.2);
        for (double turn = 0.0; i % 2 == 0 && turn < 360.0; turn += 45.0)
          g_array_append_val (plate->turns_deg, turn);
        drawn_in_long_words = words == 1;
        drawn_reset ();
        draw (f, sizes[i][0], sizes[i][1]);
        check_texts (sizes[i][0], sizes[i][1]);
        check_labels (f, sizes[i][0], sizes[i][1]);
      }
  drawn_in_long_words = false;
}

/* At its foot and beside the pointer, also where the map is as small as its window lets
 * it be; nothing where the sides are alike. */
static void
check_says_which_side (Fixture *f, int width, int height)
{
  for (int own = 0; own <= 1; own++)
    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
      const char *name = side == SIDE_RIGHT ? "right side" : "left side";

      car_setup (f->car, 1)->right.is_own = own;
      f->view.side = side;
      for (int cross = 0; cross <= 1; cross++) {
        f->view.show_cross = cross;
        drawn_reset ();
        draw (f, width, height);
        g_assert_cmpuint (drawn_count (" side"), ==, own ? 1 + cross : 0);
        g_assert_cmpuint (drawn_count (name), ==, own ? 1 + cross : 0);
        if (!cross)
          check_texts (width, height);
      }
    }
}

static void
test_it_says_which_side (Fixture *f, gconstpointer data)
{
  (void) data;
  f->view.pixel_scale = 0.0; /* keeps no image: each drawing writes all of its texts */
  f->view.cross = (MountOffset){ 4.0, 3.0, 0.0 };
  for (int words = 0; words < 2; words++) {
    drawn_in_long_words = words == 1;
    check_says_which_side (f, 700, 650);
    check_says_which_side (f, 280, 270);
  }
  drawn_in_long_words = false;
}

static void
draw_anew (Fixture *f)
{
  drawn_reset ();
  draw (f, 700, 650);
}

/* By hand: an opening of 84 mm and a bearing of 46 mm leave 42 − 23 = 19 mm about the
 * opening's centre, at 4 inboard and 2 forward. */
static void
test_the_tag_tells_of_the_edge (Fixture *f, gconstpointer data)
{
  CarSetup *setup = car_setup (f->car, 1);

  (void) data;
  f->view.pixel_scale = 0.0; /* keeps no image */
  f->view.setup = 1;
  f->view.is_handle_lit = TRUE;
  f->plate->bearing_diameter_mm = 46.0;
  f->car->limits.edge_margin_mm = 3.0;
  setup->mount = (MountOffset){ 4.0 + 15.0, -2.0, 0.0 };
  draw_anew (f);
  g_assert_cmpuint (drawn_count ("the edge"), ==, 0);
  setup->mount.inboard = 4.0 + 17.0;
  draw_anew (f);
  g_assert_cmpuint (drawn_count ("2.0 mm to the edge"), ==, 1);
  setup->mount.inboard = 4.0 + 26.0;
  draw_anew (f);
  g_assert_cmpuint (drawn_count ("7.0 mm past the edge"), ==, 1);
  g_assert_cmpfloat_with_epsilon (choice_place_of_mount (f->car,
                                                         &(ChoiceQuestion){ .setup = 1 },
                                                         SIDE_LEFT, f->plate)
                                      .edge_margin,
                                  -7.0, 1e-9);
  f->view.plate = NULL; /* the strut's axis alone: 42 − 26 = 16 mm are left */
  draw_anew (f);
  g_assert_cmpuint (drawn_count ("the edge"), ==, 0);
  setup->mount.inboard = 4.0 + 46.0;
  draw_anew (f);
  g_assert_cmpuint (drawn_count ("4.0 mm past the edge"), ==, 1);
  f->car->tower.opening_diameter_mm = 0.0;
  draw_anew (f);
  g_assert_cmpuint (drawn_count ("the edge"), ==, 0);
}

#define ADD(name, function)                                                              \
  g_test_add ("/mount-map/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("labels/places", test_labels_have_their_places);
  ADD ("labels/most", test_most_lines_are_labelled);
  ADD ("labels/handle", test_labels_give_way_to_the_handle);
  ADD ("says-which-side", test_it_says_which_side);
  ADD ("tag/edge", test_the_tag_tells_of_the_edge);
  ADD ("texts", test_no_text_covers_another);
  return g_test_run ();
}
