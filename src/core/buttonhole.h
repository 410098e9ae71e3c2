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
    bool even; /* spaces from hole to hole differ by a stitch at most */
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
 *            figures, as hw_holegaps_choose has it. Plain ends are no gap
 */
hw_status hw_holes_plan(
    const hw_holes_task *task, hw_arena *arena, hw_holes *out, hw_err *err) HW_MUST_USE;

/* Where a buttonhole goes through both layers of a folded band: a slit between two rows. */
typedef struct {
    int face_to_fold;   /* rows of the face between the slit and the fold */
    int facing_to_fold; /* rows of the facing between the fold and the slit */
    int face_row;       /* the slit is made as this row begins, counted from 1 at the edge along
                           which the band is picked up */
    int facing_row;     /* the same of the facing, counted on */
    double face_cm;     /* from the slit to the fold, not counting the fold's own row */
    double facing_cm;   /* the same inside, as the facing lies */
} hw_hole_rows;

/*
 * In which rows the holes are made, so that they lie on each other once the band is folded.
 *
 * Given:     hem       the band's rows, from hw_hem_plan
 *            gauge     HW_FABRIC_COUNT gauges of the band
 * Returned:  rows
 * Note:      what is bound off and cast on again, or moved aside, as a row begins leaves its slit
 *            between the row before and that row [P9]. In the face it lies in the middle; of an odd
 *            number of rows one more lies between it and the fold. In the facing it lies between
 *            those two rows that are nearest to the same distance from the fold in cm, but not at
 *            its ends while it has two rows. Rows of the facing count as half-way between their own
 *            gauge and a facing stretched evenly to the face's depth: both layers are held at the
 *            fold and where the band is joined. The fold's own row turns round the
 *            fold and is half each layer's. Across, a hole is over the same stitches in both. Own
 *            choice [P7]
 */
hw_hole_rows hw_holes_rows(const hw_hem *hem, const hw_gauge *gauge);

#endif
