/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/aim.h"

#include <glib/gi18n-lib.h>

#define FURTHEST_ANGLE 90.0     /* degrees */
#define FURTHEST_LENGTH 10000.0 /* mm */

/* Unit sizes: common practice, no published source. */
static const AimInfo rows[N_AIMS] = {
  [AIM_CAMBER] = { "camber", N_ ("Camber"), NC_ ("aim", "camber"), "°", 0.1, 2 },
  [AIM_CASTER] = { "caster", N_ ("Caster"), NC_ ("aim", "caster"), "°", 0.1, 2 },
  [AIM_SAI] = { "sai", N_ ("Steering-axis inclination"),
                NC_ ("aim", "steering-axis inclination"), "°", 0.1, 2 },
  [AIM_SCRUB_RADIUS] = { "scrub_radius", N_ ("Scrub radius"), NC_ ("aim", "scrub radius"),
                         "mm", 1.0, 1 },
  [AIM_TRAIL] = { "trail", N_ ("Caster trail"), NC_ ("aim", "caster trail"), "mm", 1.0,
                  1 },
  [AIM_ROLL_CENTRE_HEIGHT] = { "roll_centre_height", N_ ("Roll-centre height"),
                               NC_ ("aim", "roll-centre height"), "mm", 5.0, 1 },
  [AIM_TOE_CHANGE] = { "toe_change", N_ ("Change of toe from the baseline"),
                       NC_ ("aim", "change of toe from the baseline"), "°", 0.05, 2 },
  [AIM_SCRUB_CHANGE] = { "scrub_change", N_ ("Change of scrub radius"),
                         NC_ ("aim", "change of scrub radius"), "mm", 1.0, 1 },
  [AIM_BUMP_STEER] = { "bump_steer", N_ ("Toe change over the travel used"),
                       NC_ ("aim", "toe change over the travel used"), "°", 0.05, 2 },
};

AimInfo
aim_info (Aim aim)
{
  AimInfo info = { 0 };

  g_return_val_if_fail (aim < N_AIMS, info);
  info = rows[aim];
  info.name = _ (info.name);
  info.furthest = g_str_equal (info.unit, "°") ? FURTHEST_ANGLE : FURTHEST_LENGTH;
  info.noun = g_dpgettext2 (GETTEXT_PACKAGE, "aim", info.noun);
  return info;
}

gboolean
aim_from_key (const char *key, Aim *aim)
{
  for (Aim i = 0; i < N_AIMS; i++)
    if (g_strcmp0 (rows[i].key, key) == 0) {
      *aim = i;
      return TRUE;
    }
  return FALSE;
}
