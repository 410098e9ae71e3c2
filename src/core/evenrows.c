/* Changes of one stitch at even distances, where rounding leaves them a row or two of freedom.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/evenrows.h"

#include <assert.h>
#include <limits.h>
#include <stdlib.h>

enum {
    MOST_MOVE = 2, /* rows by which a change may move from where rounding puts it */
    FEW_STEPS = 6,
    MOST_RUNS = 4, /* that take turns */
    PLACES = 2 * MOST_MOVE + 1,
    STATES = 2 * PLACES * PLACES, /* of a change */
    NO_EXCESS = 1000,             /* steps that are too many for any evenness gained */
};

/* What a step more costs; all rows that changes move by cost less. */
static const long long one_step = 1 << 20;

typedef struct {
    const hw_even_rows *rows;
    int *inset;          /* [rows] */
    int *from, *to;      /* [rows] in which rows a change can fall */
    int *at, *moved;     /* [rows] rows of changes, as rounding puts them and as they are spread */
    long long *cost;     /* [rows * STATES] of the best way to each state */
    unsigned char *came; /* [rows * STATES] the state before */
    int uneven;          /* steps that a row of excess weighs as much as */
} work;

static bool open_work(const hw_even_rows *rows, hw_arena *arena, int *inset, work *out)
{
    size_t n = (size_t)rows->rows;
    *out = (work){ .rows = rows,
        .inset = inset,
        .from = hw_arena_get(arena, n, sizeof(int)),
        .to = hw_arena_get(arena, n, sizeof(int)),
        .at = hw_arena_get(arena, n, sizeof(int)),
        .moved = hw_arena_get(arena, n, sizeof(int)),
        .cost = hw_arena_get(arena, n * STATES, sizeof(long long)),
        .came = hw_arena_get(arena, n * STATES, 1) };
    return out->from != NULL && out->to != NULL && out->at != NULL && out->moved != NULL &&
           out->cost != NULL && out->came != NULL;
}

static bool keeps(const work *w, int row, int inset)
{
    return inset >= w->rows->low[row] && inset <= w->rows->high[row];
}

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
        int inset = w->inset[at];
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

/* ---- One run after the other ---- */

/* A change in its row, the change before it in its own, and whether a run begins with it: then the
 * distance between them is no run's. Places count from MOST_MOVE rows below where rounding puts a
 * change. */
typedef struct {
    int place, before;
    bool begins;
} state;

static int index_of(state s)
{
    return 2 * (PLACES * s.place + s.before) + (s.begins ? 1 : 0);
}

static state state_of(int index)
{
    return (state){ index / 2 / PLACES, index / 2 % PLACES, index % 2 != 0 };
}

static int row_at(const work *w, int change, int place)
{
    return w->at[change] + place - MOST_MOVE;
}

static bool fits(const work *w, int change, int place)
{
    int row = row_at(w, change, place);
    return row >= w->from[change] && row <= w->to[change];
}

/* Rows by which neighbouring distances differ more than by the one that division leaves. */
static int excess(int distance, int next)
{
    int differ = abs(next - distance);
    return differ > 1 ? differ - 1 : 0;
}

static void go_on(work *w, int change, int from, int place)
{
    state s = state_of(from);
    int next = row_at(w, change + 1, place) - row_at(w, change, s.place);
    int distance = change > 0 ? row_at(w, change, s.place) - row_at(w, change - 1, s.before) : next;
    if (next < 1) {
        return;
    }
    bool ends = !s.begins && next != distance;
    int to = index_of((state){ place, s.place, ends });
    int steps = w->uneven * excess(distance, next) + (ends ? 1 : 0);
    long long cost = w->cost[change * STATES + from] + steps * one_step + abs(place - MOST_MOVE);
    if (cost < w->cost[(change + 1) * STATES + to]) {
        w->cost[(change + 1) * STATES + to] = cost;
        w->came[(change + 1) * STATES + to] = (unsigned char)from;
    }
}

/* The rows of changes of which the distances are most even, in few runs; what they cost in steps.
 */
static int spread_in_turn(work *w, const block *b)
{
    for (int k = 0; k < b->count * STATES; k++) {
        w->cost[k] = LLONG_MAX;
    }
    for (int place = 0; place < PLACES; place++) {
        if (fits(w, 0, place)) {
            w->cost[index_of((state){ place, 0, true })] = one_step + abs(place - MOST_MOVE);
        }
    }
    for (int i = 0; i < (b->count - 1) * STATES; i++) {
        for (int place = 0; place < PLACES && w->cost[i] < LLONG_MAX; place++) {
            if (fits(w, i / STATES + 1, place)) {
                go_on(w, i / STATES, i % STATES, place);
            }
        }
    }
    const long long *last = w->cost + (b->count - 1) * STATES;
    int best = 0;
    for (int k = 1; k < STATES; k++) {
        best = last[k] < last[best] ? k : best;
    }
    int steps = (int)(last[best] / one_step);
    for (int i = b->count - 1; i >= 0; i--) {
        w->moved[i] = row_at(w, i, state_of(best).place);
        best = w->came[i * STATES + best];
    }
    return steps;
}

/* ---- Runs that take turns ---- */

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

static int all_excess(const work *w, const block *b)
{
    int sum = 0;
    for (int i = 2; i < b->count; i++) {
        const int *moved = &w->moved[i];
        sum += excess(moved[-1] - moved[-2], moved[0] - moved[-1]);
    }
    return sum;
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

/* Neighbouring distances of which none differs by more than one row, in the fewest runs; where an
 * edge bends and that cannot be, a run more weighs as much as a row more between them (own choice).
 */
static int spread_one_by_one(work *w, const block *b)
{
    w->uneven = NO_EXCESS;
    int steps = spread_in_turn(w, b);
    if (all_excess(w, b) > 0) {
        w->uneven = 1;
        steps = spread_in_turn(w, b);
    }
    return steps;
}

/* Runs that take turns are harder to knit than one after the other, so they are for where those
 * would be more than a few, must save at least a third of the steps (own choice), and be as even.
 */
static void choose(work *w, const block *b)
{
    int in_turn = spread_one_by_one(w, b);
    int most_excess = all_excess(w, b);
    int best = 1;
    int fewest = 2 * in_turn / 3;
    for (int runs = 2; runs <= MOST_RUNS && in_turn > FEW_STEPS; runs++) {
        int steps = spread(w, b, runs) + all_excess(w, b);
        if (steps <= fewest && all_excess(w, b) <= most_excess) {
            best = runs;
            fewest = steps - 1;
        }
    }
    (void)(best > 1 ? spread(w, b, best) : spread_one_by_one(w, b));
}

static void even_block(work *w, const block *b)
{
    find_windows(w, b);
    choose(w, b);
    int inset = w->inset[b->first_row];
    int next = 0;
    for (int row = b->first_row + 1; row <= b->last_row; row++) {
        if (next < b->count && w->moved[next] == row) {
            inset += b->sign;
            next++;
        }
        w->inset[row] = inset;
    }
}

/* Gentle rows from first to last: a block for each direction. */
static void even_part(work *w, int first, int last)
{
    block b = { .first_row = first };
    for (int row = first + 1; row <= last + 1; row++) {
        /* a block that was spread already ends with the inset that it had */
        int change = row <= last ? w->inset[row] - w->inset[row - 1] : -b.sign;
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
    int rows = w->rows->rows;
    for (int first = 0; first < rows; first++) {
        int last = first;
        while (!w->rows->fixed[first] && last + 1 < rows && !w->rows->fixed[last + 1]) {
            last++;
        }
        if (last > first) {
            even_part(w, first, last);
        }
        first = last;
    }
}

hw_status hw_even_rows_spread(const hw_even_rows *rows, hw_arena *arena, int *inset)
{
    work w;
    if (!open_work(rows, arena, inset, &w)) {
        return HW_ERR_NOMEM;
    }
    even_out(&w);
    return HW_OK;
}
