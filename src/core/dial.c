/* A low polynomial through gauges, by GSL's least squares.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/dial.h"

#include <gsl/gsl_multifit.h>
#include <gsl/gsl_poly.h>
#include <math.h>

#define BEYOND 1.0 /* numbers past the swatched dials that are still told: own choice */
#define SAME   1e-9

static int different(const double *dials, int count)
{
    int found = 0;
    for (int i = 0; i < count; i++) {
        bool first = true;
        for (int k = 0; k < i; k++) {
            first = first && fabs(dials[k] - dials[i]) > SAME;
        }
        found += first;
    }
    return found;
}

/* What GSL's fit works in. */
typedef struct {
    gsl_matrix *design, *cov;
    gsl_vector *y, *c;
    gsl_multifit_linear_workspace *room;
} workroom;

static void release(workroom *w)
{
    gsl_matrix_free(w->design); /* each of these takes NULL */
    gsl_matrix_free(w->cov);
    gsl_vector_free(w->y);
    gsl_vector_free(w->c);
    gsl_multifit_linear_free(w->room);
}

static hw_status solve(
    workroom *w, const double *dials, const double *per_10cm, hw_dial_fit *fit, hw_err *err)
{
    for (size_t i = 0; i < (size_t)fit->places; i++) {
        for (size_t k = 0; k <= (size_t)fit->order; k++) {
            gsl_matrix_set(w->design, i, k, pow(dials[i] - fit->middle, (double)k));
        }
        gsl_vector_set(w->y, i, per_10cm[i]);
    }
    double squares = 0;
    if (gsl_multifit_linear(w->design, w->y, w->c, w->cov, &squares, w->room) != 0) {
        return hw_err_set(err, HW_ERR_INTERNAL, "%s",
            "no curve fits these dials; look for a slip of the pen among the swatches");
    }
    for (size_t k = 0; k <= (size_t)fit->order; k++) {
        fit->c[k] = gsl_vector_get(w->c, k);
    }
    int freedom = fit->places - fit->order - 1;
    fit->has_error = freedom > 0;
    fit->residual_sd = fit->has_error ? sqrt(squares / freedom) : 0;
    return HW_OK;
}

hw_status hw_dial_fit_gauges(
    const double *dials, const double *per_10cm, int count, hw_dial_fit *out, hw_err *err)
{
    int found = different(dials, count);
    if (found < 2) {
        return hw_err_set(err, HW_ERR_MISSING, "%s",
            "swatches at one dial cannot tell the gauge at another; knit one at a second dial");
    }
    hw_dial_fit fit = {
        .order = found > 3 ? 2 : 1, .places = count, .low_dial = dials[0], .high_dial = dials[0]
    };
    for (int i = 1; i < count; i++) {
        fit.low_dial = fmin(fit.low_dial, dials[i]);
        fit.high_dial = fmax(fit.high_dial, dials[i]);
    }
    fit.middle = (fit.low_dial + fit.high_dial) / 2;
    size_t n = (size_t)count;
    size_t p = (size_t)fit.order + 1;
    workroom w = { .design = gsl_matrix_alloc(n, p),
        .cov = gsl_matrix_alloc(p, p),
        .y = gsl_vector_alloc(n),
        .c = gsl_vector_alloc(p),
        .room = gsl_multifit_linear_alloc(n, p) };
    bool refused =
        w.design == NULL || w.cov == NULL || w.y == NULL || w.c == NULL || w.room == NULL;
    hw_status status =
        refused ? hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory to fit the dials")
                : solve(&w, dials, per_10cm, &fit, err);
    release(&w);
    if (status == HW_OK) {
        *out = fit;
    }
    return status;
}

double hw_dial_gauge(const hw_dial_fit *fit, double dial)
{
    double d = dial - fit->middle;
    return fit->c[0] + d * (fit->c[1] + d * fit->c[2]);
}

bool hw_dial_in_range(const hw_dial_fit *fit, double dial)
{
    return dial >= fit->low_dial - BEYOND - SAME && dial <= fit->high_dial + BEYOND + SAME;
}

bool hw_dial_for(const hw_dial_fit *fit, double per_10cm, double *out)
{
    double roots[HW_DIAL_MAX_ORDER];
    int count =
        gsl_poly_solve_quadratic(fit->c[2], fit->c[1], fit->c[0] - per_10cm, &roots[0], &roots[1]);
    bool found = false;
    double nearest = 0;
    for (int i = 0; i < count; i++) {
        bool nearer = !found || fabs(roots[i]) < fabs(nearest);
        if (hw_dial_in_range(fit, fit->middle + roots[i]) && nearer) {
            found = true;
            nearest = roots[i];
        }
    }
    if (found) {
        *out = fit->middle + nearest;
    }
    return found;
}
