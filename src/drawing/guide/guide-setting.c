/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The first page: what can hurt, what is needed, and from where everything is measured.
 */

#include "drawing/chart/title-block.h"
#include "drawing/guide/guide-private.h"

#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CAUTION_ROOM 6.0
#define SKETCH_SHARE 0.42
#define COLUMN_GAP 14.0

/* In a frame, before anything else. */
static void
draw_caution (GuidePage *page)
{
  const FittingPen *pen = &page->pen;
  const double top = page->y;
  GuidePage inner = *page;

  inner.x += CAUTION_ROOM;
  inner.width -= 2.0 * CAUTION_ROOM;
  inner.y += CAUTION_ROOM;
  fitting_ink (pen, pen->theme.warning);
  guide_line (&inner, FITTING_HEADING, _ ("Before you start"));
  fitting_ink (pen, pen->theme.ink);
  guide_paragraph (&inner, FITTING_TEXT, guide_caution ());
  page->y = inner.y + CAUTION_ROOM;
  if (pen->cr == NULL)
    return;
  theme_use (pen->cr, pen->theme.warning);
  theme_line (pen->cr, LINE_FULL, pen->theme.line);
  cairo_rectangle (pen->cr, page->x, top, page->width, page->y - top);
  cairo_stroke (pen->cr);
}

static void
draw_section (GuidePage *page, const char *heading, const char *text)
{
  fitting_ink (&page->pen, page->pen.theme.ink);
  guide_line (page, FITTING_TEXT_BOLD, heading);
  guide_paragraph (page, FITTING_TEXT, text);
  page->y += GUIDE_GAP;
}

/* A floor that falls by a tenth of a degree lies that much lower at the other wheel. */
static char *
ground_words (const Car *car)
{
  const double track = 2.0 * car->points[POINT_WHEEL_CENTRE].y;
  g_autofree char *fall = number_text (track * tan (0.1 * G_PI / 180.0), 1);

  return g_strdup_printf (
      _ ("All heights count from it. Check it with a straight edge and the angle gauge "
         "where the four wheels stand: a fall of 0.1° from left to right is %s mm between "
         "this car’s front wheels. Put plates under the low wheels."),
      fall);
}

static void
draw_sections (GuidePage *page)
{
  g_autofree char *ground = ground_words (page->guide->car);

  draw_section (
      page, _ ("What you need"),
      _ ("A steel tape, a plumb bob on a thin string, an angle gauge that reads "
         "tenths of a degree, a straight edge as long as the car is wide, tape "
         "for the floor and a fine pen. A camber gauge and a toe gauge for the "
         "two angles of the wheel."));
  draw_section (page, _ ("The ground"), ground);
  draw_section (
      page, _ ("The height"),
      _ ("The car stands as it is driven, tyres at their pressure. Roll it back "
         "and forth and press both ends down so that it settles. Write down the "
         "height of the four wings above the hubs: camber, toe and every point "
         "belong to this height."));
  draw_section (
      page, _ ("The centre plane"),
      _ ("Drop the bob from two pairs of points that lie alike on the left and on "
         "the right, as far apart as can be had, and mark the floor. Halve each "
         "pair and draw a line through both middles. y counts from it."));
  draw_section (
      page, _ ("The front axle"),
      _ ("Point the wheels straight ahead and drop the bob before both wheel "
         "centres. The line through both marks is x = 0; forward counts as plus. "
         "It must be square to the centre plane: with 600 mm on one line and "
         "800 mm on the other, the slant is 1000 mm."));
}

/* How closely, and what all errors together come to. */
static char *
accuracy_words (const MeasuringGuide *guide)
{
  const double *together = guide->sensitivity.together;

  if (!guide->is_computed)
    return g_strdup (
        _ ("How closely each point must be measured could not be computed: "
           "with the points in the car’s file the wheel does not reach 30 mm "
           "of bump."));
  g_autofree char *camber = number_text (together[SENSITIVE_CAMBER], 2);
  g_autofree char *toe = number_text (together[SENSITIVE_TOE_IN], 2);
  g_autofree char *caster = number_text (together[SENSITIVE_CASTER], 2);
  g_autofree char *height = number_text (together[SENSITIVE_ROLL_CENTRE], 0);
  return g_strdup_printf (
      _ ("“Keep within” is computed for this car and for no other: the corner is solved "
         "exactly with that one coordinate half a millimetre off either way, all others "
         "right. It keeps camber and toe within 0.1°, caster within 0.25° and the roll "
         "centre within 5 mm at 30 mm of bump. Nothing is asked for more loosely than %.0f "
         "mm, as scrub radius and trail follow some points millimetre for millimetre. With "
         "all 24 coordinates a millimetre off, each its own way, camber comes out wrong by "
         "about %s°, toe by %s°, caster by %s° and the roll centre by %s mm. A car that was "
         "never measured begins with a rough round: enter it, print this guide again, and "
         "take the close ones anew."),
      GUIDE_LOOSEST, camber, toe, caster, height);
}

void
guide_setting_page (GuidePage *page)
{
  g_autofree char *accuracy = accuracy_words (page->guide);
  GuidePage words;

  draw_caution (page);
  page->y += 1.5 * GUIDE_GAP;
  words = *page;
  words.x = page->x + SKETCH_SHARE * page->width + COLUMN_GAP;
  words.width = page->x + page->width - words.x;
  draw_sections (&words);
  guide_sketch_draw (page, GUIDE_NO_POINT,
                     (PixelBox){ page->x, page->y, SKETCH_SHARE * page->width,
                                 words.y - page->y });
  page->y = words.y + 0.5 * GUIDE_GAP;
  draw_section (page, _ ("How closely"), accuracy);
  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  guide_paragraph (page, FITTING_SMALL, caution_text ());
}
