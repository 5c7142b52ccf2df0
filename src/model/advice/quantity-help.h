/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A page on each quantity for whoever asks what it is. Whole sentences, translated. */

#pragma once

#include "kernel/measure.h"

#include <glib.h>

#define QUANTITY_HELP_MOST_RELATED 4

typedef struct {
  const char *what;
  char *sign; /* which way is positive; owned */
  const char *changes;
  char *range;          /* what is usual on the road, and where that is from; owned */
  const char *folklore; /* what is often said, and what holds instead */
  Quantity related[QUANTITY_HELP_MOST_RELATED];
  guint n_related;
} QuantityHelp;

QuantityHelp quantity_help (Quantity quantity);
void quantity_help_clear (QuantityHelp *help);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (QuantityHelp, quantity_help_clear)

/* Whether each word of @text is in the quantity's name or page, in any case of letters.
 */
gboolean quantity_help_mentions (Quantity quantity, const char *text);
