/* Outlines of garment files: corners, stretches and curves, and what is said of wrong ones.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/corners.h"

#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "read/datafile.h"
#include "read/garmentfile.h"
#include "reading.h"

static hw_status read_garment(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    return hw_garment_read(text, len, room, out, err);
}

/* Invented; positions are counted by hand in this text. */
static const hw_check_reader reader = {
    .good = "title: Invented vest\n"                                              /* 1 */
            "finished:\n"                                                         /* 2 */
            "  chest: {is: 80 cm}\n"                                              /* 3 */
            "  length: {is: 50 cm}\n"                                             /* 4 */
            "pieces:\n"                                                           /* 5 */
            "  back:\n"                                                           /* 6 */
            "    band width: 0.5 x chest\n"                                       /* 7 */
            "    outline:\n"                                                      /* 8 */
            "      left:\n"                                                       /* 9 */
            "        - {across: -0.25 x chest, up: length}\n"                     /* 10 */
            "      right:\n"                                                      /* 11 */
            "        - {across: 0.25 x chest, up: 30 cm}\n"                       /* 12 */
            "        - {stretch: arm, across: 0.2 x finished chest, up: 30 cm}\n" /* 13 */
            "        - {curve: monotone, across: 15 cm, up: 40 cm}\n"             /* 14 */
            "        - {curve: natural, across: 1 in, up: length}\n"              /* 15 */
            "      neck:\n"                                                       /* 16 */
            "        - {across: 4 cm, up: length - 10 cm}\n"                      /* 17 */
            "        - {stretch: collar, across: 5 cm, up: length}\n"             /* 18 */
            "  front:\n"                                                          /* 19 */
            "    band width: 0.5 x chest\n"                                       /* 20 */
            "    outline: {right: [{across: 0.25 x chest, up: length}]}\n"        /* 21 */
            "  other front: {mirrors: back}\n",                                   /* 22 */
    .read = read_garment,
    .size = sizeof(hw_garment),
};

/* By hand: what the text says. A way bears the name of the way before it where it has none; the
 * first is the side, and of a neck the neck. */
START_TEST(corners)
{
    static const struct {
        const char *stretch;
        hw_curve curve;
        int line;
    } right[] = { { "side", HW_CURVE_STRAIGHT, 12 }, { "arm", HW_CURVE_STRAIGHT, 13 },
        { "arm", HW_CURVE_MONOTONE, 14 }, { "arm", HW_CURVE_NATURAL, 15 } };
    hw_garment garment;
    hw_check_taken(&reader, reader.good, &arena, &garment);
    const hw_outline_rule *back = garment.pieces[0].outline;
    ck_assert_ptr_nonnull(back);
    ck_assert(!back->mirrored);
    ck_assert_int_eq(back->sides[HW_LEFT].count, 1);
    ck_assert_int_eq(back->sides[HW_RIGHT].count, 4);
    for (int i = 0; i < 4; i++) {
        const hw_corner *corner = &back->sides[HW_RIGHT].corners[i];
        ck_assert_str_eq(corner->stretch, right[i].stretch);
        ck_assert_int_eq(corner->curve, right[i].curve);
        ck_assert_int_eq(corner->line, right[i].line);
    }
    const hw_corner *corner = &back->sides[HW_RIGHT].corners[1];
    ck_assert_double_eq_tol(corner->across.terms[0].factor, 0.2, 1e-12);
    ck_assert(corner->across.terms[0].finished);
    ck_assert_double_eq_tol(corner->up.constant_cm, 30, 1e-12);
    ck_assert_double_eq_tol(back->sides[HW_RIGHT].corners[3].across.constant_cm, 2.54, 1e-12);
    ck_assert_double_eq_tol(back->sides[HW_LEFT].corners[0].across.terms[0].factor, -0.25, 1e-12);
    ck_assert_int_eq(back->neck.count, 2);
    ck_assert_str_eq(back->neck.corners[0].stretch, "neck");
    ck_assert_str_eq(back->neck.corners[1].stretch, "collar");
    ck_assert_double_eq_tol(back->neck.corners[0].up.constant_cm, -10, 1e-12);
    ck_assert_int_eq(garment.pieces[1].outline->neck.count, 0);
    ck_assert(garment.pieces[2].outline->mirrored);
    ck_assert_int_eq(garment.pieces[2].outline->sides[HW_RIGHT].count, 4);
}
END_TEST

/* By hand: the left of the back has no arm, that of its mirror has, because left and right change
 * places; the front's left mirrors its right; a neck's two edges are one; a top has no stretch. */
START_TEST(stretches)
{
    static const struct {
        int piece;
        hw_edge edge;
        const char *stretch;
        bool has;
    } rows[] = {
        { 0, HW_EDGE_RIGHT, "arm", true },
        { 0, HW_EDGE_LEFT, "arm", false },
        { 0, HW_EDGE_LEFT, "side", true },
        { 2, HW_EDGE_LEFT, "arm", true },
        { 2, HW_EDGE_RIGHT, "arm", false },
        { 1, HW_EDGE_LEFT, "side", true },
        { 1, HW_EDGE_RIGHT, "side", true },
        { 0, HW_EDGE_NECK_LEFT, "collar", true },
        { 0, HW_EDGE_NECK_RIGHT, "collar", true },
        { 0, HW_EDGE_NECK_RIGHT, "arm", false },
        { 1, HW_EDGE_NECK_LEFT, "neck", false },
        { 0, HW_EDGE_TOP, "side", false },
    };
    hw_garment garment;
    hw_check_taken(&reader, reader.good, &arena, &garment);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        bool has =
            hw_corners_has(garment.pieces[rows[i].piece].outline, rows[i].edge, rows[i].stretch);
        ck_assert_msg(has == rows[i].has, "row %zu", i);
    }
}
END_TEST

#define FIVE                                                                                       \
    "{across: 4 cm, up: 45 cm}, {across: 4 cm, up: 45 cm}, {across: 4 cm, up: 45 cm}, "            \
    "{across: 4 cm, up: 45 cm}, {across: 4 cm, up: 45 cm}, "
#define LETTERS "abcdefghijabcdefghijabcdefghijabcdefghij"

static const hw_check_fault faults[] = {
    { "0.25 x chest, up: 30 cm", "0.25 x chets, up: 30 cm", HW_ERR_UNKNOWN, 12, 20, "`chets`",
        "did you mean `chest`" },
    { "across: 15 cm, up: 40 cm", "across: 15 cm, up: waist", HW_ERR_UNKNOWN, 14, 48, "`waist`",
        "write it under `finished` first" },
    { "up: length - 10 cm", "up: length -", HW_ERR_SYNTAX, 17, 30, "`length -`", "blank" },
    { "{stretch: arm, ", "{stretch: " LETTERS "k, ", HW_ERR_LIMIT, 13, 21, "long name",
        "at most 40 letters" },
    { "{right: [{across: 0.25 x chest, up: length}]}", "{neck: [{across: 4 cm, up: 40 cm}]}",
        HW_ERR_MISSING, 21, 14, "needs its right edge", "write `right:`" },
    { "{right: [{across: 0.25 x chest, up: length}]}", "{right: [" FIVE FIVE FIVE FIVE FIVE "]}",
        HW_ERR_LIMIT, 21, 22, "25 corners are too many", "at most 24" },
    { "across: 15 cm, up: 40 cm", "across: 15 cm, up: \"len\n\n gth\"", HW_ERR_SYNTAX, 14, 48,
        "`len`", "an empty line stands inside this sum" },
    { "curve: natural", "curve: wavy", HW_ERR_UNKNOWN, 15, 19, "`wavy`", "natural" },
    { "- {across: 4 cm, up: length - 10 cm}", "- {across: 4 cm}", HW_ERR_MISSING, 17, 11, "`up`",
        "`up`" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* By hand: a stretch of 40 letters is still read, and 24 corners are. */
START_TEST(limits)
{
    static const char *const edits[][2] = {
        { "{stretch: arm, ", "{stretch: " LETTERS ", " },
        { "{right: [{across: 0.25 x chest, up: length}]}",
            "{right: [" FIVE FIVE FIVE FIVE
            "{across: 4 cm, up: 45 cm}, {across: 4 cm, up: 45 cm}, {across: 4 cm, up: 45 cm}, "
            "{across: 4 cm, up: 45 cm}]}" },
    };
    for (size_t i = 0; i < sizeof edits / sizeof edits[0]; i++) {
        char *text = hw_check_edit(reader.good, edits[i][0], edits[i][1]);
        hw_garment garment;
        hw_check_taken(&reader, text, &arena, &garment);
        free(text);
    }
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 30);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("corners");
    TCase *tcase = fixture_case(suite, "corners", NULL, NULL);
    tcase_add_test(tcase, corners);
    tcase_add_test(tcase, stretches);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, (int)(sizeof faults / sizeof faults[0]));
    tcase_add_test(tcase, limits);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
