/* Even spreads: n changes over m stitches or rows, gaps differing by at most one.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_SPREAD_H
#define HW_CORE_SPREAD_H

#include "core/err.h"
#include "core/mem.h"

/* "every `every`th `times` times, then every (`every` + 1)th `more_times` times" */
typedef struct {
    int count, over;
    int every, times;
    int more_times;
} hw_spread;

/*
 * Division with remainder: count equal steps over a number of stitches or rows.
 *
 * Given:     count     changes, [1, over]
 *            over      stitches or rows, [1, HW_MAX_STS + HW_MAX_ROWS]
 * Returned:  out       times * every + more_times * (every + 1) = over; untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE
 * Note:      [S2] [E2] in data/SOURCES.md
 */
hw_status hw_spread_steps(int count, int over, hw_spread *out, hw_err *err) HW_MUST_USE;

/*
 * Where the changes fall in a flat row: half a gap before the first and after the last.
 *
 * Given:     spread    from hw_spread_steps
 *            arena     owner of the list
 * Returned:  out       count positions, rising, in [0, over): so many plain stitches stand before
 *                      the change; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      position k is down((2k + 1) over / (2 count)), so gaps differ by at most one
 */
hw_status hw_spread_positions(const hw_spread *spread, hw_arena *arena, int **out) HW_MUST_USE;

#endif
