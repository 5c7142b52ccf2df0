/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/plot-choice.h"
#include "drawing/card/card.h"
#include "model/load/spring-verdict.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEFAULT_WIDTH 1200
#define DEFAULT_HEIGHT 900

typedef struct {
  char *output, *view, *background, *date, *load_case, *spring;
  char **curves, **setups;
  int width, height;
  double travel; /* NAN where not asked for */
} Options;

static gboolean
parse (int argc, char **argv, Options *options, char **file)
{
  const GOptionEntry entries[] = {
    { "output", 0, 0, G_OPTION_ARG_FILENAME, &options->output,
      N_ ("The file to write: .png, .svg or .pdf"), N_ ("PATH") },
    { "curve", 0, 0, G_OPTION_ARG_STRING_ARRAY, &options->curves,
      N_ ("A quantity to draw, such as camber_deg; may be repeated"), N_ ("NAME") },
    { "setup", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->setups,
      N_ ("A setup to draw; may be repeated, the last one is in hand; the first one of the car if not given"),
      N_ ("NAME") },
    { "view", 0, 0, G_OPTION_ARG_STRING, &options->view,
      N_ ("curves, sheet, lowering, mount, springs or loads; curves if not given"),
      N_ ("VIEW") },
    { "case", 0, 0, G_OPTION_ARG_FILENAME, &options->load_case,
      N_ ("A load case of the car, for loads, or for a sheet with forces; standing if not given"),
      N_ ("NAME") },
    { "spring", 0, 0, G_OPTION_ARG_STRING, &options->spring,
      N_ ("coil, torsion or as-set: what carries that load; as-set if not given"),
      N_ ("SPRING") },
    { "travel", 0, 0, G_OPTION_ARG_DOUBLE, &options->travel,
      N_ ("Wheel travel at which the values are read, mm; the standing height if not given, or where the springs carry the load"),
      N_ ("MM") },
    { "width", 0, 0, G_OPTION_ARG_INT, &options->width, N_ ("1200 if not given"),
      N_ ("PX") },
    { "height", 0, 0, G_OPTION_ARG_INT, &options->height, N_ ("900 if not given"),
      N_ ("PX") },
    { "background", 0, 0, G_OPTION_ARG_STRING, &options->background,
      N_ ("white, dark or none; white if not given"), N_ ("GROUND") },
    { "date", 0, 0, G_OPTION_ARG_STRING, &options->date,
      N_ ("A date for the title block; without it the same car gives the same bytes"),
      N_ ("TEXT") },
    { 0 },
  };

  if (!command_line_parse ("plot", entries, argc, argv, file))
    return FALSE;
  if (options->output != NULL)
    return TRUE;
  command_line_say (_ ("plot needs --output with the file to write."));
  return FALSE;
}

static gboolean
choose_options (const Options *options, Card *card)
{
  static const char *const views[] = { "curves",  "sheet", "lowering", "mount",
                                       "springs", "loads", NULL };
  static const CardSubject subjects[] = { CARD_CURVES,    CARD_SHEET,   CARD_LOWERING,
                                          CARD_MOUNT_MAP, CARD_SPRINGS, CARD_LOADS };
  static const char *const grounds[] = { "white", "dark", "none", NULL };
  const int view = plot_choose_word ("view", options->view, views);
  const int ground =
      view < 0 ? -1 : plot_choose_word ("background", options->background, grounds);

  if (view < 0 || ground < 0 || !plot_choose_curves (options->curves, &card->choice))
    return FALSE;
  card->subject = subjects[view];
  card->map.subjects[0] = FIELD_CAMBER;
  card->map.subjects[1] = FIELD_CASTER;
  card->options =
      (ExportOptions){ options->width, options->height, (ExportBackground) ground };
  card->date = options->date;
  return TRUE;
}

static int
write_card (Card *card, const Options *options)
{
  g_autoptr (GError) error = NULL;

  return card_write (card, options->output, &error) ? EXIT_DONE : plot_say_error (error);
}

static gboolean
shows_loads (const Card *card, const Options *options)
{
  return card->subject == CARD_LOADS ||
         (card->subject == CARD_SHEET && options->load_case != NULL);
}

/* Where the load puts the wheel, unless a travel was asked for. */
static int
write_loaded (Card *card, Study *study, const Options *options)
{
  g_autoptr (SpringStudy) springs = spring_study_new ();
  g_autoptr (LoadStudy) loads = load_study_new ();
  CarLoadCase load_case;
  SpringMode mode;

  if (!command_line_choose_case (card->car, options->load_case, &load_case) ||
      !command_line_choose_spring (options->spring, &mode))
    return EXIT_USAGE;
  spring_study_solve (springs, study, card->car);
  load_study_solve (loads, springs, &load_case, mode);
  if (!isnan (options->travel))
    load_study_hold (loads);
  else if (load_study_in_hand (loads)->is_solved) {
    study_set_travel (study, load_study_in_hand (loads)->travel);
    spring_study_set_travel (springs);
  }
  card->loads = loads;
  return write_card (card, options);
}

/* Of what the setup in hand stands on, with the sentences about it. */
static int
write_springs (Card *card, const Options *options)
{
  g_autoptr (SpringStudy) springs = spring_study_new ();

  spring_study_solve (springs, card->study, card->car);
  g_autoptr (GPtrArray) verdicts = spring_verdicts (springs, card->study->in_hand);
  g_autofree const char **sentences = spring_verdict_sentences (verdicts);
  card->springs = springs;
  card->verdicts = sentences;
  return write_card (card, options);
}

static int
run (const Options *options, const char *file)
{
  Card card = { 0 };
  guint in_hand;

  if (!choose_options (options, &card))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (file);
  g_autoptr (Study) study = study_new ();
  if (car == NULL)
    return EXIT_REFUSED;
  if (!plot_choose_setups (car, options->setups, &in_hand))
    return EXIT_USAGE;
  card.car = car;
  card.setup = car_setup (car, in_hand);
  card.study = study;
  study_solve (study, car, in_hand,
               isnan (options->travel) ? card.setup->lowering_mm : options->travel);
  if (shows_loads (&card, options))
    return write_loaded (&card, study, options);
  if (card.subject == CARD_SPRINGS)
    return write_springs (&card, options);
  return write_card (&card, options);
}

int
plot_command (int argc, char **argv)
{
  Options options = { .width = DEFAULT_WIDTH, .height = DEFAULT_HEIGHT, .travel = NAN };
  char *file;
  const int status =
      parse (argc, argv, &options, &file) ? run (&options, file) : EXIT_USAGE;

  g_free (options.output);
  g_free (options.view);
  g_free (options.background);
  g_free (options.date);
  g_free (options.load_case);
  g_free (options.spring);
  g_strfreev (options.curves);
  g_strfreev (options.setups);
  return status;
}
