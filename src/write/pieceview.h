/* One piece of a garment on paper: its outline, and what a knitter measures on it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_PIECEVIEW_H
#define HW_WRITE_PIECEVIEW_H

#include "write/draw.h"
#include "write/trace.h"

enum {
    HW_PIECEVIEW_MARKS = 12 + 2 * HW_MAX_BANDS,
    HW_PIECEVIEW_LINES = 2 + HW_MAX_TRIMS, /* ends, trims */
    HW_PIECEVIEW_STRIPS = 2 * HW_DRAW_MAX_TRIMS
};

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
    hw_trace *strips; /* of trims along its edges: all round each */
    int strip_count;
    double from_cm, to_cm, high_cm; /* what it takes up with its trims, from the middle and from
                                       the fold */
    double top_cm;                  /* of the piece itself */
    hw_pieceview_mark marks[HW_PIECEVIEW_MARKS]; /* rising */
    int mark_count;
    bool names_left;          /* the left edge is not a mirror image: its names are told too */
    double ruler_mm;          /* from what it takes up to its heights, names between */
    double left_mm, right_mm; /* of words, beside the piece */
    const char *lines[HW_PIECEVIEW_LINES]; /* small ones, below it: stitches, trims */
    int line_count;
} hw_pieceview;

/* What pieces are drawn with. */
typedef struct {
    hw_drawing *drawing;
    hw_arena *arena;
    hw_show show;
    double mm_per_cm; /* mm on paper for a cm of the piece */
} hw_piecepen;

/* A text that stands inside a piece, and a line across it; about its middle and its fold. */
typedef struct {
    hw_point at;
    const char *text;
} hw_piecewords_text;
typedef struct {
    hw_point from, to;
} hw_piecewords_line;

enum {
    HW_PIECEWORDS_TEXTS = 2 * HW_PIECEVIEW_MARKS + HW_MAX_BANDS + 2, /* and a slit */
    HW_PIECEWORDS_BELOW = HW_PIECEVIEW_LINES + HW_PIECEVIEW_MARKS + HW_MAX_BANDS + 1
};

/* The words of a piece at one scale: widths, bands and a slit inside it; and below it its lines,
 * and what finds no room inside. */
typedef struct {
    hw_piecewords_line guides[HW_PIECEVIEW_MARKS];
    int guide_count;
    hw_piecewords_text texts[HW_PIECEWORDS_TEXTS];
    int text_count;
    const char *below[HW_PIECEWORDS_BELOW];
    int below_count;
    double wide_mm, high_mm; /* of all below the fold, the width at the hem and the name too */
} hw_piecewords;

/* Where a piece goes on the page. */
typedef struct {
    const hw_piecepen *pen;
    const hw_pieceview *view;
    const hw_piecewords *words;
    double middle_mm, fold_mm; /* its middle and its fold */
} hw_pieceplace;

enum { HW_PIECEVIEW_ABOVE_MM = 8 }; /* above a piece, for the width at its top */

#define HW_PIECEVIEW_GAP_MM  1.5 /* between a line and its words */
#define HW_PIECEVIEW_LEAD_MM 2.5 /* from a height's tick to the words that belong to it */

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

/* A length in the units that are shown; NULL when memory is refused. */
const char *hw_pieceview_length(hw_arena *arena, hw_show show, double cm);

/* Find the words of a piece at the pen's scale; refused memory is told when it is drawn. */
void hw_pieceview_words(const hw_pieceview *view, const hw_piecepen *pen, hw_piecewords *out);

/* Draw a piece; failures are the drawing's. */
void hw_pieceview_draw(const hw_pieceplace *place);

#endif
