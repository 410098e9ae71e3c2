/* Gauge over the dial: lines and parabolas by hand, the dial for a gauge, the range.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/dial.h"

#include <math.h>

#include "support.h"

static const double hair = 1e-10; /* a least squares fit of a few numbers below 100 */

static hw_dial_fit fitted(const double *dials, const double *per_10cm, int count)
{
    hw_dial_fit fit = { 0 };
    hw_err err = { 0 };
    hw_status status = hw_dial_fit_gauges(dials, per_10cm, count, &fit, &err);
    ck_assert_msg(status == HW_OK, "%s", err.text);
    return fit;
}

/* By hand: 30 at 5 and 28 at 6 lie on 40 - 2 d; nothing is left to judge the line by. */
START_TEST(two_dials)
{
    static const double dials[] = { 6, 5 };
    static const double per_10cm[] = { 28, 30 };
    hw_dial_fit fit = fitted(dials, per_10cm, 2);
    ck_assert_int_eq(fit.order, 1);
    ck_assert_int_eq(fit.places, 2);
    ck_assert(!fit.has_error);
    ck_assert_double_eq_tol(fit.low_dial, 5, hair);
    ck_assert_double_eq_tol(fit.high_dial, 6, hair);
    for (double dial = 4; dial < 7.1; dial += 0.25) {
        ck_assert_double_eq_tol(hw_dial_gauge(&fit, dial), 40 - 2 * dial, hair);
    }
}
END_TEST

/* By hand: 31, 27, 26 at 5, 6, 7 have the mean 28 and the slope -2.5; residuals 0.5, -1, 0.5 with
 * squares 1.5 over 1 degree of freedom. The 6 stands twice, 26 and 28: the same but for squares
 * 0.25 + 4 + 0 + 0.25 over 2. */
START_TEST(line_of_three)
{
    static const double dials[] = { 5, 6, 7, 6 };
    static const double per_10cm[] = { 31, 27, 26, 28 };
    hw_dial_fit fit = fitted(dials, per_10cm, 3);
    ck_assert_int_eq(fit.order, 1);
    ck_assert_double_eq_tol(hw_dial_gauge(&fit, 6), 28, hair);
    ck_assert_double_eq_tol(hw_dial_gauge(&fit, 8), 23, hair);
    ck_assert(fit.has_error);
    ck_assert_double_eq_tol(fit.residual_sd, sqrt(1.5), hair);
    static const double twice[] = { 31, 26, 26, 28 };
    fit = fitted(dials, twice, 4); /* mean 27.75, slope -2.5; residuals 0.75, -1.75, 0.75, 0.25 */
    ck_assert_int_eq(fit.order, 1);
    ck_assert_double_eq_tol(hw_dial_gauge(&fit, 6), 27.75, hair);
    ck_assert_double_eq_tol(hw_dial_gauge(&fit, 7), 25.25, hair);
    ck_assert_double_eq_tol(fit.residual_sd, sqrt(4.25 / 2), hair);
}
END_TEST

/* By hand: 55 - 6 d + 0.25 d^2 at the dials 4 to 7, so that the parabola goes through all. */
static double curve(double dial)
{
    return 55 - 6 * dial + 0.25 * dial * dial;
}

static hw_dial_fit curved(void)
{
    static const double dials[] = { 4, 5, 6, 7 };
    double per_10cm[4];
    for (int i = 0; i < 4; i++) {
        per_10cm[i] = curve(dials[i]);
    }
    return fitted(dials, per_10cm, 4);
}

START_TEST(parabola_of_four)
{
    hw_dial_fit fit = curved();
    ck_assert_int_eq(fit.order, 2);
    ck_assert_double_eq_tol(fit.middle, 5.5, hair);
    for (double dial = 3; dial < 8.1; dial += 0.25) {
        ck_assert_double_eq_tol(hw_dial_gauge(&fit, dial), curve(dial), hair);
    }
    ck_assert(fit.has_error && fit.residual_sd < hair);
}
END_TEST

/* The dial for a gauge gives that gauge: on the curve, at its ends and between. */
START_TEST(dial_for_a_gauge)
{
    hw_dial_fit fit = curved();
    for (int i = 0; i <= 50; i++) {
        double dial = 3 + i / 10.0;
        double found = 77;
        ck_assert(hw_dial_for(&fit, curve(dial), &found));
        ck_assert_double_eq_tol(found, dial, 1e-8);
        ck_assert_double_eq_tol(hw_dial_gauge(&fit, found), curve(dial), 1e-8);
    }
    double found = 77;
    ck_assert(!hw_dial_for(&fit, curve(2.9), &found));
    ck_assert(!hw_dial_for(&fit, curve(8.1), &found));
    ck_assert_double_eq_tol(found, 77, 1e-12);
    static const double dials[] = { 5, 7 };
    static const double per_10cm[] = { 30, 26 };
    fit = fitted(dials, per_10cm, 2);
    ck_assert(hw_dial_for(&fit, 27.5, &found)); /* by hand: 40 - 2 d */
    ck_assert_double_eq_tol(found, 6.25, 1e-9);
    ck_assert(hw_dial_for(&fit, 24, &found)); /* at 8, the last that is told */
    ck_assert_double_eq_tol(found, 8, 1e-9);
    ck_assert(!hw_dial_for(&fit, 23.9, &found));
}
END_TEST

/* By hand: 20 + (d - 6)^2 turns inside the range: 21 is given at 5 and 7, 20.25 at 5.5 and 6.5;
 * nearer to the middle of 4 to 7 is the first. Nothing gives 19; 30.3 is given at 2.79, out of
 * range. */
START_TEST(curve_that_turns)
{
    static const double dials[] = { 4, 5, 6, 7 };
    static const double per_10cm[] = { 24, 21, 20, 21 };
    hw_dial_fit fit = fitted(dials, per_10cm, 4);
    double found = 77;
    ck_assert(hw_dial_for(&fit, 21, &found));
    ck_assert_double_eq_tol(found, 5, 1e-9);
    ck_assert(hw_dial_for(&fit, 20.25, &found));
    ck_assert_double_eq_tol(found, 5.5, 1e-9);
    ck_assert(hw_dial_for(&fit, 29, &found)); /* 3 and 9: the second is out of range */
    ck_assert_double_eq_tol(found, 3, 1e-8);
    ck_assert(!hw_dial_for(&fit, 19, &found));
    ck_assert(!hw_dial_for(&fit, 30.3, &found));
}
END_TEST

/* By hand: a gauge that does not change with the dial has no dial for another one. */
START_TEST(level)
{
    static const double dials[] = { 5, 7 };
    static const double per_10cm[] = { 30, 30 };
    hw_dial_fit fit = fitted(dials, per_10cm, 2);
    double found = 77;
    ck_assert_double_eq_tol(hw_dial_gauge(&fit, 6), 30, hair);
    ck_assert(!hw_dial_for(&fit, 29, &found));
}
END_TEST

/* From the header: one number beyond the swatched dials 4 to 7 is still told. */
START_TEST(range)
{
    hw_dial_fit fit = curved();
    static const struct {
        double dial;
        bool in_range;
    } rows[] = { { 4, true }, { 5.3, true }, { 3, true }, { 8, true }, { 2.9, false },
        { 8.1, false } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ck_assert_int_eq(hw_dial_in_range(&fit, rows[i].dial), rows[i].in_range);
    }
}
END_TEST

/* From the header: swatches at one dial, however many; the result stays as it was. */
START_TEST(one_dial)
{
    static const double dials[] = { 5, 5, 5 };
    static const double per_10cm[] = { 30, 31, 29 };
    for (int count = 1; count <= 3; count++) {
        hw_dial_fit fit = { .places = 77 };
        hw_err err = { 0 };
        ck_assert_int_eq(hw_dial_fit_gauges(dials, per_10cm, count, &fit, &err), HW_ERR_MISSING);
        ck_assert(hw_check_says(&err, HW_ERR_MISSING, "knit one at a second dial"));
        ck_assert_int_eq(fit.places, 77);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { two_dials, line_of_three, parabola_of_four, dial_for_a_gauge,
        curve_that_turns, level, range, one_dial };
    return hw_check_run(hw_check_suite("dial", tests, sizeof tests / sizeof tests[0]));
}
