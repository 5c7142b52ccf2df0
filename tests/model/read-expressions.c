/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads lengths as people type them, one a line, and prints what each is in mm. */

#include "model/words/typed-expression.h"

#include <locale.h>
#include <stdio.h>
#include <string.h>

int
main (void)
{
  char line[4096];

  setlocale (LC_ALL, "");
  while (fgets (line, sizeof line, stdin) != NULL) {
    g_autofree char *refusal = NULL;
    char digits[G_ASCII_DTOSTR_BUF_SIZE];
    double value;

    line[strcspn (line, "\n")] = '\0';
    if (typed_expression_read (line, UNIT_LENGTH, &value, &refusal) == EXPRESSION_VALUE)
      puts (g_ascii_dtostr (digits, sizeof digits, value));
    else
      puts (refusal != NULL ? refusal : "empty");
  }
  return 0;
}
