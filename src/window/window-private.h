/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the window share: window.c (its parts), window-actions.c (its menus
 * and keys), window-files.c (opening, saving, closing). */

#pragma once

#include "window/numbers-view.h"
#include "window/sheet-view.h"
#include "window/window.h"

struct _SwWindow {
  GtkApplicationWindow parent_instance;

  SwBench *bench;
  SwSheetView *sheet;
  SwNumbersView *numbers;
  gboolean may_close;         /* the user has said what becomes of unsaved changes */
  gboolean closes_when_saved; /* the user has asked to save and close */

  GtkWidget *panel_box, *panel_place, *sheet_place, *numbers_place, *tools;
  GtkWidget *title, *subtitle;
  GtkStack *questions;
  GtkScale *travel;
  GtkLabel *travel_label;
  GtkRevealer *message;
  GtkLabel *message_label;
  GtkMenuButton *recent;
};

void window_install_actions (SwWindow *self);
void window_update_actions (SwWindow *self);

void window_ask_open (SwWindow *self);
/* Saves to the document's file, or asks for one. */
void window_save (SwWindow *self);
void window_ask_save_as (SwWindow *self);
/* Asks what becomes of unsaved changes, then closes. */
void window_ask_close (SwWindow *self);
GtkWidget *window_recent_popover (SwWindow *self);
