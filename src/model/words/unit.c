/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/unit.h"

#include "model/words/number-text.h"

#include <math.h>

#define MM_PER_INCH 25.4
#define INCH_PER_FOOT 12.0
#define KG_PER_LB 0.45359237
#define FREE_FALL 9.80665
#define N_PER_LBF (KG_PER_LB * FREE_FALL)
#define N_MM_PER_N_M 1000.0
#define N_MM_PER_LBF_FT (N_PER_LBF * MM_PER_INCH * INCH_PER_FOOT)
#define N_PER_MM2_PER_KSI (1000.0 * N_PER_LBF / (MM_PER_INCH * MM_PER_INCH))
#define MINUTES 60.0

const UnitChoice unit_choice_stored = { .toe_diameter_mm = 400.0 };

static UnitChoice choice = { .toe_diameter_mm = 400.0 };

const UnitChoice *
unit_choice (void)
{
  return &choice;
}

void
unit_choice_set (const UnitChoice *wanted)
{
  choice = *wanted;
}

static gboolean
has_inches (void)
{
  return choice.length == LENGTH_INCH;
}

static gboolean
has_pounds_force (void)
{
  return choice.force == FORCE_LBF;
}

static gboolean
is_toe_length (UnitKind kind)
{
  return kind == UNIT_TOE && choice.toe == TOE_AT_DIAMETER;
}

/* Of the units that are made with one of force. */
static double
size_with_force (UnitKind kind)
{
  if (!has_pounds_force ())
    return kind == UNIT_TORQUE ? N_MM_PER_N_M : 1.0;
  switch (kind) {
  case UNIT_FORCE:
    return N_PER_LBF;
  case UNIT_STRESS:
    return N_PER_MM2_PER_KSI;
  case UNIT_MODULUS: /* Mpsi are 1000 ksi as GPa are 1000 N/mm² */
    return N_PER_MM2_PER_KSI;
  case UNIT_TORQUE:
    return N_MM_PER_LBF_FT;
  default:
    return N_MM_PER_LBF_FT / 1000.0; /* N·m */
  }
}

/* Of a shown unit in stored ones, where a factor does. */
static double
size_of (UnitKind kind)
{
  switch (kind) {
  case UNIT_LENGTH:
    return has_inches () ? MM_PER_INCH : 1.0;
  case UNIT_TOE:
    return choice.toe == TOE_TOTAL ? 0.5 : 1.0;
  case UNIT_MASS:
    return choice.mass == MASS_LB ? KG_PER_LB : 1.0;
  case UNIT_FORCE:
  case UNIT_STRESS:
  case UNIT_MODULUS:
  case UNIT_TORQUE:
  case UNIT_TWIST_RATE:
    return size_with_force (kind);
  case UNIT_SPEED:
    return has_inches () ? MM_PER_INCH / 1000.0 : 1.0;
  case UNIT_RATE:
    return choice.rate == RATE_LBF_PER_INCH ? N_PER_LBF / MM_PER_INCH : 1.0;
  case UNIT_ANGLE_PER_LENGTH:
    return (unit_has_minutes (kind) ? 1.0 / MINUTES : 1.0) /
           (has_inches () ? MM_PER_INCH : 1.0);
  case UNIT_TURN_PER_LENGTH:
    return has_inches () ? 1.0 / MM_PER_INCH : 1.0;
  case UNIT_PER_LENGTH:
    return has_inches () ? 1000.0 / (MM_PER_INCH * INCH_PER_FOOT) : 1.0;
  default:
    return 1.0;
  }
}

/* Two rims of diameter D, each turned by the angle a: D · sin a each. */
static double
shown_toe_length (double degrees)
{
  const double mm = 2.0 * choice.toe_diameter_mm * sin (degrees * G_PI / 180.0);

  return mm / size_of (UNIT_LENGTH);
}

static double
stored_toe_length (double shown)
{
  const double mm = shown * size_of (UNIT_LENGTH);

  return asin (mm / (2.0 * choice.toe_diameter_mm)) * 180.0 / G_PI;
}

double
unit_shown (UnitKind kind, double stored)
{
  return is_toe_length (kind) ? shown_toe_length (stored) : stored / size_of (kind);
}

double
unit_stored (UnitKind kind, double shown)
{
  return is_toe_length (kind) ? stored_toe_length (shown) : shown * size_of (kind);
}

gboolean
unit_has_minutes (UnitKind kind)
{
  return choice.angle == ANGLE_MINUTES &&
         (kind == UNIT_ANGLE || kind == UNIT_ANGLE_PER_LENGTH ||
          (kind == UNIT_TOE && choice.toe != TOE_AT_DIAMETER));
}

gboolean
unit_is_sexagesimal (UnitKind kind)
{
  return unit_has_minutes (kind) && kind != UNIT_ANGLE_PER_LENGTH;
}

UnitKind
unit_kind_of (const char *symbol)
{
  static const struct {
    const char *symbol;
    UnitKind kind;
  } stored[] = { { "mm", UNIT_LENGTH },    { "°", UNIT_ANGLE },
                 { "kg", UNIT_MASS },      { "N", UNIT_FORCE },
                 { "N/mm", UNIT_RATE },    { "°/mm", UNIT_ANGLE_PER_LENGTH },
                 { "N/mm²", UNIT_STRESS }, { "GPa", UNIT_MODULUS },
                 { "N·mm", UNIT_TORQUE },  { "N·m/°", UNIT_TWIST_RATE },
                 { "m/s", UNIT_SPEED } };

  for (gsize i = 0; i < G_N_ELEMENTS (stored); i++)
    if (g_str_equal (stored[i].symbol, symbol))
      return stored[i].kind;
  return UNIT_NONE;
}

static const char *
angle_per_length_symbol (void)
{
  if (unit_has_minutes (UNIT_ANGLE_PER_LENGTH))
    return has_inches () ? "′/in" : "′/mm";
  return has_inches () ? "°/in" : "°/mm";
}

static const char *
symbol_with_force (UnitKind kind)
{
  switch (kind) {
  case UNIT_FORCE:
    return has_pounds_force () ? "lbf" : "N";
  case UNIT_STRESS:
    return has_pounds_force () ? "ksi" : "N/mm²";
  case UNIT_MODULUS:
    return has_pounds_force () ? "Mpsi" : "GPa";
  case UNIT_TORQUE:
    return has_pounds_force () ? "lbf·ft" : "N·m";
  default:
    return has_pounds_force () ? "lbf·ft/°" : "N·m/°";
  }
}

const char *
unit_symbol (UnitKind kind)
{
  if (unit_is_sexagesimal (kind))
    return "";
  switch (kind) {
  case UNIT_LENGTH:
    return has_inches () ? "in" : "mm";
  case UNIT_PITCH:
    return "mm";
  case UNIT_ANGLE:
    return "°";
  case UNIT_TOE:
    return is_toe_length (kind) ? unit_symbol (UNIT_LENGTH) : "°";
  case UNIT_MASS:
    return choice.mass == MASS_LB ? "lb" : "kg";
  case UNIT_FORCE:
  case UNIT_STRESS:
  case UNIT_MODULUS:
  case UNIT_TORQUE:
  case UNIT_TWIST_RATE:
    return symbol_with_force (kind);
  case UNIT_SPEED:
    return has_inches () ? "in/s" : "m/s";
  case UNIT_RATE:
    return choice.rate == RATE_LBF_PER_INCH ? "lbf/in" : "N/mm";
  case UNIT_ANGLE_PER_LENGTH:
    return angle_per_length_symbol ();
  case UNIT_TURN_PER_LENGTH:
    return has_inches () ? "rad/in" : "rad/mm";
  case UNIT_PER_LENGTH:
    return has_inches () ? "1/ft" : "1/m";
  default:
    return "";
  }
}

const char *
unit_caption (UnitKind kind)
{
  return unit_is_sexagesimal (kind) ? "° ′" : unit_symbol (kind);
}

gboolean
unit_is_close (UnitKind kind)
{
  return unit_is_sexagesimal (kind) || g_str_equal (unit_symbol (kind), "°");
}

static int
length_decimals (int decimals)
{
  return has_inches () ? MIN (decimals + 2, 3) : decimals;
}

/* A tenth of a minute is a 600th of a degree. */
static int
minute_decimals (int decimals)
{
  return MAX (decimals - 2, 0);
}

/* A hundredth of a degree at 400 mm on either side is 0.14 mm. */
static int
toe_decimals (int decimals)
{
  if (is_toe_length (UNIT_TOE))
    return length_decimals (MAX (decimals - 1, 0));
  return unit_has_minutes (UNIT_TOE) ? minute_decimals (decimals) : decimals;
}

int
unit_decimals (UnitKind kind, int decimals)
{
  switch (kind) {
  case UNIT_LENGTH:
    return length_decimals (decimals);
  case UNIT_ANGLE:
    return unit_has_minutes (kind) ? minute_decimals (decimals) : decimals;
  case UNIT_TOE:
    return toe_decimals (decimals);
  case UNIT_RATE:
    return choice.rate == RATE_LBF_PER_INCH ? MAX (decimals - 1, 0) : decimals;
  case UNIT_ANGLE_PER_LENGTH:
    return MAX (decimals - (unit_has_minutes (kind) ? 2 : 0) - (has_inches () ? 1 : 0),
                0);
  case UNIT_TURN_PER_LENGTH:
    return has_inches () ? MAX (decimals - 1, 0) : decimals;
  case UNIT_STRESS:
  case UNIT_MODULUS:
    return has_pounds_force () ? decimals + 1 : decimals;
  case UNIT_TORQUE: /* a tenth, where a thousandth of it is stored */
    return decimals + 1;
  default:
    return decimals;
  }
}

double
unit_rounded (UnitKind kind, double shown, int decimals)
{
  const double unit = pow (10.0, decimals) * (unit_is_sexagesimal (kind) ? MINUTES : 1.0);

  return round (shown * unit) / unit;
}

static const char *
sign_of (double rounded, gboolean with_sign)
{
  return rounded < 0.0 ? "−" : rounded > 0.0 && with_sign ? "+" : "";
}

/* Rounded as minutes, so that 0.999° is 1°0′ and not 0°60′. */
static void
format_minutes (double degrees, int decimals, gboolean with_sign, char *text, gsize size)
{
  const double rounded = MINUTES * unit_rounded (UNIT_ANGLE, degrees, decimals);
  /* a minute is no binary fraction of a degree */
  const double whole = floor (fabs (rounded) / MINUTES + 1e-9);

  g_snprintf (text, size, "%s%.0f°%0*.*f′", sign_of (rounded, with_sign), whole,
              decimals > 0 ? decimals + 3 : 2, decimals,
              fabs (fabs (rounded) - whole * MINUTES));
}

static void
format_decimal (double value, int decimals, gboolean with_sign, char *text, gsize size)
{
  const double rounded = unit_rounded (UNIT_NONE, value, decimals);

  g_snprintf (text, size, "%s%.*f", sign_of (rounded, with_sign), decimals,
              fabs (rounded));
}

void
unit_format_shown (
    UnitKind kind, double shown, int decimals, gboolean with_sign, char *text, gsize size)
{
  if (!isfinite (shown))
    g_strlcpy (text, "–", size);
  else if (unit_is_sexagesimal (kind))
    format_minutes (shown, decimals, with_sign, text, size);
  else
    format_decimal (shown, decimals, with_sign, text, size);
}

void
unit_format (UnitKind kind,
             double stored,
             int decimals,
             gboolean with_sign,
             char *text,
             gsize size)
{
  unit_format_shown (kind, unit_shown (kind, stored), unit_decimals (kind, decimals),
                     with_sign, text, size);
}

void
unit_format_whole (UnitKind kind,
                   double stored,
                   int decimals,
                   gboolean with_sign,
                   char *text,
                   gsize size)
{
  unit_format (kind, stored, decimals, with_sign, text, size);
  if (unit_symbol (kind)[0] == '\0')
    return;
  g_strlcat (text, unit_is_close (kind) ? "" : " ", size);
  g_strlcat (text, unit_symbol (kind), size);
}

char *
unit_text (UnitKind kind, double stored, int decimals)
{
  char text[400]; /* the largest double has 309 digits */

  unit_format_whole (kind, stored, decimals, FALSE, text, sizeof text);
  return g_strdup (text);
}

char *
unit_plain_number (UnitKind kind, double stored, int decimals)
{
  char text[400];

  if (unit_shown (kind, 1.0) == 1.0 && !unit_is_sexagesimal (kind))
    return plain_number_text (stored);
  unit_format (kind, stored, decimals, FALSE, text, sizeof text);
  return g_strdup (text);
}

char *
unit_plain_text (UnitKind kind, double stored, int decimals)
{
  g_autofree char *number = unit_plain_number (kind, stored, decimals);

  return g_strconcat (number,
                      unit_is_close (kind) || unit_symbol (kind)[0] == '\0' ? "" : " ",
                      unit_symbol (kind), NULL);
}

gboolean
unit_choice_equal (const UnitChoice *a, const UnitChoice *b)
{
  return a->length == b->length && a->angle == b->angle && a->toe == b->toe &&
         a->mass == b->mass && a->force == b->force && a->rate == b->rate &&
         a->toe_diameter_mm == b->toe_diameter_mm;
}

double
unit_round_step (UnitKind kind, double step)
{
  if (kind == UNIT_LENGTH && has_inches ())
    return step * 0.05 * MM_PER_INCH;
  if (kind == UNIT_MASS && choice.mass == MASS_LB)
    return step * 2.0 * KG_PER_LB;
  if (kind == UNIT_FORCE && choice.force == FORCE_LBF)
    return step * 0.2 * N_PER_LBF;
  if (kind == UNIT_MODULUS && has_pounds_force ())
    return step * 0.2 * N_PER_MM2_PER_KSI;
  if (kind == UNIT_TWIST_RATE && has_pounds_force ())
    return step * N_MM_PER_LBF_FT / 1000.0;
  if (kind == UNIT_RATE && choice.rate == RATE_LBF_PER_INCH)
    return step * 5.0 * N_PER_LBF / MM_PER_INCH;
  return step;
}

static double
decimal_step (int rank)
{
  static const double mantissa[] = { 1.0, 2.0, 5.0 };
  const int decade = rank >= 0 ? rank / 3 : -((2 - rank) / 3);
  const double m = mantissa[rank - 3 * decade];

  /* a division by a whole number is exact where a product with 0.1 is not */
  return decade >= 0 ? m * pow (10.0, decade) : m / pow (10.0, -decade);
}

double
unit_step_of_rank (UnitKind kind, int rank)
{
  static const double minutes[] = { 30.0, 20.0, 10.0, 5.0, 2.0, 1.0 };

  if (!unit_is_sexagesimal (kind) || rank >= 0)
    return decimal_step (rank);
  return (rank >= UNIT_RANK_OF_A_MINUTE ? minutes[-rank - 1]
                                        : decimal_step (rank - UNIT_RANK_OF_A_MINUTE)) /
         MINUTES;
}
