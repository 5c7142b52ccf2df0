/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Each spring at its own place q: force Q and rate dQ/dq, and by its path what that is at
 * the wheel: Q·q′ and (dQ/dq)·q′² + Q·q″ per rise of the contact. */

#include "model/spring/spring-law-private.h"

#include <glib/gi18n-lib.h>

G_STATIC_ASSERT (sizeof (SpringStation) % sizeof (double) == 0);

const char *
spring_element_name (SpringElement element)
{
  switch (element) {
  case SPRING_UNSPRUNG:
    return _ ("Unsprung weight");
  case SPRING_BAR:
    return _ ("Torsion bar");
  case SPRING_COIL:
    return _ ("Coil");
  case SPRING_HELPER:
    return _ ("Helper");
  case SPRING_BUMP_STOP:
    return _ ("Bump stop");
  case SPRING_GAS:
    return _ ("Gas force");
  case N_SPRING_ELEMENTS:
    break;
  }
  g_return_val_if_reached ("");
}

const char *
spring_element_key (SpringElement element)
{
  static const char *const keys[N_SPRING_ELEMENTS] = { "unsprung", "torsion_bar", "coil",
                                                       "helper",   "bump_stop",   "gas" };

  g_return_val_if_fail (element < N_SPRING_ELEMENTS, "");
  return keys[element];
}

static void
put_element (SpringStation *s,
             SpringElement element,
             const SpringPath *path,
             double force,
             double rate)
{
  s->element_load[element] = force * path->ratio;
  s->element_rate[element] = rate * path->ratio * path->ratio + force * path->bend;
  s->geometric_rate += force * path->bend;
}

static void
put_bar (const SpringLaw *law, SpringStation *s)
{
  s->bar_twist = law->clamp_angle + s->paths.bar.place;
  s->bar_torque = law->bar_rate * s->bar_twist;
  s->bar_stress =
      law->n_sections > 0
          ? torsion_bar_stress (law->sections, law->n_sections, fabs (s->bar_torque))
          : NAN;
  put_element (s, SPRING_BAR, &s->paths.bar, s->bar_torque, law->bar_rate);
}

static void
put_coil (const SpringLaw *law, SpringStation *s)
{
  const CoilShare share = spring_law_share (law, law->total_free + s->paths.coil.place);

  s->coil_length = s->helper_length = s->coil_stress = NAN;
  s->helper_force = s->helper_rate_n_per_mm = 0.0;
  s->coil_force = share.force;
  put_element (s, SPRING_COIL, &s->paths.coil, share.force, share.rate);
  if (!law->has_coil)
    return;
  s->coil_length = -s->paths.coil.place;
  if (law->coil_size.wire > 0.0)
    s->coil_stress = coil_stress (law->coil_size, share.force);
  if (law->has_series) {
    s->helper_length = law->helper_free - share.helper_squash;
    s->coil_length -= s->helper_length;
    s->helper_force = share.force;
    if (share.helper_squash > 0.0 && share.helper_squash < law->helper_stroke)
      s->helper_rate_n_per_mm = law->helper_rate;
  }
}

static void
put_helper (const SpringLaw *law, SpringStation *s)
{
  const double length = -s->paths.strut.place - law->helper_seats;
  const double squash = law->helper_free - length;
  const double rate = law->has_parallel && squash > 0.0 ? law->helper_rate : 0.0;

  put_element (s, SPRING_HELPER, &s->paths.strut, rate > 0.0 ? rate * squash : 0.0, rate);
  if (!law->has_parallel)
    return;
  s->helper_length = length;
  s->helper_rate_n_per_mm = rate;
  s->helper_force = rate > 0.0 ? rate * squash : 0.0;
  s->strut_force += s->helper_force;
}

static void
put_stop (const SpringLaw *law, SpringStation *s)
{
  double rate = 0.0;

  s->stop_squash =
      law->has_stop ? MAX (law->stop_length + s->paths.strut.place, 0.0) : 0.0;
  s->stop_force = s->stop_squash > 0.0
                      ? spring_curve_value (&law->stop_table, s->stop_squash, &rate)
                      : 0.0;
  put_element (s, SPRING_BUMP_STOP, &s->paths.strut, s->stop_force, rate);
  s->strut_force += s->stop_force;
}

static void
fill_nan (SpringStation *station)
{
  double *numbers = (double *) station;

  for (gsize i = 0; i < sizeof *station / sizeof (double); i++)
    numbers[i] = NAN;
}

void
spring_law_carry (const SpringLaw *law,
                  const Corner *corner,
                  const Pose *pose,
                  SpringStation *s)
{
  if (pose == NULL || !spring_paths (corner, pose, &law->places, &s->paths)) {
    fill_nan (s);
    return;
  }
  s->geometric_rate = s->strut_force = s->load = s->rate = 0.0;
  put_element (s, SPRING_UNSPRUNG, &s->paths.wheel, law->unsprung_weight, 0.0);
  put_bar (law, s);
  put_coil (law, s);
  put_helper (law, s);
  put_stop (law, s);
  put_element (s, SPRING_GAS, &s->paths.strut, law->gas_force, 0.0);
  s->strut_force += law->gas_force;
  for (SpringElement i = 0; i < N_SPRING_ELEMENTS; i++) {
    s->load += s->element_load[i];
    s->rate += s->element_rate[i];
  }
  s->link_ratio = s->paths.link.ratio;
  s->link_rise = s->paths.link.place;
}

int
spring_law_blocks (const SpringLaw *law, double travel, const SpringStation *s)
{
  const double coil = law->total_free + s->paths.coil.place;
  const double helper = law->helper_free + s->paths.strut.place + law->helper_seats;

  if (travel < law->droop_stop)
    return -1;
  return (law->has_coil && coil > law->bound_squash) ||
                 (law->has_parallel && helper > law->helper_stroke)
             ? 1
             : 0;
}

void
spring_law_station (const SpringLaw *law,
                    const Corner *corner,
                    const Pose *pose,
                    SpringStation *s)
{
  spring_law_carry (law, corner, pose, s);
  if (pose == NULL)
    return;
  const int blocks = spring_law_blocks (law, pose->travel, s);

  if (blocks == 0)
    return;
  s->load = s->rate = s->geometric_rate = NAN;
  for (SpringElement i = 0; i < N_SPRING_ELEMENTS; i++)
    s->element_load[i] = s->element_rate[i] = NAN;
  if (blocks > 0)
    s->coil_force = s->helper_force = s->strut_force = s->coil_stress = NAN;
}
