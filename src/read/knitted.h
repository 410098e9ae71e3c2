/* The table that test knitters fill in, into measured pieces.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_KNITTED_H
#define HW_READ_KNITTED_H

#include "core/garment.h"
#include "core/knitted.h"
#include "core/units.h"
#include "read/rows.h"

#define HW_KNITTED_SHEET "Measured" /* the workbook's sheet that holds the table */

enum { HW_KNITTED_MOST = HW_MAX_SIZES * HW_MAX_PIECES * 2 };

/* What the rows of the table speak of. */
typedef struct {
    const hw_sizes *sizes;     /* their names */
    const hw_garment *garment; /* its pieces */
    hw_unit usual;             /* of a length where neither it nor its column has a unit */
} hw_knitted_context;

/*
 * Read the pieces that were measured.
 *
 * Given:     rows      a grid that holds the table: a row with `size` and `piece` side by side,
 *                      then a row for each piece, up to the first empty one
 *            context   at least one size and one piece
 *            arena     owner of all that out points to
 * Returned:  out       at least one piece, in the order of the table; untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (no table, no column for what is needed, nothing filled in, a
 *            width without stitches, a length without rows); HW_ERR_UNKNOWN (a size, piece, fabric
 *            or head); HW_ERR_REPEATED (a head); HW_ERR_SYNTAX (no number, no length);
 *            HW_ERR_RANGE; HW_ERR_LIMIT (more than HW_KNITTED_MOST); each with row and column, as
 *            line and column of err, where there are any; HW_ERR_NOMEM
 * Note:      rows without width and length are passed over, and so are columns with other heads,
 *            unless they look like a slip of the pen; a decimal comma is read only where
 *            semicolons part the values
 */
hw_status hw_knitted_read(const hw_rows *rows, const hw_knitted_context *context, hw_arena *arena,
    hw_knitted_list *out, hw_err *err) HW_MUST_USE;

/*
 * Read separated values as a grid, by the sign that parts the heads of the table.
 *
 * Given:     text      len bytes
 *            arena     owner of the grid
 * Returned:  out       untouched on failure
 * Result:    what hw_rows_csv can say
 */
hw_status hw_knitted_rows(
    const char *text, size_t len, hw_arena *arena, hw_rows *out, hw_err *err) HW_MUST_USE;

#endif
