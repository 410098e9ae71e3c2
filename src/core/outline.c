/* A piece's edges in one size from what the garment draws.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/outline.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* A length below which two places are one: rules that come to the same differ by rounding alone. */
#define SAME_CM 1e-9

enum {
    TOP_POINTS = 4,
    LOOKS = 32, /* places along a curve at which edges are compared */
};

static bool same(double a_cm, double b_cm)
{
    return fabs(a_cm - b_cm) <= SAME_CM;
}

/* ---- From corners to points ---- */

/* An edge on its way from the file's corners. */
typedef struct {
    const hw_outline_task *task;
    hw_arena *arena;
    hw_err *err;
    hw_edge edge;
    hw_outline_point *points; /* [HW_EDGE_MOST_POINTS] */
    int count;
    hw_outline_point corners[2]; /* the last two as they are drawn, the older one first */
} drawing;

/* An edge by the name that it has in the file: one that mirrors the other is not drawn there. */
static const char *edge_in_file(const drawing *d)
{
    const hw_outline_rule *rule = d->task->piece->outline;
    if (d->edge == HW_EDGE_NECK_LEFT || d->edge == HW_EDGE_NECK_RIGHT) {
        return "neck";
    }
    bool drawn = rule->mirrored || rule->sides[d->edge].count > 0;
    hw_edge other = d->edge == HW_EDGE_LEFT ? HW_EDGE_RIGHT : HW_EDGE_LEFT;
    return hw_edge_name(drawn ? d->edge : other);
}

/* Refused, with the fault behind the words for the place: "`back`, size 92: the right edge's ...".
 */
static hw_status refuse(const drawing *d, const hw_outline_point *where, const char *fault)
{
    const char *stretch = where->stretch;
    bool named = stretch[0] != '\0';
    hw_status status = hw_err_set(d->err, HW_ERR_RANGE, "`%s`, size %s: the edge `%s`%s%s%s %s",
        d->task->piece->name, d->task->finished->names[d->task->size], edge_in_file(d),
        named ? ", stretch `" : "", stretch, named ? "`," : "", fault);
    return hw_err_place_in_garment(d->err, status, where->line, 0);
}

/* Where a corner lies as it is drawn, `sign` -1 where it is mirrored. */
static hw_status evaluate(
    const drawing *d, const hw_corner *corner, double sign, hw_outline_point *out)
{
    hw_rule_place place = { .finished = d->task->finished, .size = d->task->size };
    double across_cm = 0;
    double up_cm = 0;
    hw_status status = hw_rule_value(&corner->across, &place, &across_cm, NULL, d->err);
    if (status == HW_OK) {
        status = hw_rule_value(&corner->up, &place, &up_cm, NULL, d->err);
    }
    if (status != HW_OK) {
        return hw_err_place_in_garment(d->err, status, corner->line, 0);
    }
    *out = (hw_outline_point){ .across_cm = sign * across_cm,
        .up_cm = up_cm,
        .curve = corner->curve,
        .stretch = corner->stretch,
        .line = corner->line };
    if (!(fabs(across_cm) <= HW_MAX_CM && up_cm >= 0 && up_cm <= HW_MAX_CM)) {
        return refuse(d, out, "leads below the fold or out of all measure: correct its corner");
    }
    return HW_OK;
}

/* Each corner as it is drawn: one that leads back over the step before it encloses nothing. */
static hw_status check_step(drawing *d, const hw_outline_point *corner)
{
    const hw_outline_point *from = &d->corners[0];
    const hw_outline_point *step = &d->corners[1];
    double out_cm = step->across_cm - from->across_cm;
    double back_cm = corner->across_cm - step->across_cm;
    bool level = same(from->up_cm, step->up_cm) && same(step->up_cm, corner->up_cm);
    if (level && !same(out_cm, 0) && !same(back_cm, 0) && (out_cm > 0) != (back_cm > 0)) {
        return refuse(d, corner,
            "leads back over the step before it: leave one of the two corners out, or let `up` "
            "rise");
    }
    d->corners[0] = *step;
    d->corners[1] = *corner;
    return HW_OK;
}

/* Before the first corner. */
static void begin_steps(drawing *d, double across_cm, double up_cm)
{
    d->corners[1] = (hw_outline_point){ .across_cm = across_cm, .up_cm = up_cm };
    d->corners[0] = d->corners[1];
}

/* One more point. Heights that differ by rounding alone become the same height. */
static hw_status append(drawing *d, hw_outline_point point)
{
    const hw_outline_point *before = &d->points[d->count - 1];
    if (same(point.up_cm, before->up_cm)) {
        point.up_cm = before->up_cm;
        if (!same(point.across_cm, before->across_cm) && point.curve != HW_CURVE_STRAIGHT) {
            return refuse(d, &point,
                "is a curve that begins and ends at one height: leave `curve` out there, or let "
                "`up` rise");
        }
        point.curve = HW_CURVE_STRAIGHT;
    }
    if (point.up_cm < before->up_cm) {
        return refuse(d, &point, "turns down: `up` must never fall from one corner to the next");
    }
    assert(d->count < HW_EDGE_MOST_POINTS);
    d->points[d->count++] = point;
    return HW_OK;
}

/* Before a way that leaves the straight run from the hem: the edge runs up the hem's face first. */
static hw_status rise_to_face(drawing *d, const hw_outline_point *next)
{
    double face_cm = d->task->face_cm;
    const hw_outline_point *last = &d->points[d->count - 1];
    bool straight_up = same(next->across_cm, last->across_cm) && next->curve == HW_CURVE_STRAIGHT;
    if (straight_up || last->up_cm >= face_cm - SAME_CM) {
        return HW_OK;
    }
    if (next->up_cm < face_cm - SAME_CM) {
        return refuse(d, next,
            "moves across within the hem, where the edge runs straight up: move the corner above "
            "the hem");
    }
    return append(d, (hw_outline_point){ .across_cm = last->across_cm,
                         .up_cm = face_cm,
                         .curve = HW_CURVE_STRAIGHT,
                         .stretch = next->stretch,
                         .line = next->line });
}

/* Left and right: which of the two the file draws for this edge, and whether it is turned over. */
static const hw_edge_rule *drawn_side(const hw_outline_task *task, hw_side side, double *sign)
{
    const hw_outline_rule *rule = task->piece->outline;
    hw_side other = side == HW_LEFT ? HW_RIGHT : HW_LEFT;
    hw_side from = rule->mirrored ? other : side;
    if (rule->sides[from].count == 0) {
        from = from == HW_LEFT ? HW_RIGHT : HW_LEFT;
    }
    *sign = from == side ? 1 : -1;
    return &rule->sides[from];
}

static hw_status draw_side(drawing *d, hw_side side)
{
    const hw_outline_task *task = d->task;
    double sign = 0;
    const hw_edge_rule *rule = drawn_side(task, side, &sign);
    double outward = side == HW_LEFT ? -0.5 : 0.5;
    double drawn_cm = outward * task->main_cm;
    double knitted_cm = outward * task->width_cm;
    assert(rule->count > 0 && rule->count <= HW_MAX_CORNERS);
    d->points[d->count++] =
        (hw_outline_point){ .across_cm = knitted_cm, .stretch = "", .line = rule->corners[0].line };
    bool at_hem = true;
    begin_steps(d, drawn_cm, 0);
    for (int i = 0; i < rule->count; i++) {
        hw_outline_point point = { 0 };
        hw_status status = evaluate(d, &rule->corners[i], sign, &point);
        status = status == HW_OK ? check_step(d, &point) : status;
        at_hem = at_hem && same(point.across_cm, drawn_cm);
        point.across_cm = at_hem ? knitted_cm : point.across_cm;
        if (status == HW_OK) {
            status = rise_to_face(d, &point);
        }
        if (status == HW_OK) {
            status = append(d, point);
        }
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

/* Right of the middle for both: the left one is turned over in the end. */
static hw_status draw_neck(drawing *d)
{
    const hw_edge_rule *rule = &d->task->piece->outline->neck;
    assert(rule->count > 0 && rule->count <= HW_MAX_CORNERS);
    double sign = d->edge == HW_EDGE_NECK_LEFT ? -1 : 1;
    for (int i = 0; i < rule->count; i++) {
        hw_outline_point point = { 0 };
        hw_status status = evaluate(d, &rule->corners[i], sign, &point);
        if (status == HW_OK && i == 0) {
            d->points[d->count++] =
                (hw_outline_point){ .up_cm = point.up_cm, .stretch = "", .line = point.line };
            begin_steps(d, 0, point.up_cm);
        }
        status = status == HW_OK ? check_step(d, &point) : status;
        if (status == HW_OK) {
            status = append(d, point);
        }
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

static hw_status draw(drawing *d, hw_edge_line *out)
{
    d->points = hw_arena_get(d->arena, HW_EDGE_MOST_POINTS, sizeof *d->points);
    d->count = 0;
    if (d->points == NULL) {
        return HW_ERR_NOMEM;
    }
    bool neck = d->edge == HW_EDGE_NECK_LEFT || d->edge == HW_EDGE_NECK_RIGHT;
    hw_status status =
        neck ? draw_neck(d) : draw_side(d, d->edge == HW_EDGE_LEFT ? HW_LEFT : HW_RIGHT);
    *out = (hw_edge_line){ .points = d->points, .count = d->count };
    return status;
}

/* ---- What edges must keep to ---- */

static const hw_outline_point *end_point(const hw_edge_line *edge)
{
    return &edge->points[edge->count - 1];
}

/* All edges end at one height, and rounding does not tell them apart. */
static hw_status level_tops(drawing *d, hw_outline *outline)
{
    double top_cm = end_point(&outline->edges[HW_EDGE_LEFT])->up_cm;
    for (int i = HW_EDGE_RIGHT; i < HW_EDGE_TOP; i++) {
        const hw_edge_line *edge = &outline->edges[i];
        if (edge->count > 0 && !same(end_point(edge)->up_cm, top_cm)) {
            d->edge = (hw_edge)i;
            return refuse(d, end_point(edge),
                "ends at another height than the left edge: all edges of a piece end at one "
                "height");
        }
    }
    outline->top_cm = top_cm;
    return HW_OK;
}

/* Edges that must lie apart, and which of them is looked along first: it takes the blame. */
typedef struct {
    hw_edge left, right, first;
} neighbours;

enum { HEIGHTS = LOOKS + 2 };

/* Heights along one way at which to compare: its end, just below that, and places on a curve. */
static int heights_of(
    const hw_outline_point *from, const hw_outline_point *to, double low_cm, double *up_cm)
{
    int count = 0;
    int looks = to->curve == HW_CURVE_STRAIGHT ? 0 : LOOKS;
    for (int i = 0; i < looks; i++) {
        up_cm[count++] = from->up_cm + (to->up_cm - from->up_cm) * i / looks;
    }
    up_cm[count++] = to->up_cm - 1e-6;
    up_cm[count++] = to->up_cm;
    for (int i = 0; i < count; i++) {
        up_cm[i] = fmax(up_cm[i], low_cm);
    }
    return count;
}

/* How far two edges may pass each other unnoticed: less than any row or stitch. */
#define PASS_CM 1e-3

/* Whether two edges keep their order at some heights, with the status of looking. */
static hw_status apart(
    const hw_outline *outline, neighbours pair, const double *up_cm, int count, bool *out)
{
    double left_cm[HEIGHTS] = { 0 };
    double right_cm[HEIGHTS] = { 0 };
    hw_status status = hw_edge_at(&outline->edges[pair.left], up_cm, count, left_cm);
    if (status == HW_OK) {
        status = hw_edge_at(&outline->edges[pair.right], up_cm, count, right_cm);
    }
    *out = true;
    for (int i = 0; i < count && status == HW_OK; i++) {
        *out = *out && left_cm[i] <= right_cm[i] + PASS_CM;
    }
    return status;
}

/* A natural curve between corners that lie close together may swing out to anywhere. */
static hw_status check_swing(
    const drawing *d, const hw_edge_line *edge, int way, const double *up_cm, int count)
{
    double across_cm[HEIGHTS];
    hw_status status = hw_edge_at(edge, up_cm, count, across_cm);
    bool far = false;
    for (int k = 0; k < count && status == HW_OK; k++) {
        far = far || !(fabs(across_cm[k]) <= 2 * HW_MAX_CM);
    }
    return far ? refuse(d, &edge->points[way],
                     "swings out too far: set its corners further apart, or write `curve: "
                     "monotone`")
               : status;
}

/* Along the ways of one of the two. */
static hw_status check_along(
    drawing *d, const hw_outline *outline, neighbours pair, hw_edge which, double low_cm)
{
    static const char *const faults[HW_EDGE_COUNT] = {
        [HW_EDGE_RIGHT] = "crosses the other edge: the left edge must stay left of the right one",
        [HW_EDGE_LEFT] = "crosses the other edge: the left edge must stay left of the right one",
        [HW_EDGE_NECK_RIGHT] = "leaves the piece: a neck lies between the middle and the edge",
        [HW_EDGE_NECK_LEFT] = "leaves the piece: a neck lies between the middle and the edge",
    };
    const hw_edge_line *edge = &outline->edges[which];
    for (int i = 1; i < edge->count; i++) {
        double up_cm[HEIGHTS];
        bool good = true;
        int count = heights_of(&edge->points[i - 1], &edge->points[i], low_cm, up_cm);
        hw_status status = apart(outline, pair, up_cm, count, &good);
        if (status != HW_OK) {
            return status;
        }
        d->edge = which;
        status = check_swing(d, edge, i, up_cm, count);
        if (status != HW_OK) {
            return status;
        }
        if (!good) {
            bool neck = pair.left == HW_EDGE_NECK_RIGHT || pair.right == HW_EDGE_NECK_LEFT ||
                        pair.left == HW_EDGE_NECK_LEFT;
            return refuse(d, &edge->points[i], faults[neck ? HW_EDGE_NECK_RIGHT : HW_EDGE_RIGHT]);
        }
    }
    return HW_OK;
}

static hw_status check_order(drawing *d, const hw_outline *outline)
{
    /* a neck's own corner is the one to move; of the sides the left one often mirrors the right */
    static const neighbours pairs[] = { { HW_EDGE_LEFT, HW_EDGE_RIGHT, HW_EDGE_RIGHT },
        { HW_EDGE_NECK_LEFT, HW_EDGE_NECK_RIGHT, HW_EDGE_NECK_RIGHT },
        { HW_EDGE_NECK_RIGHT, HW_EDGE_RIGHT, HW_EDGE_NECK_RIGHT },
        { HW_EDGE_LEFT, HW_EDGE_NECK_LEFT, HW_EDGE_NECK_LEFT } };
    bool neck = outline->edges[HW_EDGE_NECK_RIGHT].count > 0;
    double low_cm = neck ? outline->neck_cm : 0;
    size_t count = neck ? sizeof pairs / sizeof pairs[0] : 1;
    hw_status status = HW_OK;
    for (size_t i = 0; i < count && status == HW_OK; i++) {
        const neighbours *pair = &pairs[i];
        double from_cm = i == 0 ? 0 : low_cm;
        hw_edge second = pair->first == pair->left ? pair->right : pair->left;
        status = check_along(d, outline, *pair, pair->first, from_cm);
        if (status == HW_OK) {
            status = check_along(d, outline, *pair, second, from_cm);
        }
    }
    return status;
}

/* How far up both edges of a neck lie on the middle line. */
static double slit_of(const hw_edge_line *neck)
{
    int last = 0;
    while (last + 1 < neck->count && same(neck->points[last + 1].across_cm, 0)) {
        last++;
    }
    return neck->points[last].up_cm - neck->points[0].up_cm;
}

static hw_status check_neck(drawing *d, hw_outline *outline)
{
    const hw_outline_point *lowest = &outline->edges[HW_EDGE_NECK_RIGHT].points[0];
    d->edge = HW_EDGE_NECK_RIGHT;
    outline->neck_cm = lowest->up_cm;
    outline->slit_cm = slit_of(&outline->edges[HW_EDGE_NECK_RIGHT]);
    if (lowest->up_cm < fmax(d->task->face_cm, SAME_CM)) {
        return refuse(d, lowest, "begins within the hem: let its first corner lie higher");
    }
    if (!(lowest->up_cm < outline->top_cm)) {
        return refuse(d, lowest, "has no depth: let its first corner lie below the top");
    }
    return HW_OK;
}

/* ---- The top ---- */

static hw_outline_point top_point(const hw_edge_line *edge, bool open)
{
    hw_outline_point point = *end_point(edge);
    point.curve = HW_CURVE_STRAIGHT;
    point.stretch = "";
    point.open = open;
    return point;
}

/* From left to right; with a neck the shoulders' tops, and nothing knitted between the two. */
static hw_status draw_top(drawing *d, hw_outline *outline)
{
    const hw_edge_line *edges = outline->edges;
    hw_outline_point *points = hw_arena_get(d->arena, TOP_POINTS, sizeof *points);
    if (points == NULL) {
        return HW_ERR_NOMEM;
    }
    bool neck = edges[HW_EDGE_NECK_RIGHT].count > 0;
    hw_edge ways[2][2] = { { HW_EDGE_LEFT, neck ? HW_EDGE_NECK_LEFT : HW_EDGE_RIGHT },
        { HW_EDGE_NECK_RIGHT, HW_EDGE_RIGHT } };
    int count = 0;
    for (int i = 0; i < (neck ? 2 : 1); i++) {
        const hw_edge_line *from = &edges[ways[i][0]];
        const hw_edge_line *to = &edges[ways[i][1]];
        if (!same(end_point(from)->across_cm, end_point(to)->across_cm)) {
            points[count] = top_point(from, count > 0);
            points[count + 1] = top_point(to, false);
            count += 2;
        }
    }
    outline->edges[HW_EDGE_TOP] = (hw_edge_line){ .points = points, .count = count };
    return HW_OK;
}

static hw_status outline_of(drawing *d, hw_outline *made)
{
    bool neck = d->task->piece->outline->neck.count > 0;
    hw_status status = HW_OK;
    for (int i = 0; i < (neck ? HW_EDGE_TOP : HW_SIDE_COUNT) && status == HW_OK; i++) {
        d->edge = (hw_edge)i;
        status = draw(d, &made->edges[i]);
    }
    if (status == HW_OK) {
        status = level_tops(d, made);
    }
    if (status == HW_OK && neck) {
        status = check_neck(d, made);
    }
    if (status == HW_OK) {
        status = check_order(d, made);
    }
    return status == HW_OK ? draw_top(d, made) : status;
}

hw_status hw_outline_make(
    const hw_outline_task *task, hw_arena *arena, hw_outline *out, hw_err *err)
{
    drawing d = { .task = task, .arena = arena, .err = err };
    hw_outline made = { 0 };
    hw_status status = outline_of(&d, &made);
    if (status != HW_OK) {
        return hw_err_set(err, status, "the outline of `%s` could not be made", task->piece->name);
    }
    *out = made;
    return HW_OK;
}

hw_status hw_outline_area(const hw_outline *outline, double *out_cm2)
{
    static const double signs[HW_EDGE_COUNT] = {
        [HW_EDGE_LEFT] = -1, [HW_EDGE_RIGHT] = 1, [HW_EDGE_NECK_LEFT] = 1, [HW_EDGE_NECK_RIGHT] = -1
    };
    double sum_cm2 = 0;
    for (int i = 0; i < HW_EDGE_TOP; i++) {
        double cm2 = 0;
        hw_status status = hw_edge_area(&outline->edges[i], &cm2);
        if (status != HW_OK) {
            return status;
        }
        sum_cm2 += signs[i] * cm2;
    }
    *out_cm2 = sum_cm2;
    return HW_OK;
}

/* Two lengths that differ by less are the same. */
static const double same_cm = 1e-9;

/* Of edges in a row. */
static hw_status run_length(const hw_outline *const *pieces, const hw_edge_run *run, double *out_cm)
{
    double sum_cm = 0;
    for (int i = 0; i < run->count; i++) {
        const hw_edge_part *part = &run->parts[i];
        const hw_outline *outline = pieces[part->piece];
        double cm = 0;
        hw_status status = HW_OK;
        if (outline != NULL && outline->edges[part->edge].count > 0) {
            status = hw_edge_length(&outline->edges[part->edge], part->stretch, &cm);
        }
        if (status != HW_OK) {
            return status;
        }
        sum_cm += cm;
    }
    *out_cm = sum_cm;
    return HW_OK;
}

hw_status hw_outline_join(
    const hw_outline *const *pieces, const hw_joint_edges *join, hw_join_lengths *out)
{
    hw_join_lengths lengths = { 0 };
    for (int end = 0; end < 2; end++) {
        hw_status status = run_length(pieces, &join->ends[end], &lengths.cm[end]);
        if (status != HW_OK) {
            return status;
        }
    }
    lengths.closes = fabs(lengths.cm[0] - lengths.cm[1]) <= join->within_cm + same_cm;
    *out = lengths;
    return HW_OK;
}

double hw_outline_height(const hw_outline *outline, const char *stretch)
{
    double height_cm = -1;
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        const hw_edge_line *edge = &outline->edges[side];
        for (int i = 1; i < edge->count; i++) {
            if (strcmp(edge->points[i].stretch, stretch) == 0) {
                height_cm = fmax(height_cm, edge->points[i].up_cm);
            }
        }
    }
    return height_cm;
}

/* Heights that differ by less are one. */
static const double one_height_cm = 1e-9;

static double raised(double up_cm, double from_cm, double by_cm)
{
    return up_cm >= from_cm - one_height_cm ? up_cm + by_cm : fmin(up_cm, from_cm + by_cm);
}

hw_status hw_outline_raise(hw_outline *outline, double from_cm, double by_cm, hw_arena *arena)
{
    hw_outline made = *outline;
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        size_t count = (size_t)outline->edges[e].count;
        hw_outline_point *points = hw_arena_get(arena, count > 0 ? count : 1, sizeof *points);
        if (points == NULL) {
            return HW_ERR_NOMEM;
        }
        for (size_t i = 0; i < count; i++) {
            points[i] = outline->edges[e].points[i];
            points[i].up_cm = raised(points[i].up_cm, from_cm, by_cm);
        }
        made.edges[e].points = points;
    }
    made.top_cm = raised(outline->top_cm, from_cm, by_cm);
    made.neck_cm = outline->neck_cm > 0 ? raised(outline->neck_cm, from_cm, by_cm) : 0;
    *outline = made;
    return HW_OK;
}
