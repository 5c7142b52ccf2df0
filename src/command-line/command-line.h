/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `strutwright COMMAND …` without a display. A new command is one more row in the table
 * of command-line.c and a file of its own. */

#pragma once

#include "model/car/car.h"
#include "model/load/load-case.h"
#include "model/study/travel-table.h"
#include "model/words/table-format.h"

typedef enum {
  EXIT_DONE = 0,
  EXIT_REFUSED = 1, /* the input, or the output could not be written */
  EXIT_USAGE = 2
} ExitStatus;

typedef struct {
  const char *name;    /* the command word */
  const char *usage;   /* what follows the options: "FILE" */
  const char *summary; /* translated, one sentence */
  /* @argv[0] is the command word; gives an ExitStatus. */
  int (*run) (int argc, char **argv);
} Command;

int table_command (int argc, char **argv);
int plot_command (int argc, char **argv);   /* in the program strutwright-plot */
int report_command (int argc, char **argv); /* in the same */
int plot_launch (int argc, char **argv);    /* becomes that, for any command word */
int guide_command (int argc, char **argv);  /* in the same */
int choose_command (int argc, char **argv);
int choose_card_command (int argc, char **argv); /* in the program strutwright-plot */
int check_command (int argc, char **argv);
int compare_command (int argc, char **argv);
int restore_command (int argc, char **argv);
int springs_command (int argc, char **argv);
int loads_command (int argc, char **argv);

/* The user's language; its translations may lie in $STRUTWRIGHT_LOCALEDIR while they are
 * not installed. */
void command_line_use_language (void);

/* Runs the command word that @argv has, or opens the window program. */
int command_line_run (int argc, char **argv);

/* Takes the options of command @name out of @argv; @entries store into the caller's
 * variables, and what remains too if they have a place for it. Says what is wrong on
 * standard error. */
gboolean command_line_parse_options (const char *name,
                                     const GOptionEntry *entries,
                                     int argc,
                                     char **argv);
/* The same for a command that must be left with exactly one FILE. */
gboolean command_line_parse (
    const char *name, const GOptionEntry *entries, int argc, char **argv, char **file);

/* NULL, and one sentence on standard error, if it is refused. */
Car *command_line_load (const char *file);

/* The setup of that name, the first one for NULL. Says on standard error which there are
 * when there is none of that name. */
gboolean command_line_choose_setup (const Car *car, const char *name, guint *setup);
/* The first load case for NULL, and springs as set. Each says what there is if not. */
gboolean command_line_choose_case (const Car *car, const char *name, CarLoadCase *found);
gboolean command_line_choose_spring (const char *name, SpringMode *mode);

/* What is NAN in @asked is as the car has it, and 1 mm a step. Says on standard error
 * what is wrong with them. */
gboolean
command_line_choose_steps (const Car *car, TravelSteps asked, TravelSteps *steps);

/* What a table through wheel travel is asked for. */
typedef struct {
  char *setup, *format; /* or NULL */
  TravelSteps steps;    /* NAN where not asked for */
} TableOptions;

/* What is said of these two, to be translated. */
typedef struct {
  const char *step, *format;
} TableOptionWords;

/* As command_line_parse (). Clear @options either way. */
gboolean command_line_parse_table (const char *name,
                                   TableOptionWords words,
                                   int argc,
                                   char **argv,
                                   TableOptions *options,
                                   char **file);
void table_options_clear (TableOptions *options);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TableOptions, table_options_clear)

/* text, csv or json, and text for NULL. Says so on standard error when it is another. */
gboolean command_line_choose_format (const char *name, TableFormat *format);

/* One sentence on standard error, behind "strutwright: ". UTF-8 whatever the locale. */
void command_line_say (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* Writes to standard output and says if that failed. */
gboolean command_line_print (const char *bytes, gsize length);

/* Replaces this program by another one of Strutwright's with the same arguments. Returns
 * only when it cannot be found or started. What draws is a program apart, so that a table
 * does not wait for the drawing libraries to load. */
int program_launch (const char *program, char **argv);
