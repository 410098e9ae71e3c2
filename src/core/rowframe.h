/* What every row of a row plan is counted from: shared by the files that make one.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROWFRAME_H
#define HW_CORE_ROWFRAME_H

#include "core/rowplan.h"

/* Rows of the hem that follow each other. */
typedef struct {
    hw_row_kind kind;
    int rows;
} hw_row_stretch;

enum { HW_ROW_STRETCHES = 5 };

/* Numbers of rows of one piece. */
typedef struct {
    const hw_rowplan_task *task;
    hw_row_stretch hem[HW_ROW_STRETCHES]; /* in the order of knitting */
    hw_row_work work;
    hw_side home;  /* where row 1 begins: of the bed; hand knitting: the edge, right side seen */
    int main_rows; /* above the hem, as drawn */
    int rows[HW_PART_COUNT]; /* above the hem, with those that work held stitches again */
    int neck; /* the row above the hem, from 0, at which the neck parts it; else main_rows */
} hw_row_frame;

hw_row_frame hw_row_frame_of(const hw_rowplan_task *task);

/* Rows from row 1 on that are rounds. */
int hw_row_frame_rounds(const hw_row_frame *frame);

/* Where a row begins: of the bed; hand knitting: the edge, as seen on the right side. */
hw_side hw_row_frame_before(const hw_row_frame *frame, int number);

/* The other side. */
hw_side hw_row_frame_other(hw_side side);

/* The half at an edge. */
hw_row_part hw_row_frame_half(hw_side side);

/* The piece's edge, as seen on the right side, at a side as hw_row_frame_before gives it; on a
 * machine the purl side faces the knitter, and left and right change. */
hw_side hw_row_frame_edge(const hw_row_frame *frame, hw_side side);

/* The number of the first row of a stretch of the hem, of two the lower. */
int hw_row_frame_first(const hw_row_frame *frame, hw_row_kind kind);

/* A band's first row and number of rows; 0 the hem's, which may have none, n the n-th further one.
 */
int hw_row_frame_band_first(const hw_row_frame *frame, int band);
int hw_row_frame_band_rows(const hw_row_frame *frame, int band);

/* How a band's rows are worked: by hand where the card does not take its repeat. */
hw_row_work hw_row_frame_work(const hw_row_frame *frame, int band);

/* Rows before a band that read its card: one of a pre-selecting carriage. */
int hw_row_frame_lead(const hw_row_frame *frame, int band);

/* Needles right of where the hem hung at which a row is knitted. */
int hw_row_frame_aside(const hw_row_frame *frame, int number);

/* The first row above the hem, from 0, at which a further band (from 1) may begin: above the
 * joining row, the band below it and its set-up row. */
int hw_row_frame_band_least(const hw_row_frame *frame, int band);

/* The number of the row after the fold. */
int hw_row_frame_folded(const hw_row_frame *frame);

/* Whether the hem is hung and joined: there is a joining row. */
bool hw_row_frame_joins(const hw_row_frame *frame);

/* Hand work as it is gathered, row by row. */
typedef struct {
    const hw_row_frame *frame;
    hw_arena *arena;
    hw_handwork *list;
    int count, room;
    bool refused; /* memory was: nothing is added any more */
} hw_row_hands;

/* Add all hand work of a row, and set the row's first_hand and hand_count. */
void hw_row_hands_add(hw_row_hands *hands, hw_row *row, bool last);

/*
 * What is wrong with the sides.
 *
 * Returned:  out       its findings, owned by the arena; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_row_findings(const hw_row_frame *frame, hw_arena *arena, hw_rowplan *out) HW_MUST_USE;

#endif
