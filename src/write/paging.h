/* Where the pages of a table begin, so that what belongs together stays on one.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_PAGING_H
#define HW_WRITE_PAGING_H

#include "write/cells.h"

/* A table and the room that it is laid into; one measure for all heights. */
typedef struct {
    const hw_table *table;
    const double *heights; /* of each row */
    double page;           /* what a page holds besides the rows that repeat, above 0 */
} hw_paging;

/*
 * Find the rows that begin a page after the first.
 *
 * Given:     paging    see above
 * Returned:  breaks    [table->rows]: rows, rising
 *            how many
 * Note:      a section and the rows below it stay on one page where a page holds them. One that no
 *            page holds is parted, but not behind its heading and not before a row that goes on
 *            from the one above it: its first cell is empty, or indented. A piece begins a page.
 */
int hw_paging_breaks(const hw_paging *paging, int *breaks);

#endif
