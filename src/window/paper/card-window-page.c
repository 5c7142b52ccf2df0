/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/card-window-page.h"
#include "window/paper/paper-preview.h"
#include "window/paper/today.h"

#include <glib/gi18n-lib.h>

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

static const char *
paper_size (gconstpointer page)
{
  (void) page;
  return GTK_PAPER_NAME_A4;
}

static guint
lay_out (gpointer page, double width, double height)
{
  (void) page;
  (void) width;
  (void) height;
  return 1;
}

static void
draw_page (gpointer page, cairo_t *cr, guint number, double width, double height)
{
  const FittingCard card = card_page_card (page);
  g_autoptr (TextCache) texts = text_cache_new ();

  (void) number;
  fitting_card_draw (texts, cr, &card, width, height);
}

static gboolean
write_page (gpointer page, const char *path, GError **error)
{
  const FittingCard card = card_page_card (page);

  return fitting_card_write (&card, path, error);
}

static char *
page_name (gconstpointer data)
{
  const CardPage *page = data;

  return g_strdup_printf ("%s – %s", page->car->name, page->plate->name);
}

static gpointer
copy_page (gconstpointer page)
{
  return card_page_copy (page);
}

static void
free_page (gpointer page)
{
  card_page_free (page);
}

const PaperKind card_paper = { .size = paper_size,
                               .lay_out = lay_out,
                               .draw_page = draw_page,
                               .write = write_page,
                               .name = page_name,
                               .copy = copy_page,
                               .free = free_page };

static void
draw_preview (gconstpointer page,
              guint number,
              TextCache *texts,
              cairo_t *cr,
              double width,
              double height)
{
  const FittingCard card = card_page_card (page);

  (void) number;
  fitting_card_draw (texts, cr, &card, width, height);
}

GtkWidget *
card_preview_new (const CardPage *page)
{
  return sw_paper_preview_new ((PaperPage){ .name = _ ("Fitting card"),
                                            .width = PAPER_A4_WIDTH,
                                            .height = PAPER_A4_HEIGHT,
                                            .draw = draw_preview,
                                            .paper = page });
}
