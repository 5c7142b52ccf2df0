/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The units that people see and type. Stored values (documents, files, the command line)
 * are in mm, degrees, kg, N and N/mm, toe as the angle of one wheel; what is shown is in
 * the units of a UnitChoice.
 *
 * Exact factors: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard and pound
 * agreement, 1959), 1 lbf = 1 lb · 9.80665 m/s² (standard acceleration of free fall,
 * ISO 80000-3), 1 ft = 12 in.
 *
 * What is made of several follows one choice: stress (ksi), modulus (Mpsi), torque
 * (lbf·ft) and rate of twist (lbf·ft/°) that of forces, speed (in/s) that of lengths.
 * Some stay metric whatever is chosen, and say so: the pitch of a metric thread ("mm
 * pitch"), which is its name; what is engraved on a plate's scale; and measured points
 * and plates in their forms, in the measuring guide and in the report, whose digits are
 * the file's own and are read off metric tapes. Forms take inches typed with their unit.
 */

#pragma once

#include <glib.h>

typedef enum {
  UNIT_NONE,             /* ratios, percent: the same for everybody */
  UNIT_LENGTH,           /* mm */
  UNIT_ANGLE,            /* ° */
  UNIT_TOE,              /* ° of one wheel */
  UNIT_MASS,             /* kg */
  UNIT_FORCE,            /* N */
  UNIT_RATE,             /* N/mm */
  UNIT_ANGLE_PER_LENGTH, /* °/mm */
  UNIT_TURN_PER_LENGTH,  /* rad/mm */
  UNIT_PER_LENGTH,       /* 1/m */
  UNIT_STRESS,           /* N/mm² */
  UNIT_MODULUS,          /* GPa */
  UNIT_TORQUE,           /* N·mm, shown in N·m */
  UNIT_TWIST_RATE,       /* N·m/° */
  UNIT_SPEED,            /* m/s, of dampers */
  UNIT_PITCH,            /* mm whatever is chosen, of a metric thread */
  N_UNIT_KINDS
} UnitKind;

typedef enum {
  LENGTH_MM,
  LENGTH_INCH
} LengthUnit;

typedef enum {
  ANGLE_DECIMAL,
  ANGLE_MINUTES /* degrees and minutes */
} AngleUnit;

typedef enum {
  TOE_PER_WHEEL,
  TOE_TOTAL,      /* both wheels alike: twice the angle of one */
  TOE_AT_DIAMETER /* in total too: a length, between the rims behind less in front */
} ToeUnit;

typedef enum {
  MASS_KG,
  MASS_LB
} MassUnit;

typedef enum {
  FORCE_N,
  FORCE_LBF
} ForceUnit;

typedef enum {
  RATE_N_PER_MM,
  RATE_LBF_PER_INCH
} RateUnit;

typedef struct {
  LengthUnit length;
  AngleUnit angle;
  ToeUnit toe;
  MassUnit mass;
  ForceUnit force;
  RateUnit rate;
  double toe_diameter_mm; /* where TOE_AT_DIAMETER is taken */
} UnitChoice;

/* As stored: mm, decimal degrees per wheel, kg, N, N/mm. */
extern const UnitChoice unit_choice_stored;

/* What this process shows, like its locale: as stored until somebody says otherwise. The
 * command line never does. */
const UnitChoice *unit_choice (void);
void unit_choice_set (const UnitChoice *choice);

/* The number that is shown for a stored one, and back; NAN where a toe has no length. */
double unit_shown (UnitKind kind, double stored);
double unit_stored (UnitKind kind, double shown);

/* The kind that is stored in @symbol, "mm" or "N·m/°"; UNIT_NONE for others. Angles are
 * no toe. */
UnitKind unit_kind_of (const char *symbol);

/* "mm", "in", "°", "lbf/in"; "" where the figures carry their marks: 1°30′. */
const char *unit_symbol (UnitKind kind);
/* The same for those who look for one: "° ′" for degrees and minutes. */
const char *unit_caption (UnitKind kind);
/* Whether the symbol stands close to the figure: "1.5°", not "1.5 mm". */
gboolean unit_is_close (UnitKind kind);

/* As fine as @decimals are in the stored unit, and no finer than a bench can answer for:
 * thousandths of an inch, whole minutes for hundredths of a degree. Of minutes where
 * there are minutes. */
int unit_decimals (UnitKind kind, int decimals);
gboolean unit_has_minutes (UnitKind kind);
/* Whether figures are written as degrees and minutes; a gain is in decimal minutes. */
gboolean unit_is_sexagesimal (UnitKind kind);

gboolean unit_choice_equal (const UnitChoice *a, const UnitChoice *b);

/* A shown number as its text says it. */
double unit_rounded (UnitKind kind, double shown, int decimals);

/* A shown number as text, in the locale's mark, without its symbol but with the marks of
 * degrees and minutes: "−1.93", "−1°56′". What rounds to zero has no sign; with
 * @with_sign a positive one has "+"; "–" is not finite. @decimals are those shown. */
void unit_format_shown (UnitKind kind,
                        double shown,
                        int decimals,
                        gboolean with_sign,
                        char *text,
                        gsize size);

/* A stored number; @decimals are those of the stored unit. */
void unit_format (UnitKind kind,
                  double stored,
                  int decimals,
                  gboolean with_sign,
                  char *text,
                  gsize size);
/* The same with its symbol: "12.3 mm", "0.484 in", "1°30′". */
void unit_format_whole (UnitKind kind,
                        double stored,
                        int decimals,
                        gboolean with_sign,
                        char *text,
                        gsize size);
/* The same, unsigned where positive. Free with g_free (). */
char *unit_text (UnitKind kind, double stored, int decimals);

/* Given numbers, in as few digits as they have; @decimals, of the stored unit, where they
 * are shown in another one. Free with g_free (). */
char *unit_plain_number (UnitKind kind, double stored, int decimals);
/* The same with its symbol. */
char *unit_plain_text (UnitKind kind, double stored, int decimals);

/* The round steps of a scale in rising order, as shown: 1, 2, 5, 10 … at rank 0, 1, 2, 3
 * … For degrees and minutes 30′, 20′, 10′, 5′, 2′, 1′ lie below 1°, then tenths of a
 * minute. */
double unit_step_of_rank (UnitKind kind, int rank);
#define UNIT_RANK_OF_A_MINUTE (-6)

/* A step of an entry, as round in the shown unit as @step is in the stored one; itself a
 * stored number. */
double unit_round_step (UnitKind kind, double step);
