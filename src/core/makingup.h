/* The order in which a garment with trims is put together.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_MAKINGUP_H
#define HW_CORE_MAKINGUP_H

#include "core/trimming.h"

/* Steps: a seam before each trim that runs across it, the trims, a ring's last seam, the rest,
 * and each piece's slit. */
enum { HW_MAX_MAKING_UP = HW_MAX_SEAMS + 2 * HW_MAX_TRIMS + 1 + HW_MAX_PIECES };

typedef struct {
    const char *steps[HW_MAX_MAKING_UP];
    int count;
} hw_making_up;

/*
 * The steps of making up, in words.
 *
 * Given:     whole     its trims are made
 *            arena     owner of the words
 * Returned:  out       no steps where there are no trims; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      common practice [P9]. Trims follow each other as the garment file lists them. A join
 *            lies across a trim where both of its sides meet the trim's edges at the point at which
 *            it goes over from one piece to the other. On a bed a ring is knitted flat: the join at
 *            its ends is sewn afterwards, and the ends with it. A trim over whose end another is
 *            picked up is folded and closed before that
 */
hw_status hw_makingup_steps(const hw_whole *whole, hw_arena *arena, hw_making_up *out) HW_MUST_USE;

#endif
