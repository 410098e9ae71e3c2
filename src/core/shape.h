/* Shaping: the stitches of every row from an outline, and the same in a knitter's steps.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_SHAPE_H
#define HW_CORE_SHAPE_H

#include "core/outline.h"
#include "core/spread.h"

/* How a piece is worked above its hem. */
typedef struct {
    const hw_outline *outline;
    const char *piece, *size; /* their names, for messages; NULL: none is named */
    double sts_per_cm;        /* of the plain fabric */
    const double *low_cm; /* [rows + 1]: where each row begins, cm from the fold; row 0 is the first
                             above the hem, low_cm[0] the top of the hem's face */
    int rows;             /* [1, HW_MAX_ROWS]; the last is the one nearest to the outline's top */
    int visible_sts;      /* of row 0 before any shaping, edge stitches not included */
    hw_side first_start;  /* the edge, as seen on the right side, at which row 0 begins */
    bool right_side_rows; /* hand knitting: single stitches change in right-side rows alone */
    bool first_is_right_side; /* row 0 is one (for right_side_rows) */
    bool short_rows;          /* shoulders are left unworked step by step, not bound off */
    int round_rows; /* the first so many are rounds: each is a right-side row from the right edge,
                       and single stitches alone change, at both ends; 0: none. The row after them
                       is as row 0, and those above it turn from there on. Up to the neck's row */
} hw_shape_task;

/* Stitches taken off an edge since row 0, [rows]; below 0 where they were added. Of the two neck
 * edges: stitches between the middle of the piece and that edge, in half stitches, -1 below the
 * row at which the neck begins. */
typedef struct {
    int rows; /* the task's, less those at the very top in which nothing would be left */
    int visible_sts;
    int *inset_sts[HW_SIDE_COUNT];
    int *neck_halves[HW_SIDE_COUNT]; /* [rows] of left half's and right half's neck edge; NULL: no
                                        neck */
    int neck_row;                    /* the first row with a neck; the task's rows: none */
    int held_sts[HW_SIDE_COUNT];     /* of each edge, left unworked when the last row is done */
    int back_row[HW_SIDE_COUNT];     /* where some are: the row that works them again */
    hw_side first_start;
} hw_shape;

typedef enum {
    HW_STEP_DECREASE, /* one stitch */
    HW_STEP_INCREASE, /* one stitch */
    HW_STEP_BIND_OFF, /* a group at the start of a row */
    HW_STEP_CAST_ON,  /* a group at the start of a row */
    HW_STEP_HOLD,     /* short rows: so many more are left unworked at the end of that row */
    HW_STEP_BACK,     /* and all of an edge are worked again, at the end of that row */
    HW_STEP_DIVIDE,   /* the neck's middle is bound off, with 0 stitches only parted; the halves
                         are worked one by one */
    HW_STEP_END,      /* what is left at the top: bind off, or keep for a seam; its row is the one
                         after the last */
    HW_STEP_COUNT
} hw_step_kind;

/* Where a step happens. Both: at each end. */
typedef enum {
    HW_AT_LEFT,
    HW_AT_RIGHT,
    HW_AT_BOTH,       /* of HW_STEP_END: both halves */
    HW_AT_NECK_LEFT,  /* the neck edge of the left half */
    HW_AT_NECK_RIGHT, /* of the right half */
    HW_AT_NECK_BOTH,
    HW_AT_MIDDLE, /* of HW_STEP_END: all of it */
    HW_AT_COUNT
} hw_step_place;

/* `sts` stitches `times` times: first in row `row`, then in every `every`th row after it. */
typedef struct {
    hw_step_kind kind;
    hw_step_place place;
    int row;   /* 0-based, from row 0 above the hem */
    int every; /* rows from one to the next; 0 where times is 1 */
    int times, sts;
    bool slit;    /* of HW_STEP_DIVIDE: here a slit begins, and higher up the neck */
    int left_sts; /* of the row of the last of them, with all that changes up to it: all of it, or
                     of that half; the right half where it is about both, or the middle */
} hw_shape_step;

typedef struct {
    const hw_shape_step *list; /* by row, then place */
    int count;
} hw_shape_steps;

/*
 * The stitches of every row.
 *
 * Given:     task
 *            arena     owner of the rows
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE (a row would have no stitch, and not only a few at the top, with
 *            the names of piece and size); HW_ERR_NOMEM; HW_ERR_INTERNAL (more rounds
 *            than single stitches serve for is one cause)
 * Note:      the edge of a row is a line one row tall; the outline comes within half a stitch of
 *            it, beside it or at most half a row above or below, and beside it where single
 *            stitches serve. Those may change in any row, or, with right_side_rows, in right-side
 *            rows; two or more only at the start of a row. An edge and its mirror image have the
 *            same changes, single ones in one row, groups a row apart: the edge at which row 0
 *            begins leads. What is flat at the very top is not shaped, and a group due in the last
 *            row is not made: they end with the last row. The halves of a neck keep the rows and
 *            their directions; the neck edge of the left half is that half's right edge, at which
 *            rows begin that begin at the right, and the other way round. With right_side_rows,
 *            among groups, a single stitch at the edge where wrong-side rows begin changes in one
 *            of those. How, and why it can always be done: edgerows.c
 */
hw_status hw_shape_make(
    const hw_shape_task *task, hw_arena *arena, hw_shape *out, hw_err *err) HW_MUST_USE;

/*
 * The same in steps, few of them, that tell every row exactly.
 *
 * Given:     task, shape  belong together
 *            arena     owner of the list
 * Returned:  out       so that who follows them has the same rows; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      steps at one edge may overlap where that saves a third of them or more
 */
hw_status hw_shape_steps_of(const hw_shape_task *task, const hw_shape *shape, hw_arena *arena,
    hw_shape_steps *out) HW_MUST_USE;

/* Whether what leaves an edge in a row is held, not bound off: the row ends there, in a shoulder
 * that is worked in short rows. */
bool hw_shape_holds(const hw_shape_task *task, hw_side side, int row);

/* Whether a neck parts the piece in halves. */
bool hw_shape_parted(const hw_shape *shape);

/* Rows of a half, or of a piece by the edge that is worked last. Held stitches come back in a
 * row that ends at their edge, the last as drawn or the next: only so does the yarn get to them
 * from inside, without lying across them. So a row more may be worked; two, were some held in the
 * last.
 */
int hw_shape_rows(const hw_shape *shape, hw_side half);
int hw_shape_most_rows(const hw_shape *shape);

/* Stitches that an edge has fewer than in row 0, in any of its rows: held ones come back. */
int hw_shape_inset(const hw_shape *shape, int row, hw_side side);

/* Visible stitches of a row: all of it, both halves of a parted one; and, once the neck has parted
 * it, of one half; of the last row, of both halves too. */
int hw_shape_sts(const hw_shape *shape, int row);
int hw_shape_half_sts(const hw_shape *shape, int row, hw_side half);
int hw_shape_top_sts(const hw_shape *shape);

/* Stitches of all rows above the shape's, as many at each edge added. */
int hw_shape_more_sts(const hw_shape *shape, const int *edge_sts);

#endif
