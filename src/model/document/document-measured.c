/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a document keeps of the car itself: what was measured, and what is aimed for. */

#include "model/car/aim.h"
#include "model/car/car-json.h"
#include "model/document/document-private.h"

#include <math.h>
#include <string.h>

static void
take_text (char **text, const char *now)
{
  g_free (*text);
  *text = g_strdup (now);
}

/* Members not known here belong to an object: they go when it does. */
static void
take_right (CarMeasuredRight *right, const CarMeasuredRight *now)
{
  right->has_points = now->has_points;
  right->has_alignment = now->has_alignment;
  memcpy (right->points, now->points, sizeof right->points);
  right->camber_deg = now->camber_deg;
  right->toe_in_deg = now->toe_in_deg;
  if (!right->has_points)
    g_clear_pointer (&right->unknown_corner, json_object_unref);
  if (!right->has_alignment)
    g_clear_pointer (&right->unknown_alignment, json_object_unref);
}

static void
take_measured (Car *car, const Car *draft)
{
  take_text (&car->name, draft->name);
  take_text (&car->notes, draft->notes);
  memcpy (car->points, draft->points, sizeof car->points);
  car->camber_deg = draft->camber_deg;
  car->toe_in_deg = draft->toe_in_deg;
  car->loaded_radius_mm = draft->loaded_radius_mm;
  car->section_width_mm = draft->section_width_mm;
  car->bump_mm = draft->bump_mm;
  car->droop_mm = draft->droop_mm;
  car->body = draft->body;
  car->unloaded_radius_mm = draft->unloaded_radius_mm;
  car->rim_offset_mm = draft->rim_offset_mm;
  car->tower = draft->tower;
  car->strut = draft->strut;
  car->thread_pitch_mm = draft->thread_pitch_mm;
  car->limits = draft->limits;
  take_right (&car->right, &draft->right);
}

gboolean
sw_document_set_measured (SwDocument *self,
                          const Car *draft,
                          const char *label,
                          GError **error)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (draft != NULL, FALSE);

  g_autoptr (Car) next = car_copy (document_car (self));

  take_measured (next, draft);
  if (!car_check (next, error))
    return FALSE;
  if (car_equal (next, document_car (self)))
    return TRUE;
  take_measured (document_car (self), draft);
  document_finish_edit (self, label);
  return TRUE;
}

void
sw_document_set_thread_pitch (SwDocument *self, double pitch_mm, const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (pitch_mm > 0.0 && pitch_mm <= CAR_MOST_THREAD_PITCH);

  if (document_car (self)->thread_pitch_mm == pitch_mm)
    return;
  document_car (self)->thread_pitch_mm = pitch_mm;
  document_finish_edit (self, label);
}

static gboolean
is_open_or_within (guint aim, double bound, double open)
{
  return bound == open || fabs (bound) <= aim_info (aim).furthest;
}

static gboolean
is_sound_target (const CarTarget *t)
{
  return t->aim < N_AIMS && is_open_or_within (t->aim, t->least, -INFINITY) &&
         is_open_or_within (t->aim, t->most, INFINITY) && t->least <= t->most &&
         (isfinite (t->least) || isfinite (t->most)) && t->weight > 0.0 &&
         t->weight <= CAR_MOST_WEIGHT;
}

static const CarTarget *
find_target (const CarTarget *targets, guint n, guint aim)
{
  for (guint i = 0; i < n; i++)
    if (targets[i].aim == aim)
      return &targets[i];
  return NULL;
}

static gboolean
are_sound_targets (const CarTarget *targets, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!is_sound_target (&targets[i]) ||
        find_target (targets, i, targets[i].aim) != NULL)
      return FALSE;
  return TRUE;
}

/* A new list: unknown members that @targets lacks come from @old. */
static GArray *
targets_behind (const CarTarget *targets, guint n, const GArray *old)
{
  GArray *list = car_targets_new (targets, n);

  for (guint i = 0; i < n; i++) {
    CarTarget *target = &g_array_index (list, CarTarget, i);
    const CarTarget *before =
        find_target ((const CarTarget *) old->data, old->len, target->aim);

    if (target->unknown == NULL && before != NULL && before->unknown != NULL)
      target->unknown = json_object_ref (before->unknown);
  }
  return list;
}

static gboolean
are_same (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!car_target_equal (&g_array_index (a, CarTarget, i),
                           &g_array_index (b, CarTarget, i)))
      return FALSE;
  return TRUE;
}

void
sw_document_set_targets (SwDocument *self,
                         const CarTarget *targets,
                         guint n,
                         const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (are_sound_targets (targets, n));

  Car *car = document_car (self);
  g_autoptr (GArray) list = targets_behind (targets, n, car->targets);

  if (are_same (list, car->targets))
    return;
  g_array_unref (car->targets);
  car->targets = g_steal_pointer (&list);
  document_finish_edit (self, label);
}
