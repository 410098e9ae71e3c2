/* Tables that grow by rows, with room doubled as they do.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/grid.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "core/num.h"
#include "core/units.h"

enum { FIRST_ROOM = 32 };

static const double largest = 1e9; /* above it hw_num_round has no meaning */

void hw_grid_begin(hw_grid *grid, hw_arena *arena, const char *name, int columns)
{
    assert(columns > 0);
    *grid = (hw_grid){ .arena = arena, .status = HW_OK };
    grid->table.name = name;
    grid->table.columns = columns;
}

static bool widen(hw_grid *grid)
{
    int room = grid->room == 0 ? FIRST_ROOM : 2 * grid->room;
    size_t columns = (size_t)grid->table.columns;
    hw_cell *cells = hw_arena_get(grid->arena, (size_t)room * columns, sizeof *cells);
    if (cells == NULL) {
        grid->status = HW_ERR_NOMEM;
        return false;
    }
    if (grid->table.rows > 0) {
        memcpy(cells, grid->table.cells, (size_t)grid->table.rows * columns * sizeof *cells);
    }
    grid->table.cells = cells;
    grid->room = room;
    return true;
}

void hw_grid_row(hw_grid *grid)
{
    if (grid->status != HW_OK || (grid->table.rows == grid->room && !widen(grid))) {
        return;
    }
    grid->table.rows++;
}

static void put(hw_grid *grid, int column, hw_cell cell)
{
    assert(column >= 0 && column < grid->table.columns);
    if (grid->status != HW_OK) {
        return;
    }
    assert(grid->table.rows > 0);
    grid->table.cells[(grid->table.rows - 1) * grid->table.columns + column] = cell;
}

void hw_grid_text(hw_grid *grid, int column, hw_cell_style style, const char *text)
{
    if (text == NULL) {
        grid->status = HW_ERR_NOMEM;
        return;
    }
    put(grid, column, (hw_cell){ .kind = HW_CELL_TEXT, .style = style, .text = text });
}

void hw_grid_fill_in(hw_grid *grid, int column)
{
    put(grid, column, (hw_cell){ .kind = HW_CELL_EMPTY, .style = HW_STYLE_FILL_IN });
}

void hw_grid_count(hw_grid *grid, int column, hw_cell_style style, int count)
{
    put(grid, column, (hw_cell){ .kind = HW_CELL_COUNT, .style = style, .number = count });
}

void hw_grid_number(hw_grid *grid, int column, hw_cell_style style, double number, int decimals)
{
    hw_cell cell = { .kind = HW_CELL_NUMBER, .style = style, .decimals = decimals };
    cell.number = fabs(number) < largest ? hw_num_round(number, decimals) : number;
    put(grid, column, cell);
}

void hw_grid_eighths(hw_grid *grid, int column, hw_cell_style style, double inches)
{
    hw_cell cell = { .kind = HW_CELL_EIGHTHS, .style = style };
    cell.number = fabs(inches) < largest / 8 ? hw_inches_round(inches) : inches;
    put(grid, column, cell);
}

void hw_grid_line(hw_grid *grid, hw_cell_style style, const char *text)
{
    hw_grid_row(grid);
    hw_grid_text(grid, 0, style, text);
}

void hw_grid_section(hw_grid *grid, const char *text)
{
    hw_grid_row(grid);
    hw_grid_line(grid, HW_STYLE_SECTION, text);
}

hw_status hw_grid_finish(const hw_grid *grid, hw_table *out)
{
    if (grid->status == HW_OK) {
        *out = grid->table;
    }
    return grid->status;
}
