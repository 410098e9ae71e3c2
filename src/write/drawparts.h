/* What the pictures share: a scale that fits, and the lines at the head.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_DRAWPARTS_H
#define HW_WRITE_DRAWPARTS_H

#include "core/gauge.h"
#include "write/draw.h"

/* The first of falling scales that is not above `most`; 0 where none is. */
double hw_drawparts_scale(const double *scales, int count, double most);

/* A stitch and a row of a fabric in true size, mm. */
double hw_drawparts_sts_mm(const hw_gauge *gauge);
double hw_drawparts_row_mm(const hw_gauge *gauge);

/* The largest look of a title in which a text is no wider than that, or else the smallest. */
hw_look hw_drawparts_title_look(const char *title, double width_mm);

enum {
    HW_DRAWPARTS_EDGE_MM = 4, /* left free at each side of the room */
    HW_DRAWPARTS_HEAD_MM = 17 /* what the head takes of the height */
};

/* The title, and below it a line of small words; NULL stands for refused memory. */
void hw_drawparts_head(hw_drawing *drawing, double width_mm, const char *words);

/* The words of a motif's longest floats, and of its gauge; NULL when memory is refused. */
const char *hw_drawparts_floats(const hw_motif *motif, hw_arena *arena);
const char *hw_drawparts_gauge(const hw_gauge *gauge, hw_arena *arena);

#endif
