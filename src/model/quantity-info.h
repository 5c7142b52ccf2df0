/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the edges (screen, file, export) say of each quantity of the kernel: names, units,
 * sign words, digits. A new quantity is one more row in quantity-info.c. */

#pragma once

#include "kernel/measure.h"

#include <glib.h>

typedef struct {
  const char *key;        /* column and curve name: `camber_deg` */
  const char *name;       /* translated: "Camber" */
  const char *unit;       /* "°", "mm", "°/mm", "%", "" */
  const char *positive;   /* translated sign words: "top leans out" */
  const char *negative;   /* "top leans in" */
  const char *meaning;    /* translated, one sentence: what it is and what moves it */
  int decimals;           /* that a bench can answer for */
  double scale;           /* edge value = kernel value · scale */
  const char *short_name; /* translated; where the name has no room: "SAI" */
} QuantityInfo;

QuantityInfo quantity_info (Quantity quantity);

double quantity_edge_value (Quantity quantity, double kernel_value);

/* @key as in QuantityInfo, or without its unit: `camber`. */
gboolean quantity_from_key (const char *key, Quantity *quantity);

/* "−1.93", with a true minus sign and the locale's decimal mark; "–" when not finite.
 * With @with_sign a positive number gets its "+". A value that rounds to zero has no
 * sign. */
void quantity_format (
    Quantity quantity, double kernel_value, gboolean with_sign, char *text, gsize size);

/* The sign words for a value, or "" where it rounds to zero. */
const char *quantity_sign_words (Quantity quantity, double kernel_value);
