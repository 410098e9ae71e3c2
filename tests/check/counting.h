/* A garment whose stitches are to be counted, for the suites that choose counts.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_COUNTING_H
#define HW_TESTS_COUNTING_H

#include "core/grade.h"

/* Invented for tests. A test may change what it likes in it. */
typedef struct {
    hw_counts_task task;
    hw_garment garment;
    hw_piece pieces[HW_MAX_PIECES];
    hw_seam seams[HW_MAX_SEAMS];
    hw_target targets[HW_MAX_SIZES * HW_MAX_PIECES];
    hw_gauge gauge[HW_FABRIC_COUNT];
    const char *names[HW_MAX_SIZES];
} counting;

/* Pieces "a", "b", ... without seams, 40 cm wide in every size ("1", "2", ...); 25 stitches in
 * 10 cm, repeat 6 with gap 1, 200 needles, tolerance 1 cm, each weight 0.5, edges of 1 stitch. */
void counting_open(counting *c, int sizes, int pieces);

/* Sew one more seam. */
void counting_sew(counting *c, hw_seam seam);

/* Sew pieces from first to last into a ring, right edges to left edges. */
void counting_ring(counting *c, int first, int last);

/* Both wanted widths of a piece in a size. */
void counting_want(counting *c, int size, int piece, double cm);

/* Widths that grow from size to size and differ from piece to piece, by chance, from 15 cm on. */
void counting_grow(counting *c, unsigned *state, double step_cm);

#endif
