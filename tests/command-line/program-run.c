/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "program-run.h"

#include "car-fixture.h"
#include "comma-locale.h"

#include <sys/wait.h>

void
outcome_clear (Outcome *outcome)
{
  g_free (outcome->out);
  g_free (outcome->err);
}

Outcome
program_run_in (char **environment, const char *const *argv)
{
  Outcome outcome = { 0 };
  g_autoptr (GError) error = NULL;
  int wait_status;

  g_spawn_sync (NULL, (char **) argv, environment, G_SPAWN_DEFAULT, NULL, NULL,
                &outcome.out, &outcome.err, &wait_status, &error);
  g_assert_no_error (error);
  g_assert_true (WIFEXITED (wait_status));
  outcome.status = WEXITSTATUS (wait_status);
  return outcome;
}

char **
program_environment (void)
{
  char **environment = g_get_environ ();

  environment = g_environ_unsetenv (environment, "DISPLAY");
  environment = g_environ_unsetenv (environment, "WAYLAND_DISPLAY");
  environment = g_environ_unsetenv (environment, "LANGUAGE");
  return g_environ_setenv (environment, "LC_ALL", "C", TRUE);
}

Outcome
program_run (const char *const *argv)
{
  g_auto (GStrv) environment = program_environment ();

  return program_run_in (environment, argv);
}

char **
program_comma_environment (void)
{
  const char *folder = comma_locale_folder ();

  if (folder == NULL) {
    g_test_skip ("localedef cannot build a locale with a decimal comma here");
    return NULL;
  }
  char **environment = g_environ_setenv (program_environment (), "LOCPATH", folder, TRUE);
  return g_environ_setenv (environment, "LC_ALL", COMMA_LOCALE, TRUE);
}

char *
program_car (const char *kind, const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swcar", NULL);

  return fixture_path ("cars", kind, base, NULL);
}

void
program_check_usage (Outcome outcome, const char *sentence)
{
  g_assert_cmpstr (outcome.err, ==, sentence);
  g_assert_cmpstr (outcome.out, ==, "");
  g_assert_cmpint (outcome.status, ==, 2);
  outcome_clear (&outcome);
}

guint
count_lines (const char *text)
{
  guint n = 0;

  for (; *text != '\0'; text++)
    n += *text == '\n' ? 1 : 0;
  return n;
}
