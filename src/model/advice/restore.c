/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All four questions become one: a function of the part's size is to be zero, within
 * limits. roll centre, camber gain   f(p) = value(p) − target bump steer f(p) = Σ rᵢ rᵢ',
 * half the exact derivative of the sum of squares, rᵢ the difference of the toe curves at
 * station i; where it rises through zero the sum is least A scan of the limits brackets
 * the zero and Brent's method closes on it. A least-squares solver would know no limits,
 * and a minimiser without f would stop at half the digits. */
#include "model/advice/restore.h"
#include "kernel/sweep.h"
#include "model/study/toe-curve.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <math.h>

#define N_CELLS 64 /* of the scan */
#define MOST_STEPS 100
#define PART_TOLERANCE 1e-12 /* mm */

typedef struct {
  MeasuredCorner measured;
  const CarSetup *setup;
  RestoreGoal goal;
  double target;
  ToeCurveRange range;
  ToeCurve wanted;
} Problem;

/* NAN in all of it where the corner cannot be assembled. */
typedef struct {
  double value;  /* what the answer's before and after tell */
  double misfit; /* f */
  double worth;  /* what is to be small: |f|, or the RMS difference */
} Trial;

RestoreLimits
restore_usual_limits (RestoreGoal goal)
{
  static const RestoreLimits limits[N_RESTORE_GOALS] = {
    [RESTORE_ROLL_CENTRE] = { 0.0, 40.0 },
    [RESTORE_CAMBER_GAIN] = { 0.0, 40.0 },
    [RESTORE_BUMP_STEER_BY_SPACER] = { -30.0, 30.0 },
    [RESTORE_BUMP_STEER_BY_RACK] = { -25.0, 25.0 },
  };

  return limits[goal];
}

static double *
part_of (CarCorrections *corrections, RestoreGoal goal)
{
  switch (goal) {
  case RESTORE_BUMP_STEER_BY_SPACER:
    return &corrections->tie_rod_end_spacer_mm;
  case RESTORE_BUMP_STEER_BY_RACK:
    return &corrections->rack_raise_mm;
  default:
    return &corrections->ball_joint_spacer_mm;
  }
}

void
restore_apply (CarSetup *setup, RestoreGoal goal, double value)
{
  *part_of (&setup->corrections, goal) = value;
}

static gboolean
is_about_bump_steer (RestoreGoal goal)
{
  return goal == RESTORE_BUMP_STEER_BY_SPACER || goal == RESTORE_BUMP_STEER_BY_RACK;
}

static gboolean
assemble (const Problem *problem, const CarSetup *setup, Corner *corner)
{
  const Adjustment adjustment = car_adjustment (setup);

  return corner_assemble (&problem->measured, &adjustment, corner).status == CORNER_OK &&
         corner->start_status == POSE_OK;
}

static double
value_at_height (const Problem *problem, const CarSetup *setup)
{
  const Quantity quantity = problem->goal == RESTORE_ROLL_CENTRE
                                ? QUANTITY_ROLL_CENTRE_HEIGHT
                                : QUANTITY_CAMBER_GAIN;
  Corner corner;
  Station station;

  if (!assemble (problem, setup, &corner))
    return NAN;
  station_solve (&corner, setup->lowering_mm, 0.0, &station);
  return station.measures.value[quantity];
}

static Trial
try_curve (const Problem *problem, const CarSetup *setup)
{
  const TieRodMove move = problem->goal == RESTORE_BUMP_STEER_BY_SPACER
                              ? TIE_ROD_OUTER_DOWN
                              : TIE_ROD_INNER_UP;
  double rates[TOE_CURVE_STATIONS], squares = 0.0, f = 0.0;
  Corner corner;
  ToeCurve curve;

  if (!assemble (problem, setup, &corner) ||
      !toe_curve_solve (&corner, problem->range, &curve))
    return (Trial){ NAN, NAN, NAN };
  toe_curve_rates (&corner, &curve, move, setup->toe == TOE_RESET, rates);
  for (int i = 0; i < TOE_CURVE_STATIONS; i++) {
    const double difference = curve.toe[i] - problem->wanted.toe[i];

    squares += difference * difference;
    f += difference * rates[i];
  }
  const double rms = sqrt (squares / TOE_CURVE_STATIONS);
  return (Trial){ rms, f, rms };
}

static Trial
try_part (const Problem *problem, double part)
{
  CarSetup setup = *problem->setup;

  restore_apply (&setup, problem->goal, part);
  if (is_about_bump_steer (problem->goal))
    return try_curve (problem, &setup);

  const double value = value_at_height (problem, &setup);
  return (Trial){ value, value - problem->target, fabs (value - problem->target) };
}

/* The travel that the setup has left from where it stands, up to @travel_used. */
static ToeCurveRange
range_of_travel (const Car *car, const CarSetup *setup, double travel_used)
{
  const double bump = car->bump_mm - setup->lowering_mm;
  const double droop = car->droop_mm + setup->lowering_mm;

  return (ToeCurveRange){ setup->lowering_mm, -CLAMP (droop, 0.0, travel_used),
                          CLAMP (bump, 0.0, travel_used) };
}

/* What the baseline has. FALSE where it cannot be assembled. */
static gboolean
set_target (Problem *problem, const CarSetup *baseline)
{
  const ToeCurveRange range = { baseline->lowering_mm, problem->range.from,
                                problem->range.to };
  Corner corner;

  if (is_about_bump_steer (problem->goal))
    return assemble (problem, baseline, &corner) &&
           toe_curve_solve (&corner, range, &problem->wanted);
  problem->target = value_at_height (problem, baseline);
  return isfinite (problem->target);
}

static double
grid_part (RestoreLimits limits, int i)
{
  return limits.least + (limits.most - limits.least) * i / N_CELLS;
}

/* The cell of the grid that holds the answer, or −1: for bump steer the one with the
 * least difference, else the one nearest to @present. */
static int
find_cell (const Problem *problem,
           const Trial grid[N_CELLS + 1],
           RestoreLimits limits,
           double present)
{
  const gboolean least_squares = is_about_bump_steer (problem->goal);
  double best = INFINITY;
  int cell = -1;

  for (int i = 0; i < N_CELLS; i++) {
    const double low = grid[i].misfit, high = grid[i + 1].misfit;
    const gboolean rises = low <= 0.0 && high >= 0.0;
    const gboolean falls = low >= 0.0 && high <= 0.0;
    const double score =
        least_squares
            ? fmin (grid[i].worth, grid[i + 1].worth)
            : fabs (present - (grid_part (limits, i) + grid_part (limits, i + 1)) / 2.0);

    if ((rises || (falls && !least_squares)) && score < best) {
      best = score;
      cell = i;
    }
  }
  return cell;
}

static double
misfit_of (double part, void *problem)
{
  return try_part (problem, part).misfit;
}

/* NAN where the corner cannot be assembled in between. */
static double
close_in (Problem *problem, double low, double high)
{
  gsl_function function = { misfit_of, problem };
  gsl_root_fsolver *solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  int status = gsl_root_fsolver_set (solver, &function, low, high);

  for (int i = 0; i < MOST_STEPS && status == GSL_SUCCESS; i++) {
    status = gsl_root_fsolver_iterate (solver);
    if (gsl_root_test_interval (gsl_root_fsolver_x_lower (solver),
                                gsl_root_fsolver_x_upper (solver), PART_TOLERANCE,
                                0.0) == GSL_SUCCESS)
      break;
  }
  const double root = status == GSL_SUCCESS ? gsl_root_fsolver_root (solver) : NAN;
  gsl_root_fsolver_free (solver);
  return root;
}

/* The grid's best, and with it that no answer was found; NAN where nothing assembles. */
static double
nearest_of_grid (const Trial grid[N_CELLS + 1], RestoreLimits limits)
{
  double best = INFINITY, part = NAN;

  for (int i = 0; i <= N_CELLS; i++)
    if (grid[i].worth < best) {
      best = grid[i].worth;
      part = grid_part (limits, i);
    }
  return part;
}

static void
find_part (Problem *problem, RestoreLimits limits, double present, RestoreAnswer *answer)
{
  Trial grid[N_CELLS + 1];

  for (int i = 0; i <= N_CELLS; i++)
    grid[i] = try_part (problem, grid_part (limits, i));

  const int cell = find_cell (problem, grid, limits, present);
  const double nearest = nearest_of_grid (grid, limits);
  const double root = cell < 0 ? NAN
                               : close_in (problem, grid_part (limits, cell),
                                           grid_part (limits, cell + 1));
  const gboolean is_found = isfinite (root) && try_part (problem, root).worth <=
                                                   try_part (problem, nearest).worth;

  answer->value = is_found ? root : nearest;
  if (isnan (answer->value))
    answer->status = RESTORE_NOT_ASSEMBLED;
  else
    answer->status = is_found ? RESTORE_OK : RESTORE_OUT_OF_LIMITS;
}

/* What is right already stays, and a curve of no travel has nothing to say. */
static void
search (Problem *problem, RestoreLimits limits, RestoreAnswer *answer)
{
  CarCorrections corrections = problem->setup->corrections;
  const double present = *part_of (&corrections, problem->goal);
  const Trial now = try_part (problem, present);

  if (isnan (now.value))
    return;
  answer->before = now.value;
  answer->target = problem->target;
  if (now.misfit == 0.0 && present >= limits.least && present <= limits.most) {
    answer->status = RESTORE_OK;
    answer->value = present;
  } else {
    find_part (problem, limits, present, answer);
  }
  answer->after = try_part (problem, answer->value).value;
}

RestoreAnswer
restore_solve (const Car *car,
               guint setup,
               RestoreGoal goal,
               RestoreLimits limits,
               double travel_used)
{
  Problem problem = { .measured = car_measured_corner (car),
                      .setup = car_setup (car, setup),
                      .goal = goal };
  RestoreAnswer answer = { .status = RESTORE_NOT_ASSEMBLED,
                           .value = NAN,
                           .target = NAN,
                           .before = NAN,
                           .after = NAN,
                           .limits = limits };

  g_return_val_if_fail (limits.least <= limits.most && travel_used > 0.0, answer);

  problem.range = range_of_travel (car, problem.setup, travel_used);
  answer.from = problem.range.from;
  answer.to = problem.range.to;
  /* It would end the program where a corner comes apart inside a bracket. */
  gsl_error_handler_t *handler = gsl_set_error_handler_off ();
  if (set_target (&problem, car_setup (car, MIN (car->baseline, car->setups->len - 1))))
    search (&problem, limits, &answer);
  gsl_set_error_handler (handler);
  return answer;
}
