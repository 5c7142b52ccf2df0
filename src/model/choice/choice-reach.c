/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-reach.h"

#include <math.h>
#include <string.h>

#define RADIANS(degrees) (G_PI / 180.0 * (degrees))

#define PAST_END 1.0   /* mm or degrees */
#define STEP 0.1       /* mm: see ChoiceModel */
#define BOLT_ARM 600.0 /* mm: about how far above its clamp a strut ends */

static Plate *
widen (const Plate *plate)
{
  Plate *wide = plate_copy (plate);

  wide->along.least -= PAST_END;
  wide->along.most += PAST_END;
  wide->across.least -= PAST_END;
  wide->across.most += PAST_END;
  wide->turn_least_deg -= PAST_END;
  wide->turn_most_deg += PAST_END;
  return wide;
}

static void
add_way (ChoiceReach *reach, double least, double most, double unit)
{
  reach->least[reach->n_ways] = least / unit;
  reach->most[reach->n_ways] = most / unit;
  reach->unit[reach->n_ways++] = unit;
}

/* Of all bolts that can be had, less what the setup has already. */
static void
add_bolt (ChoiceReach *reach)
{
  const double own = reach->corner->adjustment.corrections.clamp_tilt;
  const double most = RADIANS (reach->corner->car->limits.camber_bolt_deg);

  add_way (reach, fmin (-most - own, 0.0), fmax (most - own, 0.0), 1.0 / BOLT_ARM);
}

static void
set_rooms (ChoiceReach *reach)
{
  const guint bolt = reach->n_plate_ways;
  ChoiceRooms rooms =
      reach->n_ways > bolt
          ? choice_rooms_of (reach->corner, reach->least[bolt] * reach->unit[bolt],
                             reach->most[bolt] * reach->unit[bolt])
          : choice_rooms_of (reach->corner, 0.0, 0.0);

  reach->rooms = g_memdup2 (&rooms, sizeof rooms);
}

ChoiceReach
choice_reach_of (const ChoiceCorner *corner,
                 const Plate *plate,
                 PlateSetting place,
                 gboolean has_bolt)
{
  const gboolean is_circle = plate->kind == PLATE_ECCENTRIC;
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);
  const double turn_unit = 1.0 / RADIANS (fmax (plate->radius_mm, 1.0));
  ChoiceReach reach = { .corner = corner,
                        .plate = plate,
                        .wide = widen (plate),
                        .setting = place,
                        .n_plate_ways = plate_n_ways (plate) };

  if (reach.n_plate_ways > 0)
    add_way (&reach, along.least, along.most, is_circle ? turn_unit : 1.0);
  if (reach.n_plate_ways > 1)
    add_way (&reach, across.least, across.most, 1.0);
  if (has_bolt)
    add_bolt (&reach);
  set_rooms (&reach);
  return reach;
}

void
choice_reach_clear (ChoiceReach *reach)
{
  g_clear_pointer (&reach->wide, plate_free);
  g_clear_pointer (&reach->rooms, g_free);
}

PlateSetting
choice_reach_setting (const ChoiceReach *reach, const double *x, double *camber_bolt)
{
  PlateSetting setting = reach->setting;

  if (reach->n_plate_ways > 0)
    setting.along = x[0] * reach->unit[0];
  if (reach->n_plate_ways > 1)
    setting.across = x[1] * reach->unit[1];
  *camber_bolt = reach->n_ways > reach->n_plate_ways
                     ? x[reach->n_plate_ways] * reach->unit[reach->n_plate_ways]
                     : 0.0;
  return setting;
}

gboolean
choice_reach_probe (const ChoiceReach *reach, const double *x, double outputs[N_OUTPUTS])
{
  double camber_bolt;
  const PlateSetting setting = choice_reach_setting (reach, x, &camber_bolt);

  return choice_probe (reach->corner, reach->rooms, plate_place (reach->wide, setting),
                       camber_bolt, reach->is_through_travel, outputs);
}

static gboolean
probe_beside (const ChoiceReach *reach,
              const double *x,
              guint i,
              double step_i,
              guint j,
              double step_j,
              double outputs[N_OUTPUTS])
{
  double beside[MOST_WAYS];

  memcpy (beside, x, sizeof beside);
  beside[i] += step_i;
  beside[j] += step_j;
  return choice_reach_probe (reach, beside, outputs);
}

static gboolean
model_way (const ChoiceReach *reach, const double *x, guint i, ChoiceModel *model)
{
  double low[N_OUTPUTS], high[N_OUTPUTS];

  if (!probe_beside (reach, x, i, -STEP, i, 0.0, low) ||
      !probe_beside (reach, x, i, STEP, i, 0.0, high))
    return FALSE;
  for (guint k = 0; k < model->n_outputs; k++) {
    model->slope[i][k] = (high[k] - low[k]) / (2.0 * STEP);
    model->bend[i][i][k] = (high[k] - 2.0 * model->value[k] + low[k]) / (STEP * STEP);
  }
  return TRUE;
}

static gboolean
model_pair (
    const ChoiceReach *reach, const double *x, guint i, guint j, ChoiceModel *model)
{
  double both[N_OUTPUTS];

  if (!probe_beside (reach, x, i, STEP, j, STEP, both))
    return FALSE;
  for (guint k = 0; k < model->n_outputs; k++) {
    const double straight =
        model->value[k] + STEP * (model->slope[i][k] + model->slope[j][k]) +
        STEP * STEP / 2.0 * (model->bend[i][i][k] + model->bend[j][j][k]);

    model->bend[i][j][k] = model->bend[j][i][k] = (both[k] - straight) / (STEP * STEP);
  }
  return TRUE;
}

gboolean
choice_reach_model (const ChoiceReach *reach,
                    const double *x,
                    const double outputs[N_OUTPUTS],
                    ChoiceModel *model)
{
  model->n_ways = reach->n_ways;
  model->n_outputs = reach->is_through_travel ? N_OUTPUTS : N_STANDING_OUTPUTS;
  memcpy (model->value, outputs, model->n_outputs * sizeof (double));
  for (guint i = 0; i < reach->n_ways; i++)
    if (!model_way (reach, x, i, model))
      return FALSE;
  for (guint i = 0; i < reach->n_ways; i++)
    for (guint j = i + 1; j < reach->n_ways; j++)
      if (!model_pair (reach, x, i, j, model))
        return FALSE;
  return TRUE;
}
