/* Changes to a figure: drawn by hand, and against slow searches over thousands of charts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source: arithmetic and drawing by hand; what must hold is said in core/edit.h. */
#include <string.h>

#include "core/edit.h"
#include "fixture.h"

enum { MOST_CELLS = 4000 };

/* A chart from its rows, one blank between them. */
static hw_chart drawn(const char *text)
{
    int width = (int)strcspn(text, " ");
    int rows = ((int)strlen(text) + 1) / (width + 1);
    unsigned char *cells = hw_arena_get(&arena, (size_t)width * (size_t)rows, 1);
    ck_assert_ptr_nonnull(cells);
    for (int i = 0; i < width * rows; i++) {
        cells[i] = text[i / width * (width + 1) + i % width] == 'o' ? HW_CONTRAST : HW_BACKGROUND;
    }
    return (hw_chart){ .name = "drawn", .width = width, .rows = rows, .cells = cells };
}

static void is_drawn(const hw_chart *chart, const char *text)
{
    hw_chart wanted = drawn(text);
    ck_assert_int_eq(chart->width, wanted.width);
    ck_assert_int_eq(chart->rows, wanted.rows);
    ck_assert_str_eq(chart->name, "drawn");
    for (int i = 0; i < wanted.width * wanted.rows; i++) {
        ck_assert_msg(chart->cells[i] == wanted.cells[i], "%s: cell %d", text, i);
    }
}

static hw_chart by_chance(unsigned *state, int most_columns, int most_rows)
{
    int width = 1 + hw_check_random(state, most_columns);
    int rows = 1 + hw_check_random(state, most_rows);
    int of = 2 + hw_check_random(state, 9); /* one stitch in so many is contrast */
    unsigned char *cells = hw_arena_get(&arena, (size_t)width * (size_t)rows, 1);
    ck_assert_ptr_nonnull(cells);
    for (int i = 0; i < width * rows; i++) {
        cells[i] = hw_check_random(state, of) == 0 ? HW_CONTRAST : HW_BACKGROUND;
    }
    return (hw_chart){ .name = "drawn", .width = width, .rows = rows, .cells = cells };
}

START_TEST(turned_by_hand)
{
    hw_chart chart = drawn("oo.. o... ..o.");
    hw_chart out;
    ck_assert_int_eq(hw_edit_mirror(&chart, &arena, &out), HW_OK);
    is_drawn(&out, "..oo ...o .o..");
    ck_assert_int_eq(hw_edit_upside_down(&chart, &arena, &out), HW_OK);
    is_drawn(&out, "..o. o... oo..");
    ck_assert_int_eq(hw_edit_shift(&chart, 1, 0, &arena, &out), HW_OK);
    is_drawn(&out, ".oo. .o.. ...o");
    ck_assert_int_eq(hw_edit_shift(&chart, -1, 0, &arena, &out), HW_OK);
    is_drawn(&out, "o..o ...o .o..");
    ck_assert_int_eq(hw_edit_shift(&chart, 0, 1, &arena, &out), HW_OK);
    is_drawn(&out, "o... ..o. oo..");
    ck_assert_int_eq(hw_edit_shift(&chart, 6, -5, &arena, &out), HW_OK);
    is_drawn(&out, "..o. o... ..oo"); /* two to the right, and one up: five down of three rows */
    is_drawn(&chart, "oo.. o... ..o.");
}
END_TEST

/* What is done twice, or there and back, leaves the chart as it was. */
START_TEST(there_and_back)
{
    unsigned state = 3;
    for (int round = 0; round < 500; round++) {
        hw_chart chart = by_chance(&state, 20, 20);
        size_t cells = (size_t)chart.width * (size_t)chart.rows;
        hw_chart a;
        hw_chart b;
        int right = hw_check_random(&state, 99) - 50;
        int up = hw_check_random(&state, 99) - 50;
        ck_assert_int_eq(hw_edit_mirror(&chart, &arena, &a), HW_OK);
        ck_assert_int_eq(hw_edit_mirror(&a, &arena, &b), HW_OK);
        ck_assert_mem_eq(b.cells, chart.cells, cells);
        ck_assert_int_eq(hw_edit_upside_down(&chart, &arena, &a), HW_OK);
        ck_assert_int_eq(hw_edit_upside_down(&a, &arena, &b), HW_OK);
        ck_assert_mem_eq(b.cells, chart.cells, cells);
        ck_assert_int_eq(hw_edit_shift(&chart, right, up, &arena, &a), HW_OK);
        ck_assert_int_eq(hw_edit_shift(&a, -right, -up, &arena, &b), HW_OK);
        ck_assert_mem_eq(b.cells, chart.cells, cells);
    }
}
END_TEST

START_TEST(spaced)
{
    hw_chart chart = drawn("oo o.");
    hw_chart out;
    ck_assert_int_eq(hw_edit_space(&chart, 3, &arena, &out, NULL), HW_OK);
    is_drawn(&out, "oo... o....");
    ck_assert_int_eq(hw_edit_space(&chart, 0, &arena, &out, NULL), HW_OK);
    is_drawn(&out, "oo o.");
    ck_assert_int_eq(hw_edit_space(&chart, HW_MAX_CHART_COLUMNS - 2, &arena, &out, NULL), HW_OK);
    hw_err err = { 0 };
    out.rows = 77;
    ck_assert_int_eq(
        hw_edit_space(&chart, HW_MAX_CHART_COLUMNS - 1, &arena, &out, &err), HW_ERR_LIMIT);
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "201 columns"));
    ck_assert_int_eq(out.rows, 77);
}
END_TEST

/* By hand: repeats of 4 and 6 come together after 12. */
START_TEST(stacked)
{
    hw_chart above = drawn("o...");
    hw_chart below = drawn("oo.... .....o");
    hw_chart out;
    hw_edit_pile pile = { &above, &below, 1 };
    ck_assert_int_eq(hw_edit_stack(&pile, &arena, &out, NULL), HW_OK);
    is_drawn(&out, "o...o...o... ............ oo....oo.... .....o.....o");
    pile = (hw_edit_pile){ &above, &above, 0 };
    ck_assert_int_eq(hw_edit_stack(&pile, &arena, &out, NULL), HW_OK);
    is_drawn(&out, "o... o...");
    hw_err err = { 0 };
    hw_chart wide = drawn("o................"); /* 17 and 13 columns: 221 */
    hw_chart other = drawn("o............");
    pile = (hw_edit_pile){ &wide, &other, 0 };
    ck_assert_int_eq(hw_edit_stack(&pile, &arena, &out, &err), HW_ERR_LIMIT);
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "come together again after 221"));
    err = (hw_err){ 0 };
    pile = (hw_edit_pile){ &above, &above, HW_MAX_CHART_ROWS - 1 };
    ck_assert_int_eq(hw_edit_stack(&pile, &arena, &out, &err), HW_ERR_LIMIT);
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "401 rows"));
    pile.plain_rows = HW_MAX_CHART_ROWS - 2;
    ck_assert_int_eq(hw_edit_stack(&pile, &arena, &out, NULL), HW_OK);
    ck_assert_int_eq(out.rows, HW_MAX_CHART_ROWS);
}
END_TEST

/* By hand: a row in the middle of three; of two, the lower one. */
START_TEST(side_by_side)
{
    hw_chart low = drawn("oo");
    hw_chart high = drawn("o o o");
    hw_chart middle = drawn("o o");
    hw_chart out;
    ck_assert_int_eq(hw_edit_beside(&low, &high, &arena, &out, NULL), HW_OK);
    is_drawn(&out, "..o ooo ..o");
    ck_assert_int_eq(hw_edit_beside(&high, &low, &arena, &out, NULL), HW_OK);
    is_drawn(&out, "o.. ooo o..");
    ck_assert_int_eq(hw_edit_beside(&low, &middle, &arena, &out, NULL), HW_OK);
    is_drawn(&out, "..o ooo");
    hw_chart wide = { .name = "wide", .width = HW_MAX_CHART_COLUMNS - 1, .rows = 1 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_edit_beside(&wide, &low, &arena, &out, &err), HW_ERR_LIMIT);
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "201 columns"));
}
END_TEST

static hw_chart caught(const hw_chart *chart, int longest, int *added)
{
    hw_chart out;
    hw_edit_catching task = { chart, longest };
    ck_assert_int_eq(hw_edit_catch(&task, &arena, &out, added, NULL), HW_OK);
    return out;
}

/* By hand. A float of 7 with 5 allowed takes one stitch, in its middle; one of 3 with 2 allowed
 * too; contrast runs are broken as well, also round the join; rows of one colour stay. */
START_TEST(caught_by_hand)
{
    int added = 0;
    hw_chart chart = drawn("o.......");
    hw_chart out = caught(&chart, 5, &added);
    is_drawn(&out, "o...o...");
    ck_assert_int_eq(added, 1);
    chart = drawn("oo.oo ..... ooooo ..o..");
    out = caught(&chart, 3, &added);
    ck_assert_int_eq(added, 2);
    ck_assert_mem_eq(out.cells + 5, chart.cells + 5, 10);
    chart = drawn("o..........."); /* 11: with 3 allowed two stitches, stretches of 3 */
    out = caught(&chart, 3, &added);
    is_drawn(&out, "o...o...o...");
    chart = drawn("ooo.oooo"); /* seven round the join, from column 5 to column 3 */
    out = caught(&chart, 4, &added);
    is_drawn(&out, "ooo.ooo.");
    ck_assert_int_eq(added, 1);
}
END_TEST

/* The lower row's stitch stands in the middle; the upper one's makes way for it. */
START_TEST(not_above_each_other)
{
    hw_chart chart = drawn("o....... o.......");
    int added = 0;
    hw_chart out = caught(&chart, 5, &added);
    ck_assert_int_eq(added, 2);
    for (int c = 1; c < 8; c++) {
        ck_assert(out.cells[c] != HW_CONTRAST || out.cells[8 + c] != HW_CONTRAST);
    }
    /* The upper row's 11 with 3 allowed leave no choice: columns 5 and 9. The lower row alone would
     * take column 5, the middle of its five; it makes way to 4 or 6. */
    chart = drawn("o........... .o.....o....");
    out = caught(&chart, 3, &added);
    ck_assert(out.cells[4] == HW_CONTRAST && out.cells[8] == HW_CONTRAST);
    ck_assert(out.cells[12 + 4] != HW_CONTRAST && out.cells[12 + 8] != HW_CONTRAST);
    ck_assert(out.cells[12 + 3] == HW_CONTRAST || out.cells[12 + 5] == HW_CONTRAST);
    /* With 3 allowed, the upper row's 11 leave no choice: columns 5, 9, 17 and 21. The lower row's
     * run from column 7 to 16 can do without 9, its last one of 7 not without 21. */
    chart = drawn("o...........o........... o....o..........o.......");
    out = caught(&chart, 3, &added);
    ck_assert_int_eq(added, 8);
    for (int c = 0; c < 24; c++) {
        bool both = out.cells[c] != chart.cells[c] && out.cells[24 + c] != chart.cells[24 + c];
        ck_assert_int_eq(both, c == 20);
    }
}
END_TEST

/* By hand, with 2 allowed: the upper row must take column 8. Then the middle one has 2 and 7 left,
 * and the lower one has 4 and 6, or 3 and 6, which keep clear of 7. */
START_TEST(three_rows_make_way)
{
    hw_chart chart = drawn(".oo..o.. ....o... o.......");
    int added = 0;
    hw_chart out = caught(&chart, 2, &added);
    ck_assert_int_eq(added, 5);
    ck_assert_int_eq(out.cells[7], HW_CONTRAST);
    ck_assert(out.cells[8 + 1] == HW_CONTRAST && out.cells[8 + 6] == HW_CONTRAST);
    ck_assert(out.cells[16 + 6] != HW_CONTRAST && out.cells[16 + 1] != HW_CONTRAST);
}
END_TEST

/* The fewest, found by walking: as far as the float may go, and one stitch. */
static int walked(const hw_chart *chart, int row, int longest)
{
    const unsigned char *cells = chart->cells + row * chart->width;
    int start = 0;
    while (
        start < chart->width && cells[start] == cells[(start + chart->width - 1) % chart->width]) {
        start++;
    }
    int added = 0;
    int run = 0;
    for (int i = 0; i < chart->width && start < chart->width; i++) {
        int c = (start + i) % chart->width;
        bool fresh = i == 0 || cells[c] != cells[(c + chart->width - 1) % chart->width];
        run = fresh ? 1 : run + 1;
        if (run > longest) {
            added++;
            run = 0;
        }
    }
    return added;
}

/* No float is too long; only what is needed is changed; each change stands alone in its run. */
static void check_caught(const hw_chart *chart, const hw_chart *out, int longest, int added)
{
    hw_motif motif;
    ck_assert_int_eq(hw_motif_analyse(out, 0, 0, &arena, &motif), HW_OK);
    ck_assert_int_le(hw_motif_longest(&motif), longest);
    int changed = 0;
    int fewest = 0;
    for (int row = 0; row < chart->rows; row++) {
        fewest += walked(chart, row, longest);
        for (int c = 0; c < chart->width; c++) {
            const unsigned char *was = chart->cells + row * chart->width;
            const unsigned char *is = out->cells + row * chart->width;
            int left = (c + chart->width - 1) % chart->width;
            int right = (c + 1) % chart->width;
            if (is[c] != was[c]) {
                changed++;
                ck_assert(is[left] == was[c] && is[right] == was[c]);
                ck_assert(was[left] == was[c] && was[right] == was[c]);
            }
        }
    }
    ck_assert_int_eq(changed, added);
    ck_assert_int_eq(changed, fewest);
}

START_TEST(thousands_of_charts)
{
    unsigned state = 5;
    int with = 0;
    for (int round = 0; round < 4000; round++) {
        hw_chart chart = by_chance(&state, 40, 12);
        int longest = HW_EDIT_LEAST_FLOAT + hw_check_random(&state, 7);
        int added = -1;
        hw_chart out = caught(&chart, longest, &added);
        check_caught(&chart, &out, longest, added);
        with += added > 0;
    }
    ck_assert_int_gt(with, 1000);
}
END_TEST

/* The widest chart, and floats as long as it goes. */
START_TEST(widest)
{
    unsigned char *cells = hw_arena_get(&arena, 2 * HW_MAX_CHART_COLUMNS, 1);
    cells[0] = cells[HW_MAX_CHART_COLUMNS + 7] = HW_CONTRAST;
    hw_chart chart = { "drawn", HW_MAX_CHART_COLUMNS, 2, cells };
    for (int longest = HW_EDIT_LEAST_FLOAT; longest < HW_MAX_CHART_COLUMNS + 9; longest++) {
        int added = -1;
        hw_chart out = caught(&chart, longest, &added);
        check_caught(&chart, &out, longest, added);
    }
}
END_TEST

/* Where one row alone is caught, its stretches differ by one stitch at most. */
START_TEST(evenly)
{
    for (int width = 4; width < 60; width++) {
        for (int longest = HW_EDIT_LEAST_FLOAT; longest < 12; longest++) {
            unsigned char *cells = hw_arena_get(&arena, (size_t)width, 1);
            cells[width / 3] = HW_CONTRAST;
            hw_chart chart = { "drawn", width, 1, cells };
            hw_chart out = caught(&chart, longest, NULL);
            int shortest = width;
            int most = 0;
            int run = 0;
            for (int i = 1; i <= width; i++) {
                if (out.cells[(width / 3 + i) % width] == HW_CONTRAST) {
                    shortest = run < shortest ? run : shortest;
                    most = run > most ? run : most;
                    run = 0;
                } else {
                    run++;
                }
            }
            ck_assert_int_le(most - shortest, 1);
            ck_assert_int_gt(shortest, 0);
        }
    }
}
END_TEST

/* Where the stitches of two rows can stand, tried out one by one as bits of a number. */
static bool good_row(unsigned bits, unsigned fresh, int width, int longest)
{
    int run = 0;
    for (int i = 0; i < 2 * width; i++) {
        run = ((bits | fresh) >> (i % width) & 1U) != 0 ? 0 : run + 1;
        if (run > longest) {
            return false;
        }
    }
    unsigned all = bits | fresh;
    unsigned round =
        (all << 1 | all >> (width - 1) | all >> 1 | all << (width - 1)) & ((1U << width) - 1);
    return (fresh & bits) == 0 && (fresh & round) == 0;
}

static int ones(unsigned bits)
{
    int count = 0;
    for (; bits != 0; bits &= bits - 1) {
        count++;
    }
    return count;
}

/* Two rows with one contrast stitch or two: no fewer stand above each other in any other way. */
START_TEST(as_few_above_each_other_as_can_be)
{
    unsigned state = 19;
    int forced = 0;
    for (int round = 0; round < 150; round++) {
        int width = 5 + hw_check_random(&state, 6);
        int longest = 2 + hw_check_random(&state, 2);
        unsigned rows[2];
        for (int i = 0; i < 2; i++) {
            rows[i] = 1U << hw_check_random(&state, width) | 1U << hw_check_random(&state, width);
        }
        unsigned char *cells = hw_arena_get(&arena, 2 * (size_t)width, 1);
        for (int i = 0; i < 2 * width; i++) {
            cells[i] = (rows[i / width] >> (i % width) & 1U) != 0 ? HW_CONTRAST : HW_BACKGROUND;
        }
        hw_chart chart = { "drawn", width, 2, cells };
        int added = 0;
        hw_chart out = caught(&chart, longest, &added);
        int above = 0;
        for (int c = 0; c < width; c++) {
            above += out.cells[c] != cells[c] && out.cells[width + c] != cells[width + c];
        }
        int least = width;
        int fewest[2] = { walked(&chart, 0, longest), walked(&chart, 1, longest) };
        for (unsigned a = 0; a < 1U << width; a++) {
            for (unsigned b = 0; b < 1U << width && ones(a) == fewest[0]; b++) {
                bool good = ones(b) == fewest[1] && good_row(rows[0], a, width, longest) &&
                            good_row(rows[1], b, width, longest);
                least = good && ones(a & b) < least ? ones(a & b) : least;
            }
        }
        ck_assert_int_eq(above, least);
        forced += least > 0;
    }
    ck_assert_int_gt(forced, 0);
    ck_assert_int_lt(forced, 100);
}
END_TEST

START_TEST(refusals)
{
    hw_chart chart = drawn("o.......");
    hw_chart out = { .rows = 77 };
    hw_err err = { 0 };
    int added = -3;
    hw_edit_catching task = { &chart, 1 };
    ck_assert_int_eq(hw_edit_catch(&task, &arena, &out, &added, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "give 2 stitches or more"));
    ck_assert_int_eq(added, -3);
    task.longest = 3;
    hw_edit_pile pile = { &chart, &chart, 0 };
    for (long n = 1; n <= 7; n++) {
        hw_arena poor;
        hw_check_heap small;
        hw_check_open(&poor, &small, n, true);
        hw_status wanted = HW_ERR_NOMEM;
        ck_assert_int_eq(hw_edit_catch(&task, &poor, &out, NULL, NULL), n < 7 ? wanted : HW_OK);
        ck_assert_int_eq(out.rows, n < 7 ? 77 : 1);
        hw_check_close(&poor, &small);
    }
    out.rows = 77;
    hw_arena poor;
    hw_check_heap small;
    hw_check_open(&poor, &small, 1, true);
    ck_assert_int_eq(hw_edit_mirror(&chart, &poor, &out), HW_ERR_NOMEM);
    ck_assert_int_eq(hw_edit_space(&chart, 1, &poor, &out, NULL), HW_ERR_NOMEM);
    ck_assert_int_eq(hw_edit_stack(&pile, &poor, &out, NULL), HW_ERR_NOMEM);
    ck_assert_int_eq(hw_edit_beside(&chart, &chart, &poor, &out, NULL), HW_ERR_NOMEM);
    ck_assert_int_eq(out.rows, 77);
    hw_check_close(&poor, &small);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { turned_by_hand, there_and_back, spaced, stacked, side_by_side,
        caught_by_hand, not_above_each_other, three_rows_make_way, thousands_of_charts, widest,
        evenly, as_few_above_each_other_as_can_be, refusals };
    return fixture_run("edit", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
