/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/advice/restore.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NUMBER_SIZE 40

/* A limit or a travel, with no more digits than it has. */
static char *
bare_length (double mm)
{
  return unit_plain_number (UNIT_LENGTH, mm, 1);
}

static char *
whole_length (double mm)
{
  return unit_plain_text (UNIT_LENGTH, mm, 1);
}

static char *
spacer_sentence (RestoreGoal goal, const RestoreAnswer *answer)
{
  const gboolean is_roll_centre = goal == RESTORE_ROLL_CENTRE;
  const Quantity quantity =
      is_roll_centre ? QUANTITY_ROLL_CENTRE_HEIGHT : QUANTITY_CAMBER_GAIN;
  char target[NUMBER_SIZE], before[NUMBER_SIZE], after[NUMBER_SIZE];
  g_autofree char *part = unit_text (UNIT_LENGTH, answer->value, 1);
  g_autofree char *least = bare_length (answer->limits.least);
  g_autofree char *most = whole_length (answer->limits.most);

  quantity_format_whole (quantity, answer->target, FALSE, target, sizeof target);
  quantity_format_whole (quantity, answer->before, FALSE, before, sizeof before);
  quantity_format_whole (quantity, answer->after, FALSE, after, sizeof after);
  if (answer->status == RESTORE_OK)
    return g_strdup_printf (
        is_roll_centre
            ? _ ("A ball-joint spacer of %s puts the roll centre back to the baseline's %s above the ground; now it is at %s.")
            : _ ("A ball-joint spacer of %s puts the camber gain back to the baseline's %s; now it is %s."),
        part, target, before);
  return g_strdup_printf (
      is_roll_centre
          ? _ ("No ball-joint spacer from %s to %s puts the roll centre back to the baseline's %s above the ground; the nearest, %s, brings it from %s to %s.")
          : _ ("No ball-joint spacer from %s to %s puts the camber gain back to the baseline's %s; the nearest, %s, brings it from %s to %s."),
      least, most, target, part, before, after);
}

/* Of a part that sits at @value: down or up are words, not signs. */
static const char *
bump_steer_format (RestoreGoal goal, gboolean is_found, gboolean is_negative)
{
  const gboolean is_spacer = goal == RESTORE_BUMP_STEER_BY_SPACER;

  if (!is_found)
    return is_spacer
               ? _ ("The tie-rod-end spacer that brings bump steer nearest to the baseline's lies outside %s to %s: the best inside, %s, leaves the toe curves %s apart (RMS, from %s droop to %s bump); now they are %s apart.")
               : _ ("The rack height that brings bump steer nearest to the baseline's lies outside %s to %s: the best inside, %s, leaves the toe curves %s apart (RMS, from %s droop to %s bump); now they are %s apart.");
  if (is_spacer)
    return is_negative
               ? _ ("The tie rod's outer end %s higher brings bump steer nearest to the baseline's: it leaves the toe curves %s apart (RMS, from %s droop to %s bump); now they are %s apart.")
               : _ ("A tie-rod-end spacer of %s brings bump steer nearest to the baseline's: it leaves the toe curves %s apart (RMS, from %s droop to %s bump); now they are %s apart.");
  return is_negative
             ? _ ("The rack lowered by %s brings bump steer nearest to the baseline's: it leaves the toe curves %s apart (RMS, from %s droop to %s bump); now they are %s apart.")
             : _ ("The rack raised by %s brings bump steer nearest to the baseline's: it leaves the toe curves %s apart (RMS, from %s droop to %s bump); now they are %s apart.");
}

static char *
degrees_text (double radians)
{
  return unit_text (UNIT_ANGLE, quantity_edge_value (QUANTITY_TOE_IN, radians), 3);
}

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
static char *
bump_steer_sentence (RestoreGoal goal, const RestoreAnswer *answer)
{
  const gboolean is_found = answer->status == RESTORE_OK;
  const char *format = bump_steer_format (goal, is_found, answer->value < 0.0);
  g_autofree char *size =
      unit_text (UNIT_LENGTH, is_found ? fabs (answer->value) : answer->value, 1);
  g_autofree char *least = bare_length (answer->limits.least);
  g_autofree char *most = whole_length (answer->limits.most);
  g_autofree char *before = degrees_text (answer->before);
  g_autofree char *after = degrees_text (answer->after);
  g_autofree char *droop = whole_length (fabs (answer->from));
  g_autofree char *bump = whole_length (answer->to);

  return is_found
             ? g_strdup_printf (format, size, after, droop, bump, before)
             : g_strdup_printf (format, least, most, size, after, droop, bump, before);
}
#pragma GCC diagnostic pop

char *
restore_sentence (RestoreGoal goal, const RestoreAnswer *answer)
{
  if (answer->status == RESTORE_NOT_ASSEMBLED)
    return g_strdup (_ (
        "The setup or the baseline cannot be assembled where it stands, or over the travel used."));
  if (goal == RESTORE_BUMP_STEER_BY_SPACER || goal == RESTORE_BUMP_STEER_BY_RACK)
    return bump_steer_sentence (goal, answer);
  return spacer_sentence (goal, answer);
}
