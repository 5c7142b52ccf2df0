/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Hardware for the strut tower: an adjustable upper mount or an offset bush, described by
 * where it can put the bearing's centre.
 *
 * Places are those of the left side, in plan, mm from the mount as measured: inboard and
 * rearward. The plate for the right side is its mirror image, so there the same numbers
 * hold, counted inboard and rearward again. Angles in plan run from inboard (0°) to
 * rearward (90°). */

#pragma once

#include "kernel/corner.h"

#include <glib.h>
#include <json-glib/json-glib.h>

typedef enum {
  PLATE_FIXED,         /* one place */
  PLATE_SLOT,          /* along one straight slot */
  PLATE_CROSSED_SLOTS, /* two slots square to each other: a rectangle */
  PLATE_ECCENTRIC,     /* turned in place: on a circle, anywhere or at indexed turns */
  PLATE_HOLES,         /* one of several bolt positions */
  N_PLATE_KINDS
} PlateKind;

/* A scale as it is engraved: the setting that a fitter reads, mm. */
typedef struct {
  double least, most;
} PlateScale;

typedef struct {
  char *label; /* as it is stamped: "1"; the list of holes owns it */
  double inboard_mm, rearward_mm;
  JsonObject *unknown; /* members not known here, or NULL */
} PlateHole;

typedef struct {
  char *name, *notes;
  PlateKind kind;
  double inboard_mm, rearward_mm; /* the fixed place, the scales' zero, or the circle's
                                     centre; not for holes */
  double direction_deg;           /* of the first scale; the second is 90° further */
  PlateScale along, across;       /* slot: along alone */
  double radius_mm;               /* eccentric: of its circle, */
  double turn_least_deg, turn_most_deg; /* and where on it, if … */
  GArray *
      turns_deg; /* … of double: the indexed turns, in rising order; empty for any turn */
  GArray *holes;    /* of PlateHole; at least one when kind is PLATE_HOLES */
  double raises_mm; /* how much higher the bearing sits than as measured; below 0 lower */
  double thickness_mm;        /* of the plate; for the card. 0: not given */
  double bearing_diameter_mm; /* outside, of what moves in the opening. 0: not given */
  double bearing_tilt_deg;    /* either way, from how the strut stood as measured. 0: not
                                 given */
  gboolean can_swap;          /* the other side's plate may be fitted, turned by … */
  double swap_turn_deg; /* … this in plan. −90: its two directions change places */
  JsonObject *unknown;  /* members not known here, or NULL */
} Plate;

/* A sound plate: fixed, at the place as measured, with nothing given. */
Plate *plate_new (void);
Plate *plate_copy (const Plate *plate);
void plate_free (Plate *plate);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Plate, plate_free)
/* To the bit; only the members of the kind count, so that equal plates have equal files.
 */
gboolean plate_equal (const Plate *a, const Plate *b);

/* How many ways a bearing can be moved without steps: 0 for a list of places, 1 along a
 * slot or a circle, 2 in a rectangle. */
guint plate_n_ways (const Plate *plate);
/* How many indexed places there are: 0 unless plate_n_ways () is 0. */
guint plate_n_places (const Plate *plate);

/* What is dialled in. */
typedef struct {
  guint place;          /* where ways are 0: of plate_n_places () */
  double along, across; /* mm on the scales; for an eccentric without index @along is its
                           turn in degrees */
  gboolean is_swapped;  /* the other side's plate, turned by swap_turn_deg */
} PlateSetting;

/* Where the setting puts the bearing: plan and height, mm. A setting past the end of a
 * scale or of a list stands at the end. */
MountOffset plate_place (const Plate *plate, PlateSetting setting);

/* The setting within the plate that comes nearest in plan to @mount. Of equal ones the
 * first. With @is_swapped the other side's plate is looked at. */
PlateSetting plate_nearest (const Plate *plate, MountOffset mount, gboolean is_swapped);

/* The range of @along and @across, for an eccentric of its turn in degrees. */
PlateScale plate_along_range (const Plate *plate);
PlateScale plate_across_range (const Plate *plate);

/* Where a scale points in the car, degrees in plan from 0 up to 360; of a plate with two
 * the second stands 90° further as it is made. */
typedef enum {
  PLATE_FIRST_SCALE,
  PLATE_SECOND_SCALE
} PlateScaleName;
double
plate_scale_direction (const Plate *plate, PlateScaleName scale, gboolean is_swapped);

/* What a fitter dials in, translated: "hole 3", "12.5 mm on the scale", "12.5
 * inboard scale, 4.0 rearward scale", or "first scale" where it points between, "turned
 * to 135°", "as it is"; with "left and right plates swapped" where so. Free with g_free
 * (). */
char *plate_describe_setting (const Plate *plate, PlateSetting setting);

/* The same where it is said elsewhere that the plates are swapped. */
char *plate_describe_dials (const Plate *plate, PlateSetting setting);

/* Translated name of a kind, and one sentence on it. */
const char *plate_kind_name (PlateKind kind);
const char *plate_kind_meaning (PlateKind kind);
