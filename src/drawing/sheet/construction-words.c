/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/construction-words.h"

#include "drawing/pen/axis.h"

#include <glib/gi18n-lib.h>

#define DEG(rad) ((rad) *180.0 / G_PI)

/* What rounds to nothing, mm and degrees at the one decimal that is shown. */
#define NOTHING 0.05

/* From here on a distance is told in metres, mm. */
#define LONG_WAY 10000.0

typedef char Figure[24];

static void
angle_figure (double degrees, Figure text)
{
  unit_format_whole (UNIT_ANGLE, degrees, 1, FALSE, text, sizeof (Figure));
}

/* From a long way on in metres or feet. */
static void
way_figure (double mm, Figure text)
{
  const gboolean has_inches = unit_choice ()->length == LENGTH_INCH;

  if (mm < LONG_WAY)
    unit_format_whole (UNIT_LENGTH, mm, 0, FALSE, text, sizeof (Figure));
  else
    g_snprintf (text, sizeof (Figure), "%.0f %s",
                has_inches ? unit_shown (UNIT_LENGTH, mm) / 12.0 : mm / 1000.0,
                has_inches ? "ft" : "m");
}

StoryNumbers
story_numbers (const StudyCorner *corner)
{
  const Station *now = &corner->now;
  StoryNumbers n = { .status = now->status, .travel = now->travel };

  if (n.status != POSE_OK)
    return n;
  n.drawn = construction_draw (&corner->corner, &now->pose, now->measures.contact);
  n.arm_fall = atan2 (-n.drawn.arm_direction.z, -n.drawn.arm_direction.y);
  n.normal_fall = atan2 (-n.drawn.mount_direction.z, -n.drawn.mount_direction.y);
  n.contact_rise = atan (-n.drawn.pole_direction.z / n.drawn.pole_direction.y);
  n.pole_inboard = n.drawn.contact.y - n.drawn.pole.y;
  n.is_parallel = !(fabs (n.pole_inboard) < STORY_INFINITY);
  n.exact_height = now->measures.value[QUANTITY_ROLL_CENTRE_HEIGHT];
  return n;
}

int
construction_decimals (double drawn, double exact)
{
  Figure a, b;

  if (fabs (drawn - exact) < NOTHING)
    return 0;
  axis_format (drawn, 1, a, sizeof a);
  axis_format (exact, 1, b, sizeof b);
  return g_str_equal (a, b) ? 2 : 1;
}

const char *
story_title (StoryStep step)
{
  switch (step) {
  case STORY_CORNER:
    return _ ("The corner");
  case STORY_ARM_LINE:
    return _ ("The arm's line");
  case STORY_STRUT_NORMAL:
    return _ ("Square to the strut");
  case STORY_INSTANT_CENTRE:
    return _ ("The instant centre");
  case STORY_CONTACT_LINE:
    return _ ("From the contact");
  case STORY_ROLL_CENTRE:
    return _ ("The roll centre");
  case N_STORY_STEPS:
    break;
  }
  g_return_val_if_reached ("");
}

static char *
corner_sentence (double travel)
{
  Figure height;

  unit_format_whole (UNIT_LENGTH, fabs (travel), 1, FALSE, height, sizeof height);
  if (fabs (travel) < NOTHING)
    return g_strdup (_ ("The front-left corner from the front, at the height at which it "
                        "was measured."));
  return g_strdup_printf (
      travel > 0.0 ? _ ("The body has come down %s; the wheel stays on the ground.")
                   : _ ("The body has gone up %s; the wheel stays on the ground."),
      height);
}

static char *
arm_sentence (double fall)
{
  Figure degrees;

  angle_figure (fabs (DEG (fall)), degrees);
  if (fabs (DEG (fall)) < NOTHING)
    return g_strdup (
        _ ("A line through the ball joint and the arm's inner pivots. It is level."));
  return g_strdup_printf (
      fall > 0.0 ? _ ("A line through the ball joint and the arm's inner pivots. Towards "
                      "the middle of the car it falls by %s.")
                 : _ ("A line through the ball joint and the arm's inner pivots. Towards "
                      "the middle of the car it rises by %s."),
      degrees);
}

static char *
normal_sentence (double fall)
{
  Figure degrees;

  angle_figure (fabs (DEG (fall)), degrees);
  return g_strdup_printf (
      fall >= 0.0 ? _ ("A line through the upper mount, square to the strut. Towards the "
                       "middle of the car it falls by %s.")
                  : _ ("A line through the upper mount, square to the strut. Towards the "
                       "middle of the car it rises by %s."),
      degrees);
}

char *
story_pole_text (const StoryNumbers *n)
{
  const double way = fabs (n->pole_inboard);
  Figure text;

  if (n->is_parallel)
    return g_strdup (_ ("at infinity"));
  way_figure (way, text);
  return g_strdup_printf (n->pole_inboard > 0.0 ? _ ("%s inboard") : _ ("%s outboard"),
                          text);
}

static char *
pole_sentence (const StoryNumbers *n)
{
  const double height = n->drawn.pole.z - n->drawn.contact.z;
  g_autofree char *way = story_pole_text (n);
  Figure text;

  if (n->is_parallel)
    return g_strdup (
        _ ("The two lines are parallel: they meet at infinity. At this height "
           "the wheel moves without changing its camber."));
  way_figure (fabs (height), text);
  return g_strdup_printf (
      height >= 0.0
          ? _ ("They meet %s of the contact, %s above the ground. About that point the "
               "wheel turns at this moment.")
          : _ ("They meet %s of the contact, %s under the ground. About that point the "
               "wheel turns at this moment."),
      way, text);
}

static char *
contact_sentence (const StoryNumbers *n)
{
  const double degrees = DEG (n->contact_rise);
  Figure text;

  angle_figure (fabs (degrees), text);
  if (fabs (degrees) < NOTHING)
    return g_strdup (
        _ ("From the tyre's contact a line runs to the instant centre. It is "
           "level."));
  return g_strdup_printf (
      degrees > 0.0
          ? _ ("From the tyre's contact a line runs to the instant centre. Towards the "
               "middle of the car it rises by %s.")
          : _ ("From the tyre's contact a line runs to the instant centre. Towards the "
               "middle of the car it falls by %s."),
      text);
}

static char *
roll_centre_sentence (const StoryNumbers *n)
{
  const double drawn = n->drawn.roll_centre_height;
  const int decimals = construction_decimals (drawn, n->exact_height);
  Figure exact, size;

  unit_format_whole (UNIT_LENGTH, fabs (drawn), MAX (decimals, 1), FALSE, size,
                     sizeof size);
  unit_format_whole (UNIT_LENGTH, n->exact_height, MAX (decimals, 1), FALSE, exact,
                     sizeof exact);
  if (decimals == 0)
    return g_strdup_printf (
        drawn >= 0.0
            ? _ ("Where it crosses the middle of the car is the roll centre: %s above "
                 "the ground. Solved exactly, with the tie rod, it is the same.")
            : _ ("Where it crosses the middle of the car is the roll centre: %s under "
                 "the ground. Solved exactly, with the tie rod, it is the same."),
        size);
  return g_strdup_printf (
      drawn >= 0.0
          ? _ ("Where it crosses the middle of the car is the roll centre: %s above the "
               "ground. The construction leaves out the tie rod; exact is %s.")
          : _ ("Where it crosses the middle of the car is the roll centre: %s under the "
               "ground. The construction leaves out the tie rod; exact is %s."),
      size, exact);
}

char *
story_sentence (const StoryNumbers *n, StoryStep step)
{
  if (n->status != POSE_OK)
    return g_strdup (pose_status_sentence (n->status));

  switch (step) {
  case STORY_CORNER:
    return corner_sentence (n->travel);
  case STORY_ARM_LINE:
    return arm_sentence (n->arm_fall);
  case STORY_STRUT_NORMAL:
    return normal_sentence (n->normal_fall);
  case STORY_INSTANT_CENTRE:
    return pole_sentence (n);
  case STORY_CONTACT_LINE:
    return contact_sentence (n);
  case STORY_ROLL_CENTRE:
    return roll_centre_sentence (n);
  case N_STORY_STEPS:
    break;
  }
  g_return_val_if_reached (g_strdup (""));
}
