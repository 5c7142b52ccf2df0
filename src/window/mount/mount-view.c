/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/mount-view.h"
#include "window/canvas/point-handle.h"
#include "window/mount/mount-view-steps.h"
#include "window/mount/mount-view-words.h"

#include "drawing/mount-map/mount-map.h"
#include "drawing/sheet/point-drag.h"

#include <glib/gi18n-lib.h>

#define PLAIN_NUDGE 0.5 /* mm */
#define COARSE_NUDGE 5.0
#define FINE_NUDGE 0.1

struct _SwMountView {
  SwCanvas parent_instance;

  SwBench *bench;
  SwChooser *chooser;
  MountMap *map;
  GtkWidget *handle;
  GtkGesture *gesture;

  MountMapHit under; /* the pointer */
  gboolean has_pointer;
  gboolean is_dragging;
  gboolean has_told_baseline; /* since the baseline came in hand */
  MountOffset grab;           /* from the pointer to the mount when it was taken */
  double pointer_x, pointer_y;
};

G_DEFINE_FINAL_TYPE (SwMountView, sw_mount_view, SW_TYPE_CANVAS)

static gboolean
is_on_mark (const MountMapHit *hit)
{
  return hit->on_handle || hit->place != MOUNT_MAP_NONE || hit->setup != MOUNT_MAP_NONE;
}

static MountMapView
view_of (SwMountView *self)
{
  const gboolean points = self->has_pointer && !self->is_dragging;

  return (MountMapView){
    .car = sw_document_get_car (sw_bench_get_document (self->bench)),
    .setup = sw_bench_get_setup_index (self->bench),
    .side = sw_chooser_get_side (self->chooser),
    .subjects = { sw_chooser_get_subject (self->chooser, 0),
                  sw_chooser_get_subject (self->chooser, 1) },
    .plate = sw_chooser_get_plate (self->chooser),
    .is_swapped = sw_chooser_is_swapped (self->chooser),
    .best = sw_chooser_get_best (self->chooser),
    .theme = sw_canvas_get_theme (SW_CANVAS (self)),
    .pixel_scale = gtk_widget_get_scale_factor (GTK_WIDGET (self)),
    .lit_place = points && !self->under.on_handle ? self->under.place : MOUNT_MAP_NONE,
    .is_handle_lit = self->is_dragging || (points && self->under.on_handle) ||
                     gtk_widget_has_focus (self->handle),
    .show_cross = points && self->under.on_map && !is_on_mark (&self->under),
    .cross = self->under.at,
    .hold_window = sw_bench_is_dragging (self->bench),
  };
}

static void
sw_mount_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwMountView *self = SW_MOUNT_VIEW (canvas);
  const MountMapView view = view_of (self);

  mount_map_draw (self->map, cr, &view, width, height);
}

/* The focus ring lies on the handle as this frame will draw it. */
static void
sw_mount_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwMountView *self = SW_MOUNT_VIEW (widget);
  const MountMapView view = view_of (self);
  double x = 0.0, y = 0.0;

  (void) baseline;
  mount_map_arrange (self->map, &view, width, height);
  mount_map_to_pixel (self->map, sw_chooser_get_mount (self->chooser), &x, &y);
  sw_point_handle_place (SW_POINT_HANDLE (self->handle), x, y);
}

static void
tell_handle (SwMountView *self)
{
  g_autofree char *words = mount_view_words (self->chooser);

  sw_point_handle_set_value (SW_POINT_HANDLE (self->handle),
                             sw_chooser_get_mount (self->chooser).inboard,
                             -POINT_DRAG_MOST_MOUNT, POINT_DRAG_MOST_MOUNT, words);
}

static gboolean
has_baseline_in_hand (SwMountView *self)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));

  return sw_bench_get_setup_index (self->bench) == car->baseline;
}

static void
on_changed_cb (SwMountView *self)
{
  if (!has_baseline_in_hand (self))
    self->has_told_baseline = FALSE;
  sw_canvas_invalidate (SW_CANVAS (self));
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  if (!self->is_dragging)
    tell_handle (self);
}

static MountRail
rail_of (SwMountView *self)
{
  return (MountRail){ sw_chooser_keeps_to_plate (self->chooser)
                          ? sw_chooser_get_plate (self->chooser)
                          : NULL,
                      sw_chooser_is_swapped (self->chooser) };
}

static void
put (SwMountView *self, const MountRail *rail, MountOffset mount)
{
  sw_chooser_set_mount (self->chooser, mount, rail->plate != NULL);
}

/* Once, and only where others are compared with it. */
static void
tell_baseline (SwMountView *self)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));

  if (self->has_told_baseline || !has_baseline_in_hand (self) || car->setups->len < 2)
    return;
  g_autofree char *sentence = g_strdup_printf (
      _ ("This moves the baseline, “%s”: the other setups are compared with it."),
      car_setup (car, car->baseline)->name);

  self->has_told_baseline = TRUE;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", sentence);
}

/* By a key or a press, to another setting of the plate if there is one. */
static void
step (SwMountView *self, const MountRail *rail, MountOffset mount)
{
  const MountOffset was = sw_chooser_get_mount (self->chooser);

  put (self, rail, mount);
  if (rail->plate != NULL && (mount.inboard != was.inboard ||
                              mount.rearward != was.rearward || mount.up != was.up))
    tell_baseline (self);
}

static void
show_pointer (SwMountView *self)
{
  const char *cursor = self->under.on_handle || self->is_dragging ? "move"
                       : is_on_mark (&self->under)                ? "pointer"
                                                                  : NULL;

  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
  sw_canvas_invalidate (SW_CANVAS (self));
}

static void
on_motion_cb (SwMountView *self, double x, double y)
{
  self->pointer_x = x;
  self->pointer_y = y;
  self->has_pointer = TRUE;
  if (self->is_dragging)
    return;
  self->under = mount_map_hit (self->map, x, y);
  show_pointer (self);
}

static void
on_leave_cb (SwMountView *self)
{
  self->has_pointer = FALSE;
  show_pointer (self);
}

static void
begin_drag (SwMountView *self, const MountMapHit *hit)
{
  const MountOffset mount = sw_chooser_get_mount (self->chooser);

  self->is_dragging = TRUE;
  self->grab = (MountOffset){ mount.inboard - hit->at.inboard,
                              mount.rearward - hit->at.rearward, mount.up };
  sw_bench_begin_drag (self->bench, _ ("Move upper mount"));
}

static void
pick_place (SwMountView *self, guint place)
{
  const Plate *plate = sw_chooser_get_plate (self->chooser);
  const PlateSetting setting = { .place = place,
                                 .is_swapped = sw_chooser_is_swapped (self->chooser) };

  step (self, &(MountRail){ plate, setting.is_swapped }, plate_place (plate, setting));
}

static void
on_drag_begin_cb (SwMountView *self, double x, double y)
{
  const MountMapHit hit = mount_map_hit (self->map, x, y);

  gtk_widget_grab_focus (self->handle);
  if (hit.on_handle)
    begin_drag (self, &hit);
  else if (hit.place != MOUNT_MAP_NONE)
    pick_place (self, (guint) hit.place);
  else if (hit.setup != MOUNT_MAP_NONE)
    sw_bench_set_setup_index (self->bench, (guint) hit.setup);
  sw_canvas_invalidate (SW_CANVAS (self));
}

static void
on_drag_update_cb (SwMountView *self, double dx, double dy, GtkGestureDrag *gesture)
{
  double x, y;

  if (!self->is_dragging)
    return;
  gtk_gesture_drag_get_start_point (gesture, &x, &y);

  const MountRail rail = rail_of (self);
  const MountOffset at = mount_map_hit (self->map, x + dx, y + dy).at;
  const MountOffset wanted = { at.inboard + self->grab.inboard,
                               at.rearward + self->grab.rearward, self->grab.up };
  put (self, &rail, mount_rail_nearest (&rail, wanted));
}

/* The caller has ended or cancelled the undo step. */
static void
let_go (SwMountView *self)
{
  on_motion_cb (self, self->pointer_x, self->pointer_y);
  on_changed_cb (self);
}

static void
on_drag_end_cb (SwMountView *self)
{
  if (!self->is_dragging)
    return;
  self->is_dragging = FALSE;
  sw_bench_end_drag (self->bench);
  let_go (self);
}

static void
cancel_drag (SwMountView *self)
{
  if (!self->is_dragging)
    return;
  self->is_dragging = FALSE; /* before the gesture tells of its end */
  sw_bench_cancel_drag (self->bench);
  gtk_gesture_set_state (self->gesture, GTK_EVENT_SEQUENCE_DENIED);
  let_go (self);
}

static void
put_home (SwMountView *self)
{
  sw_chooser_set_mount (self->chooser, (MountOffset){ 0 }, FALSE);
}

static void
on_pressed_cb (SwMountView *self, int n_press, double x, double y)
{
  if (n_press == 2 && mount_map_hit (self->map, x, y).on_handle)
    put_home (self);
}

static void
on_nudged_cb (SwMountView *self, int right, int up, guint state)
{
  const MountRail rail = rail_of (self);
  const double mm = state & GDK_SHIFT_MASK     ? COARSE_NUDGE
                    : state & GDK_CONTROL_MASK ? FINE_NUDGE
                                               : PLAIN_NUDGE;

  step (self, &rail,
        mount_rail_nudge (&rail, sw_chooser_get_mount (self->chooser), mm, right, up));
}

static gboolean
on_key_pressed_cb (SwMountView *self, guint key, guint code, GdkModifierType state)
{
  const MountRail rail = { sw_chooser_get_plate (self->chooser),
                           sw_chooser_is_swapped (self->chooser) };
  const int steps = key == GDK_KEY_Page_Down ? 1 : key == GDK_KEY_Page_Up ? -1 : 0;

  (void) code;
  (void) state;
  if (steps == 0 || rail.plate == NULL || plate_n_places (rail.plate) == 0)
    return FALSE;
  step (self, &rail,
        mount_rail_walk (&rail, sw_chooser_get_mount (self->chooser), steps));
  return TRUE;
}

static void
add_input (SwMountView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->gesture = gtk_gesture_drag_new ();
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed_cb), self);
  g_signal_connect_swapped (self->gesture, "drag-begin", G_CALLBACK (on_drag_begin_cb),
                            self);
  g_signal_connect_swapped (self->gesture, "drag-update", G_CALLBACK (on_drag_update_cb),
                            self);
  g_signal_connect_swapped (self->gesture, "drag-end", G_CALLBACK (on_drag_end_cb), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (self->gesture));
}

static void
add_handle (SwMountView *self)
{
  self->handle = sw_point_handle_new_named (_ ("Upper mount, map"));
  g_signal_connect_object (self->handle, "nudged", G_CALLBACK (on_nudged_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->handle, "homed", G_CALLBACK (put_home), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->handle, "cancelled", G_CALLBACK (cancel_drag), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->handle, "notify::has-focus",
                           G_CALLBACK (sw_canvas_invalidate), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (self->handle, GTK_WIDGET (self));
}

static void
sw_mount_view_dispose (GObject *object)
{
  SwMountView *self = SW_MOUNT_VIEW (object);

  g_clear_pointer (&self->handle, gtk_widget_unparent);
  g_clear_object (&self->chooser);
  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_mount_view_parent_class)->dispose (object);
}

static void
sw_mount_view_finalize (GObject *object)
{
  mount_map_free (SW_MOUNT_VIEW (object)->map);
  G_OBJECT_CLASS (sw_mount_view_parent_class)->finalize (object);
}

static void
sw_mount_view_class_init (SwMountViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_mount_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_mount_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_mount_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  widget_class->size_allocate = sw_mount_view_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "board");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sw_mount_view_init (SwMountView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->map = mount_map_new ();
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_widget_set_vexpand (widget, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Map of the upper mount over the strut tower"), -1);
  add_handle (self);
  add_input (self);
}

GtkWidget *
sw_mount_view_new (SwChooser *chooser)
{
  SwMountView *self = g_object_new (SW_TYPE_MOUNT_VIEW, NULL);

  self->chooser = g_object_ref (chooser);
  self->bench = g_object_ref (sw_chooser_get_bench (chooser));
  g_signal_connect_object (self->bench, "solved", G_CALLBACK (on_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (chooser, "changed", G_CALLBACK (on_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (chooser, "answered", G_CALLBACK (on_changed_cb), self,
                           G_CONNECT_SWAPPED);
  tell_handle (self);
  return GTK_WIDGET (self);
}
