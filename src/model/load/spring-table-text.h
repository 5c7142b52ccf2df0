/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside spring-table only: the table for reading, in the user's language. */

#pragma once

#include "model/load/spring-table.h"

void spring_table_write_text (const SpringStudy *study,
                              guint setup,
                              TravelSteps steps,
                              gsize n_rows,
                              GString *text);

/* The row at @travel, all NAN where it cannot be assembled. */
void spring_table_row (const SpringStudy *study,
                       guint setup,
                       double travel,
                       SpringStation *station);
