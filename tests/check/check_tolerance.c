/* The window around a width: by hand, and by laying its bounds back.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/tolerance.h"

#include "support.h"

#define NEAR(got, want) ck_assert_double_eq_tol((got), (want), 1e-12 * (want))

static hw_gauge gauge_of(double per_10cm, double low, double high)
{
    return (hw_gauge){ .sts_per_10cm = per_10cm,
        .sides = { { .per_10cm = per_10cm, .has_interval = low > 0, .low = low, .high = high } } };
}

/* By hand: 90 stitches should be 30 cm give or take 1: 900/31 = 29.032 to 900/29 = 31.034 in
 * 10 cm, and 50 of them 50 * 29/90 = 16.11 to 50 * 31/90 = 17.22 cm. A gauge of 29.5 to 30.5 makes
 * them 29.508 to 30.508 cm, which is inside; one of 28.9 to 31.1 does not. */
START_TEST(window)
{
    hw_tolerance_task task = { .sts = 90, .wanted_cm = 30, .tolerance_cm = 1 };
    hw_gauge gauge = gauge_of(30, 29.5, 30.5);
    hw_tolerance found = hw_tolerance_find(&task, &gauge);
    NEAR(found.sts_per_10cm.low, 900.0 / 31);
    NEAR(found.sts_per_10cm.high, 900.0 / 29);
    NEAR(found.fifty_cm.low, 50 * 29.0 / 90);
    NEAR(found.fifty_cm.high, 50 * 31.0 / 90);
    ck_assert(found.bounded && found.has_interval && found.always_inside);
    NEAR(found.width_cm.low, 900 / 30.5);
    NEAR(found.width_cm.high, 900 / 29.5);
    static const struct {
        double low, high;
    } wide[] = { { 28.9, 30.5 }, { 29.5, 31.1 }, { 28.9, 31.1 } };
    for (size_t i = 0; i < sizeof wide / sizeof wide[0]; i++) {
        gauge = gauge_of(30, wide[i].low, wide[i].high);
        found = hw_tolerance_find(&task, &gauge);
        ck_assert(found.has_interval && !found.always_inside);
    }
}
END_TEST

/* A width worked out from either bound lies exactly the tolerance away; a hair further out in
 * gauge, and it lies beyond. Measured over 50 stitches it is the same bound. */
START_TEST(bounds_laid_back)
{
    unsigned chance = 1;
    for (int i = 0; i < 1000; i++) {
        hw_tolerance_task task = { .sts = 1 + hw_check_random(&chance, 400),
            .wanted_cm = 2 + hw_check_random(&chance, 100000) / 1000.0,
            .tolerance_cm = 0.1 + hw_check_random(&chance, 1800) / 1000.0 };
        hw_gauge gauge = gauge_of(30, 0, 0);
        hw_tolerance found = hw_tolerance_find(&task, &gauge);
        ck_assert(found.bounded && !found.has_interval && !found.always_inside);
        double fifty_cm[] = { found.fifty_cm.high, found.fifty_cm.low };
        double bounds[] = { found.sts_per_10cm.low, found.sts_per_10cm.high };
        for (int k = 0; k < 2; k++) {
            double sign = k == 0 ? 1 : -1;
            gauge.sts_per_10cm = bounds[k];
            NEAR(hw_gauge_width_cm(&gauge, task.sts), task.wanted_cm + sign * task.tolerance_cm);
            NEAR(hw_gauge_width_cm(&gauge, HW_TOLERANCE_STS), fifty_cm[k]);
            gauge.sts_per_10cm = bounds[k] * (1 - sign * 1e-9);
            double off_cm = sign * (hw_gauge_width_cm(&gauge, task.sts) - task.wanted_cm);
            ck_assert(off_cm > task.tolerance_cm);
        }
        ck_assert(found.sts_per_10cm.low < found.sts_per_10cm.high);
        ck_assert(found.fifty_cm.low < found.fifty_cm.high);
    }
}
END_TEST

/* All of the interval inside means its bounds within the window of gauges, and the other way. */
START_TEST(inside_in_both_ways)
{
    unsigned chance = 2;
    int inside = 0;
    enum { TRIES = 1000 };
    for (int i = 0; i < TRIES; i++) {
        hw_tolerance_task task = { .sts = 60 + hw_check_random(&chance, 100),
            .wanted_cm = 30,
            .tolerance_cm = 1 + hw_check_random(&chance, 1000) / 1000.0 };
        double per_10cm = task.sts / 3.0;
        double reach = 0.001 + per_10cm * hw_check_random(&chance, 1000) / 10000.0;
        hw_gauge gauge = gauge_of(per_10cm, per_10cm - reach, per_10cm + reach);
        hw_tolerance found = hw_tolerance_find(&task, &gauge);
        ck_assert_int_eq(found.always_inside, per_10cm - reach >= found.sts_per_10cm.low &&
                                                  per_10cm + reach <= found.sts_per_10cm.high);
        ck_assert(found.width_cm.low < 30 && found.width_cm.high > 30);
        inside += found.always_inside;
    }
    ck_assert(inside > TRIES / 10 && inside < TRIES * 9 / 10);
}
END_TEST

/* By hand: 3 stitches of 1 cm, give or take 1 or more: no gauge is too fine, 15 in 10 cm is the
 * coarsest for 2 cm. */
START_TEST(narrow)
{
    static const double tolerances_cm[] = { 1, 1.5 };
    static const double coarsest[] = { 15, 12 };
    for (int i = 0; i < 2; i++) {
        hw_tolerance_task task = { .sts = 3, .wanted_cm = 1, .tolerance_cm = tolerances_cm[i] };
        hw_gauge gauge = gauge_of(30, 29, 200);
        hw_tolerance found = hw_tolerance_find(&task, &gauge);
        ck_assert(!found.bounded && found.always_inside);
        NEAR(found.sts_per_10cm.low, coarsest[i]);
        ck_assert_double_eq_tol(found.sts_per_10cm.high, 0, 1e-300);
        ck_assert_double_eq_tol(found.fifty_cm.low, 0, 1e-300);
        NEAR(found.fifty_cm.high, 50 * (1 + tolerances_cm[i]) / 3);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { window, bounds_laid_back, inside_in_both_ways, narrow };
    return hw_check_run(hw_check_suite("tolerance", tests, sizeof tests / sizeof tests[0]));
}
