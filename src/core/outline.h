/* The outline of a piece in one size: its edges put together, its area.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_OUTLINE_H
#define HW_CORE_OUTLINE_H

#include "core/edge.h"
#include "core/garment.h"

/* A piece in one size. */
typedef struct {
    hw_edge_line edges[HW_EDGE_COUNT]; /* left and right always; the neck's two where there is one;
                                          the top, all at one height, where something is left: with
                                          a neck 2 points for each shoulder that has a flat top */
    double top_cm;                     /* height of the highest point of left and right */
    double neck_cm;                    /* height at which the neck parts the piece; 0: none */
    double slit_cm; /* so far up from there the neck's edges run on the middle line; 0: no slit */
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
 *            right of the middle and mirrored; where it begins on the middle line and runs straight
 *            up there, the piece has a slit.
 */
hw_status hw_outline_make(
    const hw_outline_task *task, hw_arena *arena, hw_outline *out, hw_err *err) HW_MUST_USE;

/*
 * The area of a piece from its fold up, cm2: between left and right, less the neck.
 *
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 */
hw_status hw_outline_area(const hw_outline *outline, double *out_cm2) HW_MUST_USE;

/* How long two edges are that are sewn together, in one size. */
typedef struct {
    double cm[2];
    bool closes; /* they differ by no more than the garment allows */
} hw_join_lengths;

/*
 * The lengths of both sides of a seam.
 *
 * Given:     pieces    [pieces of the garment]: their outlines in one size; NULL for one without
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 */
hw_status hw_outline_join(
    const hw_outline *const *pieces, const hw_joint_edges *join, hw_join_lengths *out) HW_MUST_USE;

/* The height of the end of a named stretch, of left or right the higher; -1 where neither has it.
 */
double hw_outline_height(const hw_outline *outline, const char *stretch);

/*
 * Make an outline longer or shorter at a height: all that lies there or above is moved.
 *
 * Given:     outline
 *            from_cm   above the hem's face
 *            by_cm     below 0: down, by less than what lies between the face and from_cm
 *            arena     owner of the new points
 * Returned:  outline   untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      points below from_cm that are passed end at its new height
 */
hw_status hw_outline_raise(
    hw_outline *outline, double from_cm, double by_cm, hw_arena *arena) HW_MUST_USE;

#endif
