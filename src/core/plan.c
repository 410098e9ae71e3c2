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

hw_card_task hw_plan_card(const hw_plan *plan)
{
    return (hw_card_task){ .motif = &plan->motif,
        .machine = &plan->project->machine,
        .start = plan->places[0].card_start };
}
