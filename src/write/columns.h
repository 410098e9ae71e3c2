/* How wide the columns of a table are, in characters: for the terminal and for the workbook.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_COLUMNS_H
#define HW_WRITE_COLUMNS_H

#include "write/cells.h"
#include "write/wrap.h"

/* Letters of running text that take the room of four digits: from the widths of a usual typeface
 * without serifs, in which a digit is 0.56 of its size wide and English text 0.46 a letter, with a
 * little to spare (own choice). */
enum { HW_COLUMNS_LETTERS = 5, HW_COLUMNS_DIGITS = 4 };

enum {
    HW_COLUMNS_MOST = 256,     /* columns of one table */
    HW_COLUMNS_CELL_ROOM = 352 /* bytes: any double with four decimals, and its NUL */
};

/* A part of a table, and the width that it should keep to. */
typedef struct {
    const hw_table *table;
    int from, to; /* rows [from, to) */
    int width;    /* characters */
    int between;  /* characters between two columns */
    bool letters; /* running text takes the room of its letters, not of as many digits */
} hw_columns_range;

/*
 * What a cell shows.
 *
 * Given:     room      HW_COLUMNS_CELL_ROOM bytes, used for a number
 * Returned:  the cell's text, room, or "" where it is empty
 */
const char *hw_columns_cell(const hw_cell *cell, char *room);

/* Whether a cell's text runs on over the columns to its right: titles, section lines, paragraphs.
 */
bool hw_columns_run_on(const hw_cell *cell);

/* Whether a column holds squares of a chart. */
bool hw_columns_squares(const hw_table *table, int column);

/* Whether a column of an ordinary table holds numbers below its heads. */
bool hw_columns_numbers(const hw_table *table, int column);

/*
 * Widths at which a table fits, where words can be wrapped to make it fit.
 *
 * Given:     range     a table with at most HW_COLUMNS_MOST columns
 * Returned:  widths    one for each column; 0 where nothing stands in it
 * Note:      what runs on over the columns does not count; numbers of columns stand digit below
 *            digit over a chart's squares
 */
void hw_columns_fit(const hw_columns_range *range, int *widths);

#endif
