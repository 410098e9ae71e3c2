/* Every row of a trim: where it is picked up, its place on the bed, its buttonholes, the row plan.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_TRIMROWS_H
#define HW_CORE_TRIMROWS_H

#include "core/trimming.h"

#define HW_TRIMROWS_OPEN_CM                                                                        \
    5.0 /* of a casing knitted as a ring, for its elastic: own choice [P11] */

/* The stitches of each of a trim's sizes as the row planner has them. */
void hw_trimrows_stitches(hw_whole *whole, int trim);

/*
 * A trim's card, and where that begins.
 *
 * Given:     whole     hw_trimrows_stitches was called for every trim
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      a card that is not punched yet begins where all sizes, also of other trims that could
 *            be knitted from it, stand nearest to the middle
 */
hw_status hw_trimrows_card(hw_whole *whole, int trim, hw_arena *arena, hw_err *err) HW_MUST_USE;

/*
 * The rows of a trim in one size.
 *
 * Given:     whole     hw_trimrows_card was called for the trim
 *            at        size * trims + trim
 * Result:    HW_OK; HW_ERR_RANGE (no place on the bed for the card as it is punched); HW_ERR_NOMEM
 * Note:      a trim longer than the bed has rows without needles, by which each of its lengths is
 *            knitted. Closed as its own hem says, or else the project's; cast-on says how the last
 *            row is left where it is sewn down
 */
hw_status hw_trimrows_make(hw_whole *whole, int at, hw_arena *arena, hw_err *err) HW_MUST_USE;

#endif
