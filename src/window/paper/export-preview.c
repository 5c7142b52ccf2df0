/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/export-preview.h"
#include "window/bench/chooser.h"
#include "window/bench/loader.h"
#include "window/paper/today.h"

#include "model/load/spring-verdict.h"

#include <glib/gi18n-lib.h>

struct _SwExportPreview {
  SwCanvas parent_instance;

  SwBench *bench;
  CardPress *press;
  ExportWish wish;
};

G_DEFINE_FINAL_TYPE (SwExportPreview, sw_export_preview, SW_TYPE_CANVAS)

/* What the question "Mount" shows, or would show. */
static MountMapView
wished_map (SwBench *bench)
{
  SwChooser *chooser = sw_chooser_of (bench);

  return (MountMapView){
    .side = sw_chooser_get_side (chooser),
    .subjects = { sw_chooser_get_subject (chooser, 0),
                  sw_chooser_get_subject (chooser, 1) },
    .plate = sw_chooser_get_plate (chooser),
    .is_swapped = sw_chooser_is_swapped (chooser),
    .best = sw_chooser_get_best (chooser),
  };
}

/* What the question "Loads" shows, or would show; on a sheet only while it is in hand. */
static const LoadStudy *
wished_loads (CardSubject subject, SwBench *bench)
{
  SwLoader *loader = sw_loader_of (bench);

  return subject == CARD_LOADS || (subject == CARD_SHEET && sw_loader_is_watched (loader))
             ? sw_loader_get_study (loader)
             : NULL;
}

/* A card, and what it looks at until it is let go. */
typedef struct {
  Card card;
  char *date;
  GPtrArray *verdicts;
  const char **sentences;
} WishedCard;

static void
add_springs (WishedCard *wished, SwBench *bench)
{
  const SpringStudy *springs = sw_bench_get_springs (bench);

  wished->verdicts = spring_verdicts (springs, sw_bench_get_setup_index (bench));
  wished->sentences = spring_verdict_sentences (wished->verdicts);
  wished->card.springs = springs;
  wished->card.verdicts = wished->sentences;
}

static WishedCard
wished_card (const ExportWish *wish, SwBench *bench)
{
  char *date = wish->with_date ? today () : NULL;
  WishedCard wished = { .date = date };

  wished.card = (Card){ .subject = wish->subject,
                        .options = wish->options,
                        .choice = sw_bench_get_choice (bench),
                        .car = sw_document_get_car (sw_bench_get_document (bench)),
                        .setup = sw_bench_get_setup (bench),
                        .study = sw_bench_get_study (bench),
                        .loads = wished_loads (wish->subject, bench),
                        .date = date };
  if (wish->subject == CARD_MOUNT_MAP)
    wished.card.map = wished_map (bench);
  if (wish->subject == CARD_SPRINGS)
    add_springs (&wished, bench);
  return wished;
}

static void
clear_wished (WishedCard *wished)
{
  g_free (wished->date);
  g_free (wished->sentences);
  g_clear_pointer (&wished->verdicts, g_ptr_array_unref);
}

gboolean
export_wish_write (const ExportWish *wish,
                   SwBench *bench,
                   const char *path,
                   GError **error)
{
  WishedCard wished = wished_card (wish, bench);
  const gboolean is_written = card_write (&wished.card, path, error);

  clear_wished (&wished);
  return is_written;
}

static void
sw_export_preview_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwExportPreview *self = SW_EXPORT_PREVIEW (canvas);
  const double w = self->wish.options.width, h = self->wish.options.height;
  const double scale = MIN (width / w, height / h);
  WishedCard wished = wished_card (&self->wish, self->bench);

  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_paint (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  cairo_translate (cr, (width - w * scale) / 2.0, (height - h * scale) / 2.0);
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, w, h);
  cairo_clip (cr);
  card_draw (self->press, cr, &wished.card);
  clear_wished (&wished);
}

static void
sw_export_preview_dispose (GObject *object)
{
  g_clear_object (&SW_EXPORT_PREVIEW (object)->bench);
  G_OBJECT_CLASS (sw_export_preview_parent_class)->dispose (object);
}

static void
sw_export_preview_finalize (GObject *object)
{
  card_press_free (SW_EXPORT_PREVIEW (object)->press);
  G_OBJECT_CLASS (sw_export_preview_parent_class)->finalize (object);
}

static void
sw_export_preview_class_init (SwExportPreviewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_export_preview_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_export_preview_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_export_preview_draw;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_export_preview_init (SwExportPreview *self)
{
  self->press = card_press_new ();
  self->wish.options = (ExportOptions){ 1200, 900, EXPORT_BACKGROUND_WHITE };
  gtk_widget_set_size_request (GTK_WIDGET (self), 480, 400);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Preview"), -1);
}

GtkWidget *
sw_export_preview_new (SwBench *bench)
{
  SwExportPreview *self = g_object_new (SW_TYPE_EXPORT_PREVIEW, NULL);

  self->bench = g_object_ref (bench);
  g_signal_connect_object (bench, "solved", G_CALLBACK (sw_canvas_invalidate), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

void
sw_export_preview_set_wish (SwExportPreview *self, ExportWish wish)
{
  self->wish = wish;
  sw_canvas_invalidate (SW_CANVAS (self));
}
