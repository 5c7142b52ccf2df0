/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page is one column of blocks. All but the plate's drawing take the height that they
 * need; the drawing has what is left, and where that is too little the type is made
 * smaller. */

#include "drawing/card/fitting-card.h"

#include "drawing/card/fitting-card-facts.h"
#include "drawing/card/fitting-card-pen.h"
#include "drawing/card/fitting-card-plan.h"
#include "drawing/card/fitting-card-tables.h"
#include "drawing/chart/title-block.h"
#include "drawing/export/export-file.h"
#include "model/study/setup-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN 34.0      /* points: more than printers leave white */
#define COLUMN_GAP 16.0  /* points */
#define BLOCK_GAP 7.0    /* points */
#define LEAST_PLAN 120.0 /* points of height */
#define GOOD_SCALE 2     /* 1 : 2, or larger */
#define N_GOOD_SIZES 3   /* of type, that a good scale is worth */
#define TYPE 0.70        /* of the theme's, which is for windows */

typedef struct {
  FittingPen pen;
  FittingFacts facts;
  double x, y, width; /* y: the top of the next block */
} Page;

static void
skip (Page *page, double height)
{
  page->y += height;
}

static double
line_of (const Page *page, FittingStyle style)
{
  return fitting_line_height (&page->pen, style);
}

static void
write_line (Page *page, FittingStyle style, const char *text)
{
  const double line = line_of (page, style);

  fitting_write (&page->pen, style, text, page->x, page->y + 0.78 * line, page->width,
                 FITTING_LEFT);
  skip (page, line);
}

static void
write_paragraph (Page *page, FittingStyle style, const char *text)
{
  skip (page, fitting_paragraph (&page->pen, style, text, page->x, page->y, page->width));
}

static void
draw_head (Page *page)
{
  const FittingCard *card = page->facts.card;
  const FittingPen *pen = &page->pen;
  const double line = line_of (page, FITTING_LARGE), date = 0.3 * page->width;
  g_autofree char *words = fitting_setup_words (card->setup);
  g_autofree char *set_up = g_strdup_printf (_ ("Set up: %s"), words);

  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_LARGE, _ ("Fitting card"), page->x, page->y + 0.75 * line,
                 page->width - date - COLUMN_GAP, FITTING_LEFT);
  if (card->date != NULL)
    fitting_write (pen, FITTING_TEXT, card->date, page->x + page->width - date,
                   page->y + 0.75 * line, date, FITTING_RIGHT);
  skip (page, line);
  write_line (page, FITTING_HEADING, card->car->name);
  fitting_ink (pen, pen->theme.soft_ink);
  if (fitting_is_setup_itself (card))
    write_line (page, FITTING_TEXT, setup_title (card->setup));
  write_paragraph (page, FITTING_TEXT, set_up);
  skip (page, 3.0);
  fitting_ink (pen, pen->theme.ink);
  fitting_rule (pen, page->x, page->y, page->width, pen->theme.line);
  skip (page, BLOCK_GAP);
}

static void
draw_verdict (Page *page)
{
  const FittingCard *card = page->facts.card;
  const FittingPen *pen = &page->pen;
  g_autofree char *sentence = choice_sentence (card->car, card->answer);

  if (card->answer->fits) {
    fitting_ink (pen, pen->theme.soft_ink);
  } else {
    fitting_ink (pen, pen->theme.warning);
    write_line (page, FITTING_HEADING, _ ("Do not fit this plate as it stands"));
  }
  write_paragraph (page, FITTING_TEXT, sentence);
}

static void
draw_plate (Page *page)
{
  const ChoiceAnswer *answer = page->facts.card->answer;
  const FittingPen *pen = &page->pen;
  g_autofree char *words = fitting_plate_words (answer->plate);
  g_autofree char *name = g_strdup_printf (_ ("Plate: %s"), answer->plate->name);

  fitting_ink (pen, pen->theme.ink);
  write_line (page, FITTING_HEADING, name);
  fitting_ink (pen, pen->theme.soft_ink);
  write_line (page, FITTING_TEXT, words);
  draw_verdict (page);
  if (answer->is_swapped) {
    fitting_ink (pen, pen->theme.warning);
    write_paragraph (
        page, FITTING_TEXT_BOLD,
        _ ("Left and right plates swapped: the plate made for the right side "
           "goes on the left, and the left one on the right."));
  }
  skip (page, BLOCK_GAP);
}

static double
column_width (const Page *page)
{
  return (page->width - COLUMN_GAP) / 2.0;
}

static double
column_left (const Page *page, CarSide side)
{
  return page->x + (side == FITTING_FIRST ? 0.0 : column_width (page) + COLUMN_GAP);
}

static void
write_in_column (const Page *page, CarSide side, FittingStyle style, const char *text)
{
  fitting_write (&page->pen, style, text, column_left (page, side),
                 page->y + 0.78 * line_of (page, style), column_width (page),
                 FITTING_LEFT);
}

static void
draw_side_head (const Page *page, CarSide side)
{
  const FittingPen *pen = &page->pen;
  const char *name = fitting_side_name (side);
  const double line = line_of (page, FITTING_HEADING), left = column_left (page, side);
  const double wide = fitting_text_width (pen, FITTING_HEADING, name) + COLUMN_GAP / 2.0;

  fitting_ink (pen, pen->theme.ink);
  write_in_column (page, side, FITTING_HEADING, name);
  if (page->facts.is_alike && side == FITTING_SECOND) {
    fitting_ink (pen, pen->theme.soft_ink);
    fitting_write (pen, FITTING_TEXT, _ ("both sides alike"), left + wide,
                   page->y + 0.78 * line, column_width (page) - wide, FITTING_LEFT);
  }
  fitting_ink (pen, pen->theme.ink);
  fitting_rule (pen, left, page->y + line, column_width (page), pen->theme.thin);
}

static void
draw_setting (const Page *page, CarSide side)
{
  g_autofree char *setting = fitting_setting_words (&page->facts, side);

  fitting_ink (&page->pen, page->pen.theme.accent);
  write_in_column (page, side, FITTING_LARGE, setting);
}

static gboolean
has_bolt (const Page *page)
{
  return fitting_now (&page->facts, SIDE_LEFT)->camber_bolt != 0.0 ||
         fitting_now (&page->facts, SIDE_RIGHT)->camber_bolt != 0.0;
}

/* Wrapped in each column; the block is as high as the longer one. */
static void
write_in_columns (Page *page, FittingStyle style, char *const words[2])
{
  double height = 0.0;

  fitting_ink (&page->pen, page->pen.theme.ink);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    height = fmax (height, fitting_paragraph (&page->pen, style, words[side],
                                              column_left (page, side), page->y,
                                              column_width (page)));
  skip (page, height);
}

static void
draw_places (Page *page)
{
  g_autofree char *left = fitting_place_words (fitting_now (&page->facts, SIDE_LEFT));
  g_autofree char *right = fitting_place_words (fitting_now (&page->facts, SIDE_RIGHT));

  write_in_columns (page, FITTING_TEXT, (char *const[]){ left, right });
}

static void
draw_bolts (Page *page)
{
  g_autofree char *left = fitting_bolt_words (fitting_now (&page->facts, SIDE_LEFT));
  g_autofree char *right = fitting_bolt_words (fitting_now (&page->facts, SIDE_RIGHT));

  if (has_bolt (page))
    write_in_columns (page, FITTING_TEXT_BOLD, (char *const[]){ left, right });
}

static void
draw_ticks (const Page *page, CarSide side)
{
  const char *const words[] = { _ ("set and marked"), _ ("tightened as its maker says") };
  const FittingPen *pen = &page->pen;
  const double box = fitting_tick_size (pen) + 4.0,
               baseline = page->y + 0.8 * 1.3 * line_of (page, FITTING_SMALL);
  double x = column_left (page, side);

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++) {
    const double share = (i == 0 ? 0.38 : 0.62) * column_width (page);

    fitting_tick_box (pen, x, baseline);
    fitting_ink (pen, pen->theme.soft_ink);
    fitting_write (pen, FITTING_SMALL, words[i], x + box, baseline, share - box - 4.0,
                   FITTING_LEFT);
    x += share;
  }
}

static void
draw_columns (Page *page, double height, void (*draw) (const Page *page, CarSide side))
{
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    draw (page, side);
  skip (page, height);
}

static void
draw_settings (Page *page)
{
  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  write_line (page, FITTING_SMALL,
              _ ("As you stand before the car and look at it: its right side is on your "
                 "left."));
  skip (page, 2.0);
  draw_columns (page, line_of (page, FITTING_HEADING) + 2.0, draw_side_head);
  draw_columns (page, line_of (page, FITTING_LARGE), draw_setting);
  draw_places (page);
  draw_bolts (page);
  draw_columns (page, 1.6 * line_of (page, FITTING_SMALL), draw_ticks);
}

static int
draw_plans (Page *page, double height)
{
  const FittingCard *card = page->facts.card;
  const FittingBox box = { 0.0, 0.0, column_width (page), height };
  const int scale = fitting_plan_scale (&page->pen, card->car, card->answer, box);

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const FittingBox at = { column_left (page, side), page->y, box.width, height };

    fitting_plan_draw (&page->pen, card->car, card->answer, side, scale, at);
  }
  skip (page, height);
  return scale;
}

/* What to check the printer by, and what the drawings are. */
static void
draw_check (Page *page, int scale)
{
  const FittingPen *pen = &page->pen;
  const double left = page->x + fitting_check_bar_length () + COLUMN_GAP;
  g_autofree char *text = g_strdup_printf (
      _ ("This bar must measure 50 mm on paper. The drawings are 1 : %d, seen from above. "
         "Dashed cross: where the bearing was; dot: where it goes."),
      scale);

  fitting_ink (pen, pen->theme.soft_ink);
  const double height = fitting_paragraph (pen, FITTING_SMALL, text, left, page->y,
                                           page->x + page->width - left);
  fitting_check_bar (pen, page->x, page->y + height / 2.0);
  skip (page, fmax (height, 10.0) + BLOCK_GAP);
}

static void
draw_tables (Page *page)
{
  const FittingPen *pen = &page->pen;

  skip (page, fitting_alignment_table (pen, &page->facts, page->x, page->y, page->width));
  skip (page, BLOCK_GAP);
  skip (page, fitting_cost_table (pen, &page->facts, page->x, page->y, page->width));
  skip (page, BLOCK_GAP);
}

static void
draw_cautions (Page *page)
{
  g_autofree char *text = g_strdup_printf ("%s %s", caution_text (), fitting_caution ());

  fitting_ink (&page->pen, page->pen.theme.ink);
  write_paragraph (page, FITTING_SMALL, text);
  skip (page, BLOCK_GAP);
}

/* Who did it, and when. */
static void
draw_signatures (Page *page)
{
  const char *const words[] = { _ ("Fitted by"), _ ("Measured by"), _ ("Date") };
  const FittingPen *pen = &page->pen;
  const double line = 1.4 * line_of (page, FITTING_TEXT), share = page->width / 3.0;

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++) {
    const double x = page->x + (double) i * share, baseline = page->y + 0.75 * line;

    fitting_ink (pen, pen->theme.soft_ink);
    const double wide = fitting_write (pen, FITTING_SMALL, words[i], x, baseline,
                                       0.45 * share, FITTING_LEFT);
    fitting_blank (pen, x + wide + 4.0, baseline, share - wide - 4.0 - COLUMN_GAP / 2.0);
  }
  skip (page, line);
}

/* With the plate's drawing @plan high. */
static void
draw_blocks (Page *page, double plan)
{
  draw_head (page);
  draw_plate (page);
  draw_settings (page);
  draw_check (page, draw_plans (page, plan));
  draw_tables (page);
  draw_cautions (page);
  draw_signatures (page);
}

static void
set_type (Page *page, double height, double size)
{
  const double factor = fmin ((page->width + 2.0 * MARGIN) / PAPER_A4_WIDTH,
                              (height + 2.0 * MARGIN) / PAPER_A4_HEIGHT);

  page->pen.theme = theme_scaled (theme_paper (), TYPE * size * factor);
}

/* What is left for the plate's drawing. */
static double
measure_plan (const Page *page, double height)
{
  Page measured = *page;

  measured.pen.cr = NULL;
  draw_blocks (&measured, 0.0);
  return page->y + height - measured.y;
}

static gboolean
has_good_plan (const Page *page, double plan)
{
  const FittingCard *card = page->facts.card;

  return plan >= LEAST_PLAN &&
         fitting_plan_scale (&page->pen, card->car, card->answer,
                             (FittingBox){ 0.0, 0.0, column_width (page), plan }) <=
             GOOD_SCALE;
}

/* The largest type that leaves room for a drawing to a good scale, or for one at all.
 * Returns the height of the drawing. */
static double
fit_type (Page *page, double height)
{
  static const double sizes[] = { 1.0, 0.95, 0.9, 0.85, 0.8 };

  for (gsize i = 0; i < N_GOOD_SIZES; i++) {
    set_type (page, height, sizes[i]);
    const double plan = measure_plan (page, height);
    if (has_good_plan (page, plan))
      return plan;
  }
  for (gsize i = 0;; i++) {
    set_type (page, height, sizes[i]);
    const double plan = measure_plan (page, height);
    if (plan >= LEAST_PLAN || i + 1 == G_N_ELEMENTS (sizes))
      return plan;
  }
}

void
fitting_card_draw (
    TextCache *texts, cairo_t *cr, const FittingCard *card, double width, double height)
{
  Page page = { .pen = { .texts = texts, .cr = cr },
                .facts = fitting_facts (card),
                .x = MARGIN,
                .y = MARGIN,
                .width = width - 2.0 * MARGIN };
  const double plan = fit_type (&page, height - 2.0 * MARGIN);

  theme_use (cr, page.pen.theme.ground);
  cairo_paint (cr);
  draw_blocks (&page, plan);
}

static void
draw_page (cairo_t *cr, gconstpointer view, double width, double height)
{
  g_autoptr (TextCache) texts = text_cache_new ();

  fitting_card_draw (texts, cr, view, width, height);
}

gboolean
fitting_card_write (const FittingCard *card, const char *path, GError **error)
{
  return export_file_write_page (draw_page, card, PAPER_A4_WIDTH, PAPER_A4_HEIGHT, path,
                                 error);
}
