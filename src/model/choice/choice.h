/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which upper mount, and set how? For each plate the best place that it can reach for the
 * alignment aimed for, on each side of the car, with what that place costs.
 *
 * Each target is a range; what lies outside it is counted in units that a bench can tell
 * apart (unit_size of aim_info ()), as square and some of itself, and weighted: n² + n/2,
 * so that no aim that can be met is given away for a trifle of another. A limit (room to
 * the tyre, edge of the tower, tilt of the bearing) is never traded against a target: a
 * place past a limit is taken only where the plate has none within, and the plate then
 * fails. Of places that serve equally well, the one nearest to the mount as measured is
 * taken; but one that brings the sides within the car's limits between them where it is
 * not.
 *
 * Slots and circles: from the best of a grid of starts by sequential quadratic
 * programming, the linear algebra by the GNU Scientific Library; lists of places: each is
 * tried. One thread at a time, as restore.h. */

#pragma once

#include "kernel/clearance.h"
#include "kernel/mount-place.h"
#include "kernel/statics.h"
#include "model/car/aim.h"
#include "model/car/car.h"
#include "model/plate/plate.h"

typedef enum {
  CHOICE_TYRE_TOO_NEAR = 1 << 0,
  CHOICE_EDGE_TOO_NEAR = 1 << 1,
  CHOICE_BEARING_TILTS_TOO_FAR = 1 << 2,
  CHOICE_NOT_ASSEMBLED = 1 << 3, /* somewhere in the travel used */
  CHOICE_MISSES_AIM = 1 << 4     /* no fault of the plate: the aim is out of its reach */
} ChoiceFault;

/* What keeps a place from an aim that it misses. */
typedef enum {
  CHOICE_BAR_NONE, /* met, or not asked for */
  CHOICE_BAR_FIXED,
  CHOICE_BAR_HARDLY_MOVES, /* no way that is left moves the aim */
  CHOICE_BAR_SLOT_END, /* past which the aim would come nearer; so with all of these */
  CHOICE_BAR_TURN_END,
  CHOICE_BAR_BOLT_END,
  CHOICE_BAR_EDGE,
  CHOICE_BAR_TYRE,
  CHOICE_BAR_TILT,
  CHOICE_BAR_ASSEMBLY,
  CHOICE_BAR_CIRCLE,    /* no turn comes nearer */
  CHOICE_BAR_NO_NEARER, /* no other place does */
  CHOICE_BAR_OTHER_AIM, /* what comes nearer takes another aim further away */
  CHOICE_BAR_NOT_SET_SO /* nothing: the place is not the best for the aims together */
} ChoiceBarKind;

typedef struct {
  ChoiceBarKind kind;
  Aim against; /* of CHOICE_BAR_OTHER_AIM */
} ChoiceBar;

/* One place on one side, with everything that it costs. Lengths mm, angles rad. */
typedef struct {
  PlateSetting setting;
  MountOffset mount;
  double camber_bolt;         /* rad, the setup's own and what was added */
  double value[N_QUANTITIES]; /* at the standing height, with the setup's toe mode */
  double toe_before_reset;    /* and the tie rod that brings it back: */
  double tie_rod_change;      /* mm longer */
  double tie_rod_turns;       /* of the car's thread pitch */
  double bump_steer;          /* the toe that is furthest off the standing toe over the
                                 travel used, signed; AIM_BUMP_STEER is its size */
  TyreClearance clearance;    /* the least over the travel used; .least is NAN where the
                                 car does not give the strut's sizes */
  double side_force;          /* N on the rod, standing */
  double bearing_tilt;        /* the most over the travel used, from as measured */
  double edge_margin;         /* NAN where tower or bearing are not given */
  double aim_value[N_AIMS];   /* in edge units */
  double aim_miss[N_AIMS];    /* outside the range, edge units, signed; 0 inside */
  ChoiceBar bar[N_AIMS];      /* of an answer's places within the limits */
  double cost;                /* weighted sum of n² + n/2, 0 where all aims are met */
  guint faults;               /* of ChoiceFault */
} ChoicePlace;

typedef struct {
  const Plate *plate;
  gboolean is_swapped, has_bolt; /* hand-swapped; a camber bolt was added */
  ChoicePlace side[2];           /* left, right: equal when the car gives no right side */
  double cross_camber, cross_caster; /* left less right, rad */
  gboolean is_within_cross;          /* both within the car's limits */
  gboolean fits;                     /* no fault on either side but CHOICE_MISSES_AIM */
  gboolean meets;                    /* fits, every aim is met, and is_within_cross */
} ChoiceAnswer;

typedef struct {
  guint setup;           /* height, corrections and toe mode are its; its mount is not */
  SpringCarrier carrier; /* for the side force */
  gboolean try_bolt;     /* a camber bolt too, where the mount alone misses */
  gboolean try_swap;     /* the other side's plates too, where they may be swapped */
} ChoiceQuestion;

/* What carries a setup as it is given: the bar where it has one and no coil, else a coil.
 */
SpringCarrier choice_usual_carrier (const Car *car, guint setup);

/* Best first: those that meet, then those that fit, by cost. Of ChoiceAnswer; the plates
 * must stay alive. The aims and limits are those of @car. */
GArray *choice_solve (const Car *car,
                      const ChoiceQuestion *question,
                      const Plate *const *plates,
                      guint n_plates);

/* One place by itself: what choice_solve () says of it. @camber_bolt is added, rad. */
ChoicePlace choice_place (const Car *car,
                          const ChoiceQuestion *question,
                          CarSide side,
                          const Plate *plate,
                          PlateSetting setting,
                          double camber_bolt);

/* What a setup's own mount comes to on one side, on a plate or not; its bearing is that
 * of
 * @fitted, and a point where that is NULL or does not give it. */
ChoicePlace choice_place_of_mount (const Car *car,
                                   const ChoiceQuestion *question,
                                   CarSide side,
                                   const Plate *fitted);

/* What a setup comes to as it stands, on both sides, with @plate set as near to its mount
 * as it goes; what choice_solve () says of the same settings. Its camber bolt counts as
 * the setup's own. */
ChoiceAnswer
choice_of_setup (const Car *car, const ChoiceQuestion *question, const Plate *plate);

/* In translated sentences: what the answer does, or why it fails; each aim that is
 * missed, the costliest first. Free with g_free (). */
char *choice_sentence (const Car *car, const ChoiceAnswer *answer);

/* What a place lacks of the room asked for: of CHOICE_TYRE_TOO_NEAR and
 * CHOICE_EDGE_TOO_NEAR only, in a sentence that stands alone. Free with g_free (). */
char *choice_room_sentence (const Car *car, const ChoicePlace *place, ChoiceFault fault);

/* What an answer comes to, as tables mark it. */
typedef enum {
  CHOICE_FAILS,
  CHOICE_FITS, /* but misses an aim, or the sides differ too much */
  CHOICE_MEETS,
  N_CHOICE_VERDICTS
} ChoiceVerdict;

ChoiceVerdict choice_verdict (const ChoiceAnswer *answer);
const char *choice_verdict_sign (ChoiceVerdict verdict); /* "✓" */
/* What the sign stands for, translated: "meets every aim". */
const char *choice_verdict_words (const Car *car, ChoiceVerdict verdict);

/* One translated sentence on all @answers, of ChoiceAnswer: how many of them meet the
 * aims, or, where none are set, how they are ranked; "" of none. Free with g_free (). */
char *choice_count_sentence (const Car *car, const GArray *answers);

/* The setup with the answer's plate on both sides; its name is that of the plate. */
CarSetup choice_setup (const Car *car, guint like, const ChoiceAnswer *answer);
