/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/number-text.h"

#include <math.h>

#define NOISE 1e-11

static char *
with_sign (double value, const char *digits)
{
  return g_strconcat (value < 0.0 ? "−" : "", digits, NULL);
}

char *
number_text (double value, int decimals)
{
  const double unit = pow (10.0, decimals), rounded = round (value * unit) / unit;
  g_autofree char *digits = g_strdup_printf ("%.*f", decimals, fabs (rounded));

  return with_sign (rounded, digits);
}

char *
plain_number_text (double value)
{
  g_autofree char *digits = g_strdup_printf ("%g", fabs (value));

  return with_sign (value, digits);
}

void
append_exact_number (GString *text, double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (digits, sizeof digits, "%.12g", fabs (value) < NOISE ? 0.0 : value);
  g_string_append (text, digits);
}
