/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/card-window-page.h"

#include <glib/gi18n-lib.h>

static char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}

static gboolean
find_answer (SwChooser *chooser, const Car *car, ChoiceAnswer *answer)
{
  const ChoiceQuestion question = sw_chooser_get_question (chooser);
  const CarSetup *setup = car_setup (car, question.setup);
  const Plate *plate = sw_chooser_get_plate (chooser);
  const int found = sw_chooser_find_answer (chooser);

  if (plate == NULL)
    return FALSE;
  if (g_strcmp0 (setup->plate, plate->name) == 0 &&
      !setup->is_plate_swapped == !sw_chooser_is_swapped (chooser)) {
    *answer = choice_of_setup (car, &question, plate);
    return TRUE;
  }
  if (found < 0)
    return FALSE;
  *answer = g_array_index (sw_chooser_peek_answers (chooser), ChoiceAnswer, found);
  return TRUE;
}

CardPage *
card_page_new (SwChooser *chooser)
{
  const Car *car =
      sw_document_get_car (sw_bench_get_document (sw_chooser_get_bench (chooser)));
  ChoiceAnswer answer;
  CardPage *page;

  if (!find_answer (chooser, car, &answer))
    return NULL;
  page = g_new0 (CardPage, 1);
  page->car = car_copy (car);
  page->plate = plate_copy (answer.plate);
  page->setup = sw_chooser_get_question (chooser).setup;
  page->answer = answer;
  page->answer.plate = page->plate;
  page->carrier = sw_chooser_get_question (chooser).carrier;
  page->date = today ();
  return page;
}

CardPage *
card_page_copy (const CardPage *page)
{
  CardPage *copy = g_memdup2 (page, sizeof *page);

  copy->car = car_copy (page->car);
  copy->plate = plate_copy (page->plate);
  copy->answer.plate = copy->plate;
  copy->date = g_strdup (page->date);
  return copy;
}

void
card_page_free (CardPage *page)
{
  car_free (page->car);
  plate_free (page->plate);
  g_free (page->date);
  g_free (page);
}

FittingCard
card_page_card (const CardPage *page)
{
  return (FittingCard){ .car = page->car,
                        .setup = car_setup (page->car, page->setup),
                        .answer = &page->answer,
                        .carrier = page->carrier,
                        .date = page->date };
}

static void
draw (gconstpointer paper,
      guint number,
      TextCache *texts,
      cairo_t *cr,
      double width,
      double height)
{
  const FittingCard card = card_page_card (paper);

  (void) number;
  fitting_card_draw (texts, cr, &card, width, height);
}

GtkWidget *
card_preview_new (const CardPage *page)
{
  return sw_paper_preview_new ((PaperPage){ .name = _ ("Fitting card"),
                                            .width = FITTING_CARD_A4_WIDTH,
                                            .height = FITTING_CARD_A4_HEIGHT,
                                            .draw = draw,
                                            .paper = page });
}
