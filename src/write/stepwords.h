/* A step of shaping in a knitter's words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_STEPWORDS_H
#define HW_WRITE_STEPWORDS_H

#include "core/shape.h"

/* The letters behind a number: "nd" for 2. */
const char *hw_step_ordinal(int n);

/*
 * What to do in a step, without its row: "decrease 1 stitch at each end in this row and every 6th
 * row after it, 5 times in all".
 *
 * Given:     steps     from hw_shape_steps_of
 *            which     of them
 *            arena     owner of the text
 * Returned:  the text; NULL when memory is refused
 */
char *hw_step_words(const hw_shape_steps *steps, int which, hw_arena *arena) HW_MUST_USE;

#endif
