/* A small plan made by hand, from which every document can be written.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_EXAMPLE_PLAN_H
#define HW_TESTS_EXAMPLE_PLAN_H

#include "core/plan.h"
#include "write/cells.h"

enum { EXAMPLE_SIZES = 4, EXAMPLE_PIECES = 2, EXAMPLE_SEAMS = 2, EXAMPLE_NOTES = 4 };

/* Invented for tests. A test may change what it likes in it. */
typedef struct {
    hw_project project;
    hw_plan plan;
    hw_note notes[EXAMPLE_NOTES];
} example;

/* Fill an example: a skirt of a front and a back in four sizes, on 200 needles and a card. */
void example_plan(example *e, hw_arena *arena);

/* Fewer sizes: 1 to EXAMPLE_SIZES. */
void example_sizes(example *e, int sizes);

/* A chart without a repeat that divides the card: the figure alone, its gap 2. */
void example_no_card_fit(example *e);

/* The card again, once the motif or the machine was changed; ends the program where it cannot be
 * made. */
void example_card(example *e, hw_arena *arena);

/* The example's tables; ends the program where they cannot be made. */
hw_tables example_tables(const example *e, hw_arena *arena);

#endif
