/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a drawing writes, and where: the linker sends every text and message through here
 * (--wrap), so that what is tested is what comes out and not what the drawing believes
 * about itself. Also straight lines and circles, for what is drawn to scale. */

#pragma once

#include <pango/pangocairo.h>
#include <stdbool.h>

typedef struct {
  double x, y;
} DrawnPoint;

/* On the canvas, whatever the drawing had moved or turned. */
typedef struct {
  char *text;
  DrawnPoint corners[4]; /* of its ink, around it from the text's own top left */
  double left, top, right, bottom; /* of these corners */
  bool is_cut;                     /* ends in "…" for want of room */
} DrawnText;

/* On the canvas too. */
typedef struct {
  double x, y, radius;
} DrawnCircle;

typedef struct {
  double from_x, from_y, to_x, to_y;
} DrawnLine;

extern GArray *drawn_texts, *drawn_circles, *drawn_lines;

/* Empties the lists: before each drawing. */
void drawn_reset (void);

/* Messages 1.4 times as long, which German is of English: common practice, no published
 * source. */
extern bool drawn_in_long_words;
/* Letters after which what makes it longer begins a new word; 0: it is one word. */
extern gsize drawn_word_length;

/* Letters of messages as the wide ones of Japanese type, so that a plain letter that is
 * drawn comes from no message. */
extern bool drawn_in_full_width;

/* The text that has @part in it, or NULL. */
const DrawnText *drawn_find (const char *part);

const DrawnText *drawn_text_at (guint i);
guint drawn_count (const char *part); /* texts that have it in them */
/* Whether they share more than letters do that lean over their edge. */
bool drawn_overlap (const DrawnText *a, const DrawnText *b);

/* Whether @i of many things is drawn for car @car of @n_cars: all of them with -m
 * thorough, else the cars take them in turn, since a sanitizer is slow at letters. */
bool drawn_in_turn (gsize i, gsize car, gsize n_cars);

/* No text covers another or lies outside the page less its margin. */
void drawn_assert_apart (double width, double height, double margin, const char *what);
