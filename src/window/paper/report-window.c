/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/report-window.h"
#include "window/curves/curve-picker.h"
#include "window/paper/paper-window.h"
#include "window/paper/report-pages.h"

#include <glib/gi18n-lib.h>

#define SPACE 12

typedef struct {
  PaperWindow *paper;
  SwBench *bench;
  ReportPages *pages; /* the paper window's */
  SwReportPreview *preview;
  GtkWidget *parts[N_REPORT_PARTS];
  GtkWidget *previous, *next, *curves, *cases;
  GtkLabel *number;
  guint page;
} ReportWindow;

/* "Page 2 of 7: Setups side by side" */
static char *
page_words (const ReportWindow *self)
{
  const guint n = report_n_pages (self->pages->press);

  if (n == 0)
    return g_strdup (_ ("Choose what to include."));
  return g_strdup_printf (_ ("Page %u of %u: %s"), self->page + 1, n,
                          report_part_name (
                              report_page_part (self->pages->press, self->page)));
}

static void
show_page (ReportWindow *self, guint page)
{
  const guint n = report_n_pages (self->pages->press);
  g_autofree char *words = NULL;

  self->page = MIN (page, n > 0 ? n - 1 : 0);
  words = page_words (self);
  gtk_label_set_label (self->number, words);
  gtk_widget_set_sensitive (self->previous, self->page > 0);
  gtk_widget_set_sensitive (self->next, self->page + 1 < n);
  paper_window_set_ready (self->paper, n > 0);
  sw_report_preview_set_page (self->preview, self->page);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->preview),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

/* The first page of @part, or where that has none the page in hand. */
static guint
page_of (const ReportWindow *self, ReportPart part)
{
  for (guint page = 0; page < report_n_pages (self->pages->press); page++)
    if (report_page_part (self->pages->press, page) == part)
      return page;
  return self->page;
}

static void
on_part_toggled_cb (GtkCheckButton *check, ReportWindow *self)
{
  ReportPart part = 0;

  while (self->parts[part] != GTK_WIDGET (check))
    part++;
  self->pages->report.has[part] = gtk_check_button_get_active (check);
  gtk_widget_set_sensitive (self->curves, self->pages->report.has[REPORT_CURVES]);
  gtk_widget_set_sensitive (self->cases, self->pages->report.has[REPORT_LOADS]);
  report_pages_lay_out (self->pages);
  show_page (self, page_of (self, part));
}

static void
on_date_toggled_cb (GtkCheckButton *check, ReportWindow *self)
{
  self->pages->report.date =
      gtk_check_button_get_active (check) ? self->pages->today : NULL;
  report_pages_lay_out (self->pages);
  show_page (self, self->page);
}

static void
on_paper_selected_cb (GtkDropDown *papers, GParamSpec *spec, ReportWindow *self)
{
  (void) spec;
  self->pages->report.paper =
      gtk_drop_down_get_selected (papers) == 1 ? paper_letter () : paper_a4 ();
  report_pages_lay_out (self->pages);
  show_page (self, self->page);
}

static void
on_case_selected_cb (GtkDropDown *drop_down, GParamSpec *spec, ReportWindow *self)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n = car_load_cases (self->pages->car, cases);
  const guint chosen = gtk_drop_down_get_selected (drop_down);

  (void) spec;
  if (chosen >= n)
    return;
  self->pages->report.load_case = cases[chosen];
  report_pages_lay_out (self->pages);
  show_page (self, page_of (self, REPORT_LOADS));
}

/* The curves are those of the window behind, which has the same picker. */
static void
on_chosen_cb (SwBench *bench, ReportWindow *self)
{
  self->pages->report.choice = sw_bench_get_choice (bench);
  report_pages_lay_out (self->pages);
  show_page (self, page_of (self, REPORT_CURVES));
}

static void
on_previous_clicked_cb (ReportWindow *self)
{
  if (self->page > 0)
    show_page (self, self->page - 1);
}

static void
on_next_clicked_cb (ReportWindow *self)
{
  show_page (self, self->page + 1);
}

static gboolean
turn_page (GtkWidget *widget, GVariant *forward, gpointer data)
{
  (void) widget;
  if (g_variant_get_boolean (forward))
    on_next_clicked_cb (data);
  else
    on_previous_clicked_cb (data);
  return TRUE;
}

static void
add_turning_keys (ReportWindow *self, GtkWidget *window)
{
  static const struct {
    guint key;
    gboolean is_forward;
  } keys[] = { { GDK_KEY_Page_Up, FALSE },
               { GDK_KEY_Page_Down, TRUE },
               { GDK_KEY_KP_Page_Up, FALSE },
               { GDK_KEY_KP_Page_Down, TRUE } };
  GtkEventController *controller = gtk_shortcut_controller_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++) {
    GtkShortcut *shortcut =
        gtk_shortcut_new (gtk_keyval_trigger_new (keys[i].key, 0),
                          gtk_callback_action_new (turn_page, self, NULL));

    gtk_shortcut_set_arguments (shortcut, g_variant_new_boolean (keys[i].is_forward));
    gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (controller), shortcut);
  }
  gtk_widget_add_controller (window, controller);
}

static GtkWidget *
new_part (ReportWindow *self, ReportPart part)
{
  GtkWidget *check = gtk_check_button_new_with_label (report_part_name (part));
  const gboolean is_given = report_part_is_given (&self->pages->report, part);

  self->parts[part] = check;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), self->pages->report.has[part]);
  gtk_widget_set_sensitive (check, is_given);
  if (!is_given)
    gtk_widget_set_tooltip_text (check, _ ("No setup shown has springs yet."));
  g_signal_connect (check, "toggled", G_CALLBACK (on_part_toggled_cb), self);
  return check;
}

/* A drop-down below its name. */
static GtkWidget *
add_choice (GtkWidget *box, const char *name, const char *const *options, guint chosen)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);
  GtkWidget *drop_down = gtk_drop_down_new_from_strings (options);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0);
  gtk_widget_set_margin_top (label, SPACE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), drop_down);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), chosen);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (drop_down),
                                  GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), drop_down);
  return drop_down;
}

static GtkWidget *
new_cases (ReportWindow *self, GtkWidget *box)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n = car_load_cases (self->pages->car, cases);
  const char *names[LOAD_CASES_MOST + 1] = { NULL };
  GtkWidget *drop_down;

  for (gsize i = 0; i < n; i++)
    names[i] = car_load_case_title (cases[i].name);
  drop_down = add_choice (box, _ ("_Load case"), names, 0);
  g_signal_connect (drop_down, "notify::selected", G_CALLBACK (on_case_selected_cb),
                    self);
  gtk_widget_set_sensitive (drop_down, self->pages->report.has[REPORT_LOADS]);
  return drop_down;
}

static void
add_paper (ReportWindow *self, GtkWidget *box)
{
  const char *const papers[] = { _ ("A4"), C_ ("paper size", "Letter"), NULL };
  const gboolean is_letter =
      g_str_equal (report_paper.size (self->pages), GTK_PAPER_NAME_LETTER);
  GtkWidget *drop_down = add_choice (box, _ ("P_aper"), papers, is_letter ? 1 : 0);
  GtkWidget *date = gtk_check_button_new_with_label (_ ("Today's date on the pages"));

  g_signal_connect (drop_down, "notify::selected", G_CALLBACK (on_paper_selected_cb),
                    self);
  gtk_widget_set_margin_top (date, SPACE);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (date), TRUE);
  g_signal_connect (date, "toggled", G_CALLBACK (on_date_toggled_cb), self);
  gtk_box_append (GTK_BOX (box), date);
}

static GtkWidget *
new_choices (ReportWindow *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, SPACE / 2);
  GtkWidget *heading = gtk_label_new (_ ("Include"));

  gtk_widget_add_css_class (box, "report-choices");
  gtk_widget_add_css_class (heading, "heading");
  gtk_label_set_xalign (GTK_LABEL (heading), 0.0);
  gtk_box_append (GTK_BOX (box), heading);
  for (ReportPart part = 0; part < N_REPORT_PARTS; part++)
    gtk_box_append (GTK_BOX (box), new_part (self, part));
  self->curves = curve_picker_new (self->bench);
  gtk_widget_set_margin_top (self->curves, SPACE);
  gtk_box_append (GTK_BOX (box), self->curves);
  self->cases = new_cases (self, box);
  add_paper (self, box);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);
  return scrolled;
}

static GtkWidget *
new_turner (const char *icon, const char *name, GCallback clicked, ReportWindow *self)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  return button;
}

/* The page, and below it which one it is. */
static GtkWidget *
new_pages (ReportWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, SPACE);
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, SPACE);
  GtkWidget *number = gtk_label_new (""), *preview = sw_report_preview_new (self->pages);

  self->number = GTK_LABEL (number);
  self->preview = SW_REPORT_PREVIEW (preview);
  self->previous = new_turner ("go-previous-symbolic", _ ("Previous page"),
                               G_CALLBACK (on_previous_clicked_cb), self);
  self->next = new_turner ("go-next-symbolic", _ ("Next page"),
                           G_CALLBACK (on_next_clicked_cb), self);
  gtk_label_set_ellipsize (self->number, PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (number, TRUE);
  gtk_box_append (GTK_BOX (bar), self->previous);
  gtk_box_append (GTK_BOX (bar), number);
  gtk_box_append (GTK_BOX (bar), self->next);
  gtk_widget_add_css_class (box, "report-pages");
  gtk_box_append (GTK_BOX (box), preview);
  gtk_box_append (GTK_BOX (box), bar);
  return box;
}

static void
free_window (gpointer data)
{
  ReportWindow *self = data;

  g_signal_handlers_disconnect_by_data (self->bench, self);
  g_object_unref (self->bench);
  g_free (self);
}

void
report_window_open (GtkWindow *parent, SwBench *bench)
{
  ReportWindow *self = g_new0 (ReportWindow, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWindow *window;

  self->bench = g_object_ref (bench);
  self->pages = report_pages_new (bench);
  self->paper = paper_window_new (parent, _ ("Report"), &report_paper, self->pages);
  window = paper_window_get_window (self->paper);
  gtk_box_append (GTK_BOX (box), new_choices (self));
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (box), new_pages (self));
  paper_window_set_content (self->paper, box);
  add_turning_keys (self, GTK_WIDGET (window));
  g_signal_connect (bench, "chosen", G_CALLBACK (on_chosen_cb), self);
  g_object_set_data_full (G_OBJECT (window), "report-window", self, free_window);
  g_object_set (window, "default-width", 960, NULL);
  show_page (self, 0);
  gtk_window_present (window);
}
