/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a setup stands, below its name at the head of a column. */

#pragma once

#include "model/study/study.h"

/* "baseline, 25.0 mm lower"; a height that was not changed needs no figure. */
void standing_words (const Study *study, unsigned setup, char *text, size_t size);
