/* Row plans from a plan's parts: bands in the order of knitting, marks at the underarm.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rowing.h"

#include <string.h>

#include "core/aside.h"
#include "support.h"
#include "tank_edits.h"

static const hw_rowplan *rows_of(const tank *t, int piece)
{
    hw_plan_piece at = hw_plan_find(t->plan.whole, piece);
    return &at.plan->rows[at.piece];
}

/* Number of the row before which both edges are marked; 0: none. */
static int marked(const hw_rowplan *rows)
{
    int number = 0;
    for (int i = 0; i < rows->count; i++) {
        const hw_row *row = &rows->rows[i];
        for (int k = 0; k < row->hand_count; k++) {
            const hw_handwork *hand = &rows->hands[row->first_hand + k];
            if (hand->kind == HW_HAND_MARK) {
                ck_assert_int_eq(number, 0);
                number = row->number + hand->after;
            }
        }
    }
    return number;
}

/* First row with this row of a band's chart; 0: none. */
static int chart_row(const hw_rowplan *rows, int band, int chart_row)
{
    for (int i = 0; i < rows->count; i++) {
        if (rows->rows[i].band == band && rows->rows[i].chart_row == chart_row) {
            return rows->rows[i].number;
        }
    }
    return 0;
}

/* By hand, from tank.c: 20 rows of hem and 138 above it, 30 of them once for each half; the
 * underarm is where the 79th row above the hem begins, number 99. The hem's band follows 10 rows of
 * facing and 2 plain ones. */
START_TEST(back_by_hand)
{
    tank t;
    tank_open(&t, NULL, NULL);
    const hw_rowplan *back = rows_of(&t, TANK_BACK);
    ck_assert_int_eq(back->hem_rows, 20);
    ck_assert_int_eq(back->count, 20 + 138 + 30);
    ck_assert_int_eq(back->rows[back->count - 1].number, 158);
    ck_assert_int_eq(marked(back), 0); /* ten stitches are bound off there: it shows by itself */
    ck_assert_int_eq(chart_row(back, 0, 1), 13);
    ck_assert_int_eq(chart_row(back, 0, 4), 16);
    ck_assert_int_eq(back->start, HW_RIGHT);
    /* The sleeve's side ends at its top: there is no row to mark. Its 108 rows are not parted. */
    ck_assert_int_eq(marked(rows_of(&t, TANK_SLEEVE)), 0);
    ck_assert_int_eq(rows_of(&t, TANK_SLEEVE)->count, 128);
    tank_close(&t);
}
END_TEST

/* By hand, from the suite of drafts: rows 48 and 64 above the hem are numbers 69 and 85, whatever
 * their order in the project; the lower one is the first band above the hem's. The front carries
 * one of them. Underarm: row 74, number 95. */
START_TEST(bands_from_below)
{
    tank t;
    tank_open(&t,
        EDITS(BANDS(BAND("belt", "[back, front]", "below underarm: 2") BAND("yoke", "back",
            "above fold: "
            "20"))),
        EDITS({ "up: 33 cm", "up: 30 cm" }));
    const hw_rowplan *back = rows_of(&t, TANK_BACK);
    ck_assert_int_eq(chart_row(back, 1, 1), 69);
    ck_assert_int_eq(chart_row(back, 1, 4), 72);
    ck_assert_int_eq(chart_row(back, 2, 1), 85);
    ck_assert_int_eq(marked(back), 0);
    const hw_rowplan *front = rows_of(&t, TANK_FRONT);
    ck_assert_int_eq(chart_row(front, 1, 1), 20 + 66 + 1);
    ck_assert_int_eq(chart_row(front, 2, 1), 0);
    tank_close(&t);
}
END_TEST

/* The column of needle q is (q + 12) mod 24 (from the design of the card): where the rows of a band
 * are knitted, its first figure stands in the card's first column for it, or a whole repeat from
 * there. The belt is on pieces of 80 and 56 stitches; its card is punched one column from where the
 * first would need it. */
START_TEST(cards_higher_up)
{
    tank t;
    tank_open(&t, EDITS(BANDS(BAND("belt", "[back, sleeve]", "below underarm: 2"))), NULL);
    static const int pieces[] = { TANK_BACK, TANK_SLEEVE };
    hw_upper_band *belt = &t.plan.whole->uppers[0];
    belt->card_start = (belt->card_start + 1) % belt->motif.repeat;
    for (int i = 0; i < 2; i++) {
        hw_rowplan plan = { 0 };
        hw_upper *upper = &t.plan.drafts[pieces[i]].uppers[0];
        upper->aside = 0;
        hw_aside_find(&t.plan, pieces[i]);
        ck_assert_int_eq(hw_rowing_make(&t.plan, pieces[i], &t.arena, &plan, NULL), HW_OK);
        const hw_row *row = &plan.rows[plan.hem_rows + upper->first_row];
        ck_assert_int_eq(row->chart_row, 1);
        int first = row->first + row->figures.edge_sts[HW_RIGHT] + row->figures.plain_sts[HW_RIGHT];
        ck_assert_int_eq((first + 12 - belt->card_start) % belt->motif.repeat, 0);
        int moved = 0;
        for (int h = 0; h < row[-1].hand_count; h++) {
            const hw_handwork *hand = &plan.hands[row[-1].first_hand + h];
            moved = hand->kind == HW_HAND_MOVE ? hand->number : moved;
        }
        ck_assert_int_eq(moved, upper->aside);
        ck_assert_int_ge(row->first, row[-2].first + moved - 1);
        ck_assert(pieces[i] != TANK_BACK || (moved == 1 && row->first == row[-2].first + 1));
    }
    tank_close(&t);
}
END_TEST

/* A piece without an outline is planned to the joining row; one that mirrors another begins at the
 * other side; settings of the project go through. */
START_TEST(tasks)
{
    static const loading_edit garment[] = {
        { "    outline:\n      right:\n        - {across: 0.5 x wrist + 4 cm, up: 36 cm}\n"
          "        - {across: 0.5 x wrist + 4 cm, up: 40 cm}\n",
            "  mitten: {mirrors: sleeve}\n" },
        { "  - back left armhole and back right armhole to sleeve top, within 18 cm\n", "" },
        { NULL, NULL },
    };
    tank t;
    tank_open(&t,
        EDITS({ "edge stitches: 1",
                  "edge stitches: 1, carriage begins: left, second yarn: either side" },
            { "fold: none", "fold: none, cast-on: wrapped edge, closing: sewn" }),
        garment);
    const hw_rowplan *sleeve = rows_of(&t, TANK_SLEEVE);
    ck_assert_int_eq(sleeve->count, 21);
    ck_assert_int_eq(sleeve->start, HW_LEFT);
    ck_assert_int_eq(sleeve->cast_on, HW_CAST_ON_WRAPPED);
    ck_assert_int_eq(sleeve->closing, HW_CLOSING_SEWN);
    hw_rowplan_task task = hw_rowing_task(&t.plan, TANK_SLEEVE);
    ck_assert(task.either_side && !task.mirrored);
    task = hw_rowing_task(&t.plan, TANK_SLEEVE + 1);
    ck_assert(task.mirrored);
    ck_assert_ptr_null(task.shape);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { back_by_hand, bands_from_below, cards_higher_up, tasks };
    return hw_check_run(hw_check_suite("rowing", tests, sizeof tests / sizeof tests[0]));
}
