/* The row plan: every row of a piece or trim in one size, in the order in which it is knitted.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROWPLAN_H
#define HW_CORE_ROWPLAN_H

#include "core/handwork.h"
#include "core/rowfinding.h"
#include "core/rowtask.h"

typedef enum {
    HW_ROW_FACING,
    HW_ROW_FOLD,
    HW_ROW_FACE,  /* of a trim: plain, before its band and behind it */
    HW_ROW_BELOW, /* plain, below the hem's band */
    HW_ROW_SETUP, /* plain; the carriage brings out the needles for a band's first row */
    HW_ROW_BAND,
    HW_ROW_ABOVE, /* plain, above the hem's band */
    HW_ROW_JOINING,
    HW_ROW_MAIN,
    HW_ROW_KIND_COUNT
} hw_row_kind;

/* Which part of the piece a row is of; halves as seen on the right side. */
typedef enum { HW_PART_WHOLE, HW_PART_LEFT, HW_PART_RIGHT, HW_PART_COUNT } hw_row_part;

typedef enum {
    HW_SET_NONE, /* hand knitting */
    HW_SET_PLAIN,
    HW_SET_SELECT,     /* knits plain, and brings out the needles for the row after it */
    HW_SET_TWO_SELECT, /* knits two colours, and brings out the needles for the row after it */
    HW_SET_TWO_LAST,   /* knits two colours with the needles that are out, brings none out */
    HW_SET_TWO_DIRECT, /* knits two colours by the card row that it reads */
    HW_SET_TWO_PICKED, /* knits two colours; the needles were brought out by hand */
    HW_SET_COUNT
} hw_row_setting;

typedef enum { HW_CARD_UNREAD, HW_CARD_HELD, HW_CARD_MOVING, HW_CARD_COUNT } hw_row_card;

typedef enum { HW_YARN_NONE, HW_YARN_MAIN, HW_YARN_CONTRAST, HW_YARN_COUNT } hw_row_yarn;

typedef enum { HW_FEEDER_FIRST, HW_FEEDER_SECOND, HW_FEEDER_COUNT } hw_feeder;

/* What a band's row is made of, right side seen; motifs 0: not told, as of halves. */
typedef struct {
    int motifs, gap;
    int edge_sts[HW_SIDE_COUNT];  /* that a seam takes up */
    int plain_sts[HW_SIDE_COUNT]; /* between those and the first or last motif */
} hw_row_figures;

typedef struct {
    int number; /* of the row counter once the row is knitted, from 1 */
    hw_row_kind kind;
    hw_row_part part;
    hw_fabric fabric;
    hw_side before, after; /* of the bed, where the carriage is; hand knitting: the edges, as seen
                              on the right side, at which this row and the next begin */
    bool right_side;       /* hand knitting: the right side faces */
    bool has_dial, loosest;
    double dial; /* where has_dial */
    hw_row_setting setting;
    hw_row_card card;
    int card_read, card_view; /* rows of the card, from 1: read in this row, and in view; 0: none,
                                 or not known */
    int band;                 /* 0 the hem's, n the n-th further one; -1 outside bands */
    int chart_row;            /* of that band, from 1 at the bottom; 0 outside bands */
    hw_row_figures figures;
    hw_row_yarn feeders[HW_FEEDER_COUNT]; /* hand knitting: the yarns in use */
    int first, last;                      /* needles in work, L1 = -1, R1 = 0; 0 where has_needles
                                             of the plan is not set */
    int sts;                              /* edge stitches included */
    int first_hand, hand_count; /* in the plan's hands, in the order in which they are done */
} hw_row;

/* Pieces that are knitted together in rounds, each a slice between two markers. */
typedef struct {
    const char *const *names; /* [count] in the order of a round, from where it begins */
    const int *cast_on_sts;   /* [count] */
    int count;
    const int *sts; /* of the whole round, [round_rows of each of the pieces' plans] */
} hw_row_tube;

typedef struct {
    hw_row_work work;
    hw_side start; /* of the bed, before row 1 */
    hw_cast_on cast_on;
    hw_closing closing;
    bool has_needles;        /* not in hand knitting, nor where the bed has no room */
    const hw_row_trim *trim; /* NULL: a piece */
    int round_rows;          /* rows from row 1 on that are rounds; 0: none */
    const hw_row_tube *tube; /* NULL: no rounds, or nothing is known of other pieces */
    int slice;               /* of the tube: which of its pieces this is */
    int hem_rows; /* facing, fold and face: row n above the hem, from 0, has number hem_rows + n + 1
                   */
    const hw_row *rows;
    int count;
    const hw_handwork *hands;
    int hand_count;
    const hw_row_finding *findings;
    int finding_count;
} hw_rowplan;

/*
 * Plan every row of a piece or trim.
 *
 * Given:     task      see rowtask.h
 *            arena     owner of the lists; steps of the shaping are pointed to, not copied
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE (a further band that leaves no row for its set-up, overlaps
 *            another or ends above the last row); HW_ERR_NOMEM
 * Note:      the rules of sides and of the set-up row are in rowtask.h. One counter for the whole
 *            piece: 000 before the first row; where a neck parts the piece the half on the
 *            carriage's side is finished first, and for the other one the counter is set back to
 *            where they parted (own choice). The fold's loose row is knitted at the loosest dial
 *            [P1]; the joining row at the hem's joining dial [H1]. The tube is not set here: see
 *            rowing.h.
 */
hw_status hw_rowplan_make(
    const hw_rowplan_task *task, hw_arena *arena, hw_rowplan *out, hw_err *err) HW_MUST_USE;

#endif
