/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/bench/bench.h"
#include "window/settings/units.h"

#include <glib/gi18n-lib.h>

struct _SwBench {
  GObject parent_instance;

  SwDocument *document;
  guint setup_index, last_index; /* the setup in hand, and the one before */
  double travel, lowering;       /* in hand, and at which its setup stands */
  int lit;
  BoardChoice choice;
  Study *study; /* too large to stand inside an object */
  SpringStudy *springs;
  gboolean are_springs_solved, is_springs_travel_stale;
  guint solution;
};

G_DEFINE_FINAL_TYPE (SwBench, sw_bench, G_TYPE_OBJECT)

enum {
  SOLVED,
  LIT,
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* A setup that stands at another height than before is looked at where it stands. */
static void
follow_height (SwBench *self)
{
  const double lowering = sw_bench_get_setup (self)->lowering_mm;

  if (lowering != self->lowering)
    self->travel = lowering;
  self->lowering = lowering;
}

static void
solve (SwBench *self)
{
  const Car *car = sw_document_get_car (self->document);

  /* undone or removed: back to the one before */
  if (self->setup_index >= car->setups->len)
    self->setup_index = MIN (self->last_index, car->setups->len - 1);
  follow_height (self);
  study_solve (self->study, car, self->setup_index, self->travel);
  self->travel = self->study->travel;
  self->are_springs_solved = FALSE;
  self->solution++;
  g_signal_emit (self, signals[SOLVED], 0);
}

static void
on_document_changed_cb (SwBench *self)
{
  solve (self);
}

static void
sw_bench_dispose (GObject *object)
{
  SwBench *self = SW_BENCH (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (sw_bench_parent_class)->dispose (object);
}

static void
sw_bench_finalize (GObject *object)
{
  spring_study_free (SW_BENCH (object)->springs);
  study_free (SW_BENCH (object)->study);
  G_OBJECT_CLASS (sw_bench_parent_class)->finalize (object);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, SW_TYPE_BENCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
sw_bench_class_init (SwBenchClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_bench_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_bench_finalize;
  signals[SOLVED] = add_signal ("solved");
  signals[LIT] = add_signal ("lit");
  signals[CHOSEN] = add_signal ("chosen");
}

/* Nothing moved, but everything reads otherwise. */
static void
on_units_changed_cb (SwBench *self)
{
  if (self->document != NULL)
    g_signal_emit (self, signals[SOLVED], 0);
}

static void
sw_bench_init (SwBench *self)
{
  self->study = study_new ();
  self->springs = spring_study_new ();
  self->lit = -1;
  self->choice = board_choice_default ();
  g_signal_connect_object (sw_units_get (), "changed", G_CALLBACK (on_units_changed_cb),
                           self, G_CONNECT_SWAPPED);
}

SwBench *
sw_bench_new (SwDocument *document)
{
  SwBench *self = g_object_new (SW_TYPE_BENCH, NULL);

  sw_bench_set_document (self, document);
  return self;
}

SwDocument *
sw_bench_get_document (SwBench *self)
{
  return self->document;
}

void
sw_bench_set_document (SwBench *self, SwDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed_cb), self,
                           G_CONNECT_SWAPPED);
  self->setup_index = self->last_index = 0;
  self->lowering = NAN;
  solve (self);
}

/* A document tells that it is modified before it tells that it is another: for that
 * long the setup in hand may be gone. */
guint
sw_bench_get_setup_index (SwBench *self)
{
  return MIN (self->setup_index, sw_document_get_car (self->document)->setups->len - 1);
}

void
sw_bench_set_setup_index (SwBench *self, guint index)
{
  if (index == self->setup_index)
    return;
  self->last_index = self->setup_index;
  self->setup_index = index;
  self->lowering = NAN; /* look at it where it stands */
  solve (self);
}

const CarSetup *
sw_bench_get_setup (SwBench *self)
{
  return car_setup (sw_document_get_car (self->document),
                    sw_bench_get_setup_index (self));
}

const Study *
sw_bench_get_study (SwBench *self)
{
  return self->study;
}

void
sw_bench_set_travel (SwBench *self, double travel)
{
  if (travel == self->travel)
    return;
  study_set_travel (self->study, travel);
  self->travel = self->study->travel;
  self->is_springs_travel_stale = TRUE;
  g_signal_emit (self, signals[SOLVED], 0);
}

const SpringStudy *
sw_bench_get_springs (SwBench *self)
{
  if (!self->are_springs_solved)
    spring_study_solve (self->springs, self->study, sw_document_get_car (self->document));
  else if (self->is_springs_travel_stale)
    spring_study_set_travel (self->springs);
  self->are_springs_solved = TRUE;
  self->is_springs_travel_stale = FALSE;
  return self->springs;
}

guint
sw_bench_get_solution (SwBench *self)
{
  return self->solution;
}

Adjustment
sw_bench_get_adjustment (SwBench *self)
{
  return car_adjustment (sw_bench_get_setup (self));
}

static void
set_adjustment (SwBench *self, const Adjustment *adjustment, const char *label)
{
  sw_document_set_setup (self->document, self->setup_index, adjustment, label);
}

void
sw_bench_set_mount (SwBench *self, MountOffset mount)
{
  Adjustment adjustment = sw_bench_get_adjustment (self);

  adjustment.mount = mount;
  set_adjustment (self, &adjustment, _ ("Move upper mount"));
}

void
sw_bench_set_lowering (SwBench *self, double lowering)
{
  Adjustment adjustment = sw_bench_get_adjustment (self);

  adjustment.lowering = lowering;
  set_adjustment (self, &adjustment, _ ("Change ride height"));
}

void
sw_bench_set_toe (SwBench *self, ToeMode toe)
{
  Adjustment adjustment = sw_bench_get_adjustment (self);

  adjustment.toe = toe;
  set_adjustment (self, &adjustment,
                  toe == TOE_RESET ? _ ("Reset toe") : _ ("Leave toe as moved"));
}

void
sw_bench_begin_drag (SwBench *self, const char *label)
{
  sw_document_begin (self->document, label);
}

void
sw_bench_end_drag (SwBench *self)
{
  sw_document_end (self->document);
  g_signal_emit (self, signals[SOLVED], 0);
}

void
sw_bench_cancel_drag (SwBench *self)
{
  sw_document_cancel (self->document);
  g_signal_emit (self, signals[SOLVED], 0);
}

gboolean
sw_bench_is_dragging (SwBench *self)
{
  return sw_document_is_changing (self->document);
}

int
sw_bench_get_lit (SwBench *self)
{
  return self->lit;
}

void
sw_bench_set_lit (SwBench *self, int quantity)
{
  if (quantity == self->lit)
    return;
  self->lit = quantity;
  g_signal_emit (self, signals[LIT], 0);
}

BoardChoice
sw_bench_get_choice (SwBench *self)
{
  return self->choice;
}

static gboolean
is_among (const Quantity *list, guint n, Quantity quantity, guint *place)
{
  for (guint i = 0; i < n; i++)
    if (list[i] == quantity) {
      *place = i;
      return TRUE;
    }
  return FALSE;
}

static void
take_out (Quantity *list, guint *n, guint place)
{
  for (guint i = place + 1; i < *n; i++)
    list[i - 1] = list[i];
  (*n)--;
}

gboolean
sw_bench_is_chosen (SwBench *self, Quantity quantity)
{
  const BoardChoice *c = &self->choice;
  guint place;

  return is_among (c->large, c->n_large, quantity, &place) ||
         is_among (c->small, c->n_small, quantity, &place);
}

gboolean
sw_bench_choose (SwBench *self, Quantity quantity, gboolean chosen)
{
  BoardChoice *c = &self->choice;
  guint place;

  if (chosen == sw_bench_is_chosen (self, quantity))
    return FALSE;
  if (chosen && c->n_large < 3)
    c->large[c->n_large++] = quantity;
  else if (chosen && c->n_small < BOARD_MOST_SMALL)
    c->small[c->n_small++] = quantity;
  else if (!chosen && is_among (c->small, c->n_small, quantity, &place))
    take_out (c->small, &c->n_small, place);
  else if (!chosen && c->n_large > 1 && is_among (c->large, c->n_large, quantity, &place))
    take_out (c->large, &c->n_large, place);
  else
    return FALSE;
  g_signal_emit (self, signals[CHOSEN], 0);
  return TRUE;
}

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
/* Nothing for what was not moved. */
static void
add_way (GPtrArray *parts, double mm, const char *positive, const char *negative)
{
  g_autofree char *length = unit_text (UNIT_LENGTH, ABS (mm), 1);

  if (mm != 0.0)
    g_ptr_array_add (parts, g_strdup_printf (mm > 0.0 ? positive : negative, length));
}
#pragma GCC diagnostic pop

char *
bench_mount_words (MountOffset m)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  add_way (parts, m.inboard, C_ ("mount", "%s inboard"), C_ ("mount", "%s outboard"));
  add_way (parts, m.rearward, C_ ("mount", "%s rearward"), C_ ("mount", "%s forward"));
  add_way (parts, m.up, C_ ("mount, with unit", "%s up"),
           C_ ("mount, with unit", "%s down"));
  if (parts->len == 0)
    g_ptr_array_add (parts, g_strdup (_ ("mount as measured")));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **) parts->pdata);
}

char *
sw_bench_describe_mount (SwBench *self)
{
  return bench_mount_words (sw_bench_get_setup (self)->mount);
}
