/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/plot-choice.h"

#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

int
plot_choose_word (const char *option, const char *name, const char *const words[])
{
  for (int i = 0; words[i] != NULL; i++)
    if (name == NULL || g_str_equal (words[i], name))
      return i;

  g_autofree char *all = g_strjoinv (", ", (char **) words);
  command_line_say (_ ("--%s is one of %s, not “%s”."), option, all, name);
  return -1;
}

gboolean
plot_choose_paper (const char *name, PaperSize *paper)
{
  static const char *const papers[] = { "a4", "letter", NULL };
  const int found = plot_choose_word ("paper", name, papers);

  *paper = found == 1 ? paper_letter () : paper_a4 ();
  return found >= 0;
}

gboolean
plot_choose_curves (char **names, BoardChoice *choice)
{
  const guint n = names != NULL ? g_strv_length (names) : 0;
  const guint n_large = MIN (n, 3);

  *choice = board_choice_default ();
  if (n == 0)
    return TRUE;
  if (n > n_large + BOARD_MOST_SMALL) {
    command_line_say (_ ("A plot holds at most %u curves."), 3 + BOARD_MOST_SMALL);
    return FALSE;
  }
  *choice = (BoardChoice){ .n_large = n_large, .n_small = n - n_large };
  for (guint i = 0; i < n; i++)
    if (!quantity_from_key (names[i], i < n_large ? &choice->large[i]
                                                  : &choice->small[i - n_large])) {
      command_line_say (
          _ ("There is no curve “%s”; names are the table's columns, such as "
             "camber_deg."),
          names[i]);
      return FALSE;
    }
  return TRUE;
}

gboolean
plot_choose_setups (Car *car, char **names, guint *in_hand)
{
  char *const first_only[] = { NULL, NULL };

  for (guint i = 0; i < car->setups->len; i++)
    car_setup (car, i)->is_hidden = TRUE;
  for (char *const *name = names != NULL ? names : first_only;; name++) {
    if (!command_line_choose_setup (car, *name, in_hand))
      return FALSE;
    car_setup (car, *in_hand)->is_hidden = FALSE;
    if (name[0] == NULL || name[1] == NULL)
      return TRUE;
  }
}

int
plot_say_error (const GError *error)
{
  command_line_say ("%s", error->message);
  return g_error_matches (error, EXPORT_ERROR, EXPORT_ERROR_SUFFIX) ||
                 g_error_matches (error, EXPORT_ERROR, EXPORT_ERROR_SIZE)
             ? EXIT_USAGE
             : EXIT_REFUSED;
}
