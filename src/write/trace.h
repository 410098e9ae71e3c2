/* An edge of a piece as a row of spots close enough to draw.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_TRACE_H
#define HW_WRITE_TRACE_H

#include "core/edge.h"
#include "core/err.h"
#include "core/mem.h"

/* Across and up as in hw_outline_point; the stretch is that of the way that leads here. */
typedef struct {
    double across_cm, up_cm;
    const char *stretch;
    bool open; /* nothing is knitted on the way that leads here */
} hw_trace_spot;

typedef struct {
    const hw_trace_spot *spots; /* from the hem up */
    int count;                  /* 0: the piece has no such edge; else at least 2 */
} hw_trace;

/*
 * Follow an edge: its points, and between two points of a curve several more.
 *
 * Given:     edge      may be empty
 *            arena     owner of the spots
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 */
hw_status hw_trace_edge(const hw_edge_line *edge, hw_arena *arena, hw_trace *out) HW_MUST_USE;

/* Where an edge that is not empty lies at a height; at a step across, where it comes from below.
 * Above and below its ends, where it ends. */
double hw_trace_across_cm(const hw_trace *trace, double up_cm);

/* Whether a spot is the last of its stretch. */
bool hw_trace_ends(const hw_trace *trace, int spot);

/* Whether two edges are each other's mirror image, names included, to half a millimetre. */
bool hw_trace_mirrors(const hw_trace *a, const hw_trace *b);

/* What runs along an edge, beside it. */
typedef struct {
    const char *stretch; /* NULL: the whole edge */
    double depth_cm;
    double before_cm, past_cm; /* it runs straight on so far, before where it begins on the edge and
                                  past where it ends */
    bool at_left;              /* of somebody who follows the edge */
} hw_trace_strip;

/*
 * The next part of an edge that a strip runs along without a break, and the strip's outer side.
 *
 * Given:     trace     an edge
 *            strip     depth above 0
 *            next      spot from which on it is looked for, 0 at first
 *            arena     owner of the spots
 * Returned:  next      where to look for the part after it
 *            out       all round the strip; count 0: there is no further part
 * Result:    HW_OK; HW_ERR_NOMEM: then out and next are untouched
 * Note:      at a corner the strip is cut to a mitre, at a sharp one short of its point
 */
hw_status hw_trace_along(const hw_trace *trace, const hw_trace_strip *strip, int *next,
    hw_arena *arena, hw_trace *out) HW_MUST_USE;

#endif
