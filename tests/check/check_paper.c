/* How tables lie on A4: which way, how large, and that a page holds what it is given.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fixture.h"
#include "write/grid.h"
#include "write/paper.h"

static hw_grid grid;
static hw_table table;
static hw_paper paper;

static void begin(int columns)
{
    hw_grid_begin(&grid, &arena, "T", columns);
    grid.table.head_rows = 1;
    grid.table.head_columns = 1;
    hw_grid_line(&grid, HW_STYLE_TITLE, "title");
}

static void lay(void)
{
    ck_assert_int_eq(hw_grid_finish(&grid, &table), HW_OK);
    ck_assert_int_eq(hw_paper_lay(&table, &arena, &paper), HW_OK);
}

/* A point is the 72nd part of an inch, A4 297 by 210 mm (ISO 216, from memory). */
static const double points_in_mm = 72 / 25.4;

/* The rows of each page and those that repeat are no higher than the paper without its margins. */
static void pages_fit(void)
{
    double down =
        (paper.portrait ? 297 : 210) * points_in_mm - 72 * (HW_PAPER_MARGIN + HW_PAPER_FOOT);
    int page = 0;
    double used = 0;
    for (int r = 0; r < table.rows; r++) {
        if (page < paper.break_count && paper.breaks[page] == r) {
            page++;
            used = paper.heights[0];
        }
        used += paper.heights[r];
        ck_assert_double_le(used * paper.scale, down);
    }
    ck_assert_int_eq(page, paper.break_count);
}

static void label_and_number(int i)
{
    hw_grid_line(&grid, HW_STYLE_LABEL, "a label");
    hw_grid_count(&grid, 1, HW_STYLE_PLAIN, i);
}

/* A handful of rows stays as it is, on one page in landscape; twice as many as that holds go onto
 * one in portrait, and hundreds onto several. */
START_TEST(narrow_tables)
{
    begin(2);
    for (int i = 0; i < 10; i++) {
        label_and_number(i);
    }
    lay();
    ck_assert(paper.one_page && !paper.portrait);
    ck_assert_double_eq_tol(paper.scale, 1, 1e-12);
    for (int i = 0; i < 35; i++) {
        label_and_number(i);
    }
    lay();
    ck_assert(paper.one_page && paper.portrait);
    for (int i = 0; i < 300; i++) {
        label_and_number(i);
    }
    lay();
    ck_assert(paper.portrait);
    ck_assert_int_gt(paper.break_count, 3);
    pages_fit();
}
END_TEST

/* Words are wrapped until a table is no wider than its paper: 841.9 points less two margins of
 * half an inch, each column 7 dots to the digit and 5 more, 96 dots to the inch. */
START_TEST(words_are_wrapped_to_the_page)
{
    begin(3);
    for (int i = 0; i < 40; i++) {
        label_and_number(i);
        hw_grid_text(&grid, 2, HW_STYLE_NOTE,
            "So many words that they would never go beside each other into one line of a page, not "
            "even of one that lies on its long side; so they are wrapped, and the row is higher.");
    }
    lay();
    double width = 0;
    for (int c = 0; c < 3; c++) {
        width += (7 * paper.widths[c] + 5) * 72 / 96;
    }
    ck_assert_double_le(width * paper.scale, (paper.portrait ? 595.3 : 841.9) - 72);
    ck_assert_int_ge(paper.lines[1], 2);
    ck_assert_double_gt(paper.heights[1], 25); /* two lines of 12.75 points or so */
    pages_fit();
}
END_TEST

/* A paragraph is as wide as all columns together, so that it takes few lines. */
START_TEST(paragraphs_take_the_row)
{
    begin(4);
    for (int c = 1; c < 4; c++) {
        hw_grid_text(&grid, c, HW_STYLE_HEAD, "twenty letters wide.");
    }
    hw_grid_line(&grid, HW_STYLE_PARAGRAPH,
        "eighty letters that go into one line, as there are "
        "three columns of twenty here.");
    lay();
    ck_assert_int_eq(hw_paper_last(&table, &paper, 0, 0), 0); /* a filled cell is beside it */
    ck_assert_int_eq(hw_paper_last(&table, &paper, 1, 0), 3);
    ck_assert_int_le(paper.lines[1], 2);
}
END_TEST

/* Sixty sizes are too many for one page across, and are not made too small to read. */
START_TEST(wide_tables)
{
    begin(62);
    for (int i = 0; i < 5; i++) {
        hw_grid_line(&grid, HW_STYLE_LABEL, "a label");
        for (int c = 1; c < 62; c++) {
            hw_grid_number(&grid, c, HW_STYLE_PLAIN, 1234.5, 1);
        }
    }
    lay();
    ck_assert_int_ge(paper.pages_across, 2);
    ck_assert_double_ge(paper.scale, 0.6);
}
END_TEST

/* Forty rows of squares, as a card has, are on one page with words below on the next. */
START_TEST(cards)
{
    begin(26);
    grid.table.square = true;
    for (int r = 0; r < 60; r++) {
        hw_grid_row(&grid);
        hw_grid_count(&grid, 0, HW_STYLE_LABEL, r);
        for (int c = 1; c < 25; c++) {
            hw_grid_text(&grid, c, HW_STYLE_CONTRAST, "o");
        }
    }
    hw_grid_section(&grid, "the card");
    for (int r = 0; r < 80; r++) {
        hw_grid_line(&grid, HW_STYLE_LABEL, "a fact");
        hw_grid_text(&grid, 1, HW_STYLE_PLAIN,
            "which runs over many squares, because its own column "
            "is narrow");
    }
    lay();
    ck_assert(paper.portrait);
    ck_assert(!paper.one_page);
    ck_assert_int_ge(paper.break_count, 1);
    ck_assert_int_eq(paper.breaks[0], 62); /* title, 60 rows, a blank one */
    ck_assert_int_eq(hw_paper_last(&table, &paper, 62 + 1, 1), 25);
    ck_assert_int_eq(hw_paper_last(&table, &paper, 1, 1), 1);
    pages_fit();
}
END_TEST

START_TEST(refusals)
{
    begin(2);
    label_and_number(1);
    ck_assert_int_eq(hw_grid_finish(&grid, &table), HW_OK);
    for (long n = 1; n <= 3; n++) {
        hw_arena poor;
        hw_check_heap counted;
        hw_check_open(&poor, &counted, n, true);
        ck_assert_int_eq(hw_paper_lay(&table, &poor, &paper), HW_ERR_NOMEM);
        hw_check_close(&poor, &counted);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { narrow_tables, words_are_wrapped_to_the_page,
        paragraphs_take_the_row, wide_tables, cards, refusals };
    return fixture_run("paper", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
