/* One edge of a piece in cm from the fold up: where it lies, how long it is.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_EDGE_H
#define HW_CORE_EDGE_H

#include "core/err.h"
#include "core/piece.h"

/* Of an edge; the hem's corner and the face's top come before the corners that are drawn. */
enum { HW_EDGE_MOST_POINTS = HW_MAX_CORNERS + 2 };

/* A point of an edge in one size. Across: cm from the piece's middle, right of it above 0, as seen
 * on the right side; up: cm from the fold. */
typedef struct {
    double across_cm, up_cm;
    hw_curve curve;      /* of the way that leads here from the point before */
    const char *stretch; /* the name of that way; "" at the first point */
    bool open;           /* nothing is knitted on that way: the neck between two shoulder tops */
    int line;            /* of the garment file */
} hw_outline_point;

/* An edge from the hem (or from the lowest point of a neck) up; up never falls. Two points at one
 * height are a step across. */
typedef struct {
    const hw_outline_point *points;
    int count; /* 0: the piece has no such edge; else at least 2 */
} hw_edge_line;

/*
 * Where an edge lies at several heights.
 *
 * Given:     edge      not empty
 *            up_cm     [count], each within the edge's heights; any order
 * Returned:  across_cm [count]; at a step across, where the edge goes on above it
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 * Note:      points that follow each other with the same curve, other than straight, are one
 *            spline of across over up: HW_CURVE_MONOTONE is GSL's Steffen spline, HW_CURVE_NATURAL
 *            its natural cubic spline; a spline of two points is a straight line
 */
hw_status hw_edge_at(
    const hw_edge_line *edge, const double *up_cm, int count, double *across_cm) HW_MUST_USE;

/*
 * The length of an edge, or of a stretch of it, cm.
 *
 * Given:     edge      not empty
 *            stretch   a stretch's name; NULL for the whole edge; a name that it lacks has length 0
 * Returned:  out_cm    untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 * Note:      curves by GSL's adaptive integration of sqrt(1 + (dx/dy)^2), to 1e-7 relative
 */
hw_status hw_edge_length(const hw_edge_line *edge, const char *stretch, double *out_cm) HW_MUST_USE;

/*
 * The length of the way that leads to each point of an edge, cm.
 *
 * Given:     edge      not empty
 * Returned:  ways_cm   [edge->count]; 0 for the first, and where nothing is knitted; on failure
 *                      some are untouched
 * Result:    as hw_edge_length
 */
hw_status hw_edge_ways(const hw_edge_line *edge, double *ways_cm) HW_MUST_USE;

/* Record why the length of an edge was not found; `status` is passed on. */
hw_status hw_edge_fault(hw_status status, hw_err *err);

/*
 * The area between an edge and the piece's middle line, over all its heights.
 *
 * Given:     edge      may be empty: then 0
 * Returned:  out_cm2   right of the middle above 0; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 */
hw_status hw_edge_area(const hw_edge_line *edge, double *out_cm2) HW_MUST_USE;

/* The edge in words, as a garment file has it: "left", "right", "neck left", "neck right", "top".
 */
const char *hw_edge_name(hw_edge edge);

#endif
