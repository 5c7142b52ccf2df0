/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Three blocks: what to set and what comes of it in words; the alignment; what it costs.
 * The numbers of all plates stand below each other. */

#include "model/choice/choice-table-text.h"

#include "model/words/number-text.h"
#include "model/words/terminal-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MOST_NAME 22 /* columns, in the blocks of numbers */
#define GAP 2
#define INDENT 4
#define WIDTH 100 /* of the words */
#define AIM_MARK '*'
#define FAULT_MARK '!'

static const ChoiceNumber alignment[] = { CHOICE_CAMBER, CHOICE_CASTER,
                                          CHOICE_SAI,    CHOICE_SCRUB_RADIUS,
                                          CHOICE_TRAIL,  CHOICE_ROLL_CENTRE_HEIGHT,
                                          CHOICE_TOE_IN, CHOICE_COST };
static const ChoiceNumber costs[] = { CHOICE_TOE_BEFORE_RESET, CHOICE_TIE_ROD_CHANGE,
                                      CHOICE_TIE_ROD_TURNS,    CHOICE_BUMP_STEER,
                                      CHOICE_TYRE_CLEARANCE,   CHOICE_ROD_SIDE_FORCE,
                                      CHOICE_BEARING_TILT,     CHOICE_EDGE_MARGIN };
#define N_COLUMNS 8
G_STATIC_ASSERT (G_N_ELEMENTS (alignment) == N_COLUMNS);
G_STATIC_ASSERT (G_N_ELEMENTS (costs) == N_COLUMNS);

static const ChoiceAnswer *
answer_at (const ChoiceTable *table, guint rank)
{
  return &g_array_index (table->answers, ChoiceAnswer, rank);
}

static const char *
side_name (const ChoiceAnswer *answer, CarSide side)
{
  if (choice_is_alike (answer))
    return C_ ("side", "both");
  return side == SIDE_LEFT ? C_ ("side", "left") : C_ ("side", "right");
}

static CarSide
last_side (const ChoiceAnswer *answer)
{
  return choice_is_alike (answer) ? SIDE_LEFT : SIDE_RIGHT;
}

/* The number, and behind it its mark or a space. */
static char *
cell_text (const ChoicePlace *place, ChoiceNumber number)
{
  g_autofree char *digits = choice_number_text (place, number);
  const char mark = choice_number_is_past_limit (place, number) ? FAULT_MARK
                    : choice_number_misses_aim (place, number)  ? AIM_MARK
                                                                : ' ';

  return g_strdup_printf ("%s%c", digits, mark);
}

typedef struct {
  const ChoiceNumber *numbers;
  guint width[N_COLUMNS];
  guint name, side;
} Block;

/* "1  Long slot", cut where it is long. */
static char *
row_label (const ChoiceTable *table, guint rank)
{
  g_autofree char *name = terminal_line (answer_at (table, rank)->plate->name);
  g_autoptr (GString) label = g_string_new (NULL);

  g_string_printf (label, "%2u  ", rank + 1);
  if (text_columns (name) > MOST_NAME) {
    while (text_columns (name) > MOST_NAME - 1)
      *g_utf8_prev_char (name + strlen (name)) = '\0';
    g_string_append_printf (label, "%s…", name);
  } else {
    g_string_append (label, name);
  }
  return g_strdup (label->str);
}

static void
widen (guint *width, const char *text)
{
  *width = MAX (*width, text_columns (text));
}

static void
measure_row (const ChoiceTable *table, guint rank, Block *block)
{
  const ChoiceAnswer *answer = answer_at (table, rank);
  g_autofree char *label = row_label (table, rank);

  widen (&block->name, label);
  for (CarSide side = SIDE_LEFT; side <= last_side (answer); side++) {
    widen (&block->side, side_name (answer, side));
    for (guint i = 0; i < N_COLUMNS; i++) {
      g_autofree char *cell = cell_text (&answer->side[side], block->numbers[i]);
      widen (&block->width[i], cell);
    }
  }
}

static Block
measure (const ChoiceTable *table, const ChoiceNumber *numbers)
{
  Block block = { .numbers = numbers };

  for (guint i = 0; i < N_COLUMNS; i++) {
    const ChoiceNumberInfo info = choice_number_info (numbers[i]);

    /* a column of marks behind the figures */
    block.width[i] = MAX (text_columns (info.head), text_columns (info.unit)) + 1;
  }
  for (guint rank = 0; rank < table->answers->len; rank++)
    measure_row (table, rank, &block);
  return block;
}

static void
end_line (GString *text)
{
  while (text->len > 0 && text->str[text->len - 1] == ' ')
    g_string_truncate (text, text->len - 1);
  g_string_append_c (text, '\n');
}

static void
write_head (const Block *block, GString *text)
{
  for (int line = 0; line < 2; line++) {
    terminal_pad (text, "", block->name + GAP + block->side, TERMINAL_LEFT);
    for (guint i = 0; i < N_COLUMNS; i++) {
      const ChoiceNumberInfo info = choice_number_info (block->numbers[i]);

      terminal_pad (text, "", GAP - 1, TERMINAL_LEFT);
      terminal_pad (text, line == 0 ? info.head : info.unit, block->width[i] - 1,
                    TERMINAL_RIGHT);
      g_string_append_c (text, ' ');
    }
    end_line (text);
  }
}

static void
write_rows (const ChoiceTable *table, guint rank, const Block *block, GString *text)
{
  const ChoiceAnswer *answer = answer_at (table, rank);
  g_autofree char *label = row_label (table, rank);

  for (CarSide side = SIDE_LEFT; side <= last_side (answer); side++) {
    terminal_pad (text, side == SIDE_LEFT ? label : "", block->name + GAP, TERMINAL_LEFT);
    terminal_pad (text, side_name (answer, side), block->side, TERMINAL_LEFT);
    for (guint i = 0; i < N_COLUMNS; i++) {
      g_autofree char *cell = cell_text (&answer->side[side], block->numbers[i]);

      terminal_pad (text, "", GAP - 1, TERMINAL_LEFT);
      terminal_pad (text, cell, block->width[i], TERMINAL_RIGHT);
    }
    end_line (text);
  }
}

static void
write_block (const ChoiceTable *table,
             const char *title,
             const ChoiceNumber *numbers,
             GString *text)
{
  const Block block = measure (table, numbers);

  g_string_append_printf (text, "\n%s\n", title);
  write_head (&block, text);
  for (guint rank = 0; rank < table->answers->len; rank++)
    write_rows (table, rank, &block, text);
}

/* "left: hole 3", with the camber bolt where there is one. */
static void
write_setting (const ChoiceAnswer *answer, CarSide side, GString *text)
{
  const ChoicePlace *place = &answer->side[side];
  g_autofree char *setting = plate_describe_setting (answer->plate, place->setting);
  g_autofree char *words = g_strdup_printf ("%s: %s", side_name (answer, side), setting);
  g_autofree char *bolt = choice_number_text (place, CHOICE_CAMBER_BOLT);
  g_autofree char *bolt_words = g_strdup_printf (_ ("camber bolt %s°"), bolt);
  g_autofree char *both = g_strdup_printf ("%s; %s", words, bolt_words);

  terminal_paragraph (text, place->camber_bolt != 0.0 ? both : words, INDENT, WIDTH);
}

static void
write_cross (const ChoiceTable *table, const ChoiceAnswer *answer, GString *text)
{
  const CarLimits *limits = &table->car->limits;
  g_autofree char *camber = number_text (answer->cross_camber * 180.0 / G_PI, 2);
  g_autofree char *caster = number_text (answer->cross_caster * 180.0 / G_PI, 2);
  g_autofree char *most_camber = number_text (limits->cross_camber_deg, 2);
  g_autofree char *most_caster = number_text (limits->cross_caster_deg, 2);
  g_autofree char *words = g_strdup_printf (
      _ ("Left less right: camber %s° (at most %s°), caster %s° (at most %s°)."), camber,
      most_camber, caster, most_caster);
  g_autofree char *marked =
      g_strconcat (words, answer->is_within_cross ? "" : " !", NULL);

  terminal_paragraph (text, marked, INDENT, WIDTH);
}

static void
write_answer (const ChoiceTable *table, guint rank, GString *text)
{
  const ChoiceAnswer *answer = answer_at (table, rank);
  g_autofree char *name = terminal_line (answer->plate->name);
  g_autofree char *sentence = choice_sentence (table->car, answer);

  g_string_append_printf (text, "%2u %s  %s\n", rank + 1,
                          choice_verdict_sign (choice_verdict (answer)), name);
  for (CarSide side = SIDE_LEFT; side <= last_side (answer); side++)
    write_setting (answer, side, text);
  terminal_paragraph (text, sentence, INDENT, WIDTH);
  if (!choice_is_alike (answer))
    write_cross (table, answer, text);
}

static void
append_target (const CarTarget *target, GString *text)
{
  g_autofree char *range = choice_target_text (target);

  g_string_append_printf (text, "%s %s", aim_info (target->aim).name, range);
  if (target->weight != 1.0) {
    g_autofree char *weight = plain_number_text (target->weight);

    g_string_append_c (text, ' ');
    g_string_append_printf (text, _ ("(weight %s)"), weight);
  }
}

static void
write_targets (const ChoiceTable *table, GString *text)
{
  const GArray *targets = table->car->targets;
  g_autoptr (GString) words = g_string_new (_ ("Aimed for:"));

  for (guint i = 0; i < targets->len; i++) {
    g_string_append (words, i > 0 ? "; " : " ");
    append_target (&g_array_index (targets, CarTarget, i), words);
  }
  terminal_paragraph (text, words->str, 0, WIDTH);
  g_string_append_c (text, '\n');
}

static void
write_title (const ChoiceTable *table, GString *text)
{
  g_autofree char *car = terminal_line (table->car->name);
  g_autofree char *setup =
      terminal_line (car_setup (table->car, table->question.setup)->name);
  g_autofree char *words =
      g_strdup_printf (_ ("Upper mounts for %s, setup “%s”."), car, setup);

  terminal_paragraph (text, words, 0, WIDTH);
}

static char *
costs_title (const ChoiceTable *table)
{
  g_autofree char *travel = plain_number_text (table->car->limits.travel_used_mm);

  return g_strdup_printf (table->question.carrier == CARRIED_BY_COIL
                              ? _ ("What it costs, over %s mm of travel either way, with "
                                   "a coil on the strut:")
                              : _ ("What it costs, over %s mm of travel either way, with "
                                   "a torsion bar:"),
                          travel);
}

static void
write_key (const ChoiceTable *table, GString *text)
{
  g_autoptr (GString) signs = g_string_new (NULL);

  for (ChoiceVerdict verdict = N_CHOICE_VERDICTS; verdict-- > 0;)
    g_string_append_printf (signs, "%s %s%s", choice_verdict_sign (verdict),
                            choice_verdict_words (table->car, verdict),
                            verdict > 0 ? "; " : ".");
  g_string_append_c (text, '\n');
  terminal_paragraph (text, signs->str, 0, WIDTH);
  g_string_append_printf (
      text, "%s\n",
      _ ("* outside the range aimed for; ! past a limit; – not given by car or plate.\n"
         "Toe unreset: with the tie rod as it was; a change of toe is that less the baseline's.\n"
         "Forces are estimates for comparison."));
  g_string_append_printf (
      text, "%s\n",
      _ ("Off aim: 0 where every aim is met, and more the further off; it has no unit and "
         "only ranks."));
}

void
choice_table_write_text (const ChoiceTable *table, GString *text)
{
  g_autofree char *title = costs_title (table);

  write_title (table, text);
  write_targets (table, text);
  for (guint rank = 0; rank < table->answers->len; rank++)
    write_answer (table, rank, text);
  write_block (table, _ ("Alignment at the standing height:"), alignment, text);
  write_block (table, title, costs, text);
  write_key (table, text);
}
