/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/answers-view-row.h"

#include "model/study/quantity-info.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct {
  char *text, *hint;
  gboolean is_marked;
} Figure;

struct _SwAnswerRow {
  GObject parent_instance;

  guint rank;
  ChoiceVerdict verdict;
  const char *verdict_words;
  gboolean is_swapped;
  char *plate, *setting, *side, *sentence;
  Figure figures[N_CHOICE_NUMBERS][2];
};

G_DEFINE_FINAL_TYPE (SwAnswerRow, sw_answer_row, G_TYPE_OBJECT)

static void
sw_answer_row_finalize (GObject *object)
{
  SwAnswerRow *self = SW_ANSWER_ROW (object);

  g_free (self->plate);
  g_free (self->setting);
  g_free (self->side);
  g_free (self->sentence);
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++)
    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
      g_free (self->figures[i][side].text);
      g_free (self->figures[i][side].hint);
    }
  G_OBJECT_CLASS (sw_answer_row_parent_class)->finalize (object);
}

static void
sw_answer_row_class_init (SwAnswerRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_answer_row_finalize;
}

static void
sw_answer_row_init (SwAnswerRow *self)
{
  (void) self;
}

static gboolean
is_marked (const ChoicePlace *place, ChoiceNumber number)
{
  return choice_number_misses_aim (place, number) ||
         choice_number_is_past_limit (place, number);
}

static char *
turns_text (double turns)
{
  g_autofree char *number = number_text (fabs (turns), 2);

  if (!isfinite (turns))
    return g_strdup ("–");
  if (fabs (turns) < 0.005)
    return g_steal_pointer (&number);
  /* Translators: turns that make the tie rod longer or shorter. */
  return g_strdup_printf (turns > 0.0 ? _ ("%s longer") : _ ("%s shorter"), number);
}

/* "−1.93", "0.48 longer". */
static char *
plain_text (const ChoicePlace *place, ChoiceNumber number)
{
  return number == CHOICE_TIE_ROD_TURNS ? turns_text (choice_number (place, number))
                                        : choice_number_text (place, number);
}

/* With a sign for those who do not see its colour. */
static char *
marked_text (const ChoicePlace *place, ChoiceNumber number)
{
  g_autofree char *text = plain_text (place, number);

  return is_marked (place, number) ? g_strconcat ("! ", text, NULL)
                                   : g_steal_pointer (&text);
}

/* What its sign means, and whether it is off; or NULL. */
static char *
hint_text (const ChoicePlace *place, ChoiceNumber number)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new ();
  Quantity quantity;

  if (quantity_from_key (choice_number_info (number).key, &quantity)) {
    const char *words = quantity_sign_words (quantity, place->value[quantity]);

    if (words[0] != '\0')
      g_ptr_array_add (parts, (gpointer) words);
  }
  if (choice_number_misses_aim (place, number))
    g_ptr_array_add (parts, _ ("outside what is aimed for"));
  if (choice_number_is_past_limit (place, number))
    g_ptr_array_add (parts, _ ("past the limit"));
  g_ptr_array_add (parts, NULL);
  return parts->len > 1 ? g_strjoinv (", ", (char **) parts->pdata) : NULL;
}

static void
write_figure (SwAnswerRow *self,
              const ChoiceAnswer *answer,
              ChoiceNumber number,
              CarSide side)
{
  const ChoicePlace *place = &answer->side[side];

  self->figures[number][side] = (Figure){ .text = marked_text (place, number),
                                          .hint = hint_text (place, number),
                                          .is_marked = is_marked (place, number) };
}

/* "hole 3, bolt −0.46°"; that plates are swapped stands by the name. */
static char *
side_setting (const ChoiceAnswer *answer, CarSide side)
{
  g_autofree char *words =
      plate_describe_dials (answer->plate, answer->side[side].setting);

  if (!answer->has_bolt)
    return g_steal_pointer (&words);

  g_autofree char *bolt =
      unit_text (UNIT_ANGLE, choice_number (&answer->side[side], CHOICE_CAMBER_BOLT), 2);
  /* Translators: what a plate is set to, and the angle of a camber bolt. */
  return g_strdup_printf (_ ("%s, bolt %s"), words, bolt);
}

static char *
setting_text (const ChoiceAnswer *answer, gboolean two_lines)
{
  g_autofree char *left = side_setting (answer, SIDE_LEFT);

  if (!two_lines)
    return g_steal_pointer (&left);

  g_autofree char *right = side_setting (answer, SIDE_RIGHT);
  return g_strconcat (left, "\n", right, NULL);
}

SwAnswerRow *
sw_answer_row_new (const Car *car,
                   const ChoiceAnswer *answer,
                   guint rank,
                   gboolean both_sides)
{
  SwAnswerRow *self = g_object_new (SW_TYPE_ANSWER_ROW, NULL);
  const gboolean two_lines = both_sides && !choice_is_alike (answer);

  self->rank = rank;
  self->verdict = choice_verdict (answer);
  self->verdict_words = choice_verdict_words (car, self->verdict);
  self->plate = g_strdup (answer->plate->name);
  self->is_swapped = answer->is_swapped;
  self->setting = setting_text (answer, two_lines);
  self->side = two_lines
                   ? g_strconcat (C_ ("side", "left"), "\n", C_ ("side", "right"), NULL)
                   : g_strdup (C_ ("side", "both"));
  self->sentence = choice_sentence (car, answer);
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++) {
    write_figure (self, answer, i, SIDE_LEFT);
    if (two_lines)
      write_figure (self, answer, i, SIDE_RIGHT);
  }
  return self;
}

guint
sw_answer_row_get_rank (SwAnswerRow *self)
{
  return self->rank;
}

ChoiceVerdict
sw_answer_row_get_verdict (SwAnswerRow *self)
{
  return self->verdict;
}

const char *
sw_answer_row_get_verdict_words (SwAnswerRow *self)
{
  return self->verdict_words;
}

const char *
sw_answer_row_get_plate (SwAnswerRow *self)
{
  return self->plate;
}

gboolean
sw_answer_row_is_swapped (SwAnswerRow *self)
{
  return self->is_swapped;
}

const char *
sw_answer_row_get_setting (SwAnswerRow *self)
{
  return self->setting;
}

const char *
sw_answer_row_get_side (SwAnswerRow *self)
{
  return self->side;
}

const char *
sw_answer_row_get_sentence (SwAnswerRow *self)
{
  return self->sentence;
}

const char *
sw_answer_row_get_number (SwAnswerRow *self, ChoiceNumber number, CarSide side)
{
  return self->figures[number][side].text;
}

const char *
sw_answer_row_get_hint (SwAnswerRow *self, ChoiceNumber number, CarSide side)
{
  return self->figures[number][side].hint;
}

gboolean
sw_answer_row_is_marked (SwAnswerRow *self, ChoiceNumber number, CarSide side)
{
  return self->figures[number][side].is_marked;
}
