/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/spring.h"

#include <math.h>
#include <stdbool.h>

static const double pi = 3.14159265358979323846;

/* D⁴ − d⁴ */
static double
fourth_powers (double outer, double inner)
{
  const double outer_2 = outer * outer, inner_2 = inner * inner;

  return (outer_2 - inner_2) * (outer_2 + inner_2);
}

double
polar_moment (double outer, double inner)
{
  return pi * fourth_powers (outer, inner) / 32.0;
}

double
bending_moment_of_area (double outer, double inner)
{
  return pi * fourth_powers (outer, inner) / 64.0;
}

static bool
section_has_size (const BarSection *s)
{
  return s->length > 0.0 && s->inner >= 0.0 && s->outer > s->inner;
}

double
torsion_bar_rate (const BarSection *sections, size_t n, double shear_modulus)
{
  double twist = 0.0; /* by a torque of 1, times G */

  for (size_t i = 0; i < n; i++) {
    if (!section_has_size (&sections[i]))
      return 0.0;
    twist += sections[i].length / polar_moment (sections[i].outer, sections[i].inner);
  }
  return n > 0 ? shear_modulus / twist : 0.0;
}

double
torsion_bar_stress (const BarSection *sections, size_t n, double torque)
{
  double largest = 0.0;

  for (size_t i = 0; i < n; i++) {
    const double outer = sections[i].outer;

    if (!section_has_size (&sections[i]))
      return 0.0;
    largest = fmax (largest, fabs (torque) * (outer / 2.0) /
                                 polar_moment (outer, sections[i].inner));
  }
  return largest;
}

static bool
coil_has_size (CoilSize size)
{
  return size.wire > 0.0 && size.mean_diameter > size.wire;
}

double
coil_rate (CoilSize size, double shear_modulus)
{
  if (!coil_has_size (size) || !(size.active_coils > 0.0))
    return 0.0;
  return shear_modulus * pow (size.wire, 4.0) /
         (8.0 * pow (size.mean_diameter, 3.0) * size.active_coils);
}

double
coil_solid_length (CoilSize size)
{
  return size.wire * size.total_coils;
}

/* K 8 F D/(π d³), Wahl's K = (4C − 1)/(4C − 4) + 0.615/C, C = D/d */
double
coil_stress (CoilSize size, double force)
{
  if (!coil_has_size (size))
    return 0.0;

  const double c = size.mean_diameter / size.wire;
  const double wahl = (4.0 * c - 1.0) / (4.0 * c - 4.0) + 0.615 / c;

  return wahl * 8.0 * force * size.mean_diameter / (pi * pow (size.wire, 3.0));
}

double
springs_in_series (double a, double b)
{
  return a > 0.0 && b > 0.0 ? 1.0 / (1.0 / a + 1.0 / b) : 0.0;
}
