/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One open car: its file, its changes, and their undoing.
 *
 * Signal "changed": the car is another than before (edit, undo, redo, cancel).
 * Properties to bind to: "modified", "can-undo", "can-redo", "title". */

#pragma once

#include "model/car/car.h"

#include <gio/gio.h>

#define SW_TYPE_DOCUMENT (sw_document_get_type ())
G_DECLARE_FINAL_TYPE (SwDocument, sw_document, SW, DOCUMENT, GObject)

SwDocument *sw_document_load (GFile *file, GError **error);
/* A document without a file: saving asks for one. Takes @car. */
SwDocument *sw_document_new_for_car (Car *car);
/* The same with work that no file has: modified until it is saved. Takes @car. */
SwDocument *sw_document_new_unsaved (Car *car);
/* Saves to @file, which becomes the document's own. On failure nothing has changed. */
gboolean sw_document_save (SwDocument *self, GFile *file, GError **error);

/* Whether another program has changed or removed the file since it was read or saved
 * here: its time of change or its size is another. */
gboolean sw_document_file_was_changed (SwDocument *self);

const Car *sw_document_get_car (SwDocument *self);
GFile *sw_document_get_file (SwDocument *self); /* or NULL */
gboolean sw_document_is_modified (SwDocument *self);

/* Every change goes through these. Outside begin … end each is an undo step of its own;
 * inside, all together are one, labelled as begun. Setting what is already there is none.
 */
void sw_document_set_setup (SwDocument *self,
                            guint index,
                            const Adjustment *adjustment,
                            const char *label); /* all but the corrections */
void sw_document_set_name (SwDocument *self, const char *name, const char *label);
void sw_document_set_notes (SwDocument *self, const char *notes, const char *label);

/* Setups as a list; each call is an undo step. Indices count as in the car. A name that
 * another setup has gets a number, as in "12 in (2)". So does that of a baseline behind a
 * setup of the same name, as a file knows its baseline by name. Past CAR_MOST_SETUPS
 * none is added. */
/* A copy of setup @like behind the last one, shown. @name is that of the copied one when
 * it is NULL or empty. */
void sw_document_add_setup (SwDocument *self, guint like, const char *name);
/* An empty name changes nothing. */
void sw_document_rename_setup (SwDocument *self, guint index, const char *name);
/* To the index that it has afterwards. */
void sw_document_move_setup (SwDocument *self, guint from, guint to);
/* FALSE for the last setup, which stays. A removed baseline hands over to the first. */
gboolean sw_document_remove_setup (SwDocument *self, guint index);
void sw_document_show_setup (SwDocument *self, guint index, gboolean shown);
void sw_document_set_baseline (SwDocument *self, guint index);
/* Copies of setups of another car behind the last one, shown. */
void sw_document_take_setups (SwDocument *self,
                              const Car *from,
                              const guint *indices,
                              guint n);
/* A copy of @setup, which may be of no car, behind the last one, shown. */
void sw_document_add_setup_like (SwDocument *self, const CarSetup *setup);
/* Which plate the mount was set by. Moving the mount by hand leaves it, and so the right
 * side. NULL or an empty name: none, and nothing is swapped. */
void sw_document_set_plate (SwDocument *self,
                            guint index,
                            const char *plate,
                            gboolean is_swapped,
                            const char *label);
/* The right side of a setup, by itself or as the left one. */
void sw_document_set_right_side (SwDocument *self,
                                 guint index,
                                 const CarRightSide *right,
                                 const char *label);
/* Within CAR_MOST_CAMBER_BOLT and CAR_MOST_CORRECTION. */
void sw_document_set_corrections (SwDocument *self,
                                  guint index,
                                  const CarCorrections *corrections,
                                  const char *label);

/* Everything that is measured of @draft: name, notes, both sides, alignment, tyre,
 * travel, body, tower, strut, tie rod and limits, but neither setups nor targets; members
 * not known here stay. A car that could not be loaded again is refused, as car_check ()
 * says, and nothing has changed. */
gboolean sw_document_set_measured (SwDocument *self,
                                   const Car *draft,
                                   const char *label,
                                   GError **error);
/* mm per turn, above 0 and not above CAR_MOST_THREAD_PITCH. */
void sw_document_set_thread_pitch (SwDocument *self, double pitch_mm, const char *label);
/* As a car file may have them: bounds that are not both open, the lower one first, and at
 * most one for each aim. Members not known here stay with their aim. */
void sw_document_set_targets (SwDocument *self,
                              const CarTarget *targets,
                              guint n,
                              const char *label);

/* What setup @index stands on by itself, or NULL: as the car does. What a car file could
 * not hold is refused, FALSE, and nothing has changed; car_check_springs () and
 * car_check_rod () say why. Parts that are not there lose their numbers. */
gboolean sw_document_set_springs (SwDocument *self,
                                  guint index,
                                  const CarSprings *own,
                                  const char *label);
gboolean
sw_document_set_rod (SwDocument *self, guint index, const CarRod *own, const char *label);
/* The same for what every setup without its own stands on. */
gboolean sw_document_set_car_springs (SwDocument *self,
                                      const CarSprings *springs,
                                      const char *label);
gboolean sw_document_set_car_rod (SwDocument *self, const CarRod *rod, const char *label);
/* All of them; @n 0: the usual ones. FALSE as above, by car_check_load_cases (). */
gboolean sw_document_set_load_cases (SwDocument *self,
                                     const CarLoadCase *cases,
                                     gsize n,
                                     const char *label);

/* Beginning inside a change ends that one first. */
void sw_document_begin (SwDocument *self, const char *label);
void sw_document_end (SwDocument *self);
/* Puts back, to the bit, what was there at begin. */
void sw_document_cancel (SwDocument *self);
gboolean sw_document_is_changing (SwDocument *self);

/* Neither does anything inside a change. */
void sw_document_undo (SwDocument *self);
void sw_document_redo (SwDocument *self);
const char *sw_document_get_undo_label (SwDocument *self); /* or NULL */
const char *sw_document_get_redo_label (SwDocument *self);
