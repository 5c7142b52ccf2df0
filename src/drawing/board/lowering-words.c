/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/board/lowering-words.h"

#include "drawing/pen/axis.h"
#include "drawing/sheet/construction-words.h"

#include <glib/gi18n-lib.h>

/* Less than this reads as nothing at a tenth of a millimetre. */
#define NOTHING 0.05

typedef char Figure[24];

double
roll_lever_arm (double cg_height, const Station *station)
{
  if (station->status != POSE_OK)
    return (double) NAN;
  return cg_height - station->travel -
         station->measures.value[QUANTITY_ROLL_CENTRE_HEIGHT];
}

LoweringEffect
lowering_effect (const StudyCorner *corner, double cg_height)
{
  const Station *stands = &corner->at_height;
  Station start;
  LoweringEffect e = { .lowering = corner->lowering };

  station_solve (&corner->corner, 0.0, 0.0, &start);
  e.status = stands->status != POSE_OK ? stands->status : start.status;
  if (e.status != POSE_OK)
    return e;
  e.from = start.measures.value[QUANTITY_ROLL_CENTRE_HEIGHT];
  e.to = stands->measures.value[QUANTITY_ROLL_CENTRE_HEIGHT];
  e.drop = e.from - e.to;
  e.drop_per_mm = fabs (e.lowering) < NOTHING
                      ? -stands->measures.slope[QUANTITY_ROLL_CENTRE_HEIGHT]
                      : e.drop / e.lowering;
  e.lever = roll_lever_arm (cg_height, stands);
  e.lever_growth = e.lever - roll_lever_arm (cg_height, &start);
  return e;
}

/* Whole numbers stay whole. */
static void
format_given (double mm, Figure text)
{
  unit_format_whole (UNIT_LENGTH, mm, fabs (mm - round (mm)) < NOTHING ? 0 : 1, FALSE,
                     text, sizeof (Figure));
}

/* Less than a whole inch, which is no small step any more. */
#define SMALL_STEP_IN_INCHES 0.1

static char *
sentence_at_rest (const LoweringEffect *e)
{
  const double step = unit_choice ()->length == LENGTH_INCH
                          ? unit_stored (UNIT_LENGTH, SMALL_STEP_IN_INCHES)
                          : 1.0;
  const double lever_per_mm = e->drop_per_mm - 1.0;
  g_autofree char *first = unit_text (UNIT_LENGTH, step, 0);
  Figure drop, lever;

  unit_format_whole (UNIT_LENGTH, step * fabs (e->drop_per_mm), 1, FALSE, drop,
                     sizeof drop);
  unit_format_whole (UNIT_LENGTH, step * fabs (lever_per_mm), 1, FALSE, lever,
                     sizeof lever);
  /* Translators: “The first 1 mm would drop the roll centre by 2.7 mm and …”. */
  const char *format =
      e->drop_per_mm < 0.0
          ? _ ("Not lowered. The first %s would lift the roll centre by %s "
               "and shorten the lever arm by %s.")
      : lever_per_mm < 0.0
          ? _ ("Not lowered. The first %s would drop the roll centre by %s "
               "and shorten the lever arm by %s.")
          : _ ("Not lowered. The first %s would drop the roll centre by %s "
               "and lengthen the lever arm by %s.");

  return g_strdup_printf (format, first, drop, lever);
}

/* In the order: height, roll centre, per unit of length, that unit twice, lever arm. */
static const char *
sentence_for (const LoweringEffect *e)
{
  if (e->lowering > 0.0) {
    if (e->drop < 0.0)
      return _ ("Lowering %s lifts the roll centre %s: %s %s for each %s. The lever "
                "arm shrinks by %s.");
    return e->lever_growth < 0.0
               ? _ ("Lowering %s drops the roll centre %s: %s %s for each %s. The "
                    "lever arm shrinks by %s.")
               : _ ("Lowering %s drops the roll centre %s: %s %s for each %s. The "
                    "lever arm grows by %s.");
  }
  if (e->drop > 0.0)
    return _ ("Raising %s drops the roll centre %s: %s %s for each %s. The lever arm "
              "grows by %s.");
  return e->lever_growth < 0.0
             ? _ ("Raising %s lifts the roll centre %s: %s %s for each %s. The lever "
                  "arm shrinks by %s.")
             : _ ("Raising %s lifts the roll centre %s: %s %s for each %s. The lever "
                  "arm grows by %s.");
}

char *
lowering_sentence (const LoweringEffect *e)
{
  const char *unit = unit_symbol (UNIT_LENGTH);
  Figure figures[4];

  if (e->status != POSE_OK) {
    format_given (fabs (e->lowering), figures[0]);
    return g_strdup_printf (e->lowering < 0.0
                                ? _ ("Raised by %s there is no roll centre to read. %s")
                                : _ ("Lowered by %s there is no roll centre to read. %s"),
                            figures[0], pose_status_sentence (e->status));
  }
  if (fabs (e->lowering) < NOTHING)
    return sentence_at_rest (e);

  format_given (fabs (e->lowering), figures[0]);
  unit_format_whole (UNIT_LENGTH, fabs (e->drop), 0, FALSE, figures[1], sizeof (Figure));
  axis_format (fabs (e->drop_per_mm), 1, figures[2], sizeof (Figure));
  unit_format_whole (UNIT_LENGTH, fabs (e->lever_growth), 0, FALSE, figures[3],
                     sizeof (Figure));
  return g_strdup_printf (sentence_for (e), figures[0], figures[1], figures[2], unit,
                          unit, figures[3]);
}

char *
lowering_difference_sentence (const StudyCorner *corner)
{
  const Station *stands = &corner->at_height;
  Figure exact, flat;

  if (stands->status != POSE_OK)
    return g_strdup ("");

  const Construction drawn =
      construction_draw (&corner->corner, &stands->pose, stands->measures.contact);
  const double solved = stands->measures.value[QUANTITY_ROLL_CENTRE_HEIGHT];
  const int decimals = construction_decimals (drawn.roll_centre_height, solved);
  unit_format_whole (UNIT_LENGTH, solved, MAX (decimals, 1), FALSE, exact, sizeof exact);
  unit_format_whole (UNIT_LENGTH, drawn.roll_centre_height, MAX (decimals, 1), FALSE,
                     flat, sizeof flat);
  if (decimals == 0)
    return g_strdup_printf (_ ("Exact value and flat construction agree here: %s. They "
                               "part where the tie rod turns the wheel, which the "
                               "construction leaves out."),
                            exact);
  return g_strdup_printf (_ ("Exact %s, flat construction %s: the construction leaves "
                             "out the tie rod."),
                          exact, flat);
}
