/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/choose-aims.h"

#include "command-line/command-line.h"
#include "model/car/aim.h"
#include "model/car/car-json.h"
#include "model/words/near-word.h"

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

static char *
list_aims (void)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (Aim aim = 0; aim < N_AIMS; aim++)
    g_string_append_printf (names, "%s%s", aim > 0 ? ", " : "", aim_info (aim).key);
  return g_strdup (names->str);
}

static const char *
near_aim (const char *key)
{
  const char *keys[N_AIMS + 1] = { NULL };

  for (Aim aim = 0; aim < N_AIMS; aim++)
    keys[aim] = aim_info (aim).key;
  return near_word (key, keys);
}

static gboolean
find_aim (const char *key, CarTarget *target)
{
  const char *near = near_aim (key);
  Aim aim;

  if (aim_from_key (key, &aim)) {
    target->aim = aim;
    return TRUE;
  }
  g_autofree char *all = list_aims ();
  if (near != NULL)
    command_line_say (_ ("--target has an unknown aim “%s”; did you mean “%s”?"), key,
                      near);
  else
    command_line_say (_ ("--target is for one of %s, not “%s”."), all, key);
  return FALSE;
}

/* Says @why, which is freed, the target @word is none. */
static gboolean
refuse (const char *word, char *why)
{
  g_autofree char *clause = why;

  /* Translators: the target as it was typed, and a clause that says what is wrong. */
  command_line_say (_ ("“%s” is no target: %s"), word, clause);
  return FALSE;
}

static gboolean
refuse_number (const char *word, const char *part)
{
  return refuse (
      word,
      g_strdup_printf (strchr (part, ',') != NULL
                           ? _ ("“%s” is no number; the decimal mark is a point, as in "
                                "camber=-2.5.")
                           : _ ("“%s” is no number, as -2.5 is in camber=-2.5."),
                       part));
}

/* An end left empty is open. */
static gboolean
read_end (const char *word, const char *part, double furthest, double open, double *value)
{
  *value = open;
  if (part[0] == '\0')
    return TRUE;
  if (!read_number (part, value))
    return refuse_number (word, part);
  if (fabs (*value) <= furthest)
    return TRUE;
  return refuse (word, g_strdup_printf (_ ("“%s” is out of any car's range, which is "
                                           "from -%g to %g."),
                                        part, furthest, furthest));
}

/* "-2.7:-2.3", "5:", ":5", "-2.5"; not ":" alone, which asks for nothing. */
static gboolean
read_range (const char *word, const char *range, CarTarget *target)
{
  const double furthest = aim_info (target->aim).furthest;
  g_auto (GStrv) ends = g_strsplit (range, ":", -1);
  const guint n = g_strv_length (ends);

  if (n == 0)
    return refuse (word, g_strdup (_ ("it has no range, as camber=-2.5 and "
                                      "camber=-2.7:-2.3 have.")));
  if (n > 2)
    return refuse (word, g_strdup (_ ("it has more than one colon; a range has two ends, "
                                      "as camber=-2.7:-2.3 has.")));
  if (!read_end (word, ends[0], furthest, (double) -INFINITY, &target->least) ||
      !read_end (word, ends[n - 1], furthest, (double) INFINITY, &target->most))
    return FALSE;
  if (isinf (target->least) && isinf (target->most))
    return refuse (word, g_strdup (_ ("both of its ends are open; caster=5: asks for at "
                                      "least 5.")));
  if (target->least <= target->most)
    return TRUE;
  return refuse (word, g_strdup_printf (_ ("%s is above %s; the lower end goes first, as "
                                           "in camber=-2.7:-2.3."),
                                        ends[0], ends[1]));
}

static gboolean
read_weight (const char *word, const char *part, CarTarget *target)
{
  if (read_number (part, &target->weight) && target->weight > 0.0 &&
      target->weight <= CAR_MOST_WEIGHT)
    return TRUE;
  return refuse (word,
                 g_strdup_printf (_ ("“%s” is no weight; that is a number above 0 and "
                                     "not above %g, as in scrub_change=-1:1@0.2."),
                                  part, CAR_MOST_WEIGHT));
}

/* "RANGE@WEIGHT" */
static gboolean
read_wish (const char *word, const char *wish, CarTarget *target)
{
  g_auto (GStrv) parts = g_strsplit (wish, "@", -1);
  const guint n = g_strv_length (parts);

  target->weight = 1.0;
  if (n > 2)
    return refuse (word,
                   g_strdup (_ ("it has more than one @; one weight goes behind the "
                                "range, as in scrub_change=-1:1@0.2.")));
  return read_range (word, n > 0 ? parts[0] : "", target) &&
         (n < 2 || read_weight (word, parts[1], target));
}

static gboolean
read_target (const char *word, CarTarget *target)
{
  const char *equals = strchr (word, '=');
  g_autofree char *key =
      equals != NULL ? g_strndup (word, (gsize) (equals - word)) : g_strdup (word);

  return find_aim (key, target) &&
         read_wish (word, equals != NULL ? equals + 1 : "", target);
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
