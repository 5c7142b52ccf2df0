/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Comma-separated values after RFC 4180. */

#pragma once

#include <glib.h>

/* A field with what CSV keeps for itself in it goes in quotes. */
void csv_append_text (GString *text, const char *field);
/* The exact number, or nothing where it is not finite. */
void csv_append_number (GString *text, double value);
