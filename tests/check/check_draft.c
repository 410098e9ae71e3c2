/* Drafts: rows stacked up to the top, bands between them, shaping, areas: the tank by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/draft.h"

#include <string.h>

#include "support.h"
#include "tank_edits.h"

static const double near_cm = 1e-9;

static const hw_draft *drafted(const tank *t, int piece)
{
    return hw_plan_draft(t->plan.whole, 0, piece);
}

/* Source: arithmetic in tank.c. */
START_TEST(back_by_hand)
{
    tank t;
    tank_open(&t, NULL, NULL);
    const hw_draft *back = drafted(&t, TANK_BACK);
    const hw_shape *shape = &back->shape;
    ck_assert(back->drawn);
    ck_assert_int_eq(back->task.rows, 138);
    ck_assert_int_eq(shape->visible_sts, 80);
    ck_assert_int_eq(shape->first_start, HW_LEFT);
    ck_assert_double_eq_tol(back->low_cm[0], 4, near_cm);
    ck_assert_double_eq_tol(back->low_cm[78], 30, near_cm);
    ck_assert_double_eq_tol(back->low_cm[138], 50, near_cm);
    /* 30 cm is where row 77 ends and row 78 begins: each edge goes in one of the two or, where that
     * one begins at the other edge, in the row beside them. */
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        ck_assert_int_eq(shape->inset_sts[side][76], 0);
        ck_assert_int_eq(shape->inset_sts[side][79], 10);
        ck_assert_int_eq(shape->inset_sts[side][137], 10);
    }
    ck_assert_int_eq(hw_shape_sts(&back->shape, 0), 80);
    ck_assert_int_eq(hw_shape_sts(&back->shape, 107), 60);
    ck_assert_int_eq(shape->neck_row, 108);
    ck_assert_int_eq(hw_shape_sts(&back->shape, 109), 20);
    ck_assert_int_eq(hw_shape_sts(&back->shape, 137), 20);
    ck_assert_double_eq_tol(back->area_cm2, 1600, 1e-6);
    tank_close(&t);
}
END_TEST

START_TEST(front_and_sleeve_by_hand)
{
    tank t;
    tank_open(&t, NULL, NULL);
    const hw_draft *front = drafted(&t, TANK_FRONT);
    ck_assert_int_eq(front->task.rows, 138);
    ck_assert_int_eq(front->shape.neck_row, 138);
    ck_assert_int_eq(hw_shape_sts(&front->shape, 137), 80);
    ck_assert_double_eq_tol(front->area_cm2, 2000, 1e-6);
    const hw_draft *sleeve = drafted(&t, TANK_SLEEVE);
    ck_assert_int_eq(sleeve->task.rows, 108);
    ck_assert_double_eq_tol(sleeve->area_cm2, 1120, 1e-6);
    /* A stitch every 12 rows: after 12 n rows n of them, and half a stitch is half a group. */
    for (int row = 0; row < 108; row++) {
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            int added = -sleeve->shape.inset_sts[side][row];
            ck_assert_int_le(added, row / 12 + 1);
            ck_assert_int_ge(added, row < 96 ? row / 12 : 8);
            ck_assert_int_le(added, 8);
        }
    }
    ck_assert_int_eq(hw_shape_sts(&sleeve->shape, 107), 64);
    tank_close(&t);
}
END_TEST

/* S2, worked example of a sleeve, http://designyourownsweater.blogspot.com/2007/01/sleeve.html :
 * 28 stitches and 40 rows in 10 cm; 26 cm are 72 stitches, 49 cm long are 196 rows; 56 cm at the
 * top are 156; 42 increases at each edge end 5 cm below the top, which leaves 176 rows, so every
 * 4th row 34 times and every 5th row 8 times. Here the edges begin where the 72 stitches put them
 * and end at 156 stitches. */
START_TEST(sleeve_published)
{
    static const hw_corner corners[] = {
        { .stretch = "side", .across = { .constant_cm = 156 / 5.6 }, .up = { .constant_cm = 44 } },
        { .stretch = "side", .across = { .constant_cm = 156 / 5.6 }, .up = { .constant_cm = 49 } },
    };
    static const hw_outline_rule rule = { .sides = { [HW_RIGHT] = { corners, 2 } } };
    static const hw_piece piece = { .name = "sleeve", .mirror_of = -1, .outline = &rule };
    static const hw_gauge gauge[HW_FABRIC_COUNT] = {
        { .sts_per_10cm = 28, .rows_per_10cm = 40 },
        { .sts_per_10cm = 28, .rows_per_10cm = 40 },
        { .sts_per_10cm = 28, .rows_per_10cm = 40 },
    };
    static const char *names[] = { "one" };
    static const hw_sizes finished = { .count = 1, .names = names };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_draft_task task = { .outline = { .piece = &piece,
                               .finished = &finished,
                               .band_cm = 26,
                               .main_cm = 26,
                               .width_cm = 72 / 2.8 },
        .gauge = gauge,
        .main_sts = 72 };
    hw_draft draft = { 0 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_draft_make(&task, &arena, &draft, &err), HW_OK);
    ck_assert_int_eq(draft.task.rows, 196);
    /* Never a whole stitch from the even way, which is 42 over 176 rows. */
    for (int row = 0; row < 196; row++) {
        double even = row < 176 ? row * 42 / 176.0 : 42;
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            ck_assert_double_eq_tol(-draft.shape.inset_sts[side][row], even, 1);
        }
    }
    ck_assert_int_eq(-draft.shape.inset_sts[HW_LEFT][176], 42);
    ck_assert_int_eq(hw_shape_sts(&draft.shape, 195), 156);
    hw_check_close(&arena, &heap);
}
END_TEST

/* By hand: 16 cm from the hem at 4 cm up to 20 cm are 48 rows, with the hem's 20 an even number.
 * The band's 4 rows reach up to 22 cm; from there to 50 cm are 84. The other band ends 2 cm, 6
 * rows, below the underarm at 30 cm, so it begins at 26 cm: 12 rows further up. Over it 22 cm, 66
 * rows. */
START_TEST(bands_higher_up)
{
    tank t;
    tank_open(&t,
        EDITS(BANDS(BAND("yoke", "back", "above fold: 20")
                BAND("belt", "[back, front]", "below underarm: 2"))),
        EDITS({ "up: 33 cm", "up: 30 cm" }));
    const hw_draft *back = drafted(&t, TANK_BACK);
    ck_assert_int_eq(back->uppers[0].first_row, 48);
    ck_assert_int_eq(back->uppers[0].rows, 4);
    ck_assert_int_eq(back->uppers[0].underarm_rows, -1);
    ck_assert_int_eq(back->uppers[1].first_row, 64);
    ck_assert_int_eq(back->uppers[1].underarm_rows, 6);
    ck_assert_int_eq(back->task.rows, 48 + 4 + 12 + 4 + 66);
    ck_assert_double_eq_tol(back->low_cm[52], 22, near_cm);
    ck_assert_double_eq_tol(back->low_cm[68], 28, near_cm);
    /* 80 stitches: 20 figures of 2 with gaps of 2 are 78, and one stitch at each end. */
    const hw_upper *yoke = &back->uppers[0];
    ck_assert_int_eq(yoke->sts, 80);
    ck_assert_int_eq(yoke->motifs, 20);
    ck_assert_int_eq(yoke->margin[HW_LEFT], 1);
    ck_assert_int_eq(yoke->margin[HW_RIGHT], 1);
    ck_assert(!yoke->shaped);
    ck_assert_double_eq_tol(yoke->width_cm, 40, near_cm);
    /* The front has no yoke: 22 cm and 66 rows up to its belt, which meets the back's. */
    const hw_draft *front = drafted(&t, TANK_FRONT);
    ck_assert_int_eq(front->uppers[0].rows, 0);
    ck_assert_int_eq(front->uppers[1].first_row, 66);
    ck_assert_int_eq(front->uppers[1].underarm_rows, 6);
    tank_close(&t);
}
END_TEST

/* By hand: the sides are 30 and 33 cm; a belt of 2 cm that ends 2 cm below, 6 rows of 1/3 cm, would
 * begin at 26 and 29 cm, 66 and 75 rows above the hem. The hem has 20, so the second gets 76, and
 * all from the underarm up lies a row higher. */
START_TEST(side_by_a_row)
{
    tank t;
    tank_open(&t, EDITS(BANDS(BAND("belt", "[back, front]", "below underarm: 2"))), NULL);
    int rows = 0;
    for (int p = 0; p < 2; p++) {
        const hw_draft *draft = drafted(&t, p == 0 ? TANK_BACK : TANK_FRONT);
        const hw_upper *belt = &draft->uppers[0];
        double underarm_cm = hw_outline_height(&draft->outline, "side");
        double drawn_cm = belt->first_row == 66 ? 30 : 33;
        rows += belt->first_row;
        ck_assert_double_eq_tol(underarm_cm - drawn_cm, belt->side_cm, near_cm);
        ck_assert_double_eq_tol(belt->side_cm, belt->first_row == 66 ? 0 : 1 / 3.0, near_cm);
        ck_assert_double_eq_tol(
            underarm_cm - draft->low_cm[belt->first_row + belt->rows], 2, near_cm);
        ck_assert_int_eq(belt->underarm_rows, 6);
    }
    ck_assert_int_eq(rows, 66 + 76);
    tank_close(&t);
}
END_TEST

/* By hand: 11.5 cm above the hem are 34.5 rows, 34 or 36 of which are even; 34 are nearer. With 11
 * rows of facing in a hem of 21, 35 rows make the number below the band even. */
START_TEST(even_rows_below_a_band)
{
    tank t;
    tank_open(&t, EDITS(BANDS(BAND("yoke", "back", "above fold: 15.4"))), NULL);
    ck_assert_int_eq(drafted(&t, TANK_BACK)->uppers[0].first_row, 34);
    tank_close(&t);
    tank_open(&t,
        EDITS({ "fold: none", "fold: none, facing rows: 11" },
            BANDS(BAND("yoke", "back", "above fold: 15.4"))),
        NULL);
    ck_assert_int_eq(drafted(&t, TANK_BACK)->uppers[0].first_row % 2, 1);
    ck_assert_int_eq((t.plan.hem.total_rows + drafted(&t, TANK_BACK)->uppers[0].first_row) % 2, 0);
    tank_close(&t);
}
END_TEST

/* By hand: 20 cm are 48 rows above the hem, by which the sleeve has 4 stitches more at each
 * edge: 56. A figure of 5 and a gap of 4 fit (56 + 4) / 9 = 6 times: 50, and 3 stitches at each
 * end. */
START_TEST(band_in_a_sleeve)
{
    tank t;
    tank_open(&t,
        EDITS(BANDS("  ring:\n    on: sleeve\n    above fold: 20\n" CHART(
            "        ooooo\n        ooooo\n", "4"))),
        NULL);
    const hw_upper *ring = &drafted(&t, TANK_SLEEVE)->uppers[0];
    ck_assert_int_eq(ring->first_row, 48);
    ck_assert_int_eq(ring->sts, 56);
    ck_assert_int_eq(ring->taken_sts[HW_LEFT], -4);
    ck_assert_int_eq(ring->motifs, 6);
    ck_assert_int_eq(ring->margin[HW_LEFT], 3);
    ck_assert_int_eq(ring->margin[HW_RIGHT], 3);
    tank_close(&t);
}
END_TEST

/* Own choice of words; what is refused and where it is told follows from the tank's numbers. */
START_TEST(refused)
{
    static const struct {
        const char *bands;
        const char *old, *fresh; /* of the garment */
        hw_status status;
        const char *words;
    } rows[] = {
        { BAND("low", "back", "above fold: 2"), NULL, NULL, HW_ERR_RANGE,
            "start below the top of the hem or of another band; put it higher" },
        { BAND("one", "back", "above fold: 20") BAND("two", "back", "above fold: 21"), NULL, NULL,
            HW_ERR_RANGE, "the band `two` has no room on `back`" },
        { BAND("high", "front", "above fold: 49"), NULL, NULL, HW_ERR_RANGE,
            "reach above the top; put it lower" },
        { BAND("neck", "back", "above fold: 39"), NULL, NULL, HW_ERR_RANGE,
            "reach into the neck; put it lower" },
        { BAND("belt", "sleeve", "below underarm: 2"), "across: 0.5 x wrist + 4 cm, up: 36",
            "stretch: under, across: 0.5 x wrist + 4 cm, up: 36", HW_ERR_MISSING,
            "the outline of `sleeve` has no stretch called `side`" },
        { BAND("belt", "sleeve", "below underarm: 37"), NULL, NULL, HW_ERR_RANGE, "start below" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        tank t;
        hw_err err = { 0 };
        const char *bands = NULL;
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        bands = hw_arena_format(&arena, "bands:\n%schoices:", rows[i].bands);
        hw_status status = tank_try(&t, EDITS({ "choices:", bands }),
            rows[i].old == NULL ? NULL : EDITS({ rows[i].old, rows[i].fresh }), &err);
        ck_assert_msg(status == rows[i].status, "row %zu: %s", i, err.text);
        ck_assert_msg(strstr(err.text, rows[i].words) != NULL, "row %zu: %s", i, err.text);
        ck_assert_int_eq(err.line, i == 1 ? 30 : 20); /* of the band's name in the project */
        tank_close(&t);
        hw_check_close(&arena, &heap);
    }
}
END_TEST

/* By hand: a sleeve that ends where its hem does has no row; 900 cm of 60 rows in 10 cm are 5400
 * rows, more than HW_MAX_ROWS. */
START_TEST(no_rows_and_too_many)
{
    tank t;
    hw_err err = { 0 };
    ck_assert_int_eq(
        tank_try(&t, NULL,
            EDITS({ "+ 4 cm, up: 36 cm", ", up: 4 cm" }, { "+ 4 cm, up: 40 cm", ", up: 4.1 cm" }),
            &err),
        HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "`sleeve` is no longer than its hem"));
    tank_close(&t);
    err = (hw_err){ 0 };
    ck_assert_int_eq(
        tank_try(&t,
            EDITS({ "{stitches: 20, rows: 30}\n  band", "{stitches: 20, rows: 60}\n  band" }),
            EDITS({ "up: 36 cm", "up: 899 cm" }, { "up: 40 cm", "up: 900 cm" }), &err),
        HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "would have more than 5000 rows"));
    tank_close(&t);
}
END_TEST

/* Source: arithmetic in tank.c. A slit from 34 to 40 cm begins 30 cm above the hem, at row 90; none
 * of the 80 stitches goes there, and each half keeps its 40 less the armhole's 10; from 40 cm, row
 * 108, its neck goes. What is drawn is as large as without it. The next band above would reach into
 * it.
 */
START_TEST(slit_by_hand)
{
    tank t;
    tank_open(&t, NULL, NULL);
    ck_assert_double_eq_tol(drafted(&t, TANK_BACK)->outline.slit_cm, 0, near_cm);
    tank_close(&t);
    tank_open(&t, NULL, EDITS(SLIT));
    const hw_draft *back = drafted(&t, TANK_BACK);
    ck_assert_double_eq_tol(back->outline.slit_cm, 6, near_cm);
    ck_assert_double_eq_tol(back->outline.neck_cm, 34, near_cm);
    ck_assert_int_eq(back->shape.neck_row, 90);
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        ck_assert_int_eq(back->shape.neck_halves[side][90], 0);
        ck_assert_int_eq(hw_shape_half_sts(&back->shape, 90, (hw_side)side), 30);
        ck_assert_int_eq(hw_shape_half_sts(&back->shape, 106, (hw_side)side), 30);
        ck_assert_int_eq(hw_shape_half_sts(&back->shape, 110, (hw_side)side), 10);
    }
    ck_assert_double_eq_tol(back->area_cm2, 1600, 1e-6);
    tank_close(&t);
    hw_err err = { 0 };
    ck_assert_int_eq(
        tank_try(&t, EDITS(BANDS(BAND("yoke", "back", "above fold: 33"))), EDITS(SLIT), &err),
        HW_ERR_RANGE);
    ck_assert_ptr_nonnull(strstr(err.text, "it would reach into the slit; put it lower"));
    tank_close(&t);
}
END_TEST

/* Needles by hand: 82 stitches from L41; the right edge hangs at the left of the bed: one edge
 * stitch, what was taken off there, and the plain end lie before the first motif. L1 is -1. */
START_TEST(needle_of_a_band)
{
    hw_upper upper = { .taken_sts = { [HW_LEFT] = 5, [HW_RIGHT] = 3 },
        .margin = { [HW_LEFT] = 7, [HW_RIGHT] = 2 } };
    hw_place_on_bed place = { .first = -41 };
    hw_fit fit = { .edge_sts = { [HW_LEFT] = 4, [HW_RIGHT] = 1 } };
    ck_assert_int_eq(hw_upper_needle(&upper, &place, &fit, false), -41 + 1 + 3 + 2);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { back_by_hand, front_and_sleeve_by_hand, sleeve_published,
        bands_higher_up, side_by_a_row, even_rows_below_a_band, band_in_a_sleeve, refused,
        no_rows_and_too_many, slit_by_hand, needle_of_a_band };
    return hw_check_run(hw_check_suite("draft", tests, sizeof tests / sizeof tests[0]));
}
