/* A part's results, gathered for the row plan of one of its pieces.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rowing.h"

#include <assert.h>
#include <stdlib.h>

#include "core/num.h"

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

/* The row above the hem that begins at the underarm; -1 where none does, or where stitches are
 * bound off there. */
static int underarm_row(const hw_draft *draft)
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

/* Needles by which a piece is moved to the right so that a band's first figure stands on its column
 * of the card, the nearer way. */
static int needles_aside(const hw_upper_band *band, const hw_upper *upper)
{
    int repeat = band->motif.repeat;
    if (upper->card_column < 0 || !band->motif.fits_card) {
        return 0;
    }
    int right = hw_num_mod(band->card_start - upper->card_column, repeat);
    return 2 * right > repeat ? right - repeat : right;
}

/* Bands higher up on this piece, from the hem up. */
static int gather_bands(const hw_plan *plan, int at, hw_row_band *bands)
{
    const hw_whole *whole = plan->whole;
    int piece = whole->parts.list[plan->part].pieces[at % plan->project->garment.piece_count];
    int count = 0;
    for (int u = 0; u < whole->upper_count; u++) {
        if (!whole->uppers[u].on[piece]) {
            continue;
        }
        const hw_upper *upper = &plan->drafts[at].uppers[u];
        hw_row_band band = { .row = upper->first_row,
            .motif = &whole->uppers[u].motif,
            .motifs = upper->motifs,
            .card_row = 1,
            .aside = needles_aside(&whole->uppers[u], upper),
            .name = whole->uppers[u].input->name };
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            band.plain_sts[side] = upper->taken_sts[side] + upper->margin[side];
        }
        int k = count++;
        for (; k > 0 && bands[k - 1].row > band.row; k--) {
            bands[k] = bands[k - 1];
        }
        bands[k] = band;
    }
    return count;
}

hw_status hw_rowing_make(const hw_plan *plan, int at, hw_arena *arena, hw_rowplan *out, hw_err *err)
{
    hw_rowplan_task task = hw_rowing_task(plan, at);
    const hw_draft *draft = &plan->drafts[at];
    hw_row_band bands[HW_MAX_BANDS];
    int mark = draft->drawn ? underarm_row(draft) : -1;
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
