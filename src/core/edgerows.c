/* Whole stitches for each row of an edge: regular where it runs gently, in groups where it is flat.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/edgerows.h"

#include <assert.h>
#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "core/evenrows.h"
#include "core/num.h"

/* How it is done, and why that is always possible.
 *
 * Let f be the wanted inset. Rows in which f is gentle have a plan, which does not look at where
 * rows begin, so that both edges of a piece get the same. The others are free, and lie in sections:
 * each begins with a row that begins at the leading edge, in which a group can go, and the next
 * gentle row is another such. The rows of a section are found for the leading edge, row by row, by
 * dynamic programming. An edge that follows gets the same one row later.
 *
 * The bound. An edge of a row is a line one row tall. It is near what is drawn where f is within
 * half a stitch of it at some height at most half a row above or below that line. Let m(r) be the
 * middle of row r. A row r of a section has an inset that is within half a stitch of f somewhere
 * from m(r) to m(r + 1): for the leading edge that is at most half a row above row r, for the edge
 * that follows at most half a row below row r + 1. So both are near.
 *
 * A way through a section exists. Let p be one of its rows that may have a group, and p + 1 one
 * that may not. Give both nearest(f(m(p + 1))): that height belongs to both, and all change falls
 * at the start of p. Two rows with groups in succession need no pairing. Of a last row that may
 * have a group, see left_for_end.
 * Where a section ends, the next row may have a group, and takes its planned inset. Where one
 * begins, the edge that follows keeps the inset of the row before for one row more, and that has
 * to be near there: else the section is begun two rows lower.
 *
 * The plan on a machine is nearest(f) half-way up each row, which changes by a stitch in single
 * rows where f is gentle; f reaches half a stitch between two insets at a height that belongs to
 * one row, and in that row and the next both insets are within half a stitch of f somewhere in the
 * row itself. Within this freedom changes move so that neighbouring distances differ by a row at
 * most and few runs of one distance tell them, or a few that take turns (evenrows.c). In hand
 * knitting changes fall into right-side rows, and the plan is nearest(f) where the right-side row
 * ends. */

enum { SHORT_ROWS = 4 }; /* a gentle part of fewer rows between flat ones is worked as they are */

/* A stitch in each row is no more than that. */
#define SAME_STS 1e-9

/* What a choice costs in a section. Own choice. */
static const double one_change = 1; /* for a change */
static const double lone_group = 1; /* more, for a group of one in a wrong-side row */
static const double off_pair = 0.1; /* more, for a stitch off what is drawn within a pair */
static const double scattered = 4;  /* more, for a single stitch in a row without groups */
static const double spared = 100;   /* more, for a group where none should be */
static const double broken = 1e3;   /* for a stop half-way along a step across */

typedef struct {
    const hw_edge_rows *edge;
    int *low, *high; /* [rows] the insets that keep the bound */
    int *plan;       /* [rows] */
    int *inset;      /* [rows] of the leading edge */
    bool *free;      /* [rows] in a section: the plan does not hold there */
} work;

static bool open_work(const hw_edge_rows *edge, hw_arena *room, work *out)
{
    size_t n = (size_t)edge->rows;
    work w = { .edge = edge, .free = hw_arena_get(room, n, sizeof *w.free) };
    int **const lists[] = { &w.low, &w.high, &w.plan, &w.inset };
    bool good = w.free != NULL;
    for (size_t i = 0; i < sizeof lists / sizeof lists[0] && good; i++) {
        *lists[i] = hw_arena_get(room, n, sizeof(int));
        good = *lists[i] != NULL;
    }
    *out = w;
    return good;
}

/* No count of stitches is larger: what is beyond will be refused in any case. */
static int within_limits(int sts)
{
    int most = HW_MAX_STS;
    return sts < -most ? -most : sts > most ? most : sts;
}

static int nearest(double sts)
{
    return within_limits(hw_num_nearest(sts));
}

/* Insets from low to high. */
typedef struct {
    int low, high;
} range;

/* Those within half a stitch of what is wanted somewhere in some halves of rows, from the first of
 * them up to, but not with, the end; there may be fewer than these. */
static range near_halves(const hw_edge_rows *edge, int first, int end)
{
    first = first > 0 ? first : 0;
    end = end < 2 * edge->rows ? end : 2 * edge->rows;
    double least = edge->least[first];
    double most = edge->most[first];
    for (int half = first + 1; half < end; half++) {
        least = fmin(least, edge->least[half]);
        most = fmax(most, edge->most[half]);
    }
    return (range){ within_limits(hw_num_up(least - 0.5)), within_limits(hw_num_down(most + 0.5)) };
}

/* Near a row, with half a row more below and above it. */
static range near_row(const hw_edge_rows *edge, int row)
{
    return near_halves(edge, 2 * row - 1, 2 * row + 3);
}

static void set_bounds(work *w, int row, range bounds)
{
    w->low[row] = bounds.low;
    w->high[row] = bounds.high;
}

/* ---- The plan ---- */

/* Where a neck's edge begins: one inset for both halves, which has to stay for the first two rows
 * of a section and, at the edge that follows, for a third. */
static int start_inset(const work *w, bool section)
{
    const hw_edge_rows *edge = w->edge;
    if (!edge->starts_anywhere) {
        return 0;
    }
    bool pair = section && edge->may[0] >= HW_ROW_GROUP && edge->rows > 1;
    return nearest(edge->at[pair ? 3 : 2]);
}

static int before(const work *w, int row)
{
    return row == 0 ? start_inset(w, false) : w->plan[row - 1];
}

static void set_free(work *w, int first, int end)
{
    for (int row = first < 0 ? 0 : first; row < end && row < w->edge->rows; row++) {
        w->free[row] = true;
    }
}

/* Flat parts: more than a stitch in one row. Up to a row, for rounds and on a machine. */
static void plan_any_row(work *w, int end)
{
    const hw_edge_rows *edge = w->edge;
    for (int row = 0; row < end; row++) {
        bool fixed = row == 0 && edge->starts_anywhere;
        w->plan[row] = fixed ? start_inset(w, false) : nearest(edge->at[2 * row + 1]);
        double climb = edge->at[2 * row + 2] - edge->at[2 * row];
        w->free[row] = abs(w->plan[row] - before(w, row)) >= 2 || fabs(climb) > 1 + SAME_STS;
    }
}

/* The same where rows go in pairs, each from a right-side row on. */
static void plan_pairs(work *w, int first)
{
    const hw_edge_rows *edge = w->edge;
    for (int row = first; row < edge->rows; row++) {
        bool fixed = row == 0 && edge->starts_anywhere;
        bool anew = edge->right_side[row] && !fixed;
        w->plan[row] = anew ? nearest(edge->at[2 * row + 2]) : before(w, row);
        w->free[row] = abs(w->plan[row] - before(w, row)) >= 2;
    }
}

/* Rows that can only hold follow no plan. */
static void free_held(work *w)
{
    for (int row = 0; row < w->edge->rows; row++) {
        if (w->edge->may[row] == HW_ROW_HOLD) {
            set_free(w, row - 2, row + 2);
        }
    }
}

static bool may_begin(const work *w, int row)
{
    return w->edge->may[row] == HW_ROW_GROUP || w->edge->may[row] == HW_ROW_SPARE;
}

/* Sections begin, and end, where a row may have a group; none ends just below the last row. */
static void align(work *w)
{
    for (int row = w->edge->rows - 1; row > 0; row--) {
        bool begins = w->free[row] && !w->free[row - 1];
        w->free[row - 1] = w->free[row - 1] || (begins && !may_begin(w, row));
    }
    for (int row = 1; row < w->edge->rows; row++) {
        bool ends = !w->free[row] && w->free[row - 1];
        bool fits = may_begin(w, row) && row + 1 < w->edge->rows;
        w->free[row] = w->free[row] || (ends && !fits);
    }
}

/* A few gentle rows between flat ones would only break up the groups. */
static void close_gaps(work *w)
{
    int since = -1; /* the last flat row */
    for (int row = 0; row < w->edge->rows; row++) {
        if (!w->free[row]) {
            continue;
        }
        if (since >= 0 && row - since - 1 < SHORT_ROWS) {
            set_free(w, since, row);
        }
        since = row;
    }
}

static bool begins_section(const work *w, int row)
{
    return row > 0 && w->free[row] && !w->free[row - 1];
}

/* The inset before a section has to be near its first row too. */
static void begin_low_enough(work *w)
{
    for (int row = w->edge->rows - 1; row > 0; row--) {
        range near = near_row(w->edge, row);
        int last = w->plan[row - 1];
        if (begins_section(w, row) && (last < near.low || last > near.high)) {
            set_free(w, row - 2, row);
        }
    }
}

/* Insets that keep the bound with the plan: within the row, before a section near the next. */
static void find_bounds(work *w)
{
    const hw_edge_rows *edge = w->edge;
    for (int row = 0; row < edge->rows; row++) {
        range own = near_halves(edge, 2 * row, 2 * row + 2);
        if (row + 1 < edge->rows && begins_section(w, row + 1)) {
            range next = near_row(edge, row + 1);
            own.low = next.low > own.low ? next.low : own.low;
            own.high = next.high < own.high ? next.high : own.high;
        }
        set_bounds(w, row, own);
    }
}

/* A group in the very last row would come a row too late at the edge that follows, so it is left
 * for the end at both: the inset of the row before is near there too. */
static bool left_for_end(const work *w, int row)
{
    bool last = row + 1 == w->edge->rows && row > 0;
    return last && w->free[row] && w->edge->may[row] >= HW_ROW_GROUP;
}

/* Now the plan holds where it is, and sections have bounds of their own. */
static void settle_bounds(work *w)
{
    const hw_edge_rows *edge = w->edge;
    for (int row = 0; row < edge->rows; row++) {
        range own = { w->plan[row], w->plan[row] };
        if (w->free[row]) {
            own = left_for_end(w, row) ? near_row(edge, row)
                                       : near_halves(edge, 2 * row + 1, 2 * row + 3);
        }
        set_bounds(w, row, own);
    }
    if (edge->starts_anywhere) {
        int start = start_inset(w, w->free[0]);
        set_bounds(w, 0, (range){ start, start });
    }
}

/* ---- The cheapest way ---- */

/* The ways to each inset of each row. */
typedef struct {
    size_t *begin; /* [rows + 1] of a row's insets */
    double *cost;
    int *came; /* the inset of the row before */
} ways;

static bool open_ways(const work *w, hw_arena *room, ways *out)
{
    size_t rows = (size_t)w->edge->rows;
    size_t *begin = hw_arena_get(room, rows + 1, sizeof *begin);
    if (begin == NULL) {
        return false;
    }
    for (size_t row = 0; row < rows; row++) {
        begin[row + 1] = begin[row] + (size_t)(w->high[row] - w->low[row] + 1);
    }
    *out = (ways){ .begin = begin,
        .cost = hw_arena_get(room, begin[rows], sizeof(double)),
        .came = hw_arena_get(room, begin[rows], sizeof(int)) };
    return out->cost != NULL && out->came != NULL;
}

/* Out of sections the plan has seen to that. */
static bool may_change(const work *w, int row, int change)
{
    if (change == 0 || !w->free[row]) {
        return true;
    }
    if (left_for_end(w, row)) {
        return false;
    }
    hw_row_kind kind = w->edge->may[row];
    bool single = kind == HW_ROW_SINGLE && w->edge->right_side == NULL && abs(change) == 1;
    return single || kind >= HW_ROW_GROUP ? !(kind == HW_ROW_HOLD && change < 0) : false;
}

static double change_cost(const work *w, int row, int change)
{
    const hw_edge_rows *edge = w->edge;
    if (change == 0 || !w->free[row]) {
        return 0;
    }
    double cost = one_change + (edge->may[row] == HW_ROW_SPARE ? spared : 0);
    if (edge->right_side == NULL) {
        cost += edge->may[row] == HW_ROW_SINGLE ? scattered : 0;
    } else if (abs(change) == 1 && !edge->right_side[row]) {
        cost += lone_group;
    }
    return cost;
}

/* Half-way along the larger step across of those where a row of a section is looked at. */
static bool on_step(const hw_edge_rows *edge, int row, int inset)
{
    bool found = false;
    for (int half = 2 * row + 1; half < 2 * row + 3 && half < 2 * edge->rows; half++) {
        found =
            found || (inset > edge->step_least[half] + 0.5 && inset < edge->step_most[half] - 0.5);
    }
    return found;
}

static double inset_cost(const work *w, int row, int inset)
{
    const hw_edge_rows *edge = w->edge;
    if (!w->free[row]) {
        return 0;
    }
    bool last = row + 1 == edge->rows;
    double cost = fabs(inset - edge->at[last ? 2 * row + 1 : 2 * row + 2]);
    cost += on_step(edge, row, inset) ? broken : 0;
    bool pair = edge->may[row] >= HW_ROW_GROUP && !last;
    return pair ? cost + off_pair * fabs(inset - edge->at[2 * row + 3]) : cost;
}

/* The cheapest way to one inset of a row; HUGE_VAL where there is none. */
static void reach(const work *w, ways *all, int row, int inset)
{
    bool first = row == 0;
    bool anywhere = first && w->edge->starts_anywhere;
    int low = first ? (anywhere ? inset : 0) : w->low[row - 1];
    int high = first ? low : w->high[row - 1];
    double least = HUGE_VAL;
    int came = 0;
    for (int last = low; last <= high; last++) {
        int change = inset - last;
        double so_far = first ? 0 : all->cost[all->begin[row - 1] + (size_t)(last - low)];
        double cost = so_far + change_cost(w, row, change);
        if (may_change(w, row, change) && cost < least) {
            least = cost;
            came = last;
        }
    }
    size_t here = all->begin[row] + (size_t)(inset - w->low[row]);
    all->cost[here] = least + inset_cost(w, row, inset);
    all->came[here] = came;
}

static hw_status cheapest(work *w, hw_arena *room)
{
    ways all = { 0 };
    if (!open_ways(w, room, &all)) {
        return HW_ERR_NOMEM;
    }
    int rows = w->edge->rows;
    for (int row = 0; row < rows; row++) {
        for (int i = w->low[row]; i <= w->high[row]; i++) {
            reach(w, &all, row, i);
        }
    }
    int best = w->low[rows - 1];
    for (int i = best; i <= w->high[rows - 1]; i++) {
        const double *costs = &all.cost[all.begin[rows - 1]];
        best = costs[i - w->low[rows - 1]] < costs[best - w->low[rows - 1]] ? i : best;
    }
    if (!isfinite(all.cost[all.begin[rows - 1] + (size_t)(best - w->low[rows - 1])])) {
        return HW_ERR_INTERNAL;
    }
    for (int row = rows - 1; row >= 0; row--) {
        w->inset[row] = best;
        best = all.came[all.begin[row] + (size_t)(best - w->low[row])];
    }
    return HW_OK;
}

/* ---- The edge that follows ---- */

/* Sections come a row later; what is planned does not. Where a single stitch makes up for a section
 * it changes at once, at both edges in one row. */
static void follow(const work *w, int *inset)
{
    const hw_edge_rows *edge = w->edge;
    inset[0] = w->free[0] ? start_inset(w, true) : w->inset[0];
    for (int row = 1; row < edge->rows; row++) {
        bool any = edge->right_side == NULL || edge->right_side[row];
        bool at_once = any && abs(w->inset[row] - inset[row - 1]) <= 1;
        bool later = w->free[row] || (w->free[row - 1] && !at_once);
        inset[row] = w->inset[later ? row - 1 : row];
    }
}

/* Rounds are planned as rows on a machine, and a section begins above them. It may begin with the
 * first row above them: the planned inset of the round before is that of its middle, which is near.
 */
static bool rounds_serve(const work *w)
{
    bool serve = true;
    for (int row = 0; row < w->edge->round_rows; row++) {
        serve = serve && !w->free[row];
    }
    return serve;
}

static hw_status make_plan(work *w, hw_arena *room)
{
    int any = w->edge->right_side == NULL ? w->edge->rows : w->edge->round_rows;
    plan_any_row(w, any);
    plan_pairs(w, any);
    free_held(w);
    align(w);
    close_gaps(w);
    begin_low_enough(w);
    find_bounds(w);
    hw_even_rows rows = { .rows = any, .low = w->low, .high = w->high, .fixed = w->free };
    hw_status status = any > 0 ? hw_even_rows_spread(&rows, room, w->plan) : HW_OK;
    settle_bounds(w);
    return status == HW_OK && !rounds_serve(w) ? HW_ERR_INTERNAL : status;
}

hw_status hw_edge_rows_find(const hw_edge_rows *edge, hw_arena *arena, int *inset)
{
    assert(edge->rows > 0);
    hw_arena room;
    hw_arena_init(&room, &arena->mem, arena->block_size);
    work w;
    hw_status status = open_work(edge, &room, &w) ? HW_OK : HW_ERR_NOMEM;
    if (status == HW_OK) {
        status = make_plan(&w, &room);
    }
    if (status == HW_OK) {
        status = cheapest(&w, &room);
    }
    if (status == HW_OK && edge->follows) {
        follow(&w, inset);
    } else if (status == HW_OK) {
        memcpy(inset, w.inset, (size_t)edge->rows * sizeof *inset);
    }
    hw_arena_release(&room);
    return status;
}
