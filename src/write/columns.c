/* Widths of texts, cells and columns.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/columns.h"

#include <assert.h>
#include <string.h>

#include "core/buf.h"

enum { LONGEST_WORD = 24, SHORTEST_TEXT = 36, WORDS_OVER_NUMBERS = 14 };

/* Ranges of characters that are not one column wide: the usual blocks, from memory. */
static const struct {
    unsigned first, last;
    int width;
} odd_widths[] = {
    { 0x0300, 0x036F, 0 },
    { 0x1AB0, 0x1AFF, 0 },
    { 0x1DC0, 0x1DFF, 0 },
    { 0x200B, 0x200F, 0 },
    { 0x20D0, 0x20FF, 0 },
    { 0xFE00, 0xFE0F, 0 },
    { 0xFE20, 0xFE2F, 0 },
    { 0x1100, 0x115F, 2 },
    { 0x2E80, 0xA4CF, 2 },
    { 0xAC00, 0xD7A3, 2 },
    { 0xF900, 0xFAFF, 2 },
    { 0xFE30, 0xFE6F, 2 },
    { 0xFF00, 0xFF60, 2 },
    { 0xFFE0, 0xFFE6, 2 },
    { 0x1F300, 0x1FAFF, 2 },
    { 0x20000, 0x3FFFD, 2 },
};

/* The character at a place; *used bytes, at least 1. Readers have made sure of valid UTF-8. */
static unsigned character(const unsigned char *at, size_t len, size_t *used)
{
    static const unsigned char masks[] = { 0, 0x7F, 0x1F, 0x0F, 0x07 };
    size_t want = *at >= 0xF0 ? 4 : *at >= 0xE0 ? 3 : *at >= 0xC0 ? 2 : 1;
    want = want > len ? len : want;
    unsigned value = *at & masks[want];
    for (size_t i = 1; i < want; i++) {
        value = value << 6 | (at[i] & 0x3Fu);
    }
    *used = want;
    return value;
}

static int character_width(unsigned value)
{
    for (size_t i = 0; i < sizeof odd_widths / sizeof odd_widths[0]; i++) {
        if (value >= odd_widths[i].first && value <= odd_widths[i].last) {
            return odd_widths[i].width;
        }
    }
    return 1;
}

int hw_columns_width(const char *text, size_t len)
{
    int width = 0;
    size_t used = 0;
    for (size_t at = 0; at < len; at += used) {
        width += character_width(character((const unsigned char *)text + at, len - at, &used));
    }
    return width;
}

static size_t character_len(const char *text)
{
    size_t len = 1;
    while (((unsigned char)text[len] & 0xC0) == 0x80) {
        len++;
    }
    return len;
}

/* Bytes of the text up to its line's end that a width holds; at least one character. */
static size_t held(const char *text, int width)
{
    size_t end = 0;
    int used = 0;
    while (text[end] != '\0' && text[end] != '\n') {
        size_t len = character_len(text + end);
        used += hw_columns_width(text + end, len);
        if (end > 0 && used > width) {
            break;
        }
        end += len;
    }
    return end;
}

/* Bytes of text that fill a line of the width: up to a blank where there is one. */
static size_t wrap(const char *text, int width)
{
    size_t end = held(text, width);
    if (text[end] == '\0' || text[end] == '\n' || text[end] == ' ') {
        return end;
    }
    size_t blank = end;
    while (blank > 0 && text[blank] != ' ') {
        blank--;
    }
    return blank > 0 ? blank : end;
}

const char *hw_columns_line(const char *text, int width, int number, size_t *len)
{
    *len = wrap(text, width);
    for (int i = 0; i < number && *text != '\0'; i++) {
        text += *len;
        text += *text == ' ' || *text == '\n';
        *len = wrap(text, width);
    }
    return text;
}

int hw_columns_lines(const char *text, int width)
{
    int count = 0;
    while (*text != '\0') {
        text += wrap(text, width);
        text += *text == ' ' || *text == '\n';
        count++;
    }
    return count;
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
    }
    return "";
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
        if (kind == HW_CELL_COUNT || kind == HW_CELL_NUMBER) {
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
        int width = hw_columns_width(text, len);
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

static need cell_need(const hw_columns_range *range, int row, int column)
{
    const hw_table *table = range->table;
    const hw_cell *cell = hw_cells_at(table, row, column);
    if (cell->kind == HW_CELL_EMPTY || cell->style == HW_STYLE_TITLE ||
        cell->style == HW_STYLE_SECTION) {
        return (need){ 0, 0 };
    }
    if (table->square && cell->kind == HW_CELL_COUNT && cell->style == HW_STYLE_HEAD) {
        return (need){ 1, 1 };
    }
    char room[HW_COLUMNS_CELL_ROOM];
    const char *text = hw_columns_cell(cell, room);
    int width = hw_columns_width(text, strlen(text));
    if (cell->kind != HW_CELL_TEXT) {
        return (need){ width, width };
    }
    if (cell->style == HW_STYLE_NOTE || cell->style == HW_STYLE_HEAD) {
        int least = longest_word(text);
        /* Words among numbers do not drive the numbers apart. */
        bool among = cell->style == HW_STYLE_NOTE && hw_columns_numbers(table, column);
        bool prose = range->letters && cell->style == HW_STYLE_NOTE;
        int wanted = prose ? digits_for(width) : width;
        int most = among && wanted > WORDS_OVER_NUMBERS ? WORDS_OVER_NUMBERS : wanted;
        return (need){ most > least ? most : least, least };
    }
    return (need){ width, width < SHORTEST_TEXT ? width : SHORTEST_TEXT };
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
