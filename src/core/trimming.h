/* The trims of a garment: bands picked up along drawn edges, folded like a hem.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_TRIMMING_H
#define HW_CORE_TRIMMING_H

#include "core/buttonhole.h"
#include "core/lengths.h"
#include "core/pickupwords.h"
#include "core/plan.h"
#include "core/trimway.h"

enum { HW_TRIMMING_NEAR_HOLES = 3 }; /* so far from the number wanted others are tried */

/* A trim, as it is in every size. */
typedef struct {
    const hw_trim *trim;
    const hw_trim_input *input; /* what the project says of it; NULL: nothing */
    bool has_motif;
    hw_motif motif;
    hw_card card;
    int card_start;  /* column from 0 where the card's first figure starts */
    bool free_start; /* no column serves all sizes: each stands in the middle */
    hw_side first;   /* the end at which stitches are counted, its right side seen, the fold up */
    bool from_below; /* that is the lower end of one upright edge */
    int covered;     /* ends of it that other trims are picked up over */
    hw_gauge gauge[HW_FABRIC_COUNT];
} hw_trim_kind;

/* A trim in one size. */
typedef struct {
    double length_cm;
    double elastic_cm; /* to draw in, without its lap; 0: none */
    hw_pickup pickup;
    int share_of[HW_MAX_PARTS]; /* of each edge in the order of picking up: which of the pickup's
                                   shares; -1 where the edge has no length in this size */
    hw_hem hem;                 /* band_rows 0 where it is plain */
    int holes_wanted;
    hw_holes holes; /* count 0: none */
    /* with a motif: whether so many fewer or more would lie evenly; the middle is those wanted */
    bool holes_even[2 * HW_TRIMMING_NEAR_HOLES + 1];
    hw_hole_rows hole_rows;
    bool too_long;      /* more stitches than the bed has needles */
    hw_lengths lengths; /* where it is too long: from its right end, as it is hung */
    hw_fit fit; /* the stitches as the row planner has them: left and right on the right side */
    hw_place_on_bed place; /* where it is not too long; in hand knitting of no meaning */
    hw_row_trim row_trim;
    hw_rowplan rows;
} hw_trimmed;

struct hw_trimmings {
    hw_trim_kind *kinds; /* [trims] */
    hw_trimmed *sizes;   /* [sizes * trims], size by size */
    int count;           /* trims */
    hw_trimway way;      /* in the first size, as in all */
};

/*
 * Work out every trim in every size.
 *
 * Given:     whole     the plans of all parts are made
 *            arena     owner of the result
 * Returned:  whole     its trims
 * Result:    HW_OK; what hw_gauge_all, hw_hem_plan, hw_pickup_plan, hw_holes_plan,
 *            hw_trimway_check and hw_trimrows_make can say, with the name of the trim, the size and
 *            the line of the project, or else of the garment file; HW_ERR_LIMIT (figure and gap too
 *            wide); HW_ERR_RANGE (an elastic longer than the edges, which would not draw them in);
 *            HW_ERR_NOMEM
 * Note:      a trim without a motif has a plain face. A gauge of its own is that of its band, or of
 *            a plain trim's plain fabric, from which its facing's follows as any facing's does;
 *            else its gauges are the project's. It has no edge stitches: it is sewn to nothing at
 *            its ends [O1]. An edge is parted where its way of picking up changes
 * (hw_edgeparts_find). The end of another trim is as long as that trim's face is deep in that size,
 * and has the rows of the face
 */
hw_status hw_trimming_make(hw_whole *whole, hw_arena *arena, hw_err *err) HW_MUST_USE;

/* A trim in one size. */
const hw_trimmed *hw_trimming_at(const hw_whole *whole, int size, int trim);

/* What one edge of a trim gets; NULL where it has no length in this size. */
const hw_pickup_share *hw_trimming_share(const hw_trimmed *trimmed, int edge);

/* How that edge is picked up, as hw_pickup_edge_words has it; "" where it has no length. */
const char *hw_trimming_words(const hw_trimmed *trimmed, int edge, hw_arena *arena) HW_MUST_USE;

/* One of a trim's edges in words, such as "left front left opening" or "neckband end"; NULL when
 * memory is refused. */
char *hw_trimming_edge(const hw_whole *whole, int trim, int edge, hw_arena *arena);

#endif
