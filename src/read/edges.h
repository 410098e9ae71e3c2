/* Edges named in words, such as `left front right armhole`: joins and trims of a garment file.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_EDGES_H
#define HW_READ_EDGES_H

#include "read/corners.h"

/*
 * Read the trims of a garment file.
 *
 * Given:     reading   its garment has its pieces
 *            trims     checked group; NULL for none
 * Returned:  garment   trims and their number; untouched on failure
 * Result:    HW_OK; HW_ERR_SYNTAX, HW_ERR_UNKNOWN (a piece, an edge, a stretch, a trim),
 *            HW_ERR_REPEATED (an edge that the trim runs along already), HW_ERR_LIMIT, with line
 *            and column; HW_ERR_NOMEM
 * Note:      EDGES are parted by ` and `; among them may stand `TRIM end`, of a trim that stands
 *            above and is no ring
 */
hw_status hw_edges_trims(const hw_corners_reading *reading, const hw_node *trims,
    hw_garment *garment, hw_err *err) HW_MUST_USE;

/*
 * The same for its joins.
 *
 * Given:     reading   its garment has its pieces and its trims
 *            list      checked list of texts, or one text; NULL for none
 * Returned, Result: as hw_edges_trims
 * Note:      `EDGES to EDGES, within LENGTH`; 1 cm is allowed where nothing is said: as the usual
 *            tolerance. The end of a trim cannot be joined
 */
hw_status hw_edges_joins(const hw_corners_reading *reading, const hw_node *list,
    hw_garment *garment, hw_err *err) HW_MUST_USE;

#endif
