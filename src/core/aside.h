/* Bands higher up and their card: needles by which a piece is moved on the bed for each.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ASIDE_H
#define HW_CORE_ASIDE_H

#include "core/plan.h"

/*
 * Find where on the bed one piece in one size is knitted from each of its bands on.
 *
 * Given:     plan      a part's, with its drafts and the cards of bands higher up
 *            at        size * pieces + piece
 * Returned:  plan      aside, back and own_card of the uppers of that draft
 * Note:      a piece stays where a band has put it, up to the next band with a card; it goes no
 *            further than it must from where it hung before, of two ways to the right. Where what
 *            lies above a band would leave the bed there, it goes back after the band; where the
 *            band itself would, the piece stays where its hem was, and wants a card of its own.
 */
void hw_aside_find(const hw_plan *plan, int at);

/*
 * The bands higher up of a piece, from the hem up.
 *
 * Returned:  order     which of the whole's uppers; their number is returned
 */
int hw_aside_order(const hw_plan *plan, int at, int order[HW_MAX_BANDS]);

#endif
