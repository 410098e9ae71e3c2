/* Which way trims run, and how they are drawn over the ends of others: edges of the tank, by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/trimway.h"

#include <stdio.h>
#include <string.h>

#include "core/trimming.h"
#include "shell/draw.h"
#include "support.h"
#include "tank_edits.h"

#define ALONG(text)                                                                                \
    {                                                                                              \
        "  armband:\n    along: [back right armhole, front left armhole]\n    depth: 0.1 x "       \
        "armhole\n"                                                                                \
        "  placket: {along: [front left]}\n",                                                      \
            text                                                                                   \
    }

/* A trim of the front, which is straight: its side is 33 cm up and its armhole 17 cm more, and its
 * top 40 cm wide. Right side seen, a trim that stands up from a left edge has its lower end at the
 * left, and from a right edge at the right; from the top it lies as the top does. */
static const struct {
    const char *trims;
    hw_side first;
    bool from_below;
    int part; /* of the last trim: where it runs over an end; -1: nowhere */
    bool at_last;
} rows[] = {
    { "  a: {along: [front left]}\n", HW_LEFT, true, -1, false },
    { "  a: {along: [front right side]}\n", HW_RIGHT, true, -1, false },
    { "  a: {along: [front top]}\n", HW_RIGHT, false, -1, false },
    { "  a: {along: [front right side, front right armhole]}\n", HW_RIGHT, false, -1, false },
    { "  a: {along: [front right armhole, front right side]}\n", HW_LEFT, false, -1, false },
    { "  a: {along: [back neck right, back neck left]}\n", HW_RIGHT, false, -1, false },
    { "  a: {along: [front right, front top, front left]}\n", HW_RIGHT, false, -1, false },
    { "  a: {along: [front left, front top, front right]}\n", HW_LEFT, false, -1, false },
    { "  a: {along: [back neck left, back neck right]}\n", HW_LEFT, false, -1, false },
    { "  a: {along: [front left armhole]}\n  b: {along: [front left side, a end]}\n", HW_LEFT, true,
        0, true },
    { "  a: {along: [front left armhole]}\n  b: {along: [a end, front left side]}\n", HW_RIGHT,
        false, 1, true },
    { "  a: {along: [front right armhole]}\n  b: {along: [front right side, a end]}\n", HW_RIGHT,
        true, 0, true },
    { "  a: {along: [front right side]}\n  b: {along: [a end, front right armhole]}\n", HW_RIGHT,
        true, 1, false },
    { "  a: {along: [front left armhole]}\n  b: {along: [front top, a end]}\n", HW_RIGHT, false, 0,
        false },
    { "  a: {along: [front left armhole]}\n  b: {along: [a end, front top]}\n", HW_LEFT, false, 1,
        false },
    { "  a: {along: [front right armhole]}\n  b: {along: [front top, a end]}\n", HW_LEFT, false, 0,
        true },
    { "  a: {along: [front left side, front left armhole]}\n"
      "  b: {along: [front top, a end]}\n",
        HW_RIGHT, false, 0, false },
};

START_TEST(ways)
{
    tank t;
    tank_open(&t, NULL, EDITS(ALONG(rows[_i].trims)));
    const hw_trimway *way = &t.plan.whole->trims->way;
    int last = way->garment->trim_count - 1;
    const hw_edge_run *along = &way->garment->trims[last].along;
    ck_assert_int_eq(way->first[last], rows[_i].first);
    ck_assert_int_eq(t.plan.whole->trims->kinds[last].first, rows[_i].first);
    ck_assert_int_eq(hw_trimway_from_below(way, last), rows[_i].from_below);
    for (int k = 0; k < along->count; k++) {
        hw_trimway_meeting meeting = { -1, false };
        if (along->parts[k].piece < 0) {
            ck_assert(hw_trimway_meets(way, last, k, &meeting));
            ck_assert_int_eq(meeting.part, rows[_i].part);
            ck_assert_int_eq(meeting.at_last, rows[_i].at_last);
        }
    }
    ck_assert_int_eq(hw_trimway_check(way, last, NULL), HW_OK);
    tank_close(&t);
}
END_TEST

/* The end that lies at the edge counts, not where a trim goes over from one edge to the next, nor
 * an end that lies elsewhere. */
START_TEST(astray)
{
    static const char *const trims[] = {
        "  a: {along: [front left side]}\n  b: {along: [front right side, a end]}\n",
        "  a: {along: [back right side, back right armhole, back right shoulder]}\n"
        "  b: {along: [back right armhole, a end]}\n",
        "  a: {along: [front left armhole]}\n"
        "  b: {along: [front right side, front right armhole, a end]}\n",
    };
    for (size_t i = 0; i < sizeof trims / sizeof trims[0]; i++) {
        tank t;
        hw_err err = { 0 };
        hw_status status = tank_try(&t, NULL, EDITS(ALONG(trims[i])), &err);
        ck_assert_msg(status == HW_ERR_RANGE, "row %zu: %s", i, err.text);
        ck_assert(strstr(err.text, "`a end` does not lie at an end") != NULL);
        tank_close(&t);
    }
}
END_TEST

/* Two front halves of 20 cm, with a shoulder each and the neck between, joined to the back: what a
 * neckband of several pieces runs along. By hand. */
#define SHOULDERS                                                                                  \
    "joins:\n  - front right shoulder to back left shoulder\n"                                     \
    "  - front left shoulder to back right shoulder\n"
#define BIB                                                                                        \
    {                                                                                              \
        "- {stretch: armhole, across: 0.25 x chest, up: length}\n",                                \
            "- {stretch: armhole, across: 0.25 x chest, up: length}\n"                             \
            "        - {stretch: shoulder, across: 10 cm, up: length}\n"                           \
            "      neck: [{across: 10 cm, up: 40 cm}, {across: 10 cm, up: length}]\n"              \
    }

/* What `neck` means beside other edges, from the corners that meet: by hand. Of a bib the right
 * edge comes to the right half's end, and what follows it goes on from the left half's. A neckband
 * that begins at the front's right half goes over the left shoulder to the back's right half. */
static const struct {
    const char *along;
    hw_edge first, second; /* of the neck's halves */
    int at;                /* where the first of them stands */
} necks[] = {
    { "front right, front neck, front left", HW_EDGE_NECK_RIGHT, HW_EDGE_NECK_LEFT, 1 },
    { "front left, front neck, front right", HW_EDGE_NECK_LEFT, HW_EDGE_NECK_RIGHT, 1 },
    { "front neck, front left", HW_EDGE_NECK_RIGHT, HW_EDGE_NECK_LEFT, 0 },
    { "front neck, front right", HW_EDGE_NECK_LEFT, HW_EDGE_NECK_RIGHT, 0 },
    { "front neck right, front neck left, back neck", HW_EDGE_NECK_RIGHT, HW_EDGE_NECK_LEFT, 2 },
    { "front neck left, front neck right, back neck", HW_EDGE_NECK_LEFT, HW_EDGE_NECK_RIGHT, 2 },
    { "back neck, front neck", HW_EDGE_NECK_LEFT, HW_EDGE_NECK_RIGHT, 0 },
    { "front neck", HW_EDGE_NECK_LEFT, HW_EDGE_NECK_RIGHT, 0 },
};

START_TEST(halves_of_necks)
{
    char trims[300];
    (void)snprintf(trims, sizeof trims, "  a: {along: [%s]}\n", necks[_i].along);
    tank t;
    tank_open(&t, NULL, EDITS(ALONG(trims), BIB, { "joins:\n", SHOULDERS }));
    const hw_trimway *way = &t.plan.whole->trims->way;
    int last = way->garment->trim_count - 1;
    const hw_edge_part *parts = &way->trims[last].along.parts[necks[_i].at];
    ck_assert_int_eq(parts[0].edge, necks[_i].first);
    ck_assert_int_eq(parts[1].edge, necks[_i].second);
    tank_close(&t);
}
END_TEST

/* Edges in a row that do not meet, with the place of the second: line 36 is the first of the trims,
 * and columns are counted in the words below. */
START_TEST(apart)
{
    static const struct {
        const char *along;
        int column;
        const char *words;
    } wrong[] = {
        { "front right, front neck left, front neck right, front left", 28,
            "the neck left edge of `front` does not begin where the edge before it ends, the "
            "right" },
        { "front left side, front right side", 32, "the right edge of `front`" },
        { "front neck right, front neck left, back neck left, back neck right", 50,
            "the neck left edge of `back` does not begin where the edge before it ends, the neck "
            "left of `front`" },
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        char trims[300];
        (void)snprintf(trims, sizeof trims, "  a: {along: [%s]}\n", wrong[i].along);
        tank t;
        hw_err err = { 0 };
        hw_status status =
            tank_try(&t, NULL, EDITS(ALONG(trims), BIB, { "joins:\n", SHOULDERS }), &err);
        ck_assert_msg(status == HW_ERR_RANGE, "row %zu: %s", i, err.text);
        ck_assert_msg(strstr(err.text, wrong[i].words) != NULL, "%s", err.text);
        ck_assert_int_eq(err.column, wrong[i].column);
        ck_assert(err.of_garment && err.line > 0);
        tank_close(&t);
    }
}
END_TEST

/* By hand: the armband goes from the back's armhole to the front's, of which the tank does not say
 * that they are sewn; the ring closes. A
 * neckband that begins in the middle of the back is a ring. */
START_TEST(notes)
{
    tank t;
    tank_open(&t, NULL, NULL);
    ck_assert_int_eq(tank_notes(&t.plan, "does not say what is sewn where it goes from back right "
                                         "armhole to front left armhole"),
        1);
    ck_assert_int_eq(tank_notes(&t.plan, "begins and ends at one point"), 0);
    tank_close(&t);
    static const struct {
        const char *round;
        int notes;
    } rings[] = { { "", 1 }, { ", round: yes", 0 } };
    for (int i = 0; i < 2; i++) {
        char trims[300];
        (void)snprintf(trims, sizeof trims,
            "  a: {along: [back neck left, front neck right, front neck left, back neck "
            "right]%s}\n",
            rings[i].round);
        tank_open(&t, NULL, EDITS(ALONG(trims), BIB, { "joins:\n", SHOULDERS }));
        ck_assert_int_eq(
            tank_notes(&t.plan, "A: it begins and ends at one point in the edge of back"),
            rings[i].notes);
        ck_assert_int_eq(tank_notes(&t.plan, "does not say what is sewn"), 0);
        tank_close(&t);
    }
}
END_TEST

/* By hand: one trim up the front's left side, over the ends of two others, 2 and 3 cm deep, which
 * lie at the top of that side. What is picked up there is told with the side. A part that has no
 * length is not drawn. */
START_TEST(drawn)
{
    tank t;
    tank_open(&t, NULL,
        EDITS(ALONG("  a: {along: [front left armhole]}\n"
                    "  b: {along: [front left armhole, front top]}\n"
                    "  c: {along: [a end, front left side, b end]}\n")));
    enum { NECKBAND, A, B, C };
    hw_draw_trims all = { .way = &t.plan.whole->trims->way,
        .depth_cm = { [A] = 2, [B] = 3, [C] = 4 },
        .sts = { [A] = { 34 }, [B] = { -1, 80 }, [C] = { 5, 66, 7 } } };
    hw_draw_trim found[HW_DRAW_MAX_TRIMS];
    ck_assert_int_eq(hw_draw_find_trims(&all, TANK_SLEEVE, found), 0);
    ck_assert_int_eq(hw_draw_find_trims(&all, TANK_FRONT, found), 3);
    ck_assert_str_eq(found[0].name, "a");
    ck_assert_double_eq_tol(found[0].past_cm, 0, 1e-12);
    ck_assert_int_eq(found[1].edge, HW_EDGE_TOP);
    ck_assert_str_eq(found[2].name, "c");
    ck_assert_str_eq(found[2].stretch, "side");
    ck_assert_double_eq_tol(found[2].depth_cm, 4, 1e-12);
    ck_assert_double_eq_tol(found[2].past_cm, 2 + 3, 1e-12);
    ck_assert_double_eq_tol(found[2].before_cm, 0, 1e-12);
    ck_assert_int_eq(found[2].sts, 5 + 66 + 7);
    tank_close(&t);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("trimway");
    TCase *tcase = tcase_create("trimway");
    tcase_add_loop_test(tcase, ways, 0, (int)(sizeof rows / sizeof rows[0]));
    tcase_add_test(tcase, astray);
    tcase_add_loop_test(tcase, halves_of_necks, 0, (int)(sizeof necks / sizeof necks[0]));
    tcase_add_test(tcase, apart);
    tcase_add_test(tcase, notes);
    tcase_add_test(tcase, drawn);
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
