/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/study.h"
#include "model/study/setup-title.h"

#include <glib/gi18n-lib.h>

Study *
study_new (void)
{
  return g_new0 (Study, 1);
}

void
study_free (Study *study)
{
  if (study == NULL)
    return;
  g_free (study->setups);
  g_free (study);
}

static void
make_room (Study *study, guint n_setups)
{
  if (n_setups > study->n_allocated) {
    g_free (study->setups);
    study->setups = g_new (StudyCorner, n_setups);
    study->n_allocated = n_setups;
  }
  study->n_setups = n_setups;
}

static void
solve_corner (const Study *study, const Adjustment *adjustment, StudyCorner *corner)
{
  corner_assemble (&study->points, adjustment, &corner->corner);
  corner->lowering = adjustment->lowering;
  corner->is_moved = adjustment_changes_linkage (adjustment);
  corner->n_assembled =
      sweep_travel (&corner->corner, study->range, 0.0, corner->stations);
  station_solve (&corner->corner, corner->lowering, 0.0, &corner->at_height);
}

void
study_solve (Study *study, const Car *car, guint in_hand, double travel)
{
  const Adjustment none = { 0 };

  make_room (study, car->setups->len);
  study->points = car_measured_corner (car);
  study->range = (SweepRange){ -car->droop_mm, car->bump_mm, STUDY_STATIONS };
  study->cg_height = car->body.cg_height_mm;
  study->in_hand = MIN (in_hand, study->n_setups - 1);
  study->baseline = MIN (car->baseline, study->n_setups - 1);
  study->measured.name = study->measured.title = measured_car_title ();
  solve_corner (study, &none, &study->measured);
  for (guint i = 0; i < study->n_setups; i++) {
    const CarSetup *setup = car_setup (car, i);
    const Adjustment adjustment = car_adjustment (setup);

    study->setups[i].name = setup->name;
    study->setups[i].title = setup_title (setup);
    study->setups[i].is_shown =
        i == study->in_hand || i == study->baseline || !setup->is_hidden;
    solve_corner (study, &adjustment, &study->setups[i]);
  }
  study_set_travel (study, travel);
}

void
study_set_travel (Study *study, double travel)
{
  study->travel = CLAMP (travel, study->range.from, study->range.to);
  station_solve (&study->measured.corner, study->travel, 0.0, &study->measured.now);
  for (guint i = 0; i < study->n_setups; i++)
    station_solve (&study->setups[i].corner, study->travel, 0.0, &study->setups[i].now);
}

const StudyCorner *
study_in_hand (const Study *study)
{
  return &study->setups[study->in_hand];
}

const StudyCorner *
study_reference (const Study *study)
{
  return study->baseline == study->in_hand ? &study->measured
                                           : &study->setups[study->baseline];
}

gboolean
study_has_reference (const Study *study)
{
  return study->baseline != study->in_hand || study_in_hand (study)->is_moved;
}

const char *
pose_status_sentence (PoseStatus status)
{
  switch (status) {
  case POSE_OK:
    return "";
  case POSE_STRUT_TOO_SHORT:
    return _ (
        "The strut cannot get that short: the upper mount is too near to the ball joint.");
  case POSE_TIE_ROD_CANNOT_REACH:
    return _ ("The tie rod cannot reach: no steering angle fits its length here.");
  case POSE_OUT_OF_REACH:
    return _ ("The lower arm cannot carry the wheel this far.");
  case POSE_TOE_OUT_OF_REACH:
    return _ ("No tie-rod length brings the static toe back at this height.");
  }
  g_return_val_if_reached ("");
}
