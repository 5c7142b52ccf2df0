/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/plate/plate.h"

#include <string.h>

static void
clear_hole (gpointer data)
{
  PlateHole *hole = data;

  g_clear_pointer (&hole->label, g_free);
  g_clear_pointer (&hole->unknown, json_object_unref);
}

static GArray *
new_holes (void)
{
  GArray *holes = g_array_new (FALSE, TRUE, sizeof (PlateHole));

  g_array_set_clear_func (holes, clear_hole);
  return holes;
}

static JsonObject *
ref_object (JsonObject *object)
{
  return object != NULL ? json_object_ref (object) : NULL;
}

Plate *
plate_new (void)
{
  Plate *plate = g_new0 (Plate, 1);

  plate->name = g_strdup ("");
  plate->notes = g_strdup ("");
  plate->turn_most_deg = 360.0;
  plate->turns_deg = g_array_new (FALSE, TRUE, sizeof (double));
  plate->holes = new_holes ();
  return plate;
}

Plate *
plate_copy (const Plate *plate)
{
  Plate *copy = g_memdup2 (plate, sizeof (Plate));

  copy->name = g_strdup (plate->name);
  copy->notes = g_strdup (plate->notes);
  copy->turns_deg = g_array_copy (plate->turns_deg);
  copy->holes = new_holes ();
  for (guint i = 0; i < plate->holes->len; i++) {
    PlateHole hole = g_array_index (plate->holes, PlateHole, i);

    hole.label = g_strdup (hole.label);
    ref_object (hole.unknown);
    g_array_append_val (copy->holes, hole);
  }
  ref_object (copy->unknown);
  return copy;
}

void
plate_free (Plate *plate)
{
  if (plate == NULL)
    return;
  g_free (plate->name);
  g_free (plate->notes);
  g_array_unref (plate->turns_deg);
  g_array_unref (plate->holes);
  g_clear_pointer (&plate->unknown, json_object_unref);
  g_free (plate);
}

static gboolean
equal_objects (JsonObject *a, JsonObject *b)
{
  return a == b || (a != NULL && b != NULL && json_object_equal (a, b));
}

static gboolean
equal_bits (double a, double b)
{
  return memcmp (&a, &b, sizeof a) == 0;
}

static gboolean
equal_scales (PlateScale a, PlateScale b)
{
  return equal_bits (a.least, b.least) && equal_bits (a.most, b.most);
}

static gboolean
equal_holes (const PlateHole *a, const PlateHole *b)
{
  return g_strcmp0 (a->label, b->label) == 0 &&
         equal_bits (a->inboard_mm, b->inboard_mm) &&
         equal_bits (a->rearward_mm, b->rearward_mm) &&
         equal_objects (a->unknown, b->unknown);
}

static gboolean
equal_lists_of_holes (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!equal_holes (&g_array_index (a, PlateHole, i), &g_array_index (b, PlateHole, i)))
      return FALSE;
  return TRUE;
}

static gboolean
equal_turns (const Plate *a, const Plate *b)
{
  if (a->turns_deg->len != b->turns_deg->len)
    return FALSE;
  if (a->turns_deg->len == 0)
    return equal_bits (a->turn_least_deg, b->turn_least_deg) &&
           equal_bits (a->turn_most_deg, b->turn_most_deg);
  return memcmp (a->turns_deg->data, b->turns_deg->data,
                 a->turns_deg->len * sizeof (double)) == 0;
}

/* What says where the bearing can go; only the members of the kind count. */
static gboolean
equal_reach (const Plate *a, const Plate *b)
{
  if (a->kind != b->kind)
    return FALSE;
  if (a->kind == PLATE_HOLES)
    return equal_lists_of_holes (a->holes, b->holes);
  if (!equal_bits (a->inboard_mm, b->inboard_mm) ||
      !equal_bits (a->rearward_mm, b->rearward_mm))
    return FALSE;
  if (a->kind == PLATE_ECCENTRIC)
    return equal_bits (a->radius_mm, b->radius_mm) && equal_turns (a, b);
  if (a->kind == PLATE_FIXED)
    return TRUE;
  return equal_bits (a->direction_deg, b->direction_deg) &&
         equal_scales (a->along, b->along) &&
         (a->kind == PLATE_SLOT || equal_scales (a->across, b->across));
}

gboolean
plate_equal (const Plate *a, const Plate *b)
{
  return g_strcmp0 (a->name, b->name) == 0 && g_strcmp0 (a->notes, b->notes) == 0 &&
         equal_reach (a, b) && equal_bits (a->raises_mm, b->raises_mm) &&
         equal_bits (a->thickness_mm, b->thickness_mm) &&
         equal_bits (a->bearing_diameter_mm, b->bearing_diameter_mm) &&
         equal_bits (a->bearing_tilt_deg, b->bearing_tilt_deg) &&
         !a->can_swap == !b->can_swap &&
         (!a->can_swap || equal_bits (a->swap_turn_deg, b->swap_turn_deg)) &&
         equal_objects (a->unknown, b->unknown);
}
