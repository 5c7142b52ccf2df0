/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/car/car-json.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <stdio.h>

static const Command commands[] = {
  { "table", N_ ("FILE"), N_ ("Print a travel table as CSV or JSON."), table_command },
  { "plot", N_ ("FILE"), N_ ("Draw the curves or the sheet as PNG, SVG or PDF."),
    plot_launch },
  { "report", N_ ("FILE"),
    N_ ("Write a report as PDF: the car, its setups side by side, curves, the sheet to a "
        "scale, roll centre, springs and loads."),
    plot_launch },
  { "guide", N_ ("FILE"),
    N_ ("Write the measuring guide as a PDF: how to take each point, and how closely, which "
        "is computed from the car."),
    plot_launch },
  { "check", N_ ("FILE"), N_ ("Load and solve a car, and print what looks implausible."),
    check_command },
  { "compare", N_ ("FILE"),
    N_ ("Print the setups side by side, each at its standing height, with what changes "
        "against the baseline. Hidden setups are in it."),
    compare_command },
  { "restore", N_ ("FILE"),
    N_ ("Say which spacer or rack height gives a setup back what the baseline has at its own "
        "standing height: roll centre, camber gain, bump steer."),
    restore_command },
  { "choose", N_ ("FILE"),
    N_ ("Rank upper mounts by how well they reach an alignment, each with the setting to "
        "dial in and what it costs; write the fitting card of the best one."),
    choose_command },
  { "springs", N_ ("FILE"),
    N_ ("Print what a setup stands on: wheel load and wheel rate through travel, where it "
        "stands, frequencies, and what happens on the way."),
    springs_command },
  { "loads", N_ ("FILE"),
    N_ ("Print the force at every joint under a load: tower, arm, ball joint, tie rod, "
        "rod."),
    loads_command },
};

static const Command *
find_command (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i].name, name))
      return &commands[i];
  return NULL;
}

void
command_line_say (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  fprintf (stderr, "strutwright: %s\n", sentence);
}

gboolean
command_line_print (const char *bytes, gsize length)
{
  if (fwrite (bytes, 1, length, stdout) == length && fflush (stdout) == 0)
    return TRUE;
  command_line_say (_ ("The output could not be written: %s."), g_strerror (errno));
  return FALSE;
}

gboolean
command_line_choose_format (const char *name, TableFormat *format)
{
  static const char *const names[] = {
    [TABLE_TEXT] = "text", [TABLE_CSV] = "csv", [TABLE_JSON] = "json"
  };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_strcmp0 (name, names[i]) == 0 || (name == NULL && i == TABLE_TEXT)) {
      *format = (TableFormat) i;
      return TRUE;
    }
  command_line_say (_ ("--format is text, csv or json, not “%s”."), name);
  return FALSE;
}

static gboolean
take_options (const char *name, const GOptionEntry *entries, int *argc, char ***argv)
{
  const Command *command = find_command (name);
  g_autoptr (GOptionContext) context = g_option_context_new (_ (command->usage));
  g_autofree char *program = g_strconcat ("strutwright ", name, NULL);
  g_autoptr (GError) error = NULL;

  g_set_prgname (program);
  g_option_context_set_summary (context, _ (command->summary));
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (g_option_context_parse (context, argc, argv, &error))
    return TRUE;
  command_line_say ("%s", error->message);
  return FALSE;
}

gboolean
command_line_parse_options (const char *name,
                            const GOptionEntry *entries,
                            int argc,
                            char **argv)
{
  return take_options (name, entries, &argc, &argv);
}

gboolean
command_line_parse (
    const char *name, const GOptionEntry *entries, int argc, char **argv, char **file)
{
  if (!take_options (name, entries, &argc, &argv))
    return FALSE;
  /* GOption leaves a "--" in its place. */
  if (argc == 3 && g_str_equal (argv[1], "--")) {
    argv++;
    argc--;
  }
  if (argc != 2) {
    command_line_say (_ ("%s needs exactly one car file; see %s --help."), name,
                      g_get_prgname ());
    return FALSE;
  }
  *file = argv[1];
  return TRUE;
}

Car *
command_line_load (const char *file)
{
  /* Local files need no mounts: leave the desktop's file services unasked. */
  g_setenv ("GIO_USE_VFS", "local", FALSE);

  g_autoptr (GFile) source = g_file_new_for_commandline_arg (file);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (source, &error);

  if (car != NULL)
    return car;
  g_autofree char *shown = g_filename_display_name (file);
  /* GIO names the file itself. */
  if (error->domain == FILE_REFUSAL)
    command_line_say ("%s: %s", shown, error->message);
  else
    command_line_say ("%s", error->message);
  return NULL;
}

static int
print_version (void)
{
  static const char version[] = "strutwright " VERSION "\n";

  return command_line_print (version, sizeof version - 1) ? EXIT_DONE : EXIT_REFUSED;
}

static int
print_help (void)
{
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, "%s\n", _ ("Usage:"));
  g_string_append_printf (text, "  strutwright [%s…]\n      %s\n", _ ("FILE"),
                          _ ("Open windows on car files."));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (text, "  strutwright %s [%s…] %s\n      %s\n",
                            commands[i].name, _ ("OPTION"), _ (commands[i].usage),
                            _ (commands[i].summary));
  g_string_append_printf (
      text, "  strutwright --help | --version\n\n%s\n%s\n",
      _ ("A command's own options: strutwright COMMAND --help"),
      _ ("Exit status: 0 done, 1 the input was refused, 2 wrong usage."));
  return command_line_print (text->str, text->len) ? EXIT_DONE : EXIT_REFUSED;
}

int
command_line_run (int argc, char **argv)
{
  const char *word = argc > 1 ? argv[1] : "";
  const Command *command = find_command (word);

  if (command != NULL)
    return command->run (argc - 1, argv + 1);
  if (g_str_equal (word, "--help") || g_str_equal (word, "-h"))
    return print_help ();
  if (g_str_equal (word, "--version"))
    return print_version ();
  return program_launch ("strutwright-window", argv);
}
