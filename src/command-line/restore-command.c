/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/advice/restore.h"
#include "model/json/json-write.h"
#include "model/study/quantity-info.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct {
  char *setup, *goal, *limit, *format;
  double travel;
} Options;

typedef struct {
  const char *name; /* on the command line and in JSON */
  const char *part;
  Quantity quantity; /* whose values the answer holds */
  const char *key;   /* of those values, with their unit */
} Goal;

static const Goal goals[N_RESTORE_GOALS] = {
  [RESTORE_ROLL_CENTRE] = { "roll-centre", "ball_joint_spacer_mm",
                            QUANTITY_ROLL_CENTRE_HEIGHT, "roll_centre_height_mm" },
  [RESTORE_CAMBER_GAIN] = { "camber-gain", "ball_joint_spacer_mm", QUANTITY_CAMBER_GAIN,
                            "camber_gain_deg_per_mm" },
  [RESTORE_BUMP_STEER_BY_SPACER] = { "bump-steer-spacer", "tie_rod_end_spacer_mm",
                                     QUANTITY_TOE_IN, "toe_difference_rms_deg" },
  [RESTORE_BUMP_STEER_BY_RACK] = { "bump-steer-rack", "rack_raise_mm", QUANTITY_TOE_IN,
                                   "toe_difference_rms_deg" },
};

static gboolean
parse (int argc, char **argv, Options *options, char **file)
{
  const GOptionEntry entries[] = {
    { "setup", 0, 0, G_OPTION_ARG_FILENAME, &options->setup,
      N_ ("The setup to put right; required"), N_ ("NAME") },
    { "goal", 0, 0, G_OPTION_ARG_STRING, &options->goal,
      N_ ("roll-centre or camber-gain, by a ball-joint spacer; bump-steer-spacer, by a spacer at the tie rod's outer end; bump-steer-rack, by the rack's height; all if not given"),
      N_ ("GOAL") },
    { "limit", 0, 0, G_OPTION_ARG_STRING, &options->limit,
      N_ ("Smallest and largest size of the part, mm, such as 0:25; what kits offer if not given"),
      N_ ("MM:MM") },
    { "travel", 0, 0, G_OPTION_ARG_DOUBLE, &options->travel,
      N_ ("Bump steer is matched over this travel either way of standing height, mm; 40 if not given"),
      N_ ("MM") },
    { "format", 0, 0, G_OPTION_ARG_STRING, &options->format,
      N_ ("text or json; text if not given"), N_ ("FORMAT") },
    { 0 },
  };

  if (!command_line_parse ("restore", entries, argc, argv, file))
    return FALSE;
  if (options->setup != NULL)
    return TRUE;
  command_line_say (_ ("restore needs --setup with the setup to put right."));
  return FALSE;
}

/* All of them for NULL. */
static gboolean
choose_goals (const char *name, RestoreGoal *first, RestoreGoal *last)
{
  *first = 0;
  *last = N_RESTORE_GOALS - 1;
  if (name == NULL)
    return TRUE;
  for (RestoreGoal i = 0; i < N_RESTORE_GOALS; i++)
    if (g_str_equal (goals[i].name, name)) {
      *first = *last = i;
      return TRUE;
    }
  command_line_say (
      _ ("--goal is roll-centre, camber-gain, bump-steer-spacer or bump-steer-rack, not “%s”."),
      name);
  return FALSE;
}

static gboolean
read_number (const char *text, double *value)
{
  char *end;

  *value = g_ascii_strtod (text, &end);
  return end != text && *end == '\0' && isfinite (*value);
}

static gboolean
choose_limits (const char *text, RestoreLimits *limits)
{
  g_auto (GStrv) ends = text != NULL ? g_strsplit (text, ":", -1) : NULL;

  if (text == NULL ||
      (g_strv_length (ends) == 2 && read_number (ends[0], &limits->least) &&
       read_number (ends[1], &limits->most) && limits->least <= limits->most))
    return TRUE;
  command_line_say (_ ("--limit is two numbers in order, such as 0:25, not “%s”."), text);
  return FALSE;
}

static gboolean
choose_options (const Options *options, gboolean *is_json)
{
  *is_json = g_strcmp0 (options->format, "json") == 0;
  if (options->format != NULL && !*is_json && !g_str_equal (options->format, "text")) {
    command_line_say (_ ("--format is text or json, not “%s”."), options->format);
    return FALSE;
  }
  if (isfinite (options->travel) && options->travel > 0.0)
    return TRUE;
  command_line_say (_ ("--travel must be above zero."));
  return FALSE;
}

static gboolean
choose_setup (const Car *car, const char *name, guint *setup)
{
  if (!command_line_choose_setup (car, name, setup))
    return FALSE;
  if (*setup != car->baseline)
    return TRUE;
  command_line_say (_ ("“%s” is the baseline itself: there is nothing to put back."),
                    name);
  return FALSE;
}

static void
append_member (GString *text, const char *key, double value)
{
  g_string_append_printf (text, ", \"%s\": ", key);
  if (isfinite (value))
    append_exact_number (text, value);
  else
    g_string_append (text, "null");
}

static void
append_json (GString *text, RestoreGoal which, const RestoreAnswer *answer)
{
  static const char *const statuses[] = { [RESTORE_OK] = "ok",
                                          [RESTORE_OUT_OF_LIMITS] = "out-of-limits",
                                          [RESTORE_NOT_ASSEMBLED] = "not-assembled" };
  const Goal *goal = &goals[which];

  g_string_append_printf (text,
                          "    { \"goal\": \"%s\", \"status\": \"%s\", \"part\": \"%s\"",
                          goal->name, statuses[answer->status], goal->part);
  append_member (text, "value", answer->value);
  append_member (text, "least", answer->limits.least);
  append_member (text, "most", answer->limits.most);
  g_string_append_printf (text, ", \"quantity\": \"%s\"", goal->key);
  append_member (text, "target", quantity_edge_value (goal->quantity, answer->target));
  append_member (text, "before", quantity_edge_value (goal->quantity, answer->before));
  append_member (text, "after", quantity_edge_value (goal->quantity, answer->after));
  if (goal->quantity == QUANTITY_TOE_IN) {
    append_member (text, "from_mm", answer->from);
    append_member (text, "to_mm", answer->to);
  }
  g_string_append (text, " }");
}

static void
write_json_head (GString *text, const Car *car, guint setup)
{
  g_string_append (text, "{\n  \"car\": ");
  json_write_string (text, car->name);
  g_string_append (text, ",\n  \"setup\": ");
  json_write_string (text, car_setup (car, setup)->name);
  g_string_append (text, ",\n  \"baseline\": ");
  json_write_string (text, car_setup (car, car->baseline)->name);
  g_string_append (text, ",\n  \"answers\": [\n");
}

static int
run (const Options *options, const char *file)
{
  RestoreGoal first, last;
  RestoreLimits asked;
  gboolean is_json;
  guint setup;

  if (!choose_options (options, &is_json) ||
      !choose_goals (options->goal, &first, &last) ||
      !choose_limits (options->limit, &asked))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (file);
  if (car == NULL)
    return EXIT_REFUSED;
  if (!choose_setup (car, options->setup, &setup))
    return EXIT_USAGE;

  g_autoptr (GString) text = g_string_new (NULL);
  if (is_json)
    write_json_head (text, car, setup);
  for (RestoreGoal goal = first; goal <= last; goal++) {
    const RestoreLimits limits =
        options->limit != NULL ? asked : restore_usual_limits (goal);
    const RestoreAnswer answer =
        restore_solve (car, setup, goal, limits, options->travel);
    g_autofree char *sentence = restore_sentence (goal, &answer);

    if (is_json) {
      append_json (text, goal, &answer);
      g_string_append (text, goal < last ? ",\n" : "\n  ]\n}\n");
    } else {
      g_string_append_printf (text, "%s\n", sentence);
    }
  }
  return command_line_print (text->str, text->len) ? EXIT_DONE : EXIT_REFUSED;
}

int
restore_command (int argc, char **argv)
{
  Options options = { .travel = RESTORE_USUAL_TRAVEL };
  char *file;
  const int status =
      parse (argc, argv, &options, &file) ? run (&options, file) : EXIT_USAGE;

  g_free (options.setup);
  g_free (options.goal);
  g_free (options.limit);
  g_free (options.format);
  return status;
}
