/* Filled-in workbooks and CSV files from disk, and files that are something else.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/bookrows.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>
#include <xlsxwriter.h>
#include <zip.h>

#include "fixture.h"
#include "reading.h"
#include "room.h"
#include "shell/io.h"

enum { BOOK_LIMIT = 1 << 20, STORED = 0, DEFLATED = Z_BEST_SPEED };

/* Invented. */
static const char *names[] = { "4 years", "98" };
static int ages[] = { 48, -1 };
static const hw_sizes sizes = { .title = "", .count = 2, .names = names, .ages_months = ages };
static const hw_piece pieces[] = { { .name = "front", .mirror_of = -1 } };
static const hw_garment garment = { .title = "dress", .pieces = pieces, .piece_count = 1 };
static const hw_knitted_context context = { &sizes, &garment, HW_UNIT_CM };

static const char *const heads[] = { "size", "piece", "fabric", "stitches", "rows", "width, cm",
    "length, cm", "remark" };
enum { HEADS = sizeof heads / sizeof heads[0] };

static char path[ROOM_PATH];

static void setup(void)
{
    room_open();
    room_path("filled.xlsx", path);
}

/* A workbook with the table on its second sheet, the first row of it the seventh of the sheet. */
static void write_book(const char *sheet_name)
{
    lxw_workbook *book = workbook_new(path);
    ck_assert_ptr_nonnull(book);
    lxw_worksheet *other = workbook_add_worksheet(book, "Sizes");
    ck_assert_int_eq(worksheet_write_string(other, 0, 0, "size", NULL), LXW_NO_ERROR);
    lxw_worksheet *sheet = workbook_add_worksheet(book, sheet_name);
    ck_assert_ptr_nonnull(sheet);
    lxw_format *boxed = workbook_add_format(book);
    format_set_border(boxed, LXW_BORDER_THIN);
    for (lxw_col_t c = 0; c < HEADS; c++) {
        ck_assert_int_eq(worksheet_write_string(sheet, 6, c, heads[c], boxed), LXW_NO_ERROR);
        ck_assert_int_eq(worksheet_write_blank(sheet, 10, c, boxed), LXW_NO_ERROR);
    }
    for (lxw_row_t r = 7; r < 10; r++) {
        (void)worksheet_write_string(sheet, r, 0, r == 8 ? "98" : "4 years", boxed);
        (void)worksheet_write_string(sheet, r, 1, "front", NULL);
        (void)worksheet_write_string(sheet, r, 2, r == 9 ? "main" : "band", NULL);
        (void)worksheet_write_number(sheet, r, 3, 119, NULL);
    }
    /* A sum that comes to a hair more than 40.3, as sums of a sheet do. */
    (void)worksheet_write_number(sheet, 7, 5, 0.1 + 0.2 + 40, NULL);
    (void)worksheet_write_string(sheet, 7, 7, "a <b> & \"c\"", NULL);
    (void)worksheet_write_string(sheet, 9, 5, "12 3/8 in", NULL);
    (void)worksheet_write_formula_num(sheet, 9, 4, "=20+24", NULL, 44);
    (void)worksheet_write_number(sheet, 9, 6, 11.25, NULL);
    ck_assert_int_eq(workbook_close(book), LXW_NO_ERROR);
}

/* By hand: 12.375 x 2.54 = 31.4325. To 1e-12. */
START_TEST(a_workbook)
{
    hw_knitted_list list;
    hw_err err = { .code = HW_OK };
    write_book("Measured");
    hw_status status = hw_knitted_load(path, &context, &arena, &list, &err);
    ck_assert_msg(status == HW_OK, "%d:%d: %s", err.line, err.column, err.text);
    ck_assert_int_eq(list.count, 2); /* one row was not filled in */
    ck_assert_int_eq(list.list[0].row, 8);
    ck_assert_int_eq(list.list[0].size, 0);
    ck_assert_int_eq(list.list[0].fabric, HW_BAND);
    ck_assert_double_eq_tol(list.list[0].sts, 119, 1e-12);
    ck_assert_double_eq_tol(list.list[0].width_cm, 40.3, 1e-12);
    ck_assert_str_eq(list.list[0].note, "a <b> & \"c\"");
    ck_assert_int_eq(list.list[1].row, 10);
    ck_assert_int_eq(list.list[1].fabric, HW_MAIN);
    ck_assert_double_eq_tol(list.list[1].width_cm, 31.4325, 1e-12);
    ck_assert_double_eq_tol(list.list[1].rows, 44, 1e-12);
    ck_assert_double_eq_tol(list.list[1].length_cm, 11.25, 1e-12);
    hw_rows rows;
    ck_assert_int_eq(hw_book_rows(path, "Sizes", &arena, &rows, NULL), HW_OK);
    ck_assert_int_eq(rows.rows, 1);
    ck_assert_str_eq(hw_rows_at(&rows, 0, 0), "size");
}
END_TEST

START_TEST(tables)
{
    static const char table[] =
        "size;piece;fabric;stitches;width, cm\r\n4 years;front;band;119;40,3\r\n";
    static const char *const at[] = { "filled.csv", "filled.txt", "xlsx", ".xlsx.csv" };
    for (size_t i = 0; i < sizeof at / sizeof at[0]; i++) {
        hw_knitted_list list;
        char file[ROOM_PATH];
        room_put(at[i], table);
        ck_assert_int_eq(
            hw_knitted_load(room_path(at[i], file), &context, &arena, &list, NULL), HW_OK);
        ck_assert_int_eq(list.count, 1);
        ck_assert_double_eq_tol(list.list[0].width_cm, 40.3, 1e-12);
    }
}
END_TEST

/* Load the file at path, which must fail: the words, and that the file is named. */
static void fails(hw_status wanted, const char *words)
{
    hw_arena own;
    hw_check_heap counted;
    hw_err err = { .code = HW_OK };
    hw_knitted_list list = { .count = -1 };
    hw_check_open(&own, &counted, 0, false);
    ck_assert_int_eq(hw_knitted_load(path, &context, &own, &list, &err), wanted);
    ck_assert(hw_check_says(&err, wanted, words));
    hw_check_plain(&err);
    ck_assert_str_ne(err.where, "");
    ck_assert_int_eq(list.count, -1);
    hw_check_close(&own, &counted);
}

START_TEST(other_files)
{
    fails(HW_ERR_IO, "there is no such file");
    room_put("filled.xlsx", "");
    fails(HW_ERR_SYNTAX, "this file is empty");
    room_put("filled.xlsx", "size,piece\n");
    fails(HW_ERR_SYNTAX, "this is no workbook, whatever its name says");
    room_put("filled.xlsx", "P");
    fails(HW_ERR_SYNTAX, "this is no workbook");
    room_put("filled.xlsx", "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1 and more");
    fails(HW_ERR_SYNTAX, "locked with a password");
    room_put("filled.xlsx", "PK\x03\x04 and no more");
    fails(HW_ERR_SYNTAX, "damaged or only a part of it is here");
    room_path("", path);
    fails(HW_ERR_IO, "this is a folder");
    room_path("filled.csv", path);
    fails(HW_ERR_IO, "there is no such file");
    room_put("filled.csv", "PK\x03\x04");
    fails(HW_ERR_SYNTAX, "cannot be read as a table");
    room_put("filled.csv", "size,piece,fabric,stitches,width\n4 years,front,band,many,40\n");
    fails(HW_ERR_SYNTAX, "`many` under `stitches`");
}
END_TEST

START_TEST(a_folder_named_as_a_book)
{
    hw_err err = { .code = HW_OK };
    hw_rows rows;
    char folder[ROOM_PATH];
    ck_assert_int_eq(
        hw_book_rows(room_path(".", folder), "Measured", &arena, &rows, &err), HW_ERR_IO);
    ck_assert(hw_check_says(&err, HW_ERR_IO, "this is a folder"));
}
END_TEST

START_TEST(other_sheets)
{
    write_book("Mine");
    fails(HW_ERR_MISSING, "no sheet `Measured`; its sheets: `Sizes`, `Mine`");
    write_book("MEASURED");
    hw_knitted_list list;
    ck_assert_int_eq(hw_knitted_load(path, &context, &arena, &list, NULL), HW_OK);
}
END_TEST

static hw_io_text bytes_of_book(void)
{
    hw_io_text text = { 0 };
    ck_assert_int_eq(hw_io_read(path, &arena, BOOK_LIMIT, &text, NULL), HW_OK);
    return text;
}

static void put_bytes(const char *bytes, size_t len)
{
    FILE *file = fopen(path, "wb");
    ck_assert_ptr_nonnull(file);
    ck_assert_uint_eq(fwrite(bytes, 1, len, file), len);
    ck_assert_int_eq(fclose(file), 0);
}

/* Cut at each of many places: never taken, always told in plain words. */
START_TEST(cut_short)
{
    write_book("Measured");
    hw_io_text whole = bytes_of_book();
    for (size_t len = 16; len < whole.len; len += 97) {
        put_bytes(whole.text, len);
        fails(HW_ERR_SYNTAX, "damaged or only a part of it is here");
    }
}
END_TEST

/* A byte spoilt at each of many places: the checksum tells, or nothing that counts has changed. */
START_TEST(spoilt)
{
    write_book("Measured");
    hw_io_text whole = bytes_of_book();
    char *copy = malloc(whole.len);
    ck_assert_ptr_nonnull(copy);
    int refused = 0;
    for (size_t at = 0; at < whole.len; at += 13) {
        hw_arena own;
        hw_check_heap counted;
        hw_knitted_list list;
        hw_err err = { .code = HW_OK };
        memcpy(copy, whole.text, whole.len);
        copy[at] = (char)(copy[at] ^ 0x15);
        put_bytes(copy, whole.len);
        hw_check_open(&own, &counted, 0, false);
        if (hw_knitted_load(path, &context, &own, &list, &err) != HW_OK) {
            hw_check_plain(&err);
            refused++;
        } else {
            ck_assert_int_eq(list.count, 2);
            ck_assert_double_eq_tol(list.list[0].width_cm, 40.3, 1e-12);
        }
        hw_check_close(&own, &counted);
    }
    free(copy);
    ck_assert_int_gt(refused, 20);
}
END_TEST

/* ---- Workbooks put together part by part. ---- */

typedef struct {
    const char *name, *text;
    size_t len;
    int level;
    const char *password; /* NULL for none */
} part;

static void add_part(zipFile file, const part *p)
{
    zip_fileinfo info = { .dosDate = 0 };
    int method = p->level == STORED ? 0 : Z_DEFLATED;
    unsigned long checksum = crc32(0, (const Bytef *)p->text, (uInt)p->len);
    ck_assert_int_eq(
        zipOpenNewFileInZip3(file, p->name, &info, NULL, 0, NULL, 0, NULL, method, p->level, 0,
            -MAX_WBITS, DEF_MEM_LEVEL, Z_DEFAULT_STRATEGY, p->password, checksum),
        ZIP_OK);
    ck_assert_int_eq(zipWriteInFileInZip(file, p->text, (unsigned)p->len), ZIP_OK);
    ck_assert_int_eq(zipCloseFileInZip(file), ZIP_OK);
}

static void put_together(const part *parts, int count)
{
    zipFile file = zipOpen64(path, APPEND_STATUS_CREATE);
    ck_assert_ptr_nonnull(file);
    for (int i = 0; i < count; i++) {
        add_part(file, &parts[i]);
    }
    ck_assert_int_eq(zipClose(file, NULL), ZIP_OK);
}

#define TEXT(constant) (constant), sizeof(constant) - 1

static const char book_part[] = "<workbook xmlns:r=\"u\"><sheets><sheet name=\"Measured\" "
                                "r:id=\"a\"/></sheets></workbook>";
static const char links_part[] =
    "<Relationships><Relationship Id=\"a\" Type=\"x/worksheet\" Target=\"/xl/s.xml\"/>"
    "<Relationship Id=\"b\" Type=\"x/sharedStrings\" Target=\"t.xml\"/></Relationships>";
static const char texts_part[] = "<sst><si><t>front</t></si></sst>";
static const char sheet_part[] =
    "<worksheet><sheetData><row><c t=\"str\"><v>size</v></c><c t=\"str\"><v>piece</v></c>"
    "<c t=\"str\"><v>fabric</v></c><c t=\"str\"><v>stitches</v></c><c t=\"str\"><v>width</v></c>"
    "</row><row><c><v>98</v></c><c t=\"s\"><v>0</v></c><c t=\"inlineStr\"><is><t>band</t></is></c>"
    "<c><v>1.19E2</v></c><c><v>40.3</v></c></row></sheetData></worksheet>";

/* In the order that the tests below count on. */
static const part good_parts[] = {
    { "xl/workbook.xml", TEXT(book_part), DEFLATED, NULL },
    { "xl/_rels/workbook.xml.rels", TEXT(links_part), STORED, NULL },
    { "XL/S.xml", TEXT(sheet_part), STORED, NULL }, /* capitals do not count */
    { "xl/t.xml", TEXT(texts_part), DEFLATED, NULL },
};
enum { PARTS = sizeof good_parts / sizeof good_parts[0] };

START_TEST(stored_and_deflated)
{
    hw_knitted_list list;
    put_together(good_parts, PARTS);
    ck_assert_int_eq(hw_knitted_load(path, &context, &arena, &list, NULL), HW_OK);
    ck_assert_int_eq(list.count, 1);
    ck_assert_int_eq(list.list[0].size, 1);
    ck_assert_double_eq_tol(list.list[0].sts, 119, 1e-12);
    ck_assert_double_eq_tol(list.list[0].width_cm, 40.3, 1e-12);
}
END_TEST

/* One part left out, or locked: what is said of it. */
START_TEST(lost_and_locked_parts)
{
    static const char *const lost[PARTS] = { "this is no workbook", "this is no workbook",
        "damaged or only a part", "damaged or only a part" };
    for (int i = 0; i < PARTS; i++) {
        part parts[PARTS];
        memcpy(parts, good_parts, sizeof parts);
        parts[i].name = "elsewhere.xml";
        put_together(parts, PARTS);
        fails(HW_ERR_SYNTAX, lost[i]);
        parts[i] = good_parts[i];
        parts[i].password = "a word";
        put_together(parts, PARTS);
        fails(HW_ERR_SYNTAX, "locked with a password");
    }
}
END_TEST

/* By hand: 20 MB and a byte of blanks deflate to a few kB. */
START_TEST(a_part_that_swells)
{
    size_t len = 20 * 1024 * 1024 + 1;
    char *text = malloc(len);
    ck_assert_ptr_nonnull(text);
    memset(text, ' ', len);
    for (int i = 0; i < PARTS; i++) {
        part parts[PARTS];
        memcpy(parts, good_parts, sizeof parts);
        parts[i] = (part){ good_parts[i].name, text, len, DEFLATED, NULL };
        put_together(parts, PARTS);
        ck_assert_uint_lt(bytes_of_book().len, 200000);
        fails(HW_ERR_LIMIT, "holds more than is read");
    }
    free(text);
}
END_TEST

/* The n-th request refused, once or from then on: told, and nothing is left behind. */
START_TEST(refused_memory)
{
    write_book("Measured");
    hw_status status = HW_ERR_NOMEM;
    int refused = 0;
    for (; status == HW_ERR_NOMEM && refused < 5000; refused++) {
        hw_arena own;
        hw_check_heap counted;
        hw_err err = { .code = HW_OK };
        hw_knitted_list list = { .count = -1 };
        hw_check_open(&own, &counted, refused + 1, refused % 2 == 0);
        status = hw_knitted_load(path, &context, &own, &list, &err);
        ck_assert_int_eq(err.code, status);
        ck_assert(status == HW_OK || (status == HW_ERR_NOMEM && list.count == -1));
        if (status != HW_OK) {
            hw_check_plain(&err);
        }
        hw_check_close(&own, &counted);
    }
    ck_assert_int_eq(status, HW_OK);
    ck_assert_int_gt(refused, 30);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { a_workbook, tables, other_files, a_folder_named_as_a_book,
        other_sheets, cut_short, spoilt, stored_and_deflated, lost_and_locked_parts,
        a_part_that_swells, refused_memory };
    return fixture_run("bookrows", setup, room_close, tests, sizeof tests / sizeof tests[0]);
}
