/* Lines through readings: what a rule can tell, what is far off, and who has a share in an edge.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "core/line.h"
#include "support.h"

static hw_status attempt(const hw_points *points, hw_line_kind kind, hw_line *out)
{
    hw_arena arena;
    hw_check_heap heap = { 0 };
    hw_check_open(&arena, &heap, 0, false);
    hw_status status = hw_line_fit(points, kind, &arena, out, NULL);
    out->residuals = NULL; /* they go with the arena */
    hw_check_close(&arena, &heap);
    return status;
}

/* By hand: readings that agree to the last digit still have the error of one reading. Through 20,
 * 40 and 60 with a deviation of 0.03, the slope's error is 0.03 / sqrt(400 + 0 + 400); a mean of 30
 * / 10 and 30 / 10 has 0.03 x 3 / 10, over the square root of 2. */
START_TEST(reading_error_stays)
{
    static const double x[] = { 20, 40, 60 };
    static const double y[] = { 8, 15, 22 };
    hw_points exact = { .x = x, .y = y, .count = 3, .reading_sd = 0.03 };
    hw_line line = { 0 };
    ck_assert_int_eq(attempt(&exact, HW_LINE_FREE, &line), HW_OK);
    ck_assert_double_eq_tol(line.slope, 0.35, 1e-12);
    ck_assert_double_eq_tol(line.residual_sd, 0.03, 1e-12);
    ck_assert_double_eq_tol(line.slope_error, 0.03 / sqrt(800), 1e-12);
    static const double lengths[] = { 10, 10 };
    static const double counts[] = { 30, 30 };
    hw_points alike = { .x = lengths, .y = counts, .count = 2, .reading_sd = 0.03 };
    ck_assert_int_eq(attempt(&alike, HW_LINE_RATIOS, &line), HW_OK);
    ck_assert_double_eq_tol(line.slope_error, 0.009 / sqrt(2), 1e-12);
    /* A spread that is larger than readings explain stays what it is. */
    static const double rough[] = { 8.5, 14, 22.5 };
    exact.y = rough;
    hw_line with = { 0 };
    ck_assert_int_eq(attempt(&exact, HW_LINE_FREE, &with), HW_OK);
    exact.reading_sd = 0;
    ck_assert_int_eq(attempt(&exact, HW_LINE_FREE, &line), HW_OK);
    ck_assert_double_eq_tol(with.slope_error, line.slope_error, 1e-15);
}
END_TEST

/* Four readings of which three agree: the fourth is off by 1 mm, which a rule explains. */
START_TEST(near_is_not_far_off)
{
    static const double lengths[] = { 14.2, 14.1, 14.2, 14.2 };
    static const double rows[] = { 60, 60, 60, 60 };
    hw_points points = { .x = lengths, .y = rows, .count = 4 };
    hw_line line = { 0 };
    ck_assert_int_eq(attempt(&points, HW_LINE_RATIOS, &line), HW_OK);
    ck_assert_int_eq(line.outlier, 1);
    points.least_off = 0.2;
    ck_assert_int_eq(attempt(&points, HW_LINE_RATIOS, &line), HW_OK);
    ck_assert_int_eq(line.outlier, -1);
}
END_TEST

/* By hand: swatches of 40 and 60 with an edge of 0.5 each, y = 0.5 + 0.35 x, and a piece of 100
 * without one, y = 35: slope and edge come out whole, and as R's lm(y ~ 0 + share + x) gives. */
START_TEST(shared_intercept)
{
    static const double x[] = { 40, 60, 100 };
    static const double y[] = { 14.5, 21.5, 35 };
    static const double share[] = { 1, 1, 0 };
    hw_points points = { .x = x, .y = y, .count = 3, .share = share };
    hw_line line = { 0 };
    ck_assert_int_eq(attempt(&points, HW_LINE_FREE, &line), HW_OK);
    ck_assert_double_eq_tol(line.slope, 0.35, 1e-12);
    ck_assert_double_eq_tol(line.intercept, 0.5, 1e-10);
    /* All having it whole is the line without shares. */
    static const double whole[] = { 1, 1, 1 };
    static const double rough[] = { 14.4, 21.7, 35.6 };
    hw_line plain = { 0 };
    points = (hw_points){ .x = x, .y = rough, .count = 3 };
    ck_assert_int_eq(attempt(&points, HW_LINE_FREE, &plain), HW_OK);
    points.share = whole;
    ck_assert_int_eq(attempt(&points, HW_LINE_FREE, &line), HW_OK);
    ck_assert_double_eq_tol(line.slope, plain.slope, 1e-12);
    ck_assert_double_eq_tol(line.slope_error, plain.slope_error, 1e-10);
    ck_assert_double_eq_tol(line.intercept_error, plain.intercept_error, 1e-9);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { reading_error_stays, near_is_not_far_off, shared_intercept };
    return hw_check_run(hw_check_suite("readings", tests, sizeof tests / sizeof tests[0]));
}
