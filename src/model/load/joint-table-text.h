/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside joint-table only: the table for reading, in the user's language. */

#pragma once

#include "model/load/joint-table.h"

void joint_table_write_text (const JointTable *table, GString *text);
