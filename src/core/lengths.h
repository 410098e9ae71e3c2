/* A trim that is longer than the bed, parted into lengths that are knitted one after the other.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_LENGTHS_H
#define HW_CORE_LENGTHS_H

#include "core/buttonhole.h"

enum { HW_LENGTHS_SEAM_STS = 1 }; /* swallowed by the seam, of each length: own choice [P10] */

typedef struct {
    int sts;          /* of the trim, more than needles, up to HW_MAX_STS */
    int needles;      /* that a length may take, above 0 */
    int repeat, gap;  /* of its motif; repeat 0: none, gap not used */
    int motifs;       /* along the trim */
    int first_sts;    /* stitches before the first figure */
    const int *seams; /* [seam_count], rising: stitches before each place where two edges meet */
    int seam_count;
    const hw_holes *holes; /* buttonholes, counted from the same end */
} hw_lengths_task;

typedef struct {
    int *first; /* [count]: leftmost needle of each; found once it is known where the card begins */
    int *sts;   /* [count]: to hang for each, the stitches of its seams included */
    int count;  /* 0: it cannot be parted so */
} hw_lengths;

/*
 * Part a trim into lengths.
 *
 * Given:     task
 *            arena     owner of the lengths
 * Returned:  out       from the end where counting begins, `first` not yet set; untouched on
 *            failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      own choice [P10]: as few lengths as there can be. They part in the middle of a gap
 *            where there is a motif, else anywhere, and never in a buttonhole or beside one; at a
 *            seam of the garment where one lies no further than half a length from the even place
 *            (with a motif, in the gap beside it), else as evenly as can be
 */
hw_status hw_lengths_find(
    const hw_lengths_task *task, hw_arena *arena, hw_lengths *out) HW_MUST_USE;

#endif
