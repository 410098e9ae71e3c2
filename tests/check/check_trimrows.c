/* Rows of trims: a neckband worked by hand on each kind of carriage, and trims of the tank.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/trimrows.h"

#include <stdio.h>

#include "example_rows.h"
#include "fixture.h"
#include "tank_edits.h"

enum { NECKBAND, ARMBAND, PLACKET };

static rows_example e;
static hw_row_trim trim;
static const int holes[] = { 4, 14 };

/* A neckband of 20 stitches, 2 + 6 + 2, a loose row, 10 of facing, two buttonholes of 2. */
static void setup(void)
{
    example_rows(&e);
    hw_hem hem = e.hem;
    hem.fold = HW_FOLD_LOOSE;
    hem.fold_rows = 1;
    example_rows_hem(&e, &hem);
    e.fit = (hw_fit){ .visible_sts = 20, .cast_on_sts = 20, .main_sts = 20 };
    e.place = (hw_place_on_bed){ .first = -10, .last = 9 };
    trim = (hw_row_trim){ .along = "20 up back right",
        .through = "",
        .holes = holes,
        .hole_count = 2,
        .hole_sts = 2,
        .hole_rows = { 6, 16 } };
    e.task.trim = &trim;
    e.task.plain_rows = 1;
}

/* A row as it is worked out by hand; dial 0: the loosest, below 0: none in hand knitting. */
typedef struct {
    int number;
    hw_row_kind kind;
    hw_side before;
    hw_row_setting setting;
    int card_read, chart_row;
    double dial;
} expected_row;

static void check_rows(const hw_rowplan *plan, const expected_row *rows, size_t count)
{
    ck_assert_int_eq(plan->count, 22);
    for (size_t i = 0; i < count; i++) {
        const hw_row *row = &plan->rows[rows[i].number - 1];
        ck_assert_int_eq(row->number, rows[i].number);
        ck_assert_msg(row->kind == rows[i].kind, "row %d: %d", row->number, row->kind);
        ck_assert_msg(row->before == rows[i].before, "row %d", row->number);
        ck_assert_msg(row->setting == rows[i].setting, "row %d", row->number);
        ck_assert_int_eq(row->card_read, rows[i].card_read);
        ck_assert_int_eq(row->chart_row, rows[i].chart_row);
        ck_assert_int_eq(row->sts, 20);
        ck_assert_int_eq(row->has_dial, rows[i].dial > 0);
        ck_assert_int_eq(row->loosest, row->kind == HW_ROW_FOLD);
        if (rows[i].dial > 0) {
            ck_assert_double_eq_tol(row->dial, rows[i].dial, 1e-12);
        }
    }
}

static void check_hands(const hw_rowplan *plan, int number, const hw_hand_kind *kinds, int count)
{
    const hw_row *row = &plan->rows[number - 1];
    ck_assert_msg(row->hand_count == count, "row %d: %d", number, row->hand_count);
    for (int k = 0; k < count; k++) {
        ck_assert_msg(plan->hands[row->first_hand + k].kind == kinds[k], "row %d, %d", number, k);
    }
}

#define HANDS(plan, number, ...)                                                                   \
    do {                                                                                           \
        static const hw_hand_kind kinds[] = { __VA_ARGS__ };                                       \
        check_hands(plan, number, kinds, (int)(sizeof kinds / sizeof kinds[0]));                   \
    } while (0)

static void check_holes(const hw_rowplan *plan, int number, int first, int second)
{
    const hw_row *row = &plan->rows[number - 1];
    const hw_handwork *hole = &plan->hands[row->first_hand];
    ck_assert_int_eq(hole[0].sts, 2);
    ck_assert_int_eq(hole[0].number, first);
    ck_assert_int_eq(hole[1].sts, 2);
    ck_assert_int_eq(hole[1].number, second);
}

/* Common practice, no source: face 2 + 6 + 2 from the edge, so band rows are 3 to 8, and row 2 sets
 * the card up; fold 11, facing 12 to 21, row 22 joins. The carriage begins at the right, so odd
 * rows do. Dials from H1 (https://clearwaterknits.com/hems): 5, facing 4, joining 6. */
START_TEST(preselecting_by_hand)
{
    static const expected_row rows[] = {
        { 1, HW_ROW_FACE, HW_RIGHT, HW_SET_PLAIN, 0, 0, 5 },
        { 2, HW_ROW_SETUP, HW_LEFT, HW_SET_SELECT, 1, 0, 5 },
        { 3, HW_ROW_BAND, HW_RIGHT, HW_SET_TWO_SELECT, 2, 1, 6.5 },
        { 7, HW_ROW_BAND, HW_RIGHT, HW_SET_TWO_SELECT, 6, 5, 6.5 },
        { 8, HW_ROW_BAND, HW_LEFT, HW_SET_TWO_LAST, 0, 6, 6.5 },
        { 9, HW_ROW_FACE, HW_RIGHT, HW_SET_PLAIN, 0, 0, 5 },
        { 10, HW_ROW_FACE, HW_LEFT, HW_SET_PLAIN, 0, 0, 5 },
        { 11, HW_ROW_FOLD, HW_RIGHT, HW_SET_PLAIN, 0, 0, 0 },
        { 12, HW_ROW_FACING, HW_LEFT, HW_SET_PLAIN, 0, 0, 4 },
        { 21, HW_ROW_FACING, HW_RIGHT, HW_SET_PLAIN, 0, 0, 4 },
        { 22, HW_ROW_JOINING, HW_LEFT, HW_SET_PLAIN, 0, 0, 6 },
    };
    hw_rowplan plan = example_rows_plan(&e, &arena);
    check_rows(&plan, rows, sizeof rows / sizeof rows[0]);
    ck_assert_int_eq(plan.hem_rows, 21);
    ck_assert_int_eq(plan.finding_count, 0);
    ck_assert(plan.has_needles && plan.trim == &trim);
    ck_assert_int_eq(plan.rows[5].first, -10);
    ck_assert_int_eq(plan.rows[5].last, 9);
    HANDS(&plan, 1, HW_HAND_PICK_UP, HW_HAND_WEIGHTS, HW_HAND_COUNTER);
    ck_assert_int_eq(plan.hands[0].sts, 20);
    ck_assert_int_eq(plan.hands[0].number, 0);
    ck_assert_int_eq(plan.hands[2].number, 0);
    HANDS(&plan, 2, HW_HAND_CARD_IN);
    HANDS(&plan, 3, HW_HAND_SECOND_IN, HW_HAND_CARD_GO);
    HANDS(&plan, 6, HW_HAND_HOLE, HW_HAND_HOLE);
    HANDS(&plan, 8, HW_HAND_SECOND_OUT);
    HANDS(&plan, 16, HW_HAND_HOLE, HW_HAND_HOLE);
    /* The right end hangs at the left of the bed. */
    check_holes(&plan, 6, 4, 14);
    check_holes(&plan, 16, 4, 14);
    HANDS(&plan, 22, HW_HAND_HANG_HEM, HW_HAND_WEIGHTS, HW_HAND_BIND_OFF);
    ck_assert(plan.hands[plan.rows[21].first_hand + 2].after);
}
END_TEST

/* The same without a set-up row; band row k reads row k. Without a card the needles are set by
 * hand. */
START_TEST(direct_and_picked_by_hand)
{
    static const expected_row direct[] = {
        { 2, HW_ROW_FACE, HW_LEFT, HW_SET_PLAIN, 0, 0, 5 },
        { 3, HW_ROW_BAND, HW_RIGHT, HW_SET_TWO_DIRECT, 1, 1, 6.5 },
        { 8, HW_ROW_BAND, HW_LEFT, HW_SET_TWO_DIRECT, 6, 6, 6.5 },
        { 9, HW_ROW_FACE, HW_RIGHT, HW_SET_PLAIN, 0, 0, 5 },
    };
    static const expected_row picked[] = {
        { 2, HW_ROW_FACE, HW_LEFT, HW_SET_PLAIN, 0, 0, 5 },
        { 3, HW_ROW_BAND, HW_RIGHT, HW_SET_TWO_PICKED, 0, 1, 6.5 },
        { 22, HW_ROW_JOINING, HW_LEFT, HW_SET_PLAIN, 0, 0, 6 },
    };
    e.machine.carriage = HW_CARRIAGE_DIRECT;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    check_rows(&plan, direct, sizeof direct / sizeof direct[0]);
    HANDS(&plan, 3, HW_HAND_CARD_IN, HW_HAND_SECOND_IN, HW_HAND_CARD_GO);
    e.machine.carriage = HW_CARRIAGE_NONE;
    plan = example_rows_plan(&e, &arena);
    check_rows(&plan, picked, sizeof picked / sizeof picked[0]);
    HANDS(&plan, 3, HW_HAND_SECOND_IN);
}
END_TEST

/* Common practice, no source: stitches are picked up and knitted with the right side facing, from
 * right to left, so row 1 is a wrong-side row and begins at the left; even rows show the right
 * side. Of 20 stitches the holes have 4 and 14 to their right, so 14 and 4 to their left: row 6
 * begins at the right, and so does 16; one in a row that begins at the left is counted from there.
 * A ring goes on in rounds, all of them right-side. */
START_TEST(hand_knitting)
{
    static const expected_row rows[] = {
        { 1, HW_ROW_FACE, HW_LEFT, HW_SET_NONE, 0, 0, -1 },
        { 2, HW_ROW_FACE, HW_RIGHT, HW_SET_NONE, 0, 0, -1 },
        { 3, HW_ROW_BAND, HW_LEFT, HW_SET_NONE, 0, 1, -1 },
        { 8, HW_ROW_BAND, HW_RIGHT, HW_SET_NONE, 0, 6, -1 },
        { 22, HW_ROW_JOINING, HW_RIGHT, HW_SET_NONE, 0, 0, -1 },
    };
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    e.task.place = NULL;
    trim.hole_rows[HW_LAYER_FACING] = 17;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    check_rows(&plan, rows, sizeof rows / sizeof rows[0]);
    for (int i = 0; i < plan.count; i++) {
        ck_assert_int_eq(plan.rows[i].right_side, i % 2 != 0);
    }
    ck_assert(!plan.has_needles);
    HANDS(&plan, 1, HW_HAND_PICK_UP);
    check_holes(&plan, 6, 4, 14);
    check_holes(&plan, 17, 4, 14); /* 20 - 14 - 2, and 20 - 4 - 2 */
    HANDS(&plan, 22, HW_HAND_HANG_HEM, HW_HAND_BIND_OFF);
    e.task.round_rows = plan.count;
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.round_rows, plan.count);
    for (int i = 0; i < plan.count; i++) {
        ck_assert(plan.rows[i].right_side && plan.rows[i].before == HW_RIGHT);
    }
}
END_TEST

/* Sewn down: no row joins; open stitches are taken off, a closed edge is bound off. A picot comes
 * before the first row of the facing, a purl row is the fold's own. */
START_TEST(other_closings_and_folds)
{
    e.task.closing = HW_CLOSING_SEWN;
    e.task.plain_rows = 0;
    hw_hem hem = e.hem;
    hem.fold = HW_FOLD_PICOT;
    hem.fold_rows = 0;
    example_rows_hem(&e, &hem);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.count, 20);
    HANDS(&plan, 11, HW_HAND_PICOT);
    HANDS(&plan, 20, HW_HAND_TAKE_OFF, HW_HAND_SEW_HEM);
    e.task.cast_on = HW_CAST_ON_WRAPPED;
    hem.fold = HW_FOLD_PURL;
    hem.fold_rows = 1;
    example_rows_hem(&e, &hem);
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[10].kind, HW_ROW_FOLD);
    HANDS(&plan, 11, HW_HAND_PURL);
    HANDS(&plan, 21, HW_HAND_BIND_OFF, HW_HAND_SEW_HEM);
}
END_TEST

/* A plain trim has no band, so no set-up row; one that is longer than the bed has no needles. */
START_TEST(plain_and_long)
{
    hw_hem hem = { .facing_rows = 6, .below_rows = 4, .above_rows = 2 };
    e.hem = hem;
    e.hem.face_rows = 6;
    e.hem.total_rows = 12;
    e.task.motif = NULL;
    e.task.place = NULL;
    trim.hole_count = 0;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.work, HW_WORK_PRESELECT);
    ck_assert_int_eq(plan.count, 13);
    ck_assert_int_eq(plan.finding_count, 0);
    for (int i = 0; i < 6; i++) {
        ck_assert_int_eq(plan.rows[i].kind, HW_ROW_FACE);
        ck_assert_int_eq(plan.rows[i].setting, HW_SET_PLAIN);
        ck_assert_int_eq(plan.rows[i].first, 0);
    }
    ck_assert(!plan.has_needles);
}
END_TEST

/* Rules 2 and 3: three plain rows before the band, or five rows of band, leave the second yarn at
 * the wrong side. */
START_TEST(findings)
{
    hw_hem hem = e.hem;
    hem.above_rows = 3;
    example_rows_hem(&e, &hem);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 1);
    ck_assert_int_eq(plan.findings[0].kind, HW_FINDING_BAND_START);
    ck_assert_int_eq(plan.findings[0].number, 4);
    ck_assert_str_eq(hw_row_finding_text(&plan.findings[0], &arena),
        "Row 4: the trim's band begins with the carriage at the left, and the second yarn waits at "
        "the other side. Way out: knit 2 or 4 plain rows before the band in place of 3.");
    hem.above_rows = 2;
    hem.band_rows = 5;
    example_rows_hem(&e, &hem);
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 1);
    ck_assert_int_eq(plan.findings[0].kind, HW_FINDING_BAND_END);
    ck_assert_int_eq(plan.findings[0].number, 7);
    ck_assert(plan.findings[0].of_trim);
}
END_TEST

static const hw_trimmed *trimmed(const tank *t, int number)
{
    return hw_trimming_at(t->plan.whole, 0, number);
}

static const hw_rowplan *rows_of(const tank *t, int number)
{
    return &trimmed(t, number)->rows;
}

/* By hand, from tank.c: 84 stitches, 21 figures of 2 with a plain stitch at each end. Centred they
 * are L42 to R42, and the first figure, after one stitch, on L41. A card of 24 columns begins at
 * L12, so L41 is its 19th before that, column 20, and figures stand every 4 columns: 4, 8, ... 20.
 * 8 rows of face, one of the fold, 7 of facing, one that joins. */
START_TEST(armband_of_the_tank)
{
    tank t;
    tank_open(&t, EDITS(TRIMS("  armband:\n" PAIRS)), NULL);
    const hw_trimmed *arm = trimmed(&t, ARMBAND);
    const hw_trim_kind *kind = &t.plan.whole->trims->kinds[ARMBAND];
    ck_assert_int_eq(kind->first, HW_RIGHT);
    ck_assert_int_eq(kind->card_start, 3);
    ck_assert_int_eq(arm->place.first, -42);
    ck_assert_int_eq(arm->rows.rows[0].first, -42);
    ck_assert_int_eq(arm->rows.rows[0].last, 41);
    ck_assert_int_eq(arm->rows.count, 17);
    ck_assert_int_eq(arm->rows.rows[1].kind, HW_ROW_SETUP);
    ck_assert_int_eq(arm->rows.rows[2].chart_row, 1);
    ck_assert_int_eq(arm->rows.rows[16].kind, HW_ROW_JOINING);
    ck_assert_str_eq(arm->row_trim.along, "50 up back right armhole, 34 down front left armhole");
    ck_assert_str_eq(arm->row_trim.through, "");
    tank_close(&t);
    /* Punched with the first figure in column 1, it stands where that is nearest: one needle left,
     * or three to the right. */
    tank_open(&t, EDITS(TRIMS("  armband:\n" PAIRS "      card start: 1\n")), NULL);
    ck_assert_int_eq(trimmed(&t, ARMBAND)->place.first, -41);
    ck_assert_int_eq(t.plan.whole->trims->kinds[ARMBAND].card_start, 0);
    tank_close(&t);
}
END_TEST

/* By hand: 50 cm with 19.8 stitches in 10 cm are 99: 25 figures of 2 with gaps of 2 are 98, and the
 * stitch over lies at the upper end. One hole of 2 would lie after 48 of the 99; the gaps nearest
 * to it begin after 46 and after 50, and the lower is taken. A left edge is counted from its left
 * end, so 99 - 46 - 2 = 51 stitches lie to its right. Face of 8 rows, the hole made with
 * row 5 and 4 rows from the fold: 2 of 1/3 cm and 2 of 1/2 are 5/3 cm, 5 rows of the facing at 30
 * in 10 cm. It is made with row 8 + 1 + 5 + 1 = 15. L49 to R50, so needles 2 and 3 from the middle,
 * R3 and R4. */
START_TEST(placket_of_the_tank)
{
    tank t;
    tank_open(&t,
        EDITS(
            TRIMS("  placket:\n    gauge: {stitches: 19.8, rows: 20}\n    buttonholes: 1\n" PAIRS)),
        NULL);
    const hw_trimmed *placket = trimmed(&t, PLACKET);
    ck_assert_int_eq(t.plan.whole->trims->kinds[PLACKET].first, HW_LEFT);
    ck_assert_int_eq(placket->fit.margin[HW_LEFT], 0);
    ck_assert_int_eq(placket->fit.margin[HW_RIGHT], 1);
    ck_assert_int_eq(placket->holes.holes[0].below_sts, 46);
    ck_assert_str_eq(placket->row_trim.along, "99 down front left");
    ck_assert_str_eq(placket->row_trim.through, "the folded hem");
    static const int numbers[] = { 5, 14 };
    for (int i = 0; i < 2; i++) {
        const hw_row *row = &placket->rows.rows[numbers[i] - 1];
        const hw_handwork *hole = &placket->rows.hands[row->first_hand];
        ck_assert_int_eq(row->hand_count, 1);
        ck_assert_int_eq(hole->kind, HW_HAND_HOLE);
        ck_assert_int_eq(row->first + hole->number, 2);
    }
    tank_close(&t);
}
END_TEST

/* Two trims with one figure share its card. By hand: alone the placket of 99 stitches would stand
 * from L49 with the figures in columns 1, 5, ..., half a needle off the middle; from L50 it is as
 * near, and its first figure, after one stitch, on L49 and so in column 12, as the armband's are in
 * 4, 8, 12 and so on. */
START_TEST(one_card_for_two)
{
    tank t;
    char edit[600];
    (void)snprintf(edit, sizeof edit,
        "trims:\n  armband:\n%s  placket:\n    gauge: {stitches: 19.8, rows: 20}\n%schoices:",
        PAIRS, PAIRS);
    tank_open(&t, EDITS({ "choices:", edit }), NULL);
    ck_assert_int_eq(t.plan.whole->trims->kinds[ARMBAND].card_start, 3);
    ck_assert_int_eq(t.plan.whole->trims->kinds[PLACKET].card_start, 3);
    ck_assert_int_eq(trimmed(&t, ARMBAND)->place.first, -42);
    ck_assert_int_eq(trimmed(&t, PLACKET)->place.first, -50);
    tank_close(&t);
}
END_TEST

/* From the header: along both halves of a neck, named together from left to right; a ring by hand
 * goes on in rounds, and on the bed it is flat. Dials: H1, https://clearwaterknits.com/hems . */
START_TEST(neckband_of_the_tank)
{
    tank t;
    tank_open(&t,
        EDITS(TRIMS("  neckband: {gauge: {dial: 6, stitches: 20, rows: 30}}\n"
                    "  placket: {gauge: {stitches: 50, rows: 75}}\n")),
        NULL);
    ck_assert_int_eq(t.plan.whole->trims->kinds[NECKBAND].first, HW_LEFT);
    ck_assert_str_eq(
        trimmed(&t, NECKBAND)->row_trim.along, "40 down back neck right, 40 up back neck left");
    const hw_rowplan *neck = rows_of(&t, NECKBAND);
    ck_assert(neck->round_rows == 0);
    ck_assert_int_eq(neck->count, 6 + 1 + 5 + 1);
    static const double dials[] = { [0] = 6, [7] = 5, [12] = 7 };
    for (int i = 0; i < 13; i += i == 7 ? 5 : 7) {
        ck_assert(neck->rows[i].has_dial);
        ck_assert_double_eq_tol(neck->rows[i].dial, dials[i], 1e-12);
    }
    /* 250 stitches on 200 needles. */
    ck_assert(!rows_of(&t, PLACKET)->has_needles);
    ck_assert_int_eq(rows_of(&t, PLACKET)->rows[0].sts, 250);
    tank_close(&t);
    tank_open(&t,
        EDITS({ "machine: standard", "machine: hand" },
            TRIMS("  placket: {gauge: {stitches: 90, rows: 135}}\n")),
        NULL);
    ck_assert_int_eq(rows_of(&t, NECKBAND)->round_rows, rows_of(&t, NECKBAND)->count);
    ck_assert_int_eq(rows_of(&t, ARMBAND)->round_rows, 0);
    /* No bed, so none is too short. */
    ck_assert(!trimmed(&t, PLACKET)->too_long);
    ck_assert_int_eq(tank_notes(&t.plan, "stitches and the bed"), 0);
    tank_close(&t);
}
END_TEST

/* By hand: 50 cm with 49.6 stitches in 10 cm are 248, 62 figures of 2 with gaps of 2 and a plain
 * stitch at each end, on 200 needles. They part behind 124, in the middle of a gap: twice 125 with
 * the seam's stitch. Figures begin on needles that columns 1, 5, 9 ... work, L12, L8, L4, R1 and so
 * on, behind one stitch of the first length and behind two of the second: from L62 the second
 * stands in the middle as it is, and the first from L61. So one card serves both. */
START_TEST(lengths_by_the_card)
{
    tank t;
    tank_open(&t, EDITS(TRIMS("  placket:\n    gauge: {stitches: 49.6, rows: 20}\n" PAIRS)), NULL);
    const hw_trimmed *placket = trimmed(&t, PLACKET);
    ck_assert_int_eq(placket->pickup.chosen.sts, 248);
    ck_assert_int_eq(placket->lengths.count, 2);
    ck_assert_int_eq(placket->lengths.sts[0], 125);
    ck_assert_int_eq(placket->lengths.sts[1], 125);
    ck_assert_int_eq(placket->lengths.first[0], -61);
    ck_assert_int_eq(placket->lengths.first[1], -62);
    ck_assert(!t.plan.whole->trims->kinds[PLACKET].free_start);
    ck_assert_int_eq(tank_notes(&t.plan, "placket: it nearly fills the bed"), 0);
    tank_close(&t);
}
END_TEST

/* The hem of the trim says how it is closed, else the project's, whatever else it says. */
START_TEST(closings_of_the_tank)
{
    tank t;
    tank_open(&t,
        EDITS({ "fold: none}", "fold: none, cast-on: wrapped edge, closing: sewn}" },
            TRIMS("  placket: {hem: {depth: 2 cm, cast-on: waste yarn, closing: hung}}\n"
                  "  armband: {hem: {depth: 2 cm}}\n")),
        NULL);
    ck_assert_int_eq(rows_of(&t, NECKBAND)->closing, HW_CLOSING_SEWN);
    ck_assert_int_eq(rows_of(&t, ARMBAND)->closing, HW_CLOSING_SEWN);
    ck_assert_int_eq(rows_of(&t, ARMBAND)->cast_on, HW_CAST_ON_WRAPPED);
    ck_assert_int_eq(rows_of(&t, PLACKET)->closing, HW_CLOSING_HUNG);
    ck_assert_int_eq(rows_of(&t, PLACKET)->cast_on, HW_CAST_ON_OPEN);
    tank_close(&t);
}
END_TEST

/* An odd number of band rows is told once for trims that share it, by their names. */
START_TEST(notes_on_sides)
{
    static const char odd[] = CHART("        oo\n        oo\n        oo\n", "2");
    tank t;
    char edit[400];
    (void)snprintf(edit, sizeof edit, "trims:\n  armband:\n%s  placket:\n%schoices:", odd, odd);
    tank_open(&t, EDITS({ "choices:", edit }), NULL);
    ck_assert_int_eq(tank_notes(&t.plan, "Armband and placket, one: the band has an odd"), 1);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { preselecting_by_hand, direct_and_picked_by_hand, hand_knitting,
        other_closings_and_folds, plain_and_long, findings, armband_of_the_tank,
        placket_of_the_tank, one_card_for_two, neckband_of_the_tank, lengths_by_the_card,
        closings_of_the_tank, notes_on_sides };
    return fixture_run("trim rows", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
