/* What a row plan is made from, and which sides and row counts it asks for.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROWTASK_H
#define HW_CORE_ROWTASK_H

#include "core/bed.h"
#include "core/grade.h"
#include "core/hem.h"
#include "core/motif.h"
#include "core/rowtrim.h"
#include "core/shape.h"

enum { HW_WASTE_ROWS = 10 }; /* below an open cast-on [R2] */

/* How rows are worked; from the machine, and from whether the motif's repeat divides the card. */
typedef enum {
    HW_WORK_HAND,      /* hand knitting */
    HW_WORK_PICKED,    /* a bed without a card that serves: needles are brought out by hand */
    HW_WORK_DIRECT,    /* each band row reads its own card row */
    HW_WORK_PRESELECT, /* each band row's needles are brought out during the row before it */
    HW_WORK_COUNT
} hw_row_work;

/* A band above the hem. */
typedef struct {
    int row; /* its first, from 0 at the first row above the hem, as in hw_shape */
    const hw_motif *motif;
    int card_row, aside; /* card's row for its first, from 1; needles to move right for it */
    const char *name;    /* of the band; NULL where there is no other */
} hw_row_band;

typedef struct {
    const hw_machine *machine;
    const hw_gauge *gauge; /* [HW_FABRIC_COUNT]: for the main fabric's dial */
    const hw_hem *hem;
    const hw_motif *motif; /* of the hem's band; as many rows as hem->band_rows; NULL: no band */
    const char *name;      /* of that band; NULL where there is no other */
    const hw_fit *fit;
    const hw_place_on_bed *place; /* not looked at in hand knitting; NULL: no room on the bed */
    const hw_row_trim *trim;      /* NULL: a piece, cast on at its facing */
    const hw_shape *shape;        /* NULL: `plain_rows` straight rows above the hem */
    const hw_shape_steps *steps;  /* of that shape; NULL: none */
    int plain_rows;               /* a hem that is hung has at least its joining row */
    const hw_row_band *bands;     /* further ones, from the hem up */
    int band_count;
    const int *marks; /* rising: rows above the hem before which both edges are marked */
    int mark_count;
    int card_row;     /* the card's row for the hem's first band row, from 1; 0 stands for 1 */
    int card_rows;    /* of the joined card; 0: it is not joined, or not known */
    hw_side start;    /* of the bed: where the carriage is before row 1 of a piece not mirrored */
    bool mirrored;    /* begins at the other side, so that all its rows mirror (machine alone) */
    int round_rows;   /* hand knitting: rows from row 1 on that are rounds, those of the hem at
                         least, all of them at most; 0: none */
    bool either_side; /* the second yarn may be put in and taken off at either side of the bed */
    hw_cast_on cast_on;
    hw_closing closing;
} hw_rowplan_task;

/*
 * Sides and parities. On a machine, with "home" the side where the carriage is before row 1:
 *
 *   1. The set-up row of a pre-selecting carriage is the last plain row below its band, no row of
 *      its own; card held at the band's first row. While band row k is knitted, row k + 1 is
 *      brought out; the last brings out none, so the plain row after it finds all needles back
 *      [R1]. A direct carriage reads row k in band row k, and needs no set-up row.
 *   2. A band begins at home, where the second yarn waits [P1]: an even number of rows lies below.
 *   3. A band ends at home, so that the second yarn comes off where it went in [P1]: an even number
 *      of rows. (2 and 3 do not bind where either side serves.)
 *   4. Hanging the hem and joining it have no side: the loops hang on the needles.
 *   5. Groups of stitches change at the start of a row, so shaping belongs to the side at which
 *      the first row above the hem begins (derived): hw_rowplan_above tells it beforehand.
 *   6. A further band must not be parted by the neck: the card cannot be in two rows.
 *   7. Of a parted piece the second half begins where the first did: the carriage is taken there.
 *   8. Of a trim the edge is hung with the garment's wrong side to the knitter, and row 1 follows;
 *      the loops that are hung at the end are those of the row that was picked up [P9].
 *
 * Hand knitting: row 1 is a right-side row, from the right edge to the left; of a trim, whose
 * stitches were knitted as they were picked up, it is a wrong-side row [P9]; all rounds are
 * right-side rows, and so is the first row above rounds, where each piece of a tube (tube.h) goes
 * on by itself. A yarn can be joined at either edge, so rules 1 to 4 bind nobody; 5 does.
 */

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
    int number;   /* of the row */
    int band;     /* 0 the hem's, n the n-th further one; -1 for the shaping */
    bool of_trim; /* then 0 is the trim's */
    hw_side side; /* where the carriage then is (hand knitting: where the row begins) */
    hw_row_remedy remedies[HW_MOST_REMEDIES];
    int remedy_count;
} hw_row_finding;

/* The first row above the hem. */
typedef struct {
    int number;
    hw_side edge;    /* at which it begins, as seen on the right side: hw_shape_task.first_start */
    bool right_side; /* hand knitting: hw_shape_task.first_is_right_side */
} hw_row_above;

/* How a task's rows are worked. */
hw_row_work hw_rowplan_work(const hw_rowplan_task *task);

/* The first row above the hem; the task's shape, steps, fit and place may still be missing. */
hw_row_above hw_rowplan_above(const hw_rowplan_task *task);

/* A finding in a knitter's words, with what to do; of the arena, NULL when memory is refused. */
char *hw_row_finding_text(const hw_row_finding *finding, hw_arena *arena) HW_MUST_USE;

#endif
