/* Where a drawn edge lies, reckoned another way than the library does, and edges by chance.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_OUTLINED_H
#define HW_TESTS_OUTLINED_H

#include "core/shape.h"
#include "support.h"

enum { DRAWN_POINTS = 40, DRAWN_ROWS = 400 };

/* How far an edge reaches within some heights, both ends of a step across included; what is flat at
 * the edge's very top is left out. */
typedef struct {
    double least_cm, most_cm;
} drawn_range;
drawn_range drawn_within(const hw_edge_line *edge, double low_cm, double high_cm);

/* Where it lies at a height, below a step across if there is one. */
double drawn_below(const hw_edge_line *edge, double up_cm);

/* A piece by chance, with rows of stitches to fill it; all else in `task` is the caller's. */
typedef struct {
    hw_outline_point points[HW_EDGE_COUNT][DRAWN_POINTS];
    hw_outline outline;
    double low_cm[DRAWN_ROWS + 1];
    hw_shape_task task;
    bool symmetric;
} drawn_piece;

/* How wild a piece may be. */
typedef enum { DRAWN_GENTLE, DRAWN_STRAIGHT, DRAWN_CURVED, DRAWN_KIND_COUNT } drawn_kind;

void drawn_by_chance(unsigned *state, drawn_kind kind, drawn_piece *out);

/* The same piece turned over, begun at the other side. */
void drawn_turned(const drawn_piece *piece, drawn_piece *out);

/* A piece's rows and steps. */
typedef struct {
    hw_arena arena;
    hw_check_heap heap;
    hw_shape shape;
    hw_shape_steps steps;
} drawn_rows;

/* Makes them; ends the test where that fails. */
void drawn_knit(const hw_shape_task *task, drawn_rows *out);
void drawn_close(drawn_rows *k);

/* Checks that in each row, at some height of it, each edge lies within half a stitch. */
void drawn_bound(const hw_shape_task *task, const hw_shape *shape);

#endif
