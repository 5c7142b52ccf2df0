/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A car as its file has it: what was measured, and the setups tried on it.
 *
 * Numbers stay in the units and digits of the file (mm, degrees), so that saving returns
 * every bit; car_measured_corner () and car_adjustment () hand them to the kernel.
 * Members that this version does not know are kept as they came. */

#pragma once

#include "kernel/clearance.h"
#include "kernel/corner.h"
#include "kernel/rod.h"
#include "model/car/car-springs.h"

#include <glib.h>
#include <json-glib/json-glib.h>

/* Defaults of the optional members, stated to the user by the file format's page. */
#define CAR_DEFAULT_SECTION_WIDTH 175.0
#define CAR_DEFAULT_TRAVEL 80.0
#define CAR_DEFAULT_WHEELBASE 2400.0
#define CAR_DEFAULT_CG_HEIGHT 530.0
#define CAR_DEFAULT_FRONT_MASS 560.0
#define CAR_DEFAULT_UNSPRUNG 35.0
#define CAR_DEFAULT_REAR_SHARE                                                           \
  0.67 /* of the front mass: a front-drive car stands about 60:40 */
#define CAR_DEFAULT_BRAKE_SHARE 0.68
#define CAR_DEFAULT_THREAD_PITCH 1.5 /* mm per turn: M14 to M16 fine; common practice */
/* Limits: common practice, no published source, unless it says otherwise. */
#define CAR_DEFAULT_TYRE_CLEARANCE 5.0
#define CAR_DEFAULT_EDGE_MARGIN 2.0
#define CAR_DEFAULT_CROSS_CAMBER 0.5
#define CAR_DEFAULT_CROSS_CASTER 0.5 /* workshop texts: 0.5 to 0.75° at most */
#define CAR_DEFAULT_CAMBER_BOLT 1.75
#define CAR_DEFAULT_TRAVEL_USED 40.0

/* The objects of a car file, each of which may hold members that are not known here. */
typedef enum {
  CAR_SECTION_ROOT,
  CAR_SECTION_CORNER,
  CAR_SECTION_ALIGNMENT,
  CAR_SECTION_TYRE,
  CAR_SECTION_TRAVEL,
  CAR_SECTION_BODY,
  CAR_SECTION_TOWER, /* from here on written only where they say something */
  CAR_SECTION_STRUT,
  CAR_SECTION_TIE_ROD,
  CAR_SECTION_LIMITS,
  CAR_SECTION_LOADS,
  N_CAR_SECTIONS
} CarSection;

/* Corrections in the hardware's own terms; see Corrections in kernel/corner.h. */
typedef struct {
  double camber_bolt_deg; /* signed as camber: negative leans the top in */
  double ball_joint_spacer_mm, tie_rod_end_spacer_mm;
  double front_pivot_raise_mm, rear_pivot_raise_mm, pivot_outboard_mm;
  double rack_raise_mm, tie_rod_length_mm;
  double wheel_spacer_mm; /* the wheel outboard: a spacer, or less rim offset */
} CarCorrections;

/* The right side of a setup, where it is set otherwise than the left one. Its own inboard
 * and rearward. */
typedef struct {
  gboolean is_own;   /* or all is as on the left */
  MountOffset mount; /* mm */
  double camber_bolt_deg;
} CarRightSide;

typedef struct {
  char *name;
  MountOffset mount; /* mm */
  double lowering_mm;
  ToeMode toe;
  CarCorrections corrections;
  gboolean is_hidden; /* not drawn unless it is in hand or the baseline */
  char *plate;        /* the name of the plate that the mount was set by, or NULL */
  gboolean is_plate_swapped; /* the other side's plate is fitted */
  CarRightSide right;
  gboolean has_springs; /* its own instead of the car's, all of them */
  CarSprings springs;
  gboolean has_rod; /* its own instead of the car's */
  CarRod rod;
  /* members not known here, or NULL */
  JsonObject *unknown, *unknown_mount, *unknown_corrections, *unknown_plate,
      *unknown_right, *unknown_springs, *unknown_rod;
} CarSetup;

typedef struct {
  double wheelbase_mm, cg_height_mm, front_mass_kg, unsprung_corner_kg, front_brake_share;
  double rear_mass_kg; /* 0: CAR_DEFAULT_REAR_SHARE of the front one */
} CarBody;

/* The opening in the strut tower, its centre from the mount as measured. */
typedef struct {
  double opening_diameter_mm; /* 0: not given */
  double opening_inboard_mm, opening_rearward_mm;
} CarTower;

/* Sizes of the strut, heights along its axis from the strut foot. 0: not given. */
typedef struct {
  double tube_diameter_mm, tube_bottom_mm, tube_top_mm;
  double seat_diameter_mm, seat_height_mm, spring_diameter_mm;
  CarRod rod;
} CarStrut;

typedef struct {
  double tyre_clearance_mm, edge_margin_mm;  /* at least */
  double cross_camber_deg, cross_caster_deg; /* at most, between the sides */
  double camber_bolt_deg; /* at most, either way, of the bolts that can be had */
  double travel_used_mm;  /* either way of standing: what costs are counted over */
} CarLimits;

/* What the alignment aims for. */
typedef struct {
  guint aim;           /* of Aim in model/car/aim.h */
  double least, most;  /* edge units; −INFINITY and INFINITY where open */
  double weight;       /* above 0 */
  JsonObject *unknown; /* members not known here, or NULL */
} CarTarget;

typedef enum {
  SIDE_LEFT,
  SIDE_RIGHT
} CarSide;

/* The right side as it was measured, where it differs; left signs and axes for angles,
 * vehicle axes for points (so y is below 0). */
typedef struct {
  gboolean has_points, has_alignment;
  Vec3 points[N_POINTS];
  double camber_deg, toe_in_deg;
  /* members not known here, or NULL */
  JsonObject *unknown, *unknown_corner, *unknown_alignment;
} CarMeasuredRight;

typedef struct {
  char *name, *notes;
  Vec3 points[N_POINTS]; /* mm */
  double camber_deg, toe_in_deg;
  double loaded_radius_mm, section_width_mm;
  double bump_mm, droop_mm; /* travel from the reference height, both positive */
  CarBody body;
  double unloaded_radius_mm; /* of the tyre; 0: not given, see car_tyre_shape () */
  double rim_offset_mm;      /* of the wheels that were on it when measured */
  CarTower tower;
  CarStrut strut;
  double thread_pitch_mm; /* of the tie rod: its length per turn */
  CarLimits limits;
  GArray *targets; /* of CarTarget, at most one for each aim */
  CarMeasuredRight right;
  CarSprings springs;          /* as built: what a setup without its own stands on */
  JsonObject *unknown_springs; /* members not known here, or NULL */
  gsize n_load_cases;          /* 0: the usual ones */
  CarLoadCase load_cases[LOAD_CASES_MOST];
  GArray *setups;                      /* of CarSetup, at least one */
  guint baseline;                      /* the setup that the others are compared with */
  JsonObject *unknown[N_CAR_SECTIONS]; /* or NULL */
} Car;

/* A car with every optional member at its default, one setup "As measured" and all eight
 * points at the origin. */
Car *car_new (void);
Car *car_copy (const Car *car);
/* A copy that has one setup "As measured", which moves nothing. */
Car *car_without_setups (const Car *car);
void car_free (Car *car);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Car, car_free)

/* To the bit, and to every member that is not known here. */
gboolean car_equal (const Car *a, const Car *b);

gboolean car_target_equal (const CarTarget *a, const CarTarget *b);

CarSetup *car_setup (const Car *car, guint index);
/* The first setup of that name. */
gboolean car_find_setup (const Car *car, const char *name, guint *index);

MeasuredCorner car_measured_corner (const Car *car);
Adjustment car_adjustment (const CarSetup *setup);

/* The right side is mirrored to the left, as the kernel has it. */
gboolean car_has_right (const Car *car);
/* Measured otherwise, or set otherwise in that setup. */
gboolean car_sides_differ (const Car *car, guint setup);
MeasuredCorner car_measured_side (const Car *car, CarSide side);
Adjustment car_side_adjustment (const CarSetup *setup, CarSide side);

/* For the kernel. An unloaded radius that is not given is taken as CAR_TYRE_SQUASH more
 * than the loaded one. */
#define CAR_TYRE_SQUASH 0.03 /* from memory: a road tyre stands 3 to 4 % lower */
TyreShape car_tyre_shape (const Car *car);
/* A part whose diameter or height is not given is not there; the tube starts at the foot
 * and the spring at the seat. Where `strut` gives neither seat nor spring, the coil that
 * the car is built with counts, if its wire, mean diameter and perch are given. */
StrutShape car_strut_shape (const Car *car);
/* The same tube; round the strut what setup @index stands on. A coil of its own that
 * gives wire, mean diameter and perch counts instead of seat and spring as measured: as
 * thick as both diameters together say, from the perch to its upper seat, and slack no
 * longer than it is free. A helper on top of it is taken to be as thick, having no
 * diameter of its own; one beside it says nothing. The measured seat goes with the perch
 * where the coil is as thick as the measured spring to within CAR_SAME_SEAT, and is no
 * part of it else. */
#define CAR_SAME_SEAT 1.0 /* mm; common practice, no published source */
StrutShape car_setup_strut_shape (const Car *car, guint index);
/* What setup @index stands on, and its rod. */
const CarSprings *car_setup_springs (const Car *car, guint index);
CarRod car_setup_rod (const Car *car, guint index);
/* For the kernel; the guide at the tube's top where its height is not given. */
Rod car_rod (const Car *car, const CarRod *rod);
SpringPlaces car_spring_places (const Car *car, const CarSprings *springs);
double car_rear_mass (const Car *car); /* kg */
/* @cases gets those of the file, or the usual ones; returns how many. */
gsize car_load_cases (const Car *car, CarLoadCase cases[LOAD_CASES_MOST]);
/* Enough to say what room there is. */
gboolean car_has_strut_shape (const Car *car);
gboolean car_setup_has_strut_shape (const Car *car, guint index);

/* Parts that belong to no car yet. A right side that is cleared is not measured. */
GArray *car_targets_new (const CarTarget *like, guint n);
CarMeasuredRight car_right_copy (const CarMeasuredRight *right);
void car_right_clear (CarMeasuredRight *right);
/* A copy of @setup that belongs to no car yet, and its end. */
CarSetup car_setup_copy (const CarSetup *setup);
void car_setup_clear (CarSetup *setup);
