/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car.h"

#include <glib/gi18n-lib.h>

static JsonObject *
ref_object (JsonObject *object)
{
  return object != NULL ? json_object_ref (object) : NULL;
}

void
car_setup_clear (CarSetup *setup)
{
  g_clear_pointer (&setup->name, g_free);
  g_clear_pointer (&setup->plate, g_free);
  g_clear_pointer (&setup->unknown, json_object_unref);
  g_clear_pointer (&setup->unknown_mount, json_object_unref);
  g_clear_pointer (&setup->unknown_corrections, json_object_unref);
  g_clear_pointer (&setup->unknown_plate, json_object_unref);
  g_clear_pointer (&setup->unknown_right, json_object_unref);
  g_clear_pointer (&setup->unknown_springs, json_object_unref);
  g_clear_pointer (&setup->unknown_rod, json_object_unref);
}

static void
clear_setup (gpointer data)
{
  car_setup_clear (data);
}

CarSetup
car_setup_copy (const CarSetup *setup)
{
  CarSetup copy = *setup;

  copy.name = g_strdup (setup->name);
  copy.plate = g_strdup (setup->plate);
  ref_object (copy.unknown);
  ref_object (copy.unknown_mount);
  ref_object (copy.unknown_corrections);
  ref_object (copy.unknown_plate);
  ref_object (copy.unknown_right);
  ref_object (copy.unknown_springs);
  ref_object (copy.unknown_rod);
  return copy;
}

static GArray *
new_setups (void)
{
  GArray *setups = g_array_new (FALSE, TRUE, sizeof (CarSetup));

  g_array_set_clear_func (setups, clear_setup);
  return setups;
}

static void
clear_target (gpointer data)
{
  g_clear_pointer (&((CarTarget *) data)->unknown, json_object_unref);
}

GArray *
car_targets_new (const CarTarget *like, guint n)
{
  GArray *targets = g_array_new (FALSE, TRUE, sizeof (CarTarget));

  g_array_set_clear_func (targets, clear_target);
  g_array_append_vals (targets, like, n);
  for (guint i = 0; i < n; i++)
    ref_object (like[i].unknown);
  return targets;
}

CarMeasuredRight
car_right_copy (const CarMeasuredRight *right)
{
  ref_object (right->unknown);
  ref_object (right->unknown_corner);
  ref_object (right->unknown_alignment);
  return *right;
}

void
car_right_clear (CarMeasuredRight *right)
{
  g_clear_pointer (&right->unknown, json_object_unref);
  g_clear_pointer (&right->unknown_corner, json_object_unref);
  g_clear_pointer (&right->unknown_alignment, json_object_unref);
  *right = (CarMeasuredRight){ 0 };
}

static void
append_as_measured (Car *car)
{
  const CarSetup as_measured = { .name = g_strdup (_ ("As measured")) };

  g_array_append_val (car->setups, as_measured);
}

Car *
car_new (void)
{
  Car *car = g_new0 (Car, 1);

  car->name = g_strdup ("");
  car->notes = g_strdup ("");
  car->section_width_mm = CAR_DEFAULT_SECTION_WIDTH;
  car->bump_mm = CAR_DEFAULT_TRAVEL;
  car->droop_mm = CAR_DEFAULT_TRAVEL;
  car->body = (CarBody){ .wheelbase_mm = CAR_DEFAULT_WHEELBASE,
                         .cg_height_mm = CAR_DEFAULT_CG_HEIGHT,
                         .front_mass_kg = CAR_DEFAULT_FRONT_MASS,
                         .unsprung_corner_kg = CAR_DEFAULT_UNSPRUNG,
                         .front_brake_share = CAR_DEFAULT_BRAKE_SHARE };
  car->strut.rod = car_rod_none ();
  car->springs = car_springs_none ();
  car->thread_pitch_mm = CAR_DEFAULT_THREAD_PITCH;
  car->limits = (CarLimits){ .tyre_clearance_mm = CAR_DEFAULT_TYRE_CLEARANCE,
                             .edge_margin_mm = CAR_DEFAULT_EDGE_MARGIN,
                             .cross_camber_deg = CAR_DEFAULT_CROSS_CAMBER,
                             .cross_caster_deg = CAR_DEFAULT_CROSS_CASTER,
                             .camber_bolt_deg = CAR_DEFAULT_CAMBER_BOLT,
                             .travel_used_mm = CAR_DEFAULT_TRAVEL_USED };
  car->targets = car_targets_new (NULL, 0);
  car->setups = new_setups ();
  append_as_measured (car);
  return car;
}

Car *
car_copy (const Car *car)
{
  Car *copy = g_memdup2 (car, sizeof (Car));

  copy->name = g_strdup (car->name);
  copy->notes = g_strdup (car->notes);
  copy->targets =
      car_targets_new ((const CarTarget *) car->targets->data, car->targets->len);
  copy->right = car_right_copy (&car->right);
  ref_object (copy->unknown_springs);
  copy->setups = new_setups ();
  for (guint i = 0; i < car->setups->len; i++) {
    const CarSetup setup = car_setup_copy (car_setup (car, i));

    g_array_append_val (copy->setups, setup);
  }
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    ref_object (copy->unknown[i]);
  return copy;
}

Car *
car_without_setups (const Car *car)
{
  Car *bare = car_copy (car);

  g_array_set_size (bare->setups, 0);
  append_as_measured (bare);
  bare->baseline = 0;
  return bare;
}

void
car_free (Car *car)
{
  if (car == NULL)
    return;
  g_free (car->name);
  g_free (car->notes);
  g_array_unref (car->targets);
  car_right_clear (&car->right);
  g_clear_pointer (&car->unknown_springs, json_object_unref);
  g_array_unref (car->setups);
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    g_clear_pointer (&car->unknown[i], json_object_unref);
  g_free (car);
}

CarSetup *
car_setup (const Car *car, guint index)
{
  g_return_val_if_fail (index < car->setups->len, NULL);

  return &g_array_index (car->setups, CarSetup, index);
}

const CarSprings *
car_setup_springs (const Car *car, guint index)
{
  const CarSetup *setup = car_setup (car, index);

  return setup->has_springs ? &setup->springs : &car->springs;
}

CarRod
car_setup_rod (const Car *car, guint index)
{
  const CarSetup *setup = car_setup (car, index);

  return setup->has_rod ? setup->rod : car->strut.rod;
}

double
car_rear_mass (const Car *car)
{
  return car->body.rear_mass_kg > 0.0 ? car->body.rear_mass_kg
                                      : CAR_DEFAULT_REAR_SHARE * car->body.front_mass_kg;
}

gsize
car_load_cases (const Car *car, CarLoadCase cases[LOAD_CASES_MOST])
{
  if (car->n_load_cases == 0)
    return car_load_cases_usual (cases);
  for (gsize i = 0; i < car->n_load_cases; i++)
    cases[i] = car->load_cases[i];
  return car->n_load_cases;
}

gboolean
car_find_setup (const Car *car, const char *name, guint *index)
{
  for (guint i = 0; i < car->setups->len; i++)
    if (g_strcmp0 (car_setup (car, i)->name, name) == 0) {
      *index = i;
      return TRUE;
    }
  return FALSE;
}
