/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sheets of paper, upright, in points of 1/72 inch. */

#pragma once

typedef struct {
  double width, height;
} PaperSize;

/* ISO 216, 210 × 297 mm. */
#define PAPER_A4_WIDTH 595.276
#define PAPER_A4_HEIGHT 841.890
static inline PaperSize
paper_a4 (void)
{
  return (PaperSize){ PAPER_A4_WIDTH, PAPER_A4_HEIGHT };
}

/* 8½ × 11 inches. */
static inline PaperSize
paper_letter (void)
{
  return (PaperSize){ 612.0, 792.0 };
}
