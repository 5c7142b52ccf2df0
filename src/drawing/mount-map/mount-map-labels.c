/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Values on their lines. The labels of a subject stand where its lines come nearest to a
 * rail, which runs across them: so they make a scale that is read at a glance. From there
 * a label moves along its line to where the line is straight and nothing is in its way.
 */

#include "drawing/mount-map/mount-map-private.h"

#include "drawing/pen/axis.h"
#include "drawing/sheet/sheet-pen.h"

#include "model/study/quantity-info.h"

#include <math.h>

/* Pixels at ordinary type size. */
#define STEP 8.0
#define GAP 3.0        /* between text and line */
#define LEAST_LINE 3.0 /* of the label's width: shorter lines have none */
#define BORDER 3.0
/* Where the rails lie, in parts of the plot from its middle. */
#define RAIL 0.30
/* Off the straight, pixels: refused beyond the first; each costs so much way to the rail.
 */
#define MOST_BEND 2.5
#define BEND_COST 15.0
/* Texts stand in steps of so many degrees, so that their letters are kept and not drawn
 * anew for every angle. */
#define ANGLE_STEP 2.0
#define STEEPEST_UP (-97.0)

typedef struct {
  Pixel at;
  double s; /* pixels from the line's beginning */
} Vertex;

typedef struct {
  const MapPen *pen;
  MapClaims *claims;
  GArray *labels;
  GArray *way; /* of Vertex: the line in hand */
  guint family, line;
  Pixel rail_at, rail_along;
} Placing;

#define WHOLE_DEGREE (0.5 / 60.0)

void
map_value_text (FieldSubject subject, double value, double step, char *text, size_t n)
{
  const Quantity quantity = field_subject_quantity (subject);
  const QuantityInfo info = quantity_info (quantity);
  const UnitKind kind = quantity_unit_kind (quantity);
  const double shown_step =
      fabs (unit_shown (kind, quantity_edge_value (quantity, step)));
  const double shown = unit_shown (kind, quantity_edge_value (quantity, value));
  const int most = unit_decimals (kind, info.decimals);
  const gboolean has_degrees = g_str_equal (info.unit, "°");
  int decimals = MIN (axis_step_decimals (shown_step), most);

  /* an aim may lie between the lines */
  while (decimals < most &&
         fabs (shown * pow (10, decimals) - round (shown * pow (10, decimals))) > 1e-6)
    decimals++;
  if (unit_is_sexagesimal (kind) && fabs (shown - round (shown)) > WHOLE_DEGREE) {
    unit_format_shown (kind, shown, most, FALSE, text, n);
    return;
  }
  axis_format (shown, decimals, text, n);
  g_strlcat (text, has_degrees ? "°" : "", n);
}

static void
lay_way (Placing *p)
{
  const FieldLines *lines = p->pen->families[p->family].lines;
  const FieldLine *line = &g_array_index (lines->lines, FieldLine, p->line);
  double s = 0.0;

  g_array_set_size (p->way, 0);
  for (guint i = 0; i < line->n_points + (line->is_closed ? 1 : 0); i++) {
    const Pixel at =
        map_pixel (p->pen->layout, g_array_index (lines->points, MountOffset,
                                                  line->first + i % line->n_points));

    if (i > 0) {
      const Pixel before = g_array_index (p->way, Vertex, i - 1).at;
      s += hypot (at.x - before.x, at.y - before.y);
    }
    g_array_append_val (p->way, ((Vertex){ at, s }));
  }
}

static double
way_length (const Placing *p)
{
  return g_array_index (p->way, Vertex, p->way->len - 1).s;
}

/* From vertex @from on, which is before @s. Moves @from along. */
static Pixel
way_at (const Placing *p, double s, guint *from)
{
  while (*from + 2 < p->way->len && g_array_index (p->way, Vertex, *from + 1).s < s)
    (*from)++;
  const Vertex *a = &g_array_index (p->way, Vertex, *from), *b = a + 1;
  const double part = b->s > a->s ? (s - a->s) / (b->s - a->s) : 0.0;

  return pixel_between (a->at, b->at, CLAMP (part, 0.0, 1.0));
}

/* How far the vertices between lie off the straight way from @a to @b. */
static double
bend_between (const Placing *p, double from, double to, guint first, Pixel a, Pixel b)
{
  const Pixel d = pixel_direction (a, b);
  double most = 0.0;

  for (guint i = first; i < p->way->len; i++) {
    const Vertex *v = &g_array_index (p->way, Vertex, i);

    if (v->s > to)
      break;
    if (v->s > from)
      most = fmax (most, fabs ((v->at.x - a.x) * d.y - (v->at.y - a.y) * d.x));
  }
  return most;
}

static double
text_angle (Pixel a, Pixel b)
{
  double degrees = atan2 (b.y - a.y, b.x - a.x) * 180.0 / G_PI;

  degrees = ANGLE_STEP * round (degrees / ANGLE_STEP);
  while (degrees <= STEEPEST_UP)
    degrees += 180.0;
  while (degrees > STEEPEST_UP + 180.0)
    degrees -= 180.0;
  return degrees * G_PI / 180.0;
}

/* The value of a family at a pixel, by its mesh; NAN outside. */
static double
value_at (const MapPen *pen, const MapFamily *family, Pixel at)
{
  const MountGrid *g = &pen->field->grid;
  const MountOffset place = map_offset (pen->layout, at);
  const double u = (place.inboard - g->inboard_from) / (g->inboard_to - g->inboard_from) *
                   (double) (g->n_inboard - 1);
  const double w = (place.rearward - g->rearward_from) /
                   (g->rearward_to - g->rearward_from) * (double) (g->n_rearward - 1);

  if (!(u >= 0.0 && w >= 0.0 && u <= (double) (g->n_inboard - 1) &&
        w <= (double) (g->n_rearward - 1)))
    return (double) NAN;
  const size_t i = MIN ((size_t) u, g->n_inboard - 2),
               r = MIN ((size_t) w, g->n_rearward - 2);
  const MountPlace *low = &pen->field->places[r * g->n_inboard + i],
                   *high = low + g->n_inboard;
  const double p = u - (double) i, q = w - (double) r;

  return (1.0 - q) * ((1.0 - p) * mount_place_value (&low[0], family->subject) +
                      p * mount_place_value (&low[1], family->subject)) +
         q * ((1.0 - p) * mount_place_value (&high[0], family->subject) +
              p * mount_place_value (&high[1], family->subject));
}

/* Whether a line of the family runs through the box: the fields are so smooth that its
 * corners tell. The label's own line does not count. */
static gboolean
is_crossed (const Placing *p, const Pixel corners[4], guint family, double own)
{
  const MapFamily *f = &p->pen->families[family];
  double least = INFINITY, most = -INFINITY;

  for (int i = 0; i < 4; i++) {
    const double value = value_at (p->pen, f, corners[i]);

    if (!isfinite (value))
      return TRUE;
    least = fmin (least, value);
    most = fmax (most, value);
  }
  for (guint i = 0; i < f->lines->lines->len; i++) {
    const double level = g_array_index (f->lines->lines, FieldLine, i).level;

    if (level >= least && level <= most && level != own)
      return TRUE;
  }
  return FALSE;
}

static gboolean
is_inside (const Placing *p, const Pixel corners[4])
{
  const PixelBox plot = p->pen->layout->plot;
  const double room = BORDER * p->pen->unit;

  for (int i = 0; i < 4; i++)
    if (corners[i].x < plot.x + room || corners[i].x > plot.x + plot.width - room ||
        corners[i].y < plot.y + room || corners[i].y > plot.y + plot.height - room)
      return FALSE;
  return TRUE;
}

static gboolean
is_free (const Placing *p, const MapBox *box)
{
  const MapPen *pen = p->pen;
  const FieldLines *lines = pen->families[p->family].lines;
  const double own = g_array_index (lines->lines, FieldLine, p->line).level;
  Pixel corners[4];

  map_box_corners (box, corners);
  if (!is_inside (p, corners) || !map_is_free (p->claims, box) ||
      !map_is_free (pen->strokes, box))
    return FALSE;
  for (guint f = 0; f < pen->n_families; f++)
    if (is_crossed (p, corners, f, f == p->family ? own : (double) NAN))
      return FALSE;
  return TRUE;
}

typedef struct {
  double cost, from, to;
  Pixel a, b;
} Stretch;

/* The way that the middle of a stretch has to the rail, and its bend. */
static double
stretch_cost (const Placing *p, Pixel a, Pixel b, double bend)
{
  const Pixel middle = pixel_between (a, b, 0.5);

  return fabs ((middle.x - p->rail_at.x) * p->rail_along.y -
               (middle.y - p->rail_at.y) * p->rail_along.x) +
         BEND_COST * bend;
}

static void
collect_stretches (const Placing *p, double width, GArray *stretches)
{
  const double length = way_length (p), step = STEP * p->pen->unit;
  guint low = 0, high = 0;

  g_array_set_size (stretches, 0);
  for (double s = 0.0; s + width <= length; s += step) {
    const guint first = low;
    const Pixel a = way_at (p, s, &low), b = way_at (p, s + width, &high);
    const double bend = bend_between (p, s, s + width, first, a, b);

    if (bend <= MOST_BEND * p->pen->unit)
      g_array_append_val (stretches, ((Stretch){ stretch_cost (p, a, b, bend), s,
                                                 s + width, a, b }));
  }
}

static int
compare_stretches (gconstpointer a, gconstpointer b)
{
  const double left = ((const Stretch *) a)->cost, right = ((const Stretch *) b)->cost;

  return (left > right) - (left < right);
}

static MapBox
label_box (const Stretch *stretch, double angle, TextSize size)
{
  return (MapBox){ pixel_between (stretch->a, stretch->b, 0.5),
                   { cos (angle), sin (angle) },
                   size.width / 2.0,
                   size.height / 2.0 };
}

static void
place_label (Placing *p, GArray *stretches)
{
  const MapPen *pen = p->pen;
  const MapFamily *family = &pen->families[p->family];
  const FieldLine *line = &g_array_index (family->lines->lines, FieldLine, p->line);
  MapLabel label = { .family = p->family, .line = p->line };

  map_value_text (family->subject, line->level, family->lines->step, label.text,
                  sizeof label.text);
  const TextSize size =
      text_measure (pen->texts, map_small (pen, TEXT_PLAIN), label.text);
  const double width = size.width + 2.0 * GAP * pen->unit;

  lay_way (p);
  if (way_length (p) < LEAST_LINE * width)
    return;
  collect_stretches (p, width, stretches);
  g_array_sort (stretches, compare_stretches);
  for (guint i = 0; i < stretches->len; i++) {
    const Stretch *stretch = &g_array_index (stretches, Stretch, i);

    label.angle = text_angle (stretch->a, stretch->b);
    label.box = label_box (stretch, label.angle, size);
    const MapBox grown = map_box_grown (label.box, GAP * pen->unit);
    if (!is_free (p, &grown))
      continue;
    label.from = stretch->from;
    label.to = stretch->to;
    map_claim (p->claims, label.box);
    g_array_append_val (p->labels, label);
    return;
  }
}

/* The rail runs the way that the family's values change most, as seen over the whole map;
 * above the middle or to the right of it for the first family, on the other side for the
 * second where it would be the same rail. */
static void
lay_rail (Placing *p)
{
  const MapPen *pen = p->pen;
  const PixelBox plot = pen->layout->plot;
  const MapFamily *family = &pen->families[p->family];
  const Pixel middle = { plot.x + plot.width / 2.0, plot.y + plot.height / 2.0 };
  const double reach = fmin (plot.width, plot.height) / 4.0;
  const double x = value_at (pen, family, (Pixel){ middle.x + reach, middle.y }) -
                   value_at (pen, family, (Pixel){ middle.x - reach, middle.y });
  const double y = value_at (pen, family, (Pixel){ middle.x, middle.y + reach }) -
                   value_at (pen, family, (Pixel){ middle.x, middle.y - reach });
  const bool is_level = !(fabs (y) > fabs (x));
  const double way = p->family == 0 ? RAIL : -RAIL;

  p->rail_along = pixel_direction ((Pixel){ 0, 0 }, (Pixel){ x, y });
  p->rail_at = is_level ? (Pixel){ middle.x, middle.y - way * plot.height }
                        : (Pixel){ middle.x + way * plot.width, middle.y };
}

void
map_labels_place (const MapPen *pen, MapClaims *claims, GArray *labels)
{
  g_autoptr (GArray) way = g_array_new (FALSE, FALSE, sizeof (Vertex));
  g_autoptr (GArray) stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  Placing p = { .pen = pen, .claims = claims, .labels = labels, .way = way };

  g_array_set_size (labels, 0);
  for (p.family = 0; p.family < pen->n_families; p.family++) {
    lay_rail (&p);
    for (p.line = 0; p.line < pen->families[p.family].lines->lines->len; p.line++)
      place_label (&p, stretches);
  }
}
