/* The rows of one edge: whole stitches that keep to a drawn line, with changes where they can be.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_EDGEROWS_H
#define HW_CORE_EDGEROWS_H

#include "core/err.h"
#include "core/mem.h"

/* What may happen at the leading edge, at which the first of all rows begins, at the start of a
 * row. */
typedef enum {
    HW_ROW_PLAIN,  /* nothing */
    HW_ROW_SINGLE, /* one stitch, taken off or added */
    HW_ROW_GROUP,  /* any number: the row begins at this edge */
    HW_ROW_SPARE,  /* as in a group, but only where nothing else keeps to the line */
    HW_ROW_HOLD,   /* any number left unworked: the row ends at this edge */
    HW_ROW_KIND_COUNT
} hw_row_kind;

/* An edge's wanted inset in stitches: a line that goes over the rows, with steps across. Halves of
 * rows are counted from the bottom: row r has 2 r and 2 r + 1. */
typedef struct {
    int rows;
    const double *at;           /* [2 rows + 1] where each half begins, and where the last ends */
    const double *least, *most; /* [2 rows] within each half, both ends included */
    const double *step_least, *step_most; /* [2 rows] of the largest step across in each half, both
                                             its ends; alike where there is none */
    const hw_row_kind *may;               /* [rows] */
    const bool *right_side;               /* [rows]; NULL: single stitches may change in any row */
    bool starts_anywhere; /* the first row's inset is free; else it changes from 0 */
    bool follows;         /* not the leading edge: the same, with groups a row later */
} hw_edge_rows;

/*
 * The inset of every row.
 *
 * Given:     edge      each row's line goes on where that of the row before ends; rows that may
 *                      have a group, or hold, come after at most one row that may not
 *            arena     working room, given back before the return
 * Returned:  inset     [rows]; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (rows that break the condition above)
 * Note:      every row's inset is within half a stitch of what is wanted somewhere in that row,
 *            where single stitches serve; where groups are needed, at most half a row above or
 *            below that row. Of an edge and its mirror image one leads and one follows: they are
 *            alike in each row where single stitches serve, and in groups but for that row.
 */
hw_status hw_edge_rows_find(const hw_edge_rows *edge, hw_arena *arena, int *inset) HW_MUST_USE;

#endif
