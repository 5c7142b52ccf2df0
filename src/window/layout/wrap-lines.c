/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/wrap-lines.h"

struct _SwWrapLines {
  GtkWidget parent_instance;

  int gap, line_gap;
};

G_DEFINE_FINAL_TYPE (SwWrapLines, sw_wrap_lines, GTK_TYPE_WIDGET)

/* The parts from @first up to the one that @next begins with. */
typedef struct {
  GtkWidget *first, *next;
  int height;
} Line;

static GtkWidget *
next_shown (GtkWidget *part)
{
  while (part != NULL && !gtk_widget_should_layout (part))
    part = gtk_widget_get_next_sibling (part);
  return part;
}

static GtkWidget *
first_part (SwWrapLines *self)
{
  return next_shown (gtk_widget_get_first_child (GTK_WIDGET (self)));
}

static GtkWidget *
part_after (GtkWidget *part)
{
  return next_shown (gtk_widget_get_next_sibling (part));
}

static int
width_of (GtkWidget *part, int most)
{
  int natural;

  gtk_widget_measure (part, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
  return MIN (natural, most);
}

static Line
line_from (SwWrapLines *self, GtkWidget *first, int width)
{
  Line line = { first, first, 0 };
  int x = 0;

  do {
    const int wide = width_of (line.next, width);
    int high;

    if (line.next != first && x + wide > width)
      break;
    gtk_widget_measure (line.next, GTK_ORIENTATION_VERTICAL, wide, &high, NULL, NULL,
                        NULL);
    line.height = MAX (line.height, high);
    x += wide + self->gap;
    line.next = part_after (line.next);
  } while (line.next != NULL);
  return line;
}

static int
height_for (SwWrapLines *self, int width)
{
  GtkWidget *first = first_part (self);
  int height = 0;

  while (first != NULL) {
    const Line line = line_from (self, first, width);

    height += line.height + (line.next != NULL ? self->line_gap : 0);
    first = line.next;
  }
  return height;
}

static void
measure_width (SwWrapLines *self, int *minimum, int *natural)
{
  *minimum = *natural = 0;
  for (GtkWidget *part = first_part (self); part != NULL; part = part_after (part)) {
    int least, wanted;

    gtk_widget_measure (part, GTK_ORIENTATION_HORIZONTAL, -1, &least, &wanted, NULL,
                        NULL);
    *minimum = MAX (*minimum, least);
    *natural += wanted + (part_after (part) != NULL ? self->gap : 0);
  }
}

static void
sw_wrap_lines_measure (GtkWidget *widget,
                       GtkOrientation orientation,
                       int for_size,
                       int *minimum,
                       int *natural,
                       int *minimum_baseline,
                       int *natural_baseline)
{
  SwWrapLines *self = SW_WRAP_LINES (widget);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (self, minimum, natural);
  else
    *minimum = *natural = height_for (self, for_size < 0 ? G_MAXINT / 2 : for_size);
}

/* All as high as their line, as Tab goes by the middles of what stands side by side. */
static void
place_line (SwWrapLines *self, const Line *line, int y, int width)
{
  const gboolean is_backward =
      gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  int x = 0;

  for (GtkWidget *part = line->first; part != line->next; part = part_after (part)) {
    const int wide = width_of (part, width);
    const int left = is_backward ? width - x - wide : x;

    gtk_widget_size_allocate (part, &(GtkAllocation){ left, y, wide, line->height }, -1);
    x += wide + self->gap;
  }
}

static void
sw_wrap_lines_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwWrapLines *self = SW_WRAP_LINES (widget);
  GtkWidget *first = first_part (self);
  int y = 0;

  (void) height;
  (void) baseline;
  while (first != NULL) {
    const Line line = line_from (self, first, width);

    place_line (self, &line, y, width);
    y += line.height + self->line_gap;
    first = line.next;
  }
}

static GtkSizeRequestMode
sw_wrap_lines_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
sw_wrap_lines_dispose (GObject *object)
{
  GtkWidget *part;

  while ((part = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (part);
  G_OBJECT_CLASS (sw_wrap_lines_parent_class)->dispose (object);
}

static void
sw_wrap_lines_class_init (SwWrapLinesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_wrap_lines_dispose;
  GTK_WIDGET_CLASS (class)->measure = sw_wrap_lines_measure;
  GTK_WIDGET_CLASS (class)->size_allocate = sw_wrap_lines_size_allocate;
  GTK_WIDGET_CLASS (class)->get_request_mode = sw_wrap_lines_get_request_mode;
}

static void
sw_wrap_lines_init (SwWrapLines *self)
{
  (void) self;
}

GtkWidget *
sw_wrap_lines_new (int gap, int line_gap)
{
  SwWrapLines *self = g_object_new (SW_TYPE_WRAP_LINES, NULL);

  self->gap = gap;
  self->line_gap = line_gap;
  return GTK_WIDGET (self);
}

void
sw_wrap_lines_append (SwWrapLines *self, GtkWidget *part)
{
  gtk_widget_set_parent (part, GTK_WIDGET (self));
}
