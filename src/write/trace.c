/* An edge of a piece as a row of spots close enough to draw.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/trace.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum { BETWEEN = 15 }; /* spots between two points of a curve */

static const double close_cm = 0.05;

/* A way needs spots between its ends where it is a curve that rises. */
static bool bends(const hw_outline_point *to)
{
    return to->curve != HW_CURVE_STRAIGHT && to->up_cm > (to - 1)->up_cm;
}

static hw_status follow_curve(const hw_edge_line *edge, int to, hw_trace_spot *spots)
{
    const hw_outline_point *end = &edge->points[to];
    double low_cm = (end - 1)->up_cm;
    double up_cm[BETWEEN];
    double across_cm[BETWEEN];
    for (int i = 0; i < BETWEEN; i++) {
        up_cm[i] = low_cm + (end->up_cm - low_cm) * (i + 1) / (BETWEEN + 1);
    }
    hw_status status = hw_edge_at(edge, up_cm, BETWEEN, across_cm);
    for (int i = 0; i < BETWEEN && status == HW_OK; i++) {
        spots[i] = (hw_trace_spot){ across_cm[i], up_cm[i], end->stretch };
    }
    return status;
}

hw_status hw_trace_edge(const hw_edge_line *edge, hw_arena *arena, hw_trace *out)
{
    size_t most = (size_t)edge->count * (BETWEEN + 1);
    hw_trace_spot *spots = hw_arena_get(arena, most, sizeof *spots);
    if (spots == NULL) {
        return HW_ERR_NOMEM;
    }
    int count = 0;
    for (int i = 0; i < edge->count; i++) {
        const hw_outline_point *point = &edge->points[i];
        if (i > 0 && bends(point)) {
            hw_status status = follow_curve(edge, i, &spots[count]);
            if (status != HW_OK) {
                return status;
            }
            count += BETWEEN;
        }
        spots[count++] = (hw_trace_spot){ point->across_cm, point->up_cm, point->stretch };
    }
    *out = (hw_trace){ spots, count };
    return HW_OK;
}

double hw_trace_across_cm(const hw_trace *trace, double up_cm)
{
    assert(trace->count > 0);
    const hw_trace_spot *spots = trace->spots;
    int i = 0;
    while (i < trace->count && spots[i].up_cm < up_cm) {
        i++;
    }
    if (i == 0 || i == trace->count) {
        return spots[i == 0 ? 0 : trace->count - 1].across_cm;
    }
    double share = (up_cm - spots[i - 1].up_cm) / (spots[i].up_cm - spots[i - 1].up_cm);
    return spots[i - 1].across_cm + share * (spots[i].across_cm - spots[i - 1].across_cm);
}

bool hw_trace_ends(const hw_trace *trace, int spot)
{
    return spot + 1 == trace->count ||
           strcmp(trace->spots[spot].stretch, trace->spots[spot + 1].stretch) != 0;
}

bool hw_trace_mirrors(const hw_trace *a, const hw_trace *b)
{
    for (int i = 0; i < a->count && a->count == b->count; i++) {
        const hw_trace_spot *left = &a->spots[i];
        const hw_trace_spot *right = &b->spots[i];
        if (fabs(left->across_cm + right->across_cm) > close_cm ||
            fabs(left->up_cm - right->up_cm) > close_cm ||
            strcmp(left->stretch, right->stretch) != 0) {
            return false;
        }
    }
    return a->count == b->count;
}
