/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Refusals of the model speak of a file's numbers, which are metric; people in front of
 * an entry typed them in the units chosen. */

#pragma once

#include "model/words/unit.h"

/* @sentence with its numbers as they are shown for the member whose path it begins with,
 * by the unit in the member's name. Free with g_free (). */
char *refusal_in_units (const char *sentence);
/* @sentence with each of its numbers as it is shown, with its unit. Free with g_free ().
 */
char *refusal_with_units (const char *sentence, UnitKind kind);
