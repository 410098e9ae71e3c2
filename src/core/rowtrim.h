/* What the row plan of a trim is told beside its hem.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROWTRIM_H
#define HW_CORE_ROWTRIM_H

#include "core/lengths.h"

/* Layers of a folded band, in the order in which a trim's are knitted. */
typedef enum { HW_LAYER_FACE, HW_LAYER_FACING, HW_LAYER_COUNT } hw_layer;

/* A trim: picked up along edges, and its hem knitted from there: face, fold, facing. */
typedef struct {
    const char *along;        /* where it is picked up, from its right end on, in words */
    const char *through;      /* what of it has two layers, such as "the folded hem"; "": nothing */
    hw_lengths lengths;       /* of a trim that is longer than the bed, where they are known */
    const int *holes;         /* [hole_count], rising: stitches right of each, right side seen */
    int hole_count, hole_sts; /* buttonholes, and the stitches of each */
    int hole_rows[HW_LAYER_COUNT]; /* the row before which each layer's are worked */
    int open_sts; /* not joined to the inside, for an elastic to be drawn in there; 0: none */
} hw_row_trim;

#endif
