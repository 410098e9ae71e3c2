/* Measurements of a project: its own, its table's, and what rules make of them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/measuring.h"

#include <string.h>

#include "loading.h"
#include "support.h"
#include "tank_edits.h"

/* All numbers are invented. The table has three sizes, the project two of them and one between. */
static const char garment[] = "title: Bag\n"
                              "finished:\n"
                              "  width: {is: 0.5 x hips + 2 cm, ease: 1 cm}\n"
                              "  depth: {is: 2 x finished width - hips}\n"
                              "  strap: {is: arm}\n"
                              "pieces:\n"
                              "  bag: {band width: finished width}\n";
static const char table[] = "title: Own sizes\n"
                            "names: [small, middle, large]\n"
                            "ages: [12, 24, 36]\n"
                            "sources: {I: {mark: read, what: invented}}\n"
                            "body:\n"
                            "  hips: {values: [50, 60, 70], source: I}\n"
                            "  arm: {values: [40, 50, 60], source: I}\n"
                            "  head: {values: [45, 46, 47], source: I}\n";
static const char project[] = "title: Bag\n"
                              "machine: standard\n"
                              "garment: bag\n"
                              "gauge:\n"
                              "  main: {stitches: 20, rows: 30}\n"
                              "motif:\n"
                              "  chart: |\n"
                              "    o\n"
                              "hem: {depth: 2}\n"
                              "sizes:\n"
                              "  names: [small, between, large]\n"
                              "  table: own\n"
                              "  body: {arm: [41, 52, 61]}\n";

typedef struct {
    hw_arena arena;
    hw_check_heap heap;
    hw_project project;
    hw_sizes body, finished;
} measured;

static hw_status measure(measured *m, const loading_edit *edits, hw_err *err)
{
    loading from = { .text = project,
        .data = { [HW_DATA_GARMENT] = garment, [HW_DATA_SIZES] = table } };
    for (int i = 0; edits != NULL && edits[i].old != NULL; i++) {
        from.edits[i] = edits[i];
    }
    hw_check_open(&m->arena, &m->heap, 0, false);
    loading_open(&from, &m->arena, &m->project);
    m->body.count = m->finished.count = -1;
    return hw_measuring_make(&m->project, &m->arena, &m->body, &m->finished, err);
}

static double value(const hw_sizes *sizes, const char *name, int size)
{
    int at = hw_sizes_find(sizes, name);
    ck_assert_msg(at >= 0, "%s is not there", name);
    return sizes->measures[at].values_cm[size];
}

/* By hand: hips 50 and 70 from the table, 60 between; arms are the project's own; nobody asks for
 * the head. Width 0.5 x 50 + 2 + 1 = 28, 33, 38; depth 2 x 28 - 50 = 6, 6, 6. */
START_TEST(by_hand)
{
    static const double wanted[][3] = { { 50, 60, 70 }, { 41, 52, 61 } };
    static const double made[][3] = { { 28, 33, 38 }, { 6, 6, 6 }, { 41, 52, 61 } };
    measured m;
    ck_assert_int_eq(measure(&m, NULL, NULL), HW_OK);
    for (int i = 0; i < 3; i++) {
        ck_assert_double_eq_tol(value(&m.body, "hips", i), wanted[0][i], 1e-9);
        ck_assert_double_eq_tol(value(&m.body, "arm", i), wanted[1][i], 1e-9);
        ck_assert_double_eq_tol(value(&m.finished, "width", i), made[0][i], 1e-9);
        ck_assert_double_eq_tol(value(&m.finished, "depth", i), made[1][i], 1e-9);
        ck_assert_double_eq_tol(value(&m.finished, "strap", i), made[2][i], 1e-9);
    }
    ck_assert_int_lt(hw_sizes_find(&m.body, "head"), 0);
    int hips = hw_sizes_find(&m.body, "hips");
    ck_assert_int_eq(m.body.measures[hips].marks[0], HW_MARK_READ);
    ck_assert_int_eq(m.body.measures[hips].marks[1], HW_MARK_INTERPOLATED);
    /* Ages stand in the table for the sizes that it has. */
    ck_assert_int_eq(m.body.ages_months[0], 12);
    ck_assert_int_eq(m.body.ages_months[1], -1);
    ck_assert_int_eq(m.body.ages_months[2], 36);
    hw_check_close(&m.arena, &m.heap);
}
END_TEST

/* What is given stays as it is, ease and rule or not, and its own rule asks for nothing. */
START_TEST(given)
{
    const loading_edit edits[] = { { "  body: {arm: [41, 52, 61]}\n",
                                       "  ages: [1, 2, 3]\n  finished: {width: [30, 35, 40], "
                                       "strap: [7, 8, 9], depth: [5, 6, 7]}\n" },
        { NULL, NULL } };
    measured m;
    ck_assert_int_eq(measure(&m, edits, NULL), HW_OK);
    ck_assert_double_eq_tol(value(&m.finished, "width", 0), 30, 1e-9);
    ck_assert_double_eq_tol(value(&m.finished, "strap", 2), 9, 1e-9);
    ck_assert_int_eq(m.body.measure_count, 0);
    ck_assert_int_eq(m.body.ages_months[0], 1);
    hw_check_close(&m.arena, &m.heap);
}
END_TEST

START_TEST(refused)
{
    static const struct {
        loading_edit edit;
        hw_status status;
        const char *words;
    } rows[] = {
        /* the table lacks the last size */
        { { "[small, between, large]", "[small, middle, huge]" }, HW_ERR_MISSING,
            "is not in the table `Own sizes`; use its names, such as `small` and `large`" },
        /* a measurement that neither table nor project has */
        { { "  table: own\n  body: {arm: [41, 52, 61]}\n", "  body: {arm: [41, 52, 61]}\n" },
            HW_ERR_MISSING, "hips" },
        /* a row of the project's own whose last size is missing */
        { { "[41, 52, 61]", "[41, 52, between]" }, HW_ERR_MISSING, "arm" },
        { { "  body: {arm: [41, 52, 61]}", "  finished: {strap: [between, 5, 6]}" }, HW_ERR_MISSING,
            "strap" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const loading_edit edits[] = { rows[i].edit, { NULL, NULL } };
        measured m;
        hw_err err = { 0 };
        hw_status status = measure(&m, edits, &err);
        ck_assert_int_eq(status, rows[i].status);
        ck_assert_msg(strstr(err.text, rows[i].words) != NULL, "%s", err.text);
        ck_assert_int_eq(m.body.count, -1);
        ck_assert_int_eq(m.finished.count, -1);
        hw_check_close(&m.arena, &m.heap);
    }
}
END_TEST

/* By hand: 150 cm of the chest, given in line 18 of the project, are 300 stitches, and two edge
 * stitches; ease on the wrist, in line 19, makes it 324 cm; a wrist of the garment file's own is in
 * no line of the project. The bed has 200 needles. */
START_TEST(lines_of_widths)
{
    static const struct {
        loading_edit project, garment;
        int line;
    } list[] = {
        { { "chest: [80]", "chest: [300]" }, { NULL, NULL }, 18 },
        { { "choices:", "ease: {wrist: 300 cm}\nchoices:" }, { NULL, NULL }, 19 },
        { { NULL, NULL }, { "wrist: {is: 24 cm}", "wrist: {is: 240 cm}" }, 0 },
    };
    for (size_t i = 0; i < sizeof list / sizeof list[0]; i++) {
        tank t;
        hw_err err = { 0 };
        ck_assert_int_eq(
            tank_try(&t, EDITS(list[i].project), EDITS(list[i].garment), &err), HW_ERR_NOFIT);
        ck_assert_ptr_nonnull(strstr(err.text, "but the bed has 200 needles"));
        ck_assert_int_eq(err.line, list[i].line);
        ck_assert(!err.of_garment);
        tank_close(&t);
    }
}
END_TEST

/* By hand: the chest follows from the bust, which line 7 gives. */
START_TEST(line_of_a_body)
{
    hw_measure bust = { .name = "bust", .line = 7 };
    hw_measure chest = { .name = "chest" };
    hw_sizes body = { .measures = &bust, .measure_count = 1 };
    hw_sizes finished = { .measures = &chest, .measure_count = 1 };
    hw_finished what = { .name = "chest",
        .rule = { .count = 1, .terms = { { 1.0, "bust", false } } } };
    hw_project from = { .garment = { .finished = &what, .finished_count = 1 } };
    hw_rule width = { .count = 1, .terms = { { 0.5, "chest", true } } };
    ck_assert_int_eq(hw_measuring_line(&from, &body, &finished, &width), 7);
    bust.line = 0;
    ck_assert_int_eq(hw_measuring_line(&from, &body, &finished, &width), 0);
    chest.line = 9;
    ck_assert_int_eq(hw_measuring_line(&from, &body, &finished, &width), 9);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { by_hand, given, refused, lines_of_widths, line_of_a_body };
    return hw_check_run(hw_check_suite("measuring", tests, sizeof tests / sizeof tests[0]));
}
