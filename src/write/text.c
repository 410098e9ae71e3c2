/* Tables as plain text, padded with blanks and nothing else.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/text.h"

#include <string.h>

#include "write/columns.h"

enum { BETWEEN = 2, BETWEEN_SQUARES = 1 };

/* A run of rows that share their widths: the whole table, or, in one with a chart, the rows up to
 * an empty one. */
typedef struct {
    const hw_table *table;
    int from, to;
    int widths[HW_COLUMNS_MOST];
    bool squares[HW_COLUMNS_MOST];
    bool numbers[HW_COLUMNS_MOST];
    bool has_squares; /* in these rows */
} group;

/* The columns of one fold: the first ones, and [from, to). */
typedef struct {
    int from, to;
    bool again; /* not the first fold: only rows that have something in it */
} fold;

/* Blanks are owed until something follows them, so that no line ends in one. */
typedef struct {
    hw_buf *buf;
    int owed;
} line;

static void line_text(line *l, const char *text, size_t len)
{
    if (len > 0) {
        hw_buf_repeat(l->buf, " ", l->owed);
        hw_buf_bytes(l->buf, text, len);
        l->owed = 0;
    }
}

static void line_end(line *l)
{
    hw_buf_text(l->buf, "\n");
    l->owed = 0;
}

/* Numbers over a chart's squares stand digit below digit. */
static bool stacked(const group *g, const hw_cell *cell, int column)
{
    return g->squares[column] && cell->kind == HW_CELL_COUNT && cell->style == HW_STYLE_HEAD;
}

static int cell_lines(const group *g, int row, int column)
{
    const hw_cell *cell = hw_cells_at(g->table, row, column);
    if (g->widths[column] == 0 || hw_columns_run_on(cell)) {
        return 0;
    }
    char room[HW_COLUMNS_CELL_ROOM];
    const char *text = hw_columns_cell(cell, room);
    return hw_wrap_lines(text, stacked(g, cell, column) ? 1 : g->widths[column]);
}

static bool to_the_right(const group *g, const hw_cell *cell, int column)
{
    if (cell->kind != HW_CELL_TEXT) {
        return !g->table->square || g->has_squares;
    }
    return column >= g->table->head_columns && g->numbers[column];
}

static void cell_line(const group *g, const hw_cell *cell, int column, int number, line *l)
{
    char room[HW_COLUMNS_CELL_ROOM];
    size_t len = 0;
    const char *text = hw_columns_cell(cell, room);
    text = number < 0 ? "" : hw_wrap_line(text, g->widths[column], number, &len);
    int spare = g->widths[column] - hw_wrap_width(text, len);
    bool right = to_the_right(g, cell, column);
    l->owed += right ? spare : 0;
    line_text(l, text, len);
    l->owed += right ? 0 : spare;
}

static int between(const group *g, int column)
{
    bool both = column > 0 && g->squares[column] && g->squares[column - 1] && g->has_squares;
    return both ? BETWEEN_SQUARES : BETWEEN;
}

static bool in_fold(const group *g, const fold *f, int column)
{
    return g->widths[column] > 0 &&
           (column < g->table->head_columns || (column >= f->from && column < f->to));
}

/* Which line of which row, of how many. */
typedef struct {
    int row, number, lines;
} row_part;

/* One line of a row; heads stand at the foot of their row, all else at its top. */
static void row_line(const group *g, const fold *f, const row_part *p, line *l)
{
    bool first = true;
    for (int c = 0; c < g->table->columns; c++) {
        if (!in_fold(g, f, c)) {
            continue;
        }
        l->owed += first ? 0 : between(g, c);
        first = false;
        int down = p->row < g->table->head_rows ? p->lines - cell_lines(g, p->row, c) : 0;
        cell_line(g, hw_cells_at(g->table, p->row, c), c, p->number - down, l);
    }
    line_end(l);
}

/* A text over the whole width, in as many lines as it takes; the longest of them is returned. */
static int run_on(const char *text, int width, line *l)
{
    size_t len = 0;
    int widest = 0;
    for (int i = 0; i < hw_wrap_lines(text, width); i++) {
        const char *part = hw_wrap_line(text, width, i, &len);
        int wide = hw_wrap_width(part, len);
        widest = wide > widest ? wide : widest;
        line_text(l, part, len);
        line_end(l);
    }
    return widest;
}

static void title(const char *text, int width, line *l)
{
    hw_buf_repeat(l->buf, "=", run_on(text, width, l));
    line_end(l);
}

static void row(const group *g, const fold *f, int row_number, line *l)
{
    int lines = 0;
    for (int c = 0; c < g->table->columns; c++) {
        int count = in_fold(g, f, c) ? cell_lines(g, row_number, c) : 0;
        lines = count > lines ? count : lines;
    }
    for (int i = 0; i < lines; i++) {
        row_line(g, f, &(row_part){ row_number, i, lines }, l);
    }
    if (lines == 0) {
        line_end(l);
    }
}

static bool has_style(const group *g, int row_number, hw_cell_style style)
{
    const hw_cell *first = hw_cells_at(g->table, row_number, 0);
    return first->kind == HW_CELL_TEXT && first->style == style;
}

static bool begins_section(const group *g, int row_number)
{
    return has_style(g, row_number, HW_STYLE_SECTION) || has_style(g, row_number, HW_STYLE_PIECE);
}

/* Whether a row has anything to show in the columns of a fold. */
static bool filled(const group *g, const fold *f, int row_number)
{
    for (int c = f->from; c < f->to; c++) {
        if (hw_cells_at(g->table, row_number, c)->kind != HW_CELL_EMPTY) {
            return true;
        }
    }
    return false;
}

/* Whether a later fold shows a row: one that is filled, or a section that has such rows, with the
 * empty row before it. */
static bool shown_again(const group *g, const fold *f, int row_number)
{
    bool empty = hw_cells_at(g->table, row_number, 0)->kind == HW_CELL_EMPTY;
    int from = row_number + (empty && !filled(g, f, row_number) ? 1 : 0);
    if (from >= g->to || !begins_section(g, from)) {
        return filled(g, f, row_number);
    }
    for (int r = from + 1; r < g->to && !begins_section(g, r); r++) {
        if (filled(g, f, r)) {
            return true;
        }
    }
    return false;
}

static void rows(const group *g, const fold *f, int width, line *l)
{
    for (int r = g->from; r < g->to; r++) {
        const hw_cell *first = hw_cells_at(g->table, r, 0);
        if (f->again && !shown_again(g, f, r)) {
            continue;
        }
        if (has_style(g, r, HW_STYLE_TITLE)) {
            title(first->text, width, l);
        } else if (first->kind == HW_CELL_TEXT && hw_columns_run_on(first)) {
            (void)run_on(first->text, width, l); /* nothing is drawn below it */
        } else {
            row(g, f, r, l);
        }
    }
}

/* The fold that begins with a column: as many columns as the width holds, at least one. */
static fold fold_from(const group *g, int from, int width)
{
    fold f = { .from = from, .to = from, .again = from > g->table->head_columns };
    int used = 0;
    for (int c = 0; c < g->table->head_columns; c++) {
        used += g->widths[c] + (c > 0 ? between(g, c) : 0);
    }
    while (f.to < g->table->columns) {
        int more = g->widths[f.to] > 0 ? g->widths[f.to] + between(g, f.to) : 0;
        if (used + more > width && f.to > from) {
            break;
        }
        used += more;
        f.to++;
    }
    return f;
}

static void lay_out(const hw_table *table, int from, int to, int width, group *g)
{
    *g = (group){ .table = table, .from = from, .to = to };
    for (int c = 0; c < table->columns; c++) {
        g->squares[c] = hw_columns_squares(table, c);
        g->numbers[c] = hw_columns_numbers(table, c);
        for (int r = from; r < to; r++) {
            hw_cell_style style = hw_cells_at(table, r, c)->style;
            g->has_squares =
                g->has_squares || style == HW_STYLE_BACKGROUND || style == HW_STYLE_CONTRAST;
        }
    }
    hw_columns_fit(&(hw_columns_range){ table, from, to, width, BETWEEN, false }, g->widths);
}

static bool empty_row(const hw_table *table, int number)
{
    for (int c = 0; c < table->columns; c++) {
        if (hw_cells_at(table, number, c)->kind != HW_CELL_EMPTY) {
            return false;
        }
    }
    return true;
}

static int group_end(const hw_table *table, int from)
{
    int to = from;
    while (to < table->rows && !(table->square && to > from && empty_row(table, to))) {
        to++;
    }
    return to;
}

static void table_text(const hw_table *table, int width, hw_buf *buf)
{
    line l = { .buf = buf };
    for (int from = 0; from < table->rows;) {
        group g;
        lay_out(table, from, group_end(table, from), width, &g);
        int column = table->head_columns;
        do {
            fold f = fold_from(&g, column, width);
            if (f.again) {
                line_end(&l);
            }
            rows(&g, &f, width, &l);
            column = f.to;
        } while (column < table->columns);
        from = g.to;
    }
}

hw_status hw_text_tables(const hw_tables *tables, const hw_text_options *options, hw_buf *buf)
{
    int width = options == NULL || options->width == 0 ? HW_TEXT_WIDTH : options->width;
    width = width < HW_TEXT_LEAST_WIDTH ? HW_TEXT_LEAST_WIDTH : width;
    for (int i = 0; i < tables->count; i++) {
        if (tables->tables[i].columns > HW_COLUMNS_MOST) {
            return HW_ERR_LIMIT;
        }
        hw_buf_text(buf, i > 0 ? "\n\n" : "");
        table_text(&tables->tables[i], width, buf);
    }
    return hw_buf_status(buf);
}
