/* A plan as flat tables of typed cells: the one source of text, CSV, JSON and workbook.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_CELLS_H
#define HW_WRITE_CELLS_H

#include "core/plan.h"

typedef enum {
    HW_CELL_EMPTY,
    HW_CELL_TEXT,
    HW_CELL_COUNT,
    HW_CELL_NUMBER,
    HW_CELL_EIGHTHS /* inches, shown as knitters read them: 12 3/8 */
} hw_cell_kind;

typedef enum {
    HW_STYLE_PLAIN,
    HW_STYLE_TITLE,   /* the table's first line */
    HW_STYLE_HEAD,    /* column heads: size names */
    HW_STYLE_SECTION, /* a line that begins a group of rows: a piece's name */
    HW_STYLE_PIECE,   /* the same; on paper a new page begins with it */
    HW_STYLE_LABEL,   /* what a row holds */
    HW_STYLE_KEY,     /* a number that the knitter works from: cast on */
    HW_STYLE_WARNING,
    HW_STYLE_SAFETY,
    HW_STYLE_NOTE,       /* running text, wraps */
    HW_STYLE_PARAGRAPH,  /* the same over all columns, in the first of them */
    HW_STYLE_FILL_IN,    /* an empty cell that a person fills in */
    HW_STYLE_BACKGROUND, /* chart squares */
    HW_STYLE_CONTRAST,
    HW_STYLE_COUNT
} hw_cell_style;

typedef struct {
    hw_cell_kind kind;
    hw_cell_style style;
    const char *text; /* for HW_CELL_TEXT */
    double number;    /* for HW_CELL_COUNT (whole), HW_CELL_NUMBER (rounded to decimals) and
                         HW_CELL_EIGHTHS (rounded to them) */
    int decimals;     /* for HW_CELL_NUMBER, 0 to 4 */
} hw_cell;

/* A table: rows x columns cells, row by row. */
typedef struct {
    const char *name; /* also the workbook's sheet: at most 31 characters, none of []:*?/\ */
    int rows, columns;
    hw_cell *cells;
    int head_rows;    /* rows that stay in view, and repeat when a wide table is folded */
    int head_columns; /* columns that stay in view, and repeat */
    bool square;      /* a chart: narrow columns */
    bool large;       /* read from arm's length: larger letters in the workbook */
} hw_table;

typedef struct {
    hw_table *tables;
    int count;
} hw_tables;

/*
 * Lay a plan out as tables: Sizes, Hem, Chart, Card, Gauge, Tolerance, Alternatives,
 * Notes, Basis, Costs, Measured.
 *
 * Given:     plan      from hw_calculate_plan; it and its project must outlive the tables, which
 * point to their texts arena     owner of the tables and of the texts made for them Returned:  out
 * untouched on failure Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_cells_plan(const hw_plan *plan, hw_arena *arena, hw_tables *out) HW_MUST_USE;

/* The cell at a place; row in [0, rows), column in [0, columns). */
const hw_cell *hw_cells_at(const hw_table *table, int row, int column);

#endif
