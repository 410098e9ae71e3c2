/* Changes of one stitch at even distances, where rounding leaves them a row or two of freedom.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_EVENROWS_H
#define HW_CORE_EVENROWS_H

#include "core/err.h"
#include "core/mem.h"

/* Rows of an edge and what their insets may be. */
typedef struct {
    int rows;
    const int *low, *high; /* [rows] the insets that a row may have */
    const bool *fixed;     /* [rows] those that stay as they are; the others change by a stitch at
                              most from each to the next */
} hw_even_rows;

/*
 * Moves changes so that neighbouring distances differ by a row at most, as by division with
 * remainder, and are told in few runs of one distance, or of a few that take turns; where an edge
 * bends, so that they differ little.
 *
 * Given:     rows
 *            arena     owner of working room
 *            inset     [rows] within [low, high]
 * Returned:  inset     the same changes in the same order, each moved by two rows at most, and
 *                      within [low, high]; the first and the last row of each part between fixed
 *                      rows keep theirs
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_even_rows_spread(const hw_even_rows *rows, hw_arena *arena, int *inset) HW_MUST_USE;

#endif
