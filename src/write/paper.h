/* How a table lies on paper: which way the paper lies, how wide and high everything is, where
 * pages begin.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_PAPER_H
#define HW_WRITE_PAPER_H

#include "core/mem.h"
#include "write/cells.h"
#include "write/columns.h"

enum { HW_PAPER_FONT_SIZE = 10 }; /* points, and so is the next one */
enum { HW_PAPER_TITLE_SIZE = 14 };
#define HW_PAPER_LARGE 1.2 /* letters that are read from arm's length */

/* Margins in inches: wide enough for all printers, and at the foot for its line (own choice). */
#define HW_PAPER_MARGIN 0.5
#define HW_PAPER_FOOT   0.7

typedef struct {
    bool portrait;
    int pages_across; /* 1; more for a table that would be too small to read on one */
    bool one_page;    /* on one page, a little smaller where need be */
    double scale;     /* at which it is printed, at most 1 */
    double letters;   /* how much larger than usual all letters are */
    bool squares[HW_COLUMNS_MOST], numbers[HW_COLUMNS_MOST];
    double widths[HW_COLUMNS_MOST]; /* in digits, as workbooks count them */
    double *heights;                /* of each row, in points */
    int *lines;                     /* that each row's words are wrapped to, at least 1 */
    int *breaks;                    /* rows before which a page begins; none where it is one page */
    int break_count;
} hw_paper;

/* Whether words in this style are wrapped in their cell, and whether it is drawn as a box. */
bool hw_paper_wraps(hw_cell_style style);
bool hw_paper_boxed(hw_cell_style style);

/* The last column that a cell takes: what runs on all of its row, and a fact below a chart, whose
 * own column is too narrow, what is empty beside it. */
int hw_paper_last(const hw_table *table, const hw_paper *paper, int row, int column);

/*
 * Lay a table out on A4.
 *
 * Given:     table     at most HW_COLUMNS_MOST columns
 *            arena     owner of the lists
 * Returned:  out       undefined on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      landscape, unless portrait takes fewer pages and its letters stay nearly as large.
 *            A chart is read at a glance, so that its squares may shrink to keep it whole.
 */
hw_status hw_paper_lay(const hw_table *table, hw_arena *arena, hw_paper *out) HW_MUST_USE;

#endif
