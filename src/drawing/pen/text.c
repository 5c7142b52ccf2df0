/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Layouts are measured without hinting and without rounding to pixels, so that a text is
 * as wide in a window as it is on paper. */

#include "drawing/pen/text.h"

#include <math.h>

/* A board and a sheet show some 200 texts; the rest are values that pass by in a drag. */
#define MOST_ENTRIES 600

typedef struct {
  const char *font;   /* interned */
  double size, width; /* to wrap or end in; 0: as long as it is */
  PangoEllipsizeMode ellipsis;
  TextWeight weight;
  const char *text; /* the layout's own */
  PangoLayout *layout;
  TextSize extents;
  GList link; /* in TextCache.recent */
} Entry;

struct TextCache {
  PangoContext *context;
  GHashTable *entries; /* Entry, by font, size, width, weight and text */
  GQueue recent;       /* the same, last used first */
};

static guint
hash_entry (gconstpointer data)
{
  const Entry *entry = data;

  return g_str_hash (entry->text) ^ ((guint) (entry->size * 64.0) << 8) ^
         (guint) entry->weight;
}

static gboolean
is_same_entry (gconstpointer a, gconstpointer b)
{
  const Entry *left = a, *right = b;

  return left->size == right->size && left->weight == right->weight &&
         left->width == right->width && left->ellipsis == right->ellipsis &&
         g_str_equal (left->text, right->text) &&
         (left->font == right->font || g_str_equal (left->font, right->font));
}

static void
free_entry (gpointer data)
{
  Entry *entry = data;

  g_object_unref (entry->layout);
  g_free (entry);
}

TextCache *
text_cache_new (void)
{
  TextCache *cache = g_new0 (TextCache, 1);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_SLIGHT);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  cache->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  pango_cairo_context_set_font_options (cache->context, options);
  pango_context_set_round_glyph_positions (cache->context, FALSE);
  cairo_font_options_destroy (options);

  cache->entries = g_hash_table_new_full (hash_entry, is_same_entry, free_entry, NULL);
  g_queue_init (&cache->recent);
  return cache;
}

void
text_cache_free (TextCache *cache)
{
  if (cache == NULL)
    return;
  g_hash_table_unref (cache->entries);
  g_object_unref (cache->context);
  g_free (cache);
}

/* An entry whose layout is free to be set anew: a new one, or the one unused longest. */
static Entry *
take_entry (TextCache *cache)
{
  if (g_hash_table_size (cache->entries) >= MOST_ENTRIES) {
    Entry *oldest = g_queue_peek_tail (&cache->recent);

    g_queue_unlink (&cache->recent, &oldest->link);
    g_hash_table_steal (cache->entries, oldest);
    return oldest;
  }

  Entry *entry = g_new0 (Entry, 1);
  entry->layout = pango_layout_new (cache->context);
  entry->link.data = entry;
  return entry;
}

static void
lay_out (Entry *entry, const Entry *wanted)
{
  PangoFontDescription *font = pango_font_description_new ();
  PangoRectangle logical;

  pango_font_description_set_family_static (font, wanted->font);
  pango_font_description_set_absolute_size (font, wanted->size * PANGO_SCALE);
  pango_font_description_set_weight (font, wanted->weight == TEXT_BOLD
                                               ? PANGO_WEIGHT_BOLD
                                               : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (entry->layout, font);
  pango_layout_set_width (entry->layout, wanted->width > 0.0
                                             ? (int) lround (wanted->width * PANGO_SCALE)
                                             : -1);
  pango_layout_set_wrap (entry->layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_ellipsize (entry->layout, wanted->ellipsis);
  pango_layout_set_text (entry->layout, wanted->text, -1);
  pango_layout_get_extents (entry->layout, NULL, &logical);
  pango_font_description_free (font);

  entry->font = g_intern_string (wanted->font);
  entry->size = wanted->size;
  entry->width = wanted->width;
  entry->ellipsis = wanted->ellipsis;
  entry->weight = wanted->weight;
  entry->text = pango_layout_get_text (entry->layout);
  entry->extents =
      (TextSize){ (double) logical.width / PANGO_SCALE,
                  (double) logical.height / PANGO_SCALE,
                  (double) pango_layout_get_baseline (entry->layout) / PANGO_SCALE };
}

static Entry *
find (TextCache *cache, const Entry *wanted)
{
  Entry *entry = g_hash_table_lookup (cache->entries, wanted);

  if (entry != NULL)
    g_queue_unlink (&cache->recent, &entry->link);
  else {
    entry = take_entry (cache);
    lay_out (entry, wanted);
    g_hash_table_add (cache->entries, entry);
  }
  g_queue_push_head_link (&cache->recent, &entry->link);
  return entry;
}

static const Entry *
find_text (TextCache *cache,
           TextStyle style,
           const char *text,
           double width,
           PangoEllipsizeMode ellipsis)
{
  return find (cache, &(Entry){ .font = style.font,
                                .size = style.size,
                                .width = width,
                                .ellipsis = ellipsis,
                                .weight = style.weight,
                                .text = text });
}

static TextSize
draw (cairo_t *cr, const Entry *entry, double x, double y, TextAnchor anchor)
{
  const TextSize size = entry->extents;
  const double above = anchor.y == TEXT_BASELINE ? size.baseline : anchor.y * size.height;
  /* a baseline between two pixels would blur every letter */
  const double baseline = round (y - above + size.baseline);

  cairo_move_to (cr, x - anchor.x * size.width, baseline - size.baseline);
  pango_cairo_show_layout (cr, entry->layout);
  cairo_new_path (cr);
  return size;
}

TextSize
text_measure (TextCache *cache, TextStyle style, const char *text)
{
  return find_text (cache, style, text, 0.0, PANGO_ELLIPSIZE_NONE)->extents;
}

TextSize
text_draw (TextCache *cache,
           cairo_t *cr,
           TextStyle style,
           const char *text,
           double x,
           double y,
           TextAnchor anchor)
{
  return draw (cr, find_text (cache, style, text, 0.0, PANGO_ELLIPSIZE_NONE), x, y,
               anchor);
}

TextSize
text_draw_within (TextCache *cache,
                  cairo_t *cr,
                  TextStyle style,
                  const char *text,
                  double x,
                  double y,
                  double width)
{
  return draw (cr, find_text (cache, style, text, width, PANGO_ELLIPSIZE_END), x, y,
               (TextAnchor){ 0.0, TEXT_BASELINE });
}

TextSize
text_measure_wrapped (TextCache *cache, TextStyle style, const char *text, double width)
{
  return find_text (cache, style, text, width, PANGO_ELLIPSIZE_NONE)->extents;
}

TextSize
text_draw_wrapped (TextCache *cache,
                   cairo_t *cr,
                   TextStyle style,
                   const char *text,
                   double x,
                   double y,
                   double width)
{
  return draw (cr, find_text (cache, style, text, width, PANGO_ELLIPSIZE_NONE), x, y,
               (TextAnchor){ 0.0, 0.0 });
}
