/* Values against the key table: what is read, and what is said of every kind of mistake.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/check.h"

#include <stdlib.h>
#include <string.h>

#include "core/words.h"
#include "fixture.h"
#include "reading.h"

static hw_status read_project(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_check_task task = { .text = text, .len = len, .part = HW_PART_PROJECT };
    hw_node *root = NULL;
    hw_status status = hw_check_file(&task, room, &root, err);
    if (status == HW_OK) {
        *(hw_node **)out = root;
    }
    return status;
}

static const hw_check_reader reader = {
    .good = "title: A hem\n"               /* 1 */
            "units: both\n"                /* 2 */
            "machine: hand\n"              /* 3 */
            "garment: pouch\n"             /* 4 */
            "gauge:\n"                     /* 5 */
            "  main:\n"                    /* 6 */
            "    dial: 6.5\n"              /* 7 */
            "    swatches:\n"              /* 8 */
            "      - stitches: 40\n"       /* 9 */
            "        width: 5 1/2 in\n"    /* 10 */
            "motif:\n"                     /* 11 */
            "  use: tulip\n"               /* 12 */
            "  gap: 3\n"                   /* 13 */
            "hem:\n"                       /* 14 */
            "  depth: 45 mm\n"             /* 15 */
            "  fold: purl row\n"           /* 16 */
            "sizes:\n"                     /* 17 */
            "  names: [small, large]\n"    /* 18 */
            "  ages: [12, 24]\n"           /* 19 */
            "  body:\n"                    /* 20 */
            "    chest: [between, 61.5]\n" /* 21 */
            "ease:\n"                      /* 22 */
            "  chest: -2 1/2 %\n"          /* 23 */
            "  hem: 2 cm\n"                /* 24 */
            "choices:\n"                   /* 25 */
            "  re-hang: yes\n"             /* 26 */
            "  unbroken seams: no\n",      /* 27 */
    .read = read_project,
    .size = sizeof(hw_node *),
};

static const hw_node *at(const hw_node *root, const char *part, const char *key)
{
    const hw_node *node = hw_node_find(hw_node_find(root, part), key);
    ck_assert_ptr_nonnull(node);
    return node;
}

/* By hand: 5 1/2 in is 5.5 x 2.54 = 13.97 cm; words are counted from 0. To 1e-12. */
START_TEST(values_are_read)
{
    hw_node *root = NULL;
    hw_check_taken(&reader, reader.good, &arena, &root);
    ck_assert_double_eq_tol(hw_node_find(root, "units")->number, 2, 1e-12);
    const hw_node *main_fabric = at(root, "gauge", "main");
    ck_assert_double_eq_tol(hw_node_find(main_fabric, "dial")->number, 6.5, 1e-12);
    const hw_node *swatch = hw_node_find(main_fabric, "swatches")->first;
    ck_assert_double_eq_tol(hw_node_find(swatch, "stitches")->number, 40, 1e-12);
    ck_assert_double_eq_tol(hw_node_find(swatch, "width")->number, 13.97, 1e-12);
    ck_assert_double_eq_tol(at(root, "motif", "gap")->number, 3, 1e-12);
    ck_assert_double_eq_tol(at(root, "hem", "depth")->number, 4.5, 1e-12);
    ck_assert_double_eq_tol(at(root, "hem", "fold")->number, 2, 1e-12);
    const hw_node *ages = at(root, "sizes", "ages");
    ck_assert_double_eq_tol(ages->first->next->number, 24, 1e-12);
    const hw_node *chest = hw_node_find(at(root, "sizes", "body"), "chest");
    ck_assert(chest->first->between && !chest->first->next->between);
    ck_assert_double_eq_tol(chest->first->next->number, 61.5, 1e-12);
    ck_assert(at(root, "ease", "chest")->percent && !at(root, "ease", "hem")->percent);
    ck_assert_double_eq_tol(at(root, "ease", "chest")->number, -2.5, 1e-12);
    ck_assert_double_eq_tol(at(root, "ease", "hem")->number, 2, 1e-12);
    ck_assert_double_eq_tol(at(root, "choices", "re-hang")->number, 1, 1e-12);
    ck_assert_double_eq_tol(at(root, "choices", "unbroken seams")->number, 0, 1e-12);
}
END_TEST

/* By hand: a bare length is in inches after `units: in` alone. */
START_TEST(the_usual_unit)
{
    static const struct {
        const char *units;
        double depth_cm;
    } rows[] = { { "units: in", 114.3 / 10 }, { "units: cm", 4.5 }, { "units: both", 4.5 } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char *units = hw_check_edit(reader.good, "units: both", rows[i].units);
        char *text = hw_check_edit(units, "depth: 45 mm", "depth: 4.5");
        hw_node *root = NULL;
        hw_check_taken(&reader, text, &arena, &root);
        ck_assert_double_eq_tol(at(root, "hem", "depth")->number, rows[i].depth_cm, 1e-12);
        ck_assert_int_eq(hw_check_usual_unit(root), i == 0 ? HW_UNIT_IN : HW_UNIT_CM);
        free(text);
        free(units);
    }
    ck_assert_int_eq(hw_check_usual_unit(NULL), HW_UNIT_CM);
}
END_TEST

/* Own choice: the ends of each range are in it. */
static const struct {
    const char *old, *fresh;
} ends[] = {
    { "dial: 6.5", "dial: 0" },
    { "dial: 6.5", "dial: 30" },
    { "gap: 3", "gap: 0" },
    { "gap: 3", "gap: 199" },
    { "depth: 45 mm", "depth: 5 mm" },
    { "depth: 45 mm", "depth: 1 m" },
    { "ages: [12, 24]", "ages: [0, 1200]" },
    { "ages: [12, 24]", "ages: 12" },
    { "names: [small, large]", "names: small" },
    { "-2 1/2 %", "-50%" },
    { "-2 1/2 %", "200 %" },
    { "-2 1/2 %", "-1000" },
    { "-2 1/2 %", "1000 cm" },
    { "    chest: [between, 61.5]", "    chest: between" },
    { "61.5", "0.1" },
    { "61.5", "1000" },
};

START_TEST(ends_of_ranges_are_taken)
{
    char *text = hw_check_edit(reader.good, ends[_i].old, ends[_i].fresh);
    hw_node *root = NULL;
    hw_check_taken(&reader, text, &arena, &root);
    free(text);
}
END_TEST

/* Lines and columns by hand, in the text above. */
static const hw_check_fault faults[] = {
    /* keys */
    { "hem:\n  depth", "hemm:\n  depth", HW_ERR_UNKNOWN, 14, 1,
        "`hemm` is not known in the project", "did you mean `hem`?" },
    { "  gap:", "  gpa:", HW_ERR_UNKNOWN, 13, 3, "`gpa` is not known in motif", "`gap`" },
    { "        width:", "        widht:", HW_ERR_UNKNOWN, 10, 9, "`widht` is not known in a swatch",
        "`width`" },
    { "hem:\n  depth: 45 mm\n  fold: purl row\n", "hem: {depth: 4,5}\n", HW_ERR_UNKNOWN, 14, 16,
        "`5` is not known in hem", "with a point" },
    { "  fold:", "  zzzz:", HW_ERR_UNKNOWN, 16, 3, "`zzzz` is not known in hem",
        "`hemwright keys`" },
    { "units: both", "title: both", HW_ERR_REPEATED, 2, 1, "`title`", "keep one" },
    { "machine: hand\n", "", HW_ERR_MISSING, 1, 1, "`machine` is missing in the project",
        "a machine under" },
    { "  names: [small, large]\n", "", HW_ERR_MISSING, 18, 3, "`names` is missing in sizes",
        "smallest first" },
    { "  main:\n", "  band:\n", HW_ERR_MISSING, 6, 3, "`main` is missing in gauge",
        "the plain fabric" },
    /* kinds */
    { "title: A hem", "title: [a, b]", HW_ERR_KIND, 1, 8, "`title` wants words, and a list",
        "write one value" },
    { "title: A hem", "title: {a: b}", HW_ERR_KIND, 1, 8, "`title` wants words, and a group",
        "write one value" },
    { "title: A hem", "title: |\n  a\n  b", HW_ERR_KIND, 1, 8, "and several lines",
        "on the same line" },
    { "units: both", "units: [cm, in]", HW_ERR_KIND, 2, 8, "`units` wants one of cm, in, both",
        "write one value" },
    { "hem:\n  depth: 45 mm\n  fold: purl row\n", "hem: 5\n", HW_ERR_KIND, 14, 6,
        "`hem` wants a group, and one value stands", "lines below it, indented" },
    { "hem:\n  depth: 45 mm\n  fold: purl row\n", "hem:\n", HW_ERR_KIND, 14, 5,
        "`hem` wants a group, and nothing stands", "lines below it, indented" },
    { "motif:\n", "motif: []\nease2:\n", HW_ERR_KIND, 11, 8, "`motif` wants a group, and a list",
        "indented" },
    { "  names: [small, large]", "  names: {a: b}", HW_ERR_KIND, 18, 10,
        "`names` wants a list of words, and a group", "[a, b, c]" },
    { "[small, large]", "[small, [large]]", HW_ERR_KIND, 18, 18, "`names` wants words, and a list",
        "write one value" },
    { "[12, 24]", "[12, {a: b}]", HW_ERR_KIND, 19, 14, "`ages` wants a whole number, 0 to 1200",
        "write one value" },
    { "[between, 61.5]", "{a: 5}", HW_ERR_KIND, 21, 12,
        "`chest` wants a list of lengths, 0.1 to 1000 cm, and a group", "[a, b, c]" },
    { "    swatches:\n      - stitches: 40\n        width: 5 1/2 in\n",
        "    swatches:\n      stitches: 40\n", HW_ERR_KIND, 9, 7,
        "`swatches` wants a list of groups, and a group", "with `- `" },
    { "      - stitches: 40\n        width: 5 1/2 in\n", "      - 40\n", HW_ERR_KIND, 9, 9,
        "a swatch wants lines", "`key: value`" },
    { "  use: tulip", "  chart: [o]", HW_ERR_KIND, 12, 10, "`chart` wants a chart, and a list",
        "write `chart: |`" },
    /* values that are not there */
    { "title: A hem", "title:", HW_ERR_MISSING, 1, 7, "a value is missing in `title`", "remark" },
    { "title: A hem", "title: #1c2b4a", HW_ERR_MISSING, 1, 7, "a # begins a remark",
        "between quotes" },
    { "title: A hem", "title: ''", HW_ERR_MISSING, 1, 8, "a value is missing in `title`",
        "quotes" },
    { "[12, 24]", "[]", HW_ERR_MISSING, 19, 9, "`ages` is an empty list", "leave the line out" },
    { "[small, large]", "[small, '']", HW_ERR_MISSING, 18, 18, "a value is missing in `names`",
        "quotes" },
    /* numbers */
    { "dial: 6.5", "dial: nan", HW_ERR_SYNTAX, 7, 11, "`dial`: `nan`", "write a number, 0 to 30" },
    { "dial: 6.5", "dial: .nan", HW_ERR_SYNTAX, 7, 11, "`.nan`", "write a number" },
    { "dial: 6.5", "dial: inf", HW_ERR_SYNTAX, 7, 11, "`inf`", "write a number" },
    { "dial: 6.5", "dial: -.inf", HW_ERR_SYNTAX, 7, 11, "`-.inf`", "write a number" },
    { "dial: 6.5", "dial: 0x6", HW_ERR_SYNTAX, 7, 11, "`0x6`", "write a number" },
    { "dial: 6.5", "dial: 1e1", HW_ERR_SYNTAX, 7, 11, "`1e1`", "write a number" },
    { "dial: 6.5", "dial: six", HW_ERR_SYNTAX, 7, 11, "`six`", "write a number" },
    { "dial: 6.5", "dial: 6,5", HW_ERR_SYNTAX, 7, 11, "`6,5` cannot be read", "with a point" },
    { "dial: 6.5", "dial: -1", HW_ERR_RANGE, 7, 11, "`-1` does not fit", "0 to 30" },
    { "dial: 6.5", "dial: 30.01", HW_ERR_RANGE, 7, 11, "`30.01`", "0 to 30" },
    { "dial: 6.5", "dial: 10000000000", HW_ERR_RANGE, 7, 11, "`10000000000`", "0 to 30" },
    { "dial: 6.5", "dial: 1/0", HW_ERR_SYNTAX, 7, 11, "`1/0`", "write a number" },
    { "stitches: 40", "stitches: 0", HW_ERR_RANGE, 9, 19, "`0`", "whole number, 1 to 2000" },
    { "stitches: 40", "stitches: 40.5", HW_ERR_SYNTAX, 9, 19, "`40.5`", "whole number" },
    { "stitches: 40", "stitches: -40", HW_ERR_SYNTAX, 9, 19, "`-40`", "whole number" },
    { "stitches: 40", "stitches: 2001", HW_ERR_RANGE, 9, 19, "`2001`", "1 to 2000" },
    { "stitches: 40", "stitches: 10000000000", HW_ERR_SYNTAX, 9, 19, "`10000000000`", "1 to 2000" },
    { "[12, 24]", "[12, x]", HW_ERR_SYNTAX, 19, 14, "`ages`: `x`",
        "write a whole number, 0 to 1200" },
    { "[12, 24]", "[12, 1201]", HW_ERR_RANGE, 19, 14, "`1201`", "0 to 1200" },
    /* lengths */
    { "45 mm", "0", HW_ERR_RANGE, 15, 10, "`depth`: `0`", "write a length, 0.5 to 100 cm" },
    { "45 mm", "-4 cm", HW_ERR_RANGE, 15, 10, "`-4 cm`", "0.5 to 100 cm" },
    { "45 mm", "1.1 m", HW_ERR_RANGE, 15, 10, "`1.1 m`", "0.5 to 100 cm" },
    { "45 mm", "4 ft", HW_ERR_UNKNOWN, 15, 10, "`depth`: the unit in `4 ft`", "cm, mm, in" },
    { "45 mm", "4,5 cm", HW_ERR_SYNTAX, 15, 10, "`4,5 cm` cannot be read", "with a point" },
    { "45 mm", "1e9 cm", HW_ERR_SYNTAX, 15, 10, "`1e9 cm` does not fit", "write a length" },
    { "45 mm", "cm", HW_ERR_SYNTAX, 15, 10, "`cm`", "write a length" },
    { "45 mm", "9999999999 cm", HW_ERR_RANGE, 15, 10, "`9999999999 cm`", "write a length" },
    { "61.5", "1000.1", HW_ERR_RANGE, 21, 22, "`chest`: `1000.1`",
        "write a length, 0.1 to 1000 cm" },
    { "61.5", "betwen", HW_ERR_SYNTAX, 21, 22, "`chest`: `betwen`", "write a length" },
    { "    chest: [between, 61.5]", "    chest: x", HW_ERR_SYNTAX, 21, 12, "`chest`: `x`",
        "write a length" },
    /* ease */
    { "-2 1/2 %", "-51 %", HW_ERR_RANGE, 23, 10, "`chest`: `-51 %`", "from -50 % to 200 %" },
    { "-2 1/2 %", "201%", HW_ERR_RANGE, 23, 10, "`201%`", "from -50 % to 200 %" },
    { "-2 1/2 %", "1001", HW_ERR_RANGE, 23, 10, "`1001`", "length or percentage" },
    { "-2 1/2 %", "much", HW_ERR_SYNTAX, 23, 10, "`much`", "length or percentage" },
    { "-2 1/2 %", "2 percent", HW_ERR_UNKNOWN, 23, 10, "the unit in `2 percent`", "cm" },
    /* words */
    { "units: both", "units: inches", HW_ERR_UNKNOWN, 2, 8, "`inches`", "one of cm, in, both" },
    { "purl row", "purl", HW_ERR_UNKNOWN, 16, 9, "`fold`: `purl`",
        "one of none, loose row, purl row, picot" },
    { "re-hang: yes", "re-hang: true", HW_ERR_UNKNOWN, 26, 12, "`true`", "write yes or no" },
    { "re-hang: yes", "re-hang: Yes", HW_ERR_UNKNOWN, 26, 12, "`Yes`", "write yes or no" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* The first mistake in the file is told, though a key is missing too. */
START_TEST(the_first_fault_wins)
{
    char *text = hw_check_edit(reader.good, "machine: hand\n", "");
    hw_check_fault fault = { NULL, NULL, HW_ERR_RANGE, 14, 10, "`0`", "0.5 to 100 cm" };
    char *both = hw_check_edit(text, "45 mm", "0");
    fault.fresh = both;
    hw_check_told(&reader, &fault);
    free(both);
    free(text);
}
END_TEST

/* Own choice: the longest names and values that are read still make whole messages. */
START_TEST(long_words_are_quoted_short)
{
    char name[HW_WORDS_MAX_NAME + 1] = { 0 };
    char value[2 * HW_MAX_TEXT + 3] = { 0 };
    memset(name, 'n', sizeof name - 1);
    for (size_t i = 0; i + 1 < sizeof value - 1; i += 2) {
        memcpy(value + i, "\xC3\xA9", 2); /* a cut in the middle would show */
    }
    static const struct {
        const char *before, *old;
        hw_status status;
    } rows[] = {
        { "    ", "    chest: [between, 61.5]", HW_ERR_SYNTAX },
        { "  ", "  chest: -2 1/2 %", HW_ERR_SYNTAX },
        { "  ", "  fold: purl row", HW_ERR_UNKNOWN },
        { "", "title: A hem", HW_ERR_UNKNOWN },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char line[4 * HW_MAX_TEXT] = { 0 };
        const char *key = i < 2 ? name : i == 2 ? "fold" : name;
        const char *const pieces[] = { rows[i].before, key, ": ", value };
        for (size_t p = 0; p < sizeof pieces / sizeof pieces[0]; p++) {
            memcpy(line + strlen(line), pieces[p], strlen(pieces[p]));
        }
        char *text = hw_check_edit(reader.good, rows[i].old, line);
        hw_err err = { 0 };
        hw_node *root = NULL;
        ck_assert_int_eq(read_project(text, strlen(text), &arena, &root, &err), rows[i].status);
        hw_check_plain(&err);
        ck_assert_msg(hw_yaml_is_text(err.text, strlen(err.text)), "%s", err.text);
        free(text);
    }
}
END_TEST

/* Own choice: a title may have HW_MAX_TEXT letters, of whatever size. */
START_TEST(long_titles)
{
    for (int more = 0; more < 2; more++) {
        char line[2 * HW_MAX_TEXT + 20] = "title: ";
        for (int i = 0; i < HW_MAX_TEXT + more; i++) {
            memcpy(line + strlen(line), "\xC3\xA4", 2);
        }
        if (more == 1) {
            hw_check_fault fault = { "title: A hem", line, HW_ERR_LIMIT, 1, 8,
                "`title`: this is too long", "at most 200 letters" };
            hw_check_told(&reader, &fault);
            continue;
        }
        char *text = hw_check_edit(reader.good, "title: A hem", line);
        hw_node *root = NULL;
        hw_check_taken(&reader, text, &arena, &root);
        free(text);
    }
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 50);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("check");
    TCase *tcase = fixture_case(suite, "check", NULL, NULL);
    tcase_add_test(tcase, values_are_read);
    tcase_add_test(tcase, the_usual_unit);
    tcase_add_loop_test(tcase, ends_of_ranges_are_taken, 0, ROWS(ends));
    tcase_add_loop_test(tcase, every_fault_is_told, 0, ROWS(faults));
    tcase_add_test(tcase, the_first_fault_wins);
    tcase_add_test(tcase, long_words_are_quoted_short);
    tcase_add_test(tcase, long_titles);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
