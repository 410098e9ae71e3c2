/* A table under construction: rows added one by one, failures remembered until the end.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_GRID_H
#define HW_WRITE_GRID_H

#include "write/cells.h"

/* Private to grid.c but for setting table.head_rows, head_columns, square and large. */
typedef struct {
    hw_arena *arena;
    hw_table table;
    int room; /* rows for which there is room */
    hw_status status;
} hw_grid;

/*
 * Begin a table without rows.
 *
 * Given:     grid      the caller's
 *            arena     owner of the cells
 *            name      lives as long as the table; a sheet's name, see hw_table
 *            columns   above 0
 */
void hw_grid_begin(hw_grid *grid, hw_arena *arena, const char *name, int columns);

/* Add a row of empty cells; what follows goes into it. */
void hw_grid_row(hw_grid *grid);

/* Put a text into the last row; NULL stands for refused memory and is remembered as that. */
void hw_grid_text(hw_grid *grid, int column, hw_cell_style style, const char *text);

/* Make a cell of the last row one that a person fills in. */
void hw_grid_fill_in(hw_grid *grid, int column);

/* Put a whole number into the last row. */
void hw_grid_count(hw_grid *grid, int column, hw_cell_style style, int count);

/* Put a number into the last row, rounded to decimals, 0 to 4. */
void hw_grid_number(hw_grid *grid, int column, hw_cell_style style, double number, int decimals);

/* Put inches into the last row, rounded to eighths. */
void hw_grid_eighths(hw_grid *grid, int column, hw_cell_style style, double inches);

/* Add a row with a text in its first column. */
void hw_grid_line(hw_grid *grid, hw_cell_style style, const char *text);

/* Add an empty row, and below it the line that begins a group of rows. */
void hw_grid_section(hw_grid *grid, const char *text);

/*
 * The finished table.
 *
 * Given:     grid      after all rows
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_grid_finish(const hw_grid *grid, hw_table *out) HW_MUST_USE;

#endif
