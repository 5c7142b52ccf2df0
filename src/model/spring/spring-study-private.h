/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Steps of solving a spring study, shared by its files. */

#pragma once

#include "model/spring/spring-law-private.h"
#include "model/spring/spring-study.h"

/* The corner at wheel travel @travel, from its neighbour where there is one; springs go
 * on by their laws where the strut can go no further. FALSE: it cannot be assembled. */
gboolean spring_corner_carry (const SpringCorner *self,
                              double travel,
                              const Pose *neighbour,
                              Pose *pose,
                              SpringStation *station);

void spring_corner_find_events (SpringCorner *self);
void spring_corner_find_standing (SpringCorner *self, double weight);
/* Frequencies, damping, roll stiffness and masses, once it stands. */
void spring_corner_find_numbers (SpringCorner *self, const Car *car);

/* All of one corner; its law is set. */
void spring_corner_solve (SpringCorner *self, const Car *car);
