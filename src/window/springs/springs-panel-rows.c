/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define SPRINGS(member) offsetof (SpringSet, springs.member)
#define ROD(member) offsetof (SpringSet, rod.member)
#define FAR 1000.0

gboolean
springs_has_group (const SpringSet *set, SpringsGroup group)
{
  const CarSprings *s = &set->springs;

  switch (group) {
  case SPRINGS_BAR:
    return s->bar.is_there != 0;
  case SPRINGS_COIL:
    return s->coil.is_there != 0;
  case SPRINGS_HELPER:
    return s->helper.is_there != 0;
  case SPRINGS_STOPS:
    return s->bump_stop.is_there != 0;
  case SPRINGS_ANTI_ROLL:
    return s->anti_roll_bar.is_there != 0;
  case SPRINGS_ROD:
    return set->rod.diameter_mm > 0.0;
  default:
    return TRUE;
  }
}

static gboolean
always (const SpringSet *set)
{
  (void) set;
  return TRUE;
}

static gboolean
with_bar (const SpringSet *set)
{
  return set->springs.bar.is_there != 0;
}

static gboolean
with_bar_rate (const SpringSet *set)
{
  return with_bar (set) && set->springs.bar.rate_nm_per_deg != 0.0;
}

gboolean
springs_ask_bar_sizes (const SpringSet *set)
{
  return with_bar (set) && set->springs.bar.rate_nm_per_deg == 0.0;
}

static gboolean
with_coil (const SpringSet *set)
{
  return set->springs.coil.is_there != 0;
}

static gboolean
with_coil_rate (const SpringSet *set)
{
  return with_coil (set) && set->springs.coil.rate_n_per_mm != 0.0;
}

static gboolean
with_coil_table (const SpringSet *set)
{
  return with_coil (set) && set->springs.coil.table.n > 0;
}

gboolean
springs_ask_coil_sizes (const SpringSet *set)
{
  return with_coil (set) && !with_coil_rate (set) && !with_coil_table (set);
}

static gboolean
with_helper (const SpringSet *set)
{
  return set->springs.helper.is_there != 0;
}

static gboolean
with_helper_beside (const SpringSet *set)
{
  return with_helper (set) && set->springs.helper.place == HELPER_IN_PARALLEL;
}

static gboolean
with_stop (const SpringSet *set)
{
  return set->springs.bump_stop.is_there != 0;
}

static gboolean
with_anti_roll (const SpringSet *set)
{
  return set->springs.anti_roll_bar.is_there != 0;
}

static gboolean
with_anti_roll_rate (const SpringSet *set)
{
  return with_anti_roll (set) && set->springs.anti_roll_bar.rate_n_per_mm != 0.0;
}

gboolean
springs_ask_anti_roll_sizes (const SpringSet *set)
{
  return with_anti_roll (set) && !with_anti_roll_rate (set);
}

static gboolean
with_link_point (const SpringSet *set)
{
  return with_anti_roll (set) && set->springs.anti_roll_bar.has_link_point != 0;
}

static gboolean
with_rod (const SpringSet *set)
{
  return set->rod.diameter_mm > 0.0;
}

static gboolean
with_piston (const SpringSet *set)
{
  return with_rod (set) && set->rod.bush_spacing_mm == 0.0;
}

static gboolean
with_bushes (const SpringSet *set)
{
  return with_rod (set) && set->rod.bush_spacing_mm > 0.0;
}

const SpringsRow springs_rows[N_SPRINGS_ROWS] = {
  [ROW_BAR_RATE] = { SPRINGS_BAR, "torsion_bar.rate_nm_per_deg", N_ ("Rate"),
                     N_ ("Torque of the whole bar per degree of twist"), N_ ("N·m/°"),
                     SPRINGS (bar.rate_nm_per_deg), .least = 0.1, .most = FAR,
                     .step = 0.5, .is_asked = with_bar_rate },
  [ROW_BAR_MODULUS] = { SPRINGS_BAR, "torsion_bar.shear_modulus_gpa",
                        N_ ("Shear modulus"),
                        N_ ("Of the bar’s steel: 79.3 GPa unless its maker says otherwise"),
                        N_ ("GPa"), SPRINGS (bar.shear_modulus_gpa), .least = 10.0,
                        .most = 200.0, .step = 0.1, .is_asked = springs_ask_bar_sizes },
  [ROW_CLAMP_ANGLE] = { SPRINGS_BAR, "torsion_bar.clamp_angle_deg", N_ ("Clamp angle"),
                        N_ ("Twist of the bar with the wheel at its reference height; "
                            "winding the car up is positive"),
                        N_ ("° wound up"), SPRINGS (bar.clamp_angle_deg), .least = -90.0,
                        .most = 90.0, .step = 0.1, .reach = 15.0, .is_asked = with_bar },
  [ROW_LEVER] = { SPRINGS_BAR, "torsion_bar.lever_mm", N_ ("Adjuster lever"),
                  N_ ("Length of the adjuster’s arm, to read the clamp angle in millimetres"),
                  N_ ("mm"), SPRINGS (bar.lever_mm), .may_be_empty = TRUE,
                  .empty_word = N_ ("none"), .most = FAR, .step = 1.0,
                  .is_asked = with_bar },
  [ROW_SPLINES] = { SPRINGS_BAR, "torsion_bar.splines", N_ ("Splines"),
                    N_ ("Number of the adjuster’s splines, to read the clamp angle in steps"),
                    NULL, SPRINGS (bar.n_splines), .is_count = TRUE, .may_be_empty = TRUE,
                    .empty_word = N_ ("free"), .most = 200.0, .step = 1.0,
                    .is_asked = with_bar },
  [ROW_COIL_RATE] = { SPRINGS_COIL, "coil.rate_n_per_mm", N_ ("Rate"),
                      N_ ("Force of the coil per millimetre that it is squashed"),
                      N_ ("N/mm"), SPRINGS (coil.rate_n_per_mm), .least = 0.1,
                      .most = FAR, .step = 1.0, .is_asked = with_coil_rate },
  [ROW_WIRE] = { SPRINGS_COIL, "coil.wire_mm", N_ ("Wire"), N_ ("Diameter of its wire"),
                 N_ ("mm"), SPRINGS (coil.wire_mm), .least = 0.1, .most = 100.0,
                 .step = 0.1, .is_asked = springs_ask_coil_sizes },
  [ROW_MEAN_DIAMETER] = { SPRINGS_COIL, "coil.mean_diameter_mm", N_ ("Mean diameter"),
                          N_ ("Of the coil, from the middle of the wire to the middle of the "
                              "wire: the outside diameter less one wire"),
                          N_ ("mm"), SPRINGS (coil.mean_diameter_mm), .least = 1.0,
                          .most = 1000.0, .step = 1.0,
                          .is_asked = springs_ask_coil_sizes },
  [ROW_ACTIVE_COILS] = { SPRINGS_COIL, "coil.active_coils", N_ ("Active coils"),
                         N_ ("Turns that work: without those that lie on the seats"),
                         NULL, SPRINGS (coil.active_coils), .least = 0.1, .most = 100.0,
                         .step = 0.25, .is_asked = springs_ask_coil_sizes },
  [ROW_TOTAL_COILS] = { SPRINGS_COIL, "coil.total_coils", N_ ("Total coils"),
                        N_ ("All turns: they give the length at which the coil is solid"),
                        NULL, SPRINGS (coil.total_coils), .may_be_empty = TRUE,
                        .empty_word = "—", .most = 100.0, .step = 0.25,
                        .is_asked = springs_ask_coil_sizes },
  [ROW_COIL_MODULUS] = { SPRINGS_COIL, "coil.shear_modulus_gpa", N_ ("Shear modulus"),
                         N_ ("Of the coil’s steel: 79.3 GPa unless its maker says otherwise"),
                         N_ ("GPa"), SPRINGS (coil.shear_modulus_gpa), .least = 10.0,
                         .most = 200.0, .step = 0.1, .is_asked = springs_ask_coil_sizes },
  [ROW_FREE_LENGTH] = { SPRINGS_COIL, "coil.free_length_mm", N_ ("Free length"),
                        N_ ("Of the coil off the car"), N_ ("mm"),
                        SPRINGS (coil.free_length_mm), .least = 1.0, .most = FAR,
                        .step = 1.0, .is_asked = with_coil },
  [ROW_SOLID_LENGTH] = { SPRINGS_COIL, "coil.solid_length_mm", N_ ("Solid length"),
                         N_ ("With all coils touching; where nothing is given, from wire and "
                             "total coils"),
                         N_ ("mm"), SPRINGS (coil.solid_length_mm), .may_be_empty = TRUE,
                         .empty_word = "—", .most = FAR, .step = 1.0,
                         .is_asked = with_coil },
  [ROW_PERCH] = { SPRINGS_COIL, "coil.perch_mm", N_ ("Perch"),
                  N_ ("Lower seat along the strut’s axis above the strut foot"),
                  N_ ("mm above foot"), SPRINGS (coil.perch_mm), .most = FAR, .step = 0.5,
                  .reach = 40.0, .is_asked = with_coil },
  [ROW_UPPER_DROP] = { SPRINGS_COIL, "coil.upper_drop_mm", N_ ("Upper seat"),
                       N_ ("Below the upper mount along the strut’s axis"),
                       N_ ("mm down"), SPRINGS (coil.upper_drop_mm), .least = -FAR,
                       .most = FAR, .step = 0.5, .is_asked = with_coil },
  [ROW_LOWER_OUTBOARD] = { SPRINGS_COIL, "coil.lower_outboard_mm", N_ ("Lower seat out"),
                           N_ ("Centre of the lower seat outboard of the strut’s axis"),
                           N_ ("mm outboard"), SPRINGS (coil.lower_outboard_mm),
                           .least = -FAR, .most = FAR, .step = 0.5,
                           .is_asked = with_coil },
  [ROW_LOWER_FORWARD] = { SPRINGS_COIL, "coil.lower_forward_mm", N_ ("Lower seat ahead"),
                          N_ ("Centre of the lower seat forward of the strut’s axis"),
                          N_ ("mm forward"), SPRINGS (coil.lower_forward_mm),
                          .least = -FAR, .most = FAR, .step = 0.5,
                          .is_asked = with_coil },
  [ROW_UPPER_OUTBOARD] = { SPRINGS_COIL, "coil.upper_outboard_mm", N_ ("Upper seat out"),
                           N_ ("Centre of the upper seat outboard of the strut’s axis"),
                           N_ ("mm outboard"), SPRINGS (coil.upper_outboard_mm),
                           .least = -FAR, .most = FAR, .step = 0.5,
                           .is_asked = with_coil },
  [ROW_UPPER_FORWARD] = { SPRINGS_COIL, "coil.upper_forward_mm", N_ ("Upper seat ahead"),
                          N_ ("Centre of the upper seat forward of the strut’s axis"),
                          N_ ("mm forward"), SPRINGS (coil.upper_forward_mm),
                          .least = -FAR, .most = FAR, .step = 0.5,
                          .is_asked = with_coil },
  [ROW_HELPER_RATE] = { SPRINGS_HELPER, "helper.rate_n_per_mm", N_ ("Rate"),
                        N_ ("Force of the helper per millimetre that it is squashed"),
                        N_ ("N/mm"), SPRINGS (helper.rate_n_per_mm), .least = 0.1,
                        .most = FAR, .step = 0.5, .is_asked = with_helper },
  [ROW_HELPER_FREE_LENGTH] = { SPRINGS_HELPER, "helper.free_length_mm",
                               N_ ("Free length"), N_ ("Of the helper off the car"),
                               N_ ("mm"), SPRINGS (helper.free_length_mm), .least = 1.0,
                               .most = FAR, .step = 1.0, .is_asked = with_helper },
  [ROW_HELPER_SOLID_LENGTH] = { SPRINGS_HELPER, "helper.solid_length_mm",
                                N_ ("Solid length"),
                                N_ ("Of the helper with all its coils touching: closed"),
                                N_ ("mm"), SPRINGS (helper.solid_length_mm),
                                .may_be_empty = TRUE, .empty_word = "—", .most = FAR,
                                .step = 1.0, .is_asked = with_helper },
  [ROW_HELPER_PERCH] = { SPRINGS_HELPER, "helper.perch_mm", N_ ("Perch"),
                         N_ ("The helper’s lower seat along the strut’s axis above the strut "
                             "foot"),
                         N_ ("mm above foot"), SPRINGS (helper.perch_mm), .most = FAR,
                         .step = 0.5, .is_asked = with_helper_beside },
  [ROW_HELPER_UPPER_DROP] = { SPRINGS_HELPER, "helper.upper_drop_mm", N_ ("Upper seat"),
                              N_ ("The helper’s upper seat below the upper mount"),
                              N_ ("mm down"), SPRINGS (helper.upper_drop_mm),
                              .least = -FAR, .most = FAR, .step = 0.5,
                              .is_asked = with_helper_beside },
  [ROW_STOP_GAP] = { SPRINGS_STOPS, "bump_stop.gap_mm", N_ ("Gap"),
                     N_ ("Strut travel from the reference height until the bump stop touches"),
                     N_ ("mm of strut"), SPRINGS (bump_stop.gap_mm), .least = -FAR,
                     .most = FAR, .step = 1.0, .is_asked = with_stop },
  [ROW_DROOP_STOP] = { SPRINGS_STOPS, "droop_stop_mm", N_ ("Droop stop"),
                       N_ ("Wheel travel below the reference height where the strut is at its "
                           "end"),
                       N_ ("mm down"), SPRINGS (droop_stop_mm), .may_be_empty = TRUE,
                       .empty_word = N_ ("none"), .most = FAR, .step = 1.0,
                       .is_asked = always },
  [ROW_ANTI_ROLL_RATE] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.rate_n_per_mm", N_ ("Rate"),
                           N_ ("Of one end of the bar, the other one held"), N_ ("N/mm"),
                           SPRINGS (anti_roll_bar.rate_n_per_mm), .least = 0.1,
                           .most = FAR, .step = 1.0, .is_asked = with_anti_roll_rate },
  [ROW_ANTI_ROLL_DIAMETER] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.diameter_mm",
                               N_ ("Diameter"), N_ ("Outside, of what twists"), N_ ("mm"),
                               SPRINGS (anti_roll_bar.diameter_mm), .least = 0.1,
                               .most = 200.0, .step = 0.5,
                               .is_asked = springs_ask_anti_roll_sizes },
  [ROW_ANTI_ROLL_BORE] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.bore_mm", N_ ("Bore"),
                           N_ ("Inside diameter of a hollow bar"), N_ ("mm"),
                           SPRINGS (anti_roll_bar.bore_mm), .may_be_empty = TRUE,
                           .empty_word = N_ ("solid"), .most = 200.0, .step = 0.5,
                           .is_asked = springs_ask_anti_roll_sizes },
  [ROW_ANTI_ROLL_LENGTH] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.length_mm", N_ ("Length"),
                             N_ ("Of what twists, between its two arms"), N_ ("mm"),
                             SPRINGS (anti_roll_bar.length_mm), .least = 1.0,
                             .most = 5000.0, .step = 5.0,
                             .is_asked = springs_ask_anti_roll_sizes },
  [ROW_ANTI_ROLL_ARM] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.arm_mm", N_ ("Arm"),
                          N_ ("From the bar’s axis square to the link"), N_ ("mm"),
                          SPRINGS (anti_roll_bar.arm_mm), .least = 1.0, .most = FAR,
                          .step = 1.0, .is_asked = springs_ask_anti_roll_sizes },
  [ROW_ANTI_ROLL_MODULUS] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.shear_modulus_gpa",
                              N_ ("Shear modulus"),
                              N_ ("Of the anti-roll bar’s steel: 79.3 GPa unless its maker says "
                                  "otherwise"),
                              N_ ("GPa"), SPRINGS (anti_roll_bar.shear_modulus_gpa),
                              .least = 10.0, .most = 200.0, .step = 0.1,
                              .is_asked = springs_ask_anti_roll_sizes },
  [ROW_LINK_X] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.link_point[0]", N_ ("Link, x"),
                   N_ ("Where the link holds: forward of the origin, as the measured points"),
                   N_ ("mm forward"), SPRINGS (anti_roll_bar.link_point.x),
                   .least = -10000.0, .most = 10000.0, .step = 1.0,
                   .is_asked = with_link_point },
  [ROW_LINK_Y] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.link_point[1]", N_ ("Link, y"),
                   N_ ("Where the link holds: outboard of the middle of the car"),
                   N_ ("mm outboard"), SPRINGS (anti_roll_bar.link_point.y),
                   .least = -10000.0, .most = 10000.0, .step = 1.0,
                   .is_asked = with_link_point },
  [ROW_LINK_Z] = { SPRINGS_ANTI_ROLL, "anti_roll_bar.link_point[2]", N_ ("Link, z"),
                   N_ ("Where the link holds: above the ground, as the measured points"),
                   N_ ("mm up"), SPRINGS (anti_roll_bar.link_point.z), .least = -10000.0,
                   .most = 10000.0, .step = 1.0, .is_asked = with_link_point },
  [ROW_GAS] = { SPRINGS_DAMPER, "damper.gas_force_n", N_ ("Gas force"),
                N_ ("With which the damper’s gas pushes the rod out"), N_ ("N"),
                SPRINGS (damper.gas_force_n), .may_be_empty = TRUE,
                .empty_word = N_ ("none"), .most = 100000.0, .step = 10.0,
                .is_asked = always },
  [ROW_TYRE] = { SPRINGS_DAMPER, "tyre_rate_n_per_mm", N_ ("Tyre rate"),
                 N_ ("Of the tyre, in series with the springs for ride rate and frequency"),
                 N_ ("N/mm"), SPRINGS (tyre_rate_n_per_mm), .least = 1.0, .most = 10000.0,
                 .step = 5.0, .is_asked = always },
  [ROW_ROD_DIAMETER] = { SPRINGS_ROD, "rod.diameter_mm", N_ ("Diameter"),
                         N_ ("Outside, of the rod; of the sliding tube where the strut is "
                             "inverted"),
                         N_ ("mm"), ROD (diameter_mm), .least = 1.0, .most = 200.0,
                         .step = 0.5, .reach = 15.0, .is_asked = with_rod },
  [ROW_ROD_BORE] = { SPRINGS_ROD, "rod.bore_mm", N_ ("Bore"),
                     N_ ("Inside diameter of a hollow rod"), N_ ("mm"), ROD (bore_mm),
                     .may_be_empty = TRUE, .empty_word = N_ ("solid"), .most = 200.0,
                     .step = 0.5, .is_asked = with_rod },
  [ROW_GUIDE_HEIGHT] = { SPRINGS_ROD, "rod.guide_height_mm", N_ ("Guide bush"),
                         N_ ("The bush, or the upper one, along the strut’s axis above the "
                             "strut foot; where nothing is given, at the tube’s top"),
                         N_ ("mm above foot"), ROD (guide_height_mm),
                         .may_be_empty = TRUE, .empty_word = N_ ("tube top"), .most = FAR,
                         .step = 1.0, .is_asked = with_rod },
  [ROW_PISTON_DROP] = { SPRINGS_ROD, "rod.piston_drop_mm", N_ ("Piston"),
                        N_ ("Below the upper mount, along the rod"), N_ ("mm down"),
                        ROD (piston_drop_mm), .least = 0.0, .most = FAR, .step = 1.0,
                        .is_asked = with_piston },
  [ROW_BUSH_SPACING] = { SPRINGS_ROD, "rod.bush_spacing_mm", N_ ("Bushes apart"),
                         N_ ("Between the two bushes in the housing of an inverted strut"),
                         N_ ("mm"), ROD (bush_spacing_mm), .least = 1.0, .most = FAR,
                         .step = 1.0, .is_asked = with_bushes },
  [ROW_ROD_MODULUS] = { SPRINGS_ROD, "rod.modulus_gpa", N_ ("Modulus"),
                        N_ ("Of elasticity, of the rod: 207 GPa for steel"), N_ ("GPa"),
                        ROD (modulus_gpa), .least = 10.0, .most = 1000.0, .step = 1.0,
                        .is_asked = with_rod },
  [ROW_FRICTION] = { SPRINGS_ROD, "rod.friction", N_ ("Friction"),
                     N_ ("Coefficient at guide and piston: 0.05 for oiled steel on a coated "
                         "bush, common practice"),
                     NULL, ROD (friction), .least = 0.0, .most = 1.0, .step = 0.01,
                     .is_asked = with_rod },
};

const SpringsTableRow springs_tables[N_SPRINGS_TABLES] = {
  [TABLE_COIL] = { SPRINGS_COIL, "coil.table", N_ ("Coil’s law"),
                   N_ ("Of a progressive coil: pairs of length squashed and force, rising"),
                   UNIT_LENGTH, UNIT_FORCE, "0 0; 40 900; 80 2300", "0 0; 1.5 200; 3 500",
                   SPRINGS (coil.table), FALSE, with_coil_table },
  [TABLE_BUMP_STOP] = { SPRINGS_STOPS, "bump_stop.table", N_ ("Stop’s law"),
                        N_ ("Of the bump stop: pairs of length squashed and force, rising"),
                        UNIT_LENGTH, UNIT_FORCE, "0 0; 10 300; 20 1200",
                        "0 0; 0.4 70; 0.8 270", SPRINGS (bump_stop.table), FALSE,
                        with_stop },
  [TABLE_DAMPER] = { SPRINGS_DAMPER, "damper.table", N_ ("Damper’s law"),
                     N_ ("Pairs of damper speed and force, bump positive, rising; empty "
                         "where it is not known"),
                     UNIT_SPEED, UNIT_FORCE, "-0.5 -1200; 0 0; 0.5 600",
                     "-20 -270; 0 0; 20 135", SPRINGS (damper.table), TRUE, always },
};

double
springs_row_get (const SpringsRow *row, const SpringSet *set)
{
  const char *at = (const char *) set + row->offset;

  return row->is_count ? (double) *(const gsize *) (gconstpointer) at
                       : *(const double *) (gconstpointer) at;
}

/* Never −0.0, which would stand in the file. */
void
springs_row_set (const SpringsRow *row, SpringSet *set, double value)
{
  char *at = (char *) set + row->offset;

  if (row->is_count)
    *(gsize *) (gpointer) at = (gsize) round (value);
  else
    *(double *) (gpointer) at = value + 0.0;
}
