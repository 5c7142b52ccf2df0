/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The function runs nearly straight from place to place, so that a guess by interpolation
 * mostly needs one solution to be proved. */

#include "model/mount-field/mount-field-level.h"

#include <math.h>

#define MOST_SOLUTIONS 40
#define MOST_CORRECTIONS 8
#define MOST_HALVINGS 8
#define DIFFERENCE 1e-4 /* of a piece's length, for the slope */

MountOffset
field_between (MountOffset a, MountOffset b, double part)
{
  return (MountOffset){ a.inboard + part * (b.inboard - a.inboard),
                        a.rearward + part * (b.rearward - a.rearward), a.up };
}

double
field_distance (MountOffset a, MountOffset b)
{
  return hypot (b.inboard - a.inboard, b.rearward - a.rearward);
}

double
field_level_excess (const FieldLevel *level, MountOffset at)
{
  return level->surface->exact (level->surface->data, at) - level->value;
}

/* Of the cubic through the four values about the edge, or of the straight line where
 * there are no four, from its first end. */
static double
guess_crossing (const FieldLevel *level, const FieldEdge *e)
{
  const double *v = &level->surface->values[e->from];
  const double a = v[0] - level->value, b = v[e->stride] - level->value;
  double part = a / (a - b);

  if (e->place == 0 || e->place + 2 >= e->n)
    return part;
  const double before = v[-(ptrdiff_t) e->stride] - level->value,
               after = v[2 * e->stride] - level->value;
  if (!isfinite (before) || !isfinite (after))
    return part;
  for (int i = 0; i < 3; i++) {
    const double p = part, q = 1.0 - p;
    const double cubic =
        q * a + p * b -
        p * q * ((1.0 + q) * (before - 2.0 * a + b) + (1.0 + p) * (a - 2.0 * b + after)) /
            6.0;

    part = CLAMP (part - cubic / (b - a), 0.0, 1.0);
  }
  return part;
}

/* False position in its Illinois form, from the guess on. */
gboolean
field_level_cross (const FieldLevel *level,
                   const FieldEdge *e,
                   MountOffset p,
                   MountOffset q,
                   MountOffset *at)
{
  const double *v = &level->surface->values[e->from];
  double low = 0.0, high = 1.0, at_low = v[0] - level->value,
         at_high = v[e->stride] - level->value;
  const double near = fmin (FIELD_LEVEL_PART * level->tolerance,
                            FIELD_LEVEL_EYE * fabs (at_high - at_low));
  double part = guess_crossing (level, e);
  int side = 0;

  for (int i = 0; i < MOST_SOLUTIONS; i++) {
    *at = field_between (p, q, part);
    const double excess = field_level_excess (level, *at);

    if (fabs (excess) <= near)
      return TRUE;
    if (isnan (excess))
      return FALSE;
    if ((excess > 0.0) == (at_low > 0.0)) {
      low = part;
      at_low = excess;
      at_high = side < 0 ? at_high / 2.0 : at_high;
      side = -1;
    } else {
      high = part;
      at_high = excess;
      at_low = side > 0 ? at_low / 2.0 : at_low;
      side = 1;
    }
    part = low + (high - low) * at_low / (at_low - at_high);
  }
  return FALSE;
}

/* The steepest way up at @at where the function is @excess above the level, mm for each
 * unit of it; by differences of its exact values. */
static MountOffset
steepest_way (const FieldLevel *level, MountOffset at, double excess, double step)
{
  const MountOffset inward = { at.inboard + step, at.rearward, at.up },
                    backward = { at.inboard, at.rearward + step, at.up };
  const double in = (field_level_excess (level, inward) - excess) / step,
               back = (field_level_excess (level, backward) - excess) / step;
  const double square = in * in + back * back;

  return (MountOffset){ in / square, back / square, 0.0 };
}

/* Moves @at, with @excess there, onto the level, by Newton's method on the steepest way
 * and from there on by secants along it. */
static gboolean
correct (
    const FieldLevel *level, double excess, double near, double reach, MountOffset *at)
{
  const MountOffset from = *at;
  const MountOffset way = steepest_way (level, from, excess, DIFFERENCE * reach);
  double part = -excess, before = 0.0, excess_before = excess;

  for (int i = 0; i < MOST_CORRECTIONS; i++) {
    *at = (MountOffset){ from.inboard + part * way.inboard,
                         from.rearward + part * way.rearward, from.up };
    if (!(field_distance (from, *at) <= reach))
      return FALSE;
    excess = field_level_excess (level, *at);
    if (fabs (excess) <= near)
      return TRUE;
    const double next = part - excess * (part - before) / (excess - excess_before);
    before = part;
    excess_before = excess;
    part = next;
  }
  return FALSE;
}

static gboolean
bend (const FieldLevel *level,
      MountOffset a,
      MountOffset b,
      double near,
      int halvings,
      GArray *bends)
{
  const MountOffset straight = field_between (a, b, 0.5);
  const double excess = field_level_excess (level, straight),
               length = field_distance (a, b);
  const guint n_bends = bends->len;
  MountOffset middle = straight;

  if (fabs (excess) <= near || length < FIELD_SAME_PLACE)
    return TRUE;
  if (halvings > 0 && correct (level, excess, near, length, &middle) &&
      bend (level, a, middle, near, halvings - 1, bends)) {
    g_array_append_val (bends, middle);
    if (bend (level, middle, b, near, halvings - 1, bends))
      return TRUE;
  }
  g_array_set_size (bends, n_bends);
  return fabs (excess) <= FIELD_LEVEL_PART * level->tolerance;
}

gboolean
field_level_bend (
    const FieldLevel *level, MountOffset a, MountOffset b, double near, GArray *bends)
{
  return bend (level, a, b, near, MOST_HALVINGS, bends);
}
