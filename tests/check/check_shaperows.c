/* Shaping of pieces by chance: every row against the drawn edges, where changes happen, steps.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "follow.h"
#include "outlined.h"
#include "support.h"

/* The neck begins in the first row of which the middle lies at its lowest point or above, in both
 * halves alike, and leaves whole stitches. */
static void expect_neck(const hw_shape_task *task, const hw_shape *shape)
{
    const int *left = shape->neck_halves[HW_LEFT];
    const int *right = shape->neck_halves[HW_RIGHT];
    if (task->outline->edges[HW_EDGE_NECK_RIGHT].count == 0) {
        ck_assert_ptr_null(left);
        ck_assert_ptr_null(right);
        ck_assert_int_eq(shape->neck_row, task->rows);
        return;
    }
    for (int row = 0; row < shape->rows; row++) {
        double middle_cm = (task->low_cm[row] + task->low_cm[row + 1]) / 2;
        bool parted = row >= shape->neck_row;
        ck_assert(parted == (middle_cm >= task->outline->neck_cm - 1e-9));
        if (!parted) {
            ck_assert_int_eq(left[row], -1);
            ck_assert_int_eq(right[row], -1);
            continue;
        }
        ck_assert_int_ge(left[row], 0);
        ck_assert_int_ge(right[row], 0);
        ck_assert_int_eq((left[row] + task->visible_sts) % 2, 0);
        ck_assert_int_eq((right[row] + task->visible_sts) % 2, 0);
        ck_assert(row > shape->neck_row || left[row] == right[row]);
        int halves =
            hw_shape_half_sts(shape, row, HW_LEFT) + hw_shape_half_sts(shape, row, HW_RIGHT);
        ck_assert_int_eq(hw_shape_sts(shape, row), halves);
    }
}

/* ---- Where changes happen ---- */

static bool right_side(const hw_shape_task *task, int row)
{
    return (row % 2 == 0) == task->first_is_right_side;
}

/* One change at an edge at which a row begins, or does not. */
static void expect_change(const hw_shape_task *task, int row, int change, bool begins)
{
    bool group = change > 1 || change < -1;
    ck_assert_msg(!group || begins, "row %d changes by %d at its end", row, change);
    bool any_row = !task->right_side_rows || right_side(task, row) || begins;
    ck_assert_msg(change == 0 || any_row, "row %d, a wrong-side row, changes by %d", row, change);
}

/* In a shoulder that is held, changes belong to rows that end there. */
static void expect_held(const hw_shape_task *task, hw_side side, int row, int change)
{
    if (change != 0 && hw_shape_holds(task, side, row)) {
        ck_assert_int_gt(change, 0);
        bool even = row % 2 == 0;
        ck_assert(even != (task->first_start == side));
    }
}

static void expect_changes(const hw_shape_task *task, const hw_shape *shape)
{
    for (int row = 0; row < shape->rows; row++) {
        for (int i = 0; i < HW_SIDE_COUNT; i++) {
            hw_side side = (hw_side)i;
            const int *inset = shape->inset_sts[side];
            int change = inset[row] - (row > 0 ? inset[row - 1] : 0);
            bool begins = (row % 2 == 0) == (task->first_start == side);
            expect_held(task, side, row, change);
            if (!hw_shape_holds(task, side, row)) {
                expect_change(task, row, change, begins);
            }
            const int *halves = shape->neck_halves[side];
            if (halves != NULL && row > shape->neck_row) {
                /* the neck is the right edge of the left half */
                expect_change(task, row, (halves[row] - halves[row - 1]) / 2, !begins);
            }
        }
    }
}

/* ---- Steps ---- */

static void expect_same(const hw_shape *a, const hw_shape *b)
{
    size_t bytes = (size_t)a->rows * sizeof(int);
    ck_assert_int_eq(a->rows, b->rows);
    ck_assert_int_eq(a->neck_row, b->neck_row);
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        ck_assert_mem_eq(a->inset_sts[side], b->inset_sts[side], bytes);
        ck_assert((a->neck_halves[side] == NULL) == (b->neck_halves[side] == NULL));
        if (a->neck_halves[side] != NULL) {
            ck_assert_mem_eq(a->neck_halves[side], b->neck_halves[side], bytes);
        }
    }
}

/* Held stitches are worked again in a row that ends at their edge, so that the yarn comes to them
 * from inside (common practice, no source): the last as drawn, if it holds no more, or the first
 * above it. Rows begin by turns at the two edges. */
static void expect_back(const hw_shape_task *task, const hw_shape *shape, const hw_shape *again)
{
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        const int *inset = shape->inset_sts[side];
        int held = 0;
        for (int row = 1; row < shape->rows; row++) {
            bool holds = hw_shape_holds(task, (hw_side)side, row);
            held += holds ? inset[row] - inset[row - 1] : 0;
        }
        int last = shape->rows - 1;
        int back_row = last;
        while ((back_row % 2 == 0) == ((int)task->first_start == side) ||
               (back_row == last && last > 0 && inset[last] != inset[last - 1])) {
            back_row++;
        }
        int rows = held == 0 ? shape->rows : back_row + 1;
        ck_assert_int_eq(hw_shape_rows(shape, (hw_side)side), rows);
        for (int row = last; row < rows; row++) {
            int want = inset[last] - (row == rows - 1 ? held : 0);
            ck_assert_int_eq(hw_shape_inset(shape, row, (hw_side)side), want);
            ck_assert_int_eq(again->inset_sts[side][row], want);
        }
    }
}

/* What comes back in the last row as drawn. */
static int again_early(const hw_shape *shape, int side)
{
    return shape->back_row[side] < shape->rows ? shape->held_sts[side] : 0;
}

/* What the steps leave in the row of the last of each, as the piece or its half has it. */
static void expect_left(const hw_shape *shape, const hw_shape_step *step)
{
    int row = step->row + step->every * (step->times - 1);
    bool left = step->place == HW_AT_LEFT || step->place == HW_AT_NECK_LEFT;
    bool parted = shape->neck_halves[HW_LEFT] != NULL && row >= shape->neck_row;
    int want = 0;
    if (step->kind != HW_STEP_END) {
        want = parted ? hw_shape_half_sts(shape, row, left ? HW_LEFT : HW_RIGHT)
                      : hw_shape_sts(shape, row);
    }
    ck_assert_int_eq(step->left_sts, want);
}

static void expect_steps(const hw_shape_task *task, drawn_rows *k)
{
    hw_shape again = { 0 };
    ck_assert_int_eq(follow_steps(task, &k->steps, &k->arena, &again), HW_OK);
    ck_assert_int_eq(again.rows, hw_shape_most_rows(&k->shape));
    expect_back(task, &k->shape, &again);
    again.rows = k->shape.rows;
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        again.inset_sts[side][again.rows - 1] += again_early(&k->shape, side);
    }
    expect_same(&k->shape, &again);
    for (int i = 0; i < k->steps.count; i++) {
        const hw_shape_step *step = &k->steps.list[i];
        ck_assert_int_ge(step->times, 1);
        ck_assert((step->every == 0) == (step->times == 1));
        bool one = step->kind == HW_STEP_DECREASE || step->kind == HW_STEP_INCREASE;
        ck_assert(!one || step->sts == 1);
        expect_left(&k->shape, step);
        if (i > 0) {
            const hw_shape_step *last = step - 1;
            ck_assert(
                last->row < step->row || (last->row == step->row && last->place <= step->place));
        }
    }
    ck_assert_int_eq(k->steps.list[k->steps.count - 1].kind, HW_STEP_END);
}

/* ---- Pieces by chance ---- */

static void expect_turned(const hw_shape *shape, const hw_shape *turned)
{
    hw_shape back = *turned;
    back.inset_sts[HW_LEFT] = turned->inset_sts[HW_RIGHT];
    back.inset_sts[HW_RIGHT] = turned->inset_sts[HW_LEFT];
    back.neck_halves[HW_LEFT] = turned->neck_halves[HW_RIGHT];
    back.neck_halves[HW_RIGHT] = turned->neck_halves[HW_LEFT];
    expect_same(shape, &back);
}

static void try_piece(const drawn_piece *piece)
{
    drawn_rows k;
    drawn_rows turned;
    drawn_piece other;
    drawn_turned(piece, &other);
    drawn_knit(&piece->task, &k);
    drawn_knit(&other.task, &turned);
    ck_assert_int_eq(k.shape.rows, piece->task.rows); /* none ends in a point */
    drawn_bound(&piece->task, &k.shape);
    expect_neck(&piece->task, &k.shape);
    expect_changes(&piece->task, &k.shape);
    expect_steps(&piece->task, &k);
    expect_turned(&k.shape, &turned.shape);
    ck_assert_int_eq(k.steps.count, turned.steps.count);
    drawn_close(&k);
    drawn_close(&turned);
}

enum { ROUNDS = 700 }; /* of each kind, each worked in two of four ways */

static void by_chance(drawn_kind kind, unsigned state)
{
    for (int round = 0; round < ROUNDS; round++) {
        drawn_piece piece;
        drawn_by_chance(&state, kind, &piece);
        for (int i = 0; i < 2; i++) {
            int way = (round + i) % 4;
            piece.task.right_side_rows = way % 2 == 1;
            piece.task.short_rows = way >= 2;
            piece.task.first_is_right_side = (piece.task.first_start == HW_RIGHT) == (way < 3);
            try_piece(&piece);
        }
    }
}

START_TEST(gentle_by_chance)
{
    by_chance(DRAWN_GENTLE, 3);
}
END_TEST

START_TEST(straight_by_chance)
{
    by_chance(DRAWN_STRAIGHT, 17);
}
END_TEST

START_TEST(curved_by_chance)
{
    by_chance(DRAWN_CURVED, 29);
}
END_TEST

/* Both edges of a symmetrical piece on a machine have the same rows where single stitches serve,
 * whichever side the carriage starts at; and the steps say so. */
START_TEST(gentle_edges_alike)
{
    unsigned state = 41;
    for (int round = 0; round < 300; round++) {
        drawn_piece piece;
        drawn_by_chance(&state, DRAWN_GENTLE, &piece);
        if (!piece.symmetric) {
            continue;
        }
        drawn_rows k;
        drawn_knit(&piece.task, &k);
        ck_assert_mem_eq(k.shape.inset_sts[HW_LEFT], k.shape.inset_sts[HW_RIGHT],
            (size_t)k.shape.rows * sizeof(int));
        for (int i = 0; i < k.steps.count; i++) {
            hw_step_place place = k.steps.list[i].place;
            bool apart = place == HW_AT_LEFT || place == HW_AT_RIGHT;
            /* the halves of a neck may differ by a row, and are then told one by one */
            ck_assert(!apart || k.shape.neck_halves[HW_LEFT] != NULL);
        }
        drawn_close(&k);
    }
}
END_TEST

/* The edge at which row 0 begins leads; the other has each row's inset in the same row, or, where
 * groups are, in the next. `first` is the row from which both are there. */
static void expect_followed(const int *leading, const int *following, int first, int rows)
{
    for (int row = first; row < rows; row++) {
        bool same = following[row] == leading[row];
        bool later = following[row] == (row > first ? leading[row - 1] : leading[first]);
        bool at_foot = row == 0 && following[row] == 0;
        ck_assert_msg(same || later || at_foot, "row %d: %d follows %d, %d", row, following[row],
            row > first ? leading[row - 1] : 0, leading[row]);
    }
    /* what both have lost in the end is the same, but for single stitches in the last row */
    ck_assert_int_le(abs(following[rows - 1] - leading[rows - 1]), 1);
}

/* The two edges of a symmetrical piece are mirror images, groups and short rows too, on a machine
 * and by hand; so are the two edges of its neck. */
static void mirrored(drawn_kind kind, unsigned state)
{
    for (int round = 0; round < 400; round++) {
        drawn_piece piece;
        drawn_by_chance(&state, kind, &piece);
        hw_shape_task *task = &piece.task;
        task->right_side_rows = round % 2 == 1;
        task->short_rows = round / 2 % 2 == 1;
        task->first_is_right_side = task->first_start == HW_RIGHT;
        if (!piece.symmetric) {
            continue;
        }
        drawn_rows k;
        drawn_knit(task, &k);
        hw_side lead = task->first_start;
        hw_side follow = lead == HW_LEFT ? HW_RIGHT : HW_LEFT;
        expect_followed(k.shape.inset_sts[lead], k.shape.inset_sts[follow], 0, k.shape.rows);
        if (k.shape.neck_halves[lead] != NULL) {
            /* the right half's neck edge is its left one */
            expect_followed(k.shape.neck_halves[follow], k.shape.neck_halves[lead],
                k.shape.neck_row, k.shape.rows);
        }
        drawn_close(&k);
    }
}

START_TEST(straight_mirrored)
{
    mirrored(DRAWN_STRAIGHT, 53);
}
END_TEST

START_TEST(curved_mirrored)
{
    mirrored(DRAWN_CURVED, 61);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { gentle_by_chance, straight_by_chance, curved_by_chance,
        gentle_edges_alike, straight_mirrored, curved_mirrored };
    return hw_check_run(hw_check_suite("shape by chance", tests, sizeof tests / sizeof tests[0]));
}
