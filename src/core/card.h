/* The punch card: its holes, how it is joined and punched, and what the machine cannot do with it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_CARD_H
#define HW_CORE_CARD_H

#include "core/bed.h"
#include "core/motif.h"

/* What a machine cannot do with a motif. Each has a way out, in hw_card_finding_words. */
typedef enum {
    HW_CARD_NOT_ACROSS,    /* the repeat does not divide the card's columns */
    HW_CARD_TOO_LONG,      /* more rows than one blank holds */
    HW_CARD_NO_CONTRAST,   /* rows without a contrast stitch */
    HW_CARD_NO_BACKGROUND, /* rows of contrast throughout */
    HW_CARD_LONG_FLOAT,
    HW_CARD_ODD_ROWS, /* the second yarn ends on the other side */
    HW_CARD_FINDING_COUNT
} hw_card_finding_kind;

typedef struct {
    hw_card_finding_kind kind;
    int count; /* columns of the repeat, rows, or stitches of the float */
    int limit; /* columns of the card, design rows of a blank, longest float; 0: none */
} hw_card_finding;

/* A row of the card, joining rows included. */
typedef struct {
    int blank;  /* which of the blanks it is on, 0 the first */
    int number; /* row of the design, 1 the first to be read; 0: a joining row */
    int holes;
} hw_card_row;

/* Holes that are punched one beside the other: the part of a row that the punch reaches. */
typedef struct {
    int row;         /* index into rows */
    int first, last; /* columns of that half, both included */
    int holes;       /* at least 1 */
    bool turned;     /* the second half: the blank was turned once before the first of these */
} hw_card_stroke;

/* A card that is ready to be punched. Rows are counted from the bottom, columns from the left, as
 * it lies before you: the purl side as it hangs on the needles, the figure mirrored. */
typedef struct {
    int columns;          /* 0: the machine takes no card, and only findings are set */
    bool possible;        /* the repeat divides the columns; else there are no rows */
    int times;            /* the figure is punched so often, one above the other */
    int design_rows;      /* the loop's length: figure rows x times */
    int joining_rows;     /* full rows at each end of each blank */
    int blanks;           /* that are joined; 1 is usual */
    int row_count;        /* design_rows + 2 joining_rows blanks */
    hw_card_row *rows;    /* [row_count], in the order of punching */
    unsigned char *holes; /* [row_count * columns], 1 for a hole */
    int total_holes;
    hw_card_stroke *strokes; /* blank by blank, the first half of all its rows, then the second */
    int stroke_count;
    hw_card_finding findings[HW_CARD_FINDING_COUNT]; /* at most one of each kind, in their order */
    int finding_count;
} hw_card;

typedef struct {
    const hw_motif *motif; /* analysed for the machine's card */
    const hw_machine *machine;
    int start; /* column where the first figure starts, [0, card_columns); see hw_place_on_bed */
} hw_card_task;

/*
 * What a card holds at a column, seen from the purl side as it hangs on the needles.
 *
 * Given:     motif     analysed, or with chart, gap and repeat set
 *            row       [0, chart.rows), 0 the top row of the chart
 *            column    of the card, from 0; any
 *            start     column where the first figure starts
 * Returned:  HW_CONTRAST for a hole
 */
hw_colour hw_card_at(const hw_motif *motif, int row, int column, int start);

/*
 * Make the card of a motif.
 *
 * Given:     task      machine.blank is checked: joining rows leave room for a design
 *            arena     owner of the lists
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      whole figures are punched one above the other until a loop can be made of them
 *            [B5, B6]. The joining rows at both ends are punched full, and both pairs overlap the
 *            design, so that it shows through and the loop is as long as the design [B7].
 */
hw_status hw_card_make(const hw_card_task *task, hw_arena *arena, hw_card *out) HW_MUST_USE;

/* Whether there is a hole; row in [0, row_count), column in [0, columns). */
bool hw_card_hole(const hw_card *card, int row, int column);

/* The same seen from the back: columns run the other way. */
bool hw_card_hole_behind(const hw_card *card, int row, int column);

/*
 * The row that shows above the slot while another is read [B3].
 *
 * Given:     card      possible
 *            read      row of the design that is read, [1, design_rows]
 *            offset    rows from the row that is read up to the row in view, 0 or more
 * Returned:  a row of the design, counted on round the loop
 */
int hw_card_in_view(const hw_card *card, int read, int offset);

/* A finding in a few words: "rows without contrast". */
const char *hw_card_finding_name(hw_card_finding_kind kind);

/* A finding and the way out, in whole sentences; owned by the arena, NULL when refused. The task
 * may be NULL for HW_CARD_ODD_ROWS. */
char *hw_card_finding_words(
    const hw_card_finding *finding, const hw_card_task *task, hw_arena *arena) HW_MUST_USE;

#endif
