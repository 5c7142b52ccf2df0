/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/rod.h"
#include "kernel/spring.h"

/* A beam on two simple supports, the guide and the piston, l apart, with F at the end of
 * an overhang a beyond the guide. Reactions F (a + l)/l and F a/l; the moment is F a at
 * the guide and falls to 0 at end and piston. Deflections, E I constant:
 *   end      F a² (a + l)/(3 E I)
 *   slope    F a (2 l + 3 a)/(6 E I), there
 *   between  F a l²/(9 √3 E I), at l/√3 from the piston.
 * What pushes along the rod bends it a little more. That is left out: Euler's load of a
 * rod of 22 mm is near 90 kN for an overhang of 250 mm. */

RodReach
rod_reach (const Rod *rod, double strut_length)
{
  const double overhang = strut_length - rod->guide_height;
  const bool is_inverted = rod->bush_spacing > 0.0;

  return (RodReach){ overhang,
                     is_inverted ? rod->bush_spacing : rod->piston_drop - overhang };
}

static bool
has_size (const Rod *rod)
{
  return rod->inner >= 0.0 && rod->outer > rod->inner && rod->modulus > 0.0;
}

RodBending
rod_bend (const Rod *rod, RodReach reach, double side_force)
{
  const double F = side_force, a = reach.overhang, l = reach.spacing;
  const double I = bending_moment_of_area (rod->outer, rod->inner);
  const double EI = rod->modulus * I;

  if (!has_size (rod) || !(a > 0.0) || !(l > 0.0))
    return (RodBending){ NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };

  const double guide = F * (a + l) / l, piston = F * a / l;

  return (RodBending){ .guide = guide,
                       .piston = piston,
                       .moment = F * a,
                       .stress = F * a * rod->outer / (2.0 * I),
                       .deflection = F * a * a * (a + l) / (3.0 * EI),
                       .slope = F * a * (2.0 * l + 3.0 * a) / (6.0 * EI),
                       .between = F * a * l * l / (9.0 * sqrt (3.0) * EI),
                       .breakaway = rod->friction * (fabs (guide) + fabs (piston)) };
}
