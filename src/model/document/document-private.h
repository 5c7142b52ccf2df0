/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the document only: what its files share. */

#pragma once

#include "model/document/document.h"

/* The car in hand, to be edited; every edit ends with document_finish_edit (). */
Car *document_car (SwDocument *self);
void document_finish_edit (SwDocument *self, const char *label);

/* Work that no file has, of a car that belongs in @file or in none yet: modified until it
 * is saved. @stamp is the file's when the work on it began, or NULL. Takes @car. */
SwDocument *document_new_unsaved (Car *car, GFile *file, const char *stamp);
/* See model/file/file-stamp.h; NULL without a file. */
const char *document_get_stamp (SwDocument *self);
