/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

#include <math.h>

gboolean
command_line_choose_steps (const Car *car, TravelSteps asked, TravelSteps *steps)
{
  const TravelSteps whole = travel_steps_of_car (car);
  g_autoptr (GError) error = NULL;
  gsize n_rows;

  steps->from = isnan (asked.from) ? whole.from : asked.from;
  steps->to = isnan (asked.to) ? whole.to : asked.to;
  steps->step = isnan (asked.step) ? whole.step : asked.step;
  if (travel_steps_count (*steps, &n_rows, &error))
    return TRUE;
  command_line_say ("%s", error->message);
  return FALSE;
}
