/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/spring/spring-figure.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

typedef struct {
  const char *key, *name, *unit;
  int decimals;
  gsize offset; /* of the double in a SpringCorner */
} FigureInfo;

#define IN(member) offsetof (SpringCorner, member)

static const FigureInfo figures[] = {
  { "standing_travel_mm", N_ ("Stands at wheel travel"), "mm", 1, IN (standing) },
  { "wheel_rate_n_per_mm", N_ ("Wheel rate there"), "N/mm", 2, IN (wheel_rate) },
  { "ride_rate_n_per_mm", N_ ("with the tyre in series"), "N/mm", 2, IN (ride_rate) },
  { "ride_frequency_hz", N_ ("Ride frequency, on the tyre"), "Hz", 2, IN (frequency) },
  { "ride_frequency_rigid_tyre_hz", N_ ("Ride frequency, tyre left out"), "Hz", 2,
    IN (frequency_rigid) },
  { "static_deflection_mm", N_ ("Static deflection"), "mm", 0, IN (static_deflection) },
  { "damping_ratio_bump", N_ ("Damping ratio, bump"), "", 2, IN (damping_ratio_bump) },
  { "damping_ratio_rebound", N_ ("Damping ratio, rebound"), "", 2,
    IN (damping_ratio_rebound) },
  { "roll_stiffness_nm_per_deg", N_ ("Roll stiffness of the axle, springs"), "N·m/°", 0,
    IN (roll_stiffness) },
  { "roll_stiffness_bar_nm_per_deg", N_ ("and by the anti-roll bar"), "N·m/°", 0,
    IN (roll_stiffness_bar) },
  { "spring_mass_kg", N_ ("Springs' own mass, one side"), "kg", 2, IN (spring_kg) },
  { "spring_unsprung_kg", N_ ("of it unsprung"), "kg", 2, IN (spring_unsprung_kg) },
  { "spring_height_mm", N_ ("Height of its centre"), "mm", 0, IN (spring_height) },
};

guint
spring_figures_count (void)
{
  return G_N_ELEMENTS (figures);
}

SpringFigure
spring_figure (const SpringCorner *corner, guint index)
{
  const FigureInfo *info = &figures[index];
  const gconstpointer at = (const char *) corner + info->offset;

  return (SpringFigure){ info->key, _ (info->name), info->unit, info->decimals,
                         *(const double *) at };
}
