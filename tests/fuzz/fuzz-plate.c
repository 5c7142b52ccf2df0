/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a plate file. What loads is written and read again, set every way it can
 * be set, and fitted to a car. */
#include "fuzz-target.h"

#include "model/car/car-json.h"
#include "model/choice/choice.h"
#include "model/plate/plate-json.h"

#include <math.h>

static void
check_written_again (const Plate *plate)
{
  gsize length, length_again;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = plate_to_json (plate, &length);
  g_autoptr (Plate) again = plate_from_json (text, length, &error);
  g_autofree char *text_again = NULL;

  g_assert_no_error (error);
  g_assert_true (plate_equal (plate, again));
  text_again = plate_to_json (again, &length_again);
  g_assert_cmpmem (text, length, text_again, length_again);
}

static void
check_setting (const Plate *plate, PlateSetting setting)
{
  const MountOffset at = plate_place (plate, setting);
  g_autofree char *words = plate_describe_setting (plate, setting);

  g_assert_true (isfinite (at.inboard) && isfinite (at.rearward) && isfinite (at.up));
  g_assert_true (g_utf8_validate (words, -1, NULL));
  plate_nearest (plate, at, setting.is_swapped);
}

static void
check_settings (const Plate *plate)
{
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);
  const guint n = MAX (plate_n_places (plate), 1);

  for (guint i = 0; i <= 4; i++) {
    const PlateSetting setting = { .place = i * n / 4,
                                   .along =
                                       along.least + i * (along.most - along.least) / 4,
                                   .across =
                                       across.most - i * (across.most - across.least) / 4,
                                   .is_swapped = plate->can_swap && i % 2 == 1 };

    check_setting (plate, setting);
  }
}

static Car *
load_car (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("G_TEST_SRCDIR"),
                                            "data/cars/good/choosing.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  g_assert_no_error (error);
  return car;
}

static void
check_fits (const Plate *plate)
{
  static Car *car;
  const ChoiceQuestion question = { .try_swap = TRUE };
  const Plate *plates[] = { plate };

  if (car == NULL)
    car = load_car ();
  g_autoptr (GArray) answers = choice_solve (car, &question, plates, 1);
  for (guint i = 0; i < answers->len; i++) {
    g_autofree char *words =
        choice_sentence (car, &g_array_index (answers, ChoiceAnswer, i));

    g_assert_true (g_utf8_validate (words, -1, NULL));
  }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  GError *error = NULL;
  g_autoptr (Plate) plate = plate_from_json ((const char *) data, size, &error);

  if (plate == NULL) {
    fuzz_check_refusal (error);
    return 0;
  }
  g_assert_no_error (error);
  check_written_again (plate);
  check_settings (plate);
  if (fuzz_n_loaded++ % 8 == 0)
    check_fits (plate);
  return 0;
}
