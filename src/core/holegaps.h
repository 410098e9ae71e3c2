/* Into which gaps of a motif buttonholes go, so that they lie as evenly as they can.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_HOLEGAPS_H
#define HW_CORE_HOLEGAPS_H

#include "core/buttonhole.h"

/*
 * Choose gaps between figures, and places in them.
 *
 * Given:     task      with a motif
 *            even      [task->holes], stitches below each hole were there no motif; rising
 *            arena     working room
 * Returned:  holes     [task->holes], below_sts and gap_after of each; untouched on failure
 * Result:    HW_OK; HW_ERR_NOFIT (fewer gaps than holes, or too close together); HW_ERR_NOMEM
 * Note:      where the gap is as wide as the hole, the hole lies anywhere inside it; where it is
 *            narrower, centred on it. Each hole has a gap of its own. Least is the sum of squares
 *            of what the spaces from hole to hole differ from the even space, and the first and
 *            the last hole from their even places. Of ways that are as good one whose spaces are
 *            the same from both ends, then the least sum of squared distances from the even places,
 *            then the one that lies lower. Dynamic programming, exact
 */
hw_status hw_holegaps_choose(const hw_holes_task *task, const int *even, hw_arena *arena,
    hw_hole *holes, hw_err *err) HW_MUST_USE;

#endif
