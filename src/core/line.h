/* Lengths against counts: lines and means by least squares, with standard errors and intervals.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_LINE_H
#define HW_CORE_LINE_H

#include "core/err.h"
#include "core/mem.h"

typedef enum {
    HW_LINE_RATIOS, /* y/x is one number: the mean of the ratios */
    HW_LINE_FREE,   /* y = a + b x, least squares */
    HW_LINE_ZERO,   /* y = b x, least squares */
    HW_LINE_ROBUST, /* y = a + b x, Tukey's bisquare: a far-off point counts little */
    HW_LINE_COUNT
} hw_line_kind;

typedef struct {
    const double *x, *y; /* [count], finite; x not 0 for RATIOS */
    int count;           /* [1, 10000] */
    bool weighed;        /* RATIOS: each counts by its x, which is then above 0 */
    const double *share; /* FREE, ROBUST: how much of the intercept each point has, 0 or 1; NULL:
                            all have it whole */
    double reading_sd;   /* of one reading by itself, in units of y (RATIOS: of x): errors are never
                            told smaller than it allows; 0 where readings are exact */
    double least_off;    /* in the same units: no point nearer to the line is called an outlier */
} hw_points;

typedef struct {
    hw_line_kind kind;
    double slope,
        intercept;  /* RATIOS: slope is the mean of y/x; intercept 0 but for FREE, ROBUST */
    bool has_error; /* the next four are known: more points than unknowns */
    double slope_error, intercept_error; /* standard errors */
    double residual_sd;
    int freedom;         /* degrees of freedom */
    double *residuals;   /* [count]: y less what the line says; RATIOS: y/x less the mean */
    int outlier;         /* index of a point that lies too far off to be chance, or -1 */
    double outlier_size; /* its residual in its standard deviations, found without it */
} hw_line;

/*
 * Fit a line or a mean.
 *
 * Given:     points    for FREE and ROBUST at least two different x
 *            kind      below HW_LINE_COUNT
 *            arena     owner of the residuals
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (FREE or ROBUST with one x only, ROBUST with fewer than four
 *            points or with a weight on points of one x only); HW_ERR_INTERNAL (GSL found no
 *            answer); HW_ERR_NOMEM
 * Note:      GSL's gsl_fit_linear, gsl_fit_mul and gsl_multifit_robust. An outlier is a point whose
 *            externally studentised residual is beyond the two-sided 5 % bound for the largest of
 *            `count` (Bonferroni); none is sought below four points, nor among residuals that
 *            rounding leaves. In a ROBUST fit a point is called an outlier when the fit gives it no
 *            weight at all. A ROBUST fit that has not come to rest after GSL's hundred rounds is
 *            taken as it then stands
 */
hw_status hw_line_fit(const hw_points *points, hw_line_kind kind, hw_arena *arena, hw_line *out,
    hw_err *err) HW_MUST_USE;

/*
 * The t value that a two-sided interval needs.
 *
 * Given:     level     such as 0.95, in (0, 1)
 *            freedom   degrees of freedom, above 0
 * Returned:  the quantile of Student's t at (1 + level) / 2
 */
double hw_line_t(double level, int freedom);

/* An interval around a value. */
typedef struct {
    double low, high;
} hw_interval;

/* Value plus and minus t times its standard error. */
hw_interval hw_line_interval(double value, double error, double level, int freedom);

#endif
