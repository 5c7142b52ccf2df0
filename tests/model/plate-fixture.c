/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plate-fixture.h"

void
fixture_add_hole (Plate *plate, const char *label, double inboard, double rearward)
{
  const PlateHole hole = { .label = g_strdup (label),
                           .inboard_mm = inboard,
                           .rearward_mm = rearward };

  g_array_append_val (plate->holes, hole);
}

static PlateScale
random_scale (GRand *rand, double far, double longest)
{
  const double least = g_rand_double_range (rand, -far, far);

  return (PlateScale){ least, least + g_rand_double_range (rand, 0.1, longest) };
}

static void
add_turns (Plate *plate, GRand *rand)
{
  const int n = g_rand_int_range (rand, 1, 13);
  double turn = g_rand_double_range (rand, -180.0, 0.0);

  for (int i = 0; i < n; i++, turn += g_rand_double_range (rand, 5.0, 25.0))
    g_array_append_val (plate->turns_deg, turn);
}

static void
add_holes (Plate *plate, GRand *rand)
{
  const int n = g_rand_int_range (rand, 1, 9);

  for (int i = 0; i < n; i++) {
    g_autofree char *label = g_strdup_printf ("%d", i + 1);

    fixture_add_hole (plate, label, g_rand_double_range (rand, -20.0, 30.0),
                      g_rand_double_range (rand, -20.0, 20.0) / 3.0);
  }
}

Plate *
fixture_random_plate (GRand *rand, PlateKind kind)
{
  Plate *plate = plate_new ();
  const PlateScale turns = random_scale (rand, 180.0, 170.0);

  g_free (plate->name);
  plate->name = g_strdup_printf ("Plate %u", g_rand_int (rand));
  plate->kind = kind;
  plate->inboard_mm = g_rand_double_range (rand, -10.0, 10.0) / 7.0;
  plate->rearward_mm = g_rand_double_range (rand, -10.0, 10.0);
  plate->direction_deg = g_rand_double_range (rand, -360.0, 360.0);
  plate->along = random_scale (rand, 15.0, 30.0);
  plate->across = random_scale (rand, 15.0, 30.0);
  plate->radius_mm = g_rand_double_range (rand, 0.5, 20.0);
  plate->turn_least_deg = turns.least;
  plate->turn_most_deg = turns.most;
  if (kind == PLATE_ECCENTRIC && g_rand_boolean (rand))
    add_turns (plate, rand);
  if (kind == PLATE_HOLES)
    add_holes (plate, rand);
  plate->raises_mm = g_rand_double_range (rand, -10.0, 10.0);
  plate->can_swap = g_rand_boolean (rand);
  plate->swap_turn_deg = g_rand_double_range (rand, -180.0, 180.0);
  return plate;
}

PlateSetting
fixture_random_setting (GRand *rand, const Plate *plate)
{
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);
  const guint n = plate_n_places (plate);

  return (PlateSetting){
    .place = n > 0 ? (guint) g_rand_int_range (rand, 0, (gint32) n) : 0,
    .along = along.least + (along.most - along.least) * g_rand_double (rand),
    .across = across.least + (across.most - across.least) * g_rand_double (rand)
  };
}
