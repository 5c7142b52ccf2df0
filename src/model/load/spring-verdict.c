/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/spring-verdict.h"
#include "model/load/load-case-private.h"
#include "model/spring/spring-study-private.h"
#include "model/words/number-text.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Thresholds; sources are in the rules' own words. */
#define HELPER_SHARE (1.0 / 3.0) /* of the corner's weight */
#define MAIN_SHARE (2.0 / 3.0)
#define TOWER_RISE 10.0     /* % of the corner's weight */
#define LEAST_FREQUENCY 1.0 /* Hz */
#define COMFORT_FREQUENCY 1.5
#define SPORT_FREQUENCY 2.0
#define LEAST_DAMPING 0.2
#define COMFORT_DAMPING 0.4
#define MOST_DAMPING 0.7
#define BUMP_ROOM 20.0   /* mm of wheel travel */
#define BAR_STRESS 900.0 /* N/mm² */
#define HEIGHT_APART 5.0 /* mm: a mount that is moved alone makes 1 to 4 */

static void
verdict_free (gpointer data)
{
  SpringVerdict *verdict = data;

  g_free (verdict->sentence);
  g_free (verdict->rule);
  g_free (verdict->marked);
  g_free (verdict);
}

/* Takes both texts. */
static void
add (GPtrArray *verdicts, const char *id, gboolean is_warning, char *sentence, char *rule)
{
  SpringVerdict *verdict = g_new (SpringVerdict, 1);

  *verdict = (SpringVerdict){ id, is_warning, sentence, rule,
                              g_strconcat (is_warning ? "⚠ " : "", sentence, NULL) };
  g_ptr_array_add (verdicts, verdict);
}

static const SpringEvent *
find_event (const SpringCorner *corner, SpringEventKind kind)
{
  for (gsize i = 0; i < corner->n_events; i++)
    if (corner->events[i].kind == kind)
      return &corner->events[i];
  return NULL;
}

static char *
solid_before_weight (const SpringCorner *corner)
{
  const SpringEvent *solid = spring_corner_solid (corner);

  if (solid == NULL)
    return g_strdup (_ (
        "A spring is solid at every wheel travel: there is no room for it on its seats."));
  g_autofree char *travel = unit_text (UNIT_LENGTH, solid->travel, 1);

  return g_strdup_printf (
      solid->kind == SPRING_EVENT_COIL_BOUND
          ? _ ("The coil is solid at %s of wheel travel, before it carries the corner's weight.")
          : _ ("The helper is solid at %s of wheel travel, before the corner's weight is carried."),
      travel);
}

static char *
standing_sentence (const SpringCorner *corner)
{
  if (corner->stands == STANDS_NOWHERE_BOUND)
    return solid_before_weight (corner);
  return g_strdup (
      corner->stands == STANDS_NOWHERE_TOO_SOFT
          ? _ ("These springs do not carry the corner within its travel: it sinks to the end of bump.")
          : _ ("These springs push the corner up to the end of droop: it has no travel left to fall."));
}

static void
judge_standing (GPtrArray *verdicts, const SpringCorner *corner)
{
  if (corner->stands == STANDS_BY_SPRINGS)
    return;
  add (
      verdicts, "standing", TRUE, standing_sentence (corner),
      g_strdup (_ (
          "Rule: the wheel's load by the springs must meet half the front axle's weight somewhere in the travel.")));
}

static void
judge_role (GPtrArray *verdicts, const SpringStudy *study, const SpringCorner *corner)
{
  const double *load = corner->at_standing.element_load;
  const double share = (load[SPRING_COIL] + load[SPRING_HELPER]) / study->corner_weight;
  g_autofree char *percent = number_text (100.0 * share, 0);

  if (!corner->law->has_coil && !corner->law->has_parallel)
    return;
  /* Translators: %s is a percentage. */
  const char *format =
      share < HELPER_SHARE
          ? _ ("The coil carries %s %% of this corner's weight where it stands: it is a helper.")
      : share > MAIN_SHARE
          ? _ ("The coil carries %s %% of this corner's weight where it stands: it is the main spring.")
          : _ ("The coil carries %s %% of this corner's weight where it stands: it shares the work.");

  add (
      verdicts, "coil-role", FALSE, g_strdup_printf (format, percent),
      g_strdup (_ (
          "Rule: a coil that carries less than a third of the corner's weight is a helper, one that carries more than two thirds is the main spring. Common practice, no published source.")));
}

static char *
seated_rule (void)
{
  return g_strdup (_ (
      "Rule: a spring should stay on its seats down to full droop, or something must hold it there. Common practice, no published source; inspection and local rules decide."));
}

static void
judge_seat (GPtrArray *verdicts, const SpringCorner *corner)
{
  const gboolean has_coil = corner->law->has_coil;
  const SpringEvent *slack =
      find_event (corner, has_coil ? SPRING_EVENT_TOPS_OUT : SPRING_EVENT_HELPER_SLACK);

  if (!has_coil && !corner->law->has_parallel)
    return;
  if (slack == NULL || slack->travel < corner->law->droop_stop) {
    add (verdicts, "coil-slack", FALSE,
         g_strdup (has_coil ? _ ("The coil stays on its seats down to full droop.")
                            : _ ("The helper stays on its seats down to full droop.")),
         seated_rule ());
    return;
  }
  g_autofree char *travel = unit_text (UNIT_LENGTH, slack->travel, 1);

  add (
      verdicts, "coil-slack", TRUE,
      g_strdup_printf (
          has_coil
              ? _ ("The coil goes slack at %s of wheel travel, before the wheel is at full droop: there it can leave its seats.")
              : _ ("The helper goes slack at %s of wheel travel, before the wheel is at full droop: there it can leave its seats."),
          travel),
      seated_rule ());
}

/* N on the tower by the springs as they are, standing; NAN where that is not solved. */
static double
tower_load (const SpringStudy *study, const SpringCorner *corner)
{
  const CarLoadCase standing = { .vertical = 1.0 };
  JointLoads loads;

  if (corner->stands != STANDS_BY_SPRINGS)
    return NAN;
  joint_loads_of_corner (study, corner, &standing, corner->standing, SPRING_AS_SET,
                         &loads);
  return loads.load_on_tower;
}

/* With the car's own springs on the corner as measured. */
static double
tower_load_as_built (const SpringStudy *study)
{
  g_autoptr (SpringLaw) law = spring_law_new (study->car, &study->car->springs);
  g_autofree SpringCorner *built = g_new0 (SpringCorner, 1);

  built->corner = &study->study->measured;
  built->springs = &study->car->springs;
  built->law = law;
  spring_corner_solve (built, study->car);
  return tower_load (study, built);
}

static void
judge_tower (GPtrArray *verdicts, const SpringStudy *study, guint setup)
{
  const double now = tower_load (study, &study->setups[setup]);
  const double built = tower_load_as_built (study);
  const gboolean is_more = now - built > TOWER_RISE / 100.0 * study->corner_weight;
  g_autofree char *now_text = unit_text (UNIT_FORCE, now, 0), *built_text = NULL;
  g_autofree char *percent = plain_number_text (TOWER_RISE);
  char *rule = g_strdup_printf (
      _ ("Rule: it is said where the tower carries more than it did as built by over %s %% of the corner's weight. Common practice, no published source."),
      percent);

  if (isnan (built)) {
    add (
        verdicts, "tower-load", FALSE,
        g_strdup_printf (
            _ ("Standing, the strut tower carries %s. What it carried as built is not known: the car's own springs are not given, or do not carry it."),
            now_text),
        rule);
    return;
  }
  built_text = unit_text (UNIT_FORCE, built, 0);
  add (
      verdicts, "tower-load", is_more,
      g_strdup_printf (
          is_more
              ? _ ("Standing, the strut tower carries %s; as built it carried %s. Body structure, upper mount and bearing must be rated for that; inspection and local rules decide.")
              : _ ("Standing, the strut tower carries %s; as built it carried %s."),
          now_text, built_text),
      rule);
}

static char *
frequency_rule (void)
{
  g_autofree char *least = number_text (LEAST_FREQUENCY, 1);
  g_autofree char *comfort = number_text (COMFORT_FREQUENCY, 1);
  g_autofree char *sport = number_text (SPORT_FREQUENCY, 1);

  return g_strdup_printf (
      _ ("Rule: %s to %s Hz with the tyre is usual in front, by a car maker's training text; sports cars go to %s Hz and racing cars above, from memory."),
      least, comfort, sport);
}

static void
judge_frequency (GPtrArray *verdicts, const SpringCorner *corner)
{
  const double f = corner->frequency;
  g_autofree char *text = number_text (f, 2);
  const char *format =
      f < LEAST_FREQUENCY
          ? _ ("Ride frequency is %s Hz: soft enough to make people sick.")
      : f < COMFORT_FREQUENCY ? _ ("Ride frequency is %s Hz: usual for a road car.")
      : f < SPORT_FREQUENCY ? _ ("Ride frequency is %s Hz: firm, as sports cars have it.")
                            : _ ("Ride frequency is %s Hz: harsh on the road.");

  if (isfinite (f))
    add (verdicts, "frequency", f < LEAST_FREQUENCY || f >= SPORT_FREQUENCY,
         g_strdup_printf (format, text), frequency_rule ());
}

static char *
damping_rule (void)
{
  g_autofree char *least = number_text (LEAST_DAMPING, 1);
  g_autofree char *comfort = number_text (COMFORT_DAMPING, 1);
  g_autofree char *most = number_text (MOST_DAMPING, 1);
  g_autofree char *speed = unit_text (UNIT_SPEED, SPRING_DAMPER_SPEED, 1);

  return g_strdup_printf (
      _ ("Rule: the mean of bump and rebound at %s of the damper. %s to %s is usual for comfort: Gillespie, Fundamentals of Vehicle Dynamics, chapter 5, from memory. Above %s: common practice, no published source."),
      speed, least, comfort, most);
}

static void
judge_damping (GPtrArray *verdicts, const SpringCorner *corner)
{
  const double bump = corner->damping_ratio_bump, rebound = corner->damping_ratio_rebound;
  const double mean = (bump + rebound) / 2.0;
  g_autofree char *mean_text = number_text (mean, 2);
  g_autofree char *bump_text = number_text (bump, 2);
  g_autofree char *rebound_text = number_text (rebound, 2);
  /* Translators: the mean, then that of bump and that of rebound. */
  const char *format =
      mean < LEAST_DAMPING
          ? _ ("The damping ratio is %s (bump %s, rebound %s): under-damped, the car goes on bouncing.")
      : mean < COMFORT_DAMPING
          ? _ ("The damping ratio is %s (bump %s, rebound %s): comfortable.")
      : mean <= MOST_DAMPING
          ? _ ("The damping ratio is %s (bump %s, rebound %s): firm.")
          : _ ("The damping ratio is %s (bump %s, rebound %s): over-damped, hard on small bumps.");

  if (isfinite (mean))
    add (verdicts, "damping", mean < LEAST_DAMPING || mean > MOST_DAMPING,
         g_strdup_printf (format, mean_text, bump_text, rebound_text), damping_rule ());
}

static void
judge_bump_stop (GPtrArray *verdicts, const SpringCorner *corner)
{
  const SpringEvent *touch = find_event (corner, SPRING_EVENT_BUMP_STOP);
  const gboolean is_on_it = corner->at_standing.stop_squash > 0.0;
  const double room = touch != NULL ? touch->travel - corner->standing : INFINITY;
  g_autofree char *room_text = unit_text (UNIT_LENGTH, room, 1);
  g_autofree char *least = unit_text (UNIT_LENGTH, BUMP_ROOM, 0);

  if (!is_on_it && room >= BUMP_ROOM)
    return;
  add (
      verdicts, "bump-stop-near", TRUE,
      is_on_it ? g_strdup (_ ("It stands on its bump stop."))
               : g_strdup_printf (
                     _ ("The bump stop touches %s of wheel travel above standing."),
                     room_text),
      g_strdup_printf (
          _ ("Rule: at least %s of wheel travel to the bump stop. Common practice, no published source."),
          least));
}

static char *
solid_sentence (const SpringEvent *solid, const SpringEvent *touch)
{
  const gboolean is_coil = solid->kind == SPRING_EVENT_COIL_BOUND;
  g_autofree char *travel = unit_text (UNIT_LENGTH, solid->travel, 1);
  g_autofree char *stop =
      touch != NULL ? unit_text (UNIT_LENGTH, touch->travel, 1) : NULL;

  if (touch == NULL)
    return g_strdup_printf (
        is_coil
            ? _ ("The coil is solid at %s of wheel travel, and no bump stop touches before: there bump ends hard.")
            : _ ("The helper is solid at %s of wheel travel, and no bump stop touches before: there bump ends hard."),
        travel);
  return g_strdup_printf (
      is_coil
          ? _ ("The coil is solid at %s of wheel travel, before the bump stop would touch at %s: there bump ends hard.")
          : _ ("The helper is solid at %s of wheel travel, before the bump stop would touch at %s: there bump ends hard."),
      travel, stop);
}

/* A spring pressed solid before the bump stop is there to take the blow. */
static void
judge_solid (GPtrArray *verdicts, const SpringCorner *corner)
{
  const SpringEvent *solid = spring_corner_solid (corner);
  const SpringEvent *touch = find_event (corner, SPRING_EVENT_BUMP_STOP);

  if (solid == NULL || (touch != NULL && touch->travel <= solid->travel))
    return;
  add (
      verdicts, "coil-bound", TRUE, solid_sentence (solid, touch),
      g_strdup (_ (
          "Rule: the bump stop should touch before a coil or a helper is pressed solid. Common practice, no published source.")));
}

/* Springs that, before the droop stop, pull up more than the wheel weighs. */
static void
judge_lift (GPtrArray *verdicts, const SpringCorner *corner)
{
  double least = 0.0, travel = 0.0;

  for (gsize i = 0; i < STUDY_STATIONS; i++)
    if (corner->stations[i].load < least &&
        corner->corner->stations[i].travel >= corner->law->droop_stop) {
      least = corner->stations[i].load;
      travel = corner->corner->stations[i].travel;
    }
  if (!(least < 0.0))
    return;
  g_autofree char *load = unit_text (UNIT_FORCE, least, 0);
  g_autofree char *at = unit_text (UNIT_LENGTH, travel, 0);

  add (
      verdicts, "wheel-lifts", TRUE,
      g_strdup_printf (
          _ ("In droop the wheel load falls below nothing, to %s at %s of wheel travel: there the wheel no longer reaches the road and lifts."),
          load, at),
      g_strdup (
          _ ("Rule: a road can push a wheel and not pull it: below no load it lifts.")));
}

static void
judge_bar (GPtrArray *verdicts, const SpringCorner *corner)
{
  double worst = 0.0, travel = 0.0;

  for (gsize i = 0; i < STUDY_STATIONS; i++)
    if (isfinite (corner->stations[i].load) && corner->stations[i].bar_stress > worst) {
      worst = corner->stations[i].bar_stress;
      travel = corner->corner->stations[i].travel;
    }
  if (!(worst > BAR_STRESS))
    return;
  g_autofree char *stress = unit_text (UNIT_STRESS, worst, 0);
  g_autofree char *at = unit_text (UNIT_LENGTH, travel, 0);
  g_autofree char *most = unit_text (UNIT_STRESS, BAR_STRESS, 0);

  add (verdicts, "bar-stress", TRUE,
       g_strdup_printf (
           _ ("The torsion bar's shear stress reaches %s at %s of wheel travel."), stress,
           at),
       g_strdup_printf (
           _ ("Rule: above %s of shear, from memory; the bar's maker decides."), most));
}

/* The car's height by its springs against the setup's. */
static void
judge_height (GPtrArray *verdicts, const SpringCorner *corner)
{
  const double lowering = corner->corner->lowering;

  if (fabs (corner->standing - lowering) < HEIGHT_APART)
    return;
  g_autofree char *stands = unit_text (UNIT_LENGTH, corner->standing, 1);
  g_autofree char *set = unit_text (UNIT_LENGTH, lowering, 1);
  g_autofree char *apart = unit_text (UNIT_LENGTH, HEIGHT_APART, 0);
  add (
      verdicts, "height", TRUE,
      g_strdup_printf (_ ("By its springs the corner stands at wheel travel %s, but this "
                          "setup has it at %s."),
                       stands, set),
      g_strdup_printf (
          _ ("Rule: said from %s on. Perch or clamp angle can be set for the "
             "height that is wanted."),
          apart));
}

static void
add_part (GString *list, const char *part)
{
  if (list->len > 0)
    g_string_append (list, ", ");
  g_string_append (list, part);
}

/* What has a mass by its sizes, and what is there without; a helper has no wire. */
static void
list_weighed (const SpringCorner *corner, GString *counted, GString *left_out)
{
  const CarSprings *springs = corner->springs;

  if (springs->bar.is_there)
    add_part (corner->law->n_sections > 0 ? counted : left_out,
              spring_element_name (SPRING_BAR));
  if (springs->coil.is_there)
    add_part (corner->law->coil_size.wire > 0.0 ? counted : left_out,
              spring_element_name (SPRING_COIL));
  if (springs->helper.is_there)
    add_part (left_out, spring_element_name (SPRING_HELPER));
}

/* Which parts the masses are of: the file has no arm or knuckle by itself. */
static void
judge_mass (GPtrArray *verdicts, const SpringStudy *study, const SpringCorner *corner)
{
  const double unsprung = study->car->body.unsprung_corner_kg;
  g_autoptr (GString) counted = g_string_new (NULL), left_out = g_string_new (NULL);
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *entered = unit_text (UNIT_MASS, unsprung, 1);

  list_weighed (corner, counted, left_out);
  if (counted->len == 0)
    g_string_append (text, _ ("The springs' own mass is not known. "));
  else
    g_string_append_printf (text, _ ("Counted in the springs' own mass: %s. "),
                            counted->str);
  if (left_out->len > 0)
    g_string_append_printf (text, _ ("Not counted in it, for want of sizes: %s. "),
                            left_out->str);
  if (unsprung > 0.0)
    g_string_append_printf (text,
                            _ ("Arm, knuckle, strut and wheel are in the %s unsprung."),
                            entered);
  else
    g_string_append (text, _ ("Arm, knuckle, strut and wheel are not counted at all: no "
                              "unsprung mass is entered."));
  add (
      verdicts, "mass-counted", FALSE, g_strdup (text->str),
      g_strdup (_ (
          "Rule: steel of 7850 kg/m³, EN 1991-1-1, table A.4, from memory; half of a coil is unsprung. Common practice, no published source.")));
}

static int
warnings_first (gconstpointer a, gconstpointer b)
{
  const SpringVerdict *first = *(SpringVerdict *const *) a;
  const SpringVerdict *second = *(SpringVerdict *const *) b;

  return (second->is_warning ? 1 : 0) - (first->is_warning ? 1 : 0);
}

static void
judge_as_it_stands (GPtrArray *verdicts, const SpringStudy *study, guint setup)
{
  const SpringCorner *corner = &study->setups[setup];

  judge_height (verdicts, corner);
  judge_role (verdicts, study, corner);
  judge_tower (verdicts, study, setup);
  judge_frequency (verdicts, corner);
  judge_damping (verdicts, corner);
  judge_bump_stop (verdicts, corner);
  judge_solid (verdicts, corner);
  judge_mass (verdicts, study, corner);
}

GPtrArray *
spring_verdicts (const SpringStudy *study, guint setup)
{
  GPtrArray *verdicts = g_ptr_array_new_with_free_func (verdict_free);
  const SpringCorner *corner = &study->setups[setup];

  if (corner->stands == STANDS_NOT_GIVEN || corner->corner->n_assembled == 0)
    return verdicts;
  judge_standing (verdicts, corner);
  judge_seat (verdicts, corner);
  judge_lift (verdicts, corner);
  judge_bar (verdicts, corner);
  if (corner->stands == STANDS_BY_SPRINGS)
    judge_as_it_stands (verdicts, study, setup);
  g_ptr_array_sort (verdicts, warnings_first); /* which keeps the order of equals */
  return verdicts;
}

const char **
spring_verdict_sentences (const GPtrArray *verdicts)
{
  const char **sentences = g_new0 (const char *, verdicts->len + 1);

  for (guint i = 0; i < verdicts->len; i++)
    sentences[i] = ((const SpringVerdict *) verdicts->pdata[i])->marked;
  return sentences;
}
