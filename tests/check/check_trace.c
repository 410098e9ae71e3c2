/* Edges followed for a picture: curves asked for in many spots, and strips beside them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "fixture.h"
#include "write/trace.h"

/* In place of hw_edge_at a curve that anybody can work out, or a failure. */
static hw_status edge_status;
static int edge_calls;

hw_status __wrap_hw_edge_at(
    const hw_edge_line *edge, const double *up_cm, int count, double *across_cm);

hw_status __wrap_hw_edge_at(
    const hw_edge_line *edge, const double *up_cm, int count, double *across_cm)
{
    (void)edge;
    edge_calls++;
    for (int i = 0; i < count; i++) {
        across_cm[i] = up_cm[i] * up_cm[i] / 100;
    }
    return edge_status;
}

static void setup(void)
{
    edge_status = HW_OK;
    edge_calls = 0;
}

/* A curve is asked for between its points alone; where it lies is what was answered. */
START_TEST(curves)
{
    const hw_outline_point points[] = { { .across_cm = 1, .up_cm = 0, .stretch = "" },
        { .across_cm = 1, .up_cm = 10, .stretch = "a" },
        { .across_cm = 4, .up_cm = 20, .curve = HW_CURVE_MONOTONE, .stretch = "b" },
        { .across_cm = 5, .up_cm = 20, .curve = HW_CURVE_NATURAL, .stretch = "b" } };
    const hw_edge_line edge = { points, 4 };
    hw_trace trace = { 0 };
    ck_assert_int_eq(hw_trace_edge(&edge, &arena, &trace), HW_OK);
    ck_assert_int_eq(edge_calls, 1);
    ck_assert_int_gt(trace.count, 4 + 8);
    for (int i = 1; i < trace.count; i++) {
        const hw_trace_spot *spot = &trace.spots[i];
        ck_assert_double_ge(spot->up_cm, trace.spots[i - 1].up_cm);
        ck_assert_str_eq(spot->stretch, i == 1 ? "a" : "b");
        if (i > 1 && i < trace.count - 2) {
            ck_assert(spot->up_cm > 10 && spot->up_cm < 20);
            ck_assert_double_eq_tol(spot->across_cm, spot->up_cm * spot->up_cm / 100, 1e-9);
        }
        ck_assert_int_eq(hw_trace_ends(&trace, i), i == 1 || i == trace.count - 1);
    }
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, 5), 1, 1e-9);
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, 20), 4, 1e-9);
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, 99), 5, 1e-9);
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, -1), 1, 1e-9);
    edge_status = HW_ERR_INTERNAL;
    hw_trace same = trace;
    ck_assert_int_eq(hw_trace_edge(&edge, &arena, &trace), HW_ERR_INTERNAL);
    ck_assert(trace.spots == same.spots && trace.count == same.count);
}
END_TEST

/* A strip of 3 cm inside a bend 2 cm wide. By hand: its outer corners would be (-1, 9), (-1, 1),
 * (-1, 3) and (0, 3), walking back; the second is root of 2 from the bend's foot and the last 2 cm
 * from its wall, nearer than 3, so they are left out. */
START_TEST(narrow_bends)
{
    const hw_outline_point points[] = { { .across_cm = 0, .up_cm = 0, .stretch = "" },
        { .across_cm = 2, .up_cm = 0, .stretch = "neck" },
        { .across_cm = 2, .up_cm = 1, .stretch = "neck" },
        { .across_cm = 2, .up_cm = 9, .stretch = "neck" } };
    const hw_edge_line edge = { points, 4 };
    hw_trace trace = { 0 };
    hw_trace strip = { 0 };
    int next = 0;
    ck_assert_int_eq(hw_trace_edge(&edge, &arena, &trace), HW_OK);
    hw_trace_strip asked = { .depth_cm = 3, .at_left = true };
    ck_assert_int_eq(hw_trace_along(&trace, &asked, &next, &arena, &strip), HW_OK);
    ck_assert_int_eq(next, 3);
    ck_assert_int_eq(strip.count, 6);
    ck_assert_double_eq_tol(strip.spots[4].across_cm, -1, 1e-9);
    ck_assert_double_eq_tol(strip.spots[4].up_cm, 9, 1e-9);
    ck_assert_double_eq_tol(strip.spots[5].across_cm, -1, 1e-9);
    ck_assert_double_eq_tol(strip.spots[5].up_cm, 3, 1e-9);
    ck_assert_int_eq(hw_trace_along(&trace, &asked, &next, &arena, &strip), HW_OK);
    ck_assert_int_eq(strip.count, 0);
}
END_TEST

/* By hand: the ledge below from its left end; there a strip that runs on for 3 cm begins at -3, and
 * at the far end one that runs on for 2 cm ends at 10; neither runs on into the gap. An edge that
 * leans 3 across to 4 up goes on as it leans. */
START_TEST(running_on)
{
    const hw_outline_point ledge[] = { { .across_cm = 0, .up_cm = 5, .stretch = "" },
        { .across_cm = 2, .up_cm = 5, .stretch = "top" },
        { .across_cm = 6, .up_cm = 5, .stretch = "top", .open = true },
        { .across_cm = 8, .up_cm = 5, .stretch = "top" } };
    const double ends_cm[2][2] = { { -3, 2 }, { 6, 10 } };
    const hw_edge_line edge = { ledge, 4 };
    const hw_trace_strip asked = {
        .stretch = "top", .depth_cm = 1, .before_cm = 3, .past_cm = 2, .at_left = true
    };
    hw_trace trace = { 0 };
    int next = 0;
    ck_assert_int_eq(hw_trace_edge(&edge, &arena, &trace), HW_OK);
    for (int i = 0; i < 2; i++) {
        hw_trace strip = { 0 };
        ck_assert_int_eq(hw_trace_along(&trace, &asked, &next, &arena, &strip), HW_OK);
        ck_assert_int_eq(strip.count, 6);
        ck_assert_double_eq_tol(strip.spots[0].across_cm, ends_cm[i][0], 1e-9);
        ck_assert_double_eq_tol(strip.spots[2].across_cm, ends_cm[i][1], 1e-9);
        ck_assert_double_eq_tol(strip.spots[3].across_cm, ends_cm[i][1], 1e-9);
        ck_assert_double_eq_tol(strip.spots[3].up_cm, 6, 1e-9);
        ck_assert_double_eq_tol(strip.spots[5].across_cm, ends_cm[i][0], 1e-9);
    }
    const hw_outline_point leaning[] = { { .across_cm = 0, .up_cm = 0, .stretch = "" },
        { .across_cm = 3, .up_cm = 4, .stretch = "front" },
        { .across_cm = 3, .up_cm = 4, .stretch = "front" } };
    const hw_edge_line front = { leaning, 3 };
    const hw_trace_strip over = { .depth_cm = 1, .past_cm = 5 };
    hw_trace strip = { 0 };
    next = 0;
    ck_assert_int_eq(hw_trace_edge(&front, &arena, &trace), HW_OK);
    ck_assert_int_eq(hw_trace_along(&trace, &over, &next, &arena, &strip), HW_OK);
    ck_assert_double_eq_tol(strip.spots[3].across_cm, 6, 1e-9);
    ck_assert_double_eq_tol(strip.spots[3].up_cm, 8, 1e-9);
}
END_TEST

/* By hand: of a ledge 2 cm wide with a gap in its middle a strip runs along both ends. */
START_TEST(parts)
{
    const hw_outline_point points[] = { { .across_cm = 0, .up_cm = 5, .stretch = "" },
        { .across_cm = 2, .up_cm = 5, .stretch = "top" },
        { .across_cm = 6, .up_cm = 5, .stretch = "top", .open = true },
        { .across_cm = 8, .up_cm = 5, .stretch = "top" } };
    const hw_edge_line edge = { points, 4 };
    const double from_cm[] = { 0, 6 };
    hw_trace trace = { 0 };
    int next = 0;
    hw_trace_strip asked = { .stretch = "top", .depth_cm = 1, .at_left = true };
    ck_assert_int_eq(hw_trace_edge(&edge, &arena, &trace), HW_OK);
    for (int i = 0; i < 2; i++) {
        hw_trace strip = { 0 };
        ck_assert_int_eq(hw_trace_along(&trace, &asked, &next, &arena, &strip), HW_OK);
        ck_assert_int_eq(strip.count, 4);
        ck_assert_double_eq_tol(strip.spots[0].across_cm, from_cm[i], 1e-9);
        ck_assert_double_eq_tol(strip.spots[2].across_cm, from_cm[i] + 2, 1e-9);
        ck_assert_double_eq_tol(strip.spots[2].up_cm, 6, 1e-9);
    }
    hw_arena poor;
    hw_check_heap none;
    hw_check_open(&poor, &none, 1, false);
    hw_trace strip = { .count = 77 };
    next = 0;
    ck_assert_int_eq(hw_trace_along(&trace, &asked, &next, &poor, &strip), HW_ERR_NOMEM);
    ck_assert(strip.count == 77 && next == 0);
    hw_check_close(&poor, &none);
}
END_TEST

START_TEST(names)
{
    static const char *const want[HW_EDGE_COUNT] = { "left", "right", "neck left", "neck right",
        "top" };
    for (int i = 0; i < HW_EDGE_COUNT; i++) {
        ck_assert_str_eq(hw_edge_name((hw_edge)i), want[i]);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { curves, narrow_bends, running_on, parts, names };
    return fixture_run("trace", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
