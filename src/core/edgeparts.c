/* Edges parted where the way of picking up changes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/edgeparts.h"

#include <math.h>
#include <string.h>

#include "core/num.h"

static const double hair_cm = 1e-6;
static const double sloping = 0.25; /* cm across for each cm up; own choice */
static const double alike = 0.02;   /* cm of edge for each cm up: the same slope; own choice */

typedef struct {
    const hw_draft *draft;
    hw_edge edge;
    const hw_outline_point *points;
    const hw_gauge *main;
    int face_rows;
    hw_pickup_edge *parts;
    double from_cm[HW_PICKUP_MOST_PARTS], to_cm[HW_PICKUP_MOST_PARTS]; /* heights of each */
    int count;
} parting;

static bool of_neck(hw_edge edge)
{
    return edge == HW_EDGE_NECK_LEFT || edge == HW_EDGE_NECK_RIGHT;
}

static hw_pickup_way level_way(const parting *p, int to)
{
    if (of_neck(p->edge)) {
        return to == 1 ? HW_PICKUP_MIDDLE : HW_PICKUP_BOUND_OFF;
    }
    bool rightwards = p->points[to].across_cm > p->points[to - 1].across_cm;
    return rightwards == (p->edge == HW_EDGE_RIGHT) ? HW_PICKUP_CAST_ON : HW_PICKUP_BOUND_OFF;
}

static hw_pickup_way way_of(const parting *p, int to)
{
    const hw_outline_point *a = &p->points[to - 1];
    const hw_outline_point *b = &p->points[to];
    double rise_cm = b->up_cm - a->up_cm;
    if (rise_cm <= hair_cm) {
        return level_way(p, to);
    }
    if (b->curve != HW_CURVE_STRAIGHT) {
        return HW_PICKUP_CURVE;
    }
    return fabs(b->across_cm - a->across_cm) > sloping * rise_cm ? HW_PICKUP_SLOPE
                                                                 : HW_PICKUP_STRAIGHT;
}

static bool climbs(hw_pickup_way way)
{
    return way == HW_PICKUP_CURVE || way == HW_PICKUP_SLOPE || way == HW_PICKUP_STRAIGHT;
}

/* Whether a way goes on as the last part did. */
static bool goes_on(const parting *p, hw_pickup_way way, double length_cm, double rise_cm)
{
    const hw_pickup_edge *last = &p->parts[p->count - 1];
    if (last->way != way) {
        return false;
    }
    if (way != HW_PICKUP_SLOPE && way != HW_PICKUP_STRAIGHT) {
        return true;
    }
    double last_cm = p->to_cm[p->count - 1] - p->from_cm[p->count - 1];
    return fabs(last->length_cm / last_cm - length_cm / rise_cm) < alike;
}

static void add_way(parting *p, int to, double length_cm)
{
    double low_cm = p->points[to - 1].up_cm;
    double high_cm = p->points[to].up_cm;
    hw_pickup_way way = way_of(p, to);
    bool more = p->count > 0 && goes_on(p, way, length_cm, high_cm - low_cm);
    if (!more && p->count == HW_PICKUP_MOST_PARTS) {
        p->parts[p->count - 1].way = HW_PICKUP_CURVE;
        more = true;
    }
    if (!more) {
        p->from_cm[p->count] = low_cm;
        p->parts[p->count++] = (hw_pickup_edge){ .way = way };
    }
    p->parts[p->count - 1].length_cm += length_cm;
    p->to_cm[p->count - 1] = high_cm;
}

/* Stitches that a row takes off the edge, or adds to it. */
static int change_in(const parting *p, int row)
{
    const hw_shape *shape = &p->draft->shape;
    hw_side side = p->edge == HW_EDGE_LEFT || p->edge == HW_EDGE_NECK_LEFT ? HW_LEFT : HW_RIGHT;
    if (!of_neck(p->edge)) {
        int change = shape->inset_sts[side][row] - shape->inset_sts[side][row - 1];
        return change < 0 ? -change : change;
    }
    const int *halves = shape->neck_halves[side];
    return halves == NULL || row <= shape->neck_row ? 0 : (halves[row] - halves[row - 1]) / 2;
}

/* The largest group within two rows of a height: what the two edges bind off is a row apart. */
static int group_at(const parting *p, double up_cm)
{
    const double *low_cm = p->draft->low_cm;
    int most = 0;
    for (int row = 1; row < p->draft->shape.rows; row++) {
        double reach_cm = 2 * (low_cm[row + 1] - low_cm[row]) + hair_cm;
        int change = fabs(low_cm[row] - up_cm) <= reach_cm ? change_in(p, row) : 0;
        most = change > most ? change : most;
    }
    return most;
}

static int level_sts(const parting *p, int at)
{
    const hw_shape *shape = &p->draft->shape;
    const hw_pickup_edge *part = &p->parts[at];
    int drawn = hw_num_nearest(hw_gauge_sts(p->main, part->length_cm));
    if (part->way == HW_PICKUP_MIDDLE) {
        bool parted = shape->neck_halves[HW_LEFT] != NULL && shape->neck_row < shape->rows;
        return parted ? shape->neck_halves[HW_LEFT][shape->neck_row] : 2 * drawn;
    }
    int group = group_at(p, p->from_cm[at]);
    return group > 0 ? group : drawn;
}

/* Rows of the piece that lie below a height, the face's too: a row belongs where its middle is. */
static int rows_to(const parting *p, double up_cm)
{
    const double *low_cm = p->draft->low_cm;
    if (up_cm < low_cm[0] - hair_cm) {
        return hw_num_nearest(p->face_rows * (up_cm / low_cm[0]));
    }
    int row = 0;
    while (row < p->draft->shape.rows && low_cm[row] + low_cm[row + 1] < 2 * (up_cm + hair_cm)) {
        row++;
    }
    return p->face_rows + row;
}

/* What an edge has level at the very top is in the last row, but it is not the top's. Held stitches
 * are knitted again in that row and are the edge's too. */
static int beside_top(const parting *p, hw_edge at)
{
    const hw_edge_line *edge = &p->draft->outline.edges[at];
    int held = of_neck(at) ? 0 : p->draft->shape.held_sts[at == HW_EDGE_LEFT ? HW_LEFT : HW_RIGHT];
    if (held > 0) {
        return held;
    }
    double level_cm = 0;
    for (int i = edge->count - 1; i > 0; i--) {
        const hw_outline_point *from = &edge->points[i - 1];
        if (from->up_cm < p->draft->outline.top_cm - hair_cm) {
            break;
        }
        level_cm += fabs(edge->points[i].across_cm - from->across_cm);
    }
    return hw_num_nearest(hw_gauge_sts(p->main, level_cm));
}

/* Stitches of the piece's last row that its top has. */
static int top_sts(const parting *p)
{
    int sts = hw_shape_top_sts(&p->draft->shape);
    for (int i = 0; i < HW_EDGE_TOP; i++) {
        sts -= beside_top(p, (hw_edge)i);
    }
    return sts > 0 ? sts : 0;
}

static void count_parts(parting *p)
{
    for (int i = 0; i < p->count; i++) {
        hw_pickup_edge *part = &p->parts[i];
        part->of_sts = !climbs(part->way);
        part->count =
            part->of_sts ? level_sts(p, i) : rows_to(p, p->to_cm[i]) - rows_to(p, p->from_cm[i]);
        part->count = part->count <= HW_MAX_ROWS ? part->count : 0; /* past that no ratio is told */
    }
}

/* What is bound off at once takes up as much of the edge as it has stitches, which may be more or
 * fewer than are drawn level; the part beside it has the rest. */
static void take_from_beside(parting *p, int at)
{
    hw_pickup_edge *part = &p->parts[at];
    hw_pickup_edge *beside = &p->parts[at + 1 < p->count ? at + 1 : at - 1];
    double sts = part->way == HW_PICKUP_MIDDLE ? part->count / 2.0 : part->count;
    double more_cm = sts / (p->main->sts_per_10cm / 10) - part->length_cm;
    if (part->of_sts && !beside->of_sts && more_cm < beside->length_cm / 2) {
        part->length_cm += more_cm;
        beside->length_cm -= more_cm;
    }
}

static hw_pickup_edge sum_up(const parting *p)
{
    hw_pickup_edge all = { 0 };
    if (p->count == 1) {
        return p->parts[0];
    }
    for (int i = 0; i < p->count; i++) {
        all.length_cm += p->parts[i].length_cm;
    }
    all.parts = p->parts;
    all.part_count = p->count;
    return all;
}

hw_status hw_edgeparts_find(const hw_edgeparts_task *task, const hw_edge_part *part,
    hw_pickup_edge *parts, hw_pickup_edge *out)
{
    const hw_edge_line *edge = &task->draft->outline.edges[part->edge];
    parting p = { .draft = task->draft,
        .edge = part->edge,
        .points = edge->points,
        .main = task->main,
        .face_rows = task->face_rows,
        .parts = parts };
    double ways_cm[HW_EDGE_MOST_POINTS] = { 0 };
    double top_cm = 0;
    hw_status status = edge->count > 0 ? hw_edge_ways(edge, ways_cm) : HW_OK;
    for (int i = 1; i < edge->count && status == HW_OK; i++) {
        bool there = part->stretch == NULL || strcmp(edge->points[i].stretch, part->stretch) == 0;
        if (there && part->edge == HW_EDGE_TOP) {
            top_cm += ways_cm[i];
        } else if (there && ways_cm[i] > hair_cm) {
            add_way(&p, i, ways_cm[i]);
        }
    }
    if (status != HW_OK) {
        return status;
    }
    count_parts(&p);
    for (int i = 0; i < p.count && p.count > 1; i++) {
        take_from_beside(&p, i);
    }
    *out = sum_up(&p);
    if (top_cm > 0) {
        *out = (hw_pickup_edge){ .length_cm = top_cm, .count = top_sts(&p), .of_sts = true };
    }
    return HW_OK;
}
