/* The row plan of every piece in every size, from the plan of its part.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROWING_H
#define HW_CORE_ROWING_H

#include "core/plan.h"
#include "core/rowplan.h"

/*
 * Plan the rows of one piece in one size.
 *
 * Given:     plan      a part's, with its drafts
 *            at        size * pieces + piece
 *            arena     owner of the lists
 * Returned:  out       untouched on failure
 * Result:    what hw_rowplan_make can say
 * Note:      a piece without an outline is planned to its joining row. Both edges are marked at the
 *            underarm, the end of the stretch `side`, where nothing is bound off there. A band
 *            higher up has a card of its own, which starts at its row 1
 */
hw_status hw_rowing_make(
    const hw_plan *plan, int at, hw_arena *arena, hw_rowplan *out, hw_err *err) HW_MUST_USE;

/*
 * Tell the rows of a tube's pieces what a round has in all.
 *
 * Given:     plan      a part's; the rows of all its pieces are planned
 *            tube      of the plan
 *            arena     owner of the result
 * Returned:  plan      tube and slice of those rows
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_rowing_tube(
    const hw_plan *plan, int size, const hw_tube *tube, hw_arena *arena) HW_MUST_USE;

/* The row above the hem that begins at the underarm, whose edges are marked; -1 where there is
 * none. */
int hw_rowing_underarm(const hw_draft *draft);

/* The task that it is made from, without its shaping: which edge its first row above the hem begins
 * at follows from it (hw_rowplan_above), with rounds in the hem alone. */
hw_rowplan_task hw_rowing_task(const hw_plan *plan, int at);

#endif
