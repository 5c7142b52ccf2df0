/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: what a car file's objects hold, by name and in the order of
 * writing. A new number in the file is one more row in car-json-members.c. */

#pragma once

#include "model/json-member.h"

#define CAR_FILE_FORMAT "strutwright-car"

typedef struct {
  CarSection section;
  const char *name;
  gsize offset; /* of the double in a Car */
  gboolean is_required;
  NumberRange range;
} CarNumber;

typedef struct {
  const char *name;
  gsize offset; /* of the double in a CarSetup */
  double most;  /* either way */
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
extern const SetupPart setup_mount, setup_corrections;

/* NULL-terminated: the members of the root and of a setup in the order of writing. */
extern const char *const car_root_members[];
extern const char *const car_setup_members[];

extern const char *const toe_mode_names[2]; /* by ToeMode */

/* Whether this version knows the member @name of that section. */
gboolean car_section_knows (CarSection section, const char *name);
gboolean setup_part_knows (const SetupPart *part, const char *name);

double *setup_number (CarSetup *setup, const SetupNumber *number);
/* Members of that object that are not known here. */
JsonObject **setup_part_unknown (const SetupPart *part, CarSetup *setup);
