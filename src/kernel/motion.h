/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the kernel only: the moving parts of one position as jets by the arm angle. */

#pragma once

#include "kernel/axis-frame.h"
#include "kernel/jet.h"
#include "kernel/pose.h"

typedef struct {
  Acceleration acceleration;
  Jet3 ball, foot, wheel, spin;
  Jet3 contact;     /* the geometric contact centre, which wanders over the tyre */
  Jet3 turn;        /* ω (first order) */
  Jet strut_length; /* |S − U| */
} Motion;

Motion motion_of (const Corner *corner, const Pose *pose);

/* A point of the knuckle that is at @point now. */
Jet3 motion_of_point (const Pose *pose, const Acceleration *a, Vec3 point);

/* Carries knuckle vectors, as a Corner has them, into the body. */
typedef struct {
  AxisFrame knuckle, body;
} KnuckleTurn;

KnuckleTurn knuckle_turn (const Corner *corner, const Pose *pose);
Vec3 knuckle_vector (const KnuckleTurn *turn, Vec3 vector);
