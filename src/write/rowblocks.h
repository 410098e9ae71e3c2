/* All row plans of a garment, in the order in which sheets and documents show them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_ROWBLOCKS_H
#define HW_WRITE_ROWBLOCKS_H

#include "core/plan.h"
#include "write/rowwords.h"

/*
 * Gather the row plans: piece by piece of the whole garment, each in all sizes, then its trims.
 *
 * Given:     plan      calculated
 *            arena     owner of the list
 * Returned:  count     how many; 0 where nothing was calculated
 *            the blocks; NULL when memory is refused
 */
hw_row_block *hw_row_blocks(const hw_plan *plan, hw_arena *arena, int *count) HW_MUST_USE;

#endif
