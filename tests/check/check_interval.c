/* How often the interval holds the truth: swatch sets made by chance around a known gauge.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>

#include "core/tolerance.h"
#include "support.h"

/* Source: the meaning of a 95 % interval. Of 4000 sets 95 % hold the truth, give or take four
 * binomial standard deviations, sqrt(0.95 * 0.05 / 4000) = 0.0034: 93.6 to 96.4 %. */
enum { SETS = 4000, MOST_PLACES = 12 };
static const double LEVEL = 0.95;
static const double TRUE_PER_10CM = 28;
static const double TRUE_EDGE_CM = 0.6;

/* How a set comes about. */
typedef struct {
    int places;
    bool markers;
    hw_method method;
    hw_line_kind kind; /* that must come of it */
    void (*make)(gsl_rng *chance, int place, hw_swatch *out);
} setting;

enum { SEED = 20260229 }; /* any number: the same sets in every run */

/* Five times the same count, its length measured to about 1 %. */
static void equal_counts(gsl_rng *chance, int place, hw_swatch *out)
{
    (void)place;
    out->sts = 40;
    out->width_cm = 10 * out->sts / TRUE_PER_10CM + gsl_ran_gaussian(chance, 0.12);
}

/* Lengths that are laid down, and stitches that happen to lie in them: their variance goes with
 * the length. */
static void laid_lengths(gsl_rng *chance, int place, hw_swatch *out)
{
    out->width_cm = 10 + 5 * place;
    out->sts =
        out->width_cm * TRUE_PER_10CM / 10 + gsl_ran_gaussian(chance, 0.15 * sqrt(out->width_cm));
}

/* Counts from 20 to 50, with a share for the edges. */
static void counts_apart(gsl_rng *chance, int place, hw_swatch *out)
{
    out->sts = 20 + 10 * (place % 4);
    out->width_cm = TRUE_EDGE_CM + 10 * out->sts / TRUE_PER_10CM + gsl_ran_gaussian(chance, 0.15);
}

/* The same without an edge's share. */
static void without_edge(gsl_rng *chance, int place, hw_swatch *out)
{
    counts_apart(chance, place, out);
    out->width_cm -= TRUE_EDGE_CM;
}

static hw_gauge knit(gsl_rng *chance, const setting *how)
{
    hw_swatch swatches[MOST_PLACES];
    for (int i = 0; i < how->places; i++) {
        swatches[i] = (hw_swatch){ .rows = 40, .length_cm = 10 };
        how->make(chance, i, &swatches[i]);
    }
    hw_gauge_input in = {
        .swatches = swatches, .count = how->places, .markers = how->markers, .method = how->method
    };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_gauge gauge = { 0 };
    hw_err err = { 0 };
    ck_assert_msg(hw_gauge_measure(&in, &arena, &gauge, &err) == HW_OK, "%s", err.text);
    hw_check_close(&arena, &heap);
    ck_assert_int_eq((int)gauge.sides[HW_ACROSS].kind, (int)how->kind);
    ck_assert(gauge.sides[HW_ACROSS].has_interval);
    return gauge;
}

static const setting settings[] = {
    { 5, false, HW_METHOD_USUAL, HW_LINE_RATIOS, equal_counts },
    { 5, true, HW_METHOD_USUAL, HW_LINE_RATIOS, laid_lengths },
    { 4, false, HW_METHOD_USUAL, HW_LINE_FREE, counts_apart },
    { 8, false, HW_METHOD_USUAL, HW_LINE_FREE, counts_apart },
    { 6, false, HW_METHOD_ZERO, HW_LINE_ZERO, without_edge },
};

START_TEST(interval_holds_the_truth)
{
    gsl_rng *chance = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(chance, SEED);
    ck_assert_ptr_nonnull(chance);
    for (size_t i = 0; i < sizeof settings / sizeof settings[0]; i++) {
        int held = 0;
        int width_held = 0;
        for (int set = 0; set < SETS; set++) {
            hw_gauge gauge = knit(chance, &settings[i]);
            const hw_gauge_side *side = &gauge.sides[HW_ACROSS];
            held += side->low <= TRUE_PER_10CM && TRUE_PER_10CM <= side->high;
            /* A width of 84 stitches is 30 cm; its interval comes from the gauge's. */
            hw_tolerance_task task = { .sts = 84, .wanted_cm = 30, .tolerance_cm = 1 };
            hw_tolerance window = hw_tolerance_find(&task, &gauge);
            width_held += window.width_cm.low <= 30 && 30 <= window.width_cm.high;
        }
        double bound = 4 * sqrt(LEVEL * (1 - LEVEL) / SETS);
        ck_assert_double_eq_tol((double)held / SETS, LEVEL, bound);
        ck_assert_double_eq_tol((double)width_held / SETS, LEVEL, bound);
    }
    gsl_rng_free(chance);
}
END_TEST

/* The edge's share comes out right on average, within four standard errors of 4000 sets, and with
 * the spread that counts 20 to 50, twice each, give (by hand: mean 35, squares 1000 about it); a
 * standard deviation found from 4000 is itself sure to four times 1/sqrt(8000) of it. */
START_TEST(no_bias)
{
    gsl_rng *chance = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(chance, SEED);
    ck_assert_ptr_nonnull(chance);
    const setting *how = &settings[3];
    double sum = 0;
    double squares = 0;
    for (int set = 0; set < SETS; set++) {
        hw_gauge gauge = knit(chance, how);
        double off_cm = gauge.sides[HW_ACROSS].edge_cm - TRUE_EDGE_CM;
        sum += off_cm;
        squares += off_cm * off_cm;
    }
    gsl_rng_free(chance);
    double error_cm = 0.15 * sqrt(1.0 / 8 + 35.0 * 35 / 1000);
    ck_assert_double_eq_tol(sum / SETS, 0, 4 * error_cm / sqrt(SETS));
    ck_assert_double_eq_tol(sqrt(squares / SETS), error_cm, 4 * error_cm / sqrt(2 * SETS));
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { interval_holds_the_truth, no_bias };
    return hw_check_run(hw_check_suite("interval", tests, sizeof tests / sizeof tests[0]));
}
