/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every board, page and card in inches, pounds and minutes: no text that is drawn has a
 * metric unit in it, but those that unit.h says stay metric. */

#include "drawing/card/card.h"
#include "drawing/card/fitting-card.h"
#include "drawing/chart/number-table.h"
#include "drawing/report/report.h"
#include "drawing/sheet/construction-story.h"
#include "drawn-texts.h"
#include "model/advice/plausibility.h"
#include "model/car/car-json.h"
#include "model/load/load-study.h"
#include "model/load/spring-verdict.h"
#include "model/plate/plate-json.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>
#include <string.h>

static const char *const cars[] = { "dunnock", "fieldfare", "lapwing", "wren" };

static const UnitChoice imperial = { .length = LENGTH_INCH,
                                     .angle = ANGLE_MINUTES,
                                     .toe = TOE_TOTAL,
                                     .mass = MASS_LB,
                                     .force = FORCE_LBF,
                                     .rate = RATE_LBF_PER_INCH,
                                     .toe_diameter_mm = 400.0 };

/* Of a thread and of an engraved scale, of measured points, of the bar by which paper is
 * checked, and as a source has it. */
static const char *const allowed[] = {
  "mm pitch",         "mm on the scale",   "Measured points, mm", "must measure 50 mm",
  "mm inboard scale", "mm rearward scale", "mm forward scale",    "mm outboard scale",
  "mm first scale",   "mm second scale",   "7850 kg/m³, EN 1991"
};

static GFile *
data_file (const char *folder, const char *name, const char *suffix)
{
  g_autofree char *base = g_strconcat (name, suffix, NULL);
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "..", "..", "data", folder, base, NULL);

  return g_file_new_for_path (path);
}

static Car *
load_car (const char *name)
{
  g_autoptr (GFile) file = data_file (".", name, ".swcar");
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  g_assert_no_error (error);
  return car;
}

/* What is allowed, cut out. */
static char *
without_allowed (const char *text)
{
  g_autoptr (GString) rest = g_string_new (text);

  for (gsize i = 0; i < G_N_ELEMENTS (allowed); i++)
    g_string_replace (rest, allowed[i], "", 0);
  return g_strdup (rest->str);
}

static gboolean
has_metric_unit (const char *text)
{
  static GRegex *metric;
  g_autofree char *rest = without_allowed (text);

  if (metric == NULL)
    metric = g_regex_new ("(^|[\\s(,\\d/°])(mm|cm|m|kg|N|kN|GPa|MPa)(?=$|[\\s.,;:)·/²])|"
                          "\\d\\.\\d+°",
                          0, 0, NULL);
  return g_regex_match (metric, rest, 0, NULL);
}

static void
assert_imperial (const char *text, const char *what)
{
  if (has_metric_unit (text))
    g_test_message ("%s: “%s”", what, text), g_test_fail ();
}

/* The pitch of the thread alone has its unit in a column of its own. */
static gboolean
is_of_pitch (guint i)
{
  return i >= 2 && g_str_equal (drawn_text_at (i)->text, "mm") &&
         g_str_equal (drawn_text_at (i - 2)->text, "Tie-rod thread pitch");
}

static void
assert_drawn (const char *what)
{
  g_assert_cmpuint (drawn_texts->len, >, 0);
  for (guint i = 0; i < drawn_texts->len; i++)
    if (!is_of_pitch (i))
      assert_imperial (drawn_text_at (i)->text, what);
}

typedef struct {
  cairo_surface_t *surface;
  cairo_t *cr;
} Paper;

/* Onto nothing: only what goes through the wraps counts. */
static Paper
paper_new (double width, double height)
{
  cairo_surface_t *surface = cairo_pdf_surface_create (NULL, width, height);

  drawn_reset ();
  return (Paper){ surface, cairo_create (surface) };
}

static void
paper_check (Paper *paper, const char *what)
{
  g_assert_cmpint (cairo_status (paper->cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (paper->cr);
  cairo_surface_destroy (paper->surface);
  assert_drawn (what);
}

typedef struct {
  Car *car;
  Study *study;
  SpringStudy *springs;
  LoadStudy *loads;
} Solved;

static Solved
solve (const char *name, guint in_hand)
{
  Solved self = { load_car (name), study_new (), spring_study_new (), load_study_new () };
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n = car_load_cases (self.car, cases);

  for (guint i = 0; i < self.car->setups->len; i++)
    car_setup (self.car, i)->mount.inboard += 7.0;
  study_solve (self.study, self.car, in_hand, 12.0);
  spring_study_solve (self.springs, self.study, self.car);
  load_study_solve (self.loads, self.springs, &cases[n - 1], SPRING_AS_SET);
  return self;
}

static void
solved_clear (Solved *self)
{
  load_study_free (self->loads);
  spring_study_free (self->springs);
  study_free (self->study);
  car_free (self->car);
}

static void
check_card (const Solved *s, CardSubject subject)
{
  static const char *const names[] = { "curves", "sheet",   "lowering",
                                       "map",    "springs", "loads" };
  g_autoptr (CardPress) press = card_press_new ();
  g_autoptr (GPtrArray) verdicts = spring_verdicts (s->springs, s->study->in_hand);
  g_autofree const char **sentences = spring_verdict_sentences (verdicts);
  Card card = { .subject = subject,
                .options = { 1400, 1000, EXPORT_BACKGROUND_WHITE },
                .choice = board_choice_default (),
                .car = s->car,
                .setup = car_setup (s->car, s->study->in_hand),
                .study = s->study,
                .map = { .subjects = { FIELD_CAMBER, FIELD_CASTER } },
                .springs = s->springs,
                .verdicts = sentences,
                .loads = subject == CARD_SPRINGS ? NULL : s->loads };
  Paper paper = paper_new (card.options.width, card.options.height);

  card_draw (press, paper.cr, &card);
  paper_check (&paper, names[subject]);
}

static void
check_table (const Solved *s)
{
  static Quantity all[N_QUANTITIES];
  g_autoptr (NumberTable) table = number_table_new ();

  for (Quantity q = 0; q < N_QUANTITIES; q++)
    all[q] = q;
  const NumberTableView view = { .study = s->study,
                                 .theme = theme_light (),
                                 .quantities = all,
                                 .n_quantities = N_QUANTITIES,
                                 .lit = -1 };
  Paper paper = paper_new (1400, 1000);
  number_table_draw (table, paper.cr, &view, 1400, 1000);
  paper_check (&paper, "table");
}

static void
check_story (const Solved *s)
{
  g_autoptr (Story) story = story_new ();

  for (StoryStep step = 0; step < N_STORY_STEPS; step++) {
    const StoryView view = {
      .study = s->study, .section_width = 165.0, .theme = theme_light (), .step = step
    };
    Paper paper = paper_new (1280, 720);

    story_draw (story, paper.cr, &view, 1280, 720);
    paper_check (&paper, "story");
  }
}

static void
check_sentences (const Solved *s)
{
  g_autoptr (GPtrArray) warnings = plausibility_check (s->car);
  g_autoptr (GPtrArray) verdicts = spring_verdicts (s->springs, s->study->in_hand);
  g_autofree char *loads = joint_loads_sentence (s->springs, s->study->in_hand, NULL);

  assert_imperial (loads, "loads");
  for (guint i = 0; i < warnings->len; i++)
    assert_imperial (((PlausibilityWarning *) warnings->pdata[i])->sentence, "warning");
  for (guint i = 0; i < verdicts->len; i++) {
    assert_imperial (((SpringVerdict *) verdicts->pdata[i])->sentence, "verdict");
    assert_imperial (((SpringVerdict *) verdicts->pdata[i])->rule, "rule");
  }
}

static void
test_boards_and_sentences (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cars); i++)
    for (guint in_hand = 0; in_hand < 2; in_hand++) {
      Solved solved = solve (cars[i], in_hand);

      for (CardSubject subject = 0; subject <= CARD_LOADS; subject++)
        check_card (&solved, subject);
      check_table (&solved);
      check_story (&solved);
      check_sentences (&solved);
      solved_clear (&solved);
    }
}

static void
test_reports (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cars); i++) {
    g_autoptr (Car) car = load_car (cars[i]);
    CarLoadCase cases[LOAD_CASES_MOST];
    Report report = { .car = car,
                      .in_hand = car->setups->len - 1,
                      .choice = board_choice_default (),
                      .paper = paper_letter () };

    car_load_cases (car, cases);
    report.load_case = cases[0];
    for (ReportPart part = 0; part < N_REPORT_PARTS; part++)
      report.has[part] = report_part_is_given (&report, part);

    g_autoptr (ReportPress) press = report_press_new (&report);
    for (guint page = 0; page < report_n_pages (press); page++) {
      Paper paper = paper_new (report.paper.width, report.paper.height);

      report_draw_page (press, paper.cr, page);
      paper_check (&paper, report_part_key (report_page_part (press, page)));
    }
  }
}

/* As the ranked table has them, and the sentences beside. */
static void
check_answer (const Car *car, const ChoiceAnswer *answer)
{
  g_autoptr (TextCache) texts = text_cache_new ();
  const FittingCard card = {
    .car = car, .setup = car_setup (car, 0), .answer = answer, .carrier = CARRIED_BY_COIL
  };
  g_autofree char *sentence = choice_sentence (car, answer);
  Paper paper = paper_new (595, 842);

  fitting_card_draw (texts, paper.cr, &card, 595, 842);
  paper_check (&paper, answer->plate->name);
  assert_imperial (sentence, answer->plate->name);
}

/* 0.05° of each wheel, 0.1° of both, in a card that has both. */
static void
test_a_card_tells_toe_of_one_wheel_from_both (void)
{
  const ChoiceQuestion question = { .carrier = CARRIED_BY_COIL };
  g_autoptr (Car) car = load_car ("wren");
  g_autoptr (GFile) file = data_file ("plates", "stock-mount", ".swplate");
  g_autoptr (Plate) plate = plate_load (file, NULL);

  car->toe_in_deg = 0.05;
  const ChoiceAnswer answer = choice_of_setup (car, &question, plate);
  check_answer (car, &answer);
  g_assert_cmpuint (drawn_count ("0°03′"), >=, 4); /* both sides, before and after */
  g_assert_cmpuint (drawn_count ("0°06′"), >=, 2);
}

static void
test_fitting_cards (void)
{
  static const char *const plates[] = { "camber-and-caster-plate", "diagonal-slot-plate",
                                        "five-hole-caster-plate",
                                        "offset-bush-turned-in-place" };
  const ChoiceQuestion question = { .carrier = CARRIED_BY_COIL };

  for (gsize i = 0; i < G_N_ELEMENTS (cars); i++) {
    g_autoptr (Car) car = load_car (cars[i]);

    for (gsize j = 0; j < G_N_ELEMENTS (plates); j++) {
      g_autoptr (GFile) file = data_file ("plates", plates[j], ".swplate");
      g_autoptr (Plate) plate = plate_load (file, NULL);

      g_assert_nonnull (plate);
      const ChoiceAnswer answer = choice_of_setup (car, &question, plate);
      check_answer (car, &answer);
    }
  }
}

/* What the test looks for it finds. */
static void
test_metric_units_are_seen (void)
{
  static const char *const metric[] = { "12.3 mm",  "lowering, mm", "25 N/mm",
                                        "(+54 mm)", "900 N/mm²",    "31 m outboard",
                                        "°/mm",     "79 GPa",       "3.6 kg",
                                        "10 N·m/°" };
  static const char *const fine[] = { "0.484 in",      "25 lbf/in",
                                      "1.50 mm pitch", "12.0 mm on the scale",
                                      "Name",          "SAI" };

  for (gsize i = 0; i < G_N_ELEMENTS (metric); i++)
    g_assert_true (has_metric_unit (metric[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (fine); i++)
    g_assert_false (has_metric_unit (fine[i]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  unit_choice_set (&imperial);
  g_test_add_func ("/drawn-units/metric-units-are-seen", test_metric_units_are_seen);
  g_test_add_func ("/drawn-units/boards-and-sentences", test_boards_and_sentences);
  g_test_add_func ("/drawn-units/reports", test_reports);
  g_test_add_func ("/drawn-units/fitting-cards", test_fitting_cards);
  g_test_add_func ("/drawn-units/toe", test_a_card_tells_toe_of_one_wheel_from_both);
  return g_test_run ();
}
