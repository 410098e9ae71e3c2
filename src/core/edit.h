/* Changes to a drawn figure: mirrored, shifted, spaced, joined, and with its long floats caught.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_EDIT_H
#define HW_CORE_EDIT_H

#include "core/motif.h"

enum { HW_EDIT_LEAST_FLOAT = 2 }; /* stitches: shorter ones cannot be had by single stitches */

/*
 * All of these, if not said otherwise:
 *
 * Given:     chart     within the limits of charts; it stays as it is
 *            arena     owner of the new cells
 * Returned:  out       a new chart under the same name; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_LIMIT (more columns or rows than a chart may have)
 */

/* Left and right change places. */
hw_status hw_edit_mirror(const hw_chart *chart, hw_arena *arena, hw_chart *out) HW_MUST_USE;

/* Top and bottom change places. */
hw_status hw_edit_upside_down(const hw_chart *chart, hw_arena *arena, hw_chart *out) HW_MUST_USE;

/* Move the repeat so many columns to the right and rows up; what goes out comes in again at the
 * other side. Numbers below 0 move it left and down. The gap is to be drawn in before. */
hw_status hw_edit_shift(
    const hw_chart *chart, int columns, int rows, hw_arena *arena, hw_chart *out) HW_MUST_USE;

/* Draw the gap into the chart: so many columns of background at its right, 0 or more. */
hw_status hw_edit_space(
    const hw_chart *chart, int gap, hw_arena *arena, hw_chart *out, hw_err *err) HW_MUST_USE;

/* Two repeats one above the other, plain rows between them, 0 or more. Each is repeated until both
 * are equally wide. The name is the lower one's. */
typedef struct {
    const hw_chart *above, *below; /* gaps drawn in */
    int plain_rows;
} hw_edit_pile;

hw_status hw_edit_stack(
    const hw_edit_pile *pile, hw_arena *arena, hw_chart *out, hw_err *err) HW_MUST_USE;

/* Two repeats side by side, gaps drawn in. The lower one gets rows of background below and above
 * until it is as high; of an odd number one more lies above. The name is the left one's. */
hw_status hw_edit_beside(const hw_chart *left, const hw_chart *right, hw_arena *arena,
    hw_chart *out, hw_err *err) HW_MUST_USE;

/*
 * Break long floats by single stitches of the other yarn.
 *
 * Given:     chart     a whole repeat, its gap drawn in: floats are taken round from repeat to
 *                      repeat
 *            longest   stitches that a float may have, HW_EDIT_LEAST_FLOAT or more
 * Returned:  out       no float of either yarn is longer
 *            added     how many stitches were changed: as few as it takes; may be NULL
 * Result:    also HW_ERR_RANGE (longest is too small)
 * Note:      rows of one colour have no floats and stay. In each run the stitches stand where few
 *            of them are right above or below one of the next row, and then as evenly as they can.
 *            That is looked for row by row until no row alone can be bettered.
 */
typedef struct {
    const hw_chart *chart;
    int longest;
} hw_edit_catching;

hw_status hw_edit_catch(const hw_edit_catching *task, hw_arena *arena, hw_chart *out, int *added,
    hw_err *err) HW_MUST_USE;

#endif
