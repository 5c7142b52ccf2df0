/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The places with the least sum of squared moves, in the order of the wishes and a pitch
 * apart: with the label's rank times the pitch taken off, that is isotonic regression,
 * solved by pooling neighbours that stand the wrong way round; the ends are then cut off.
 */

#include "drawing/chart/curve-labels.h"

#include <math.h>

#define MOST CURVE_LABELS_MOST

static unsigned
count_kept (const CurveLabel *labels, unsigned n)
{
  unsigned n_kept = 0;

  for (unsigned i = 0; i < n; i++)
    n_kept += labels[i].is_kept;
  return n_kept;
}

static void
drop_farthest (CurveLabel *labels, unsigned n, unsigned kept)
{
  const double near = isnan (labels[kept].wanted) ? 0.0 : labels[kept].wanted;
  unsigned farthest = kept;
  double most = -1.0;

  for (unsigned i = 0; i < n; i++)
    if (i != kept && labels[i].is_kept && fabs (labels[i].wanted - near) >= most) {
      most = fabs (labels[i].wanted - near);
      farthest = i;
    }
  labels[farthest].is_kept = false;
}

/* By their wishes from above; equal ones keep their order. */
static unsigned
sort_kept (CurveLabel *labels, unsigned n, CurveLabel *sorted[MOST])
{
  unsigned n_sorted = 0;

  for (unsigned i = 0; i < n; i++) {
    unsigned at = n_sorted;
    if (!labels[i].is_kept)
      continue;
    for (; at > 0 && sorted[at - 1]->wanted > labels[i].wanted; at--)
      sorted[at] = sorted[at - 1];
    sorted[at] = &labels[i];
    n_sorted++;
  }
  return n_sorted;
}

typedef struct {
  double mean;
  unsigned n;
} Pool;

static void
place_sorted (
    CurveLabel *sorted[MOST], unsigned n, double pitch, double first, double last)
{
  const double most = last - (n - 1) * pitch;
  Pool pools[MOST];
  unsigned n_pools = 0, at = 0;

  for (unsigned i = 0; i < n; i++) {
    Pool pool = { sorted[i]->wanted - i * pitch, 1 };
    for (; n_pools > 0 && pools[n_pools - 1].mean > pool.mean; n_pools--) {
      const Pool above = pools[n_pools - 1];
      pool.mean = (above.mean * above.n + pool.mean * pool.n) / (above.n + pool.n);
      pool.n += above.n;
    }
    pools[n_pools++] = pool;
  }
  for (unsigned p = 0; p < n_pools; p++)
    for (unsigned i = 0; i < pools[p].n; i++, at++)
      sorted[at]->place = fmax (first, fmin (pools[p].mean, most)) + at * pitch;
}

void
curve_labels_place (CurveLabel *labels,
                    unsigned n,
                    unsigned kept,
                    double pitch,
                    double top,
                    double bottom)
{
  const double room = bottom - top;
  CurveLabel *sorted[MOST];

  for (unsigned i = 0; i < n; i++)
    labels[i].is_kept = i < MOST && isfinite (labels[i].wanted) && room >= pitch;
  while (count_kept (labels, n) > 1 && count_kept (labels, n) * pitch > room)
    drop_farthest (labels, n, kept);

  const unsigned n_sorted = sort_kept (labels, n, sorted);
  if (n_sorted > 0)
    place_sorted (sorted, n_sorted, pitch, top + pitch / 2.0, bottom - pitch / 2.0);
}
