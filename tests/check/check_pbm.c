/* Portable bitmaps in and out, and figures as motif files.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Sources: the format [I1], from memory; the packed bytes are worked out by hand. */
#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "read/datafile.h"
#include "read/pbm.h"
#include "write/motifyaml.h"
#include "write/pbm.h"

#define BYTES(text)                                                                                \
    {                                                                                              \
        text, sizeof(text) - 1, "bird"                                                             \
    }

static void is_drawn(const hw_chart *chart, const char *text, int width)
{
    ck_assert_int_eq(chart->width, width);
    ck_assert_int_eq(chart->width * chart->rows, (int)strlen(text));
    ck_assert_str_eq(chart->name, "bird");
    for (int i = 0; text[i] != '\0'; i++) {
        ck_assert_int_eq(chart->cells[i], text[i] == 'o' ? HW_CONTRAST : HW_BACKGROUND);
    }
}

/* The same picture of 10 columns and 2 rows in many ways; its rows packed into whole bytes are
 * 10000000 01...... and 00000000 11......, which is 80 40 and 00 C0. */
START_TEST(one_picture)
{
    static const hw_pbm_file files[] = {
        BYTES("P1\n10 2\n1000000001\n0000000011\n"),
        BYTES("P1 10 2 1 0 0 0 0 0 0 0 0 1 0 0 0 0 0 0 0 0 1 1"),
        BYTES("P1\n# a bird\n10 # columns\n2\n10000#half\n00001\n0000000011 # done"),
        BYTES("P1\r\n10 2\r\n1000000001\r\n0000000011\r\n"),
        BYTES("P1\t10\v2\f10000000010000000011"), BYTES("P4\n10 2\n\x80\x40\x00\xC0"),
        BYTES("P4 # a bird\n10 2 \x80\x40\x00\xC0"),
        BYTES("P4 10 2 \x80\x7F\x00\xFF"), /* what fills the last byte does not matter */
    };
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++) {
        hw_chart chart;
        hw_err err = { 0 };
        ck_assert_msg(
            hw_pbm_read(&files[i], &arena, &chart, &err) == HW_OK, "%zu: %s", i, err.text);
        is_drawn(&chart, "o........o........oo", 10);
    }
}
END_TEST

/* A packed picture whose first byte looks like a blank or a remark is a picture all the same. */
START_TEST(packed_like_text)
{
    static const hw_pbm_file file = BYTES("P4\n8 2\n#\n");
    hw_chart chart;
    ck_assert_int_eq(hw_pbm_read(&file, &arena, &chart, NULL), HW_OK);
    is_drawn(&chart, "..o...oo....o.o.", 8); /* 23 and 0A */
}
END_TEST

static const struct {
    hw_pbm_file file;
    hw_status status;
    int line, column;
    const char *words;
} faults[] = {
    { BYTES(""), HW_ERR_SYNTAX, 1, 1, "`P1` or `P4`" },
    { BYTES("P5 1 1 x"), HW_ERR_SYNTAX, 1, 1, "`P1` or `P4`" },
    { BYTES("P11 1 1"), HW_ERR_SYNTAX, 1, 1, "`P1` or `P4`" },
    { BYTES("P1\nten 2 1"), HW_ERR_SYNTAX, 2, 1, "the columns of the picture" },
    { BYTES("P1\n10 0 1"), HW_ERR_SYNTAX, 2, 4, "the rows of the picture" },
    { BYTES("P1\n10 2x 1"), HW_ERR_SYNTAX, 2, 4, "from 1 to 400" },
    { BYTES("P1\n10"), HW_ERR_SYNTAX, 2, 3, "the rows of the picture" },
    { BYTES("P1\n201 2 1"), HW_ERR_LIMIT, 2, 1, "too many columns" },
    { BYTES("P1\n2\n401 1"), HW_ERR_LIMIT, 3, 1, "too many rows" },
    { BYTES("P1 99999999999999999999 2 1"), HW_ERR_LIMIT, 1, 4, "too many columns" },
    { BYTES("P1\n2 2\n10\n0"), HW_ERR_SYNTAX, 4, 2, "after 3 of its 4 pixels" },
    { BYTES("P1\n2 2\n10\n0o"), HW_ERR_SYNTAX, 4, 2, "1 for contrast" },
    { BYTES("P1\n# \xC3\xA9t\xC3\xA9\n2 2\n10\n0\xC3\xA9"), HW_ERR_SYNTAX, 5, 2, "no pixel" },
    { BYTES("P1\n2 2\n10\n001"), HW_ERR_SYNTAX, 4, 3, "more stands here" },
    { BYTES("P1\n2 2\n0000"), HW_ERR_SYNTAX, 0, 0, "no black pixel" },
    { BYTES("P4\n10 2\n\x80\x40\x01"), HW_ERR_SYNTAX, 0, 0,
        "from byte 9 on the picture has 3 bytes, and 10 columns in 2 rows are 4" },
    { BYTES("P4\n8 1\n\x80\x40"), HW_ERR_SYNTAX, 0, 0, "from byte 8 on the picture has 2 bytes" },
    { BYTES("P4\n8 1"), HW_ERR_SYNTAX, 0, 0, "0 bytes" },
};

START_TEST(every_fault_is_told)
{
    hw_chart chart = { .rows = 77 };
    hw_err err = { 0 };
    /* A block of its own, so that a sanitizer sees a step beyond it. */
    char *bytes = malloc(faults[_i].file.len + 1);
    ck_assert_ptr_nonnull(bytes);
    memcpy(bytes, faults[_i].file.bytes, faults[_i].file.len);
    hw_pbm_file file = { bytes, faults[_i].file.len, "bird" };
    ck_assert_int_eq(hw_pbm_read(&file, &arena, &chart, &err), faults[_i].status);
    ck_assert_msg(hw_check_says(&err, faults[_i].status, faults[_i].words), "%s", err.text);
    ck_assert_int_eq(err.line, faults[_i].line);
    ck_assert_int_eq(err.column, faults[_i].column);
    ck_assert_int_eq(chart.rows, 77);
    free(bytes);
}
END_TEST

/* By hand: rows of 71 pixels are broken after the seventieth. */
START_TEST(written)
{
    unsigned char cells[71] = { 1, 0, 1 };
    cells[70] = 1;
    hw_chart chart = { "bird", 3, 1, cells };
    ck_assert_int_eq(hw_pbm_write(&chart, &buf), HW_OK);
    ck_assert_str_eq(buf.text, "P1\n3 1\n101\n");
    fixture_empty();
    chart.width = 71;
    ck_assert_int_eq(hw_pbm_write(&chart, &buf), HW_OK);
    ck_assert_uint_eq(buf.len, strlen("P1\n71 1\n") + 70 + 1 + 1 + 1);
    ck_assert_ptr_nonnull(strstr(buf.text, "000\n1\n"));
    hw_buf small;
    hw_buf_init(&small, &mem, 10);
    ck_assert_int_eq(hw_pbm_write(&chart, &small), HW_ERR_LIMIT);
    hw_buf_release(&small);
}
END_TEST

START_TEST(a_motif_file)
{
    static unsigned char cells[] = { 0, 1, 1, 1, 0, 0 };
    hw_motif_input motif = { .chart = { "gull's wing: #2", 3, 2, cells }, .gap = 4 };
    hw_motif_input again;
    ck_assert_int_eq(hw_motifyaml_write(&motif, &buf), HW_OK);
    ck_assert_str_eq(buf.text,
        "title: 'gull''s wing: #2'\nchart: |\n  .oo\n  o..\ngap: 4\nsource: own drawing\n");
    ck_assert_int_eq(hw_motif_read(buf.text, buf.len, &arena, &again, NULL), HW_OK);
    ck_assert_str_eq(again.chart.name, "gull's wing: #2");
    ck_assert_int_eq(again.gap, 4);
    ck_assert_int_eq(again.chart.width, 3);
    ck_assert_int_eq(again.chart.rows, 2);
    ck_assert_mem_eq(again.chart.cells, cells, sizeof cells);
}
END_TEST

START_TEST(memory_refused)
{
    static const hw_pbm_file file = BYTES("P1 2 1 10");
    hw_arena poor;
    hw_check_heap small;
    hw_chart chart = { .rows = 77 };
    hw_check_open(&poor, &small, 1, true);
    ck_assert_int_eq(hw_pbm_read(&file, &poor, &chart, NULL), HW_ERR_NOMEM);
    ck_assert_int_eq(chart.rows, 77);
    hw_check_close(&poor, &small);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { one_picture, packed_like_text, written, a_motif_file,
        memory_refused };
    Suite *suite = suite_create("pbm");
    TCase *tcase = fixture_case(suite, "pbm", NULL, NULL);
    for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++) {
        tcase_add_test(tcase, tests[i]);
    }
    tcase_add_loop_test(tcase, every_fault_is_told, 0, (int)(sizeof faults / sizeof faults[0]));
    return hw_check_run(suite);
}
