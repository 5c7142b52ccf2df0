/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/plate-sketch-view.h"

#include "drawing/mount-map/plate-sketch.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>

struct _SwPlateSketchView {
  SwCanvas parent_instance;

  TextCache *texts;
  Plate *plate;
};

G_DEFINE_FINAL_TYPE (SwPlateSketchView, sw_plate_sketch_view, SW_TYPE_CANVAS)

static void
sw_plate_sketch_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwPlateSketchView *self = SW_PLATE_SKETCH_VIEW (canvas);
  const PlateSketchView view = { self->plate, sw_canvas_get_theme (canvas) };

  plate_sketch_draw (self->texts, cr, &view, width, height);
}

static void
sw_plate_sketch_view_finalize (GObject *object)
{
  SwPlateSketchView *self = SW_PLATE_SKETCH_VIEW (object);

  text_cache_free (self->texts);
  plate_free (self->plate);
  G_OBJECT_CLASS (sw_plate_sketch_view_parent_class)->finalize (object);
}

static void
sw_plate_sketch_view_class_init (SwPlateSketchViewClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_plate_sketch_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_plate_sketch_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "platesketch");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_plate_sketch_view_init (SwPlateSketchView *self)
{
  self->texts = text_cache_new ();
  self->plate = plate_new ();
  gtk_widget_set_size_request (GTK_WIDGET (self), 300, 260);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Where the plate can put the bearing, in plan"), -1);
}

GtkWidget *
sw_plate_sketch_view_new (void)
{
  return g_object_new (SW_TYPE_PLATE_SKETCH_VIEW, NULL);
}

/* One place of a few, or an end of a way. */
static PlateSetting
sample (const Plate *plate, guint i)
{
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);

  if (plate_n_ways (plate) == 0)
    return (PlateSetting){ .place = i };
  return (PlateSetting){ .along = i % 2 == 0 ? along.least : along.most,
                         .across = i / 2 == 0 ? across.least : across.most };
}

/* What the drawing shows, for those who cannot see it. */
static void
describe (SwPlateSketchView *self)
{
  const guint ways = plate_n_ways (self->plate);
  const guint n = ways == 0 ? plate_n_places (self->plate) : 2 * ways;
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < n; i++) {
    const PlateSetting setting = sample (self->plate, i);
    const MountOffset at = plate_place (self->plate, setting);
    g_autofree char *name = plate_describe_setting (self->plate, setting);
    g_autofree char *inboard = unit_text (UNIT_LENGTH, at.inboard, 1);
    g_autofree char *rearward = unit_text (UNIT_LENGTH, at.rearward, 1);

    g_string_append (text, i > 0 ? "\n" : "");
    /* Translators: what is dialled in, and where that puts the bearing. */
    g_string_append_printf (text, _ ("%s: %s inboard, %s rearward"), name, inboard,
                            rearward);
  }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text->str, -1);
}

void
sw_plate_sketch_view_show (SwPlateSketchView *self, const Plate *plate)
{
  plate_free (self->plate);
  self->plate = plate_copy (plate);
  describe (self);
  sw_canvas_invalidate (SW_CANVAS (self));
}
