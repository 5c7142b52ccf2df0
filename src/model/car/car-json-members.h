/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: what a car file's objects hold, by name and in the order of
 * writing. A new number in the file is one more row in car-json-members.c. */

#pragma once

#include "model/car/car.h"
#include "model/json/json-member.h"

#define CAR_FILE_FORMAT "strutwright-car"

typedef enum {
  MEMBER_REQUIRED,    /* in every file */
  MEMBER_WRITTEN,     /* a file may leave it to the default; it is always written */
  MEMBER_WHERE_GIVEN, /* and written only where it is another than the default */
} MemberPresence;

typedef struct {
  CarSection section;
  const char *name;
  gsize offset; /* of the double in a Car */
  MemberPresence presence;
  NumberRange range;
} CarNumber;

typedef struct {
  const char *name;
  gsize offset; /* of the double in a CarSetup */
  double most;  /* either way */
  MemberPresence presence;
} SetupNumber;

/* An object of numbers inside a setup. */
typedef struct {
  const char *name;
  const SetupNumber *numbers;
  gsize n_numbers;
  gsize unknown; /* offset of the JsonObject in a CarSetup */
} SetupPart;

extern const char *const car_section_names[N_CAR_SECTIONS]; /* "" for the root */
extern const char *const car_point_names[N_POINTS];
extern const CarNumber car_numbers[];
extern const gsize n_car_numbers;
extern const SetupPart setup_mount, setup_corrections, setup_right;

/* NULL-terminated: members in the order of writing. */
extern const char *const car_root_members[];
extern const char *const car_setup_members[];
extern const char *const setup_plate_members[];
extern const char *const car_target_members[];
extern const char *const car_right_members[];

extern const char *const toe_mode_names[2]; /* by ToeMode */

/* Those of that section, NULL behind the last. Free with g_ptr_array_unref (). */
GPtrArray *car_section_members (CarSection section);
/* Whether this version knows the member @name of that section. */
gboolean car_section_knows (CarSection section, const char *name);
gboolean setup_part_knows (const SetupPart *part, const char *name);

/* Copies the members of @object that the section does not know. */
void section_keep_unknown (JsonObject *object, CarSection section, JsonObject **kept);

double car_number_value (const Car *car, const CarNumber *number);
double *car_number (Car *car, const CarNumber *number); /* where it is kept */
double *setup_number (CarSetup *setup, const SetupNumber *number);
/* Members of that object that are not known here. */
JsonObject **setup_part_unknown (const SetupPart *part, CarSetup *setup);
