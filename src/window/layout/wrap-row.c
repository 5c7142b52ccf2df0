/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/wrap-row.h"

#define GAP 8 /* pixels, between parts either way */

struct _SwWrapRow {
  GtkWidget parent_instance;
};

static void sw_wrap_row_buildable_init (GtkBuildableIface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SwWrapRow,
                               sw_wrap_row,
                               GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_BUILDABLE,
                                                      sw_wrap_row_buildable_init))

typedef struct {
  GtkWidget *widget; /* NULL where there is nothing to show */
  int least, natural;
} Part;

static Part
part_at (SwWrapRow *self, gboolean is_last)
{
  GtkWidget *widget = is_last ? gtk_widget_get_last_child (GTK_WIDGET (self))
                              : gtk_widget_get_first_child (GTK_WIDGET (self));
  Part part = { widget, 0, 0 };

  if (widget != NULL && gtk_widget_should_layout (widget))
    gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &part.least,
                        &part.natural, NULL, NULL);
  return part;
}

static gboolean
is_wrapped (const Part *first, const Part *last, int width)
{
  return last->natural > 0 && first->natural + GAP + last->natural > width;
}

static int
height_of (const Part *part, int width)
{
  int height = 0;

  if (part->natural > 0)
    gtk_widget_measure (part->widget, GTK_ORIENTATION_VERTICAL, width, &height, NULL,
                        NULL, NULL);
  return height;
}

static void
sw_wrap_row_measure (GtkWidget *widget,
                     GtkOrientation orientation,
                     int for_size,
                     int *minimum,
                     int *natural,
                     int *minimum_baseline,
                     int *natural_baseline)
{
  const Part first = part_at (SW_WRAP_ROW (widget), FALSE);
  const Part last = part_at (SW_WRAP_ROW (widget), TRUE);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = MAX (first.least, last.least);
    *natural = first.natural + (last.natural > 0 ? GAP + last.natural : 0);
    return;
  }
  const int width = for_size < 0 ? G_MAXINT : for_size;
  const int a = height_of (&first, -1), b = height_of (&last, -1);

  *minimum = *natural = is_wrapped (&first, &last, width) ? a + GAP + b : MAX (a, b);
}

/* An empty part gets its place as well: GTK warns of what is drawn without one. */
static void
place (const Part *part, int x, int y, int width, int height)
{
  if (part->widget != NULL && gtk_widget_should_layout (part->widget))
    gtk_widget_size_allocate (part->widget, &(GtkAllocation){ x, y, width, height }, -1);
}

static void
sw_wrap_row_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  const Part first = part_at (SW_WRAP_ROW (widget), FALSE);
  const Part last = part_at (SW_WRAP_ROW (widget), TRUE);
  const gboolean is_backward = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;

  (void) baseline;
  if (is_wrapped (&first, &last, width)) {
    const int a = height_of (&first, -1), wide = MIN (last.natural, width);

    place (&first, 0, 0, width, a);
    place (&last, is_backward ? width - wide : 0, a + GAP, wide, height - a - GAP);
    return;
  }
  const int wide = last.natural;

  place (&first, is_backward && wide > 0 ? wide + GAP : 0, 0,
         width - (wide > 0 ? wide + GAP : 0), height);
  place (&last, is_backward ? 0 : width - wide, 0, wide, height);
}

static GtkSizeRequestMode
sw_wrap_row_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
sw_wrap_row_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (sw_wrap_row_parent_class)->dispose (object);
}

static void
sw_wrap_row_add_child (GtkBuildable *buildable,
                       GtkBuilder *builder,
                       GObject *child,
                       const char *type)
{
  (void) builder;
  (void) type;
  gtk_widget_set_parent (GTK_WIDGET (child), GTK_WIDGET (buildable));
}

static void
sw_wrap_row_buildable_init (GtkBuildableIface *iface)
{
  iface->add_child = sw_wrap_row_add_child;
}

static void
sw_wrap_row_class_init (SwWrapRowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_wrap_row_dispose;
  GTK_WIDGET_CLASS (class)->measure = sw_wrap_row_measure;
  GTK_WIDGET_CLASS (class)->size_allocate = sw_wrap_row_size_allocate;
  GTK_WIDGET_CLASS (class)->get_request_mode = sw_wrap_row_get_request_mode;
}

static void
sw_wrap_row_init (SwWrapRow *self)
{
  (void) self;
}
