/* Grids: from separated values, as spreadsheet programs save them, and cell by cell.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/rows.h"

#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "reading.h"

static const char *const heads[] = { "size", "piece" };

static hw_status read_rows(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_rows_text in = { text, len, hw_rows_separator(text, len, heads) };
    return hw_rows_csv(&in, room, out, err);
}

static const hw_check_reader reader = {
    .good = "size,piece,remark\r\n"
            "small,front,\"a, b\"\r\n"
            "\r\n"
            "large,,'-1\r\n",
    .read = read_rows,
    .size = sizeof(hw_rows),
};

/* Rows parted by `/`, cells by `|`, for comparing. */
static void holds(const hw_rows *rows, const char *wanted)
{
    char found[512] = { 0 };
    size_t at = 0;
    for (int r = 0; r < rows->rows; r++) {
        for (int c = 0; c < rows->columns; c++) {
            const char *text = hw_rows_at(rows, r, c);
            size_t len = text == NULL ? 0 : strlen(text);
            ck_assert(text == NULL || len > 0);
            ck_assert_uint_lt(at + len + 2, sizeof found);
            if (len > 0) {
                memcpy(found + at, text, len);
            }
            at += len;
            found[at++] = c + 1 < rows->columns ? '|' : '/';
        }
    }
    ck_assert_str_eq(found, wanted);
}

/* By hand, from the rules of quoting (RFC 4180, 2) and what spreadsheet programs let pass. */
static const struct {
    const char *text, *cells;
    bool semicolons;
} tables[] = {
    { "", "", false },
    { "\n\n", "", false },
    { "a", "a/", false },
    { "a,b\nc,d\n", "a|b/c|d/", false },
    { "a,b\r\nc,d", "a|b/c|d/", false },
    { "a,b\rc,d\r", "a|b/c|d/", false },
    { "a,\n,b\n", "a|/|b/", false },
    { "a,b,,\n", "a|b/", false }, /* a grid is as large as its cells need */
    { "\n\na", "//a/", false },
    { "\xEF\xBB\xBFsize,piece\n", "size|piece/", false },
    { "\"a\"\"b\",\"c,d\"", "a\"b|c,d/", false },
    { "\"two\r\nlines\",b\n", "two\r\nlines|b/", false },
    { "\"\",a", "|a/", false },
    { "12\",a", "12\"|a/", false },     /* inches: a sign in the middle opens nothing */
    { "\"a\"b,c", "ab|c/", false },     /* what follows a quotation belongs to the cell */
    { "\" a \",b ", " a |b /", false }, /* blanks are kept */
    { "'=1,'-2,'@a,''b", "=1|-2|@a|''b/", false },
    { "'+3,'\"a,'", "+3|'\"a|'/", false },
    { "size;piece\n1,5;2\n", "size|piece/1,5|2/", true },
    { "\xEF\xBB\xBF\"Size\" ; \"PIECE\";\n", "Size |PIECE/", true },
    { "x;y\n1,5\n", "x;y|/1|5/", false }, /* no heads, as many of each sign: commas */
    { "x;y;z\n1,5\n", "x|y|z/1,5||/", true },
    { "sep=;\n\"size\";\"piece\"\na,b,c,d,e\n", "sep=|/size|piece/a,b,c,d,e|/", true },
    { "a;b;c;d;e\nx,size,piece,y\n", "a;b;c;d;e|||/x|size|piece|y/", false },
    { ";SIZE;Piece\r\n", "|SIZE|Piece/", true },
    { "sizes;piece\nsize;pieces\na,b,c,d\n", "sizes;piece|||/size;pieces|||/a|b|c|d/", false },
};

START_TEST(separated_values)
{
    hw_rows rows;
    hw_check_taken(&reader, tables[_i].text, &arena, &rows);
    holds(&rows, tables[_i].cells);
    ck_assert_msg(rows.semicolons == tables[_i].semicolons, "%s", tables[_i].text);
}
END_TEST

/* Own choice of words and limits; places by hand. */
static const hw_check_fault faults[] = {
    { "\"a, b\"", "\"a, b", HW_ERR_SYNTAX, 2, 3, "a quotation mark opens here", "at the end" },
    { "large", "\"large", HW_ERR_SYNTAX, 4, 1, "none closes it", "second one" },
    { NULL, "\xFF\xFEs\n", HW_ERR_SYNTAX, 0, 0, "cannot be read as a table", "UTF-8" },
    { NULL,
        "size,piece\nGr\xF6\xDF"
        "e,b\n",
        HW_ERR_SYNTAX, 0, 0, "cannot be read", ".xlsx" },
    { NULL, "PK\x03\x04", HW_ERR_SYNTAX, 0, 0, "cannot be read", "save the sheet" },
};

START_TEST(mistakes)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* A text of one cell at a place. */
static char *far_off(int row, int column, size_t *len)
{
    *len = (size_t)row + (size_t)column + 1;
    char *text = malloc(*len + 1);
    ck_assert_ptr_nonnull(text);
    memset(text, '\n', (size_t)row);
    memset(text + row, ',', (size_t)column);
    memcpy(text + row + column, "x", 2);
    return text;
}

/* Own choice: 20,000 rows of 200 columns, and not one more. */
START_TEST(limits)
{
    static const struct {
        int row, column;
        hw_status status;
    } places[] = { { 19999, 199, HW_OK }, { 20000, 0, HW_ERR_LIMIT }, { 0, 200, HW_ERR_LIMIT } };
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++) {
        hw_err err = { .code = HW_OK };
        hw_rows rows = { .rows = -1 };
        size_t len = 0;
        char *text = far_off(places[i].row, places[i].column, &len);
        ck_assert_int_eq(read_rows(text, len, &arena, &rows, &err), places[i].status);
        if (places[i].status == HW_OK) {
            ck_assert_int_eq(rows.rows, places[i].row + 1);
            ck_assert_int_eq(rows.columns, places[i].column + 1);
            ck_assert_str_eq(hw_rows_at(&rows, places[i].row, places[i].column), "x");
        } else {
            ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "20000 rows and 200 columns"));
            hw_check_plain(&err);
            ck_assert_int_eq(rows.rows, -1);
        }
        free(text);
    }
}
END_TEST

START_TEST(beyond_the_grid_is_empty)
{
    hw_rows rows;
    hw_check_taken(&reader, reader.good, &arena, &rows);
    holds(&rows, "size|piece|remark/small|front|a, b/||/large||-1/");
    ck_assert_ptr_null(hw_rows_at(&rows, -1, 0));
    ck_assert_ptr_null(hw_rows_at(&rows, 0, -1));
    ck_assert_ptr_null(hw_rows_at(&rows, 4, 0));
    ck_assert_ptr_null(hw_rows_at(&rows, 0, 3));
}
END_TEST

/* By hand: any order, the second text at a place wins, an empty one adds nothing. */
START_TEST(cell_by_cell)
{
    hw_rows_gather gather;
    hw_rows rows;
    hw_rows_begin(&gather, &mem);
    hw_rows_put(&gather, 1, 1, "d", 1);
    hw_rows_put(&gather, 0, 0, "ax", 1);
    hw_rows_put(&gather, 1, 1, "D", 1);
    hw_rows_put(&gather, 5, 5, "", 0);
    ck_assert_int_eq(hw_rows_end(&gather, &arena, &rows, NULL), HW_OK);
    holds(&rows, "a|/|D/");
    hw_rows_release(&gather);
    hw_rows_release(&gather);
}
END_TEST

/* Own choice: 20 MB of texts in all. A thousand bytes short of it fit, a cell more does not. */
START_TEST(texts_are_limited)
{
    enum { CELL = 1 << 20 };
    hw_rows_gather gather;
    hw_rows rows;
    hw_err err = { .code = HW_OK };
    char *text = calloc(CELL, 1);
    ck_assert_ptr_nonnull(text);
    memset(text, 'x', CELL);
    hw_rows_begin(&gather, &mem);
    for (int i = 0; i < 20; i++) {
        hw_rows_put(&gather, i, 0, text, CELL - 1);
    }
    ck_assert_int_eq(hw_rows_end(&gather, &arena, &rows, &err), HW_OK);
    hw_rows_put(&gather, 20, 0, text, 1);
    ck_assert_int_eq(hw_rows_end(&gather, &arena, &rows, &err), HW_ERR_LIMIT);
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "too large"));
    hw_rows_release(&gather);
    free(text);
}
END_TEST

START_TEST(refused_memory)
{
    hw_check_refused(&reader, 10);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("rows");
    TCase *tcase = fixture_case(suite, "rows", NULL, NULL);
    tcase_add_loop_test(tcase, separated_values, 0, ROWS(tables));
    tcase_add_loop_test(tcase, mistakes, 0, ROWS(faults));
    tcase_add_test(tcase, limits);
    tcase_add_test(tcase, beyond_the_grid_is_empty);
    tcase_add_test(tcase, cell_by_cell);
    tcase_add_test(tcase, texts_are_limited);
    tcase_add_test(tcase, refused_memory);
    return hw_check_run(suite);
}
