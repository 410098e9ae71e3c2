/* Counts, shares and ratios of a trim that is picked up.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pickup.h"

#include <assert.h>
#include <math.h>

#include "core/fit.h"
#include "core/num.h"

enum {
    LEAST_OFF = -1, /* how far from the exact share, rounded down, a level share may lie */
    MOST_OFF = 2,
    OFFS = MOST_OFF - LEAST_OFF + 1
};

static const double same_cm = 0.01; /* edges that differ by less are equally long */
static const double hair_cm = 1e-9;

/* Edges of the same length, which are to have the same share. */
typedef struct {
    int size;
    double exact; /* of each member */
    int share;
} alike;

typedef struct {
    alike groups[HW_MAX_PARTS];
    int of[HW_MAX_PARTS]; /* the group of each edge */
    int count;
} groups;

static double length_of(const hw_pickup_edge *edges, int count)
{
    double sum_cm = 0;
    for (int i = 0; i < count; i++) {
        sum_cm += edges[i].length_cm;
    }
    return sum_cm;
}

static groups group_edges(const hw_pickup_edge *edges, int count, int sts)
{
    double sum_cm = length_of(edges, count);
    groups found = { 0 };
    for (int i = 0; i < count; i++) {
        int same = 0;
        while (same < i && fabs(edges[same].length_cm - edges[i].length_cm) > same_cm) {
            same++;
        }
        if (same < i) {
            found.of[i] = found.of[same];
        } else {
            found.of[i] = found.count++;
            found.groups[found.of[i]].exact = sts * (edges[i].length_cm / sum_cm);
        }
        found.groups[found.of[i]].size++;
    }
    return found;
}

/* Set the shares to the n-th way; the squared distance in millionths, or -1: the sum is wrong. */
static long long try_way(groups *all, int way, int sts)
{
    int sum = 0;
    double distance = 0;
    for (int g = 0; g < all->count; g++) {
        alike *one = &all->groups[g];
        one->share = hw_num_down(one->exact) + LEAST_OFF + way % OFFS;
        way /= OFFS;
        sum += one->size * one->share;
        distance += one->size * (one->share - one->exact) * (one->share - one->exact);
        if (one->share < 0) {
            return -1;
        }
    }
    return sum == sts ? hw_num_nearest_long(distance * 1e6) : -1;
}

static bool divide_level(groups *all, int sts)
{
    int ways = 1;
    for (int g = 0; g < all->count; g++) {
        ways *= OFFS;
    }
    int best = -1;
    long long least = 0;
    for (int way = 0; way < ways; way++) {
        long long distance = try_way(all, way, sts);
        if (distance >= 0 && (best < 0 || distance < least)) {
            best = way;
            least = distance;
        }
    }
    return best >= 0 && try_way(all, best, sts) >= 0;
}

/* The rest of a division goes where the most was cut off, a stitch each. */
static void divide_freely(const hw_pickup_edge *edges, int count, int sts, int *shares)
{
    double sum_cm = length_of(edges, count);
    double cut[HW_MAX_PARTS] = { 0 };
    int left = sts;
    for (int i = 0; i < count; i++) {
        double exact = sts * (edges[i].length_cm / sum_cm);
        shares[i] = hw_num_down(exact);
        cut[i] = exact - shares[i];
        left -= shares[i];
    }
    for (; left > 0; left--) {
        int most = 0;
        for (int i = 1; i < count; i++) {
            most = cut[i] > cut[most] + hair_cm ? i : most;
        }
        shares[most]++;
        cut[most] -= 1;
    }
}

bool hw_pickup_divide(const hw_pickup_edge *edges, int count, int sts, int *shares)
{
    assert(count > 0 && count <= HW_MAX_PARTS && sts >= 0 && sts <= HW_MAX_STS);
    groups all = group_edges(edges, count, sts);
    bool level = divide_level(&all, sts);
    if (level) {
        for (int i = 0; i < count; i++) {
            shares[i] = all.groups[all.of[i]].share;
        }
    } else {
        divide_freely(edges, count, sts, shares);
    }
    return level;
}

static hw_pickup_group nearest_ratio(int sts, int rows)
{
    hw_pickup_group best = { 0 };
    long long best_off = 0;
    for (int b = 1; b <= HW_PICKUP_LARGEST_GROUP && b <= rows; b++) {
        int a = hw_num_nearest((double)sts * b / rows);
        a = a < 1 ? 1 : a;
        long long off = (long long)a * rows - (long long)b * sts;
        off = off < 0 ? -off : off;
        /* off / b is the distance times rows */
        if (best.rows == 0 || off * best.rows < best_off * b) {
            best = (hw_pickup_group){ .sts = a, .rows = b, .times = rows / b };
            best_off = off;
        }
    }
    return best;
}

/* `count` groups over `over`, as even as can be: sizes that differ by one, and how often. */
typedef struct {
    int size, times, more_times;
} parting;

static parting part_evenly(int count, int over)
{
    return (parting){ over / count, count - over % count, over % count };
}

static void even_groups(int sts, int rows, hw_pickup_group *out)
{
    int left_out = rows - sts;
    if (sts > 2 * rows) { /* each row has several */
        parting p = part_evenly(rows, sts);
        out[0] = (hw_pickup_group){ p.size, 1, p.times };
        out[1] = (hw_pickup_group){ p.size + 1, 1, p.more_times };
        return;
    }
    if (left_out == 0) {
        out[0] = (hw_pickup_group){ 1, 1, rows };
        out[1] = (hw_pickup_group){ 0 };
        return;
    }
    bool sparse = left_out >= sts; /* one stitch to a group; else one row left out, or twice used */
    int count = sparse ? sts : left_out > 0 ? left_out : -left_out;
    parting p = part_evenly(count, rows);
    for (int i = 0; i < 2; i++) {
        int size = p.size + i;
        int many = left_out > 0 ? size - 1 : size + 1;
        out[i] = (hw_pickup_group){ sparse ? 1 : many, size, i == 0 ? p.times : p.more_times };
    }
}

hw_pickup_ratio hw_pickup_ratio_of(int sts, int rows)
{
    assert(sts > 0 && sts <= HW_MAX_STS && rows > 0 && rows <= HW_MAX_ROWS);
    hw_pickup_ratio ratio = { .sts = sts, .rows = rows, .simple = nearest_ratio(sts, rows) };
    ratio.rows_left = rows - ratio.simple.times * ratio.simple.rows;
    ratio.extra_sts = sts - ratio.simple.times * ratio.simple.sts;
    even_groups(sts, rows, ratio.even);
    return ratio;
}

static double off_cm(const hw_pickup_task *task, double length_cm, int visible_sts)
{
    return visible_sts / (task->sts_per_10cm / 10) - length_cm;
}

/* Complete a count of which visible stitches, motifs and margins are known. */
static hw_pickup_count complete(const hw_pickup_task *task, double length_cm, hw_pickup_count count)
{
    count.sts = count.visible_sts + task->edge_sts[HW_LEFT] + task->edge_sts[HW_RIGHT];
    count.off_cm = off_cm(task, length_cm, count.visible_sts);
    return count;
}

static hw_pickup_count of_fit(const hw_fit_count *fit)
{
    return (hw_pickup_count){
        .visible_sts = fit->visible_sts,
        .motifs = fit->motifs,
        .margin = { fit->margin[HW_LEFT], fit->margin[HW_RIGHT] },
    };
}

static int most_visible(const hw_pickup_task *task)
{
    return HW_MAX_STS - task->edge_sts[HW_LEFT] - task->edge_sts[HW_RIGHT];
}

static hw_status motif_counts(const hw_pickup_task *task, hw_pickup *found, hw_err *err)
{
    const hw_fit_rules rules = {
        .repeat = task->repeat,
        .gap = task->gap,
        .most_margin = task->gap,
        .most_sts = most_visible(task),
    };
    hw_fit_near near = { 0 };
    hw_status status = hw_fit_nearest(&rules, found->wanted_sts, &near, err);
    if (status == HW_OK) {
        found->has_below = near.has_below;
        found->has_above = near.has_above;
        found->below = of_fit(&near.below);
        found->above = of_fit(&near.above);
    }
    return status;
}

/* Counts that are a multiple of a number, and some more: whole repeats of a ring, with a gap behind
 * the last figure too, or plain. */
static void multiple_counts(const hw_pickup_task *task, hw_pickup *found)
{
    bool motif = task->repeat > 0;
    int step = motif ? task->repeat : task->multiple > 1 ? task->multiple : 1;
    int plus = motif || task->multiple <= 1 ? 0 : task->multiple_plus;
    int below = hw_num_down((found->wanted_sts - plus) / step);
    int above = hw_num_up((found->wanted_sts - plus) / step);
    above = above < 1 ? 1 : above;
    found->has_below = below >= 1;
    found->has_above = above * step + plus <= most_visible(task);
    hw_pickup_count counts[] = { { .visible_sts = below * step + plus, .motifs = below },
        { .visible_sts = above * step + plus, .motifs = above } };
    for (int i = 0; i < 2; i++) {
        counts[i].motifs = motif ? counts[i].motifs : 0;
        counts[i].margin[HW_RIGHT] = motif ? task->gap : 0;
    }
    found->below = counts[0];
    found->above = counts[1];
}

static hw_status choose(const hw_pickup_task *task, hw_pickup *found, hw_err *err)
{
    if (!found->has_below && !found->has_above) {
        return hw_err_set(err, HW_ERR_NOFIT,
            "edges of %.1f cm are %.1f stitches, and no whole motif or multiple comes near: take a "
            "smaller motif or another gauge",
            found->length_cm, found->wanted_sts);
    }
    found->below = complete(task, found->length_cm, found->below);
    found->above = complete(task, found->length_cm, found->above);
    bool lower = found->has_below && (!found->has_above || fabs(found->below.off_cm) <=
                                                               fabs(found->above.off_cm) + hair_cm);
    found->chosen = lower ? found->below : found->above;
    found->inside = fabs(found->chosen.off_cm) <= task->tolerance_cm + hair_cm;
    return HW_OK;
}

static hw_pickup_share share_of(const hw_pickup_edge *edge, int sts)
{
    hw_pickup_share share = {
        .sts = sts, .of_sts = edge->of_sts, .count = edge->count, .way = edge->way
    };
    share.has_ratio = sts > 0 && edge->count > 0 && edge->way != HW_PICKUP_MIDDLE;
    if (share.has_ratio) {
        share.ratio = hw_pickup_ratio_of(sts, edge->count);
    }
    return share;
}

/* What an edge gets, over its parts. */
static void share_parts(const hw_pickup_edge *edge, int at, hw_pickup *found)
{
    int shares[HW_MAX_PARTS] = { 0 };
    found->part_count[at] = edge->part_count > 0 ? edge->part_count : 1;
    if (edge->part_count == 0) {
        found->parts[at][0] = found->shares[at];
        return;
    }
    (void)hw_pickup_divide(edge->parts, edge->part_count, found->shares[at].sts, shares);
    for (int k = 0; k < edge->part_count; k++) {
        found->parts[at][k] = share_of(&edge->parts[k], shares[k]);
    }
}

/* Both halves' stitches along the middle are those of its width; what an edge has more or fewer
 * there, the part beside it has not. */
static void settle_middle(const hw_pickup_task *task, int other, hw_pickup *found)
{
    int both[2] = { (other + task->edge_count - 1) % task->edge_count, other };
    double middle_cm = 0;
    for (int i = 0; i < 2; i++) {
        const hw_pickup_edge *edge = &task->edges[both[i]];
        if (edge->part_count < 2 || edge->parts[0].way != HW_PICKUP_MIDDLE) {
            return;
        }
        middle_cm += edge->parts[0].length_cm;
    }
    int sts = hw_num_nearest(middle_cm * task->sts_per_10cm / 10);
    for (int i = 0; i < 2; i++) {
        const hw_pickup_edge *edge = &task->edges[both[i]];
        hw_pickup_share *parts = found->parts[both[i]];
        int half = i == 0 ? sts - sts / 2 : sts / 2;
        int rest = parts[0].sts + parts[1].sts - half;
        if (rest > 0) {
            parts[0] = share_of(&edge->parts[0], half);
            parts[1] = share_of(&edge->parts[1], rest);
        }
    }
}

static void share_out(const hw_pickup_task *task, hw_pickup *found)
{
    int shares[HW_MAX_PARTS] = { 0 };
    found->level =
        hw_pickup_divide(task->edges, task->edge_count, found->chosen.visible_sts, shares);
    found->share_count = task->edge_count;
    shares[0] += task->edge_sts[HW_LEFT];
    shares[task->edge_count - 1] += task->edge_sts[HW_RIGHT];
    for (int i = 0; i < task->edge_count; i++) {
        found->shares[i] = share_of(&task->edges[i], shares[i]);
        share_parts(&task->edges[i], i, found);
    }
    for (int i = 0; i < task->edge_count; i++) {
        if (task->edges[i].other_half) {
            settle_middle(task, i, found);
        }
    }
}

hw_status hw_pickup_plan(const hw_pickup_task *task, hw_pickup *out, hw_err *err)
{
    assert(task->edge_count > 0 && task->edge_count <= HW_MAX_PARTS && task->sts_per_10cm > 0);
    assert(!task->round || (task->edge_sts[HW_LEFT] == 0 && task->edge_sts[HW_RIGHT] == 0));
    hw_pickup found = { .length_cm = length_of(task->edges, task->edge_count) };
    found.wanted_sts = found.length_cm * task->sts_per_10cm / 10;
    if (!(found.wanted_sts > 0 && found.wanted_sts <= most_visible(task))) {
        return hw_err_set(err, HW_ERR_RANGE,
            "edges of %.1f cm are %.1f stitches, and a trim can have %d: check the edges and the "
            "trim's gauge",
            found.length_cm, found.wanted_sts, most_visible(task));
    }
    hw_status status = HW_OK;
    if (task->repeat > 0 && !task->round) {
        status = motif_counts(task, &found, err);
    } else {
        multiple_counts(task, &found);
    }
    if (status == HW_OK) {
        status = choose(task, &found, err);
    }
    if (status == HW_OK) {
        share_out(task, &found);
        *out = found;
    }
    return status;
}
