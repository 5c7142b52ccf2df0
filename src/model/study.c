/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study.h"

#include <glib/gi18n-lib.h>

static void
solve_corner (const Study *study,
              const MeasuredCorner *measured,
              const Adjustment *adjustment,
              StudyCorner *corner)
{
  corner_assemble (measured, adjustment, &corner->corner);
  corner->n_assembled =
      sweep_travel (&corner->corner, study->range, 0.0, corner->stations);
}

static gboolean
is_moved (const MountOffset *mount, const Corner *corner)
{
  return mount->inboard != 0.0 || mount->rearward != 0.0 || mount->up != 0.0 ||
         corner_tie_rod_change (corner) != 0.0;
}

void
study_solve (Study *study, const Car *car, const CarSetup *setup, double travel)
{
  const MeasuredCorner measured = car_measured_corner (car);
  const Adjustment none = { 0 }, adjustment = car_adjustment (setup);

  study->points = measured;
  study->range = (SweepRange){ -car->droop_mm, car->bump_mm, STUDY_STATIONS };
  study->standing = setup->lowering_mm;
  solve_corner (study, &measured, &none, &study->measured);
  solve_corner (study, &measured, &adjustment, &study->setup);
  study->is_moved = is_moved (&adjustment.mount, &study->setup.corner);
  study_set_travel (study, travel);
}

void
study_set_travel (Study *study, double travel)
{
  study->travel = CLAMP (travel, study->range.from, study->range.to);
  station_solve (&study->measured.corner, study->travel, 0.0, &study->measured.now);
  station_solve (&study->setup.corner, study->travel, 0.0, &study->setup.now);
}

const char *
pose_status_sentence (PoseStatus status)
{
  switch (status) {
  case POSE_OK:
    return "";
  case POSE_STRUT_TOO_SHORT:
    return _ ("The strut cannot get that short: the upper mount is too near to the ball joint.");
  case POSE_TIE_ROD_CANNOT_REACH:
    return _ ("The tie rod cannot reach: no steering angle fits its length here.");
  case POSE_OUT_OF_REACH:
    return _ ("The lower arm cannot carry the wheel this far.");
  case POSE_TOE_OUT_OF_REACH:
    return _ ("No tie-rod length brings the static toe back at this height.");
  }
  g_return_val_if_reached ("");
}
