/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "frame-times.h"

#include <stdio.h>
#include <stdlib.h>

#define BUDGET 16.0 /* ms */

static int
compare_times (const void *a, const void *b)
{
  const gint64 left = *(const gint64 *) a, right = *(const gint64 *) b;

  return (left > right) - (left < right);
}

void
frame_times_print (const char *what, gint64 *times, guint n)
{
  qsort (times, n, sizeof *times, compare_times);
  printf ("%-38s median %5.2f ms, p95 %5.2f ms of %.0f ms\n", what,
          (double) times[n / 2] / 1000.0, (double) times[n * 95 / 100] / 1000.0, BUDGET);
}
