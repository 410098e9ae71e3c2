/* The plan: all that was calculated for a project, for the sheets to lay out.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_PLAN_H
#define HW_CORE_PLAN_H

#include "core/alternative.h"
#include "core/card.h"
#include "core/draft.h"
#include "core/fit.h"
#include "core/layout.h"
#include "core/note.h"
#include "core/project.h"
#include "core/rowplan.h"
#include "core/spread.h"
#include "core/tolerance.h"

/* A band higher up, for all pieces that carry it. */
typedef struct {
    const hw_band_input *input;
    hw_motif motif;
    bool on[HW_MAX_PIECES]; /* of the whole garment */
    int card_start;         /* column from 0, as the first piece of the first size needs it */
    hw_card card;
} hw_upper_band;

struct hw_plan;
struct hw_trimmings;
struct hw_yarnuse;

/* What concerns the garment as a whole, shared by the plans of its parts. */
typedef struct {
    const hw_project *project;
    hw_parts parts;
    struct hw_plan *plans; /* [parts.count]; of the garment's own hem first */
    hw_upper_band *uppers;
    int upper_count;
    hw_join_lengths *joins; /* [sizes * joins], size by size */
    struct hw_trimmings *trims;
    struct hw_yarnuse *yarn; /* NULL: nothing is known of yarn */
} hw_whole;

typedef struct hw_plan {
    const hw_project *project; /* of this part: its garment holds the pieces with this hem */
    const hw_whole *whole;     /* never NULL in a plan that was calculated */
    int part;                  /* index of this part in the whole */
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
    hw_draft *drafts;     /* [sizes * pieces] */
    hw_rowplan *rows;     /* [sizes * pieces] */
    const hw_note *notes; /* of the whole garment in the first part's plan */
    int note_count;
    const hw_basis *basis;
    int basis_count;
} hw_plan;

/* The task of choosing counts, as the plan was made. */
hw_counts_task hw_plan_counts(const hw_plan *plan);

/* A piece of the whole garment, found in the plan of its part. */
typedef struct {
    const hw_plan *plan;
    int piece; /* index in that plan's garment */
} hw_plan_piece;
hw_plan_piece hw_plan_find(const hw_whole *whole, int piece);

/* The draft of a piece of the whole garment in one size. */
const hw_draft *hw_plan_draft(const hw_whole *whole, int size, int piece);

/* The outlines of all pieces of the whole garment in one size; NULL for one that is not drawn. */
void hw_plan_outlines(const hw_whole *whole, int size, const hw_outline *out[HW_MAX_PIECES]);

/* The task of making the card, as the plan was made. */
hw_card_task hw_plan_card(const hw_plan *plan);

/* The fit of one piece in one size. */
const hw_fit *hw_plan_fit(const hw_plan *plan, int size, int piece);

#endif
