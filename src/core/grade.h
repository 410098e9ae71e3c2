/* The choice of stitch counts for all sizes and pieces at once: least cost, exactly.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_GRADE_H
#define HW_CORE_GRADE_H

#include "core/candidate.h"

enum { HW_GRADE_MAX_STATES = 20000 }; /* sets of counts kept in one size, before it is too many */

/* One piece in one size. */
typedef struct {
    int motifs;
    int margin[HW_SIDE_COUNT];
    int edge_sts[HW_SIDE_COUNT];
    int visible_sts, cast_on_sts;
    int main_sts; /* visible stitches of the plain fabric; as visible_sts unless re-hung */
    double band_cm, main_cm;         /* what these counts measure */
    double band_off_cm, main_off_cm; /* that less what was wanted */
    bool inside;                     /* both within the tolerance */
    hw_cost cost;                    /* grade: the step from the size before; 0 in the first */
} hw_fit;

typedef struct {
    hw_fit *fits;       /* [sizes * pieces], size by size */
    double *seam_costs; /* [sizes * seams], size by size, weight in it */
    int *seam_breaks;   /* [sizes * seams], margins less the gap, stitches */
    double total_cost;  /* the sum of all terms above */
    long states;        /* sets of counts kept, of all sizes and groups, in the last pass */
    int passes;         /* most passes that a group took */
} hw_grading;

/*
 * Choose the counts of least total cost, by dynamic programming over sizes.
 *
 * Given:     task      widths in (0, HW_MAX_CM], repeat in [1, HW_MAX_CHART_COLUMNS], gap below
 *                      repeat, bed in [1, HW_MAX_STS], garment pieces and seams in range
 *            arena     owner of the result; the working room is given back before the return
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOFIT (the text says which piece and size, and what to change);
 *            HW_ERR_LIMIT (pieces tied by seams have too many choices); HW_ERR_NOMEM
 * Note:      costs are compared in millionths, so that ties are ties everywhere: ties go to fewer
 *            stitches, then to smaller left margins. Pieces that no seam and no mirror ties
 *            together are chosen apart. Counts never fall where the wanted widths do not.
 *            Room and time: for each group, the sum over sizes of the states kept, and of the
 *            products of neighbours' states.
 */
hw_status hw_grade_choose(
    const hw_counts_task *task, hw_arena *arena, hw_grading *out, hw_err *err) HW_MUST_USE;

/* A choice and a change to it: motifs more (or fewer, below 0) in a piece, in every size. */
typedef struct {
    const hw_counts_task *task;
    const hw_grading *from;
    int piece, motifs;
} hw_grade_changing;

/*
 * What a choice comes to when one piece and its mirrors get motifs more or fewer, margins kept.
 *
 * Given:     changing  from was chosen for task; piece mirrors no other
 *            arena     owner of the result
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOFIT (no motif left, or the bed too short, in some size); HW_ERR_NOMEM
 */
hw_status hw_grade_change(
    const hw_grade_changing *changing, hw_arena *arena, hw_grading *out) HW_MUST_USE;

#endif
