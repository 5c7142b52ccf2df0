/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-spring-checks.h"

#include "kernel/spring.h"

#include <glib/gi18n-lib.h>

gboolean
spring_check_below (const char *path,
                    const char *name,
                    double value,
                    const char *other,
                    double most,
                    GError **error)
{
  g_autofree char *full = member_path (path, name);

  if (value == 0.0 || value < most)
    return TRUE;
  /* Translators: the path of a member, a number, the name of another one, a number. */
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s is %g, but must be below %s, which is %g."), full, value, other,
               most);
  return FALSE;
}

static gboolean
refuse_both (const char *path, const char *one, const char *other, GError **error)
{
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s gives both %s and %s, but only one of them can count."), path, one,
               other);
  return FALSE;
}

static gboolean
refuse_missing (const char *sentence, const char *path, GError **error)
{
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_MISSING, sentence, path);
  return FALSE;
}

static gboolean
check_bar (const CarTorsionBar *bar, const char *path, GError **error)
{
  const gboolean has_rate = bar->rate_nm_per_deg != 0.0;

  if (has_rate && bar->n_sections > 0)
    return refuse_both (path, "sections", "rate_nm_per_deg", error);
  if (!has_rate && bar->n_sections == 0)
    return refuse_missing (_ ("%s gives neither sections nor rate_nm_per_deg."), path,
                           error);
  return TRUE;
}

/* Free longer than squashed flat. */
static gboolean
check_lengths (const char *path, double free_length, double solid, GError **error)
{
  if (solid == 0.0 || free_length > solid)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s.free_length_mm is %g, but must be above its solid length, which is "
                  "%g."),
               path, free_length, solid);
  return FALSE;
}

static double
solid_length (const CarCoil *coil)
{
  const CoilSize size = { .wire = coil->wire_mm, .total_coils = coil->total_coils };

  return coil->solid_length_mm != 0.0 ? coil->solid_length_mm : coil_solid_length (size);
}

static gboolean
check_wire (const CarCoil *coil, const char *path, GError **error)
{
  if (coil->mean_diameter_mm != 0.0 &&
      !spring_check_below (path, "wire_mm", coil->wire_mm, "mean_diameter_mm",
                           coil->mean_diameter_mm, error))
    return FALSE;
  if (coil->total_coils == 0.0 || coil->total_coils >= coil->active_coils)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s.total_coils is %g, but cannot be below active_coils, which is %g."),
               path, coil->total_coils, coil->active_coils);
  return FALSE;
}

static gboolean
check_coil (const CarCoil *coil, const char *path, GError **error)
{
  const gboolean has_rate = coil->rate_n_per_mm != 0.0, has_table = coil->table.n > 0;
  const gboolean has_sizes =
      coil->wire_mm != 0.0 && coil->mean_diameter_mm != 0.0 && coil->active_coils != 0.0;

  if (has_rate && has_table)
    return refuse_both (path, "rate_n_per_mm", "table", error);
  if (!has_rate && !has_table && !has_sizes)
    return refuse_missing (
        _ ("%s gives neither rate_n_per_mm nor table, nor wire_mm, mean_diameter_mm and "
           "active_coils."),
        path, error);
  return check_wire (coil, path, error) &&
         check_lengths (path, coil->free_length_mm, solid_length (coil), error);
}

static gboolean
check_anti_roll_bar (const CarAntiRollBar *bar, const char *path, GError **error)
{
  const gboolean has_rate = bar->rate_n_per_mm != 0.0;

  if (has_rate && bar->diameter_mm != 0.0)
    return refuse_both (path, "rate_n_per_mm", "diameter_mm", error);
  if (!has_rate &&
      (bar->diameter_mm == 0.0 || bar->length_mm == 0.0 || bar->arm_mm == 0.0))
    return refuse_missing (
        _ ("%s gives neither rate_n_per_mm nor diameter_mm, length_mm and arm_mm."), path,
        error);
  return spring_check_below (path, "bore_mm", bar->bore_mm, "diameter_mm",
                             bar->diameter_mm, error);
}

static gboolean
check_bump_stop (const CarBumpStop *stop, const char *path, GError **error)
{
  const gsize n = stop->table.n;

  if (n == 0)
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), path,
                          "table");
  if (-stop->gap_mm < stop->table.x[n - 1])
    return TRUE;
  g_autofree char *full = member_path (path, "gap_mm");
  g_set_error (
      error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
      /* Translators: the path of a member and two numbers. */
      _ ("%s is %g: the stop would be squeezed further than its table goes, which is %g."),
      full, stop->gap_mm, stop->table.x[n - 1]);
  return FALSE;
}

gboolean
spring_check_part (SpringPartName name,
                   const CarSprings *s,
                   const char *path,
                   GError **error)
{
  switch (name) {
  case SPRING_PART_BAR:
    return check_bar (&s->bar, path, error);
  case SPRING_PART_COIL:
    return check_coil (&s->coil, path, error);
  case SPRING_PART_HELPER:
    return check_lengths (path, s->helper.free_length_mm, s->helper.solid_length_mm,
                          error);
  case SPRING_PART_BUMP_STOP:
    return check_bump_stop (&s->bump_stop, path, error);
  case SPRING_PART_ANTI_ROLL_BAR:
    return check_anti_roll_bar (&s->anti_roll_bar, path, error);
  case SPRING_PART_DAMPER:
  case N_SPRING_PARTS:
    break;
  }
  return TRUE;
}

static gboolean
check_perch (
    const char *path, double perch, double upper_drop, double length, GError **error)
{
  const double most = length - MAX (upper_drop, 0.0);

  if (perch < most)
    return TRUE;
  g_autofree char *full = member_path (path, "perch_mm");
  g_set_error (
      error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
      /* Translators: the path of a member and two numbers. */
      _ ("%s is %g, but must be below %g, where the upper seat or the mount stands as measured."),
      full, perch, most);
  return FALSE;
}

gboolean
spring_check_seats (const CarSprings *s, double length, const char *path, GError **error)
{
  g_autofree char *coil = member_path (path, "coil");
  g_autofree char *helper = member_path (path, "helper");

  if (s->coil.is_there &&
      !check_perch (coil, s->coil.perch_mm, s->coil.upper_drop_mm, length, error))
    return FALSE;
  return !s->helper.is_there || s->helper.place == HELPER_IN_SERIES ||
         check_perch (helper, s->helper.perch_mm, s->helper.upper_drop_mm, length, error);
}

gboolean
spring_check_set (const CarSprings *s, const char *path, GError **error)
{
  if (!s->helper.is_there || s->helper.place != HELPER_IN_SERIES || s->coil.is_there)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_MISSING,
               _ ("%s.helper stands in series, but %s.coil is missing."), path, path);
  return FALSE;
}
