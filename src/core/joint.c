/* Depth-first through the pieces of a group, cut off where the cost passes the limit.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/joint.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

/* The piece that decides for this one. */
static int decider(const hw_garment *garment, int piece)
{
    int other = garment->pieces[piece].mirror_of;
    return other >= 0 ? other : piece;
}

/* Label each piece with the lowest piece that seams and mirrors tie it to. */
static void label(const hw_garment *garment, int *labels)
{
    for (int p = 0; p < garment->piece_count; p++) {
        labels[p] = p;
    }
    for (bool again = true; again;) {
        again = false;
        for (int k = 0; k < garment->seam_count + garment->piece_count; k++) {
            int m = k - garment->seam_count;
            int a = m < 0 ? garment->seams[k].piece[0] : m;
            int b = m < 0 ? garment->seams[k].piece[1] : decider(garment, m);
            int least = labels[a] < labels[b] ? labels[a] : labels[b];
            again = again || labels[a] != labels[b];
            labels[a] = labels[b] = least;
        }
    }
}

static void fill(const hw_garment *garment, const int *labels, int wanted, hw_group *out)
{
    *out = (hw_group){ 0 };
    for (int p = 0; p < garment->piece_count; p++) {
        if (labels[p] == wanted && decider(garment, p) == p) {
            out->pieces[out->count++] = p;
        }
    }
    for (int p = 0; p < garment->piece_count; p++) {
        for (int k = 0; k < out->count; k++) {
            if (decider(garment, p) == out->pieces[k] && p != out->pieces[k]) {
                out->mirrors[k][out->mirror_counts[k]++] = p;
            }
        }
    }
    for (int s = 0; s < garment->seam_count; s++) {
        if (labels[garment->seams[s].piece[0]] == wanted) {
            out->seams[out->seam_count++] = s;
        }
    }
}

int hw_joint_groups(const hw_garment *garment, hw_group *out)
{
    int labels[HW_MAX_PIECES] = { 0 };
    label(garment, labels);
    int count = 0;
    for (int p = 0; p < garment->piece_count; p++) {
        if (labels[p] == p) {
            fill(garment, labels, p, &out[count++]);
        }
    }
    return count;
}

double hw_joint_seam_cost(const hw_counts_task *task, int break_sts)
{
    return task->choices.seam_weight * break_sts * break_sts;
}

hw_status hw_joint_sort(hw_joint_task *in, hw_arena *arena)
{
    hw_joint_task sorted = *in;
    for (int k = 0; k < in->group->count; k++) {
        /* Two numbers of motifs at most can make one count: the margins are below a repeat. */
        int last[2 * (HW_MAX_STS + 1)];
        memset(last, -1, sizeof last);
        const hw_candidates *candidates = &in->candidates[k];
        size_t room = (size_t)candidates->count;
        hw_joint_line *lines = hw_arena_get(arena, room, sizeof *lines);
        int *next = hw_arena_get(arena, room, sizeof *next);
        if (lines == NULL || next == NULL) {
            return HW_ERR_NOMEM;
        }
        int count = 0;
        for (int i = 0; i < candidates->count; i++) {
            const hw_candidate *choice = &candidates->list[i];
            int *before = &last[2 * choice->visible_sts + choice->motifs % 2];
            if (*before < 0) {
                lines[count++] =
                    (hw_joint_line){ i, choice->margin[HW_LEFT] + choice->margin[HW_RIGHT] };
            } else {
                next[*before] = i;
            }
            *before = i;
            next[i] = -1;
        }
        sorted.lines[k] = lines;
        sorted.line_counts[k] = count;
        sorted.next[k] = next;
    }
    *in = sorted;
    return HW_OK;
}

/* An edge in a seam: a place in the group, and the side as the deciding piece sees it. */
typedef struct {
    int place;
    hw_side side;
} edge;

typedef struct {
    edge ends[2];
} join;

/* The walk: first the counts of all pieces, then how their plain ends are split. */
typedef struct {
    const hw_joint_task *in;
    hw_cost_units limit;
    hw_cost_units rest[HW_MAX_PIECES + 1];   /* least own cost of the pieces from here on */
    join joins[HW_MAX_PIECES][HW_MAX_SEAMS]; /* of each piece: seams that it is the last end of */
    int join_counts[HW_MAX_PIECES];
    int sewn_edges[HW_MAX_PIECES];                      /* mirrors included */
    hw_cost_units seam_costs[2 * HW_MAX_CHART_COLUMNS]; /* by the sum of both margins; -1: never */
    int lines[HW_MAX_PIECES];                           /* index of the chosen line */
    hw_cost_units split[HW_MAX_PIECES + 1]; /* least own cost of the chosen lines from here on */
    hw_cost_units seams_least;              /* of all seams of the chosen lines together */
    int at[HW_MAX_PIECES];                  /* index of the chosen candidate */
    hw_joint best;                          /* of the chosen lines */
    bool settled;                           /* there is one */
    hw_cost_units least;                    /* of all joint choices found */
    bool found, lowering;                   /* lowering: the limit follows the least cost */
    bool cut;                               /* something was left out for the limit */
    long tries;
    hw_status status;
    hw_joint *list;
    int count, room;
    hw_arena *arena;
} walk;

/* How often a piece counts: itself and its mirrors. */
static int times(const hw_group *group, int k)
{
    return 1 + group->mirror_counts[k];
}

/* A mirrored piece has its decider's margin on the other side. */
static edge edge_of(const hw_joint_task *in, int piece, hw_side side)
{
    const hw_garment *garment = in->task->garment;
    bool mirrored = garment->pieces[piece].mirror_of >= 0;
    edge found = { 0, mirrored ? (side == HW_LEFT ? HW_RIGHT : HW_LEFT) : side };
    while (in->group->pieces[found.place] != decider(garment, piece)) {
        found.place++;
    }
    return found;
}

static void price_seams(walk *w)
{
    const hw_counts_task *task = w->in->task;
    for (int sum = 0; sum < 2 * HW_MAX_CHART_COLUMNS; sum++) {
        int break_sts = sum - task->gap;
        bool never = task->choices.unbroken_seams && break_sts != 0;
        w->seam_costs[sum] = never ? -1 : hw_cost_whole(hw_joint_seam_cost(task, break_sts));
    }
}

static void find_joins(walk *w)
{
    const hw_group *group = w->in->group;
    for (int s = 0; s < group->seam_count; s++) {
        const hw_seam *seam = &w->in->task->garment->seams[group->seams[s]];
        join found = { { edge_of(w->in, seam->piece[0], seam->side[0]),
            edge_of(w->in, seam->piece[1], seam->side[1]) } };
        int a = found.ends[0].place;
        int b = found.ends[1].place;
        int last = a > b ? a : b;
        w->joins[last][w->join_counts[last]++] = found;
        w->sewn_edges[a]++;
        w->sewn_edges[b]++;
    }
}

/* False where a piece has no candidate at all. */
static bool start(walk *w, const hw_joint_task *in, hw_cost_units limit)
{
    memset(w, 0, sizeof *w);
    w->in = in;
    w->limit = limit;
    price_seams(w);
    find_joins(w);
    for (int k = in->group->count; k-- > 0;) {
        if (in->candidates[k].count == 0) {
            return false;
        }
        w->rest[k] = w->rest[k + 1] + times(in->group, k) * in->candidates[k].list[0].cost;
    }
    return true;
}

/* One more try; false when there were too many. */
static bool may_try(walk *w)
{
    if (w->tries++ >= HW_JOINT_MOST_TRIES && w->status == HW_OK) {
        w->status = HW_ERR_LIMIT;
    }
    return w->status == HW_OK;
}

static int margin_at(const walk *w, const edge *end)
{
    return w->in->candidates[end->place].list[w->at[end->place]].margin[end->side];
}

/* Cost of the seams whose last-chosen end is piece k; -1 where a rule forbids one. */
static hw_cost_units seams_at(const walk *w, int k)
{
    hw_cost_units sum = 0;
    for (int j = 0; j < w->join_counts[k]; j++) {
        const join *seam = &w->joins[k][j];
        hw_cost_units cost =
            w->seam_costs[margin_at(w, &seam->ends[0]) + margin_at(w, &seam->ends[1])];
        if (cost < 0) {
            return -1;
        }
        sum += cost;
    }
    return sum;
}

/* Number by number, the first that differs decides. */
static int compare(const int *a, const int *b)
{
    int k = 0;
    while (k < HW_MAX_PIECES - 1 && a[k] == b[k]) {
        k++;
    }
    return (a[k] > b[k]) - (a[k] < b[k]);
}

/* By cost, then the smaller left margins, then the cheaper choices of the pieces before. */
static int by_worth(const hw_joint *x, const hw_joint *y)
{
    int order = (x->cost > y->cost) - (x->cost < y->cost);
    if (order == 0) {
        order = x->left_margins - y->left_margins;
    }
    return order != 0 ? order : compare(x->choices, y->choices);
}

static void weigh(walk *w, hw_cost_units cost)
{
    hw_joint joint = { .cost = cost };
    for (int k = 0; k < w->in->group->count; k++) {
        const hw_candidate *choice = &w->in->candidates[k].list[w->at[k]];
        int n = times(w->in->group, k);
        joint.visible_sts[k] = choice->visible_sts;
        joint.choices[k] = w->at[k];
        joint.cast_on_sts += n * choice->visible_sts;
        joint.left_margins += choice->margin[HW_LEFT] + (n - 1) * choice->margin[HW_RIGHT];
    }
    if (!w->settled || by_worth(&joint, &w->best) < 0) {
        w->best = joint;
        w->settled = true;
    }
}

/* What a piece and those after it must add to the seams at least, once some are paid for. */
static hw_cost_units seams_left(const walk *w, hw_cost_units seams)
{
    return seams < w->seams_least ? w->seams_least : seams;
}

/* Split the plain ends of the chosen lines, piece by piece. */
static void settle(walk *w, int k, hw_cost_units own, hw_cost_units seams)
{
    if (k == w->in->group->count) {
        weigh(w, own + seams);
        return;
    }
    int first = w->in->lines[k][w->lines[k]].first;
    for (int i = first; i >= 0 && may_try(w); i = w->in->next[k][i]) {
        hw_cost_units most = w->settled ? w->best.cost : w->limit;
        hw_cost_units now = own + times(w->in->group, k) * w->in->candidates[k].list[i].cost;
        if (now + w->split[k + 1] + seams_left(w, seams) > most) {
            w->cut = w->cut || !w->settled;
            return; /* the others cost no less */
        }
        w->at[k] = i;
        hw_cost_units more = seams_at(w, k);
        if (more < 0) {
            continue;
        }
        if (now + w->split[k + 1] + seams_left(w, seams + more) > most) {
            w->cut = w->cut || !w->settled;
            continue;
        }
        settle(w, k + 1, now, seams + more);
    }
}

/* The breaks of all seams add up to what the margins are more or fewer than the gaps. Their squares
 * are least where they are equal; each cost is rounded by half a unit at most. False where a rule
 * forbids any break and there must be one. */
static bool price_together(walk *w)
{
    const hw_counts_task *task = w->in->task;
    int seams = w->in->group->seam_count;
    int fewest = -seams * task->gap;
    int most = fewest;
    for (int k = 0; k < w->in->group->count; k++) {
        int margins = w->in->lines[k][w->lines[k]].margins_sts;
        int ends = times(w->in->group, k);
        most += margins * (w->sewn_edges[k] < ends ? w->sewn_edges[k] : ends);
        fewest += w->sewn_edges[k] > ends ? margins * (w->sewn_edges[k] - ends) : 0;
    }
    int nearest = fewest > 0 ? fewest : most < 0 ? -most : 0;
    w->seams_least = 0;
    if (nearest > 0) {
        w->seams_least = hw_cost_whole(hw_joint_seam_cost(task, nearest) / seams) - seams;
    }
    return nearest == 0 || !task->choices.unbroken_seams;
}

static bool make_room(walk *w)
{
    if (w->count < w->room) {
        return true;
    }
    if (w->count >= HW_JOINT_MOST) {
        w->status = HW_ERR_LIMIT;
        return false;
    }
    int room = w->room == 0 ? 64 : w->room * 2;
    hw_joint *list = hw_arena_get(w->arena, (size_t)room, sizeof *list);
    if (list == NULL) {
        w->status = HW_ERR_NOMEM;
        return false;
    }
    if (w->count > 0) {
        memcpy(list, w->list, (size_t)w->count * sizeof *list);
    }
    w->list = list;
    w->room = room;
    return true;
}

/* Keep the best of the chosen lines. */
static void keep(walk *w)
{
    for (int k = w->in->group->count; k-- > 0;) {
        const hw_candidate *choice = &w->in->candidates[k].list[w->in->lines[k][w->lines[k]].first];
        w->split[k] = w->split[k + 1] + times(w->in->group, k) * choice->cost;
    }
    w->settled = false;
    if (price_together(w)) {
        settle(w, 0, 0, 0);
    }
    if (!w->settled) {
        return;
    }
    if (!w->found || w->best.cost < w->least) {
        w->least = w->best.cost;
        w->found = true;
    }
    if (w->lowering) {
        w->limit = w->least;
    } else if (make_room(w)) {
        w->list[w->count++] = w->best;
    }
}

/* Choose lines, piece by piece. */
static void step(walk *w, int k, hw_cost_units spent)
{
    if (k == w->in->group->count) {
        keep(w);
        return;
    }
    for (int i = 0; i < w->in->line_counts[k] && may_try(w); i++) {
        const hw_candidate *choice = &w->in->candidates[k].list[w->in->lines[k][i].first];
        hw_cost_units cost = spent + times(w->in->group, k) * choice->cost;
        if (cost + w->rest[k + 1] > w->limit) {
            w->cut = true;
            return; /* the others cost no less */
        }
        w->lines[k] = i;
        step(w, k + 1, cost);
    }
}

hw_status hw_joint_least(const hw_joint_task *in, hw_cost_units *out)
{
    walk w;
    if (!start(&w, in, LLONG_MAX)) {
        return HW_ERR_NOFIT;
    }
    w.lowering = true;
    step(&w, 0, 0);
    if (w.status == HW_OK && !w.found) {
        return HW_ERR_NOFIT;
    }
    if (w.status == HW_OK) {
        *out = w.least;
    }
    return w.status;
}

static int by_stitches(const void *a, const void *b)
{
    const hw_joint *x = a;
    const hw_joint *y = b;
    int order = compare(x->visible_sts, y->visible_sts);
    return order != 0 ? order : by_worth(x, y);
}

hw_status hw_joint_list(
    const hw_joint_task *in, hw_cost_units limit, hw_arena *arena, hw_joints *out)
{
    walk w;
    if (!start(&w, in, limit)) {
        *out = (hw_joints){ .list = NULL, .count = 0, .all = true };
        return HW_OK;
    }
    w.arena = arena;
    step(&w, 0, 0);
    if (w.status != HW_OK) {
        return w.status;
    }
    if (w.count > 1) {
        qsort(w.list, (size_t)w.count, sizeof *w.list, by_stitches);
    }
    int kept = 0;
    for (int i = 0; i < w.count; i++) {
        if (kept == 0 || compare(w.list[kept - 1].visible_sts, w.list[i].visible_sts) != 0) {
            w.list[kept++] = w.list[i];
        }
    }
    *out = (hw_joints){ .list = w.list, .count = kept, .all = !w.cut };
    return HW_OK;
}
