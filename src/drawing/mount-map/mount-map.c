/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/mount-map/mount-map.h"

#include "drawing/mount-map/mount-map-private.h"

#include "drawing/sheet/sheet-handles.h"
#include "model/words/unit.h"

#include <math.h>
#include <string.h>

/* Pixels at ordinary type size: lines of a subject lie so far apart, or further. */
#define LEAST_SPACING 40.0
#define FEWEST_LEVELS 4
#define MOST_LEVELS 16
#define MARKER_REACH 12.0
#define TITLE_MARGIN 12.0

struct MountMap {
  TextCache *texts;
  MountField *field;
  FieldLines *lines[2];
  MapFamily families[2];
  guint n_families;
  int most_levels;

  MapLayout layout;
  gboolean is_laid_out;
  MapClaims marks, strokes, claims; /* claims: the texts too */
  MapNotes notes;
  GArray *labels;         /* of MapLabel */
  MountOffset placed_for; /* the mount that texts were kept off */

  /* what the still part was drawn for */
  cairo_surface_t *still;
  GByteArray *key, *new_key;
  gboolean is_stale;
  UnitChoice units;

  /* for hits */
  Pixel handle;
  GArray *dots, *setups; /* of Pixel; NAN where none is shown */
};

MountMap *
mount_map_new (void)
{
  MountMap *map = g_new0 (MountMap, 1);

  map->texts = text_cache_new ();
  map->field = mount_field_new ();
  for (int i = 0; i < 2; i++)
    map->lines[i] = field_lines_new ();
  map->labels = g_array_new (FALSE, FALSE, sizeof (MapLabel));
  map->key = g_byte_array_new ();
  map->new_key = g_byte_array_new ();
  map->dots = g_array_new (FALSE, FALSE, sizeof (Pixel));
  map->setups = g_array_new (FALSE, FALSE, sizeof (Pixel));
  return map;
}

void
mount_map_free (MountMap *map)
{
  if (map == NULL)
    return;
  text_cache_free (map->texts);
  mount_field_free (map->field);
  for (int i = 0; i < 2; i++)
    field_lines_free (map->lines[i]);
  g_array_unref (map->labels);
  g_byte_array_unref (map->key);
  g_byte_array_unref (map->new_key);
  g_array_unref (map->dots);
  g_array_unref (map->setups);
  g_clear_pointer (&map->still, cairo_surface_destroy);
  g_free (map);
}

static gboolean
is_subject (int subject)
{
  return subject >= 0 && subject < N_FIELD_SUBJECTS;
}

/* TRUE where the lines have to be traced anew. */
static gboolean
take_family (MountMap *map, const MountMapView *view, int which, FieldSubject subject)
{
  MapFamily family = { .subject = subject,
                       .lines = map->lines[which],
                       .colour = map_family_colour (&view->theme, which),
                       .is_dashed = which == 1,
                       .least = -INFINITY,
                       .most = INFINITY };

  family.has_band =
      field_subject_band (view->car, view->side, subject, &family.least, &family.most);
  const MapFamily before = map->families[map->n_families];
  map->families[map->n_families++] = family;
  return before.subject != family.subject || before.lines != family.lines ||
         before.has_band != family.has_band || before.least != family.least ||
         before.most != family.most;
}

static gboolean
take_families (MountMap *map, const MountMapView *view)
{
  const guint n_before = map->n_families;
  const int *subjects = view->subjects;
  gboolean is_new = FALSE;

  map->n_families = 0;
  for (int i = 0; i < 2; i++)
    if (is_subject (subjects[i]) && (i == 0 || subjects[1] != subjects[0]))
      is_new |= take_family (map, view, i, (FieldSubject) subjects[i]);
  return is_new || map->n_families != n_before;
}

static gboolean
take_levels (MountMap *map)
{
  const PixelBox plot = map->layout.plot;
  const int most =
      CLAMP ((int) (fmax (plot.width, plot.height) / (LEAST_SPACING * map->layout.unit)),
             FEWEST_LEVELS, MOST_LEVELS);
  const gboolean is_new = most != map->most_levels;

  map->most_levels = most;
  return is_new;
}

static void
trace_lines (MountMap *map)
{
  for (guint f = 0; f < map->n_families; f++) {
    const MapFamily *family = &map->families[f];

    field_lines_trace (family->lines, map->field, family->subject, map->most_levels);
    if (family->has_band && isfinite (family->least))
      field_lines_trace_level (family->lines, map->field, family->subject, family->least);
    if (family->has_band && isfinite (family->most))
      field_lines_trace_level (family->lines, map->field, family->subject, family->most);
  }
}

static MapPen
pen_for (MountMap *map, cairo_t *cr, const MountMapView *view)
{
  return (MapPen){ .cr = cr,
                   .texts = map->texts,
                   .theme = &view->theme,
                   .view = view,
                   .layout = &map->layout,
                   .field = map->field,
                   .families = map->families,
                   .n_families = map->n_families,
                   .marks = &map->marks,
                   .strokes = &map->strokes,
                   .unit = map->layout.unit };
}

/* Marks claim their places first, then what is written at them, then the lines' values,
 * which have the most places to choose from. */
static void
place_texts (MountMap *map, const MapPen *pen)
{
  map->claims = map->marks;
  map->notes.n = 0;
  map_handle_claim (pen, &map->claims);
  map->strokes.n = 0;
  map_plate_claim_strokes (pen, &map->strokes);
  map_tower_claim_strokes (pen, &map->strokes);
  map_marks_note (pen, &map->claims, &map->notes);
  map_plate_note (pen, &map->claims, &map->notes);
  map_tower_note (pen, &map->claims, &map->notes);
  map_labels_place (pen, &map->claims, map->labels);
}

/* Texts that the handle lies on give way. */
static gboolean
hide_texts (MountMap *map, const MapPen *pen)
{
  MapClaims handle = { .n = 0 };
  gboolean is_new = FALSE;

  map_handle_claim (pen, &handle);
  for (guint i = 0; i < map->labels->len; i++) {
    MapLabel *label = &g_array_index (map->labels, MapLabel, i);
    const gboolean is_hidden = !map_is_free (&handle, &label->box);

    is_new |= is_hidden != label->is_hidden;
    label->is_hidden = is_hidden;
  }
  for (guint i = 0; i < map->notes.n; i++) {
    MapNote *note = &map->notes.notes[i];
    const MapBox box = map_box_upright (note->box);
    const gboolean is_hidden = !map_is_free (&handle, &box);

    is_new |= is_hidden != note->is_hidden;
    note->is_hidden = is_hidden;
  }
  return is_new;
}

static void
note_targets (MountMap *map, const MountMapView *view)
{
  const guint n_dots = view->plate != NULL ? plate_n_places (view->plate) : 0;

  map->handle = map_pixel (&map->layout, map_mount (view, view->setup));
  g_array_set_size (map->dots, n_dots);
  for (guint i = 0; i < n_dots; i++)
    g_array_index (map->dots, Pixel, i) =
        map_pixel (&map->layout, map_plate_place (view, i));
  g_array_set_size (map->setups, view->car->setups->len);
  for (guint i = 0; i < view->car->setups->len; i++)
    g_array_index (map->setups, Pixel, i) =
        map_shows_setup (view, i) ? map_pixel (&map->layout, map_mount (view, i))
                                  : (Pixel){ NAN, NAN };
}

static void
lay_out (MountMap *map, const MountMapView *view, double width, double height)
{
  const gboolean holds = view->hold_window && map->is_laid_out;
  const FieldWindow bounds = holds ? map->layout.bounds : map_bounds (view);

  map->layout = map_layout_fit (&view->theme, bounds, width, height);
  map->is_laid_out = TRUE;
  if (!holds)
    map->placed_for = map_mount (view, view->setup);
  note_targets (map, view);
}

static void
prepare (MountMap *map, const MountMapView *view, double width, double height)
{
  GByteArray *before = map->key;

  lay_out (map, view, width, height);
  gboolean is_new = take_families (map, view);
  is_new |= !unit_choice_equal (&map->units, unit_choice ());
  map->units = *unit_choice ();
  is_new |= take_levels (map);
  is_new |= mount_field_solve (map->field, view->car, view->setup, view->side,
                               map->layout.window);
  if (is_new)
    trace_lines (map);

  const MapPen pen = pen_for (map, NULL, view);
  map->marks.n = 0;
  map_marks_claim (&pen, &map->marks);
  map_plate_claim (&pen, &map->marks);
  map->key = map->new_key;
  map->new_key = before;
  map_key_fill (&pen, map->placed_for, map->key);
  is_new |= map->key->len != before->len ||
            memcmp (map->key->data, before->data, before->len) != 0;
  if (is_new)
    place_texts (map, &pen);
  map->is_stale |= hide_texts (map, &pen) || is_new;
}

static void
draw_still (MountMap *map, const MapPen *pen)
{
  const PixelBox plot = map->layout.plot;

  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, plot.x, plot.y, plot.width, plot.height);
  cairo_clip (pen->cr);
  /* half the time of cairo's own choice, and no difference to the eye */
  cairo_set_antialias (pen->cr, CAIRO_ANTIALIAS_FAST);
  map_bands_draw (pen);
  const gboolean has_gaps = map_gaps_draw (pen);
  map_tower_draw (pen);
  map_lines_draw (pen, map->labels);
  map_plate_draw (pen);
  map_marks_draw (pen);
  map_labels_draw (pen, map->labels);
  map_notes_draw (pen, &map->notes);
  cairo_restore (pen->cr);
  map_frame_draw (pen, has_gaps);
}

static void
draw_moving (const MapPen *pen)
{
  const PixelBox plot = pen->layout->plot;

  map_frame_draw_mount (pen, map_mount (pen->view, pen->view->setup));
  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, plot.x, plot.y, plot.width, plot.height);
  cairo_clip (pen->cr);
  cairo_set_antialias (pen->cr, CAIRO_ANTIALIAS_FAST);
  map_plate_draw_lit (pen);
  map_handle_draw (pen);
  map_readout_draw (pen);
  cairo_restore (pen->cr);
}

static void
renew_still (MountMap *map, const MountMapView *view, double width, double height)
{
  const double scale = view->pixel_scale;
  const int wide = (int) ceil (width * scale), high = (int) ceil (height * scale);
  const cairo_format_t format =
      view->theme.ground.alpha >= 1.0 ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32;

  g_clear_pointer (&map->still, cairo_surface_destroy);
  map->still = cairo_image_surface_create (format, wide, high);
  cairo_surface_set_device_scale (map->still, scale, scale);

  cairo_t *cr = cairo_create (map->still);
  const MapPen pen = pen_for (map, cr, view);
  theme_paint_ground (cr, &view->theme, width, height);
  draw_still (map, &pen);
  cairo_destroy (cr);
}

static void
show_still (
    MountMap *map, cairo_t *cr, const MountMapView *view, double width, double height)
{
  if (map->still == NULL || map->is_stale)
    renew_still (map, view, width, height);
  cairo_set_source_surface (cr, map->still, 0.0, 0.0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_fill (cr);
  map->is_stale = FALSE;
}

/* The setups' markers are told apart by the title's legend. */
static Study *
study_for_title (const MountMapView *view)
{
  Study *study = study_new ();

  study_solve (study, view->car, view->setup, 0.0);
  return study;
}

static void
draw_with_title (
    MountMap *map, cairo_t *cr, const MountMapView *view, double width, double height)
{
  g_autoptr (Study) study = study_for_title (view);
  const double inner = width - 2.0 * TITLE_MARGIN;
  const double foot =
      title_block_height (map->texts, &view->theme, view->title, study, inner) +
      2.0 * TITLE_MARGIN;
  const double high = fmax (height - foot, 40.0);

  prepare (map, view, width, high);
  const MapPen pen = pen_for (map, cr, view);
  theme_paint_ground (cr, &view->theme, width, height);
  draw_still (map, &pen);
  draw_moving (&pen);
  title_block_draw (map->texts, cr, &view->theme, view->title, TITLE_MARGIN,
                    high + TITLE_MARGIN, inner, study);
}

void
mount_map_draw (
    MountMap *map, cairo_t *cr, const MountMapView *view, double width, double height)
{
  g_return_if_fail (view->car != NULL && width > 0.0 && height > 0.0);

  cairo_save (cr);
  if (view->title != NULL)
    draw_with_title (map, cr, view, width, height);
  else {
    prepare (map, view, width, height);
    const MapPen pen = pen_for (map, cr, view);
    if (view->pixel_scale > 0.0)
      show_still (map, cr, view, width, height);
    else {
      theme_paint_ground (cr, &view->theme, width, height);
      draw_still (map, &pen);
    }
    draw_moving (&pen);
  }
  cairo_restore (cr);
}

void
mount_map_arrange (MountMap *map, const MountMapView *view, double width, double height)
{
  g_return_if_fail (view->car != NULL && width > 0.0 && height > 0.0);

  lay_out (map, view, width, height);
}

static int
nearest_of (const GArray *places, Pixel p, double reach)
{
  int nearest = MOUNT_MAP_NONE;

  for (guint i = 0; i < places->len; i++) {
    const Pixel at = g_array_index (places, Pixel, i);
    const double distance = hypot (p.x - at.x, p.y - at.y);

    if (distance <= reach) {
      reach = distance;
      nearest = (int) i;
    }
  }
  return nearest;
}

MountMapHit
mount_map_hit (const MountMap *map, double x, double y)
{
  const Pixel p = { x, y };
  MountMapHit hit = { .place = MOUNT_MAP_NONE, .setup = MOUNT_MAP_NONE };

  if (!map->is_laid_out)
    return hit;
  hit.at = map_offset (&map->layout, p);
  hit.on_map = pixel_box_has (map->layout.plot, p);
  if (!hit.on_map)
    return hit;
  hit.on_handle = hypot (x - map->handle.x, y - map->handle.y) <=
                  fmax (MARKER_REACH, handle_mark_reach (map->layout.unit));
  hit.place = nearest_of (map->dots, p, map_dot_reach (&map->layout));
  hit.setup =
      nearest_of (map->setups, p, fmax (MARKER_REACH, MARKER_REACH * map->layout.unit));
  return hit;
}

void
mount_map_to_pixel (const MountMap *map, MountOffset at, double *x, double *y)
{
  const Pixel p = map->is_laid_out ? map_pixel (&map->layout, at) : (Pixel){ 0.0, 0.0 };

  *x = p.x;
  *y = p.y;
}

double
mount_map_pixels_per_mm (const MountMap *map)
{
  return map->layout.scale;
}

const MountField *
mount_map_field (const MountMap *map)
{
  return map->field;
}

const FieldLines *
mount_map_lines (const MountMap *map, guint which)
{
  return which < map->n_families ? map->families[which].lines : NULL;
}

guint
mount_map_n_labels (const MountMap *map)
{
  return map->labels->len;
}

MountMapLabel
mount_map_label (const MountMap *map, guint i)
{
  const MapLabel *label = &g_array_index (map->labels, MapLabel, i);
  const FieldLines *lines = map->families[label->family].lines;

  return (MountMapLabel){
    .text = label->text,
    .which = label->family,
    .level = g_array_index (lines->lines, FieldLine, label->line).level,
    .x = label->box.centre.x,
    .y = label->box.centre.y,
    .width = 2.0 * label->box.half_width,
    .height = 2.0 * label->box.half_height,
    .angle = label->angle,
    .is_shown = !label->is_hidden,
  };
}
