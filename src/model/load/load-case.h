/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A case of load as forces on the left wheel, and what it does to every joint.
 *
 * The car is a rigid body on level road: lateral and braking acceleration act at its
 * centre of gravity, as high as measured; the axle takes its own mass' share of roll
 * moment, all of it across the track that it has where the setup stands; tyres share side
 * force and braking as they share load. A wheel that would leave the road carries
 * nothing, and the other all of the axle. What is unsprung weighs at the wheel centre;
 * its inertia is left out. */

#pragma once

#include "kernel/bent-rod.h"
#include "model/spring/spring-study.h"

/* How the springs are taken to carry. */
typedef enum {
  SPRING_AS_SET, /* each by its own law; what is left over is the strut's damper or stop
                  */
  SPRING_COIL_ONLY, /* a coil on the strut's axis carries all */
  SPRING_BAR_ONLY   /* the torsion bar carries all */
} SpringMode;

/* What pushes along the strut's axis, N, pushed together positive. */
typedef struct {
  double coil; /* its part along the axis: less than its force where it leans */
  double helper, bump_stop, gas;
} StrutShares;

typedef struct {
  gboolean is_solved;
  double travel; /* of the wheel, mm */
  Pose pose;
  CornerLoad load;
  SpringHold hold;
  JointForces forces;
  StrutShares shares; /* with left_over they are forces.axial */
  double left_over;  /* N along the strut that none of them carries: the damper, or an end
                        of travel; 0 where the springs balance */
  double link_force; /* N, of the anti-roll bar on its link, up on the wheel's side */
  Vec3 bar_on_body;  /* N, of its bearings, the couple of both sides left out */
  gboolean is_lifted; /* the wheel would leave the road, and is taken at no load */
  double transfer;    /* N of vertical load onto this wheel */
  double load_on_tower, load_on_floor; /* N upward on the body: at the mount; at arm, rack
                                          and bar together */
} JointLoads;

/* @travel NAN: with SPRING_AS_SET where springs and anti-roll bar carry it, both wheels
 * of the axle taken to be alike, or where the strut ends if they do not; else where the
 * setup stands, at its lowering. The anti-roll bar is there with SPRING_AS_SET alone, the
 * other wheel standing by its springs. Not solved where the corner cannot be assembled,
 * past an end of the strut, or where no spring is given to balance. */
void joint_loads_of_case (const SpringStudy *study,
                          guint setup,
                          const CarLoadCase *load_case,
                          double travel,
                          SpringMode mode,
                          JointLoads *out);

/* A contact force by itself: no weight of the parts, no anti-roll bar. */
void joint_loads_of_force (const SpringStudy *study,
                           guint setup,
                           Vec3 contact,
                           double travel,
                           SpringMode mode,
                           JointLoads *out);

/* The plain sentences, of a case or, for NULL, of standing: what stands on the tower by
 * the springs as they are, or that it is pulled down; then the same by a coil alone and
 * by a bar alone, but for the one that does carry it alone. In a case that moves the
 * corner, coil and bar by themselves would leave out stops and anti-roll bar: there it is
 * the springs as they are set. Free with g_free (). */
char *joint_loads_sentence (const SpringStudy *study,
                            guint setup,
                            const CarLoadCase *load_case);
