/* Steps of shaping that are told in one sentence.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_STEPTOGETHER_H
#define HW_CORE_STEPTOGETHER_H

#include "core/shape.h"

/* Whether a later step is the same group at the other edge, always a row after the first: as
 * patterns say, "bind off 4 stitches at the start of the next 2 rows" (common practice). */
bool hw_step_pairs(const hw_shape_step *first, const hw_shape_step *later);

/* Whether a later step does the same single change, and begins before the first is over: "in rows
 * 25, 30, 36 and 41". */
bool hw_step_weaves(const hw_shape_step *first, const hw_shape_step *later);

/* Whether it is either. */
bool hw_step_joins(const hw_shape_step *first, const hw_shape_step *later);

#endif
