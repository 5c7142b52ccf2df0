/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-search.h"
#include "model/choice/choice-descent.h"

#include <math.h>

#define SLOT_STARTS 5
#define CIRCLE_STARTS 24
#define BOLT_STARTS 3
#define MOST_DESCENTS 3

/* Even over the reach, ends included; index = Σ iₖ strideₖ. */
typedef struct {
  const ChoiceReach *reach;
  guint n[MOST_WAYS], stride[MOST_WAYS];
  guint n_starts;
  Candidate *starts;
} Starts;

static guint
n_starts_of (const ChoiceReach *reach, guint way)
{
  if (reach->most[way] <= reach->least[way])
    return 1;
  if (way >= reach->n_plate_ways)
    return BOLT_STARTS;
  return reach->plate->kind == PLATE_ECCENTRIC ? CIRCLE_STARTS : SLOT_STARTS;
}

static void
place_start (const Starts *starts, guint index, double *x)
{
  const ChoiceReach *reach = starts->reach;

  for (guint k = 0; k < reach->n_ways; k++) {
    const guint i = index / starts->stride[k] % starts->n[k];

    x[k] = reach->least[k];
    if (starts->n[k] > 1)
      x[k] += (reach->most[k] - reach->least[k]) * i / (starts->n[k] - 1);
  }
}

static Starts
lay_out_starts (const ChoiceReach *reach)
{
  Starts starts = { .reach = reach, .n_starts = 1 };

  for (guint k = 0; k < reach->n_ways; k++) {
    starts.n[k] = n_starts_of (reach, k);
    starts.stride[k] = starts.n_starts;
    starts.n_starts *= starts.n[k];
  }
  starts.starts = g_new (Candidate, starts.n_starts);
  for (guint i = 0; i < starts.n_starts; i++) {
    double x[MOST_WAYS] = { 0 };

    place_start (&starts, i, x);
    starts.starts[i] = choice_candidate (reach, x);
  }
  return starts;
}

/* No neighbour along any way is better. */
static gboolean
is_local_best (const Starts *starts, guint index)
{
  const Candidate *here = &starts->starts[index];

  for (guint k = 0; k < starts->reach->n_ways; k++) {
    const guint i = index / starts->stride[k] % starts->n[k];

    if (i > 0 && choice_candidate_compare (here - starts->stride[k], here) < 0)
      return FALSE;
    if (i + 1 < starts->n[k] &&
        choice_candidate_compare (here + starts->stride[k], here) < 0)
      return FALSE;
  }
  return isfinite (here->excess);
}

static int
compare_starts (gconstpointer a, gconstpointer b)
{
  return choice_candidate_compare (*(const Candidate *const *) a,
                                   *(const Candidate *const *) b);
}

/* The best that is found from the starts which promise most. */
static Candidate
best_of_reach (const ChoiceReach *reach)
{
  Starts starts = lay_out_starts (reach);
  g_autoptr (GPtrArray) promising = g_ptr_array_new ();
  Candidate best = starts.starts[0];

  for (guint i = 0; i < starts.n_starts; i++)
    if (is_local_best (&starts, i))
      g_ptr_array_add (promising, &starts.starts[i]);
  g_ptr_array_sort (promising, compare_starts);
  for (guint i = 0; i < MIN (promising->len, MOST_DESCENTS); i++) {
    const Candidate *start = g_ptr_array_index (promising, i);
    const Candidate found = reach->n_ways > 0 ? choice_descend (reach, *start) : *start;
    const Candidate *better =
        choice_candidate_compare (&found, start) <= 0 ? &found : start;

    if (choice_candidate_compare (better, &best) < 0)
      best = *better;
  }
  g_free (starts.starts);
  return best;
}

typedef struct {
  ChoicePlace place;
  gboolean is_thought_within; /* all limits, by what was looked at */
} Found;

/* A plate with a list of places is looked at place by place. */
static Found
search_with (const ChoiceCorner *corner,
             const Plate *plate,
             gboolean is_swapped,
             gboolean has_bolt,
             gboolean is_through_travel)
{
  const guint n_places = MAX (plate_n_places (plate), 1);
  PlateSetting best_setting = { .is_swapped = is_swapped };
  double best_bolt = 0.0;
  Candidate best = { .excess = INFINITY, .cost = INFINITY, .tie = INFINITY };

  for (guint i = 0; i < n_places; i++) {
    const PlateSetting place = { .place = i, .is_swapped = is_swapped };
    g_auto (ChoiceReach) reach = choice_reach_of (corner, plate, place, has_bolt);

    reach.is_through_travel = is_through_travel;
    const Candidate here = best_of_reach (&reach);
    if (i == 0 || choice_candidate_compare (&here, &best) < 0) {
      best = here;
      best_setting = choice_reach_setting (&reach, here.x, &best_bolt);
    }
  }
  return (Found){ choice_corner_place (corner, plate, best_setting, best_bolt),
                  best.excess == 0.0 };
}

/* First without the travel where nothing asks for it; if then something in the travel
 * stops the answer all the same, with it. */
ChoicePlace
choice_search (const ChoiceCorner *corner,
               const Plate *plate,
               gboolean is_swapped,
               gboolean has_bolt)
{
  const guint seen_in_travel = CHOICE_NOT_ASSEMBLED | CHOICE_TYRE_TOO_NEAR;
  const gboolean needs_travel = choice_needs_travel (corner, plate);
  Found found = search_with (corner, plate, is_swapped, has_bolt, needs_travel);

  if (!needs_travel && found.is_thought_within && (found.place.faults & seen_in_travel))
    found = search_with (corner, plate, is_swapped, has_bolt, TRUE);
  return found.place;
}
