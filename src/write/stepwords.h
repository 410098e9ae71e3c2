/* A step of shaping in a knitter's words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_STEPWORDS_H
#define HW_WRITE_STEPWORDS_H

#include "core/buf.h"
#include "core/shape.h"

/* The letters behind a number: "nd" for 2. */
const char *hw_step_ordinal(int n);

/*
 * Append the rows of a change: " in rows 63, 69 and 75", " in row 63 and every 6th row after it, 12
 * times in all, the last in row 129", " in row 25 and then alternately every 5th and 6th row, ...".
 *
 * Given:     rows      count of them, rising, at least one
 */
void hw_step_say_rows(const int *rows, int count, hw_buf *buf);

/* Append the rows at whose starts a group changes: " at the start of rows 165 and 166". */
void hw_step_say_starts(const int *rows, int count, hw_buf *buf);

/* Put rows in order. */
void hw_step_sort_rows(int *rows, int count);

/* The step with which a step is told: itself, or an earlier one that it joins. */
int hw_step_lead(const hw_shape_steps *steps, int which);

/* The visible stitches of a row, all changes of that row made. */
typedef struct {
    int sts, row; /* row as in the steps */
} hw_step_count;

/* The row in which a step and those that are told with it are worked for the last time. */
hw_step_count hw_step_left(const hw_shape_steps *steps, int which);

/*
 * What to do in a step and in those that are told with it, without its row: "decrease 1 stitch at
 * each end in this row and every 6th row after it, 5 times in all"; "bind off 4 stitches at the
 * start of the next 2 rows".
 *
 * Given:     steps     from hw_shape_steps_of
 *            which     of them; one that leads
 *            before    added to a step's row, it makes the number that a knitter counts
 *            arena     owner of the text
 * Returned:  the text; NULL when memory is refused
 */
char *hw_step_words(
    const hw_shape_steps *steps, int which, int before, hw_arena *arena) HW_MUST_USE;

#endif
