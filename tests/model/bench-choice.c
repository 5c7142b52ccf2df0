/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long it takes to choose among the eight plates that come with the program, both
 * sides of the car being different: what the window does after every drag. Prints, never
 * fails on time. */
#include "car-fixture.h"

#include "model/choice/choice.h"
#include "model/plate/plate-json.h"

#include <stdio.h>
#include <time.h>

#define N_ROUNDS 60

static GPtrArray *
load_plates (void)
{
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "..", "data", "plates", NULL);
  g_autoptr (GDir) folder = g_dir_open (path, 0, NULL);
  GPtrArray *plates = g_ptr_array_new_with_free_func ((GDestroyNotify) plate_free);
  const char *name;

  while ((name = g_dir_read_name (folder)) != NULL) {
    g_autofree char *full = g_build_filename (path, name, NULL);
    g_autoptr (GFile) file = g_file_new_for_path (full);
    Plate *plate = plate_load (file, NULL);

    if (plate != NULL)
      g_ptr_array_add (plates, plate);
  }
  return plates;
}

static void
aim (Car *car, Aim aim, double least, double most)
{
  const CarTarget target = { .aim = aim, .least = least, .most = most, .weight = 1.0 };

  g_array_append_val (car->targets, target);
}

/* A car with everything that costs time: two sides, a tower, a strut with its spring. */
static Car *
full_car (void)
{
  Car *car = fixture_demo ("fieldfare");

  g_array_set_size (car->targets, 0);
  car->tower = (CarTower){ .opening_diameter_mm = 88.0 };
  car->strut = (CarStrut){ .tube_diameter_mm = 52.0,
                           .tube_top_mm = 260.0,
                           .seat_diameter_mm = 150.0,
                           .seat_height_mm = 190.0,
                           .spring_diameter_mm = 140.0 };
  car->limits.tyre_clearance_mm = 3.0;
  car->right.has_alignment = TRUE;
  car->right.camber_deg = car->camber_deg + 0.3;
  car->right.toe_in_deg = car->toe_in_deg;
  aim (car, AIM_CAMBER, -2.6, -2.4);
  aim (car, AIM_CASTER, 5.0, INFINITY);
  aim (car, AIM_SCRUB_CHANGE, -2.0, 2.0);
  return car;
}

/* Of this program alone, whatever else runs. */
static gint64
processor_time (void)
{
  return (gint64) clock () * 1000000 / CLOCKS_PER_SEC;
}

static int
compare_times (const void *a, const void *b)
{
  const gint64 left = *(const gint64 *) a, right = *(const gint64 *) b;

  return (left > right) - (left < right);
}

static void
measure (const char *what, Car *car, const GPtrArray *plates, gboolean tries_all)
{
  const ChoiceQuestion question = { .setup = 2,
                                    .try_bolt = tries_all,
                                    .try_swap = tries_all };
  gint64 times[N_ROUNDS];
  guint n_rows = 0;

  for (int i = 0; i < N_ROUNDS; i++) {
    car_setup (car, 2)->lowering_mm = 10.0 + 0.5 * i;
    const gint64 begin = processor_time ();
    g_autoptr (GArray) answers =
                   choice_solve (car, &question, (const Plate *const *) plates->pdata,
                                 plates->len);
    times[i] = processor_time () - begin;
    n_rows = answers->len;
  }
  qsort (times, N_ROUNDS, sizeof *times, compare_times);
  printf ("%-44s %2u rows, median %6.2f ms, p95 %6.2f ms\n", what, n_rows,
          (double) times[N_ROUNDS / 2] / 1000.0,
          (double) times[N_ROUNDS * 95 / 100] / 1000.0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_autoptr (Car) car = full_car ();
  g_autoptr (GPtrArray) plates = load_plates ();

  measure ("camber, caster, scrub change", car, plates, FALSE);
  measure ("with bolts and swapped plates", car, plates, TRUE);
  aim (car, AIM_BUMP_STEER, 0.0, 0.05);
  aim (car, AIM_TOE_CHANGE, -0.5, 0.5);
  measure ("and bump steer, toe change", car, plates, FALSE);
  measure ("with bolts and swapped plates", car, plates, TRUE);
  for (guint i = 0; i < plates->len; i++)
    ((Plate *) plates->pdata[i])->bearing_tilt_deg = 0.0;
  g_array_set_size (car->targets, 3);
  measure ("three aims, no limit of tilt", car, plates, FALSE);
  return 0;
}
