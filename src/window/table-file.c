/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/table-file.h"
#include "window/bench/chooser.h"
#include "window/bench/loader.h"

#include "model/choice/choice-table.h"
#include "model/file/file-replace.h"
#include "model/load/joint-table.h"
#include "model/load/spring-table.h"
#include "model/study/travel-gap.h"
#include "model/study/travel-table.h"

#include <glib/gi18n-lib.h>

static const Car *
car_of (SwBench *bench)
{
  return sw_document_get_car (sw_bench_get_document (bench));
}

static void
write_travel (SwBench *bench, GString *text)
{
  g_autoptr (GArray) gaps = travel_gaps_new (); /* the rows themselves are empty */

  travel_table_write (car_of (bench), sw_bench_get_setup_index (bench),
                      travel_steps_of_car (car_of (bench)), TRAVEL_TABLE_CSV, text, gaps);
}

static void
write_springs (SwBench *bench, GString *text)
{
  spring_table_write (sw_bench_get_springs (bench), sw_bench_get_setup_index (bench),
                      travel_steps_of_car (car_of (bench)), TABLE_CSV, text);
}

static void
write_answers (SwBench *bench, GString *text)
{
  SwChooser *chooser = sw_chooser_of (bench);

  choice_table_write (&(ChoiceTable){ .car = car_of (bench),
                                      .question = sw_chooser_get_question (chooser),
                                      .answers = sw_chooser_get_answers (chooser) },
                      TABLE_CSV, text);
}

/* Of the setup in hand under the case that is looked at. */
static void
write_loads (SwBench *bench, GString *text)
{
  SwLoader *loader = sw_loader_of (bench);
  const LoadStudy *study = sw_loader_get_study (loader);
  const guint setup = sw_bench_get_setup_index (bench);
  CarLoadCase cases[LOAD_CASES_MOST];

  car_load_cases (car_of (bench), cases);
  joint_table_write (&(JointTable){ sw_bench_get_springs (bench), setup,
                                    load_study_mode (study, setup),
                                    &cases[sw_loader_get_case (loader)],
                                    load_study_in_hand (study),
                                    car_setup_rod (car_of (bench), setup).diameter_mm >
                                            0.0
                                        ? &study->bent[setup]
                                        : NULL },
                     TABLE_CSV, text);
}

char *
table_file_text (SwBench *bench, const char *question)
{
  GString *text = g_string_new (NULL);

  if (g_str_equal (question, "springs"))
    write_springs (bench, text);
  else if (g_str_equal (question, "loads"))
    write_loads (bench, text);
  else if (g_str_equal (question, "mount"))
    write_answers (bench, text);
  else
    write_travel (bench, text);
  return g_string_free (text, FALSE);
}

typedef struct {
  GtkWindow *parent;
  SwBench *bench;
  char *question;
} Asked;

static void
free_asked (gpointer data, GClosure *closure)
{
  Asked *asked = data;

  (void) closure;
  g_object_unref (asked->bench);
  g_free (asked->question);
  g_free (asked);
}

static void
save (const Asked *asked, GFile *file)
{
  g_autofree char *text = table_file_text (asked->bench, asked->question);
  g_autoptr (GError) error = NULL;

  if (file_replace_at (file, text, strlen (text), &error))
    return;
  g_autofree char *sentence =
      g_strdup_printf (_ ("The table was not saved: %s"), error->message);
  gtk_widget_activate_action (GTK_WIDGET (asked->parent), "win.tell", "s", sentence);
}

static void
on_response_cb (GtkNativeDialog *native, int response, const Asked *asked)
{
  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (native));

    save (asked, file);
  }
  g_object_unref (native);
}

void
table_file_ask (GtkWindow *parent, SwBench *bench, const char *question)
{
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (_ ("Save the table"), parent,
                                   GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  g_autofree char *name = g_strdup_printf ("%s – %s.csv", car_of (bench)->name,
                                           sw_bench_get_setup (bench)->name);
  Asked *asked = g_new (Asked, 1);

  *asked = (Asked){ parent, g_object_ref (bench), g_strdup (question) };
  g_strdelimit (name, "/\n\r", '-');
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (native), name);
  g_signal_connect_data (native, "response", G_CALLBACK (on_response_cb), asked,
                         free_asked, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}
