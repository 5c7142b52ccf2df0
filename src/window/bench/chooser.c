/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/bench/chooser.h"

#include "drawing/mount-map/mount-map.h"

#include <glib/gi18n-lib.h>

struct _SwChooser {
  GObject parent_instance;

  SwBench *bench; /* lives as long as this, and is not held */

  PlateLibrary *library; /* NULL until somebody asks */
  GFile *library_for;    /* the car file that it was loaded for, or NULL */

  char *plate; /* name of the one in hand, or NULL */
  gboolean is_swapped, keeps_to_plate;
  enum {
    BOLT_EITHER,
    BOLT_NONE,
    BOLT_ADDED
  } bolt; /* of the answer about it */
  CarSide side;
  int subjects[2];

  ChoiceQuestion question;
  gboolean has_own_carrier; /* else the one that the setup in hand stands on */
  GArray *answers;          /* of ChoiceAnswer, or NULL */
  Car *asked_car;           /* what they answer, or NULL when they answer nothing */
  ChoiceQuestion asked;
  guint n_watchers, idle;

  /* what the setup in hand said when it was looked at last */
  guint seen_setup;
  char *seen_plate;
  gboolean seen_swapped;
};

G_DEFINE_FINAL_TYPE (SwChooser, sw_chooser, G_TYPE_OBJECT)

enum {
  CHANGED,
  ANSWERED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static SwDocument *
document_of (SwChooser *self)
{
  return sw_bench_get_document (self->bench);
}

static const Car *
car_of (SwChooser *self)
{
  return sw_document_get_car (document_of (self));
}

static void
tell (SwChooser *self, guint signal)
{
  g_signal_emit (self, signals[signal], 0);
}

/* They point at plates of the library. */
static void
forget_answers (SwChooser *self)
{
  g_clear_pointer (&self->asked_car, car_free);
  g_array_set_size (self->answers, 0);
}

static gboolean
is_library_for (SwChooser *self, GFile *file)
{
  return self->library_for == file || (file != NULL && self->library_for != NULL &&
                                       g_file_equal (file, self->library_for));
}

static void
drop_library (SwChooser *self)
{
  forget_answers (self);
  g_clear_pointer (&self->library, plate_library_free);
}

const PlateLibrary *
sw_chooser_get_library (SwChooser *self)
{
  if (self->library == NULL) {
    g_set_object (&self->library_for, sw_document_get_file (document_of (self)));
    self->library = plate_library_load (self->library_for);
  }
  return self->library;
}

/* What the answers depend on, and nothing else: a mount that is dragged, another setup, a
 * name or a rate makes no other answer, a coil beside the tyre does; which kind of spring
 * carries is asked for. */
static Car *
asked_car_new (SwChooser *self)
{
  Car *car = car_copy (car_of (self));
  const guint in_hand = sw_bench_get_setup_index (self->bench);

  car->springs = car_springs_outline (&car->springs);
  car->n_load_cases = 0;
  for (guint i = 0; i < car->setups->len; i++) {
    CarSetup *setup = car_setup (car, i);

    setup->has_springs =
        setup->has_springs && setup->springs.coil.is_there && i == in_hand;
    setup->springs = car_springs_outline (&setup->springs);
    setup->has_rod = FALSE;
    g_free (setup->name);
    setup->name = g_strdup ("");
    setup->is_hidden = FALSE;
    if (i != in_hand && i != car->baseline)
      setup->lowering_mm = 0.0;
    if (i == car->baseline)
      continue;
    g_clear_pointer (&setup->plate, g_free);
    setup->is_plate_swapped = FALSE;
    setup->mount = setup->right.mount = (MountOffset){ 0 };
  }
  return car;
}

static gboolean
same_question (const ChoiceQuestion *a, const ChoiceQuestion *b)
{
  return a->setup == b->setup && a->carrier == b->carrier && a->try_bolt == b->try_bolt &&
         a->try_swap == b->try_swap;
}

static gboolean
is_answered (SwChooser *self, const Car *asking)
{
  const ChoiceQuestion question = sw_chooser_get_question (self);

  return self->asked_car != NULL && same_question (&question, &self->asked) &&
         car_equal (self->asked_car, asking);
}

static GArray *
solve (SwChooser *self)
{
  const PlateLibrary *library = sw_chooser_get_library (self);
  g_autoptr (GPtrArray) plates = g_ptr_array_new ();
  const ChoiceQuestion question = sw_chooser_get_question (self);

  for (guint i = 0; i < library->plates->len; i++)
    g_ptr_array_add (plates, ((ShelfPlate *) library->plates->pdata[i])->plate);
  return choice_solve (car_of (self), &question, (const Plate *const *) plates->pdata,
                       plates->len);
}

static void
answer (SwChooser *self)
{
  g_autoptr (Car) asking = asked_car_new (self);

  if (is_answered (self, asking))
    return;
  g_array_unref (self->answers);
  self->answers = solve (self);
  g_clear_pointer (&self->asked_car, car_free);
  self->asked_car = g_steal_pointer (&asking);
  self->asked = sw_chooser_get_question (self);
  tell (self, ANSWERED);
}

static gboolean
on_idle_cb (gpointer data)
{
  SwChooser *self = data;

  self->idle = 0;
  if (!sw_bench_is_dragging (self->bench))
    answer (self);
  return G_SOURCE_REMOVE;
}

/* Behind the frame that shows what was changed. */
static void
answer_soon (SwChooser *self)
{
  if (self->n_watchers > 0 && self->idle == 0 && !sw_bench_is_dragging (self->bench))
    self->idle = g_idle_add_full (G_PRIORITY_LOW, on_idle_cb, self, NULL);
}

static void
take_plate (SwChooser *self, const char *name, gboolean is_swapped)
{
  char *copy = g_strdup (name);

  g_free (self->plate);
  self->plate = copy;
  self->is_swapped = name != NULL && is_swapped;
  self->bolt = BOLT_EITHER;
}

/* A setup that is taken in hand, or that changes its plate, brings it along. */
static gboolean
follow_setup (SwChooser *self)
{
  const CarSetup *setup = sw_bench_get_setup (self->bench);
  const guint index = sw_bench_get_setup_index (self->bench);

  if (index == self->seen_setup && g_strcmp0 (setup->plate, self->seen_plate) == 0 &&
      setup->is_plate_swapped == self->seen_swapped)
    return FALSE;
  self->seen_setup = index;
  self->seen_swapped = setup->is_plate_swapped;
  g_free (self->seen_plate);
  self->seen_plate = g_strdup (setup->plate);
  if (setup->plate == NULL || (g_strcmp0 (setup->plate, self->plate) == 0 &&
                               setup->is_plate_swapped == self->is_swapped))
    return FALSE;
  take_plate (self, setup->plate, setup->is_plate_swapped);
  return TRUE;
}

static gboolean
follow_car (SwChooser *self)
{
  gboolean is_other = FALSE;

  if (self->library != NULL &&
      !is_library_for (self, sw_document_get_file (document_of (self)))) {
    drop_library (self);
    is_other = TRUE;
  }
  if (self->side == SIDE_RIGHT && !sw_chooser_has_two_sides (self)) {
    self->side = SIDE_LEFT;
    is_other = TRUE;
  }
  return is_other;
}

static void
on_bench_solved_cb (SwChooser *self)
{
  const gboolean is_other_car = follow_car (self);

  if (follow_setup (self) || is_other_car)
    tell (self, CHANGED);
  answer_soon (self);
}

static void
sw_chooser_finalize (GObject *object)
{
  SwChooser *self = SW_CHOOSER (object);

  g_clear_handle_id (&self->idle, g_source_remove);
  drop_library (self);
  g_array_unref (self->answers);
  g_clear_object (&self->library_for);
  g_free (self->plate);
  g_free (self->seen_plate);
  G_OBJECT_CLASS (sw_chooser_parent_class)->finalize (object);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, SW_TYPE_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
sw_chooser_class_init (SwChooserClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_chooser_finalize;
  signals[CHANGED] = add_signal ("changed");
  signals[ANSWERED] = add_signal ("answered");
}

static void
sw_chooser_init (SwChooser *self)
{
  self->keeps_to_plate = TRUE;
  self->question.try_bolt = self->question.try_swap = TRUE;
  self->subjects[0] = FIELD_CAMBER;
  self->subjects[1] = FIELD_CASTER;
  self->seen_setup = G_MAXUINT;
  self->answers = g_array_new (FALSE, FALSE, sizeof (ChoiceAnswer));
}

SwChooser *
sw_chooser_of (SwBench *bench)
{
  SwChooser *self = g_object_get_data (G_OBJECT (bench), "chooser");

  if (self != NULL)
    return self;
  self = g_object_new (SW_TYPE_CHOOSER, NULL);
  self->bench = bench;
  g_object_set_data_full (G_OBJECT (bench), "chooser", self, g_object_unref);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
  follow_setup (self);
  return self;
}

SwBench *
sw_chooser_get_bench (SwChooser *self)
{
  return self->bench;
}

void
sw_chooser_reload_library (SwChooser *self)
{
  drop_library (self);
  tell (self, CHANGED);
  tell (self, ANSWERED);
  answer_soon (self);
}

const Plate *
sw_chooser_get_plate (SwChooser *self)
{
  const ShelfPlate *found =
      self->plate != NULL
          ? plate_library_find (sw_chooser_get_library (self), self->plate)
          : NULL;

  return found != NULL ? found->plate : NULL;
}

gboolean
sw_chooser_is_swapped (SwChooser *self)
{
  return self->is_swapped;
}

void
sw_chooser_set_plate (SwChooser *self, const char *name, gboolean is_swapped)
{
  if (g_strcmp0 (name, self->plate) == 0 && is_swapped == self->is_swapped)
    return;
  take_plate (self, name, is_swapped);
  tell (self, CHANGED);
}

gboolean
sw_chooser_has_two_sides (SwChooser *self)
{
  return car_sides_differ (car_of (self), sw_bench_get_setup_index (self->bench));
}

CarSide
sw_chooser_get_side (SwChooser *self)
{
  return self->side;
}

void
sw_chooser_set_side (SwChooser *self, CarSide side)
{
  if (side == self->side || (side == SIDE_RIGHT && !sw_chooser_has_two_sides (self)))
    return;
  self->side = side;
  tell (self, CHANGED);
}

int
sw_chooser_get_subject (SwChooser *self, guint which)
{
  g_return_val_if_fail (which < 2, FIELD_CAMBER);
  return self->subjects[which];
}

void
sw_chooser_set_subject (SwChooser *self, guint which, int subject)
{
  g_return_if_fail (which < 2);
  g_return_if_fail (subject < (int) N_FIELD_SUBJECTS);
  g_return_if_fail (subject >= 0 || (which == 1 && subject == MOUNT_MAP_NONE));

  if (subject == self->subjects[which])
    return;
  self->subjects[which] = subject;
  tell (self, CHANGED);
}

gboolean
sw_chooser_keeps_to_plate (SwChooser *self)
{
  return self->keeps_to_plate;
}

void
sw_chooser_set_keeps_to_plate (SwChooser *self, gboolean keeps)
{
  if (keeps == self->keeps_to_plate)
    return;
  self->keeps_to_plate = keeps;
  tell (self, CHANGED);
}

ChoiceQuestion
sw_chooser_get_question (SwChooser *self)
{
  ChoiceQuestion question = self->question;

  question.setup = sw_bench_get_setup_index (self->bench);
  if (!self->has_own_carrier)
    question.carrier = choice_usual_carrier (car_of (self), question.setup);
  return question;
}

void
sw_chooser_set_question (SwChooser *self, const ChoiceQuestion *question)
{
  self->question = *question;
  self->has_own_carrier =
      question->carrier !=
      choice_usual_carrier (car_of (self), sw_bench_get_setup_index (self->bench));
  answer_soon (self);
}

const GArray *
sw_chooser_get_answers (SwChooser *self)
{
  if (!sw_bench_is_dragging (self->bench))
    answer (self);
  return self->answers;
}

const GArray *
sw_chooser_peek_answers (SwChooser *self)
{
  return self->answers;
}

int
sw_chooser_find_answer (SwChooser *self)
{
  int found = -1;

  for (guint i = 0; i < self->answers->len; i++) {
    const ChoiceAnswer *a = &g_array_index (self->answers, ChoiceAnswer, i);

    if (g_strcmp0 (a->plate->name, self->plate) != 0 ||
        !a->is_swapped != !self->is_swapped)
      continue;
    if (self->bolt == BOLT_EITHER || a->has_bolt == (self->bolt == BOLT_ADDED))
      return (int) i;
    if (found < 0)
      found = (int) i;
  }
  return found;
}

void
sw_chooser_take_answer (SwChooser *self, guint index)
{
  g_return_if_fail (index < self->answers->len);

  const ChoiceAnswer *taken = &g_array_index (self->answers, ChoiceAnswer, index);

  if (sw_chooser_find_answer (self) == (int) index && self->bolt != BOLT_EITHER)
    return;
  take_plate (self, taken->plate->name, taken->is_swapped);
  self->bolt = taken->has_bolt ? BOLT_ADDED : BOLT_NONE;
  tell (self, CHANGED);
}

const ChoicePlace *
sw_chooser_get_best (SwChooser *self)
{
  const int found = self->plate != NULL ? sw_chooser_find_answer (self) : -1;

  return found >= 0 ? &g_array_index (self->answers, ChoiceAnswer, found).side[self->side]
                    : NULL;
}

void
sw_chooser_watch (SwChooser *self)
{
  self->n_watchers++;
  answer_soon (self);
}

void
sw_chooser_unwatch (SwChooser *self)
{
  g_return_if_fail (self->n_watchers > 0);

  if (--self->n_watchers == 0)
    g_clear_handle_id (&self->idle, g_source_remove);
}
