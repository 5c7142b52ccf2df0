/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a document's car and its setups stand on, and the cases of load. */

#include "model/car/car-json-loads.h"
#include "model/car/car-json-springs.h"
#include "model/car/car-json.h"
#include "model/document/document-private.h"

#include <string.h>

#define SAME_BITS(a, b) (memcmp (&(a), &(b), sizeof (a)) == 0)

static void
drop_springs (SwDocument *self, CarSetup *setup, const char *label)
{
  if (!setup->has_springs)
    return;
  setup->has_springs = FALSE;
  memset (&setup->springs, 0, sizeof setup->springs);
  g_clear_pointer (&setup->unknown_springs, json_object_unref);
  document_finish_edit (self, label);
}

/* FALSE where @wanted is refused; *@is_another says whether anything was set. */
static gboolean
take_springs (const Car *car,
              const CarSprings *wanted,
              CarSprings *springs,
              JsonObject **unknown,
              gboolean *is_another)
{
  JsonObject *kept = NULL;
  CarSprings next;

  if (!car_check_spring_seats (car, wanted, NULL) ||
      !springs_renew (wanted, *unknown, &next, &kept, NULL))
    return FALSE;
  *is_another = !SAME_BITS (*springs, next);
  if (!*is_another) {
    g_clear_pointer (&kept, json_object_unref);
    return TRUE;
  }
  *springs = next;
  g_clear_pointer (unknown, json_object_unref);
  *unknown = kept;
  return TRUE;
}

gboolean
sw_document_set_springs (SwDocument *self,
                         guint index,
                         const CarSprings *own,
                         const char *label)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (index < document_car (self)->setups->len, FALSE);

  CarSetup *setup = car_setup (document_car (self), index);
  gboolean is_another;

  if (own == NULL) {
    drop_springs (self, setup, label);
    return TRUE;
  }
  if (!take_springs (document_car (self), own, &setup->springs, &setup->unknown_springs,
                     &is_another))
    return FALSE;
  is_another = is_another || !setup->has_springs;
  setup->has_springs = TRUE;
  if (is_another)
    document_finish_edit (self, label);
  return TRUE;
}

gboolean
sw_document_set_car_springs (SwDocument *self,
                             const CarSprings *springs,
                             const char *label)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (springs != NULL, FALSE);

  Car *car = document_car (self);
  gboolean is_another;

  if (!take_springs (document_car (self), springs, &car->springs, &car->unknown_springs,
                     &is_another))
    return FALSE;
  if (is_another)
    document_finish_edit (self, label);
  return TRUE;
}

static void
drop_rod (SwDocument *self, CarSetup *setup, const char *label)
{
  if (!setup->has_rod)
    return;
  setup->has_rod = FALSE;
  memset (&setup->rod, 0, sizeof setup->rod);
  g_clear_pointer (&setup->unknown_rod, json_object_unref);
  document_finish_edit (self, label);
}

gboolean
sw_document_set_rod (SwDocument *self, guint index, const CarRod *own, const char *label)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (index < document_car (self)->setups->len, FALSE);

  CarSetup *setup = car_setup (document_car (self), index);
  CarRod next;

  if (own == NULL) {
    drop_rod (self, setup, label);
    return TRUE;
  }
  if (!rod_renew (own, &next, NULL))
    return FALSE;
  if (setup->has_rod && SAME_BITS (setup->rod, next))
    return TRUE;
  setup->has_rod = TRUE;
  setup->rod = next;
  document_finish_edit (self, label);
  return TRUE;
}

gboolean
sw_document_set_car_rod (SwDocument *self, const CarRod *rod, const char *label)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (rod != NULL, FALSE);

  Car *car = document_car (self);
  CarRod next;

  if (!rod_renew (rod, &next, NULL))
    return FALSE;
  if (SAME_BITS (car->strut.rod, next))
    return TRUE;
  car->strut.rod = next;
  document_finish_edit (self, label);
  return TRUE;
}

gboolean
sw_document_set_load_cases (SwDocument *self,
                            const CarLoadCase *cases,
                            gsize n,
                            const char *label)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (n <= LOAD_CASES_MOST, FALSE);

  g_autoptr (Car) before = car_copy (document_car (self));

  if (!loads_renew (document_car (self), cases, n, NULL))
    return FALSE;
  if (!car_equal (before, document_car (self)))
    document_finish_edit (self, label);
  return TRUE;
}
