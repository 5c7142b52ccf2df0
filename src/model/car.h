/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A car as its file has it: what was measured, and the setups tried on it.
 *
 * Numbers stay in the units and digits of the file (mm, degrees), so that saving returns
 * every bit; car_measured_corner () and car_adjustment () hand them to the kernel.
 * Members that this version does not know are kept as they came. */

#pragma once

#include "kernel/corner.h"

#include <glib.h>
#include <json-glib/json-glib.h>

/* Defaults of the optional members, stated to the user by the file format's page. */
#define CAR_DEFAULT_SECTION_WIDTH 175.0
#define CAR_DEFAULT_TRAVEL 80.0
#define CAR_DEFAULT_WHEELBASE 2400.0
#define CAR_DEFAULT_CG_HEIGHT 530.0
#define CAR_DEFAULT_FRONT_MASS 560.0
#define CAR_DEFAULT_UNSPRUNG 35.0
#define CAR_DEFAULT_BRAKE_SHARE 0.68

/* The objects of a car file, each of which may hold members that are not known here. */
typedef enum {
  CAR_SECTION_ROOT,
  CAR_SECTION_CORNER,
  CAR_SECTION_ALIGNMENT,
  CAR_SECTION_TYRE,
  CAR_SECTION_TRAVEL,
  CAR_SECTION_BODY,
  N_CAR_SECTIONS
} CarSection;

/* Corrections in the hardware's own terms; see Corrections in kernel/corner.h. */
typedef struct {
  double camber_bolt_deg; /* signed as camber: negative leans the top in */
  double ball_joint_spacer_mm, tie_rod_end_spacer_mm;
  double front_pivot_raise_mm, rear_pivot_raise_mm, pivot_outboard_mm;
  double rack_raise_mm, tie_rod_length_mm;
} CarCorrections;

typedef struct {
  char *name;
  MountOffset mount; /* mm */
  double lowering_mm;
  ToeMode toe;
  CarCorrections corrections;
  gboolean is_hidden; /* not drawn unless it is in hand or the baseline */
  /* members not known here, or NULL */
  JsonObject *unknown, *unknown_mount, *unknown_corrections;
} CarSetup;

typedef struct {
  double wheelbase_mm, cg_height_mm, front_mass_kg, unsprung_corner_kg, front_brake_share;
} CarBody;

typedef struct {
  char *name, *notes;
  Vec3 points[N_POINTS]; /* mm */
  double camber_deg, toe_in_deg;
  double loaded_radius_mm, section_width_mm;
  double bump_mm, droop_mm; /* travel from the reference height, both positive */
  CarBody body;
  GArray *setups;                      /* of CarSetup, at least one */
  guint baseline;                      /* the setup that the others are compared with */
  JsonObject *unknown[N_CAR_SECTIONS]; /* or NULL */
} Car;

/* A car with every optional member at its default, one setup "As measured" and all eight
 * points at the origin. */
Car *car_new (void);
Car *car_copy (const Car *car);
void car_free (Car *car);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Car, car_free)

/* To the bit, and to every member that is not known here. */
gboolean car_equal (const Car *a, const Car *b);

CarSetup *car_setup (const Car *car, guint index);
/* The first setup of that name. */
gboolean car_find_setup (const Car *car, const char *name, guint *index);

MeasuredCorner car_measured_corner (const Car *car);
Adjustment car_adjustment (const CarSetup *setup);

/* A copy of @setup that belongs to no car yet, and its end. */
CarSetup car_setup_copy (const CarSetup *setup);
void car_setup_clear (CarSetup *setup);
