/* Tables for a terminal: columns that line up, lines that fit, nothing lost.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "example_plan.h"
#include "fixture.h"
#include "write/columns.h"
#include "write/grid.h"
#include "write/text.h"

static hw_grid grid;

static const char *text_of(int width)
{
    hw_table t = { 0 };
    ck_assert_int_eq(hw_grid_finish(&grid, &t), HW_OK);
    hw_tables tables = { &t, 1 };
    hw_text_options options = { width };
    ck_assert_int_eq(hw_text_tables(&tables, &options, &buf), HW_OK);
    return buf.text;
}

static void begin(int columns)
{
    hw_grid_begin(&grid, &arena, "T", columns);
    grid.table.head_rows = 2;
    grid.table.head_columns = 1;
    hw_grid_line(&grid, HW_STYLE_TITLE, "A title that runs on");
    hw_grid_line(&grid, HW_STYLE_HEAD, "size");
}

/* From memory: an accent of its own takes no column, an East Asian character two. */
START_TEST(widths_of_texts)
{
    static const struct {
        const char *text;
        int width;
    } rows[] = { { "", 0 }, { "abc", 3 },
        { "Gr\xC3\xB6\xC3\x9F"
          "e",
            5 },
        { "cafe\xCC\x81", 4 }, { "\xE7\xB7\xA8\xE3\x81\xBF", 4 }, { "\xF0\x9F\xA7\xB6", 2 },
        { "1\xE2\x80\x93"
          "2",
            3 } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ck_assert_int_eq(hw_wrap_width(rows[i].text, strlen(rows[i].text)), rows[i].width);
    }
}
END_TEST

/* Laid out by hand. */
START_TEST(lines_up)
{
    begin(4);
    hw_grid_text(&grid, 1, HW_STYLE_HEAD, "2");
    hw_grid_text(&grid, 2, HW_STYLE_HEAD,
        "Gr\xC3\xB6\xC3\x9F"
        "e 10");
    hw_grid_text(&grid, 3, HW_STYLE_HEAD, "in words");
    hw_grid_section(&grid, "front");
    hw_grid_line(&grid, HW_STYLE_LABEL, "cast on");
    hw_grid_count(&grid, 1, HW_STYLE_KEY, 85);
    hw_grid_count(&grid, 2, HW_STYLE_KEY, -1234);
    hw_grid_text(&grid, 3, HW_STYLE_PLAIN, "85 (x)");
    hw_grid_line(&grid, HW_STYLE_LABEL, "width, cm");
    hw_grid_number(&grid, 1, HW_STYLE_PLAIN, 9.25, 2);
    hw_grid_text(&grid, 2, HW_STYLE_PLAIN, "no");
    ck_assert_str_eq(text_of(80), "A title that runs on\n"
                                  "====================\n"
                                  "size          2  Gr\xC3\xB6\xC3\x9F"
                                  "e 10  in words\n"
                                  "\n"
                                  "front\n"
                                  "cast on      85     -1234  85 (x)\n"
                                  "width, cm  9.25        no\n");
}
END_TEST

/* Laid out by hand: two columns beside the first one in 40 characters, then the other one. */
START_TEST(folds)
{
    begin(4);
    for (int c = 1; c < 4; c++) {
        hw_grid_text(&grid, c, HW_STYLE_HEAD, c == 1 ? "one" : c == 2 ? "two" : "three");
    }
    hw_grid_line(&grid, HW_STYLE_LABEL, "a label of words");
    for (int c = 1; c < 4; c++) {
        hw_grid_number(&grid, c, HW_STYLE_PLAIN, 1234567 + c, 1);
    }
    ck_assert_str_eq(text_of(40), "A title that runs on\n"
                                  "====================\n"
                                  "size                    one        two\n"
                                  "a label of words  1234568.0  1234569.0\n"
                                  "\n"
                                  "size                  three\n"
                                  "a label of words  1234570.0\n");
}
END_TEST

/* Laid out by hand: a row, and a section of rows, with nothing in a later fold is not in it. */
START_TEST(folds_leave_out_bare_rows)
{
    begin(3);
    hw_grid_text(&grid, 1, HW_STYLE_HEAD, "a first column");
    hw_grid_text(&grid, 2, HW_STYLE_HEAD, "other");
    for (int i = 0; i < 2; i++) {
        hw_grid_section(&grid, i == 0 ? "front" : "back");
        hw_grid_line(&grid, HW_STYLE_LABEL, "a label of so many words");
        hw_grid_number(&grid, 1, HW_STYLE_PLAIN, 123456, 4);
        hw_grid_line(&grid, HW_STYLE_LABEL, "more");
        hw_grid_number(&grid, 1, HW_STYLE_PLAIN, i, 0);
    }
    hw_grid_count(&grid, 2, HW_STYLE_PLAIN, 12345);
    ck_assert_str_eq(text_of(40), "A title that runs on\n"
                                  "====================\n"
                                  "                              a first\n"
                                  "size                           column\n"
                                  "\n"
                                  "front\n"
                                  "a label of so many words  123456.0000\n"
                                  "more                                0\n"
                                  "\n"
                                  "back\n"
                                  "a label of so many words  123456.0000\n"
                                  "more                                1\n"
                                  "\n"
                                  "size                      other\n"
                                  "\n"
                                  "back\n"
                                  "more                      12345\n");
}
END_TEST

/* Laid out by hand. */
START_TEST(wraps_notes)
{
    begin(2);
    hw_grid_text(&grid, 1, HW_STYLE_HEAD, "note");
    hw_grid_line(&grid, HW_STYLE_WARNING, "warning");
    hw_grid_text(&grid, 1, HW_STYLE_NOTE, "Catch floats of more than five stitches, or line it.");
    hw_grid_line(&grid, HW_STYLE_PLAIN, "remark");
    hw_grid_text(&grid, 1, HW_STYLE_NOTE, "Short.");
    ck_assert_str_eq(text_of(40), "A title that runs on\n"
                                  "====================\n"
                                  "size     note\n"
                                  "warning  Catch floats of more than five\n"
                                  "         stitches, or line it.\n"
                                  "remark   Short.\n");
}
END_TEST

/* Laid out by hand: column numbers stand digit below digit, facts have widths of their own. */
START_TEST(charts)
{
    hw_grid_begin(&grid, &arena, "T", 12);
    grid.table.head_rows = 1;
    grid.table.head_columns = 1;
    grid.table.square = true;
    hw_grid_line(&grid, HW_STYLE_HEAD, "row");
    for (int c = 1; c < 12; c++) {
        hw_grid_count(&grid, c, HW_STYLE_HEAD, c);
    }
    hw_grid_row(&grid);
    hw_grid_count(&grid, 0, HW_STYLE_LABEL, 1);
    for (int c = 1; c < 12; c++) {
        hw_grid_text(
            &grid, c, c % 2 == 0 ? HW_STYLE_CONTRAST : HW_STYLE_BACKGROUND, c % 2 == 0 ? "o" : ".");
    }
    hw_grid_section(&grid, "the figure");
    hw_grid_line(&grid, HW_STYLE_LABEL, "its name, and more");
    hw_grid_text(&grid, 1, HW_STYLE_PLAIN, "heart");
    hw_grid_line(&grid, HW_STYLE_LABEL, "rows");
    hw_grid_count(&grid, 1, HW_STYLE_PLAIN, 6);
    ck_assert_str_eq(text_of(80), "                       1 1\n"
                                  "row  1 2 3 4 5 6 7 8 9 0 1\n"
                                  "  1  . o . o . o . o . o .\n"
                                  "\n"
                                  "the figure\n"
                                  "its name, and more  heart\n"
                                  "rows                6\n");
}
END_TEST

START_TEST(wrapping)
{
    size_t len = 0;
    const char *text = "one two\nthree abcdefghij";
    ck_assert_int_eq(hw_wrap_lines(text, 7), 4);
    static const char *const lines[] = { "one two", "three", "abcdefg", "hij" };
    for (int i = 0; i < 4; i++) {
        const char *line = hw_wrap_line(text, 7, i, &len);
        ck_assert_uint_eq(len, strlen(lines[i]));
        ck_assert_int_eq(memcmp(line, lines[i], len), 0);
    }
    ck_assert_str_eq(hw_wrap_line(text, 7, 4, &len), "");
    ck_assert_uint_eq(len, 0);
    ck_assert_int_eq(hw_wrap_lines("", 7), 0);
    ck_assert_int_eq(hw_wrap_lines("\xE7\xB7\xA8", 1), 1); /* too wide, yet it is shown */
}
END_TEST

static void lines_fit(const char *text, int width)
{
    for (const char *line = text; *line != '\0';) {
        size_t len = strcspn(line, "\n");
        ck_assert_msg(len == 0 || line[len - 1] != ' ', "blank at the end: %.*s", (int)len, line);
        ck_assert_msg(hw_wrap_width(line, len) <= width, "too long: %.*s", (int)len, line);
        ck_assert(line[len] == '\n');
        line += len + 1;
    }
}

START_TEST(example_fits_any_width)
{
    static example e;
    example_plan(&e, &arena);
    for (int show = 0; show < HW_SHOW_COUNT; show++) {
        e.project.show = (hw_show)show;
        hw_tables tables = example_tables(&e, &arena);
        for (int width = 72; width < 200; width += 11) {
            hw_text_options options = { width };
            fixture_empty();
            ck_assert_int_eq(hw_text_tables(&tables, &options, &buf), HW_OK);
            lines_fit(buf.text, width);
            ck_assert_ptr_nonnull(strstr(buf.text, "85 (91, 97, 103)"));
            ck_assert_ptr_nonnull(strstr(buf.text, "104/110"));
        }
    }
}
END_TEST

START_TEST(usual_width)
{
    static example e;
    example_plan(&e, &arena);
    hw_tables tables = example_tables(&e, &arena);
    ck_assert_int_eq(hw_text_tables(&tables, NULL, &buf), HW_OK);
    lines_fit(buf.text, HW_TEXT_WIDTH);
}
END_TEST

START_TEST(refusals)
{
    hw_table wide = { .name = "T", .columns = HW_COLUMNS_MOST + 1 };
    hw_tables tables = { &wide, 1 };
    ck_assert_int_eq(hw_text_tables(&tables, NULL, &buf), HW_ERR_LIMIT);
    static example e;
    example_plan(&e, &arena);
    tables = example_tables(&e, &arena);
    hw_buf small;
    hw_buf_init(&small, &mem, 1000);
    ck_assert_int_eq(hw_text_tables(&tables, NULL, &small), HW_ERR_LIMIT);
    hw_buf_release(&small);
    hw_check_heap poor = { .refuse_at = 2, .refuse_onwards = true };
    hw_mem refusing = hw_check_mem(&poor);
    hw_buf_init(&small, &refusing, HW_BUF_LIMIT);
    ck_assert_int_eq(hw_text_tables(&tables, NULL, &small), HW_ERR_NOMEM);
    hw_buf_release(&small);
    ck_assert_int_eq(poor.live, 0);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { widths_of_texts, lines_up, folds, folds_leave_out_bare_rows,
        wraps_notes, charts, wrapping, example_fits_any_width, usual_width, refusals };
    return fixture_run("text", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
