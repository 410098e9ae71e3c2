/* Swatches by chance and what the core makes of them, in rows for another program to work out
 * again. Prints comma-separated rows: set, what, numbers. The seed is fixed.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>
#include <stdio.h>

#include "core/dial.h"
#include "core/line.h"

enum { SETS = 40, MOST_PLACES = 20, ROOM_BYTES = 1 << 12 };

static const char *const kinds[] = {
    [HW_LINE_RATIOS] = "ratios",
    [HW_LINE_FREE] = "free",
    [HW_LINE_ZERO] = "zero",
    [HW_LINE_ROBUST] = "robust",
};
_Static_assert(sizeof kinds / sizeof kinds[0] == HW_LINE_COUNT, "a name for each kind");

static void print_numbers(int set, const char *what, const double *numbers, int count)
{
    (void)printf("%d,%s", set, what);
    for (int i = 0; i < count; i++) {
        (void)printf(",%.17g", numbers[i]);
    }
    (void)printf("\n");
}

/* Lengths of swatches with an edge's share, a few hairs off; one place in three sets is far off. */
static int make_places(gsl_rng *chance, int set, double *x, double *y)
{
    int count = 5 + (int)gsl_rng_uniform_int(chance, MOST_PLACES - 4);
    double per_count_cm = 0.2 + 0.4 * gsl_rng_uniform(chance);
    double edge_cm = gsl_rng_uniform(chance);
    double off_cm = 0.02 + 0.3 * gsl_rng_uniform(chance);
    for (int i = 0; i < count; i++) {
        x[i] = 15 + (double)gsl_rng_uniform_int(chance, 50);
        y[i] = edge_cm + per_count_cm * x[i] + gsl_ran_gaussian(chance, off_cm);
    }
    y[0] += set % 3 == 0 ? 8 * off_cm : 0;
    return count;
}

/* slope, intercept, their errors, residual deviation, 95 % interval of the slope, outlier (from 1,
 * 0 for none), its size */
static bool print_line(int set, const hw_points *points, hw_line_kind kind)
{
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, ROOM_BYTES);
    hw_line line = { .outlier = -1 };
    hw_err err = { 0 };
    bool done = hw_line_fit(points, kind, &arena, &line, &err) == HW_OK;
    if (done) {
        hw_interval slope = hw_line_interval(line.slope, line.slope_error, 0.95, line.freedom);
        double numbers[] = { line.slope, line.intercept, line.slope_error, line.intercept_error,
            line.residual_sd, slope.low, slope.high, line.outlier + 1, line.outlier_size };
        const char *what = kind == HW_LINE_RATIOS && points->weighed ? "weighed" : kinds[kind];
        print_numbers(set, what, numbers, (int)(sizeof numbers / sizeof numbers[0]));
    } else {
        (void)fprintf(stderr, "set %d, %s: %s\n", set, kinds[kind], err.text);
    }
    hw_arena_release(&arena);
    return done;
}

static bool print_lines(gsl_rng *chance, int set)
{
    double x[MOST_PLACES];
    double y[MOST_PLACES];
    hw_points points = { .x = x, .y = y, .count = make_places(chance, set, x, y) };
    print_numbers(set, "x", x, points.count);
    print_numbers(set, "y", y, points.count);
    bool done = true;
    for (int kind = 0; kind < HW_LINE_COUNT; kind++) {
        done = print_line(set, &points, (hw_line_kind)kind) && done;
    }
    points.weighed = true;
    return print_line(set, &points, HW_LINE_RATIOS) && done;
}

/* order, residual deviation (-1 where it is not known), the gauge at each half dial in range */
static bool print_dials(gsl_rng *chance, int set)
{
    double dials[MOST_PLACES];
    double per_10cm[MOST_PLACES];
    int different = 2 + set % 6;
    int count = different + (int)gsl_rng_uniform_int(chance, 6);
    for (int i = 0; i < count; i++) {
        dials[i] = 3 + (i % different) + (set % 4 == 0 ? 0.5 * (i % different) : 0);
        per_10cm[i] =
            42 - 2.5 * dials[i] + 0.1 * dials[i] * dials[i] + gsl_ran_gaussian(chance, 0.3);
    }
    print_numbers(set, "dials", dials, count);
    print_numbers(set, "gauges", per_10cm, count);
    hw_dial_fit fit;
    hw_err err = { 0 };
    if (hw_dial_fit_gauges(dials, per_10cm, count, &fit, &err) != HW_OK) {
        (void)fprintf(stderr, "set %d, dials: %s\n", set, err.text);
        return false;
    }
    double told[64] = { fit.order, fit.has_error ? fit.residual_sd : -1 };
    int numbers = 2;
    for (double dial = fit.low_dial - 1; hw_dial_in_range(&fit, dial); dial += 0.5) {
        told[numbers++] = hw_dial_gauge(&fit, dial);
    }
    print_numbers(set, "told", told, numbers);
    return true;
}

int main(void)
{
    (void)gsl_set_error_handler_off();
    gsl_rng *chance = gsl_rng_alloc(gsl_rng_mt19937);
    bool done = chance != NULL;
    for (int set = 0; set < SETS && done; set++) {
        done = print_lines(chance, set) && print_dials(chance, set);
    }
    gsl_rng_free(chance);
    return done && fflush(stdout) == 0 ? 0 : 1;
}
