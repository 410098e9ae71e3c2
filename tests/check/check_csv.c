/* Comma-separated values: read back by a reader of RFC 4180, every cell is there again.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>
#include <string.h>

#include "core/num.h"
#include "example_plan.h"
#include "fixture.h"
#include "write/csv.h"
#include "write/grid.h"

/* One field by RFC 4180, section 2; *end is what ended it: ',' or '\n' for CR LF. */
static const char *read_field(const char *at, char *room, size_t size, char *end)
{
    size_t len = 0;
    bool quoted = *at == '"';
    at += quoted;
    while (quoted ? !(at[0] == '"' && at[1] != '"') : strchr(",\r", *at) == NULL) {
        ck_assert_msg(*at != '\0' && len + 1 < size, "no end of a field");
        ck_assert_msg(quoted || *at != '"', "a quote in a bare field");
        at += quoted && *at == '"';
        room[len++] = *at++;
    }
    room[len] = '\0';
    at += quoted;
    if (*at == ',') {
        *end = ',';
        return at + 1;
    }
    ck_assert(at[0] == '\r' && at[1] == '\n');
    *end = '\n';
    return at + 2;
}

static void is_cell(const hw_cell *cell, const char *field)
{
    if (cell->kind == HW_CELL_EMPTY) {
        ck_assert_str_eq(field, "");
    } else if (cell->kind == HW_CELL_TEXT) {
        ck_assert_str_eq(field + (field[0] == '\'' && cell->text[0] != '\''), cell->text);
    } else if (cell->kind == HW_CELL_EIGHTHS) {
        double found = 0; /* as knitters write it: 12 3/8 */
        ck_assert_int_eq(hw_num_parse(field, strlen(field), &found, NULL), HW_OK);
        ck_assert_double_eq_tol(found, cell->number, 1e-9);
    } else {
        char *end = NULL;
        double found = strtod(field, &end);
        ck_assert(end != field && *end == '\0');
        ck_assert_double_eq_tol(found, cell->number, 1e-9);
    }
}

static const char *read_table(const char *at, const hw_table *t)
{
    char room[1024];
    char end = 0;
    at = read_field(at, room, sizeof room, &end);
    ck_assert_str_eq(room, t->name);
    ck_assert_int_eq(end, '\n');
    for (int i = 0; i < t->rows * t->columns; i++) {
        at = read_field(at, room, sizeof room, &end);
        is_cell(&t->cells[i], room);
        ck_assert_int_eq(end, (i + 1) % t->columns == 0 ? '\n' : ',');
    }
    ck_assert(at[0] == '\r' && at[1] == '\n');
    return at + 2;
}

START_TEST(reads_back)
{
    static example e;
    example_plan(&e, &arena);
    for (int show = 0; show < HW_SHOW_COUNT; show++) {
        e.project.show = (hw_show)show;
        hw_tables tables = example_tables(&e, &arena);
        fixture_empty();
        ck_assert_int_eq(hw_csv_tables(&tables, &buf), HW_OK);
        const char *at = buf.text;
        for (int i = 0; i < tables.count; i++) {
            at = read_table(at, &tables.tables[i]);
        }
        ck_assert_ptr_eq(at, buf.text + buf.len);
    }
}
END_TEST

static const char *one_cell(const char *text)
{
    hw_grid grid;
    hw_table t = { 0 };
    hw_grid_begin(&grid, &arena, "T", 1);
    hw_grid_line(&grid, HW_STYLE_PLAIN, text);
    ck_assert_int_eq(hw_grid_finish(&grid, &t), HW_OK);
    hw_tables tables = { &t, 1 };
    fixture_empty();
    ck_assert_int_eq(hw_csv_tables(&tables, &buf), HW_OK);
    return buf.text;
}

/* RFC 4180, section 2, rules 5 to 7. */
START_TEST(quotes)
{
    ck_assert_str_eq(one_cell("plain words"), "T\r\nplain words\r\n\r\n");
    ck_assert_str_eq(one_cell("a, b"), "T\r\n\"a, b\"\r\n\r\n");
    ck_assert_str_eq(one_cell("12\" wide"), "T\r\n\"12\"\" wide\"\r\n\r\n");
    ck_assert_str_eq(one_cell("\"\""), "T\r\n\"\"\"\"\"\"\r\n\r\n");
    ck_assert_str_eq(one_cell("two\nlines"), "T\r\n\"two\nlines\"\r\n\r\n");
}
END_TEST

/* Common practice, no source: these characters begin a formula in spreadsheets. */
START_TEST(no_formula)
{
    ck_assert_str_eq(one_cell("=1+1"), "T\r\n'=1+1\r\n\r\n");
    ck_assert_str_eq(one_cell("+x"), "T\r\n'+x\r\n\r\n");
    ck_assert_str_eq(one_cell("-x"), "T\r\n'-x\r\n\r\n");
    ck_assert_str_eq(one_cell("@x"), "T\r\n'@x\r\n\r\n");
    ck_assert_str_eq(one_cell("\tx"), "T\r\n'\tx\r\n\r\n");
    ck_assert_str_eq(one_cell("=A1,\"b\""), "T\r\n\"'=A1,\"\"b\"\"\"\r\n\r\n");
    ck_assert_str_eq(one_cell("a=1"), "T\r\na=1\r\n\r\n");
}
END_TEST

START_TEST(numbers_are_bare)
{
    hw_grid grid;
    hw_table t = { 0 };
    hw_grid_begin(&grid, &arena, "T", 4);
    hw_grid_row(&grid);
    hw_grid_count(&grid, 0, HW_STYLE_PLAIN, -3);
    hw_grid_number(&grid, 1, HW_STYLE_PLAIN, -0.456, 1);
    hw_grid_number(&grid, 3, HW_STYLE_PLAIN, 12, 2);
    ck_assert_int_eq(hw_grid_finish(&grid, &t), HW_OK);
    hw_tables tables = { &t, 1 };
    ck_assert_int_eq(hw_csv_tables(&tables, &buf), HW_OK);
    ck_assert_str_eq(buf.text, "T\r\n-3,-0.5,,12.00\r\n\r\n");
}
END_TEST

START_TEST(refusals)
{
    static example e;
    example_plan(&e, &arena);
    hw_tables tables = example_tables(&e, &arena);
    hw_buf small;
    hw_buf_init(&small, &mem, 500);
    ck_assert_int_eq(hw_csv_tables(&tables, &small), HW_ERR_LIMIT);
    hw_buf_release(&small);
    hw_check_heap poor = { .refuse_at = 3, .refuse_onwards = true };
    hw_mem refusing = hw_check_mem(&poor);
    hw_buf_init(&small, &refusing, HW_BUF_LIMIT);
    ck_assert_int_eq(hw_csv_tables(&tables, &small), HW_ERR_NOMEM);
    hw_buf_release(&small);
    ck_assert_int_eq(poor.live, 0);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { reads_back, quotes, no_formula, numbers_are_bare, refusals };
    return fixture_run("csv", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
