/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers that answer, where the setup stands by its springs: the reference's beside
 * those of the setup in hand. */

#include "drawing/springs/springs-chart.h"
#include "drawing/springs/springs-words.h"
#include "model/spring/spring-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Text sizes. */
#define ROW 1.6
#define LEAST_BLOCK 25.0
#define LEAST_ALONE 21.0 /* without a reference */
#define MOST_BLOCK 46.0
#define GAP 2.0 /* between blocks */
#define FIGURES 4.4
#define MOST_FIGURES 10.0
#define NAME 15.0
#define UNIT 3.9
#define BESIDE_NAME 3.4
#define MOST_BLOCKS 3
#define MOST_SHARE 0.45 /* of the room, for fewer and higher blocks */
#define LEAST_ROWS 2    /* fewer are none */
#define MOST_ROWS 16

static const char *const keys[] = {
  "standing_travel_mm",
  "wheel_rate_n_per_mm",
  "ride_frequency_hz",
  "ride_frequency_rigid_tyre_hz",
  "static_deflection_mm",
  "damping_ratio_bump",
  "damping_ratio_rebound",
  "roll_stiffness_nm_per_deg",
  "roll_stiffness_bar_nm_per_deg",
  "spring_mass_kg",
  "spring_unsprung_kg",
};

typedef struct {
  guint figures[MOST_ROWS]; /* of spring_figure () */
  unsigned n_rows, n_blocks, n_in_block;
  double width, row; /* of a block, pixels */
} NumbersLayout;

typedef struct {
  double name, reference, hand, unit; /* figures by their right edge, from the left */
  double figures;
} Columns;

static bool
has_key (const SpringCorner *corner, const char *key)
{
  const CarSprings *springs = corner->springs;

  if (g_str_has_prefix (key, "damping_"))
    return springs->damper.table.n > 0;
  return !g_str_has_prefix (key, "roll_stiffness_bar") || springs->anti_roll_bar.is_there;
}

/* A row for which neither setup has a part is left out. */
static bool
is_asked_for (const SpringStudy *springs, const char *key)
{
  const SpringCorner *reference = springs_reference (springs);

  return g_strv_contains (keys, key) && (has_key (spring_study_in_hand (springs), key) ||
                                         (reference != NULL && has_key (reference, key)));
}

static Columns
columns_of (const SpringsWords *words, double width)
{
  const double em = words->view->theme.text;
  const bool has_reference = springs_reference (words->view->springs) != NULL;
  const double unit = width - UNIT * em;
  const double figures = CLAMP ((unit - NAME * em) / (has_reference ? 2.0 : 1.0),
                                FIGURES * em, MOST_FIGURES * em);

  return (Columns){ .name = 0.0,
                    .reference = has_reference ? unit - 0.6 * em - figures : 0.0,
                    .hand = unit - 0.6 * em,
                    .unit = unit,
                    .figures = figures };
}

/* The smaller type where the name has no room in the larger. */
static TextStyle
name_style (const SpringsWords *words, const char *name, double room)
{
  const Theme *t = &words->view->theme;
  const TextStyle whole = { t->font, t->text, TEXT_PLAIN };

  return text_measure (words->texts, whole, name).width <= room
             ? whole
             : (TextStyle){ t->font, t->small_text, TEXT_PLAIN };
}

static double
name_room (const SpringsWords *words, const Columns *c)
{
  const bool has_reference = springs_reference (words->view->springs) != NULL;

  return (has_reference ? c->reference : c->hand) - c->name -
         BESIDE_NAME * words->view->theme.text;
}

static double
block_width (const SpringsWords *words, double width, unsigned n_blocks)
{
  const double em = words->view->theme.text;

  return fmin ((width - (n_blocks - 1) * GAP * em) / n_blocks, MOST_BLOCK * em);
}

static bool
cuts_a_name (const SpringsWords *words, const NumbersLayout *l, double width)
{
  const Columns c = columns_of (words, width);
  const double room = name_room (words, &c);
  const SpringCorner *hand = spring_study_in_hand (words->view->springs);

  for (unsigned i = 0; i < l->n_rows; i++) {
    const char *name = spring_figure (hand, l->figures[i]).name;

    if (text_measure (words->texts, name_style (words, name, room), name).width > room)
      return true;
  }
  return false;
}

static unsigned
rows_in_each (const NumbersLayout *l, unsigned n_blocks)
{
  return (l->n_rows + n_blocks - 1) / n_blocks;
}

/* As many as fit across; fewer where that leaves names whole and charts enough room. */
static unsigned
count_blocks (const SpringsWords *words,
              const NumbersLayout *l,
              double width,
              double high)
{
  const double em = words->view->theme.text;
  const double least =
      springs_reference (words->view->springs) != NULL ? LEAST_BLOCK : LEAST_ALONE;
  const double fit = floor ((width + GAP * em) / ((least + GAP) * em));
  unsigned n = (unsigned) CLAMP (fit, 1.0, MOST_BLOCKS);

  while (n > 1 && cuts_a_name (words, l, block_width (words, width, n)) &&
         (rows_in_each (l, n - 1) + 1) * l->row <= high + 1e-6)
    n--;
  return n;
}

/* As high as @room at most, and as @high where fewer blocks leave names whole. */
static NumbersLayout
lay_out (const SpringsWords *words, double width, double room, double high)
{
  const SpringStudy *springs = words->view->springs;
  NumbersLayout l = { .row = round (ROW * words->view->theme.text) };

  for (guint i = 0; i < spring_figures_count () && l.n_rows < MOST_ROWS; i++)
    if (is_asked_for (springs, spring_figure (spring_study_in_hand (springs), i).key))
      l.figures[l.n_rows++] = i;
  l.n_blocks = count_blocks (words, &l, width, high);
  l.n_in_block = rows_in_each (&l, l.n_blocks);
  l.n_in_block = MIN (l.n_in_block, (unsigned) fmax (floor (room / l.row + 1e-6) - 1, 0));
  l.n_rows = MIN (l.n_rows, l.n_blocks * l.n_in_block);
  l.width = block_width (words, width, l.n_blocks);
  return l;
}

double
spring_numbers_height (const SpringsWords *words, double width, double room)
{
  const NumbersLayout l = lay_out (words, width, room, MOST_SHARE * room);

  return l.n_in_block < LEAST_ROWS ? 0.0 : (l.n_in_block + 1) * l.row;
}

static void
put (const SpringsWords *words,
     TextWeight weight,
     double size,
     Colour colour,
     const char *text,
     double x,
     double y,
     double anchor)
{
  theme_use (words->cr, colour);
  text_draw (words->texts, words->cr,
             (TextStyle){ words->view->theme.font, size, weight }, text, x, y,
             (TextAnchor){ anchor, 0.5 });
}

/* From @x, or to it where it is @at_right; ends in "…" where @room is not enough. */
static void
put_within (const SpringsWords *words,
            TextStyle style,
            Colour colour,
            const char *text,
            double x,
            double y,
            double room,
            bool at_right)
{
  const TextSize size = text_measure (words->texts, style, text);

  if (room < 2.0 * style.size)
    return;
  theme_use (words->cr, colour);
  text_draw_within (words->texts, words->cr, style, text,
                    at_right ? x - fmin (size.width, room) : x,
                    y - size.height / 2.0 + size.baseline, room);
}

static void
draw_head (const SpringsWords *words, double x, double y, const Columns *c)
{
  const Theme *t = &words->view->theme;
  const Study *study = words->view->springs->study;
  const SpringCorner *reference = springs_reference (words->view->springs);
  const TextStyle bold = { t->font, t->small_text, TEXT_BOLD },
                  plain = { t->font, t->small_text, TEXT_PLAIN };
  const double gap = 0.8 * t->text;
  const char *name = study_in_hand (study)->name;
  const double wide = text_measure (words->texts, bold, name).width;
  double right = c->hand, room = c->hand - c->name;

  if (reference != NULL) {
    /* over the units too where it needs them */
    right = fmin (fmax (c->hand, c->reference + gap + wide), c->unit + UNIT * t->text);
    room = right - c->reference - gap + 1.0;
    put_within (words, plain, theme_setup_style (t, study->baseline).colour,
                reference->corner->name, x + c->reference, y, c->reference - c->name,
                true);
  }
  put_within (words, bold, theme_hand_style (t, study->in_hand).colour, name, x + right,
              y, room, true);
}

static void
format_figure (const SpringCorner *corner, guint index, char *text, gsize size)
{
  const SpringFigure figure = spring_figure (corner, index);
  const bool is_signed = g_str_equal (figure.key, "standing_travel_mm");

  /* a mass of nothing: its sizes are not given */
  const bool is_unknown =
      g_str_has_prefix (figure.key, "spring_") && !(corner->spring_kg > 0.0);

  unit_format (unit_kind_of (figure.unit), is_unknown ? (double) NAN : figure.value,
               figure.decimals, is_signed, text, size);
}

static const char *
figure_caption (const SpringFigure *figure)
{
  const UnitKind kind = unit_kind_of (figure->unit);

  return kind == UNIT_NONE ? figure->unit : unit_caption (kind);
}

static void
draw_row (const SpringsWords *words, guint index, double x, double y, const Columns *c)
{
  const Theme *t = &words->view->theme;
  const SpringStudy *springs = words->view->springs;
  const SpringCorner *reference = springs_reference (springs);
  const SpringFigure figure = spring_figure (spring_study_in_hand (springs), index);
  const double room = name_room (words, c);
  char text[48];

  put_within (words, name_style (words, figure.name, room), t->ink, figure.name,
              x + c->name, y, room, false);
  if (reference != NULL) {
    format_figure (reference, index, text, sizeof text);
    put (words, TEXT_PLAIN, t->text,
         theme_setup_style (t, springs->study->baseline).colour, text, x + c->reference,
         y, 1.0);
  }
  format_figure (spring_study_in_hand (springs), index, text, sizeof text);
  put (words, TEXT_BOLD, t->text, theme_hand_style (t, springs->study->in_hand).colour,
       text, x + c->hand, y, 1.0);
  put (words, TEXT_PLAIN, t->small_text, t->soft_ink, figure_caption (&figure),
       x + c->unit, y, 0.0);
}

static void
draw_rule (const SpringsWords *words, double x, double y, double width)
{
  theme_use (words->cr, words->view->theme.faint);
  cairo_rectangle (words->cr, x, floor (y), width, 1.0);
  cairo_fill (words->cr);
}

void
spring_numbers_draw (const SpringsWords *words, Frame frame)
{
  const NumbersLayout l = lay_out (words, frame.width, frame.height, frame.height);
  const Columns c = columns_of (words, l.width);
  const double gap = GAP * words->view->theme.text;

  for (unsigned i = 0; i < l.n_rows; i++) {
    const double x = frame.x + (i / l.n_in_block) * (l.width + gap);
    const double y = frame.y + l.row * (1 + i % l.n_in_block);

    if (i % l.n_in_block == 0)
      draw_head (words, x, frame.y + l.row / 2.0, &c);
    draw_rule (words, x, y, l.width);
    draw_row (words, l.figures[i], x, y + l.row / 2.0, &c);
  }
}
