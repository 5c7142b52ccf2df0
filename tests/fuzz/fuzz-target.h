/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a fuzzer runs: any bytes at all, which must neither crash nor hang nor leak. */

#pragma once

#include <glib.h>
#include <stddef.h>
#include <stdint.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

/* How many of the inputs loaded and were gone through to the end. */
extern guint64 fuzz_n_loaded;

/* A refusal is one sentence that can be shown. Takes @error. */
void fuzz_check_refusal (GError *error);
