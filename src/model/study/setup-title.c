/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/setup-title.h"

#include <glib/gi18n-lib.h>

const char *
measured_car_title (void)
{
  return _ ("measured car");
}

/* Files of any language keep the English name or that of their own. */
static gboolean
is_named_as_measured (const char *name)
{
  return g_str_equal (name, "As measured") || g_str_equal (name, _ ("As measured"));
}

static gboolean
stands_as_measured (const CarSetup *setup, CarSide side)
{
  const Adjustment adjustment = car_side_adjustment (setup, side);

  return adjustment.lowering == 0.0 && !adjustment_changes_linkage (&adjustment);
}

const char *
setup_title (const CarSetup *setup)
{
  if (!is_named_as_measured (setup->name) ||
      (stands_as_measured (setup, SIDE_LEFT) && stands_as_measured (setup, SIDE_RIGHT)))
    return setup->name;
  return _ ("As measured (changed)");
}
