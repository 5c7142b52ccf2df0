/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a car file. What loads is written and read again, and everything that the
 * command line asks of a car is asked. */
#include "fuzz-target.h"

#include "model/advice/plausibility.h"
#include "model/advice/restore.h"
#include "model/car/car-json.h"
#include "model/choice/choice.h"
#include "model/load/joint-table.h"
#include "model/load/load-study.h"
#include "model/load/spring-table.h"
#include "model/study/compare.h"
#include "model/study/travel-gap.h"
#include "model/study/travel-table.h"

#include <math.h>
#include <string.h>

static void
check_written_again (const Car *car)
{
  gsize length, length_again;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = car_to_json (car, &length);
  g_autoptr (Car) again = car_from_json (text, length, &error);
  g_autofree char *text_again = NULL;

  g_assert_no_error (error);
  g_assert_true (car_equal (car, again));
  text_again = car_to_json (again, &length_again);
  g_assert_cmpmem (text, length, text_again, length_again);
}

static void
check_station (const Station *station)
{
  if (station->status != POSE_OK)
    return;
  for (guint q = 0; q < N_QUANTITIES; q++)
    g_assert_false (isnan (station->measures.value[q]));
}

static void
check_solves (const Car *car)
{
  g_autoptr (Study) study = study_new ();
  g_autoptr (GString) text = g_string_new (NULL);

  study_solve (study, car, car->setups->len - 1, 10.0);
  for (guint i = 0; i < study->n_setups; i++)
    check_station (&study->setups[i].now);
  for (TableFormat format = TABLE_TEXT; format <= TABLE_JSON; format++)
    compare_write (study, format, text);
  g_assert_true (g_utf8_validate (text->str, (gssize) text->len, NULL));
}

static void
check_table (const Car *car)
{
  const TravelSteps steps = { -car->droop_mm, car->bump_mm,
                              (car->droop_mm + car->bump_mm) / 8.0 };
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GArray) gaps = travel_gaps_new ();
  gsize n_rows;

  if (travel_steps_count (steps, &n_rows, NULL))
    travel_table_write (car, 0, steps, TRAVEL_TABLE_CSV, text, gaps);
  g_assert_null (strstr (text->str, "nan"));
}

/* Of numbers: a name may have the letters in it. */
static void
check_no_nan (const Car *car, const char *text)
{
  gsize length;
  g_autofree char *own = car_to_json (car, &length);

  if (strstr (own, "nan") == NULL)
    g_assert_null (strstr (text, "nan"));
}

/* What it stands on, and where a few loads go. */
static void
check_springs (const Car *car)
{
  const guint setup = car->setups->len - 1;
  const TravelSteps steps = { -car->droop_mm, car->bump_mm,
                              (car->droop_mm + car->bump_mm) / 8.0 };
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();
  g_autoptr (LoadStudy) loads = load_study_new ();
  g_autoptr (GString) text = g_string_new (NULL);
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n_cases = car_load_cases (car, cases);
  gsize n_rows;

  study_solve (study, car, setup, 10.0);
  spring_study_solve (springs, study, car);
  if (travel_steps_count (steps, &n_rows, NULL))
    for (TableFormat format = TABLE_TEXT; format <= TABLE_JSON; format++)
      spring_table_write (springs, setup, steps, format, text);
  for (SpringMode mode = SPRING_AS_SET; mode <= SPRING_BAR_ONLY; mode++) {
    load_study_solve (loads, springs, &cases[fuzz_n_loaded % n_cases], mode);
    const JointTable table = { springs, setup, mode, NULL, load_study_in_hand (loads),
                               NULL };
    joint_table_write (&table, TABLE_JSON, text);
  }
  check_no_nan (car, text->str);
  g_assert_true (g_utf8_validate (text->str, (gssize) text->len, NULL));
}

/* The slow ones: a search for a mount, and for a part that puts things back. */
static void
check_searches (const Car *car)
{
  const ChoiceQuestion question = { .setup = car->setups->len - 1, .try_bolt = TRUE };
  g_autoptr (Plate) plate = plate_new ();
  const Plate *plates[] = { plate };

  plate->kind = PLATE_SLOT;
  plate->along = (PlateScale){ -10.0, 20.0 };
  g_autoptr (GArray) answers = choice_solve (car, &question, plates, 1);
  g_assert_cmpuint (answers->len, >=, 1);
  g_autofree char *sentence =
      choice_sentence (car, &g_array_index (answers, ChoiceAnswer, 0));
  g_assert_true (g_utf8_validate (sentence, -1, NULL));

  const RestoreAnswer answer =
      restore_solve (car, car->setups->len - 1, RESTORE_ROLL_CENTRE,
                     restore_usual_limits (RESTORE_ROLL_CENTRE), RESTORE_USUAL_TRAVEL);
  g_autofree char *words = restore_sentence (RESTORE_ROLL_CENTRE, &answer);
  g_assert_true (g_utf8_validate (words, -1, NULL));
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  GError *error = NULL;
  g_autoptr (Car) car = car_from_json ((const char *) data, size, &error);

  if (car == NULL) {
    fuzz_check_refusal (error);
    return 0;
  }
  g_assert_no_error (error);
  check_written_again (car);
  check_solves (car);
  check_table (car);
  check_springs (car);
  g_ptr_array_unref (plausibility_check (car));
  if (fuzz_n_loaded++ % 8 == 0)
    check_searches (car);
  return 0;
}
