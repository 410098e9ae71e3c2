/* An edge to pick up along, in parts: bound-off steps, curves, slopes and what runs straight up.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_EDGEPARTS_H
#define HW_CORE_EDGEPARTS_H

#include "core/draft.h"
#include "core/pickup.h"

/* A piece in one size. */
typedef struct {
    const hw_draft *draft; /* drawn */
    const hw_gauge *main;  /* of the plain fabric */
    int face_rows;         /* of its hem */
} hw_edgeparts_task;

/*
 * Measure an edge, or a stretch of it, and part it by the way in which it is picked up.
 *
 * Given:     task
 *            part      of that piece
 * Returned:  parts     [HW_PICKUP_MOST_PARTS], in the order of the edge's points
 *            out       length, count, of_sts and part_count; with one part also what that is, with
 *                      several they point at `parts`; all 0 where the edge has no length
 * Result:    HW_OK; what hw_edge_ways can say
 * Note:      a level way is bound off, or cast on, at once: its count is that of the shaping, or
 *            where that shows none the nearest to its length, and its length that of so many
 *            stitches, with the rest left to the part beside it; of a neck's middle the count is
 *            all of it, of which each edge has half. Curves that follow each other are one part,
 *            and so are straight ways of nearly one slope; their counts are rows of the draft and
 *            of the face below it. Past HW_PICKUP_MOST_PARTS all others are one curve. A top's
 * count is that of the last row's stitches, less what an edge has level at the top
 */
hw_status hw_edgeparts_find(const hw_edgeparts_task *task, const hw_edge_part *part,
    hw_pickup_edge *parts, hw_pickup_edge *out) HW_MUST_USE;

#endif
