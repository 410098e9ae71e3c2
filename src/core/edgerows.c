/* Whole stitches for each row of an edge: regular where it runs gently, in groups where it is flat.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/edgerows.h"

#include <assert.h>
#include <limits.h>
#include <math.h>
#include <stdlib.h>

#include "core/num.h"

/* How it is done, and why that is always possible.
 *
 * Let f be the wanted inset. A row may have any inset within half a stitch of f at some height of
 * that row, its ends included: from up(least - 1/2) to down(most + 1/2), where least and most are
 * taken of f within the row. Only such insets are ever chosen, so the bound holds by itself.
 *
 * A way through the rows exists. Let p be a row that may have a group, and p + 1 one that may not.
 * Give both nearest(f(y)), y the height at which p ends and p + 1 begins: y belongs to both rows,
 * so both keep the bound, and all change falls at the start of p. A first row that may not have a
 * group keeps 0, which is f where it begins. Two rows with groups in succession need no pairing.
 * f(y) lies at an end of a step across, if there is one, so no way has to break one into parts.
 *
 * Which way is taken: where f is gentle the rows have a plan that does not look at where rows
 * begin, so that both edges of a piece get the same; elsewhere the cheapest way is found row by
 * row, by dynamic programming. To leave the plan costs more than all else together.
 *
 * The plan on a machine is nearest(f) half-way up each row, which changes by a stitch in single
 * rows where f is gentle; f reaches half a stitch between two insets at a height that belongs to
 * one row, and in that row and the next both insets keep the bound. Within this freedom changes
 * move so that as many as possible in succession have one distance, or a few that take turns
 * (even_block). In hand knitting
 * changes fall into right-side rows, and the plan is nearest(f) where the right-side row ends. */

enum {
    SHORT_ROWS = 4, /* a gentle part of fewer rows between two flat ones is worked as they are */
    MOST_MOVE = 2,  /* rows by which a change may move from where rounding puts it */
    FEW_STEPS = 6,
    MOST_RUNS = 4, /* that take turns */
};

/* A stitch in each row is no more than that. */
#define SAME_STS 1e-9

/* What a choice costs. Own choice, but for the order: the plan first. */
static const double off_plan = 1e4; /* for a stitch off the plan */
static const double one_change = 1; /* for a change where there is no plan */
static const double lone_group = 1; /* more, for a group of one in a wrong-side row */
static const double off_pair = 0.1; /* more, for a stitch off what is drawn within a pair */
static const double scattered = 4;  /* more, for a single stitch in a row without groups */
static const double spared = 100;   /* more, for a group where none should be */
static const double broken = 1e3;   /* for a stop half-way along a step across */

typedef struct {
    const hw_edge_rows *edge;
    int *low, *high; /* [rows] the insets that keep the bound */
    int *plan;       /* [rows] */
    bool *free;      /* [rows] the plan does not hold there */
    int *from, *to;  /* [rows] windows of changes; see even_block */
    int *at, *moved; /* [rows] rows of changes, as rounding puts them and as they are spread */
} work;

static bool open_work(const hw_edge_rows *edge, hw_arena *room, work *out)
{
    size_t n = (size_t)edge->rows;
    work w = { .edge = edge, .free = hw_arena_get(room, n, sizeof *w.free) };
    int **const lists[] = { &w.low, &w.high, &w.plan, &w.from, &w.to, &w.at, &w.moved };
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

static void find_bounds(work *w)
{
    const hw_edge_rows *edge = w->edge;
    for (int row = 0; row < edge->rows; row++) {
        w->low[row] = within_limits(hw_num_up(edge->least[row] - 0.5));
        w->high[row] = within_limits(hw_num_down(edge->most[row] + 0.5));
    }
    if (edge->starts_anywhere) {
        /* One inset for both halves, whichever of them can have a group in the next row: it has
         * to keep the bound there too. */
        w->low[0] = within_limits(hw_num_nearest(edge->at_low[1]));
        w->high[0] = w->low[0];
    }
}

static bool keeps(const work *w, int row, int inset)
{
    return inset >= w->low[row] && inset <= w->high[row];
}

/* ---- The plan ---- */

static int before(const work *w, int row)
{
    bool first = row == 0;
    return first ? (w->edge->starts_anywhere ? w->plan[0] : 0) : w->plan[row - 1];
}

static void set_free(work *w, int first, int last)
{
    for (int row = first < 0 ? 0 : first; row <= last && row < w->edge->rows; row++) {
        w->free[row] = true;
    }
}

/* Flat parts: more than a stitch in one row. */
static void plan_any_row(work *w)
{
    const hw_edge_rows *edge = w->edge;
    for (int row = 0; row < edge->rows; row++) {
        bool fixed = row == 0 && edge->starts_anywhere;
        w->plan[row] = fixed ? w->low[0] : within_limits(hw_num_nearest(edge->at_mid[row]));
    }
    for (int row = 0; row < edge->rows; row++) {
        double climb = edge->at_low[row + 1] - edge->at_low[row];
        if (abs(w->plan[row] - before(w, row)) >= 2 || fabs(climb) > 1 + SAME_STS) {
            set_free(w, row - 1, row + 2);
        }
    }
}

/* The same where rows go in pairs, each from a right-side row on. */
static void plan_pairs(work *w)
{
    const hw_edge_rows *edge = w->edge;
    int last = edge->starts_anywhere ? w->low[0] : 0;
    for (int row = 0; row < edge->rows; row++) {
        bool fixed = row == 0 && edge->starts_anywhere;
        int inset = last;
        if (edge->right_side[row] && !fixed) {
            inset = within_limits(hw_num_nearest(edge->at_low[row + 1]));
        }
        w->plan[row] = inset;
        if (abs(inset - last) >= 2) {
            set_free(w, row - 2, row + 3);
        }
        last = inset;
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

/* Rows that can only hold follow no plan. */
static void free_held(work *w)
{
    for (int row = 0; row < w->edge->rows; row++) {
        if (w->edge->may[row] == HW_ROW_HOLD) {
            set_free(w, row - 2, row + 1);
        }
    }
}

/* ---- Even distances ---- */

/* Changes in one direction between two rows of which the insets stay. */
typedef struct {
    int first_row, last_row; /* changes fall after the first, and not after the last */
    int sign;
    int count; /* their rows are in work.at */
} block;

/* In which rows each change can fall, with all others where they are or moved likewise. */
static void find_windows(work *w, const block *b)
{
    for (int i = 0; i < b->count; i++) {
        int at = w->at[i];
        int inset = w->plan[at];
        int from = at;
        int to = at;
        while (at - from < MOST_MOVE && from - 1 > b->first_row && keeps(w, from - 1, inset)) {
            from--;
        }
        while (to - at < MOST_MOVE && to < b->last_row && keeps(w, to, inset - b->sign)) {
            to++;
        }
        w->from[i] = from;
        w->to[i] = to;
    }
    for (int i = b->count - 2; i >= 0; i--) {
        if (w->to[i] > w->to[i + 1] - 1) {
            w->to[i] = w->to[i + 1] - 1;
        }
    }
}

/* Changes in runs that take turns, each at the same distance: with one run all have this distance,
 * with two it is that from a change to the next but one, and so on. */
typedef struct {
    int rows[MOST_RUNS + 1]; /* of the first changes, up to where the first run goes on */
    int fixed;               /* so many of them */
    int runs, times;         /* `times` of all changes, not of each run */
    int strain;              /* rows by which they have moved, all together */
} weave;

static int row_of(const weave *v, int change)
{
    if (change < v->fixed) {
        return v->rows[change];
    }
    return v->rows[change % v->runs] + change / v->runs * (v->rows[v->runs] - v->rows[0]);
}

/* How far the distances of the first changes hold. */
static void extend(const work *w, const block *b, int change, weave *v)
{
    v->times = 0;
    v->strain = 0;
    for (int i = change; i < b->count; i++) {
        int row = row_of(v, i - change);
        if (row < w->from[i] || row > w->to[i]) {
            break;
        }
        v->times++;
        v->strain += abs(row - w->at[i]);
    }
}

/* The first choice of rows from the k-th on: each as early as can be. */
static void earliest(const work *w, int change, int k, weave *v)
{
    for (; k < v->fixed; k++) {
        int from = w->from[change + k];
        int least = k > 0 ? v->rows[k - 1] + 1 : v->rows[0];
        v->rows[k] = from > least ? from : least;
    }
}

/* The next choice, counted up like the wheels of a row counter; false after the last. */
static bool next_choice(const work *w, int change, weave *v)
{
    int k = v->fixed - 1;
    while (k >= 0 && v->rows[k] >= w->to[change + k]) {
        k--;
    }
    if (k < 0) {
        return false;
    }
    v->rows[k]++;
    earliest(w, change, k + 1, v);
    return true;
}

static bool better(const weave *a, const weave *b)
{
    return a->times != b->times ? a->times > b->times : a->strain < b->strain;
}

/* The longest that begins with a change, not before a row. */
static weave longest(const work *w, const block *b, int change, int runs, int not_before)
{
    int left = b->count - change;
    weave best = { 0 };
    weave tried = {
        .rows = { not_before }, .fixed = left < runs + 1 ? left : runs + 1, .runs = runs
    };
    earliest(w, change, 0, &tried);
    do {
        extend(w, b, change, &tried);
        if (better(&tried, &best)) {
            best = tried;
        }
    } while (next_choice(w, change, &tried));
    return best;
}

/* The longest again and again; the steps that tell them. One that keeps to its windows leaves room
 * for the next, because a window ends early enough for those after it. */
static int spread(work *w, const block *b, int runs)
{
    int steps = 0;
    int not_before = 0;
    for (int done = 0; done < b->count;) {
        weave v = longest(w, b, done, runs, not_before);
        assert(v.times > 0);
        for (int i = 0; i < v.times; i++) {
            w->moved[done + i] = row_of(&v, i);
        }
        steps += v.times < runs ? v.times : runs;
        done += v.times;
        not_before = w->moved[done - 1] + 1;
    }
    return steps;
}

/* Runs that take turns are harder to knit than one after the other, so they are for where those
 * would be more than a few, and must save at least a third of the steps (own choice). */
static void even_block(work *w, const block *b)
{
    find_windows(w, b);
    int best = 1;
    int in_turn = spread(w, b, 1);
    int fewest = 2 * in_turn / 3;
    for (int runs = 2; runs <= MOST_RUNS && in_turn > FEW_STEPS; runs++) {
        int steps = spread(w, b, runs);
        if (steps <= fewest) {
            best = runs;
            fewest = steps - 1;
        }
    }
    (void)spread(w, b, best);
    int inset = w->plan[b->first_row];
    int next = 0;
    for (int row = b->first_row + 1; row <= b->last_row; row++) {
        if (next < b->count && w->moved[next] == row) {
            inset += b->sign;
            next++;
        }
        w->plan[row] = inset;
    }
}

/* Gentle rows from first to last: a block for each direction. */
static void even_part(work *w, int first, int last)
{
    block b = { .first_row = first };
    for (int row = first + 1; row <= last + 1; row++) {
        /* a block that was spread already ends with the inset that it had */
        int change = row <= last ? w->plan[row] - w->plan[row - 1] : -b.sign;
        if (change == 0) {
            continue;
        }
        if (b.count > 0 && change != b.sign) {
            b.last_row = row - 1;
            even_block(w, &b);
            b = (block){ .first_row = row - 1 };
        }
        if (row <= last) {
            b.sign = change;
            w->at[b.count++] = row;
        }
    }
}

static void even_out(work *w)
{
    int rows = w->edge->rows;
    for (int first = 0; first < rows; first++) {
        int last = first;
        while (!w->free[first] && last + 1 < rows && !w->free[last + 1]) {
            last++;
        }
        if (last > first) {
            even_part(w, first, last);
        }
        first = last;
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

static bool may_change(hw_row_kind kind, int change)
{
    static const int most[HW_ROW_KIND_COUNT] = { [HW_ROW_SINGLE] = 1,
        [HW_ROW_GROUP] = INT_MAX,
        [HW_ROW_SPARE] = INT_MAX,
        [HW_ROW_HOLD] = INT_MAX };
    return change == 0 || (abs(change) <= most[kind] && !(kind == HW_ROW_HOLD && change < 0));
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

static double inset_cost(const work *w, int row, int inset)
{
    const hw_edge_rows *edge = w->edge;
    if (!w->free[row]) {
        return off_plan * abs(inset - w->plan[row]);
    }
    double cost = fabs(inset - edge->at_mid[row]);
    bool on_step = inset > edge->step_least[row] + 0.5 && inset < edge->step_most[row] - 0.5;
    cost += on_step ? broken : 0;
    bool group = edge->may[row] >= HW_ROW_GROUP;
    return group ? cost + off_pair * fabs(inset - edge->at_low[row + 1]) : cost;
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
        if (may_change(w->edge->may[row], change) && cost < least) {
            least = cost;
            came = last;
        }
    }
    size_t here = all->begin[row] + (size_t)(inset - w->low[row]);
    all->cost[here] = least + inset_cost(w, row, inset);
    all->came[here] = came;
}

static hw_status cheapest(const work *w, hw_arena *room, int *inset)
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
        inset[row] = best;
        best = all.came[all.begin[row] + (size_t)(best - w->low[row])];
    }
    return HW_OK;
}

hw_status hw_edge_rows_find(const hw_edge_rows *edge, hw_arena *arena, int *inset)
{
    assert(edge->rows > 0);
    hw_arena room;
    hw_arena_init(&room, &arena->mem, arena->block_size);
    work w;
    hw_status status = open_work(edge, &room, &w) ? HW_OK : HW_ERR_NOMEM;
    if (status == HW_OK) {
        find_bounds(&w);
        if (edge->right_side != NULL) {
            plan_pairs(&w);
        } else {
            plan_any_row(&w);
        }
        free_held(&w);
        close_gaps(&w);
        if (edge->right_side == NULL) {
            even_out(&w);
        }
        status = cheapest(&w, &room, inset);
    }
    hw_arena_release(&room);
    return status;
}
