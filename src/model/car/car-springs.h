/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a car stands on, as its file has it: springs, stops, anti-roll bar, damper, rod,
 * and the cases of load it is looked at under. Units of the file: mm, °, N, N/mm, GPa, g.
 *
 * Plain values without pointers, so that they are copied and compared as bytes; whoever
 * makes one begins with zeros. A number at 0 that has no meaning at 0 is not given. */

#pragma once

#include "kernel/spring-path.h"

#include <glib.h>

/* Carbon spring steel: 79.3 GPa, Shigley's Mechanical Engineering Design, Table 10-5 for
 * music wire 80 to 82.7, for hard-drawn and oil-tempered wire 77 to 80 (from memory). */
#define SPRING_DEFAULT_SHEAR_MODULUS 79.3
/* Steel, Shigley, Table A-5 (30.0 Mpsi). */
#define ROD_DEFAULT_MODULUS 207.0
#define ROD_DEFAULT_FRICTION                                                             \
  0.05 /* oiled steel on a coated bush; common practice, no published source */
#define TYRE_DEFAULT_RATE 180.0 /* N/mm, a small road tyre; from memory */

#define SPRING_TABLE_MOST 16
#define BAR_SECTIONS_MOST 8
#define LOAD_CASES_MOST 12
#define LOAD_CASE_NAME 64 /* bytes, with the closing zero */

/* Points of a law, in rising x. */
typedef struct {
  gsize n; /* 0: not given */
  double x[SPRING_TABLE_MOST], y[SPRING_TABLE_MOST];
} SpringTable;

/* On the lower arm's hinge axis. */
typedef struct {
  gsize is_there;
  gsize n_sections;
  struct {
    double outer_mm, inner_mm, length_mm;
  } sections[BAR_SECTIONS_MOST];
  double rate_nm_per_deg; /* instead of sections; 0: not given */
  double shear_modulus_gpa;
  double clamp_angle_deg; /* the twist with the wheel at its reference height; winding
                             the car up is positive */
  double lever_mm; /* of the adjuster's arm, to say the clamp angle in mm; 0: splines */
  gsize n_splines; /* of the adjuster, to say it in steps; 0: free */
} CarTorsionBar;

typedef struct {
  gsize is_there;
  double rate_n_per_mm; /* 0: from the sizes below, or from the table */
  double wire_mm, mean_diameter_mm, active_coils, total_coils; /* 0: not given */
  double shear_modulus_gpa;
  SpringTable table; /* of a progressive coil: mm squashed, N; instead of a rate */
  double free_length_mm;
  double solid_length_mm; /* 0: from wire and coils, if given; else never bound */
  double perch_mm;        /* lower seat along the strut's axis above the strut foot */
  double upper_drop_mm;   /* upper seat below the mount */
  double lower_outboard_mm, lower_forward_mm, upper_outboard_mm, upper_forward_mm;
} CarCoil;

typedef enum {
  HELPER_IN_SERIES,  /* on top of the coil, on the same seats */
  HELPER_IN_PARALLEL /* around it or alone with a torsion bar, on its own seats */
} HelperPlace;

/* A weak spring that keeps the main one seated, or helps a torsion bar. */
typedef struct {
  gsize is_there;
  gsize place; /* of HelperPlace */
  double rate_n_per_mm, free_length_mm, solid_length_mm;
  double perch_mm, upper_drop_mm; /* not read in series */
} CarHelper;

/* On the strut. */
typedef struct {
  gsize is_there;
  double gap_mm;     /* strut travel from the reference height until it touches */
  SpringTable table; /* mm squashed, N; from (0, 0) */
} CarBumpStop;

typedef struct {
  gsize is_there;
  double rate_n_per_mm; /* of one end, the other held; 0: from the sizes */
  double diameter_mm, bore_mm, length_mm, arm_mm; /* length: of what twists */
  double shear_modulus_gpa;
  gsize link_carrier;   /* of LinkCarrier */
  gsize has_link_point; /* else half-way out the arm, or at the strut's foot */
  Vec3 link_point;
} CarAntiRollBar;

typedef struct {
  double gas_force_n;
  SpringTable table; /* m/s, N: bump positive; may be empty */
} CarDamper;

typedef struct {
  CarTorsionBar bar;
  CarCoil coil;
  CarHelper helper;
  CarBumpStop bump_stop;
  double droop_stop_mm; /* wheel travel below the reference height where the strut is at
                           its end; 0: not given */
  CarAntiRollBar anti_roll_bar;
  CarDamper damper;
  double tyre_rate_n_per_mm;
} CarSprings;

/* See Rod in kernel/rod.h. */
typedef struct {
  double diameter_mm; /* 0: not given */
  double bore_mm;
  double guide_height_mm; /* 0: at the tube's top */
  double piston_drop_mm;
  double bush_spacing_mm; /* above 0: inverted */
  double modulus_gpa, friction;
} CarRod;

/* Accelerations of the car as multiples of g, and what the road adds. */
typedef struct {
  char name[LOAD_CASE_NAME];
  double lateral_g; /* this wheel outside positive */
  double braking_g; /* slowing positive */
  double vertical;  /* times the standing load, before transfer; 1 on a smooth road */
  double rearward;  /* times the standing load, at the contact, as by a pothole's edge */
} CarLoadCase;

/* What stands where nothing was given: no spring at all, moduli and tyre at their
 * defaults. */
CarSprings car_springs_none (void);
gboolean car_springs_is_none (const CarSprings *springs);
/* Nothing but what a coil on the strut needs of room. */
CarSprings car_springs_outline (const CarSprings *springs);
CarRod car_rod_none (void);

/* Standing, cornering (outer and inner wheel), braking, bump, pothole and one mixed one:
 * invented, plausible on a road. */
gsize car_load_cases_usual (CarLoadCase cases[LOAD_CASES_MOST]);
/* What a person reads: the usual cases are called by their English names in files, on the
 * command line and in tables for programs, and in words of the language elsewhere. */
const char *car_load_case_title (const char *name);
/* The way back, of what a person typed. */
const char *car_load_case_name (const char *title);
