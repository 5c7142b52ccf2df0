/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/plate/plate.h"
#include "model/words/number-text.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define ALONG_AXIS 1.0 /* degrees: what a fitter takes for straight */

const char *
plate_kind_name (PlateKind kind)
{
  static const char *const names[N_PLATE_KINDS] = {
    [PLATE_FIXED] = NC_ ("plate", "Fixed"),
    [PLATE_SLOT] = NC_ ("plate", "Slot"),
    [PLATE_CROSSED_SLOTS] = NC_ ("plate", "Crossed slots"),
    [PLATE_ECCENTRIC] = NC_ ("plate", "Turned in place"),
    [PLATE_HOLES] = NC_ ("plate", "Bolt holes"),
  };

  g_return_val_if_fail (kind < N_PLATE_KINDS, "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "plate", names[kind]);
}

const char *
plate_kind_meaning (PlateKind kind)
{
  static const char *const meanings[N_PLATE_KINDS] = {
    [PLATE_FIXED] = N_ ("The bearing sits in one place and cannot be set."),
    [PLATE_SLOT] = N_ ("The bearing slides along one straight slot."),
    [PLATE_CROSSED_SLOTS] = N_ (
        "The bearing slides along two slots that are square to each other, so it reaches every place in a rectangle."),
    [PLATE_ECCENTRIC] = N_ (
        "The bearing sits off centre in a bush that is turned in place, so it stands on a circle."),
    [PLATE_HOLES] = N_ (
        "The bearing is bolted down in one of several positions and cannot stand between them."),
  };

  g_return_val_if_fail (kind < N_PLATE_KINDS, "");
  return _ (meanings[kind]);
}

/* To a tenth of a degree, and without decimals that say nothing. */
static char *
turn_text (double degrees)
{
  return plain_number_text (round (degrees * 10.0) / 10.0);
}

static char *
describe_turn (const Plate *plate, PlateSetting setting)
{
  const gboolean is_indexed = plate->turns_deg->len > 0;
  g_autofree char *turn =
      is_indexed ? plain_number_text (
                       g_array_index (plate->turns_deg, double,
                                      MIN (setting.place, plate->turns_deg->len - 1)))
                 : turn_text (setting.along);

  return g_strdup_printf (_ ("turned to %s°"), turn);
}

static char *
describe_hole (const Plate *plate, PlateSetting setting)
{
  g_return_val_if_fail (plate->holes->len > 0, g_strdup (""));

  return g_strdup_printf (_ ("hole %s"),
                          g_array_index (plate->holes, PlateHole,
                                         MIN (setting.place, plate->holes->len - 1))
                              .label);
}

/* The words of a scale that points along an axis of the car, or else by its number. */
static const char *
scale_words (const Plate *plate, PlateScaleName scale, gboolean is_swapped)
{
  /* Translators: each is one part of "12.0 inboard scale, 6.1 rearward scale", what is
   * read on the scale that points there. */
  static const char *const along_axis[] = {
    N_ ("%s inboard scale"),
    N_ ("%s rearward scale"),
    N_ ("%s outboard scale"),
    N_ ("%s forward scale"),
  };
  const double direction = plate_scale_direction (plate, scale, is_swapped);
  const double quarters = round (direction / 90.0);

  if (fabs (direction - 90.0 * quarters) <= ALONG_AXIS)
    return _ (along_axis[(int) quarters % 4]);
  return scale == PLATE_FIRST_SCALE ? _ ("%s first scale") : _ ("%s second scale");
}

static char *
describe_scale (const Plate *plate,
                PlateScaleName scale,
                gboolean is_swapped,
                double reading)
{
  const char *words = scale_words (plate, scale, is_swapped);
  g_autofree char *bare = number_text (reading, 1);
  /* scales are engraved in millimetres, which is said to those who expect inches */
  g_autofree char *number =
      g_strconcat (bare, unit_choice ()->length == LENGTH_INCH ? " mm" : "", NULL);

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (words, number);
#pragma GCC diagnostic pop
}

static char *
describe_scales (const Plate *plate, PlateSetting setting)
{
  if (plate->kind == PLATE_SLOT) {
    g_autofree char *along = number_text (setting.along, 1);

    return g_strdup_printf (_ ("%s mm on the scale"), along);
  }

  g_autofree char *first =
      describe_scale (plate, PLATE_FIRST_SCALE, setting.is_swapped, setting.along);
  g_autofree char *second =
      describe_scale (plate, PLATE_SECOND_SCALE, setting.is_swapped, setting.across);
  /* Translators: mm on the scales of two slots that are square to each other, as "12.0
   * inboard scale" and "6.1 rearward scale". */
  return g_strdup_printf (_ ("%s, %s"), first, second);
}

char *
plate_describe_dials (const Plate *plate, PlateSetting setting)
{
  switch (plate->kind) {
  case PLATE_SLOT:
  case PLATE_CROSSED_SLOTS:
    return describe_scales (plate, setting);
  case PLATE_ECCENTRIC:
    return describe_turn (plate, setting);
  case PLATE_HOLES:
    return describe_hole (plate, setting);
  default:
    return g_strdup (_ ("as it is"));
  }
}

char *
plate_describe_setting (const Plate *plate, PlateSetting setting)
{
  char *text = plate_describe_dials (plate, setting);

  if (!setting.is_swapped)
    return text;

  g_autofree char *unswapped = text;
  /* Translators: what is dialled in, as "hole 3" or "12.5 mm on the scale". */
  return g_strdup_printf (_ ("%s, left and right plates swapped"), unswapped);
}
