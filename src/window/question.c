/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/question.h"
#include "window/board-view.h"
#include "window/curve-picker.h"
#include "window/lowering-view.h"

#include <glib/gi18n-lib.h>

static const Question all[] = {
  { "travel", N_ ("Travel"), sw_board_view_new, curve_picker_new, FALSE },
  { "height", N_ ("Height"), sw_lowering_view_new, lowering_tools_new, TRUE },
};

const Question *
questions (guint *n)
{
  *n = G_N_ELEMENTS (all);
  return all;
}
