/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "what does this corner stand on?", solved for every setup: wheel load and
 * rate through wheel travel, where it stands by its springs, what happens on the way.
 * What window, exports and command line all draw and print from. */

#pragma once

#include "model/spring/spring-law.h"
#include "model/study/study.h"

/* What happens somewhere in wheel travel. */
typedef enum {
  SPRING_EVENT_TOPS_OUT,      /* the coil comes off its seat in droop */
  SPRING_EVENT_COIL_BOUND,    /* its coils touch in bump */
  SPRING_EVENT_HELPER_CLOSED, /* in bump */
  SPRING_EVENT_HELPER_SLACK,  /* off its seat in droop */
  SPRING_EVENT_BUMP_STOP,     /* touches */
  SPRING_EVENT_DROOP_STOP,    /* the strut at its end */
  SPRING_EVENT_BAR_UNWOUND,   /* the bar passes through no twist */
  N_SPRING_EVENTS
} SpringEventKind;

typedef struct {
  SpringEventKind kind;
  double travel;       /* of the wheel, mm, to 1e-9 */
  double load;         /* of the wheel there, N */
  gboolean is_reached; /* between the droop stop and where a spring is solid */
} SpringEvent;
#define SPRING_EVENTS_MOST 12

const char *spring_event_name (SpringEventKind kind); /* translated: "coil bound" */
const char *spring_event_key (SpringEventKind kind);  /* "coil_bound" */

/* Whether and where the springs carry the corner's weight. */
typedef enum {
  STANDS_BY_SPRINGS,
  STANDS_NOWHERE_TOO_SOFT,  /* within the car's travel: it sinks through */
  STANDS_NOWHERE_BOUND,     /* a spring is solid before the weight is carried */
  STANDS_NOWHERE_TOO_STIFF, /* it stays at full droop */
  STANDS_NOT_GIVEN          /* no spring is given */
} StandsHow;

typedef struct {
  const StudyCorner *corner; /* its stations' poses are where these are */
  const CarSprings *springs; /* the car's or the setup's */
  SpringLaw *law;
  SpringStation stations[STUDY_STATIONS];
  SpringStation now;       /* at the study's travel in hand */
  SpringStation at_height; /* where the setup stands: at its lowering */
  StandsHow stands;
  double standing;           /* wheel travel where load meets corner weight, mm; or NAN */
  SpringStation at_standing; /* there */
  SpringEvent events[SPRING_EVENTS_MOST];
  gsize n_events; /* in rising travel */

  /* There where it stands by its springs; NAN where it does not. */
  double sprung_kg;             /* of the corner */
  double wheel_rate, ride_rate; /* N/mm; ride: the tyre in series */
  double frequency;             /* Hz, of sprung mass on the ride rate */
  double frequency_rigid;       /* Hz, on the wheel rate alone */
  double static_deflection;     /* mm: sprung weight over wheel rate */
  double damping_ratio_bump, damping_ratio_rebound; /* at SPRING_DAMPER_SPEED; NAN: no
                                                       table */
  double roll_stiffness, roll_stiffness_bar; /* N·m/°: axle by springs, by bar alone */

  /* Springs alone, from their sizes and steel's density. */
  double spring_kg, spring_unsprung_kg,
      spring_height; /* height of their centre, mm above ground */
} SpringCorner;

typedef struct {
  const Study *study;
  const Car *car;
  double corner_weight; /* N at the contact: front mass/2 · g */
  double unsprung_weight;
  SpringCorner *setups; /* study->n_setups of them */
  guint n_setups, n_allocated;
} SpringStudy;

/* Standard acceleration of free fall, ISO 80000-3: 9.80665 m/s². */
#define SPRING_DAMPER_SPEED 0.1 /* m/s: where damping ratios are taken */
#define SPRING_GRAVITY 9.80665

SpringStudy *spring_study_new (void);
void spring_study_free (SpringStudy *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpringStudy, spring_study_free)

/* @study and @car stay alive and as they are while this is read. */
void spring_study_solve (SpringStudy *self, const Study *study, const Car *car);
/* Another travel in hand; the curves stay. Call after study_set_travel (). */
void spring_study_set_travel (SpringStudy *self);
const SpringCorner *spring_study_in_hand (const SpringStudy *self);

/* Where bump ends because a coil, or a helper on seats of its own, is solid; NULL:
 * nowhere in the travel. A helper on top of a coil that closes leaves the coil to it. */
const SpringEvent *spring_corner_solid (const SpringCorner *self);

/* Hz, of a mass in kg on a rate in N/mm; NAN where there is none. */
double ride_frequency (double rate, double mass);
/* c/(2 √(k m)): of @damping in N·s/m, both at the wheel. */
double damping_ratio (double damping, double rate, double mass);

/* "Set it back to height": what brings the setup to stand at wheel travel @travel. */
typedef enum {
  RAISE_PERCH,      /* of the coil, mm */
  RAISE_CLAMP_ANGLE /* of the bar, degrees */
} RaiseBy;
/* The new perch or clamp angle; FALSE where the car has no such spring, the pose cannot
 * be assembled, or no value does it (a coil slack at any perch, or bound). */
gboolean spring_study_height_cure (
    const SpringStudy *self, guint setup, double travel, RaiseBy by, double *value);
