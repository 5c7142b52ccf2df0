/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The excess over the bands, e(c), is at most 0 where a coordinate's change c explains
 * the warnings. A scan outward from c = 0 brackets where it falls to 0 and where it rises
 * again; halving closes on both, because e is no number where nothing assembles. A band
 * may be narrower than a cell of the scan: where three values dip without reaching 0,
 * GSL's minimiser looks between them. */
#include "model/advice/misread-figure.h"
#include "model/advice/plausibility.h"
#include "model/car/car-json-members.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_min.h>
#include <math.h>
#include <string.h>

#define CELL 5.0 /* mm, of the scan */
#define N_CELLS ((int) (MISREAD_REACH / CELL))
#define N_HALVINGS 13 /* of a cell: to a thousandth of a mm */
#define N_DIP_STEPS 20

typedef struct {
  const Car *car;
  MeasuredCorner measured;
  double *coordinate; /* of @measured */
  double was;
  double way; /* of the scan: +1 or −1 */
} Search;

/* Changes, as far as the scan has gone, unsigned. */
typedef struct {
  double from, to;
} Span;

static double *
coordinate_of (Vec3 *point, int axis)
{
  double *const coordinates[] = { &point->x, &point->y, &point->z };

  return coordinates[axis];
}

static double
excess_at (double change, void *data)
{
  Search *s = data;

  *s->coordinate = s->was + s->way * change;
  const double excess = plausibility_excess (s->car, &s->measured);
  *s->coordinate = s->was;
  return excess;
}

static double
edge_between (Search *s, double inside, double outside)
{
  for (int i = 0; i < N_HALVINGS; i++) {
    const double middle = (inside + outside) / 2.0;

    if (excess_at (middle, s) <= 0.0)
      inside = middle;
    else
      outside = middle;
  }
  return inside;
}

/* A change between @low and @high that clears, or NAN. */
static double
look_into_dip (Search *s, double low, const double excess[3])
{
  gsl_function function = { excess_at, s };
  double found = NAN;

  if (!isfinite (excess[0]) || !isfinite (excess[2]))
    return NAN;

  gsl_min_fminimizer *minimizer = gsl_min_fminimizer_alloc (gsl_min_fminimizer_brent);
  if (gsl_min_fminimizer_set_with_values (minimizer, &function, low + CELL, excess[1],
                                          low, excess[0], low + 2.0 * CELL,
                                          excess[2]) == GSL_SUCCESS)
    for (int i = 0; i < N_DIP_STEPS && isnan (found); i++) {
      if (gsl_min_fminimizer_iterate (minimizer) != GSL_SUCCESS)
        break;
      if (gsl_min_fminimizer_f_minimum (minimizer) <= 0.0)
        found = gsl_min_fminimizer_x_minimum (minimizer);
    }
  gsl_min_fminimizer_free (minimizer);
  return found;
}

/* How far on the values go on clearing. */
static double
far_edge (Search *s, double inside)
{
  for (double next = inside + CELL; next < MISREAD_REACH; next += CELL) {
    if (excess_at (next, s) > 0.0)
      return edge_between (s, inside, next);
    inside = next;
  }
  return inside;
}

/* The nearest changes in the scan's way that clear. */
static gboolean
scan (Search *s, Span *span)
{
  double excess[3] = { INFINITY, INFINITY, excess_at (0.0, s) };

  for (int i = 1; i <= N_CELLS; i++) {
    const double here = CELL * i;
    double inside = NAN;

    excess[0] = excess[1];
    excess[1] = excess[2];
    excess[2] = excess_at (here, s);
    if (excess[2] <= 0.0)
      inside = here;
    else if (i > 1 && excess[1] < excess[0] && excess[1] < excess[2])
      inside = look_into_dip (s, here - 2.0 * CELL, excess);
    if (isnan (inside))
      continue;
    span->from = edge_between (s, inside, fmax (inside - 2.0 * CELL, 0.0));
    span->to = far_edge (s, inside);
    return TRUE;
  }
  return FALSE;
}

static gboolean
is_warned (const Car *car)
{
  g_autoptr (GPtrArray) warnings = plausibility_check (car);

  for (guint i = 0; i < warnings->len; i++)
    if (plausibility_is_of_points (warnings->pdata[i]))
      return TRUE;
  return FALSE;
}

/* The whole verdict, with every station of the travel. */
static gboolean
does_clear (const Car *car, PointName point, int axis, double value)
{
  g_autoptr (Car) other = car_without_setups (car);

  *coordinate_of (&other->points[point], axis) = value;
  return !is_warned (other);
}

/* @span as values of a tape, rounded inward. */
static gboolean
round_inward (const Search *s, Span span, double grid, MisreadFigure *figure)
{
  const double a = s->was + s->way * span.from, b = s->was + s->way * span.to;

  figure->least = ceil (fmin (a, b) * grid) / grid;
  figure->most = floor (fmax (a, b) * grid) / grid;
  return figure->least <= figure->most;
}

static gboolean
find_in_reach (const Car *car, MisreadFigure *figure)
{
  Search s = { .car = car, .measured = car_measured_corner (car) };
  gboolean is_found = FALSE;

  figure->change = INFINITY;
  s.coordinate = coordinate_of (&s.measured.at[figure->point], figure->axis);
  s.was = *s.coordinate;
  for (s.way = -1.0; s.way <= 1.0; s.way += 2.0) {
    MisreadFigure one = *figure;
    Span span;

    if (!scan (&s, &span) || span.from >= figure->change)
      continue;
    if (!round_inward (&s, span, 1.0, &one) && !round_inward (&s, span, 10.0, &one))
      continue;
    if (!does_clear (car, one.point, one.axis, one.least) ||
        !does_clear (car, one.point, one.axis, one.most))
      continue;
    one.change = span.from;
    *figure = one;
    is_found = TRUE;
  }
  return is_found;
}

/* A rough look first, which spares most of the whole verdicts. */
static void
try_slip (const Car *car, double was, double value, MisreadHow how, MisreadFigure *figure)
{
  Search s = {
    .car = car, .measured = car_measured_corner (car), .was = was, .way = 1.0
  };
  const double change = fabs (value - was);

  s.coordinate = coordinate_of (&s.measured.at[figure->point], figure->axis);
  if (change == 0.0 || change >= figure->change || excess_at (value - was, &s) > 0.0 ||
      !does_clear (car, figure->point, figure->axis, value))
    return;
  figure->least = figure->most = value;
  figure->change = change;
  figure->how = how;
}

/* A hand writes no 0 in front of another digit. */
static gboolean
is_as_written (const char *digits)
{
  const char *first = digits[0] == '-' ? digits + 1 : digits;

  return first[0] != '0' || !g_ascii_isdigit (first[1]);
}

static gboolean
find_slip (const Car *car, MisreadFigure *figure)
{
  Vec3 point = car->points[figure->point];
  const double was = *coordinate_of (&point, figure->axis);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  figure->change = INFINITY;
  if (was < 0.0 || figure->axis == 0) /* nothing lies below the ground, or on the right */
    try_slip (car, was, -was, MISREAD_SIGN, figure);
  g_ascii_dtostr (digits, sizeof digits, was);
  for (gsize i = 0; i + 1 < strlen (digits); i++) {
    const char left = digits[i], right = digits[i + 1];

    if (!g_ascii_isdigit (left) || !g_ascii_isdigit (right))
      continue;
    digits[i] = right;
    digits[i + 1] = left;
    if (is_as_written (digits))
      try_slip (car, was, g_ascii_strtod (digits, NULL), MISREAD_DIGITS, figure);
    digits[i] = left;
    digits[i + 1] = right;
  }
  return figure->how != MISREAD_OFF;
}

/* Slips first, then the smallest change. */
static int
compare_figures (gconstpointer a, gconstpointer b)
{
  const MisreadFigure *x = a, *y = b;
  const gboolean is_slip = x->how != MISREAD_OFF, is_other_slip = y->how != MISREAD_OFF;

  if (is_slip != is_other_slip)
    return is_slip ? -1 : 1;
  return (x->change > y->change) - (x->change < y->change);
}

static guint
rank (GArray *all, guint n_slips, MisreadFigure found[MISREAD_MOST])
{
  const guint n = all->len <= MISREAD_MOST ? all->len : n_slips == 1 ? 1 : 0;

  g_array_sort (all, compare_figures);
  for (guint i = 0; i < n; i++)
    found[i] = g_array_index (all, MisreadFigure, i);
  return n;
}

guint
misread_figures (const Car *car, MisreadFigure found[MISREAD_MOST])
{
  gsl_error_handler_t *handler = gsl_set_error_handler_off ();
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (MisreadFigure));
  const guint n_figures = is_warned (car) ? 3 * N_POINTS : 0;
  guint n_slips = 0;

  for (guint i = 0; i < n_figures; i++) {
    MisreadFigure figure = { .point = (PointName) (i / 3), .axis = (int) (i % 3) };
    const gboolean is_slip = find_slip (car, &figure);

    n_slips += is_slip ? 1 : 0;
    if (is_slip || (all->len <= MISREAD_MOST && find_in_reach (car, &figure)))
      g_array_append_val (all, figure);
  }
  gsl_set_error_handler (handler);
  return rank (all, n_slips, found);
}

/* Of a slip: path, value, and what was typed. */
static char *
slip_sentence (MisreadHow how,
               gboolean is_first,
               const char *path,
               const char *value,
               const char *was)
{
  if (how == MISREAD_SIGN)
    return g_strdup_printf (
        is_first
            ? _ ("If one figure was misread, measure %s again: with %s mm, its sign the "
                 "other way, in place of %s mm the measured points would look plausible.")
            : _ ("Or measure %s again: with %s mm, its sign the other way, in place of %s "
                 "mm they would, too."),
        path, value, was);
  return g_strdup_printf (
      is_first
          ? _ ("If one figure was misread, measure %s again: with %s mm, its digits the "
               "other way round, in place of %s mm the measured points would look "
               "plausible.")
          : _ ("Or measure %s again: with %s mm, its digits the other way round, in place "
               "of %s mm they would, too."),
      path, value, was);
}

/* Lengths of points are the file's own, in mm whatever is chosen. */
static char *
one_sentence (const Car *car, const MisreadFigure *figure, gboolean is_first)
{
  Vec3 point = car->points[figure->point];
  g_autofree char *path =
      g_strdup_printf ("corner.%s[%d]", car_point_names[figure->point], figure->axis);
  g_autofree char *was = plain_number_text (*coordinate_of (&point, figure->axis));
  g_autofree char *least = plain_number_text (figure->least);
  g_autofree char *most = plain_number_text (figure->most);

  if (figure->how != MISREAD_OFF)
    return slip_sentence (figure->how, is_first, path, least, was);
  if (figure->least == figure->most)
    return g_strdup_printf (
        is_first
            ? _ ("If one figure was misread, measure %s again: with %s mm in place of "
                 "%s mm the measured points would look plausible.")
            : _ ("Or measure %s again: with %s mm in place of %s mm they would, too."),
        path, least, was);
  return g_strdup_printf (
      /* Translators: "corner.ball_joint[1]", two numbers and the number that was typed.
       */
      is_first ? _ ("If one figure was misread, measure %s again: with %s to %s mm in "
                    "place of %s mm the measured points would look plausible.")
               : _ ("Or measure %s again: with %s to %s mm in place of %s mm they would, "
                    "too."),
      path, least, most, was);
}

char *
misread_sentence (const Car *car, const MisreadFigure *found, guint n)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < n; i++) {
    g_autofree char *sentence = one_sentence (car, &found[i], i == 0);

    g_string_append_printf (text, "%s%s", i > 0 ? " " : "", sentence);
  }
  return n > 0 ? g_strdup (text->str) : NULL;
}
