/* What test knitters measured on the pieces that they knitted.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_KNITTED_H
#define HW_CORE_KNITTED_H

#include "core/hw.h"

/* One row of the table: a piece in one size, its width or its length or both. */
typedef struct {
    int size, piece;  /* indices into the project's sizes and the garment's pieces */
    hw_fabric fabric; /* HW_MAIN or HW_BAND */
    double sts;       /* 0 where the width was not measured; not always whole */
    double width_cm;  /* as sts */
    double rows;      /* 0 where the length was not measured */
    double length_cm; /* as rows */
    const char *note; /* a remark; NULL for none */
    int row;          /* of the table, 1-based, for messages */
} hw_knitted;

typedef struct {
    const hw_knitted *list;
    int count;
} hw_knitted_list;

#endif
