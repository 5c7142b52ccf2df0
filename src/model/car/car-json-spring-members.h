/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: what the parts of a set of springs hold, by name and in the order
 * of writing. */

#pragma once

#include "model/car/car-json-spring-lists.h"
#include "model/car/car.h"
#include "model/json/json-numbers.h"

typedef enum {
  SPRING_PART_BAR,
  SPRING_PART_COIL,
  SPRING_PART_HELPER,
  SPRING_PART_BUMP_STOP,
  SPRING_PART_ANTI_ROLL_BAR,
  SPRING_PART_DAMPER,
  N_SPRING_PARTS
} SpringPartName;

typedef struct {
  const char *name;
  gsize flag;            /* offset of is_there in CarSprings, or SPRING_NO_FLAG */
  NumberRows numbers;    /* offsets in CarSprings */
  SpringTableForm table; /* of the member "table" */
  gsize table_offset;    /* in CarSprings, or SPRING_NO_TABLE */
  const char *others[3]; /* what else is known; NULL behind the last */
} SpringPart;
#define SPRING_NO_FLAG G_MAXSIZE
#define SPRING_NO_TABLE G_MAXSIZE

extern const SpringPart spring_parts[N_SPRING_PARTS];
extern const NumberRows spring_set_numbers; /* outside the parts */
extern const NumberRows rod_numbers;        /* offsets in CarRod */
extern const NumberRange spring_splines_range;

extern const char *const helper_place_names[2]; /* by HelperPlace */
extern const char *const link_carrier_names[2]; /* by LinkCarrier */

/* Copy the members of @from that the part, or the set, does not know. @kept is made when
 * it is NULL. */
void
spring_part_keep_unknown (const SpringPart *part, JsonObject *from, JsonObject **kept);
void spring_set_keep_unknown (JsonObject *from, JsonObject *kept);

/* Where the part keeps them; NULL where it has none. */
gsize *spring_part_flag (const SpringPart *part, CarSprings *springs);
SpringTable *spring_part_table (const SpringPart *part, CarSprings *springs);
