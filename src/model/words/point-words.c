/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/point-words.h"

#include <glib/gi18n-lib.h>

static const struct {
  const char *title, *meaning;
} words[N_POINTS] = {
  [POINT_ARM_FRONT_PIVOT] = { N_ ("Arm, front pivot"),
                              N_ ("The lower arm's front pivot on the body: the middle of its "
                                  "bush, on the axis about which the arm swings.") },
  [POINT_ARM_REAR_PIVOT] = { N_ ("Arm, rear pivot"),
                             N_ ("The lower arm's rear pivot on the body: a second point on the "
                                 "axis about which the arm swings.") },
  [POINT_BALL_JOINT] = { N_ ("Lower ball joint"),
                         N_ ("Centre of the ball that joins the lower arm to the knuckle.") },
  [POINT_UPPER_MOUNT] = { N_ ("Upper mount"),
                          N_ ("Centre of the strut's top bearing: the point that a plate "
                              "moves.") },
  [POINT_STRUT_FOOT] = { N_ ("Strut foot"),
                         N_ ("Any second point on the strut's axis, low down: with the upper "
                             "mount it gives the axis.") },
  [POINT_TIE_ROD_OUTER] = { N_ ("Tie rod, outer end"),
                            N_ ("Centre of the tie rod's joint on the knuckle.") },
  [POINT_TIE_ROD_INNER] = { N_ ("Tie rod, inner end"),
                            N_ ("Centre of the tie rod's joint on the rack, steered straight "
                                "ahead.") },
  [POINT_WHEEL_CENTRE] = { N_ ("Wheel centre"),
                           N_ ("Where the hub's axis meets the middle plane of the wheel.") },
};

const char *
point_title (PointName point)
{
  g_return_val_if_fail (point >= 0 && point < N_POINTS, "");
  return _ (words[point].title);
}

const char *
point_meaning (PointName point)
{
  g_return_val_if_fail (point >= 0 && point < N_POINTS, "");
  return _ (words[point].meaning);
}

const char *
point_axis_name (guint axis)
{
  const char *const names[] = { _ ("x forward"), _ ("y left"), _ ("z up") };

  g_return_val_if_fail (axis < G_N_ELEMENTS (names), "");
  return names[axis];
}
