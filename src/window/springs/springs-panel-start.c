/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-start.h"

#include "model/spring/spring-law.h"
#include "model/words/number-text.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define DEGREE (G_PI / 180.0)

#define START_BAR_OUTER 22.0
#define START_BAR_LENGTH 900.0
#define START_CLAMP_ANGLE 20.0
#define START_COIL_RATE 25.0
#define START_FREE_LENGTH 340.0
#define START_PERCH 150.0
#define START_UPPER_DROP 40.0
#define START_WIRE 11.0
#define START_MEAN_DIAMETER 120.0
#define END_COILS 2.0 /* closed and ground ends lie still; common practice */
#define START_TABLE_SQUASH 100.0
#define START_HELPER_RATE 8.0
#define START_HELPER_LENGTH 80.0
#define START_HELPER_SOLID 25.0
#define START_GAP 40.0
#define START_ROLL_DIAMETER 20.0
#define START_ROLL_LENGTH 900.0
#define START_ROLL_ARM 220.0
#define START_ROD 20.0
#define START_GUIDE_HEIGHT 280.0
#define START_PISTON_DROP 330.0
#define START_BUSH_SPACING 120.0

static const SpringTable start_stop = {
  .n = 5,
  .x = { 0.0, 10.0, 20.0, 30.0, 40.0 },
  .y = { 0.0, 300.0, 1000.0, 3000.0, 8000.0 },
};

static void
start_sizes (CarTorsionBar *bar)
{
  bar->n_sections = 1;
  bar->sections[0].outer_mm = START_BAR_OUTER;
  bar->sections[0].length_mm = START_BAR_LENGTH;
}

static void
start_anti_roll_sizes (CarAntiRollBar *bar)
{
  bar->diameter_mm = START_ROLL_DIAMETER;
  bar->length_mm = START_ROLL_LENGTH;
  bar->arm_mm = START_ROLL_ARM;
}

static void
start_helper (CarSprings *s)
{
  s->helper =
      (CarHelper){ .is_there = TRUE,
                   .place = s->coil.is_there ? HELPER_IN_SERIES : HELPER_IN_PARALLEL,
                   .rate_n_per_mm = START_HELPER_RATE,
                   .free_length_mm = START_HELPER_LENGTH,
                   .solid_length_mm = START_HELPER_SOLID,
                   .perch_mm = START_PERCH,
                   .upper_drop_mm = START_UPPER_DROP };
}

static void
start_rod (CarRod *rod)
{
  *rod = car_rod_none ();
  rod->diameter_mm = START_ROD;
  rod->guide_height_mm = START_GUIDE_HEIGHT;
  rod->piston_drop_mm = START_PISTON_DROP;
}

void
springs_start (SpringSet *set, SpringsGroup group)
{
  CarSprings *s = &set->springs;

  springs_end (set, group); /* nothing of an earlier one */
  switch (group) {
  case SPRINGS_BAR:
    s->bar.is_there = TRUE;
    s->bar.clamp_angle_deg = START_CLAMP_ANGLE;
    start_sizes (&s->bar);
    return;
  case SPRINGS_COIL:
    s->coil.is_there = TRUE;
    s->coil.rate_n_per_mm = START_COIL_RATE;
    s->coil.free_length_mm = START_FREE_LENGTH;
    s->coil.perch_mm = START_PERCH;
    s->coil.upper_drop_mm = START_UPPER_DROP;
    return;
  case SPRINGS_HELPER:
    start_helper (s);
    return;
  case SPRINGS_STOPS:
    s->bump_stop =
        (CarBumpStop){ .is_there = TRUE, .gap_mm = START_GAP, .table = start_stop };
    return;
  case SPRINGS_ANTI_ROLL:
    s->anti_roll_bar.is_there = TRUE;
    start_anti_roll_sizes (&s->anti_roll_bar);
    return;
  case SPRINGS_ROD:
    start_rod (&set->rod);
    return;
  default:
    return;
  }
}

void
springs_end (SpringSet *set, SpringsGroup group)
{
  const CarSprings none = car_springs_none ();
  CarSprings *s = &set->springs;

  switch (group) {
  case SPRINGS_BAR:
    s->bar = none.bar;
    return;
  case SPRINGS_COIL:
    s->coil = none.coil;
    if (s->helper.place == HELPER_IN_SERIES) /* it stood on it */
      s->helper = none.helper;
    return;
  case SPRINGS_HELPER:
    s->helper = none.helper;
    return;
  case SPRINGS_STOPS:
    s->bump_stop = none.bump_stop;
    return;
  case SPRINGS_ANTI_ROLL:
    s->anti_roll_bar = none.anti_roll_bar;
    return;
  case SPRINGS_ROD:
    set->rod = car_rod_none ();
    return;
  default:
    return;
  }
}

static char *
length_words (double mm)
{
  return unit_plain_text (UNIT_LENGTH, mm, 1);
}

static char *
coil_sentence (const CarCoil *coil)
{
  g_autofree char *rate = unit_plain_text (UNIT_RATE, coil->rate_n_per_mm, 2);
  g_autofree char *length = length_words (coil->free_length_mm);
  g_autofree char *perch = unit_text (UNIT_LENGTH, coil->perch_mm, 1);

  return g_strdup_printf (
      _ ("Added a coil of %s, %s long, its perch at %s: a start to be "
         "overwritten, not measured."),
      rate, length, perch);
}

static char *
bar_sentence (const CarTorsionBar *bar)
{
  g_autofree char *outer = length_words (bar->sections[0].outer_mm);
  g_autofree char *length = length_words (bar->sections[0].length_mm);
  g_autofree char *angle = number_text (bar->clamp_angle_deg, 1);

  return g_strdup_printf (
      _ ("Added a solid bar of %s, %s long, wound up by %s°: a start to "
         "be overwritten, not measured."),
      outer, length, angle);
}

static char *
helper_sentence (void)
{
  g_autofree char *rate = unit_plain_text (UNIT_RATE, START_HELPER_RATE, 2);
  g_autofree char *length = length_words (START_HELPER_LENGTH);

  return g_strdup_printf (
      _ ("Added a helper of %s, %s long: a start to be overwritten, not "
         "measured."),
      rate, length);
}

/* @format takes two lengths. */
static char *
lengths_sentence (const char *format, double first, double second)
{
  g_autofree char *one = length_words (first), *other = length_words (second);

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (format, one, other);
#pragma GCC diagnostic pop
}

static char *
stop_sentence (void)
{
  g_autofree char *gap = length_words (START_GAP);

  return g_strdup_printf (_ ("Added a bump stop that touches after %s of strut travel: a "
                             "start to be overwritten, not measured."),
                          gap);
}

char *
springs_start_sentence (const SpringSet *set, SpringsGroup group)
{
  switch (group) {
  case SPRINGS_BAR:
    return bar_sentence (&set->springs.bar);
  case SPRINGS_COIL:
    return coil_sentence (&set->springs.coil);
  case SPRINGS_HELPER:
    return helper_sentence ();
  case SPRINGS_STOPS:
    return stop_sentence ();
  case SPRINGS_ANTI_ROLL:
    return lengths_sentence (_ ("Added a solid bar of %s with arms of %s: a start to be "
                                "overwritten, not measured."),
                             START_ROLL_DIAMETER, START_ROLL_ARM);
  case SPRINGS_ROD:
    return lengths_sentence (_ ("Added a solid rod of %s, its guide %s above the strut "
                                "foot: a start to be overwritten, not measured."),
                             START_ROD, START_GUIDE_HEIGHT);
  default:
    return NULL;
  }
}

/* As a person would write it down. */
static double
in_digits (double value, double digits)
{
  const double unit = pow (10.0, digits);

  return round (value * unit) / unit;
}

/* A solid bar's rate goes with the fourth power of its diameter. */
static double
diameter_for (double diameter, double rate, double wanted)
{
  return rate > 0.0 && wanted > 0.0
             ? in_digits (diameter * sqrt (sqrt (wanted / rate)), 2.0)
             : diameter;
}

void
springs_set_bar_kind (SpringSet *set, const Car *car, BarKind kind)
{
  CarTorsionBar *bar = &set->springs.bar;
  g_autoptr (SpringLaw) before = spring_law_new (car, &set->springs);
  const double rate = spring_law_bar_rate (before); /* N·mm/rad */

  if (kind == BAR_BY_RATE) {
    bar->rate_nm_per_deg = MAX (in_digits (rate * DEGREE / 1000.0, 3.0), 0.001);
    bar->n_sections = 0;
    memset (bar->sections, 0, sizeof bar->sections);
    return;
  }
  bar->rate_nm_per_deg = 0.0;
  start_sizes (bar);

  g_autoptr (SpringLaw) start = spring_law_new (car, &set->springs);
  bar->sections[0].outer_mm =
      diameter_for (START_BAR_OUTER, spring_law_bar_rate (start), rate);
}

/* Of the coil's law up to where it is of use. */
static SpringTable
table_of_rate (double rate)
{
  SpringTable table = { .n = 3 };

  for (gsize i = 0; i < table.n; i++) {
    table.x[i] = START_TABLE_SQUASH * (double) i / 2.0;
    table.y[i] = in_digits (rate * table.x[i], 1.0);
  }
  return table;
}

/* Its rate goes with one over its working coils. */
static void
start_coil_sizes (SpringSet *set, const Car *car, double rate)
{
  CarCoil *coil = &set->springs.coil;

  coil->wire_mm = START_WIRE;
  coil->mean_diameter_mm = START_MEAN_DIAMETER;
  coil->active_coils = 1.0;

  g_autoptr (SpringLaw) one = spring_law_new (car, &set->springs);
  const double coils = spring_law_coil_rate (one, 1.0) / rate;
  coil->active_coils = MAX (in_digits (coils, 2.0), 0.25);
  coil->total_coils = in_digits (coil->active_coils + END_COILS, 2.0);
}

void
springs_set_coil_kind (SpringSet *set, const Car *car, CoilKind kind)
{
  CarCoil *coil = &set->springs.coil;
  g_autoptr (SpringLaw) before = spring_law_new (car, &set->springs);
  const double known = spring_law_coil_rate (before, START_TABLE_SQUASH / 2.0);
  const double rate = known > 0.0 ? known : START_COIL_RATE;

  coil->rate_n_per_mm = kind == COIL_BY_RATE ? MAX (in_digits (rate, 2.0), 0.01) : 0.0;
  coil->table = (SpringTable){ 0 };
  coil->wire_mm = coil->mean_diameter_mm = 0.0;
  coil->active_coils = coil->total_coils = 0.0;
  if (kind == COIL_BY_TABLE)
    coil->table = table_of_rate (rate);
  if (kind == COIL_BY_SIZES)
    start_coil_sizes (set, car, rate);
}

void
springs_set_anti_roll_kind (SpringSet *set, const Car *car, BarKind kind)
{
  CarAntiRollBar *bar = &set->springs.anti_roll_bar;
  g_autoptr (SpringLaw) before = spring_law_new (car, &set->springs);
  const double rate = spring_law_link_rate (before);

  bar->diameter_mm = bar->bore_mm = bar->length_mm = bar->arm_mm = 0.0;
  bar->rate_n_per_mm = kind == BAR_BY_RATE ? MAX (in_digits (rate, 3.0), 0.001) : 0.0;
  if (kind == BAR_BY_RATE)
    return;
  start_anti_roll_sizes (bar);

  g_autoptr (SpringLaw) start = spring_law_new (car, &set->springs);
  bar->diameter_mm =
      diameter_for (START_ROLL_DIAMETER, spring_law_link_rate (start), rate);
}

void
springs_set_link_measured (SpringSet *set, const Car *car, gboolean is_measured)
{
  CarAntiRollBar *bar = &set->springs.anti_roll_bar;

  bar->has_link_point = FALSE;
  bar->link_point = (Vec3){ 0 };
  if (!is_measured)
    return;

  const Vec3 usual = car_spring_places (car, &set->springs).link_point;
  bar->has_link_point = TRUE;
  bar->link_point = (Vec3){ in_digits (usual.x, 1.0), in_digits (usual.y, 1.0),
                            in_digits (usual.z, 1.0) };
}

void
springs_set_rod_inverted (SpringSet *set, gboolean is_inverted)
{
  set->rod.bush_spacing_mm = is_inverted ? START_BUSH_SPACING : 0.0;
  set->rod.piston_drop_mm = is_inverted ? 0.0 : START_PISTON_DROP;
}
