/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/file-refusal.h"

G_DEFINE_QUARK (strutwright - file - refusal, file_refusal)
