/* A grid of text cells, and how it is filled: from separated values, or cell by cell.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_ROWS_H
#define HW_READ_ROWS_H

#include "core/buf.h"
#include "core/err.h"

enum {
    HW_ROWS_MOST = 20000,
    HW_ROWS_MOST_COLUMNS = 200,
    HW_ROWS_MOST_BYTES = 20 * 1024 * 1024 /* of all texts together */
};

typedef struct {
    const char **cells; /* [rows * columns], row by row; NULL for an empty cell */
    int rows, columns;
    bool semicolons; /* read from values parted by semicolons, in which 31,5 is a number */
} hw_rows;

/* The text of a cell, 0-based; NULL where it is empty or beyond the grid. */
const char *hw_rows_at(const hw_rows *rows, int row, int column);

/* A grid on its way. After the first failure nothing more is kept; hw_rows_end says why. */
typedef struct {
    hw_buf places, texts;
    int rows, columns; /* so far */
    bool too_far;      /* a cell beyond what a grid holds */
} hw_rows_gather;

/* Begin a grid; mem is copied. */
void hw_rows_begin(hw_rows_gather *gather, const hw_mem *mem);

/* Add a cell, 0-based; an empty text adds none, a second text at one place wins. */
void hw_rows_put(hw_rows_gather *gather, int row, int column, const char *text, size_t len);

/*
 * The grid that was gathered.
 *
 * Given:     gather    released by the caller as before
 *            arena     owner of the grid
 * Returned:  out       as large as its cells need; untouched on failure
 * Result:    HW_OK; HW_ERR_LIMIT; HW_ERR_NOMEM
 */
hw_status hw_rows_end(
    const hw_rows_gather *gather, hw_arena *arena, hw_rows *out, hw_err *err) HW_MUST_USE;

/* Give back what was gathered; may be called twice. */
void hw_rows_release(hw_rows_gather *gather);

/* Separated values. */
typedef struct {
    const char *text;
    size_t len;
    char separator; /* ',' or ';' */
} hw_rows_text;

/*
 * The sign that parts the values of a text: the one between two cells that stand side by side.
 *
 * Given:     text      len bytes
 *            heads     the two cells, in small letters; they may be quoted
 * Returned:  ',' or ';'; where the cells are not found, the one that is there more often
 */
char hw_rows_separator(const char *text, size_t len, const char *const heads[2]);

/*
 * Read separated values, quoted where they need it.
 *
 * Given:     in        its text may begin with a byte order mark; lines end with CR LF, LF or CR
 *            arena     owner of the grid
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_SYNTAX (not UTF-8, a quotation that never ends), HW_ERR_LIMIT, with row
 *            and column where there are any; HW_ERR_NOMEM
 * Note:      the apostrophe before =, +, - and @, with which a document keeps a text from being
 *            taken for a formula, is left off again
 */
hw_status hw_rows_csv(
    const hw_rows_text *in, hw_arena *arena, hw_rows *out, hw_err *err) HW_MUST_USE;

#endif
