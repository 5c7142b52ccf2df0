/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can be entered of a measured car: one field for each number, in the order of the
 * form. A new number in the car file is one more row in measure-field.c. */

#pragma once

#include "model/car/car.h"

typedef enum {
  MEASURE_POINTS,
  MEASURE_WHEEL, /* alignment and tyre */
  MEASURE_BODY,  /* travel and body */
  MEASURE_TOWER, /* tower and strut */
  MEASURE_LIMITS,
  MEASURE_RIGHT_POINTS,
  MEASURE_RIGHT_WHEEL,
  N_MEASURE_GROUPS
} MeasureGroup;

#define N_COORDINATES (N_POINTS * 3)

typedef struct {
  MeasureGroup group;
  PointName point; /* and which of its coordinates, 0 … 2; else N_POINTS */
  guint axis;
  const char *path;       /* of the member in a car file, that of the point for points */
  const char *name;       /* translated; of the point for points */
  const char *meaning;    /* translated: one sentence */
  const char *unit;       /* "mm", "°", "kg" or "" */
  gsize offset;           /* of the double in a Car */
  double absent;          /* what it is when nothing is entered; NAN: it must be */
  const char *when_empty; /* translated: shown in the empty entry; NULL: the number */
} MeasureField;

guint measure_n_fields (void);
MeasureField measure_field (guint index);

/* Where the fields of a group begin and end. */
void measure_group_span (MeasureGroup group, guint *first, guint *n);
/* The first field of a point, on that side. */
guint measure_point_field (PointName point, CarSide side);

/* "Upper mount, z up", "Right side: Camber". Free with g_free (). */
char *measure_field_name (const MeasureField *field);
/* Whether a refusal that names @path is about the field: its own, or its whole point. */
gboolean measure_field_is_at (const MeasureField *field, const char *path);

double measure_field_value (const MeasureField *field, const Car *car);
void measure_field_set (const MeasureField *field, Car *car, double value);
