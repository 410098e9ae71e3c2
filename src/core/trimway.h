/* Which way trims run along drawn edges, and where one is picked up over the end of another.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_TRIMWAY_H
#define HW_CORE_TRIMWAY_H

#include "core/err.h"
#include "core/garment.h"
#include "core/outline.h"

/* A garment's trims beside its outlines in one size; which way they run is the same in all. */
typedef struct {
    const hw_garment *garment;
    const hw_outline *outlines[HW_MAX_PIECES]; /* of each piece; NULL: draws none */
    hw_trim trims[HW_MAX_TRIMS]; /* the garment's, their necks in the order in which they meet */
    hw_side first[HW_MAX_TRIMS]; /* where counting along it begins, right side seen, fold up */
} hw_trimway;

/* The points of an edge between which a part lies. */
typedef struct {
    const hw_outline_point *points;
    int first, last;
} hw_trimway_reach;

/* One end of a part of a trim: where the trim comes to it, or leaves it. */
typedef struct {
    int trim, part;
    bool leaving;
} hw_trimway_spot;

/* A corner of a piece. */
typedef struct {
    int piece;
    hw_outline_point at;
} hw_trimway_corner;

/* The edge beside which the end of another trim lies. */
typedef struct {
    int part;     /* of the trim that is picked up over that end */
    bool at_last; /* at the last point of the edge; else at its first */
} hw_trimway_meeting;

/* How a trim comes from one of its edges to another. */
typedef enum {
    HW_TRIMWAY_MEETS,   /* at a point of one piece, or over the end of a trim */
    HW_TRIMWAY_JOINED,  /* through a join */
    HW_TRIMWAY_APART,   /* not at all: what is sewn there leads elsewhere */
    HW_TRIMWAY_UNKNOWN, /* two pieces, and the garment does not say what is sewn there */
} hw_trimway_going;

typedef struct {
    int trim, from, to; /* parts */
} hw_trimway_pair;

/*
 * Put the halves of each `neck` into the order in which they meet the edges beside them, and find
 * the end of each trim at which counting along it begins.
 *
 * Given:     way       garment and outlines
 * Returned:  way       trims, in that order: a neck's half that meets the edge before it comes
 *                      first, or else the other half meets the edge behind it; where neither
 *                      does, the left half comes first; first: the end where the trim's first
 *                      edge begins
 * Note:      a trim on one edge is counted from the lower end. On others the first neighbours on
 *            one piece tell, by the corner at which they meet: those that rise along a right edge,
 *            or go down one half of a neck and up the other, run from right to left, as picking up
 *            by hand does; and so does a right edge with the end of a trim behind it that lies at
 *            its top. Where nothing tells, so do all
 */
void hw_trimway_find(hw_trimway *way);

/* Whether a trim runs along one upright edge alone, and counting begins at its lower end. */
bool hw_trimway_from_below(const hw_trimway *way, int trim);

/* Where a part lies on its edge; false where it has no edge, or no points on it. */
bool hw_trimway_find_reach(const hw_trimway *way, const hw_edge_part *part, hw_trimway_reach *out);

/* The corner at which a trim comes to a part or leaves it; false where the part has no points. */
bool hw_trimway_find_corner(
    const hw_trimway *way, const hw_trimway_spot *spot, hw_trimway_corner *out);

/* Whether two points are one: to half a millimetre. */
bool hw_trimway_same(const hw_outline_point *a, const hw_outline_point *b);

/*
 * The edge beside which a trim is picked up over the end of another.
 *
 * Given:     way       hw_trimway_find was called
 *            trim, part  a part that is the end of another trim
 * Returned:  out       untouched where there is none
 *            true when the other trim begins or ends at an end of the edge named before it or
 *            behind it
 */
bool hw_trimway_meets(const hw_trimway *way, int trim, int part, hw_trimway_meeting *out);

/*
 * How a trim goes over from one edge to another.
 *
 * Given:     way       hw_trimway_find was called
 *            pair      two of its parts, which follow each other, or the last and the first
 * Returned:  join      of the garment, where they are joined; may be NULL
 * Note:      a join leads over where both of its sides have the corners at which the trim leaves
 *            the one and comes to the other. A join along the trim's own edge says nothing
 */
hw_trimway_going hw_trimway_between(const hw_trimway *way, const hw_trimway_pair *pair, int *join);

/*
 * Whether all ends of other trims that a trim is picked up over lie beside its edges, and its edges
 * meet each other.
 *
 * Result:    HW_OK; HW_ERR_RANGE, with words that name the edge, and its place in the garment file
 */
hw_status hw_trimway_check(const hw_trimway *way, int trim, hw_err *err) HW_MUST_USE;

#endif
