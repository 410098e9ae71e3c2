/* The trims of a garment: bands picked up along drawn edges, folded like a hem.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_TRIMMING_H
#define HW_CORE_TRIMMING_H

#include "core/buttonhole.h"
#include "core/pickup.h"
#include "core/plan.h"

/* A trim, as it is in every size. */
typedef struct {
    const hw_trim *trim;
    const hw_trim_input *input; /* what the project says of it; NULL: nothing */
    bool has_motif;
    hw_motif motif;
    hw_card card; /* its first figure in column 1: a trim can be picked up on any needles */
    hw_gauge gauge[HW_FABRIC_COUNT]; /* of its own band, and of the plain fabric and facing */
} hw_trim_kind;

/* A trim in one size. */
typedef struct {
    double length_cm;
    hw_pickup pickup;
    int share_of[HW_MAX_PARTS]; /* of each edge in the order of picking up: which of the pickup's
                                   shares; -1 where the edge has no length in this size */
    hw_hem hem;                 /* band_rows 0 where it is plain */
    int holes_wanted;
    hw_holes holes; /* count 0: none */
    hw_hole_rows hole_rows;
    bool too_long; /* more stitches than the bed has needles */
} hw_trimmed;

struct hw_trimmings {
    hw_trim_kind *kinds; /* [trims] */
    hw_trimmed *sizes;   /* [sizes * trims], size by size */
    int count;           /* trims */
};

/*
 * Work out every trim in every size.
 *
 * Given:     whole     the plans of all parts are made
 *            arena     owner of the result
 * Returned:  whole     its trims
 * Result:    HW_OK; what hw_gauge_measure, hw_hem_plan, hw_pickup_plan and hw_holes_plan can say,
 *            with the name of the trim and the size; HW_ERR_LIMIT (figure and gap too wide);
 *            HW_ERR_NOMEM
 * Note:      a trim without a motif has a plain face; its band's gauge is the project's where it
 *            gives none. It has no edge stitches: it is sewn to nothing at its ends [O1].
 *            Rows for a ratio are counted where an edge climbs at least twice as far as it moves
 *            across; elsewhere stitches are picked up evenly
 */
hw_status hw_trimming_make(hw_whole *whole, hw_arena *arena, hw_err *err) HW_MUST_USE;

/* A trim in one size. */
const hw_trimmed *hw_trimming_at(const hw_whole *whole, int size, int trim);

/* What one edge of a trim gets; NULL where it has no length in this size. */
const hw_pickup_share *hw_trimming_share(const hw_trimmed *trimmed, int edge);

/* One of a trim's edges in words, such as "left front left opening"; NULL when memory is refused.
 */
char *hw_trimming_edge(const hw_whole *whole, int trim, int edge, hw_arena *arena);

#endif
