/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>
#include <string.h>

#define DEGREE (G_PI / 180.0)

void
car_setup_clear (CarSetup *setup)
{
  g_clear_pointer (&setup->name, g_free);
  g_clear_pointer (&setup->unknown, json_object_unref);
  g_clear_pointer (&setup->unknown_mount, json_object_unref);
  g_clear_pointer (&setup->unknown_corrections, json_object_unref);
}

static void
clear_setup (gpointer data)
{
  car_setup_clear (data);
}

static JsonObject *
ref_object (JsonObject *object)
{
  return object != NULL ? json_object_ref (object) : NULL;
}

CarSetup
car_setup_copy (const CarSetup *setup)
{
  CarSetup copy = *setup;

  copy.name = g_strdup (setup->name);
  ref_object (copy.unknown);
  ref_object (copy.unknown_mount);
  ref_object (copy.unknown_corrections);
  return copy;
}

static GArray *
new_setups (void)
{
  GArray *setups = g_array_new (FALSE, TRUE, sizeof (CarSetup));

  g_array_set_clear_func (setups, clear_setup);
  return setups;
}

Car *
car_new (void)
{
  Car *car = g_new0 (Car, 1);
  const CarSetup as_measured = { .name = g_strdup (_ ("As measured")) };

  car->name = g_strdup ("");
  car->notes = g_strdup ("");
  car->section_width_mm = CAR_DEFAULT_SECTION_WIDTH;
  car->bump_mm = CAR_DEFAULT_TRAVEL;
  car->droop_mm = CAR_DEFAULT_TRAVEL;
  car->body = (CarBody){ .wheelbase_mm = CAR_DEFAULT_WHEELBASE,
                         .cg_height_mm = CAR_DEFAULT_CG_HEIGHT,
                         .front_mass_kg = CAR_DEFAULT_FRONT_MASS,
                         .unsprung_corner_kg = CAR_DEFAULT_UNSPRUNG,
                         .front_brake_share = CAR_DEFAULT_BRAKE_SHARE };
  car->setups = new_setups ();
  g_array_append_val (car->setups, as_measured);
  return car;
}

Car *
car_copy (const Car *car)
{
  Car *copy = g_memdup2 (car, sizeof (Car));

  copy->name = g_strdup (car->name);
  copy->notes = g_strdup (car->notes);
  copy->setups = new_setups ();
  for (guint i = 0; i < car->setups->len; i++) {
    const CarSetup setup = car_setup_copy (car_setup (car, i));

    g_array_append_val (copy->setups, setup);
  }
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    ref_object (copy->unknown[i]);
  return copy;
}

void
car_free (Car *car)
{
  if (car == NULL)
    return;
  g_free (car->name);
  g_free (car->notes);
  g_array_unref (car->setups);
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    g_clear_pointer (&car->unknown[i], json_object_unref);
  g_free (car);
}

static gboolean
equal_objects (JsonObject *a, JsonObject *b)
{
  return a == b || (a != NULL && b != NULL && json_object_equal (a, b));
}

static gboolean
equal_setups (const CarSetup *a, const CarSetup *b)
{
  return g_str_equal (a->name, b->name) &&
         memcmp (&a->mount, &b->mount, sizeof a->mount) == 0 &&
         memcmp (&a->lowering_mm, &b->lowering_mm, sizeof a->lowering_mm) == 0 &&
         a->toe == b->toe && equal_objects (a->unknown, b->unknown) &&
         memcmp (&a->corrections, &b->corrections, sizeof a->corrections) == 0 &&
         !a->is_hidden == !b->is_hidden &&
         equal_objects (a->unknown_mount, b->unknown_mount) &&
         equal_objects (a->unknown_corrections, b->unknown_corrections);
}

gboolean
car_equal (const Car *a, const Car *b)
{
  /* From the points to the body there are only doubles, so no padding. */
  const gsize n_number_bytes = offsetof (Car, setups) - offsetof (Car, points);

  if (!g_str_equal (a->name, b->name) || !g_str_equal (a->notes, b->notes) ||
      memcmp (&a->points, &b->points, n_number_bytes) != 0 ||
      a->setups->len != b->setups->len || a->baseline != b->baseline)
    return FALSE;
  for (guint i = 0; i < a->setups->len; i++)
    if (!equal_setups (car_setup (a, i), car_setup (b, i)))
      return FALSE;
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    if (!equal_objects (a->unknown[i], b->unknown[i]))
      return FALSE;
  return TRUE;
}

CarSetup *
car_setup (const Car *car, guint index)
{
  g_return_val_if_fail (index < car->setups->len, NULL);

  return &g_array_index (car->setups, CarSetup, index);
}

gboolean
car_find_setup (const Car *car, const char *name, guint *index)
{
  for (guint i = 0; i < car->setups->len; i++)
    if (g_strcmp0 (car_setup (car, i)->name, name) == 0) {
      *index = i;
      return TRUE;
    }
  return FALSE;
}

static double
dive_lever (const CarBody *body)
{
  return body->front_brake_share * body->wheelbase_mm / body->cg_height_mm;
}

MeasuredCorner
car_measured_corner (const Car *car)
{
  MeasuredCorner corner = { .camber = car->camber_deg * DEGREE,
                            .toe_in = car->toe_in_deg * DEGREE,
                            .loaded_radius = car->loaded_radius_mm,
                            .dive_lever = dive_lever (&car->body) };

  for (PointName i = 0; i < N_POINTS; i++)
    corner.at[i] = car->points[i];
  return corner;
}

Adjustment
car_adjustment (const CarSetup *setup)
{
  const CarCorrections *c = &setup->corrections;

  return (Adjustment){ .mount = setup->mount,
                       .lowering = setup->lowering_mm,
                       .toe = setup->toe,
                       .corrections = { .clamp_tilt = c->camber_bolt_deg * DEGREE,
                                        .ball_joint_spacer = c->ball_joint_spacer_mm,
                                        .tie_rod_end_spacer = c->tie_rod_end_spacer_mm,
                                        .front_pivot_raise = c->front_pivot_raise_mm,
                                        .rear_pivot_raise = c->rear_pivot_raise_mm,
                                        .pivot_outboard = c->pivot_outboard_mm,
                                        .rack_raise = c->rack_raise_mm,
                                        .tie_rod_lengthening = c->tie_rod_length_mm } };
}
