/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/plate/plate-json-check.h"
#include "model/plate/plate-json-members.h"
#include "model/plate/plate-json.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define FULL_TURN 360.0

static gboolean
is_blank (const char *text)
{
  if (text == NULL)
    return TRUE;
  while (g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  return *text == '\0';
}

static gboolean
check_text (const char *text, const char *parent, const char *name, GError **error)
{
  if (text != NULL && !g_utf8_validate (text, -1, NULL))
    return member_refuse (error, FILE_REFUSAL_TYPE, _ ("%s must be a text."), parent,
                          name);
  if (is_blank (text))
    return member_refuse (error, FILE_REFUSAL_NAME, _ ("%s must not be empty."), parent,
                          name);
  return TRUE;
}

static gboolean
check_numbers (const Plate *plate,
               const PlateNumber *numbers,
               gsize n_numbers,
               GError **error)
{
  for (gsize i = 0; i < n_numbers; i++) {
    const PlateNumber *number = &numbers[i];
    const gboolean is_absent =
        number->offset == offsetof (Plate, swap_turn_deg) && !plate->can_swap;

    if (plate_kind_has (plate->kind, number->name) && !is_absent &&
        !member_check_range (number->range, plate_number_value (plate, number->offset),
                             number->name, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
check_index (NumberRange range, double value, const char *name, guint i, GError **error)
{
  g_autofree char *path = g_strdup_printf ("%s[%u]", name, i);

  return member_check_range (range, value, path, error);
}

static gboolean
check_pair (const Plate *plate, const PlatePair *pair, GError **error)
{
  const double least = plate_number_value (plate, pair->least),
               most = plate_number_value (plate, pair->most);

  if (!check_index (pair->range, least, pair->name, 0, error) ||
      !check_index (pair->range, most, pair->name, 1, error))
    return FALSE;
  if (least < most)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER, _ ("%s[0] must be below %s[1]."),
               pair->name, pair->name);
  return FALSE;
}

static gboolean
check_pairs (const Plate *plate, GError **error)
{
  const gboolean is_indexed = plate->kind == PLATE_ECCENTRIC && plate->turns_deg->len > 0;

  if (is_indexed)
    return TRUE;
  for (gsize i = 0; i < n_plate_pairs; i++)
    if (plate_kind_has (plate->kind, plate_pairs[i].name) &&
        !check_pair (plate, &plate_pairs[i], error))
      return FALSE;
  if (plate->kind != PLATE_ECCENTRIC ||
      plate->turn_most_deg - plate->turn_least_deg <= FULL_TURN)
    return TRUE;
  g_set_error_literal (
      error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
      _ ("turn_range_deg[1] must not be more than 360 above turn_range_deg[0]."));
  return FALSE;
}

gboolean
plate_check_count (const char *name, guint n, GError **error)
{
  if (n >= 1 && n <= PLATE_MOST_PLACES)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s must have at least one entry and at most %d."), name,
               PLATE_MOST_PLACES);
  return FALSE;
}

static gboolean
check_turns (const GArray *turns, GError **error)
{
  const double *turn = (const double *) (gconstpointer) turns->data;

  if (!plate_check_count ("turns_deg", turns->len, error))
    return FALSE;
  for (guint i = 0; i < turns->len; i++) {
    if (!check_index (plate_turn_range, turn[i], "turns_deg", i, error))
      return FALSE;
    if (i > 0 && turn[i] <= turn[i - 1]) {
      g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
                   _ ("turns_deg[%u] must be above turns_deg[%u]."), i, i - 1);
      return FALSE;
    }
    if (turn[i] - turn[0] >= FULL_TURN) {
      g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
                   _ ("turns_deg[%u] must be less than 360 above turns_deg[0]."), i);
      return FALSE;
    }
  }
  return TRUE;
}

static gboolean
check_label (const GArray *holes, guint index, GError **error)
{
  const char *label = g_array_index (holes, PlateHole, index).label;
  g_autofree char *path = g_strdup_printf ("holes[%u]", index);

  if (!check_text (label, path, "label", error))
    return FALSE;
  for (guint i = 0; i < index; i++)
    if (g_str_equal (label, g_array_index (holes, PlateHole, i).label)) {
      g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NAME,
                   _ ("holes[%u].label is the same as holes[%u].label."), index, i);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_holes (const GArray *holes, GError **error)
{
  if (!plate_check_count ("holes", holes->len, error))
    return FALSE;
  for (guint i = 0; i < holes->len; i++) {
    const PlateHole *hole = &g_array_index (holes, PlateHole, i);
    g_autofree char *inboard = g_strdup_printf ("holes[%u].inboard_mm", i);
    g_autofree char *rearward = g_strdup_printf ("holes[%u].rearward_mm", i);

    if (!check_label (holes, i, error) ||
        !member_check_range (plate_hole_range, hole->inboard_mm, inboard, error) ||
        !member_check_range (plate_hole_range, hole->rearward_mm, rearward, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
plate_check_values (const Plate *plate, GError **error)
{
  if (!check_text (plate->name, "", "name", error) ||
      !check_numbers (plate, plate_numbers, n_plate_numbers, error) ||
      !check_pairs (plate, error))
    return FALSE;
  if (plate->kind == PLATE_ECCENTRIC && plate->turns_deg->len > 0 &&
      !check_turns (plate->turns_deg, error))
    return FALSE;
  if (plate->kind == PLATE_HOLES && !check_holes (plate->holes, error))
    return FALSE;
  return check_numbers (plate, plate_extras, n_plate_extras, error);
}
