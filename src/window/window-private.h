/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the window share: window.c (its parts), window-actions.c (its menus
 * and keys), window-files.c (opening, saving, closing), window-strip.c (what stands
 * below), window-size.c, window-tour.c (the first steps).
 */

#pragma once

#include "model/document/recovery.h"
#include "window/curves/numbers-view.h"
#include "window/sheet/sheet-view.h"
#include "window/window.h"

struct _SwWindow {
  GtkApplicationWindow parent_instance;

  SwBench *bench;
  SwSheetView *sheet;
  SwNumbersView *numbers;
  gboolean may_close;         /* the user has said what becomes of unsaved changes */
  gboolean closes_when_saved; /* the user has asked to save and close */

  Recovery *recovery;   /* of the open document */
  GPtrArray *left_over; /* of LeftOver: what a crash has left, until it is answered */

  GtkWidget *panel_box, *panel_place, *sheet_place, *tools, *strip_bar, *strip_tools;
  GtkWidget *title, *subtitle, *travel_bar;
  GtkPaned *panes;
  GtkStack *questions, *strips;
  GtkScale *travel;
  GtkLabel *travel_label;
  GtkRevealer *message;
  GtkLabel *message_label;
  GtkMenuButton *recent, *main_menu;
  GtkRevealer *tour;
  GtkRevealer *offer;
  GtkLabel *offer_label;
};

void window_install_actions (SwWindow *self);
void window_update_actions (SwWindow *self);

void window_ask_open (SwWindow *self);
/* Asks for what is measured on a car, which then is a document without a file. */
void window_ask_new_car (SwWindow *self);
/* Saves to the document's file, or asks for one. */
void window_save (SwWindow *self);
void window_ask_save_as (SwWindow *self);
/* Asks what becomes of unsaved changes, then closes. */
void window_ask_close (SwWindow *self);
/* Asks whether a file that another program has changed may be overwritten. */
void window_ask_overwrite (SwWindow *self);
/* Puts @document on the bench and keeps a recovery copy of it. */
void window_take_document (SwWindow *self, SwDocument *document);
void window_install_recovery (GtkWidgetClass *class);
GtkWidget *window_recent_popover (SwWindow *self);

/* As large as the window that was closed last, and for the next one. */
void window_take_kept_size (SwWindow *self);
void window_keep_size (SwWindow *self);
/* Sheet and question beside each other, or one above the other where @width is not
 * enough. */
void window_fit_panes (SwWindow *self, int width);

/* What stands below the sheet. */
void window_add_strips (SwWindow *self, GtkWidget *numbers);
void window_show_strip (SwWindow *self);   /* that of the question in hand */
void window_follow_strip (SwWindow *self); /* with what is above it */
