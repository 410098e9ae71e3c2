/* The parts of the file that hold the sheet, inflated and handed to the readers.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/bookrows.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "read/bookxml.h"
#include "read/sheetxml.h"
#include "shell/parts.h"

enum { FIRST_BYTES = 8 };

static const char book_part[] = "xl/workbook.xml";
static const char links_part[] = "xl/_rels/workbook.xml.rels";
static const char ending[] = ".xlsx";
static const char zipped[] = "PK";
static const char locked[] = "\xD0\xCF\x11\xE0"; /* how old and locked workbooks begin */

static const char locked_words[] =
    "it is locked with a password, or of the older kind .xls; in your spreadsheet program save it "
    "as .xlsx, without a password";
static const char no_book_words[] =
    "this is no workbook, whatever its name says; in your spreadsheet program save the table as "
    ".xlsx";
static const char damaged_words[] =
    "this workbook is damaged or only a part of it is here; send or copy it again, or save it "
    "again as .xlsx";

/* What the way a part could not be read means for the workbook. */
static hw_status explain(hw_status status, hw_err *err)
{
    if (status == HW_ERR_MISSING) {
        return hw_err_set(err, HW_ERR_SYNTAX, "%s", no_book_words);
    }
    if (status == HW_ERR_USAGE) {
        return hw_err_set(err, HW_ERR_SYNTAX, "%s", locked_words);
    }
    if (status == HW_ERR_LIMIT) {
        return hw_err_set(err, status, "%s",
            "this workbook holds more than is read; keep only the sheet of measured pieces in it");
    }
    if (status == HW_ERR_NOMEM) {
        return hw_err_set(err, status, "%s", "the computer has no memory left to read this file");
    }
    return hw_err_set(err, HW_ERR_SYNTAX, "%s", damaged_words);
}

/* By its first bytes: may this be a workbook? */
static hw_status look_first(const char *path, hw_err *err)
{
    char first[FIRST_BYTES] = { 0 };
    FILE *file = fopen(path, "rb");
    if (file == NULL) {
        return hw_io_fail(err, path, HW_IO_READING, errno);
    }
    size_t got = fread(first, 1, sizeof first, file);
    int number = ferror(file) != 0 ? errno : 0;
    (void)fclose(file); /* nothing was written */
    if (number != 0) {
        return hw_io_fail(err, path, HW_IO_READING, number);
    }
    if (got == 0) {
        return hw_err_set(err, HW_ERR_SYNTAX, "%s", "this file is empty; send or copy it again");
    }
    if (memcmp(first, locked, sizeof locked - 1) == 0) {
        return explain(HW_ERR_USAGE, err);
    }
    return memcmp(first, zipped, sizeof zipped - 1) == 0 ? HW_OK : explain(HW_ERR_MISSING, err);
}

static hw_status find_parts(
    unzFile file, const char *sheet, hw_arena *arena, hw_bookxml_parts *out, hw_err *err)
{
    hw_io_text book = { 0 };
    hw_io_text links = { 0 };
    hw_status status = hw_parts_read(file, book_part, arena, &book);
    if (status == HW_OK) {
        status = hw_parts_read(file, links_part, arena, &links);
    }
    if (status != HW_OK) {
        return explain(status, err);
    }
    hw_bookxml in = { .book = book.text,
        .book_len = book.len,
        .links = links.text,
        .links_len = links.len,
        .sheet = sheet };
    return hw_bookxml_find(&in, arena, out, err);
}

static hw_status read_sheet(
    unzFile file, const hw_bookxml_parts *parts, hw_arena *arena, hw_rows *out, hw_err *err)
{
    hw_io_text sheet = { 0 };
    hw_io_text texts = { 0 };
    hw_status status = hw_parts_read(file, parts->sheet, arena, &sheet);
    if (status == HW_OK && parts->texts != NULL) {
        status = hw_parts_read(file, parts->texts, arena, &texts);
    }
    if (status != HW_OK) {
        /* Parts that the workbook itself promises. */
        return explain(status == HW_ERR_MISSING ? HW_ERR_SYNTAX : status, err);
    }
    hw_sheetxml in = {
        .sheet = sheet.text, .sheet_len = sheet.len, .texts = texts.text, .texts_len = texts.len
    };
    return hw_sheetxml_rows(&in, arena, out, err);
}

hw_status hw_book_rows(
    const char *path, const char *sheet, hw_arena *arena, hw_rows *out, hw_err *err)
{
    hw_bookxml_parts parts = { .sheet = NULL };
    unzFile file = NULL;
    hw_status status = look_first(path, err);
    if (status == HW_OK) {
        file = unzOpen64(path);
        status = file == NULL ? explain(HW_ERR_SYNTAX, err) : HW_OK;
    }
    if (status == HW_OK) {
        status = find_parts(file, sheet, arena, &parts, err);
    }
    if (status == HW_OK) {
        status = read_sheet(file, &parts, arena, out, err);
    }
    if (file != NULL) {
        (void)unzClose(file); /* nothing was written */
    }
    if (status != HW_OK) {
        hw_err_where(err, path);
    }
    return status;
}

static hw_status table_rows(const char *path, hw_arena *arena, hw_rows *out, hw_err *err)
{
    hw_io_text text = { 0 };
    hw_status status = hw_io_read(path, arena, HW_ROWS_MOST_BYTES, &text, err);
    return status == HW_OK ? hw_knitted_rows(text.text, text.len, arena, out, err) : status;
}

/* Whether a name ends so, whatever its capitals. */
static bool is_book(const char *path)
{
    size_t len = strlen(path);
    size_t end = sizeof ending - 1;
    bool all = len > end;
    for (size_t i = 0; i < end && all; i++) {
        char c = path[len - end + i];
        all = (c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c) == ending[i];
    }
    return all;
}

hw_status hw_knitted_load(const char *path, const hw_knitted_context *context, hw_arena *arena,
    hw_knitted_list *out, hw_err *err)
{
    hw_rows rows = { .rows = 0 };
    hw_status status = is_book(path) ? hw_book_rows(path, HW_KNITTED_SHEET, arena, &rows, err)
                                     : table_rows(path, arena, &rows, err);
    if (status == HW_OK) {
        status = hw_knitted_read(&rows, context, arena, out, err);
    }
    if (status != HW_OK) {
        hw_err_where(err, path);
    }
    return status;
}
