/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The car of sprung-car.h under a case of load, with a rod in its struts. */

#pragma once

#include "model/load/load-study.h"
#include "sprung-car.h"

typedef struct {
  Car *car;
  Study *study;
  SpringStudy *springs;
  LoadStudy *loads;
} LoadedCar;

static inline void
loaded_car_solve (LoadedCar *self, guint in_hand, guint load_case, SpringMode mode)
{
  CarLoadCase cases[LOAD_CASES_MOST];

  g_assert_cmpuint (car_load_cases (self->car, cases), >, load_case);
  study_solve (self->study, self->car, in_hand, 0.0);
  spring_study_solve (self->springs, self->study, self->car);
  load_study_solve (self->loads, self->springs, &cases[load_case], mode);
  if (!load_study_in_hand (self->loads)->is_solved)
    return;
  study_set_travel (self->study, load_study_in_hand (self->loads)->travel);
  spring_study_set_travel (self->springs);
}

static inline LoadedCar
loaded_car_new (gboolean has_rod)
{
  LoadedCar self = { sprung_car (), study_new (), spring_study_new (),
                     load_study_new () };

  if (has_rod) {
    self.car->strut.rod.diameter_mm = 20.0;
    self.car->strut.rod.guide_height_mm = 180.0;
    self.car->strut.rod.piston_drop_mm = 330.0;
    car_setup (self.car, SPRUNG_COIL)->has_rod = TRUE;
    car_setup (self.car, SPRUNG_COIL)->rod = self.car->strut.rod;
    car_setup (self.car, SPRUNG_COIL)->rod.diameter_mm = 25.0;
  }
  loaded_car_solve (&self, 0, 0, SPRING_AS_SET);
  return self;
}

static inline void
loaded_car_clear (LoadedCar *self)
{
  load_study_free (self->loads);
  spring_study_free (self->springs);
  study_free (self->study);
  car_free (self->car);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LoadedCar, loaded_car_clear)
