/* Rounds: a tube by hand, and pieces by chance against single stitches counted another way.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rounds.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "follow.h"
#include "outlined.h"
#include "support.h"
#include "tank_edits.h"

/* ---- Pieces by chance ---- */

/* So many rows an edge can be followed with single stitches, within `hair` stitches: in each row
 * the insets that keep the bound are whole numbers one after the other, and those that can be come
 * to lie no farther than one beside those of the row before. */
static int followed(const hw_shape_task *task, hw_side side, double hair)
{
    const hw_edge_line *edge = &task->outline->edges[side];
    double inward = side == HW_LEFT ? task->sts_per_cm : -task->sts_per_cm;
    double base_sts = inward * drawn_below(edge, task->low_cm[0]);
    int low = 0;
    int high = 0;
    for (int row = 0; row < task->rows; row++) {
        drawn_range range = drawn_within(edge, task->low_cm[row], task->low_cm[row + 1]);
        double a_sts = inward * range.least_cm - base_sts;
        double b_sts = inward * range.most_cm - base_sts;
        int least = (int)ceil(fmin(a_sts, b_sts) - 0.5 - hair);
        int most = (int)floor(fmax(a_sts, b_sts) + 0.5 + hair);
        low = low - 1 > least ? low - 1 : least;
        high = high + 1 < most ? high + 1 : most;
        if (low > high) {
            return row;
        }
    }
    return task->rows;
}

/* No more rounds than that can be: a round takes a stitch at each end. */
static int most_rounds(const hw_shape_task *task)
{
    int right = followed(task, HW_RIGHT, 1e-6);
    int left = followed(task, HW_LEFT, 1e-6);
    return left < right ? left : right;
}

static bool is_gentle(const hw_shape_task *task, hw_side side, double low_cm, double high_cm)
{
    drawn_range range = drawn_within(&task->outline->edges[side], low_cm, high_cm);
    return (range.most_cm - range.least_cm) * task->sts_per_cm < 1 - 1e-6;
}

/* So many can be for certain: an edge moves by less than a stitch within each of them, and from
 * the middle of each to that of the next. */
static int sure_rounds(const hw_shape_task *task)
{
    const double *low_cm = task->low_cm;
    int row = 0;
    for (; row < task->rows; row++) {
        double middle_cm = (low_cm[row] + low_cm[row + 1]) / 2;
        double last_cm = row > 0 ? (low_cm[row - 1] + low_cm[row]) / 2 : low_cm[0];
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            if (!is_gentle(task, (hw_side)side, low_cm[row], low_cm[row + 1]) ||
                !is_gentle(task, (hw_side)side, last_cm, middle_cm)) {
                return row;
            }
        }
    }
    return row;
}

static void expect_changes(const hw_shape_task *task, const hw_shape *shape)
{
    for (int row = 1; row < shape->rows; row++) {
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            int change = abs(shape->inset_sts[side][row] - shape->inset_sts[side][row - 1]);
            bool home = row < task->round_rows || (row - task->round_rows) % 2 == 0;
            bool begins = row >= task->round_rows && home == (side == HW_RIGHT);
            bool held = hw_shape_holds(task, (hw_side)side, row);
            ck_assert(!held || row >= task->round_rows);
            ck_assert_msg(change <= 1 || begins || held, "row %d of %d rounds changes by %d", row,
                task->round_rows, change);
            ck_assert_msg(change == 0 || home || begins || held, "wrong side, row %d", row);
        }
    }
}

static void expect_steps(const hw_shape_task *task, drawn_rows *k)
{
    hw_shape again = { 0 };
    size_t bytes = (size_t)task->rows * sizeof(int);
    ck_assert_int_eq(follow_steps(task, &k->steps, &k->arena, &again), HW_OK);
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        ck_assert_mem_eq(k->shape.inset_sts[side], again.inset_sts[side], bytes);
    }
    for (int i = 0; i < k->steps.count; i++) {
        const hw_shape_step *step = &k->steps.list[i];
        bool single = step->kind == HW_STEP_DECREASE || step->kind == HW_STEP_INCREASE;
        bool end = step->kind == HW_STEP_END;
        ck_assert(single || end || step->row >= task->round_rows);
    }
}

/* Whether so many rounds can be; what comes of them is checked. */
static bool try_rounds(hw_shape_task *task, int rounds)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_shape shape = { 0 };
    task->round_rows = rounds;
    hw_check_open(&arena, &heap, 0, false);
    hw_status status = hw_shape_make(task, &arena, &shape, NULL);
    ck_assert(status == HW_OK || status == HW_ERR_INTERNAL);
    hw_check_close(&arena, &heap);
    if (status == HW_OK) {
        drawn_rows k;
        drawn_knit(task, &k);
        drawn_bound(task, &k.shape);
        expect_changes(task, &k.shape);
        expect_steps(task, &k);
        drawn_close(&k);
    }
    return status == HW_OK;
}

enum { PIECES_EACH = 120 };

static void by_chance(drawn_kind kind, unsigned state)
{
    for (int i = 0; i < PIECES_EACH; i++) {
        drawn_piece piece;
        drawn_by_chance(&state, kind, &piece);
        hw_shape_task *task = &piece.task;
        task->first_start = HW_RIGHT;
        task->right_side_rows = task->first_is_right_side = true;
        drawn_rows flat;
        drawn_knit(task, &flat);
        int end = flat.shape.neck_row < flat.shape.rows ? flat.shape.neck_row : flat.shape.rows;
        drawn_close(&flat);
        bool serve = true; /* where so many do not, more do not */
        for (int rounds = 0; rounds <= end; rounds += 1 + rounds / 8) {
            bool good = try_rounds(task, rounds);
            ck_assert_msg(good || rounds > sure_rounds(task), "%d rounds do not serve", rounds);
            ck_assert_msg(!good || (serve && rounds <= most_rounds(task)), "%d rounds do", rounds);
            serve = good;
        }
    }
}

START_TEST(gentle_by_chance)
{
    by_chance(DRAWN_GENTLE, 5);
}
END_TEST

START_TEST(straight_by_chance)
{
    by_chance(DRAWN_STRAIGHT, 19);
}
END_TEST

START_TEST(curved_by_chance)
{
    by_chance(DRAWN_CURVED, 31);
}
END_TEST

/* ---- The tank ---- */

/* clang-format off */
#define BY_HAND { "machine: standard", "machine: hand" }
#define IN_ROUNDS { "choices: {", "choices: {in rounds: yes, " }
/* clang-format on */

static const hw_rowplan *rows_of(const tank *t, int piece)
{
    return &t->plan.rows[piece];
}

/* By hand, from tank.c: front and back are 80 stitches each without edge stitches, 160 in a round.
 * The back's armholes, moved to 30.1 cm, are bound off in row 78 above the hem's 20 rows, which
 * goes from 30 to 30.33 cm: number 99. So both go on in rows from there on: the back without its
 * 10 at the right, then without the 10 at the left; the front, whose side goes up to 33 cm, with
 * all of its own, and its side is sewn from there on. The neck's row 108, number 129, is 30 rows
 * above number 99: a right-side row, which begins with the right half. The sleeve is sewn to
 * nothing. */
START_TEST(tank_in_rounds)
{
    tank t;
    tank_open(&t, EDITS(BY_HAND, IN_ROUNDS), EDITS({ "armhole: {is: 20", "armhole: {is: 19.9" }));
    const hw_rowplan *back = rows_of(&t, TANK_BACK);
    const hw_rowplan *front = rows_of(&t, TANK_FRONT);
    ck_assert_int_eq(back->round_rows, 98);
    ck_assert_int_eq(front->round_rows, 98);
    ck_assert_int_eq(rows_of(&t, TANK_SLEEVE)->round_rows, 0);
    ck_assert_ptr_null(rows_of(&t, TANK_SLEEVE)->tube);
    ck_assert_ptr_eq(back->tube, front->tube);
    ck_assert_int_eq(back->tube->count, 2);
    ck_assert_str_eq(back->tube->names[0], "back");
    ck_assert_str_eq(back->tube->names[1], "front");
    ck_assert_int_eq(back->slice, 0);
    ck_assert_int_eq(front->slice, 1);
    for (int r = 0; r < 98; r++) {
        ck_assert_int_eq(back->tube->sts[r], 160);
        ck_assert_int_eq(back->rows[r].sts, 80);
        ck_assert(back->rows[r].right_side && front->rows[r].right_side);
    }
    ck_assert_int_eq(back->rows[98].sts, 70);
    ck_assert_int_eq(back->rows[99].sts, 60);
    ck_assert_int_eq(front->rows[98].sts, 80);
    ck_assert(back->rows[98].right_side && !back->rows[99].right_side);
    ck_assert_int_eq(back->rows[128].number, 129);
    ck_assert(back->rows[128].part == HW_PART_RIGHT && back->rows[128].right_side);
    ck_assert_int_eq(tank_notes(&t.plan, "Back and front: worked in rounds together"), 1);
    ck_assert_int_eq(tank_notes(&t.plan, "Sleeve: worked in rows, because the left edge of"), 1);
    ck_assert_int_eq(tank_notes(&t.plan, "rounds end below the top of the edges"), 1);
    tank_close(&t);
}
END_TEST

/* By hand: without an outline of the front, that piece ends with its joining row, number 21. */
START_TEST(nothing_drawn)
{
    tank t;
    tank_open(&t, EDITS(BY_HAND, IN_ROUNDS),
        EDITS({ "        - {across: 0.25 x chest, up: 33 cm}\n"
                "        - {stretch: armhole, across: 0.25 x chest, up: length}\n",
                  "" },
            { "  front:\n    band width: 0.5 x finished chest\n    outline:\n      right:\n",
                "  front:\n    band width: 0.5 x finished chest\n" },
            { "  - back left side to front right side\n", "" },
            { "  armband:\n    along: [back right armhole, front left armhole]\n",
                "  armband:\n    along: [back right armhole]\n" },
            { "  placket: {along: [front left]}\n", "" }));
    ck_assert_int_eq(rows_of(&t, TANK_FRONT)->round_rows, 21);
    ck_assert_int_eq(rows_of(&t, TANK_BACK)->round_rows, 21);
    ck_assert_int_eq(tank_notes(&t.plan, "rounds end below the top of the edges"), 1);
    tank_close(&t);
}
END_TEST

/* A band on the back alone, or lower on the back than on the front, cannot go round. */
START_TEST(bands_round_the_tube)
{
    tank t;
    hw_err err = { 0 };
    hw_status status = tank_try(
        &t, EDITS(BY_HAND, IN_ROUNDS, BANDS(BAND("belt", "back", "above fold: 20"))), NULL, &err);
    ck_assert_int_eq(status, HW_ERR_RANGE);
    ck_assert_ptr_nonnull(strstr(err.text, "size one: the band `belt` has to lie in the same"));
    ck_assert_int_gt(err.line, 0);
    tank_close(&t);
    status = tank_try(&t,
        EDITS(BY_HAND, IN_ROUNDS, BANDS(BAND("belt", "[back, front]", "below underarm: 2"))), NULL,
        &err);
    ck_assert_int_eq(status, HW_ERR_RANGE);
    tank_close(&t);
    /* 80 stitches: 20 repeats of 4, 1 and 1 plain at the ends: the gap of 2 is whole. */
    tank_open(&t, EDITS(BY_HAND, IN_ROUNDS, BANDS(BAND("belt", "[back, front]", "above fold: 20"))),
        NULL);
    ck_assert_int_eq(tank_notes(&t.plan, "Band belt, round from"), 0);
    tank_close(&t);
    /* Above the rounds each piece has its own: nothing to refuse. */
    tank_open(&t, EDITS(BY_HAND, IN_ROUNDS, BANDS(BAND("belt", "front", "above fold: 36"))), NULL);
    tank_close(&t);
}
END_TEST

/* With a gap of 1 the 80 stitches are 27 repeats of 3 less one gap, and no stitch is left for the
 * gap at either marker; by hand. */
START_TEST(band_with_a_break)
{
    tank t;
    tank_open(&t,
        EDITS(BY_HAND, IN_ROUNDS,
            BANDS(
                "  belt:\n    on: [back, front]\n    above fold: 20\n" CHART("        oo\n", "1"))),
        NULL);
    ck_assert_int_eq(
        tank_notes(&t.plan, "Band belt, round from back to front, one: the gap between the "
                            "motifs is up to 1 stitch off at the marker."),
        1);
    ck_assert_int_eq(tank_notes(&t.plan, "Band belt, round from front to back"), 1);
    tank_close(&t);
}
END_TEST

/* By hand: equal plain ends of a sleeve make an even sum, and a gap of 1 is odd, so the band has a
 * break where the sleeve meets itself. The other bands go on unbroken: 1 and 1 for a gap of 2. */
START_TEST(hem_with_a_break)
{
    tank t;
    tank_open(&t, EDITS(BY_HAND, IN_ROUNDS), NULL);
    ck_assert_int_eq(tank_notes(&t.plan, "at the marker"), 0);
    tank_close(&t);
    tank_open(&t,
        EDITS(BY_HAND, { "choices: {", "choices: {in rounds: yes, always centred: yes, " },
            { "gap: 2", "gap: 1" }),
        EDITS({ "seams: [", "seams: [sleeve left to sleeve right, " }));
    ck_assert_int_eq(
        tank_notes(&t.plan, "Sleeve left to sleeve right, one: at the marker the gap"), 1);
    ck_assert_int_eq(tank_notes(&t.plan, "is up to 1 stitch (5 mm) off;"), 1);
    tank_close(&t);
}
END_TEST

/* By hand: repeats of 3 run unbroken round a sleeve only where it has a multiple of 3 stitches; 51
 * for 25.5 cm is odd, so one stitch of the picot's round stays plain. */
START_TEST(odd_picot)
{
    tank t;
    tank_open(&t,
        EDITS(BY_HAND, { "choices: {", "choices: {in rounds: yes, unbroken seams: yes, " },
            { "gap: 2", "gap: 1" }, { "fold: none", "fold: picot" }),
        EDITS({ "seams: [", "seams: [sleeve left to sleeve right, " },
            { "wrist: {is: 24 cm}", "wrist: {is: 25.5 cm}" }));
    ck_assert_int_eq(rows_of(&t, TANK_SLEEVE)->rows[0].sts, 51);
    ck_assert_int_eq(tank_notes(&t.plan, "sleeve, one: the round has an odd number"), 1);
    ck_assert_int_eq(tank_notes(&t.plan, "Sleeve: worked in rounds, with no edge stitches"), 1);
    tank_close(&t);
}
END_TEST

START_TEST(bed_says_so)
{
    tank t;
    tank_open(&t, EDITS(IN_ROUNDS), NULL);
    ck_assert_int_eq(tank_notes(&t.plan, "`in rounds` is for hand knitting"), 1);
    ck_assert_int_eq(rows_of(&t, TANK_BACK)->round_rows, 0);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { gentle_by_chance, straight_by_chance, curved_by_chance,
        tank_in_rounds, nothing_drawn, bands_round_the_tube, band_with_a_break, hem_with_a_break,
        odd_picot, bed_says_so };
    return hw_check_run(hw_check_suite("rounds", tests, sizeof tests / sizeof tests[0]));
}
