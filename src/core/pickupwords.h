/* Picking up in words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_PICKUPWORDS_H
#define HW_CORE_PICKUPWORDS_H

#include "core/pickup.h"

/*
 * The ratio in words: "2 sts in every 3 rows", "3 sts in every 4 rows 30 times, and 1 more in the
 * 2 rows left"; and evenly: "3 sts in 4 rows 2 times and 4 sts in 5 rows once, mixed evenly".
 *
 * Returned:  a text of the arena; NULL when memory is refused
 */
const char *hw_pickup_words(const hw_pickup_share *share, hw_arena *arena) HW_MUST_USE;
const char *hw_pickup_even_words(const hw_pickup_share *share, hw_arena *arena) HW_MUST_USE;

/* The plainer of the two: the simple ratio where its group is small, as 3 of 4 is [P5]; else the
 * small groups of which a large one is made, as 3 of 4, 3 of 4, 4 of 5 are 10 of 13 [P2]. */
const char *hw_pickup_best_words(const hw_pickup_share *share, hw_arena *arena) HW_MUST_USE;

/* How an edge of a plan is picked up: the ratio alone where it is all of one kind, else each part:
 * "6 along the 6 stitches bound off, 23 along the curve (evenly over 30 rows), 20 along the
 * straight (2 sts in every 3 rows)". "" where nothing is known; NULL when memory is refused. */
const char *hw_pickup_edge_words(const hw_pickup *plan, int edge, hw_arena *arena) HW_MUST_USE;

#endif
