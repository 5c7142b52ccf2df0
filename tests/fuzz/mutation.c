/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mutation.h"

#include <string.h>

#define MOST_BYTES 65536

typedef struct {
  gsize from, length;
} Piece;

static gsize
any_place (const GString *text, GRand *chance)
{
  return text->len == 0 ? 0 : (gsize) g_rand_int_range (chance, 0, (gint32) text->len);
}

static void
put (GString *text, Piece piece, const char *bytes, gsize length)
{
  g_string_erase (text, (gssize) piece.from, (gssize) piece.length);
  g_string_insert_len (text, (gssize) piece.from, bytes, (gssize) length);
}

/* The first piece at or behind a random place that is made of @letters and begins with
 * one of @starts; nothing where there is none. */
static Piece
find_run (const GString *text, const char *starts, const char *letters, GRand *chance)
{
  gsize at = any_place (text, chance);

  at += strcspn (text->str + at, starts);
  return (Piece){ at, strspn (text->str + at, letters) };
}

static Piece
find_number (const GString *text, GRand *chance)
{
  return find_run (text, "-0123456789", "-+.eE0123456789", chance);
}

/* With its quotes. */
static Piece
find_word (const GString *text, GRand *chance)
{
  const gsize near = any_place (text, chance);
  const gsize at = near + strcspn (text->str + near, "\"");

  if (at >= text->len)
    return (Piece){ text->len, 0 };
  const gsize inside = strcspn (text->str + at + 1, "\"");
  return (Piece){ at, MIN (inside + 2, text->len - at) };
}

/* With its line feed. */
static Piece
find_line (const GString *text, GRand *chance)
{
  const gsize near = any_place (text, chance);
  const gsize at = near + strcspn (text->str + near, "\n");
  const gsize from = MIN (at + 1, text->len);

  return (Piece){ from, MIN (strcspn (text->str + from, "\n") + 1, text->len - from) };
}

static void
change_number (GString *text, const GString *other, GRand *chance)
{
  static const char *const telling[] = {
    "0",     "-0",     "1",     "-1",
    "0.5",   "1e-300", "1e300", "-1e300",
    "1e999", "1e-12",  "200",   "1000",
    "-200",  "5e-324", "360",   "9223372036854775807",
    "90",    "-90",    "1e16",  "0.1e-5",
    "10",    "45",     "null",  "1.7976931348623157e308"
  };
  const char *number = telling[g_rand_int_range (chance, 0, G_N_ELEMENTS (telling))];
  (void) other;

  put (text, find_number (text, chance), number, strlen (number));
}

/* By up to a tenth, so that a car mostly stays one. */
static void
shift_number (GString *text, const GString *other, GRand *chance)
{
  const Piece piece = find_number (text, chance);
  const double old = g_ascii_strtod (text->str + piece.from, NULL);
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  (void) other;

  g_ascii_dtostr (number, sizeof number, old * g_rand_double_range (chance, 0.9, 1.1));
  put (text, piece, number, strlen (number));
}

static void
change_word (GString *text, const GString *other, GRand *chance)
{
  const Piece word = find_word (other, chance);

  put (text, find_word (text, chance), other->str + word.from, word.length);
}

static void
drop_line (GString *text, const GString *other, GRand *chance)
{
  (void) other;
  put (text, find_line (text, chance), "", 0);
}

static void
take_line (GString *text, const GString *other, GRand *chance)
{
  const Piece line = find_line (other, chance);
  const Piece here = { find_line (text, chance).from, 0 };

  put (text, here, other->str + line.from, line.length);
}

static void
take_piece (GString *text, const GString *other, GRand *chance)
{
  const gsize from = any_place (other, chance);
  const gsize most = (gsize) g_rand_int_range (chance, 1, 400);
  const Piece here = { any_place (text, chance), 0 };

  put (text, here, other->str + from, MIN (most, other->len - from));
}

static void
drop_piece (GString *text, const GString *other, GRand *chance)
{
  const gsize from = any_place (text, chance);
  const gsize most = (gsize) g_rand_int_range (chance, 1, 40);
  (void) other;

  put (text, (Piece){ from, MIN (most, text->len - from) }, "", 0);
}

static void
set_byte (GString *text, const GString *other, GRand *chance)
{
  static const char telling[] = "{}[]\",:.-+eE09 \\u\n\r\t\x7f\x80\xc3\xed\xf4\xff";
  (void) other;

  if (text->len > 0) /* the closing zero is among them */
    text->str[any_place (text, chance)] =
        telling[g_rand_int_range (chance, 0, sizeof telling)];
}

static void
flip_bit (GString *text, const GString *other, GRand *chance)
{
  (void) other;
  if (text->len > 0)
    text->str[any_place (text, chance)] ^= (char) (1 << g_rand_int_range (chance, 0, 8));
}

static void
cut_short (GString *text, const GString *other, GRand *chance)
{
  (void) other;
  g_string_truncate (text, any_place (text, chance));
}

void
mutate (GString *text, const GString *other, guint n, GRand *chance)
{
  static void (*const ways[]) (GString *, const GString *, GRand *) = {
    shift_number, shift_number, shift_number, shift_number,  shift_number,
    shift_number, shift_number, shift_number, change_number, change_number,
    change_word,  change_word,  drop_line,    take_line,     take_piece,
    drop_piece,   set_byte,     flip_bit,     cut_short
  };

  for (guint i = 0; i < n && text->len < MOST_BYTES; i++)
    ways[g_rand_int_range (chance, 0, G_N_ELEMENTS (ways))](text, other, chance);
}
