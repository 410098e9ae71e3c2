/* GSL does the fitting; here the points are laid out for it and its errors turned into ours.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/line.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_fit.h>
#include <gsl/gsl_multifit.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>

#define LEVEL     0.95
#define MOST_SIZE 1e6  /* of an outlier, where all others agree to the last digit */
#define ROUNDING  1e-9 /* a residual below this share of the values is no measurement */
enum { LEAST_FOR_OUTLIERS = 4 };

/* The fit at hand, with what finding outliers needs beside its result. */
typedef struct {
    const hw_points *points;
    hw_line line;
    double *weights;                   /* [count]; NULL: all alike */
    double *leverage;                  /* [count]: how far a point pulls the line to itself */
    double slope_unit, intercept_unit; /* standard errors for a residual deviation of 1 */
    hw_arena *arena;
    hw_err *err;
} fitting;

double hw_line_t(double level, int freedom)
{
    return gsl_cdf_tdist_Pinv((1 + level) / 2, freedom);
}

hw_interval hw_line_interval(double value, double error, double level, int freedom)
{
    double reach = hw_line_t(level, freedom) * error;
    return (hw_interval){ value - reach, value + reach };
}

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory to work out the gauge");
}

static hw_status no_answer(hw_err *err)
{
    return hw_err_set(err, HW_ERR_INTERNAL, "%s",
        "no line fits these measurements; look for a slip of the pen among them");
}

static bool differ(const double *values, int count)
{
    double least = values[0];
    double most = values[0];
    for (int i = 1; i < count; i++) {
        least = fmin(least, values[i]);
        most = fmax(most, values[i]);
    }
    return most > least;
}

/* Standard deviation of one residual of weight 1, from their sum of squares. */
static void set_errors(fitting *f, double sum_of_squares, int unknowns)
{
    hw_line *line = &f->line;
    line->freedom = f->points->count - unknowns;
    line->has_error = line->freedom > 0;
    line->residual_sd = line->has_error ? sqrt(sum_of_squares / line->freedom) : 0;
}

static hw_status fit_ratios(fitting *f)
{
    const hw_points *p = f->points;
    size_t n = (size_t)p->count;
    double *ratios = hw_arena_get(f->arena, n, sizeof *ratios);
    double *weights = hw_arena_get(f->arena, n, sizeof *weights);
    if (ratios == NULL || weights == NULL) {
        return no_memory(f->err);
    }
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        ratios[i] = p->y[i] / p->x[i];
        weights[i] = p->weighed ? p->x[i] : 1;
        sum += weights[i];
    }
    f->line.slope = gsl_stats_wmean(weights, 1, ratios, 1, n);
    double squares = 0;
    for (size_t i = 0; i < n; i++) {
        f->line.residuals[i] = ratios[i] - f->line.slope;
        f->leverage[i] = weights[i] / sum;
        squares += weights[i] * f->line.residuals[i] * f->line.residuals[i];
    }
    f->weights = weights;
    f->slope_unit = 1 / sqrt(sum);
    set_errors(f, squares, 1);
    f->line.slope_error = f->line.has_error ? f->line.residual_sd / sqrt(sum) : 0;
    return HW_OK;
}

static double share_of(const hw_points *p, size_t i)
{
    return p->share != NULL ? p->share[i] : 1;
}

static void residuals(fitting *f, double *squares)
{
    const hw_points *p = f->points;
    *squares = 0;
    for (int i = 0; i < p->count; i++) {
        f->line.residuals[i] =
            p->y[i] - f->line.intercept * share_of(p, (size_t)i) - f->line.slope * p->x[i];
        *squares += f->line.residuals[i] * f->line.residuals[i];
    }
}

/* What GSL's fits of several unknowns work in. */
typedef struct {
    gsl_matrix *design, *cov;
    gsl_vector *y, *c;
} workroom;

static bool make_room(workroom *w, size_t n)
{
    *w = (workroom){ .design = gsl_matrix_alloc(n, 2),
        .cov = gsl_matrix_alloc(2, 2),
        .y = gsl_vector_alloc(n),
        .c = gsl_vector_alloc(2) };
    return w->design != NULL && w->cov != NULL && w->y != NULL && w->c != NULL;
}

static void release(workroom *w)
{
    gsl_matrix_free(w->design); /* each of these takes NULL */
    gsl_matrix_free(w->cov);
    gsl_vector_free(w->y);
    gsl_vector_free(w->c);
}

static void fill(const hw_points *p, workroom *w)
{
    for (size_t i = 0; i < (size_t)p->count; i++) {
        gsl_matrix_set(w->design, i, 0, share_of(p, i));
        gsl_matrix_set(w->design, i, 1, p->x[i]);
        gsl_vector_set(w->y, i, p->y[i]);
    }
}

/* Leverages and unit errors from the sums of the two columns, shares and x. */
static void set_leverage(fitting *f)
{
    const hw_points *p = f->points;
    double ss = 0;
    double sx = 0;
    double xx = 0;
    for (size_t i = 0; i < (size_t)p->count; i++) {
        double share = share_of(p, i);
        ss += share * share;
        sx += share * p->x[i];
        xx += p->x[i] * p->x[i];
    }
    double det = ss * xx - sx * sx;
    for (size_t i = 0; i < (size_t)p->count; i++) {
        double share = share_of(p, i);
        f->leverage[i] =
            (share * share * xx - 2 * share * p->x[i] * sx + p->x[i] * p->x[i] * ss) / det;
    }
    f->slope_unit = sqrt(ss / det);
    f->intercept_unit = sqrt(xx / det);
}

/* A line whose intercept not every point has. */
static hw_status fit_shared(fitting *f)
{
    const hw_points *p = f->points;
    size_t n = (size_t)p->count;
    workroom w;
    bool good = make_room(&w, n);
    gsl_multifit_linear_workspace *room = gsl_multifit_linear_alloc(n, 2);
    double squares = 0;
    hw_status status = good && room != NULL ? HW_OK : no_memory(f->err);
    if (status == HW_OK) {
        fill(p, &w);
        int result = gsl_multifit_linear(w.design, w.y, w.c, w.cov, &squares, room);
        status = result == 0 ? HW_OK : no_answer(f->err);
    }
    if (status == HW_OK) {
        f->line.intercept = gsl_vector_get(w.c, 0);
        f->line.slope = gsl_vector_get(w.c, 1);
        residuals(f, &squares);
        set_errors(f, squares, 2);
        set_leverage(f);
        f->line.slope_error = f->line.residual_sd * f->slope_unit;
        f->line.intercept_error = f->line.residual_sd * f->intercept_unit;
    }
    gsl_multifit_linear_free(room);
    release(&w);
    return status;
}

static hw_status fit_free(fitting *f)
{
    const hw_points *p = f->points;
    if (p->share != NULL) {
        return fit_shared(f);
    }
    size_t n = (size_t)p->count;
    double cov[3] = { 0 };
    double squares = 0;
    int status = gsl_fit_linear(p->x, 1, p->y, 1, n, &f->line.intercept, &f->line.slope, &cov[0],
        &cov[1], &cov[2], &squares);
    if (status != 0 || !isfinite(f->line.slope)) {
        return no_answer(f->err);
    }
    residuals(f, &squares);
    set_errors(f, squares, 2);
    /* Without points to spare GSL divides by no degrees of freedom. */
    f->line.intercept_error = f->line.has_error ? sqrt(cov[0]) : 0;
    f->line.slope_error = f->line.has_error ? sqrt(cov[2]) : 0;
    double mean = gsl_stats_mean(p->x, 1, n);
    double spread = gsl_stats_tss_m(p->x, 1, n, mean);
    for (size_t i = 0; i < n; i++) {
        double from_mean = p->x[i] - mean;
        f->leverage[i] = 1.0 / p->count + from_mean * from_mean / spread;
    }
    f->slope_unit = 1 / sqrt(spread);
    f->intercept_unit = sqrt(1.0 / p->count + mean * mean / spread);
    return HW_OK;
}

static hw_status fit_zero(fitting *f)
{
    const hw_points *p = f->points;
    size_t n = (size_t)p->count;
    double variance = 0;
    double squares = 0;
    if (gsl_fit_mul(p->x, 1, p->y, 1, n, &f->line.slope, &variance, &squares) != 0) {
        return no_answer(f->err);
    }
    residuals(f, &squares);
    set_errors(f, squares, 1);
    f->line.slope_error = f->line.has_error ? sqrt(variance) : 0;
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        sum += p->x[i] * p->x[i];
    }
    for (size_t i = 0; i < n; i++) {
        f->leverage[i] = p->x[i] * p->x[i] / sum;
    }
    f->slope_unit = 1 / sqrt(sum);
    return HW_OK;
}

/* Points of one x alone hold no line: the others were all given up as outliers. */
static bool weights_hold(const hw_points *p, const gsl_vector *weights)
{
    double least = HUGE_VAL;
    double most = -HUGE_VAL;
    for (size_t i = 0; i < (size_t)p->count; i++) {
        bool counts = gsl_vector_get(weights, i) > 0;
        least = counts ? fmin(least, p->x[i]) : least;
        most = counts ? fmax(most, p->x[i]) : most;
    }
    return most > least;
}

/* The farthest of the points that count for nothing. */
static void find_unweighed(hw_line *line, const gsl_multifit_robust_stats *about, double least_off)
{
    double farthest = least_off;
    for (size_t i = 0; i < about->weights->size; i++) {
        double away = fabs(line->residuals[i]);
        if (!(gsl_vector_get(about->weights, i) > 0) && away > farthest) {
            farthest = away;
            line->outlier = (int)i;
            line->outlier_size = about->sigma > 0 ? away / about->sigma : 0;
        }
    }
}

static hw_status solve_robust(fitting *f, workroom *w, gsl_multifit_robust_workspace *room)
{
    fill(f->points, w);
    /* Among few points the rounds may end in a swing between two lines much less than a standard
     * error apart, and never come to rest: the last of them is as good as any. */
    int result = gsl_multifit_robust(w->design, w->y, w->c, w->cov, room);
    if (result != 0 && result != GSL_EMAXITER) {
        return no_answer(f->err);
    }
    gsl_multifit_robust_stats about = gsl_multifit_robust_statistics(room);
    if (!weights_hold(f->points, about.weights)) {
        return hw_err_set(f->err, HW_ERR_MISSING, "%s",
            "a robust fit finds only places of one count that agree; measure more places with "
            "other counts");
    }
    f->line.intercept = gsl_vector_get(w->c, 0);
    f->line.slope = gsl_vector_get(w->c, 1);
    f->line.intercept_error = sqrt(gsl_matrix_get(w->cov, 0, 0));
    f->line.slope_error = sqrt(gsl_matrix_get(w->cov, 1, 1));
    double squares = 0;
    residuals(f, &squares);
    set_errors(f, squares, 2);
    set_leverage(f);
    f->line.residual_sd = about.sigma;
    find_unweighed(&f->line, &about, f->points->least_off);
    return HW_OK;
}

static hw_status fit_robust(fitting *f)
{
    size_t n = (size_t)f->points->count;
    if (f->points->count < LEAST_FOR_OUTLIERS) {
        return hw_err_set(f->err, HW_ERR_MISSING, "%s",
            "a robust fit needs at least four measured places; measure more, or leave it out");
    }
    workroom w;
    bool good = make_room(&w, n);
    gsl_multifit_robust_workspace *room =
        gsl_multifit_robust_alloc(gsl_multifit_robust_bisquare, n, 2);
    hw_status status = good && room != NULL ? solve_robust(f, &w, room) : no_memory(f->err);
    gsl_multifit_robust_free(room);
    release(&w);
    return status;
}

/* How far a point lies off, in the units in which it was read. */
static double off(const fitting *f, int i)
{
    double residual = fabs(f->line.residuals[i]);
    bool ratios = f->line.kind == HW_LINE_RATIOS;
    return ratios ? residual * f->points->x[i] / f->line.slope : residual;
}

/* The residual deviation that readings alone would make. A ratio of a count to a length read with
 * an error e is off by e / length of itself. */
static double least_sd(const fitting *f)
{
    const hw_points *p = f->points;
    if (f->line.kind != HW_LINE_RATIOS) {
        return p->reading_sd;
    }
    double mean = 0;
    for (int i = 0; i < p->count; i++) {
        mean += (p->weighed ? 1 / p->x[i] : 1 / (p->x[i] * p->x[i])) / p->count;
    }
    return f->line.slope * p->reading_sd * sqrt(mean);
}

/* Points may agree by luck better than they can be read: their error is not less for it. */
static void keep_reading_error(fitting *f)
{
    hw_line *line = &f->line;
    double least = least_sd(f);
    if (!line->has_error || !(line->residual_sd < least)) {
        return;
    }
    line->residual_sd = least;
    line->slope_error = fmax(line->slope_error, least * f->slope_unit);
    line->intercept_error = fmax(line->intercept_error, least * f->intercept_unit);
}

/* What the line says at its highest: rounding leaves residuals in proportion to it. */
static double magnitude(const fitting *f)
{
    double most = fabs(f->line.slope);
    for (int i = 0; i < f->points->count && f->line.kind != HW_LINE_RATIOS; i++) {
        most = i == 0 ? fabs(f->points->y[i]) : fmax(most, fabs(f->points->y[i]));
    }
    return most;
}

/* The farthest point, judged by the spread of all others: an outlier does not hide itself. */
static void find_outlier(fitting *f)
{
    hw_line *line = &f->line;
    int n = f->points->count;
    if (n < LEAST_FOR_OUTLIERS || line->freedom < 2 || !(line->residual_sd > 0)) {
        return;
    }
    double squares = line->residual_sd * line->residual_sd * line->freedom;
    double bound = hw_line_t(1 - (1 - LEVEL) / n, line->freedom - 1);
    double least = ROUNDING * magnitude(f);
    for (int i = 0; i < n; i++) {
        double weight = f->weights != NULL ? f->weights[i] : 1;
        double slack = 1 - f->leverage[i];
        if (!(fabs(line->residuals[i]) > least) || off(f, i) < f->points->least_off) {
            continue; /* so is one that fixes the line alone: its slack is 0 */
        }
        double own = weight * line->residuals[i] * line->residuals[i] / slack;
        double others = (squares - own) / (line->freedom - 1);
        double size = others > 0 ? fmin(sqrt(own / others), MOST_SIZE) : MOST_SIZE;
        if (size > bound && size > line->outlier_size) {
            line->outlier = i;
            line->outlier_size = size;
        }
    }
}

hw_status hw_line_fit(
    const hw_points *points, hw_line_kind kind, hw_arena *arena, hw_line *out, hw_err *err)
{
    static hw_status (*const fits[])(fitting *) = {
        [HW_LINE_RATIOS] = fit_ratios,
        [HW_LINE_FREE] = fit_free,
        [HW_LINE_ZERO] = fit_zero,
        [HW_LINE_ROBUST] = fit_robust,
    };
    bool sloped = kind == HW_LINE_FREE || kind == HW_LINE_ROBUST;
    if (sloped && !differ(points->x, points->count)) {
        return hw_err_set(err, HW_ERR_MISSING, "%s",
            "a line needs places with at least two different counts; measure over more or fewer "
            "too, or leave `fit` out");
    }
    size_t n = (size_t)points->count;
    fitting f = { .points = points,
        .line = { .kind = kind,
            .outlier = -1,
            .residuals = hw_arena_get(arena, n, sizeof(double)) },
        .leverage = hw_arena_get(arena, n, sizeof(double)),
        .arena = arena,
        .err = err };
    if (f.line.residuals == NULL || f.leverage == NULL) {
        return no_memory(err);
    }
    hw_status status = fits[kind](&f);
    if (status == HW_OK && kind != HW_LINE_ROBUST) {
        find_outlier(&f);
    }
    if (status == HW_OK) {
        keep_reading_error(&f);
        *out = f.line;
    }
    return status;
}
