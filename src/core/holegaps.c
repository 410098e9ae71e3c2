/* The most even places for buttonholes between figures, by dynamic programming over places.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/holegaps.h"

#include <assert.h>
#include <math.h>

#include "core/num.h"

/* Where a hole can lie. Of a mirrored chain also the gap in which its mirror image lies. */
typedef struct {
    int place, gap, mirror_gap;
} spot;

/* What a way costs: first the spaces, then the distances from even places. */
typedef struct {
    long long spaces, places;
} cost;

static const cost no_way = { -1, 0 };

/* Holes one after the other, from the lower end up, or, mirrored, the lower half of them, of which
 * each stands for its mirror image as well: the places of both add up to `sum`. */
typedef struct {
    const hw_holes_task *task;
    const int *even;
    const spot *spots; /* rising */
    int count;
    int holes; /* of the chain */
    bool mirrored;
    int sum;
    int parts, span_sts; /* the even space from a hole to the next is span / parts */
    int reach_sts;       /* spaces that differ by more are not looked at */
    cost *now, *next;    /* [count]: of the holes so far, the last of them at this spot */
    int *before;         /* [holes * count]: the spot of the hole below */
} chain;

static bool is_way(cost a)
{
    return a.spaces >= 0;
}

static bool is_less(cost a, cost b)
{
    bool less = a.spaces < b.spaces || (a.spaces == b.spaces && a.places < b.places);
    return is_way(a) && (!is_way(b) || less);
}

static long long square(long long x)
{
    return x * x;
}

static long long off_even(const chain *c, int hole, int place)
{
    return square(place - c->even[hole]);
}

/* Squared, in parts of a stitch. */
static long long off_space(const chain *c, int sts)
{
    return square((long long)c->parts * sts - c->span_sts);
}

/* Whether the hole of a spot is its own mirror image. */
static bool in_middle(const chain *c, const spot *s)
{
    return c->mirrored && 2 * s->place == c->sum;
}

/* What a hole costs by itself: its distance, and at the ends of the band what that counts. */
static cost own_cost(const chain *c, int hole, const spot *s)
{
    int last = c->task->holes - 1;
    long long scale = square(c->parts);
    cost own = { 0, off_even(c, hole, s->place) };
    own.spaces += hole == 0 ? scale * own.places : 0;
    if (c->mirrored && !in_middle(c, s)) {
        long long mirror = off_even(c, last - hole, c->sum - s->place);
        own.places += mirror;
        own.spaces += hole == 0 ? scale * mirror : 0;
    } else if (!c->mirrored && hole == last) {
        own.spaces += scale * own.places;
    }
    return own;
}

/* What is between the halves of a mirrored chain; no way where they do not meet as they should. */
static cost closing_cost(const chain *c, const spot *s)
{
    if (!c->mirrored) {
        return (cost){ 0 };
    }
    if (c->task->holes % 2 != 0) {
        return in_middle(c, s) ? (cost){ 0 } : no_way;
    }
    int between = c->sum - 2 * s->place;
    bool apart = between > c->task->hole_sts && s->gap < s->mirror_gap;
    return apart ? (cost){ off_space(c, between), 0 } : no_way;
}

static bool may_follow(const chain *c, const spot *low, const spot *high)
{
    bool gaps = low->gap < high->gap && (!c->mirrored || low->mirror_gap > high->mirror_gap);
    return gaps && high->place - low->place > c->task->hole_sts;
}

static cost add(cost a, cost b)
{
    return is_way(a) && is_way(b) ? (cost){ a.spaces + b.spaces, a.places + b.places } : no_way;
}

/* The best way to a hole at a spot. */
static void reach_spot(chain *c, int hole, int at)
{
    const spot *s = &c->spots[at];
    cost best = no_way;
    int from = -1;
    for (int low = at - 1; low >= 0; low--) {
        int space = s->place - c->spots[low].place;
        if ((long long)c->parts * space > c->span_sts + (long long)c->parts * c->reach_sts) {
            break;
        }
        if (!is_way(c->now[low]) || !may_follow(c, &c->spots[low], s)) {
            continue;
        }
        cost step = { (c->mirrored ? 2 : 1) * off_space(c, space), 0 };
        cost way = add(c->now[low], step);
        if (!is_less(best, way)) {
            best = way;
            from = low;
        }
    }
    c->next[at] = add(best, own_cost(c, hole, s));
    c->before[hole * c->count + at] = from;
}

/* The least cost of the chain, and the spot of its last hole. */
static cost follow(chain *c, int *last)
{
    for (int at = 0; at < c->count; at++) {
        c->now[at] = own_cost(c, 0, &c->spots[at]);
    }
    for (int hole = 1; hole < c->holes; hole++) {
        for (int at = 0; at < c->count; at++) {
            reach_spot(c, hole, at);
        }
        cost *spare = c->now;
        c->now = c->next;
        c->next = spare;
    }
    cost best = no_way;
    for (int at = 0; at < c->count; at++) {
        cost whole = add(c->now[at], closing_cost(c, &c->spots[at]));
        if (is_less(whole, best)) {
            best = whole;
            *last = at;
        }
    }
    return best;
}

static void put(hw_hole *hole, int place, int gap)
{
    hole->below_sts = place;
    hole->gap_after = gap + 1;
}

static void write_down(const chain *c, int last, hw_hole *holes)
{
    for (int hole = c->holes - 1, at = last; hole >= 0; hole--) {
        const spot *s = &c->spots[at];
        put(&holes[hole], s->place, s->gap);
        if (c->mirrored) {
            put(&holes[c->task->holes - 1 - hole], c->sum - s->place, s->mirror_gap);
        }
        at = hole > 0 ? c->before[hole * c->count + at] : 0;
    }
}

/* ---- Spots ---- */

/* Those of all gaps, with none that would pass an end of the band. */
static int find_spots(const hw_holes_task *task, spot *out)
{
    int figure = task->repeat - task->gap;
    int spare = task->gap - task->hole_sts;
    int count = 0;
    for (int gap = 0; gap + 1 < task->motifs; gap++) {
        int start = task->first_sts + gap * task->repeat + figure;
        /* an odd stitch is cut below, or above */
        int from = spare >= 0 ? start : start - (-spare + 1) / 2;
        int to = spare >= 0 ? start + spare : start - -spare / 2;
        for (int place = from; place <= to; place++) {
            bool fresh = count == 0 || out[count - 1].place < place;
            if (fresh && place >= 0 && place + task->hole_sts <= task->sts) {
                out[count++] = (spot){ .place = place, .gap = gap };
            }
        }
    }
    return count;
}

/* Of all spots those with a mirror image that is a spot as well, up to the middle. */
static int find_mirrored(const spot *all, int count, int sum, spot *out)
{
    int found = 0;
    int high = count - 1;
    for (int low = 0; low < count && 2 * all[low].place <= sum; low++) {
        while (high >= 0 && all[high].place > sum - all[low].place) {
            high--;
        }
        if (high >= 0 && all[high].place == sum - all[low].place) {
            out[found] = all[low];
            out[found++].mirror_gap = all[high].gap;
        }
    }
    return found;
}

/* ---- Both ways ---- */

/* Spaces are looked at that differ from the even one by up to so much, and by twice as much until
 * none that was left out can be in a better way. */
static cost follow_freely(chain *c, int *last)
{
    cost best = no_way;
    c->reach_sts = c->task->repeat;
    for (;;) {
        best = follow(c, last);
        bool sure = is_way(best) && best.spaces <= square((long long)c->parts * c->reach_sts);
        if (sure || c->reach_sts >= c->task->sts) {
            return best;
        }
        c->reach_sts *= 2;
    }
}

/* A way with the same spaces from both ends that costs no more, in place of the one found. */
static void try_mirrored(const chain *freely, cost best, spot *room, hw_hole *holes)
{
    int middle = freely->even[0] + freely->even[freely->task->holes - 1];
    int off = hw_num_up(sqrt(2.0 * (double)best.spaces) / freely->parts);
    cost least = no_way;
    chain c = *freely;
    c.mirrored = true;
    c.holes = (c.task->holes + 1) / 2;
    c.spots = room;
    for (c.sum = middle - off; c.sum <= middle + off; c.sum++) {
        int last = 0;
        c.count = find_mirrored(freely->spots, freely->count, c.sum, room);
        cost found = c.count >= c.holes ? follow(&c, &last) : no_way;
        if (is_way(found) && found.spaces <= best.spaces && is_less(found, least)) {
            least = found;
            write_down(&c, last, holes);
        }
    }
}

static hw_status too_few_gaps(const hw_holes_task *task, hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOFIT,
        "%d buttonholes of %d stitches do not find %d places between %d figures of a motif of %d "
        "stitches: ask for fewer, or leave the motif out of this band",
        task->holes, task->hole_sts, task->holes, task->motifs, task->repeat);
}

hw_status hw_holegaps_choose(
    const hw_holes_task *task, const int *even, hw_arena *arena, hw_hole *holes, hw_err *err)
{
    assert(task->repeat > 0);
    size_t room = (size_t)task->sts + 1;
    spot *all = hw_arena_get(arena, room, sizeof *all);
    spot *mirrored = hw_arena_get(arena, room, sizeof *mirrored);
    chain c = { .task = task,
        .even = even,
        .spots = all,
        .holes = task->holes,
        .parts = task->holes > 1 ? task->holes - 1 : 1,
        .span_sts = even[task->holes - 1] - even[0],
        .now = hw_arena_get(arena, room, sizeof *c.now),
        .next = hw_arena_get(arena, room, sizeof *c.next),
        .before = hw_arena_get(arena, room * (size_t)task->holes, sizeof *c.before) };
    if (all == NULL || mirrored == NULL || c.now == NULL || c.next == NULL || c.before == NULL) {
        return HW_ERR_NOMEM;
    }
    int last = 0;
    c.count = find_spots(task, all);
    cost best = follow_freely(&c, &last);
    if (!is_way(best)) {
        return too_few_gaps(task, err);
    }
    write_down(&c, last, holes);
    try_mirrored(&c, best, mirrored, holes);
    return HW_OK;
}
