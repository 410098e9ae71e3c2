/* Where a drawn edge lies, reckoned another way than the library does, and edges by chance.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "outlined.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* ---- Cubics: the slope at each point of a curve, then Hermite's form ---- */

typedef struct {
    int count;
    double y[DRAWN_POINTS], x[DRAWN_POINTS], slope[DRAWN_POINTS];
} cubic;

static double secant(const cubic *c, int i)
{
    return (c->x[i + 1] - c->x[i]) / (c->y[i + 1] - c->y[i]);
}

/* Steffen's slopes (formulas from memory); the secant at the ends. */
static void monotone_slopes(cubic *c)
{
    int last = c->count - 1;
    c->slope[0] = secant(c, 0);
    c->slope[last] = secant(c, last - 1);
    for (int i = 1; i < last; i++) {
        double before = secant(c, i - 1);
        double after = secant(c, i);
        double low = c->y[i] - c->y[i - 1];
        double high = c->y[i + 1] - c->y[i];
        double middle = (before * high + after * low) / (low + high);
        double size = fmin(fmin(fabs(before), fabs(after)), fabs(middle) / 2);
        c->slope[i] = before * after > 0 ? copysign(2 * size, before) : 0;
    }
}

/* The natural spline in its slopes: a row of the system for each point, solved by sweeping down and
 * up (textbook arithmetic, from memory). */
static void natural_slopes(cubic *c)
{
    int last = c->count - 1;
    double over[DRAWN_POINTS];
    double right[DRAWN_POINTS];
    over[0] = 0.5;
    right[0] = 1.5 * secant(c, 0);
    for (int i = 1; i <= last; i++) {
        double low = 1 / (c->y[i] - c->y[i - 1]);
        double high = i < last ? 1 / (c->y[i + 1] - c->y[i]) : 0;
        double want = 3 * secant(c, i - 1) * low + (i < last ? 3 * secant(c, i) * high : 0);
        double pivot = 2 * (low + high) - low * over[i - 1];
        over[i] = high / pivot;
        right[i] = (want - low * right[i - 1]) / pivot;
    }
    c->slope[last] = right[last];
    for (int i = last - 1; i >= 0; i--) {
        c->slope[i] = right[i] - over[i] * c->slope[i + 1];
    }
}

static double cubic_at(const cubic *c, int i, double y)
{
    double rise = c->y[i + 1] - c->y[i];
    double t = (y - c->y[i]) / rise;
    double bend_low = rise * c->slope[i] - (c->x[i + 1] - c->x[i]);
    double bend_high = (c->x[i + 1] - c->x[i]) - rise * c->slope[i + 1];
    return (1 - t) * c->x[i] + t * c->x[i + 1] + t * (1 - t) * ((1 - t) * bend_low + t * bend_high);
}

/* A way between two points, at a height. */
static double way_at(const hw_edge_line *edge, int way, double y)
{
    const hw_outline_point *from = &edge->points[way - 1];
    const hw_outline_point *to = &edge->points[way];
    int first = way;
    int last = way;
    while (first > 1 && edge->points[first - 1].curve == to->curve) {
        first--;
    }
    while (last + 1 < edge->count && edge->points[last + 1].curve == to->curve) {
        last++;
    }
    if (to->curve == HW_CURVE_STRAIGHT || first == last) {
        double t = (y - from->up_cm) / (to->up_cm - from->up_cm);
        return (1 - t) * from->across_cm + t * to->across_cm;
    }
    cubic c = { .count = last - first + 2 };
    for (int i = 0; i < c.count; i++) {
        c.y[i] = edge->points[first - 1 + i].up_cm;
        c.x[i] = edge->points[first - 1 + i].across_cm;
    }
    if (to->curve == HW_CURVE_NATURAL) {
        natural_slopes(&c);
    } else {
        monotone_slopes(&c);
    }
    return cubic_at(&c, way - first, y);
}

static int without_flat_top(const hw_edge_line *edge)
{
    int count = edge->count;
    while (count > 2 && edge->points[count - 2].up_cm >= edge->points[edge->count - 1].up_cm) {
        count--;
    }
    return count;
}

enum { LOOKS = 32 };

drawn_range drawn_within(const hw_edge_line *edge, double low_cm, double high_cm)
{
    hw_edge_line line = { .points = edge->points, .count = without_flat_top(edge) };
    const hw_outline_point *top = &line.points[line.count - 1];
    double low = fmin(fmax(low_cm, line.points[0].up_cm), top->up_cm) - 1e-9;
    double high = fmin(fmax(high_cm, line.points[0].up_cm), top->up_cm) + 1e-9;
    drawn_range range = { HUGE_VAL, -HUGE_VAL };
    for (int way = 1; way < line.count; way++) {
        const hw_outline_point *from = &line.points[way - 1];
        const hw_outline_point *to = &line.points[way];
        double begin = fmax(low, from->up_cm);
        double end = fmin(high, to->up_cm);
        bool level = to->up_cm <= from->up_cm;
        for (int i = 0; i <= LOOKS && begin <= end; i++) {
            double y = begin + (end - begin) * i / LOOKS;
            double x = way_at(&line, way, y);
            x = !level ? x : i == 0 ? from->across_cm : to->across_cm;
            range.least_cm = fmin(range.least_cm, x);
            range.most_cm = fmax(range.most_cm, x);
        }
    }
    return range;
}

double drawn_below(const hw_edge_line *edge, double up_cm)
{
    for (int way = 1; way < edge->count; way++) {
        if (up_cm <= edge->points[way].up_cm + 1e-9) {
            bool start = up_cm <= edge->points[way - 1].up_cm + 1e-9;
            return start ? edge->points[way - 1].across_cm : way_at(edge, way, up_cm);
        }
    }
    return edge->points[edge->count - 1].across_cm;
}

/* ---- By chance ---- */

static double chance(unsigned *state, double low, double high)
{
    return low + (high - low) * hw_check_random(state, 100001) / 100000;
}

/* The next corner of a side edge: across in [low, high], up to one row from the top. */
static hw_outline_point next_corner(
    unsigned *state, drawn_kind kind, const hw_outline_point *from, const drawn_piece *piece)
{
    const hw_shape_task *task = &piece->task;
    double half_cm = task->visible_sts / task->sts_per_cm / 2;
    double row_cm = task->low_cm[2] - task->low_cm[1];
    hw_outline_point to = { .stretch = "", .curve = HW_CURVE_STRAIGHT };
    to.up_cm = from->up_cm + chance(state, 1, 40) * row_cm;
    to.across_cm = chance(state, 0.55, 1.4) * half_cm;
    if (kind == DRAWN_GENTLE) {
        to.up_cm = fmin(to.up_cm, piece->outline.top_cm);
        /* at most 0.45 stitches in a row */
        double most_cm = 0.45 * (to.up_cm - from->up_cm) / row_cm / task->sts_per_cm;
        to.across_cm =
            fmin(fmax(to.across_cm, from->across_cm - most_cm), from->across_cm + most_cm);
        return to;
    }
    int what = hw_check_random(state, 10);
    if (what < 2) {
        to.across_cm = from->across_cm; /* straight up */
    } else if (what < 4) {
        to.up_cm = from->up_cm; /* a step across */
    } else if (what < 5) {
        double rows = hw_check_random(state, 2) == 0 ? 1 : 2; /* a corner where rows meet */
        int row = 0;
        while (row < task->rows - 1 && task->low_cm[row] < from->up_cm + rows * row_cm) {
            row++;
        }
        to.up_cm = fmax(task->low_cm[row], from->up_cm);
    } else if (kind == DRAWN_CURVED) {
        to.curve = hw_check_random(state, 2) == 0 ? HW_CURVE_MONOTONE : HW_CURVE_NATURAL;
        to.up_cm = from->up_cm + chance(state, 5, 40) * row_cm;
    }
    return to;
}

static void draw_side(unsigned *state, drawn_kind kind, drawn_piece *piece, double top_cm)
{
    hw_outline_point *points = piece->points[HW_EDGE_RIGHT];
    const hw_shape_task *task = &piece->task;
    double half_cm = task->visible_sts / task->sts_per_cm / 2;
    int count = 0;
    points[count++] = (hw_outline_point){ .across_cm = half_cm, .stretch = "" };
    points[count++] =
        (hw_outline_point){ .across_cm = half_cm, .up_cm = task->low_cm[0], .stretch = "side" };
    while (points[count - 1].up_cm < top_cm && count < DRAWN_POINTS - 3) {
        hw_outline_point to = next_corner(state, kind, &points[count - 1], piece);
        if (to.up_cm > top_cm) {
            to.up_cm = top_cm;
        }
        if (to.up_cm <= points[count - 1].up_cm) {
            to.curve = HW_CURVE_STRAIGHT;
        }
        points[count++] = to;
    }
    /* the shoulder: inward, straight, to the top, and sometimes flat there */
    hw_outline_point *last = &points[count - 1];
    if (last->up_cm < top_cm) {
        points[count++] =
            (hw_outline_point){ .across_cm = last->across_cm, .up_cm = top_cm, .stretch = "" };
    } else if (kind != DRAWN_GENTLE && last->up_cm - points[count - 2].up_cm > 0) {
        last->curve = HW_CURVE_STRAIGHT;
        last->across_cm = fmin(last->across_cm, points[count - 2].across_cm);
        last->stretch = last->across_cm >= points[count - 2].across_cm ? "" : "shoulder";
        if (hw_check_random(state, 3) == 0) {
            points[count++] =
                (hw_outline_point){ .across_cm = 0.5 * half_cm, .up_cm = top_cm, .stretch = "" };
        }
    }
    piece->outline.edges[HW_EDGE_RIGHT] = (hw_edge_line){ .points = points, .count = count };
}

static void turn(const hw_edge_line *from, hw_outline_point *points, hw_edge_line *to)
{
    for (int i = 0; i < from->count; i++) {
        points[i] = from->points[i];
        points[i].across_cm = -points[i].across_cm;
    }
    *to = (hw_edge_line){ .points = points, .count = from->count };
}

static void draw_neck(unsigned *state, drawn_kind kind, drawn_piece *piece, double top_cm)
{
    hw_outline_point *points = piece->points[HW_EDGE_NECK_RIGHT];
    double half_cm = piece->task.visible_sts / piece->task.sts_per_cm / 2;
    double base_cm = piece->task.low_cm[0];
    double low_cm = base_cm + (top_cm - base_cm) * chance(state, 0.3, 0.95);
    hw_curve curve = kind == DRAWN_CURVED ? HW_CURVE_MONOTONE : HW_CURVE_STRAIGHT;
    bool middle = hw_check_random(state, 2) == 0;
    int count = 0;
    points[count++] = (hw_outline_point){ .up_cm = low_cm, .stretch = "" };
    if (middle) {
        points[count++] = (hw_outline_point){
            .across_cm = chance(state, 0.05, 0.2) * half_cm, .up_cm = low_cm, .stretch = "neck"
        };
    }
    points[count] = (hw_outline_point){ .across_cm = chance(state, 0.2, 0.3) * half_cm,
        .up_cm = low_cm + (top_cm - low_cm) * chance(state, 0.1, 0.5),
        .curve = curve,
        .stretch = "neck" };
    count++;
    points[count++] = (hw_outline_point){ .across_cm = chance(state, 0.3, 0.35) * half_cm,
        .up_cm = top_cm,
        .curve = curve,
        .stretch = "neck" };
    hw_outline *outline = &piece->outline;
    outline->neck_cm = low_cm;
    outline->edges[HW_EDGE_NECK_RIGHT] = (hw_edge_line){ .points = points, .count = count };
    turn(&outline->edges[HW_EDGE_NECK_RIGHT], piece->points[HW_EDGE_NECK_LEFT],
        &outline->edges[HW_EDGE_NECK_LEFT]);
}

/* Splines may swing wider than their corners, and then cross the neck or each other. */
static bool too_narrow(const drawn_piece *piece)
{
    double half_cm = piece->task.visible_sts / piece->task.sts_per_cm / 2;
    drawn_range right =
        drawn_within(&piece->outline.edges[HW_EDGE_RIGHT], 0, piece->outline.top_cm);
    return right.least_cm < 0.5 * half_cm || right.most_cm > 3 * half_cm;
}

void drawn_by_chance(unsigned *state, drawn_kind kind, drawn_piece *out)
{
    memset(out, 0, sizeof *out);
    hw_shape_task *task = &out->task;
    task->outline = &out->outline;
    task->low_cm = out->low_cm;
    task->sts_per_cm = chance(state, 1.2, 4);
    task->visible_sts = 30 + hw_check_random(state, 120);
    task->rows = 4 + hw_check_random(state, DRAWN_ROWS - 4);
    task->first_start = hw_check_random(state, 2) == 0 ? HW_LEFT : HW_RIGHT;
    double row_cm = chance(state, 0.15, 0.6);
    out->low_cm[0] = hw_check_random(state, 3) == 0 ? 0 : chance(state, 1, 8);
    for (int row = 0; row < task->rows; row++) {
        out->low_cm[row + 1] = out->low_cm[row] + row_cm;
    }
    double top_cm = out->low_cm[task->rows] + chance(state, -0.49, 0.49) * row_cm;
    out->outline.top_cm = top_cm;
    do {
        draw_side(state, kind, out, top_cm);
    } while (too_narrow(out));
    hw_outline *outline = &out->outline;
    turn(&outline->edges[HW_EDGE_RIGHT], out->points[HW_EDGE_LEFT], &outline->edges[HW_EDGE_LEFT]);
    out->symmetric = hw_check_random(state, 2) == 0;
    if (!out->symmetric) {
        do {
            draw_side(state, kind, out, top_cm);
        } while (too_narrow(out));
    }
    if (hw_check_random(state, 2) == 0) {
        draw_neck(state, kind, out, top_cm);
    }
}

void drawn_turned(const drawn_piece *piece, drawn_piece *out)
{
    static const hw_edge from[HW_EDGE_TOP] = { HW_EDGE_RIGHT, HW_EDGE_LEFT, HW_EDGE_NECK_RIGHT,
        HW_EDGE_NECK_LEFT };
    *out = *piece;
    for (int edge = 0; edge < HW_EDGE_TOP; edge++) {
        turn(&piece->outline.edges[from[edge]], out->points[edge], &out->outline.edges[edge]);
    }
    out->task.outline = &out->outline;
    out->task.low_cm = out->low_cm;
    out->task.first_start = piece->task.first_start == HW_LEFT ? HW_RIGHT : HW_LEFT;
}

/* ---- Rows ---- */

void drawn_knit(const hw_shape_task *task, drawn_rows *out)
{
    hw_err err = { 0 };
    hw_check_open(&out->arena, &out->heap, 0, false);
    hw_status status = hw_shape_make(task, &out->arena, &out->shape, &err);
    ck_assert_msg(status == HW_OK, "%s", err.text);
    ck_assert_int_eq(hw_shape_steps_of(task, &out->shape, &out->arena, &out->steps), HW_OK);
}

void drawn_close(drawn_rows *k)
{
    hw_check_close(&k->arena, &k->heap);
}

/* ---- The bound ---- */

/* At some height the edge lies within half a stitch of `at_cm`. */
static void expect_near(drawn_range range, double at_cm, double sts_per_cm, int row)
{
    double half_cm = 0.5 / sts_per_cm;
    bool near = at_cm >= range.least_cm - half_cm - 1e-6 && at_cm <= range.most_cm + half_cm + 1e-6;
    ck_assert_msg(near, "row %d: %g cm, drawn %g to %g cm, half a stitch %g cm", row, at_cm,
        range.least_cm, range.most_cm, half_cm);
}

/* One edge, and the rows from which on two go across by more than a stitch, or that are held. */
typedef struct {
    const hw_shape_task *task;
    hw_edge which;
    bool steep[DRAWN_ROWS];
} judged;

static void judge(const hw_shape_task *task, hw_edge which, judged *out)
{
    *out = (judged){ .task = task, .which = which };
    const hw_edge_line *edge = &task->outline->edges[which];
    bool side = which == HW_EDGE_LEFT || which == HW_EDGE_RIGHT;
    for (int row = 0; row < task->rows && edge->count > 0; row++) {
        int end = row + 2 < task->rows ? row + 2 : task->rows;
        drawn_range range = drawn_within(edge, task->low_cm[row], task->low_cm[end]);
        out->steep[row] =
            (range.most_cm - range.least_cm) * task->sts_per_cm > 1 ||
            (side && hw_shape_holds(task, which == HW_EDGE_LEFT ? HW_LEFT : HW_RIGHT, row));
    }
}

/* Whether no group is near: two rows for a group itself, and four for what groups draw in. By hand
 * a group may have to begin any number of rows lower. */
static bool gentle_near(const judged *edge, int row)
{
    int near = edge->task->right_side_rows ? edge->task->rows : 7;
    for (int i = row - near; i < row + near; i++) {
        if (i >= 0 && i < edge->task->rows && edge->steep[i]) {
            return false;
        }
    }
    return true;
}

/* A row's edge is a line one row tall: what is drawn comes within half a stitch of it, at most half
 * a row above or below, and beside it where no group is near. */
static void expect_row(const judged *edge, int row, double at_cm)
{
    const hw_shape_task *task = edge->task;
    const double *low_cm = task->low_cm;
    double below_cm = row > 0 ? (low_cm[row] - low_cm[row - 1]) / 2 : 0;
    double above_cm = row + 1 < task->rows ? (low_cm[row + 2] - low_cm[row + 1]) / 2 : 0;
    if (gentle_near(edge, row)) {
        below_cm = 0;
        above_cm = 0;
    }
    double from_cm = low_cm[row] - below_cm;
    if (edge->which == HW_EDGE_NECK_LEFT || edge->which == HW_EDGE_NECK_RIGHT) {
        from_cm = fmax(from_cm, task->outline->neck_cm);
    }
    const hw_edge_line *line = &task->outline->edges[edge->which];
    drawn_range range = drawn_within(line, from_cm, low_cm[row + 1] + above_cm);
    expect_near(range, at_cm, task->sts_per_cm, row);
}

void drawn_bound(const hw_shape_task *task, const hw_shape *shape)
{
    double stitch_cm = 1 / task->sts_per_cm;
    judged edges[HW_EDGE_TOP];
    for (int i = 0; i < HW_EDGE_TOP; i++) {
        judge(task, (hw_edge)i, &edges[i]);
    }
    const hw_edge_line *lines = task->outline->edges;
    double left_cm = drawn_below(&lines[HW_EDGE_LEFT], task->low_cm[0]);
    double right_cm = drawn_below(&lines[HW_EDGE_RIGHT], task->low_cm[0]);
    for (int row = 0; row < shape->rows; row++) {
        expect_row(&edges[HW_EDGE_LEFT], row, left_cm + shape->inset_sts[HW_LEFT][row] * stitch_cm);
        expect_row(
            &edges[HW_EDGE_RIGHT], row, right_cm - shape->inset_sts[HW_RIGHT][row] * stitch_cm);
        if (shape->neck_halves[HW_LEFT] == NULL || row < shape->neck_row) {
            continue;
        }
        expect_row(
            &edges[HW_EDGE_NECK_LEFT], row, -shape->neck_halves[HW_LEFT][row] * stitch_cm / 2);
        expect_row(
            &edges[HW_EDGE_NECK_RIGHT], row, shape->neck_halves[HW_RIGHT][row] * stitch_cm / 2);
    }
}
