/* The row plan: hems worked by hand, and a carriage that is played through.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rowplan.h"
#include "example_rows.h"
#include "fixture.h"

static rows_example e;

static void setup(void)
{
    example_rows(&e);
}

/* A row as it is worked out by hand. */
typedef struct {
    int number;
    hw_row_kind kind;
    hw_side before;
    hw_row_setting setting;
    hw_row_card card;
    int card_read, card_view, chart_row;
    double dial;
} expected_row;

static void check_rows(const hw_rowplan *plan, const expected_row *rows, int count)
{
    for (int i = 0; i < count; i++) {
        const hw_row *row = &plan->rows[rows[i].number - 1];
        ck_assert_int_eq(row->number, rows[i].number);
        ck_assert_msg(row->kind == rows[i].kind, "row %d", row->number);
        ck_assert_msg(row->before == rows[i].before, "row %d", row->number);
        ck_assert_msg(row->after != rows[i].before, "row %d", row->number);
        ck_assert_msg(row->setting == rows[i].setting, "row %d", row->number);
        ck_assert_msg(row->card == rows[i].card, "row %d", row->number);
        ck_assert_int_eq(row->card_read, rows[i].card_read);
        ck_assert_int_eq(row->card_view, rows[i].card_view);
        ck_assert_int_eq(row->chart_row, rows[i].chart_row);
        ck_assert(row->has_dial);
        ck_assert_double_eq_tol(row->dial, rows[i].dial, 1e-12);
        ck_assert_int_eq(row->feeders[HW_FEEDER_FIRST], HW_YARN_MAIN);
        ck_assert_int_eq(row->feeders[HW_FEEDER_SECOND],
            row->kind == HW_ROW_BAND ? HW_YARN_CONTRAST : HW_YARN_NONE);
    }
}

/* Common practice, no source: 10 facing, 2 + 6 + 2. So band rows are 13 to 18, the set-up row is
 * the second plain row, 12, and reads card row 1; band row k, number 12 + k, reads row k + 1, and
 * the last reads none. Seven rows lie between the row read and the row in view. Odd rows begin at
 * the right. Dials from H1 (https://clearwaterknits.com/hems): 5, facing 4, joining 6. */
START_TEST(preselecting_by_hand)
{
    hw_rowplan plan = example_rows_plan(&e, &arena);
    static const expected_row rows[] = {
        { 1, HW_ROW_FACING, HW_RIGHT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 4 },
        { 10, HW_ROW_FACING, HW_LEFT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 4 },
        { 11, HW_ROW_BELOW, HW_RIGHT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 5 },
        { 12, HW_ROW_SETUP, HW_LEFT, HW_SET_SELECT, HW_CARD_HELD, 1, 8, 0, 5 },
        { 13, HW_ROW_BAND, HW_RIGHT, HW_SET_TWO_SELECT, HW_CARD_MOVING, 2, 9, 1, 6.5 },
        { 14, HW_ROW_BAND, HW_LEFT, HW_SET_TWO_SELECT, HW_CARD_MOVING, 3, 10, 2, 6.5 },
        { 17, HW_ROW_BAND, HW_RIGHT, HW_SET_TWO_SELECT, HW_CARD_MOVING, 6, 13, 5, 6.5 },
        { 18, HW_ROW_BAND, HW_LEFT, HW_SET_TWO_LAST, HW_CARD_UNREAD, 0, 0, 6, 6.5 },
        { 19, HW_ROW_ABOVE, HW_RIGHT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 5 },
        { 20, HW_ROW_ABOVE, HW_LEFT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 5 },
        { 21, HW_ROW_JOINING, HW_RIGHT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 6 },
        { 22, HW_ROW_MAIN, HW_LEFT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 5 },
    };
    ck_assert_int_eq(plan.count, 22);
    ck_assert_int_eq(plan.work, HW_WORK_PRESELECT);
    ck_assert_int_eq(plan.start, HW_RIGHT);
    ck_assert_int_eq(plan.hem_rows, 20);
    ck_assert_int_eq(plan.finding_count, 0);
    check_rows(&plan, rows, (int)(sizeof rows / sizeof rows[0]));
    ck_assert_int_eq(plan.rows[0].first, -11);
    ck_assert_int_eq(plan.rows[0].last, 10);
    ck_assert_int_eq(plan.rows[0].sts, 22);
    ck_assert_int_eq(plan.rows[12].fabric, HW_BAND);
    ck_assert_int_eq(plan.rows[9].fabric, HW_FACING);
    ck_assert_int_eq(plan.rows[11].fabric, HW_MAIN);
}
END_TEST

/* The same hem: no set-up row, band row k reads row k. A joined card of 12 rows: row 6 + 7 = 13 in
 * view is its row 1 again. A mirrored piece begins at the left. */
START_TEST(direct_by_hand)
{
    e.machine.carriage = HW_CARRIAGE_DIRECT;
    e.task.card_rows = 12;
    e.task.mirrored = true;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    static const expected_row rows[] = {
        { 1, HW_ROW_FACING, HW_LEFT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 4 },
        { 12, HW_ROW_BELOW, HW_RIGHT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 5 },
        { 13, HW_ROW_BAND, HW_LEFT, HW_SET_TWO_DIRECT, HW_CARD_MOVING, 1, 8, 1, 6.5 },
        { 17, HW_ROW_BAND, HW_LEFT, HW_SET_TWO_DIRECT, HW_CARD_MOVING, 5, 12, 5, 6.5 },
        { 18, HW_ROW_BAND, HW_RIGHT, HW_SET_TWO_DIRECT, HW_CARD_MOVING, 6, 1, 6, 6.5 },
        { 19, HW_ROW_ABOVE, HW_LEFT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 5 },
        { 21, HW_ROW_JOINING, HW_LEFT, HW_SET_PLAIN, HW_CARD_UNREAD, 0, 0, 0, 6 },
    };
    check_rows(&plan, rows, (int)(sizeof rows / sizeof rows[0]));
    ck_assert_int_eq(plan.finding_count, 0);
    e.machine.reader_offset = -1; /* not known */
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[12].card_read, 1);
    ck_assert_int_eq(plan.rows[12].card_view, 0);
}
END_TEST

/* From the header: which machines read a card. */
START_TEST(ways_of_working)
{
    ck_assert_int_eq(hw_rowplan_work(&e.task), HW_WORK_PRESELECT);
    e.machine.carriage = HW_CARRIAGE_DIRECT;
    ck_assert_int_eq(hw_rowplan_work(&e.task), HW_WORK_DIRECT);
    e.motif.fits_card = false;
    ck_assert_int_eq(hw_rowplan_work(&e.task), HW_WORK_PICKED);
    e.motif.fits_card = true;
    e.machine.card_columns = 0;
    ck_assert_int_eq(hw_rowplan_work(&e.task), HW_WORK_PICKED);
    e.machine.card_columns = 24;
    e.machine.carriage = HW_CARRIAGE_NONE;
    ck_assert_int_eq(hw_rowplan_work(&e.task), HW_WORK_PICKED);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[11].kind, HW_ROW_BELOW);
    ck_assert_int_eq(plan.rows[12].setting, HW_SET_TWO_PICKED);
    ck_assert_int_eq(plan.rows[12].card, HW_CARD_UNREAD);
    ck_assert_int_eq(plan.rows[12].card_read, 0);
    e.machine.pitch_cm = 0;
    ck_assert_int_eq(hw_rowplan_work(&e.task), HW_WORK_HAND);
}
END_TEST

/* The hand work of a row: kinds in order, those after the row behind a stop. */
static void check_hands(const hw_rowplan *plan, int i, const hw_hand_kind *kinds, int before)
{
    const hw_row *row = &plan->rows[i];
    for (int k = 0; k < row->hand_count; k++) {
        const hw_handwork *work = &plan->hands[row->first_hand + k];
        ck_assert_msg(work->kind == kinds[k], "row %d, %d: %d", row->number, k, work->kind);
        ck_assert_int_eq(work->after, k >= before);
    }
}

#define HANDS(plan, i, before, ...)                                                                \
    do {                                                                                           \
        static const hw_hand_kind kinds[] = { __VA_ARGS__ };                                       \
        ck_assert_int_eq((plan)->rows[i].hand_count, (int)(sizeof kinds / sizeof kinds[0]));       \
        check_hands(plan, i, kinds, before);                                                       \
    } while (0)

/* From the headers and by the order in which a machine is worked: common practice, no source. */
START_TEST(hand_work)
{
    hw_rowplan plan = example_rows_plan(&e, &arena);
    HANDS(&plan, 0, 3, HW_HAND_CAST_ON, HW_HAND_WEIGHTS, HW_HAND_COUNTER);
    ck_assert_int_eq(plan.hands[0].sts, 22);
    ck_assert_int_eq(plan.hands[0].number, HW_WASTE_ROWS);
    ck_assert_int_eq(plan.hands[0].side, HW_RIGHT);
    ck_assert_int_eq(plan.hands[2].number, 0);
    HANDS(&plan, 11, 1, HW_HAND_CARD_IN);
    ck_assert_int_eq(plan.hands[plan.rows[11].first_hand].number, 1);
    HANDS(&plan, 12, 2, HW_HAND_SECOND_IN, HW_HAND_CARD_GO);
    HANDS(&plan, 17, 0, HW_HAND_SECOND_OUT);
    ck_assert_int_eq(plan.hands[plan.rows[17].first_hand].side, HW_RIGHT);
    HANDS(&plan, 20, 2, HW_HAND_HANG_HEM, HW_HAND_WEIGHTS);
    ck_assert_int_eq(plan.hand_count, 3 + 1 + 2 + 1 + 2);

    e.machine.carriage = HW_CARRIAGE_DIRECT;
    e.task.cast_on = HW_CAST_ON_WRAPPED;
    e.task.closing = HW_CLOSING_SEWN;
    hw_hem hem = e.hem;
    hem.fold = HW_FOLD_PICOT;
    example_rows_hem(&e, &hem);
    int marks[] = { 1 };
    e.task.marks = marks;
    e.task.mark_count = 1;
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.hands[0].number, 0);
    HANDS(&plan, 10, 1, HW_HAND_PICOT);
    ck_assert_int_eq(plan.rows[11].hand_count, 0);
    HANDS(&plan, 12, 3, HW_HAND_CARD_IN, HW_HAND_SECOND_IN, HW_HAND_CARD_GO);
    ck_assert_int_eq(plan.rows[20].kind, HW_ROW_MAIN);
    ck_assert_int_eq(plan.rows[20].hand_count, 0);
    HANDS(&plan, 21, 1, HW_HAND_MARK, HW_HAND_SEW_HEM);

    hem.fold = HW_FOLD_PURL;
    hem.fold_rows = 1;
    example_rows_hem(&e, &hem);
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[10].kind, HW_ROW_FOLD);
    ck_assert(!plan.rows[10].loosest && plan.rows[10].has_dial);
    HANDS(&plan, 10, 0, HW_HAND_PURL);
}
END_TEST

/* By hand: 24 + 2 cast on and 20 + 2 above the band are 4 fewer, 2 needles free at each end. */
START_TEST(rehung)
{
    e.fit.visible_sts = 24;
    e.fit.cast_on_sts = 26;
    e.place = (hw_place_on_bed){ .first = -13, .last = 12 };
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[17].sts, 26);
    ck_assert_int_eq(plan.rows[17].first, -13);
    ck_assert_int_eq(plan.rows[18].sts, 22);
    ck_assert_int_eq(plan.rows[18].first, -11);
    ck_assert_int_eq(plan.rows[18].last, 10);
    HANDS(&plan, 18, 1, HW_HAND_REHANG);
    const hw_handwork *work = &plan.hands[plan.rows[18].first_hand];
    ck_assert_int_eq(work->sts, 22);
    ck_assert_int_eq(work->number, 4);
    e.fit.visible_sts = 17; /* 19 - 22 = -3: one and a half needles more at each end */
    e.fit.cast_on_sts = 19;
    e.place = (hw_place_on_bed){ .first = -9, .last = 9 };
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[18].sts, 22);
    ck_assert_int_eq(plan.rows[18].first, -11);
    ck_assert_int_eq(plan.hands[plan.rows[18].first_hand].number, -3);
    e.task.mirrored = true; /* the odd needle at the other end */
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[18].first, -10);
    ck_assert_int_eq(plan.rows[18].last, 11);
}
END_TEST

/* By hand. The piece's left edge hangs at the right of the bed. Above the hem, row 0 is number 21.
 * Row 2 (23) begins at the right: 3 off there, R11 - 3 = R8. Row 3 (24): 3 off at the left, L8. Row
 * 6 (27) begins at the right, so the left half goes first: 2 of the 4 middle stitches lie right of
 * 0, it has R3 to R8. Row 8 (29): R4 to R8. Then the counter goes back to 26, and the right half
 * has L8 to L3 in 27, L8 to L4 in 29. */
START_TEST(shaped_and_parted)
{
    example_rows_shape(&e);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    static const struct {
        int i, number;
        hw_row_part part;
        int first, last;
    } rows[] = {
        { 20, 21, HW_PART_WHOLE, -11, 10 },
        { 22, 23, HW_PART_WHOLE, -11, 7 },
        { 23, 24, HW_PART_WHOLE, -8, 7 },
        { 25, 26, HW_PART_WHOLE, -8, 7 },
        { 26, 27, HW_PART_LEFT, 2, 7 },
        { 28, 29, HW_PART_LEFT, 3, 7 },
        { 29, 30, HW_PART_LEFT, 3, 7 },
        { 30, 27, HW_PART_RIGHT, -8, -3 },
        { 32, 29, HW_PART_RIGHT, -8, -4 },
        { 33, 30, HW_PART_RIGHT, -8, -4 },
    };
    ck_assert_int_eq(plan.count, 20 + 6 + 4 + 4);
    ck_assert_int_eq(plan.finding_count, 0);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const hw_row *row = &plan.rows[rows[i].i];
        ck_assert_int_eq(row->number, rows[i].number);
        ck_assert_int_eq(row->part, rows[i].part);
        ck_assert_int_eq(row->first, rows[i].first);
        ck_assert_int_eq(row->last, rows[i].last);
        ck_assert_int_eq(row->sts, rows[i].last - rows[i].first + 1);
        ck_assert_int_eq(row->before, rows[i].number % 2 != 0 ? HW_RIGHT : HW_LEFT);
    }
    HANDS(&plan, 22, 1, HW_HAND_SHAPE);
    ck_assert_ptr_eq(plan.hands[plan.rows[22].first_hand].step, &e.list[0]);
    HANDS(&plan, 26, 2, HW_HAND_HOLD_HALF, HW_HAND_SHAPE);
    ck_assert_int_eq(plan.hands[plan.rows[26].first_hand].sts, 6);
    ck_assert_ptr_eq(plan.hands[plan.rows[26].first_hand + 1].step, &e.list[2]);
    HANDS(&plan, 28, 1, HW_HAND_SHAPE);
    HANDS(&plan, 29, 0, HW_HAND_SHAPE);
    HANDS(&plan, 30, 2, HW_HAND_BACK_HALF, HW_HAND_COUNTER);
    const hw_handwork *back = &plan.hands[plan.rows[30].first_hand];
    ck_assert_int_eq(back[0].sts, 6);
    ck_assert_int_eq(back[0].side, HW_RIGHT);
    ck_assert_int_eq(back[1].number, 26);
    HANDS(&plan, 32, 1, HW_HAND_SHAPE);
    HANDS(&plan, 33, 0, HW_HAND_SHAPE);
    ck_assert_ptr_eq(plan.hands[plan.rows[33].first_hand].step, &e.list[4]);
}
END_TEST

/* By hand: as above, and one stitch less at the right edge from row 6 on, where the neck parts. The
 * half that waits has 6 stitches on hold; when it is taken up that one is worked off. */
START_TEST(half_back_before_its_shaping)
{
    example_rows_shape(&e);
    for (int row = 6; row < ROWS_MAIN; row++) {
        e.inset[HW_RIGHT][row]++;
    }
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.hands[plan.rows[26].first_hand].sts, 6);
    ck_assert_int_eq(plan.hands[plan.rows[30].first_hand].sts, 6);
    ck_assert_int_eq(plan.rows[30].sts, 5);
}
END_TEST

/* By hand: one stitch less from the joining row, 21, on. The 22 loops hang on the 22 stitches of
 * the row before it. */
START_TEST(hung_before_shaping)
{
    example_rows_shape(&e);
    for (int row = 0; row < ROWS_MAIN; row++) {
        e.inset[HW_RIGHT][row]++;
    }
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.hands[plan.rows[20].first_hand].kind, HW_HAND_HANG_HEM);
    ck_assert_int_eq(plan.hands[plan.rows[20].first_hand].sts, 22);
    ck_assert_int_eq(plan.rows[20].sts, 21);
}
END_TEST

/* A further band in row 3 above the hem, number 24, whose repeat the card does not take: no set-up
 * row, no card, the needles by hand; where the card takes it, row 23 is its set-up row. */
START_TEST(further_band_off_the_card)
{
    e.task.plain_rows = 12;
    hw_motif other = e.motif;
    hw_row_band band = { .row = 3, .motif = &other, .card_row = 1 };
    e.task.bands = &band;
    e.task.band_count = 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[22].kind, HW_ROW_SETUP);
    ck_assert_int_eq(plan.rows[23].setting, HW_SET_TWO_SELECT);
    other.fits_card = false;
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.work, HW_WORK_PRESELECT);
    ck_assert_int_eq(plan.rows[12].setting, HW_SET_TWO_SELECT);
    ck_assert_int_eq(plan.rows[22].kind, HW_ROW_MAIN);
    ck_assert_int_eq(plan.rows[22].setting, HW_SET_PLAIN);
    for (int i = 23; i < 23 + other.chart.rows; i++) {
        ck_assert_int_eq(plan.rows[i].kind, HW_ROW_BAND);
        ck_assert_int_eq(plan.rows[i].setting, HW_SET_TWO_PICKED);
        ck_assert_int_eq(plan.rows[i].card, HW_CARD_UNREAD);
    }
    HANDS(&plan, 23, 1, HW_HAND_SECOND_IN);
}
END_TEST

/* By hand: for the same band the piece is moved two needles to the right before its set-up row, 23,
 * from L11 to R11 to L9 to R13, and back before row 30; where the second yarn has come off. */
START_TEST(further_band_moved)
{
    e.task.plain_rows = 12;
    hw_row_band band = {
        .row = 3, .motif = &e.motif, .card_row = 1, .aside = 2, .back = true, .name = "belt"
    };
    e.task.bands = &band;
    e.task.band_count = 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    for (int i = 0; i < plan.count; i++) {
        int number = plan.rows[i].number;
        int aside = number >= 23 && number < 30 ? 2 : 0;
        ck_assert_int_eq(plan.rows[i].first, -11 + aside);
        ck_assert_int_eq(plan.rows[i].last, 10 + aside);
        ck_assert_int_eq(plan.rows[i].sts, 22);
    }
    HANDS(&plan, 22, 2, HW_HAND_MOVE, HW_HAND_CARD_IN);
    const hw_handwork *work = &plan.hands[plan.rows[22].first_hand];
    ck_assert_int_eq(work->number, 2);
    ck_assert_str_eq(work->band, "belt");
    ck_assert_int_eq(work[1].column, 0);
    HANDS(&plan, 29, 1, HW_HAND_MOVE);
    work = &plan.hands[plan.rows[29].first_hand];
    ck_assert_int_eq(work->number, -2);
    ck_assert_ptr_null(work->band);
    band = (hw_row_band){ .row = 3, .motif = &e.motif, .card_row = 1, .own_column = 4 };
    plan = example_rows_plan(&e, &arena);
    HANDS(&plan, 22, 1, HW_HAND_CARD_IN);
    ck_assert_int_eq(plan.hands[plan.rows[22].first_hand].column, 4);
}
END_TEST

/* By hand: a decrease in row 1 above the hem and every 2nd row after it, 3 times, is in 1, 3, 5. */
START_TEST(steps_that_repeat)
{
    example_rows_shape(&e);
    e.shape.neck_halves[HW_LEFT] = NULL;
    e.shape.neck_row = ROWS_MAIN;
    e.list[0] = (hw_shape_step){ HW_STEP_DECREASE, HW_AT_RIGHT, .row = 1, .every = 2, .times = 3,
        .sts = 1 };
    e.steps.count = 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.count, 30);
    for (int i = 20; i < 30; i++) {
        bool due = i == 21 || i == 23 || i == 25;
        int hem = i == 20 ? 2 : 0; /* hung, and weights moved */
        ck_assert_int_eq(plan.rows[i].hand_count, (due ? 1 : 0) + hem);
    }
}
END_TEST

/* Hand knitting: row 1 faces the right side and is worked from the right edge; odd rows all do.
 * A chart row without contrast leaves that yarn out. In rounds all rows do as row 1. */
START_TEST(hand_knitting)
{
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    e.task.place = NULL;
    e.task.mirrored = true;               /* means nothing here */
    e.motif_rows[6 - 2].contrast_sts = 0; /* chart row 2, from the bottom */
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.work, HW_WORK_HAND);
    ck_assert_int_eq(plan.count, 22);
    for (int i = 0; i < plan.count; i++) {
        const hw_row *row = &plan.rows[i];
        ck_assert_int_eq(row->right_side, i % 2 == 0);
        ck_assert_int_eq(row->before, i % 2 == 0 ? HW_RIGHT : HW_LEFT);
        ck_assert_int_eq(row->setting, HW_SET_NONE);
        ck_assert(row->kind != HW_ROW_SETUP && row->card_read == 0 && !row->has_dial);
        ck_assert_int_eq(row->sts, 22);
        ck_assert_int_eq(row->first, 0);
    }
    ck_assert_int_eq(plan.rows[12].chart_row, 1);
    ck_assert_int_eq(plan.rows[12].feeders[HW_FEEDER_SECOND], HW_YARN_CONTRAST);
    ck_assert_int_eq(plan.rows[13].chart_row, 2);
    ck_assert_int_eq(plan.rows[13].feeders[HW_FEEDER_SECOND], HW_YARN_NONE);
    ck_assert_int_eq(plan.hand_count, 2); /* cast on; join */
    hw_hem hem = e.hem;
    hem.fold = HW_FOLD_PURL;
    hem.fold_rows = 1;
    example_rows_hem(&e, &hem);
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 0);
    HANDS(&plan, 10, 1, HW_HAND_PURL);
    hw_row_above above = hw_rowplan_above(&e.task);
    ck_assert_int_eq(above.number, 22);
    ck_assert(!above.right_side && above.edge == HW_LEFT);
    e.task.round_rows = 23; /* 21 of the hem and 2 plain ones: all of them */
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.round_rows, 23);
    ck_assert_int_eq(plan.hand_count, 3); /* cast on; purl; join */
    for (int i = 0; i < plan.count; i++) {
        ck_assert(plan.rows[i].right_side && plan.rows[i].before == HW_RIGHT);
        ck_assert(plan.rows[i].after == HW_RIGHT);
    }
}
END_TEST

/* By hand: 20 rounds of hem and 2 above it; in number 23, a right-side row again, the right edge
 * binds off, in 24 the left one, and 27, as far from 23 as to be a right-side row too, parts the
 * piece. 22 stitches leave the rounds: 20 and an edge stitch at each end. */
START_TEST(rounds_then_rows)
{
    example_rows_shape(&e);
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    int *const inset[] = { e.shape.inset_sts[HW_LEFT], e.shape.inset_sts[HW_RIGHT] };
    e.shape.inset_sts[HW_LEFT] = inset[HW_RIGHT];
    e.shape.inset_sts[HW_RIGHT] = inset[HW_LEFT];
    e.list[0].place = HW_AT_RIGHT;
    e.list[1].place = HW_AT_LEFT;
    e.shape.first_start = HW_RIGHT;
    e.task.round_rows = 22;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 0);
    ck_assert_int_eq(plan.count, 20 + 6 + 4 + 4);
    for (int i = 0; i < plan.count; i++) {
        const hw_row *row = &plan.rows[i];
        ck_assert_int_eq(row->right_side, row->number <= 22 || row->number % 2 != 0);
        ck_assert_int_eq(row->before, row->right_side ? HW_RIGHT : HW_LEFT);
    }
    HANDS(&plan, 22, 2, HW_HAND_INTO_ROWS, HW_HAND_SHAPE);
    ck_assert_int_eq(plan.hands[plan.rows[22].first_hand].sts, 22);
    ck_assert_int_eq(plan.rows[22].sts, 19);
    HANDS(&plan, 23, 1, HW_HAND_SHAPE);
    ck_assert_int_eq(plan.rows[26].part, HW_PART_RIGHT);
    ck_assert_int_eq(plan.rows[30].part, HW_PART_LEFT);
}
END_TEST

/* By hand: a piece that its neck parts where rounds end is told once of the rows. */
START_TEST(rounds_up_to_the_neck)
{
    example_rows_shape(&e);
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    e.shape.first_start = HW_RIGHT;
    e.task.round_rows = 26;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    HANDS(&plan, 26, 3, HW_HAND_INTO_ROWS, HW_HAND_HOLD_HALF, HW_HAND_SHAPE);
    ck_assert_int_eq(plan.hands[plan.rows[26].first_hand].sts, 22 - 3 - 3);
    ck_assert_int_eq(plan.rows[30].number, 27);
    HANDS(&plan, 30, 1, HW_HAND_BACK_HALF);
}
END_TEST

/* A carriage played through: what stands out is knitted in two colours, what a selecting row reads
 * stands out for the next. Each band row is then knitted once, in order. */
static void play(const hw_rowplan *plan)
{
    int out = 0; /* the card row whose needles stand out */
    int next = 1;
    for (int i = 0; i < plan->count; i++) {
        const hw_row *row = &plan->rows[i];
        bool two = row->feeders[HW_FEEDER_SECOND] == HW_YARN_CONTRAST;
        int knitted = row->setting == HW_SET_TWO_DIRECT ? row->card_read : out;
        bool selects = row->setting == HW_SET_SELECT || row->setting == HW_SET_TWO_SELECT;
        ck_assert_int_eq(two, row->kind == HW_ROW_BAND);
        if (two) {
            ck_assert_int_eq(knitted, next);
            ck_assert_int_eq(row->chart_row, next);
            next++;
        } else {
            ck_assert_int_eq(out, 0);
        }
        out = selects ? row->card_read : 0;
    }
    ck_assert_int_eq(out, 0);
    ck_assert_int_eq(next, e.hem.band_rows + 1);
}

static void check_hem_rows(const hw_rowplan *plan)
{
    int of_kind[HW_ROW_KIND_COUNT] = { 0 };
    for (int i = 0; i < plan->count; i++) {
        const hw_row *row = &plan->rows[i];
        of_kind[row->kind]++;
        ck_assert_int_eq(row->number, i + 1);
        ck_assert_int_ne(row->before, row->after);
        ck_assert(i == 0 || row->before == row[-1].after);
    }
    int set_up = plan->work == HW_WORK_PRESELECT ? 1 : 0;
    ck_assert_int_eq(of_kind[HW_ROW_SETUP], set_up);
    ck_assert_int_eq(of_kind[HW_ROW_FACING], e.hem.facing_rows);
    ck_assert_int_eq(of_kind[HW_ROW_FOLD], e.hem.fold_rows);
    ck_assert_int_eq(of_kind[HW_ROW_BELOW] + set_up, e.hem.below_rows);
    ck_assert_int_eq(of_kind[HW_ROW_BAND], e.hem.band_rows);
    ck_assert_int_eq(of_kind[HW_ROW_ABOVE], e.hem.above_rows);
    ck_assert_int_eq(of_kind[HW_ROW_JOINING], 1);
}

START_TEST(hems_by_chance)
{
    unsigned state = 20260;
    for (int n = 0; n < 300; n++) {
        hw_hem hem = example_rows_chance(&state);
        example_rows_hem(&e, &hem);
        e.machine.carriage =
            hw_check_random(&state, 2) == 0 ? HW_CARRIAGE_DIRECT : HW_CARRIAGE_PRESELECTING;
        e.task.mirrored = hw_check_random(&state, 2) == 0;
        hw_rowplan plan = example_rows_plan(&e, &arena);
        check_hem_rows(&plan);
        play(&plan);
    }
}
END_TEST

static hw_status plan_rows(hw_arena *room)
{
    hw_rowplan plan = { .count = 77 };
    hw_status status = hw_rowplan_make(&e.task, room, &plan, NULL);
    ck_assert(status == HW_OK || plan.count == 77);
    return status;
}

/* Each request refused in turn: no plan, nothing left behind. */
START_TEST(no_memory)
{
    example_rows_shape(&e);
    ck_assert_int_gt(hw_check_refusals(plan_rows, false), 3);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { preselecting_by_hand, direct_by_hand, ways_of_working, hand_work,
        hung_before_shaping, half_back_before_its_shaping, further_band_off_the_card,
        further_band_moved, rehung, shaped_and_parted, steps_that_repeat, hand_knitting,
        rounds_then_rows, rounds_up_to_the_neck, hems_by_chance, no_memory };
    return fixture_run("row plan", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
