/* Candidates of one piece in one size, and the terms of their cost.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/candidate.h"

#include <math.h>
#include <stdlib.h>

#include "core/num.h"

#define COST_UNIT 1e-6
#define COST_MOST 1e9

hw_cost_units hw_cost_whole(double cost)
{
    return hw_num_nearest_long(fmin(cost, COST_MOST) / COST_UNIT);
}

const hw_target *hw_counts_target(const hw_counts_task *task, int size, int piece)
{
    return &task->targets[size * task->pieces + piece];
}

int hw_counts_edge_sts(const hw_counts_task *task, int piece, hw_side side)
{
    int own = task->garment->pieces[piece].edge_sts[side];
    if (own >= 0) {
        return own;
    }
    bool sewn = hw_garment_seam_at(task->garment, piece, side) >= 0;
    return sewn ? task->choices.edge_sts : 0;
}

int hw_counts_most_visible(const hw_counts_task *task, int piece)
{
    return task->bed - hw_counts_edge_sts(task, piece, HW_LEFT) -
           hw_counts_edge_sts(task, piece, HW_RIGHT);
}

int hw_counts_most_margin(const hw_counts_task *task)
{
    return task->choices.hand_set ? task->repeat - 1 : task->gap;
}

int hw_counts_main_sts(const hw_counts_task *task, int size, int piece, int visible_sts)
{
    if (!task->choices.rehang) {
        return visible_sts;
    }
    const hw_gauge *main = &task->gauge[HW_MAIN];
    double wanted_cm = hw_counts_target(task, size, piece)->main_cm;
    double off_cm = hw_gauge_width_cm(main, visible_sts) - wanted_cm;
    if (fabs(off_cm) <= task->choices.tolerance_cm) {
        return visible_sts;
    }
    int nearest = hw_num_nearest(hw_gauge_sts(main, wanted_cm));
    int most = hw_counts_most_visible(task, piece);
    nearest = nearest > most ? most : nearest;
    return nearest < 1 ? 1 : nearest;
}

static double squared(double x)
{
    return x * x;
}

hw_cost hw_candidate_cost(
    const hw_counts_task *task, int size, int piece, const hw_candidate *choice)
{
    const hw_target *target = hw_counts_target(task, size, piece);
    double band_cm = hw_gauge_width_cm(&task->gauge[HW_BAND], choice->visible_sts);
    double main_cm = hw_gauge_width_cm(&task->gauge[HW_MAIN], choice->main_sts);
    double off_centre_sts = (choice->margin[HW_LEFT] - choice->margin[HW_RIGHT]) / 2.0;
    return (hw_cost){
        .band = squared((band_cm - target->band_cm) / task->choices.tolerance_cm),
        .main = squared((main_cm - target->main_cm) / task->choices.tolerance_cm),
        .centre = task->choices.centre_weight * squared(off_centre_sts),
    };
}

bool hw_candidate_inside(
    const hw_counts_task *task, int size, int piece, const hw_candidate *choice)
{
    const hw_target *target = hw_counts_target(task, size, piece);
    double most_cm = task->choices.tolerance_cm * (1 + 1e-9);
    double band_cm = hw_gauge_width_cm(&task->gauge[HW_BAND], choice->visible_sts);
    double main_cm = hw_gauge_width_cm(&task->gauge[HW_MAIN], choice->main_sts);
    return fabs(band_cm - target->band_cm) <= most_cm && fabs(main_cm - target->main_cm) <= most_cm;
}

double hw_counts_step_cost(const hw_counts_task *task, int size, int piece, int step_sts)
{
    /* What is knitted already does not pull its neighbours after it. */
    if (hw_counts_fixed(task, size, piece) > 0 || hw_counts_fixed(task, size - 1, piece) > 0) {
        return 0;
    }
    double wanted_cm = hw_counts_target(task, size, piece)->band_cm -
                       hw_counts_target(task, size - 1, piece)->band_cm;
    double step_cm = hw_gauge_width_cm(&task->gauge[HW_BAND], step_sts);
    return task->choices.grade_weight * squared((step_cm - wanted_cm) / task->choices.tolerance_cm);
}

static int by_cost(const void *a, const void *b)
{
    const hw_candidate *x = a;
    const hw_candidate *y = b;
    if (x->cost != y->cost) {
        return x->cost < y->cost ? -1 : 1;
    }
    if (x->visible_sts != y->visible_sts) {
        return x->visible_sts < y->visible_sts ? -1 : 1;
    }
    if (x->margin[HW_LEFT] != y->margin[HW_LEFT]) {
        return x->margin[HW_LEFT] < y->margin[HW_LEFT] ? -1 : 1;
    }
    return (x->motifs > y->motifs) - (x->motifs < y->motifs);
}

int hw_counts_fixed(const hw_counts_task *task, int size, int piece)
{
    return task->fixed_sts != NULL ? task->fixed_sts[size * task->pieces + piece] : 0;
}

/* Completes a candidate; false where a rule forbids it. Knitted is knitted: the rules are for what
 * is still to come. */
static bool complete(const hw_counts_task *task, int size, int piece, hw_candidate *choice)
{
    int fixed = hw_counts_fixed(task, size, piece);
    bool off_centre = choice->margin[HW_LEFT] != choice->margin[HW_RIGHT];
    if (fixed > 0 ? choice->visible_sts != fixed : task->choices.exact_centre && off_centre) {
        return false;
    }
    choice->main_sts = hw_counts_main_sts(task, size, piece, choice->visible_sts);
    bool inside = hw_candidate_inside(task, size, piece, choice);
    if (fixed == 0 && task->choices.keep_tolerance && !inside) {
        return false;
    }
    hw_cost cost = hw_candidate_cost(task, size, piece, choice);
    choice->cost = hw_cost_whole(cost.band) + hw_cost_whole(cost.main) + hw_cost_whole(cost.centre);
    return true;
}

hw_status hw_candidates_list(
    const hw_counts_task *task, int size, int piece, hw_arena *arena, hw_candidates *out)
{
    int most_sts = hw_counts_most_visible(task, piece);
    int most_margin = hw_counts_most_margin(task);
    int most_motifs = (most_sts + task->gap) / task->repeat;
    most_motifs = most_motifs < 0 ? 0 : most_motifs;
    size_t ways = (size_t)(most_margin + 1) * (size_t)(most_margin + 1);
    hw_candidate *list = hw_arena_get(arena, (size_t)most_motifs * ways, sizeof *list);
    if (list == NULL) {
        return HW_ERR_NOMEM;
    }
    int count = 0;
    for (int motifs = 1; motifs <= most_motifs; motifs++) {
        for (int left = 0; left <= most_margin; left++) {
            for (int right = 0; right <= most_margin; right++) {
                hw_candidate choice = { .motifs = motifs, .margin = { left, right } };
                choice.visible_sts = motifs * task->repeat - task->gap + left + right;
                if (choice.visible_sts <= most_sts && complete(task, size, piece, &choice)) {
                    list[count++] = choice;
                }
            }
        }
    }
    qsort(list, (size_t)count, sizeof *list, by_cost);
    *out = (hw_candidates){ .list = list, .count = count };
    return HW_OK;
}
