/* Tables for a terminal: columns side by side, wide tables folded into blocks.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_TEXT_H
#define HW_WRITE_TEXT_H

#include "core/buf.h"
#include "write/cells.h"

enum { HW_TEXT_WIDTH = 100, HW_TEXT_LEAST_WIDTH = 40 };

typedef struct {
    int width; /* characters in a line, at least HW_TEXT_LEAST_WIDTH; 0 for HW_TEXT_WIDTH */
} hw_text_options;

/*
 * Write tables for reading.
 *
 * Given:     tables    each with at most HW_COLUMNS_MOST columns
 *            options   NULL for the usual ones
 *            buf       initialised; the text is appended
 * Result:    HW_OK; HW_ERR_LIMIT (too many columns, or too much text); HW_ERR_NOMEM
 * Note:      words are wrapped, then the table is folded, its first columns repeated; a line is
 *            longer than the width only where those and one more column are; none ends in a blank
 */
hw_status hw_text_tables(
    const hw_tables *tables, const hw_text_options *options, hw_buf *buf) HW_MUST_USE;

#endif
