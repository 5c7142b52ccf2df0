/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes to JSON text of the kind that a slip, a fault of the disk or an attacker makes:
 * most keep it JSON, so that the readers behind the parser are reached. */

#pragma once

#include <glib.h>

/* Changes @text at @n places; pieces come from @other too. */
void mutate (GString *text, const GString *other, guint n, GRand *chance);
