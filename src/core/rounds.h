/* How far up the pieces of a tube can be knitted in rounds.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROUNDS_H
#define HW_CORE_ROUNDS_H

#include "core/plan.h"

/*
 * Find the rounds of all tubes of a part, and draft their pieces with them.
 *
 * Given:     plan      a part's; tubes and drafts are made, these as if there were no rounds
 *            arena     owner of the drafts
 * Returned:  plan      drafts of pieces in tubes, with their round_rows: as many for each of a tube
 * Result:    HW_OK; what hw_draft_make can say; HW_ERR_RANGE (a band higher up that does not lie in
 *            the same rounds on all pieces of a tube), with the project's line; HW_ERR_NOMEM
 * Note:      rounds end in the row in which some piece of the tube is parted by its neck, has no
 *            neighbour sewn to both its edges any more, ends, or cannot keep to its outline with
 *            single stitches
 */
hw_status hw_rounds_find(const hw_plan *plan, hw_arena *arena, hw_err *err) HW_MUST_USE;

/* Whether rounds of a tube end more than a row below where its pieces cease to be sewn together. */
bool hw_rounds_leave_seams(const hw_plan *plan, int size, const hw_tube *tube);

#endif
