/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-springs.h"

#include <glib/gi18n-lib.h>

CarSprings
car_springs_none (void)
{
  CarSprings none = { 0 };

  none.bar.shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS;
  none.coil.shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS;
  none.anti_roll_bar.shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS;
  none.tyre_rate_n_per_mm = TYRE_DEFAULT_RATE;
  return none;
}

gboolean
car_springs_is_none (const CarSprings *s)
{
  return !s->bar.is_there && !s->coil.is_there && !s->helper.is_there &&
         !s->bump_stop.is_there && s->droop_stop_mm == 0.0 &&
         !s->anti_roll_bar.is_there && s->damper.gas_force_n == 0.0 &&
         s->damper.table.n == 0;
}

CarSprings
car_springs_outline (const CarSprings *springs)
{
  const CarCoil *coil = &springs->coil;
  const CarHelper *helper = &springs->helper;
  CarSprings outline = car_springs_none ();

  if (!coil->is_there)
    return outline;
  outline.coil = (CarCoil){ .is_there = TRUE,
                            .wire_mm = coil->wire_mm,
                            .mean_diameter_mm = coil->mean_diameter_mm,
                            .shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS,
                            .free_length_mm = coil->free_length_mm,
                            .perch_mm = coil->perch_mm,
                            .upper_drop_mm = coil->upper_drop_mm,
                            .lower_outboard_mm = coil->lower_outboard_mm,
                            .lower_forward_mm = coil->lower_forward_mm,
                            .upper_outboard_mm = coil->upper_outboard_mm,
                            .upper_forward_mm = coil->upper_forward_mm };
  if (helper->is_there && helper->place == HELPER_IN_SERIES)
    outline.helper = (CarHelper){ .is_there = TRUE,
                                  .place = HELPER_IN_SERIES,
                                  .free_length_mm = helper->free_length_mm };
  return outline;
}

CarRod
car_rod_none (void)
{
  return (CarRod){ .modulus_gpa = ROD_DEFAULT_MODULUS, .friction = ROD_DEFAULT_FRICTION };
}

static const struct {
  const char *name;
  CarLoadCase numbers;
} usual[] = {
  { N_ ("Standing"), { .vertical = 1.0 } },
  { N_ ("Cornering, outer wheel"), { .lateral_g = 0.8, .vertical = 1.0 } },
  { N_ ("Cornering, inner wheel"), { .lateral_g = -0.8, .vertical = 1.0 } },
  { N_ ("Braking"), { .braking_g = 0.8, .vertical = 1.0 } },
  { N_ ("Bump"), { .vertical = 2.5 } },
  { N_ ("Pothole"), { .vertical = 2.0, .rearward = 1.5 } },
  { N_ ("Braking into a bumpy bend"),
    { .lateral_g = 0.5, .braking_g = 0.5, .vertical = 1.5 } },
};

gsize
car_load_cases_usual (CarLoadCase cases[LOAD_CASES_MOST])
{
  G_STATIC_ASSERT (G_N_ELEMENTS (usual) <= LOAD_CASES_MOST);
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++) {
    cases[i] = usual[i].numbers;
    g_strlcpy (cases[i].name, usual[i].name, LOAD_CASE_NAME);
  }
  return G_N_ELEMENTS (usual);
}

const char *
car_load_case_title (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
    if (g_str_equal (name, usual[i].name))
      return _ (usual[i].name);
  return name;
}

const char *
car_load_case_name (const char *title)
{
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
    if (g_str_equal (title, _ (usual[i].name)))
      return usual[i].name;
  return title;
}
