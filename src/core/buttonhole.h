/* Buttonholes of a band: where along it, in which gaps of its motif, and in which rows.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_BUTTONHOLE_H
#define HW_CORE_BUTTONHOLE_H

#include "core/hem.h"
#include "core/mem.h"

enum { HW_MAX_HOLES = 40 };
#define HW_HOLES_END_CM 1.5 /* from the band's ends to the first hole and the last: [P6] */

typedef struct {
    int sts;             /* of the band, edge stitches included, [1, HW_MAX_STS] */
    int holes;           /* [1, HW_MAX_HOLES] */
    int hole_sts;        /* of each, above 0 */
    int end_sts;         /* plain stitches at each end, or -1: by end_cm */
    double end_cm;       /* above 0; HW_HOLES_END_CM is usual */
    double sts_per_10cm; /* of the band */
    int repeat, gap;     /* of the band's motif; repeat 0: none, gap not used */
    int motifs;          /* along the band */
    int first_sts;       /* stitches before the first figure: edge stitches and margin */
    hw_side side;        /* the front that is asked for; carried over into the result */
} hw_holes_task;

/* One buttonhole, counted from the band's lower end. */
typedef struct {
    int below_sts; /* stitches below it */
    int above_sts; /* and above it, to the upper end */
    int even_sts;  /* where it would lie without a motif: stitches below it */
    int gap_after; /* the hole lies in the gap above this many figures; 0 without a motif */
    int off_sts;   /* below_sts less even_sts */
    double off_cm; /* the same in cm */
    int cut_below; /* stitches of the motif below its gap that it cuts into */
    int cut_above; /* and above it */
} hw_hole;

typedef struct {
    hw_side side;
    int count;
    hw_hole *holes; /* [count], from the lower end up */
    int hole_sts;
    int end_sts;                     /* of the even places */
    int least_between, most_between; /* stitches from hole to hole; 0 for a single one */
    int cut_sts;      /* the most stitches of the motif that one hole cuts into; 0: none */
    int whole_sts;    /* the widest hole that cuts into nothing: the gap; 0 without a motif */
    int most_off_sts; /* the furthest from an even place, without its sign */
    double most_off_cm;
} hw_holes;

/*
 * Buttonholes along a band.
 *
 * Given:     task
 *            arena     owner of the holes, and working room
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE (no room, with a stitch at least between holes); HW_ERR_NOFIT
 *            (fewer gaps between figures than holes, or too close together); HW_ERR_NOMEM
 * Note:      even places: what the ends and the holes leave over is divided by the gaps, one fewer
 *            than holes; what remains goes into gaps a stitch each, spread evenly [P8] [P6]; a
 *            single hole is in the middle. With a motif each hole lies in a gap between two
 *            figures: where the gap is as wide as the hole, inside it and as near to the even place
 *            as it goes; where it is narrower, centred on it, so that it cuts into both figures.
 *            The gaps are chosen for the least sum of squared distances from the even places
 *            (dynamic programming, exact), ties to the lower end. Plain ends are no gap
 */
hw_status hw_holes_plan(
    const hw_holes_task *task, hw_arena *arena, hw_holes *out, hw_err *err) HW_MUST_USE;

/* The rows of a buttonhole through both layers of a folded band. Rows are counted from 1. */
typedef struct {
    int face_from_fold;                   /* row of the face, the row beside the fold being 1 */
    int facing_from_fold;                 /* row of the facing, counted the same way */
    int face_picked_up, facing_picked_up; /* the same rows, from where the band is picked up */
    int face_cast_on, facing_cast_on;     /* the same rows, where it is cast on at the facing */
    double from_fold_cm;                  /* the face's row: from the fold to its middle */
} hw_hole_rows;

/*
 * In which rows the holes are made, so that they lie on each other once the band is folded.
 *
 * Given:     hem       the band's rows, from hw_hem_plan
 *            gauge     HW_FABRIC_COUNT gauges of the band
 * Returned:  rows
 * Note:      the face's middle row, of two the one nearer to the fold. Both layers are held at the
 *            fold and where the band is joined, so the middle of that row lies as large a share of
 *            the face's depth from the fold as the middle of the facing's row does of the facing's.
 *            So a facing of the same depth has its hole at the same distance, and one with fewer
 *            rows, or tighter ones that are stretched to the same depth, in the row that comes to
 *            lie there. Across, a hole is over the same stitches in both. Own choice [P7]
 */
hw_hole_rows hw_holes_rows(const hw_hem *hem, const hw_gauge *gauge);

#endif
