/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json.h"
#include "model/document/document-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define NO_SETUP G_MAXUINT

static gboolean
is_taken (const Car *car, const char *name, guint except)
{
  for (guint i = 0; i < car->setups->len; i++)
    if (i != except && g_str_equal (car_setup (car, i)->name, name))
      return TRUE;
  return FALSE;
}

/* The length of @name without a number in brackets at its end. */
static gsize
length_without_number (const char *name)
{
  const gsize length = strlen (name);
  gsize start = length;

  if (length == 0 || name[length - 1] != ')')
    return length;
  for (start--; start > 0 && g_ascii_isdigit (name[start - 1]); start--)
    ;
  if (start == length - 1 || start < 3 || name[start - 1] != '(' ||
      name[start - 2] != ' ')
    return length;
  return start - 2;
}

/* @wanted, or the first numbered one like it that no other setup than @except has. */
static char *
free_name (const Car *car, const char *wanted, guint except)
{
  const gsize length = length_without_number (wanted);
  char *name = g_strdup (wanted);

  for (guint n = 2; is_taken (car, name, except); n++) {
    g_free (name);
    name = g_strdup_printf ("%.*s (%u)", (int) length, wanted, n);
  }
  return name;
}

static void
take_name (CarSetup *setup, char *name)
{
  g_free (setup->name);
  setup->name = name;
}

/* A file names its baseline, and the first of that name is meant: it must be this one. */
static void
keep_baseline_findable (Car *car)
{
  CarSetup *baseline = car_setup (car, car->baseline);
  guint first;

  if (car_find_setup (car, baseline->name, &first) && first != car->baseline)
    take_name (baseline, free_name (car, baseline->name, car->baseline));
}

static gboolean
append_copy (Car *car, const CarSetup *like, const char *name)
{
  if (car->setups->len >= CAR_MOST_SETUPS)
    return FALSE;

  CarSetup copy = car_setup_copy (like);

  take_name (&copy, free_name (car, name, NO_SETUP));
  copy.is_hidden = FALSE;
  g_array_append_val (car->setups, copy);
  return TRUE;
}

void
sw_document_add_setup (SwDocument *self, guint like, const char *name)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (like < document_car (self)->setups->len);

  Car *car = document_car (self);
  const CarSetup *model = car_setup (car, like);

  if (append_copy (car, model, name != NULL && name[0] != '\0' ? name : model->name))
    document_finish_edit (self, _ ("Add setup"));
}

void
sw_document_rename_setup (SwDocument *self, guint index, const char *name)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (index < document_car (self)->setups->len);
  g_return_if_fail (name != NULL);

  CarSetup *setup = car_setup (document_car (self), index);
  g_autofree char *unused = free_name (document_car (self), name, index);

  if (name[0] == '\0' || g_str_equal (name, setup->name) ||
      g_str_equal (unused, setup->name))
    return;
  take_name (setup, g_steal_pointer (&unused));
  document_finish_edit (self, _ ("Rename setup"));
}

/* Where the setup at @index is once that at @from has gone to @to. */
static guint
place_after_move (guint index, guint from, guint to)
{
  if (index == from)
    return to;
  if (from < index && index <= to)
    return index - 1;
  if (to <= index && index < from)
    return index + 1;
  return index;
}

void
sw_document_move_setup (SwDocument *self, guint from, guint to)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (from < document_car (self)->setups->len);
  g_return_if_fail (to < document_car (self)->setups->len);

  Car *car = document_car (self);
  const CarSetup moved = *car_setup (car, from);

  if (from == to)
    return;
  for (guint i = from; i < to; i++)
    *car_setup (car, i) = *car_setup (car, i + 1);
  for (guint i = from; i > to; i--)
    *car_setup (car, i) = *car_setup (car, i - 1);
  *car_setup (car, to) = moved;
  car->baseline = place_after_move (car->baseline, from, to);
  keep_baseline_findable (car);
  document_finish_edit (self, _ ("Move setup"));
}

gboolean
sw_document_remove_setup (SwDocument *self, guint index)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (index < document_car (self)->setups->len, FALSE);

  Car *car = document_car (self);

  if (car->setups->len == 1)
    return FALSE;
  g_array_remove_index (car->setups, index);
  if (index == car->baseline)
    car->baseline = 0;
  else if (index < car->baseline)
    car->baseline--;
  document_finish_edit (self, _ ("Remove setup"));
  return TRUE;
}

void
sw_document_show_setup (SwDocument *self, guint index, gboolean shown)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (index < document_car (self)->setups->len);

  CarSetup *setup = car_setup (document_car (self), index);

  if (!setup->is_hidden == !!shown)
    return;
  setup->is_hidden = !shown;
  document_finish_edit (self, shown ? _ ("Show setup") : _ ("Hide setup"));
}

void
sw_document_set_baseline (SwDocument *self, guint index)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (index < document_car (self)->setups->len);

  Car *car = document_car (self);

  if (index == car->baseline)
    return;
  car->baseline = index;
  keep_baseline_findable (car);
  document_finish_edit (self, _ ("Choose baseline"));
}

void
sw_document_take_setups (SwDocument *self, const Car *from, const guint *indices, guint n)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (from != NULL);
  for (guint i = 0; i < n; i++)
    g_return_if_fail (indices[i] < from->setups->len);

  gboolean is_changed = FALSE;
  for (guint i = 0; i < n; i++) {
    const CarSetup *setup = car_setup (from, indices[i]);

    is_changed |= append_copy (document_car (self), setup, setup->name);
  }
  if (is_changed)
    document_finish_edit (self, _ ("Take setups of another car"));
}

static gboolean
is_sound (const CarCorrections *c)
{
  const double parts[] = { c->ball_joint_spacer_mm, c->tie_rod_end_spacer_mm,
                           c->front_pivot_raise_mm, c->rear_pivot_raise_mm,
                           c->pivot_outboard_mm,    c->rack_raise_mm,
                           c->tie_rod_length_mm,    c->wheel_spacer_mm };

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (!(fabs (parts[i]) <= CAR_MOST_CORRECTION))
      return FALSE;
  return fabs (c->camber_bolt_deg) <= CAR_MOST_CAMBER_BOLT;
}

/* −0.0, as a drag through zero leaves it, would stand in the file as a correction. */
static CarCorrections
without_negative_zeros (const CarCorrections *c)
{
  return (CarCorrections){ .camber_bolt_deg = c->camber_bolt_deg + 0.0,
                           .ball_joint_spacer_mm = c->ball_joint_spacer_mm + 0.0,
                           .tie_rod_end_spacer_mm = c->tie_rod_end_spacer_mm + 0.0,
                           .front_pivot_raise_mm = c->front_pivot_raise_mm + 0.0,
                           .rear_pivot_raise_mm = c->rear_pivot_raise_mm + 0.0,
                           .pivot_outboard_mm = c->pivot_outboard_mm + 0.0,
                           .rack_raise_mm = c->rack_raise_mm + 0.0,
                           .tie_rod_length_mm = c->tie_rod_length_mm + 0.0,
                           .wheel_spacer_mm = c->wheel_spacer_mm + 0.0 };
}

void
sw_document_set_corrections (SwDocument *self,
                             guint index,
                             const CarCorrections *corrections,
                             const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (index < document_car (self)->setups->len);
  g_return_if_fail (is_sound (corrections));

  CarSetup *setup = car_setup (document_car (self), index);
  const CarCorrections now = without_negative_zeros (corrections);

  if (memcmp (&setup->corrections, &now, sizeof now) == 0)
    return;
  setup->corrections = now;
  document_finish_edit (self, label);
}

static gboolean
is_within (MountOffset mount)
{
  return fabs (mount.inboard) <= CAR_FURTHEST_MOVE &&
         fabs (mount.rearward) <= CAR_FURTHEST_MOVE &&
         fabs (mount.up) <= CAR_FURTHEST_MOVE;
}

static gboolean
is_sound_setup (const Car *car, const CarSetup *setup)
{
  return setup->name != NULL && is_within (setup->mount) &&
         fabs (setup->lowering_mm) <= CAR_FURTHEST_MOVE &&
         is_sound (&setup->corrections) && is_within (setup->right.mount) &&
         fabs (setup->right.camber_bolt_deg) <= CAR_MOST_CAMBER_BOLT &&
         (!setup->has_springs || (car_check_springs (&setup->springs, NULL) &&
                                  car_check_spring_seats (car, &setup->springs, NULL))) &&
         (!setup->has_rod || car_check_rod (&setup->rod, NULL));
}

void
sw_document_add_setup_like (SwDocument *self, const CarSetup *setup)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (setup != NULL && is_sound_setup (document_car (self), setup));

  if (append_copy (document_car (self), setup, setup->name))
    document_finish_edit (self, _ ("Add setup"));
}

void
sw_document_set_plate (SwDocument *self,
                       guint index,
                       const char *plate,
                       gboolean is_swapped,
                       const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (index < document_car (self)->setups->len);

  CarSetup *setup = car_setup (document_car (self), index);
  const char *now = plate != NULL && plate[0] != '\0' ? plate : NULL;
  const gboolean is_another = g_strcmp0 (setup->plate, now) != 0;

  is_swapped = is_swapped && now != NULL;
  if (!is_another && !setup->is_plate_swapped == !is_swapped)
    return;
  if (is_another) {
    g_free (setup->plate);
    setup->plate = g_strdup (now);
    g_clear_pointer (&setup->unknown_plate, json_object_unref);
  }
  setup->is_plate_swapped = is_swapped;
  document_finish_edit (self, label);
}

static gboolean
same_side (const CarRightSide *a, const CarRightSide *b)
{
  return !a->is_own == !b->is_own && a->mount.inboard == b->mount.inboard &&
         a->mount.rearward == b->mount.rearward && a->mount.up == b->mount.up &&
         a->camber_bolt_deg == b->camber_bolt_deg;
}

void
sw_document_set_right_side (SwDocument *self,
                            guint index,
                            const CarRightSide *right,
                            const char *label)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (index < document_car (self)->setups->len);
  g_return_if_fail (is_within (right->mount));
  g_return_if_fail (fabs (right->camber_bolt_deg) <= CAR_MOST_CAMBER_BOLT);

  CarSetup *setup = car_setup (document_car (self), index);

  if (same_side (&setup->right, right))
    return;
  setup->right = *right;
  document_finish_edit (self, label);
}
