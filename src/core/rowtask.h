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
    int motifs;                   /* whole ones; 0: not known */
    int plain_sts[HW_SIDE_COUNT]; /* beside them, edge stitches apart, were nothing shaped */
    int card_row;                 /* card's row for its first, from 1 */
    int aside;                    /* needles right of where the hem hung at which it is knitted */
    bool back;                    /* and after it the piece hangs there again, till the next band */
    int own_column;   /* from 1: where another card has to start for it; 0: it needs none */
    const char *name; /* of the band; NULL where there is no other */
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

#endif
