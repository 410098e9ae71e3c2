/* Dynamic programming over sizes, one group of pieces at a time, in a budget that is proved enough.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/grade.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "core/joint.h"
#include "core/num.h"

enum { STEPS = 2 * HW_MAX_STS + 1 };

/* The best way to reach a state: cost first, then stitches, then left margins. */
typedef struct {
    hw_cost_units cost;
    long cast_on_sts, left_margins;
    int before; /* index in the size before; -1: unreachable */
    int state;  /* index in this size */
} path;

typedef struct {
    const hw_counts_task *task;
    const hw_group *group;
    hw_joint_task *sizes; /* [sizes] with candidates */
    hw_cost_units *least; /* [sizes]: least cost of each size by itself */
    hw_joints *joints;    /* [sizes] of this pass */
    path **paths;         /* [sizes][states] of this pass */
    path *cheap;          /* those of one size by rising cost, while the next is reached */
    hw_cost_units *steps; /* [pieces of the group * STEPS], of the pair of sizes at hand */
    hw_cost_units most;   /* what a choice for all sizes is known to cost */
    hw_err *err;
} search;

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory to choose the counts");
}

/* Why one size by itself has no choice, with the way out. */
static hw_status refuse_size(const search *s, int size)
{
    const hw_counts_task *task = s->task;
    const char *size_name = task->size_names[size];
    for (int k = 0; k < s->group->count; k++) {
        int piece = s->group->pieces[k];
        if (s->sizes[size].candidates[k].count > 0) {
            continue;
        }
        const char *name = task->garment->pieces[piece].name;
        int one_motif = task->repeat - task->gap;
        if (one_motif > hw_counts_most_visible(task, piece)) {
            return hw_err_set(s->err, HW_ERR_NOFIT,
                "%s: one motif of %d stitches is wider than the bed; use a narrower motif", name,
                one_motif);
        }
        if (hw_counts_fixed(task, size, piece) > 0) {
            return hw_err_set(s->err, HW_ERR_NOFIT,
                "size %s, %s: it was knitted with %d stitches, which whole motifs of %d columns "
                "and "
                "a gap of %d cannot make; is that the count without edge stitches, of this motif?",
                size_name, name, hw_counts_fixed(task, size, piece), task->repeat, task->gap);
        }
        return hw_err_set(s->err, HW_ERR_NOFIT,
            "size %s, %s: no count of whole motifs meets your rules (%s%s); make the tolerance "
            "larger, change the gap or the ease, or set the rule to `no`",
            size_name, name, task->choices.keep_tolerance ? "within tolerance" : "",
            task->choices.exact_centre ? " always centred" : "");
    }
    return hw_err_set(s->err, HW_ERR_NOFIT,
        "size %s: no counts let the band run on unbroken round every seam and meet your other "
        "rules; try a gap of an even number of stitches, or set `unbroken seams` to `no`",
        size_name);
}

static hw_status too_many(const search *s, int size)
{
    return hw_err_set(s->err, HW_ERR_LIMIT,
        "size %s: too many pieces hang together by seams for the counts to be chosen at once; "
        "leave "
        "out a seam, plan fewer sizes in one project, make the tolerance smaller, or use a "
        "narrower "
        "gap",
        s->task->size_names[size]);
}

static hw_status prepare_size(search *s, int size, hw_arena *room)
{
    hw_joint_task *at = &s->sizes[size];
    *at = (hw_joint_task){ .task = s->task, .group = s->group, .size = size };
    hw_status status = HW_OK;
    for (int k = 0; k < s->group->count && status == HW_OK; k++) {
        int piece = s->group->pieces[k];
        status = hw_candidates_list(s->task, size, piece, room, &at->candidates[k]);
    }
    status = status == HW_OK ? hw_joint_sort(at, room) : status;
    status = status == HW_OK ? hw_joint_least(at, &s->least[size]) : status;
    if (status == HW_ERR_NOFIT) {
        return refuse_size(s, size);
    }
    if (status == HW_ERR_LIMIT) {
        return too_many(s, size);
    }
    return status == HW_OK ? HW_OK : no_memory(s->err);
}

static hw_status prepare(search *s, hw_arena *room)
{
    size_t sizes = (size_t)s->task->sizes;
    s->sizes = hw_arena_get(room, sizes, sizeof *s->sizes);
    s->least = hw_arena_get(room, sizes, sizeof *s->least);
    s->steps = hw_arena_get(room, (size_t)s->group->count * STEPS, sizeof *s->steps);
    if (s->sizes == NULL || s->least == NULL || s->steps == NULL) {
        return no_memory(s->err);
    }
    hw_status status = HW_OK;
    for (int i = 0; i < s->task->sizes && status == HW_OK; i++) {
        status = prepare_size(s, i, room);
    }
    return status;
}

/* Step costs from a size to the next for every possible step of each piece, mirrors included. */
static void price_steps(search *s, int size)
{
    for (int k = 0; k < s->group->count; k++) {
        int piece = s->group->pieces[k];
        const hw_target *now = hw_counts_target(s->task, size, piece);
        const hw_target *before = hw_counts_target(s->task, size - 1, piece);
        bool fixed = hw_counts_fixed(s->task, size, piece) > 0 ||
                     hw_counts_fixed(s->task, size - 1, piece) > 0;
        bool may_fall = now->band_cm < before->band_cm || now->main_cm < before->main_cm;
        for (int step = -HW_MAX_STS; step <= HW_MAX_STS; step++) {
            hw_cost_units cost = hw_cost_whole(hw_counts_step_cost(s->task, size, piece, step));
            bool allowed = step >= 0 || may_fall || fixed;
            s->steps[k * STEPS + step + HW_MAX_STS] =
                allowed ? (1 + s->group->mirror_counts[k]) * cost : -1;
        }
    }
}

/* Cost of going from one joint choice to another; -1 where a count would fall and must not. */
static hw_cost_units step_cost(const search *s, const hw_joint *from, const hw_joint *to)
{
    hw_cost_units sum = 0;
    for (int k = 0; k < s->group->count; k++) {
        int step = to->visible_sts[k] - from->visible_sts[k];
        hw_cost_units cost = s->steps[k * STEPS + step + HW_MAX_STS];
        if (cost < 0) {
            return -1;
        }
        sum += cost;
    }
    return sum;
}

static bool better(const path *a, const path *b)
{
    if (b->before == -1 || a->cost != b->cost) {
        return b->before == -1 || a->cost < b->cost;
    }
    if (a->cast_on_sts != b->cast_on_sts) {
        return a->cast_on_sts < b->cast_on_sts;
    }
    return a->left_margins < b->left_margins;
}

static path extend(const hw_joint *joint, const path *before, hw_cost_units step)
{
    return (path){ .cost = before->cost + step + joint->cost,
        .cast_on_sts = before->cast_on_sts + joint->cast_on_sts,
        .left_margins = before->left_margins + joint->left_margins,
        .before = before->state };
}

/* The best way to a state. A way from a size before that is dearer already cannot be better. */
static void reach(const search *s, int size, int state, hw_cost_units most)
{
    const hw_joint *joint = &s->joints[size].list[state];
    path *best = &s->paths[size][state];
    *best = (path){ .before = -1 };
    for (int i = 0; i < s->joints[size - 1].count; i++) {
        const path *before = &s->cheap[i];
        if (before->cost > (best->before == -1 ? most : best->cost) - joint->cost) {
            break;
        }
        hw_cost_units cost = step_cost(s, &s->joints[size - 1].list[before->state], joint);
        path next = extend(joint, before, cost);
        if (cost >= 0 && better(&next, best)) {
            *best = next;
        }
    }
    best->state = state;
}

static int by_rising_cost(const void *a, const void *b)
{
    const path *x = a;
    const path *y = b;
    int order = (x->cost > y->cost) - (x->cost < y->cost);
    return order != 0 ? order : x->state - y->state;
}

static void advance(search *s, int size, hw_cost_units most)
{
    const hw_joints *now = &s->joints[size];
    if (size > 0) {
        size_t count = (size_t)s->joints[size - 1].count;
        memcpy(s->cheap, s->paths[size - 1], count * sizeof *s->cheap);
        qsort(s->cheap, count, sizeof *s->cheap, by_rising_cost);
    }
    for (int j = 0; j < now->count; j++) {
        if (size == 0) {
            const hw_joint *first = &now->list[j];
            s->paths[0][j] = (path){ first->cost, first->cast_on_sts, first->left_margins, 0, j };
        } else {
            reach(s, size, j, most);
        }
    }
}

/* Least cost of all sizes after one, each by itself; after -1: of all. */
static hw_cost_units least_after(const search *s, int size)
{
    hw_cost_units sum = 0;
    for (int i = size + 1; i < s->task->sizes; i++) {
        sum += s->least[i];
    }
    return sum;
}

/* Leave out the states from which no choice for all sizes can cost as little as one does. */
static void leave_out(search *s, int size, hw_cost_units most)
{
    hw_joints *now = &s->joints[size];
    int kept = 0;
    for (int j = 0; j < now->count; j++) {
        const path *at = &s->paths[size][j];
        if (at->before != -1 && at->cost <= most) {
            now->list[kept] = now->list[j];
            s->paths[size][kept] = *at;
            s->paths[size][kept].state = kept;
            kept++;
        }
    }
    now->count = kept;
}

/* Index of the best end, or -1 where none is reached. */
static int best_end(const search *s)
{
    int last = s->task->sizes - 1;
    int found = -1;
    for (int j = 0; j < s->joints[last].count; j++) {
        const path *at = &s->paths[last][j];
        if (at->before != -1 && (found == -1 || better(at, &s->paths[last][found]))) {
            found = j;
        }
    }
    return found;
}

/* One pass with so much to spare in each size over its least cost. */
static hw_status pass(search *s, hw_cost_units spare, hw_arena *room, bool *all)
{
    size_t sizes = (size_t)s->task->sizes;
    s->joints = hw_arena_get(room, sizes, sizeof *s->joints);
    s->paths = hw_arena_get(room, sizes, sizeof(path *));
    s->cheap = hw_arena_get(room, HW_GRADE_MAX_STATES, sizeof(path));
    if (s->joints == NULL || s->paths == NULL || s->cheap == NULL) {
        return no_memory(s->err);
    }
    *all = true;
    for (int i = 0; i < s->task->sizes; i++) {
        hw_status status = hw_joint_list(&s->sizes[i], s->least[i] + spare, room, &s->joints[i]);
        if (status == HW_ERR_NOMEM) {
            return no_memory(s->err);
        }
        if (status != HW_OK || s->joints[i].count > HW_GRADE_MAX_STATES) {
            return too_many(s, i);
        }
        *all = *all && s->joints[i].all;
        s->paths[i] = hw_arena_get(room, (size_t)s->joints[i].count, sizeof(path));
        if (s->paths[i] == NULL) {
            return no_memory(s->err);
        }
        if (i > 0) {
            price_steps(s, i);
        }
        hw_cost_units most = s->most - least_after(s, i);
        advance(s, i, most);
        leave_out(s, i, most);
    }
    return HW_OK;
}

static hw_fit fit_of(const hw_counts_task *task, int size, int piece, const hw_candidate *choice)
{
    const hw_target *target = hw_counts_target(task, size, piece);
    hw_fit fit = { .motifs = choice->motifs,
        .visible_sts = choice->visible_sts,
        .main_sts = choice->main_sts,
        .inside = hw_candidate_inside(task, size, piece, choice),
        .cost = hw_candidate_cost(task, size, piece, choice) };
    fit.cast_on_sts = fit.visible_sts;
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        fit.margin[side] = choice->margin[side];
        fit.edge_sts[side] = hw_counts_edge_sts(task, piece, (hw_side)side);
        fit.cast_on_sts += fit.edge_sts[side];
    }
    fit.band_cm = hw_gauge_width_cm(&task->gauge[HW_BAND], fit.visible_sts);
    fit.main_cm = hw_gauge_width_cm(&task->gauge[HW_MAIN], fit.main_sts);
    fit.band_off_cm = fit.band_cm - target->band_cm;
    fit.main_off_cm = fit.main_cm - target->main_cm;
    return fit;
}

static void store(const search *s, int end, hw_grading *out)
{
    const hw_counts_task *task = s->task;
    for (int i = task->sizes - 1; i >= 0; i--) {
        const hw_joint *joint = &s->joints[i].list[end];
        hw_fit *fits = &out->fits[i * task->pieces];
        for (int k = 0; k < s->group->count; k++) {
            int piece = s->group->pieces[k];
            hw_candidate choice = s->sizes[i].candidates[k].list[joint->choices[k]];
            fits[piece] = fit_of(task, i, piece, &choice);
            hw_candidate mirrored = choice;
            mirrored.margin[HW_LEFT] = choice.margin[HW_RIGHT];
            mirrored.margin[HW_RIGHT] = choice.margin[HW_LEFT];
            for (int m = 0; m < s->group->mirror_counts[k]; m++) {
                int other = s->group->mirrors[k][m];
                fits[other] = fit_of(task, i, other, &mirrored);
            }
        }
        end = s->paths[i][end].before;
    }
}

/* What a pass came to. */
typedef struct {
    bool reached, proved; /* there is a choice for all sizes; none costs less */
    bool all;             /* nothing was left out for the budget */
    hw_cost_units cost;
} outcome;

/* A choice outside the budget costs more than its size's least cost by more than is spare, so a
 * total that is over the sum of least costs by no more than is spare cannot be beaten by it. */
static hw_status try_spare(
    search *s, hw_cost_units spare, hw_arena *room, hw_grading *out, outcome *came_to)
{
    hw_status status = pass(s, spare, room, &came_to->all);
    int last = s->task->sizes - 1;
    int end = status == HW_OK ? best_end(s) : -1;
    came_to->reached = end >= 0;
    if (!came_to->reached) {
        return status;
    }
    came_to->cost = s->paths[last][end].cost;
    hw_cost_units over = came_to->cost - least_after(s, -1);
    came_to->proved = came_to->all || over <= spare;
    if (came_to->proved) {
        store(s, end, out);
        for (int i = 0; i <= last; i++) {
            out->states += s->joints[i].count;
        }
    }
    return HW_OK;
}

static hw_status solve(search *s, hw_arena *room, hw_grading *out)
{
    hw_status status = prepare(s, room);
    hw_cost_units spare = hw_cost_whole(0.25);
    s->most = LLONG_MAX;
    outcome came_to = { .proved = false };
    for (int passes = 1; status == HW_OK && !came_to.proved; passes++) {
        hw_arena pass_room;
        hw_arena_init(&pass_room, &room->mem, room->block_size);
        came_to = (outcome){ .proved = false };
        status = try_spare(s, spare, &pass_room, out, &came_to);
        hw_arena_release(&pass_room);
        out->passes = passes > out->passes ? passes : out->passes;
        if (status == HW_OK && !came_to.reached && came_to.all) {
            return hw_err_set(s->err, HW_ERR_NOFIT, "%s",
                "no counts meet your rules in every size without getting fewer where the widths do "
                "not; set one of the rules under `choices` to `no`, or make the tolerance larger");
        }
        s->most = came_to.reached ? came_to.cost : s->most;
        spare = came_to.reached ? came_to.cost - least_after(s, -1) : spare * 4;
    }
    return status;
}

static hw_status too_wide(
    const hw_counts_task *task, int size, int piece, hw_arena *arena, hw_err *err)
{
    double wanted_cm = hw_counts_target(task, size, piece)->band_cm;
    int wanted_sts = hw_num_nearest(hw_gauge_sts(&task->gauge[HW_BAND], wanted_cm)) + task->bed -
                     hw_counts_most_visible(task, piece);
    hw_buf width;
    hw_buf_init(&width, &arena->mem, HW_BUF_LIMIT);
    hw_length_show(&width, wanted_cm, task->show);
    hw_status status = hw_buf_status(&width);
    if (status == HW_OK) {
        status = hw_err_set(err, HW_ERR_NOFIT,
            "size %s, %s: %s wants %d stitches, but the bed has %d needles; knit it in two widths "
            "with a seam, or choose a coarser gauge or a wider bed",
            task->size_names[size], task->garment->pieces[piece].name, width.text, wanted_sts,
            task->bed);
        status = hw_err_place(err, status, hw_counts_target(task, size, piece)->line, 0);
    } else {
        status = no_memory(err);
    }
    hw_buf_release(&width);
    return status;
}

/* A piece whose width the bed cannot hold is refused: no count would be near it. */
static hw_status check_bed(const hw_counts_task *task, hw_arena *arena, hw_err *err)
{
    for (int i = 0; i < task->sizes; i++) {
        for (int p = 0; p < task->pieces; p++) {
            double least_cm = hw_counts_target(task, i, p)->band_cm - task->choices.tolerance_cm;
            double room_cm =
                hw_gauge_width_cm(&task->gauge[HW_BAND], hw_counts_most_visible(task, p));
            if (least_cm > room_cm) {
                return too_wide(task, i, p, arena, err);
            }
        }
    }
    return HW_OK;
}

static void add_up(const hw_counts_task *task, hw_grading *out)
{
    out->total_cost = 0;
    for (int i = 0; i < task->sizes; i++) {
        for (int p = 0; p < task->pieces; p++) {
            hw_fit *fit = &out->fits[i * task->pieces + p];
            if (i > 0) {
                int step = fit->visible_sts - (fit - task->pieces)->visible_sts;
                fit->cost.grade = hw_counts_step_cost(task, i, p, step);
            }
            const hw_cost *cost = &fit->cost;
            out->total_cost += cost->band + cost->main + cost->centre + cost->grade;
        }
        for (int s = 0; s < task->garment->seam_count; s++) {
            const hw_seam *seam = &task->garment->seams[s];
            const hw_fit *fits = &out->fits[i * task->pieces];
            int at = i * task->garment->seam_count + s;
            out->seam_breaks[at] = fits[seam->piece[0]].margin[seam->side[0]] +
                                   fits[seam->piece[1]].margin[seam->side[1]] - task->gap;
            out->seam_costs[at] = hw_joint_seam_cost(task, out->seam_breaks[at]);
            out->total_cost += out->seam_costs[at];
        }
    }
}

/* Room for a result. */
static hw_status make_room(const hw_counts_task *task, hw_arena *arena, hw_grading *out)
{
    size_t cells = (size_t)task->sizes * (size_t)task->pieces;
    size_t seams = (size_t)task->sizes * (size_t)task->garment->seam_count;
    *out = (hw_grading){ .fits = hw_arena_get(arena, cells, sizeof(hw_fit)),
        .seam_costs = hw_arena_get(arena, seams, sizeof(double)),
        .seam_breaks = hw_arena_get(arena, seams, sizeof(int)) };
    bool refused = out->fits == NULL || out->seam_costs == NULL || out->seam_breaks == NULL;
    return refused ? HW_ERR_NOMEM : HW_OK;
}

hw_status hw_grade_choose(const hw_counts_task *task, hw_arena *arena, hw_grading *out, hw_err *err)
{
    hw_status status = check_bed(task, arena, err);
    if (status != HW_OK) {
        return status;
    }
    hw_grading result;
    if (make_room(task, arena, &result) != HW_OK) {
        return no_memory(err);
    }
    hw_group groups[HW_MAX_PIECES];
    int group_count = hw_joint_groups(task->garment, groups);
    for (int g = 0; g < group_count; g++) {
        hw_arena room;
        hw_arena_init(&room, &arena->mem, arena->block_size);
        search s = { .task = task, .group = &groups[g], .err = err };
        status = solve(&s, &room, &result);
        hw_arena_release(&room);
        if (status != HW_OK) {
            return status;
        }
    }
    add_up(task, &result);
    *out = result;
    return HW_OK;
}

hw_status hw_grade_change(const hw_grade_changing *changing, hw_arena *arena, hw_grading *out)
{
    const hw_counts_task *task = changing->task;
    hw_grading result;
    if (make_room(task, arena, &result) != HW_OK) {
        return HW_ERR_NOMEM;
    }
    for (int i = 0; i < task->sizes * task->pieces; i++) {
        int piece = i % task->pieces;
        const hw_fit *fit = &changing->from->fits[i];
        bool changed =
            piece == changing->piece || task->garment->pieces[piece].mirror_of == changing->piece;
        hw_candidate choice = { .motifs = fit->motifs + (changed ? changing->motifs : 0),
            .margin = { fit->margin[HW_LEFT], fit->margin[HW_RIGHT] } };
        choice.visible_sts =
            choice.motifs * task->repeat - task->gap + fit->margin[HW_LEFT] + fit->margin[HW_RIGHT];
        if (choice.motifs < 1 || choice.visible_sts > hw_counts_most_visible(task, piece)) {
            return HW_ERR_NOFIT;
        }
        choice.main_sts = hw_counts_main_sts(task, i / task->pieces, piece, choice.visible_sts);
        result.fits[i] = fit_of(task, i / task->pieces, piece, &choice);
    }
    add_up(task, &result);
    *out = result;
    return HW_OK;
}
