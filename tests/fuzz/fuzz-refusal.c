/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fuzz-target.h"

#include "model/car/car-json.h"

guint64 fuzz_n_loaded;

void
fuzz_check_refusal (GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == FILE_REFUSAL);
  g_assert_cmpstr (error->message, !=, "");
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_error_free (error);
}
