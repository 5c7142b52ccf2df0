/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "where does the load go?": every setup under one case of load, each where
 * it carries it, and what the rods make of side force. What window, exports and command
 * line all draw from. */

#pragma once

#include "model/load/rod-study.h"

typedef struct {
  const SpringStudy *springs;
  CarLoadCase load_case;
  SpringMode mode;    /* as asked for; see load_study_mode () */
  JointLoads *setups; /* n_setups of them */
  RodStation *bent;   /* their rods under that */
  RodStudy *rods;
  guint n_setups, n_allocated;
  gboolean is_settled; /* the setup in hand is where it carries the case by itself */
  char *sentence;      /* joint_loads_sentence () of the setup in hand */
  char *note; /* sentences on what is taken for granted there: what carries it, that it is
                 held, that it would lift; "" where there is nothing to say */
} LoadStudy;

LoadStudy *load_study_new (void);
void load_study_free (LoadStudy *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LoadStudy, load_study_free)

/* @springs stays alive and as it is while this is read. Every setup settles. */
void load_study_solve (LoadStudy *self,
                       const SpringStudy *springs,
                       const CarLoadCase *load_case,
                       SpringMode mode);

/* The setup in hand at the travel in hand of the springs' study instead; what its springs
 * do not carry there is left over. Call after spring_study_set_travel (). */
void load_study_hold (LoadStudy *self);

/* @setup by the mode asked for; but a setup without a spring is taken to stand on a coil
 * on the strut. */
SpringMode load_study_mode (const LoadStudy *self, guint setup);

const JointLoads *load_study_in_hand (const LoadStudy *self);
