/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The mount in hand: on a screen a handle as on the sheet, in files the setup's marker;
 * beside it how far it has gone, and about it the bearing, where its size is given. */

#include "drawing/mount-map/mount-map-private.h"

#include "drawing/sheet/sheet-handles.h"
#include "drawing/sheet/sheet-label.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pixels at ordinary type size. */
#define MARKER 11.0
#define TAG_ROOM 5.0
#define TAG_AWAY 20.0

static gboolean
is_on_screen (const MapPen *pen)
{
  return pen->view->pixel_scale > 0.0;
}

static MountOffset
mount_in_hand (const MapPen *pen)
{
  return map_mount (pen->view, pen->view->setup);
}

static Pixel
mount_pixel (const MapPen *pen)
{
  return map_pixel (pen->layout, mount_in_hand (pen));
}

/* mm from the bearing, a point where it is not given, to the tower's edge; NAN where that
 * is not given. What choice_place_of_mount () says, without solving the corner. */
static double
edge_margin (const MapPen *pen)
{
  const MountOffset mount = mount_in_hand (pen),
                    centre = map_opening_centre (pen->view->car);
  const double opening = map_opening_radius (pen->view->car);
  const double bearing =
      pen->view->plate != NULL ? fmax (pen->view->plate->bearing_diameter_mm, 0.0) : 0.0;

  if (opening <= 0.0)
    return NAN;
  return opening - bearing / 2.0 -
         hypot (mount.inboard - centre.inboard, mount.rearward - centre.rearward);
}

/* Whether less is left of it than is asked for. */
static bool
is_past (const MapPen *pen)
{
  return edge_margin (pen) < pen->view->car->limits.edge_margin_mm;
}

/* Free with g_free (). */
static char *
edge_words (double margin)
{
  g_autofree char *length = unit_text (UNIT_LENGTH, fabs (margin), 1);

  return g_strdup_printf (margin < 0.0 ? _ ("%s past the edge") : _ ("%s to the edge"),
                          length);
}

/* How far the mount has gone, and what that leaves where it is too little. */
static void
tag_text (const MapPen *pen, char *text, gsize size)
{
  const MountOffset mount = mount_in_hand (pen);
  char in[40], back[40];

  inboard_text (mount.inboard, in, sizeof in);
  rearward_text (mount.rearward, back, sizeof back);
  if (is_past (pen)) {
    g_autofree char *edge = edge_words (edge_margin (pen));

    g_snprintf (text, size, "%s · %s · %s", in, back, edge);
  } else
    g_snprintf (text, size, "%s · %s", in, back);
}

static TextStyle
tag_style (const MapPen *pen)
{
  return (TextStyle){ pen->theme->font, pen->theme->small_text,
                      pen->view->is_handle_lit ? TEXT_BOLD : TEXT_PLAIN };
}

static PixelBox
held_inside (PixelBox plot, double x, double y, PixelBox size)
{
  return (PixelBox){
    CLAMP (x, plot.x + 2.0, fmax (plot.x + plot.width - size.width - 2.0, plot.x + 2.0)),
    CLAMP (y, plot.y + 2.0,
           fmax (plot.y + plot.height - size.height - 2.0, plot.y + 2.0)),
    size.width, size.height
  };
}

/* Below the handle, above it or beside it: the first of them that lies inside the plot
 * and on no mark. */
static PixelBox
tag_box (const MapPen *pen, const char *text)
{
  const TextStyle bold = { pen->theme->font, pen->theme->small_text, TEXT_BOLD };
  const TextSize written = text_measure (pen->texts, bold, text);
  const PixelBox size = { 0, 0, written.width + 2.0 * TAG_ROOM * pen->unit,
                          written.height + TAG_ROOM * pen->unit };
  const double away = TAG_AWAY * pen->unit;
  const Pixel at = mount_pixel (pen);
  const double middle_x = at.x - size.width / 2.0, middle_y = at.y - size.height / 2.0;
  const Pixel places[] = { { middle_x, at.y + away },
                           { middle_x, at.y - away - size.height },
                           { at.x + away, middle_y },
                           { at.x - away - size.width, middle_y } };

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++) {
    const PixelBox box = held_inside (pen->layout->plot, places[i].x, places[i].y, size);
    const MapBox claim = map_box_upright (box);

    if (!pixel_box_has (box, at) && box.y == places[i].y &&
        map_is_free (pen->marks, &claim))
      return box;
  }
  return held_inside (pen->layout->plot, places[0].x, places[0].y, size);
}

void
map_handle_claim (const MapPen *pen, MapClaims *claims)
{
  const Pixel at = mount_pixel (pen);
  char text[160];

  tag_text (pen, text, sizeof text);
  map_claim (claims, map_box_about (at, at,
                                    is_on_screen (pen) ? handle_mark_reach (pen->unit)
                                                       : MARKER * pen->unit));
  map_claim (claims, map_box_upright (tag_box (pen, text)));
}

/* Thin, and in the warning's colour where its margin to the edge is used up. */
static void
draw_bearing (const MapPen *pen)
{
  const Plate *plate = pen->view->plate;
  const Pixel at = mount_pixel (pen);
  const bool is_warning = is_past (pen);

  if (plate == NULL || plate->bearing_diameter_mm <= 0.0)
    return;
  theme_use (pen->cr, is_warning ? pen->theme->warning
                                 : theme_quiet (pen->theme, pen->theme->accent, 0.5));
  theme_line (pen->cr, LINE_FULL, (is_warning ? 1.6 : 1.0) * pen->theme->thin);
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, at.x, at.y, plate->bearing_diameter_mm / 2.0 * pen->layout->scale,
             0.0, 2.0 * G_PI);
  cairo_stroke (pen->cr);
}

static void
draw_tag (const MapPen *pen)
{
  const Theme *t = pen->theme;
  const TextStyle style = tag_style (pen);
  char text[160];

  tag_text (pen, text, sizeof text);
  const PixelBox box = tag_box (pen, text);
  cairo_rectangle (pen->cr, floor (box.x) + 0.5, floor (box.y) + 0.5, round (box.width),
                   round (box.height));
  theme_use (pen->cr,
             colour_with_alpha (t->ground.alpha > 0.0 ? t->ground : t->fill, 0.92));
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, is_past (pen)              ? t->warning
                      : pen->view->is_handle_lit ? t->accent
                                                 : t->faint);
  theme_line (pen->cr, LINE_FULL, t->thin);
  cairo_stroke (pen->cr);
  theme_use (pen->cr, t->ink);
  text_draw (pen->texts, pen->cr, style, text, box.x + box.width / 2.0,
             box.y + box.height / 2.0, (TextAnchor){ 0.5, 0.5 });
}

void
map_handle_draw (const MapPen *pen)
{
  const Pixel at = mount_pixel (pen);

  draw_bearing (pen);
  if (is_on_screen (pen))
    handle_mark_draw (pen->cr, pen->theme, pen->unit, at,
                      (HandleMark){ .is_crosswise = true,
                                    .is_near = pen->view->is_handle_lit });
  else {
    theme_use (pen->cr, theme_hand_style (pen->theme, pen->view->setup).colour);
    theme_marker (pen->cr, theme_hand_style (pen->theme, pen->view->setup).marker, at.x,
                  at.y, MARKER * pen->unit);
  }
  draw_tag (pen);
}
