/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/spring/spring-law-private.h"
#include "model/spring/spring-study.h"

#define DEGREE (G_PI / 180.0)
#define GPA 1000.0 /* N/mm² */

static double
shear_modulus (double gpa)
{
  return GPA * (gpa > 0.0 ? gpa : SPRING_DEFAULT_SHEAR_MODULUS);
}

static void
take_bar (SpringLaw *law, const CarTorsionBar *bar)
{
  if (!bar->is_there)
    return;
  law->clamp_angle = bar->clamp_angle_deg * DEGREE;
  law->n_sections = MIN (bar->n_sections, BAR_SECTIONS_MOST);
  for (gsize i = 0; i < law->n_sections; i++)
    law->sections[i] = (BarSection){ bar->sections[i].outer_mm, bar->sections[i].inner_mm,
                                     bar->sections[i].length_mm };
  if (bar->rate_nm_per_deg > 0.0)
    law->bar_rate = bar->rate_nm_per_deg * 1000.0 / DEGREE;
  else if (law->n_sections > 0)
    law->bar_rate = torsion_bar_rate (law->sections, law->n_sections,
                                      shear_modulus (bar->shear_modulus_gpa));
}

static void
take_coil (SpringLaw *law, const CarCoil *coil)
{
  if (!coil->is_there)
    return;
  if (coil->wire_mm > 0.0 && coil->mean_diameter_mm > 0.0)
    law->coil_size = (CoilSize){ coil->wire_mm, coil->mean_diameter_mm,
                                 coil->active_coils, coil->total_coils };
  if (coil->rate_n_per_mm > 0.0)
    law->coil_rate = coil->rate_n_per_mm;
  else if (coil->table.n > 0)
    law->coil_table = spring_curve_new (&coil->table);
  else if (law->coil_size.wire > 0.0 && coil->active_coils > 0.0)
    law->coil_rate = coil_rate (law->coil_size, shear_modulus (coil->shear_modulus_gpa));
  law->has_coil = law->coil_rate > 0.0 || law->coil_table.n > 0;
  if (coil->solid_length_mm > 0.0)
    law->coil_solid = coil->solid_length_mm;
  else if (law->coil_size.wire > 0.0 && coil->total_coils > 0.0)
    law->coil_solid = coil_solid_length (law->coil_size);
}

/* One that has no rate is not there; nor is one on top of no coil. */
static void
take_helper (SpringLaw *law, const CarHelper *helper)
{
  const double solid = helper->solid_length_mm;

  if (!helper->is_there || !(helper->rate_n_per_mm > 0.0))
    return;
  law->has_series = helper->place == HELPER_IN_SERIES && law->has_coil;
  law->has_parallel = helper->place == HELPER_IN_PARALLEL;
  law->helper_rate = helper->rate_n_per_mm;
  law->helper_free = helper->free_length_mm;
  law->helper_stroke = MAX (helper->free_length_mm - solid, 0.0);
  if (law->has_parallel && solid <= 0.0)
    law->helper_stroke = INFINITY;
  law->helper_seats = helper->perch_mm + helper->upper_drop_mm;
}

static void
take_strut (SpringLaw *law, const Car *car, const CarSprings *springs)
{
  const double length =
      vec3_distance (car->points[POINT_UPPER_MOUNT], car->points[POINT_STRUT_FOOT]);

  if (springs->bump_stop.is_there)
    law->stop_table = spring_curve_new (&springs->bump_stop.table);
  law->has_stop = law->stop_table.n > 0;
  law->stop_length = length - springs->bump_stop.gap_mm;
  law->droop_stop = springs->droop_stop_mm > 0.0 ? -springs->droop_stop_mm : -INFINITY;
  law->gas_force = springs->damper.gas_force_n;
  law->damper_table = spring_curve_new (&springs->damper.table);
}

/* A bar that twists over its length, pushed at its arm: G J/(length · arm²). */
static double
link_rate (const CarAntiRollBar *bar)
{
  if (!bar->is_there)
    return 0.0;
  if (bar->rate_n_per_mm > 0.0)
    return bar->rate_n_per_mm;
  if (!(bar->diameter_mm > 0.0 && bar->length_mm > 0.0 && bar->arm_mm > 0.0))
    return 0.0;
  const BarSection section = { bar->diameter_mm, bar->bore_mm, bar->length_mm };

  return torsion_bar_rate (&section, 1, shear_modulus (bar->shear_modulus_gpa)) /
         (bar->arm_mm * bar->arm_mm);
}

SpringLaw *
spring_law_new (const Car *car, const CarSprings *springs)
{
  SpringLaw *law = g_new0 (SpringLaw, 1);

  law->places = car_spring_places (car, springs);
  law->unsprung_weight = car->body.unsprung_corner_kg * SPRING_GRAVITY;
  take_bar (law, &springs->bar);
  take_coil (law, &springs->coil);
  take_helper (law, &springs->helper);
  spring_law_set_strokes (law, springs->coil.free_length_mm);
  take_strut (law, car, springs);
  law->link_rate = link_rate (&springs->anti_roll_bar);
  return law;
}

void
spring_law_free (SpringLaw *law)
{
  if (law == NULL)
    return;
  spring_curve_clear (&law->coil_table);
  spring_curve_clear (&law->stop_table);
  spring_curve_clear (&law->damper_table);
  g_free (law);
}

gboolean
spring_law_holds (const SpringLaw *law)
{
  return law->bar_rate > 0.0 || law->has_coil || law->has_parallel || law->has_stop;
}

double
spring_law_bar_rate (const SpringLaw *law)
{
  return law->bar_rate;
}

double
spring_law_coil_rate (const SpringLaw *law, double squash)
{
  double rate;

  spring_law_coil_force (law, squash, &rate);
  return rate;
}

double
spring_law_coil_solid (const SpringLaw *law)
{
  return law->coil_solid;
}

double
spring_law_link_rate (const SpringLaw *law)
{
  return law->link_rate;
}

double
spring_law_damping (const SpringLaw *law, double speed)
{
  double slope;

  return spring_curve_value (&law->damper_table, speed, &slope);
}

double
spring_law_damping_rate (const SpringLaw *law, double speed)
{
  double slope;

  spring_curve_value (&law->damper_table, speed, &slope);
  return slope;
}
