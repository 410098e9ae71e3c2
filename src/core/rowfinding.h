/* What does not come out in the sides of rows, by the rules in rowtask.h.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROWFINDING_H
#define HW_CORE_ROWFINDING_H

#include "core/bed.h"

typedef enum {
    HW_FINDING_BAND_START,  /* rule 2 */
    HW_FINDING_BAND_END,    /* rule 3 */
    HW_FINDING_SHAPE_START, /* rule 5 */
    HW_FINDING_BAND_PARTED, /* rule 6 */
    HW_FINDING_COUNT
} hw_finding_kind;

/* A number of rows that could be another. */
typedef enum {
    HW_REMEDY_NONE,
    HW_REMEDY_FACING,
    HW_REMEDY_FOLD,
    HW_REMEDY_BELOW,
    HW_REMEDY_BAND,
    HW_REMEDY_ABOVE,
    HW_REMEDY_BEFORE,   /* a trim's plain rows between the edge and its band */
    HW_REMEDY_BAND_ROW, /* the first row of a further band, from 1 above the hem */
    HW_REMEDY_COUNT
} hw_remedy_kind;

typedef struct {
    hw_remedy_kind kind;
    int rows;        /* as they are */
    int fewer, more; /* the nearest that would do; -1: none on that side */
} hw_row_remedy;

enum { HW_MOST_REMEDIES = 3 };

typedef struct {
    hw_finding_kind kind;
    int number;       /* of the row */
    int band;         /* 0 the hem's, n the n-th further one; -1 for the shaping */
    const char *name; /* of a further band; else NULL */
    bool of_trim;     /* then 0 is the trim's */
    hw_side side;     /* where the carriage then is (hand knitting: where the row begins) */
    hw_row_remedy remedies[HW_MOST_REMEDIES];
    int remedy_count;
} hw_row_finding;

/* A finding in a knitter's words, row, band and side, with what to do; of the arena, NULL when
 * memory is refused. */
char *hw_row_finding_text(const hw_row_finding *finding, hw_arena *arena) HW_MUST_USE;

/* The same for a note that names the band before it, without row and side, which are not the same
 * on all pieces and in all sizes. */
char *hw_row_finding_note(const hw_row_finding *finding, hw_arena *arena) HW_MUST_USE;

#endif
