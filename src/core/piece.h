/* A piece as a garment file draws it: widths, edges, seams, and the trims along its edges.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_PIECE_H
#define HW_CORE_PIECE_H

#include "core/hw.h"

/* factor x measurement */
typedef struct {
    double factor;
    const char *name;
    bool finished; /* the finished measurement of that name, not the body's */
} hw_term;

/* A sum of terms and a length. */
typedef struct {
    hw_term terms[HW_MAX_TERMS];
    int count;
    double constant_cm;
    int line;
} hw_rule;

/* The edges of a piece, as seen on its right side with the hem down. The first two are hw_side. */
typedef enum {
    HW_EDGE_LEFT,
    HW_EDGE_RIGHT,
    HW_EDGE_NECK_LEFT,  /* the neck edge of the left half */
    HW_EDGE_NECK_RIGHT, /* of the right half */
    HW_EDGE_TOP,        /* what is left of the last row, from left to right */
    HW_EDGE_COUNT
} hw_edge;

typedef enum {
    HW_CURVE_STRAIGHT,
    HW_CURVE_MONOTONE, /* never swings past its points */
    HW_CURVE_NATURAL,  /* as a thin ruler bends through its points */
    HW_CURVE_COUNT
} hw_curve;

/* A corner of an edge as the file draws it. */
typedef struct {
    const char *stretch; /* of the way that leads here; never NULL */
    hw_rule across, up;  /* of finished measurements, from the piece's middle and from the fold */
    hw_curve curve;
    int line;
} hw_corner;

/* An edge as the file draws it, from the hem up. */
typedef struct {
    const hw_corner *corners;
    int count; /* 0: not drawn */
} hw_edge_rule;

/* Edges as drawn. Of left and right one may be missing: it mirrors the other. */
typedef struct {
    hw_edge_rule sides[HW_SIDE_COUNT];
    hw_edge_rule neck; /* right of the middle */
    bool mirrored;     /* of a piece that mirrors another: left and right change places */
    int line;
} hw_outline_rule;

typedef struct {
    const char *name;
    int mirror_of;                  /* index of the piece that this one mirrors, or -1 */
    hw_rule band_width, main_width; /* of finished measurements; edge stitches not included */
    int edge_sts[HW_SIDE_COUNT];    /* stitches that the seam swallows, or -1: the usual number */
    const hw_outline_rule *outline; /* NULL: nothing is drawn above the hem */
} hw_piece;

/* Two edges that are sewn together, or the bands at their feet. */
typedef struct {
    int piece[2];
    hw_side side[2];
} hw_seam;

/* An edge, or a stretch of it; of what a trim is picked up along also the end of another trim. */
typedef struct {
    int piece; /* -1: the end of a trim, and no edge */
    hw_edge edge;
    const char *stretch; /* NULL: the whole edge */
    int trim;            /* where there is no piece: whose end; it stands above in the file */
    bool with_next;      /* the file says `neck`: with the next, the other half, in either order */
    int line, column;    /* of the garment file */
} hw_edge_part;

enum { HW_MAX_PARTS = 6 }; /* edges in a row */

/* Edges in a row: one side of a long seam, or what a trim is picked up along. */
typedef struct {
    hw_edge_part parts[HW_MAX_PARTS];
    int count;
    int line;
} hw_edge_run;

/* Edges that have to be equally long because they are sewn together. */
typedef struct {
    hw_edge_run ends[2];
    double within_cm; /* how much longer one may be, to be eased in */
    const char *text; /* as the file writes it */
} hw_joint_edges;

/* A band that is picked up along edges, as the garment has it. */
typedef struct {
    const char *name;
    hw_edge_run along;
    hw_rule depth;   /* of its face, of finished measurements; count 0 and 0 cm: the project says */
    bool round;      /* worked in a ring, or sewn to one */
    bool casing;     /* an elastic is drawn into the ring */
    hw_rule elastic; /* how long it is, without its lap; of finished measurements */
    int line;
} hw_trim;

#endif
