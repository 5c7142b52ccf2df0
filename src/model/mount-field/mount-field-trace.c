/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Corners and edges of a mesh:
 *
 *      3 ── 2 ── 2      rearward
 *      │         │         ↑
 *      3         1         └→ inboard
 *      │         │
 *      0 ── 0 ── 1
 *
 * Corner n adds 2ⁿ to the code of a mesh where its value is above the level. */

#include "model/mount-field/mount-field-trace.h"

#include "model/mount-field/mount-field-level.h"

#include <math.h>

#define LEAST_NEAR 0.02 /* of the tolerance */
/* Of the tolerance: what a level is lowered by, so that a place that is right on it, or a
 * field that is flat but for rounding, lies above. */
#define LEAN 1e-3

typedef enum {
  CROSSING_UNKNOWN,
  CROSSING_FOUND,
  CROSSING_LOST /* the corner cannot be assembled somewhere on the edge */
} CrossingState;

typedef struct {
  MountOffset at;
  CrossingState state;
  gint leaves; /* the segment that starts here, or −1 */
  gboolean is_entered;
} Crossing;

/* Across one mesh. */
typedef struct {
  guint from, to; /* edges */
  guint first_bend, n_bends;
  gboolean is_walked;
} Segment;

struct FieldScratch {
  double *values;
  size_t n_values;
  Crossing *crossings; /* of all edges, those along inboard first */
  size_t n_crossings;
  GArray *crossed;          /* of guint: those that are not clear */
  GArray *segments, *bends; /* of Segment; of MountOffset */
};

typedef struct {
  FieldLevel level; /* as leaned */
  const MountGrid *grid;
  FieldLines *lines;
  FieldScratch *scratch;
} Tracer;

FieldScratch *
field_scratch_new (void)
{
  FieldScratch *scratch = g_new0 (FieldScratch, 1);

  scratch->crossed = g_array_new (FALSE, FALSE, sizeof (guint));
  scratch->segments = g_array_new (FALSE, FALSE, sizeof (Segment));
  scratch->bends = g_array_new (FALSE, FALSE, sizeof (MountOffset));
  return scratch;
}

void
field_scratch_free (FieldScratch *scratch)
{
  g_free (scratch->values);
  g_free (scratch->crossings);
  g_array_unref (scratch->crossed);
  g_array_unref (scratch->segments);
  g_array_unref (scratch->bends);
  g_free (scratch);
}

double *
field_scratch_values (FieldScratch *scratch, size_t n)
{
  if (n > scratch->n_values) {
    g_free (scratch->values);
    scratch->values = g_new (double, n);
    scratch->n_values = n;
  }
  return scratch->values;
}

static size_t
place_index (const MountGrid *grid, size_t i, size_t r)
{
  return r * grid->n_inboard + i;
}

/* Of the edge of mesh (i, r). */
static guint
edge_id (const MountGrid *grid, size_t i, size_t r, int edge)
{
  const size_t n = grid->n_inboard * grid->n_rearward;
  const size_t ids[] = { place_index (grid, i, r), n + place_index (grid, i + 1, r),
                         place_index (grid, i, r + 1), n + place_index (grid, i, r) };

  return (guint) ids[edge];
}

static const Crossing *
cross_edge (const Tracer *t, guint id)
{
  const MountGrid *grid = t->grid;
  const size_t n = grid->n_inboard * grid->n_rearward;
  const gboolean is_column = id >= n;
  const size_t from = id - (is_column ? n : 0);
  const size_t i = from % grid->n_inboard, r = from / grid->n_inboard;
  const FieldEdge edge = is_column
                             ? (FieldEdge){ from, grid->n_inboard, r, grid->n_rearward }
                             : (FieldEdge){ from, 1, i, grid->n_inboard };
  Crossing *crossing = &t->scratch->crossings[id];

  if (crossing->state != CROSSING_UNKNOWN)
    return crossing;
  g_array_append_val (t->scratch->crossed, id);
  crossing->state =
      field_level_cross (&t->level, &edge, mount_grid_at (grid, i, r),
                         mount_grid_at (grid, i + !is_column, r + is_column),
                         &crossing->at)
          ? CROSSING_FOUND
          : CROSSING_LOST;
  return crossing;
}

typedef struct {
  const Tracer *t;
  size_t i, r; /* of its corner 0 */
} Mesh;

/* What the function changes by over a part of the mesh that no eye sees. */
static double
eye_tolerance (const Mesh *mesh)
{
  const FieldSurface *surface = mesh->t->level.surface;
  const double *low = &surface->values[place_index (mesh->t->grid, mesh->i, mesh->r)],
               *high = low + mesh->t->grid->n_inboard;
  const double in = (low[1] + high[1] - low[0] - high[0]) / 2.0,
               back = (high[0] + high[1] - low[0] - low[1]) / 2.0;
  const double tolerance = FIELD_LEVEL_PART * mesh->t->level.tolerance;

  return CLAMP (FIELD_LEVEL_EYE * hypot (in, back), LEAST_NEAR * tolerance, tolerance);
}

/* The largest second difference of the values about the mesh along one direction: along
 * rows with @stride 1, along columns with a row's length. @place and @n as in FieldEdge.
 * Not finite beside a gap. */
static double
largest_bend (const Mesh *mesh, size_t stride, size_t across, size_t place, size_t n)
{
  const double *values = mesh->t->level.surface->values +
                         place_index (mesh->t->grid, mesh->i, mesh->r) - place * stride;
  double largest = 0.0;

  for (size_t end = 0; end <= 1; end++)
    for (size_t side = 0; side <= 1; side++) {
      const double *v = values + CLAMP (place + end, 1, n - 2) * stride + side * across;
      const double bend = fabs (v[-(ptrdiff_t) stride] - 2.0 * v[0] + v[stride]);

      if (bend > largest || isnan (bend))
        largest = bend;
    }
  return largest;
}

/* Whether the way from @a to @b is so straight that nothing has to be solved to know: the
 * bilinear function through the corners is off by an eighth of the second differences of
 * each direction; twice that is granted to it. */
static gboolean
is_surely_straight (const Mesh *mesh, MountOffset a, MountOffset b, double near)
{
  const MountGrid *g = mesh->t->grid;
  const double *low = &mesh->t->level.surface->values[place_index (g, mesh->i, mesh->r)],
               *high = low + g->n_inboard;
  const MountOffset p = mount_grid_at (g, mesh->i, mesh->r),
                    q = mount_grid_at (g, mesh->i + 1, mesh->r + 1),
                    m = field_between (a, b, 0.5);
  const double u = (m.inboard - p.inboard) / (q.inboard - p.inboard),
               w = (m.rearward - p.rearward) / (q.rearward - p.rearward);
  const double value = (1.0 - w) * ((1.0 - u) * low[0] + u * low[1]) +
                       w * ((1.0 - u) * high[0] + u * high[1]);
  const double bends = largest_bend (mesh, 1, g->n_inboard, mesh->i, g->n_inboard) +
                       largest_bend (mesh, g->n_inboard, 1, mesh->r, g->n_rearward);

  return fabs (value - mesh->t->level.value) + bends / 4.0 <= near;
}

static void
add_segment (const Mesh *mesh, const int ends[2])
{
  const Tracer *t = mesh->t;
  const double near = eye_tolerance (mesh);
  GArray *segments = t->scratch->segments, *bends = t->scratch->bends;
  Segment segment = { edge_id (t->grid, mesh->i, mesh->r, ends[0]),
                      edge_id (t->grid, mesh->i, mesh->r, ends[1]), bends->len, 0,
                      FALSE };
  const Crossing *from = cross_edge (t, segment.from), *to = cross_edge (t, segment.to);

  if (from->state == CROSSING_LOST || to->state == CROSSING_LOST)
    return;
  if (!is_surely_straight (mesh, from->at, to->at, near) &&
      !field_level_bend (&t->level, from->at, to->at, near, bends)) {
    g_array_set_size (bends, segment.first_bend);
    return;
  }
  segment.n_bends = bends->len - segment.first_bend;
  t->scratch->crossings[segment.from].leaves = (gint) segments->len;
  t->scratch->crossings[segment.to].is_entered = TRUE;
  g_array_append_val (segments, segment);
}

/* From edge to edge with what is above to the left. */
static const int segments_of_code[16][2] = {
  [1] = { 0, 3 },  [2] = { 1, 0 },  [3] = { 1, 3 },  [4] = { 2, 1 },
  [6] = { 2, 0 },  [7] = { 2, 3 },  [8] = { 3, 2 },  [9] = { 0, 2 },
  [11] = { 1, 2 }, [12] = { 3, 1 }, [13] = { 0, 1 }, [14] = { 3, 0 },
};

/* A saddle, code 5 or 10: the height of its pass says whether the high corners hang
 * together, so that the low ones are cut off, or the other way round. The pass is that of
 * the bilinear function through the corners; its height is exact. */
static void
add_saddle (const Mesh *mesh, const double corners[4], int code)
{
  static const int parts[2][2][2] = { { { 1, 4 }, { 7, 13 } }, { { 2, 8 }, { 11, 14 } } };
  const MountGrid *grid = mesh->t->grid;
  const MountOffset from = mount_grid_at (grid, mesh->i, mesh->r),
                    to = mount_grid_at (grid, mesh->i + 1, mesh->r + 1);
  const double twist = corners[0] + corners[2] - corners[1] - corners[3];
  const double in = (corners[0] - corners[3]) / twist,
               back = (corners[0] - corners[1]) / twist;
  const MountOffset pass = { from.inboard + in * (to.inboard - from.inboard),
                             from.rearward + back * (to.rearward - from.rearward),
                             from.up };
  const double excess = field_level_excess (&mesh->t->level, pass);
  const int *codes = parts[code == 10][excess > 0.0];

  if (isnan (excess))
    return;
  add_segment (mesh, segments_of_code[codes[0]]);
  add_segment (mesh, segments_of_code[codes[1]]);
}

static void
trace_mesh (const Mesh *mesh)
{
  const Tracer *t = mesh->t;
  const double *low = &t->level.surface->values[place_index (t->grid, mesh->i, mesh->r)],
               *high = low + t->grid->n_inboard;
  const double corners[4] = { low[0], low[1], high[1], high[0] };
  int code = 0;

  for (int c = 0; c < 4; c++) {
    if (!isfinite (corners[c]))
      return;
    code |= (corners[c] > t->level.value) << c;
  }
  if (code == 5 || code == 10)
    add_saddle (mesh, corners, code);
  else if (code != 0 && code != 15)
    add_segment (mesh, segments_of_code[code]);
}

static void
add_point (const Tracer *t, FieldLine *line, MountOffset at)
{
  GArray *points = t->lines->points;

  if (line->n_points > 0 &&
      field_distance (g_array_index (points, MountOffset, points->len - 1), at) <
          FIELD_SAME_PLACE)
    return;
  g_array_append_val (points, at);
  line->n_points++;
}

/* Walks from segment to segment as far as they go. */
static void
join_from (const Tracer *t, Segment *segment, double level, gboolean is_closed)
{
  const FieldScratch *s = t->scratch;
  FieldLine line = { level, t->lines->points->len, 0, is_closed };

  add_point (t, &line, s->crossings[segment->from].at);
  while (!segment->is_walked) {
    segment->is_walked = TRUE;
    for (guint i = 0; i < segment->n_bends; i++)
      add_point (t, &line,
                 g_array_index (s->bends, MountOffset, segment->first_bend + i));
    add_point (t, &line, s->crossings[segment->to].at);
    const gint next = s->crossings[segment->to].leaves;
    if (next >= 0)
      segment = &g_array_index (s->segments, Segment, next);
  }
  if (is_closed &&
      field_distance (g_array_index (t->lines->points, MountOffset, line.first),
                      g_array_index (t->lines->points, MountOffset,
                                     line.first + line.n_points - 1)) < FIELD_SAME_PLACE)
    line.n_points--;
  if (line.n_points < (is_closed ? 3 : 2))
    line.n_points = 0;
  g_array_set_size (t->lines->points, line.first + line.n_points);
  if (line.n_points > 0)
    g_array_append_val (t->lines->lines, line);
}

/* First the lines that have a beginning; what is left then goes round. */
static void
join_segments (const Tracer *t, double level)
{
  const FieldScratch *s = t->scratch;

  for (int round = 0; round < 2; round++)
    for (guint i = 0; i < s->segments->len; i++) {
      Segment *segment = &g_array_index (s->segments, Segment, i);

      if (!segment->is_walked && (round == 1 || !s->crossings[segment->from].is_entered))
        join_from (t, segment, level, round == 1);
    }
}

static const Crossing no_crossing = { .state = CROSSING_UNKNOWN, .leaves = -1 };

/* All that are there are clear between two levels. */
static void
make_crossings (FieldScratch *scratch, const MountGrid *grid)
{
  const size_t n = 2 * grid->n_inboard * grid->n_rearward;

  if (n <= scratch->n_crossings)
    return;
  g_free (scratch->crossings);
  scratch->crossings = g_new (Crossing, n);
  scratch->n_crossings = n;
  for (size_t i = 0; i < n; i++)
    scratch->crossings[i] = no_crossing;
}

static void
clear (FieldScratch *scratch)
{
  for (guint i = 0; i < scratch->crossed->len; i++)
    scratch->crossings[g_array_index (scratch->crossed, guint, i)] = no_crossing;
  g_array_set_size (scratch->crossed, 0);
  g_array_set_size (scratch->segments, 0);
  g_array_set_size (scratch->bends, 0);
}

void
field_lines_trace_surface (FieldLines *lines, const FieldSurface *surface, double level)
{
  g_return_if_fail (lines->step > 0.0);
  const double tolerance = FIELD_TOLERANCE * lines->step;
  const MountGrid *grid = surface->grid;
  const Tracer tracer = {
    { surface, level - LEAN * tolerance, tolerance }, grid, lines, lines->scratch
  };

  make_crossings (lines->scratch, grid);
  for (size_t r = 0; r + 1 < grid->n_rearward; r++)
    for (size_t i = 0; i + 1 < grid->n_inboard; i++)
      trace_mesh (&(Mesh){ &tracer, i, r });
  join_segments (&tracer, level);
  clear (lines->scratch);
}
