/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-probe.h"
#include "model/choice/choice-travel.h"

#include <math.h>
#include <string.h>

#define DEGREES(radians) (180.0 / G_PI * (radians))
#define NO_END 2000.0   /* mm: longer than any strut */
#define LIMITS_WELL 1.0 /* mm more than is asked for: further away limits nothing */

/* Whether a spring that goes on for ever would come near to the limit; one that leans
 * would not lean then. */
static gboolean
spring_may_limit (const ChoiceCorner *corner, double camber_bolt)
{
  const MountOffset as_measured = { 0.0, 0.0, 0.0 };
  const Adjustment adjustment = choice_corner_adjust (corner, as_measured, camber_bolt);
  const StrutShape spring = { .seat_height = corner->strut.seat_height,
                              .spring_radius = corner->strut.spring_radius,
                              .lower_outboard = corner->strut.lower_outboard,
                              .lower_forward = corner->strut.lower_forward,
                              .upper_outboard = corner->strut.upper_outboard,
                              .upper_forward = corner->strut.upper_forward };
  Corner linkage;

  if (strut_shape_leans (&corner->strut))
    return TRUE;

  corner_assemble (&corner->measured, &adjustment, &linkage);
  return tyre_clearance (&linkage, &corner->tyre, &spring, NO_END).least <
         corner->car->limits.tyre_clearance_mm + LIMITS_WELL;
}

/* In between the room changes evenly enough for ends and middle to tell. */
ChoiceRooms
choice_rooms_of (const ChoiceCorner *corner, double least_bolt, double most_bolt)
{
  ChoiceRooms rooms = { .strut = corner->strut };

  if (corner->has_strut && rooms.strut.spring_radius > 0.0 &&
      !spring_may_limit (corner, least_bolt) && !spring_may_limit (corner, most_bolt) &&
      !spring_may_limit (corner, (least_bolt + most_bolt) / 2.0))
    rooms.strut.spring_radius = 0.0;
  return rooms;
}

static const double *
find_rooms (ChoiceRooms *rooms,
            const ChoiceCorner *corner,
            const Corner *linkage,
            double camber_bolt,
            double length)
{
  const double key = rooms->strut.spring_radius > 0.0 ? length : 0.0;
  const guint n = MIN (rooms->n_found, N_KNOWN_ROOMS);
  const guint next = rooms->n_found % N_KNOWN_ROOMS;

  for (guint i = 0; i < n; i++)
    if (rooms->known[i].camber_bolt == camber_bolt && rooms->known[i].length == key)
      return rooms->known[i].room;

  const TyreClearance clearance =
      tyre_clearance (linkage, &corner->tyre, &rooms->strut, length);
  rooms->known[next].camber_bolt = camber_bolt;
  rooms->known[next].length = key;
  memcpy (rooms->known[next].room, clearance.room, sizeof clearance.room);
  rooms->n_found++;
  return rooms->known[next].room;
}

static void
measure_rooms (const ChoiceCorner *corner,
               ChoiceRooms *rooms,
               const Corner *linkage,
               double camber_bolt,
               double length,
               double *outputs)
{
  static const double nothing[N_STRUT_PARTS] = { INFINITY, INFINITY, INFINITY };
  const double *room = corner->has_strut
                           ? find_rooms (rooms, corner, linkage, camber_bolt, length)
                           : nothing;

  memcpy (&outputs[OUTPUT_ROOM], room, sizeof nothing);
}

static gboolean
aims_for (const ChoiceCorner *corner, Aim aim)
{
  const GArray *targets = corner->targets;

  for (guint i = 0; i < targets->len; i++)
    if (g_array_index (targets, CarTarget, i).aim == aim)
      return TRUE;
  return FALSE;
}

/* The toe that the tie rod as it was would leave. Only where that is aimed for and
 * differs. */
static gboolean
find_toe_before_reset (const ChoiceCorner *corner,
                       const Adjustment *adjustment,
                       double *toe)
{
  Adjustment as_moved = *adjustment;
  Corner before;
  Pose pose;

  if (adjustment->toe == TOE_AS_MOVED || !aims_for (corner, AIM_TOE_CHANGE))
    return TRUE;
  as_moved.toe = TOE_AS_MOVED;
  corner_assemble (&corner->measured, &as_moved, &before);
  if (pose_at_travel (&before, adjustment->lowering, 0.0, NULL, &pose) != POSE_OK)
    return FALSE;
  *toe = atan2 (pose.spin_axis.x, pose.spin_axis.y);
  return TRUE;
}

static gboolean
probe_travel (const ChoiceCorner *corner,
              const Corner *linkage,
              const Pose *standing,
              double *longest,
              double *outputs)
{
  ChoiceTravel travel;

  if (!choice_travel_solve (linkage, standing, corner->travel, corner->strut_as_measured,
                            &travel))
    return FALSE;
  for (int i = 0; i < TOE_CURVE_STATIONS; i++) {
    outputs[OUTPUT_TOE + i] = DEGREES (travel.toe[i]);
    outputs[OUTPUT_CHORD_2 + i] = travel.chord_2[i];
  }
  *longest = travel.longest;
  return TRUE;
}

/* The strut is longest at the end of the droop, unless the linkage is a strange one. */
static gboolean
probe_droop (const ChoiceCorner *corner,
             const ChoiceRooms *rooms,
             const Corner *linkage,
             const Pose *standing,
             double *longest)
{
  Pose droop;

  if (!corner->has_strut || rooms->strut.spring_radius <= 0.0)
    return TRUE;
  if (pose_at_travel (linkage, corner->travel.standing + corner->travel.from, 0.0,
                      standing, &droop) != POSE_OK)
    return FALSE;
  *longest = fmax (*longest, vec3_distance (linkage->upper_mount, droop.strut_foot));
  return TRUE;
}

gboolean
choice_probe (const ChoiceCorner *corner,
              ChoiceRooms *rooms,
              MountOffset mount,
              double camber_bolt,
              gboolean is_through_travel,
              double outputs[N_OUTPUTS])
{
  const Adjustment adjustment = choice_corner_adjust (corner, mount, camber_bolt);
  const double off_centre = choice_corner_off_centre (corner, mount);
  Corner linkage;
  Station station;

  corner_assemble (&corner->measured, &adjustment, &linkage);
  if (station_solve (&linkage, adjustment.lowering, 0.0, &station) != POSE_OK)
    return FALSE;

  const double *quantity = station.measures.value;
  double toe = quantity[QUANTITY_TOE_IN], longest = quantity[QUANTITY_STRUT_LENGTH];

  if (!find_toe_before_reset (corner, &adjustment, &toe) ||
      !(is_through_travel
            ? probe_travel (corner, &linkage, &station.pose, &longest, outputs)
            : probe_droop (corner, rooms, &linkage, &station.pose, &longest)))
    return FALSE;
  for (Aim aim = 0; aim < N_AIMS; aim++)
    outputs[OUTPUT_AIM + aim] = choice_corner_aim (corner, aim, quantity, toe, NAN);
  outputs[OUTPUT_INBOARD] = mount.inboard;
  outputs[OUTPUT_REARWARD] = mount.rearward;
  outputs[OUTPUT_OFF_CENTRE_2] = off_centre * off_centre;
  measure_rooms (corner, rooms, &linkage, camber_bolt, longest, outputs);
  return TRUE;
}
