/* Runs of rows that are knitted alike, with the shaping that falls into each.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rowsteps.h"

#include "core/steptogether.h"

/* Whether the dial stands alike; the same dial comes from the same number, so no rounding. */
static bool same_dial(const hw_row *a, const hw_row *b)
{
    bool same = !(a->dial < b->dial) && !(a->dial > b->dial);
    return a->loosest == b->loosest && a->has_dial == b->has_dial && (!a->has_dial || same);
}

static bool alike(const hw_row *a, const hw_row *b)
{
    return a->number + 1 == b->number && a->kind == b->kind && a->part == b->part &&
           a->band == b->band && a->setting == b->setting && a->card == b->card &&
           a->feeders[HW_FEEDER_FIRST] == b->feeders[HW_FEEDER_FIRST] &&
           a->feeders[HW_FEEDER_SECOND] == b->feeders[HW_FEEDER_SECOND] && same_dial(a, b);
}

/* Whether a row of the run under way began a step that is told together with another: a group at
 * the other edge, or the same change woven in between. */
static bool begun(const hw_rowplan *plan, int start, int i, const hw_shape_step *step)
{
    for (int r = start; r < i; r++) {
        const hw_row *row = &plan->rows[r];
        for (int k = 0; k < row->hand_count; k++) {
            const hw_handwork *work = &plan->hands[row->first_hand + k];
            if (work->kind == HW_HAND_SHAPE && hw_step_joins(work->step, step)) {
                return true;
            }
        }
    }
    return false;
}

/* A later working of a step that has begun already leaves a run whole. */
static bool goes_on(const hw_rowplan *plan, int start, int i, const hw_handwork *work)
{
    return work->kind == HW_HAND_SHAPE &&
           (plan->rows[i].number > plan->hem_rows + work->step->row + 1 ||
               begun(plan, start, i, work->step));
}

/* Whether a row begins a run, where the one under way began with the row `start`. */
static bool begins_run(const hw_rowplan *plan, int start, int i)
{
    const hw_row *row = &plan->rows[i];
    if (i == 0 || !alike(row - 1, row)) {
        return true;
    }
    for (int k = 0; k < row->hand_count; k++) {
        const hw_handwork *work = &plan->hands[row->first_hand + k];
        if (!work->after && !goes_on(plan, start, i, work)) {
            return true;
        }
    }
    for (int k = 0; k < row[-1].hand_count; k++) {
        if (plan->hands[row[-1].first_hand + k].after) {
            return true;
        }
    }
    return false;
}

/* Add a working to those of its step, or begin with it. Room is for every step that there can be.
 */
static void gather(hw_run_shaping *list, int *count, const hw_handwork *work, int number)
{
    for (int i = 0; i < *count; i++) {
        if (list[i].step == work->step) {
            list[i].times++;
            return;
        }
    }
    list[(*count)++] = (hw_run_shaping){ .step = work->step, .number = number, .times = 1 };
}

static int workings(const hw_rowplan *plan, const hw_row_run *run)
{
    int count = 0;
    for (int i = run->first; i < run->first + run->count; i++) {
        const hw_row *row = &plan->rows[i];
        for (int k = 0; k < row->hand_count; k++) {
            count += plan->hands[row->first_hand + k].kind == HW_HAND_SHAPE ? 1 : 0;
        }
    }
    return count;
}

static bool add_shaping(const hw_rowplan *plan, hw_arena *arena, hw_row_run *run)
{
    int room = workings(plan, run);
    if (room == 0) {
        return true;
    }
    hw_run_shaping *list = hw_arena_get(arena, (size_t)room, sizeof *list);
    for (int i = run->first; i < run->first + run->count && list != NULL; i++) {
        const hw_row *row = &plan->rows[i];
        for (int k = 0; k < row->hand_count; k++) {
            const hw_handwork *work = &plan->hands[row->first_hand + k];
            if (work->kind == HW_HAND_SHAPE) {
                gather(list, &run->shaping_count, work, row->number);
            }
        }
    }
    run->shaping = list;
    return list != NULL;
}

/* Runs into a list; their number alone where it is NULL. */
static int fill_runs(const hw_rowplan *plan, hw_row_run *list)
{
    int run = -1;
    int start = 0;
    for (int i = 0; i < plan->count; i++) {
        if (begins_run(plan, start, i)) {
            start = i;
            run++;
        }
        if (list != NULL) {
            list[run].first = start;
            list[run].count = i - start + 1;
        }
    }
    return run + 1;
}

hw_status hw_rowplan_runs(const hw_rowplan *plan, hw_arena *arena, hw_row_runs *out)
{
    int count = fill_runs(plan, NULL);
    hw_row_run *list = hw_arena_get(arena, (size_t)count, sizeof *list);
    if (list == NULL) {
        return HW_ERR_NOMEM;
    }
    (void)fill_runs(plan, list);
    for (int i = 0; i < count; i++) {
        if (!add_shaping(plan, arena, &list[i])) {
            return HW_ERR_NOMEM;
        }
    }
    *out = (hw_row_runs){ .list = list, .count = count };
    return HW_OK;
}
