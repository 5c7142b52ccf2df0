/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plate files: `.swplate`, UTF-8 JSON, MIME type application/x-strutwright-plate+json,
 * `"format": "strutwright-plate"`, version 1. Read as strictly as car files; errors are
 * one sentence that names the member by its path, in the domain FILE_REFUSAL. The members
 * are those of Plate with the same names; only those of the plate's kind may stand there:
 *
 *   kind: "fixed"          inboard_mm, rearward_mm
 *         "slot"           inboard_mm, rearward_mm, direction_deg, along_mm [least, most]
 *         "crossed-slots"  the same, and across_mm [least, most]
 *         "eccentric"      inboard_mm, rearward_mm, radius_mm, and turns_deg [...] or
 *                          turn_range_deg [least, most]: one of them, not both
 *         "holes"          holes [{ label, inboard_mm, rearward_mm } ...]: no label twice
 *   any:  name, notes, raises_mm, thickness_mm, bearing_diameter_mm, bearing_tilt_deg,
 *         swap_turn_deg (there when plates may be swapped)
 *
 * format, version, name, kind and all that the kind has must stand there; the rest may be
 * left out. Members that are not known here are kept, those of another kind refused. */

#pragma once

#include "model/car/car-json.h"
#include "model/plate/plate.h"

#define PLATE_FILE_VERSION 1
#define PLATE_FURTHEST 200.0  /* mm: a slip of the keyboard beyond, and no plate */
#define PLATE_MOST_PLACES 360 /* in a list of turns or holes */

Plate *plate_from_json (const char *text, gsize length, GError **error);
char *plate_to_json (const Plate *plate, gsize *length);
/* Whether plate_from_json () would take it; the same sentence if not. */
gboolean plate_check (const Plate *plate, GError **error);

Plate *plate_load (GFile *file, GError **error);
gboolean plate_save (const Plate *plate, GFile *file, GError **error); /* atomic */
