/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "choice-fixture.h"

#include <math.h>

#define DEGREES(radians) (180.0 / G_PI * (radians))

static void
add_setup (Car *car, double lowering, ToeMode toe)
{
  const CarSetup setup = { .name = g_strdup ("tried"),
                           .lowering_mm = lowering,
                           .toe = toe };

  g_array_append_val (car->setups, setup);
}

Car *
choice_fixture_car (const MeasuredCorner *measured, double lowering, ToeMode toe)
{
  Car *car = car_new ();

  for (PointName i = 0; i < N_POINTS; i++)
    car->points[i] = measured->at[i];
  car->camber_deg = DEGREES (measured->camber);
  car->toe_in_deg = DEGREES (measured->toe_in);
  car->loaded_radius_mm = measured->loaded_radius;
  add_setup (car, lowering, toe);
  return car;
}

Car *
choice_fixture_random_car (Dice *dice)
{
  const MeasuredCorner measured = dice_corner (dice);
  const double lowering = dice_between (dice, 0.0, 40.0);
  const ToeMode toe = dice_between (dice, 0.0, 1.0) < 0.5 ? TOE_AS_MOVED : TOE_RESET;
  Car *car = choice_fixture_car (&measured, lowering, toe);

  /* Any of them may be at the end of its tie rod further out. */
  car->limits.travel_used_mm = 30.0;
  return car;
}

static PlateScale
any_scale (Dice *dice)
{
  const double least = dice_between (dice, -15.0, 0.0);
  const double most = least + dice_between (dice, 5.0, 20.0);

  return (PlateScale){ least, most };
}

static void
make_circle (Dice *dice, Plate *plate, gboolean is_indexed)
{
  plate->radius_mm = dice_between (dice, 4.0, 12.0);
  plate->turn_least_deg = dice_between (dice, -90.0, 90.0);
  plate->turn_most_deg = plate->turn_least_deg + dice_between (dice, 60.0, 360.0);
  for (double turn = 0.0; is_indexed && turn < 359.0; turn += 30.0)
    g_array_append_val (plate->turns_deg, turn);
}

static void
add_hole (Plate *plate, double inboard, double rearward)
{
  const PlateHole hole = { .label = g_strdup_printf ("%u", plate->holes->len + 1),
                           .inboard_mm = inboard,
                           .rearward_mm = rearward };

  g_array_append_val (plate->holes, hole);
}

Plate *
choice_fixture_plate (Dice *dice, PlateKind kind, gboolean is_indexed)
{
  Plate *plate = plate_new ();

  plate->kind = kind;
  plate->inboard_mm = dice_between (dice, -5.0, 8.0);
  plate->rearward_mm = dice_between (dice, -5.0, 8.0);
  plate->direction_deg = dice_between (dice, 0.0, 180.0);
  plate->along = any_scale (dice);
  plate->across = any_scale (dice);
  plate->raises_mm = dice_between (dice, -5.0, 10.0);
  if (kind == PLATE_ECCENTRIC)
    make_circle (dice, plate, is_indexed);
  for (guint i = 0; kind == PLATE_HOLES && i < 9; i++)
    add_hole (plate, dice_between (dice, -15.0, 20.0), dice_between (dice, -15.0, 20.0));
  return plate;
}

Plate *
choice_fixture_fixed (double inboard, double rearward)
{
  Plate *plate = plate_new ();

  plate->inboard_mm = inboard;
  plate->rearward_mm = rearward;
  return plate;
}

Plate *
choice_fixture_slot (double direction_deg, double least, double most)
{
  Plate *plate = plate_new ();

  plate->kind = PLATE_SLOT;
  plate->direction_deg = direction_deg;
  plate->along = (PlateScale){ least, most };
  return plate;
}

Plate *
choice_fixture_rectangle (double half_inboard, double half_rearward)
{
  Plate *plate = plate_new ();

  plate->kind = PLATE_CROSSED_SLOTS;
  plate->along = (PlateScale){ -half_inboard, half_inboard };
  plate->across = (PlateScale){ -half_rearward, half_rearward };
  return plate;
}

Plate *
choice_fixture_holes (const PlateHole *holes, guint n_holes)
{
  Plate *plate = plate_new ();

  plate->kind = PLATE_HOLES;
  for (guint i = 0; i < n_holes; i++)
    add_hole (plate, holes[i].inboard_mm, holes[i].rearward_mm);
  return plate;
}

static double
within (Dice *dice, PlateScale scale)
{
  return dice_between (dice, scale.least, scale.most);
}

PlateSetting
choice_fixture_setting (Dice *dice, const Plate *plate)
{
  const double along = within (dice, plate_along_range (plate));
  const double across = within (dice, plate_across_range (plate));
  const guint n_places = plate_n_places (plate);
  const double place = dice_between (dice, 0.0, n_places);

  return (PlateSetting){ .place = n_places > 0 ? (guint) place : 0,
                         .along = along,
                         .across = across };
}

void
choice_fixture_aim (Car *car, Aim aim, double least, double most, double weight)
{
  const CarTarget target = { .aim = aim, .least = least, .most = most, .weight = weight };

  g_array_append_val (car->targets, target);
}
