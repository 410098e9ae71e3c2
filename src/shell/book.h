/* Tables as a workbook (.xlsx), written beside the old file and read again.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_BOOK_H
#define HW_SHELL_BOOK_H

#include <time.h>

#include "core/err.h"
#include "shell/io.h"
#include "write/cells.h"

typedef struct {
    const char *title; /* in the workbook's properties; NULL for none */
    time_t created;    /* seconds since 1970; 0 for a fixed time, so that the same plan gives the
                          same bytes */
} hw_book_options;

/*
 * Write tables as a workbook, a sheet each.
 *
 * Given:     tables    at least one; names as hw_table says, each once; at most HW_COLUMNS_MOST
 *                      columns
 *            target    begun; its temporary file is written, and finished by the caller
 *            options   NULL for the usual ones
 * Result:    HW_OK; HW_ERR_IO; HW_ERR_RANGE (a number that is not finite, a text that a cell
 *            cannot hold); HW_ERR_NOMEM; HW_ERR_INTERNAL
 * Note:      the file's own library can leave out cells and say nothing, so the file is read again
 *            and each sheet's cells are counted
 */
hw_status hw_book_write(const hw_tables *tables, const hw_io_target *target,
    const hw_book_options *options, hw_err *err) HW_MUST_USE;

#endif
