/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two cars compared to the bit. Numbers are compared as bytes, so that −0.0 is not 0.0;
 * structs that hold anything else are compared member by member, as padding has no
 * value. */

#include "model/car/car.h"

#include <stddef.h>
#include <string.h>

#define SAME_BITS(a, b) (memcmp (&(a), &(b), sizeof (a)) == 0)

static gboolean
equal_objects (JsonObject *a, JsonObject *b)
{
  return a == b || (a != NULL && b != NULL && json_object_equal (a, b));
}

/* What is not its own is not looked at: no file keeps it. */
static gboolean
equal_right_sides (const CarRightSide *a, const CarRightSide *b)
{
  if (!a->is_own || !b->is_own)
    return !a->is_own == !b->is_own;
  return SAME_BITS (a->mount, b->mount) &&
         SAME_BITS (a->camber_bolt_deg, b->camber_bolt_deg);
}

static gboolean
equal_unknown_of_setups (const CarSetup *a, const CarSetup *b)
{
  return equal_objects (a->unknown, b->unknown) &&
         equal_objects (a->unknown_mount, b->unknown_mount) &&
         equal_objects (a->unknown_corrections, b->unknown_corrections) &&
         equal_objects (a->unknown_plate, b->unknown_plate) &&
         equal_objects (a->unknown_right, b->unknown_right) &&
         equal_objects (a->unknown_springs, b->unknown_springs) &&
         equal_objects (a->unknown_rod, b->unknown_rod);
}

static gboolean
equal_springs_of_setups (const CarSetup *a, const CarSetup *b)
{
  if (!a->has_springs != !b->has_springs || !a->has_rod != !b->has_rod)
    return FALSE;
  return (!a->has_springs || SAME_BITS (a->springs, b->springs)) &&
         (!a->has_rod || SAME_BITS (a->rod, b->rod));
}

static gboolean
equal_setups (const CarSetup *a, const CarSetup *b)
{
  return g_str_equal (a->name, b->name) && SAME_BITS (a->mount, b->mount) &&
         SAME_BITS (a->lowering_mm, b->lowering_mm) && a->toe == b->toe &&
         SAME_BITS (a->corrections, b->corrections) && !a->is_hidden == !b->is_hidden &&
         g_strcmp0 (a->plate, b->plate) == 0 &&
         !a->is_plate_swapped == !b->is_plate_swapped &&
         equal_right_sides (&a->right, &b->right) && equal_springs_of_setups (a, b) &&
         equal_unknown_of_setups (a, b);
}

gboolean
car_target_equal (const CarTarget *a, const CarTarget *b)
{
  return a->aim == b->aim && SAME_BITS (a->least, b->least) &&
         SAME_BITS (a->most, b->most) && SAME_BITS (a->weight, b->weight) &&
         equal_objects (a->unknown, b->unknown);
}

static gboolean
equal_measured_right (const CarMeasuredRight *a, const CarMeasuredRight *b)
{
  if (!a->has_points != !b->has_points || !a->has_alignment != !b->has_alignment)
    return FALSE;
  if (a->has_points && !SAME_BITS (a->points, b->points))
    return FALSE;
  if (a->has_alignment && !(SAME_BITS (a->camber_deg, b->camber_deg) &&
                            SAME_BITS (a->toe_in_deg, b->toe_in_deg)))
    return FALSE;
  return equal_objects (a->unknown, b->unknown) &&
         equal_objects (a->unknown_corner, b->unknown_corner) &&
         equal_objects (a->unknown_alignment, b->unknown_alignment);
}

static gboolean
equal_lists (const Car *a, const Car *b)
{
  if (a->targets->len != b->targets->len || a->setups->len != b->setups->len)
    return FALSE;
  for (guint i = 0; i < a->targets->len; i++)
    if (!car_target_equal (&g_array_index (a->targets, CarTarget, i),
                           &g_array_index (b->targets, CarTarget, i)))
      return FALSE;
  for (guint i = 0; i < a->setups->len; i++)
    if (!equal_setups (car_setup (a, i), car_setup (b, i)))
      return FALSE;
  return TRUE;
}

static gboolean
equal_load_cases (const Car *a, const Car *b)
{
  const gsize n_before = offsetof (CarLoadCase, lateral_g);

  if (a->n_load_cases != b->n_load_cases)
    return FALSE;
  for (gsize i = 0; i < a->n_load_cases; i++) {
    const CarLoadCase *one = &a->load_cases[i], *other = &b->load_cases[i];

    if (strcmp (one->name, other->name) != 0 ||
        memcmp ((const char *) one + n_before, (const char *) other + n_before,
                sizeof *one - n_before) != 0)
      return FALSE;
  }
  return TRUE;
}

/* What a setup without its own stands on, and what it is looked at under. */
static gboolean
equal_springs (const Car *a, const Car *b)
{
  return SAME_BITS (a->springs, b->springs) &&
         equal_objects (a->unknown_springs, b->unknown_springs) &&
         equal_load_cases (a, b);
}

gboolean
car_equal (const Car *a, const Car *b)
{
  /* From the points to the targets there are only doubles, so no padding. */
  const gsize n_number_bytes = offsetof (Car, targets) - offsetof (Car, points);

  if (!g_str_equal (a->name, b->name) || !g_str_equal (a->notes, b->notes) ||
      memcmp (&a->points, &b->points, n_number_bytes) != 0 ||
      a->baseline != b->baseline || !equal_measured_right (&a->right, &b->right) ||
      !equal_springs (a, b) || !equal_lists (a, b))
    return FALSE;
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    if (!equal_objects (a->unknown[i], b->unknown[i]))
      return FALSE;
  return TRUE;
}
