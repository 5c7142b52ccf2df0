/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-choice.h"
#include "window/springs/springs-panel-number.h"
#include "window/springs/springs-panel-start.h"

#include <glib/gi18n-lib.h>

#define MOST_OPTIONS 3

typedef struct {
  SpringsGroup group;
  const char *name, *meaning;            /* to be translated */
  const char *options[MOST_OPTIONS + 1]; /* to be translated, NULL at the end */
  guint (*get) (const SpringSet *set);
  void (*set) (SpringSet *set, const Car *car, guint option);
} Row;

static guint
get_bar (const SpringSet *set)
{
  return set->springs.bar.rate_nm_per_deg != 0.0 ? BAR_BY_RATE : BAR_BY_SIZES;
}

static guint
get_coil (const SpringSet *set)
{
  const CarCoil *coil = &set->springs.coil;

  if (coil->rate_n_per_mm != 0.0)
    return COIL_BY_RATE;
  return coil->table.n > 0 ? COIL_BY_TABLE : COIL_BY_SIZES;
}

static guint
get_helper (const SpringSet *set)
{
  return (guint) set->springs.helper.place;
}

static void
set_helper (SpringSet *set, const Car *car, guint option)
{
  (void) car;
  set->springs.helper.place = option;
}

static guint
get_anti_roll (const SpringSet *set)
{
  return set->springs.anti_roll_bar.rate_n_per_mm != 0.0 ? BAR_BY_RATE : BAR_BY_SIZES;
}

static guint
get_link (const SpringSet *set)
{
  return (guint) set->springs.anti_roll_bar.link_carrier;
}

/* Where it is measured is on the other part no more. */
static void
set_link (SpringSet *set, const Car *car, guint option)
{
  set->springs.anti_roll_bar.link_carrier = option;
  if (set->springs.anti_roll_bar.has_link_point)
    springs_set_link_measured (set, car, TRUE);
}

static guint
get_link_point (const SpringSet *set)
{
  return set->springs.anti_roll_bar.has_link_point != 0;
}

static void
set_link_point (SpringSet *set, const Car *car, guint option)
{
  springs_set_link_measured (set, car, option != 0);
}

static guint
get_rod (const SpringSet *set)
{
  return set->rod.bush_spacing_mm > 0.0;
}

static void
set_rod (SpringSet *set, const Car *car, guint option)
{
  (void) car;
  springs_set_rod_inverted (set, option != 0);
}

static const Row rows[N_SPRINGS_CHOICES] = {
  [CHOICE_BAR] = { SPRINGS_BAR,
                   N_ ("Torsion bar by"),
                   N_ ("What is known of the bar: the sizes of its lengths, or its rate"),
                   { N_ ("By its sizes"), N_ ("By its rate") },
                   get_bar,
                   springs_set_bar_kind },
  [CHOICE_COIL] = { SPRINGS_COIL,
                    N_ ("Coil by"),
                    N_ ("What is known of the coil: its rate, its wire and coils, or its "
                        "measured force"),
                    { N_ ("By its rate"), N_ ("By wire and coils"),
                      N_ ("By its measured law") },
                    get_coil,
                    springs_set_coil_kind },
  [CHOICE_HELPER] = { SPRINGS_HELPER,
                      N_ ("Helper stands"),
                      N_ ("On top of the coil between the same seats, or by itself between "
                          "its own"),
                      { N_ ("On the coil"), N_ ("Beside it") },
                      get_helper,
                      set_helper },
  [CHOICE_ANTI_ROLL] = { SPRINGS_ANTI_ROLL,
                         N_ ("Anti-roll bar by"),
                         N_ ("What is known of the bar: its sizes, or its rate"),
                         { N_ ("By its sizes"), N_ ("By its rate") },
                         get_anti_roll,
                         springs_set_anti_roll_kind },
  [CHOICE_LINK] = { SPRINGS_ANTI_ROLL,
                    N_ ("Link on"),
                    N_ ("What the bar’s link takes hold of"),
                    { N_ ("Link on the arm"), N_ ("Link on the strut") },
                    get_link,
                    set_link },
  [CHOICE_LINK_POINT] = { SPRINGS_ANTI_ROLL,
                          N_ ("Link holds"),
                          N_ ("Where the link takes hold: half-way out the arm or at the strut’s "
                              "foot, or at a measured point"),
                          { N_ ("Where it usually holds"), N_ ("At a measured point") },
                          get_link_point,
                          set_link_point },
  [CHOICE_ROD] = { SPRINGS_ROD,
                   N_ ("Strut"),
                   N_ ("A rod with a piston in the tube, or inverted: the tube slides in two "
                       "bushes"),
                   { N_ ("Piston in the tube"), N_ ("Inverted") },
                   get_rod,
                   set_rod },
};

typedef struct {
  SpringsEdit *edit;
  const Row *row;
  GtkWidget *drop_down;
} Choice;

static void
show (gpointer part)
{
  Choice *self = part;
  const SpringSet *set = springs_edit_now (self->edit);

  gtk_widget_set_visible (self->drop_down, springs_has_group (set, self->row->group));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_down), self->row->get (set));
}

static void
on_selected_cb (Choice *self)
{
  const guint option = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->drop_down));
  SpringSet set = *springs_edit_now (self->edit);

  if (springs_edit_is_telling (self->edit) || option == GTK_INVALID_LIST_POSITION ||
      option == self->row->get (&set))
    return;
  self->row->set (&set, springs_edit_car (self->edit), option);
  springs_edit_choose (self->edit, self->drop_down, &set,
                       springs_change_label (self->row->group));
}

static GtkWidget *
new_drop_down (const Row *row)
{
  const char *options[MOST_OPTIONS + 1] = { NULL };
  GtkWidget *drop_down;

  for (gsize i = 0; row->options[i] != NULL; i++)
    options[i] = _ (row->options[i]);
  drop_down = gtk_drop_down_new_from_strings (options);
  gtk_widget_set_tooltip_text (drop_down, _ (row->meaning));
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ (row->name), -1);
  /* its button is what has the focus */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (drop_down)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ (row->name), -1);
  return drop_down;
}

int
springs_choice_add (SpringsEdit *edit, SpringsChoice choice, GtkGrid *grid, int at)
{
  Choice *self = g_new0 (Choice, 1);

  self->edit = edit;
  self->row = &rows[choice];
  self->drop_down = new_drop_down (self->row);
  g_signal_connect_swapped (self->drop_down, "notify::selected",
                            G_CALLBACK (on_selected_cb), self);
  gtk_grid_attach (grid, self->drop_down, 0, at, 3, 1);
  springs_edit_add_part (edit, show, self);
  return 1;
}
