/* Edges: where they lie, their lengths and the area between them, curves by GSL.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_interp.h>
#include <math.h>
#include <string.h>

#include "core/edge.h"

/* ---- Splines: where an edge lies ---- */

/* Points that one spline runs through: all ways between them have one curve. */
typedef struct {
    gsl_interp *interp;
    double up_cm[HW_EDGE_MOST_POINTS], across_cm[HW_EDGE_MOST_POINTS];
    int first, last; /* points of the edge */
} bend;

static const gsl_interp_type *type_of(hw_curve curve)
{
    return curve == HW_CURVE_NATURAL ? gsl_interp_cspline : gsl_interp_steffen;
}

/* The last point of the spline that begins at a point; the next point where the way is straight. */
static int end_of(const hw_edge_line *edge, int first)
{
    int last = first + 1;
    hw_curve curve = edge->points[last].curve;
    while (curve != HW_CURVE_STRAIGHT && last + 1 < edge->count &&
           edge->points[last + 1].curve == curve) {
        last++;
    }
    return last;
}

/* The only call through which GSL takes memory for a spline. A straight stretch needs none: its
 * `interp` stays NULL. */
static hw_status open_bend(const hw_edge_line *edge, int first, bend *out)
{
    *out = (bend){ .first = first, .last = end_of(edge, first) };
    size_t size = 0;
    for (int i = first; i <= out->last; i++, size++) {
        out->up_cm[size] = edge->points[i].up_cm;
        out->across_cm[size] = edge->points[i].across_cm;
    }
    if (size < 3) {
        return HW_OK;
    }
    out->interp = gsl_interp_alloc(type_of(edge->points[out->last].curve), size);
    if (out->interp == NULL) {
        return HW_ERR_NOMEM;
    }
    if (gsl_interp_init(out->interp, out->up_cm, out->across_cm, size) != GSL_SUCCESS) {
        gsl_interp_free(out->interp);
        out->interp = NULL;
        return HW_ERR_INTERNAL;
    }
    return HW_OK;
}

/* Along one way, curved or straight; a way that steps across ends where it leads to. */
static hw_status across_at(const hw_edge_line *edge, const bend *b, double up_cm, double *out_cm)
{
    if (b->interp != NULL) {
        int status = gsl_interp_eval_e(b->interp, b->up_cm, b->across_cm, up_cm, NULL, out_cm);
        return status == GSL_SUCCESS ? HW_OK : HW_ERR_INTERNAL;
    }
    const hw_outline_point *from = &edge->points[b->first];
    const hw_outline_point *to = &edge->points[b->last];
    double rise_cm = to->up_cm - from->up_cm;
    double part = rise_cm > 0 ? (up_cm - from->up_cm) / rise_cm : 1;
    *out_cm = from->across_cm + part * (to->across_cm - from->across_cm);
    return HW_OK;
}

hw_status hw_edge_at(const hw_edge_line *edge, const double *up_cm, int count, double *across_cm)
{
    const hw_outline_point *points = edge->points;
    assert(edge->count >= 2);
    double top_cm = points[edge->count - 1].up_cm;
    hw_status status = HW_OK;
    for (int first = 0; first + 1 < edge->count && status == HW_OK;) {
        bend b = { 0 };
        status = open_bend(edge, first, &b);
        for (int i = 0; i < count && status == HW_OK; i++) {
            if (up_cm[i] >= points[b.first].up_cm && up_cm[i] < points[b.last].up_cm) {
                status = across_at(edge, &b, up_cm[i], &across_cm[i]);
            }
        }
        first = b.last;
        gsl_interp_free(b.interp); /* NULL is allowed */
    }
    for (int i = 0; i < count && status == HW_OK; i++) {
        if (up_cm[i] >= top_cm) {
            across_cm[i] = points[edge->count - 1].across_cm;
        } else if (up_cm[i] < points[0].up_cm) {
            across_cm[i] = points[0].across_cm;
        }
    }
    return status;
}

/* ---- Lengths and areas ---- */

enum { MOST_PARTS = 200 }; /* of a curve, in adaptive integration */

/* The only call through which GSL takes memory for an integral. */
static hw_status open_room(gsl_integration_workspace **out)
{
    *out = gsl_integration_workspace_alloc(MOST_PARTS);
    return *out == NULL ? HW_ERR_NOMEM : HW_OK;
}

/* cm of edge for each cm of height. */
static double stretch_at(double up_cm, void *context)
{
    const bend *b = context;
    double slope = 0;
    int status = gsl_interp_eval_deriv_e(b->interp, b->up_cm, b->across_cm, up_cm, NULL, &slope);
    return status == GSL_SUCCESS ? hypot(1, slope) : NAN;
}

/* A curved way, from knot to knot, where it is smooth. */
static hw_status curve_length(bend *b, int way, gsl_integration_workspace *room, double *out_cm)
{
    gsl_function along = { .function = stretch_at, .params = b };
    double error = 0;
    int status = gsl_integration_qag(&along, b->up_cm[way], b->up_cm[way + 1], 0, 1e-9, MOST_PARTS,
        GSL_INTEG_GAUSS31, room, out_cm, &error);
    bool good = status == GSL_SUCCESS || status == GSL_EROUND;
    return good && error <= 1e-7 * *out_cm ? HW_OK : HW_ERR_INTERNAL;
}

/* The length of each way of one bend. */
static hw_status bend_ways(const hw_edge_line *edge, bend *b, double *ways_cm)
{
    gsl_integration_workspace *room = NULL;
    hw_status status = b->interp == NULL ? HW_OK : open_room(&room);
    for (int i = b->first; i < b->last && status == HW_OK; i++) {
        const hw_outline_point *from = &edge->points[i];
        const hw_outline_point *to = &edge->points[i + 1];
        double cm = hypot(to->across_cm - from->across_cm, to->up_cm - from->up_cm);
        status = room == NULL ? HW_OK : curve_length(b, i - b->first, room, &cm);
        ways_cm[i + 1] = to->open ? 0 : cm;
    }
    gsl_integration_workspace_free(room); /* NULL is allowed */
    return status;
}

hw_status hw_edge_ways(const hw_edge_line *edge, double *ways_cm)
{
    hw_status status = HW_OK;
    assert(edge->count <= HW_EDGE_MOST_POINTS);
    ways_cm[0] = 0;
    for (int first = 0; first + 1 < edge->count && status == HW_OK;) {
        bend b = { 0 };
        status = open_bend(edge, first, &b);
        if (status == HW_OK) {
            status = bend_ways(edge, &b, ways_cm);
        }
        first = b.last;
        gsl_interp_free(b.interp);
    }
    return status;
}

hw_status hw_edge_length(const hw_edge_line *edge, const char *stretch, double *out_cm)
{
    double ways_cm[HW_EDGE_MOST_POINTS] = { 0 };
    double sum_cm = 0;
    hw_status status = hw_edge_ways(edge, ways_cm);
    for (int i = 1; i < edge->count && status == HW_OK; i++) {
        bool counts = stretch == NULL || strcmp(edge->points[i].stretch, stretch) == 0;
        sum_cm += counts ? ways_cm[i] : 0;
    }
    if (status == HW_OK) {
        *out_cm = sum_cm;
    }
    return status;
}

/* Between the middle and an edge, below 0 left of the middle: the integral of across over up. */
hw_status hw_edge_area(const hw_edge_line *edge, double *out_cm2)
{
    double sum_cm2 = 0;
    hw_status status = HW_OK;
    for (int first = 0; first + 1 < edge->count && status == HW_OK;) {
        bend b = { 0 };
        status = open_bend(edge, first, &b);
        const hw_outline_point *from = &edge->points[b.first];
        const hw_outline_point *to = &edge->points[b.last];
        double cm2 = (to->up_cm - from->up_cm) * (from->across_cm + to->across_cm) / 2;
        if (status == HW_OK && b.interp != NULL) {
            int result = gsl_interp_eval_integ_e(
                b.interp, b.up_cm, b.across_cm, from->up_cm, to->up_cm, NULL, &cm2);
            status = result == GSL_SUCCESS ? HW_OK : HW_ERR_INTERNAL;
        }
        sum_cm2 += cm2;
        first = b.last;
        gsl_interp_free(b.interp);
    }
    if (status == HW_OK) {
        *out_cm2 = sum_cm2;
    }
    return status;
}

const char *hw_edge_name(hw_edge edge)
{
    static const char *const names[HW_EDGE_COUNT] = {
        [HW_EDGE_LEFT] = "left",
        [HW_EDGE_RIGHT] = "right",
        [HW_EDGE_NECK_LEFT] = "neck left",
        [HW_EDGE_NECK_RIGHT] = "neck right",
        [HW_EDGE_TOP] = "top",
    };
    return names[edge];
}

hw_status hw_edge_fault(hw_status status, hw_err *err)
{
    return hw_err_set(err, status, "%s",
        status == HW_ERR_NOMEM ? "there is not enough memory for this plan"
                               : "the length of an edge could not be found");
}
