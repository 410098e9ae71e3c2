/* Pieces that seams or mirrors tie together: their joint choices in one size, within a budget.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_JOINT_H
#define HW_CORE_JOINT_H

#include "core/candidate.h"

enum {
    HW_JOINT_MOST = 300000,          /* joint choices kept in one size, before it is too many */
    HW_JOINT_MOST_TRIES = 20000000L, /* choices looked at in one size, before it is too many */
};

/* The pieces of one group, in the order of the garment; mirrored pieces stand in `mirrors`. */
typedef struct {
    int pieces[HW_MAX_PIECES];
    int mirrors[HW_MAX_PIECES][HW_MAX_PIECES]; /* of each of `pieces`: the pieces that mirror it */
    int mirror_counts[HW_MAX_PIECES];
    int count;
    int seams[HW_MAX_SEAMS]; /* indices into the garment's seams */
    int seam_count;
} hw_group;

/* A joint choice: a candidate of each piece. Only visible stitches matter to the next size. */
typedef struct {
    int visible_sts[HW_MAX_PIECES]; /* of each of the group's pieces */
    int choices[HW_MAX_PIECES];     /* index into that piece's candidates */
    hw_cost_units cost;             /* of this size: all terms but the step */
    int cast_on_sts, left_margins;  /* sums over the group, mirrors included: they break ties */
} hw_joint;

typedef struct {
    hw_joint *list; /* one for each set of visible stitches: the best */
    int count;
    bool all; /* nothing was left out for the budget */
} hw_joints;

/* Candidates of one piece that differ in how their plain ends are split alone. */
typedef struct {
    int first;       /* the cheapest of them */
    int margins_sts; /* of both edges together */
} hw_joint_line;

/* One size of a group: the candidates of its pieces, and what hw_joint_sort makes of them. */
typedef struct {
    const hw_counts_task *task;
    const hw_group *group;
    int size;
    hw_candidates candidates[HW_MAX_PIECES];
    hw_joint_line *lines[HW_MAX_PIECES]; /* by rising cost of their cheapest */
    int line_counts[HW_MAX_PIECES];
    int *next[HW_MAX_PIECES]; /* of each candidate: the next of its line by rising cost, or -1 */
} hw_joint_task;

/* Part the garment's pieces into groups; out has room for HW_MAX_PIECES. Returns their number. */
int hw_joint_groups(const hw_garment *garment, hw_group *out);

/* Seam cost: weight times the square of margins less the gap. */
double hw_joint_seam_cost(const hw_counts_task *task, int break_sts);

/*
 * Sort the candidates of a group into lines.
 *
 * Given:     in        candidates by rising cost
 *            arena     owner of the lines
 * Returned:  in        its lines; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_joint_sort(hw_joint_task *in, hw_arena *arena) HW_MUST_USE;

/*
 * The least cost of a group in one size.
 *
 * Given:     in        sorted
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOFIT (no joint choice meets the rules); HW_ERR_LIMIT
 */
hw_status hw_joint_least(const hw_joint_task *in, hw_cost_units *out) HW_MUST_USE;

/*
 * All joint choices that cost no more than a limit, the best for each set of visible stitches.
 *
 * Given:     in        sorted
 *            limit     cost of this size, all terms but the step
 *            arena     owner of the list
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_LIMIT (more than HW_JOINT_MOST, or too many to look at); HW_ERR_NOMEM
 */
hw_status hw_joint_list(
    const hw_joint_task *in, hw_cost_units limit, hw_arena *arena, hw_joints *out) HW_MUST_USE;

#endif
