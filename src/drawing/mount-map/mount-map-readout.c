/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cross at the pointer, and what the corner would be with the mount there. */

#include "drawing/mount-map/mount-map-private.h"

#include "drawing/sheet/sheet-label.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pixels at ordinary type size. */
#define INSET 8.0
#define ROOM 7.0
#define COLUMN_GAP 14.0
#define AWAY 34.0        /* of the box from pointer and mount */
#define WHOLE_PLOT 300.0 /* lower plots show the lines' own subjects alone */
#define LINE 1.45        /* of the type size */

#define MOST_ROWS N_FIELD_SUBJECTS

typedef struct {
  const char *name;
  char figure[40];
  gboolean is_drawn; /* as lines */
} Row;

typedef struct {
  char place[128];
  Row rows[MOST_ROWS];
  int n_rows;
  double width, height, line;
} Readout;

static gboolean
is_drawn (const MapPen *pen, FieldSubject subject)
{
  for (guint f = 0; f < pen->n_families; f++)
    if (pen->families[f].subject == subject)
      return TRUE;
  return FALSE;
}

static void
add_rows (const MapPen *pen, const MountPlace *place, gboolean drawn, Readout *readout)
{
  for (FieldSubject s = 0; s < N_FIELD_SUBJECTS; s++)
    if (is_drawn (pen, s) == drawn) {
      Row *row = &readout->rows[readout->n_rows++];

      row->name = field_subject_name (s);
      row->is_drawn = drawn;
      map_figure_text (s, mount_place_value (place, s), row->figure, sizeof row->figure);
    }
}

static TextStyle
row_style (const MapPen *pen, const Row *row)
{
  return map_small (pen, row->is_drawn ? TEXT_BOLD : TEXT_PLAIN);
}

static void
measure (const MapPen *pen, Readout *readout)
{
  const double gap = COLUMN_GAP * pen->unit;
  double wide =
      text_measure (pen->texts, map_small (pen, TEXT_PLAIN), readout->place).width;

  for (int i = 0; i < readout->n_rows; i++) {
    const Row *row = &readout->rows[i];

    wide = fmax (wide,
                 text_measure (pen->texts, row_style (pen, row), row->name).width + gap +
                     text_measure (pen->texts, row_style (pen, row), row->figure).width);
  }
  readout->line = round (LINE * pen->theme->small_text);
  /* in steps, lest it shiver with the digits */
  readout->width = 10.0 * ceil (wide / 10.0) + 2.0 * ROOM * pen->unit;
  readout->height = (readout->n_rows + 1) * readout->line + 1.4 * ROOM * pen->unit;
}

static Readout
make_readout (const MapPen *pen)
{
  const MountOffset at = pen->view->cross;
  const char *side = map_side_name (pen);
  Readout readout = { .n_rows = 0 };
  MountOffset mount = at;
  MountPlace place;
  char in[40], back[40];

  mount.up = pen->field->grid.up;
  mount_place_solve (&pen->field->points, &pen->field->adjustment, mount, &place);
  inboard_text (at.inboard, in, sizeof in);
  rearward_text (at.rearward, back, sizeof back);
  g_snprintf (readout.place, sizeof readout.place, "%s%s%s · %s",
              side != NULL ? side : "", side != NULL ? " · " : "", in, back);
  if (place.status == POSE_OK) {
    add_rows (pen, &place, TRUE, &readout);
    if (pen->layout->plot.height >= WHOLE_PLOT * pen->unit)
      add_rows (pen, &place, FALSE, &readout);
  } else
    readout.rows[readout.n_rows++] = (Row){ .name = _ ("cannot be assembled") };
  measure (pen, &readout);
  return readout;
}

static gboolean
is_near (PixelBox box, Pixel p, double away)
{
  return p.x > box.x - away && p.x < box.x + box.width + away && p.y > box.y - away &&
         p.y < box.y + box.height + away;
}

/* The first corner that is away from the pointer and the mount, or from the pointer. */
static PixelBox
find_corner (const MapPen *pen, const Readout *r)
{
  const PixelBox p = pen->layout->plot;
  const double inset = INSET * pen->unit, away = AWAY * pen->unit;
  const double left = p.x + inset, right = p.x + p.width - inset - r->width;
  const double top = p.y + inset, bottom = p.y + p.height - inset - r->height;
  const PixelBox corners[] = { { right, top, r->width, r->height },
                               { left, top, r->width, r->height },
                               { right, bottom, r->width, r->height },
                               { left, bottom, r->width, r->height } };
  const Pixel cross = map_pixel (pen->layout, pen->view->cross),
              mount = map_pixel (pen->layout, map_mount (pen->view, pen->view->setup));

  for (int needs_both = 1; needs_both >= 0; needs_both--)
    for (gsize i = 0; i < G_N_ELEMENTS (corners); i++)
      if (!is_near (corners[i], cross, away) &&
          (!needs_both || !is_near (corners[i], mount, away)))
        return corners[i];
  return corners[0];
}

static void
draw_box (const MapPen *pen, PixelBox box)
{
  const Theme *t = pen->theme;

  cairo_rectangle (pen->cr, floor (box.x) + 0.5, floor (box.y) + 0.5, round (box.width),
                   round (box.height));
  theme_use (pen->cr, t->ground.alpha > 0.0 ? t->ground : t->fill);
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, t->faint);
  theme_line (pen->cr, LINE_FULL, t->thin);
  cairo_stroke (pen->cr);
}

static void
draw_rows (const MapPen *pen, const Readout *r, PixelBox box)
{
  const double left = box.x + ROOM * pen->unit,
               right = box.x + box.width - ROOM * pen->unit;
  double y = box.y + ROOM * pen->unit + 0.75 * r->line - 2.0 * pen->unit;

  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, map_small (pen, TEXT_PLAIN), r->place, left, y,
             (TextAnchor){ 0.0, TEXT_BASELINE });
  theme_use (pen->cr, pen->theme->ink);
  for (int i = 0; i < r->n_rows; i++) {
    const TextStyle style = row_style (pen, &r->rows[i]);

    y += r->line;
    text_draw (pen->texts, pen->cr, style, r->rows[i].name, left, y,
               (TextAnchor){ 0.0, TEXT_BASELINE });
    text_draw (pen->texts, pen->cr, style, r->rows[i].figure, right, y,
               (TextAnchor){ 1.0, TEXT_BASELINE });
  }
}

static void
draw_cross (const MapPen *pen)
{
  const PixelBox p = pen->layout->plot;
  const Pixel at = map_pixel (pen->layout, pen->view->cross);
  const double x = floor (at.x) + 0.5, y = floor (at.y) + 0.5;

  theme_use (pen->cr, theme_quiet (pen->theme, pen->theme->soft_ink, 0.6));
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  cairo_move_to (pen->cr, p.x, y);
  cairo_line_to (pen->cr, p.x + p.width, y);
  cairo_move_to (pen->cr, x, p.y);
  cairo_line_to (pen->cr, x, p.y + p.height);
  cairo_stroke (pen->cr);
}

void
map_readout_draw (const MapPen *pen)
{
  if (!pen->view->show_cross ||
      !pixel_box_has (pen->layout->plot, map_pixel (pen->layout, pen->view->cross)))
    return;
  const Readout readout = make_readout (pen);
  const PixelBox box = find_corner (pen, &readout);

  draw_cross (pen);
  draw_box (pen, box);
  draw_rows (pen, &readout, box);
}
