/* Lines and means: certified data sets, t tables, outliers, the robust fit, refusals.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/line.h"

#include "nist.h"
#include "support.h"
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <limits.h>
#include <math.h>

#define NEAR(got, want, relative) ck_assert_double_eq_tol((got), (want), fabs(want) * (relative))

/* Room for the largest set. */
enum { MOST_POINTS = 6000 };
static double xs[MOST_POINTS];
static double ys[MOST_POINTS];

static int read_set(const char *name, const char *set, int width)
{
    return nist_set(&(nist_room){ xs, ys, MOST_POINTS }, name, set, width);
}

/* A fit whose residuals are not kept; the n-th request for memory may be refused. */
static hw_status attempt(
    const hw_points *points, hw_line_kind kind, long refused, hw_line *out, hw_err *err)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, refused, refused % 2 == 0);
    hw_status status = hw_line_fit(points, kind, &arena, out, err);
    out->residuals = NULL;
    hw_check_close(&arena, &heap);
    return status;
}

/* One that must work. */
static hw_line fitted(const hw_points *points, hw_line_kind kind)
{
    hw_line line = { .slope = NAN };
    hw_err err = { 0 };
    ck_assert_msg(attempt(points, kind, 0, &line, &err) == HW_OK, "%s", err.text);
    ck_assert_int_eq((int)line.kind, (int)kind);
    return line;
}

static hw_line fit_set(int count, hw_line_kind kind)
{
    hw_points points = { .x = xs, .y = ys, .count = count };
    return fitted(&points, kind);
}

/* NIST StRD, linear regression. Certified to 15 digits. The intercept of Norris lies a thousandth
 * of the largest y from 0, so that three to four digits of sixteen cancel; a residual is a
 * thousandth of its y, and loses as many. */
START_TEST(certified_lines)
{
    int count = read_set("regression.csv", "Norris", 2);
    hw_line line = fit_set(count, HW_LINE_FREE);
    NEAR(line.slope, nist_certified("Norris", "B1"), 1e-14);
    NEAR(line.intercept, nist_certified("Norris", "B0"), 1e-11);
    NEAR(line.slope_error, nist_certified("Norris", "sd_B1"), 1e-12);
    NEAR(line.intercept_error, nist_certified("Norris", "sd_B0"), 1e-12);
    NEAR(line.residual_sd, nist_certified("Norris", "residual_sd"), 1e-12);
    ck_assert(line.has_error);
    ck_assert_double_eq_tol(line.freedom, nist_certified("Norris", "res_df"), 1e-9);
    static const char *const sets[] = { "NoInt1", "NoInt2" };
    for (size_t i = 0; i < sizeof sets / sizeof sets[0]; i++) {
        count = read_set("regression.csv", sets[i], 2);
        line = fit_set(count, HW_LINE_ZERO);
        NEAR(line.slope, nist_certified(sets[i], "B1"), 1e-14);
        NEAR(line.slope_error, nist_certified(sets[i], "sd_B1"), 1e-13);
        NEAR(line.residual_sd, nist_certified(sets[i], "residual_sd"), 1e-13);
        ck_assert_double_eq_tol(line.freedom, nist_certified(sets[i], "res_df"), 1e-9);
        ck_assert_double_eq_tol(line.intercept, 0, 1e-300);
    }
}
END_TEST

/* NIST StRD, univariate sets, as ratios to 1. Means are certified to 15 digits. A standard
 * deviation loses what the mean is larger than it: its values are held to 1e-16 of themselves, so
 * that Mavro (5e3 times larger) keeps 12 digits, NumAcc3 (1e7) 9 and NumAcc4 (1e8) 8. */
START_TEST(certified_means)
{
    static const struct {
        const char *set;
        double mean_part, sd_part; /* relative */
    } sets[] = {
        { "PiDigits", 1e-14, 1e-14 },
        { "Lottery", 1e-14, 1e-14 },
        { "Lew", 1e-14, 1e-14 },
        { "Mavro", 1e-14, 1e-12 },
        { "Michelso", 1e-14, 1e-12 },
        { "NumAcc1", 1e-15, 1e-15 },
        { "NumAcc2", 1e-14, 1e-13 },
        { "NumAcc3", 1e-15, 1e-9 },
        { "NumAcc4", 1e-15, 1e-7 },
    };
    for (size_t i = 0; i < sizeof sets / sizeof sets[0]; i++) {
        int count = read_set("univariate.csv", sets[i].set, 1);
        hw_line line = fit_set(count, HW_LINE_RATIOS);
        double sd = nist_certified(sets[i].set, "sd_n_minus_1");
        NEAR(line.slope, nist_certified(sets[i].set, "mean"), sets[i].mean_part);
        NEAR(line.residual_sd, sd, sets[i].sd_part);
        NEAR(line.slope_error, sd / sqrt(count), sets[i].sd_part + 1e-14);
        ck_assert_int_eq(line.freedom, count - 1);
    }
}
END_TEST

static const double tails[] = { 0.10, 0.05, 0.025, 0.01, 0.005, 0.001 };
enum { TAILS = sizeof tails / sizeof tails[0] };

/* For an endless number of degrees of freedom the most that an int holds: off by 1e-9. */
static double t_of(const nist_row *entry, int column)
{
    double freedom = entry->numbers[0];
    return hw_line_t(1 - 2 * tails[column], isfinite(freedom) ? (int)lrint(freedom) : INT_MAX);
}

/* tests/nist/student_t.csv, computed: seven digits, so half a unit of the seventh. */
START_TEST(t_to_seven_digits)
{
    FILE *file = nist_open("student_t.csv");
    int entries = 0;
    for (nist_row entry; nist_next(file, &entry);) {
        ck_assert_int_eq(entry.count, TAILS + 1);
        for (int i = 0; i < TAILS; i++) {
            double want = entry.numbers[i + 1];
            double last = pow(10, floor(log10(want)) - 6);
            ck_assert_double_eq_tol(t_of(&entry, i), want, 0.51 * last);
            entries++;
        }
    }
    ck_assert_int_eq(fclose(file), 0);
    ck_assert_int_eq(entries, 37 * TAILS);
}
END_TEST

/* NIST/SEMATECH e-Handbook, table 1.3.6.7.2, three decimals. In its last column the print differs
 * from the computed table in rows 1 and 7 to 12, by at most 5 in the last place: left out. */
START_TEST(t_as_printed)
{
    FILE *file = nist_open("student_t_printed.csv");
    int entries = 0;
    for (nist_row entry; nist_next(file, &entry);) {
        ck_assert_int_eq(entry.count, TAILS + 1);
        double freedom = entry.numbers[0];
        bool doubtful = freedom < 1.5 || (freedom > 6.5 && freedom < 12.5);
        for (int i = 0; i < (doubtful ? TAILS - 1 : TAILS); i++) {
            ck_assert_double_eq_tol(t_of(&entry, i), entry.numbers[i + 1], 0.00051);
            entries++;
        }
    }
    ck_assert_int_eq(fclose(file), 0);
    ck_assert_int_eq(entries, 34 * TAILS - 7);
}
END_TEST

/* By hand: t for 95 % and 10 degrees of freedom is 2.228139 (table 1.3.6.7.2), times 0.5. */
START_TEST(interval)
{
    hw_interval both = hw_line_interval(30, 0.5, 0.95, 10);
    ck_assert_double_eq_tol(both.low, 30 - 1.1140695, 5e-7);
    ck_assert_double_eq_tol(both.high, 30 + 1.1140695, 5e-7);
}
END_TEST

/* By hand: ratios 2, 2.5, 3 weighed 10, 20, 30 have the mean (20 + 50 + 90) / 60 = 8/3; squares
 * 10 * 4/9 + 20 * 1/36 + 30 * 1/9 = 25/3 over 2 degrees of freedom; error sqrt(25/6 / 60).
 * Unweighted 2.5, deviation 0.5. */
START_TEST(weighed_mean)
{
    static const double lengths[] = { 10, 20, 30 };
    static const double counts[] = { 20, 50, 90 };
    hw_points points = { .x = lengths, .y = counts, .count = 3, .weighed = true };
    hw_line line = fitted(&points, HW_LINE_RATIOS);
    NEAR(line.slope, 8.0 / 3, 1e-14);
    NEAR(line.residual_sd, sqrt(25.0 / 6), 1e-14);
    NEAR(line.slope_error, sqrt(25.0 / 360), 1e-14);
    ck_assert_int_eq(line.freedom, 2);
    points.weighed = false;
    line = fitted(&points, HW_LINE_RATIOS);
    NEAR(line.slope, 2.5, 1e-15);
    NEAR(line.residual_sd, 0.5, 1e-14);
    NEAR(line.slope_error, 0.5 / sqrt(3), 1e-14);
}
END_TEST

/* By hand: x 1, 2, 3, 4 and y 2, 3, 5, 6 have Sxx 5 and Sxy 7: slope 1.4, intercept 0.5, residuals
 * 0.1, -0.3, 0.3, -0.1, squares 0.2 over 2; errors sqrt(0.1 / 5) and sqrt(0.1 (1/4 + 6.25/5)). */
START_TEST(small_line)
{
    static const double x[] = { 1, 2, 3, 4 };
    static const double y[] = { 2, 3, 5, 6 };
    static const double left[] = { 0.1, -0.3, 0.3, -0.1 };
    hw_arena arena;
    hw_check_heap heap = { 0 };
    hw_check_open(&arena, &heap, 0, false);
    hw_points points = { .x = x, .y = y, .count = 4 };
    hw_line line = { 0 };
    ck_assert_int_eq(hw_line_fit(&points, HW_LINE_FREE, &arena, &line, NULL), HW_OK);
    NEAR(line.slope, 1.4, 1e-14);
    NEAR(line.intercept, 0.5, 1e-13);
    NEAR(line.slope_error, sqrt(0.02), 1e-13);
    NEAR(line.intercept_error, sqrt(0.15), 1e-13);
    NEAR(line.residual_sd, sqrt(0.1), 1e-13);
    for (int i = 0; i < 4; i++) {
        ck_assert_double_eq_tol(line.residuals[i], left[i], 1e-14);
    }
    ck_assert_int_eq(line.outlier, -1);
    hw_check_close(&arena, &heap);
}
END_TEST

/* By hand: with as many unknowns as points nothing is left to tell an error from. */
START_TEST(no_points_to_spare)
{
    static const double x[] = { 20, 40 };
    static const double y[] = { 7.5, 14.5 };
    static const struct {
        hw_line_kind kind;
        int count;
        double slope, intercept;
    } rows[] = {
        { HW_LINE_FREE, 2, 0.35, 0.5 },
        { HW_LINE_ZERO, 1, 0.375, 0 },
        { HW_LINE_RATIOS, 1, 0.375, 0 },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        hw_points points = { .x = x, .y = y, .count = rows[i].count };
        hw_line line = fitted(&points, rows[i].kind);
        NEAR(line.slope, rows[i].slope, 1e-14);
        ck_assert_double_eq_tol(line.intercept, rows[i].intercept, 1e-13);
        ck_assert(!line.has_error);
        ck_assert_int_eq(line.freedom, 0);
        ck_assert(!(line.slope_error + line.intercept_error + line.residual_sd > 0));
        ck_assert_int_eq(line.outlier, -1);
    }
}
END_TEST

/* The square of the error with which a fit tells the y, or the ratio, of one more point. */
static double foretold(const hw_points *left, const hw_line *line, double x)
{
    double error2 = line->slope_error * line->slope_error;
    double sd2 = line->residual_sd * line->residual_sd;
    double mean = 0;
    for (int i = 0; i < left->count; i++) {
        mean += left->x[i] / left->count;
    }
    const double squares[HW_LINE_COUNT] = {
        [HW_LINE_RATIOS] = (left->weighed ? sd2 / x : sd2) + error2,
        [HW_LINE_ZERO] = sd2 + x * x * error2,
        /* The errors of slope and intercept go together: their product is -mean error2. */
        [HW_LINE_FREE] = sd2 + line->intercept_error * line->intercept_error + x * x * error2 -
                         2 * x * mean * error2,
    };
    return squares[line->kind];
}

/* How far a point lies from what all others say, in standard errors: found by leaving it out. */
static double left_out(const hw_points *all, hw_line_kind kind, int which)
{
    double x[40];
    double y[40];
    hw_points left = { .x = x, .y = y, .weighed = all->weighed };
    for (int i = 0; i < all->count; i++) {
        if (i != which) {
            x[left.count] = all->x[i];
            y[left.count++] = all->y[i];
        }
    }
    hw_line line = fitted(&left, kind);
    bool ratios = kind == HW_LINE_RATIOS;
    double is = ratios ? all->y[which] / all->x[which] : all->y[which];
    double said = ratios ? line.slope : line.intercept + line.slope * all->x[which];
    return fabs(is - said) / sqrt(foretold(&left, &line, all->x[which]));
}

static const struct {
    hw_line_kind kind;
    bool weighed;
} judged[] = {
    { HW_LINE_RATIOS, false },
    { HW_LINE_RATIOS, true },
    { HW_LINE_ZERO, false },
    { HW_LINE_FREE, false },
};
enum { JUDGED = sizeof judged / sizeof judged[0], SETS = 60, LEAST = 5 };

/* Lengths of swatches with a share for the edges, and one that is far off in places. */
static void make_points(gsl_rng *chance, int count, double off, hw_points *points)
{
    for (int i = 0; i < count; i++) {
        xs[i] = 10 + 5 * (i % 4);
        ys[i] = 0.5 + 0.35 * xs[i] + gsl_ran_gaussian(chance, 0.05);
    }
    ys[gsl_rng_uniform_int(chance, (unsigned long)count)] += off;
    *points = (hw_points){ .x = xs, .y = ys, .count = count };
}

/* The definition of the externally studentised residual: the point is compared with a fit that has
 * never seen it. Both ways are the same but for rounding; about six digits may cancel where one
 * point makes up nearly all of the squares. */
START_TEST(outliers_by_leaving_out)
{
    gsl_rng *chance = gsl_rng_alloc(gsl_rng_mt19937);
    ck_assert_ptr_nonnull(chance);
    int found = 0;
    for (int set = 0; set < SETS * JUDGED; set++) {
        hw_points points;
        make_points(chance, LEAST + set % 15, set % 3 == 0 ? 0 : 0.9, &points);
        points.weighed = judged[set % JUDGED].weighed;
        hw_line_kind kind = judged[set % JUDGED].kind;
        hw_line line = fitted(&points, kind);
        double most = 0;
        int which = -1;
        for (int i = 0; i < points.count; i++) {
            double size = left_out(&points, kind, i);
            which = size > most ? i : which;
            most = fmax(size, most);
        }
        double bound = hw_line_t(1 - 0.05 / points.count, line.freedom - 1);
        ck_assert_int_eq(line.outlier, most > bound ? which : -1);
        if (line.outlier >= 0) {
            NEAR(line.outlier_size, most, 1e-9);
            found++;
        }
    }
    gsl_rng_free(chance);
    ck_assert_int_gt(found, SETS); /* the sets are such that many have one */
    ck_assert_int_lt(found, SETS * JUDGED);
}
END_TEST

/* Eight mass spectrometer readings from the handbook's page on Grubbs's test (1.3.5.17.1), from
 * memory: the last is an outlier with G = 2.4687, which is arithmetic on them. The externally
 * studentised residual follows: t^2 = n (n - 2) G^2 / ((n - 1)^2 - n G^2). */
START_TEST(outlier_in_a_handbook)
{
    static const double mass[] = { 199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57 };
    static const double ones[] = { 1, 1, 1, 1, 1, 1, 1, 1 };
    hw_points points = { .x = ones, .y = mass, .count = 8 };
    hw_line line = fitted(&points, HW_LINE_RATIOS);
    double g = (mass[7] - line.slope) / line.residual_sd;
    ck_assert_double_eq_tol(g, 2.4687, 1e-4);
    ck_assert_int_eq(line.outlier, 7);
    NEAR(line.outlier_size, sqrt(8 * 6 * g * g / (49 - 8 * g * g)), 1e-9);
}
END_TEST

/* Bonferroni's bound for the mean of six: 5 % of sets without an outlier are said to have one, or a
 * little less. 4000 sets, so within 4 binomial deviations: 0.05 -+ 4 sqrt(0.05 * 0.95 / 4000). */
START_TEST(false_alarms)
{
    gsl_rng *chance = gsl_rng_alloc(gsl_rng_mt19937);
    ck_assert_ptr_nonnull(chance);
    enum { TRIES = 4000, PLACES = 6 };
    int alarms = 0;
    for (int i = 0; i < TRIES; i++) {
        for (int k = 0; k < PLACES; k++) {
            xs[k] = 1;
            ys[k] = 30 + gsl_ran_gaussian(chance, 0.5);
        }
        alarms += fit_set(PLACES, HW_LINE_RATIOS).outlier >= 0;
    }
    gsl_rng_free(chance);
    ck_assert_double_eq_tol((double)alarms / TRIES, 0.05, 4 * sqrt(0.05 * 0.95 / TRIES));
}
END_TEST

/* By hand: 30 stitches in 7 cm, 60 in 14 and so on are one gauge; what is left is rounding, and no
 * place is far off. One more place that is off stands out by more than can be told. */
START_TEST(rounding_is_no_outlier)
{
    for (int seventh = 1; seventh < 200; seventh++) {
        for (int i = 0; i < 6; i++) {
            xs[i] = 3 * (i + 1);
            ys[i] = seventh * 0.7 * (i + 1) / 3.1;
        }
        for (int i = 0; i < JUDGED; i++) {
            hw_points points = { .x = xs, .y = ys, .count = 6, .weighed = judged[i].weighed };
            ck_assert_int_eq(fitted(&points, judged[i].kind).outlier, -1);
        }
        ys[2] += 0.01 * ys[2];
        for (int i = 0; i < JUDGED; i++) {
            hw_points points = { .x = xs, .y = ys, .count = 6, .weighed = judged[i].weighed };
            hw_line line = fitted(&points, judged[i].kind);
            ck_assert_int_eq(line.outlier, 2);
            ck_assert(line.outlier_size > 1e5 && line.outlier_size <= 1e6);
        }
    }
}
END_TEST

/* By hand: thirty ratios of 30, give or take 0.05; one is 2 too many and one 1.5, and either is
 * past the bound. The farther one is told, whichever comes first. */
START_TEST(farther_of_two)
{
    for (int order = 0; order < 2; order++) {
        for (int i = 0; i < 30; i++) {
            xs[i] = 1;
            ys[i] = 30 + (i % 2 == 0 ? 0.05 : -0.05);
        }
        ys[order == 0 ? 4 : 20] += 2;
        ys[order == 0 ? 20 : 4] += 1.5;
        ck_assert_int_eq(fit_set(30, HW_LINE_RATIOS).outlier, order == 0 ? 4 : 20);
    }
}
END_TEST

/* By hand: three of four places lie on 0.5 + 0.35 x, the last 7 cm off it. */
START_TEST(outlier_among_four)
{
    static const double x[] = { 20, 30, 40, 50 };
    static const double y[] = { 7.5, 11, 14.5, 25 };
    hw_points points = { .x = x, .y = y, .count = 4 };
    ck_assert_int_eq(fitted(&points, HW_LINE_FREE).outlier, 3);
    points.count = 3;
    ck_assert_int_eq(fitted(&points, HW_LINE_ZERO).outlier, -1);
}
END_TEST

/* By hand: of 20, 20, 20, 40 the last place fixes the line alone and cannot be judged. */
START_TEST(lone_place_is_not_judged)
{
    static const double x[] = { 20, 20, 20, 40 };
    static const double y[] = { 7.5, 7.6, 7.4, 25 };
    hw_points points = { .x = x, .y = y, .count = 4 };
    hw_line line = fitted(&points, HW_LINE_FREE);
    NEAR(line.slope, 17.5 / 20, 1e-13);
    ck_assert_int_eq(line.outlier, -1);
}
END_TEST

/* By hand: eight places on 0.5 + 0.35 x, give or take 0.02, one 3 cm too long and one 2: the robust
 * line stays within 0.02 of each good place, least squares do not. The farther slip is told. */
START_TEST(robust_ignores_a_slip)
{
    static const double x[] = { 20, 20, 30, 30, 40, 40, 50, 50, 30, 40 };
    static const double y[] = { 7.52, 7.48, 11.01, 10.99, 14.48, 17.52, 18.02, 17.98, 13, 14.52 };
    hw_points points = { .x = x, .y = y, .count = 10 };
    hw_line robust = fitted(&points, HW_LINE_ROBUST);
    hw_line plain = fitted(&points, HW_LINE_FREE);
    for (int i = 20; i <= 50; i += 10) {
        double truth = 0.5 + 0.35 * i;
        ck_assert_double_eq_tol(robust.intercept + robust.slope * i, truth, 0.02);
    }
    ck_assert(fabs(plain.intercept + plain.slope * 40 - 14.5) > 0.2);
    ck_assert_int_eq(robust.outlier, 5);
    ck_assert(robust.outlier_size > 3);
    ck_assert(robust.has_error && robust.freedom == 8 && robust.slope_error > 0);
}
END_TEST

/* By hand: places that lie on a line are fitted by it, and none counts for nothing. */
START_TEST(robust_on_a_line)
{
    static const double x[] = { 20, 30, 40, 50 };
    static const double y[] = { 7.5, 11, 14.5, 18 };
    hw_points points = { .x = x, .y = y, .count = 4 };
    hw_line line = fitted(&points, HW_LINE_ROBUST);
    NEAR(line.slope, 0.35, 1e-12);
    NEAR(line.intercept, 0.5, 1e-11);
    ck_assert_int_eq(line.outlier, -1);
}
END_TEST

/* A set, found by search, on which the rounds of the fit swing between two lines for ever; either
 * lies within a standard error of least squares. Source: none, own search. */
START_TEST(robust_without_rest)
{
    static const double x[] = { 20, 30, 40, 50, 20, 30 };
    static const double y[] = { 7.5, 11, 14.5, 18.1, 7.4, 11.3 };
    hw_points points = { .x = x, .y = y, .count = 6 };
    hw_line robust = fitted(&points, HW_LINE_ROBUST);
    hw_line plain = fitted(&points, HW_LINE_FREE);
    ck_assert_double_eq_tol(robust.slope, plain.slope, plain.slope_error);
    ck_assert_double_eq_tol(robust.intercept, plain.intercept, plain.intercept_error);
}
END_TEST

/* What cannot be fitted, from the header; the result stays as it was. */
START_TEST(refusals)
{
    static const double one_x[] = { 20, 20, 20, 20 };
    static const double two_x[] = { 20, 30, 40, 50 };
    static const double y[] = { 7.5, 7.6, 7.4, 7.5 };
    /* Five alike at 20, so that both at 40, which differ, count for nothing. */
    static const double few_x[] = { 20, 20, 20, 20, 20, 40, 40 };
    static const double few_y[] = { 7.4, 7.4, 7.4, 7.4, 7.4, 14.3, 14.4 };
    static const struct {
        hw_points points;
        hw_line_kind kind;
        const char *words;
    } rows[] = {
        { { .x = one_x, .y = y, .count = 4 }, HW_LINE_FREE, "two different counts" },
        { { .x = one_x, .y = y, .count = 1 }, HW_LINE_FREE, "two different counts" },
        { { .x = one_x, .y = y, .count = 4 }, HW_LINE_ROBUST, "two different counts" },
        { { .x = two_x, .y = y, .count = 3 }, HW_LINE_ROBUST, "at least four measured places" },
        { { .x = few_x, .y = few_y, .count = 7 }, HW_LINE_ROBUST, "only places of one count" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        hw_line line = { .freedom = 77 };
        hw_err err = { 0 };
        hw_status status = attempt(&rows[i].points, rows[i].kind, 0, &line, &err);
        ck_assert_int_eq(status, HW_ERR_MISSING);
        ck_assert(hw_check_says(&err, HW_ERR_MISSING, rows[i].words));
        ck_assert_int_eq(line.freedom, 77);
    }
}
END_TEST

/* Each request refused in turn: told, and the result stays as it was. */
START_TEST(memory_refused)
{
    static const double x[] = { 20, 30, 40, 50 };
    static const double y[] = { 7.5, 11.1, 14.4, 18 };
    hw_points points = { .x = x, .y = y, .count = 4 };
    for (int kind = 0; kind < HW_LINE_COUNT; kind++) {
        long requests = kind == HW_LINE_RATIOS ? 4 : 2;
        for (long refused = 1; refused <= requests + 1; refused++) {
            hw_line line = { .freedom = 77 };
            hw_err err = { 0 };
            hw_status status = attempt(&points, (hw_line_kind)kind, refused, &line, &err);
            ck_assert_int_eq(status, refused > requests ? HW_OK : HW_ERR_NOMEM);
            ck_assert(status == HW_OK || hw_check_says(&err, HW_ERR_NOMEM, "not enough memory"));
            ck_assert_int_eq(line.freedom == 77, status != HW_OK);
        }
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { certified_lines, certified_means, t_to_seven_digits,
        t_as_printed, interval, weighed_mean, small_line, no_points_to_spare,
        outliers_by_leaving_out, outlier_in_a_handbook, false_alarms, rounding_is_no_outlier,
        farther_of_two, outlier_among_four, lone_place_is_not_judged, robust_ignores_a_slip,
        robust_on_a_line, robust_without_rest, refusals, memory_refused };
    return hw_check_run(hw_check_suite("line", tests, sizeof tests / sizeof tests[0]));
}
