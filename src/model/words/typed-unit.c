/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/typed-unit.h"

#include <string.h>

#define INCH 25.4
#define FOOT (12.0 * INCH)
#define LB 0.45359237
#define FREE_FALL 9.80665
#define LBF (LB * FREE_FALL)
#define KSI (1000.0 * LBF / (INCH * INCH)) /* N/mm² */
#define LBF_FT (LBF * FOOT)                /* N·mm */
#define MINUTE (1.0 / 60.0)
#define SECOND (1.0 / 3600.0)

static const TypedUnit units[] = {
  { "mm", UNIT_LENGTH, 1.0, 0.0 },
  { "cm", UNIT_LENGTH, 10.0, 0.0 },
  { "m", UNIT_LENGTH, 1000.0, 0.0 },
  { "in", UNIT_LENGTH, INCH, 0.0 },
  { "inch", UNIT_LENGTH, INCH, 0.0 },
  { "inches", UNIT_LENGTH, INCH, 0.0 },
  { "\"", UNIT_LENGTH, INCH, 0.0 },
  { "″", UNIT_LENGTH, INCH, 0.0 },
  { "”", UNIT_LENGTH, INCH, 0.0 },
  { "''", UNIT_LENGTH, INCH, 0.0 },
  { "ft", UNIT_LENGTH, FOOT, 1.0 / 12.0 },
  { "foot", UNIT_LENGTH, FOOT, 1.0 / 12.0 },
  { "feet", UNIT_LENGTH, FOOT, 1.0 / 12.0 },
  { "'", UNIT_LENGTH, FOOT, 1.0 / 12.0 },
  { "′", UNIT_LENGTH, FOOT, 1.0 / 12.0 },
  { "’", UNIT_LENGTH, FOOT, 1.0 / 12.0 },
  { "°", UNIT_ANGLE, 1.0, MINUTE },
  { "º", UNIT_ANGLE, 1.0, MINUTE }, /* the ordinal mark, where keyboards have no other */
  { "deg", UNIT_ANGLE, 1.0, MINUTE },
  { "'", UNIT_ANGLE, MINUTE, MINUTE },
  { "′", UNIT_ANGLE, MINUTE, MINUTE },
  { "’", UNIT_ANGLE, MINUTE, MINUTE },
  { "min", UNIT_ANGLE, MINUTE, MINUTE },
  { "\"", UNIT_ANGLE, SECOND, 0.0 },
  { "″", UNIT_ANGLE, SECOND, 0.0 },
  { "”", UNIT_ANGLE, SECOND, 0.0 },
  { "''", UNIT_ANGLE, SECOND, 0.0 },
  { "kg", UNIT_MASS, 1.0, 0.0 },
  { "g", UNIT_MASS, 0.001, 0.0 },
  { "lb", UNIT_MASS, LB, 0.0 },
  { "lbs", UNIT_MASS, LB, 0.0 },
  { "N", UNIT_FORCE, 1.0, 0.0 },
  { "kN", UNIT_FORCE, 1000.0, 0.0 },
  { "kgf", UNIT_FORCE, FREE_FALL, 0.0 },
  { "lbf", UNIT_FORCE, LBF, 0.0 },
  { "lb", UNIT_FORCE, LBF, 0.0 },
  { "lbs", UNIT_FORCE, LBF, 0.0 },
  { "N/mm", UNIT_RATE, 1.0, 0.0 },
  { "N/m", UNIT_RATE, 0.001, 0.0 },
  { "kN/m", UNIT_RATE, 1.0, 0.0 },
  { "kgf/mm", UNIT_RATE, FREE_FALL, 0.0 },
  { "lbf/in", UNIT_RATE, LBF / INCH, 0.0 },
  { "lb/in", UNIT_RATE, LBF / INCH, 0.0 },
  { "lbs/in", UNIT_RATE, LBF / INCH, 0.0 },
  { "N/mm²", UNIT_STRESS, 1.0, 0.0 },
  { "MPa", UNIT_STRESS, 1.0, 0.0 },
  { "ksi", UNIT_STRESS, KSI, 0.0 },
  { "psi", UNIT_STRESS, KSI / 1000.0, 0.0 },
  { "GPa", UNIT_MODULUS, 1.0, 0.0 },
  { "N/mm²", UNIT_MODULUS, 0.001, 0.0 },
  { "MPa", UNIT_MODULUS, 0.001, 0.0 },
  { "Mpsi", UNIT_MODULUS, KSI, 0.0 },
  { "ksi", UNIT_MODULUS, KSI / 1000.0, 0.0 },
  { "psi", UNIT_MODULUS, KSI / 1e6, 0.0 },
  { "N·mm", UNIT_TORQUE, 1.0, 0.0 },
  { "Nmm", UNIT_TORQUE, 1.0, 0.0 },
  { "N·m", UNIT_TORQUE, 1000.0, 0.0 },
  { "Nm", UNIT_TORQUE, 1000.0, 0.0 },
  { "lbf·ft", UNIT_TORQUE, LBF_FT, 0.0 },
  { "lbf ft", UNIT_TORQUE, LBF_FT, 0.0 },
  { "in·lbf", UNIT_TORQUE, LBF_FT / 12.0, 0.0 },
  { "in lbf", UNIT_TORQUE, LBF_FT / 12.0, 0.0 },
  { "N·m/°", UNIT_TWIST_RATE, 1.0, 0.0 },
  { "Nm/°", UNIT_TWIST_RATE, 1.0, 0.0 },
  { "Nm/deg", UNIT_TWIST_RATE, 1.0, 0.0 },
  { "lbf·ft/°", UNIT_TWIST_RATE, LBF_FT / 1000.0, 0.0 },
  { "lbf ft/°", UNIT_TWIST_RATE, LBF_FT / 1000.0, 0.0 },
  { "lbf ft/deg", UNIT_TWIST_RATE, LBF_FT / 1000.0, 0.0 },
  { "in·lbf/°", UNIT_TWIST_RATE, LBF_FT / 12000.0, 0.0 },
  { "in lbf/°", UNIT_TWIST_RATE, LBF_FT / 12000.0, 0.0 },
  { "in lbf/deg", UNIT_TWIST_RATE, LBF_FT / 12000.0, 0.0 },
  { "m/s", UNIT_SPEED, 1.0, 0.0 },
  { "mm/s", UNIT_SPEED, 0.001, 0.0 },
  { "in/s", UNIT_SPEED, INCH / 1000.0, 0.0 },
  { "ft/s", UNIT_SPEED, FOOT / 1000.0, 0.0 },
};

/* "in" is not what "inside" begins with. */
static gboolean
begins_with (const char *text, const char *symbol)
{
  const gsize length = strlen (symbol);

  if (strncmp (text, symbol, length) != 0)
    return FALSE;
  return !g_ascii_isalpha (symbol[length - 1]) ||
         !g_unichar_isalpha (g_utf8_get_char (text + length));
}

static gboolean
is_longer (const TypedUnit *unit, const TypedUnit *best)
{
  return best == NULL || strlen (unit->symbol) > strlen (best->symbol);
}

const TypedUnit *
typed_unit_find (const char *text, UnitKind kind)
{
  const TypedUnit *own = NULL, *other = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (!begins_with (text, units[i].symbol))
      continue;
    else if (units[i].kind == kind && is_longer (&units[i], own))
      own = &units[i];
    else if (units[i].kind != kind && is_longer (&units[i], other))
      other = &units[i];
  return own != NULL ? own : other;
}
