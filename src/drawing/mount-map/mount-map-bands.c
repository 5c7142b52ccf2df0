/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Areas over the meshes of the grid: within a mesh each value is taken as straight along
 * the edges, which the eye cannot tell from the exact lines drawn over it. Neighbours
 * share their edges to the bit, so that one path of them all has no seams. */

#include "drawing/mount-map/mount-map-private.h"

#include <math.h>

#define BAND_ALPHA 0.13
#define BAND_ALPHA_DARK 0.17
#define BOTH_ALPHA 0.12

/* Four cuts make half as many again each, at most: 4, 6, 9, 13, 19. */
#define MOST_CORNERS 19

typedef struct {
  Pixel at;
  double value[2];
} PatchCorner;

typedef struct {
  PatchCorner corners[MOST_CORNERS];
  int n;
} Patch;

/* The part of @patch where the value of @family is at least @bound, or at most. */
static void
cut (Patch *patch, int family, double bound, bool is_least)
{
  Patch rest = { .n = 0 };

  if (!isfinite (bound))
    return;
  for (int i = 0; i < patch->n; i++) {
    const PatchCorner *a = &patch->corners[i], *b = &patch->corners[(i + 1) % patch->n];
    const double at_a = is_least ? a->value[family] - bound : bound - a->value[family];
    const double at_b = is_least ? b->value[family] - bound : bound - b->value[family];

    if (at_a >= 0.0)
      rest.corners[rest.n++] = *a;
    if ((at_a >= 0.0) != (at_b >= 0.0)) {
      const double part = at_a / (at_a - at_b);
      PatchCorner *c = &rest.corners[rest.n++];

      c->at = (Pixel){ a->at.x + part * (b->at.x - a->at.x),
                       a->at.y + part * (b->at.y - a->at.y) };
      for (int f = 0; f < 2; f++)
        c->value[f] = a->value[f] + part * (b->value[f] - a->value[f]);
    }
  }
  *patch = rest;
}

static void
trace_patch (cairo_t *cr, const Patch *patch)
{
  cairo_new_sub_path (cr);
  for (int i = 0; i < patch->n; i++)
    cairo_line_to (cr, patch->corners[i].at.x, patch->corners[i].at.y);
  if (patch->n > 0)
    cairo_close_path (cr);
}

/* Which of the families count, as bits. */
static bool
is_whole (const MapPen *pen, const Patch *patch, guint which)
{
  for (guint f = 0; f < pen->n_families; f++)
    for (int i = 0; (which >> f & 1) != 0 && i < patch->n; i++)
      if (patch->corners[i].value[f] < pen->families[f].least ||
          patch->corners[i].value[f] > pen->families[f].most)
        return false;
  return true;
}

static PatchCorner
corner_at (const MapPen *pen, size_t i, size_t r)
{
  const MountPlace *place = &pen->field->places[r * pen->field->grid.n_inboard + i];
  PatchCorner corner = { .at = map_pixel (pen->layout,
                                          mount_grid_at (&pen->field->grid, i, r)) };

  for (guint f = 0; f < pen->n_families; f++)
    corner.value[f] = mount_place_value (place, pen->families[f].subject);
  return corner;
}

/* Of all places of the grid. */
static PatchCorner *
make_corners (const MapPen *pen)
{
  const MountGrid *grid = &pen->field->grid;
  PatchCorner *corners = g_new (PatchCorner, grid->n_inboard * grid->n_rearward);

  for (size_t r = 0; r < grid->n_rearward; r++)
    for (size_t i = 0; i < grid->n_inboard; i++)
      corners[r * grid->n_inboard + i] = corner_at (pen, i, r);
  return corners;
}

static Patch
mesh_patch (const MountGrid *grid, const PatchCorner *corners, size_t i, size_t r)
{
  const PatchCorner *low = &corners[r * grid->n_inboard + i],
                    *high = low + grid->n_inboard;

  return (Patch){ .corners = { low[0], low[1], high[1], high[0] }, .n = 4 };
}

static bool
is_assembled (const Patch *patch, guint n_families)
{
  for (int i = 0; i < patch->n; i++)
    for (guint f = 0; f < n_families; f++)
      if (!isfinite (patch->corners[i].value[f]))
        return false;
  return true;
}

/* Whole meshes that lie side by side are one rectangle. */
static void
flush_run (cairo_t *cr, Patch *run)
{
  trace_patch (cr, run);
  run->n = 0;
}

static void
lengthen_run (Patch *run, const Patch *mesh)
{
  if (run->n == 0)
    *run = *mesh;
  run->corners[1] = mesh->corners[1];
  run->corners[2] = mesh->corners[2];
}

static void
trace_area (const MapPen *pen, const PatchCorner *corners, guint which)
{
  const MountGrid *grid = &pen->field->grid;

  for (size_t r = 0; r + 1 < grid->n_rearward; r++) {
    Patch run = { .n = 0 };

    for (size_t i = 0; i + 1 < grid->n_inboard; i++) {
      Patch patch = mesh_patch (grid, corners, i, r);
      const bool counts = is_assembled (&patch, pen->n_families);

      if (counts && is_whole (pen, &patch, which)) {
        lengthen_run (&run, &patch);
        continue;
      }
      flush_run (pen->cr, &run);
      for (guint f = 0; counts && f < pen->n_families; f++)
        if ((which >> f & 1) != 0) {
          cut (&patch, (int) f, pen->families[f].least, true);
          cut (&patch, (int) f, pen->families[f].most, false);
        }
      if (counts)
        trace_patch (pen->cr, &patch);
    }
    flush_run (pen->cr, &run);
  }
}

void
map_bands_draw (const MapPen *pen)
{
  const double alpha = pen->theme->is_dark ? BAND_ALPHA_DARK : BAND_ALPHA;
  g_autofree PatchCorner *corners = NULL;
  guint both = 0;

  for (guint f = 0; f < pen->n_families; f++)
    if (pen->families[f].has_band && corners == NULL)
      corners = make_corners (pen);
  for (guint f = 0; f < pen->n_families; f++) {
    if (!pen->families[f].has_band)
      continue;
    both |= 1u << f;
    trace_area (pen, corners, 1u << f);
    theme_use (pen->cr, colour_with_alpha (pen->families[f].colour, alpha));
    cairo_fill (pen->cr);
  }
  if (both != 3)
    return;
  trace_area (pen, corners, both);
  theme_use (pen->cr, colour_with_alpha (pen->families[0].colour, BOTH_ALPHA));
  cairo_fill (pen->cr);
}

gboolean
map_gaps_draw (const MapPen *pen)
{
  const MountGrid *grid = &pen->field->grid;

  if (pen->field->n_assembled == grid->n_inboard * grid->n_rearward)
    return FALSE;
  g_autofree PatchCorner *corners = make_corners (pen);
  for (size_t r = 0; r + 1 < grid->n_rearward; r++) {
    Patch run = { .n = 0 };

    for (size_t i = 0; i + 1 < grid->n_inboard; i++) {
      const Patch patch = mesh_patch (grid, corners, i, r);

      if (is_assembled (&patch, pen->n_families))
        flush_run (pen->cr, &run);
      else
        lengthen_run (&run, &patch);
    }
    flush_run (pen->cr, &run);
  }
  theme_use (pen->cr, pen->theme->faint);
  cairo_fill (pen->cr);
  return TRUE;
}
