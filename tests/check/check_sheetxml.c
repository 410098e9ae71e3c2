/* Sheets as several programs save them, damaged ones, and ones made to do harm.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/sheetxml.h"

#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "read/xml.h"
#include "reading.h"

/* Invented; the tags are those of ECMA-376, part 1, 18.3 (sheet) and 18.4 (shared texts). */
static const char texts[] =
    "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
    "<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" count=\"9\">"
    "<si><t>size</t></si>"
    "<si><t xml:space=\"preserve\"> a &amp; b </t></si>"
    "<si><r><rPr><b/></rPr><t>band</t></r><r><t> edge</t></r></si>"
    "<si><t>Gr\xC3\xB6\xC3\x9F"
    "e</t><rPh sb=\"0\" eb=\"1\"><t>spoken</t></rPh></si>"
    "<si/>"
    "</sst>";

static hw_status read_sheet(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_sheetxml in = { text, len, texts, sizeof texts - 1 };
    return hw_sheetxml_rows(&in, room, out, err);
}

#define SHEET(data)                                                                                \
    "<worksheet "                                                                                  \
    "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>" data         \
    "</sheetData></worksheet>"

static const hw_check_reader reader = {
    .good = SHEET("<row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"C1\"><v>31.5</v></c></row>"
                  "<row r=\"3\"><c r=\"B3\" t=\"inlineStr\"><is><t>here</t></is></c></row>"),
    .read = read_sheet,
    .size = sizeof(hw_rows),
};

static void holds(const hw_rows *rows, const char *wanted)
{
    char found[512] = { 0 };
    size_t at = 0;
    for (int i = 0; i < rows->rows * rows->columns; i++) {
        const char *text = rows->cells[i];
        size_t len = text == NULL ? 0 : strlen(text);
        ck_assert_uint_lt(at + len + 2, sizeof found);
        if (len > 0) {
            memcpy(found + at, text, len);
        }
        at += len;
        found[at++] = (i + 1) % rows->columns != 0 ? '|' : '/';
    }
    ck_assert_str_eq(found, wanted);
}

/* By hand, from the meaning of the tags. */
static const struct {
    const char *sheet, *cells;
} sheets[] = {
    { SHEET(""), "" },
    { "<worksheet><dimension ref=\"A1\"/></worksheet>", "" },
    { "<worksheet><v>9</v><c><v>8</v></c><sheetData/><c><v>7</v></c></worksheet>", "" },
    { SHEET("<row r=\"2\"><c r=\"B2\"><v>7</v></c></row>"), "|/|7/" },
    /* Cells and rows that do not say where they are follow the one before. */
    { SHEET("<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>"), "1|2/3|/" },
    { SHEET("<row r=\"2\"><c r=\"B2\"><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>"),
        "||/|1|2/3||/" },
    { SHEET("<c><v>1</v></c>"), "1/" },
    /* Cells with a look and nothing in them, as far down and right as a sheet goes. */
    { SHEET("<row r=\"1048576\"><c r=\"XFD1048576\" s=\"3\"/><c r=\"A1\"><v>1</v></c></row>"),
        "1/" },
    { SHEET("<row><c t=\"s\"><v>1</v></c><c t=\"s\"><v>2</v></c><c t=\"s\"><v>3</v></c>"
            "<c t=\"s\"><v>4</v></c></row>"),
        " a & b |band edge|Gr\xC3\xB6\xC3\x9F"
        "e/" },
    { SHEET("<row><c t=\"inlineStr\"><is><r><t>a</t></r><r><t>b</t></r><rPh><t>c</t></rPh></is></c>"
            "</row>"),
        "ab/" },
    { SHEET("<row><c t=\"str\"><f>A1&amp;B1</f><v>front</v></c><c><f>1+1</f><v>2</v></c>"
            "<c><f>1+1</f></c></row>"),
        "front|2/" },
    { SHEET("<row><c t=\"b\"><v>1</v></c><c t=\"b\"><v>0</v></c><c t=\"e\"><v>#N/A</v></c>"
            "<c t=\"n\"><v>5</v></c></row>"),
        "TRUE|FALSE|#N/A|5/" },
    { "<x:worksheet xmlns:x=\"http://purl.oclc.org/ooxml/spreadsheetml/main\"><x:sheetData>"
      "<x:row r=\"1\"><x:c r=\"A1\" t=\"s\"><x:v>0</x:v></x:c></x:row></x:sheetData></x:worksheet>",
        "size/" },
    { SHEET("<row><c><v>31.500000000000004</v></c><c><v>1.2E1</v></c><c><v>3.15e+1</v></c>"
            "<c><v>-1.2E-3</v></c><c><v>5E-1</v></c><c><v>12E0</v></c></row>"),
        "31.500000000000004|12|31.5|-0.0012|0.5|12/" },
    { SHEET("<row><c><v>1.2345678901234567E2</v></c><c><v>1E400</v></c><c><v>1.E1</v></c>"
            "<c><v>E1</v></c><c><v>1E</v></c><c><v>1E1.5</v></c></row>"),
        "123.45678901234567|1E400|10|E1|1E|1E1.5/" },
    { SHEET("<row><c><v>1E40</v></c></row>"), "10000000000000000000000000000000000000000/" },
    { SHEET("<row><c t=\"str\"><v>1E1</v></c></row>"), "1E1/" }, /* a text stays as it is */
    { SHEET("<row><c><v>&#52;<!-- not -->2</v></c><c><v><![CDATA[7]]></v></c></row>"), "42|7/" },
    { SHEET("<row><c r=\"A1\"><v>1</v></c></row>") "<?finish?>", "1/" },
    { SHEET("<row><c t=\"str\"><v>a&#x9B;b&#9;c</v></c></row>"), "a b\tc/" },
};

/* By hand: U+0085 and U+2028 are signs that no document shows; a tab and an o with dots are. */
START_TEST(signs_that_cannot_be_shown)
{
    static const char text[] = "a\xC2\x85\t\xC3\xB6\xE2\x80\xA8z";
    hw_xml_plain(&buf, text, sizeof text - 1);
    hw_xml_plain(&buf, "", 0);
    ck_assert_str_eq(buf.text, "a \t\xC3\xB6 z");
}
END_TEST

START_TEST(sheets_of_several_programs)
{
    hw_rows rows;
    hw_check_taken(&reader, sheets[_i].sheet, &arena, &rows);
    holds(&rows, sheets[_i].cells);
    ck_assert(!rows.semicolons);
}
END_TEST

/* Own choice of words; what is damaged by the rules of XML 1.0 or of the tags. */
static const hw_check_fault faults[] = {
    { "</worksheet>", "", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "31.5</v>", "31.5</w>", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "<v>0</v>", "<v>5</v>", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "<v>0</v>", "<v>-1</v>", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "<v>0</v>", "<v>0x</v>", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "\"C1\"", "\"1C\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "\"C1\"", "\"C\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "\"C1\"", "\"C0\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "\"C1\"", "\"AAAA1\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "\"C1\"", "\"C99999999999\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "r=\"3\"", "r=\"x\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "r=\"3\"", "r=\"0\"", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "\"B3\"", "\"B20001\"", HW_ERR_LIMIT, 0, 0, "too large", "keep only" },
    { "\"B3\"", "\"GS3\"", HW_ERR_LIMIT, 0, 0, "200 columns", "keep only" }, /* column 201 */
    { "here", "&eacute;", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { "here", "\xFF", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { NULL, "", HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
    { NULL, "<!DOCTYPE a [<!ENTITY b \"c\">]><a/>", HW_ERR_SYNTAX, 0, 0, "damaged", "save it" },
    { NULL, "<!DOCTYPE a SYSTEM \"b\"><a/>", HW_ERR_SYNTAX, 0, 0, "damaged", "save it" },
    { NULL,
        "<!DOCTYPE a [<!ENTITY b \"bbbbbbbbbb\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;\">"
        "<!ENTITY d \"&c;&c;&c;&c;&c;&c;&c;&c;\">]><a>&d;&d;&d;&d;</a>",
        HW_ERR_SYNTAX, 0, 0, "damaged", "save it again" },
};

START_TEST(damage)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* The last column and row that fit: GR is 7 x 26 + 18 = 200, by hand. */
START_TEST(the_last_cell)
{
    hw_rows rows;
    hw_check_taken(&reader, SHEET("<c r=\"GR20000\"><v>1</v></c>"), &arena, &rows);
    ck_assert_int_eq(rows.rows, 20000);
    ck_assert_int_eq(rows.columns, 200);
    ck_assert_str_eq(hw_rows_at(&rows, 19999, 199), "1");
}
END_TEST

/* A text of `before`, `count` times `each`, and `behind`; released with free. */
static char *many(const char *before, const char *each, size_t count, const char *behind)
{
    size_t first = strlen(before);
    size_t one = strlen(each);
    char *text = malloc(first + one * count + strlen(behind) + 1);
    ck_assert_ptr_nonnull(text);
    memcpy(text, before, first);
    for (size_t i = 0; i < count; i++) {
        memcpy(text + first + i * one, each, one);
    }
    memcpy(text + first + one * count, behind, strlen(behind) + 1);
    return text;
}

static void refuses(const hw_sheetxml *in, hw_status wanted)
{
    hw_rows rows = { .rows = -1 };
    hw_err err = { .code = HW_OK };
    ck_assert_int_eq(hw_sheetxml_rows(in, &arena, &rows, &err), wanted);
    ck_assert_int_eq(err.code, wanted);
    hw_check_plain(&err);
    ck_assert_int_eq(rows.rows, -1);
}

/* Own choice of limits: 64 tags deep, 20 MB long, 20 MB of texts however often they are used. */
START_TEST(harm)
{
    char *deep = many("", "<a>", 65, "");
    refuses(&(hw_sheetxml){ deep, strlen(deep), NULL, 0 }, HW_ERR_LIMIT);
    refuses(&(hw_sheetxml){ reader.good, strlen(reader.good), deep, strlen(deep) }, HW_ERR_LIMIT);
    char *lengthy = many("<a>", " ", 20 * 1024 * 1024, "</a>");
    refuses(&(hw_sheetxml){ lengthy, strlen(lengthy), NULL, 0 }, HW_ERR_LIMIT);
    char *text = many("<sst><si><t>", "x", 1 << 20, "</t></si></sst>");
    char *cells = many("<worksheet><sheetData>", "<row><c t=\"s\"><v>0</v></c></row>", 21,
        "</sheetData></worksheet>");
    refuses(&(hw_sheetxml){ cells, strlen(cells), text, strlen(text) }, HW_ERR_LIMIT);
    free(deep);
    free(lengthy);
    free(text);
    free(cells);
}
END_TEST

/* A workbook without shared texts has cells without them; damaged ones are told of as well. */
START_TEST(shared_texts)
{
    hw_rows rows;
    static const char plain[] = SHEET("<row><c><v>1</v></c></row>");
    hw_sheetxml in = { plain, sizeof plain - 1, NULL, 0 };
    ck_assert_int_eq(hw_sheetxml_rows(&in, &arena, &rows, NULL), HW_OK);
    holds(&rows, "1/");
    refuses(&(hw_sheetxml){ reader.good, strlen(reader.good), NULL, 0 }, HW_ERR_SYNTAX);
    refuses(
        &(hw_sheetxml){ reader.good, strlen(reader.good), texts, sizeof texts - 2 }, HW_ERR_SYNTAX);
}
END_TEST

/* Cut anywhere, the sheet is damaged: only the whole of it is well formed. */
START_TEST(cut_short)
{
    for (size_t len = 0; len < strlen(reader.good); len++) {
        refuses(&(hw_sheetxml){ reader.good, len, texts, sizeof texts - 1 }, HW_ERR_SYNTAX);
    }
}
END_TEST

START_TEST(refused_memory)
{
    hw_check_refused(&reader, 8);
}
END_TEST

/* The walker by itself: names without prefixes, and attributes by them. */
typedef struct {
    char seen[128];
    size_t len;
} notebook;

static hw_status note(void *context, const char *text, size_t len)
{
    notebook *n = context;
    ck_assert_uint_lt(n->len + len, sizeof n->seen);
    memcpy(n->seen + n->len, text, len);
    n->len += len;
    return HW_OK;
}

static hw_status note_open(void *context, const char *name, const char **attributes)
{
    const char *value = hw_xml_attribute(attributes, "id");
    hw_status status = note(context, name, strlen(name));
    status = status == HW_OK ? note(context, "=", 1) : status;
    value = value == NULL ? "none" : value;
    ck_assert_ptr_null(hw_xml_attribute(attributes, "i"));
    return status == HW_OK ? note(context, value, strlen(value)) : status;
}

static hw_status note_close(void *context, const char *name)
{
    return strcmp(name, "stop") == 0 ? HW_ERR_NOFIT : note(context, "/", 1);
}

START_TEST(the_walker)
{
    notebook n = { { 0 }, 0 };
    hw_xml_seer seer = { &n, note_open, note_close, note };
    static const char good[] =
        "<p:a xmlns:p=\"u\" xmlns:q=\"w\" p:x=\"1\" q:id=\"2\"><b>c</b></p:a>";
    ck_assert_int_eq(hw_xml_read(good, sizeof good - 1, &seer, NULL), HW_OK);
    ck_assert_str_eq(n.seen, "a=2b=nonec//");
    hw_err err = { .code = HW_OK };
    static const char stopped[] = "<a><stop/><b/>";
    n = (notebook){ { 0 }, 0 };
    ck_assert_int_eq(hw_xml_read(stopped, sizeof stopped - 1, &seer, &err), HW_ERR_NOFIT);
    ck_assert_str_eq(n.seen, "a=nonestop=none"); /* nothing after the walk was ended */
    ck_assert_int_eq(err.code, HW_OK);           /* its words are the seer's own affair */
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("sheetxml");
    TCase *tcase = fixture_case(suite, "sheetxml", NULL, NULL);
    tcase_add_loop_test(tcase, sheets_of_several_programs, 0, ROWS(sheets));
    tcase_add_test(tcase, signs_that_cannot_be_shown);
    tcase_add_loop_test(tcase, damage, 0, ROWS(faults));
    tcase_add_test(tcase, the_last_cell);
    tcase_add_test(tcase, harm);
    tcase_add_test(tcase, shared_texts);
    tcase_add_test(tcase, cut_short);
    tcase_add_test(tcase, refused_memory);
    tcase_add_test(tcase, the_walker);
    return hw_check_run(suite);
}
