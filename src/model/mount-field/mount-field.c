/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/mount-field/mount-field.h"

#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Exact crossings make lines good between few places; this many show where the corner
 * stops to assemble. */
#define PLACES 700.0
#define LEAST_ROWS 9

static const struct {
  Quantity quantity;
  Aim aim;
} subjects[N_FIELD_SUBJECTS] = {
  [FIELD_CAMBER] = { QUANTITY_CAMBER, AIM_CAMBER },
  [FIELD_CASTER] = { QUANTITY_CASTER, AIM_CASTER },
  [FIELD_SAI] = { QUANTITY_SAI, AIM_SAI },
  [FIELD_SCRUB_RADIUS] = { QUANTITY_SCRUB_RADIUS, AIM_SCRUB_RADIUS },
  [FIELD_TRAIL] = { QUANTITY_TRAIL, AIM_TRAIL },
  [FIELD_ROLL_CENTRE_HEIGHT] = { QUANTITY_ROLL_CENTRE_HEIGHT, AIM_ROLL_CENTRE_HEIGHT },
  [FIELD_TOE_BEFORE_RESET] = { QUANTITY_TOE_IN, AIM_TOE_CHANGE },
};

Quantity
field_subject_quantity (FieldSubject subject)
{
  g_return_val_if_fail (subject < N_FIELD_SUBJECTS, QUANTITY_CAMBER);
  return subjects[subject].quantity;
}

const char *
field_subject_name (FieldSubject subject)
{
  return subject == FIELD_TOE_BEFORE_RESET
             ? _ ("Toe before reset")
             : quantity_info (field_subject_quantity (subject)).name;
}

const CarTarget *
field_subject_target (const Car *car, FieldSubject subject)
{
  g_return_val_if_fail (subject < N_FIELD_SUBJECTS, NULL);
  for (guint i = 0; i < car->targets->len; i++) {
    const CarTarget *target = &g_array_index (car->targets, CarTarget, i);

    if (target->aim == (guint) subjects[subject].aim)
      return target;
  }
  return NULL;
}

/* 0 for what does not count as a change. */
static double
counted_from (const Car *car, CarSide side, FieldSubject subject)
{
  const guint baseline = MIN (car->baseline, car->setups->len - 1);
  MountPlace place;

  if (subject != FIELD_TOE_BEFORE_RESET)
    return 0.0;
  const MeasuredCorner points = car_measured_side (car, side);
  const Adjustment adjustment = car_side_adjustment (car_setup (car, baseline), side);
  mount_place_solve (&points, &adjustment, adjustment.mount, &place);
  return place.value[QUANTITY_TOE_IN];
}

gboolean
field_subject_band (
    const Car *car, CarSide side, FieldSubject subject, double *least, double *most)
{
  const CarTarget *target = field_subject_target (car, subject);

  if (target == NULL)
    return FALSE;
  const double from = counted_from (car, side, subject);
  const double scale = quantity_edge_value (field_subject_quantity (subject), 1.0);

  *least = from + target->least / scale;
  *most = from + target->most / scale;
  return !isnan (from);
}

MountField *
mount_field_new (void)
{
  return g_new0 (MountField, 1);
}

void
mount_field_free (MountField *field)
{
  if (field == NULL)
    return;
  g_free (field->places);
  g_free (field);
}

static MountGrid
grid_over (FieldWindow window, double up)
{
  const double wide = window.inboard_to - window.inboard_from,
               high = window.rearward_to - window.rearward_from;
  const double mesh = sqrt (wide * high / PLACES);

  return (MountGrid){ window.inboard_from,
                      window.inboard_to,
                      window.rearward_from,
                      window.rearward_to,
                      up,
                      MAX (LEAST_ROWS, (size_t) (wide / mesh) + 1),
                      MAX (LEAST_ROWS, (size_t) (high / mesh) + 1) };
}

static size_t
n_places (const MountGrid *grid)
{
  return grid->n_inboard * grid->n_rearward;
}

static gboolean
is_same_adjustment (const Adjustment *a, const Adjustment *b)
{
  return memcmp (&a->mount, &b->mount, sizeof a->mount) == 0 &&
         a->lowering == b->lowering && a->toe == b->toe &&
         memcmp (&a->corrections, &b->corrections, sizeof a->corrections) == 0;
}

static gboolean
is_same_task (const MountField *field,
              const MeasuredCorner *points,
              const Adjustment *adjustment,
              const MountGrid *grid)
{
  return field->places != NULL && memcmp (&field->points, points, sizeof *points) == 0 &&
         is_same_adjustment (&field->adjustment, adjustment) &&
         memcmp (&field->grid, grid, sizeof *grid) == 0;
}

static void
make_room (MountField *field)
{
  const size_t n = n_places (&field->grid);

  if (n <= field->n_allocated)
    return;
  g_free (field->places);
  field->places = g_new (MountPlace, n);
  field->n_allocated = n;
}

gboolean
mount_field_solve (
    MountField *field, const Car *car, guint setup, CarSide side, FieldWindow window)
{
  g_return_val_if_fail (window.inboard_to > window.inboard_from &&
                            window.rearward_to > window.rearward_from,
                        FALSE);
  const MeasuredCorner points = car_measured_side (car, side);
  Adjustment adjustment = car_side_adjustment (car_setup (car, setup), side);
  const MountGrid grid = grid_over (window, adjustment.mount.up);

  adjustment.mount = (MountOffset){ 0.0, 0.0, adjustment.mount.up };
  if (is_same_task (field, &points, &adjustment, &grid))
    return FALSE;
  field->points = points;
  field->adjustment = adjustment;
  field->grid = grid;
  make_room (field);
  field->n_assembled = mount_grid_solve (&points, &field->adjustment, &grid, 0,
                                         grid.n_rearward, field->places);
  return TRUE;
}

double
mount_place_value (const MountPlace *place, FieldSubject subject)
{
  return subject == FIELD_TOE_BEFORE_RESET
             ? place->toe_as_moved
             : place->value[field_subject_quantity (subject)];
}

/* Half the work of mount_place_solve (), which looks at both toe modes. */
static double
solve_quantity (const MountField *field, Quantity quantity, MountOffset mount)
{
  Adjustment adjustment = field->adjustment;
  Corner corner;
  Station station;

  adjustment.mount = mount;
  corner_assemble (&field->points, &adjustment, &corner);
  station_solve (&corner, adjustment.lowering, 0.0, &station);
  return station.measures.value[quantity];
}

double
mount_field_exact (const MountField *field, FieldSubject subject, MountOffset mount)
{
  MountPlace place;

  if (subject != FIELD_TOE_BEFORE_RESET)
    return solve_quantity (field, field_subject_quantity (subject), mount);
  mount_place_solve (&field->points, &field->adjustment, mount, &place);
  return place.toe_as_moved;
}
