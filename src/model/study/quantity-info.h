/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the edges (screen, file, export) say of each quantity of the kernel: names, units,
 * sign words, digits. A new quantity is one more row in quantity-info.c. */

#pragma once

#include "kernel/measure.h"
#include "model/words/unit.h"

#include <glib.h>

typedef struct {
  const char *key;        /* column and curve name: `camber_deg` */
  const char *name;       /* translated: "Camber" */
  const char *unit;       /* as stored, in files: "°", "mm", "°/mm", "%", "" */
  const char *positive;   /* translated sign words: "top leans out" */
  const char *negative;   /* "top leans in" */
  const char *meaning;    /* translated, one sentence: what it is and what moves it */
  int decimals;           /* that a bench can answer for */
  double scale;           /* edge value = kernel value · scale */
  const char *short_name; /* translated; where the name has no room: "SAI" */
} QuantityInfo;

QuantityInfo quantity_info (Quantity quantity);

/* As stored and in files, whatever units are chosen. */
double quantity_edge_value (Quantity quantity, double kernel_value);

/* As chosen: what stands behind the figure ("" behind degrees and minutes), and what to
 * call it in a heading. */
UnitKind quantity_unit_kind (Quantity quantity);
const char *quantity_symbol (Quantity quantity);
const char *quantity_caption (Quantity quantity);

/* @key as in QuantityInfo, or without its unit: `camber`. */
gboolean quantity_from_key (const char *key, Quantity *quantity);

/* "−1.93" in the unit chosen, with a true minus sign and the locale's decimal mark; "–"
 * when not finite.
 * With @with_sign a positive number gets its "+". A value that rounds to zero has no
 * sign. */
void quantity_format (
    Quantity quantity, double kernel_value, gboolean with_sign, char *text, gsize size);

/* The difference of two values as shown, with its sign. */
void
quantity_format_change (Quantity quantity, double is, double was, char *text, gsize size);
/* The value with its symbol: "−1.93°", "12.3 mm". */
void quantity_format_whole (
    Quantity quantity, double kernel_value, gboolean with_sign, char *text, gsize size);

/* The same with a blank between, to be read aloud. Free with g_free (). */
char *quantity_spoken_text (Quantity quantity, double kernel_value);

/* The sign words for a value, or "" where it rounds to zero. */
const char *quantity_sign_words (Quantity quantity, double kernel_value);
