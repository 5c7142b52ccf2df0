/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Verdicts on what a setup stands on, each by a rule that the reader sees: its threshold
 * and where that comes from. They inform and warn, and prove nothing. */

#pragma once

#include "model/spring/spring-study.h"

typedef struct {
  const char *id; /* stable, for programs: "tower-load" */
  gboolean is_warning;
  char *sentence, *rule; /* translated */
  char *marked;          /* the sentence, behind a sign where it warns */
} SpringVerdict;

/* Of SpringVerdict, owned by the array, warnings first; none where no spring is given or
 * nothing can be assembled. */
GPtrArray *spring_verdicts (const SpringStudy *study, guint setup);
/* What they say, warnings marked, closed by NULL; only the list is the caller's, to be
 * freed with g_free
 * ().
 */
const char **spring_verdict_sentences (const GPtrArray *verdicts);
