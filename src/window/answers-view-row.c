/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/answers-view-row.h"

#include "model/number-text.h"
#include "model/quantity-info.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _SwAnswerRow {
  GObject parent_instance;

  guint rank;
  ChoiceVerdict verdict;
  const char *verdict_words;
  gboolean is_swapped;
  char *plate, *setting, *side, *sentence;
  char *numbers[N_CHOICE_NUMBERS], *hints[N_CHOICE_NUMBERS];
  gboolean is_marked[N_CHOICE_NUMBERS];
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
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++) {
    g_free (self->numbers[i]);
    g_free (self->hints[i]);
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
  /* Translators: turns of the tie rod. */
  return g_strdup_printf (turns > 0.0 ? _ ("%s out") : _ ("%s in"), number);
}

/* "−1.93", "0.48 in". */
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

static void
write_number (SwAnswerRow *self,
              const ChoiceAnswer *answer,
              ChoiceNumber number,
              gboolean two_lines)
{
  g_autofree char *left = marked_text (&answer->side[SIDE_LEFT], number);

  self->is_marked[number] = is_marked (&answer->side[SIDE_LEFT], number);
  if (two_lines) {
    g_autofree char *right = marked_text (&answer->side[SIDE_RIGHT], number);

    self->numbers[number] = g_strconcat (left, "\n", right, NULL);
    self->is_marked[number] |= is_marked (&answer->side[SIDE_RIGHT], number);
  } else {
    self->numbers[number] = g_steal_pointer (&left);
  }
}

/* Of both sides, once where they agree. */
static void
add_sign_words (GPtrArray *parts, const ChoiceAnswer *answer, ChoiceNumber number)
{
  Quantity quantity;
  const char *left, *right;

  if (!quantity_from_key (choice_number_info (number).key, &quantity))
    return;
  left = quantity_sign_words (quantity, answer->side[SIDE_LEFT].value[quantity]);
  right = quantity_sign_words (quantity, answer->side[SIDE_RIGHT].value[quantity]);
  if (left[0] != '\0')
    g_ptr_array_add (parts, (gpointer) left);
  if (right[0] != '\0' && !g_str_equal (left, right))
    g_ptr_array_add (parts, (gpointer) right);
}

static char *
hint_text (const ChoiceAnswer *answer, ChoiceNumber number)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new ();

  add_sign_words (parts, answer, number);
  if (choice_number_misses_aim (&answer->side[SIDE_LEFT], number) ||
      choice_number_misses_aim (&answer->side[SIDE_RIGHT], number))
    g_ptr_array_add (parts, _ ("outside what is aimed for"));
  if (choice_number_is_past_limit (&answer->side[SIDE_LEFT], number) ||
      choice_number_is_past_limit (&answer->side[SIDE_RIGHT], number))
    g_ptr_array_add (parts, _ ("past the limit"));
  g_ptr_array_add (parts, NULL);
  return parts->len > 1 ? g_strjoinv (", ", (char **) parts->pdata) : NULL;
}

/* "hole 3, bolt −0.46°"; that plates are swapped stands by the name. */
static char *
side_setting (const ChoiceAnswer *answer, CarSide side)
{
  g_autofree char *words =
      plate_describe_dials (answer->plate, answer->side[side].setting);

  if (!answer->has_bolt)
    return g_steal_pointer (&words);

  g_autofree char *bolt = choice_number_text (&answer->side[side], CHOICE_CAMBER_BOLT);
  /* Translators: what a plate is set to, and the degrees of a camber bolt. */
  return g_strdup_printf (_ ("%s, bolt %s°"), words, bolt);
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
    write_number (self, answer, i, two_lines);
    self->hints[i] = hint_text (answer, i);
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
sw_answer_row_get_number (SwAnswerRow *self, ChoiceNumber number)
{
  return self->numbers[number];
}

const char *
sw_answer_row_get_hint (SwAnswerRow *self, ChoiceNumber number)
{
  return self->hints[number];
}

gboolean
sw_answer_row_is_marked (SwAnswerRow *self, ChoiceNumber number)
{
  return self->is_marked[number];
}
