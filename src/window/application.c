/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/application.h"
#include "model/file/data-path.h"
#include "model/plate/plate-library.h"
#include "window/about.h"
#include "window/canvas/dark.h"
#include "window/settings/kept-settings.h"
#include "window/settings/units.h"
#include "window/units-window.h"
#include "window/window.h"

#include <glib/gi18n-lib.h>

#define DEMO_CAR "wren.swcar"

struct _SwApplication {
  GtkApplication parent_instance;

  gboolean has_offered; /* the work that a crash has left */
};

G_DEFINE_FINAL_TYPE (SwApplication, sw_application, GTK_TYPE_APPLICATION)

static void
open_demo (SwWindow *window)
{
  g_autofree char *path = data_path (DEMO_CAR);
  g_autoptr (GFile) demo = g_file_new_for_path (path);

  sw_window_open_example (window, demo);
}

/* In the first window of the program only. */
static void
offer_left_over_once (SwWindow *window)
{
  SwApplication *self = SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (window)));

  if (!self->has_offered)
    sw_window_offer_left_over (window);
  self->has_offered = TRUE;
}

static SwWindow *
present_demo (GtkApplication *application)
{
  SwWindow *window = sw_window_new (application);

  open_demo (window);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static void
sw_application_activate (GApplication *application)
{
  SwWindow *window = present_demo (GTK_APPLICATION (application));

  offer_left_over_once (window);
  if (sw_window_is_tour_due ())
    sw_window_start_tour (window);
}

/* A file that is refused leaves the demo car behind the sentence that says why. */
static void
open_car (GApplication *application, GFile *file)
{
  SwWindow *window = sw_window_new (GTK_APPLICATION (application));

  if (!sw_window_open (window, file))
    open_demo (window);
  gtk_window_present (GTK_WINDOW (window));
  offer_left_over_once (window);
}

/* The window of a car that had the keys last, or NULL. */
static SwWindow *
last_window (GApplication *application)
{
  GList *windows = gtk_application_get_windows (GTK_APPLICATION (application));

  for (GList *l = windows; l != NULL; l = l->next)
    if (SW_IS_WINDOW (l->data))
      return l->data;
  return NULL;
}

/* A plate is looked at on a car: on the one in hand, or on the demo car. */
static void
open_plate (GApplication *application, GFile *file)
{
  if (last_window (application) == NULL)
    sw_application_activate (application);

  SwWindow *window = last_window (application);
  gtk_window_present (GTK_WINDOW (window));
  sw_window_open_plate (window, file);
}

static void
sw_application_open (GApplication *application,
                     GFile **files,
                     int n_files,
                     const char *hint)
{
  (void) hint;
  for (int i = 0; i < n_files; i++) {
    g_autofree char *name = g_file_get_basename (files[i]);

    if (plate_library_takes_name (name))
      open_plate (application, files[i]);
    else
      open_car (application, files[i]);
  }
}

static void
on_new_window_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  sw_application_activate (G_APPLICATION (data));
}

/* Asks each window to close, which may ask about unsaved changes. */
static void
on_quit_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GList *windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (data)));

  (void) action;
  (void) parameter;
  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (GTK_WINDOW (l->data));
  g_list_free (windows);
}

static void
on_about_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  about_present (gtk_application_get_active_window (GTK_APPLICATION (data)));
}

/* With the demo car, in a window of its own where another car is open. */
static void
on_tour_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkApplication *application = GTK_APPLICATION (data);
  GtkWindow *window = gtk_application_get_active_window (application);

  (void) action;
  (void) parameter;
  if (!SW_IS_WINDOW (window) || !sw_window_shows_example (SW_WINDOW (window)))
    window = GTK_WINDOW (present_demo (application));
  sw_window_start_tour (SW_WINDOW (window));
}

static void
on_cautions_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  cautions_present (gtk_application_get_active_window (GTK_APPLICATION (data)));
}

static void
on_units_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  units_window_present (gtk_application_get_active_window (GTK_APPLICATION (data)));
}

static void
on_dark_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  GSettings *settings = kept_settings ();

  (void) data;
  if (settings != NULL)
    g_settings_set_value (settings, "dark", state);
  dark_use (g_variant_get_boolean (state));
  g_simple_action_set_state (action, state);
}

static void
take_kept_dark (SwApplication *self)
{
  GSettings *settings = kept_settings ();

  if (settings != NULL && g_settings_get_boolean (settings, "dark"))
    g_action_group_change_action_state (G_ACTION_GROUP (self), "dark",
                                        g_variant_new_boolean (TRUE));
}

static void
set_accels (GtkApplication *application)
{
  static const struct {
    const char *action, *accels[3];
  } keys[] = {
    { "app.new-window", { "<Ctrl>n" } },
    { "app.quit", { "<Ctrl>q" } },
    { "app.dark", { "<Ctrl>d" } },
    { "win.new-car", { "<Ctrl><Shift>n" } },
    { "win.open", { "<Ctrl>o" } },
    { "win.save", { "<Ctrl>s" } },
    { "win.save-as", { "<Ctrl><Shift>s" } },
    { "win.undo", { "<Ctrl>z" } },
    { "win.redo", { "<Ctrl><Shift>z", "<Ctrl>y" } },
    { "win.export", { "<Ctrl>e" } },
    { "win.report", { "<Ctrl>p" } },
    { "win.copy-numbers", { "<Ctrl><Shift>c" } },
    { "win.close", { "<Ctrl>w" } },
    { "win.fit", { "<Ctrl>0" } },
    { "win.zoom-in", { "<Ctrl>plus", "<Ctrl>equal" } },
    { "win.zoom-out", { "<Ctrl>minus" } },
    { "win.panel", { "F9" } },
    { "win.side-by-side", { "<Ctrl>t" } },
    { "win.curve-table", { "<Ctrl><Shift>t" } },
    { "win.show-help-overlay", { "F1", "<Ctrl>question" } },
    { "win.question::travel", { "<Alt>1" } },
    { "win.question::height", { "<Alt>2" } },
    { "win.question::mount", { "<Alt>3" } },
    { "win.question::springs", { "<Alt>4" } },
    { "win.question::loads", { "<Alt>5" } },
    { "win.explain", { "F5" } },
    { "win.what-is::", { "<Shift>F1" } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_application_set_accels_for_action (application, keys[i].action,
                                           (const char *const[]){ keys[i].accels[0],
                                                                  keys[i].accels[1],
                                                                  NULL });
}

static void
load_style (void)
{
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (provider,
                                       "/org/strutwright/Strutwright/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (),
                                              GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

static void
sw_application_startup (GApplication *application)
{
  static const GActionEntry entries[] = {
    { .name = "new-window", .activate = on_new_window_cb },
    { .name = "quit", .activate = on_quit_cb },
    { .name = "about", .activate = on_about_cb },
    { .name = "cautions", .activate = on_cautions_cb },
    { .name = "tour", .activate = on_tour_cb },
    { .name = "units", .activate = on_units_cb },
    { .name = "dark", .state = "false", .change_state = on_dark_cb },
  };

  G_APPLICATION_CLASS (sw_application_parent_class)->startup (application);
  g_action_map_add_action_entries (G_ACTION_MAP (application), entries,
                                   G_N_ELEMENTS (entries), application);
  take_kept_dark (SW_APPLICATION (application));
  sw_units_get ();
  set_accels (GTK_APPLICATION (application));
  load_style ();
}

static void
sw_application_class_init (SwApplicationClass *class)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (class);

  application_class->startup = sw_application_startup;
  application_class->activate = sw_application_activate;
  application_class->open = sw_application_open;
}

static void
sw_application_init (SwApplication *self)
{
  (void) self;
}

GtkApplication *
sw_application_new (GApplicationFlags flags)
{
  return g_object_new (SW_TYPE_APPLICATION, "application-id", SW_APPLICATION_ID, "flags",
                       G_APPLICATION_HANDLES_OPEN | flags, NULL);
}
