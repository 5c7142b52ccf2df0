/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/load/joint-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct {
  char *setup, *force, *load_case, *spring, *format;
  double travel; /* NAN where not asked for */
} Options;

static gboolean
parse (int argc, char **argv, Options *options, char **file)
{
  const GOptionEntry entries[] = {
    { "setup", 0, 0, G_OPTION_ARG_FILENAME, &options->setup,
      N_ ("The setup to load; the first one if not given"), N_ ("NAME") },
    { "travel", 0, 0, G_OPTION_ARG_DOUBLE, &options->travel,
      N_ ("Wheel travel, mm; where the springs carry the load if not given, or where the "
          "setup stands if only coil or torsion carries"),
      N_ ("MM") },
    { "force", 0, 0, G_OPTION_ARG_STRING, &options->force,
      N_ ("Force of the road on the tyre, N, forward, left and up, by itself: no weight "
          "of the parts, no anti-roll bar"),
      N_ ("FX,FY,FZ") },
    { "case", 0, 0, G_OPTION_ARG_FILENAME, &options->load_case,
      N_ ("A load case of the car; the first one, standing, if neither is given"),
      N_ ("NAME") },
    { "spring", 0, 0, G_OPTION_ARG_STRING, &options->spring,
      N_ ("coil, torsion or as-set: what carries; as-set if not given"), N_ ("SPRING") },
    { "format", 0, 0, G_OPTION_ARG_STRING, &options->format,
      N_ ("text, csv or json; text if not given"), N_ ("FORMAT") },
    { 0 },
  };

  return command_line_parse ("loads", entries, argc, argv, file);
}

static gboolean
read_force (const char *text, Vec3 *force)
{
  g_auto (GStrv) parts = g_strsplit (text, ",", -1);
  double number[3] = { NAN, NAN, NAN };

  if (g_strv_length (parts) == 3)
    for (int i = 0; i < 3; i++) {
      char *end;
      const double value = g_ascii_strtod (parts[i], &end);

      number[i] = end != parts[i] && *end == '\0' ? value : (double) NAN;
    }
  *force = (Vec3){ number[0], number[1], number[2] };
  if (vec3_is_finite (*force))
    return TRUE;
  command_line_say (_ ("--force is three numbers with commas between them, forward, left "
                       "and up in N, as 0,-2000,3800; not “%s”."),
                    text);
  return FALSE;
}

typedef struct {
  gboolean has_force;
  Vec3 force;
  CarLoadCase load_case;
} Load;

static gboolean
choose_load (const Car *car, const Options *options, Load *load)
{
  if (options->force != NULL && options->load_case != NULL) {
    command_line_say (_ ("Give --force or --case, not both."));
    return FALSE;
  }
  load->has_force = options->force != NULL;
  return load->has_force
             ? read_force (options->force, &load->force)
             : command_line_choose_case (car, options->load_case, &load->load_case);
}

/* Why a load was not solved, in one sentence. */
static void
say_unsolved (const SpringCorner *corner, SpringMode mode)
{
  if (mode == SPRING_AS_SET && corner->stands == STANDS_NOT_GIVEN)
    command_line_say (_ ("The car file gives no spring for this setup: say --spring coil "
                         "or --spring torsion."));
  else
    command_line_say (_ ("This load cannot be carried within the car's travel, or the "
                         "corner cannot be assembled there."));
}

static int
print_loads (const Car *car,
             guint setup,
             const Options *options,
             SpringMode mode,
             const Load *load,
             TableFormat format)
{
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();
  g_autoptr (GString) text = g_string_new (NULL);
  JointLoads loads;

  study_solve (study, car, setup, 0.0);
  spring_study_solve (springs, study, car);
  if (load->has_force)
    joint_loads_of_force (springs, setup, load->force, options->travel, mode, &loads);
  else
    joint_loads_of_case (springs, setup, &load->load_case, options->travel, mode, &loads);
  if (!loads.is_solved) {
    say_unsolved (&springs->setups[setup], mode);
    return EXIT_REFUSED;
  }

  const RodStation rod = rod_station_of (springs, setup, &loads);
  const gboolean has_rod = car_setup_rod (car, setup).diameter_mm > 0.0;
  const JointTable table = { .study = springs,
                             .setup = setup,
                             .mode = mode,
                             .load_case = load->has_force ? NULL : &load->load_case,
                             .loads = &loads,
                             .rod = has_rod ? &rod : NULL };
  joint_table_write (&table, format, text);
  return command_line_print (text->str, text->len) ? EXIT_DONE : EXIT_REFUSED;
}

static int
run (const Options *options, const char *file)
{
  SpringMode mode;
  TableFormat format;

  if (!command_line_choose_spring (options->spring, &mode) ||
      !command_line_choose_format (options->format, &format))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (file);
  guint setup;
  Load load;

  if (car == NULL)
    return EXIT_REFUSED;
  if (!command_line_choose_setup (car, options->setup, &setup) ||
      !choose_load (car, options, &load))
    return EXIT_USAGE;
  return print_loads (car, setup, options, mode, &load, format);
}

int
loads_command (int argc, char **argv)
{
  Options options = { .travel = NAN };
  char *file;
  const int status =
      parse (argc, argv, &options, &file) ? run (&options, file) : EXIT_USAGE;

  g_free (options.setup);
  g_free (options.force);
  g_free (options.load_case);
  g_free (options.spring);
  g_free (options.format);
  return status;
}
