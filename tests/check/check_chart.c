/* Drawn charts: the cells, and what is said of each slip of the pencil.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/chart.h"

#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "reading.h"

static hw_status read_chart(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status = hw_yaml_read(text, len, room, &root, err);
    return status == HW_OK ? hw_chart_read(hw_node_find(root, "chart"), "Fish", room, out, err)
                           : status;
}

static const hw_check_reader reader = {
    .good = "# a fish\n"
            "chart: |\n"
            "  .oo.o\n"
            "  oooo.\n"
            "  .oo.o\n"
            "gap: 1\n",
    .read = read_chart,
    .size = sizeof(hw_chart),
};

/* By hand. */
START_TEST(cells_row_by_row)
{
    static const unsigned char cells[] = { 0, 1, 1, 0, 1, 1, 1, 1, 1, 0, 0, 1, 1, 0, 1 };
    static const char *const ways[] = { "chart: |", "chart: |-", "chart: |2", "chart: | # fish" };
    for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
        hw_chart chart;
        char *text = hw_check_edit(reader.good, "chart: |", ways[i]);
        hw_check_taken(&reader, text, &arena, &chart);
        ck_assert_str_eq(chart.name, "Fish");
        ck_assert_int_eq(chart.width, 5);
        ck_assert_int_eq(chart.rows, 3);
        ck_assert_mem_eq(chart.cells, cells, sizeof cells);
        free(text);
    }
}
END_TEST

/* Lines and columns by hand in the text above. */
static const hw_check_fault faults[] = {
    { "oooo.", "ooo.", HW_ERR_SYNTAX, 4, 7, "row 2 of the chart has 4 columns and row 1 has 5",
        "equally long" },
    { "oooo.", "oooo..", HW_ERR_SYNTAX, 4, 8, "row 2 of the chart has 6 columns", "equally long" },
    { "oooo.", "oXoo.", HW_ERR_SYNTAX, 4, 4, "row 2 of the chart: `X`", "write `o`" },
    { "oooo.", "OOOO.", HW_ERR_SYNTAX, 4, 3, "`O`", "write `o`" },
    { "oooo.", "oo0o.", HW_ERR_SYNTAX, 4, 5, "`0`", "write `o`" },
    { "oooo.", "oo\xE2\x97\x8Fo.", HW_ERR_SYNTAX, 4, 5, "`\xE2\x97\x8F`", "write `o`" },
    { "oooo.", "oooo. ", HW_ERR_SYNTAX, 4, 8, "a blank stands here", "no blanks" },
    { "oooo.", "oo oo", HW_ERR_SYNTAX, 4, 5, "a blank stands here", "no blanks" },
    { "oooo.", "oooo.\t", HW_ERR_SYNTAX, 4, 8, "a blank stands here", "no blanks" },
    { "oooo.", " oooo", HW_ERR_SYNTAX, 4, 3, "a blank stands here", "no blanks" },
    { "oooo.", "oooo. # tail", HW_ERR_SYNTAX, 4, 8, "a blank stands here", "no blanks" },
    { "  oooo.\n", "\n", HW_ERR_SYNTAX, 4, 3, "row 2 of the chart is an empty line",
        "take it out" },
    { "chart: |\n", "chart: |2\n\n", HW_ERR_SYNTAX, 3, 1, "row 1 of the chart is an empty line",
        "take it out" },
    { "chart: |", "chart: >", HW_ERR_KIND, 2, 8, "`chart: |`", "on the lines below" },
    { "chart: |\n  .oo.o\n  oooo.\n  .oo.o\n", "chart: .oo.o\n", HW_ERR_KIND, 2, 8, "`chart: |`",
        "on the lines below" },
    { "  .oo.o\n  oooo.\n  .oo.o\n", "", HW_ERR_SYNTAX, 2, 8, "the chart is empty",
        "draw it with `o`" },
    { "chart: |\n  .oo.o\n  oooo.\n  .oo.o\n", "chart: |+\n\n\n", HW_ERR_SYNTAX, 2, 8,
        "the chart is empty", "draw it with `o`" },
    { "  .oo.o\n  oooo.\n  .oo.o\n", "  ...\n  ...\n", HW_ERR_SYNTAX, 3, 3, "no contrast stitch",
        "draw the figure with `o`" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* A chart of so many columns and rows, the first cell contrast. */
static char *drawn(int width, int rows)
{
    size_t line = (size_t)width + 2;
    char *text = calloc(10 + line * (size_t)rows + 1, 1);
    ck_assert_ptr_nonnull(text);
    memcpy(text, "chart: |\n", 9);
    for (int row = 0; row < rows; row++) {
        char *at = text + 9 + line * (size_t)row;
        memset(at, '.', line);
        at[0] = ' ';
        at[1] = row == 0 ? 'o' : '.';
        at[line - 1] = '\n';
    }
    return text;
}

/* Own choice of limits: HW_MAX_CHART_COLUMNS and HW_MAX_CHART_ROWS are taken, one more is not. */
START_TEST(largest_charts)
{
    char *most = drawn(HW_MAX_CHART_COLUMNS, HW_MAX_CHART_ROWS);
    char *wide = drawn(HW_MAX_CHART_COLUMNS + 1, 1);
    char *high = drawn(1, HW_MAX_CHART_ROWS + 1);
    hw_chart chart;
    hw_check_taken(&reader, most, &arena, &chart);
    ck_assert_int_eq(chart.width, HW_MAX_CHART_COLUMNS);
    ck_assert_int_eq(chart.rows, HW_MAX_CHART_ROWS);
    hw_check_told(&reader, &(hw_check_fault){ NULL, wide, HW_ERR_LIMIT, 2, 2, "too large",
                               "at most 200 columns and 400 rows" });
    hw_check_told(&reader, &(hw_check_fault){ NULL, high, HW_ERR_LIMIT, 402, 2, "too large",
                               "at most 200 columns and 400 rows" });
    free(high);
    free(wide);
    free(most);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 5);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("chart");
    TCase *tcase = fixture_case(suite, "chart", NULL, NULL);
    tcase_add_test(tcase, cells_row_by_row);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, ROWS(faults));
    tcase_add_test(tcase, largest_charts);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
