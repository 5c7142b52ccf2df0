/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/question.h"
#include "window/curves/board-view.h"
#include "window/curves/curve-picker.h"
#include "window/curves/lowering-view.h"
#include "window/loads/loads-panel.h"
#include "window/loads/loads-view.h"
#include "window/mount/answers-view.h"
#include "window/mount/mount-view-page.h"
#include "window/springs/springs-panel.h"
#include "window/springs/springs-view.h"

#include <glib/gi18n-lib.h>

static const Question all[] = {
  { .name = "travel",
    .title = N_ ("Travel"),
    .create = board_page_new,
    .create_tools = curve_picker_new,
    .subject = CARD_CURVES },
  { .name = "height",
    .title = N_ ("Height"),
    .create = sw_lowering_view_new,
    .create_tools = lowering_tools_new,
    .subject = CARD_LOWERING,
    .ground_fixed = TRUE },
  { .name = "mount",
    .title = N_ ("Mount"),
    .create = mount_page_new,
    .create_tools = mount_tools_new,
    .strip_title = N_ ("Plates"),
    .create_strip = sw_answers_view_new,
    .create_strip_tools = answers_tools_new,
    .subject = CARD_MOUNT_MAP,
    .is_late = TRUE },
  { .name = "springs",
    .title = N_ ("Springs"),
    .create = springs_page_new,
    .strip_title = N_ ("What It Stands On"),
    .create_strip = sw_springs_panel_new,
    .subject = CARD_SPRINGS,
    .is_late = TRUE },
  { .name = "loads",
    .title = N_ ("Loads"),
    .create = loads_page_new,
    .strip_title = N_ ("Joints"),
    .create_strip = sw_loads_panel_new,
    .subject = CARD_LOADS,
    .shows_forces = TRUE,
    .is_late = TRUE },
};

const Question *
questions (guint *n)
{
  *n = G_N_ELEMENTS (all);
  return all;
}

const Question *
question_named (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (g_strcmp0 (name, all[i].name) == 0)
      return &all[i];
  return NULL;
}

typedef struct {
  QuestionPart create;
  SwBench *bench;
  gulong on_map;
} Late;

static void
free_late (gpointer data)
{
  Late *late = data;

  g_object_unref (late->bench);
  g_free (late);
}

static void
on_map_cb (GtkWidget *box)
{
  Late *late = g_object_get_data (G_OBJECT (box), "late");
  GtkWidget *part = late->create (late->bench);

  g_signal_handler_disconnect (box, late->on_map);
  gtk_box_append (GTK_BOX (box), part);
}

static GtkWidget *
late_part (QuestionPart create, SwBench *bench)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  Late *late = g_new (Late, 1);

  late->create = create;
  late->bench = g_object_ref (bench);
  g_object_set_data_full (G_OBJECT (box), "late", late, free_late);
  late->on_map = g_signal_connect (box, "map", G_CALLBACK (on_map_cb), NULL);
  return box;
}

GtkWidget *
question_part (const Question *question, QuestionPart create, SwBench *bench)
{
  if (create == NULL)
    return gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  return question->is_late ? late_part (create, bench) : create (bench);
}
