/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A root between two places by Newton's method with the exact slope, held inside a
 * bracket that shrinks with every step; it halves where Newton would leave or crawl. */

#pragma once

/* May be −INFINITY or INFINITY where only the side of the root is known. */
typedef double (*RootFunction) (double x, double *slope, void *data);

/* To a few last digits. @low below @high; NAN where the function has the same sign at
 * both. */
double bracketed_root (RootFunction function, void *data, double low, double high);
