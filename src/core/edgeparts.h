/* An edge to pick up along, in parts: bound-off steps, curves, slopes and what runs straight up.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_EDGEPARTS_H
#define HW_CORE_EDGEPARTS_H

#include "core/draft.h"
#include "core/pickup.h"

/*
 * Measure an edge, or a stretch of it, and part it by the way in which it is picked up.
 *
 * Given:     draft     of the piece in that size; drawn
 *            part      of that piece
 *            main      gauge of the plain fabric
 * Returned:  parts     [HW_PICKUP_MOST_PARTS], in the order of the edge's points
 *            out       length, count, of_sts and part_count; with one part also what that is, with
 *                      several they point at `parts`; all 0 where the edge has no length
 * Result:    HW_OK; what hw_edge_ways can say
 * Note:      a level way is bound off, or cast on, at once: its count is that of the shaping, or
 *            where that shows none the nearest to its length, and its length that of so many
 *            stitches, with the rest left to the part beside it; of a neck's middle the count is
 *            all of it, of which each edge has half. Curves that follow each other are one part,
 * and so are straight ways of nearly one slope; their counts are rows of plain fabric, which add up
 *            to those of the whole. Past HW_PICKUP_MOST_PARTS all others are one curve
 */
hw_status hw_edgeparts_find(const hw_draft *draft, const hw_edge_part *part, const hw_gauge *main,
    hw_pickup_edge *parts, hw_pickup_edge *out) HW_MUST_USE;

#endif
