/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long one solved position takes, and how much longer the root finder needs for the
 * same corner from the same starting points to the same tolerance. Prints, and never
 * fails on time. All times are medians, in µs for one position. */

#include "check-data.h"
#include "raw-measures.h"

#include "kernel/clearance.h"
#include "kernel/mount-place.h"
#include "kernel/spring-path.h"
#include "kernel/statics.h"

#include <gsl/gsl_errno.h>

#include <locale.h>

#define N_STATIONS 161
#define MIDDLE (N_STATIONS / 2)
#define ROUNDS 41
#define N_SIDE 41
#define N_PLACES (N_SIDE * N_SIDE) /* of the grid over the tower */
#define REPEATS 20                 /* of what takes the kernel a sweep's time */
#define TOLERANCE 1e-11            /* mm: where the kernel stops too */

typedef struct {
  Corner corner;
  RawCorner raw;
  Station stations[N_STATIONS];
  RawPose poses[N_STATIONS];
  Adjustment setup;
  MountPlace places[N_PLACES];
  double residual; /* the largest that the root finder left */
  double sum;      /* of results, so that none is left out */
} Bench;

static const SweepRange range = { -80.0, 80.0, N_STATIONS };

static void
sweep (Bench *b)
{
  for (int i = 0; i < REPEATS; i++)
    sweep_travel (&b->corner, range, 0.0, b->stations);
}

static void
start_cold (Bench *b)
{
  for (int i = 0; i < REPEATS; i++)
    for (size_t k = 0; k < N_STATIONS; k++)
      station_solve (&b->corner, sweep_place (range, k), 0.0, &b->stations[k]);
}

static void
measure (Bench *b)
{
  for (int i = 0; i < REPEATS; i++)
    for (size_t k = 0; k < N_STATIONS; k++)
      pose_measure (&b->corner, &b->stations[k].pose, &b->stations[k].measures);
}

static const MountGrid tower = { -10.0, 30.0, -20.0, 20.0, 0.0, N_SIDE, N_SIDE };

static void
solve_grid (Bench *b)
{
  b->sum += (double) mount_grid_solve (&set_m, &b->setup, &tower, 0, N_SIDE, b->places);
}

static void
solve_places (Bench *b)
{
  for (size_t i = 0; i < N_PLACES; i++)
    mount_place_solve (&set_m, &b->setup, mount_grid_at (&tower, i % N_SIDE, i / N_SIDE),
                       &b->places[i]);
}

static void
balance (Bench *b)
{
  const CornerLoad load = { .contact = { -500.0, -2000.0, 3800.0 } };
  JointForces forces;

  for (int i = 0; i < REPEATS; i++)
    for (size_t k = 0; k < N_STATIONS; k++) {
      const Pose *pose = &b->stations[k].pose;
      const SpringHold hold = spring_hold_alone (&b->corner, pose, CARRIED_BY_COIL);

      joint_forces (&b->corner, pose, &load, &hold, &forces);
      b->sum += forces.axial;
    }
}

static void
feel_springs (Bench *b)
{
  static const SpringPlaces places = { .seats = { 60, 45, 8, 3, -5, 11 },
                                       .link_carrier = LINK_ON_STRUT,
                                       .link_point = { -40, 640, 520 } };
  SpringPaths paths;

  for (int i = 0; i < REPEATS; i++)
    for (size_t k = 0; k < N_STATIONS; k++) {
      spring_paths (&b->corner, &b->stations[k].pose, &places, &paths);
      b->sum += paths.coil.bend;
    }
}

static void
find_clearance (Bench *b)
{
  static const TyreShape tyre = { 310.0, 175.0 };
  static const StrutShape strut = { .tube_radius = 25.0,
                                    .tube_bottom = 60.0,
                                    .tube_top = 300.0,
                                    .seat_radius = 70.0,
                                    .seat_height = 180.0,
                                    .spring_radius = 60.0 };

  for (size_t k = 0; k < N_STATIONS; k++) {
    const double length = b->stations[k].measures.value[QUANTITY_STRUT_LENGTH];

    b->sum += tyre_clearance (&b->corner, &tyre, &strut, length).least;
  }
}

static void
find_root (Bench *b, double travel, const RawPose *start, RawPose *pose)
{
  raw_corner_ask (&b->raw, (MountOffset){ 0 }, travel, 0.0);
  b->residual = fmax (b->residual, raw_corner_solve (&b->raw, start, TOLERANCE, pose));
}

/* Outward from the middle, each from the station before, as the kernel sweeps. */
static void
find_roots_onward (Bench *b)
{
  const RawPose home = raw_corner_measured_pose (&b->raw);

  for (int side = -1; side <= 1; side += 2)
    for (int k = side < 0 ? MIDDLE : MIDDLE + 1; k >= 0 && k < N_STATIONS; k += side)
      find_root (b, sweep_place (range, (size_t) k),
                 k == MIDDLE ? &home : &b->poses[k - side], &b->poses[k]);
}

static void
find_roots_cold (Bench *b)
{
  const RawPose home = raw_corner_measured_pose (&b->raw);

  for (size_t k = 0; k < N_STATIONS; k++)
    find_root (b, sweep_place (range, k), &home, &b->poses[k]);
}

/* Every quantity and rate of one position: its neighbours' roots too, and differences. */
static void
find_roots_for_rates (Bench *b)
{
  for (size_t k = 0; k < N_STATIONS; k++) {
    RawPose row[RAW_ROW], *middle = &row[RAW_REACH];
    const double travel = sweep_place (range, k);

    find_root (b, travel, &b->poses[k == 0 ? 1 : k - 1], middle);
    for (int side = -1; side <= 1; side += 2)
      for (int i = side; abs (i) <= RAW_REACH; i += side)
        find_root (b, travel + i * RAW_STEP, middle + i - side, middle + i);
    b->sum += raw_measures (&b->raw, row).slope[QUANTITY_CAMBER];
  }
}

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
time_of (void (*work) (Bench *), int n, Bench *b)
{
  double times[ROUNDS];

  for (int r = 0; r < ROUNDS; r++) {
    const gint64 start = g_get_monotonic_time ();

    work (b);
    times[r] = (double) (g_get_monotonic_time () - start) / n;
  }
  qsort (times, ROUNDS, sizeof *times, compare_doubles);
  return times[ROUNDS / 2];
}

/* What choosing a mount asks for, beside @cold: one station by itself in this run. */
static void
print_mount (Bench *b, double cold)
{
  static const char *const modes[] = { "toe as moved", "toe reset" };

  for (ToeMode toe = TOE_AS_MOVED; toe <= TOE_RESET; toe++) {
    b->setup = (Adjustment){ .lowering = 30.0, .toe = toe };

    const double grid = time_of (solve_grid, N_PLACES, b);
    const double alone = time_of (solve_places, N_PLACES, b);

    g_print ("%s, one place of a grid of %d x %d: %.3f µs (wanted: 2 or less), %.2f of a "
             "station from a cold start; a place by itself %.3f µs; the grid %.2f ms\n",
             modes[toe], N_SIDE, N_SIDE, grid, grid / cold, alone,
             grid * N_PLACES / 1000.0);
  }
  g_print ("room to the tyre: %.2f µs\n", time_of (find_clearance, N_STATIONS, b));
}

/* What springs and loads ask for, beside @whole: one position with every quantity. */
static void
print_loads (Bench *b, double whole)
{
  const double paths = time_of (feel_springs, REPEATS * N_STATIONS, b);

  g_print ("what every spring feels, ratios and their rates: %.3f µs, %.2f of a position "
           "with every quantity and rate; forces at every joint: %.3f µs\n",
           paths, paths / whole, time_of (balance, REPEATS * N_STATIONS, b));
}

int
main (void)
{
  Bench *b = g_new0 (Bench, 1);

  setlocale (LC_CTYPE, "C.UTF-8");
  gsl_set_error_handler_off ();
  b->corner = check_assemble (&set_m, (Adjustment){ 0 });
  raw_corner_init (&set_m, &b->raw);

  const double whole = time_of (sweep, REPEATS * N_STATIONS, b);
  const double place = whole - time_of (measure, REPEATS * N_STATIONS, b);
  const double cold = time_of (start_cold, REPEATS * N_STATIONS, b);
  const double root = time_of (find_roots_onward, N_STATIONS, b);
  const double root_cold = time_of (find_roots_cold, N_STATIONS, b);
  const double rates = time_of (find_roots_for_rates, N_STATIONS, b);

  g_print ("%s; set M, sweep of %d\n", BENCH_BUILD, N_STATIONS);
  g_print ("kernel, one position with every quantity and rate: %.3f µs (wanted: 1 or "
           "less), of which the position %.3f µs; from a cold start %.3f µs\n",
           whole, place, cold);
  g_print ("root finder, the position alone: %.2f µs, %.1f times the kernel's position "
           "(wanted: 30 or more), %.1f times all of it\n",
           root, root / place, root / whole);
  g_print ("root finder, the position alone from a cold start: %.2f µs, %.1f times the "
           "kernel's cold start with every quantity and rate\n",
           root_cold, root_cold / cold);
  g_print ("root finder, one position with every quantity and rate by differences: "
           "%.2f µs for its %d solutions, %.1f times the kernel\n",
           rates, RAW_ROW, rates / whole);
  print_mount (b, cold);
  print_loads (b, whole);
  g_print ("largest residual it left: %.1e mm\n", b->residual);
  raw_corner_clear (&b->raw);
  g_free (b);
  return 0;
}
