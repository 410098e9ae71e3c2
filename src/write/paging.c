/* Sections packed onto pages, whole where that can be.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/paging.h"

/* A section that no page holds begins on the page under way while so much of it is left. */
static const double worth_beginning = 0.4;

/* A page being filled. */
typedef struct {
    const hw_paging *paging;
    double used;
    bool filled; /* by more than blank rows */
    int *breaks;
    int count;
} packing;

static const hw_cell *first_cell(const hw_paging *paging, int row)
{
    return hw_cells_at(paging->table, row, 0);
}

static bool blank(const hw_paging *paging, int row)
{
    for (int c = 0; c < paging->table->columns; c++) {
        const hw_cell *cell = hw_cells_at(paging->table, row, c);
        if (cell->kind != HW_CELL_EMPTY || cell->style == HW_STYLE_FILL_IN) {
            return false;
        }
    }
    return true;
}

static bool begins_section(const hw_paging *paging, int row)
{
    hw_cell_style style = first_cell(paging, row)->style;
    return style == HW_STYLE_SECTION || style == HW_STYLE_PIECE;
}

/* The nearest row above that is not blank; -1 where there is none below the heads. */
static int above(const hw_paging *paging, int row)
{
    do {
        row--;
    } while (row >= paging->table->head_rows && blank(paging, row));
    return row >= paging->table->head_rows ? row : -1;
}

/* Headings below each other are one. */
static bool begins_group(const hw_paging *paging, int row)
{
    int before = above(paging, row);
    return begins_section(paging, row) && (before < 0 || !begins_section(paging, before));
}

/* What heads the rows below it. */
static bool heads(const hw_paging *paging, int row)
{
    hw_cell_style style = first_cell(paging, row)->style;
    return begins_section(paging, row) || style == HW_STYLE_HEAD || style == HW_STYLE_PARAGRAPH;
}

static bool goes_on(const hw_paging *paging, int row)
{
    const hw_cell *first = first_cell(paging, row);
    return first->kind == HW_CELL_EMPTY || (first->kind == HW_CELL_TEXT && first->text[0] == ' ');
}

static bool may_begin_page(const hw_paging *paging, int row)
{
    int before = above(paging, row);
    return before >= 0 && !heads(paging, before) && !goes_on(paging, row);
}

static int end_of(const hw_paging *paging, int from, bool (*begins)(const hw_paging *, int))
{
    int to = from + 1;
    while (to < paging->table->rows && !begins(paging, to)) {
        to++;
    }
    return to;
}

/* Blank rows at the foot of a page take no room that anything needs. */
static double height_of(const hw_paging *paging, int from, int to, bool feet)
{
    double height = 0;
    while (!feet && to > from && blank(paging, to - 1)) {
        to--;
    }
    for (int r = from; r < to; r++) {
        height += paging->heights[r];
    }
    return height;
}

static void begin_page(packing *p, int row)
{
    if (p->filled) {
        p->breaks[p->count++] = row;
        p->used = 0;
        p->filled = false;
    }
}

/* Rows that stay together, onto this page or the next. */
static void put(packing *p, int from, int to)
{
    double height = height_of(p->paging, from, to, false);
    if (p->used + height > p->paging->page) {
        begin_page(p, from);
    }
    p->used += height_of(p->paging, from, to, true);
    p->filled = p->filled || height > 0;
}

static void put_group(packing *p, int from, int to)
{
    double page = p->paging->page;
    if (first_cell(p->paging, from)->style == HW_STYLE_PIECE) {
        begin_page(p, from);
    }
    if (height_of(p->paging, from, to, false) <= page) {
        put(p, from, to);
        return;
    }
    if (p->used > (1 - worth_beginning) * page) {
        begin_page(p, from);
    }
    for (int r = from; r < to;) {
        int next = end_of(p->paging, r, may_begin_page);
        next = next < to ? next : to;
        put(p, r, next);
        r = next;
    }
}

int hw_paging_breaks(const hw_paging *paging, int *breaks)
{
    packing p = { .paging = paging, .breaks = breaks };
    for (int r = paging->table->head_rows; r < paging->table->rows;) {
        int next = end_of(paging, r, begins_group);
        put_group(&p, r, next);
        r = next;
    }
    return p.count;
}
