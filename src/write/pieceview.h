/* One piece of a garment on paper: its outline, and what a knitter measures on it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_PIECEVIEW_H
#define HW_WRITE_PIECEVIEW_H

#include "write/draw.h"
#include "write/trace.h"

enum { HW_PIECEVIEW_MARKS = 12 };

/* A height that is marked beside a piece. */
typedef struct {
    double up_cm;
    bool guide; /* a line across the piece, with its width there */
    const char *text;
} hw_pieceview_mark;

/* A piece, and the paper that its words take beside it. */
typedef struct {
    const hw_draw_piece *piece;
    hw_trace edges[HW_EDGE_COUNT];
    double from_cm, to_cm, top_cm; /* what it takes up, from the middle and from the fold */
    hw_pieceview_mark marks[HW_PIECEVIEW_MARKS]; /* rising */
    int mark_count;
    bool names_left;          /* the left edge is not a mirror image: its names are told too */
    double left_mm, right_mm; /* of words, beside the piece */
    double foot_mm;           /* of words, below it */
} hw_pieceview;

/* What pieces are drawn with. */
typedef struct {
    hw_drawing *drawing;
    hw_arena *arena;
    hw_show show;
    double mm_per_cm; /* mm on paper for a cm of the piece */
} hw_piecepen;

/* Where a piece goes on the page. */
typedef struct {
    const hw_piecepen *pen;
    const hw_pieceview *view;
    double middle_mm, fold_mm; /* its middle and its fold */
    const hw_point *round;     /* all round it, on the page; set by hw_pieceview_draw */
    int round_count;
} hw_pieceplace;

enum {
    HW_PIECEVIEW_ABOVE_MM = 8, /* above a piece, for the width at its top */
    HW_PIECEVIEW_BELOW_MM = 21 /* below its fold: width, name, two lines of stitches */
};

/*
 * Follow a piece's edges, and find what is to be told of it.
 *
 * Given:     piece     with left and right edges
 *            show, arena
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 */
hw_status hw_pieceview_make(
    const hw_draw_piece *piece, hw_show show, hw_arena *arena, hw_pieceview *out) HW_MUST_USE;

/* Draw a piece; failures are the drawing's. */
void hw_pieceview_draw(const hw_pieceplace *at);

#endif
