/* Where pages begin: nothing parted that a page holds, nothing headed by the foot of a page.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "fixture.h"
#include "write/grid.h"
#include "write/paging.h"

enum { MOST = 400 };

static hw_grid grid;
static double heights[MOST];
static int breaks[MOST];

static void setup(void)
{
    hw_grid_begin(&grid, &arena, "T", 2);
    grid.table.head_rows = 1;
    hw_grid_line(&grid, HW_STYLE_TITLE, "title");
    for (int i = 0; i < MOST; i++) {
        heights[i] = 1;
    }
}

static void rows(int count)
{
    for (int i = 0; i < count; i++) {
        hw_grid_line(&grid, HW_STYLE_LABEL, "row");
    }
}

static int break_at(double page)
{
    hw_table table;
    ck_assert_int_eq(hw_grid_finish(&grid, &table), HW_OK);
    ck_assert_int_le(table.rows, MOST);
    hw_paging paging = { &table, heights, page };
    return hw_paging_breaks(&paging, breaks);
}

/* All by hand, each row 1 high: a blank row, a heading and 4 rows are 6; so 10 hold one section and
 * 12 hold two, the blank row before the third being left at the foot. */
START_TEST(sections_stay_whole)
{
    for (int i = 0; i < 3; i++) {
        hw_grid_section(&grid, "piece");
        rows(4);
    }
    ck_assert_int_eq(break_at(10), 2);
    ck_assert_int_eq(breaks[0], 8); /* the second heading: title, 6 rows, a blank one */
    ck_assert_int_eq(breaks[1], 14);
    ck_assert_int_eq(break_at(12), 1);
    ck_assert_int_eq(breaks[0], 14);
    ck_assert_int_eq(break_at(18), 0);
}
END_TEST

/* A section of 1 + 9 rows on pages of 4: its heading keeps a row beside it, and a row whose first
 * cell is indented or empty stays with the one above. */
START_TEST(long_sections_part_between_steps)
{
    hw_grid_line(&grid, HW_STYLE_SECTION, "piece");   /* row 1 */
    rows(2);                                          /* 2, 3 */
    hw_grid_line(&grid, HW_STYLE_LABEL, "step");      /* 4 */
    hw_grid_line(&grid, HW_STYLE_LABEL, "  goes on"); /* 5 */
    hw_grid_row(&grid);                               /* 6 */
    hw_grid_text(&grid, 1, HW_STYLE_PLAIN, "goes on");
    rows(4); /* 7 to 10 */
    ck_assert_int_eq(break_at(4), 2);
    ck_assert_int_eq(breaks[0], 4); /* 1 to 3, then 4 to 6 and 7, then 8 to 10 */
    ck_assert_int_eq(breaks[1], 8);
}
END_TEST

/* Pages of 10: 7 rows, then a section of 20 that no page holds is begun on a page of its own,
 * because less than 4 rows of this one are left. */
START_TEST(long_sections_begin_where_it_is_worth_it)
{
    rows(7);
    hw_grid_line(&grid, HW_STYLE_SECTION, "piece"); /* row 8 */
    rows(19);
    ck_assert_int_eq(break_at(10), 2);
    ck_assert_int_eq(breaks[0], 8);
    ck_assert_int_eq(breaks[1], 18);
    ck_assert_int_eq(break_at(16), 1); /* 7 and 9 are 16; 11 rows are left */
    ck_assert_int_eq(breaks[0], 17);
}
END_TEST

/* A piece begins a page though there is room, but no empty page comes before the first; headings
 * below each other are one; what stands between a heading and its rows stays with them. */
START_TEST(pieces_and_headings)
{
    hw_grid_row(&grid);
    hw_grid_line(&grid, HW_STYLE_PIECE, "back"); /* row 2 */
    rows(2);
    hw_grid_row(&grid);
    hw_grid_line(&grid, HW_STYLE_PIECE, "front"); /* row 6 */
    hw_grid_line(&grid, HW_STYLE_SECTION, "size 92");
    hw_grid_line(&grid, HW_STYLE_PARAGRAPH, "a finding");
    rows(6);
    ck_assert_int_eq(break_at(100), 1);
    ck_assert_int_eq(breaks[0], 6);
    ck_assert_int_eq(break_at(4), 3);
    ck_assert_int_eq(breaks[0], 6);
    ck_assert_int_eq(breaks[1], 10); /* two headings, the paragraph, a row */
    ck_assert_int_eq(breaks[2], 14);
}
END_TEST

/* By chance: no page is fuller than it may be unless one unbreakable run alone is. */
START_TEST(pages_hold_what_they_are_given)
{
    unsigned state = 7;
    for (int i = 0; i < 60; i++) {
        if (hw_check_random(&state, 3) == 0) {
            hw_grid_section(&grid, "piece");
        }
        rows(1 + hw_check_random(&state, 4));
    }
    for (int page = 4; page < 60; page += 3) {
        int count = break_at(page);
        int from = 1;
        for (int i = 0; i <= count; i++) {
            int to = i < count ? breaks[i] : grid.table.rows;
            int blank = i < count && hw_cells_at(&grid.table, to - 1, 0)->kind == HW_CELL_EMPTY;
            ck_assert_int_gt(to, from);
            ck_assert_int_le(to - from - blank, page);
            from = to;
        }
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { sections_stay_whole, long_sections_part_between_steps,
        long_sections_begin_where_it_is_worth_it, pieces_and_headings,
        pages_hold_what_they_are_given };
    return fixture_run("paging", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
