/* The outline of a piece in a garment file: corners of its edges.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_CORNERS_H
#define HW_READ_CORNERS_H

#include "core/garment.h"
#include "read/rule.h"

/* What outlines are read with. */
typedef struct {
    const hw_garment *garment; /* its finished measurements are read already */
    hw_unit usual;             /* of a length without a unit */
    hw_arena *arena;
} hw_corners_reading;

/*
 * Read an outline.
 *
 * Given:     reading
 *            node      a checked mapping with `left`, `right`, `neck`
 * Returned:  out       owned by the arena; untouched on failure
 * Result:    HW_OK; what hw_rule_read can say; HW_ERR_MISSING (neither side is drawn);
 *            HW_ERR_UNKNOWN (a measurement that the garment does not have); HW_ERR_LIMIT (above
 *            HW_MAX_CORNERS), with line and column; HW_ERR_NOMEM
 */
hw_status hw_corners_read(const hw_corners_reading *reading, const hw_node *node,
    hw_outline_rule **out, hw_err *err) HW_MUST_USE;

/* The same for one sum of finished measurements, such as a trim's depth. */
hw_status hw_corners_rule(
    const hw_corners_reading *reading, const hw_node *node, hw_rule *out, hw_err *err) HW_MUST_USE;

/* Whether an edge of an outline has a stretch of that name; the neck's edges are one. */
bool hw_corners_has(const hw_outline_rule *outline, hw_edge edge, const char *stretch);

#endif
