/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/spring/spring-study-private.h"

SpringStudy *
spring_study_new (void)
{
  return g_new0 (SpringStudy, 1);
}

static void
clear_setups (SpringStudy *self)
{
  for (guint i = 0; i < self->n_allocated; i++)
    spring_law_free (self->setups[i].law);
  g_clear_pointer (&self->setups, g_free);
  self->n_allocated = 0;
}

void
spring_study_free (SpringStudy *self)
{
  if (self == NULL)
    return;
  clear_setups (self);
  g_free (self);
}

static void
make_room (SpringStudy *self, guint n_setups)
{
  if (n_setups > self->n_allocated) {
    clear_setups (self);
    self->setups = g_new0 (SpringCorner, n_setups);
    self->n_allocated = n_setups;
  }
  self->n_setups = n_setups;
}

gboolean
spring_corner_carry (const SpringCorner *self,
                     double travel,
                     const Pose *neighbour,
                     Pose *pose,
                     SpringStation *station)
{
  const Corner *corner = &self->corner->corner;
  const gboolean is_assembled =
      pose_at_travel (corner, travel, 0.0, neighbour, pose) == POSE_OK;

  spring_law_carry (self->law, corner, is_assembled ? pose : NULL, station);
  return is_assembled;
}

static void
solve_station (const SpringCorner *self, const Station *at, SpringStation *station)
{
  spring_law_station (self->law, &self->corner->corner,
                      at->status == POSE_OK ? &at->pose : NULL, station);
}

void
spring_corner_solve (SpringCorner *self, const Car *car)
{
  const StudyCorner *corner = self->corner;

  for (gsize i = 0; i < STUDY_STATIONS; i++)
    solve_station (self, &corner->stations[i], &self->stations[i]);
  solve_station (self, &corner->now, &self->now);
  solve_station (self, &corner->at_height, &self->at_height);
  spring_corner_find_events (self);
  spring_corner_find_standing (self, car->body.front_mass_kg / 2.0 * SPRING_GRAVITY);
  spring_corner_find_numbers (self, car);
}

void
spring_study_solve (SpringStudy *self, const Study *study, const Car *car)
{
  make_room (self, study->n_setups);
  self->study = study;
  self->car = car;
  self->corner_weight = car->body.front_mass_kg / 2.0 * SPRING_GRAVITY;
  self->unsprung_weight = car->body.unsprung_corner_kg * SPRING_GRAVITY;
  for (guint i = 0; i < self->n_setups; i++) {
    SpringCorner *setup = &self->setups[i];

    spring_law_free (setup->law);
    setup->corner = &study->setups[i];
    setup->springs = car_setup_springs (car, i);
    setup->law = spring_law_new (car, setup->springs);
    spring_corner_solve (setup, car);
  }
}

void
spring_study_set_travel (SpringStudy *self)
{
  for (guint i = 0; i < self->n_setups; i++)
    solve_station (&self->setups[i], &self->setups[i].corner->now, &self->setups[i].now);
}

const SpringCorner *
spring_study_in_hand (const SpringStudy *self)
{
  return &self->setups[self->study->in_hand];
}
