/* A part's results, gathered for the row plan of one of its pieces.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rowing.h"

#include <assert.h>
#include <stdlib.h>

#include "core/aside.h"

/* Whether there is more than one card to take up the wrong one of. */
static bool several_bands(const hw_whole *whole)
{
    bool trims = false;
    for (int t = 0; t < whole->project->trim_count; t++) {
        trims = trims || whole->project->trims[t].has_motif;
    }
    return whole->parts.count > 1 || whole->upper_count > 0 || trims;
}

/* What the band of a part's hem is called beside others. */
static const char *hem_name(const hw_plan *plan)
{
    if (plan->whole == NULL || !several_bands(plan->whole)) {
        return NULL;
    }
    return plan->part == 0 ? "hem" : plan->whole->parts.list[plan->part].name;
}

hw_rowplan_task hw_rowing_task(const hw_plan *plan, int at)
{
    const hw_project *project = plan->project;
    const hw_piece *piece = &project->garment.pieces[at % project->garment.piece_count];
    const hw_tube *tube = hw_tubes_at(&plan->tubes, at % project->garment.piece_count);
    return (hw_rowplan_task){ .machine = &project->machine,
        .gauge = plan->gauge,
        .hem = &plan->hem,
        .motif = &plan->motif,
        .name = hem_name(plan),
        .fit = &plan->grading.fits[at],
        .place = &plan->places[at],
        .plain_rows = 1,
        .card_row = 1,
        .card_rows = plan->card.possible ? plan->card.design_rows : 0,
        .start = project->start,
        .mirrored = piece->mirror_of >= 0,
        .round_rows = tube != NULL ? plan->hem.total_rows : 0,
        .either_side = project->either_side,
        .cast_on = project->hem.cast_on,
        .closing = project->hem.closing };
}

/* Shaping near a row shows where it is. */
static bool shaped_near(const hw_draft *draft, int row)
{
    bool shaped = false;
    for (int r = row - 2; r <= row + 2; r++) {
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            const int *inset_sts = draft->shape.inset_sts[side];
            bool within = r > 0 && r < draft->shape.rows;
            shaped = shaped || (within && abs(inset_sts[r] - inset_sts[r - 1]) > 1);
        }
    }
    return shaped;
}

int hw_rowing_underarm(const hw_draft *draft)
{
    double underarm_cm = hw_outline_height(&draft->outline, "side");
    int found = -1;
    for (int r = 0; r < draft->shape.rows && underarm_cm > 0 && found < 0; r++) {
        if (draft->low_cm[r] + draft->low_cm[r + 1] > 2 * underarm_cm) {
            found = r;
        }
    }
    return found >= 0 && shaped_near(draft, found) ? -1 : found;
}

/* Bands higher up on this piece, from the hem up. */
static int gather_bands(const hw_plan *plan, int at, hw_row_band *bands)
{
    int order[HW_MAX_BANDS];
    int count = hw_aside_order(plan, at, order);
    for (int i = 0; i < count; i++) {
        const hw_upper_band *band = &plan->whole->uppers[order[i]];
        const hw_upper *upper = &plan->drafts[at].uppers[order[i]];
        bands[i] = (hw_row_band){ .row = upper->first_row,
            .motif = &band->motif,
            .motifs = upper->motifs,
            .card_row = 1,
            .aside = upper->aside,
            .back = upper->back,
            .own_column = upper->own_card ? upper->card_column + 1 : 0,
            .name = band->input->name };
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            bands[i].plain_sts[side] = upper->taken_sts[side] + upper->margin[side];
        }
    }
    return count;
}

hw_status hw_rowing_make(const hw_plan *plan, int at, hw_arena *arena, hw_rowplan *out, hw_err *err)
{
    hw_rowplan_task task = hw_rowing_task(plan, at);
    const hw_draft *draft = &plan->drafts[at];
    hw_row_band bands[HW_MAX_BANDS];
    int mark = draft->drawn ? hw_rowing_underarm(draft) : -1;
    if (draft->drawn) {
        task.shape = &draft->shape;
        task.steps = &draft->steps;
        task.bands = bands;
        task.band_count = gather_bands(plan, at, bands);
        task.marks = &mark;
        task.mark_count = mark >= 0;
    }
    task.round_rows += draft->round_rows;
    return hw_rowplan_make(&task, arena, out, err);
}

hw_status hw_rowing_tube(const hw_plan *plan, int size, const hw_tube *tube, hw_arena *arena)
{
    hw_rowplan *rows = plan->rows + size * plan->project->garment.piece_count;
    int rounds = rows[tube->pieces[0]].round_rows;
    size_t count = (size_t)tube->count;
    hw_row_tube *made = hw_arena_get(arena, 1, sizeof *made);
    const char **names = hw_arena_get(arena, count, sizeof *names);
    int *cast_on_sts = hw_arena_get(arena, count, sizeof *cast_on_sts);
    int *sts = hw_arena_get(arena, (size_t)rounds, sizeof *sts);
    if (made == NULL || names == NULL || cast_on_sts == NULL || sts == NULL) {
        return HW_ERR_NOMEM;
    }
    *made = (hw_row_tube){ names, cast_on_sts, tube->count, sts };
    for (int k = 0; k < tube->count; k++) {
        hw_rowplan *plan_of = &rows[tube->pieces[k]];
        assert(plan_of->round_rows == rounds);
        names[k] = plan->project->garment.pieces[tube->pieces[k]].name;
        cast_on_sts[k] = plan_of->rows[0].sts;
        plan_of->tube = made;
        plan_of->slice = k;
        for (int r = 0; r < rounds; r++) {
            sts[r] += plan_of->rows[r].sts;
        }
    }
    return HW_OK;
}
