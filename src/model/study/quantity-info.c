/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const QuantityInfo rows[N_QUANTITIES] = {
  [QUANTITY_CAMBER] = { "camber_deg", N_ ("Camber"), "°", N_ ("top leans out"),
                        N_ ("top leans in"),
                        N_ ("Lean of the wheel plane against the vertical. The upper "
                            "mount moved inboard makes it more negative; bump does "
                            "too, until the arm stands square to the strut."),
                        2, 0 },
  [QUANTITY_TOE_IN] = { "toe_in_deg", N_ ("Toe-in"), "°", N_ ("front points in"),
                        N_ ("front points out"),
                        N_ ("Angle of one wheel to straight ahead, seen from above. It "
                            "moves with camber unless the tie rod is reset."),
                        2, 0 },
  [QUANTITY_CASTER] = { "caster_deg", N_ ("Caster"), "°", N_ ("axis top leans back"),
                        N_ ("axis top leans forward"),
                        N_ ("Lean of the steering axis in side view. The upper mount "
                            "moved rearward adds caster and trail."),
                        2, 0 },
  [QUANTITY_SAI] = { "sai_deg", N_ ("Steering-axis inclination"), "°",
                     N_ ("axis top leans in"), N_ ("axis top leans out"),
                     N_ ("Lean of the steering axis in front view, from ball joint to "
                         "upper mount. It grows as the mount goes inboard."),
                     2, 0, N_ ("SAI") },
  [QUANTITY_INCLUDED_ANGLE] = { "included_angle_deg", N_ ("Included angle"), "°", "", "",
                                N_ ("Steering-axis inclination plus camber: fixed by "
                                    "the knuckle and strut, so a change as measured on "
                                    "the car points to a bent part."),
                                2, 0, N_ ("Included") },
  [QUANTITY_SCRUB_RADIUS] = { "scrub_radius_mm", N_ ("Scrub radius"), "mm",
                              N_ ("axis meets ground inboard"),
                              N_ ("axis meets ground outboard"),
                              N_ ("Sideways distance on the ground from the steering "
                                  "axis to the contact centre."),
                              1, 1, N_ ("Scrub") },
  [QUANTITY_TRAIL] = { "trail_mm", N_ ("Caster trail"), "mm",
                       N_ ("axis meets ground ahead"), N_ ("axis meets ground behind"),
                       N_ ("Distance on the ground from the contact centre forward to "
                           "the steering axis; it centres the steering."),
                       1, 1, N_ ("Trail") },
  [QUANTITY_ROLL_CENTRE_HEIGHT] = { "roll_centre_height_mm", N_ ("Roll-centre height"),
                                    "mm", N_ ("above ground"), N_ ("below ground"),
                                    N_ ("Height above the ground of the point about "
                                        "which the body starts to roll. Lowering drops "
                                        "it more than the body."),
                                    1, 1, N_ ("Roll centre") },
  [QUANTITY_HALF_TRACK_CHANGE] = { "half_track_change_mm", N_ ("Half-track change"), "mm",
                                   N_ ("wider"), N_ ("narrower"),
                                   N_ ("Sideways movement of the contact centre from "
                                       "where it was measured."),
                                   1, 1, N_ ("Half-track") },
  [QUANTITY_WHEELBASE_CHANGE] = { "wheelbase_change_mm", N_ ("Wheelbase change"), "mm",
                                  N_ ("wheel forward"), N_ ("wheel rearward"),
                                  N_ ("Fore-and-aft movement of the wheel centre from "
                                      "where it was measured."),
                                  1, 1, N_ ("Wheelbase") },
  [QUANTITY_STRUT_LENGTH] = { "strut_length_mm", N_ ("Strut length"), "mm", "", "",
                              N_ ("From the strut foot to the upper mount, along the "
                                  "strut's axis."),
                              1, 1, NC_ ("short name", "Strut length") },
  [QUANTITY_STRUT_RATIO] = { "strut_ratio", N_ ("Strut ratio"), "", "", "",
                             N_ ("Strut travel per wheel travel: what a coil on the "
                                 "strut feels."),
                             3, 1, NC_ ("short name", "Strut ratio") },
  [QUANTITY_ARM_RATIO] = { "arm_ratio_rad_per_mm", N_ ("Arm ratio"), "rad/mm", "", "",
                           N_ ("Turn of the lower arm per wheel travel: what a torsion "
                               "bar at the hinge feels."),
                           5, 1, NC_ ("short name", "Arm ratio") },
  [QUANTITY_CAMBER_GAIN] = { "camber_gain_deg_per_mm", N_ ("Camber gain"), "°/mm",
                             N_ ("more positive in bump"), N_ ("more negative in bump"),
                             N_ ("Change of camber per wheel travel. It ends where the "
                                 "arm is square to the strut, not where the arm is "
                                 "level: that comes earlier."),
                             4, 0, NC_ ("short name", "Camber gain") },
  [QUANTITY_BUMP_STEER] = { "bump_steer_deg_per_mm", N_ ("Bump steer"), "°/mm",
                            N_ ("bump toes in"), N_ ("bump toes out"),
                            N_ ("Change of toe per wheel travel. The tie rod's height "
                                "sets its slope, the tie rod's length its bow."),
                            4, 0 },
  [QUANTITY_SIDE_VIEW_SLOPE] = { "side_view_slope", N_ ("Side-view slope"), "",
                                 N_ ("resists dive"), N_ ("adds to dive"),
                                 N_ ("Forward movement of the contact per wheel travel "
                                     "with the brake locked to the knuckle."),
                                 4, 1, N_ ("Side slope") },
  [QUANTITY_ANTI_DIVE] = { "anti_dive_percent", N_ ("Anti-dive"), "%",
                           N_ ("resists dive"), N_ ("adds to dive"),
                           N_ ("Share of the brake dive that the geometry takes up: "
                               "side-view slope, front brake share, wheelbase and "
                               "centre-of-gravity height."),
                           1, 1 },
  [QUANTITY_SWING_ARM_LENGTH] = { "swing_arm_length_mm", N_ ("Swing-arm length"), "mm",
                                  N_ ("centre inboard"), N_ ("centre outboard"),
                                  N_ ("From the contact centre to the front-view "
                                      "instant centre; infinite where camber does not "
                                      "change."),
                                  0, 1, N_ ("Swing arm") },
  [QUANTITY_SWING_ARM_CURVATURE] = { "swing_arm_curvature_per_m",
                                     N_ ("1 / swing-arm length"), "1/m",
                                     N_ ("centre inboard"), N_ ("centre outboard"),
                                     N_ ("One over the front-view swing-arm length: "
                                         "passes through zero where the length is "
                                         "infinite."),
                                     3, 1000, N_ ("1 / swing arm") },
  [QUANTITY_CAMBER_ISO] = { "camber_iso_deg", N_ ("Camber about X (ISO 8855)"), "°",
                            N_ ("top leans out"), N_ ("top leans in"),
                            N_ ("Camber taken about the vehicle's X axis. It parts "
                                "from the gauge's camber once the wheel is steered."),
                            2, 0, N_ ("Camber (ISO)") },
  [QUANTITY_TRAIL_IN_TYRE] = { "trail_in_tyre_mm", N_ ("Trail along the tyre"), "mm",
                               N_ ("axis meets ground ahead"),
                               N_ ("axis meets ground behind"),
                               N_ ("Caster trail taken along the tyre's own plane at "
                                   "the ground."),
                               1, 1, N_ ("Tyre trail") },
  [QUANTITY_SCRUB_IN_TYRE] = { "scrub_in_tyre_mm", N_ ("Scrub across the tyre"), "mm",
                               N_ ("axis meets ground inboard"),
                               N_ ("axis meets ground outboard"),
                               N_ ("Scrub radius taken across the tyre's own plane at "
                                   "the ground."),
                               1, 1, N_ ("Tyre scrub") },
  [QUANTITY_TRAIL_AT_CENTRE] = { "trail_at_wheel_centre_mm", N_ ("Trail at wheel centre"),
                                 "mm", N_ ("axis ahead of centre"),
                                 N_ ("axis behind centre"),
                                 N_ ("Distance forward from the wheel centre to the "
                                     "steering axis at the same height."),
                                 1, 1, N_ ("Centre trail") },
  [QUANTITY_SCRUB_AT_CENTRE] = { "scrub_at_wheel_centre_mm",
                                 N_ ("Axis offset at wheel centre"), "mm",
                                 N_ ("axis inboard of centre"),
                                 N_ ("axis outboard of centre"),
                                 N_ ("Sideways distance from the steering axis to the "
                                     "wheel centre at the same height: the lever of a "
                                     "drive or bump force."),
                                 1, 1, N_ ("Centre offset") },
  [QUANTITY_ARM_ANGLE] = { "arm_angle_deg", N_ ("Arm angle"), "°", N_ ("turned up"),
                           N_ ("turned down"),
                           N_ ("Turn of the lower arm from where it was measured."), 2,
                           0 },
};

static const QuantityInfo toe_in_total = {
  "toe_in_deg",
  N_ ("Total toe-in"),
  "°",
  N_ ("front points in"),
  N_ ("front points out"),
  N_ ("Both front wheels to one another, seen from above, each like the one that is "
      "solved: twice its angle, or what the rims stand closer in front than behind."),
  2,
  0,
  N_ ("Toe-in"),
};

/* One that is short enough in English may need another in a language of long words. */
static const char *
translated_short_name (const char *name)
{
  const char *translated = g_dpgettext2 (GETTEXT_PACKAGE, "short name", name);

  return translated != name ? translated : _ (name);
}

QuantityInfo
quantity_info (Quantity quantity)
{
  g_assert (quantity >= 0 && quantity < N_QUANTITIES);

  QuantityInfo info = quantity == QUANTITY_TOE_IN && unit_choice ()->toe != TOE_PER_WHEEL
                          ? toe_in_total
                          : rows[quantity];

  info.name = _ (info.name);
  info.short_name =
      info.short_name != NULL ? translated_short_name (info.short_name) : info.name;
  info.meaning = _ (info.meaning);
  /* gettext gives its header for "" */
  if (info.positive[0] != '\0')
    info.positive = _ (info.positive);
  if (info.negative[0] != '\0')
    info.negative = _ (info.negative);
  if (info.scale == 0.0)
    info.scale = 180.0 / G_PI;
  return info;
}

static double
edge_scale (Quantity quantity)
{
  return rows[quantity].scale != 0.0 ? rows[quantity].scale : 180.0 / G_PI;
}

double
quantity_edge_value (Quantity quantity, double kernel_value)
{
  return kernel_value * edge_scale (quantity);
}

/* Whether @key is @full, or @full without its unit: `camber` for `camber_deg`. */
static gboolean
is_key (const char *full, const char *key)
{
  static const char *const units[] = { "_deg",        "_mm",      "_rad_per_mm",
                                       "_deg_per_mm", "_percent", "_per_m" };

  if (g_str_equal (full, key))
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_suffix (full, units[i]) &&
        strlen (key) == strlen (full) - strlen (units[i]) && g_str_has_prefix (full, key))
      return TRUE;
  return FALSE;
}

gboolean
quantity_from_key (const char *key, Quantity *quantity)
{
  for (Quantity i = 0; i < N_QUANTITIES; i++)
    if (is_key (rows[i].key, key)) {
      *quantity = i;
      return TRUE;
    }
  return FALSE;
}

UnitKind
quantity_unit_kind (Quantity quantity)
{
  if (quantity == QUANTITY_TOE_IN)
    return UNIT_TOE;
  if (quantity == QUANTITY_ARM_RATIO)
    return UNIT_TURN_PER_LENGTH;

  switch (quantity_dimension (quantity)) {
  case DIMENSION_ANGLE:
    return UNIT_ANGLE;
  case DIMENSION_LENGTH:
    return UNIT_LENGTH;
  case DIMENSION_ANGLE_PER_LENGTH:
    return UNIT_ANGLE_PER_LENGTH;
  case DIMENSION_PER_LENGTH:
    return UNIT_PER_LENGTH;
  default:
    return UNIT_NONE;
  }
}

const char *
quantity_symbol (Quantity quantity)
{
  const UnitKind kind = quantity_unit_kind (quantity);

  return kind == UNIT_NONE ? rows[quantity].unit : unit_symbol (kind);
}

const char *
quantity_caption (Quantity quantity)
{
  const UnitKind kind = quantity_unit_kind (quantity);

  return kind == UNIT_NONE ? rows[quantity].unit : unit_caption (kind);
}

static double
shown (Quantity quantity, double kernel_value)
{
  return unit_shown (quantity_unit_kind (quantity),
                     quantity_edge_value (quantity, kernel_value));
}

static void
format_shown (Quantity quantity, double value, gboolean with_sign, char *text, gsize size)
{
  const UnitKind kind = quantity_unit_kind (quantity);

  unit_format_shown (kind, value, unit_decimals (kind, rows[quantity].decimals),
                     with_sign, text, size);
}

void
quantity_format (
    Quantity quantity, double kernel_value, gboolean with_sign, char *text, gsize size)
{
  format_shown (quantity, shown (quantity, kernel_value), with_sign, text, size);
}

void
quantity_format_change (Quantity quantity, double is, double was, char *text, gsize size)
{
  format_shown (quantity, shown (quantity, is) - shown (quantity, was), TRUE, text, size);
}

void
quantity_format_whole (
    Quantity quantity, double kernel_value, gboolean with_sign, char *text, gsize size)
{
  const char *symbol = quantity_symbol (quantity);

  quantity_format (quantity, kernel_value, with_sign, text, size);
  if (symbol[0] == '\0')
    return;
  g_strlcat (text, g_str_equal (symbol, "°") ? "" : " ", size);
  g_strlcat (text, symbol, size);
}

char *
quantity_spoken_text (Quantity quantity, double kernel_value)
{
  const char *symbol = quantity_symbol (quantity);
  char figure[64];

  quantity_format (quantity, kernel_value, FALSE, figure, sizeof figure);
  return g_strconcat (figure, symbol[0] != '\0' ? " " : "", symbol, NULL);
}

const char *
quantity_sign_words (Quantity quantity, double kernel_value)
{
  const UnitKind kind = quantity_unit_kind (quantity);
  const double value = unit_rounded (kind, shown (quantity, kernel_value),
                                     unit_decimals (kind, rows[quantity].decimals));
  const char *words = value > 0.0   ? rows[quantity].positive
                      : value < 0.0 ? rows[quantity].negative
                                    : "";

  return words[0] != '\0' ? _ (words) : "";
}
