/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"

#include "model/study/study.h"

static void
check_same (const Station *a, const Station *b)
{
  g_assert_cmpint (a->status, ==, b->status);
  g_assert_cmpfloat (a->travel, ==, b->travel);
  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    g_assert_cmpmem (&a->measures.value[q], sizeof (double), &b->measures.value[q],
                     sizeof (double));
    g_assert_cmpmem (&a->measures.slope[q], sizeof (double), &b->measures.slope[q],
                     sizeof (double));
  }
}

/* By the kernel alone, as the contract of the study says it. */
static void
check_corner (const Car *car,
              Adjustment adjustment,
              double travel,
              const StudyCorner *study)
{
  const MeasuredCorner measured = car_measured_corner (car);
  const SweepRange range = { -car->droop_mm, car->bump_mm, STUDY_STATIONS };
  g_autofree Station *stations = g_new0 (Station, STUDY_STATIONS);
  Corner corner;
  Station now;

  g_assert_cmpint (corner_assemble (&measured, &adjustment, &corner).status, ==,
                   CORNER_OK);
  g_assert_cmpuint (sweep_travel (&corner, range, 0.0, stations), ==, study->n_assembled);
  for (int i = 0; i < STUDY_STATIONS; i++)
    check_same (&stations[i], &study->stations[i]);
  station_solve (&corner, travel, 0.0, &now);
  check_same (&now, &study->now);
}

static void
test_it_is_what_the_kernel_says (void)
{
  static const char *const names[] = { "set-m", "plain", "impossible-setup" };
  g_autoptr (Study) study = study_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autoptr (Car) car = fixture_car (names[i]);

    for (guint s = 0; s < car->setups->len; s++) {
      const CarSetup *setup = car_setup (car, s);

      study_solve (study, car, s, 17.5);
      check_corner (car, (Adjustment){ 0 }, 17.5, &study->measured);
      check_corner (car, car_adjustment (setup), 17.5, study_in_hand (study));
      g_assert_cmpfloat (study_in_hand (study)->lowering, ==, setup->lowering_mm);
      g_assert_true (study_has_reference (study) == (s > 0));
    }
  }
}

static void
test_an_impossible_setup_is_all_gaps (void)
{
  g_autoptr (Car) car = fixture_car ("impossible-setup");
  g_autoptr (Study) study = study_new ();

  study_solve (study, car, 1, 0.0);
  g_assert_cmpuint (study_in_hand (study)->n_assembled, ==, 0);
  g_assert_cmpuint (study->measured.n_assembled, ==, STUDY_STATIONS);
  g_assert_cmpint (study_in_hand (study)->now.status, !=, POSE_OK);
  g_assert_cmpfloat (study_in_hand (study)->now.measures.value[QUANTITY_CAMBER], !=,
                     study_in_hand (study)->now.measures.value[QUANTITY_CAMBER]);
}

static void
test_the_travel_in_hand_stays_inside (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  g_autoptr (Study) study = study_new ();

  study_solve (study, car, 0, 500.0);
  g_assert_cmpfloat (study->travel, ==, 80.0);
  study_set_travel (study, -500.0);
  g_assert_cmpfloat (study->travel, ==, -80.0);
  check_corner (car, (Adjustment){ 0 }, -80.0, &study->measured);
}

static void
test_every_status_has_its_sentence (void)
{
  g_assert_cmpstr (pose_status_sentence (POSE_OK), ==, "");
  for (PoseStatus status = POSE_OK + 1; status <= POSE_TOE_OUT_OF_REACH; status++)
    g_assert_true (g_str_has_suffix (pose_status_sentence (status), "."));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/kernel", test_it_is_what_the_kernel_says);
  g_test_add_func ("/study/gaps", test_an_impossible_setup_is_all_gaps);
  g_test_add_func ("/study/travel", test_the_travel_in_hand_stays_inside);
  g_test_add_func ("/study/sentences", test_every_status_has_its_sentence);
  return g_test_run ();
}
