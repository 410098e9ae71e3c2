/* What one piece in one size could be: every count of whole motifs and margins, and its cost.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_CANDIDATE_H
#define HW_CORE_CANDIDATE_H

#include "core/garment.h"
#include "core/gauge.h"
#include "core/units.h"

/* What may be weighed, and what is a rule. */
typedef struct {
    double tolerance_cm;                             /* (0, HW_MAX_CM] */
    double centre_weight, seam_weight, grade_weight; /* [0, 1000] */
    bool exact_centre;   /* margins of a piece are equal, or nothing is chosen */
    bool unbroken_seams; /* margins at a seam add up to the gap, or nothing is chosen */
    bool keep_tolerance; /* widths stay inside the tolerance, or nothing is chosen */
    bool hand_set;       /* needles may be set by hand: margins up to a repeat less one */
    bool rehang;         /* band and plain fabric may have different counts */
    int edge_sts;        /* the usual stitches that a seam swallows, at each edge in a seam */
} hw_choices;

typedef struct {
    double band_cm, main_cm; /* wanted visible widths */
    int line;                /* of the project, on which the band's rests; 0: not known */
} hw_target;

/* All that the choice of counts depends on. */
typedef struct {
    int sizes, pieces;
    const char *const *size_names; /* [sizes] */
    const hw_garment *garment;     /* pieces and seams */
    const hw_target *targets;      /* [sizes * pieces], size by size */
    const hw_gauge *gauge;         /* HW_FABRIC_COUNT */
    int repeat, gap;               /* columns */
    int bed;                       /* most stitches that may be cast on */
    const int
        *fixed_sts; /* [sizes * pieces], visible, of pieces knitted already; 0: free; or NULL */
    hw_show show;   /* of lengths in messages */
    hw_choices choices;
} hw_counts_task;

/* The terms of a piece's cost, each with its weight already in it. */
typedef struct {
    double band, main, centre, grade;
} hw_cost;

/* A cost in millionths: whole numbers, so that equal costs tie on every computer. */
typedef long long hw_cost_units;

typedef struct {
    int motifs;
    int margin[HW_SIDE_COUNT];
    int visible_sts;
    int main_sts;       /* as visible_sts unless re-hung */
    hw_cost_units cost; /* band, main and centre */
} hw_candidate;

typedef struct {
    hw_candidate *list; /* by rising cost, then fewer stitches, then smaller left margin */
    int count;
} hw_candidates;

/* A cost in millionths; terms count up to 1e9, which no sensible project reaches. */
hw_cost_units hw_cost_whole(double cost);

/* The wanted widths of a piece in a size. */
const hw_target *hw_counts_target(const hw_counts_task *task, int size, int piece);

/* Edge stitches of a piece on one side: its own, or the usual number where a seam holds it. */
int hw_counts_edge_sts(const hw_counts_task *task, int piece, hw_side side);

/* Visible stitches that a piece was knitted with already; 0 where it is free. */
int hw_counts_fixed(const hw_counts_task *task, int size, int piece);

/* Most visible stitches that the bed leaves room for. */
int hw_counts_most_visible(const hw_counts_task *task, int piece);

/* Most stitches of a margin: the gap, or a repeat less one where needles may be set by hand. */
int hw_counts_most_margin(const hw_counts_task *task);

/* Stitches of the plain fabric above a band: the same count, unless re-hanging is allowed and the
 * same count would leave the tolerance; then the nearest to the wanted width. */
int hw_counts_main_sts(const hw_counts_task *task, int size, int piece, int visible_sts);

/*
 * The cost of a choice, without its step from the size before (grade is 0).
 *
 * Given:     task      as hw_grade_choose
 *            size, piece  in range
 *            choice    its motifs, margins and stitches are set
 */
hw_cost hw_candidate_cost(
    const hw_counts_task *task, int size, int piece, const hw_candidate *choice);

/* Both widths lie within the tolerance, a billionth over counted as within. */
bool hw_candidate_inside(
    const hw_counts_task *task, int size, int piece, const hw_candidate *choice);

/* Cost of the step in stitches from the size before, weight in it; size in [1, sizes). 0 to and
 * from a size that is knitted already. */
double hw_counts_step_cost(const hw_counts_task *task, int size, int piece, int step_sts);

/*
 * Every choice for one piece in one size that the rules allow.
 *
 * Given:     task      as hw_grade_choose
 *            size, piece  in range
 *            arena     owner of the list
 * Returned:  out       may hold none; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      whole motifs only; margins from 0 to the gap (or a repeat less one, hand-set)
 */
hw_status hw_candidates_list(const hw_counts_task *task, int size, int piece, hw_arena *arena,
    hw_candidates *out) HW_MUST_USE;

#endif
