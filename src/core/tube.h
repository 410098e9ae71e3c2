/* Tubes: pieces that are sewn to each other all the way round, and so can be knitted in rounds.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_TUBE_H
#define HW_CORE_TUBE_H

#include "core/edge.h"
#include "core/project.h"

/* Pieces in the order of a round, from where it begins: as seen on the right side a round goes from
 * right to left, so the left edge of each is sewn to the right edge of the next, and that of the
 * last to the right edge of the first. */
typedef struct {
    int pieces[HW_MAX_PIECES];
    int count; /* one: its own two edges are sewn to each other */
} hw_tube;

typedef struct {
    hw_tube list[HW_MAX_PIECES]; /* by the first piece of each, which is the lowest of its pieces */
    int count;
} hw_tubes;

/* The tubes that the seams of a garment close. */
hw_tubes hw_tubes_of(const hw_garment *garment);

/* The tube that a piece is in, or NULL. */
const hw_tube *hw_tubes_at(const hw_tubes *tubes, int piece);

/* Where the way from a piece in no tube ends, going from each to the one at its left. */
typedef struct {
    int piece;
    bool sewn; /* its left edge is sewn to a left edge; else to nothing */
} hw_tube_gap;
hw_tube_gap hw_tubes_gap(const hw_garment *garment, int piece);

/*
 * A project whose choice `in rounds` is put into practice.
 *
 * Given:     project   read, its references filled in
 *            arena     owner of the result
 * Returned:  out       where pieces are to be knitted in rounds: a project of which the tubes have
 *                      no edge stitches, and a seam wherever edges that close one are told to be
 *                      sewn by `joins` alone, from their feet on; else the project itself;
 * untouched on failure Result:    HW_OK; HW_ERR_RANGE (no tube, with the line of the choice);
 * HW_ERR_NOMEM
 */
hw_status hw_tubes_prepare(
    const hw_project *project, hw_arena *arena, const hw_project **out, hw_err *err) HW_MUST_USE;

/* Whether the project's pieces are worked by hand and in rounds. */
bool hw_tubes_wanted(const hw_project *project);

/* One edge of a piece in a tube, and the piece that it is sewn to there. */
typedef struct {
    const hw_garment *garment; /* the whole: with its joins */
    int piece;
    hw_side side;
    int neighbour;
} hw_tube_edge;

/* The height up to which an edge is sewn to its neighbour, cm from the fold: as the joins say, from
 * stretch to stretch; where none of them sews it there, the end of its stretch `side`, or its top
 * where it has none. */
double hw_tube_sewn_cm(const hw_tube_edge *at, const hw_edge_line *edge);

#endif
