/* Gauge and the carriage's dial: from swatches at several dials to the gauges between them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_DIAL_H
#define HW_CORE_DIAL_H

#include "core/err.h"

enum { HW_DIAL_MAX_ORDER = 2 };

/* gauge = c0 + c1 d + c2 d^2, d the dial less the middle of those swatched */
typedef struct {
    int order; /* 1: a line, below four dials; 2: a parabola */
    double c[HW_DIAL_MAX_ORDER + 1];
    double middle;              /* of the swatched dials */
    double low_dial, high_dial; /* swatched; one number beyond either is still told */
    int places;
    bool has_error;     /* residual_sd is known */
    double residual_sd; /* counts in 10 cm */
} hw_dial_fit;

/*
 * Fit the gauge over the dial.
 *
 * Given:     dials, per_10cm  count of each, at most HW_MAX_SWATCHES, finite
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (one dial only); HW_ERR_INTERNAL; HW_ERR_NOMEM
 * Note:      least squares (GSL); a line with two or three different dials, a parabola with more:
 *            own choice, for a smooth change over few numbers
 */
hw_status hw_dial_fit_gauges(const double *dials, const double *per_10cm, int count,
    hw_dial_fit *out, hw_err *err) HW_MUST_USE;

/* The gauge at a dial, by the fit; beyond the swatched dials by more than 1 it is only a guess. */
double hw_dial_gauge(const hw_dial_fit *fit, double dial);

/* Whether a dial lies within the swatched ones, or at most one number beyond. */
bool hw_dial_in_range(const hw_dial_fit *fit, double dial);

/*
 * The dial that gives a gauge.
 *
 * Given:     per_10cm  wanted
 * Returned:  out       within one number of the swatched dials, the nearer to their middle where
 *                      two give it; untouched where none does
 *            whether one does
 */
bool hw_dial_for(const hw_dial_fit *fit, double per_10cm, double *out);

#endif
