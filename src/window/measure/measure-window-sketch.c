/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/measure/measure-window-sketch.h"

#include "drawing/guide/point-sketch.h"
#include "drawing/sheet/sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FADED 0.65 /* how much of the ground lies over a sheet that no longer holds */

struct _SwMeasureSketch {
  SwCanvas parent_instance;

  TextCache *texts;
  Sheet *sheet;
  Study *study;
  Car *sound; /* the last sound car as measured, or NULL */
  gboolean is_sound;
  Vec3 points[2][N_POINTS]; /* by side; NAN where not entered */
  double loaded_radius;
  int field;
};

G_DEFINE_FINAL_TYPE (SwMeasureSketch, sw_measure_sketch, SW_TYPE_CANVAS)

/* The point in hand, drawn on the left as everything is. */
static gboolean
find_point (SwMeasureSketch *self, MeasureField *field, Vec3 *at)
{
  if (self->field < 0)
    return FALSE;
  *field = measure_field ((guint) self->field);
  if (field->point == N_POINTS)
    return FALSE;
  *at = self->points[field->group == MEASURE_RIGHT_POINTS][field->point];
  return TRUE;
}

static void
ring_on_sheet (SwMeasureSketch *self, cairo_t *cr, const SheetView *view)
{
  const Vec3 mount = self->study->measured.corner.upper_mount;
  const double scale = sheet_scale (self->sheet);
  MeasureField field;
  Vec3 at;

  if (!find_point (self, &field, &at) || !isfinite (at.x + at.y + at.z))
    return;
  for (SheetViewName name = 0; name < N_SHEET_VIEWS; name++) {
    const double right = name == SHEET_SIDE ? at.x - mount.x : at.y - mount.y;
    const double down = name == SHEET_PLAN ? at.x - mount.x : mount.z - at.z;
    double x, y;

    if (sheet_handle_place (self->sheet, SHEET_HANDLE_MOUNT, name, &x, &y))
      point_sketch_ring (cr, &view->theme, x + right * scale, y + down * scale);
  }
}

static void
draw_sheet (SwMeasureSketch *self, cairo_t *cr, double width, double height)
{
  const SheetView view = { .study = self->study,
                           .section_width = self->sound->section_width_mm,
                           .theme = sw_canvas_get_theme (SW_CANVAS (self)),
                           .zoom = 1.0,
                           .lit = -1 };

  sheet_draw (self->sheet, cr, &view, width, height);
  if (!self->is_sound) {
    theme_use (cr, colour_with_alpha (view.theme.ground, FADED));
    cairo_paint (cr);
  }
  ring_on_sheet (self, cr, &view);
}

static void
draw_points (SwMeasureSketch *self, cairo_t *cr, double width, double height)
{
  PointSketchView view = { .loaded_radius = self->loaded_radius,
                           .point = POINT_SKETCH_NONE,
                           .axis = POINT_SKETCH_NONE,
                           .theme = sw_canvas_get_theme (SW_CANVAS (self)) };
  MeasureField field;
  Vec3 at;

  for (PointName i = 0; i < N_POINTS; i++)
    view.points[i] = self->points[SIDE_LEFT][i];
  if (find_point (self, &field, &at)) {
    view.point = (int) field.point;
    view.axis = (int) field.axis;
    view.points[field.point] = at;
  }
  point_sketch_draw (self->texts, cr, &view, width, height);
}

static void
sw_measure_sketch_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwMeasureSketch *self = SW_MEASURE_SKETCH (canvas);

  if (self->sound != NULL)
    draw_sheet (self, cr, width, height);
  else
    draw_points (self, cr, width, height);
}

static void
sw_measure_sketch_finalize (GObject *object)
{
  SwMeasureSketch *self = SW_MEASURE_SKETCH (object);

  text_cache_free (self->texts);
  sheet_free (self->sheet);
  study_free (self->study);
  car_free (self->sound);
  G_OBJECT_CLASS (sw_measure_sketch_parent_class)->finalize (object);
}

static void
sw_measure_sketch_class_init (SwMeasureSketchClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_measure_sketch_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_measure_sketch_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_measure_sketch_init (SwMeasureSketch *self)
{
  self->texts = text_cache_new ();
  self->sheet = sheet_new ();
  self->study = study_new ();
  self->field = -1;
  gtk_widget_set_size_request (GTK_WIDGET (self), 320, 260);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The points as entered"), -1);
}

GtkWidget *
sw_measure_sketch_new (void)
{
  return g_object_new (SW_TYPE_MEASURE_SKETCH, NULL);
}

static double
entered (const Car *car, const MeasureReading *reading, guint index)
{
  const MeasureField field = measure_field (index);
  const gboolean is_nonsense =
      reading->verdict == MEASURE_NONSENSE && reading->is_at_fault[index];

  if (reading->is_missing[index] || is_nonsense)
    return (double) NAN;
  return measure_field_value (&field, car);
}

static void
take_points (SwMeasureSketch *self, const Car *car, const MeasureReading *reading)
{
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    for (PointName i = 0; i < N_POINTS; i++) {
      const guint first = measure_point_field (i, side);

      self->points[side][i] =
          (Vec3){ entered (car, reading, first),
                  entered (car, reading, first + 1) * (side == SIDE_LEFT ? 1.0 : -1.0),
                  entered (car, reading, first + 2) };
    }
}

void
sw_measure_sketch_show (SwMeasureSketch *self,
                        const Car *car,
                        const MeasureReading *reading)
{
  take_points (self, car, reading);
  self->loaded_radius = car->loaded_radius_mm;
  self->is_sound = reading->verdict == MEASURE_SOUND;
  if (self->is_sound) {
    car_free (self->sound);
    self->sound = car_without_setups (car);
    study_solve (self->study, self->sound, 0, 0.0);
  }
  sw_canvas_invalidate (SW_CANVAS (self));
}

void
sw_measure_sketch_set_field (SwMeasureSketch *self, int field)
{
  if (field == self->field)
    return;
  self->field = field;
  sw_canvas_invalidate (SW_CANVAS (self));
}
