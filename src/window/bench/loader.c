/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/bench/loader.h"

#include <math.h>

/* mm: where the wheel was put and where it stands are the same place. */
#define SAME_PLACE 1e-6

struct _SwLoader {
  GObject parent_instance;

  SwBench *bench; /* lives as long as this, and is not held */
  guint load_case;
  SpringMode mode;
  gboolean is_settling;
  LoadStudy *study;

  gboolean is_solved; /* the study, of … */
  guint solution;     /* … this one of the bench, at … */
  double travel;      /* … this travel in hand */
  gboolean is_moving; /* the wheel, by this and not by the user */
  guint n_watchers;
  double left_at; /* travel before this moved the wheel */
};

G_DEFINE_FINAL_TYPE (SwLoader, sw_loader, G_TYPE_OBJECT)

static guint changed;

static double
travel_now (SwLoader *self)
{
  return sw_bench_get_study (self->bench)->travel;
}

/* Those of the car in hand may have become fewer. */
static CarLoadCase
case_in_hand (SwLoader *self)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n =
      car_load_cases (sw_document_get_car (sw_bench_get_document (self->bench)), cases);

  self->load_case = MIN (self->load_case, (guint) n - 1);
  return cases[self->load_case];
}

static void
move_wheel (SwLoader *self)
{
  const JointLoads *loads = load_study_in_hand (self->study);

  if (!loads->is_solved || fabs (loads->travel - travel_now (self)) <= SAME_PLACE)
    return;
  self->is_moving = TRUE;
  sw_bench_set_travel (self->bench, loads->travel);
  self->is_moving = FALSE;
}

/* Setups that the bench has anew settle; the one in hand is looked at where it is. */
static void
solve (SwLoader *self, gboolean may_move)
{
  const CarLoadCase load_case = case_in_hand (self);

  load_study_solve (self->study, sw_bench_get_springs (self->bench), &load_case,
                    self->mode);
  self->is_solved = TRUE;
  self->solution = sw_bench_get_solution (self->bench);
  if (self->is_settling && may_move)
    move_wheel (self);
  self->travel = travel_now (self);
  sw_bench_get_springs (self->bench); /* at this travel */
  if (!self->is_settling ||
      fabs (load_study_in_hand (self->study)->travel - self->travel) > SAME_PLACE)
    load_study_hold (self->study);
}

static gboolean
is_up_to_date (SwLoader *self)
{
  return self->is_solved && self->solution == sw_bench_get_solution (self->bench) &&
         self->travel == travel_now (self);
}

static void
solve_and_tell (SwLoader *self)
{
  solve (self, TRUE);
  g_signal_emit (self, changed, 0);
}

/* Another travel and nothing else: somebody has moved the wheel. */
static void
on_solved_cb (SwLoader *self)
{
  if (self->is_moving || self->n_watchers == 0 || is_up_to_date (self))
    return;
  if (self->is_solved && self->solution == sw_bench_get_solution (self->bench)) {
    self->is_settling = FALSE;
    sw_bench_get_springs (self->bench);
    load_study_hold (self->study);
    self->travel = travel_now (self);
    g_signal_emit (self, changed, 0);
    return;
  }
  solve_and_tell (self);
}

static void
sw_loader_finalize (GObject *object)
{
  load_study_free (SW_LOADER (object)->study);
  G_OBJECT_CLASS (sw_loader_parent_class)->finalize (object);
}

static void
sw_loader_class_init (SwLoaderClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_loader_finalize;
  changed = g_signal_new ("changed", SW_TYPE_LOADER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                          NULL, G_TYPE_NONE, 0);
}

static void
sw_loader_init (SwLoader *self)
{
  self->study = load_study_new ();
  self->mode = SPRING_AS_SET;
  self->is_settling = TRUE;
}

SwLoader *
sw_loader_of (SwBench *bench)
{
  SwLoader *self = g_object_get_data (G_OBJECT (bench), "loader");

  if (self != NULL)
    return self;
  self = g_object_new (SW_TYPE_LOADER, NULL);
  self->bench = bench;
  g_object_set_data_full (G_OBJECT (bench), "loader", self, g_object_unref);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_solved_cb), self,
                           G_CONNECT_SWAPPED);
  return self;
}

SwBench *
sw_loader_get_bench (SwLoader *self)
{
  return self->bench;
}

const LoadStudy *
sw_loader_get_study (SwLoader *self)
{
  if (!is_up_to_date (self))
    solve (self, FALSE);
  return self->study;
}

guint
sw_loader_get_case (SwLoader *self)
{
  case_in_hand (self);
  return self->load_case;
}

void
sw_loader_settle (SwLoader *self)
{
  self->is_settling = TRUE;
  self->is_solved = FALSE;
  solve_and_tell (self);
}

void
sw_loader_set_case (SwLoader *self, guint load_case)
{
  if (load_case == self->load_case)
    return;
  self->load_case = load_case;
  sw_loader_settle (self);
}

SpringMode
sw_loader_get_mode (SwLoader *self)
{
  return self->mode;
}

void
sw_loader_set_mode (SwLoader *self, SpringMode mode)
{
  if (mode == self->mode)
    return;
  self->mode = mode;
  sw_loader_settle (self);
}

gboolean
sw_loader_is_settling (SwLoader *self)
{
  return self->is_settling;
}

void
sw_loader_watch (SwLoader *self)
{
  if (self->n_watchers++ > 0)
    return;
  self->left_at = travel_now (self);
  solve_and_tell (self);
}

/* Where the user moved the wheel himself, it stays there. */
void
sw_loader_unwatch (SwLoader *self)
{
  g_return_if_fail (self->n_watchers > 0);
  if (--self->n_watchers == 0 && self->is_settling)
    sw_bench_set_travel (self->bench, self->left_at);
}

gboolean
sw_loader_is_watched (SwLoader *self)
{
  return self->n_watchers > 0;
}
