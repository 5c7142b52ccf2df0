/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/pen/text.h"

#include <math.h>

static TextStyle
style (double size, TextWeight weight)
{
  return (TextStyle){ "Sans", size, weight };
}

typedef struct {
  cairo_surface_t *surface;
  cairo_t *cr;
  TextCache *texts;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  f->cr = cairo_create (f->surface);
  f->texts = text_cache_new ();
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  text_cache_free (f->texts);
  cairo_destroy (f->cr);
  cairo_surface_destroy (f->surface);
}

static cairo_rectangle_t
ink (const Fixture *f)
{
  cairo_rectangle_t box;

  cairo_recording_surface_ink_extents (f->surface, &box.x, &box.y, &box.width,
                                       &box.height);
  return box;
}

static void
test_size_and_weight_count (Fixture *f, gconstpointer data)
{
  (void) data;
  const TextSize small = text_measure (f->texts, style (10, TEXT_PLAIN), "Camber");
  const TextSize large = text_measure (f->texts, style (20, TEXT_PLAIN), "Camber");
  const TextSize bold = text_measure (f->texts, style (10, TEXT_BOLD), "Camber");

  /* unhinted: twice the size is twice the width */
  g_assert_cmpfloat_with_epsilon (large.width, 2.0 * small.width, 0.05);
  g_assert_cmpfloat (bold.width, >, small.width);
  g_assert_cmpfloat (small.baseline, >, 0.5 * small.height);
  g_assert_cmpfloat (small.baseline, <, small.height);
}

static void
test_anchor_right_and_baseline (Fixture *f, gconstpointer data)
{
  (void) data;
  text_draw (f->texts, f->cr, style (20, TEXT_PLAIN), "H", 100.0, 50.0,
             (TextAnchor){ 1.0, TEXT_BASELINE });
  const cairo_rectangle_t box = ink (f);

  g_assert_cmpfloat (box.x + box.width, <=, 101.0);
  g_assert_cmpfloat (box.x + box.width, >, 94.0);
  /* an H stands on its baseline, its height is 0.6 to 0.8 of the size in any Sans */
  g_assert_cmpfloat (fabs (box.y + box.height - 50.0), <=, 1.0);
  g_assert_cmpfloat (box.height, >=, 11.0);
  g_assert_cmpfloat (box.height, <=, 18.0);
}

static void
test_anchor_middle (Fixture *f, gconstpointer data)
{
  (void) data;
  text_draw (f->texts, f->cr, style (20, TEXT_PLAIN), "HOH", 100.0, 50.0,
             (TextAnchor){ 0.5, 0.5 });
  const cairo_rectangle_t box = ink (f);

  g_assert_cmpfloat (fabs (box.x + box.width / 2.0 - 100.0), <=, 1.5);
  g_assert_cmpfloat (fabs (box.y + box.height / 2.0 - 50.0), <=, 4.0);
}

/* A current point left behind would be joined to the next curve. */
static void
test_leaves_no_current_point (Fixture *f, gconstpointer data)
{
  (void) data;
  text_draw (f->texts, f->cr, style (12, TEXT_PLAIN), "x", 5, 5, (TextAnchor){ 0, 0 });
  g_assert_false (cairo_has_current_point (f->cr));
}

/* More texts than are kept: those that come back are laid out anew, and right. */
static void
test_many_texts_pass_through (Fixture *f, gconstpointer data)
{
  (void) data;
  const TextStyle plain = style (12, TEXT_PLAIN);
  const TextSize first = text_measure (f->texts, plain, "0");
  char text[16];

  for (int i = 0; i < 3000; i++) {
    g_snprintf (text, sizeof text, "%d", i);
    const TextSize size = text_measure (f->texts, plain, text);
    /* figures of a Sans are equally wide */
    g_assert_cmpfloat_with_epsilon (size.width, strlen (text) * first.width, 0.05);
  }
  g_assert_cmpfloat (text_measure (f->texts, plain, "0").width, ==, first.width);
}

static void
test_wraps_and_shortens (Fixture *f, gconstpointer data)
{
  (void) data;
  const TextStyle plain = style (12, TEXT_PLAIN);
  const char *text = "The lower arm cannot carry the wheel this far.";
  const TextSize line = text_measure (f->texts, plain, text);
  const TextSize block = text_measure_wrapped (f->texts, plain, text, 0.4 * line.width);
  const TextSize cut =
      text_draw_within (f->texts, f->cr, plain, text, 0.0, 20.0, 0.4 * line.width);
  const TextSize whole =
      text_draw_within (f->texts, f->cr, plain, text, 0.0, 20.0, 2.0 * line.width);

  g_assert_cmpfloat (block.width, <=, 0.4 * line.width + 0.1);
  g_assert_cmpfloat (block.height, >=, 2.9 * line.height);
  g_assert_cmpfloat (cut.width, <=, 0.4 * line.width + 0.1);
  g_assert_cmpfloat (cut.height, ==, line.height);
  g_assert_cmpfloat_with_epsilon (whole.width, line.width, 0.01);
}

#define ADD(name, function)                                                              \
  g_test_add ("/text/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("size-and-weight-count", test_size_and_weight_count);
  ADD ("anchor-right-and-baseline", test_anchor_right_and_baseline);
  ADD ("anchor-middle", test_anchor_middle);
  ADD ("leaves-no-current-point", test_leaves_no_current_point);
  ADD ("many-texts-pass-through", test_many_texts_pass_through);
  ADD ("wraps-and-shortens", test_wraps_and_shortens);
  return g_test_run ();
}
