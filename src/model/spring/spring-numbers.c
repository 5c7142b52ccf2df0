/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers of a corner that stands by its springs.
 *
 * Roll stiffness: the body rolls by φ on contacts t apart, vertical forces only. One
 * contact rises by (t/2)φ against the body, the other falls by as much. Springs: each
 * wheel's load changes by k_w (t/2)φ on the lever t/2, both together k_w t²/2 · φ. The
 * anti-roll bar's links rise by ±i (t/2)φ; the bar pushes each with k_link times their
 * difference, i t φ, which is i times that at the contact, on the lever t/2, twice:
 * k_link i² t² · φ. It stands without force, so it has no term from change of ratio.
 *
 * Half of a coil's weight counts as unsprung: common practice, no published source. */

#include "model/spring/spring-study-private.h"

#define STEEL                                                                            \
  7850e-9 /* kg/mm³: structural steel, EN 1991-1-1, table A.4, from memory              \
           */
#define PER_METRE 1000.0  /* N/mm to N/m */
#define COIL_UNSPRUNG 0.5 /* of its weight */

double
ride_frequency (double rate, double mass)
{
  return mass > 0.0 && rate > 0.0 ? sqrt (rate * PER_METRE / mass) / (2.0 * G_PI)
                                  : (double) NAN;
}

double
damping_ratio (double damping, double rate, double mass)
{
  return mass > 0.0 && rate > 0.0 ? damping / (2.0 * sqrt (rate * PER_METRE * mass))
                                  : (double) NAN;
}

/* What a linear damper would have that pushes as hard at this speed. */
static double
damping_at (const SpringCorner *self, double speed)
{
  const double ratio = self->at_standing.paths.strut.ratio;

  if (self->law->damper_table.n == 0)
    return NAN;
  return damping_ratio (spring_law_damping (self->law, speed) / speed * ratio * ratio,
                        self->wheel_rate, self->sprung_kg);
}

static void
find_roll_stiffness (SpringCorner *self, double half_track)
{
  const double track = 2.0 * half_track, ratio = self->at_standing.link_ratio;
  const double to_nm_per_degree = G_PI / 180.0 / 1000.0;

  self->roll_stiffness = self->wheel_rate * track * track / 2.0 * to_nm_per_degree;
  self->roll_stiffness_bar =
      self->law->link_rate * ratio * ratio * track * track * to_nm_per_degree;
}

static double
bar_mass (const SpringLaw *law)
{
  double volume = 0.0;

  for (gsize i = 0; i < law->n_sections; i++) {
    const BarSection s = law->sections[i];

    volume += G_PI / 4.0 * (s.outer * s.outer - s.inner * s.inner) * s.length;
  }
  return STEEL * volume;
}

/* A wound wire, its pitch by the free length. */
static double
coil_mass (const SpringLaw *law, double free_length)
{
  const CoilSize s = law->coil_size;
  const double around = G_PI * s.mean_diameter * s.total_coils;

  if (!law->has_coil || !(s.wire > 0.0))
    return 0.0;
  return STEEL * G_PI / 4.0 * s.wire * s.wire * hypot (around, free_length);
}

/* The bar's centre is taken half-way between the arm's pivots. */
static void
find_masses (SpringCorner *self, const SpringStation *at, double ground)
{
  const Corner *corner = &self->corner->corner;
  const double bar = bar_mass (self->law);
  const double coil = coil_mass (self->law, self->springs->coil.free_length_mm);
  const double bar_z = (corner->arm_pivot.z + corner->arm_rear_pivot.z) / 2.0;
  const double coil_z = (at->paths.coil_bottom.z + at->paths.coil_top.z) / 2.0;

  self->spring_kg = bar + coil;
  self->spring_unsprung_kg = COIL_UNSPRUNG * coil;
  self->spring_height = self->spring_kg > 0.0
                            ? (bar * bar_z + coil * coil_z) / self->spring_kg - ground
                            : (double) NAN;
}

static void
find_nothing (SpringCorner *self)
{
  self->wheel_rate = self->ride_rate = self->frequency = self->frequency_rigid = NAN;
  self->static_deflection = self->roll_stiffness = self->roll_stiffness_bar = NAN;
  self->damping_ratio_bump = self->damping_ratio_rebound = NAN;
}

static void
find_ride (SpringCorner *self, double tyre_rate)
{
  const double tyre = tyre_rate > 0.0 ? tyre_rate : TYRE_DEFAULT_RATE;

  self->wheel_rate = self->at_standing.rate;
  self->ride_rate = springs_in_series (self->wheel_rate, tyre);
  self->frequency = ride_frequency (self->ride_rate, self->sprung_kg);
  self->frequency_rigid = ride_frequency (self->wheel_rate, self->sprung_kg);
  self->static_deflection = self->sprung_kg * SPRING_GRAVITY / self->wheel_rate;
  self->damping_ratio_bump = damping_at (self, SPRING_DAMPER_SPEED);
  self->damping_ratio_rebound = damping_at (self, -SPRING_DAMPER_SPEED);
}

void
spring_corner_find_numbers (SpringCorner *self, const Car *car)
{
  const Corner *corner = &self->corner->corner;
  const gboolean stands = self->stands == STANDS_BY_SPRINGS;
  Pose pose;

  self->sprung_kg = car->body.front_mass_kg / 2.0 - car->body.unsprung_corner_kg;
  find_nothing (self);
  if (pose_at_travel (corner, stands ? self->standing : self->corner->lowering, 0.0, NULL,
                      &pose) != POSE_OK) {
    find_masses (self, &self->at_height, NAN);
    return;
  }
  const Vec3 contact = pose_contact (corner, &pose);

  find_masses (self, stands ? &self->at_standing : &self->at_height, contact.z);
  if (!stands)
    return;
  find_ride (self, self->springs->tyre_rate_n_per_mm);
  find_roll_stiffness (self, contact.y);
}
