/* An edge of a piece as a row of spots close enough to draw.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/trace.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum { BETWEEN = 15 }; /* spots between two points of a curve */

static const double close_cm = 0.05;
static const double sharpest = 0.5;    /* of the cosine at which a mitre still reaches its point */
static const double still_away = 0.98; /* of what a corner should be */
static const double tiny_cm = 1e-9;    /* a way so short has no direction */

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
        spots[i] = (hw_trace_spot){ across_cm[i], up_cm[i], end->stretch, end->open };
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
        spots[count++] =
            (hw_trace_spot){ point->across_cm, point->up_cm, point->stretch, point->open };
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

/* Whether a strip runs along the way that leads to a spot. */
static bool runs(const hw_trace *trace, const hw_trace_strip *strip, int spot)
{
    const hw_trace_spot *to = &trace->spots[spot];
    return !to->open && (strip->stretch == NULL || strcmp(strip->stretch, to->stretch) == 0);
}

typedef struct {
    double across, up;
} direction;

/* At right angles to the way between two spots, to the strip's side; 0 and 0 for no way. */
static direction outwards(const hw_trace_spot *from, const hw_trace_spot *to, bool at_left)
{
    double across = to->across_cm - from->across_cm;
    double up = to->up_cm - from->up_cm;
    double length = hypot(across, up);
    if (length < tiny_cm) {
        return (direction){ 0, 0 };
    }
    return at_left ? (direction){ -up / length, across / length }
                   : (direction){ up / length, -across / length };
}

/* A corner of the strip's outer side, and how far it should be from the edge. */
typedef struct {
    hw_trace_spot spot;
    double away_cm;
} corner;

/* The one beside a spot between two ways, of which one may be none. */
static corner corner_at(
    const hw_trace_spot *spot, direction before, direction after, double depth_cm)
{
    direction sum = { before.across + after.across, before.up + after.up };
    double length = hypot(sum.across, sum.up);
    corner out = { *spot, 0 };
    if (length > tiny_cm) {
        const direction *one = hypot(after.across, after.up) > tiny_cm ? &after : &before;
        double cosine = (sum.across * one->across + sum.up * one->up) / length;
        double reach_cm = depth_cm / fmax(cosine, sharpest);
        out.spot.across_cm += sum.across / length * reach_cm;
        out.spot.up_cm += sum.up / length * reach_cm;
        out.away_cm = cosine * reach_cm;
    }
    return out;
}

/* How far a spot is from the straight way between two others. */
static double distance_cm(const hw_trace_spot *spot, const hw_trace_spot *from)
{
    double across = from[1].across_cm - from->across_cm;
    double up = from[1].up_cm - from->up_cm;
    double square = across * across + up * up;
    double x = spot->across_cm - from->across_cm;
    double y = spot->up_cm - from->up_cm;
    double share = square > tiny_cm ? (x * across + y * up) / square : 0;
    share = fmin(fmax(share, 0), 1);
    return hypot(x - share * across, y - share * up);
}

/* Whether a corner lies where another part of the edge is nearer: inside a bend that is narrower
 * than the strip is deep. */
static bool is_inside(const corner *c, const hw_trace_spot *spots, int count)
{
    for (int i = 0; i + 1 < count; i++) {
        if (distance_cm(&c->spot, &spots[i]) < still_away * c->away_cm) {
            return true;
        }
    }
    return false;
}

/* Whether a strip runs along any of the ways that lead to some spots. */
static bool runs_among(const hw_trace *trace, const hw_trace_strip *strip, int from, int to)
{
    bool found = false;
    for (int i = from; i < to; i++) {
        found = found || runs(trace, strip, i);
    }
    return found;
}

/* Move on from a spot, straight away from others at its side: `step` leads to them. */
static hw_trace_spot straight_on(const hw_trace_spot *end, int step, int count, double by_cm)
{
    hw_trace_spot moved = *end;
    for (int i = 1; i < count; i++) {
        const hw_trace_spot *from = end + i * step;
        double length_cm = hypot(end->across_cm - from->across_cm, end->up_cm - from->up_cm);
        if (length_cm > tiny_cm) {
            moved.across_cm += (end->across_cm - from->across_cm) / length_cm * by_cm;
            moved.up_cm += (end->up_cm - from->up_cm) / length_cm * by_cm;
            break;
        }
    }
    return moved;
}

/* The spots along which a strip runs, and past them where it runs on. */
static int gather(
    const hw_trace *trace, const hw_trace_strip *strip, int first, int count, hw_trace_spot *out)
{
    const hw_trace_spot *edge = &trace->spots[first];
    int last = first + count - 1;
    int found = 0;
    if (strip->before_cm > 0 && !runs_among(trace, strip, 1, first + 1)) {
        out[found++] = straight_on(edge, 1, count, strip->before_cm);
    }
    for (int i = 0; i < count; i++) {
        out[found++] = edge[i];
    }
    if (strip->past_cm > 0 && !runs_among(trace, strip, last + 1, trace->count)) {
        out[found++] = straight_on(&edge[count - 1], -1, count, strip->past_cm);
    }
    return found;
}

hw_status hw_trace_along(
    const hw_trace *trace, const hw_trace_strip *strip, int *next, hw_arena *arena, hw_trace *out)
{
    int first = *next;
    while (first + 1 < trace->count && !runs(trace, strip, first + 1)) {
        first++;
    }
    int last = first;
    while (last + 1 < trace->count && runs(trace, strip, last + 1)) {
        last++;
    }
    int count = last > first ? last - first + 1 : 0;
    hw_trace_spot *spots = hw_arena_get(arena, 2 * (size_t)count + 4, sizeof *spots);
    if (spots == NULL) {
        return HW_ERR_NOMEM;
    }
    count = count > 0 ? gather(trace, strip, first, count, spots) : 0;
    int found = count;
    for (int i = count; i-- > 0;) {
        direction none = { 0, 0 };
        direction before = i > 0 ? outwards(&spots[i - 1], &spots[i], strip->at_left) : none;
        direction after = i + 1 < count ? outwards(&spots[i], &spots[i + 1], strip->at_left) : none;
        corner c = corner_at(&spots[i], before, after, strip->depth_cm);
        if (!is_inside(&c, spots, count)) {
            spots[found++] = c.spot;
        }
    }
    *next = last;
    *out = (hw_trace){ spots, found };
    return HW_OK;
}
