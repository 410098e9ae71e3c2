/* The shaping of a piece in a knitter's steps, and steps back into rows.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "core/num.h"
#include "core/shape.h"

enum {
    FAR_ROWS = 8,     /* two groups farther apart are told one by one; own choice */
    FAR_SINGLES = 16, /* likewise two single stitches; own choice */
    FEW_STEPS = 6,    /* at one edge in one direction, told one after the other; own choice */
    MOST_MIXED = 600, /* changes among which runs that overlap are looked for */
    EDGES = 4,        /* left, right, and the neck's two */
};

/* A change at one edge in one row. */
typedef struct {
    int row, change; /* above 0: taken off */
    hw_step_kind kind;
    bool told;  /* a run has it already */
    bool half;  /* of a piece that the neck has parted: no run goes over that */
    bool fresh; /* the change before it at its edge is told with another list: no run goes on */
} event;

typedef struct {
    event *list; /* [rows] by row */
    int count;
} events;

static const hw_step_place places[EDGES] = { HW_AT_LEFT, HW_AT_RIGHT, HW_AT_NECK_LEFT,
    HW_AT_NECK_RIGHT };

static hw_step_kind kind_of(int change, bool held)
{
    if (held) {
        return HW_STEP_HOLD;
    }
    if (change == 1) {
        return HW_STEP_DECREASE;
    }
    if (change == -1) {
        return HW_STEP_INCREASE;
    }
    return change > 0 ? HW_STEP_BIND_OFF : HW_STEP_CAST_ON;
}

/* Stitches that an edge changes by in a row; the neck's first row belongs to the division. */
static int change_at(const hw_shape *shape, int edge, int row)
{
    int side = edge % 2;
    if (edge < 2) {
        const int *inset = shape->inset_sts[side];
        return inset[row] - (row > 0 ? inset[row - 1] : 0);
    }
    const int *halves = shape->neck_halves[side];
    bool parted = halves != NULL && row > shape->neck_row;
    return parted ? (halves[row] - halves[row - 1]) / 2 : 0;
}

static void collect(const hw_shape_task *task, const hw_shape *shape, int edge, events *out)
{
    for (int row = 0; row < shape->rows; row++) {
        int change = change_at(shape, edge, row);
        if (change != 0) {
            bool held = edge < 2 && hw_shape_holds(task, (hw_side)edge, row);
            out->list[out->count++] = (event){ .row = row,
                .change = change,
                .kind = kind_of(change, held),
                .half = row >= shape->neck_row };
        }
    }
}

/* ---- Runs ---- */

/* Steps so far, of one place; without a list they are only counted. */
typedef struct {
    hw_shape_step *list;
    int count;
} told;

static bool alike(const event *a, const event *b)
{
    return a->kind == b->kind && a->change == b->change;
}

static void tell(told *out, const event *first, int every, int times)
{
    if (out->list != NULL) {
        out->list[out->count] = (hw_shape_step){ .kind = first->kind,
            .row = first->row,
            .every = times > 1 ? every : 0,
            .times = times,
            .sts = abs(first->change) };
    }
    out->count++;
}

/* Two changes too far apart to be told in one; single stitches only where there are others too. */
static bool far_pair(const event *first, int times, int every, int count)
{
    bool group = abs(first->change) > 1;
    return times == 2 && every > (group ? FAR_ROWS : FAR_SINGLES) && (group || count > 2);
}

/* Each run begins where the one before has ended. */
static void tell_in_turn(const event *list, int count, told *out)
{
    for (int i = 0; i < count;) {
        int every = i + 1 < count ? list[i + 1].row - list[i].row : 0;
        int times = 1;
        while (i + times < count && alike(&list[i], &list[i + times]) &&
               list[i + times].row - list[i + times - 1].row == every) {
            times++;
        }
        times = far_pair(&list[i], times, every, count) ? 1 : times;
        tell(out, &list[i], every, times);
        i += times;
    }
}

/* The place of a change in a list by its row, or -1; `from` is not after it. */
static int find_row(const event *list, int count, int from, int row)
{
    int i = from;
    while (i < count && list[i].row < row) {
        i++;
    }
    return i < count && list[i].row == row ? i : -1;
}

/* How often changes like one follow it at a distance; `mark` says that they are told. */
static int follow_run(event *list, int count, int first, int every, bool mark)
{
    int times = 0;
    for (int i = first; i >= 0 && !list[i].told && alike(&list[first], &list[i]);) {
        times++;
        if (mark && i != first) {
            list[i].told = true;
        }
        i = find_row(list, count, i, list[i].row + every);
    }
    return times;
}

/* The longest run that begins with a change. */
static int longest_from(event *list, int count, int first, int least, int *every)
{
    int best = least;
    for (int i = first + 1; i < count; i++) {
        int gap = list[i].row - list[first].row;
        if ((list[count - 1].row - list[first].row) / gap + 1 <= best) {
            break;
        }
        int times = follow_run(list, count, first, gap, false);
        if (times > best) {
            best = times;
            *every = gap;
        }
    }
    return best;
}

/* Changes like the first, at one distance. */
typedef struct {
    int first, every, times;
} run;

/* The longest run among changes that are not told yet. */
static run longest(event *list, int count)
{
    run best = { .every = 1 };
    for (int i = 0; i < count; i++) {
        if (list[i].told) {
            continue;
        }
        int every = 1;
        int times = longest_from(list, count, i, best.times == 0 ? 1 : best.times, &every);
        if (times > best.times) {
            best = (run){ .first = i, .every = every, .times = times };
        }
    }
    return best;
}

/* The longest run again and again, those between its rows left for others. Gives up where there
 * would be more than `most`. */
static void tell_mixed(event *list, int count, int most, told *out)
{
    int before = out->count;
    for (int left = count; left > 0 && out->count - before <= most;) {
        run r = longest(list, count);
        r.times = far_pair(&list[r.first], r.times, r.every, count) ? 1 : r.times;
        if (r.times > 1) {
            (void)follow_run(list, count, r.first, r.every, true);
        }
        list[r.first].told = true;
        tell(out, &list[r.first], r.every, r.times);
        left -= r.times;
    }
}

/* Changes in one direction. Runs that overlap are harder to keep count of than runs in turn, so
 * they are for where those would be more than a few, and must save at least a third of the steps
 * (own choice). */
static void tell_block(event *list, int count, told *out)
{
    told in_turn = { 0 };
    tell_in_turn(list, count, &in_turn);
    told mixed = { .count = count };
    if (count <= MOST_MIXED && in_turn.count > FEW_STEPS) {
        mixed.count = 0;
        tell_mixed(list, count, 2 * in_turn.count / 3, &mixed);
    }
    for (int i = 0; i < count; i++) {
        list[i].told = false;
    }
    if (3 * mixed.count <= 2 * in_turn.count) {
        tell_mixed(list, count, count, out);
    } else {
        tell_in_turn(list, count, out);
    }
}

static void tell_all(const events *all, hw_step_place place, told *out)
{
    int from = out->count;
    for (int first = 0, last = 0; first < all->count; first = last) {
        const event *one = &all->list[first];
        while (last < all->count && (all->list[last].change > 0) == (one->change > 0) &&
               all->list[last].half == one->half && (last == first || !all->list[last].fresh)) {
            last++;
        }
        tell_block(all->list + first, last - first, out);
    }
    for (int i = from; i < out->count && out->list != NULL; i++) {
        out->list[i].place = place;
    }
}

/* ---- Both ends at once ---- */

/* Two edges' changes: those at both in one row, and the others. */
typedef struct {
    events both, one[2];
} shared;

static bool open_events(int rows, hw_arena *room, events *out)
{
    *out = (events){ .list = hw_arena_get(room, (size_t)rows, sizeof(event)) };
    return out->list != NULL;
}

static bool halves_alike(const hw_shape *shape, int row)
{
    return shape->neck_halves[HW_LEFT] == NULL || row < shape->neck_row ||
           hw_shape_half_sts(shape, row, HW_LEFT) == hw_shape_half_sts(shape, row, HW_RIGHT);
}

/* How many changes from here on are the same at both edges, with none at one edge between. */
static int same_from(const hw_shape *shape, const events *pair, const int *at)
{
    int count = 0;
    while (at[0] + count < pair[0].count && at[1] + count < pair[1].count) {
        const event *left = &pair[0].list[at[0] + count];
        const event *right = &pair[1].list[at[1] + count];
        if (left->row != right->row || !alike(left, right) || !halves_alike(shape, left->row)) {
            break;
        }
        count++;
    }
    return count;
}

static void move(events *to, const events *from, int *at, int count, bool fresh)
{
    for (int i = 0; i < count; i++) {
        to->list[to->count] = from->list[(*at)++];
        to->list[to->count++].fresh = fresh && i == 0;
    }
}

/* The edge of which the next change comes first. */
static int earlier(const events *pair, const int *at)
{
    if (at[0] == pair[0].count || at[1] == pair[1].count) {
        return at[0] == pair[0].count ? 1 : 0;
    }
    return pair[0].list[at[0]].row <= pair[1].list[at[1]].row ? 0 : 1;
}

/* Changes count as shared where at least so many in succession are. */
static void share(const hw_shape *shape, const events *pair, int least, shared *out)
{
    out->both.count = out->one[0].count = out->one[1].count = 0;
    int at[2] = { 0 };
    bool apart[2] = { true, true }; /* each edge's last change is told of that edge alone */
    while (at[0] < pair[0].count || at[1] < pair[1].count) {
        int same = same_from(shape, pair, at);
        if (same >= least) {
            move(&out->both, &pair[0], &at[0], same, apart[0] || apart[1]);
            at[1] += same;
            apart[0] = apart[1] = false;
            continue;
        }
        int next = earlier(pair, at);
        for (int edge = 0; edge < 2; edge++) {
            if (same > 0 || edge == next) {
                move(&out->one[edge], &pair[edge], &at[edge], same > 0 ? same : 1, !apart[edge]);
                apart[edge] = true;
            }
        }
    }
}

static void tell_shared(const shared *s, bool neck, told *out)
{
    tell_all(&s->both, neck ? HW_AT_NECK_BOTH : HW_AT_BOTH, out);
    tell_all(&s->one[0], places[neck ? 2 : 0], out);
    tell_all(&s->one[1], places[neck ? 3 : 1], out);
}

/* The steps of two edges, with as much told of both at once as makes the fewest. */
static hw_status tell_pair(
    const hw_shape *shape, const events *pair, bool neck, hw_arena *room, told *out)
{
    static const int leasts[] = { 1, 2, 4, INT_MAX };
    shared s;
    if (!open_events(shape->rows, room, &s.both) || !open_events(shape->rows, room, &s.one[0]) ||
        !open_events(shape->rows, room, &s.one[1])) {
        return HW_ERR_NOMEM;
    }
    int best = 0;
    int fewest = INT_MAX;
    for (size_t i = 0; i < sizeof leasts / sizeof leasts[0]; i++) {
        told tried = { 0 };
        share(shape, pair, leasts[i], &s);
        tell_shared(&s, neck, &tried);
        best = tried.count < fewest ? leasts[i] : best;
        fewest = tried.count < fewest ? tried.count : fewest;
    }
    share(shape, pair, best, &s);
    tell_shared(&s, neck, out);
    return HW_OK;
}

/* ---- The list ---- */

/* Stitches of a row as a place counts them: of its half, once there are halves. */
static int left_at(const hw_shape *shape, hw_step_place place, int row)
{
    if (shape->neck_halves[HW_LEFT] == NULL || row < shape->neck_row) {
        return hw_shape_sts(shape, row);
    }
    bool left = place == HW_AT_LEFT || place == HW_AT_NECK_LEFT;
    return hw_shape_half_sts(shape, row, left ? HW_LEFT : HW_RIGHT);
}

/* Stitches that were left unworked, in the row that works them again. */
static void tell_back(const hw_shape *shape, told *out)
{
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        if (shape->held_sts[side] > 0) {
            out->list[out->count++] = (hw_shape_step){ .kind = HW_STEP_BACK,
                .place = places[side],
                .row = shape->back_row[side],
                .times = 1,
                .sts = shape->held_sts[side],
                .left_sts = left_at(shape, places[side], shape->back_row[side]) };
        }
    }
}

static void tell_end(hw_step_place place, int row, int sts, told *out)
{
    out->list[out->count++] =
        (hw_shape_step){ .kind = HW_STEP_END, .place = place, .row = row, .times = 1, .sts = sts };
}

/* The neck's division, and what is left at the top. */
static void tell_ends(const hw_shape_task *task, const hw_shape *shape, told *out)
{
    if (!hw_shape_parted(shape)) {
        tell_end(HW_AT_MIDDLE, hw_shape_most_rows(shape), hw_shape_top_sts(shape), out);
        return;
    }
    out->list[out->count++] = (hw_shape_step){ .kind = HW_STEP_DIVIDE,
        .place = HW_AT_MIDDLE,
        .row = shape->neck_row,
        .times = 1,
        .sts = shape->neck_halves[HW_LEFT][shape->neck_row],
        .slit = task->outline->slit_cm > 0,
        .left_sts = hw_shape_half_sts(shape, shape->neck_row, HW_RIGHT) };
    int rows[] = { hw_shape_rows(shape, HW_LEFT), hw_shape_rows(shape, HW_RIGHT) };
    int left = hw_shape_half_sts(shape, rows[HW_LEFT] - 1, HW_LEFT);
    int right = hw_shape_half_sts(shape, rows[HW_RIGHT] - 1, HW_RIGHT);
    if (left == right && rows[HW_LEFT] == rows[HW_RIGHT]) {
        tell_end(HW_AT_BOTH, rows[HW_LEFT], left, out);
    } else {
        tell_end(HW_AT_LEFT, rows[HW_LEFT], left, out);
        tell_end(HW_AT_RIGHT, rows[HW_RIGHT], right, out);
    }
}

static int compare(const void *a, const void *b)
{
    const hw_shape_step *first = a;
    const hw_shape_step *second = b;
    if (first->row != second->row) {
        return first->row < second->row ? -1 : 1;
    }
    return (first->place > second->place) - (first->place < second->place);
}

/* A step for each change at most, what comes back at two edges, the division and two ends. */
static bool open_told(int changes, hw_arena *arena, told *out)
{
    out->list = hw_arena_get(arena, (size_t)changes + 5, sizeof *out->list);
    return out->list != NULL;
}

static hw_status tell_edges(
    const hw_shape_task *task, const hw_shape *shape, hw_arena *arena, told *out)
{
    hw_arena room;
    hw_arena_init(&room, &arena->mem, arena->block_size);
    events edges[EDGES] = { 0 };
    int changes = 0;
    bool good = true;
    for (int i = 0; i < EDGES && good; i++) {
        good = open_events(shape->rows, &room, &edges[i]);
        if (good) {
            collect(task, shape, i, &edges[i]);
            changes += edges[i].count;
        }
    }
    good = good && open_told(changes, arena, out);
    hw_status status = good ? HW_OK : HW_ERR_NOMEM;
    for (int i = 0; i < EDGES && status == HW_OK; i += 2) {
        status = tell_pair(shape, &edges[i], i == 2, &room, out);
    }
    hw_arena_release(&room);
    return status;
}

hw_status hw_shape_steps_of(
    const hw_shape_task *task, const hw_shape *shape, hw_arena *arena, hw_shape_steps *out)
{
    told all = { 0 };
    hw_status status = tell_edges(task, shape, arena, &all);
    if (status != HW_OK) {
        return status;
    }
    for (int i = 0; i < all.count; i++) {
        hw_shape_step *step = &all.list[i];
        step->left_sts = left_at(shape, step->place, step->row + step->every * (step->times - 1));
    }
    tell_back(shape, &all);
    tell_ends(task, shape, &all);
    qsort(all.list, (size_t)all.count, sizeof *all.list, compare);
    *out = (hw_shape_steps){ .list = all.list, .count = all.count };
    return HW_OK;
}
