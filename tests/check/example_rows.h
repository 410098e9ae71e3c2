/* A task for row plans, made by hand: the 2 + 6 + 2 hem on a card machine.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_EXAMPLE_ROWS_H
#define HW_TESTS_EXAMPLE_ROWS_H

#include "core/rowsteps.h"

enum { ROWS_MOST_BAND = 40, ROWS_MAIN = 10 };

/* Invented for tests, but for the hem (common practice) and its dials [H1]. */
typedef struct {
    hw_rowplan_task task;
    hw_machine machine;
    hw_gauge gauge[HW_FABRIC_COUNT];
    hw_hem hem;
    hw_motif motif;
    hw_motif_row motif_rows[ROWS_MOST_BAND];
    unsigned char cells[ROWS_MOST_BAND];
    hw_fit fit;
    hw_place_on_bed place;
    hw_shape shape;
    hw_shape_step list[8];
    hw_shape_steps steps;
    int inset[HW_SIDE_COUNT][ROWS_MAIN];
    int neck[HW_SIDE_COUNT][ROWS_MAIN];
} rows_example;

/* 22 stitches, L11 to R11, one edge stitch at each side; facing 10, face 2 + 6 + 2, pre-selecting,
 * reader offset 7, carriage at the right, open cast-on, hung; two rows above the hem. */
void example_rows(rows_example *e);

/* Another number of rows in a part of the hem; totals follow. */
void example_rows_hem(rows_example *e, const hw_hem *hem);

/* Ten rows above the hem: 3 bound off at the left in row 2 and at the right in row 3, 4 in the
 * middle in row 6, 1 decreased at each neck edge in row 8, and what is left ended. */
void example_rows_shape(rows_example *e);

/* The rows of its task, which can be made. */
hw_rowplan example_rows_plan(const rows_example *e, hw_arena *arena);

/* In rounds up to row 22, by hand, first of two pieces of 22 and 30 stitches; then 3 are bound off
 * at the right in row 23. */
hw_rowplan example_rows_round(rows_example *e, hw_arena *arena);

/* A hem by chance, 1 to ROWS_MOST_BAND band rows, with or without a loose fold row. */
hw_hem example_rows_chance(unsigned *state);

#endif
