/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/settings/units.h"
#include "window/settings/kept-settings.h"

struct _SwUnits {
  GObject parent_instance;
};

G_DEFINE_FINAL_TYPE (SwUnits, sw_units, G_TYPE_OBJECT)

static guint changed;

static void
take_kept (void)
{
  GSettings *settings = kept_settings ();

  if (settings == NULL)
    return;
  unit_choice_set (&(UnitChoice){
      .length = (LengthUnit) g_settings_get_enum (settings, "unit-length"),
      .angle = (AngleUnit) g_settings_get_enum (settings, "unit-angle"),
      .toe = (ToeUnit) g_settings_get_enum (settings, "unit-toe"),
      .mass = (MassUnit) g_settings_get_enum (settings, "unit-mass"),
      .force = (ForceUnit) g_settings_get_enum (settings, "unit-force"),
      .rate = (RateUnit) g_settings_get_enum (settings, "unit-rate"),
      .toe_diameter_mm = g_settings_get_double (settings, "toe-diameter"),
  });
}

static void
keep (const UnitChoice *choice)
{
  GSettings *settings = kept_settings ();

  if (settings == NULL)
    return;
  g_settings_set_enum (settings, "unit-length", (int) choice->length);
  g_settings_set_enum (settings, "unit-angle", (int) choice->angle);
  g_settings_set_enum (settings, "unit-toe", (int) choice->toe);
  g_settings_set_enum (settings, "unit-mass", (int) choice->mass);
  g_settings_set_enum (settings, "unit-force", (int) choice->force);
  g_settings_set_enum (settings, "unit-rate", (int) choice->rate);
  g_settings_set_double (settings, "toe-diameter", choice->toe_diameter_mm);
}

static void
sw_units_class_init (SwUnitsClass *class)
{
  changed = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0,
                          NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_units_init (SwUnits *self)
{
  (void) self;
  take_kept ();
}

SwUnits *
sw_units_get (void)
{
  static SwUnits *units;

  if (units == NULL)
    units = g_object_new (SW_TYPE_UNITS, NULL);
  return units;
}

void
sw_units_choose (SwUnits *self, const UnitChoice *choice)
{
  if (unit_choice_equal (choice, unit_choice ()))
    return;
  unit_choice_set (choice);
  keep (choice);
  g_signal_emit (self, changed, 0);
}
