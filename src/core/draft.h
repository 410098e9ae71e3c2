/* A piece above its hem: outline, rows and shaping, bands higher up, lengths of its edges.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_DRAFT_H
#define HW_CORE_DRAFT_H

#include "core/bed.h"
#include "core/grade.h"
#include "core/hem.h"
#include "core/motif.h"
#include "core/shape.h"

/* A band higher up on one piece in one size. */
typedef struct {
    int first_row; /* 0-based, above the hem */
    int rows;
    double moved_cm; /* higher than it was asked for, so that the rows below it are even */
    double side_cm;  /* the side was made longer by so much, so that they are, and the next is so */
    int underarm_rows; /* from its last row to the row that begins at the underarm; -1: unknown */
    int sts;           /* visible, of the narrowest of its rows */
    int taken_sts[HW_SIDE_COUNT]; /* taken off each edge where it is narrowest */
    bool shaped;                  /* edges change while it is knitted */
    int motifs;                   /* whole ones; 0: not one has room */
    int margin[HW_SIDE_COUNT];
    double width_cm; /* of its stitches, in the band's gauge */
    int card_column; /* of its first motif, [0, repeat), as the hem hangs; -1: it has no card */
    int aside;       /* needles right of there at which it is knitted (aside.h) */
    bool back;       /* the piece goes back after it */
    bool own_card;   /* the bed has no room to move it onto the one card */
} hw_upper;

/* How long a stretch of an edge is. */
typedef struct {
    hw_edge edge;
    const char *stretch; /* NULL: the whole edge */
    double cm;
} hw_draft_length;

/* One piece in one size. */
typedef struct {
    int round_rows; /* above the hem, of a piece in a tube: rows that are rounds */
    bool drawn;     /* else nothing below is known */
    hw_outline outline;
    double *low_cm; /* [task.rows + 1]: where each row begins, from the fold */
    hw_shape_task task;
    hw_shape shape;
    hw_shape_steps steps;
    hw_draft_length
        *lengths; /* of left, right and the neck's right edge, from the hem up; the top */
    int length_count;
    double area_cm2;  /* from the fold up, of what is drawn */
    hw_upper *uppers; /* [as many as the task had bands] */
} hw_draft;

/* A band higher up, as the project has it for one piece. */
typedef struct {
    const hw_motif *motif; /* NULL: it is not on this piece */
    double above_fold_cm;  /* to its first row; 0: the next says it */
    double below_underarm_cm;
    const char *name;
    int line; /* of the project */
} hw_upper_wish;

typedef struct {
    hw_outline_task outline;
    const hw_gauge *gauge;       /* HW_FABRIC_COUNT */
    const hw_upper_wish *wishes; /* [wish_count] */
    int wish_count;
    int main_sts;             /* visible stitches above the hem */
    hw_side first_start;      /* the edge at which row 0 begins */
    int hem_rows;             /* rows of the piece before row 0 */
    bool first_is_right_side; /* hand knitting: row 0 is one */
    bool hand;                /* single stitches change in right-side rows alone */
    bool short_rows;
    int round_rows; /* the first rows that are rounds; 0: none */
} hw_draft_task;

/*
 * Draft one piece in one size.
 *
 * Given:     task
 *            arena     owner of the result
 * Returned:  out       untouched on failure
 * Result:    HW_OK; what hw_outline_make and hw_shape_make can say; HW_ERR_RANGE (a band that does
 *            not fit between hem and top), with the project's line; HW_ERR_MISSING (no stretch
 *            `side` for a band below the underarm); HW_ERR_NOMEM
 * Note:      rows of bands higher up have the band's height, all others that of plain fabric. Rows
 *            before a band are even in number, so that the carriage comes to it from the side where
 *            the hem's band began [P1]; that may move a band by a row. With a band below the
 *            underarm the underarm moves, and all above it: the band has the same rows between it
 *            and the underarm on every piece, so that bands of sewn pieces meet.
 */
hw_status hw_draft_make(
    const hw_draft_task *task, hw_arena *arena, hw_draft *out, hw_err *err) HW_MUST_USE;

/* The needle on which a band's first whole motif begins: R1 = 0. On the bed a piece's right edge
 * hangs at the left; a mirrored one is re-hung mirrored. */
int hw_upper_needle(
    const hw_upper *upper, const hw_place_on_bed *place, const hw_fit *fit, bool mirrored);

#endif
