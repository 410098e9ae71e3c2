/* Which parts hold a sheet: by its name, through the links, as several programs write them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/bookxml.h"

#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "reading.h"

/* Invented; tags from ECMA-376, part 1, 18.2 (the list of sheets) and part 2, 9.3 (links). */
#define LINK(id, kind, target)                                                                     \
    "<Relationship Id=\"" id "\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/"    \
    "relationships/" kind "\" Target=\"" target "\"/>"
#define LINKS(all)                                                                                 \
    "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">" all   \
    "</Relationships>"

static const char good_links[] = LINKS(LINK("rId1", "worksheet", "worksheets/sheet1.xml")
        LINK("rId2", "worksheet", "/xl/worksheets/sheet7.xml") LINK("rId3", "styles", "styles.xml")
            LINK("rId4", "sharedStrings", "sharedStrings.xml"));
static const char good_book[] =
    "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" "
    "xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets>"
    "<sheet name=\"Sizes\" sheetId=\"1\" r:id=\"rId1\"/>"
    "<sheet name=\"Measured\" sheetId=\"2\" r:id=\"rId2\"/></sheets></workbook>";

static hw_status find(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_bookxml in = { text, len, good_links, sizeof good_links - 1, "Measured" };
    return hw_bookxml_find(&in, room, out, err);
}

static const hw_check_reader reader = { good_book, find, sizeof(hw_bookxml_parts) };

static hw_status find_link(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_bookxml in = { good_book, sizeof good_book - 1, text, len, "Measured" };
    return hw_bookxml_find(&in, room, out, err);
}

static const hw_check_reader links = { good_links, find_link, sizeof(hw_bookxml_parts) };

/* By hand; the name as it is, or but for capitals where none is the very same. */
static const struct {
    const char *old, *fresh, *sheet;
} books[] = {
    { NULL, good_book, "xl/worksheets/sheet7.xml" },
    { "\"Measured\"", "\"MEASURED\"", "xl/worksheets/sheet7.xml" },
    { "\"Sizes\"", "\"measured\"", "xl/worksheets/sheet7.xml" },
    { "r:id=\"rId2\"", "r:id=\"rId1\"", "xl/worksheets/sheet1.xml" },
};

START_TEST(sheets)
{
    hw_bookxml_parts parts;
    char *text = hw_check_edit(good_book, books[_i].old, books[_i].fresh);
    hw_check_taken(&reader, text, &arena, &parts);
    ck_assert_str_eq(parts.sheet, books[_i].sheet);
    ck_assert_str_eq(parts.texts, "xl/sharedStrings.xml");
    free(text);
}
END_TEST

START_TEST(no_shared_texts)
{
    hw_bookxml_parts parts;
    hw_check_taken(&links, LINKS(LINK("rId2", "worksheet", "a.xml") "<Relationship Id=\"x\"/>"),
        &arena, &parts);
    ck_assert_str_eq(parts.sheet, "xl/a.xml");
    ck_assert_ptr_null(parts.texts);
}
END_TEST

/* Own choice of words. */
static const hw_check_fault faults[] = {
    { "\"Measured\"", "\"Mine\"", HW_ERR_MISSING, 0, 0,
        "no sheet `Measured`; its sheets: `Sizes`, "
        "`Mine`",
        "Take the workbook that was written for this project" },
    { "<sheets>",
        "<sheets><sheet name=\"a\" r:id=\"x\"/><sheet name=\"b\" r:id=\"y\"/>"
        "<sheet name=\"c\" r:id=\"z\"/></sheets></workbook>",
        HW_ERR_SYNTAX, 0, 0, "damaged", "save" },
    { NULL, "<workbook/>", HW_ERR_MISSING, 0, 0, "its sheets: none", "Take the workbook" },
    { NULL,
        "<workbook xmlns:r=\"u\"><sheet name=\"1\" r:id=\"a\"/><sheet name=\"2\" r:id=\"a\"/>"
        "<sheet name=\"3\" r:id=\"a\"/><sheet name=\"4\" r:id=\"a\"/><sheet name=\"5\" r:id=\"a\"/>"
        "</workbook>",
        HW_ERR_MISSING, 0, 0, "`1`, `2`, `3`, `4` and others.", "Take the workbook" },
    { "r:id=\"rId2\"", "r:id=\"rId9\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "r:id=\"rId2\"", "", HW_ERR_MISSING, 0, 0, "`Sizes`", "Take the workbook" },
    { NULL, "no workbook", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
};

START_TEST(mistakes)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

START_TEST(damaged_links)
{
    static const hw_check_fault fault = { "</Relationships>", "", HW_ERR_SYNTAX, 0, 0, "damaged",
        "save it again" };
    hw_check_told(&links, &fault);
}
END_TEST

START_TEST(refused_memory)
{
    hw_check_refused(&reader, 6);
    /* The sheets' names are put together for the message that none is the right one. */
    hw_check_reader wrong = reader;
    wrong.good = "<workbook xmlns:r=\"u\"><sheet name=\"a\" r:id=\"b\"/></workbook>";
    hw_arena poor;
    hw_check_heap small;
    for (int n = 1; n <= 3; n++) {
        hw_bookxml_parts parts;
        hw_err err = { .code = HW_OK };
        hw_check_open(&poor, &small, n, true);
        ck_assert_int_eq(find(wrong.good, strlen(wrong.good), &poor, &parts, &err), HW_ERR_NOMEM);
        hw_check_plain(&err);
        hw_check_close(&poor, &small);
    }
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("bookxml");
    TCase *tcase = fixture_case(suite, "bookxml", NULL, NULL);
    tcase_add_loop_test(tcase, sheets, 0, ROWS(books));
    tcase_add_test(tcase, no_shared_texts);
    tcase_add_loop_test(tcase, mistakes, 0, ROWS(faults));
    tcase_add_test(tcase, damaged_links);
    tcase_add_test(tcase, refused_memory);
    return hw_check_run(suite);
}
