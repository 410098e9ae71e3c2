/* A filled-in workbook (.xlsx) or CSV table, read back from disk.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_BOOKROWS_H
#define HW_SHELL_BOOKROWS_H

#include "read/knitted.h"

/*
 * Read a sheet of a workbook.
 *
 * Given:     path      an .xlsx file
 *            sheet     the name of the sheet
 *            arena     owner of the grid
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_IO; HW_ERR_SYNTAX (no workbook, damaged, locked with a password);
 *            HW_ERR_MISSING (no such sheet); HW_ERR_LIMIT; HW_ERR_NOMEM; all with the file's name
 * Note:      only the list of sheets, the links, the shared texts and the sheet are inflated, and
 *            at most HW_PARTS_MOST bytes of each
 */
hw_status hw_book_rows(
    const char *path, const char *sheet, hw_arena *arena, hw_rows *out, hw_err *err) HW_MUST_USE;

/*
 * Read the pieces that test knitters measured.
 *
 * Given:     path      a workbook, where the name ends with .xlsx: its sheet HW_KNITTED_SHEET;
 *                      else separated values
 *            context   as for hw_knitted_read
 *            arena     owner of all that out points to
 * Returned:  out       untouched on failure
 * Result:    HW_OK; what hw_book_rows, hw_io_read, hw_rows_csv and hw_knitted_read can say, with
 *            the file's name
 */
hw_status hw_knitted_load(const char *path, const hw_knitted_context *context, hw_arena *arena,
    hw_knitted_list *out, hw_err *err) HW_MUST_USE;

#endif
