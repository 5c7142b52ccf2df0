/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The date that goes onto paper. */

#pragma once

/* "2026-03-05", in the local time. Free with g_free (). */
char *today (void);
