/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is said beside every figure of load, wherever it stands. */

#pragma once

/* Translated. */
const char *spring_caution (void);
