/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside compare.c only: the table for reading, columns aligned as a terminal shows them.
 */

#pragma once

#include "model/study/study.h"

void compare_write_text (const Study *study, GString *text);
