/* What lies above the hems: a draft of each piece, bands higher up, edges that are sewn together.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ABOVE_H
#define HW_CORE_ABOVE_H

#include "core/plan.h"

/*
 * The bands higher up, looked up and analysed.
 *
 * Given:     whole     project and parts are set
 * Returned:  whole     uppers and their number
 * Result:    HW_OK; HW_ERR_UNKNOWN (a piece that is not there); HW_ERR_MISSING (a piece without an
 *            outline); HW_ERR_LIMIT (figure and gap too wide); HW_ERR_NOMEM
 */
hw_status hw_above_uppers(hw_whole *whole, hw_arena *arena, hw_err *err) HW_MUST_USE;

/*
 * Draft one piece in one size.
 *
 * Given:     plan      a part's, up to its hem; whole is set, its uppers too
 *            at        size * pieces + piece
 * Returned:  out       not drawn where the garment draws nothing; untouched on failure
 * Result:    what hw_draft_make can say
 */
hw_status hw_above_draft(
    const hw_plan *plan, int at, hw_arena *arena, hw_draft *out, hw_err *err) HW_MUST_USE;

/*
 * The cards of bands higher up, as the first piece of the first size needs them.
 *
 * Given:     whole     the plans of all parts are made
 * Returned:  whole     cards of its uppers
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_above_cards(hw_whole *whole, hw_arena *arena, hw_err *err) HW_MUST_USE;

/*
 * The lengths of edges that are sewn together.
 *
 * Given:     whole     the plans of all parts are made
 * Returned:  whole     joins
 * Result:    HW_OK; HW_ERR_INTERNAL; HW_ERR_NOMEM
 */
hw_status hw_above_joins(hw_whole *whole, hw_arena *arena, hw_err *err) HW_MUST_USE;

/* A band's motif, analysed: its own drawing, or the file's with the band's gap. HW_OK;
 * HW_ERR_LIMIT (figure and gap too wide); HW_ERR_NOMEM. */
hw_status hw_above_motif(const hw_motif_choice *choice, int card_columns, hw_arena *arena,
    hw_motif *out, hw_err *err) HW_MUST_USE;

#endif
