/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/measure/measure-window-reading.h"
#include "window/entry/refusal-units.h"
#include "window/entry/refusal-words.h"
#include "window/entry/typed-number.h"

#include "kernel/sweep.h"
#include "model/advice/misread-figure.h"
#include "model/advice/plausibility.h"
#include "model/car/car-json.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

typedef struct {
  const MeasureEntries *entries;
  Car *car;
  MeasureReading *reading;
  guint n_missing;
} Reader;

static gboolean
has_text (const Reader *reader, MeasureGroup group)
{
  guint first, n;
  double value;

  measure_group_span (group, &first, &n);
  for (guint i = first; i < first + n; i++)
    if (typed_number_read (reader->entries->texts[i], &value) != TYPED_NOTHING)
      return TRUE;
  return FALSE;
}

/* Points and alignment of the right side count where any of theirs is entered, and at
 * least one of them must be. */
static void
find_right (Reader *reader)
{
  CarMeasuredRight *right = &reader->car->right;
  const gboolean counts = reader->entries->has_right;

  right->has_alignment = counts && has_text (reader, MEASURE_RIGHT_WHEEL);
  right->has_points =
      counts && (has_text (reader, MEASURE_RIGHT_POINTS) || !right->has_alignment);
}

static gboolean
does_count (const Reader *reader, const MeasureField *field)
{
  if (field->group == MEASURE_RIGHT_POINTS)
    return reader->car->right.has_points;
  return field->group != MEASURE_RIGHT_WHEEL || reader->car->right.has_alignment;
}

static void
say (MeasureReading *reading, MeasureVerdict verdict, guint field, char *sentence)
{
  if (verdict >= reading->verdict) {
    g_free (sentence);
    return;
  }
  g_free (reading->sentence);
  reading->verdict = verdict;
  reading->field = (int) field;
  reading->sentence = sentence;
}

static void
read_field (Reader *reader, guint index)
{
  const MeasureField field = measure_field (index);
  const char *text = reader->entries->texts[index];
  g_autofree char *name = measure_field_name (&field);
  double value;
  const Typed typed = typed_measure_read (text, unit_kind_of (field.unit), &value);

  if (typed == TYPED_NONSENSE) {
    reader->reading->is_at_fault[index] = TRUE;
    say (reader->reading, MEASURE_NONSENSE, index, refusal_of_number (name, text));
  } else if (typed == TYPED_NOTHING && isnan (field.absent)) {
    reader->n_missing++;
    reader->reading->is_missing[index] = TRUE;
    say (reader->reading, MEASURE_MISSING, index, g_steal_pointer (&name));
  } else {
    measure_field_set (&field, reader->car, typed == TYPED_NUMBER ? value : field.absent);
  }
}

static void
read_fields (Reader *reader)
{
  for (guint i = 0; i < measure_n_fields (); i++) {
    const MeasureField field = measure_field (i);

    if (does_count (reader, &field))
      read_field (reader, i);
  }
  if (reader->reading->verdict != MEASURE_MISSING)
    return;

  g_autofree char *name = reader->reading->sentence;
  /* Translators: how many entries, and the name of the first one. */
  reader->reading->sentence =
      g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u entry is missing: “%s”.",
                                    "%u entries are missing; the next one is “%s”.",
                                    reader->n_missing),
                       reader->n_missing, name);
}

/* Marks the entries that @path is about, where @data is a reading. */
static char *
note_path (const char *path, gpointer data)
{
  MeasureReading *reading = data;
  char *name = NULL;

  for (guint i = 0; i < measure_n_fields (); i++) {
    MeasureField field = measure_field (i);

    if (!measure_field_is_at (&field, path))
      continue;
    if (reading != NULL)
      reading->is_at_fault[i] = TRUE;
    if (reading != NULL && reading->field < 0)
      reading->field = (int) i;
    if (!g_str_has_suffix (path, "]"))
      field.point = N_POINTS; /* the whole point */
    if (name == NULL)
      name = measure_field_name (&field);
  }
  return name;
}

static char *
figure (const Measures *measures, Quantity quantity)
{
  char text[32];

  quantity_format_whole (quantity, measures->value[quantity], FALSE, text, sizeof text);
  return g_strdup (text);
}

/* Figures that a gauge on the car can confirm. */
static char *
sound_sentence (const Car *car, gboolean is_plausible)
{
  const MeasuredCorner measured = car_measured_corner (car);
  const Adjustment none = { 0 };
  Corner corner;
  Station standing;

  corner_assemble (&measured, &none, &corner);
  station_solve (&corner, 0.0, 0.0, &standing);

  const Measures *m = &standing.measures;
  g_autofree char *camber = figure (m, QUANTITY_CAMBER),
                  *caster = figure (m, QUANTITY_CASTER), *sai = figure (m, QUANTITY_SAI),
                  *scrub = figure (m, QUANTITY_SCRUB_RADIUS),
                  *trail = figure (m, QUANTITY_TRAIL);
  return g_strdup_printf (
      is_plausible
          ? _ ("The corner is sound. Camber %s, caster %s, steering-axis inclination %s, "
               "scrub radius %s and trail %s come out as computed: compare them with the "
               "gauge.")
          : _ ("The corner can be solved. Camber %s, caster %s, "
               "steering-axis inclination %s, scrub radius %s and trail %s come out as "
               "computed: compare them with the gauge."),
      camber, caster, sai, scrub, trail);
}

char *
measure_in_words (const char *sentence)
{
  return refusal_in_words (sentence, note_path, NULL);
}

/* A line each; behind the first the entry that would explain them all, so that it is seen
 * without scrolling. */
static char *
warning_sentence (const Car *car)
{
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  MisreadFigure found[MISREAD_MOST];
  const guint n_told = plausibility_n_measured (warnings);

  if (n_told == 0)
    return NULL;

  const guint n = misread_figures (car, found);
  g_autofree char *misread = misread_sentence (car, found, n);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < n_told; i++) {
    const PlausibilityWarning *warning = warnings->pdata[i];

    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", warning->sentence);
    if (i == 0 && misread != NULL)
      g_string_append_printf (text, " %s", misread);
  }
  return measure_in_words (text->str);
}

/* By the entry whose path it begins with. */
static char *
in_unit_of_entry (const char *sentence)
{
  g_autofree char *path = g_strndup (sentence, strcspn (sentence, " "));

  for (guint i = 0; i < measure_n_fields (); i++) {
    const MeasureField field = measure_field (i);

    if (measure_field_is_at (&field, path))
      return refusal_with_units (sentence, unit_kind_of (field.unit));
  }
  return g_strdup (sentence);
}

static void
judge (const Car *car, MeasureReading *reading)
{
  g_autoptr (GError) error = NULL;

  if (car_check (car, &error)) {
    reading->warning = warning_sentence (car);
    reading->sentence = sound_sentence (car, reading->warning == NULL);
    return;
  }
  reading->verdict = MEASURE_REFUSED;
  g_autofree char *refusal = in_unit_of_entry (error->message);
  reading->sentence = refusal_in_words (refusal, note_path, reading);
}

static void
set_text (char **member, const char *text)
{
  g_free (*member);
  *member = g_strdup (text);
}

MeasureReading
measure_read (const MeasureEntries *entries, Car *car)
{
  MeasureReading reading = { .verdict = MEASURE_SOUND,
                             .field = -1,
                             .is_at_fault = g_new0 (gboolean, measure_n_fields ()),
                             .is_missing = g_new0 (gboolean, measure_n_fields ()) };
  Reader reader = { entries, car, &reading, 0 };

  set_text (&car->name, entries->name[0] != '\0' ? entries->name : _ ("Unnamed car"));
  set_text (&car->notes, entries->notes);
  find_right (&reader);
  read_fields (&reader);
  if (reading.verdict == MEASURE_SOUND)
    judge (car, &reading);
  return reading;
}

void
measure_reading_clear (MeasureReading *reading)
{
  g_clear_pointer (&reading->sentence, g_free);
  g_clear_pointer (&reading->warning, g_free);
  g_clear_pointer (&reading->is_at_fault, g_free);
  g_clear_pointer (&reading->is_missing, g_free);
}
