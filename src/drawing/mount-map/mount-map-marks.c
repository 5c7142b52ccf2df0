/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands on the map beside the mount in hand: where the mount was measured, where
 * other setups have theirs, and the best place of the plate. */

#include "drawing/mount-map/mount-map-private.h"

#include "drawing/sheet/sheet-pen.h"
#include "model/study/setup-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pixels at ordinary type size. */
#define CROSS 6.0
#define MARKER 9.0
#define POLE 22.0
#define FLAG_WIDTH 13.0
#define FLAG_HEIGHT 9.0
#define NOTE_AWAY 8.0
#define LONGEST_NAME 24 /* letters */
#define SAME_PLACE 0.05 /* mm */

static const Pixel rightward = { 1.0, 0.0 };

static Pixel
measured_pixel (const MapPen *pen)
{
  return map_pixel (pen->layout, (MountOffset){ 0 });
}

static Pixel
setup_pixel (const MapPen *pen, guint setup)
{
  return map_pixel (pen->layout, map_mount (pen->view, setup));
}

static MapBox
square_about (Pixel at, double reach)
{
  return map_box_about (at, at, reach);
}

void
map_marks_claim (const MapPen *pen, MapClaims *claims)
{
  map_claim (claims, square_about (measured_pixel (pen), CROSS * pen->unit));
  for (guint i = 0; i < pen->view->car->setups->len; i++)
    if (map_shows_setup (pen->view, i))
      map_claim (claims,
                 square_about (setup_pixel (pen, i), (MARKER / 2.0 + 1.0) * pen->unit));
  if (pen->view->best != NULL) {
    const Pixel foot = map_pixel (pen->layout, pen->view->best->mount);
    map_claim (claims, map_box_upright ((PixelBox){
                           foot.x - 3.0 * pen->unit, foot.y - POLE * pen->unit,
                           (FLAG_WIDTH + 4.0) * pen->unit, POLE * pen->unit }));
  }
}

/* Whether its marker lies under the one of the setup in hand, whose name it would seem to
 * be. */
static gboolean
is_under_hand (const MapPen *pen, guint setup)
{
  const Pixel at = setup_pixel (pen, setup), hand = setup_pixel (pen, pen->view->setup);

  return hypot (at.x - hand.x, at.y - hand.y) < MARKER * pen->unit;
}

static void
short_name (const char *name, char *text, gsize size)
{
  if (g_utf8_strlen (name, -1) <= LONGEST_NAME) {
    g_strlcpy (text, name, size);
    return;
  }
  g_autofree char *start = g_utf8_substring (name, 0, LONGEST_NAME - 1);
  g_snprintf (text, size, "%s…", g_strchomp (start));
}

/* Whether a setup stands where the mount was measured, and so says it. */
static gboolean
is_measured_named (const MapPen *pen)
{
  for (guint i = 0; i < pen->view->car->setups->len; i++) {
    const MountOffset mount = map_mount (pen->view, i);

    if ((i == pen->view->setup || map_shows_setup (pen->view, i)) &&
        hypot (mount.inboard, mount.rearward) < SAME_PLACE)
      return TRUE;
  }
  return FALSE;
}

void
map_marks_note (const MapPen *pen, MapClaims *claims, MapNotes *notes)
{
  const Theme *t = pen->theme;
  const double away = NOTE_AWAY * pen->unit;
  char name[64];

  if (!is_measured_named (pen))
    map_note_beside (pen, claims, notes, measured_car_title (), measured_pixel (pen),
                     away, rightward, t->reference);
  for (guint i = 0; i < pen->view->car->setups->len; i++)
    if (map_shows_setup (pen->view, i) && !is_under_hand (pen, i)) {
      short_name (setup_title (car_setup (pen->view->car, i)), name, sizeof name);
      map_note_beside (pen, claims, notes, name, setup_pixel (pen, i), away, rightward,
                       theme_setup_style (t, i).colour);
    }
  if (pen->view->best != NULL) {
    const Pixel foot = map_pixel (pen->layout, pen->view->best->mount);
    map_note_beside (pen, claims, notes, _ ("best"),
                     pixel_add (foot, (FLAG_WIDTH + 2.0) * pen->unit,
                                -(POLE - FLAG_HEIGHT / 2.0) * pen->unit),
                     2.0 * pen->unit, rightward, t->ink);
  }
}

static void
draw_cross (const MapPen *pen)
{
  const Pixel at = measured_pixel (pen);
  const double reach = CROSS * pen->unit;

  theme_use (pen->cr, pen->theme->reference);
  theme_line (pen->cr, LINE_FULL, 1.5 * pen->theme->thin);
  cairo_move_to (pen->cr, at.x - reach, at.y);
  cairo_line_to (pen->cr, at.x + reach, at.y);
  cairo_move_to (pen->cr, at.x, at.y - reach);
  cairo_line_to (pen->cr, at.x, at.y + reach);
  cairo_stroke (pen->cr);
}

static void
draw_flag (const MapPen *pen)
{
  const Pixel foot = map_pixel (pen->layout, pen->view->best->mount);
  const double u = pen->unit;

  theme_use (pen->cr, pen->theme->ink);
  theme_line (pen->cr, LINE_FULL, 1.5 * pen->theme->thin);
  cairo_move_to (pen->cr, foot.x, foot.y);
  cairo_line_to (pen->cr, foot.x, foot.y - POLE * u);
  cairo_stroke (pen->cr);
  cairo_move_to (pen->cr, foot.x, foot.y - POLE * u);
  cairo_line_to (pen->cr, foot.x + FLAG_WIDTH * u,
                 foot.y - (POLE - FLAG_HEIGHT / 2.0) * u);
  cairo_line_to (pen->cr, foot.x, foot.y - (POLE - FLAG_HEIGHT) * u);
  cairo_close_path (pen->cr);
  cairo_fill (pen->cr);
  cairo_arc (pen->cr, foot.x, foot.y, 2.0 * u, 0.0, 2.0 * G_PI);
  cairo_fill (pen->cr);
}

void
map_marks_draw (const MapPen *pen)
{
  draw_cross (pen);
  for (guint i = 0; i < pen->view->car->setups->len; i++)
    if (map_shows_setup (pen->view, i)) {
      const Pixel at = setup_pixel (pen, i);

      theme_use (pen->cr, theme_setup_style (pen->theme, i).colour);
      theme_marker (pen->cr, theme_setup_style (pen->theme, i).marker, at.x, at.y,
                    MARKER * pen->unit);
    }
  if (pen->view->best != NULL)
    draw_flag (pen);
}
