/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sketch of the measured points with the numbers that they have in the table. */

#include "drawing/guide/point-sketch.h"
#include "drawing/mount-map/mount-map-claims.h"
#include "drawing/report/report-parts.h"
#include "drawing/sheet/sheet-pen.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Points. */
#define LEAST_HEIGHT 200.0
#define NEAREST 7.0 /* a number's middle from its dot */
#define STEP 3.0
#define N_STEPS 6
#define N_WAYS 16
#define DOT 3.0
#define AXIS_WAY 44.0
#define HALF_WHEEL 80.0 /* mm, as the sketch draws it */

typedef struct {
  const ReportFlow *flow;
  const Car *car;
  const PointSketchView *view;
  PointSketchFit fit;
  MapClaims claims;
} Sketch;

typedef Pixel (*Project) (const Sketch *sketch, Vec3 at);

static Pixel
in_front (const Sketch *s, Vec3 at)
{
  return (Pixel){ s->fit.x + at.y * s->fit.scale, s->fit.front - at.z * s->fit.scale };
}

static Pixel
in_plan (const Sketch *s, Vec3 at)
{
  return (Pixel){ s->fit.x + at.y * s->fit.scale, s->fit.plan + at.x * s->fit.scale };
}

static void
claim_between (Sketch *s, Project project, Vec3 a, Vec3 b)
{
  map_claim_line (&s->claims, project (s, a), project (s, b));
}

/* What the sketch has drawn, so far as a number may not lie on it. */
static void
claim_view (Sketch *s, Project project)
{
  static const PointName parts[][2] = { { POINT_ARM_FRONT_PIVOT, POINT_BALL_JOINT },
                                        { POINT_ARM_REAR_PIVOT, POINT_BALL_JOINT },
                                        { POINT_STRUT_FOOT, POINT_UPPER_MOUNT },
                                        { POINT_TIE_ROD_INNER, POINT_TIE_ROD_OUTER } };
  const Vec3 centre = s->car->points[POINT_WHEEL_CENTRE];
  const double r = s->car->loaded_radius_mm;

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    claim_between (s, project, s->car->points[parts[i][0]], s->car->points[parts[i][1]]);
  for (int side = -1; side <= 1; side += 2)
    claim_between (s, project, vec3_add (centre, (Vec3){ -r, side * HALF_WHEEL, -r }),
                   vec3_add (centre, (Vec3){ r, side * HALF_WHEEL, r }));
  for (PointName i = 0; i < N_POINTS; i++) {
    const Pixel at = project (s, s->car->points[i]);

    map_claim (&s->claims, map_box_upright ((PixelBox){ at.x - DOT, at.y - DOT, 2.0 * DOT,
                                                        2.0 * DOT }));
  }
}

/* Arrows of the axes, ground and front axle with their words. */
static void
claim_frame (Sketch *s)
{
  const double small = s->view->theme.small_text, below = 2.0 * small;
  const double wheel =
      in_plan (s, s->car->points[POINT_WHEEL_CENTRE]).x + HALF_WHEEL * s->fit.scale;
  const Pixel front = { s->fit.x, s->fit.front }, plan = { s->fit.x, s->fit.plan };

  map_claim (&s->claims, map_box_upright ((PixelBox){ front.x, front.y - 2.0,
                                                      wheel - front.x, below }));
  map_claim (&s->claims,
             map_box_upright ((PixelBox){ plan.x, plan.y, wheel - plan.x, below }));
  map_claim_line (&s->claims, plan, (Pixel){ wheel, plan.y });
  map_claim_line (&s->claims, front, (Pixel){ front.x, front.y - AXIS_WAY });
}

static MapBox
number_box (const Sketch *s, Pixel middle, const char *text)
{
  const TextStyle style = { s->view->theme.font, s->view->theme.small_text, TEXT_BOLD };
  const TextSize size = text_measure (s->flow->pen.texts, style, text);

  return map_box_upright ((PixelBox){ middle.x - size.width / 2.0,
                                      middle.y - size.height / 2.0, size.width,
                                      size.height });
}

/* As near to its dot as it is free, to the right of it before all others. */
static Pixel
find_place (const Sketch *s, Pixel dot, const char *text)
{
  for (int step = 0; step < N_STEPS; step++)
    for (int way = 0; way < N_WAYS; way++) {
      const double angle = 2.0 * G_PI * way / N_WAYS, far = NEAREST + step * STEP;
      const Pixel at = { dot.x + far * cos (angle), dot.y - far * sin (angle) };
      const MapBox box = number_box (s, at, text);

      if (map_is_free (&s->claims, &box))
        return at;
    }
  return (Pixel){ NAN, NAN };
}

static void
write_numbers (Sketch *s, Project project)
{
  const Theme *theme = &s->view->theme;
  const TextStyle style = { theme->font, theme->small_text, TEXT_BOLD };
  cairo_t *cr = s->flow->pen.cr;

  for (PointName i = 0; i < N_POINTS; i++) {
    g_autofree char *text = number_text (i + 1.0, 0);
    const Pixel dot = project (s, s->car->points[i]), at = find_place (s, dot, text);

    if (!isfinite (at.x))
      continue;
    map_claim (&s->claims, number_box (s, at, text));
    theme_use (cr, theme->accent);
    if (hypot (at.x - dot.x, at.y - dot.y) > NEAREST + STEP) {
      const Pixel way = pixel_direction (dot, at);

      theme_line (cr, LINE_FULL, 0.7 * theme->thin);
      cairo_move_to (cr, dot.x + DOT * way.x, dot.y + DOT * way.y);
      cairo_line_to (cr, at.x - 5.0 * way.x, at.y - 5.0 * way.y);
      cairo_stroke (cr);
      map_claim_line (&s->claims, dot, at);
    }
    text_draw (s->flow->pen.texts, cr, style, text, at.x, at.y, (TextAnchor){ 0.5, 0.5 });
  }
}

static void
draw_sketch (Sketch *s, double width, double height)
{
  cairo_t *cr = s->flow->pen.cr;

  s->fit = point_sketch_fit (s->view, width, height);
  point_sketch_draw (s->flow->pen.texts, cr, s->view, width, height);
  claim_frame (s);
  claim_view (s, in_front);
  claim_view (s, in_plan);
  write_numbers (s, in_front);
  write_numbers (s, in_plan);
}

void
report_draw_points (ReportFlow *flow)
{
  const Car *car = flow->report->car;
  const Frame rest = report_flow_rest (flow);
  const double height = rest.height - REPORT_GAP;
  cairo_t *cr = flow->pen.cr;
  PointSketchView view = { .loaded_radius = car->loaded_radius_mm,
                           .point = POINT_SKETCH_NONE,
                           .axis = POINT_SKETCH_NONE,
                           .theme = flow->pen.theme };
  Sketch sketch = { .flow = flow, .car = car, .view = &view };

  if (height < LEAST_HEIGHT || cr == NULL)
    return;
  for (PointName i = 0; i < N_POINTS; i++)
    view.points[i] = car->points[i];
  cairo_save (cr);
  cairo_translate (cr, rest.x, rest.y + REPORT_GAP);
  cairo_rectangle (cr, 0.0, 0.0, rest.width, height);
  cairo_clip (cr);
  draw_sketch (&sketch, rest.width, height);
  cairo_restore (cr);
}
