/* The stitches of every row of a piece, from the lines that its edges are drawn in.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/shape.h"

#include <assert.h>
#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "core/buf.h"
#include "core/edgerows.h"
#include "core/num.h"

/* Heights that differ by less are one. */
#define SAME_CM 1e-9

static hw_side other(hw_side side)
{
    return side == HW_LEFT ? HW_RIGHT : HW_LEFT;
}

/* Whether a row begins at the leading edge, as row 0 does: rounds do, and the row after them. */
static bool leads(const hw_shape_task *task, int row)
{
    return row < task->round_rows || (row - task->round_rows) % 2 == 0;
}

/* ---- Stitches of rows ---- */

bool hw_shape_parted(const hw_shape *shape)
{
    return shape->neck_halves[HW_LEFT] != NULL && shape->neck_halves[HW_RIGHT] != NULL &&
           shape->neck_row < shape->rows;
}

int hw_shape_rows(const hw_shape *shape, hw_side half)
{
    return shape->held_sts[half] > 0 ? shape->back_row[half] + 1 : shape->rows;
}

int hw_shape_most_rows(const hw_shape *shape)
{
    int left = hw_shape_rows(shape, HW_LEFT);
    int right = hw_shape_rows(shape, HW_RIGHT);
    return left > right ? left : right;
}

/* The last row's neck and edges stay what they are in the rows above it. */
static int drawn_row(const hw_shape *shape, int row)
{
    return row < shape->rows ? row : shape->rows - 1;
}

int hw_shape_inset(const hw_shape *shape, int row, hw_side side)
{
    bool back = row >= shape->back_row[side];
    return shape->inset_sts[side][drawn_row(shape, row)] - (back ? shape->held_sts[side] : 0);
}

int hw_shape_half_sts(const hw_shape *shape, int row, hw_side half)
{
    assert(shape->neck_halves[half] != NULL && row >= shape->neck_row);
    int halves = shape->visible_sts - shape->neck_halves[half][drawn_row(shape, row)];
    return halves / 2 - hw_shape_inset(shape, row, half);
}

int hw_shape_sts(const hw_shape *shape, int row)
{
    if (shape->neck_halves[HW_LEFT] == NULL || row < shape->neck_row) {
        return shape->visible_sts - hw_shape_inset(shape, row, HW_LEFT) -
               hw_shape_inset(shape, row, HW_RIGHT);
    }
    return hw_shape_half_sts(shape, row, HW_LEFT) + hw_shape_half_sts(shape, row, HW_RIGHT);
}

int hw_shape_top_sts(const hw_shape *shape)
{
    return hw_shape_sts(shape, hw_shape_most_rows(shape) - 1);
}

int hw_shape_more_sts(const hw_shape *shape, const int *edge_sts)
{
    int sts = 0;
    bool parted = hw_shape_parted(shape);
    for (int side = 0; side < HW_SIDE_COUNT && parted; side++) {
        for (int row = shape->rows; row < hw_shape_rows(shape, (hw_side)side); row++) {
            sts += hw_shape_half_sts(shape, row, (hw_side)side) + edge_sts[side];
        }
    }
    for (int row = shape->rows; row < hw_shape_most_rows(shape) && !parted; row++) {
        sts += hw_shape_sts(shape, row) + edge_sts[HW_LEFT] + edge_sts[HW_RIGHT];
    }
    return sts;
}

/* ---- Shoulders in short rows ---- */

/* The stretch `shoulder` of an edge; false where it has none or runs outward in it. */
static bool shoulder_of(const hw_edge_line *edge, hw_side side, double *low_cm, double *high_cm)
{
    double inward = side == HW_LEFT ? 1 : -1;
    bool found = false;
    for (int i = 1; i < edge->count; i++) {
        const hw_outline_point *from = &edge->points[i - 1];
        const hw_outline_point *to = &edge->points[i];
        if (strcmp(to->stretch, "shoulder") != 0) {
            continue;
        }
        if (inward * (to->across_cm - from->across_cm) < 0) {
            return false;
        }
        *low_cm = found ? *low_cm : from->up_cm;
        *high_cm = to->up_cm;
        found = true;
    }
    return found;
}

/* Rows from first up to, but not with, end. */
typedef struct {
    int first, end;
} span;

/* The rows in which an edge is held, as the leading edge has them: none, or those in which its
 * shoulder lies. The row after the last of them begins at the leading edge, so that the usual pairs
 * can follow. */
static span held_rows(const hw_shape_task *task, hw_side side)
{
    double low_cm = 0;
    double high_cm = 0;
    span rows = { 0 };
    if (!task->short_rows || !shoulder_of(&task->outline->edges[side], side, &low_cm, &high_cm)) {
        return rows;
    }
    rows.first = 1; /* the first row has none before it in which an edge could get ready */
    while (rows.first < task->rows && task->low_cm[rows.first + 1] <= low_cm + SAME_CM) {
        rows.first++;
    }
    rows.end = rows.first;
    bool to_top = high_cm >= task->outline->top_cm - SAME_CM;
    while (rows.end < task->rows && (to_top || task->low_cm[rows.end + 1] <= high_cm + SAME_CM)) {
        rows.end++;
    }
    bool more = rows.end < task->rows && rows.end > rows.first;
    rows.end -= more && !leads(task, rows.end) ? 1 : 0;
    return rows;
}

bool hw_shape_holds(const hw_shape_task *task, hw_side side, int row)
{
    span held = held_rows(task, side);
    int led = side == task->first_start ? row : row - 1;
    bool within = led >= held.first && led < held.end && led >= task->round_rows;
    return within && !leads(task, led);
}

/* What is held when the last row is done, and the row that works it again: of two rows one ends at
 * each edge. Where the last does so, and holds no more, it is the one. */
static void find_back(const hw_shape_task *task, hw_shape *shape)
{
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        const int *inset = shape->inset_sts[side];
        for (int row = 1; row < shape->rows; row++) {
            bool held = hw_shape_holds(task, (hw_side)side, row);
            shape->held_sts[side] += held ? inset[row] - inset[row - 1] : 0;
        }
        int last = shape->rows - 1;
        bool more = last > 0 && inset[last] > inset[last - 1];
        bool ends_here = leads(task, last) != ((hw_side)side == task->first_start);
        shape->back_row[side] = !ends_here ? shape->rows : more ? shape->rows + 1 : last;
    }
}

/* ---- One edge ---- */

/* An edge as it is to be followed: `inward` 1 or -1 times across, less `base_cm`, is the inset. */
typedef struct {
    const hw_shape_task *task;
    hw_edge_line line; /* without what is flat at the very top: that is never knitted */
    double inward, base_cm;
    double more_sts; /* added to the inset */
    bool from_zero;  /* row 0 changes from 0 */
    hw_side begins;  /* rows that begin here may have groups */
    span held;       /* as the leading edge has it */
    int first;       /* row */
} pursuit;

/* The room for one edge's rows, by halves of rows. */
typedef struct {
    double *heights_cm, *sts; /* [2 rows + 1]: where halves begin and end */
    double *least, *most;     /* [2 rows] */
    double *step_least, *step_most;
    hw_row_kind *may; /* [rows] */
    bool *right_side;
} rows_room;

static bool open_rows(int rows, hw_arena *room, rows_room *out)
{
    size_t n = (size_t)rows;
    *out = (rows_room){
        .heights_cm = hw_arena_get(room, 2 * n + 1, sizeof(double)),
        .sts = hw_arena_get(room, 2 * n + 1, sizeof(double)),
        .least = hw_arena_get(room, 2 * n, sizeof(double)),
        .most = hw_arena_get(room, 2 * n, sizeof(double)),
        .step_least = hw_arena_get(room, 2 * n, sizeof(double)),
        .step_most = hw_arena_get(room, 2 * n, sizeof(double)),
        .may = hw_arena_get(room, n, sizeof(hw_row_kind)),
        .right_side = hw_arena_get(room, n, sizeof(bool)),
    };
    return out->heights_cm != NULL && out->sts != NULL && out->least != NULL && out->most != NULL &&
           out->step_least != NULL && out->step_most != NULL && out->may != NULL &&
           out->right_side != NULL;
}

static hw_edge_line without_flat_top(const hw_edge_line *edge)
{
    hw_edge_line line = *edge;
    double top_cm = edge->points[edge->count - 1].up_cm;
    while (line.count > 2 && line.points[line.count - 2].up_cm >= top_cm) {
        line.count--;
    }
    return line;
}

static double inset_at(const pursuit *p, double across_cm)
{
    double inset_cm = p->inward * across_cm - p->base_cm;
    return inset_cm * p->task->sts_per_cm + p->more_sts;
}

/* The wanted inset where halves of rows begin and end. */
static hw_status follow_line(const pursuit *p, int rows, const rows_room *room)
{
    const double *low_cm = p->task->low_cm + p->first;
    for (int row = 0; row < rows; row++) {
        room->heights_cm[2 * row] = low_cm[row];
        room->heights_cm[2 * row + 1] = low_cm[row] + (low_cm[row + 1] - low_cm[row]) / 2;
    }
    room->heights_cm[2 * rows] = low_cm[rows];
    hw_status status = hw_edge_at(&p->line, room->heights_cm, 2 * rows + 1, room->sts);
    for (int i = 0; i <= 2 * rows && status == HW_OK; i++) {
        room->sts[i] = inset_at(p, room->sts[i]);
    }
    return status;
}

static void widen(const rows_room *room, int half, double sts)
{
    room->least[half] = fmin(room->least[half], sts);
    room->most[half] = fmax(room->most[half], sts);
}

/* The largest step across in half a row, if one leads to a point. */
static void note_step(const pursuit *p, int point, const rows_room *room, int half)
{
    const hw_outline_point *to = &p->line.points[point];
    if (point == 0 || to[-1].up_cm < to->up_cm) {
        return;
    }
    double from_sts = inset_at(p, to[-1].across_cm);
    double to_sts = inset_at(p, to->across_cm);
    if (fabs(to_sts - from_sts) > room->step_most[half] - room->step_least[half]) {
        room->step_least[half] = fmin(from_sts, to_sts);
        room->step_most[half] = fmax(from_sts, to_sts);
    }
}

/* The least and most that is wanted within each half of a row, both ends of a step included. */
static void find_range(const pursuit *p, int rows, const rows_room *room)
{
    const double *heights_cm = room->heights_cm;
    int halves = 2 * rows;
    for (int half = 0; half < halves; half++) {
        room->least[half] = room->sts[half];
        room->most[half] = room->sts[half];
        widen(room, half, room->sts[half + 1]);
    }
    if (p->from_zero) {
        widen(room, 0, 0);
    }
    int half = 0;
    for (int i = 0; i < p->line.count; i++) {
        const hw_outline_point *point = &p->line.points[i];
        while (half < halves && heights_cm[half + 1] < point->up_cm) {
            half++;
        }
        for (int k = half; k < halves && heights_cm[k] <= point->up_cm && k < half + 2; k++) {
            if (heights_cm[k + 1] >= point->up_cm) {
                widen(room, k, inset_at(p, point->across_cm));
                note_step(p, i, room, k);
            }
        }
    }
}

static hw_row_kind kind_of(const pursuit *p, int row)
{
    if (row < p->task->round_rows) {
        return HW_ROW_SINGLE;
    }
    bool lead = leads(p->task, row);
    if (row >= p->held.first && row < p->held.end) {
        /* what is due from below the shoulder may be left for its first rows */
        bool usual = lead && row <= p->held.first + 1;
        return usual ? HW_ROW_SPARE : lead ? HW_ROW_PLAIN : HW_ROW_HOLD;
    }
    return lead ? HW_ROW_GROUP : HW_ROW_SINGLE;
}

/* The insets of one edge's rows from its first on. */
static hw_status pursue(const pursuit *p, hw_arena *arena, int *inset)
{
    const hw_shape_task *task = p->task;
    int rows = task->rows - p->first;
    hw_arena room;
    hw_arena_init(&room, &arena->mem, arena->block_size);
    rows_room made;
    hw_status status = open_rows(rows, &room, &made) ? HW_OK : HW_ERR_NOMEM;
    if (status == HW_OK) {
        status = follow_line(p, rows, &made);
    }
    if (status == HW_OK) {
        find_range(p, rows, &made);
        for (int i = 0; i < rows; i++) {
            made.right_side[i] = leads(task, p->first + i) == task->first_is_right_side;
            made.may[i] = kind_of(p, p->first + i);
        }
        hw_edge_rows edge = { .rows = rows,
            .at = made.sts,
            .least = made.least,
            .most = made.most,
            .step_least = made.step_least,
            .step_most = made.step_most,
            .may = made.may,
            .right_side = task->right_side_rows ? made.right_side : NULL,
            .starts_anywhere = !p->from_zero,
            .follows = p->begins != task->first_start,
            .round_rows = p->from_zero ? task->round_rows : 0 };
        status = hw_edge_rows_find(&edge, &room, inset);
    }
    hw_arena_release(&room);
    return status;
}

/* ---- The piece ---- */

/* Where an edge lies at the top of the hem's face, below a step across at that height. */
static hw_status base_of(const hw_edge_line *edge, double low_cm, double *out_cm)
{
    for (int i = 0; i < edge->count; i++) {
        if (fabs(edge->points[i].up_cm - low_cm) <= SAME_CM) {
            *out_cm = edge->points[i].across_cm;
            return HW_OK;
        }
    }
    return hw_edge_at(edge, &low_cm, 1, out_cm);
}

static hw_status shape_side(
    const hw_shape_task *task, hw_side side, hw_arena *arena, hw_shape *made)
{
    pursuit p = { .task = task,
        .line = without_flat_top(&task->outline->edges[side]),
        .inward = side == HW_LEFT ? 1 : -1,
        .from_zero = true,
        .begins = side,
        .held = held_rows(task, side) };
    made->inset_sts[side] = hw_arena_get(arena, (size_t)task->rows, sizeof(int));
    if (made->inset_sts[side] == NULL) {
        return HW_ERR_NOMEM;
    }
    double base_cm = 0;
    hw_status status = base_of(&p.line, task->low_cm[0], &base_cm);
    p.base_cm = p.inward * base_cm;
    return status == HW_OK ? pursue(&p, arena, made->inset_sts[side]) : status;
}

static double mid_cm(const hw_shape_task *task, int row)
{
    return task->low_cm[row] + (task->low_cm[row + 1] - task->low_cm[row]) / 2;
}

/* A neck's edge in stitches from the middle of the piece. With an odd count the middle lies within
 * a stitch, half a stitch off. */
static hw_status shape_neck(
    const hw_shape_task *task, hw_side half, hw_arena *arena, hw_shape *made)
{
    int rows = task->rows;
    int odd = hw_num_mod(task->visible_sts, 2);
    hw_edge edge = half == HW_LEFT ? HW_EDGE_NECK_LEFT : HW_EDGE_NECK_RIGHT;
    pursuit p = { .task = task,
        .line = without_flat_top(&task->outline->edges[edge]),
        .inward = half == HW_LEFT ? -1 : 1,
        .more_sts = odd == 1 ? -0.5 : 0,
        .begins = other(half),
        .first = made->neck_row };
    int *halves = hw_arena_get(arena, (size_t)rows, sizeof *halves);
    if (halves == NULL) {
        return HW_ERR_NOMEM;
    }
    made->neck_halves[half] = halves;
    hw_status status = HW_OK;
    if (made->neck_row < rows) {
        status = pursue(&p, arena, halves + made->neck_row);
    }
    for (int row = 0; row < rows; row++) {
        halves[row] = row < made->neck_row ? -1 : 2 * halves[row] + odd;
    }
    return status;
}

/* Whether some stitch of a row is left, of each half where there are two. */
static bool something_left(const hw_shape *shape, int row)
{
    if (shape->neck_halves[HW_LEFT] == NULL || row < shape->neck_row) {
        return hw_shape_sts(shape, row) > 0;
    }
    return hw_shape_half_sts(shape, row, HW_LEFT) > 0 &&
           hw_shape_half_sts(shape, row, HW_RIGHT) > 0;
}

/* A piece that ends in a point: so many rows at most have no stitch left, for two edges that each
 * come in by a stitch in 8 rows (own choice). Edges that only meet are not a stitch past each
 * other, with half a stitch of rounding at each. */
enum { MOST_DROPPED = 8, MOST_PAST = 1 };

static bool only_point(const hw_shape *shape, int row)
{
    bool good = shape->rows - row <= MOST_DROPPED && row > 0;
    for (; row < shape->rows && good; row++) {
        good = hw_shape_sts(shape, row) >= -MOST_PAST;
        if (row >= shape->neck_row && shape->neck_halves[HW_LEFT] != NULL) {
            good = hw_shape_half_sts(shape, row, HW_LEFT) >= -MOST_PAST &&
                   hw_shape_half_sts(shape, row, HW_RIGHT) >= -MOST_PAST;
        }
    }
    return good;
}

/* Why, after the names of size and piece as far as they are known. */
static hw_status HW_FORMAT(3, 4)
    refuse(const hw_shape_task *task, hw_err *err, const char *format, ...)
{
    char why[256];
    va_list args;
    va_start(args, format);
    hw_buf_fixed(why, sizeof why, format, args);
    va_end(args);
    if (task->size == NULL || task->piece == NULL) {
        return hw_err_set(err, HW_ERR_RANGE, "%s", why);
    }
    return hw_err_set(err, HW_ERR_RANGE, "size %s: `%.60s`: %s", task->size, task->piece, why);
}

static hw_status check_rows(const hw_shape_task *task, hw_shape *shape, hw_err *err)
{
    for (int row = 0; row < shape->rows; row++) {
        if (!something_left(shape, row) && only_point(shape, row)) {
            shape->rows = row;
            shape->neck_row = shape->neck_row < row ? shape->neck_row : task->rows;
        } else if (!something_left(shape, row)) {
            return refuse(task, err,
                "nothing is left to knit in row %d above the hem, %.1f cm from the fold, with %d "
                "rows still to come: let the edges end lower, or farther from each other",
                row + 1, mid_cm(task, row), shape->rows - 1 - row);
        } else if (hw_shape_sts(shape, row) > HW_MAX_STS) {
            return refuse(task, err,
                "row %d above the hem would have more than %d stitches: draw the piece narrower",
                row + 1, HW_MAX_STS);
        }
    }
    return HW_OK;
}

hw_status hw_shape_make(const hw_shape_task *task, hw_arena *arena, hw_shape *out, hw_err *err)
{
    assert(task->rows >= 1 && task->rows <= HW_MAX_ROWS);
    bool neck = task->outline->edges[HW_EDGE_NECK_RIGHT].count > 0;
    hw_shape made = {
        .rows = task->rows, .visible_sts = task->visible_sts, .first_start = task->first_start
    };
    while (made.neck_row < task->rows &&
           (!neck || mid_cm(task, made.neck_row) < task->outline->neck_cm)) {
        made.neck_row++;
    }
    hw_status status = HW_OK;
    for (int side = 0; side < HW_SIDE_COUNT && status == HW_OK; side++) {
        status = shape_side(task, (hw_side)side, arena, &made);
        if (status == HW_OK && neck) {
            status = shape_neck(task, (hw_side)side, arena, &made);
        }
    }
    if (status == HW_OK) {
        status = check_rows(task, &made, err);
    }
    if (status != HW_OK) {
        return hw_err_set(err, status, "%s", "the rows above the hem could not be shaped");
    }
    find_back(task, &made);
    *out = made;
    return HW_OK;
}
