/* What measured pieces change: two plans side by side, as tables.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_LEARNED_H
#define HW_WRITE_LEARNED_H

#include "write/cells.h"

/*
 * Lay out what changes from one plan of a project to another: gauges, counts, widths.
 *
 * Given:     before    made without the measured pieces
 *            after     of the same project with them: the same sizes and pieces
 *            arena     owner of the tables
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_learned_tables(
    const hw_plan *before, const hw_plan *after, hw_arena *arena, hw_tables *out) HW_MUST_USE;

#endif
