/* Division with remainder, as knitters meet it: so many changes over so many stitches or rows.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/spread.h"

hw_status hw_spread_steps(int count, int over, hw_spread *out, hw_err *err)
{
    if (over < 1 || over > HW_MAX_STS + HW_MAX_ROWS) {
        return hw_err_set(err, HW_ERR_RANGE,
            "changes cannot be spread over %d stitches or rows: the number must lie between 1 and "
            "%d",
            over, HW_MAX_STS + HW_MAX_ROWS);
    }
    if (count < 1 || count > over) {
        return hw_err_set(err, HW_ERR_RANGE,
            "%d changes cannot be spread over %d stitches or rows: there must be at least one, and "
            "no more than there are stitches or rows",
            count, over);
    }
    *out = (hw_spread){
        .count = count,
        .over = over,
        .every = over / count,
        .times = count - over % count,
        .more_times = over % count,
    };
    return HW_OK;
}

hw_status hw_spread_positions(const hw_spread *spread, hw_arena *arena, int **out)
{
    int *positions = hw_arena_get(arena, (size_t)spread->count, sizeof *positions);
    if (positions == NULL) {
        return HW_ERR_NOMEM;
    }
    for (int k = 0; k < spread->count; k++) {
        positions[k] = (2 * k + 1) * spread->over / (2 * spread->count);
    }
    *out = positions;
    return HW_OK;
}
