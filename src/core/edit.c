/* New charts of old ones, cell by cell, and what keeps them within the limits.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/edit.h"

#include <assert.h>

#include "core/num.h"

static unsigned char at(const hw_chart *chart, int row, int column)
{
    return chart->cells[row * chart->width + column] == HW_CONTRAST ? HW_CONTRAST : HW_BACKGROUND;
}

/* A chart of background; its cells can be written to. NULL when memory is refused. */
static unsigned char *blank(const char *name, int width, int rows, hw_arena *arena, hw_chart *out)
{
    unsigned char *cells = hw_arena_get(arena, (size_t)width * (size_t)rows, 1);
    *out = (hw_chart){ .name = name, .width = width, .rows = rows, .cells = cells };
    return cells;
}

/* Each cell of the new chart is one of the old, as the turn says. */
typedef struct {
    bool mirror, upside_down;
    int right, up;
} turn;

static hw_status turned(const hw_chart *chart, const turn *t, hw_arena *arena, hw_chart *out)
{
    hw_chart made;
    unsigned char *cells = blank(chart->name, chart->width, chart->rows, arena, &made);
    if (cells == NULL) {
        return HW_ERR_NOMEM;
    }
    for (int row = 0; row < chart->rows; row++) {
        for (int column = 0; column < chart->width; column++) {
            int from_row = hw_num_mod(row + t->up, chart->rows);
            int from_column = hw_num_mod(column - t->right, chart->width);
            from_row = t->upside_down ? chart->rows - 1 - from_row : from_row;
            from_column = t->mirror ? chart->width - 1 - from_column : from_column;
            cells[row * chart->width + column] = at(chart, from_row, from_column);
        }
    }
    *out = made;
    return HW_OK;
}

hw_status hw_edit_mirror(const hw_chart *chart, hw_arena *arena, hw_chart *out)
{
    return turned(chart, &(turn){ .mirror = true }, arena, out);
}

hw_status hw_edit_upside_down(const hw_chart *chart, hw_arena *arena, hw_chart *out)
{
    return turned(chart, &(turn){ .upside_down = true }, arena, out);
}

hw_status hw_edit_shift(
    const hw_chart *chart, int columns, int rows, hw_arena *arena, hw_chart *out)
{
    turn t = { .right = hw_num_mod(columns, chart->width), .up = hw_num_mod(rows, chart->rows) };
    return turned(chart, &t, arena, out);
}

/* Copies a chart to cells of a larger one, `width` wide, repeated over so many columns. */
static void lay_in(unsigned char *cells, int width, const hw_chart *chart, int columns)
{
    for (int row = 0; row < chart->rows; row++) {
        for (int column = 0; column < columns; column++) {
            cells[row * width + column] = at(chart, row, column % chart->width);
        }
    }
}

static hw_status too_large(int columns, int rows, hw_err *err)
{
    if (columns > HW_MAX_CHART_COLUMNS) {
        return hw_err_set(err, HW_ERR_LIMIT,
            "together they are %d columns, and a chart has at most %d: use a narrower figure or "
            "another gap",
            columns, HW_MAX_CHART_COLUMNS);
    }
    if (rows > HW_MAX_CHART_ROWS) {
        return hw_err_set(err, HW_ERR_LIMIT,
            "together they are %d rows, and a chart has at most %d: use fewer rows", rows,
            HW_MAX_CHART_ROWS);
    }
    return HW_OK;
}

hw_status hw_edit_space(const hw_chart *chart, int gap, hw_arena *arena, hw_chart *out, hw_err *err)
{
    assert(gap >= 0);
    hw_chart made;
    int width = chart->width + gap;
    hw_status status = too_large(width, chart->rows, err);
    if (status != HW_OK) {
        return status;
    }
    unsigned char *cells = blank(chart->name, width, chart->rows, arena, &made);
    if (cells == NULL) {
        return HW_ERR_NOMEM;
    }
    lay_in(cells, width, chart, chart->width);
    *out = made;
    return HW_OK;
}

/* Repeats that are made equally wide by the least number of columns that both divide. */
static hw_status common_width(const hw_edit_pile *pile, int *out, hw_err *err)
{
    int above = pile->above->width;
    int below = pile->below->width;
    int width = above / hw_num_gcd(above, below) * below;
    if (width > HW_MAX_CHART_COLUMNS) {
        return hw_err_set(err, HW_ERR_LIMIT,
            "repeats of %d and %d columns come together again after %d, more than the %d of a "
            "chart: give one of them a gap that makes the repeats equal, or one a multiple of the "
            "other",
            above, below, width, HW_MAX_CHART_COLUMNS);
    }
    *out = width;
    return HW_OK;
}

hw_status hw_edit_stack(const hw_edit_pile *pile, hw_arena *arena, hw_chart *out, hw_err *err)
{
    assert(pile->plain_rows >= 0);
    hw_chart made;
    int width = 0;
    int plain = pile->plain_rows < HW_MAX_CHART_ROWS ? pile->plain_rows : HW_MAX_CHART_ROWS;
    int rows = pile->above->rows + plain + pile->below->rows;
    hw_status status = common_width(pile, &width, err);
    if (status == HW_OK) {
        status = too_large(width, rows, err);
    }
    if (status != HW_OK) {
        return status;
    }
    unsigned char *cells = blank(pile->below->name, width, rows, arena, &made);
    if (cells == NULL) {
        return HW_ERR_NOMEM;
    }
    lay_in(cells, width, pile->above, width);
    lay_in(cells + (pile->above->rows + plain) * width, width, pile->below, width);
    *out = made;
    return HW_OK;
}

hw_status hw_edit_beside(
    const hw_chart *left, const hw_chart *right, hw_arena *arena, hw_chart *out, hw_err *err)
{
    hw_chart made;
    int width = left->width + right->width;
    int rows = left->rows > right->rows ? left->rows : right->rows;
    hw_status status = too_large(width, rows, err);
    if (status != HW_OK) {
        return status;
    }
    unsigned char *cells = blank(left->name, width, rows, arena, &made);
    if (cells == NULL) {
        return HW_ERR_NOMEM;
    }
    /* Rows are counted from the top: of an odd number the larger half lies there. */
    int over_left = (rows - left->rows + 1) / 2;
    int over_right = (rows - right->rows + 1) / 2;
    lay_in(cells + over_left * width, width, left, left->width);
    lay_in(cells + over_right * width + left->width, width, right, right->width);
    *out = made;
    return HW_OK;
}
