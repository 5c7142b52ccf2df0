/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawn-texts.h"

#include <string.h>

GArray *drawn_texts, *drawn_circles, *drawn_lines;
bool drawn_in_long_words, drawn_in_full_width;
gsize drawn_word_length;

void __real_pango_cairo_show_layout (cairo_t *cr, PangoLayout *layout);
void __wrap_pango_cairo_show_layout (cairo_t *cr, PangoLayout *layout);
void __real_cairo_arc (cairo_t *cr, double x, double y, double r, double from, double to);
void __wrap_cairo_arc (cairo_t *cr, double x, double y, double r, double from, double to);
void __real_cairo_line_to (cairo_t *cr, double x, double y);
void __wrap_cairo_line_to (cairo_t *cr, double x, double y);
const char *__real_g_dgettext (const char *domain, const char *text);
const char *__wrap_g_dgettext (const char *domain, const char *text);
const char *__real_g_dpgettext (const char *domain, const char *text, gsize offset);
const char *__wrap_g_dpgettext (const char *domain, const char *text, gsize offset);
const char *
__real_g_dpgettext2 (const char *domain, const char *context, const char *text);
const char *
__wrap_g_dpgettext2 (const char *domain, const char *context, const char *text);

static void
clear_text (gpointer data)
{
  g_free (((DrawnText *) data)->text);
}

void
drawn_reset (void)
{
  g_clear_pointer (&drawn_texts, g_array_unref);
  g_clear_pointer (&drawn_circles, g_array_unref);
  g_clear_pointer (&drawn_lines, g_array_unref);
  drawn_texts = g_array_new (FALSE, FALSE, sizeof (DrawnText));
  g_array_set_clear_func (drawn_texts, clear_text);
  drawn_circles = g_array_new (FALSE, FALSE, sizeof (DrawnCircle));
  drawn_lines = g_array_new (FALSE, FALSE, sizeof (DrawnLine));
}

static void
need_lists (void)
{
  if (drawn_texts == NULL)
    drawn_reset ();
}

static void
find_corners (cairo_t *cr, const PangoRectangle *ink, DrawnText *text)
{
  double x, y;

  cairo_get_current_point (cr, &x, &y);
  text->left = text->top = G_MAXDOUBLE;
  text->right = text->bottom = -G_MAXDOUBLE;
  for (int i = 0; i < 4; i++) {
    DrawnPoint *p = &text->corners[i];

    p->x = x + (double) (ink->x + (i == 1 || i == 2 ? ink->width : 0)) / PANGO_SCALE;
    p->y = y + (double) (ink->y + (i >= 2 ? ink->height : 0)) / PANGO_SCALE;
    cairo_user_to_device (cr, &p->x, &p->y);
    text->left = MIN (text->left, p->x);
    text->top = MIN (text->top, p->y);
    text->right = MAX (text->right, p->x);
    text->bottom = MAX (text->bottom, p->y);
  }
}

/* The ink and not the line, whose room for accents may reach under the line above. */
void
__wrap_pango_cairo_show_layout (cairo_t *cr, PangoLayout *layout)
{
  PangoRectangle ink;

  need_lists ();
  pango_layout_get_extents (layout, &ink, NULL);
  if (ink.width > 0) {
    DrawnText text = { .text = g_strdup (pango_layout_get_text (layout)),
                       .is_cut = pango_layout_is_ellipsized (layout) };

    find_corners (cr, &ink, &text);
    g_array_append_val (drawn_texts, text);
  }
  __real_pango_cairo_show_layout (cr, layout);
}

void
__wrap_cairo_arc (cairo_t *cr, double x, double y, double r, double from, double to)
{
  DrawnCircle circle = { x, y, r };
  double nothing = 0.0;

  need_lists ();
  cairo_user_to_device (cr, &circle.x, &circle.y);
  cairo_user_to_device_distance (cr, &circle.radius, &nothing);
  g_array_append_val (drawn_circles, circle);
  __real_cairo_arc (cr, x, y, r, from, to);
}

void
__wrap_cairo_line_to (cairo_t *cr, double x, double y)
{
  DrawnLine line = { .to_x = x, .to_y = y };

  need_lists ();
  if (cairo_has_current_point (cr)) {
    cairo_get_current_point (cr, &line.from_x, &line.from_y);
    cairo_user_to_device (cr, &line.from_x, &line.from_y);
    cairo_user_to_device (cr, &line.to_x, &line.to_y);
    g_array_append_val (drawn_lines, line);
  }
  __real_cairo_line_to (cr, x, y);
}

static const char *
lengthen (const char *text)
{
  const gsize more = (gsize) (0.4 * (double) g_utf8_strlen (text, -1) + 0.5);
  g_autofree char *tail = g_strnfill (more, 'n');
  g_autofree char *whole = g_strconcat (text, tail, NULL);

  for (gsize i = drawn_word_length; i > 0 && i + 1 < more; i += drawn_word_length)
    whole[strlen (text) + i] = ' ';
  return drawn_in_long_words ? g_intern_string (whole) : text;
}

/* The end of a conversion of printf, or @at where there is none. */
static const char *
after_conversion (const char *at)
{
  if (*at != '%')
    return at;
  do
    at++;
  while (*at != '\0' && strchr ("diouxXeEfgGcsp%", *at) == NULL);
  return *at != '\0' ? at + 1 : at;
}

/* Unicode has the letters of ASCII again from U+FF21 and U+FF41 on. */
static const char *
widen (const char *text)
{
  g_autoptr (GString) wide = g_string_new (NULL);

  while (*text != '\0') {
    const char *end = after_conversion (text);

    if (end > text) {
      g_string_append_len (wide, text, end - text);
      text = end;
      continue;
    }
    g_string_append_unichar (wide, g_ascii_isalpha (*text)
                                       ? 0xFF21 + (gunichar) (*text - 'A')
                                       : g_utf8_get_char (text));
    text = g_utf8_next_char (text);
  }
  return g_intern_string (wide->str);
}

static const char *
translate (const char *text)
{
  return drawn_in_full_width ? widen (text) : lengthen (text);
}

const char *
__wrap_g_dgettext (const char *domain, const char *text)
{
  return translate (__real_g_dgettext (domain, text));
}

const char *
__wrap_g_dpgettext (const char *domain, const char *text, gsize offset)
{
  return translate (__real_g_dpgettext (domain, text, offset));
}

const char *
__wrap_g_dpgettext2 (const char *domain, const char *context, const char *text)
{
  return translate (__real_g_dpgettext2 (domain, context, text));
}

const DrawnText *
drawn_text_at (guint i)
{
  return &g_array_index (drawn_texts, DrawnText, i);
}

guint
drawn_count (const char *part)
{
  guint n = 0;

  for (guint i = 0; i < drawn_texts->len; i++)
    n += strstr (drawn_text_at (i)->text, part) != NULL;
  return n;
}

const DrawnText *
drawn_find (const char *part)
{
  for (guint i = 0; i < drawn_texts->len; i++)
    if (strstr (drawn_text_at (i)->text, part) != NULL)
      return drawn_text_at (i);
  return NULL;
}

/* Half a point. */
bool
drawn_overlap (const DrawnText *a, const DrawnText *b)
{
  const double shared = 0.5;

  return a->left < b->right - shared && b->left < a->right - shared &&
         a->top < b->bottom - shared && b->top < a->bottom - shared;
}

void
drawn_assert_apart (double width, double height, double margin, const char *what)
{
  g_assert_cmpuint (drawn_texts->len, >, 0);
  for (guint i = 0; i < drawn_texts->len; i++) {
    const DrawnText *text = drawn_text_at (i);

    if (text->left < margin || text->top < margin || text->right > width - margin ||
        text->bottom > height - margin)
      g_error ("“%s” at %.0f, %.0f runs past %s of %.0f × %.0f%s", text->text, text->left,
               text->top, what, width, height, drawn_in_long_words ? ", long words" : "");
    for (guint j = 0; j < i; j++)
      if (drawn_overlap (text, drawn_text_at (j)))
        g_error ("“%s” covers “%s” at %.0f, %.0f on %s of %.0f × %.0f%s", text->text,
                 drawn_text_at (j)->text, text->left, text->top, what, width, height,
                 drawn_in_long_words ? ", long words" : "");
  }
}

bool
drawn_in_turn (gsize i, gsize car, gsize n_cars)
{
  return g_test_thorough () || i % n_cars == car;
}
