/* The order in which a garment with trims is put together.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_MAKINGUP_H
#define HW_CORE_MAKINGUP_H

#include "core/trimrows.h"

/* Steps: each join, each trim with the closing of its ring and its elastic, each piece's slit. */
enum { HW_MAX_MAKING_UP = HW_MAX_SEAMS + 3 * HW_MAX_TRIMS + HW_MAX_PIECES };

#define HW_MAKING_UP_EASE_CM 0.25 /* about a row; less is lost in the seam: own choice [P11] */
#define HW_MAKING_UP_LAP_CM  2.0  /* of the ends of an elastic: own choice [P11] */

typedef struct {
    const char *steps[HW_MAX_MAKING_UP];
    int count;
} hw_making_up;

/*
 * The steps of making up, in words.
 *
 * Given:     whole     its trims, joins and rows are made
 *            arena     owner of the words
 * Returned:  out       no steps where nothing is sewn or picked up; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      common practice [P9]. Trims follow each other as the garment file lists them. A join
 *            lies across a trim where both of its sides meet the trim's edges at the point at which
 *            it goes over from one piece to the other. On a bed a ring is knitted flat: the join at
 *            its ends is sewn afterwards, and the ends with it. A trim over whose end another is
 *            picked up is folded and closed before that. The other joins follow, as the
 *            garment file lists them, each with how much is eased in, from
 *            HW_MAKING_UP_EASE_CM on. What rounds have joined is left out
 */
hw_status hw_makingup_steps(const hw_whole *whole, hw_arena *arena, hw_making_up *out) HW_MUST_USE;

#endif
