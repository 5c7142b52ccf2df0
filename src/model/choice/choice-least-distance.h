/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: the shortest vector that a set of linear inequalities allows.
 *
 * min |y|² with rowᵢ·y ≥ levelᵢ. Its dual is a least-squares problem without signs but
 * one, u ≥ 0: min |Eu − f|, the columns of E the rows with their levels under them, f all
 * 0 but for its last, 1; then y = Rowᵀ λ with λ = u / (1 − level·u). Source: Lawson &
 * Hanson, Solving Least Squares Problems, ch. 23, from memory; the least squares within
 * by the GNU Scientific Library. */

#pragma once

#include <glib.h>

#define LEAST_DISTANCE_MOST_UNKNOWNS 16

typedef struct {
  double row[LEAST_DISTANCE_MOST_UNKNOWNS];
  double level;
  double multiplier; /* λ, ≥ 0; out */
} Inequality;

/* FALSE where nothing satisfies all of them. */
gboolean least_distance_solve (Inequality *inequalities,
                               guint n_inequalities,
                               guint n_unknowns,
                               double *y);
