/* Drafts of all pieces, and what is asked of them together.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/above.h"

#include "core/num.h"
#include "core/rowing.h"

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
}

/* A band's motif: its own drawing, or the file's with the band's gap. */
hw_status hw_above_motif(
    const hw_motif_choice *choice, int card_columns, hw_arena *arena, hw_motif *out, hw_err *err)
{
    const hw_motif_input *from = choice->file.name == NULL ? &choice->own : &choice->drawn;
    int gap = choice->own.has_gap ? choice->own.gap : from->gap;
    if (from->chart.width + gap > HW_MAX_CHART_COLUMNS) {
        return hw_err_set(err, HW_ERR_LIMIT,
            "figure and gap are %d columns together; at most %d can repeat: choose a smaller gap",
            from->chart.width + gap, HW_MAX_CHART_COLUMNS);
    }
    hw_status status = hw_motif_analyse(&from->chart, gap, card_columns, arena, out);
    return status == HW_OK ? HW_OK : no_memory(err);
}

static hw_status check_drawn(const hw_whole *whole, const hw_upper_band *upper, hw_err *err)
{
    const hw_garment *garment = &whole->project->garment;
    for (int p = 0; p < garment->piece_count; p++) {
        if (upper->on[p] && garment->pieces[p].outline == NULL) {
            hw_status status = hw_err_set(err, HW_ERR_MISSING,
                "the band `%.40s` lies higher up, but the garment draws no outline of `%.60s`; "
                "take "
                "the piece out of `on`",
                upper->input->name, garment->pieces[p].name);
            return hw_err_place(err, status, upper->input->line, 0);
        }
    }
    return HW_OK;
}

hw_status hw_above_uppers(hw_whole *whole, hw_arena *arena, hw_err *err)
{
    const hw_project *project = whole->project;
    whole->uppers = hw_arena_get(arena, HW_MAX_BANDS, sizeof *whole->uppers);
    if (whole->uppers == NULL) {
        return no_memory(err);
    }
    for (int b = 0; b < project->band_count; b++) {
        if (project->bands[b].has_hem) {
            continue;
        }
        hw_upper_band *upper = &whole->uppers[whole->upper_count++];
        upper->input = &project->bands[b];
        hw_status status = hw_layout_on(&project->garment, upper->input, upper->on, err);
        status = status == HW_OK ? check_drawn(whole, upper, err) : status;
        if (status == HW_OK) {
            status = hw_above_motif(
                &upper->input->motif, project->machine.card_columns, arena, &upper->motif, err);
        }
        if (status != HW_OK) {
            return hw_err_place(err, status, upper->input->line, 0);
        }
    }
    return HW_OK;
}

/* Where the cards of bands higher up have to start: the needles are those that the hem stands on.
 */
static void find_columns(const hw_plan *plan, int at, hw_draft *draft)
{
    int columns = plan->project->machine.card_columns;
    int pieces = plan->project->garment.piece_count;
    bool mirrored = plan->project->garment.pieces[at % pieces].mirror_of >= 0;
    for (int u = 0; u < plan->whole->upper_count; u++) {
        const hw_motif *motif = &plan->whole->uppers[u].motif;
        hw_upper *upper = &draft->uppers[u];
        int needle = hw_upper_needle(upper, &plan->places[at], &plan->grading.fits[at], mirrored);
        bool card = columns > 0 && motif->fits_card && upper->motifs > 0;
        upper->card_column = card ? hw_num_mod(hw_bed_column(needle, columns), motif->repeat) : -1;
    }
}

hw_status hw_above_draft(const hw_plan *plan, int at, hw_arena *arena, hw_draft *out, hw_err *err)
{
    const hw_project *project = plan->project;
    int pieces = project->garment.piece_count;
    const hw_piece *piece = &project->garment.pieces[at % pieces];
    if (piece->outline == NULL) {
        return HW_OK;
    }
    const hw_fit *fit = &plan->grading.fits[at];
    hw_upper_wish wishes[HW_MAX_BANDS] = { { 0 } };
    for (int u = 0; u < plan->whole->upper_count; u++) {
        const hw_upper_band *upper = &plan->whole->uppers[u];
        bool on = upper->on[plan->whole->parts.list[plan->part].pieces[at % pieces]];
        wishes[u] = (hw_upper_wish){ .motif = on ? &upper->motif : NULL,
            .above_fold_cm = upper->input->above_fold_cm,
            .below_underarm_cm = upper->input->below_underarm_cm,
            .name = upper->input->name,
            .line = upper->input->line };
    }
    hw_rowplan_task rows = hw_rowing_task(plan, at);
    hw_row_above above = hw_rowplan_above(&rows);
    hw_draft_task task = {
        .outline = { .piece = piece,
            .finished = &plan->finished,
            .size = at / pieces,
            .band_cm = plan->targets[at].band_cm,
            .main_cm = plan->targets[at].main_cm,
            .width_cm = hw_gauge_width_cm(&plan->gauge[HW_MAIN], fit->main_sts),
            .face_cm = plan->hem.face_cm },
        .gauge = plan->gauge,
        .wishes = wishes,
        .wish_count = plan->whole->upper_count,
        .main_sts = fit->main_sts,
        .first_start = above.edge,
        .hem_rows = above.number - 1,
        .first_is_right_side = above.right_side,
        .hand = hw_rowplan_work(&rows) == HW_WORK_HAND,
        .short_rows = project->short_rows,
    };
    hw_status status = hw_draft_make(&task, arena, out, err);
    if (status == HW_OK) {
        find_columns(plan, at, out);
    }
    return status;
}

hw_status hw_above_cards(hw_whole *whole, hw_arena *arena, hw_err *err)
{
    int pieces = whole->project->garment.piece_count;
    for (int u = 0; u < whole->upper_count; u++) {
        hw_upper_band *upper = &whole->uppers[u];
        int start = 0;
        for (int p = pieces; p-- > 0;) {
            const hw_draft *draft = hw_plan_draft(whole, 0, p);
            if (upper->on[p] && draft->uppers[u].card_column >= 0) {
                start = draft->uppers[u].card_column; /* the first piece's is the last to be set */
            }
        }
        hw_card_task task = {
            .motif = &upper->motif, .machine = &whole->project->machine, .start = start
        };
        upper->card_start = start;
        if (hw_card_make(&task, arena, &upper->card) != HW_OK) {
            return no_memory(err);
        }
    }
    return HW_OK;
}

hw_status hw_above_joins(hw_whole *whole, hw_arena *arena, hw_err *err)
{
    const hw_garment *garment = &whole->project->garment;
    int sizes = whole->plans[0].finished.count;
    size_t cells = (size_t)sizes * (size_t)garment->join_count;
    whole->joins = hw_arena_get(arena, cells, sizeof *whole->joins);
    if (whole->joins == NULL) {
        return no_memory(err);
    }
    for (int i = 0; i < sizes; i++) {
        const hw_outline *pieces[HW_MAX_PIECES] = { NULL };
        hw_plan_outlines(whole, i, pieces);
        for (int k = 0; k < garment->join_count; k++) {
            hw_status status = hw_outline_join(
                pieces, &garment->joins[k], &whole->joins[i * garment->join_count + k]);
            if (status != HW_OK) {
                return hw_err_set(err, status, "%s", "the length of an edge could not be found");
            }
        }
    }
    return HW_OK;
}
