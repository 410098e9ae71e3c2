/* The needle bed and the card: where a piece stands, because the card fixes where a motif can be.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_BED_H
#define HW_CORE_BED_H

#include "core/err.h"
#include "core/mem.h"

typedef enum {
    HW_CARRIAGE_NONE,
    HW_CARRIAGE_PRESELECTING,
    HW_CARRIAGE_DIRECT,
    HW_CARRIAGE_COUNT
} hw_carriage;

/* A punch card before it is punched. Lengths were found in no source: who has a card measures it.
 */
typedef struct {
    int rows;            /* in which holes can be punched, joining rows included; 60 [B5] */
    int least_loop_rows; /* of a design that can be joined into a loop; 36 [B5] */
    int joining_rows;    /* at each end; 2 [B6] */
    double hole_pitch_cm, row_pitch_cm; /* from the middle of a hole to the next; 0: not known */
    double width_cm, hole_cm;           /* of the card, of a hole; 0: not known */
} hw_blank;

/* A kind of machine, none named after a maker. */
typedef struct {
    const char *title;
    double pitch_cm;   /* from needle to needle; 0 for hand knitting */
    int needles;       /* even; HW_MAX_STS for hand knitting */
    int card_columns;  /* 0: no card */
    int reader_offset; /* rows between the row read and the row in view; -1 unknown */
    int longest_float; /* stitches that a float may span */
    hw_carriage carriage;
    hw_blank blank;     /* of no meaning without a card */
    const char *source; /* keys in data/SOURCES.md */
} hw_machine;

/* "no carriage", "pre-selecting", "direct" */
const char *hw_carriage_name(hw_carriage carriage);

/* A piece on the bed. Needles are counted q: R1 is 0, L1 is -1. */
typedef struct {
    int needles;           /* of the bed; 0: it has no end */
    int first, last;       /* needles of the piece, edge stitches included */
    int off_centre_halves; /* half needles by which its middle stands right of 0 */
    int first_motif;       /* needle of the first whole motif's first column */
    int centre_motif;      /* needle of the middle motif's first column; of two, the left one's */
    int card_start;        /* column, [0, card_columns), where the card's first motif starts */
    int wanted_card_start; /* the column that would stand the piece centred: below the repeat
                              where that divides the card */
} hw_place_on_bed;

typedef struct {
    int needles, card_columns;
    int repeat;       /* a motif starts at each repeat of the card, or, where the repeat does not
                         divide the card, at card_start alone */
    int card_start;   /* column where the card's first motif starts */
    int cast_on_sts;  /* edge stitches included */
    int before_motif; /* stitches left of the first whole motif: edge and margin */
    int motifs;
    bool free_start; /* the card is not punched yet: stand the piece centred */
} hw_bed_task;

/*
 * Card column of a needle: (q + C/2) mod C.
 *
 * Given:     needle    q, R1 = 0, L1 = -1
 *            columns   C, above 0
 * Returned:  [0, columns)
 */
int hw_bed_column(int needle, int columns);

/* The first needle of a piece that is re-hung in its middle, so many stitches fewer (below 0:
 * more): of an odd number the one over goes at the right end, of a mirrored piece at the left.
 * Where it would leave the bed, it stands at the bed's end. */
int hw_bed_rehung_first(const hw_place_on_bed *place, int fewer_sts, bool mirrored);

/*
 * Where a piece stands: nearest to the middle, its first whole motif on the card's column.
 *
 * Given:     task      cast_on_sts at most needles; without a card (columns 0), or with
 *                      free_start, the piece stands centred
 * Returned:  out       untouched on failure; an odd piece has its odd stitch on the right
 * Result:    HW_OK; HW_ERR_RANGE (more stitches than needles, a column that the card does not have,
 *            or no place on the bed)
 */
hw_status hw_bed_place(const hw_bed_task *task, hw_place_on_bed *out, hw_err *err) HW_MUST_USE;

/* The column to start punching at, for several pieces and sizes of one motif. */
typedef struct {
    bool possible;    /* some column serves every piece */
    int column;       /* [0, card_columns): where the first motif starts */
    bool centres_all; /* with it every piece stands centred, an odd stitch on either side */
    int worst_halves; /* half needles by which the furthest piece stands off centre, no sign */
    int worst;        /* which of the pieces that is */
} hw_bed_punch;

/*
 * Choose where to punch so that pieces stand as near to the middle as they can.
 *
 * Given:     tasks     count pieces, at least one, of one repeat and a card (columns above 0);
 *                      their card_start and free_start are not looked at
 * Returned:  the column whose furthest piece is least off centre, the lowest of equal ones
 */
hw_bed_punch hw_bed_best_start(const hw_bed_task *tasks, int count);

/* A needle's name as knitters count, "L12" or "R1"; owned by the arena, NULL when refused. */
char *hw_bed_needle_name(int needle, hw_arena *arena) HW_MUST_USE;

#endif
