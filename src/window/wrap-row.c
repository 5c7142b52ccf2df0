/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/wrap-row.h"

#define GAP 8

typedef struct {
  int minimum, natural;
} Need;

static Need
need_of (GtkWidget *part, GtkOrientation orientation, int for_size)
{
  Need need = { 0, 0 };

  if (part != NULL && gtk_widget_should_layout (part))
    gtk_widget_measure (part, orientation, for_size, &need.minimum, &need.natural, NULL,
                        NULL);
  return need;
}

static int
gap_between (GtkWidget *first, GtkWidget *second)
{
  return need_of (first, GTK_ORIENTATION_HORIZONTAL, -1).natural > 0 &&
                 need_of (second, GTK_ORIENTATION_HORIZONTAL, -1).natural > 0
             ? GAP
             : 0;
}

static gboolean
is_one_line (GtkWidget *row, int width)
{
  GtkWidget *first = gtk_widget_get_first_child (row);
  GtkWidget *second = gtk_widget_get_last_child (row);

  return width < 0 || need_of (first, GTK_ORIENTATION_HORIZONTAL, -1).natural +
                              gap_between (first, second) +
                              need_of (second, GTK_ORIENTATION_HORIZONTAL, -1).minimum <=
                          width;
}

static GtkSizeRequestMode
request_mode (GtkWidget *row)
{
  (void) row;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
measure (GtkWidget *row,
         GtkOrientation orientation,
         int for_size,
         int *minimum,
         int *natural,
         int *minimum_baseline,
         int *natural_baseline)
{
  GtkWidget *first = gtk_widget_get_first_child (row);
  GtkWidget *second = gtk_widget_get_last_child (row);
  const Need one = need_of (first, orientation, -1),
             other = need_of (second, orientation, -1);
  const int gap = gap_between (first, second);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = MAX (one.minimum, other.minimum);
    *natural = one.natural + gap + other.natural;
  } else if (is_one_line (row, for_size)) {
    *minimum = *natural = MAX (one.natural, other.natural);
  } else {
    *minimum = *natural = one.natural + gap + other.natural;
  }
}

static void
allocate (GtkWidget *row, int width, int height, int baseline)
{
  GtkWidget *first = gtk_widget_get_first_child (row);
  GtkWidget *second = gtk_widget_get_last_child (row);
  const Need one = need_of (first, GTK_ORIENTATION_HORIZONTAL, -1);
  const Need other = need_of (second, GTK_ORIENTATION_HORIZONTAL, -1);
  const int gap = gap_between (first, second);

  (void) baseline;
  if (is_one_line (row, width)) {
    const int wide = MIN (other.natural, width - one.natural - gap);

    gtk_widget_size_allocate (first, &(GtkAllocation){ 0, 0, width - wide - gap, height },
                              -1);
    gtk_widget_size_allocate (second, &(GtkAllocation){ width - wide, 0, wide, height },
                              -1);
    return;
  }
  const int high = need_of (first, GTK_ORIENTATION_VERTICAL, -1).natural;

  gtk_widget_size_allocate (first, &(GtkAllocation){ 0, 0, width, high }, -1);
  gtk_widget_size_allocate (second,
                            &(GtkAllocation){ 0, high + gap, width, height - high - gap },
                            -1);
}

void
wrap_row_use (GtkWidget *row)
{
  gtk_widget_set_layout_manager (row,
                                 gtk_custom_layout_new (request_mode, measure, allocate));
}
