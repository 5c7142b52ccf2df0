/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/travel-keys.h"

/* On tenths of a millimetre, so that many steps do not add up their rounding. */
static void
step_travel (SwBench *bench, double step)
{
  sw_bench_set_travel (bench,
                       round ((sw_bench_get_study (bench)->travel + step) * 10.0) / 10.0);
}

gboolean
travel_key (SwBench *bench, guint key, GdkModifierType state)
{
  const Study *study = sw_bench_get_study (bench);
  const double step = state & GDK_SHIFT_MASK     ? 10.0
                      : state & GDK_CONTROL_MASK ? 0.1
                                                 : 1.0;

  switch (key) {
  case GDK_KEY_Left:
  case GDK_KEY_KP_Left:
    step_travel (bench, -step);
    return TRUE;
  case GDK_KEY_Right:
  case GDK_KEY_KP_Right:
    step_travel (bench, step);
    return TRUE;
  case GDK_KEY_Home:
  case GDK_KEY_KP_Home:
    sw_bench_set_travel (bench, study_in_hand (study)->lowering);
    return TRUE;
  case GDK_KEY_Page_Up:
    sw_bench_set_travel (bench, study->range.to);
    return TRUE;
  case GDK_KEY_Page_Down:
    sw_bench_set_travel (bench, study->range.from);
    return TRUE;
  default:
    return FALSE;
  }
}
