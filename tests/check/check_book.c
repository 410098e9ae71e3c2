/* The workbook: whole, the same each time, and never at the cost of the old one.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>
#include <unzip.h>
#include <zip.h>

#include "example_plan.h"
#include "fixture.h"
#include "room.h"
#include "shell/book.h"
#include "shell/io.h"
#include "shell/reread.h"
#include "write/columns.h"
#include "write/grid.h"

enum { BOOK_LIMIT = 1000000, LONGEST_CELL = 32767 }; /* the latter: the library's own limit */

static char path[ROOM_PATH];
static example e;

static void setup(void)
{
    example_plan(&e, &arena);
    room_open();
    room_path("plan.xlsx", path);
}

static hw_io_text bytes_of(const char *name)
{
    hw_io_text text = { 0 };
    ck_assert_int_eq(hw_io_read(name, &arena, BOOK_LIMIT, &text, NULL), HW_OK);
    return text;
}

/* A workbook from its beginning to its end, as docs.c takes it there. */
static hw_status write_book(
    const hw_tables *tables, const char *name, const hw_book_options *options, hw_err *err)
{
    hw_io_target target;
    hw_status status = hw_io_begin(&target, name, err);
    if (status != HW_OK) {
        return status;
    }
    status = hw_book_write(tables, &target, options, err);
    status = status == HW_OK ? hw_io_finish(&target, err) : status;
    if (status != HW_OK) {
        hw_io_abort(&target);
        return status;
    }
    return hw_io_place(&target, err);
}

/* A part of the workbook, inflated. */
static char *part(const char *name)
{
    unzFile file = unzOpen64(path);
    unz_file_info64 info;
    ck_assert_ptr_nonnull(file);
    ck_assert_int_eq(unzLocateFile(file, name, 1), UNZ_OK);
    ck_assert_int_eq(unzGetCurrentFileInfo64(file, &info, NULL, 0, NULL, 0, NULL, 0), UNZ_OK);
    char *text = hw_arena_get(&arena, info.uncompressed_size + 1, 1);
    ck_assert_ptr_nonnull(text);
    ck_assert_int_eq(unzOpenCurrentFile(file), UNZ_OK);
    ck_assert_int_eq(unzReadCurrentFile(file, text, (unsigned)info.uncompressed_size),
        (int)info.uncompressed_size);
    ck_assert_int_eq(unzCloseCurrentFile(file), UNZ_OK);
    ck_assert_int_eq(unzClose(file), UNZ_OK);
    return text;
}

static long count(const char *text, const char *words)
{
    long found = 0;
    for (text = strstr(text, words); text != NULL; text = strstr(text + 1, words)) {
        found++;
    }
    return found;
}

static void has(const char *text, const char *words)
{
    ck_assert_msg(strstr(text, words) != NULL, "no %s", words);
}

START_TEST(all_cells)
{
    hw_tables tables = example_tables(&e, &arena);
    ck_assert_int_eq(write_book(&tables, path, NULL, NULL), HW_OK);
    ck_assert_int_eq(room_count(), 1);
    for (int i = 0; i < tables.count; i++) {
        const hw_table *t = &tables.tables[i];
        char name[64];
        (void)snprintf(name, sizeof name, "xl/worksheets/sheet%d.xml", i + 1);
        const char *sheet = part(name);
        long values = 0;
        for (int k = 0; k < t->rows * t->columns; k++) {
            values += t->cells[k].kind != HW_CELL_EMPTY;
        }
        ck_assert_int_eq(count(sheet, "<v>"), values);
    }
    const char *book = part("xl/workbook.xml");
    has(book, "name=\"Sizes\"");
    has(book, "name=\"Basis\"");
    has(book, "Sizes!$1:$2"); /* heads are repeated when printing */
}
END_TEST

START_TEST(looks)
{
    hw_tables tables = example_tables(&e, &arena);
    tables.tables[0].large = true;
    ck_assert_int_eq(write_book(&tables, path, NULL, NULL), HW_OK);
    const char *sheet = part("xl/worksheets/sheet1.xml");
    has(sheet, "state=\"frozen\"");
    has(sheet, "xSplit=\"1\" ySplit=\"2\"");
    has(sheet, "orientation=\"landscape\"");
    has(sheet, "<rowBreaks "); /* where pages begin, which fitting to pages would undo */
    has(sheet, " scale=\"");
    ck_assert_int_eq(count(sheet, "fitToPage"), 0);
    has(sheet, "numberStoredAsText=\"1\"");
    int running = 0;
    for (int r = 0; r < tables.tables[0].rows; r++) {
        running += hw_columns_run_on(hw_cells_at(&tables.tables[0], r, 0));
    }
    ck_assert_int_gt(running, 5);
    ck_assert_int_eq(count(sheet, "<mergeCell "), running);
    int figure = 0;
    while (strcmp(tables.tables[figure].name, "Chart") != 0) {
        figure++;
    }
    char name[64];
    (void)snprintf(name, sizeof name, "xl/worksheets/sheet%d.xml", figure + 1);
    const char *chart = part(name);
    has(chart, "fitToPage=\"1\"");                    /* a table of one page stays on it */
    ck_assert_int_gt(count(chart, "<mergeCell "), 5); /* facts run over the narrow columns */
    const char *styles = part("xl/styles.xml");
    has(styles, "9C0006");
    has(styles, "24476B");
    has(styles, "formatCode=\"0.0\"");
    has(styles, "<sz val=\"12\"/>"); /* large: 10 points and a fifth more */
}
END_TEST

START_TEST(same_bytes)
{
    hw_tables tables = example_tables(&e, &arena);
    hw_book_options options = { "Skirt <with> hearts & more", 0 };
    ck_assert_int_eq(write_book(&tables, path, &options, NULL), HW_OK);
    has(part("docProps/core.xml"), "Skirt &lt;with&gt; hearts &amp; more");
    has(part("docProps/core.xml"), "2000-01-01T00:00:00Z");
    hw_io_text first = bytes_of(path);
    (void)sleep(2); /* zip counts time in steps of two seconds */
    ck_assert_int_eq(write_book(&tables, path, &options, NULL), HW_OK);
    hw_io_text again = bytes_of(path);
    ck_assert_uint_eq(first.len, again.len);
    ck_assert_int_eq(memcmp(first.text, again.text, first.len), 0);
    options.created = 86400; /* by hand: a day after the first of 1970 */
    ck_assert_int_eq(write_book(&tables, path, &options, NULL), HW_OK);
    has(part("docProps/core.xml"), "1970-01-02T00:00:00Z");
}
END_TEST

/* A table of one cell under a name. */
static hw_tables one_cell(const char *name, const char *text, double number)
{
    hw_grid grid;
    hw_table *t = hw_arena_get(&arena, 1, sizeof *t);
    ck_assert_ptr_nonnull(t);
    hw_grid_begin(&grid, &arena, name, 1);
    hw_grid_row(&grid);
    if (text != NULL) {
        hw_grid_text(&grid, 0, HW_STYLE_PLAIN, text);
    } else {
        hw_grid_number(&grid, 0, HW_STYLE_PLAIN, number, 1);
    }
    ck_assert_int_eq(hw_grid_finish(&grid, t), HW_OK);
    return (hw_tables){ t, 1 };
}

static void old_stays(hw_tables tables, hw_status status, const char *words)
{
    hw_err err = { 0 };
    room_put("plan.xlsx", "old");
    ck_assert_int_eq(write_book(&tables, path, NULL, &err), status);
    ck_assert(hw_check_says(&err, status, words));
    ck_assert(room_holds("plan.xlsx", "old"));
    ck_assert_int_eq(room_count(), 1);
}

START_TEST(refusals)
{
    char *text = hw_arena_get(&arena, LONGEST_CELL + 2, 1);
    ck_assert_ptr_nonnull(text);
    memset(text, 'a', LONGEST_CELL);
    hw_tables tables = one_cell("T", text, 0);
    ck_assert_int_eq(write_book(&tables, path, NULL, NULL), HW_OK);
    text[LONGEST_CELL] = 'a';
    old_stays(tables, HW_ERR_RANGE, "beyond what a sheet can hold");
    old_stays(one_cell("T", NULL, (double)NAN), HW_ERR_RANGE, "beyond what a sheet can hold");
    old_stays(one_cell("T", NULL, -(double)INFINITY), HW_ERR_RANGE, "beyond");
    old_stays(one_cell("a/b", "x", 0), HW_ERR_INTERNAL, "a fault in the program");
    hw_tables wide = one_cell("T", "x", 0);
    wide.tables[0].columns = 300;
    wide.tables[0].rows = 0;
    old_stays(wide, HW_ERR_LIMIT, "too many columns");
    hw_table twice[2] = { tables.tables[0], tables.tables[0] };
    twice[0].rows = twice[1].rows = 0;
    old_stays((hw_tables){ twice, 2 }, HW_ERR_INTERNAL, "a fault in the program");
}
END_TEST

START_TEST(no_place)
{
    hw_tables tables = one_cell("T", "x", 0);
    char nowhere[ROOM_PATH];
    hw_err err = { 0 };
    ck_assert_int_eq(
        write_book(&tables, room_path("none/plan.xlsx", nowhere), NULL, &err), HW_ERR_IO);
    ck_assert(hw_check_says(&err, HW_ERR_IO, "there is no such folder"));
    ck_assert_int_eq(room_count(), 0);
}
END_TEST

/* With faults compiled in each point fails as asked; without, none does. */
START_TEST(faults)
{
    static const char *const points[] = { "open", "fsync", "close", "rename", "book-close",
        "book-reopen" };
    hw_tables tables = example_tables(&e, &arena);
    ck_assert_int_eq(setenv("HW_FAULT", "nowhere:EIO", 1), 0);
    bool enabled = hw_io_fault_unhit();
    for (size_t i = 0; i < sizeof points / sizeof points[0]; i++) {
        char wanted[64];
        (void)snprintf(wanted, sizeof wanted, "%s:ENOSPC", points[i]);
        ck_assert_int_eq(setenv("HW_FAULT", wanted, 1), 0);
        if (enabled) {
            old_stays(tables, HW_ERR_IO, "the disk is full");
        } else {
            ck_assert_int_eq(write_book(&tables, path, NULL, NULL), HW_OK);
        }
    }
    /* Without a process of its own for each test the next one would see it. */
    ck_assert_int_eq(unsetenv("HW_FAULT"), 0);
}
END_TEST

static long written[] = { 0, 0 };

/* Two sheets, of one cell and of three, counted by hand. */
static void write_two(void)
{
    hw_table two[2];
    for (int i = 0; i < 2; i++) {
        hw_grid grid;
        hw_grid_begin(&grid, &arena, i == 0 ? "A" : "B", 2);
        hw_grid_row(&grid);
        hw_grid_text(&grid, 0, HW_STYLE_PLAIN, i == 0 ? "one" : "two &lt;c <c ");
        hw_grid_row(&grid);
        if (i == 1) {
            hw_grid_count(&grid, 0, HW_STYLE_PLAIN, 2);
            hw_grid_number(&grid, 1, HW_STYLE_PLAIN, 2.5, 1);
        }
        ck_assert_int_eq(hw_grid_finish(&grid, &two[i]), HW_OK);
    }
    written[0] = 1;
    written[1] = 3;
    hw_tables tables = { two, 2 };
    ck_assert_int_eq(write_book(&tables, path, NULL, NULL), HW_OK);
}

START_TEST(reread_counts)
{
    write_two();
    ck_assert_int_eq(hw_reread_book(path, written, 2), HW_OK);
    written[1] = 4;
    ck_assert_int_eq(hw_reread_book(path, written, 2), HW_ERR_IO);
    written[1] = 2;
    ck_assert_int_eq(hw_reread_book(path, written, 2), HW_ERR_IO);
    const long three[] = { 1, 3, 0 };
    ck_assert_int_eq(hw_reread_book(path, three, 3), HW_ERR_IO);
    room_put("empty", "");
    ck_assert_int_eq(hw_reread_book(room_path("empty", path), three, 1), HW_ERR_IO);
    ck_assert_int_eq(hw_reread_book(room_path("none", path), three, 1), HW_ERR_IO);
}
END_TEST

/* The workbook cut anywhere, or with a byte of its data changed, is not whole. */
START_TEST(reread_damage)
{
    write_two();
    hw_io_text whole = bytes_of(path);
    for (size_t cut = 0; cut < whole.len; cut += 1 + whole.len / 97) {
        room_put_bytes("plan.xlsx", whole.text, cut);
        ck_assert_int_eq(hw_reread_book(path, written, 2), HW_ERR_IO);
    }
    char *changed = hw_arena_text(&arena, whole.text, whole.len);
    ck_assert_ptr_nonnull(changed);
    changed[100] = (char)(changed[100] ^ 0x55); /* inside the first part's compressed data */
    room_put_bytes("plan.xlsx", changed, whole.len);
    ck_assert_int_eq(hw_reread_book(path, written, 2), HW_ERR_IO);
}
END_TEST

/* A sound zip file of two parts, whatever is in them. */
static void zip_parts(const char *sheet, const char *texts)
{
    static const char *const names[] = { "xl/worksheets/sheet1.xml", "xl/sharedStrings.xml" };
    const char *const parts[] = { sheet, texts };
    zipFile file = zipOpen64(path, APPEND_STATUS_CREATE);
    ck_assert_ptr_nonnull(file);
    for (int i = 0; i < 2; i++) {
        zip_fileinfo info = { 0 };
        ck_assert_int_eq(zipOpenNewFileInZip(file, names[i], &info, NULL, 0, NULL, 0, NULL,
                             Z_DEFLATED, Z_DEFAULT_COMPRESSION),
            ZIP_OK);
        ck_assert_int_eq(zipWriteInFileInZip(file, parts[i], (unsigned)strlen(parts[i])), ZIP_OK);
        ck_assert_int_eq(zipCloseFileInZip(file), ZIP_OK);
    }
    ck_assert_int_eq(zipClose(file, NULL), ZIP_OK);
}

/* A library that ran out of room stores a part that is cut short, in a file that is sound. */
START_TEST(reread_short_parts)
{
    static const struct {
        const char *sheet, *texts;
        hw_status status;
    } rows[] = {
        { "<?xml?>\n<worksheet a=\"b\"><c r=\"A1\"/></worksheet>",
            "<sst count=\"2\" uniqueCount=\"1\"><si>a</si></sst>\n", HW_OK },
        { "<?xml?>\n<worksheet a=\"b\"><c r=\"A1\"/></work",
            "<sst count=\"2\" uniqueCount=\"1\"><si>a</si></sst>\n", HW_ERR_IO },
        { "<worksheet></worksheet>", "<sst count=\"2\" uniqueCount=\"1\"><si>a</si></sst>",
            HW_ERR_IO },
        { "<worksheet><c r=\"A1\"/></worksheet>",
            "<sst count=\"2\" uniqueCount=\"2\"><si>a</si></sst>", HW_ERR_IO },
        { "<worksheet><c r=\"A1\"/></worksheet>", "<sst count=\"2\" uniqueCount=\"1\"><si>a</si>",
            HW_ERR_IO },
        { "<worksheet><c r=\"A1\"/></sst>", "<sst count=\"2\" uniqueCount=\"1\"><si>a</si></sst>",
            HW_ERR_IO },
        { "", "<sst count=\"2\" uniqueCount=\"1\"><si>a</si></sst>", HW_ERR_IO },
    };
    const long one[] = { 1 };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        zip_parts(rows[i].sheet, rows[i].texts);
        ck_assert_int_eq(hw_reread_book(path, one, 1), rows[i].status);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { all_cells, looks, same_bytes, refusals, no_place, faults,
        reread_counts, reread_damage, reread_short_parts };
    return fixture_run("book", setup, room_close, tests, sizeof tests / sizeof tests[0]);
}
