/* What the sizes of a piece have in common: the rows that they begin with, told once.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_ROWSHARE_H
#define HW_WRITE_ROWSHARE_H

#include "write/rowwords.h"

/* The blocks of one piece, and the runs of each; more than one size has something to share. */
typedef struct {
    const hw_row_block *blocks;
    const hw_row_runs *runs; /* [count] */
    int count;
    const char **words; /* of each run that is shared */
    int shared;         /* runs at the beginning that are the same in all sizes */
} hw_row_sizes;

/*
 * Gather the blocks of the piece that a list begins with.
 *
 * Given:     blocks    count of them, at least one; those of a piece follow each other
 *            arena     owner of the lists
 * Returned:  out       its count says how many blocks it took
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      a run is shared where its rows, sides, dial and words are the same, and each size has
 *            the needles and stitches that it began with; numbers of stitches may differ in the
 *            words and are then written as a pattern does, "92 (96, 100)"
 */
hw_status hw_row_sizes_of(
    const hw_row_block *blocks, int count, hw_arena *arena, hw_row_sizes *out) HW_MUST_USE;

/* The row behind those that are shared, as counted in all sizes. */
int hw_row_sizes_next(const hw_row_sizes *sizes);

/* Whether a finding is on a row that all sizes share, and the same in all of them. */
bool hw_row_sizes_finding(const hw_row_sizes *sizes, const hw_row_finding *finding);

#endif
