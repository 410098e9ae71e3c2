/* Widths of texts, cells and columns.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/columns.h"

#include <assert.h>
#include <string.h>

#include "core/buf.h"
#include "core/units.h"

enum { LONGEST_WORD = 24, SHORTEST_TEXT = 36, WORDS_OVER_NUMBERS = 14 };
enum { SHORTEST_ON_PAPER = 32, SHORTEST_BY_SQUARES = 20, TO_WRITE_IN = 24 };

/* What a text may be narrowed to, to be wrapped: in a workbook sooner, where columns are not folded
 * below each other, and soonest beside a chart, whose squares it drives off the page. */
static int shortest_text(const hw_columns_range *range)
{
    return !range->letters        ? SHORTEST_TEXT
           : range->table->square ? SHORTEST_BY_SQUARES
                                  : SHORTEST_ON_PAPER;
}

static void format(char *room, const char *how, ...) HW_FORMAT(2, 3);
static void format(char *room, const char *how, ...)
{
    va_list args;
    va_start(args, how);
    hw_buf_fixed(room, HW_COLUMNS_CELL_ROOM, how, args);
    va_end(args);
}

const char *hw_columns_cell(const hw_cell *cell, char *room)
{
    switch (cell->kind) {
    case HW_CELL_EMPTY:
        break;
    case HW_CELL_TEXT:
        return cell->text;
    case HW_CELL_COUNT:
        format(room, "%.0f", cell->number);
        return room;
    case HW_CELL_NUMBER:
        format(room, "%.*f", cell->decimals, cell->number);
        return room;
    case HW_CELL_EIGHTHS:
        hw_inches_text(cell->number, room);
        return room;
    }
    return "";
}

bool hw_columns_run_on(const hw_cell *cell)
{
    return cell->style == HW_STYLE_TITLE || cell->style == HW_STYLE_SECTION ||
           cell->style == HW_STYLE_PIECE || cell->style == HW_STYLE_PARAGRAPH;
}

bool hw_columns_squares(const hw_table *table, int column)
{
    for (int r = 0; table->square && r < table->rows; r++) {
        hw_cell_style style = hw_cells_at(table, r, column)->style;
        if (style == HW_STYLE_BACKGROUND || style == HW_STYLE_CONTRAST) {
            return true;
        }
    }
    return false;
}

bool hw_columns_numbers(const hw_table *table, int column)
{
    for (int r = table->head_rows; !table->square && r < table->rows; r++) {
        hw_cell_kind kind = hw_cells_at(table, r, column)->kind;
        if (kind != HW_CELL_EMPTY && kind != HW_CELL_TEXT) {
            return true;
        }
    }
    return false;
}

static int longest_word(const char *text)
{
    int longest = 0;
    while (*text != '\0') {
        size_t len = strcspn(text, " \n");
        int width = hw_wrap_width(text, len);
        longest = width > longest ? width : longest;
        text += len + (text[len] != '\0');
    }
    return longest < LONGEST_WORD ? longest : LONGEST_WORD;
}

/* What a cell needs: as it is, and when its words are wrapped. */
typedef struct {
    int most, least;
} need;

/* Digits that take as much room as letters do, rounded up. */
static int digits_for(int letters)
{
    return (letters * HW_COLUMNS_DIGITS + HW_COLUMNS_LETTERS - 1) / HW_COLUMNS_LETTERS;
}

/* What notes and heads need. */
static need words_need(const hw_columns_range *range, const hw_cell *cell, int column)
{
    int width = hw_wrap_width(cell->text, strlen(cell->text));
    int least = longest_word(cell->text);
    /* Words among numbers do not drive the numbers apart. */
    bool note = cell->style == HW_STYLE_NOTE;
    bool among = note && hw_columns_numbers(range->table, column);
    int wanted = range->letters && note ? digits_for(width) : width;
    int most = among && wanted > WORDS_OVER_NUMBERS ? WORDS_OVER_NUMBERS : wanted;
    return (need){ most > least ? most : least, least };
}

static need cell_need(const hw_columns_range *range, int row, int column)
{
    const hw_table *table = range->table;
    const hw_cell *cell = hw_cells_at(table, row, column);
    if (cell->style == HW_STYLE_FILL_IN && range->letters && column == table->columns - 1) {
        return (need){ TO_WRITE_IN, TO_WRITE_IN }; /* by hand, and in words */
    }
    if (cell->kind == HW_CELL_EMPTY || hw_columns_run_on(cell)) {
        return (need){ 0, 0 };
    }
    if (table->square && cell->kind == HW_CELL_COUNT && cell->style == HW_STYLE_HEAD) {
        return (need){ 1, 1 };
    }
    char room[HW_COLUMNS_CELL_ROOM];
    const char *text = hw_columns_cell(cell, room);
    int width = hw_wrap_width(text, strlen(text));
    if (cell->kind != HW_CELL_TEXT) {
        return (need){ width, width };
    }
    if (cell->style == HW_STYLE_NOTE || cell->style == HW_STYLE_HEAD) {
        return words_need(range, cell, column);
    }
    int shortest = shortest_text(range);
    return (need){ width, width < shortest ? width : shortest };
}

static need column_need(const hw_columns_range *range, int column)
{
    need all = { 0, 0 };
    for (int r = range->from; r < range->to; r++) {
        need one = cell_need(range, r, column);
        all.most = one.most > all.most ? one.most : all.most;
        all.least = one.least > all.least ? one.least : all.least;
    }
    return all;
}

/* The widest column that can still be narrowed, or -1. */
static int widest(const int *widths, const int *least, int count)
{
    int found = -1;
    for (int c = 0; c < count; c++) {
        if (widths[c] > least[c] && (found < 0 || widths[c] > widths[found])) {
            found = c;
        }
    }
    return found;
}

void hw_columns_fit(const hw_columns_range *range, int *widths)
{
    int count = range->table->columns;
    assert(count <= HW_COLUMNS_MOST);
    int least[HW_COLUMNS_MOST];
    int total = -range->between;
    for (int c = 0; c < count; c++) {
        need one = column_need(range, c);
        widths[c] = one.most;
        least[c] = one.least;
        total += one.most > 0 ? one.most + range->between : 0;
    }
    int narrowed = widest(widths, least, count);
    while (total > range->width && narrowed >= 0) {
        widths[narrowed]--;
        total--;
        narrowed = widest(widths, least, count);
    }
}
