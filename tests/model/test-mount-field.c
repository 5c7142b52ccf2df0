/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"

#include "model/mount-field/mount-field-trace.h"
#include "model/study/quantity-info.h"

#include <math.h>
#include <string.h>

#define DEGREE (G_PI / 180.0)

static const FieldWindow around = { -45.0, 60.0, -50.0, 40.0 };

static const char *const demo_names[] = { "wren", "fieldfare", "lapwing" };

static void
test_it_is_what_the_kernel_says (void)
{
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (Car) car = fixture_car ("set-m");

  for (int toe = TOE_AS_MOVED; toe <= TOE_RESET; toe++) {
    car_setup (car, 1)->toe = toe;
    car_setup (car, 1)->lowering_mm = 22.0;
    g_assert_true (mount_field_solve (field, car, 1, SIDE_LEFT, around));
    const MeasuredCorner points = car_measured_corner (car);
    const Adjustment adjustment = car_adjustment (car_setup (car, 1));
    const MountGrid *grid = &field->grid;

    g_assert_cmpuint (grid->n_inboard * grid->n_rearward, >, 600);
    g_assert_cmpuint (field->n_assembled, ==, grid->n_inboard * grid->n_rearward);
    for (size_t r = 0; r < grid->n_rearward; r++)
      for (size_t i = 0; i < grid->n_inboard; i++) {
        const MountPlace *place = &field->places[r * grid->n_inboard + i];
        MountPlace alone;

        mount_place_solve (&points, &adjustment, mount_grid_at (grid, i, r), &alone);
        g_assert_cmpint (place->status, ==, alone.status);
        for (FieldSubject s = 0; s < N_FIELD_SUBJECTS; s++) {
          const double value = mount_place_value (place, s);

          g_assert_cmpfloat_with_epsilon (value, mount_place_value (&alone, s), 1e-9);
          g_assert_cmpfloat_with_epsilon (value,
                                          mount_field_exact (field, s,
                                                             mount_grid_at (grid, i, r)),
                                          1e-9);
        }
      }
  }
}

static void
test_only_what_matters_is_solved_again (void)
{
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (Car) car = fixture_car ("set-m");
  CarSetup *setup = car_setup (car, 0);
  FieldWindow window = around;

  g_assert_true (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  setup->mount.inboard = 7.0;
  setup->mount.rearward = -3.0;
  g_assert_false (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  g_assert_false (mount_field_solve (field, car, 0, SIDE_RIGHT, window));
  setup->mount.up = 2.0;
  g_assert_true (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  setup->lowering_mm = 5.0;
  g_assert_true (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  setup->toe = TOE_RESET;
  g_assert_true (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  setup->corrections.ball_joint_spacer_mm = 10.0;
  g_assert_true (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  car->points[POINT_BALL_JOINT].z += 1.0;
  g_assert_true (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  window.inboard_to += 1.0;
  g_assert_true (mount_field_solve (field, car, 0, SIDE_LEFT, window));
  car->right.has_alignment = TRUE;
  car->right.camber_deg = -1.0;
  g_assert_true (mount_field_solve (field, car, 0, SIDE_RIGHT, window));
  g_assert_false (mount_field_solve (field, car, 0, SIDE_RIGHT, window));
}

/* A point of a line, @part of the way from its vertex @i to the next. */
static MountOffset
point_of (const FieldLines *lines, const FieldLine *line, guint i, double part)
{
  const MountOffset *points = &g_array_index (lines->points, MountOffset, line->first);
  const MountOffset a = points[i], b = points[(i + 1) % line->n_points];

  return (MountOffset){ a.inboard + part * (b.inboard - a.inboard),
                        a.rearward + part * (b.rearward - a.rearward), a.up };
}

static void
check_random_points (const FieldLines *lines,
                     const MountField *field,
                     FieldSubject subject)
{
  const double tolerance = FIELD_TOLERANCE * lines->step;

  g_assert_cmpuint (lines->lines->len, >, 0);
  for (int n = 0; n < 100; n++) {
    const FieldLine *line =
        &g_array_index (lines->lines, FieldLine,
                        g_test_rand_int_range (0, (gint32) lines->lines->len));
    const guint i =
        (guint) g_test_rand_int_range (0, (gint32) line->n_points - !line->is_closed);
    const double part = g_test_rand_double ();

    g_assert_cmpfloat_with_epsilon (mount_field_exact (field, subject,
                                                       point_of (lines, line, i, 0.0)),
                                    line->level, tolerance);
    g_assert_cmpfloat_with_epsilon (mount_field_exact (field, subject,
                                                       point_of (lines, line, i, part)),
                                    line->level, 2.0 * tolerance);
  }
}

static guint
n_lines_at (const FieldLines *lines, double level)
{
  guint n = 0;

  for (guint i = 0; i < lines->lines->len; i++)
    if (fabs (g_array_index (lines->lines, FieldLine, i).level - level) <
        1e-6 * lines->step)
      n++;
  return n;
}

/* Every multiple of the step between the least and the greatest value has its line, and
 * there is no other. */
static void
check_levels (const FieldLines *lines, const MountField *field, FieldSubject subject)
{
  double least = INFINITY, most = -INFINITY;
  guint n = 0;

  for (size_t i = 0; i < field->grid.n_inboard * field->grid.n_rearward; i++) {
    least = fmin (least, mount_place_value (&field->places[i], subject));
    most = fmax (most, mount_place_value (&field->places[i], subject));
  }
  for (double k = floor (least / lines->step); k * lines->step <= most; k++)
    if (k * lines->step > least) {
      g_assert_cmpuint (n_lines_at (lines, k * lines->step), >=, 1);
      n += n_lines_at (lines, k * lines->step);
    }
  g_assert_cmpuint (n, ==, lines->lines->len);
}

/* 1, 2 or 5 times a power of ten, in degrees or mm. */
static void
check_round (const FieldLines *lines, FieldSubject subject)
{
  const double step = quantity_edge_value (field_subject_quantity (subject), lines->step);
  const double mantissa = step / pow (10.0, floor (log10 (step) + 1e-9));

  g_assert_true (fabs (mantissa - 1.0) < 1e-9 || fabs (mantissa - 2.0) < 1e-9 ||
                 fabs (mantissa - 5.0) < 1e-9);
}

static gboolean
is_border (const MountGrid *grid, MountOffset at)
{
  return fabs (at.inboard - grid->inboard_from) < 1e-9 ||
         fabs (at.inboard - grid->inboard_to) < 1e-9 ||
         fabs (at.rearward - grid->rearward_from) < 1e-9 ||
         fabs (at.rearward - grid->rearward_to) < 1e-9;
}

/* Within two meshes. */
static gboolean
is_near (const MountGrid *g, size_t i, size_t r, MountOffset at)
{
  const double wide = (g->inboard_to - g->inboard_from) / (double) (g->n_inboard - 1),
               deep = (g->rearward_to - g->rearward_from) / (double) (g->n_rearward - 1);
  const MountOffset p = mount_grid_at (g, i, r);

  return fabs (p.inboard - at.inboard) < 2.0 * wide &&
         fabs (p.rearward - at.rearward) < 2.0 * deep;
}

static gboolean
is_beside_gap (const MountField *field, MountOffset at)
{
  const MountGrid *g = &field->grid;

  for (size_t r = 0; r < g->n_rearward; r++)
    for (size_t i = 0; i < g->n_inboard; i++)
      if (field->places[r * g->n_inboard + i].status != POSE_OK && is_near (g, i, r, at))
        return TRUE;
  return FALSE;
}

/* Whether the places about @at lie further apart than that: the function runs to
 * infinity there, and its sign changes without a crossing. */
static gboolean
leaps_at (const MountField *field, FieldSubject subject, MountOffset at, double apart)
{
  const MountGrid *g = &field->grid;
  double least = INFINITY, most = -INFINITY;

  for (size_t r = 0; r < g->n_rearward; r++)
    for (size_t i = 0; i < g->n_inboard; i++)
      if (is_near (g, i, r, at)) {
        const double value =
            mount_place_value (&field->places[r * g->n_inboard + i], subject);
        least = fmin (least, value);
        most = fmax (most, value);
      }
  return most - least > apart;
}

static void
check_ends (const FieldLines *lines, const MountField *field, FieldSubject subject)
{
  for (guint i = 0; i < lines->lines->len; i++) {
    const FieldLine *line = &g_array_index (lines->lines, FieldLine, i);
    const MountOffset *points = &g_array_index (lines->points, MountOffset, line->first);
    const MountOffset ends[] = { points[0], points[line->n_points - 1] };

    g_assert_cmpuint (line->n_points, >=, line->is_closed ? 3 : 2);
    for (int e = 0; e < 2 && !line->is_closed; e++)
      g_assert_true (is_border (&field->grid, ends[e]) ||
                     is_beside_gap (field, ends[e]) ||
                     leaps_at (field, subject, ends[e], 3.0 * lines->step));
  }
}

static void
check_all_subjects (MountField *field, FieldLines *lines)
{
  for (FieldSubject s = 0; s < N_FIELD_SUBJECTS; s++)
    for (int most = 4; most <= 16; most += 6) {
      field_lines_trace (lines, field, s, most);
      check_round (lines, s);
      check_levels (lines, field, s);
      check_ends (lines, field, s);
      check_random_points (lines, field, s);
    }
}

static void
test_lines_keep_their_values (void)
{
  static const double lowerings[] = { 0.0, 37.0, -30.0 };
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (FieldLines) lines = field_lines_new ();

  for (gsize c = 0; c < G_N_ELEMENTS (demo_names); c++) {
    g_autoptr (Car) car = fixture_demo (demo_names[c]);

    for (gsize i = 0; i < G_N_ELEMENTS (lowerings); i++) {
      car_setup (car, 0)->lowering_mm = lowerings[i];
      car_setup (car, 0)->toe = i == 1 ? TOE_RESET : TOE_AS_MOVED;
      mount_field_solve (field, car, 0, SIDE_LEFT, around);
      check_all_subjects (field, lines);
    }
  }
}

/* Far out, where the tie rod cannot reach any more; the fields bend there. */
static void
test_lines_end_at_gaps (void)
{
  static const FieldWindow windows[] = { { -520.0, -300.0, -200.0, 0.0 },
                                         { -800.0, -600.0, 500.0, 700.0 } };
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (FieldLines) lines = field_lines_new ();
  g_autoptr (Car) car = fixture_car ("set-m");

  for (int toe = TOE_AS_MOVED; toe <= TOE_RESET; toe++) {
    car_setup (car, 0)->toe = toe;
    car_setup (car, 0)->lowering_mm = 80.0;
    mount_field_solve (field, car, 0, SIDE_LEFT, windows[toe]);
    g_assert_cmpuint (field->n_assembled, >, 200);
    g_assert_cmpuint (field->n_assembled, <,
                      field->grid.n_inboard * field->grid.n_rearward - 50);
    for (FieldSubject s = 0; s < N_FIELD_SUBJECTS; s++) {
      field_lines_trace (lines, field, s, 12);
      g_assert_cmpuint (lines->lines->len, >, 0);
      check_ends (lines, field, s);
      check_random_points (lines, field, s);
    }
  }
}

static void
test_nothing_assembles_nothing_is_drawn (void)
{
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (FieldLines) lines = field_lines_new ();
  g_autoptr (Car) car = fixture_car ("set-m");

  car_setup (car, 0)->corrections.tie_rod_length_mm = 900.0;
  mount_field_solve (field, car, 0, SIDE_LEFT, around);
  g_assert_cmpuint (field->n_assembled, ==, 0);
  field_lines_trace (lines, field, FIELD_CAMBER, 10);
  g_assert_cmpuint (lines->lines->len, ==, 0);
  field_lines_trace_level (lines, field, FIELD_CAMBER, 0.0);
  g_assert_cmpuint (lines->lines->len, ==, 0);
}

/* mm above 0 where the point lies to the left of the line, by the piece next to it. */
static double
left_of (const FieldLines *lines, MountOffset p)
{
  double nearest = INFINITY, left = NAN;

  for (guint n = 0; n < lines->lines->len; n++) {
    const FieldLine *line = &g_array_index (lines->lines, FieldLine, n);

    for (guint i = 0; i + 1 < line->n_points; i++) {
      const MountOffset a = point_of (lines, line, i, 0.0),
                        b = point_of (lines, line, i, 1.0);
      const double dx = b.inboard - a.inboard, dy = b.rearward - a.rearward;
      const double px = p.inboard - a.inboard, py = p.rearward - a.rearward;
      const double part = CLAMP ((px * dx + py * dy) / (dx * dx + dy * dy), 0.0, 1.0);
      const double distance = hypot (px - part * dx, py - part * dy);

      if (distance < nearest) {
        nearest = distance;
        left = dx * py - dy * px > 0.0 ? distance : -distance;
      }
    }
  }
  return left;
}

static double
left_of_line (
    MountField *field, FieldSubject subject, double degrees, double in, double back)
{
  g_autoptr (FieldLines) lines = field_lines_new ();

  lines->step = 0.01 * DEGREE;
  field_lines_trace_level (lines, field, subject, degrees * DEGREE);
  g_assert_cmpuint (lines->lines->len, ==, 1);
  return left_of (lines, (MountOffset){ in, back, 0.0 });
}

/* Set M's mount moves, computed outside the project by two methods: as measured camber
 * −0.5, caster 3.5215; inboard 10: −1.3630 and 3.5164; rearward 10: −0.4922 and 4.3997.
 * Lines through those values pass through those places, and whole lines leave them on the
 * right side. A digit of 5e-5° is 0.0006 mm of camber's line. */
static void
test_set_m_mount_moves (void)
{
  static const struct {
    double in, back, camber, caster;
  } moves[] = { { 0, 0, -0.5, 3.5215 },
                { 10, 0, -1.3630, 3.5164 },
                { 0, 10, -0.4922, 4.3997 },
                { 15, 10, -1.7911, 4.3909 } };
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (Car) car = fixture_car ("set-m");

  mount_field_solve (field, car, 0, SIDE_LEFT, around);
  for (gsize i = 0; i < G_N_ELEMENTS (moves); i++) {
    const double in = moves[i].in, back = moves[i].back;

    g_assert_cmpfloat_with_epsilon (left_of_line (field, FIELD_CAMBER, moves[i].camber,
                                                  in, back),
                                    0.0, 0.004);
    g_assert_cmpfloat_with_epsilon (left_of_line (field, FIELD_CASTER, moves[i].caster,
                                                  in, back),
                                    0.0, 0.004);
  }
  /* less camber to the right of its line, more caster to the left */
  g_assert_cmpfloat (left_of_line (field, FIELD_CAMBER, -0.5, 10, 0), <, -9.9);
  g_assert_cmpfloat (left_of_line (field, FIELD_CAMBER, -1.5, 10, 0), >, 1.0);
  g_assert_cmpfloat (left_of_line (field, FIELD_CAMBER, -1.0, 10, 0), <, -4.0);
  g_assert_cmpfloat (left_of_line (field, FIELD_CAMBER, -0.5, 0, 10), >, 0.05);
  g_assert_cmpfloat (left_of_line (field, FIELD_CAMBER, -0.0, 0, 10), <, -5.0);
  g_assert_cmpfloat (left_of_line (field, FIELD_CASTER, 3.5, 0, 10), >, 10.0);
  g_assert_cmpfloat (left_of_line (field, FIELD_CASTER, 4.5, 0, 10), <, -1.0);
  g_assert_cmpfloat (left_of_line (field, FIELD_CASTER, 3.52, 10, 0), <, 0.0);
  g_assert_cmpfloat (left_of_line (field, FIELD_CASTER, 3.51, 10, 0), >, 0.0);
}

/* Common practice: inboard brings negative camber and more inclination, rearward brings
 * caster and trail. So these values run from side to side of the window, the first two
 * along inboard, the others along rearward. */
static void
test_directions_of_the_trade (void)
{
  static const struct {
    FieldSubject subject;
    double in, back;
  } ways[] = { { FIELD_CAMBER, -1, 0 },
               { FIELD_SAI, 1, 0 },
               { FIELD_CASTER, 0, 1 },
               { FIELD_TRAIL, 0, 1 } };
  g_autoptr (MountField) field = mount_field_new ();

  for (gsize c = 0; c < G_N_ELEMENTS (demo_names); c++) {
    g_autoptr (Car) car = fixture_demo (demo_names[c]);

    mount_field_solve (field, car, 0, SIDE_LEFT, around);
    for (gsize w = 0; w < G_N_ELEMENTS (ways); w++)
      for (double at = -30.0; at < 30.0; at += 10.0) {
        const MountOffset from = { at, at / 2.0, 0.0 };
        const MountOffset to = { at + ways[w].in, at / 2.0 + ways[w].back, 0.0 };

        g_assert_cmpfloat (mount_field_exact (field, ways[w].subject, to), >,
                           mount_field_exact (field, ways[w].subject, from));
      }
  }
}

/* Functions made by hand. */
typedef double (*Plain) (double x, double y);

static double
call_plain (gconstpointer data, MountOffset at)
{
  return (*(const Plain *) data) (at.inboard, at.rearward);
}

typedef struct {
  MountGrid grid;
  double values[21 * 17];
  Plain function;
} Sheet;

static void
trace_plain (Sheet *s, Plain function, double step, double level, FieldLines *lines)
{
  s->grid = (MountGrid){ -10.0, 10.0, -8.0, 8.0, 0.0, 21, 17 };
  s->function = function;
  for (size_t r = 0; r < 17; r++)
    for (size_t i = 0; i < 21; i++)
      s->values[r * 21 + i] = call_plain (&s->function, mount_grid_at (&s->grid, i, r));
  lines->step = step;
  g_array_set_size (lines->lines, 0);
  g_array_set_size (lines->points, 0);
  field_lines_trace_surface (lines,
                             &(FieldSurface){ &s->grid, s->values, call_plain,
                                              &s->function },
                             level);
}

/* Along all lines: on the level, and higher to the left. Twentieths of each piece. */
static void
check_plain (const Sheet *s, const FieldLines *lines)
{
  const double tolerance = FIELD_TOLERANCE * lines->step;

  for (guint n = 0; n < lines->lines->len; n++) {
    const FieldLine *line = &g_array_index (lines->lines, FieldLine, n);

    for (guint i = 0; i + !line->is_closed < line->n_points; i++) {
      const MountOffset a = point_of (lines, line, i, 0.0),
                        b = point_of (lines, line, i, 1.0);
      const double dx = b.inboard - a.inboard, dy = b.rearward - a.rearward,
                   length = hypot (dx, dy);

      g_assert_cmpfloat_with_epsilon (call_plain (&s->function, a), line->level,
                                      tolerance);
      for (int k = 0; k <= 20; k++) {
        const MountOffset p = point_of (lines, line, i, k / 20.0);
        g_assert_cmpfloat_with_epsilon (call_plain (&s->function, p), line->level,
                                        2.0 * tolerance);
      }
      const MountOffset m = point_of (lines, line, i, 0.5);
      g_assert_cmpfloat (s->function (m.inboard - 1e-3 * dy / length,
                                      m.rearward + 1e-3 * dx / length),
                         >,
                         s->function (m.inboard + 1e-3 * dy / length,
                                      m.rearward - 1e-3 * dx / length));
    }
  }
}

static double
bowl (double x, double y)
{
  return hypot (x - 0.3, y + 0.2);
}

static double
pass (double x, double y)
{
  return (x - 0.4) * (y - 0.65) + 0.02;
}

static double
hills (double x, double y)
{
  return sin (x / 1.9) * cos (y / 2.3) + 0.05 * x;
}

static double
half_bowl (double x, double y)
{
  return y < -0.4 * x ? NAN : bowl (x, y);
}

static double
plane (double x, double y)
{
  return x + y;
}

static double
flat (double x, double y)
{
  return 1.0 + 1e-14 * sin (9.0 * x + 5.0 * y);
}

static void
test_a_ring_is_closed (void)
{
  g_autoptr (FieldLines) lines = field_lines_new ();
  Sheet s;

  trace_plain (&s, bowl, 1.0, 5.0, lines);
  g_assert_cmpuint (lines->lines->len, ==, 1);
  g_assert_true (g_array_index (lines->lines, FieldLine, 0).is_closed);
  check_plain (&s, lines);

  trace_plain (&s, bowl, 1.0, 9.0, lines); /* open at both sides, above and below */
  g_assert_cmpuint (lines->lines->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    g_assert_false (g_array_index (lines->lines, FieldLine, i).is_closed);
  check_plain (&s, lines);

  trace_plain (&s, bowl, 0.1, 0.4, lines); /* about one place alone */
  g_assert_cmpuint (lines->lines->len, ==, 1);
  g_assert_true (g_array_index (lines->lines, FieldLine, 0).is_closed);
  check_plain (&s, lines);
}

/* pass () = (x − 0.4)·(y − 0.65) + 0.02: above 0.02 the high ground is two pieces that
 * lie across from each other, upper right and lower left; below, the low ground is. All
 * four corners of its mesh differ from their neighbours. */
static void
test_a_saddle_is_decided_by_its_pass (void)
{
  g_autoptr (FieldLines) lines = field_lines_new ();
  Sheet s;

  for (int above = 0; above < 2; above++) {
    const double level = above ? 0.023 : 0.017;

    trace_plain (&s, pass, 0.05, level, lines);
    const double *low = &s.values[8 * 21 + 10], *high = low + 21;
    g_assert_true (low[0] > level && high[1] > level && low[1] < level &&
                   high[0] < level);
    g_assert_cmpuint (lines->lines->len, ==, 2);
    check_plain (&s, lines);
    for (guint n = 0; n < 2; n++) {
      const FieldLine *line = &g_array_index (lines->lines, FieldLine, n);

      for (guint i = 0; i < line->n_points; i++) { /* each in a quarter of its own */
        const MountOffset p = point_of (lines, line, i, 0.0);
        g_assert_true (((p.inboard > 0.4) == (p.rearward > 0.65)) == (above == 1));
      }
    }
  }
}

static void
test_bent_lines_are_followed (void)
{
  g_autoptr (FieldLines) lines = field_lines_new ();
  Sheet s;

  for (double level = -1.1; level < 1.2; level += 0.1) {
    trace_plain (&s, hills, 0.1, level, lines);
    g_assert_cmpuint (lines->lines->len, >, 0);
    check_plain (&s, lines);
  }
}

static void
test_gaps_are_left_out (void)
{
  g_autoptr (FieldLines) lines = field_lines_new ();
  Sheet s;

  trace_plain (&s, half_bowl, 1.0, 5.0, lines);
  g_assert_cmpuint (lines->lines->len, ==, 1);
  g_assert_false (g_array_index (lines->lines, FieldLine, 0).is_closed);
  check_plain (&s, lines);
}

/* A level that runs through places, and a field that is flat but for rounding. */
static void
test_levels_on_places (void)
{
  g_autoptr (FieldLines) lines = field_lines_new ();
  Sheet s;

  for (double level = -17.0; level <= 17.0; level += 1.0) {
    trace_plain (&s, plane, 1.0, level, lines);
    g_assert_cmpuint (lines->lines->len, ==, 1);
    check_plain (&s, lines);
  }
  trace_plain (&s, flat, 1.0, 1.0, lines);
  g_assert_cmpuint (lines->lines->len, ==, 0);
}

/* Of set P caster stays 0 wherever the mount goes sideways; its lines lie along inboard,
 * as straight as can be. */
static void
test_flat_corner (void)
{
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (FieldLines) lines = field_lines_new ();
  g_autoptr (Car) car = fixture_car ("set-m");
  static const Vec3 set_p[N_POINTS] = {
    [POINT_ARM_FRONT_PIVOT] = { 100, 380, 200 },
    [POINT_ARM_REAR_PIVOT] = { -200, 380, 200 },
    [POINT_BALL_JOINT] = { 0, 700, 185 },
    [POINT_UPPER_MOUNT] = { 0, 575, 835 },
    [POINT_STRUT_FOOT] = { 0, 656.25, 412.5 },
    [POINT_TIE_ROD_OUTER] = { -130, 700, 185 },
    [POINT_TIE_ROD_INNER] = { -130, 380, 200 },
    [POINT_WHEEL_CENTRE] = { 0, 740, 300 },
  };

  memcpy (car->points, set_p, sizeof set_p);
  car->camber_deg = car->toe_in_deg = 0.0;
  mount_field_solve (field, car, 0, SIDE_LEFT, around);
  lines->step = 0.5 * DEGREE;
  field_lines_trace_level (lines, field, FIELD_CASTER, 0.0);
  g_assert_cmpuint (lines->lines->len, ==, 1);
  for (guint i = 0; i < lines->points->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (lines->points, MountOffset, i)
                                        .rearward,
                                    0.0, 0.06);
}

static void
add_target (Car *car, Aim aim, double least, double most)
{
  const CarTarget target = { .aim = aim, .least = least, .most = most, .weight = 1.0 };

  g_array_append_val (car->targets, target);
}

/* Set M as measured has 0.1° toe-in; lowered 20 mm, 0.1069 (computed outside the
 * project): the change counts from the baseline where that stands. */
static void
test_bands (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  double least, most;

  g_array_set_size (car->targets, 0);
  g_assert_false (field_subject_band (car, SIDE_LEFT, FIELD_CAMBER, &least, &most));
  add_target (car, AIM_CAMBER, -INFINITY, -2.0);
  add_target (car, AIM_TRAIL, 10.0, 20.0);
  add_target (car, AIM_TOE_CHANGE, -0.2, 0.3);
  g_assert_true (field_subject_target (car, FIELD_SAI) == NULL);
  g_assert_true (field_subject_target (car, FIELD_TRAIL) ==
                 &g_array_index (car->targets, CarTarget, 1));

  g_assert_true (field_subject_band (car, SIDE_LEFT, FIELD_CAMBER, &least, &most));
  g_assert_cmpfloat (least, ==, -INFINITY);
  g_assert_cmpfloat_with_epsilon (most, -2.0 * DEGREE, 1e-12);
  g_assert_true (field_subject_band (car, SIDE_RIGHT, FIELD_TRAIL, &least, &most));
  g_assert_cmpfloat_with_epsilon (least, 10.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (most, 20.0, 1e-12);

  car->baseline = 0;
  car_setup (car, 0)->mount = (MountOffset){ 0, 0, 0 };
  car_setup (car, 0)->lowering_mm = 20.0;
  g_assert_true (
      field_subject_band (car, SIDE_LEFT, FIELD_TOE_BEFORE_RESET, &least, &most));
  g_assert_cmpfloat_with_epsilon (least, (0.1069 - 0.2) * DEGREE, 5.1e-5 * DEGREE);
  g_assert_cmpfloat_with_epsilon (most, (0.1069 + 0.3) * DEGREE, 5.1e-5 * DEGREE);
}

/* A level between the round ones is added, one that is there is not. */
static void
test_levels_are_added (void)
{
  g_autoptr (MountField) field = mount_field_new ();
  g_autoptr (FieldLines) lines = field_lines_new ();
  g_autoptr (Car) car = fixture_car ("set-m");

  mount_field_solve (field, car, 0, SIDE_LEFT, around);
  field_lines_trace (lines, field, FIELD_CAMBER, 9);
  const guint n = lines->lines->len;
  g_assert_cmpuint (n, >=, 4);

  field_lines_trace_level (lines, field, FIELD_CAMBER, -1.23 * DEGREE);
  g_assert_cmpuint (lines->lines->len, ==, n + 1);
  g_assert_cmpuint (n_lines_at (lines, -1.23 * DEGREE), ==, 1);
  check_random_points (lines, field, FIELD_CAMBER);
  field_lines_trace_level (lines, field, FIELD_CAMBER, -1.23 * DEGREE);
  field_lines_trace_level (lines, field, FIELD_CAMBER, -2.0 * DEGREE);
  field_lines_trace_level (lines, field, FIELD_CAMBER, -40.0 * DEGREE);
  g_assert_cmpuint (lines->lines->len, ==, n + 1);
}

static void
test_subjects_have_names (void)
{
  for (FieldSubject s = 0; s < N_FIELD_SUBJECTS; s++) {
    g_assert_cmpuint (strlen (field_subject_name (s)), >, 2);
    for (FieldSubject other = 0; other < s; other++)
      g_assert_cmpstr (field_subject_name (s), !=, field_subject_name (other));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mount-field/kernel", test_it_is_what_the_kernel_says);
  g_test_add_func ("/mount-field/again", test_only_what_matters_is_solved_again);
  g_test_add_func ("/mount-field/lines/values", test_lines_keep_their_values);
  g_test_add_func ("/mount-field/lines/gaps", test_lines_end_at_gaps);
  g_test_add_func ("/mount-field/lines/none", test_nothing_assembles_nothing_is_drawn);
  g_test_add_func ("/mount-field/lines/set-m", test_set_m_mount_moves);
  g_test_add_func ("/mount-field/lines/set-p", test_flat_corner);
  g_test_add_func ("/mount-field/lines/added", test_levels_are_added);
  g_test_add_func ("/mount-field/directions", test_directions_of_the_trade);
  g_test_add_func ("/mount-field/trace/ring", test_a_ring_is_closed);
  g_test_add_func ("/mount-field/trace/saddle", test_a_saddle_is_decided_by_its_pass);
  g_test_add_func ("/mount-field/trace/bends", test_bent_lines_are_followed);
  g_test_add_func ("/mount-field/trace/gaps", test_gaps_are_left_out);
  g_test_add_func ("/mount-field/trace/places", test_levels_on_places);
  g_test_add_func ("/mount-field/bands", test_bands);
  g_test_add_func ("/mount-field/names", test_subjects_have_names);
  return g_test_run ();
}
