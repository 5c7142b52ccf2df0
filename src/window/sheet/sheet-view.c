/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/sheet/sheet-view.h"
#include "window/bench/loader.h"
#include "window/canvas/point-handle.h"
#include "window/canvas/quantity-menu.h"

#include "drawing/sheet/point-drag.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>

#define LEAST_ZOOM 0.5
#define MOST_ZOOM 20.0
#define SCROLL_ZOOM 1.15

struct _SwSheetView {
  SwCanvas parent_instance;

  SwBench *bench;
  Sheet *sheet;
  double zoom, pan_x, pan_y;
  SheetHandle near; /* under the pointer or focused */
  SheetViewName near_view;

  PointDrag drag; /* .handle is SHEET_HANDLE_NONE when no handle is held */
  gboolean is_panning;
  double pan_start_x, pan_start_y;
  double pointer_x, pointer_y;
  GtkGesture *gesture;
  gboolean ground_fixed;
  SwLoader *loader; /* while the sheet shows forces, or NULL */
};

G_DEFINE_FINAL_TYPE (SwSheetView, sw_sheet_view, SW_TYPE_CANVAS)

/* Those at the travel in hand. */
static const JointLoads *
loads_now (SwSheetView *self)
{
  return self->loader != NULL ? load_study_in_hand (sw_loader_get_study (self->loader))
                              : NULL;
}

static SheetView
view_of (SwSheetView *self)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));

  return (SheetView){ .study = sw_bench_get_study (self->bench),
                      .section_width = car->section_width_mm,
                      .theme = sw_canvas_get_theme (SW_CANVAS (self)),
                      .zoom = self->zoom,
                      .pan_x = self->pan_x,
                      .pan_y = self->pan_y,
                      .lit = sw_bench_get_lit (self->bench),
                      .near = self->near,
                      .held = self->drag.handle,
                      .handle_view = self->near_view,
                      .ground_fixed =
                          self->ground_fixed || self->drag.handle == SHEET_HANDLE_HEIGHT,
                      .show_handles = true,
                      .loads = loads_now (self) };
}

static void
sw_sheet_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwSheetView *self = SW_SHEET_VIEW (canvas);
  const SheetView view = view_of (self);

  sheet_draw (self->sheet, cr, &view, width, height);
}

/* Focus rings lie on the handles as this frame will draw them. */
static void
sw_sheet_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwSheetView *self = SW_SHEET_VIEW (widget);
  const SheetView view = view_of (self);

  (void) baseline;
  sheet_arrange (self->sheet, &view, width, height);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    SwPointHandle *handle;
    double x = 0.0, y = 0.0;

    if (!SW_IS_POINT_HANDLE (child)) /* a menu */
      continue;
    handle = SW_POINT_HANDLE (child);

    sheet_handle_place (self->sheet, sw_point_handle_get_handle (handle),
                        sw_point_handle_get_view (handle), &x, &y);
    sw_point_handle_place (handle, x, y);
  }
}

/* For what moves handles; sw_canvas_invalidate () is enough for the rest. */
static void
arrange (SwSheetView *self)
{
  sw_canvas_invalidate (SW_CANVAS (self));
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static PointPlace
place_now (SwSheetView *self)
{
  const Adjustment adjustment = sw_bench_get_adjustment (self->bench);

  return (PointPlace){ .mount = adjustment.mount,
                       .travel = sw_bench_get_study (self->bench)->travel,
                       .lowering = adjustment.lowering };
}

static TravelLimits
limits_now (SwSheetView *self)
{
  const Study *study = sw_bench_get_study (self->bench);

  return (TravelLimits){ study->range.from, study->range.to };
}

/* Whether moving the handle edits the setup, in one undo step. */
static gboolean
is_edit (SheetHandle handle)
{
  return handle == SHEET_HANDLE_MOUNT || handle == SHEET_HANDLE_HEIGHT;
}

static void
apply (SwSheetView *self, SheetHandle handle, PointPlace place)
{
  if (handle == SHEET_HANDLE_MOUNT)
    sw_bench_set_mount (self->bench, place.mount);
  else if (handle == SHEET_HANDLE_HEIGHT)
    sw_bench_set_lowering (self->bench, place.lowering);
  else
    sw_bench_set_travel (self->bench, place.travel);
}

static void
tell_handles (SwSheetView *self)
{
  const Study *study = sw_bench_get_study (self->bench);
  const MountOffset m = sw_bench_get_adjustment (self->bench).mount;
  g_autofree char *mount = sw_bench_describe_mount (self->bench);
  const double lowering = study_in_hand (study)->lowering;
  g_autofree char *travel = unit_text (UNIT_LENGTH, study->travel, 1);
  g_autofree char *height = unit_text (UNIT_LENGTH, lowering, 1);

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    SwPointHandle *handle;

    if (!SW_IS_POINT_HANDLE (child))
      continue;
    handle = SW_POINT_HANDLE (child);
    if (sw_point_handle_get_handle (handle) == SHEET_HANDLE_WHEEL)
      sw_point_handle_set_value (handle, study->travel, study->range.from,
                                 study->range.to, travel);
    else if (sw_point_handle_get_handle (handle) == SHEET_HANDLE_HEIGHT)
      sw_point_handle_set_value (handle, lowering, study->range.from, study->range.to,
                                 height);
    else
      sw_point_handle_set_value (handle,
                                 sw_point_handle_get_view (handle) == SHEET_SIDE
                                     ? m.rearward
                                     : m.inboard,
                                 -POINT_DRAG_MOST_MOUNT, POINT_DRAG_MOST_MOUNT, mount);
  }
}

static void
on_bench_solved_cb (SwSheetView *self)
{
  arrange (self);
  if (self->drag.handle == SHEET_HANDLE_NONE)
    tell_handles (self);
}

static int
quantity_at (GtkWidget *widget, double x, double y)
{
  return sheet_hit (SW_SHEET_VIEW (widget)->sheet, x, y).quantity;
}

static void
set_near (SwSheetView *self, SheetHandle near, SheetViewName view)
{
  static const char *const cursors[] = { [SHEET_HANDLE_NONE] = NULL,
                                         [SHEET_HANDLE_MOUNT] = "move",
                                         [SHEET_HANDLE_WHEEL] = "ns-resize",
                                         [SHEET_HANDLE_HEIGHT] = "ns-resize" };

  if (near == self->near && view == self->near_view)
    return;
  self->near = near;
  self->near_view = view;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursors[near]);
  sw_canvas_invalidate (SW_CANVAS (self));
}

/* Without a handle under the pointer, the focused one is near. */
static void
set_focused_near (SwSheetView *self)
{
  GtkWidget *focus = gtk_widget_get_focus_child (GTK_WIDGET (self));

  if (!SW_IS_POINT_HANDLE (focus))
    set_near (self, SHEET_HANDLE_NONE, SHEET_FRONT);
  else
    set_near (self, sw_point_handle_get_handle (SW_POINT_HANDLE (focus)),
              sw_point_handle_get_view (SW_POINT_HANDLE (focus)));
}

static void
on_motion_cb (SwSheetView *self, double x, double y)
{
  self->pointer_x = x;
  self->pointer_y = y;
  if (self->drag.handle != SHEET_HANDLE_NONE || self->is_panning)
    return;

  const SheetHit hit = sheet_hit (self->sheet, x, y);
  if (hit.handle != SHEET_HANDLE_NONE)
    set_near (self, hit.handle, hit.view);
  else
    set_focused_near (self);
  sw_bench_set_lit (self->bench, hit.handle == SHEET_HANDLE_NONE ? hit.quantity : -1);
}

static void
on_leave_cb (SwSheetView *self)
{
  if (self->drag.handle != SHEET_HANDLE_NONE)
    return;
  set_focused_near (self);
  sw_bench_set_lit (self->bench, -1);
}

static GtkWidget *
handle_widget (SwSheetView *self, SheetHandle handle, SheetViewName view)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (SW_IS_POINT_HANDLE (child) &&
        sw_point_handle_get_handle (SW_POINT_HANDLE (child)) == handle &&
        sw_point_handle_get_view (SW_POINT_HANDLE (child)) == view)
      return child;
  return NULL;
}

static void
on_drag_begin_cb (SwSheetView *self, double x, double y)
{
  const SheetHit hit = sheet_hit (self->sheet, x, y);

  if (hit.handle == SHEET_HANDLE_NONE) {
    self->is_panning = TRUE;
    self->pan_start_x = self->pan_x;
    self->pan_start_y = self->pan_y;
    return;
  }
  gtk_widget_grab_focus (handle_widget (self, hit.handle, hit.view));
  self->drag =
      point_drag_begin (hit.handle, hit.view, place_now (self), limits_now (self), x, y);
  if (hit.handle == SHEET_HANDLE_MOUNT)
    sw_bench_begin_drag (self->bench, _ ("Move upper mount"));
  else if (hit.handle == SHEET_HANDLE_HEIGHT)
    sw_bench_begin_drag (self->bench, _ ("Set ride height"));
  sw_canvas_invalidate (SW_CANVAS (self));
}

static void
on_drag_update_cb (SwSheetView *self, double dx, double dy, GtkGesture *gesture)
{
  const GdkModifierType state =
      gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));

  if (self->is_panning) {
    self->pan_x = self->pan_start_x + dx;
    self->pan_y = self->pan_start_y + dy;
    arrange (self);
  } else if (self->drag.handle != SHEET_HANDLE_NONE) {
    double x, y;

    gtk_gesture_drag_get_start_point (GTK_GESTURE_DRAG (gesture), &x, &y);
    apply (self, self->drag.handle,
           point_drag_to (&self->drag, self->sheet, x + dx, y + dy,
                          (state & GDK_CONTROL_MASK) != 0));
  }
}

/* Leaves the drag as it stands; the caller has ended or cancelled the undo step. */
static void
let_go (SwSheetView *self)
{
  self->drag.handle = SHEET_HANDLE_NONE;
  self->is_panning = FALSE;
  on_motion_cb (self, self->pointer_x, self->pointer_y);
  on_bench_solved_cb (self);
}

static void
on_drag_end_cb (SwSheetView *self)
{
  if (is_edit (self->drag.handle))
    sw_bench_end_drag (self->bench);
  let_go (self);
}

static void
cancel_drag (SwSheetView *self)
{
  const PointDrag drag = self->drag;

  if (drag.handle == SHEET_HANDLE_NONE)
    return;
  self->drag.handle = SHEET_HANDLE_NONE; /* before the gesture tells of its end */
  if (is_edit (drag.handle))
    sw_bench_cancel_drag (self->bench);
  else
    sw_bench_set_travel (self->bench, drag.start.travel);
  gtk_gesture_set_state (self->gesture, GTK_EVENT_SEQUENCE_DENIED);
  let_go (self);
}

static void
put_home (SwSheetView *self, SheetHandle handle)
{
  if (handle == SHEET_HANDLE_MOUNT)
    sw_bench_set_mount (self->bench, (MountOffset){ 0 });
  else if (handle == SHEET_HANDLE_HEIGHT)
    sw_bench_set_lowering (self->bench, 0.0);
  else if (handle == SHEET_HANDLE_WHEEL)
    sw_bench_set_travel (self->bench,
                         study_in_hand (sw_bench_get_study (self->bench))->lowering);
}

static void
on_pressed_cb (SwSheetView *self, int n_press, double x, double y)
{
  if (n_press == 2)
    put_home (self, sheet_hit (self->sheet, x, y).handle);
}

static void
on_nudged_cb (SwSheetView *self, int right, int up, guint state, SwPointHandle *handle)
{
  const SheetHandle which = sw_point_handle_get_handle (handle);
  const PointStep step = state & GDK_SHIFT_MASK     ? POINT_STEP_COARSE
                         : state & GDK_CONTROL_MASK ? POINT_STEP_FINE
                                                    : POINT_STEP_PLAIN;

  apply (self, which,
         point_nudge (place_now (self), which, sw_point_handle_get_view (handle),
                      limits_now (self), step, right, up));
}

static void
on_homed_cb (SwSheetView *self, SwPointHandle *handle)
{
  put_home (self, sw_point_handle_get_handle (handle));
}

/* Zooms by @factor so that the point under (x, y) stays. */
static void
zoom_about (SwSheetView *self, double factor, double x, double y)
{
  const double zoom = CLAMP (self->zoom * factor, LEAST_ZOOM, MOST_ZOOM);
  const double middle_x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
  const double middle_y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;
  const double k = zoom / self->zoom;

  self->pan_x = (x - middle_x) * (1.0 - k) + self->pan_x * k;
  self->pan_y = (y - middle_y) * (1.0 - k) + self->pan_y * k;
  self->zoom = zoom;
  arrange (self);
}

static gboolean
on_scroll_cb (SwSheetView *self, double dx, double dy)
{
  (void) dx;
  if (self->drag.handle == SHEET_HANDLE_NONE && !self->is_panning)
    zoom_about (self, pow (SCROLL_ZOOM, -dy), self->pointer_x, self->pointer_y);
  return TRUE;
}

static void
add_pointer (SwSheetView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *click = gtk_gesture_click_new ();

  self->gesture = gtk_gesture_drag_new ();
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave_cb), self);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (on_scroll_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed_cb), self);
  g_signal_connect_swapped (self->gesture, "drag-begin", G_CALLBACK (on_drag_begin_cb),
                            self);
  g_signal_connect_swapped (self->gesture, "drag-update", G_CALLBACK (on_drag_update_cb),
                            self);
  g_signal_connect_swapped (self->gesture, "drag-end", G_CALLBACK (on_drag_end_cb), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, scroll);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (self->gesture));
}

static void
add_handle (SwSheetView *self, SheetHandle which, SheetViewName view)
{
  GtkWidget *handle = sw_point_handle_new (which, view);

  g_signal_connect_object (handle, "nudged", G_CALLBACK (on_nudged_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (handle, "homed", G_CALLBACK (on_homed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (handle, "cancelled", G_CALLBACK (cancel_drag), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (handle, "notify::has-focus", G_CALLBACK (set_focused_near),
                           self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (handle, GTK_WIDGET (self));
}

static void
sw_sheet_view_dispose (GObject *object)
{
  SwSheetView *self = SW_SHEET_VIEW (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->loader);
  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_sheet_view_parent_class)->dispose (object);
}

static void
sw_sheet_view_finalize (GObject *object)
{
  sheet_free (SW_SHEET_VIEW (object)->sheet);
  G_OBJECT_CLASS (sw_sheet_view_parent_class)->finalize (object);
}

static void
sw_sheet_view_class_init (SwSheetViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_sheet_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_sheet_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_sheet_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  widget_class->size_allocate = sw_sheet_view_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "sheet");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sw_sheet_view_init (SwSheetView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->sheet = sheet_new ();
  self->zoom = 1.0;
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_widget_set_vexpand (widget, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Sheet: front, side and plan view of the corner"),
                                  -1);
  add_handle (self, SHEET_HANDLE_MOUNT, SHEET_FRONT);
  add_handle (self, SHEET_HANDLE_MOUNT, SHEET_SIDE);
  add_handle (self, SHEET_HANDLE_MOUNT, SHEET_PLAN);
  add_handle (self, SHEET_HANDLE_WHEEL, SHEET_FRONT);
  add_handle (self, SHEET_HANDLE_WHEEL, SHEET_SIDE);
  add_handle (self, SHEET_HANDLE_HEIGHT, SHEET_FRONT);
  add_pointer (self);
}

GtkWidget *
sw_sheet_view_new (SwBench *bench)
{
  SwSheetView *self = g_object_new (SW_TYPE_SHEET_VIEW, NULL);

  self->bench = g_object_ref (bench);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "lit", G_CALLBACK (sw_canvas_invalidate), self,
                           G_CONNECT_SWAPPED);
  quantity_menu_add (GTK_WIDGET (self), bench, quantity_at);
  tell_handles (self);
  return GTK_WIDGET (self);
}

void
sw_sheet_view_set_ground_fixed (SwSheetView *self, gboolean ground_fixed)
{
  self->ground_fixed = ground_fixed;
  sw_canvas_invalidate (SW_CANVAS (self));
}

void
sw_sheet_view_set_shows_forces (SwSheetView *self, gboolean shows_forces)
{
  if (shows_forces == (self->loader != NULL))
    return;
  if (!shows_forces) {
    g_signal_handlers_disconnect_by_data (self->loader, self);
    g_clear_object (&self->loader);
  } else {
    self->loader = g_object_ref (sw_loader_of (self->bench));
    g_signal_connect_object (self->loader, "changed", G_CALLBACK (sw_canvas_invalidate),
                             self, G_CONNECT_SWAPPED);
  }
  sw_canvas_invalidate (SW_CANVAS (self));
}

void
sw_sheet_view_fit (SwSheetView *self)
{
  self->zoom = 1.0;
  self->pan_x = self->pan_y = 0.0;
  arrange (self);
}

void
sw_sheet_view_zoom (SwSheetView *self, double factor)
{
  zoom_about (self, factor, gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
              gtk_widget_get_height (GTK_WIDGET (self)) / 2.0);
}
