/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/load-study.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

LoadStudy *
load_study_new (void)
{
  LoadStudy *self = g_new0 (LoadStudy, 1);

  self->rods = rod_study_new ();
  return self;
}

void
load_study_free (LoadStudy *self)
{
  if (self == NULL)
    return;
  rod_study_free (self->rods);
  g_free (self->sentence);
  g_free (self->note);
  g_free (self->setups);
  g_free (self->bent);
  g_free (self);
}

SpringMode
load_study_mode (const LoadStudy *self, guint setup)
{
  return self->mode == SPRING_AS_SET &&
                 self->springs->setups[setup].stands == STANDS_NOT_GIVEN
             ? SPRING_COIL_ONLY
             : self->mode;
}

static void
solve_setup (LoadStudy *self, guint setup, double travel)
{
  joint_loads_of_case (self->springs, setup, &self->load_case, travel,
                       load_study_mode (self, setup), &self->setups[setup]);
  self->bent[setup] = rod_station_of (self->springs, setup, &self->setups[setup]);
}

static void
add_sentence (GString *text, const char *sentence)
{
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
}

static void
add_held (const LoadStudy *self, const JointLoads *loads, GString *text)
{
  g_autofree char *travel = unit_text (UNIT_LENGTH, self->springs->study->travel, 1);
  g_autofree char *rest = unit_text (UNIT_FORCE, loads->left_over, 0);
  g_autofree char *held =
      g_strdup_printf (_ ("The wheel is held at %s of travel."), travel);
  g_autofree char *carried =
      g_strdup_printf (_ ("Damper or stop would have to carry %s along the strut there."),
                       rest);

  add_sentence (text, held);
  if (loads->is_solved && fabs (loads->left_over) >= 0.5)
    add_sentence (text, carried);
}

static char *
note (const LoadStudy *self)
{
  const guint in_hand = self->springs->study->in_hand;
  const JointLoads *loads = &self->setups[in_hand];
  GString *text = g_string_new (NULL);

  if (load_study_mode (self, in_hand) != self->mode)
    add_sentence (text,
                  _ ("No spring is given: a coil on the strut is taken to carry all."));
  if (!self->is_settled)
    add_held (self, loads, text);
  else if (loads->is_solved && fabs (loads->left_over) >= 0.5)
    add_sentence (text, _ ("The springs do not carry this within the strut's travel: it "
                           "stands on its end."));
  if (loads->is_solved && loads->is_lifted)
    add_sentence (text, _ ("This wheel would leave the road: it is taken at no load."));
  return g_string_free (text, FALSE);
}

static void
renew_note (LoadStudy *self)
{
  g_free (self->note);
  self->note = note (self);
}

void
load_study_solve (LoadStudy *self,
                  const SpringStudy *springs,
                  const CarLoadCase *load_case,
                  SpringMode mode)
{
  self->springs = springs;
  self->load_case = *load_case;
  self->mode = mode;
  if (springs->n_setups > self->n_allocated) {
    self->setups = g_renew (JointLoads, self->setups, springs->n_setups);
    self->bent = g_renew (RodStation, self->bent, springs->n_setups);
    self->n_allocated = springs->n_setups;
  }
  self->n_setups = springs->n_setups;
  for (guint i = 0; i < self->n_setups; i++)
    solve_setup (self, i, NAN);
  self->is_settled = TRUE;
  g_free (self->sentence);
  self->sentence = joint_loads_sentence (springs, springs->study->in_hand, load_case);
  renew_note (self);
  rod_study_solve (self->rods, springs);
}

void
load_study_hold (LoadStudy *self)
{
  const Study *study = self->springs->study;

  solve_setup (self, study->in_hand, study->travel);
  self->is_settled = FALSE;
  renew_note (self);
}

const JointLoads *
load_study_in_hand (const LoadStudy *self)
{
  return &self->setups[self->springs->study->in_hand];
}
