/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What all parts of one window share: the document, the setup in hand, the solved study,
 * the travel in hand and the quantity that is lit.
 *
 * Signals, each once per change: "solved" when numbers changed (document, setup, travel);
 * "lit" when another quantity is lit; "chosen" when other curves are wanted. */

#pragma once

#include "drawing/board/board.h"
#include "model/document/document.h"
#include "model/spring/spring-study.h"
#include "model/study/study.h"

#define SW_TYPE_BENCH (sw_bench_get_type ())
G_DECLARE_FINAL_TYPE (SwBench, sw_bench, SW, BENCH, GObject)

SwBench *sw_bench_new (SwDocument *document);

SwDocument *sw_bench_get_document (SwBench *self);
/* Puts another document on the bench; setup and travel start anew. */
void sw_bench_set_document (SwBench *self, SwDocument *document);

guint sw_bench_get_setup_index (SwBench *self);
void sw_bench_set_setup_index (SwBench *self, guint index);
const CarSetup *sw_bench_get_setup (SwBench *self);

const Study *sw_bench_get_study (SwBench *self);
void sw_bench_set_travel (SwBench *self, double travel);
/* Solved when it is asked for, at most once a change: costs nothing while nobody asks. */
const SpringStudy *sw_bench_get_springs (SwBench *self);
/* Another number whenever the study was solved anew; the same after another travel. */
guint sw_bench_get_solution (SwBench *self);

/* Edits of the setup in hand; see SwDocument for undo steps. */
Adjustment sw_bench_get_adjustment (SwBench *self);
void sw_bench_set_mount (SwBench *self, MountOffset mount);
void sw_bench_set_lowering (SwBench *self, double lowering);
void sw_bench_set_toe (SwBench *self, ToeMode toe);

/* A drag: all edits until its end are one undo step, or none when it is cancelled. The
 * end is told by "solved" as well, when views may settle. */
void sw_bench_begin_drag (SwBench *self, const char *label);
void sw_bench_end_drag (SwBench *self);
void sw_bench_cancel_drag (SwBench *self);
gboolean sw_bench_is_dragging (SwBench *self);

/* The quantity lit up everywhere, or -1. */
int sw_bench_get_lit (SwBench *self);
void sw_bench_set_lit (SwBench *self, int quantity);

/* The curves on the board. */
BoardChoice sw_bench_get_choice (SwBench *self);
gboolean sw_bench_is_chosen (SwBench *self, Quantity quantity);
/* FALSE when nothing was changed: no room for more, or the last one. */
gboolean sw_bench_choose (SwBench *self, Quantity quantity, gboolean chosen);

/* What the title says: "15.0 mm inboard, 10.0 mm rearward". Free with g_free (). */
char *sw_bench_describe_mount (SwBench *self);
char *bench_mount_words (MountOffset mount); /* the same of any mount */
