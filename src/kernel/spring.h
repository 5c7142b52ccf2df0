/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rates and stresses of springs from their sizes. N, mm, N/mm², rad.
 *
 * Sources: torsion of round bars and helical springs as in any handbook of machine
 * elements, Shigley's Mechanical Engineering Design, ch. 4 and 10 (formulas from memory,
 * checked by its worked figures in tests/kernel). */

#pragma once

#include <stddef.h>

/* A length of bar of one size; a stepped bar is a row of them. */
typedef struct {
  double outer, inner; /* diameters; inner 0: solid */
  double length;
} BarSection;

/* π (D⁴ − d⁴)/32 and π (D⁴ − d⁴)/64 */
double polar_moment (double outer, double inner);
double bending_moment_of_area (double outer, double inner);

/* N·mm/rad: 1/Σ (length/(G J)). 0 where a section has no size. */
double torsion_bar_rate (const BarSection *sections, size_t n, double shear_modulus);
/* The largest shear stress at the surface of any section. */
double torsion_bar_stress (const BarSection *sections, size_t n, double torque);

typedef struct {
  double wire, mean_diameter;
  double active_coils, total_coils;
} CoilSize;

/* N/mm: G d⁴/(8 D³ n) */
double coil_rate (CoilSize size, double shear_modulus);
/* Ground ends: all coils touch at wire · total coils. */
double coil_solid_length (CoilSize size);
/* With Wahl's factor for curvature. */
double coil_stress (CoilSize size, double force);

double springs_in_series (double a, double b);
