/* What is asked of a plan.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/plan.h"

const hw_fit *hw_plan_fit(const hw_plan *plan, int size, int piece)
{
    return &plan->grading.fits[size * plan->project->garment.piece_count + piece];
}

hw_counts_task hw_plan_counts(const hw_plan *plan)
{
    const hw_project *project = plan->project;
    return (hw_counts_task){ .sizes = plan->finished.count,
        .pieces = project->garment.piece_count,
        .size_names = plan->finished.names,
        .garment = &project->garment,
        .targets = plan->targets,
        .gauge = plan->gauge,
        .repeat = plan->motif.repeat,
        .gap = plan->motif.gap,
        .bed = project->machine.needles,
        .fixed_sts = plan->fixed_sts,
        .show = project->show,
        .choices = project->choices };
}

hw_plan_piece hw_plan_find(const hw_whole *whole, int piece)
{
    for (int k = 0; k < whole->parts.count; k++) {
        const hw_part *part = &whole->parts.list[k];
        for (int p = 0; p < part->project->garment.piece_count; p++) {
            if (part->pieces[p] == piece) {
                return (hw_plan_piece){ .plan = &whole->plans[k], .piece = p };
            }
        }
    }
    return (hw_plan_piece){ .plan = &whole->plans[0], .piece = 0 }; /* never: parts hold them all */
}

const hw_draft *hw_plan_draft(const hw_whole *whole, int size, int piece)
{
    hw_plan_piece at = hw_plan_find(whole, piece);
    return &at.plan->drafts[size * at.plan->project->garment.piece_count + at.piece];
}

void hw_plan_outlines(const hw_whole *whole, int size, const hw_outline *out[HW_MAX_PIECES])
{
    for (int p = 0; p < whole->project->garment.piece_count; p++) {
        const hw_draft *draft = hw_plan_draft(whole, size, p);
        out[p] = draft->drawn ? &draft->outline : NULL;
    }
}

hw_card_task hw_plan_card(const hw_plan *plan)
{
    return (hw_card_task){ .motif = &plan->motif,
        .machine = &plan->project->machine,
        .start = plan->places[0].card_start };
}
