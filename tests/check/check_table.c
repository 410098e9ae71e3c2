/* Size tables and a project's own rows of measurements.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/table.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "read/check.h"
#include "reading.h"

static hw_status read_table(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    return hw_table_read(text, len, room, out, err);
}

static const hw_check_reader reader = {
    .good = "title: Invented\n"                     /* 1 */
            "units: in\n"                           /* 2 */
            "names: [small, middle, large]\n"       /* 3 */
            "ages: [3, 12, 24]\n"                   /* 4 */
            "sources:\n"                            /* 5 */
            "  A1:\n"                               /* 6 */
            "    mark: read\n"                      /* 7 */
            "    what: a book\n"                    /* 8 */
            "  A2:\n"                               /* 9 */
            "    mark: from memory\n"               /* 10 */
            "    what: nobody knows\n"              /* 11 */
            "body:\n"                               /* 12 */
            "  chest:\n"                            /* 13 */
            "    values: [20, 50 cm, 22 1/2]\n"     /* 14 */
            "    source: [A1, A2, A1]\n"            /* 15 */
            "  height:\n"                           /* 16 */
            "    values: [70 cm, between, 90 cm]\n" /* 17 */
            "    source: A2\n",                     /* 18 */
    .read = read_table,
    .size = sizeof(hw_sizes),
};

/* By hand: 20 in are 50.8 cm, 22 1/2 in are 57.15 cm. To 1e-12. */
START_TEST(a_table_is_read)
{
    hw_sizes sizes;
    hw_check_taken(&reader, reader.good, &arena, &sizes);
    ck_assert_str_eq(sizes.title, "Invented");
    ck_assert_int_eq(sizes.count, 3);
    ck_assert_str_eq(sizes.names[1], "middle");
    ck_assert_int_eq(sizes.ages_months[2], 24);
    ck_assert_int_eq(sizes.measure_count, 2);
    const hw_measure *chest = &sizes.measures[0];
    ck_assert_str_eq(chest->name, "chest");
    ck_assert_double_eq_tol(chest->values_cm[0], 50.8, 1e-12);
    ck_assert_double_eq_tol(chest->values_cm[1], 50, 1e-12);
    ck_assert_double_eq_tol(chest->values_cm[2], 57.15, 1e-12);
    ck_assert_int_eq(chest->marks[0], HW_MARK_READ);
    ck_assert_int_eq(chest->marks[1], HW_MARK_MEMORY);
    ck_assert_str_eq(chest->sources[1], "A2");
    const hw_measure *height = &sizes.measures[1];
    ck_assert(height->missing[1] && !height->missing[0] && !height->missing[2]);
    ck_assert_str_eq(height->sources[2], "A2");
    ck_assert_int_eq(height->marks[0], HW_MARK_MEMORY);
}
END_TEST

/* Own choice of words; each mark of a source is the mark of its values. */
START_TEST(every_mark)
{
    static const struct {
        const char *word;
        hw_mark mark;
    } marks[] = { { "mark: read", HW_MARK_READ }, { "mark: derived", HW_MARK_DERIVED },
        { "mark: own choice", HW_MARK_CHOICE }, { "mark: common practice", HW_MARK_PRACTICE },
        { "mark: from memory", HW_MARK_MEMORY } };
    for (size_t i = 0; i < sizeof marks / sizeof marks[0]; i++) {
        hw_sizes sizes;
        char *text = hw_check_edit(reader.good, "mark: read", marks[i].word);
        hw_check_taken(&reader, text, &arena, &sizes);
        ck_assert_int_eq(sizes.measures[0].marks[0], marks[i].mark);
        free(text);
    }
}
END_TEST

static const hw_check_fault faults[] = {
    { "[small, middle, large]", "[small, middle, small]", HW_ERR_REPEATED, 3, 24,
        "the size `small` stands here twice", "rename" },
    { "[small,", "[a name of a size that goes on and on and on,", HW_ERR_LIMIT, 3, 9,
        "has a long name", "at most 40 letters" },
    { "[3, 12, 24]", "[3, 12]", HW_ERR_RANGE, 4, 7, "`ages` has 2 values and there are 3 sizes",
        "one age in months for each" },
    { "[3, 12, 24]", "3", HW_ERR_RANGE, 4, 7, "`ages` has 1 value and there are 3 sizes",
        "one age in months" },
    { "[20, 50 cm, 22 1/2]", "[20, 50 cm]", HW_ERR_RANGE, 14, 13,
        "`chest` has 2 values and there are 3 sizes", "`between`" },
    { "[20, 50 cm, 22 1/2]", "[20,5, 50 cm, 22 1/2]", HW_ERR_RANGE, 14, 13,
        "`chest` has 4 values and there are 3 sizes", "write 31.5, with a point" },
    { "[A1, A2, A1]", "[A1, A2]", HW_ERR_RANGE, 15, 13, "`source` has 2 values",
        "or one for the whole row" },
    { "source: A2", "source: A3", HW_ERR_UNKNOWN, 18, 13, "`A3` is not listed under `sources`",
        "add it there" },
    { "[A1, A2, A1]", "[A1, A1, a1]", HW_ERR_UNKNOWN, 15, 22, "`a1` is not listed", "add it" },
    { "units: in", "units: both", HW_ERR_UNKNOWN, 2, 8, "`both`", "one of cm, in" },
    { "mark: read", "mark: reed", HW_ERR_UNKNOWN, 7, 11, "`reed`",
        "one of read, derived, own choice, common practice, from memory" },
    { "    what: a book\n", "", HW_ERR_MISSING, 7, 5, "`what` is missing in a source", "one line" },
    { "    source: A2\n", "", HW_ERR_MISSING, 17, 5,
        "`source` is missing in a row of the size table", "one for all" },
    { "title: Invented\n", "", HW_ERR_MISSING, 1, 1, "`title` is missing in a size table file",
        "whose sizes" },
    { "    values: [20,", "    valeus: [20,", HW_ERR_UNKNOWN, 14, 5, "`valeus`", "`values`" },
    { "22 1/2", "0", HW_ERR_RANGE, 14, 25, "`values`: `0`", "write a length, 0.1 to 1000 cm" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* A table with so many sizes and measurements. */
static char *large(int sizes, int measures)
{
    enum { ROOM = 60000 };
    char *text = calloc(ROOM, 1);
    ck_assert_ptr_nonnull(text);
    size_t at = (size_t)snprintf(text, ROOM, "title: t\nsources: {A: {mark: read, what: w}}\n");
    at += (size_t)snprintf(text + at, ROOM - at, "names:\n");
    for (int i = 0; i < sizes; i++) {
        at += (size_t)snprintf(text + at, ROOM - at, "  - n%d\n", i);
    }
    at += (size_t)snprintf(text + at, ROOM - at, "body:\n");
    for (int m = 0; m < measures; m++) {
        at += (size_t)snprintf(text + at, ROOM - at, "  m%d:\n    source: A\n    values: [", m);
        for (int i = 0; i < sizes; i++) {
            at += (size_t)snprintf(text + at, ROOM - at, "%d%s", 40 + i, i + 1 < sizes ? "," : "");
        }
        at += (size_t)snprintf(text + at, ROOM - at, "]\n");
    }
    ck_assert_uint_lt(at, ROOM);
    return text;
}

/* Own choice of limits: HW_MAX_SIZES and HW_MAX_MEASURES are taken, one more is not. */
START_TEST(largest_tables)
{
    char *most = large(HW_MAX_SIZES, HW_MAX_MEASURES);
    char *sizes = large(HW_MAX_SIZES + 1, 1);
    char *measures = large(1, HW_MAX_MEASURES + 1);
    hw_sizes table;
    hw_check_taken(&reader, most, &arena, &table);
    ck_assert_int_eq(table.count, HW_MAX_SIZES);
    ck_assert_int_eq(table.measure_count, HW_MAX_MEASURES);
    hw_check_told(&reader, &(hw_check_fault){ NULL, sizes, HW_ERR_LIMIT, 4, 3, "61 sizes",
                               "at most 60 here and the others in a second project" });
    hw_check_told(&reader, &(hw_check_fault){ NULL, measures, HW_ERR_LIMIT, 128, 13,
                               "more than 40 measurements", "keep those" });
    free(measures);
    free(sizes);
    free(most);
}
END_TEST

/* By hand: a project's own rows are given, and one value may stand for the only size. */
START_TEST(rows_of_a_project)
{
    static const char text[] = "names: one\nages: 7\nbody:\n  hem: 40\n  chest: [between]\n";
    hw_err err = { 0 };
    hw_node *root = NULL;
    hw_sizes sizes;
    ck_assert_int_eq(hw_yaml_read(text, sizeof text - 1, &arena, &root, &err), HW_OK);
    ck_assert_int_eq(hw_check_part(root, HW_PART_SIZES, HW_UNIT_CM, &err), HW_OK);
    ck_assert_int_eq(hw_table_names(root, &arena, &sizes, &err), HW_OK);
    ck_assert_int_eq(sizes.count, 1);
    ck_assert_int_eq(sizes.ages_months[0], 7);
    ck_assert_int_eq(sizes.line, 1);
    ck_assert_int_eq(hw_table_rows(NULL, &sizes, &arena, &err), HW_OK);
    ck_assert_int_eq(sizes.measure_count, 0);
    ck_assert_int_eq(hw_table_rows(hw_node_find(root, "body"), &sizes, &arena, &err), HW_OK);
    ck_assert_int_eq(sizes.measure_count, 2);
    ck_assert_double_eq_tol(sizes.measures[0].values_cm[0], 40, 1e-12);
    ck_assert_int_eq(sizes.measures[0].marks[0], HW_MARK_GIVEN);
    ck_assert_str_eq(sizes.measures[0].sources[0], "");
    ck_assert_int_eq(sizes.measures[0].line, 4);
    ck_assert(sizes.measures[1].missing[0]);
}
END_TEST

START_TEST(ages_may_be_left_out)
{
    hw_sizes sizes;
    char *text = hw_check_edit(reader.good, "ages: [3, 12, 24]\n", "");
    hw_check_taken(&reader, text, &arena, &sizes);
    for (int i = 0; i < 3; i++) {
        ck_assert_int_eq(sizes.ages_months[i], -1);
    }
    free(text);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 60);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("table");
    TCase *tcase = fixture_case(suite, "table", NULL, NULL);
    tcase_add_test(tcase, a_table_is_read);
    tcase_add_test(tcase, every_mark);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, ROWS(faults));
    tcase_add_test(tcase, largest_tables);
    tcase_add_test(tcase, rows_of_a_project);
    tcase_add_test(tcase, ages_may_be_left_out);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
