/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/title-block.h"

#include <glib/gi18n-lib.h>

TitleBlock
title_block_for (const Car *car, const CarSetup *setup, const char *date)
{
  return (TitleBlock){ .car = car->name,
                       .setup = setup->name,
                       .mount = setup->mount,
                       .lowering = setup->lowering_mm,
                       .toe = setup->toe,
                       .date = date };
}

const char *
caution_text (void)
{
  return _ ("Computed from measured points, each with its error; steel, welds and bearings "
            "are not judged. Check clearances on the car through full travel and lock, and "
            "have the alignment measured before driving.");
}
