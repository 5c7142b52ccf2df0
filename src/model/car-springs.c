/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car-springs.h"

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

CarRod
car_rod_none (void)
{
  return (CarRod){ .modulus_gpa = ROD_DEFAULT_MODULUS, .friction = ROD_DEFAULT_FRICTION };
}

/* Cut at a character where a translation is too long. */
static void
set_name (CarLoadCase *load_case, const char *name)
{
  const char *end;

  g_strlcpy (load_case->name, name, sizeof load_case->name);
  if (!g_utf8_validate (load_case->name, -1, &end))
    load_case->name[end - load_case->name] = '\0';
}

gsize
car_load_cases_usual (CarLoadCase cases[LOAD_CASES_MOST])
{
  const struct {
    const char *name;
    CarLoadCase numbers;
  } usual[] = {
    { _ ("Standing"), { .vertical = 1.0 } },
    { _ ("Cornering, outer wheel"), { .lateral_g = 0.8, .vertical = 1.0 } },
    { _ ("Cornering, inner wheel"), { .lateral_g = -0.8, .vertical = 1.0 } },
    { _ ("Braking"), { .braking_g = 0.8, .vertical = 1.0 } },
    { _ ("Bump"), { .vertical = 2.5 } },
    { _ ("Pothole"), { .vertical = 2.0, .rearward = 1.5 } },
    { _ ("Braking into a bumpy bend"),
      { .lateral_g = 0.5, .braking_g = 0.5, .vertical = 1.5 } },
  };

  G_STATIC_ASSERT (G_N_ELEMENTS (usual) <= LOAD_CASES_MOST);
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++) {
    cases[i] = usual[i].numbers;
    set_name (&cases[i], usual[i].name);
  }
  return G_N_ELEMENTS (usual);
}
