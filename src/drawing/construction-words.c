/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/construction-words.h"

#include "drawing/axis.h"

#include <glib/gi18n-lib.h>

#define DEG(rad) ((rad) *180.0 / G_PI)

/* What rounds to nothing, mm and degrees at the one decimal that is shown. */
#define NOTHING 0.05

/* From here on a distance is told in metres, mm. */
#define LONG_WAY 10000.0

typedef char Figure[24];

static void
figure (double value, Figure text)
{
  axis_format (value, 1, text, sizeof (Figure));
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
  figure (drawn, a);
  figure (exact, b);
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

  figure (fabs (travel), height);
  if (fabs (travel) < NOTHING)
    return g_strdup (_ ("The front-left corner from the front, at the height at which it "
                        "was measured."));
  return g_strdup_printf (
      travel > 0.0 ? _ ("The body has come down %s mm; the wheel stays on the ground.")
                   : _ ("The body has gone up %s mm; the wheel stays on the ground."),
      height);
}

static char *
arm_sentence (double fall)
{
  Figure degrees;

  figure (fabs (DEG (fall)), degrees);
  if (fabs (DEG (fall)) < NOTHING)
    return g_strdup (
        _ ("A line through the ball joint and the arm's inner pivots. It is level."));
  return g_strdup_printf (
      fall > 0.0 ? _ ("A line through the ball joint and the arm's inner pivots. Towards "
                      "the middle of the car it falls by %s°.")
                 : _ ("A line through the ball joint and the arm's inner pivots. Towards "
                      "the middle of the car it rises by %s°."),
      degrees);
}

static char *
normal_sentence (double fall)
{
  Figure degrees;

  figure (fabs (DEG (fall)), degrees);
  return g_strdup_printf (
      fall >= 0.0 ? _ ("A line through the upper mount, square to the strut. Towards the "
                       "middle of the car it falls by %s°.")
                  : _ ("A line through the upper mount, square to the strut. Towards the "
                       "middle of the car it rises by %s°."),
      degrees);
}

char *
story_pole_text (const StoryNumbers *n)
{
  const double way = fabs (n->pole_inboard);
  Figure text;

  if (n->is_parallel)
    return g_strdup (_ ("at infinity"));
  axis_format (way < LONG_WAY ? way : way / 1000.0, 0, text, sizeof text);
  if (way < LONG_WAY)
    return g_strdup_printf (n->pole_inboard > 0.0 ? _ ("%s mm inboard")
                                                  : _ ("%s mm outboard"),
                            text);
  return g_strdup_printf (n->pole_inboard > 0.0 ? _ ("%s m inboard")
                                                : _ ("%s m outboard"),
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
  axis_format (fabs (height) < LONG_WAY ? fabs (height) : fabs (height) / 1000.0, 0, text,
               sizeof text);
  if (fabs (height) < LONG_WAY)
    return g_strdup_printf (
        height >= 0.0
            ? _ ("They meet %s of the contact, %s mm above the ground. About that point "
                 "the wheel turns at this moment.")
            : _ ("They meet %s of the contact, %s mm under the ground. About that point "
                 "the wheel turns at this moment."),
        way, text);
  return g_strdup_printf (
      height >= 0.0
          ? _ ("They meet %s of the contact, %s m above the ground. About that point the "
               "wheel turns at this moment.")
          : _ ("They meet %s of the contact, %s m under the ground. About that point the "
               "wheel turns at this moment."),
      way, text);
}

static char *
contact_sentence (const StoryNumbers *n)
{
  const double degrees = DEG (n->contact_rise);
  Figure text;

  figure (fabs (degrees), text);
  if (fabs (degrees) < NOTHING)
    return g_strdup (
        _ ("From the tyre's contact a line runs to the instant centre. It is "
           "level."));
  return g_strdup_printf (
      degrees > 0.0
          ? _ ("From the tyre's contact a line runs to the instant centre. Towards the "
               "middle of the car it rises by %s°.")
          : _ ("From the tyre's contact a line runs to the instant centre. Towards the "
               "middle of the car it falls by %s°."),
      text);
}

static char *
roll_centre_sentence (const StoryNumbers *n)
{
  const double drawn = n->drawn.roll_centre_height;
  const int decimals = construction_decimals (drawn, n->exact_height);
  Figure exact, size;

  axis_format (fabs (drawn), MAX (decimals, 1), size, sizeof size);
  axis_format (n->exact_height, MAX (decimals, 1), exact, sizeof exact);
  if (decimals == 0)
    return g_strdup_printf (
        drawn >= 0.0
            ? _ ("Where it crosses the middle of the car is the roll centre: %s mm above "
                 "the ground. Solved exactly, with the tie rod, it is the same.")
            : _ ("Where it crosses the middle of the car is the roll centre: %s mm under "
                 "the ground. Solved exactly, with the tie rod, it is the same."),
        size);
  return g_strdup_printf (
      drawn >= 0.0
          ? _ ("Where it crosses the middle of the car is the roll centre: %s mm above the "
               "ground. The construction leaves out the tie rod; exact is %s mm.")
          : _ ("Where it crosses the middle of the car is the roll centre: %s mm under the "
               "ground. The construction leaves out the tie rod; exact is %s mm."),
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
