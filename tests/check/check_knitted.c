/* The filled-in table: what is taken, and what is said of each mistake.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/knitted.h"

#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "reading.h"

/* Invented. */
static const char *names[] = { "4 years", "6 years", "98", "s", "S" };
static int ages[] = { 48, 72, -1, -1, -1 };
static const hw_sizes sizes = { .title = "", .count = 5, .names = names, .ages_months = ages };
static const hw_piece pieces[] = { { .name = "front", .mirror_of = -1 },
    { .name = "left sleeve", .mirror_of = -1 }, { .name = "right sleeve", .mirror_of = 1 } };
static const hw_garment garment = { .title = "dress", .pieces = pieces, .piece_count = 3 };
static const hw_knitted_context in_cm = { &sizes, &garment, HW_UNIT_CM };
static const hw_knitted_context in_inches = { &sizes, &garment, HW_UNIT_IN };

static hw_status read_with(
    const char *text, const hw_knitted_context *context, hw_arena *room, void *out, hw_err *err)
{
    hw_rows rows;
    hw_status status = hw_knitted_rows(text, strlen(text), room, &rows, err);
    return status == HW_OK ? hw_knitted_read(&rows, context, room, out, err) : status;
}

static hw_status read_cm(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    ck_assert_uint_eq(len, strlen(text));
    return read_with(text, &in_cm, room, out, err);
}

static hw_status read_inches(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    ck_assert_uint_eq(len, strlen(text));
    return read_with(text, &in_inches, room, out, err);
}

static const hw_check_reader reader = {
    .good = "Measured\r\n"                                                              /* 1 */
            "\r\n"                                                                      /* 2 */
            "size,piece,fabric,stitches,rows,\"width, cm\",\"length, cm\",remark\r\n"   /* 3 */
            "4 years,front,band,119,,38.5,,first try\r\n"                               /* 4 */
            "6 years,front,main,131,88,,,\r\n"                                          /* 5 */
            "6 years,left sleeve,main,53.5,176,12 3/8 in,60 cm,\" washed, twice \"\r\n" /* 6 */
            "98,right sleeve,band,60,44,,11.2,\r\n",                                    /* 7 */
    .read = read_cm,
    .size = sizeof(hw_knitted_list),
};

/* By hand: 12 3/8 in are 12.375 x 2.54 = 31.4325 cm. To 1e-12. */
START_TEST(a_table_is_read)
{
    hw_knitted_list list;
    hw_check_taken(&reader, reader.good, &arena, &list);
    ck_assert_int_eq(list.count, 3);
    const hw_knitted *k = list.list;
    ck_assert_int_eq(k[0].size, 0);
    ck_assert_int_eq(k[0].piece, 0);
    ck_assert_int_eq(k[0].fabric, HW_BAND);
    ck_assert_int_eq(k[0].row, 4);
    ck_assert_double_eq_tol(k[0].sts, 119, 1e-12);
    ck_assert_double_eq_tol(k[0].width_cm, 38.5, 1e-12);
    ck_assert_double_eq_tol(k[0].rows, 0, 1e-12);
    ck_assert_double_eq_tol(k[0].length_cm, 0, 1e-12);
    ck_assert_str_eq(k[0].note, "first try");
    ck_assert_int_eq(k[1].size, 1);
    ck_assert_int_eq(k[1].piece, 1);
    ck_assert_int_eq(k[1].fabric, HW_MAIN);
    ck_assert_int_eq(k[1].row, 6);
    ck_assert_double_eq_tol(k[1].sts, 53.5, 1e-12);
    ck_assert_double_eq_tol(k[1].width_cm, 31.4325, 1e-12);
    ck_assert_double_eq_tol(k[1].rows, 176, 1e-12);
    ck_assert_double_eq_tol(k[1].length_cm, 60, 1e-12);
    ck_assert_str_eq(k[1].note, "washed, twice");
    ck_assert_int_eq(k[2].size, 2);
    ck_assert_int_eq(k[2].piece, 2);
    ck_assert_int_eq(k[2].row, 7);
    ck_assert_double_eq_tol(k[2].sts, 0, 1e-12); /* counted, but no width was measured */
    ck_assert_double_eq_tol(k[2].width_cm, 0, 1e-12);
    ck_assert_double_eq_tol(k[2].rows, 44, 1e-12);
    ck_assert_double_eq_tol(k[2].length_cm, 11.2, 1e-12);
    ck_assert_ptr_null(k[2].note);
}
END_TEST

/* By hand: the one row of each table says the same in another way. */
static const struct {
    const char *text;
    int size;
    double sts, width_cm, rows, length_cm;
    bool inches; /* the project's usual unit */
} ways[] = {
    /* Columns in another order, and some of the knitter's own. */
    { "size,piece,remark,\"width, cm\",who,stitches,fabric,wanted\n"
      "4 years,front,,40,A. B.,100,main,41\n",
        0, 100, 40, 0, 0, false },
    { "size,piece,fabric,\"length, in\",rows\n4 years,front,main,10,80\n", 0, 0, 0, 80, 25.4,
        false },
    /* A head without a unit, and values with one of their own. */
    { "size,piece,fabric,width,stitches\n4 years,front,main,10,80\n", 0, 80, 10, 0, 0, false },
    { "size,piece,fabric,width,stitches\n4 years,front,main,10,80\n", 0, 80, 25.4, 0, 0, true },
    { "size,piece,fabric,width,stitches\n4 years,front,main,10 CM,80\n", 0, 80, 10, 0, 0, true },
    { "size,piece,fabric,\"width, cm\",stitches\n4 years,front,main,10,80\n", 0, 80, 10, 0, 0,
        true },
    { "size,piece,fabric,\"width, in\",stitches\n4 years,front,main,315 mm,80\n", 0, 80, 31.5, 0, 0,
        false },
    { "size,piece,fabric,width,stitches\n4 years,front,main,\"12 3/8\"\"\",80\n", 0, 80, 31.4325, 0,
        0, false },
    /* Capitals, blanks, and the blank that keeps two words on a line. */
    { "SIZE,Piece, FABRIC ,\"Width , CM\",Stitches\n 4 Years , Front,Main,10,80\n", 0, 80, 10, 0, 0,
        false },
    { "size,piece,fabric,width,stitches\n\xC2\xA0"
      "4 years\xC2\xA0,front,main,"
      "\xC2\xA0"
      "10\xC2\xA0"
      "cm,80\xC2\xA0\n",
        0, 80, 10, 0, 0, false },
    /* A small letter and a capital are two sizes where the project has both. */
    { "size,piece,fabric,width,stitches\nS,front,main,10,80\n", 4, 80, 10, 0, 0, false },
    { "size,piece,fabric,width,stitches\ns,front,main,10,80\n", 3, 80, 10, 0, 0, false },
    /* Semicolons, and commas in the numbers. */
    { "size;piece;fabric;width, cm;stitches;length;rows\n4 years;front;main;31,5;80,5;10;40\n", 0,
        80.5, 31.5, 40, 10, false },
    { "size;piece;fabric;width, cm;stitches\r\n4 years;front;main;31,5 cm;80\r\n", 0, 80, 31.5, 0,
        0, false },
    { "size;piece;fabric;width, cm;stitches\n4 years;front;main;31.5;80\n", 0, 80, 31.5, 0, 0,
        false },
    /* More digits than a rule shows, as a sheet stores them. */
    { "size,piece,fabric,width,stitches\n4 years,front,main,31.500000000000004,80\n", 0, 80, 31.5,
        0, 0, false },
    /* Not in the first column, behind other tables, and with rows that nobody filled in. */
    { "Sizes\nsize,4 years,6 years\nfront,98,98\n\nMeasured,\n,size,piece,fabric,width,stitches\n"
      ",6 years,front,main,,131\n,4 years,front,main,10,80\n,,,,,\n,x,y,z,1,2\n",
        0, 80, 10, 0, 0, false },
    { "size,piece,fabric,width,stitches\n4 years,front,main,10,80\n , ,\n6 years,front,x,y,z\n", 0,
        80, 10, 0, 0, false },
};

START_TEST(the_same_in_other_ways)
{
    hw_knitted_list list;
    hw_check_reader how = reader;
    how.read = ways[_i].inches ? read_inches : read_cm;
    hw_check_taken(&how, ways[_i].text, &arena, &list);
    ck_assert_int_eq(list.count, 1);
    const hw_knitted *k = list.list;
    ck_assert_int_eq(k->size, ways[_i].size);
    ck_assert_int_eq(k->piece, 0);
    ck_assert_int_eq(k->fabric, HW_MAIN);
    ck_assert_double_eq_tol(k->sts, ways[_i].sts, 1e-12);
    ck_assert_double_eq_tol(k->width_cm, ways[_i].width_cm, 1e-12);
    ck_assert_double_eq_tol(k->rows, ways[_i].rows, 1e-12);
    ck_assert_double_eq_tol(k->length_cm, ways[_i].length_cm, 1e-12);
}
END_TEST

#define HEADS "size,piece,fabric,stitches,width\n"

/* Own choice of words and limits; rows and columns by hand. */
static const hw_check_fault faults[] = {
    /* The head. */
    { "size,", "sort,", HW_ERR_MISSING, 3, 1, "begin with `size` and `piece`", "write them in" },
    { "size,piece,", "size,", HW_ERR_MISSING, 3, 1, "side by side", "write them in" },
    { "size,piece,", "piece,size,", HW_ERR_MISSING, 3, 1, "side by side", "write them in" },
    { NULL, "size,4 years\nrows,stitches\n", HW_ERR_MISSING, 0, 0, "is not here", "`Measured`" },
    { NULL, "", HW_ERR_MISSING, 0, 0, "the table of measured pieces is not here",
        "take the sheet" },
    { "fabric,", "cloth,", HW_ERR_MISSING, 3, 1, "no column `fabric`", "add one" },
    { "stitches", "stiches", HW_ERR_UNKNOWN, 3, 4, "`stiches` is no head", "`stitches`?" },
    { "length, cm", "lenght, cm", HW_ERR_UNKNOWN, 3, 7, "`lenght, cm`", "`length, cm`?" },
    { "length, cm", "length, cn", HW_ERR_UNKNOWN, 3, 7, "`length, cn`", "`length, cm`?" },
    { "length, cm", "width, in", HW_ERR_REPEATED, 3, 7, "two columns have the head `width`",
        "keep one" },
    { NULL, "size,piece,fabric,stitches,rows\n4 years,front,main,1,2\n", HW_ERR_MISSING, 1, 1,
        "no column `width`", "add one" },
    /* Nothing filled in. */
    { NULL, HEADS, HW_ERR_MISSING, 1, 1, "nothing was filled in", "under `width` or `length`" },
    { NULL, HEADS "4 years,front,main,100,\n", HW_ERR_MISSING, 1, 1, "nothing was filled in",
        "write under" },
    { NULL, HEADS "\n4 years,front,main,100,40\n", HW_ERR_MISSING, 1, 1, "nothing was filled in",
        "write under" },
    /* Names. */
    { "4 years", "4 yeers", HW_ERR_UNKNOWN, 4, 1, "there is no size `4 yeers` in this project",
        "did you mean `4 years`?" },
    { "4 years", "toddler", HW_ERR_UNKNOWN, 4, 1, "no size `toddler`", "such as `4 years`" },
    { "4 years", "", HW_ERR_MISSING, 4, 1, "which size was measured", "in the column `size`" },
    { "right sleeve", "rigth sleeve", HW_ERR_UNKNOWN, 7, 2, "no piece `rigth sleeve`",
        "did you mean `right sleeve`?" },
    { "right sleeve", "hood", HW_ERR_UNKNOWN, 7, 2, "no piece `hood`", "such as `front`" },
    { "right sleeve", " ", HW_ERR_MISSING, 7, 2, "which piece was measured", "column `piece`" },
    { "4 years", "a name that is longer than any size of any project could ever be, by far",
        HW_ERR_UNKNOWN, 4, 1, "`a name that is longer than any size of a`", "such as `4 years`" },
    { "4 years,front,band", "4 years,front,facing", HW_ERR_UNKNOWN, 4, 3, "the fabric is `facing`",
        "`main` for the plain fabric, or `band`" },
    { "4 years,front,band", "4 years,front,", HW_ERR_MISSING, 4, 3, "the fabric is missing;",
        "write `main`" },
    /* Numbers. */
    { "119", "", HW_ERR_MISSING, 4, 4, "there is a width here and no stitches",
        "write under `stitches` how many stitches it is the width of" },
    { "44,", ",", HW_ERR_MISSING, 7, 5, "there is a length here and no rows",
        "write under `rows`" },
    { NULL, "size,piece,fabric,width\n4 years,front,main,40\n", HW_ERR_MISSING, 2, 4, "no stitches",
        "write under `stitches`" },
    { "119", "many", HW_ERR_SYNTAX, 4, 4, "`many` under `stitches` is not a number", "42.5" },
    { "119", "119 sts", HW_ERR_SYNTAX, 4, 4, "`119 sts`", "such as 42" },
    { "119", "0", HW_ERR_RANGE, 4, 4, "under `stitches` must be above 0 and at most 2000",
        "again" },
    { "119", "-119", HW_ERR_RANGE, 4, 4, "above 0", "count again" },
    { "119", "2001", HW_ERR_RANGE, 4, 4, "at most 2000", "count again" },
    { "176", "5001", HW_ERR_RANGE, 6, 5, "under `rows` must be above 0 and at most 5000", "again" },
    { "38.5", "wide", HW_ERR_SYNTAX, 4, 6, "`wide` under `width` is not a length", "31.5 cm" },
    { "38.5", "38.5 ell", HW_ERR_SYNTAX, 4, 6, "`38.5 ell`", "12 3/8 in" },
    { "38.5", "\"38,5\"", HW_ERR_SYNTAX, 4, 6, "`38,5` under `width`", "with a point" },
    { "38.5", "TRUE", HW_ERR_SYNTAX, 4, 6, "`TRUE`", "such as 31.5 cm" },
    { "38.5", "0", HW_ERR_RANGE, 4, 6, "under `width` must be above 0 and at most 1000 cm",
        "measure" },
    { "38.5", "0 cm", HW_ERR_RANGE, 4, 6, "above 0", "measure" },
    { "38.5", "1000.5", HW_ERR_RANGE, 4, 6, "at most 1000 cm", "measure" },
    { "38.5", "10.1 m", HW_ERR_RANGE, 4, 6, "at most 1000 cm", "measure" },
    { "38.5", "1111111111111111111111111111111", HW_ERR_RANGE, 4, 6, "at most 1000 cm", "measure" },
    { "38.5", "1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1", HW_ERR_SYNTAX, 4,
        6, "is not a length", "31.5 cm" },
    { "38.5", "5.9", HW_ERR_RANGE, 4, 6, "more than 200 stitches in 10 cm",
        "the unit of the width" },
    { "11.2", "11.2 mm", HW_ERR_RANGE, 7, 7, "more than 200 rows in 10 cm", "unit of the length" },
    { NULL, "size;piece;fabric;stitches;width\n4 years;front;main;80;1.000,5\n", HW_ERR_SYNTAX, 2,
        5, "`1.000,5`", "with a point" },
};

START_TEST(mistakes)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* By hand: 60 x 12 x 2 rows are read, and not one more. */
START_TEST(as_many_rows_as_there_can_be)
{
    static const char row[] = "4 years,front,main,80,40\n";
    enum { MOST = 1440, ROW = sizeof row - 1, HEAD = sizeof HEADS - 1 };
    char *text = malloc(HEAD + (MOST + 1) * ROW + 1);
    ck_assert_ptr_nonnull(text);
    memcpy(text, HEADS, HEAD);
    for (int i = 0; i <= MOST; i++) {
        memcpy(text + HEAD + i * ROW, row, ROW + 1);
    }
    hw_check_fault fault = { NULL, text, HW_ERR_LIMIT, 1, 1,
        "1441 rows are filled in, and at most "
        "1440 are read",
        "two tables" };
    hw_check_told(&reader, &fault);
    text[HEAD + MOST * ROW] = '\0';
    hw_knitted_list list;
    hw_check_taken(&reader, text, &arena, &list);
    ck_assert_int_eq(list.count, MOST);
    ck_assert_int_eq(list.list[MOST - 1].row, MOST + 1);
    free(text);
}
END_TEST

START_TEST(refused_memory)
{
    hw_check_refused(&reader, 10);
}
END_TEST

#define ROWS_OF(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("knitted");
    TCase *tcase = fixture_case(suite, "knitted", NULL, NULL);
    tcase_add_test(tcase, a_table_is_read);
    tcase_add_loop_test(tcase, the_same_in_other_ways, 0, ROWS_OF(ways));
    tcase_add_loop_test(tcase, mistakes, 0, ROWS_OF(faults));
    tcase_add_test(tcase, as_many_rows_as_there_can_be);
    tcase_add_test(tcase, refused_memory);
    return hw_check_run(suite);
}
