/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/choose-aims.h"

#include "command-line/command-line.h"
#include "model/aim.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define EXAMPLE "--target camber=-2.7:-2.3 --target caster=5:"

static gboolean
read_number (const char *text, double *value)
{
  char *end;

  *value = g_ascii_strtod (text, &end);
  return end != text && *end == '\0' && isfinite (*value);
}

/* An end left empty is open. */
static gboolean
read_end (const char *text, double open, double *value)
{
  *value = open;
  return text[0] == '\0' || read_number (text, value);
}

/* "-2.7:-2.3", "5:", ":5", "-2.5"; not ":" alone, which asks for nothing. */
static gboolean
read_range (const char *text, CarTarget *target)
{
  g_auto (GStrv) ends = g_strsplit (text, ":", -1);
  const guint n = g_strv_length (ends);

  if (n == 1 && read_number (ends[0], &target->least)) {
    target->most = target->least;
    return TRUE;
  }
  return n == 2 && read_end (ends[0], (double) -INFINITY, &target->least) &&
         read_end (ends[1], (double) INFINITY, &target->most) &&
         (isfinite (target->least) || isfinite (target->most)) &&
         target->least <= target->most;
}

static char *
list_aims (void)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (Aim aim = 0; aim < N_AIMS; aim++)
    g_string_append_printf (names, "%s%s", aim > 0 ? ", " : "", aim_info (aim).key);
  return g_strdup (names->str);
}

static gboolean
find_aim (const char *key, CarTarget *target)
{
  Aim aim;

  if (aim_from_key (key, &aim)) {
    target->aim = aim;
    return TRUE;
  }
  g_autofree char *all = list_aims ();
  command_line_say (_ ("--target is for one of %s, not “%s”."), all, key);
  return FALSE;
}

/* "RANGE@WEIGHT" */
static gboolean
read_wish (const char *text, CarTarget *target)
{
  g_auto (GStrv) parts = g_strsplit (text, "@", -1);
  const guint n = g_strv_length (parts);

  target->weight = 1.0;
  return n >= 1 && n <= 2 && read_range (parts[0], target) &&
         (n == 1 || (read_number (parts[1], &target->weight) && target->weight > 0.0));
}

static gboolean
read_target (const char *word, CarTarget *target)
{
  const char *equals = strchr (word, '=');
  g_autofree char *key =
      equals != NULL ? g_strndup (word, (gsize) (equals - word)) : g_strdup (word);

  if (!find_aim (key, target))
    return FALSE;
  if (equals != NULL && read_wish (equals + 1, target))
    return TRUE;
  command_line_say (
      _ ("“%s” is no target: a value, or two in order with a colon between them, of which "
         "one may be left out, and a weight above zero behind @, such as camber=-2.5, "
         "caster=5: or scrub_change=-1:1@0.2."),
      word);
  return FALSE;
}

static gboolean
has_target (const GArray *targets, guint aim)
{
  for (guint i = 0; i < targets->len; i++)
    if (g_array_index (targets, CarTarget, i).aim == aim)
      return TRUE;
  return FALSE;
}

gboolean
choose_targets (Car *car, char *const *words)
{
  if (words != NULL)
    g_array_set_size (car->targets, 0);
  for (; words != NULL && *words != NULL; words++) {
    CarTarget target = { 0 };

    if (!read_target (*words, &target))
      return FALSE;
    if (has_target (car->targets, target.aim)) {
      command_line_say (_ ("--target has two ranges for %s."), aim_info (target.aim).key);
      return FALSE;
    }
    g_array_append_val (car->targets, target);
  }
  if (car->targets->len > 0)
    return TRUE;
  command_line_say (
      _ ("There is nothing to aim for: the car has no targets of its own, so "
         "name some, such as %s."),
      EXAMPLE);
  return FALSE;
}

typedef struct {
  const char *name;
  gsize offset; /* in CarLimits */
} Limit;

static const Limit limits[] = {
  { "tyre_clearance", G_STRUCT_OFFSET (CarLimits, tyre_clearance_mm) },
  { "edge_margin", G_STRUCT_OFFSET (CarLimits, edge_margin_mm) },
  { "cross_camber", G_STRUCT_OFFSET (CarLimits, cross_camber_deg) },
  { "cross_caster", G_STRUCT_OFFSET (CarLimits, cross_caster_deg) },
  { "camber_bolt", G_STRUCT_OFFSET (CarLimits, camber_bolt_deg) },
  { "travel_used", G_STRUCT_OFFSET (CarLimits, travel_used_mm) },
};

static const Limit *
find_limit (const char *word, gsize length)
{
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    if (strlen (limits[i].name) == length && strncmp (limits[i].name, word, length) == 0)
      return &limits[i];
  return NULL;
}

static char *
list_limits (void)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    g_string_append_printf (names, "%s%s", i > 0 ? ", " : "", limits[i].name);
  return g_strdup (names->str);
}

gboolean
choose_limits (Car *car, char *const *words)
{
  for (; words != NULL && *words != NULL; words++) {
    const char *equals = strchr (*words, '=');
    const Limit *limit =
        equals != NULL ? find_limit (*words, (gsize) (equals - *words)) : NULL;
    double value;

    if (limit == NULL || !read_number (equals + 1, &value) || value < 0.0) {
      g_autofree char *all = list_limits ();

      command_line_say (_ ("--limit is one of %s, with = and a number that is not below "
                           "zero, such as tyre_clearance=8; not “%s”."),
                        all, *words);
      return FALSE;
    }
    G_STRUCT_MEMBER (double, &car->limits, limit->offset) = value;
  }
  return TRUE;
}
