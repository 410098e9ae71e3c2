/* The outline of a piece: its edges in cm from the fold up, straight or curved, and their lengths.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_OUTLINE_H
#define HW_CORE_OUTLINE_H

#include "core/garment.h"

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

/* A piece in one size. */
typedef struct {
    hw_edge_line edges[HW_EDGE_COUNT]; /* left and right always; the neck's two where there is one;
                                          the top, all at one height, where something is left: with
                                          a neck 2 points for each shoulder that has a flat top */
    double top_cm;                     /* height of the highest point of left and right */
    double neck_cm;                    /* height at which the neck parts the piece; 0: none */
} hw_outline;

/* What an outline is made for. */
typedef struct {
    const hw_piece *piece;    /* its outline is not NULL */
    const hw_sizes *finished; /* complete */
    int size;
    double band_cm, main_cm; /* wanted widths at the hem */
    double width_cm;         /* of the plain fabric as it will be knitted */
    double face_cm;          /* up to here, the hem's face, edges run straight up; 0: no hem */
} hw_outline_task;

/*
 * The edges of a piece in one size, as they are drawn, with the knitted width at the hem.
 *
 * Given:     task
 *            arena     owner of the points
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (a measurement); HW_ERR_RANGE (an edge that turns down, edges
 *            that cross, tops of different heights, a neck that does not lie inside), with the
 *            garment file's line and words that name piece, size and stretch; HW_ERR_NOMEM
 * Note:      the first corner of each edge is half the wanted width from the middle; as far as an
 *            edge runs straight up from there, it moves to where the knitted width puts it; all
 *            other points stay as drawn. The drawn way to the first corner above the face begins
 *            at the face's top, and the way up the face bears its stretch. A neck's edge is drawn
 * right of the middle and mirrored.
 */
hw_status hw_outline_make(
    const hw_outline_task *task, hw_arena *arena, hw_outline *out, hw_err *err) HW_MUST_USE;

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
 * The area of a piece from its fold up, cm2: between left and right, less the neck.
 *
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 */
hw_status hw_outline_area(const hw_outline *outline, double *out_cm2) HW_MUST_USE;

/* The height of the end of a named stretch, of left or right the higher; -1 where neither has it.
 */
double hw_outline_height(const hw_outline *outline, const char *stretch);

/* The edge in words, as a garment file has it: "left", "right", "neck left", "neck right", "top".
 */
const char *hw_edge_name(hw_edge edge);

#endif
