/* Tables as comma-separated values, one after another in one file.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_CSV_H
#define HW_WRITE_CSV_H

#include "core/buf.h"
#include "write/cells.h"

/*
 * Write tables as RFC 4180 says: commas, lines ended by CR LF, quotes where they are needed.
 *
 * Given:     tables    each is written as a line with its name, its rows, and an empty line
 *            buf       initialised; the text is appended, UTF-8 without a mark at its start
 * Result:    HW_OK; HW_ERR_LIMIT; HW_ERR_NOMEM
 * Note:      a text that begins with = + - @, a tab or a carriage return gets an apostrophe before
 *            it, because a spreadsheet would take it for a formula; numbers never do
 */
hw_status hw_csv_tables(const hw_tables *tables, hw_buf *buf) HW_MUST_USE;

#endif
