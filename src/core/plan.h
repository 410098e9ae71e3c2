/* The plan: all that was calculated for a project, for the sheets to lay out.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_PLAN_H
#define HW_CORE_PLAN_H

#include "core/alternative.h"
#include "core/card.h"
#include "core/fit.h"
#include "core/note.h"
#include "core/project.h"
#include "core/spread.h"
#include "core/tolerance.h"

typedef struct {
    const hw_project *project;
    const hw_gauge_input *places_measured; /* [HW_FABRIC_COUNT]: swatches and knitted pieces */
    hw_gauge gauge[HW_FABRIC_COUNT];
    hw_motif motif;
    hw_sizes body;         /* complete; count is the number of sizes */
    hw_sizes finished;     /* complete, all that the garment's rules give */
    hw_target *targets;    /* [sizes * pieces], size by size */
    hw_mark *target_marks; /* [sizes * pieces]: the weakest mark behind each width */
    int *fixed_sts;        /* [sizes * pieces]: counts of pieces knitted already; 0: free */
    hw_grading grading;
    bool has_free;           /* some piece is knitted already: the next is known */
    hw_grading free_grading; /* what would be chosen if nothing had been knitted yet */
    hw_spread *changes; /* [sizes * pieces]: decreases or increases above the band; count 0: none */
    hw_tolerance (*tolerances)[HW_FABRIC_COUNT]; /* [sizes * pieces]: of main and band; no facing */
    hw_fit_near *near; /* [sizes * pieces]: the centred counts nearest to the wanted width */
    bool has_punch;    /* the card is not punched yet: punch says where to begin */
    hw_bed_punch punch;
    hw_place_on_bed *places; /* [sizes * pieces] */
    hw_card card;            /* as the first piece of the first size needs it */
    hw_alternatives alternatives;
    hw_hem hem;
    const hw_note *notes;
    int note_count;
    const hw_basis *basis;
    int basis_count;
} hw_plan;

/* The task of choosing counts, as the plan was made. */
hw_counts_task hw_plan_counts(const hw_plan *plan);

/* The task of making the card, as the plan was made. */
hw_card_task hw_plan_card(const hw_plan *plan);

/* The fit of one piece in one size. */
const hw_fit *hw_plan_fit(const hw_plan *plan, int size, int piece);

#endif
