/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "Set it back to height": a bar's clamp angle in closed form, as its torque is linear in
 * it; a coil's perch by a bracketed root. */

#include "model/spring/spring-study-private.h"
#include "model/study/bracketed-root.h"

#define DEGREE (G_PI / 180.0)
#define SHORTEST 0.01 /* a coil whose solid length is not known, of its free one */
#define MOST_DROPS 50

typedef struct {
  SpringLaw law; /* a copy, its perch tried */
  const Corner *corner;
  const Pose *pose;
  double weight;
} Trial;

static void
try_perch (Trial *trial, double perch, SpringStation *station)
{
  trial->law.places.seats.perch = perch;
  spring_law_carry (&trial->law, trial->corner, trial->pose, station);
}

/* Its slope leaves out that an offset coil changes its ratio with the perch, so that
 * Newton's method converges a little slower. */
static double
misfit_of_perch (double perch, double *slope, void *data)
{
  Trial *trial = data;
  SpringStation s;

  try_perch (trial, perch, &s);
  *slope =
      spring_law_share (&trial->law, trial->law.total_free + s.paths.coil.place).rate *
      s.paths.coil.ratio;
  return s.load - trial->weight;
}

/* From where the coil is slack to where it is bound: the coil's length changes by no more
 * than its perch does. */
static gboolean
raise_perch (Trial *trial, double *value)
{
  const SpringLaw *law = &trial->law;
  const double most = isfinite (law->bound_squash) ? law->bound_squash
                                                   : (1.0 - SHORTEST) * law->total_free;
  double low = law->places.seats.perch;
  SpringStation s;

  try_perch (trial, low, &s);
  double squash = law->total_free + s.paths.coil.place;
  const double high = low + (most - squash);

  for (int i = 0; i < MOST_DROPS && squash > 0.0; i++) {
    low -= squash + 1.0;
    try_perch (trial, low, &s);
    squash = law->total_free + s.paths.coil.place;
  }
  if (!(low < high))
    return FALSE;
  *value = bracketed_root (misfit_of_perch, trial, low, high);
  if (isnan (*value))
    return FALSE;
  try_perch (trial, *value, &s);
  return s.coil_force > 0.0 && spring_law_blocks (law, trial->pose->travel, &s) == 0;
}

static gboolean
raise_clamp (const Trial *trial, double *value)
{
  SpringStation s;

  spring_law_carry (&trial->law, trial->corner, trial->pose, &s);
  const double per_turn = trial->law.bar_rate * s.paths.bar.ratio;

  *value = (trial->law.clamp_angle + (trial->weight - s.load) / per_turn) / DEGREE;
  return isfinite (*value) &&
         spring_law_blocks (&trial->law, trial->pose->travel, &s) == 0;
}

gboolean
spring_study_height_cure (
    const SpringStudy *self, guint setup, double travel, RaiseBy by, double *value)
{
  const SpringCorner *corner = &self->setups[setup];
  Pose pose;
  Trial trial = { *corner->law, &corner->corner->corner, &pose, self->corner_weight };
  const gboolean has_it =
      by == RAISE_PERCH ? trial.law.has_coil : trial.law.bar_rate > 0.0;

  *value = NAN;
  if (!has_it || pose_at_travel (trial.corner, travel, 0.0, NULL, &pose) != POSE_OK)
    return FALSE;
  const gboolean is_found =
      by == RAISE_PERCH ? raise_perch (&trial, value) : raise_clamp (&trial, value);

  if (!is_found)
    *value = NAN;
  return is_found;
}
