/* The shaping of a run of rows, in sentences.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_SHAPEWORDS_H
#define HW_WRITE_SHAPEWORDS_H

#include "core/buf.h"
#include "core/rowsteps.h"

/*
 * Append what is bound off, decreased and so on in a run, sentence by sentence.
 *
 * Given:     plan, run belong together
 *            arena     for working room
 *            buf       what was said of the run before
 * Returned:  false when memory is refused
 */
bool hw_shapewords_run(
    const hw_rowplan *plan, const hw_row_run *run, hw_arena *arena, hw_buf *buf) HW_MUST_USE;

#endif
