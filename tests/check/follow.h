/* Steps back into rows, so that they can be held against the rows that they were made of.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_FOLLOW_H
#define HW_TESTS_FOLLOW_H

#include "core/shape.h"

enum { FOLLOW_MORE = 2 }; /* rows in which held stitches come back, at most */

/*
 * Steps back into rows.
 *
 * Given:     task, steps  belong together; each step's rows lie in [0, task->rows + FOLLOW_MORE);
 *                         one at least is HW_STEP_END
 *            arena     owner of the rows
 * Returned:  out       its rows up to the last end, those too in which held stitches come back;
 *                      untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status follow_steps(const hw_shape_task *task, const hw_shape_steps *steps, hw_arena *arena,
    hw_shape *out) HW_MUST_USE;

#endif
