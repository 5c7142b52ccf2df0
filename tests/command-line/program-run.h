/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Starts the program as a user or a script would: without a display, so that none can be
 * needed. */

#pragma once

#include <glib.h>

typedef struct {
  char *out, *err;
  int status;
} Outcome;

void outcome_clear (Outcome *outcome);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Outcome, outcome_clear)

#define PROGRAM (g_getenv ("STRUTWRIGHT"))
#define RUN(...) program_run ((const char *[]){ PROGRAM, __VA_ARGS__, NULL })
Outcome program_run (const char *const *argv);
Outcome program_run_in (char **environment, const char *const *argv);

char **program_environment (void);
/* With a decimal comma; NULL, and the test is skipped, where none can be had. */
char **program_comma_environment (void);

/* tests/data/cars/@kind/@name.swcar */
char *program_car (const char *kind, const char *name);

/* Wrong usage: that sentence, nothing else, status 2. Clears @outcome. */
void program_check_usage (Outcome outcome, const char *sentence);
guint count_lines (const char *text);
