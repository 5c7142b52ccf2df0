/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside choice-table.c only: the table for reading. */

#pragma once

#include "model/choice/choice-table.h"

void choice_table_write_text (const ChoiceTable *table, GString *text);
